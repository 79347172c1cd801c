//! Works out reference cases from their inputs with the functions that the tool itself uses.
//!
//! `cargo run -q --release -p falsewright-core --example reference -- FILE.json [--json]`
//!
//! The file is a list of `{id, topic, inputs, expected, tolerance, source}`.

#[path = "reference/actions.rs"]
mod actions;
#[path = "reference/beams.rs"]
mod beams;
#[path = "reference/case.rs"]
mod case;
#[path = "reference/ground.rs"]
mod ground;
#[path = "reference/props.rs"]
mod props;
#[path = "reference/site.rs"]
mod site;
#[path = "reference/steel.rs"]
mod steel;
#[path = "reference/timber.rs"]
mod timber;

use case::{Case, Got, Outcome};
use serde_json::{Map, Value, json};
use std::error::Error;
use std::process::ExitCode;

type Evaluate = fn(&Case) -> Option<Got>;

/// What evaluates a topic with these words; of several the longest.
fn topics() -> impl Iterator<Item = (&'static str, Evaluate)> {
    let all =
        [actions::TOPICS, beams::TOPICS, ground::TOPICS, props::TOPICS, site::TOPICS, steel::TOPICS, timber::TOPICS];
    all.into_iter().flatten().copied()
}

fn evaluate(case: &Case) -> Outcome {
    let topic = topics().filter(|(words, _)| case.topic.contains(words)).max_by_key(|(words, _)| words.len());
    match topic {
        None => Outcome::Unknown,
        Some((_, evaluate)) => evaluate(case).map_or(Outcome::Unusable, Outcome::Got),
    }
}

fn main() -> ExitCode {
    match run() {
        Ok(true) => ExitCode::SUCCESS,
        Ok(false) => ExitCode::FAILURE,
        Err(error) => {
            eprintln!("{error}");
            ExitCode::FAILURE
        }
    }
}

fn run() -> Result<bool, Box<dyn Error>> {
    let (options, files): (Vec<String>, Vec<String>) =
        std::env::args().skip(1).partition(|word| word.starts_with("--"));
    let [path] = files.as_slice() else { return Err("Name one file of reference cases.".into()) };
    let as_json = match options.as_slice() {
        [] => false,
        [option] if option == "--json" => true,
        _ => return Err("The only option is --json.".into()),
    };
    let text = std::fs::read_to_string(path).map_err(|error| format!("{path}: {error}"))?;
    let worked = work_out(&text).map_err(|error| format!("{path}: {error}"))?;
    if as_json {
        print_json(&worked)?;
        return Ok(true);
    }
    Ok(print_lines(&worked).failed == 0)
}

fn work_out(text: &str) -> Result<Vec<(Case, Outcome)>, Box<dyn Error>> {
    let value: Value = serde_json::from_str(text)?;
    let list = value.as_array().ok_or("there is no list of cases")?;
    let cases = list.iter().enumerate().map(|(index, value)| Case::read(index, value));
    Ok(cases.map(|case| (evaluate(&case), case)).map(|(outcome, case)| (case, outcome)).collect())
}

/// How many cases pass, fail, or have a topic that is not known.
#[derive(Clone, Copy, Debug, Default)]
pub struct Counts {
    /// All values within tolerance.
    pub passed: usize,
    /// A value outside, or inputs that cannot be used.
    pub failed: usize,
    /// Not worked out.
    pub unknown: usize,
}

/// Counts the cases of a file.
///
/// # Errors
/// Text that is not a list in JSON.
pub fn count(text: &str) -> Result<Counts, Box<dyn Error>> {
    let mut counts = Counts::default();
    for (case, outcome) in work_out(text)? {
        counts.add(&outcome, &case);
    }
    Ok(counts)
}

impl Counts {
    fn add(&mut self, outcome: &Outcome, case: &Case) {
        *match outcome {
            Outcome::Unknown => &mut self.unknown,
            Outcome::Got(got) if got.passes(case) => &mut self.passed,
            Outcome::Got(_) | Outcome::Unusable => &mut self.failed,
        } += 1;
    }
}

fn print_json(worked: &[(Case, Outcome)]) -> Result<(), serde_json::Error> {
    let mut all = Map::new();
    for (case, outcome) in worked {
        let value = match outcome {
            Outcome::Got(got) => got.with_keys_of(case),
            Outcome::Unknown => json!({ "unknown": case.topic }),
            Outcome::Unusable => json!({ "unusable": case.topic }),
        };
        all.insert(case.id.clone(), value);
    }
    println!("{}", serde_json::to_string_pretty(&all)?);
    Ok(())
}

/// Prints every value of every case, and how many cases pass.
fn print_lines(worked: &[(Case, Outcome)]) -> Counts {
    let mut counts = Counts::default();
    for (case, outcome) in worked {
        counts.add(outcome, case);
        match outcome {
            Outcome::Unknown => println!("{:24} unknown topic: {}", case.id, case.topic),
            Outcome::Unusable => println!("{:24} FAIL: inputs are missing or cannot be used", case.id),
            Outcome::Got(got) => {
                for line in got.compare(case) {
                    println!("{:24} {line}", case.id);
                }
            }
        }
    }
    println!("{} cases: {} pass, {} fail, {} unknown", worked.len(), counts.passed, counts.failed, counts.unknown);
    counts
}
