//! How the pieces of one bay's set are cut from stock.

use super::called;
use crate::catalogue::Catalogue;
use crate::cutting_stock::{Plan, plan};
use crate::model::Model;
use crate::scheme::Stock;
use crate::sentence::Sentence;
use std::collections::BTreeMap;

/// Lengths that are the same but for rounding, mm.
const ROUNDING_MM: f64 = 1e-3;

/// The pieces of one item, and the bars that they are cut from.
#[derive(Clone, Debug, PartialEq)]
pub struct CutList {
    /// The item, as the bill calls it.
    pub item: Sentence,
    /// Its bars, in whole mm.
    pub plan: Plan,
}

/// What is cut from stock, by item in the order of their codes. Pieces are taken up to the next whole mm.
pub fn cut_lists(stock: &Stock, model: &Model, catalogue: &Catalogue) -> Vec<CutList> {
    let mut wanted: BTreeMap<&str, BTreeMap<u32, u32>> = BTreeMap::new();
    for part in &model.parts {
        let length_mm = (part.solid.length_m() * 1e3 - ROUNDING_MM).ceil() as u32;
        *wanted.entry(&part.item).or_default().entry(length_mm).or_default() += part.count;
    }
    let saw_mm = mm(stock.saw_m);
    let list = |(code, pieces): (&str, BTreeMap<u32, u32>)| {
        let pieces: Vec<(u32, u32)> = pieces.into_iter().collect();
        let item = catalogue.get(code)?;
        let stock_mm: Vec<u32> = stock.of(&item.kind).iter().copied().map(mm).collect();
        let plan = || plan(&stock_mm, &pieces, saw_mm);
        (!stock_mm.is_empty()).then(|| CutList { item: called(item, catalogue), plan: plan() })
    };
    wanted.into_iter().filter_map(list).collect()
}

fn mm(length_m: f64) -> u32 {
    libm::round(length_m * 1e3) as u32
}
