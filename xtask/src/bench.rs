//! `cargo xtask bench`: the benchmarks of the core, native.

use crate::process::{cargo, run};
use anyhow::Result;

/// Runs those whose name contains one of `names`, or all.
pub fn run_named(names: &[&str]) -> Result<()> {
    let bench = ["bench", "--package", "falsewright-core", "--bench", "frames", "--bench", "demo"];
    if names.is_empty() {
        return run("benchmarks", &mut cargo(&bench));
    }
    names.iter().try_for_each(|name| run(&format!("benchmarks of {name}"), cargo(&bench).args(["--", name])))
}
