use crate::sentence::Sentence;
use serde::Serialize;

/// The path of one load through the works.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LedgerEntry {
    /// Mark of the pour.
    pub pour: String,
    /// Such as `vertical, full` or `horizontal, S1–S2`.
    pub case: Sentence,
    /// From concrete to ground, or from concrete to ties.
    pub levels: Vec<LedgerLevel>,
    /// Greatest difference at any level, by the greatest force: 0.001 is 0.1 %.
    pub difference: f64,
}

impl LedgerEntry {
    /// An entry whose difference is the greatest of its levels.
    pub fn new(pour: String, case: Sentence, levels: Vec<LedgerLevel>) -> Self {
        let greatest = levels.iter().fold(1e-9, |greatest: f64, level| greatest.max(level.into_kn.abs()));
        let apart = levels.iter().fold(0.0, |apart: f64, level| apart.max((level.into_kn - level.out_kn).abs()));
        Self { pour, case, levels, difference: apart / greatest }
    }
}

/// One level of the path.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LedgerLevel {
    /// Such as `secondaries`.
    pub level: &'static str,
    /// What comes in, own weight included.
    #[serde(rename = "in")]
    pub into_kn: f64,
    /// What its supports bear.
    #[serde(rename = "out")]
    pub out_kn: f64,
}
