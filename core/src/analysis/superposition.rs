use super::piece::Piece;
use super::pieces::Pieces;
use super::section::State;
use super::{Displacement, Reaction, Solution};
use crate::sorting::sort;

impl Solution {
    /// The sum of solutions, each times its factor: all to first order, of one frame or of what is left of it. None of
    /// none.
    pub fn sum(parts: &[(f64, &Self)]) -> Option<Self> {
        let (_, first) = parts.first()?;
        let mut sum = Self {
            displacements: vec![Displacement::default(); first.displacements.len()],
            reactions: vec![Reaction::default(); first.reactions.len()],
            spring_forces: vec![0.0; first.spring_forces.len()],
            contact_forces: vec![0.0; first.contact_forces.len()],
            pieces: Pieces::sum(parts),
        };
        for &(factor, part) in parts {
            sum.displacements.iter_mut().zip(&part.displacements).for_each(|(sum, moved)| sum.add(factor, moved));
            sum.reactions.iter_mut().zip(&part.reactions).for_each(|(sum, held)| sum.add(factor, held));
            sum.spring_forces.iter_mut().zip(&part.spring_forces).for_each(|(sum, force)| *sum += factor * force);
            sum.contact_forces.iter_mut().zip(&part.contact_forces).for_each(|(sum, force)| *sum += factor * force);
        }
        Some(sum)
    }

    /// Reaction of the sum of solutions at a node.
    ///
    /// # Panics
    /// Where a solution has no such node.
    pub fn sum_of_reactions(parts: &[(f64, &Self)], node: usize) -> Reaction {
        let mut sum = Reaction::default();
        parts.iter().for_each(|(factor, part)| sum.add(*factor, &part.reactions[node]));
        sum
    }
}

impl Displacement {
    pub(super) fn add(&mut self, factor: f64, other: &Self) {
        self.ux += factor * other.ux;
        self.uy += factor * other.uy;
        self.rz += factor * other.rz;
    }
}

impl Reaction {
    fn add(&mut self, factor: f64, other: &Self) {
        self.fx += factor * other.fx;
        self.fy += factor * other.fy;
        self.mz += factor * other.mz;
    }
}

impl Pieces {
    /// Members are cut wherever any of the parts cuts them.
    fn sum(parts: &[(f64, &Solution)]) -> Self {
        let Some((_, first)) = parts.first() else { return Self::default() };
        let room = parts.iter().map(|(_, part)| part.pieces.acted_on.len()).sum();
        let mut sum = Self::at_rest(first.pieces.elements(), room);
        for (factor, part) in parts {
            sum.starts.iter_mut().zip(&part.pieces.starts).for_each(|(sum, start)| sum.add(*factor, start));
        }
        let acting: Vec<_> = parts.iter().filter(|(_, part)| !part.pieces.acted_on.is_empty()).collect();
        let (mut own, mut breaks) = (Vec::with_capacity(acting.len()), Vec::new());
        for member in 0..sum.starts.len() {
            own.clear();
            let of_parts = acting.iter().map(|(factor, part)| (*factor, part.pieces.acted_on(member)));
            own.extend(of_parts.filter(|(_, pieces)| !pieces.is_empty()));
            match own[..] {
                [] => {}
                [(factor, pieces)] => sum.acted_on.extend(pieces.iter().map(|piece| piece.times(factor))),
                _ => sum.merge(&own, &mut breaks),
            }
            sum.firsts.push(sum.acted_on.len());
            sum.fill_in(member);
        }
        sum
    }

    /// Adds pieces with what acts on one member in several parts.
    fn merge(&mut self, parts: &[(f64, &[Piece])], breaks: &mut Vec<f64>) {
        let all = || parts.iter().flat_map(|(_, pieces)| *pieces);
        breaks.clear();
        breaks.extend(all().map(|piece| piece.x));
        sort(breaks, f64::total_cmp);
        breaks.dedup();
        let end = all().map(Piece::end).fold(0.0, f64::max);
        for (index, &x) in breaks.iter().enumerate() {
            let length = breaks.get(index + 1).unwrap_or(&end) - x;
            let mut sum = Piece { x, length, ..Piece::default() };
            for (factor, pieces) in parts {
                if let Some(piece) = pieces.iter().rfind(|piece| piece.x <= x) {
                    sum.add(*factor, piece);
                }
            }
            self.acted_on.push(sum);
        }
    }
}

impl Piece {
    fn times(&self, factor: f64) -> Self {
        if factor == 1.0 {
            return *self;
        }
        let mut product = Self { x: self.x, length: self.length, ..Self::default() };
        product.add(factor, self);
        product
    }

    /// Adds what acts on another.
    #[inline]
    fn add(&mut self, factor: f64, other: &Self) {
        let into = self.x - other.x;
        self.section = other.section;
        for way in 0..2 {
            self.load[way] += factor * (other.load[way] + into * other.growth[way]);
            self.growth[way] += factor * other.growth[way];
            self.strain[way] += factor * other.strain[way];
        }
        if into == 0.0 {
            (0..2).for_each(|way| self.force[way] += factor * other.force[way]);
            (0..3).for_each(|way| self.jump[way] += factor * other.jump[way]);
        }
    }
}

impl State {
    #[inline]
    fn add(&mut self, factor: f64, other: &Self) {
        self.axial += factor * other.axial;
        self.transverse += factor * other.transverse;
        self.moment += factor * other.moment;
        self.slope += factor * other.slope;
        self.deflection += factor * other.deflection;
        self.along += factor * other.along;
    }
}
