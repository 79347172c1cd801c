//! Scripts that drive the built page in Chromium.

use crate::process::{command, root, run};
use crate::{site, tools};
use anyhow::Result;
use std::path::PathBuf;
use std::process::Command;

/// Where they are.
pub fn folder() -> PathBuf {
    root().join("tests/browser")
}

/// Node.js with these arguments, in the folder of the scripts, with the page built and everything at hand.
pub fn node(arguments: &[&str]) -> Result<Command> {
    tools::node()?;
    let chromium = tools::chromium()?;
    site::build()?;
    let mut install = command("npm", &["ci", "--no-audit", "--no-fund"]);
    run("installing the browser tests' packages", install.current_dir(folder()))?;
    let mut node = command("node", arguments);
    node.current_dir(folder()).env("FALSEWRIGHT_CHROMIUM", chromium);
    Ok(node)
}
