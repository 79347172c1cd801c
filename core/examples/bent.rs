//! The bent of the benchmarks: `bent LEGS` prints it as a file of frame cases, `bent LEGS time` prints as JSON the times
//! in seconds of one factorisation, solution and search for the extremes of all members: least and median of many.

#[allow(dead_code)]
#[path = "../benches/bent/mod.rs"]
mod bent;

use bent::Bent;
use falsewright_core::analysis::{Frame, LoadCase};
use serde_json::{Value, json};
use std::process::ExitCode;
use std::time::Instant;

const RUNS: usize = 101;

/// Modulus that stiffnesses are divided by where a file asks for one, kPa.
const MODULUS: f64 = 1e6;

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let legs = arguments.first().and_then(|legs| legs.parse::<usize>().ok()).filter(|legs| *legs >= 6);
    let Some(legs) = legs else {
        eprintln!("name the number of legs, 6 or more");
        return ExitCode::FAILURE;
    };
    let bent = Bent::new(legs);
    match arguments.get(1).map(String::as_str) {
        None => println!("{}", case(&bent)),
        Some("time") => println!("{}", time(&bent.frame, &bent.loads)),
        Some(other) => {
            eprintln!("{other} is not known; leave it out or write time");
            return ExitCode::FAILURE;
        }
    }
    ExitCode::SUCCESS
}

fn time(frame: &Frame, loads: &LoadCase) -> Value {
    bent::warm_heap();
    let mut times: Vec<[f64; 3]> = (0..RUNS)
        .map(|_| {
            let start = Instant::now();
            let factorised = frame.factorise().expect("the bent stands");
            let factorisation = start.elapsed();
            let solution = factorised.solve(loads).expect("the bent bears its loads");
            let solved = start.elapsed();
            std::hint::black_box(solution.all_extremes());
            [factorisation, solved, start.elapsed()].map(|time| time.as_secs_f64())
        })
        .collect();
    times.sort_by(|a, b| a[2].total_cmp(&b[2]));
    let (least, median) = (times[0], times[RUNS / 2]);
    let parts = |[factorised, solved, all]: [f64; 3]| json!({ "factorise": factorised, "solve": solved - factorised, "extremes": all - solved, "all": all });
    json!({ "least": parts(least), "median": parts(median) })
}

fn case(bent: &Bent) -> Value {
    let Bent { frame, loads, .. } = bent;
    let node = |index: usize| format!("n{index}");
    let nodes = frame.nodes.iter().enumerate().map(|(index, at)| json!({ "id": node(index), "x": at.x, "y": at.y }));
    let members = frame.members.iter().enumerate().map(|(index, member)| {
        json!({
            "id": format!("m{index}"), "i": node(member.i), "j": node(member.j),
            "E": MODULUS, "A": member.ea / MODULUS, "I": member.ei / MODULUS,
            "release_i": member.release_i, "release_j": member.release_j,
        })
    });
    let supports = frame
        .supports
        .iter()
        .map(|support| json!({ "node": node(support.node), "ux": support.ux, "uy": support.uy, "rz": support.rz }));
    let nodal = loads.nodal.iter().map(|load| json!({ "type": "node", "node": node(load.node), "Fx": load.fx }));
    let lines = loads.distributed.iter().map(|load| {
        json!({
            "type": "dist", "member": format!("m{}", load.member), "dir": "Y",
            "w1": load.w1, "w2": load.w2, "a": load.a, "b": load.b,
        })
    });
    let case = json!({
        "id": "bent", "analysis": "linear",
        "nodes": nodes.collect::<Vec<_>>(), "members": members.collect::<Vec<_>>(),
        "supports": supports.collect::<Vec<_>>(), "springs": [], "loads": nodal.chain(lines).collect::<Vec<_>>(),
    });
    json!({ "cases": [case] })
}
