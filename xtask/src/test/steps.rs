use super::tally::Tally;
use crate::process::{cargo, output, target_dir};
use crate::{browser, finish, tools};
use anyhow::{Context, Result};
use std::fs;
use std::io::{BufRead, BufReader};
use std::process::{Command, Stdio};

/// One line of the summary.
pub struct Step {
    pub name: &'static str,
    pub purpose: &'static str,
    pub run: fn() -> Result<Tally>,
}

/// In the order in which they run: the quick ones first.
pub fn all() -> Vec<Step> {
    vec![
        Step { name: "format", purpose: "formatting", run: format },
        Step { name: "clippy", purpose: "Clippy with warnings as errors, native and for the browser", run: clippy },
        Step { name: "docs", purpose: "documentation with warnings as errors", run: docs },
        Step { name: "native", purpose: "unit, property and validation tests", run: native },
        Step { name: "wasm", purpose: "the same numbers in WebAssembly as natively", run: wasm },
        Step { name: "browser", purpose: "the page in a real browser", run: browser },
    ]
}

fn format() -> Result<Tally> {
    one(&mut cargo(&["fmt", "--all", "--check"]))
}

fn clippy() -> Result<Tally> {
    tools::wasm_target()?;
    let mut tally = one(&mut cargo(&["clippy", "--workspace", "--all-targets", "--", "-D", "warnings"]))?;
    let packages = ["-p", "falsewright-core", "-p", "falsewright-app", "--target", tools::WASM];
    tally += one(cargo(&["clippy"]).args(packages).args(["--", "-D", "warnings"]))?;
    Ok(tally)
}

fn docs() -> Result<Tally> {
    one(cargo(&["doc", "--workspace", "--no-deps"]).env("RUSTDOCFLAGS", "-D warnings"))
}

fn native() -> Result<Tally> {
    counted(&mut cargo(&["test", "--workspace", "--no-fail-fast"]))
}

/// Computes the demo natively and lets the same code in WebAssembly compare.
fn wasm() -> Result<Tally> {
    tools::node()?;
    tools::wasm_target()?;
    let runner = tools::wasm_bindgen("wasm-bindgen-test-runner")?;
    let mut compute = cargo(&["run", "--quiet", "-p", "falsewright-core", "--example", "scheme", "--", DEMO]);
    let native = output(&mut compute).context("the example `scheme` does not compute the demo")?;
    let file = target_dir().join("native.json");
    fs::write(&file, native)?;
    let mut test = cargo(&["test", "-p", "falsewright-tests", "--test", "wasm", "--target", tools::WASM]);
    test.env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUNNER", runner).env("FALSEWRIGHT_NATIVE_RESULTS", file);
    counted(&mut test)
}

const DEMO: &str = "core/src/scheme/heron_lane.json";

fn browser() -> Result<Tally> {
    let mut test = browser::node(&["--test", "--test-reporter=spec"])?;
    let files = finish::files(&browser::folder())?;
    counted(test.args(files.iter().filter(|file| file.ends_with(".test.mjs") && !file.starts_with("node_modules/"))))
}

/// A command that is one test.
fn one(command: &mut Command) -> Result<Tally> {
    let status = command.status().with_context(|| format!("cannot start {:?}", command.get_program()))?;
    Ok(Tally::one(status.success()))
}

/// A test runner: its output is shown and counted.
fn counted(command: &mut Command) -> Result<Tally> {
    let mut child =
        command.stdout(Stdio::piped()).spawn().with_context(|| format!("cannot start {:?}", command.get_program()))?;
    let mut tally = Tally::default();
    for line in child.stdout.take().map(BufReader::new).into_iter().flat_map(BufRead::lines) {
        let line = line?;
        println!("{line}");
        tally += Tally::of_line(&line);
    }
    Ok(tally.judged(child.wait()?.success()))
}
