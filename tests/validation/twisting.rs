use super::{FOUR_FIGURES, Row, Rows};
use crate::twisting::Beam;
use falsewright_core::checks::lateral_torsional::Segment;

pub fn rows() -> Vec<Row> {
    let mut rows = Rows::new("Moments between restraints");
    braced(&mut rows);
    printed(&mut rows);
    rows.rows
}

fn eighths(from_m: f64, length_m: f64, moment: impl Fn(f64) -> f64) -> [f64; 7] {
    std::array::from_fn(|index| moment(from_m + length_m * (index + 1) as f64 / 8.0))
}

/// A part of a simple span of 1 m.
fn part(from_m: f64, to_m: f64, moment: impl Fn(f64) -> f64) -> Segment<'static> {
    let places = (0..=200).map(|i| from_m + (to_m - from_m) * f64::from(i) / 200.0);
    let greatest_knm = places.map(|x| moment(x).abs()).fold(0.0, f64::max);
    let length_m = to_m - from_m;
    Segment { length_m, greatest_knm, eighths_knm: eighths(from_m, length_m, moment), loads: &[] }
}

/// Two decimals are printed.
fn braced(rows: &mut Rows) {
    let uniform = |x: f64| x * (1.0 - x) / 2.0;
    let central = |x: f64| x.min(1.0 - x) / 2.0;
    let thirds = |x: f64| x.min(1.0 - x).min(1.0 / 3.0);
    rows.from("AISC Steel Construction Manual Table 3-1 (from memory)", "", 0.005);
    for (what, expected, got) in [
        ("Load at the middle, no bracing", 1.32, part(0.0, 1.0, central)),
        ("Load at the middle, braced there", 1.67, part(0.0, 0.5, central)),
        ("Loads at the thirds, no bracing", 1.14, part(0.0, 1.0, thirds)),
        ("Loads at the thirds, braced there, middle", 1.0, part(1.0 / 3.0, 2.0 / 3.0, thirds)),
        ("Uniform load, no bracing", 1.14, part(0.0, 1.0, uniform)),
        ("Uniform load, braced in the middle", 1.30, part(0.0, 0.5, uniform)),
        ("Uniform load, braced at the thirds, middle", 1.01, part(1.0 / 3.0, 2.0 / 3.0, uniform)),
        ("Uniform load, braced at the quarters, outer", 1.52, part(0.0, 0.25, uniform)),
        ("Uniform load, braced at the quarters, inner", 1.06, part(0.25, 0.5, uniform)),
    ] {
        rows.check(format!("Cb: {what}"), expected, got.c1_kirby_nethercot());
    }
    rows.from("Serna's formula worked on the beams of New Steel Construction, November 2013", "", FOUR_FIGURES);
    let of = |greatest_knm, [first, middle, third]: [f64; 3]| Segment {
        length_m: 1.0,
        greatest_knm,
        eighths_knm: [0.0, first, 0.0, middle, 0.0, third, 0.0],
        loads: &[],
    };
    rows.check("C1: −200 kNm at an end", 1.9957, of(200.0, [122.5, 105.0, -2.5]).c1_serna());
    rows.check("C1: 283.5 kNm in the span", 1.0964, of(283.5, [260.0, 280.0, 210.0]).c1_serna());
}

fn printed(rows: &mut Rows) {
    let loads: Vec<(f64, f64)> = (0..200).map(|i| ((f64::from(i) + 0.5) / 200.0, 1.0 / 200.0)).collect();
    let uniform = Segment { loads: &loads, ..part(0.0, 1.0, |x| x * (1.0 - x) / 2.0) }.shape(0.0);
    rows.from("NCCI SN003 Table 3.2; rounded there, and 1.13 elsewhere", "", 0.012);
    rows.check("C1 of a uniform load", 1.127, uniform.c1);
    rows.check("C2 of a uniform load, before 1.25 for loads at points", 0.454, uniform.c2 / 1.25);
    let (ub, even) = (super::steel::section("UB 305x165x40"), [1.0, 1.0]);
    let section = (&ub.properties()).into();
    let beam = |ends_knm, loads| Beam { length_m: 4.0, ends_knm, loads, height_mm: 0.0 };
    let closed = beam(even, vec![]).critical_factor(&section);
    rows.from("NCCI SN003 Tables 3.1 and 3.2; the energy solution of the tests", "", 0.02);
    for (psi, expected) in [(0.75, 1.14), (0.5, 1.31)] {
        rows.check(
            format!("C1 of end moments, ψ = {psi}"),
            expected,
            beam([1.0, psi], vec![]).critical_factor(&section) / closed,
        );
    }
    let central = beam([0.0, 0.0], vec![(2.0, 1.0)]);
    rows.check(
        "C1 of a load in the middle",
        1.348,
        central.critical_factor(&section) * central.greatest_knm() / closed,
    );
}
