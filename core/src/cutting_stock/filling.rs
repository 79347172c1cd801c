//! What is cut from one bar, and what it costs.

use super::kind::{Kind, Stock};
use std::cmp::Ordering;

/// Length bought, mm, then number of bars.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Cost {
    pub mm: u64,
    pub bars: u64,
}

impl Cost {
    pub fn plus(self, other: Self) -> Self {
        Self { mm: self.mm.saturating_add(other.mm), bars: self.bars.saturating_add(other.bars) }
    }
}

/// What is cut from one bar: kinds and how many of each, the longest first.
#[derive(Clone)]
pub struct Filling {
    pub stock: Stock,
    pub pieces: Vec<(usize, u64)>,
    /// What is left over, mm.
    pub rest: u64,
    pub times: u64,
}

impl Filling {
    pub fn cost(&self) -> Cost {
        Cost { mm: self.times.saturating_mul(self.stock.mm.into()), bars: self.times }
    }

    /// Greater where more is left over for its length; where as much is, a longer stock saves bars.
    pub fn loss(&self, other: &Self) -> Ordering {
        let [own, its] = [(self, other), (other, self)].map(|(a, b)| u128::from(a.rest) * u128::from(b.stock.mm));
        own.cmp(&its).then(other.stock.mm.cmp(&self.stock.mm))
    }

    /// Takes in as many as fit of the kinds from one on.
    pub fn fill_up(&mut self, kinds: &[Kind], left: &[u64], from: usize) {
        for (at, (kind, &left)) in kinds.iter().zip(left).enumerate().skip(from) {
            let count = left.min(self.rest / kind.size);
            if count > 0 {
                self.rest -= count * kind.size;
                self.pieces.push((at, count));
            }
        }
    }

    /// Gives up one of its shortest, but never the first piece; says which kinds come after it.
    pub fn give_up(&mut self, kinds: &[Kind]) -> Option<usize> {
        let is_last = self.pieces.len() == 1;
        let (kind, count) = self.pieces.last_mut().filter(|piece| !is_last || piece.1 > 1)?;
        let next = *kind + 1;
        self.rest += kinds[*kind].size;
        *count -= 1;
        if *count == 0 {
            self.pieces.pop();
        }
        Some(next)
    }

    fn holds(&self, kind: usize) -> u64 {
        self.pieces.iter().find(|piece| piece.0 == kind).map_or(0, |piece| piece.1)
    }

    /// Whether nothing more goes in.
    pub fn is_full(&self, kinds: &[Kind], left: &[u64]) -> bool {
        let mut short = (0..kinds.len()).rev().take_while(|&kind| kinds[kind].size <= self.rest);
        short.all(|kind| self.holds(kind) == left[kind])
    }
}
