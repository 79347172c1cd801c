use super::piece::{Piece, Pieces, State};
use super::{Displacement, Reaction, Solution};
use crate::sorting::sort;

impl Solution {
    /// The sum of solutions, each times its factor: all to first order, of one frame or of what is left of it. None of
    /// none.
    pub fn sum(parts: &[(f64, &Self)]) -> Option<Self> {
        let (_, first) = parts.first()?;
        let mut sum = Self {
            displacements: vec![Displacement::default(); first.displacements.len()],
            reactions: Self::sum_of_reactions(parts),
            spring_forces: vec![0.0; first.spring_forces.len()],
            contact_forces: vec![0.0; first.contact_forces.len()],
            pieces: Pieces::sum(parts),
        };
        for &(factor, part) in parts {
            for (sum, moved) in sum.displacements.iter_mut().zip(&part.displacements) {
                sum.ux += factor * moved.ux;
                sum.uy += factor * moved.uy;
                sum.rz += factor * moved.rz;
            }
            sum.spring_forces.iter_mut().zip(&part.spring_forces).for_each(|(sum, force)| *sum += factor * force);
            sum.contact_forces.iter_mut().zip(&part.contact_forces).for_each(|(sum, force)| *sum += factor * force);
        }
        Some(sum)
    }

    /// Reactions of the sum of solutions at all nodes.
    pub fn sum_of_reactions(parts: &[(f64, &Self)]) -> Vec<Reaction> {
        let nodes = parts.first().map_or(0, |(_, first)| first.reactions.len());
        let mut sum = vec![Reaction::default(); nodes];
        for &(factor, part) in parts {
            for (sum, held) in sum.iter_mut().zip(&part.reactions) {
                sum.fx += factor * held.fx;
                sum.fy += factor * held.fy;
                sum.mz += factor * held.mz;
            }
        }
        sum
    }
}

impl Pieces {
    /// Cut wherever any of the parts is.
    fn sum(parts: &[(f64, &Solution)]) -> Self {
        let of_parts = || parts.iter().map(|&(factor, part)| (factor, &part.pieces));
        let acted_on: Vec<_> = of_parts().filter(|(_, part)| !part.is_bare()).collect();
        let mut sum = match acted_on[..] {
            [] => of_parts().next().map(|(_, first)| first.cut_as()).unwrap_or_default(),
            [(factor, only)] => only.times(factor),
            _ => Self::sum_of_acted_on(&acted_on),
        };
        for (factor, part) in of_parts().filter(|(_, part)| part.is_bare()) {
            for (&at, piece) in sum.starts.iter().zip(&part.all) {
                sum.all[at].start.add(factor, &piece.start);
            }
        }
        for member in sum.starts.windows(2) {
            for next in member[0] + 1..member[1] {
                let before = &sum.all[next - 1];
                sum.all[next].start = before.at(before.length).after(&sum.all[next]);
            }
        }
        sum
    }

    /// Whether nothing acts on any member, so that each is one piece.
    fn is_bare(&self) -> bool {
        self.all.iter().all(|piece| !piece.acted_on)
    }

    /// Cut in the same way, with nothing on them and all at rest.
    fn cut_as(&self) -> Self {
        Self { all: self.all.iter().map(Piece::bare).collect(), starts: self.starts.clone() }
    }

    fn times(&self, factor: f64) -> Self {
        let mut product = self.clone();
        if factor != 1.0 {
            product = self.cut_as();
            product.all.iter_mut().zip(&self.all).for_each(|(piece, other)| piece.add(factor, other));
        }
        product
    }

    /// Each member's state is right in its first piece only.
    fn sum_of_acted_on(parts: &[(f64, &Self)]) -> Self {
        let members = parts.first().map_or(0, |(_, first)| first.starts.len() - 1);
        let room = parts.iter().map(|(_, part)| part.all.len()).sum();
        let mut sum = Self { all: Vec::with_capacity(room), starts: Vec::with_capacity(members + 1) };
        sum.starts.push(0);
        let mut breaks = Vec::new();
        for member in 0..members {
            let of_all = || parts.iter().flat_map(|(_, part)| part.of(member));
            breaks.clear();
            breaks.extend(of_all().map(|piece| piece.x));
            sort(&mut breaks, f64::total_cmp);
            breaks.dedup();
            let end = of_all().map(Piece::end).fold(0.0, f64::max);
            for (index, &x) in breaks.iter().enumerate() {
                let length = breaks.get(index + 1).unwrap_or(&end) - x;
                let mut piece = Piece { x, length, ..Piece::default() };
                for (factor, part) in parts {
                    let pieces = part.of(member);
                    piece.add(*factor, &pieces[pieces.partition_point(|piece| piece.x <= x).max(1) - 1]);
                }
                sum.all.push(piece);
            }
            sum.starts.push(sum.all.len());
        }
        sum
    }
}

impl Piece {
    fn bare(&self) -> Self {
        Self { x: self.x, length: self.length, section: self.section, ..Self::default() }
    }

    /// Adds what acts on another, and the state at its start where both begin together.
    #[inline]
    fn add(&mut self, factor: f64, other: &Self) {
        let into = self.x - other.x;
        self.section = other.section;
        if other.acted_on {
            self.acted_on = true;
            for way in 0..2 {
                self.load[way] += factor * (other.load[way] + into * other.growth[way]);
                self.growth[way] += factor * other.growth[way];
                self.strain[way] += factor * other.strain[way];
            }
        }
        if into == 0.0 {
            (0..2).for_each(|way| self.force[way] += factor * other.force[way]);
            (0..3).for_each(|way| self.jump[way] += factor * other.jump[way]);
            self.start.add(factor, &other.start);
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
