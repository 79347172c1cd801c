//! The search for the best plan, as far as its budget lasts.

use super::filling::{Cost, Filling};
use super::kind::{Kind, Stock};

/// So many steps are taken in all, each a filling looked at or tried.
const BUDGET: usize = 2000;
/// So many fillings of one stock length are looked at for one bar.
const LOOKED_AT: usize = 24;
/// So many fillings of a bar are tried, the fullest.
const TRIED: usize = 16;

/// Where the search stands: what is wanted beyond the bars so far, and how the next bar may be filled.
struct Level {
    left: Vec<u64>,
    cost: Cost,
    /// The best last.
    choices: Vec<Filling>,
}

pub struct Search {
    /// Shortest first.
    stocks: Vec<Stock>,
    /// Longest first.
    kinds: Vec<Kind>,
    /// All stock lengths are multiples of it, mm.
    step_mm: u64,
    budget: usize,
    /// Whether no filling was passed over.
    pub is_whole: bool,
    pub best: Option<(Cost, Vec<Filling>)>,
}

impl Search {
    /// Of stock lengths, the shortest first, that are all multiples of a step, and kinds, the longest first.
    pub fn new(stocks: Vec<Stock>, kinds: Vec<Kind>, step_mm: u64) -> Self {
        Self { stocks, kinds, step_mm, budget: BUDGET, is_whole: true, best: None }
    }

    /// The least that pieces cost. Those of a length and longer are split: the longest share a bar with none of them,
    /// the others fill any stock no better than these lengths add up to.
    pub fn least(&self, left: &[u64]) -> Cost {
        let mut sums = vec![(0_u64, 0_u64)];
        let (mut material, mut alone, mut least) = (0_u64, 0_u64, 0);
        for (kind, &left) in self.kinds.iter().zip(left) {
            material = material.saturating_add(left.saturating_mul(kind.size));
            alone = alone.saturating_add(left.saturating_mul(kind.alone_mm));
            sums.push((material, alone));
            let (apart, apart_mm) = sums[kind.apart];
            let others_mm = (material - apart).saturating_mul(kind.best.0).div_ceil(kind.best.1);
            least = least.max(alone).max(apart_mm.saturating_add(others_mm));
        }
        let bars = material.div_ceil(self.stocks.last().map_or(1, |stock| stock.room));
        Cost { mm: least.checked_next_multiple_of(self.step_mm).unwrap_or(least), bars }
    }

    /// Goes through the tree until a plan is as good as `least` or the budget is spent and there is a plan.
    pub fn run(&mut self, left: Vec<u64>, least: Cost) {
        let mut path: Vec<Filling> = Vec::new();
        let mut open = vec![Level { choices: self.choices(&left), left, cost: Cost::default() }];
        while let Some(level) = open.last_mut() {
            if self.best.as_ref().is_some_and(|best| self.budget == 0 || best.0 <= least) {
                self.is_whole = false;
                return;
            }
            let Some(filling) = level.choices.pop() else {
                open.pop();
                continue;
            };
            self.budget = self.budget.saturating_sub(1);
            if filling.times > 1 {
                level.choices.push(Filling { times: filling.times / 2, ..filling.clone() });
            }
            let mut left = level.left.clone();
            filling.pieces.iter().for_each(|&(kind, count)| left[kind] -= count * filling.times);
            let cost = level.cost.plus(filling.cost());
            path.truncate(open.len() - 1);
            path.push(filling);
            if self.best.as_ref().is_some_and(|best| cost.plus(self.least(&left)) >= best.0) {
                continue;
            }
            if left.iter().all(|&left| left == 0) {
                self.best = Some((cost, path.clone()));
            } else {
                open.push(Level { choices: self.choices(&left), left, cost });
            }
        }
    }

    /// How the next bar may be filled: with the longest piece left, to the full, and in no longer stock than needed.
    fn choices(&mut self, left: &[u64]) -> Vec<Filling> {
        let mut choices: Vec<Filling> = Vec::new();
        let mut shorter = 0;
        for at in 0..self.stocks.len() {
            let stock = self.stocks[at];
            let mut filling = Filling { stock, pieces: Vec::new(), rest: stock.room, times: 1 };
            let first = left.iter().position(|&left| left > 0).filter(|&first| self.kinds[first].size <= stock.room);
            let (mut next, mut looked_at) = (first, 0);
            while let Some(from) = next {
                if looked_at > 0 && (looked_at == LOOKED_AT || self.budget == 0) {
                    self.is_whole = false;
                    break;
                }
                looked_at += 1;
                self.budget = self.budget.saturating_sub(1);
                filling.fill_up(&self.kinds, left, from);
                if stock.room - filling.rest > shorter && filling.is_full(&self.kinds, left) {
                    self.keep(&filling, left, &mut choices);
                }
                next = filling.give_up(&self.kinds);
            }
            shorter = stock.room;
        }
        choices
    }

    /// Keeps a filling if it is among the best.
    fn keep(&mut self, filling: &Filling, left: &[u64], choices: &mut Vec<Filling>) {
        let place = choices.partition_point(|known| known.loss(filling).is_gt());
        if choices.len() == TRIED {
            self.is_whole = false;
            if place == 0 {
                return;
            }
            choices.remove(0);
        }
        let times = filling.pieces.iter().map(|&(kind, count)| left[kind] / count).min().unwrap_or(1);
        choices.insert(place.min(choices.len()), Filling { times, ..filling.clone() });
    }
}
