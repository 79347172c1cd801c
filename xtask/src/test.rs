//! Every test of the project, step by step.

mod steps;
mod tally;

use anyhow::Result;
use std::time::Instant;
use tally::Tally;

/// Runs the steps named, or all, and says at the end how many tests passed and failed.
pub fn run(names: &[&str]) -> Result<bool> {
    let steps = steps::all();
    if let Some(unknown) = names.iter().find(|name| steps.iter().all(|step| step.name != **name)) {
        let known: Vec<&str> = steps.iter().map(|step| step.name).collect();
        anyhow::bail!("no step is called {unknown:?}; there are {}", known.join(", "));
    }
    let mut total = Tally::default();
    let mut summary = Vec::new();
    for step in steps.iter().filter(|step| names.is_empty() || names.contains(&step.name)) {
        eprintln!("\n==> {}: {}", step.name, step.purpose);
        let start = Instant::now();
        let tally = (step.run)().unwrap_or_else(|error| {
            eprintln!("error: {error:#}");
            Tally { passed: 0, failed: 1 }
        });
        total += tally;
        summary.push(format!("{:8} {tally} in {:.0} s", step.name, start.elapsed().as_secs_f64()));
    }
    println!("\n{}\n\n{total}", summary.join("\n"));
    Ok(total.failed == 0)
}
