use crate::process::{cargo, output, root};
use anyhow::{Context, Result};

const TABLE: &str = "tests/VALIDATION.md";

/// Writes the table of every check against a published or independent value.
pub fn run() -> Result<()> {
    let table = output(&mut cargo(&["run", "-q", "-p", "falsewright-tests", "--example", "validation"])).context(
        "the validation example does not run: try cargo test -p falsewright-tests --test published validation",
    )?;
    std::fs::write(root().join(TABLE), table + "\n").with_context(|| format!("cannot write {TABLE}"))?;
    eprintln!("    wrote {TABLE}");
    Ok(())
}
