//! The frame solver against cases solved by independent libraries or closed forms: see `data/frames/README.md`.

use falsewright_core::analysis::Solution;
use falsewright_core::analysis::case::{Analysis, ReadCase};
use falsewright_tests::frame_case::{Expected, ExpectedExtreme, ExpectedMember, index, length, read};

const LINEAR: f64 = 1e-6;
/// Deflections that the libraries sampled.
const SAMPLED: f64 = 1e-5;
const BUCKLING: f64 = 1e-3;
const SECOND_ORDER: f64 = 1e-3;
/// Part of that tolerance within which a sampled deflection shares the extreme: the places are where samples were.
const FLAT: f64 = 0.05;
/// Places of extremes, in m: the file rounds them to 1e-6.
const PLACE: f64 = 2e-6;

/// One test per case, and one that no case of the file is left out.
macro_rules! cases {
    ($($id:ident)*) => {
        $(#[test]
        #[allow(non_snake_case)]
        fn $id() {
            check(stringify!($id));
        })*

        #[test]
        fn every_case_of_the_file_is_checked() {
            let listed = [$(stringify!($id)),*];
            let in_file: Vec<String> = read("open.json").into_iter().map(|case| case.case.id).collect();
            assert_eq!(listed.as_slice(), in_file.as_slice());
        }
    };
}

cases! {
    SB01 SB03 SB05 SB07 SB08 CB01 CB02 CB05 CB07 CB08 CB10 VE02 VE04 SP01 SP03 SP05 HI01 HI03 SO01 SO02 SO04 SO05
    FR01 FR02 FR03 FR05 FB02 FB03 FB04 FB06 BK01 BK02 BK03 BK05 BK09 PD01 PD02 PD04 PD05
}

fn check(id: &str) {
    let found = read("open.json").into_iter().find(|found| found.case.id == id).expect("the case is in the file");
    let (case, expected) = (found.case.read().expect("a sound case"), found.expected);
    let mut failures = Failures::default();
    match found.case.analysis {
        Analysis::Linear => {
            let solution = case.frame.factorise().expect("the frame is sound").solve(&case.loads).expect("solved");
            check_nodes(&case, &expected, &solution, LINEAR, &mut failures);
            check_linear_members(&case, &expected, &solution, &mut failures);
        }
        Analysis::LinearBuckling => check_buckling(&case, &expected, &mut failures),
        Analysis::SecondOrder => {
            let solution = case.frame.solve_second_order(&case.loads).expect("solved");
            check_nodes(&case, &expected, &solution, SECOND_ORDER, &mut failures);
            check_second_order_members(&case, &expected, &solution, &mut failures);
        }
    }
    assert!(failures.0.is_empty(), "{id}, {}:\n{}", found.case.title, failures.0.join("\n"));
}

/// Everything that is not as expected.
#[derive(Default)]
struct Failures(Vec<String>);

impl Failures {
    fn compare(&mut self, what: &str, actual: f64, expected: f64, tolerance: f64) {
        let right = (actual - expected).abs() <= tolerance;
        if !right {
            self.0.push(format!("{what}: got {actual}, expected {expected} ± {tolerance:.1e}"));
        }
    }
}

fn greatest(values: impl Iterator<Item = f64>) -> f64 {
    values.fold(0.0, |most, value| most.max(value.abs()))
}

fn check_nodes(case: &ReadCase, expected: &Expected, solution: &Solution, tolerance: f64, failures: &mut Failures) {
    let (reactions, moves) = (&expected.reactions, &expected.displacements);
    assert!(!reactions.is_empty() && !moves.is_empty());
    let force = tolerance * greatest(reactions.values().flat_map(|reaction| [reaction.Rx, reaction.Ry]));
    let moments = expected.members.values().flat_map(|member| {
        let extremes = [&member.M_max, &member.M_min].into_iter().flatten().map(|extreme| extreme.value);
        extremes.chain([member.M_max_sampled, member.M_min_sampled].into_iter().flatten()).collect::<Vec<_>>()
    });
    let moment = tolerance * greatest(moments);
    for (id, expected) in reactions {
        let reaction = solution.reaction(index(&case.nodes, id));
        failures.compare(&format!("{id} Rx"), reaction.fx, expected.Rx, force);
        failures.compare(&format!("{id} Ry"), reaction.fy, expected.Ry, force);
        failures.compare(&format!("{id} Mz"), reaction.mz, expected.Mz, moment);
    }
    let shift = tolerance * greatest(moves.values().flat_map(|moved| [moved.ux, moved.uy]));
    let shift = shift.max(1e-15);
    let turn = tolerance * greatest(moves.values().map(|moved| moved.rz));
    for (id, expected) in moves {
        let moved = solution.displacement(index(&case.nodes, id));
        failures.compare(&format!("{id} ux"), moved.ux, expected.ux, shift);
        failures.compare(&format!("{id} uy"), moved.uy, expected.uy, shift);
        failures.compare(&format!("{id} rz"), moved.rz, expected.rz, turn);
    }
}

fn check_linear_members(case: &ReadCase, expected: &Expected, solution: &Solution, failures: &mut Failures) {
    let members = &expected.members;
    assert!(!members.is_empty());
    let of_kind = |pick: fn(&ExpectedMember) -> [&Option<ExpectedExtreme>; 2]| {
        greatest(members.values().flat_map(|member| pick(member).into_iter().flatten().map(|extreme| extreme.value)))
    };
    let moment = LINEAR * of_kind(|member| [&member.M_max, &member.M_min]);
    let shear = LINEAR * of_kind(|member| [&member.V_max, &member.V_min]);
    let deflection = SAMPLED * of_kind(|member| [&member.v_max, &member.v_min]);
    let axial = LINEAR * greatest(members.values().flat_map(|member| [member.N_i, member.N_j]).flatten());
    let axial = axial.max(1e-9);

    for (id, expected) in members {
        let member = index(&case.members, id);
        let length = length(case, member);
        let extremes = solution.extremes(member);
        for (name, actual, expected, tolerance) in [
            ("M_max", extremes.moment_max, &expected.M_max, moment),
            ("M_min", extremes.moment_min, &expected.M_min, moment),
            ("V_max", extremes.shear_max, &expected.V_max, shear),
            ("V_min", extremes.shear_min, &expected.V_min, shear),
            ("v_max", extremes.deflection_max, &expected.v_max, deflection),
            ("v_min", extremes.deflection_min, &expected.v_min, deflection),
        ] {
            let expected = expected.as_ref().unwrap_or_else(|| panic!("{id} has no {name}"));
            let what = format!("{id} {name}");
            failures.compare(&what, actual.0, expected.value, tolerance);
            let ties = |x: f64| {
                name.starts_with('v') && (solution.deflection_at(member, x) - actual.0).abs() < FLAT * deflection
            };
            if !expected.x.iter().copied().any(ties) {
                check_place(&what, actual.1, expected, failures);
            }
        }
        let chord = expected.v_rel_chord_absmax.expect("given for every member");
        failures.compare(&format!("{id} v from chord"), extremes.deflection_from_chord.0, chord, deflection);
        failures.compare(&format!("{id} N_i"), solution.axial_at(member, 0.0), expected.N_i.expect("given"), axial);
        failures.compare(&format!("{id} N_j"), solution.axial_at(member, length), expected.N_j.expect("given"), axial);
    }
}

fn check_place(what: &str, actual: f64, expected: &ExpectedExtreme, failures: &mut Failures) {
    let near = expected.x.iter().any(|x| (x - actual).abs() <= PLACE);
    let inside = expected.flat
        && expected.x.iter().any(|&x| x <= actual + PLACE)
        && expected.x.iter().any(|&x| x >= actual - PLACE);
    if !(near || inside) {
        failures.0.push(format!("{what}: at {actual}, expected at {:?}", expected.x));
    }
}

fn check_second_order_members(case: &ReadCase, expected: &Expected, solution: &Solution, failures: &mut Failures) {
    let members = &expected.members;
    let sampled = members.values().flat_map(|member| [member.M_max_sampled, member.M_min_sampled]).flatten();
    let moment = SECOND_ORDER * greatest(sampled);
    let axial = SECOND_ORDER * greatest(members.values().filter_map(|member| member.N_i));
    for (id, expected) in members {
        let member = index(&case.members, id);
        let length = length(case, member);
        let samples = expected.samples.expect("given for second order");
        let moments: Vec<f64> = (0..samples)
            .map(|sample| solution.moment_at(member, length * sample as f64 / (samples - 1) as f64))
            .collect();
        let most = moments.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let least = moments.iter().copied().fold(f64::INFINITY, f64::min);
        failures.compare(&format!("{id} M_max"), most, expected.M_max_sampled.expect("given"), moment);
        failures.compare(&format!("{id} M_min"), least, expected.M_min_sampled.expect("given"), moment);
        failures.compare(&format!("{id} M_i"), moments[0], expected.M_i.expect("given"), moment);
        failures.compare(&format!("{id} M_j"), moments[samples - 1], expected.M_j.expect("given"), moment);
        failures.compare(&format!("{id} N_i"), solution.axial_at(member, 0.0), expected.N_i.expect("given"), axial);
    }
}

fn check_buckling(case: &ReadCase, expected: &Expected, failures: &mut Failures) {
    let modes = case.frame.buckling_modes(&case.loads, 2).expect("solved");
    let first = expected.lambda1.expect("given for buckling");
    let ratio = expected.mode2_over_mode1.expect("given for buckling");
    failures.compare("lowest factor", modes[0].factor, first, BUCKLING * first);
    failures.compare("second by first", modes[1].factor / modes[0].factor, ratio, BUCKLING * ratio);
}
