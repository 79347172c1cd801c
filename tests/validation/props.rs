use super::{FOUR_FIGURES, Row, Rows};
use falsewright_core::catalogue::{Item, Kind, Leg};
use falsewright_core::checks::prop::{OldProp, PropClass};
use falsewright_core::checks::{StrutForces, check_leg};
use falsewright_core::scheme::Basis;

/// Class, greatest length, extension, characteristic, working load.
const EN1065: [(PropClass, f64, f64, f64, f64); 12] = [
    (PropClass::A, 3.0, 2.5, 24.48, 14.84),
    (PropClass::B, 3.0, 3.0, 22.67, 13.74),
    (PropClass::B, 4.0, 3.0, 30.22, 18.32),
    (PropClass::C, 3.5, 3.0, 39.67, 24.04),
    (PropClass::C, 4.0, 2.0, 59.50, 36.06),
    (PropClass::D, 4.0, 3.5, 34.00, 20.61),
    (PropClass::E, 3.5, 3.0, 51.00, 30.91),
    (PropClass::A, 4.0, 4.0, 12.75, 7.727),
    (PropClass::A, 2.5, 1.5, 44.0, 26.67),
    (PropClass::B, 5.5, 5.5, 12.36, 7.493),
    (PropClass::B, 4.5, 2.5, 48.96, 29.67),
    (PropClass::C, 5.5, 4.0, 35.06, 21.25),
];

/// Length m and printed safe load kN of 48.3 × 4.0 tube as new.
const TG20: [(f64, f64); 18] = [
    (0.6, 70.9),
    (0.8, 65.0),
    (1.0, 58.6),
    (1.2, 51.9),
    (1.4, 45.3),
    (1.6, 39.2),
    (1.8, 33.7),
    (2.0, 29.1),
    (2.2, 25.3),
    (2.4, 22.0),
    (2.6, 19.3),
    (2.8, 17.1),
    (3.0, 15.2),
    (3.2, 13.6),
    (3.4, 12.2),
    (3.6, 11.0),
    (3.8, 10.0),
    (4.0, 9.1),
];

pub fn rows() -> Vec<Row> {
    let mut rows = Rows::new("Props and tubes");
    for (class, greatest, extension, characteristic, working) in EN1065 {
        let source = match class {
            PropClass::B | PropClass::D => "EN 1065, formula and 1.65 confirmed in print, worked independently",
            _ => "EN 1065 from memory, worked independently",
        };
        let what = format!("EN 1065 {class:?}{greatest} at {extension} m");
        let got = class.characteristic_kn(greatest, extension).unwrap_or(f64::NAN);
        rows.from(source, "kN", FOUR_FIGURES).check(format!("{what}, Ry,k"), characteristic, got);
        let got = class.allowed_kn(Basis::WorkingLoad, greatest, extension).unwrap_or(f64::NAN);
        rows.check(format!("{what}, working"), working, got);
    }
    rows.from("EN 12812 class B2 from memory, worked independently", "kN", FOUR_FIGURES);
    let b2 = PropClass::B.allowed_kn(Basis::LimitStateB2, 4.0, 3.0).unwrap_or(f64::NAN);
    rows.check("EN 1065 B4 at 3 m, B2 by the load factor 1.5", 15.93, b2 / 1.5);
    old_props(&mut rows);
    tubes(&mut rows);
    rows.rows
}

fn old_props(rows: &mut Rows) {
    rows.from("CIRIA Technical Note 79 (1977) as reproduced in a public table", "kN", 1e-9);
    for (size, height, eccentric, concentric) in [
        (OldProp::Sizes0To3, 3.0, 15.0, 19.0),
        (OldProp::Sizes0To3, 2.4, 17.0, 26.0),
        (OldProp::Size4, 4.25, 9.0, 11.0),
    ] {
        let safe = |off| size.safe_kn(height, off).unwrap_or(f64::NAN);
        rows.check(format!("{size:?} at {height} m, 25 mm off"), eccentric, safe(true));
        rows.check(format!("{size:?} at {height} m, on the axis"), concentric, safe(false));
    }
}

fn leg(wall_m: f64, yield_mpa: f64, curve: &str) -> Item {
    let leg = Leg {
        diameter_m: 0.0483,
        wall_m,
        yield_mpa,
        curve: curve.into(),
        jack_working_kn: 100.0,
        footprint_m: 0.1,
        ends_kg: 1.0,
        rating: None,
        stack: None,
    };
    Item { code: "LEG".into(), name: "leg".into(), source: "test".into(), kind: Kind::Leg(leg) }
}

fn tubes(rows: &mut Rows) {
    let bears = |item: &Item, basis, forces: &StrutForces, length| check_leg(item, basis, forces, length)[0].resistance;
    let axial = StrutForces::axial(1.0);
    rows.from("NASC TG20:13, printed safe loads", "kN", 0.008);
    for (length, expected) in TG20 {
        let got = bears(&leg(0.004, 235.0, "c"), Basis::WorkingLoad, &axial, length);
        rows.check(format!("48.3 × 4.0 S235, {length} m"), expected, got);
    }
    rows.from("EN 1993-1-1 6.3.1, worked independently", "kN", 0.002);
    for (wall, yield_mpa, curve, length, expected) in [
        (0.0036, 235.0, "c", 1.5, 38.6),
        (0.0032, 235.0, "c", 1.5, 34.9),
        (0.0032, 355.0, "c", 1.5, 41.0),
        (0.0032, 355.0, "a", 1.5, 50.0),
        (0.0032, 355.0, "a", 3.0, 14.8),
    ] {
        let got = bears(&leg(wall, yield_mpa, curve), Basis::WorkingLoad, &axial, length);
        rows.check(format!("48.3 × {} of {yield_mpa} N/mm², curve {curve}, {length} m", wall * 1e3), expected, got);
    }
    let eccentric = StrutForces { head_m: 0.025, ..StrutForces::axial(1.0) };
    rows.from("EN 1993-1-1 6.3.3 with Annex B, worked by hand", "kN", 0.001);
    rows.check(
        "48.3 × 4.0, 2.0 m, 25 mm off at the head",
        18.34,
        bears(&leg(0.004, 235.0, "c"), Basis::WorkingLoad, &eccentric, 2.0),
    );
}
