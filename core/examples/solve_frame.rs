//! Solves the frame cases of a file and prints what it finds as JSON: `{"<case id>": {…}, …}`.
//!
//! `cargo run --release -p falsewright-core --example solve_frame -- FILE`; `-` reads the standard input. The format of the
//! file is told in `falsewright_core::analysis::case`. A case that cannot be solved gives `{"error": "…"}`.

use falsewright_core::analysis::case::{Analysis, Case, CaseError, ReadCase, read_cases};
use falsewright_core::analysis::{FrameError, Solution};
use serde_json::{Map, Value, json};
use std::io::Read;
use std::process::ExitCode;

/// Stations at which moments of second order are sampled.
const SAMPLES: usize = 33;

/// Values within this part of the greatest value of their kind share an extreme.
const TIE: f64 = 1e-10;

/// Places closer than this part of the length are one, and how far before a jump its other side is taken.
const NEAR: f64 = 1e-4;
const BEFORE: f64 = 1e-12;

fn main() -> ExitCode {
    let Some(path) = std::env::args().nth(1) else {
        eprintln!("name a file of frame cases, or - for the standard input");
        return ExitCode::FAILURE;
    };
    let mut text = String::new();
    let read = match path.as_str() {
        "-" => std::io::stdin().read_to_string(&mut text).map(|_| ()),
        path => std::fs::read_to_string(path).map(|read| text = read),
    };
    if let Err(error) = read {
        eprintln!("{path}: {error}");
        return ExitCode::FAILURE;
    }
    match read_cases(&text) {
        Ok(cases) => {
            let answers = cases.iter().map(|case| (case.id.clone(), answer(case))).collect();
            println!("{}", Value::Object(answers));
            ExitCode::SUCCESS
        }
        Err(error) => {
            eprintln!("{path}: {error}");
            ExitCode::FAILURE
        }
    }
}

fn answer(case: &Case) -> Value {
    solve(case).unwrap_or_else(|error| json!({ "error": error.to_string() }))
}

fn solve(case: &Case) -> Result<Value, CaseError> {
    let read = case.read()?;
    let answer = match case.analysis {
        Analysis::Linear => linear(&read),
        Analysis::LinearBuckling => buckling(&read),
        Analysis::SecondOrder => second_order(&read),
    };
    answer.map_err(|error| case.error(error))
}

fn linear(case: &ReadCase) -> Result<Value, FrameError> {
    let solution = case.frame.factorise()?.solve_one_sided(&case.loads)?.solution;
    let mut answer = nodes(case, &solution);
    let extremes = solution.all_extremes();
    let greatest = |pick: fn(&falsewright_core::analysis::Extremes) -> [f64; 2]| {
        extremes.iter().flat_map(pick).fold(0.0, |most: f64, value| most.max(value.abs()))
    };
    let moment = greatest(|e| [e.moment_max.0, e.moment_min.0]);
    let shear = greatest(|e| [e.shear_max.0, e.shear_min.0]);
    let deflection = greatest(|e| [e.deflection_max.0, e.deflection_min.0]);
    let members = case.members.iter().zip(&extremes).enumerate().map(|(member, (id, e))| {
        let places = solution.turning_points(member);
        let length = places.last().copied().unwrap_or(0.0);
        let of_moment = |x: f64| solution.moment_at(member, x);
        let of_shear = |x: f64| solution.shear_at(member, x);
        let of_deflection = |x: f64| solution.deflection_at(member, x);
        let answer = json!({
            "M_max": extreme(e.moment_max, &places, TIE * moment, of_moment),
            "M_min": extreme(e.moment_min, &places, TIE * moment, of_moment),
            "V_max": extreme(e.shear_max, &places, TIE * shear, of_shear),
            "V_min": extreme(e.shear_min, &places, TIE * shear, of_shear),
            "v_max": extreme(e.deflection_max, &places, TIE * deflection, of_deflection),
            "v_min": extreme(e.deflection_min, &places, TIE * deflection, of_deflection),
            "v_rel_chord_absmax": e.deflection_from_chord.0,
            "N_i": solution.axial_at(member, 0.0),
            "N_j": solution.axial_at(member, length),
        });
        (id.clone(), answer)
    });
    answer.insert("members".into(), Value::Object(members.collect()));
    Ok(Value::Object(answer))
}

/// An extreme with all places that share it.
fn extreme((value, at_x): (f64, f64), places: &[f64], tie: f64, function: impl Fn(f64) -> f64) -> Value {
    let length = places.last().copied().unwrap_or(0.0);
    let shares = |x: f64| (function(x) - value).abs() <= tie;
    // At a jump either side counts.
    let shared = |&x: &f64| (x - at_x).abs() > NEAR * length && (shares(x) || shares(x - BEFORE * length));
    let mut at: Vec<f64> = places.iter().copied().filter(shared).collect();
    at.push(at_x);
    at.sort_by(f64::total_cmp);
    at.dedup_by(|a, b| (*a - *b).abs() <= NEAR * length);
    let flat = at.len() > 1
        && at.windows(2).all(|pair| (1..8).all(|n| shares(pair[0] + (pair[1] - pair[0]) * f64::from(n) / 8.0)));
    if flat {
        json!({ "value": value, "x": [at[0], at[at.len() - 1]], "flat": true })
    } else {
        json!({ "value": value, "x": at })
    }
}

fn second_order(case: &ReadCase) -> Result<Value, FrameError> {
    let solution = case.frame.solve_second_order(&case.loads)?;
    let mut answer = nodes(case, &solution);
    let members = case.members.iter().enumerate().map(|(member, id)| {
        let length = solution.turning_points(member).last().copied().unwrap_or(0.0);
        let moments: Vec<(f64, f64)> = (0..SAMPLES)
            .map(|sample| length * sample as f64 / (SAMPLES - 1) as f64)
            .map(|x| (solution.moment_at(member, x), x))
            .collect();
        let most = moments.iter().copied().fold((f64::NEG_INFINITY, 0.0), |a, b| if b.0 > a.0 { b } else { a });
        let least = moments.iter().copied().fold((f64::INFINITY, 0.0), |a, b| if b.0 < a.0 { b } else { a });
        let answer = json!({
            "M_max_sampled": most.0,
            "M_min_sampled": least.0,
            "x_max": most.1,
            "x_min": least.1,
            "samples": SAMPLES,
            "M_i": moments[0].0,
            "M_j": moments[SAMPLES - 1].0,
            "N_i": solution.axial_at(member, 0.0),
        });
        (id.clone(), answer)
    });
    answer.insert("members".into(), Value::Object(members.collect()));
    Ok(Value::Object(answer))
}

fn buckling(case: &ReadCase) -> Result<Value, FrameError> {
    let solution = case.frame.factorise()?.solve(&case.loads)?;
    let modes = case.frame.buckling_modes(&case.loads, 2)?;
    let axial = |(member, id): (usize, &String)| (id.clone(), json!(solution.axial_at(member, 0.0)));
    Ok(json!({
        "lambda1": modes[0].factor,
        "mode2_over_mode1": modes[1].factor / modes[0].factor,
        "N_unit": Value::Object(case.members.iter().enumerate().map(axial).collect()),
    }))
}

/// Movements of all nodes, and reactions where anything holds one.
fn nodes(case: &ReadCase, solution: &Solution) -> Map<String, Value> {
    let frame = &case.frame;
    let supported = frame.supports.iter().map(|support| support.node);
    let sprung = frame.springs.iter().map(|spring| spring.node);
    let touched = frame.contacts.iter().map(|contact| contact.node);
    let held: std::collections::BTreeSet<usize> = supported.chain(sprung).chain(touched).collect();
    let reaction = |&node: &usize| {
        let reaction = solution.reaction(node);
        (case.nodes[node].clone(), json!({ "Rx": reaction.fx, "Ry": reaction.fy, "Mz": reaction.mz }))
    };
    let displacement = |(node, id): (usize, &String)| {
        let moved = solution.displacement(node);
        (id.clone(), json!({ "ux": moved.ux, "uy": moved.uy, "rz": moved.rz }))
    };
    let mut answer = Map::new();
    answer.insert("reactions".into(), Value::Object(held.iter().map(reaction).collect()));
    answer.insert("displacements".into(), Value::Object(case.nodes.iter().enumerate().map(displacement).collect()));
    answer
}
