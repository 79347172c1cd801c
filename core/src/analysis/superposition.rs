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
        let members = parts.first().map_or(0, |(_, first)| first.pieces.starts.len() - 1);
        let most = parts.iter().map(|(_, part)| part.pieces.all.len()).max().unwrap_or(0);
        let mut sum = Self { all: Vec::with_capacity(most), starts: Vec::with_capacity(members + 1) };
        sum.starts.push(0);
        for member in 0..members {
            let first = sum.all.len();
            sum.add_cuts(parts, member);
            for &(factor, part) in parts {
                sum.all[first..].iter_mut().for_each(|piece| piece.add(factor, part.pieces.from(member, piece.x)));
            }
            for next in first + 1..sum.all.len() {
                let before = &sum.all[next - 1];
                sum.all[next].start = before.at(before.length).after(&sum.all[next]);
            }
            sum.starts.push(sum.all.len());
        }
        sum
    }

    /// Adds the pieces of a member, with nothing on them yet.
    fn add_cuts(&mut self, parts: &[(f64, &Solution)], member: usize) {
        let mut cut = parts.iter().map(|(_, part)| part.pieces.of(member)).filter(|pieces| pieces.len() > 1);
        let bare =
            |piece: &Piece| Piece { x: piece.x, length: piece.length, section: piece.section, ..Piece::default() };
        let (one, another) = (cut.next(), cut.next());
        if another.is_none() {
            self.all.extend(one.unwrap_or(parts[0].1.pieces.of(member)).iter().map(bare));
            return;
        }
        let of_all = || parts.iter().flat_map(|(_, part)| part.pieces.of(member));
        let mut breaks: Vec<f64> = of_all().map(|piece| piece.x).collect();
        sort(&mut breaks, f64::total_cmp);
        breaks.dedup();
        let end = of_all().map(Piece::end).fold(0.0, f64::max);
        for (index, &x) in breaks.iter().enumerate() {
            let length = breaks.get(index + 1).unwrap_or(&end) - x;
            self.all.push(Piece { x, length, ..bare(&parts[0].1.pieces.of(member)[0]) });
        }
    }

    /// The piece that begins at `x` of a member or goes on there.
    fn from(&self, member: usize, x: f64) -> &Piece {
        match self.of(member) {
            [piece] => piece,
            pieces => &pieces[pieces.partition_point(|piece| piece.x <= x).max(1) - 1],
        }
    }
}

impl Piece {
    /// Adds what acts on another, and the state at its start where both begin together.
    #[inline]
    fn add(&mut self, factor: f64, other: &Self) {
        let into = self.x - other.x;
        if other.acted_on {
            self.acted_on = true;
            for way in 0..2 {
                self.load[way] += factor * (other.load[way] + into * other.growth[way]);
                self.growth[way] += factor * other.growth[way];
                self.strain[way] += factor * other.strain[way];
            }
        }
        if other.acted_on && into == 0.0 {
            (0..2).for_each(|way| self.force[way] += factor * other.force[way]);
            (0..3).for_each(|way| self.jump[way] += factor * other.jump[way]);
        }
        if into == 0.0 {
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
