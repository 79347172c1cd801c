//! Helpers shared by the tests.

/// Fails unless `actual` is within `rel` of `expected`, naming what was compared.
#[track_caller]
pub fn assert_close(what: &str, actual: f64, expected: f64, rel: f64) {
    let allowed = rel * expected.abs().max(1e-12);
    assert!((actual - expected).abs() <= allowed, "{what}: got {actual}, expected {expected} within {rel} of it");
}

pub mod formula;
pub mod frame_case;
pub mod reference;
pub mod simple;
pub mod three_moments;
pub mod twisting;
#[path = "../validation/mod.rs"]
pub mod validation;
pub mod words;
