//! The project's own commands: `cargo xtask serve`, `build` and `test`.

mod bench;
mod browser;
mod finish;
mod measure;
mod process;
mod serve;
mod site;
mod test;
mod tools;
mod validation;
mod words;

use std::process::ExitCode;

const USAGE: &str = "\
cargo xtask serve [PORT]   install what is missing, build the page, serve it on 127.0.0.1 (8722 if no port is named)
cargo xtask build          the same static site in dist/, ready for any folder of any static host
cargo xtask test [STEP...] every test, or only the steps named; an unknown name lists them
cargo xtask validation     writes tests/VALIDATION.md, the table of checks against published values
cargo xtask words          writes static/language/en.json, the list of every text of the page
cargo xtask bench [NAME...] times the frame solver and the demo, or only what is named so; on a quiet machine
cargo xtask measure        what the page weighs and how fast it opens and follows a drag in Chromium; on a quiet machine";

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = arguments.iter().map(String::as_str).collect();
    let outcome = match words.as_slice() {
        ["serve"] => serve::run(None),
        ["serve", port] => serve::run(Some(port)),
        ["build"] => site::build().map(|()| true),
        ["bench", names @ ..] => bench::run_named(names).map(|()| true),
        ["measure"] => measure::run(),
        ["validation"] => validation::run().map(|()| true),
        ["words"] => words::run().map(|()| true),
        ["test", steps @ ..] => test::run(steps),
        _ => {
            eprintln!("{USAGE}");
            Ok(false)
        }
    };
    match outcome {
        Ok(true) => ExitCode::SUCCESS,
        Ok(false) => ExitCode::FAILURE,
        Err(error) => {
            eprintln!("error: {error:#}");
            ExitCode::FAILURE
        }
    }
}
