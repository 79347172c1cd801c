//! Every value against its source, and the committed table of them.

use falsewright_tests::validation::{all, markdown};

#[test]
fn every_value_is_within_its_tolerance() {
    let rows = all();
    let out: Vec<String> = rows
        .iter()
        .filter(|row| !row.passes())
        .map(|row| format!("{}: {}: expected {}, got {}", row.topic, row.what, row.expected, row.got))
        .collect();
    assert!(out.is_empty(), "{}", out.join("\n"));
    assert!(rows.len() >= 150, "{}", rows.len());
    assert!(rows.iter().all(|row| !row.source.is_empty()));
}

#[test]
fn committed_table_is_fresh() {
    let committed = include_str!("../../VALIDATION.md").replace("\r\n", "\n");
    assert!(committed == markdown(&all()), "tests/VALIDATION.md is stale: run `cargo xtask validation`");
}
