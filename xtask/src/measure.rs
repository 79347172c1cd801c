//! `cargo xtask measure`: weight and speed of the built page, as tables.

use crate::browser;
use anyhow::{Context, Result};

/// Measures; false where a value is beyond its limit.
pub fn run() -> Result<bool> {
    let status = browser::node(&["measure.mjs"])?.status().context("cannot start Node.js")?;
    Ok(status.success())
}
