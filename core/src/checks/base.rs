use super::comparison::{Comparison, no_resistance};
use super::divisor::{Divisor, allowable_pressure_factor, gamma};
use super::timber;
use crate::catalogue::{Item, Plate, PlateMaterial, TimberClass};
use crate::formula::{number, stated};
use crate::results::{CheckKind, Verdict};
use crate::scheme::{Basis, Bearing, Ground};
use crate::sentence::{Sentence, word};

/// `αcc` of the UK annex to EN 1992-1-1.
const ALPHA_CC: f64 = 0.85;
/// Yield strength of steel plates, S235.
const PLATE_YIELD_MPA: f64 = 235.0;
/// Class of timber sole plates.
const SOLE_CLASS: &str = "C16";

/// Pressure under a plate, over as much of it as its own bending lets share: `c = t √(f / 3q)` beyond what stands on
/// it, as in EN 1993-1-8 6.2.5(4). Concrete: design strength without the increase for local pressure of EN 1992-1-1
/// 6.7. Ground: the allowable pressure. A timber plate is also checked against crushing under what stands on it.
pub fn check_base(item: &Item, basis: Basis, bearing: &Bearing, ground: &Ground, force_kn: f64) -> Vec<Verdict> {
    let Some(plate) = item.plate() else {
        let reason = format!("{} is not a plate", item.code);
        return vec![no_resistance(CheckKind::BasePressure, force_kn, "kN", &reason)];
    };
    let allowed = Pressure::allowed(basis, bearing, ground);
    let [along_m, across_m] = sharing_sides_m(plate, basis, allowed.kpa);
    let area_m2 = along_m * across_m;
    let comparison = Comparison {
        check: CheckKind::BasePressure,
        demand: force_kn / area_m2,
        resistance: allowed.kpa,
        unit: "kPa",
        source: allowed.source.into(),
    };
    let numbers = formula!("({} kN / {} m²) / ({})", number(force_kn), number(area_m2), allowed.text);
    let given = formula!("Aeff = {} m² of {} m²", number(area_m2), number(plate.width_m * plate.length_m));
    let mut verdicts =
        vec![comparison.verdict_given(given, formula!("(N / Aeff) / {}", word(allowed.symbol)), numbers)];
    if plate.material == PlateMaterial::Timber {
        verdicts.push(crushing(plate, basis, force_kn));
    }
    verdicts
}

/// What is below the plate can bear.
struct Pressure {
    kpa: f64,
    symbol: &'static str,
    text: Sentence,
    source: &'static str,
}

impl Pressure {
    fn allowed(basis: Basis, bearing: &Bearing, ground: &Ground) -> Self {
        match *bearing {
            Bearing::Slab { strength_mpa } => {
                let divisor = Divisor::new(basis, gamma::CONCRETE);
                Self {
                    kpa: ALPHA_CC * strength_mpa * 1e3 / divisor.value(),
                    symbol: "(αcc fck / γ)",
                    text: formula!("{} × {} N/mm² / {}", stated(ALPHA_CC), number(strength_mpa), divisor),
                    source: match basis {
                        Basis::WorkingLoad => "Common practice: EN 1992-1-1 3.1.6 by a load factor of 1.5",
                        Basis::LimitStateB1 => "EN 1992-1-1 3.1.6",
                        Basis::LimitStateB2 => "EN 1992-1-1 3.1.6; EN 12812 class B2",
                    },
                }
            }
            Bearing::Ground => {
                let factor = allowable_pressure_factor(basis);
                Self {
                    kpa: factor * ground.allowable_kpa,
                    symbol: "(k qa)",
                    text: formula!("{} × {} kPa", number(factor), number(ground.allowable_kpa)),
                    source: match basis {
                        Basis::WorkingLoad => "Allowable pressure stated for the ground",
                        Basis::LimitStateB1 => "Allowable pressure stated for the ground × the least load factor 1.35",
                        Basis::LimitStateB2 => "Allowable pressure stated for the ground × 1.35 / 1.15",
                    },
                }
            }
        }
    }
}

/// Sides of the part of a plate that shares the force; none for what is not a plate.
pub fn base_sides_m(item: &Item, basis: Basis, bearing: &Bearing, ground: &Ground) -> Option<[f64; 2]> {
    Some(sharing_sides_m(item.plate()?, basis, Pressure::allowed(basis, bearing, ground).kpa))
}

/// The part of the plate that shares the force. A round tube counts as the square inside it; across its grain timber
/// spreads the force at 45°.
fn sharing_sides_m(plate: &Plate, basis: Basis, pressure_kpa: f64) -> [f64; 2] {
    let Plate { width_m, length_m, thickness_m, stem_m, .. } = *plate;
    let reach = |strength_mpa: f64| thickness_m * (strength_mpa * 1e3 / (3.0 * pressure_kpa)).sqrt();
    match plate.material {
        PlateMaterial::Steel => {
            let side = stem_m / 2f64.sqrt() + 2.0 * reach(PLATE_YIELD_MPA / Divisor::new(basis, gamma::STEEL).value());
            [side.min(width_m), side.min(length_m)]
        }
        PlateMaterial::Timber => {
            let along = stem_m + 2.0 * reach(sole_strengths(basis, thickness_m).map_or(0.0, |sole| sole.bending_mpa));
            let across = stem_m + 2.0 * thickness_m;
            [along.min(width_m.max(length_m)), across.min(width_m.min(length_m))]
        }
    }
}

fn sole_strengths(basis: Basis, thickness_m: f64) -> Option<timber::Allowed> {
    Some(timber::allowed(TimberClass::named(SOLE_CLASS)?, basis, thickness_m * 1e3, 0.0))
}

/// Compression across the grain under what stands on a timber plate.
fn crushing(plate: &Plate, basis: Basis, force_kn: f64) -> Verdict {
    let strength_mpa = sole_strengths(basis, plate.thickness_m).map_or(0.0, |sole| sole.bearing_mpa);
    let side_mm = plate.stem_m.min(plate.width_m).min(plate.length_m) * 1e3;
    let comparison = Comparison {
        check: CheckKind::Bearing,
        demand: force_kn,
        resistance: strength_mpa * side_mm * side_mm * 1e-3,
        unit: "kN",
        source: match basis {
            Basis::WorkingLoad => "Permissible stress of C16 in the manner of BS 5268-2:2002, wet (from memory)",
            Basis::LimitStateB1 => "EN 1995-1-1 6.1.5, C16",
            Basis::LimitStateB2 => "EN 1995-1-1 6.1.5, C16; EN 12812 class B2",
        }
        .into(),
    };
    let numbers = formula!("{} kN / ({} N/mm² × ({} mm)²)", number(force_kn), number(strength_mpa), number(side_mm));
    comparison.verdict("N / (fc90 s²)", numbers)
}
