//! Prints the results of a scheme file as one JSON object.
//!
//! `cargo run -q --release -p falsewright-core --example scheme -- FILE.json`

use falsewright_core::catalogue::Catalogue;
use falsewright_core::hold_points::hold_points;
use falsewright_core::{design, scheme};
use serde_json::json;
use std::error::Error;
use std::process::ExitCode;

fn main() -> ExitCode {
    match run() {
        Ok(text) => {
            println!("{text}");
            ExitCode::SUCCESS
        }
        Err(error) => {
            eprintln!("{error}");
            ExitCode::FAILURE
        }
    }
}

fn run() -> Result<String, Box<dyn Error>> {
    let path = std::env::args().nth(1).ok_or("Name one scheme file.")?;
    let bytes = std::fs::read(&path).map_err(|error| format!("{path}: {error}"))?;
    let scheme = scheme::read_bytes(&bytes)?;
    let design = design(&scheme, &Catalogue::generic())?;
    let results = &design.results;
    Ok(serde_json::to_string_pretty(&json!({
        "checks": results.checks,
        "ties": results.ties,
        "legs": results.legs,
        "ledger": results.ledger,
        "striking": results.striking,
        "moved": results.moved,
        "quantities": design.quantities,
        "reuse": design.reuse,
        "findings": results.findings,
        "hold_points": hold_points(&scheme, &design),
    }))?)
}
