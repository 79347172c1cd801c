//! Any bytes as a file of frame cases, solved by every analysis.
#![no_main]

use falsewright_core::analysis::case::{ReadCase, read_cases};
use falsewright_core::analysis::{Bow, Dof, Effect, Imperfections, Removal, Solution, envelope};
use libfuzzer_sys::fuzz_target;

/// Frames larger than these take the fuzzer's time and show no more.
const NODES: usize = 40;
const MEMBERS: usize = 60;

fuzz_target!(|text: &str| {
    let Ok(cases) = read_cases(text) else { return };
    for case in cases.iter().take(4) {
        if let Ok(case) = case.read()
            && case.nodes.len() <= NODES
            && case.members.len() <= MEMBERS
        {
            solve(&case);
        }
    }
});

fn solve(case: &ReadCase) {
    let ReadCase { frame, loads, .. } = case;
    if let Ok(factorised) = frame.factorise() {
        let solutions = [factorised.solve(loads), factorised.solve_one_sided(loads).map(|found| found.solution)];
        let solutions: Vec<Solution> = solutions.into_iter().flatten().collect();
        envelope(&solutions);
        for solution in &solutions {
            for member in 0..frame.members.len() {
                let places = solution.turning_points(member);
                assert!(!places.is_empty());
                places.iter().for_each(|&x| _ = solution.moment_at(member, x));
            }
        }
        let removal = Removal { members: vec![0], supports: vec![(0, Dof::Uy)] };
        _ = factorised.without(&removal).and_then(|without| without.solve(loads));
        _ = factorised.influence(Effect::Moment { member: 0, x: 0.5 });
    }
    _ = frame.buckling_modes(loads, 2);
    let imperfections = Imperfections { sway: 0.005, bows: vec![Bow { member: 0, rise: 0.01 }] };
    _ = frame.solve_imperfect(loads, &imperfections);
}
