use crate::process::{cargo, output, root};
use anyhow::{Context, Result};

const FILE: &str = "static/language/en.json";

/// Writes the list of every text of the page, which other languages translate.
pub fn run() -> Result<()> {
    let words = output(&mut cargo(&["run", "-q", "-p", "falsewright-tests", "--example", "words"]))
        .context("the example words does not run: try cargo test -p falsewright-tests --test words")?;
    std::fs::write(root().join(FILE), words + "\n").with_context(|| format!("cannot write {FILE}"))?;
    eprintln!("    wrote {FILE}; cargo test -p falsewright-tests --test words tells what other languages lack");
    Ok(())
}
