use super::divisor::{Divisor, allowable_pressure_factor, gamma};
use super::formula::{Comparison, no_resistance, number};
use crate::catalogue::Item;
use crate::results::{CheckKind, Verdict};
use crate::scheme::{Basis, Bearing, Ground};

/// `αcc` of the UK annex to EN 1992-1-1.
const ALPHA_CC: f64 = 0.85;

/// Pressure under a plate that is stiff enough to spread it evenly. Concrete: its design strength without the
/// increase for local pressure of EN 1992-1-1 6.7. Ground: the allowable pressure.
pub fn check_base(item: &Item, basis: Basis, bearing: &Bearing, ground: &Ground, force_kn: f64) -> Vec<Verdict> {
    let Some(plate) = item.plate() else {
        let reason = format!("{} is not a plate", item.code);
        return vec![no_resistance(CheckKind::BasePressure, force_kn, "kN", &reason)];
    };
    let area_m2 = plate.width_m * plate.length_m;
    let pressure_kpa = force_kn / area_m2;
    let pressure_text = format!("{} kN / {} m²", number(force_kn), number(area_m2));
    let verdict = match *bearing {
        Bearing::Slab { strength_mpa } => {
            let divisor = Divisor::new(basis, gamma::CONCRETE);
            let comparison = Comparison {
                check: CheckKind::BasePressure,
                demand: pressure_kpa,
                resistance: ALPHA_CC * strength_mpa * 1e3 / divisor.value(),
                unit: "kPa",
                source: match basis {
                    Basis::WorkingLoad => "Common practice: EN 1992-1-1 3.1.6 by a load factor of 1.5".into(),
                    Basis::LimitStateB1 => "EN 1992-1-1 3.1.6".into(),
                    Basis::LimitStateB2 => "EN 1992-1-1 3.1.6; EN 12812 class B2".into(),
                },
            };
            let numbers = format!("({pressure_text}) / ({ALPHA_CC} × {} N/mm² / {divisor})", number(strength_mpa));
            comparison.verdict("(N / A) / (αcc fck / γ)", &numbers)
        }
        Bearing::Ground => {
            let factor = allowable_pressure_factor(basis);
            let comparison = Comparison {
                check: CheckKind::BasePressure,
                demand: pressure_kpa,
                resistance: factor * ground.allowable_kpa,
                unit: "kPa",
                source: match basis {
                    Basis::WorkingLoad => "Allowable pressure stated for the ground".into(),
                    _ => "Allowable pressure stated for the ground × the least load factor 1.35".into(),
                },
            };
            let numbers = format!("({pressure_text}) / ({} × {} kPa)", number(factor), number(ground.allowable_kpa));
            comparison.verdict("(N / A) / (k qa)", &numbers)
        }
    };
    vec![verdict]
}
