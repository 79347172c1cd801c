//! Cuts wanted pieces from bars of several stock lengths, so that the least length is bought.
//!
//! A search tree bar by bar: the next bar holds the longest piece still wanted, and the fullest bar is tried first.
//! The way down to the first plan is a best fit decreasing; going back up improves it, as far as a budget lasts.

mod filling;
mod kind;
mod search;
#[cfg(test)]
mod tests;

use crate::sorting::sort;
use filling::{Cost, Filling};
use kind::{Stock, kinds};
use search::Search;

/// Bars cut alike.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Bar {
    /// Length of the bar as it is bought, mm.
    pub stock_mm: u32,
    /// Length of a piece, mm, and how many are cut from one bar; the longest first.
    pub pieces: Vec<(u32, u32)>,
    /// How many bars are cut so.
    pub count: u64,
}

/// What to buy and how to cut it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Plan {
    /// The longest stock first.
    pub bars: Vec<Bar>,
    /// Length of all bars, mm.
    pub bought_mm: u64,
    /// Length of all pieces cut, mm.
    pub used_mm: u64,
    /// What is bought and not used: saw cuts and offcuts, mm.
    pub waste_mm: u64,
    /// No plan buys less, mm; equals what is bought where the plan is known to be the best.
    pub least_mm: u64,
    /// Length, mm, and count of pieces longer than every stock length, as they were given.
    pub too_long: Vec<(u32, u32)>,
}

/// Cuts pieces of a length, mm, and a count from stock lengths, mm. A saw cut of `kerf_mm` parts two pieces and takes
/// off the rest of a bar, or as much of it as there is. Pieces without length are left out.
pub fn plan(stock_mm: &[u32], wanted: &[(u32, u32)], kerf_mm: u32) -> Plan {
    let longest = stock_mm.iter().copied().max().unwrap_or(0);
    let real = wanted.iter().copied().filter(|&(length, count)| length > 0 && count > 0);
    let (mut cut, too_long): (Vec<_>, Vec<_>) = real.partition(|&(length, _)| length <= longest);
    sort(&mut cut, |a, b| b.0.cmp(&a.0));
    let Some(&(shortest, _)) = cut.last() else { return Plan { too_long, ..Plan::default() } };
    let kerf = u64::from(kerf_mm);
    let mut stocks: Vec<Stock> =
        stock_mm.iter().filter(|&&mm| mm >= shortest).map(|&mm| Stock::new(mm, kerf)).collect();
    sort(&mut stocks, |a, b| a.mm.cmp(&b.mm));
    stocks.dedup();
    let left: Vec<u64> =
        cut.chunk_by(|a, b| a.0 == b.0).map(|alike| alike.iter().map(|piece| u64::from(piece.1)).sum()).collect();
    cut.dedup_by_key(|piece| piece.0);
    let lengths: Vec<u32> = cut.into_iter().map(|piece| piece.0).collect();
    let kinds = kinds(&lengths, &left, &stocks, kerf);
    let used_mm =
        lengths.iter().zip(&left).map(|(&mm, &count)| count.saturating_mul(mm.into())).fold(0, u64::saturating_add);
    let step_mm = stocks.iter().fold(0, |step, stock| common_step(step, stock.mm.into()));
    let mut search = Search::new(stocks, kinds, step_mm);
    let least = search.least(&left);
    search.run(left, least);
    let (Cost { mm: bought_mm, .. }, fillings) = search.best.unwrap_or_default();
    Plan {
        bars: bars(&fillings, &lengths),
        bought_mm,
        used_mm,
        waste_mm: bought_mm.saturating_sub(used_mm),
        least_mm: if search.is_whole { bought_mm } else { least.mm },
        too_long,
    }
}

/// Fillings as bars, alike ones together.
fn bars(fillings: &[Filling], lengths: &[u32]) -> Vec<Bar> {
    let piece = |&(kind, count): &(usize, u64)| Some((*lengths.get(kind)?, u32::try_from(count).ok()?));
    let bar = |filling: &Filling| Bar {
        stock_mm: filling.stock.mm,
        pieces: filling.pieces.iter().filter_map(piece).collect(),
        count: filling.times,
    };
    let mut bars: Vec<Bar> = fillings.iter().map(bar).collect();
    sort(&mut bars, |a, b| b.stock_mm.cmp(&a.stock_mm).then_with(|| b.pieces.cmp(&a.pieces)));
    bars.dedup_by(|next, bar| {
        let is_alike = next.stock_mm == bar.stock_mm && next.pieces == bar.pieces;
        if is_alike {
            bar.count += next.count;
        }
        is_alike
    });
    bars
}

fn common_step(a: u64, b: u64) -> u64 {
    if b == 0 { a } else { common_step(b, a % b) }
}
