use super::bs5268::{self, K3_FALSEWORK, WET};
use super::comparison::{Comparison, no_resistance};
use super::divisor::{Divisor, gamma};
use super::en1995::{self, KCR_SOLID, Notch};
use crate::catalogue::{Item, Kind, Timber, TimberClass};
use crate::formula::number;
use crate::results::{CheckKind, Verdict};
use crate::scheme::Basis;
use crate::sentence::word;

/// Solid timber, `βc` of EN 1995-1-1 6.3.2.
const BETA_C: f64 = 0.2;

fn timber_of(item: &Item) -> Option<(&Timber, TimberClass)> {
    match &item.kind {
        Kind::Timber(timber) => Some((timber, TimberClass::named(&timber.class)?)),
        _ => None,
    }
}

/// Sawn timber compressed along its grain between points held both ways, in the wet.
pub fn check_timber_strut(item: &Item, basis: Basis, compression_kn: f64, length_m: f64) -> Verdict {
    let Some((timber, class)) = timber_of(item) else {
        let reason = format!("{} is not sawn timber of a known class", item.code);
        return no_resistance(CheckKind::Buckling, compression_kn, "kN", &reason);
    };
    let (b, h) = (timber.breadth_m * 1e3, timber.depth_m * 1e3);
    let thin = b.min(h);
    let (stress, factor, symbol, given, source) = match basis {
        Basis::WorkingLoad => {
            let allowed = bs5268::permissible(&class, WET, K3_FALSEWORK, h, 1.0);
            let lambda = length_m * 1e3 * 12f64.sqrt() / thin;
            let k12 = bs5268::strut_factor(allowed.least_modulus_mpa, allowed.along_mpa, lambda);
            let given = formula!("λ = {}", number(lambda));
            (allowed.along_mpa, k12, "K12", given, "BS 5268-2:2002 2.11 and Annex B, wet (from memory)")
        }
        Basis::LimitStateB1 | Basis::LimitStateB2 => {
            let along = class.characteristic.compression_mpa;
            let slender = en1995::slenderness(length_m * 1e3, thin, along, class.modulus_005_mpa, BETA_C);
            let divisor = Divisor::new(basis, gamma::TIMBER).value();
            let design = en1995::design_strength(along, en1995::formwork_kmod(), divisor);
            let source = match basis {
                Basis::LimitStateB2 => "EN 1995-1-1 6.3.2; EN 12812 class B2",
                _ => "EN 1995-1-1 6.3.2",
            };
            (design, slender.kc, "kc", formula!("λrel = {}", number(slender.relative)), source)
        }
    };
    let comparison = Comparison {
        check: CheckKind::Buckling,
        demand: compression_kn,
        resistance: factor * stress * b * h * 1e-3,
        unit: "kN",
        source: source.into(),
    };
    let numbers = formula!(
        "{} kN / ({} × {} N/mm² × {} mm × {} mm)",
        number(compression_kn),
        number(factor),
        number(stress),
        number(b),
        number(h)
    );
    comparison.verdict_given(given, formula!("N / ({} fc0 b h)", word(symbol)), numbers)
}

/// Sawn timber notched at a support on its side, EN 1995-1-1 6.5.2 on limit states. On the working-load basis the same
/// reduction goes on the permissible shear stress.
pub fn check_notch(item: &Item, basis: Basis, shear_kn: f64, notch: &Notch) -> Verdict {
    let Some((timber, class)) = timber_of(item) else {
        let reason = format!("{} is not sawn timber of a known class", item.code);
        return no_resistance(CheckKind::Shear, shear_kn, "kN", &reason);
    };
    let (stress, source) = match basis {
        Basis::WorkingLoad => (
            bs5268::permissible(&class, WET, K3_FALSEWORK, notch.depth_mm, 1.0).shear_mpa,
            "EN 1995-1-1 6.5.2 on the permissible stress of BS 5268-2:2002, wet (from memory)",
        ),
        Basis::LimitStateB1 | Basis::LimitStateB2 => {
            let divisor = Divisor::new(basis, gamma::TIMBER).value();
            let shear = class.characteristic.shear_mpa;
            (KCR_SOLID * en1995::design_strength(shear, en1995::formwork_kmod(), divisor), "EN 1995-1-1 6.5.2")
        }
    };
    let b = timber.breadth_m * 1e3;
    let comparison = Comparison {
        check: CheckKind::Shear,
        demand: shear_kn,
        resistance: notch.shear_kn(stress, 1.0, b),
        unit: "kN",
        source: source.into(),
    };
    let numbers = formula!(
        "1.5 × {} kN / ({} × {} N/mm² × {} mm × {} mm)",
        number(shear_kn),
        number(notch.factor()),
        number(stress),
        number(b),
        number(notch.left_mm)
    );
    comparison.verdict("1.5 V / (kv fv b hef)", numbers)
}
