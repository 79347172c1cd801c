//! Every check against a published or independent value. `cargo xtask validation` writes them as a table.

mod actions;
mod concrete;
mod ground;
mod hollow;
mod libraries;
mod plywood;
mod pressure;
mod props;
mod stacks;
mod steel;
mod steel_sections;
mod timber;
mod twisting;

use std::fmt::Write;

/// One value compared with what somebody else says it is.
pub struct Row {
    /// What it belongs to.
    pub topic: &'static str,
    /// What is compared.
    pub what: String,
    /// Who says so.
    pub source: &'static str,
    /// Of both values.
    pub unit: &'static str,
    /// What it should be.
    pub expected: f64,
    /// What it is here.
    pub got: f64,
    /// Allowed difference, relative.
    pub tolerance: f64,
}

impl Row {
    /// Difference by the expected value.
    pub fn difference(&self) -> f64 {
        if self.expected == 0.0 { self.got } else { self.got / self.expected - 1.0 }
    }

    /// Whether the difference is allowed.
    pub fn passes(&self) -> bool {
        self.difference().abs() <= self.tolerance
    }
}

/// Rows of one topic and source.
struct Rows {
    topic: &'static str,
    source: &'static str,
    unit: &'static str,
    tolerance: f64,
    rows: Vec<Row>,
}

/// Values printed to four figures.
const FOUR_FIGURES: f64 = 0.0006;

impl Rows {
    fn new(topic: &'static str) -> Self {
        Self { topic, source: "", unit: "", tolerance: FOUR_FIGURES, rows: Vec::new() }
    }

    /// What holds for the rows that follow.
    fn from(&mut self, source: &'static str, unit: &'static str, tolerance: f64) -> &mut Self {
        (self.source, self.unit, self.tolerance) = (source, unit, tolerance);
        self
    }

    fn check(&mut self, what: impl Into<String>, expected: f64, got: f64) -> &mut Self {
        let Self { topic, source, unit, tolerance, .. } = *self;
        self.rows.push(Row { topic, what: what.into(), source, unit, expected, got, tolerance });
        self
    }
}

/// All rows, topic by topic.
pub fn all() -> Vec<Row> {
    [
        pressure::rows(),
        actions::rows(),
        timber::rows(),
        plywood::rows(),
        steel::rows(),
        twisting::rows(),
        steel_sections::rows(),
        hollow::rows(),
        props::rows(),
        stacks::rows(),
        ground::rows(),
        concrete::rows(),
        libraries::rows(),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// The rows as a Markdown table.
pub fn markdown(rows: &[Row]) -> String {
    let mut text = format!(
        "# Checks against published and independent values\n\nWritten by `cargo xtask validation`; a test fails when it is \
         stale. {} values; the greatest difference is {:.2} %.\n\n| topic | what | source | expected | got | difference \
         |\n|---|---|---|---|---|---|\n",
        rows.len(),
        rows.iter().fold(0.0, |most: f64, row| most.max(row.difference().abs())) * 100.0
    );
    for row in rows {
        let Row { topic, what, source, unit, expected, got, .. } = row;
        let gap = if unit.is_empty() { "" } else { " " };
        let _ = writeln!(
            text,
            "| {topic} | {what} | {source} | {expected}{gap}{unit} | {}{gap}{unit} | {:+.2} % |",
            figures(*got),
            // Adding nought turns −0 into 0.
            (row.difference() * 1e4).round() / 100.0 + 0.0
        );
    }
    text
}

/// Five significant figures.
fn figures(value: f64) -> String {
    let size = if value == 0.0 { 0 } else { value.abs().log10().floor() as i32 };
    let decimals = usize::try_from(4 - size).unwrap_or(0);
    format!("{value:.decimals$}")
}
