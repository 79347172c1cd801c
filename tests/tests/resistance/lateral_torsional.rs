//! Critical moments of the true moment diagram against published factors and an independent energy solution.

use falsewright_core::catalogue::standard_section;
use falsewright_core::checks::lateral_torsional::{MomentShape, Segment, Twisting, critical_moment_knm};
use falsewright_tests::assert_close;
use falsewright_tests::twisting::Beam;
use proptest::prelude::*;

/// Section and its height above the shear centre, mm.
fn section(name: &str) -> (Twisting, f64) {
    let section = standard_section(name).unwrap_or_else(|| panic!("no {name}"));
    let height = match section {
        falsewright_core::catalogue::Section::I { h_mm, .. } => h_mm / 2.0,
        other => panic!("{other:?}"),
    };
    ((&section.properties()).into(), height)
}

fn by_factors(beam: &Beam, section: &Twisting) -> f64 {
    let segment = Segment {
        length_m: beam.length_m,
        greatest_knm: beam.greatest_knm(),
        eighths_knm: std::array::from_fn(|index| beam.moment_knm(beam.length_m * (index + 1) as f64 / 8.0)),
        loads: &beam.loads,
    };
    critical_moment_knm(*section, segment.shape(beam.height_mm), beam.length_m)
}

fn by_energy(beam: &Beam, section: &Twisting) -> f64 {
    beam.critical_factor(section) * beam.greatest_knm()
}

fn uniform(length_m: f64, ends_knm: f64) -> Beam {
    let loads = (0..40).map(|i| (length_m * (f64::from(i) + 0.5) / 40.0, length_m / 40.0)).collect();
    Beam { length_m, ends_knm: [ends_knm; 2], loads, height_mm: 0.0 }
}

/// The energy solution gives the closed form of an even moment, and the factors of NCCI SN003 Tables 3.1 and 3.2 for
/// loads between simple ends. 2 %: SN003 gives rounded approximations, which other sources put up to 1.2 % apart.
#[test]
fn energy_agrees_with_published_factors() {
    let (ub, height_mm) = section("UB 305x165x40");
    let even = Beam { length_m: 4.0, ends_knm: [1.0, 1.0], loads: vec![], height_mm: 0.0 };
    let closed = critical_moment_knm(ub, MomentShape::end_moments(1.0), 4.0);
    assert_close("even moment", by_energy(&even, &ub), closed, 1e-3);
    for (psi, c1) in [(0.75, 1.14), (0.5, 1.31)] {
        let beam = Beam { ends_knm: [1.0, psi], ..even.clone() };
        assert_close("end moments", by_energy(&beam, &ub) / closed, c1, 0.02);
    }
    let central = Beam { ends_knm: [0.0; 2], loads: vec![(2.0, 1.0)], ..even.clone() };
    for (beam, c1, shape) in [
        (uniform(4.0, 0.0), 1.127, MomentShape::uniform_load(height_mm)),
        (uniform(4.0, -4.0 * 4.0 / 12.0), 2.578, MomentShape::uniform_load_fixed_ends(height_mm)),
        (central, 1.348, MomentShape::central_load(height_mm)),
    ] {
        assert_close("C1", by_energy(&beam, &ub) / closed, c1, 0.02);
        let raised = Beam { height_mm, ..beam };
        // SN003 is up to 8 % on the safe side of the energy with a load on the flange.
        assert_close("Mcr", critical_moment_knm(ub, shape, 4.0), by_energy(&raised, &ub), 0.08);
    }
}

/// Factors of the diagram are on the safe side of SN003, within 1 % for a uniform load, and of the energy.
#[test]
fn factors_of_a_diagram_are_safe() {
    let (ub, height_mm) = section("UB 305x165x40");
    let even = Beam { length_m: 4.0, ends_knm: [1.0, 1.0], loads: vec![], height_mm: 0.0 };
    let closed = critical_moment_knm(ub, MomentShape::end_moments(1.0), 4.0);
    let printed = [1.0, 1.14, 1.31, 1.52, 1.77, 2.05, 2.33, 2.57];
    for (step, published) in printed.into_iter().enumerate() {
        let beam = Beam { ends_knm: [1.0, 1.0 - 0.25 * step as f64], ..even.clone() };
        let c1 = by_factors(&beam, &ub) / closed;
        assert!(c1 <= published * 1.005 && c1 >= published * 0.85, "{step}: {c1} against {published}");
    }
    let c1 = by_factors(&uniform(4.0, 0.0), &ub) / closed;
    assert_close("uniform load", c1, 1.127, 0.01);
    for raised in [0.0, height_mm] {
        let beam = Beam { ends_knm: [-0.5; 2], loads: vec![(2.0, 1.0)], height_mm: raised, ..even.clone() };
        assert!(by_factors(&beam, &ub) <= by_energy(&beam, &ub), "{raised}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, ..ProptestConfig::default() })]

    /// Any end moments and loads. The rules are approximate: of 100 000 beams 99 % were at most 0.1 %, 99.9 % at most 1.1 %
    /// and all at most 5.1 % above the energy. Where the moment is great near an end only they are far on the safe side,
    /// down to 0.20 of it; elsewhere all were above 0.52.
    #[test]
    fn never_far_above_the_energy(
        which in 0..3usize, length_m in 1.0..9.0f64, ends in prop::array::uniform2(-2.0..1.0f64),
        loads in prop::collection::vec((0.05..0.95f64, 0.0..1.0f64), 0..4), top in any::<bool>(),
    ) {
        let (section, height) = section(["UB 305x165x40", "IPE 330", "HE 240 B"][which]);
        let loads = loads.into_iter().map(|(part, kn)| (part * length_m, kn)).collect();
        let ends_knm = ends.map(|end| end * length_m / 4.0);
        let beam = Beam { length_m, ends_knm, loads, height_mm: if top { height } else { 0.0 } };
        prop_assume!(beam.greatest_knm() > 1e-3);
        let (factors, energy) = (by_factors(&beam, &section), by_energy(&beam, &section));
        prop_assert!(factors <= 1.06 * energy, "{factors} above {energy}");
        let within = (1..8).map(|eighth| beam.moment_knm(length_m * f64::from(eighth) / 8.0).abs()).fold(0.0, f64::max);
        let near_an_end = within < 0.5 * beam.greatest_knm();
        let least = if near_an_end { 0.15 } else { 0.5 };
        prop_assert!(factors >= least * energy, "{factors} far below {energy}");
    }

    /// Load higher up, a longer stretch or more load never makes it safer.
    #[test]
    fn monotonic(length_m in 1.0..9.0f64, at in 0.05..0.95f64, longer in 0.0..2.0f64, higher in 0.0..100.0f64) {
        let (ub, height) = section("UB 305x165x40");
        let beam = |length_m: f64, height_mm| Beam {
            length_m, ends_knm: [0.0; 2], loads: vec![(at * length_m, 1.0)], height_mm,
        };
        let base = by_factors(&beam(length_m, height), &ub);
        prop_assert!(by_factors(&beam(length_m, height + higher), &ub) <= base + 1e-9);
        prop_assert!(by_factors(&beam(length_m + longer, height), &ub) <= base + 1e-9);
    }
}
