use super::beam::BeamForces;
use super::bs5268::{self, K3_FALSEWORK as K3, WET};
use super::comparison::{Comparison, no_resistance};
use super::divisor::{Divisor, gamma};
use super::en1995::{self, KCR_SOLID as KCR};
use crate::catalogue::{Timber, TimberClass};
use crate::formula::{number, stated};
use crate::results::{CheckKind, Verdict};
use crate::scheme::Basis;
use crate::sentence::Sentence;

/// What a basis allows, N/mm², with the factors that lead to it.
pub(super) struct Allowed {
    pub bending_mpa: f64,
    bending_text: Sentence,
    shear_mpa: f64,
    shear_text: Sentence,
    pub bearing_mpa: f64,
    bearing_text: Sentence,
    /// Length counted at a support.
    bearing_mm: f64,
    source: &'static str,
}

/// Sawn timber: bending about the stronger axis, shear, compression across the grain at a support.
pub(super) fn check(timber: &Timber, basis: Basis, forces: BeamForces) -> Vec<Verdict> {
    let Some(class) = TimberClass::named(&timber.class) else {
        let reason = format!("no strengths known for timber class {}", timber.class);
        return vec![no_resistance(CheckKind::Bending, forces.moment_knm, "kNm", &reason)];
    };
    let (b, h) = (timber.breadth_m * 1e3, timber.depth_m * 1e3);
    let allowed = allowed(class, basis, h, forces.bearing_length_m * 1e3);
    let modulus_cm3 = b * h * h / 6e3;
    let bending = Comparison {
        check: CheckKind::Bending,
        demand: forces.moment_knm,
        resistance: allowed.bending_mpa * modulus_cm3 * 1e-3,
        unit: "kNm",
        source: allowed.source.into(),
    };
    let bending_numbers = formula!(
        "{} kNm / ({} N/mm² × {} cm³)",
        number(forces.moment_knm),
        number(allowed.bending_mpa),
        number(modulus_cm3)
    );
    let shear = Comparison {
        check: CheckKind::Shear,
        demand: forces.shear_kn,
        resistance: allowed.shear_mpa * b * h / 1.5 * 1e-3,
        unit: "kN",
        source: allowed.source.into(),
    };
    let shear_numbers = formula!(
        "1.5 × {} kN / ({} N/mm² × {} mm × {} mm)",
        number(forces.shear_kn),
        number(allowed.shear_mpa),
        number(b),
        number(h)
    );
    let mut verdicts = vec![
        bending.verdict_given(formula!("fm = {} N/mm²", allowed.bending_text), "M / (fm W)", bending_numbers),
        shear.verdict_given(formula!("fv = {} N/mm²", allowed.shear_text), "1.5 V / (fv b h)", shear_numbers),
    ];
    if let Some(force) = forces.bearing_kn {
        let bearing = Comparison {
            check: CheckKind::Bearing,
            demand: force,
            resistance: allowed.bearing_mpa * b * allowed.bearing_mm * 1e-3,
            unit: "kN",
            source: allowed.source.into(),
        };
        let numbers = formula!(
            "{} kN / ({} N/mm² × {} mm × {} mm)",
            number(force),
            number(allowed.bearing_mpa),
            number(b),
            number(allowed.bearing_mm)
        );
        verdicts.push(bearing.verdict_given(
            formula!("fc90 = {} N/mm²", allowed.bearing_text),
            "F / (fc90 b l)",
            numbers,
        ));
    }
    verdicts
}

/// A steel plate with a round hole that presses on sawn timber across the grain: its length along the grain, its width
/// and its hole, m.
pub(super) fn check_plate(
    timber: &Timber,
    basis: Basis,
    [along_m, across_m, hole_m]: [f64; 3],
    force_kn: f64,
) -> Verdict {
    let Some(class) = TimberClass::named(&timber.class) else {
        let reason = format!("no strengths known for timber class {}", timber.class);
        return no_resistance(CheckKind::Bearing, force_kn, "kN", &reason);
    };
    let allowed = allowed(class, basis, timber.depth_m * 1e3, along_m * 1e3);
    let (across, hole) = (across_m * 1e3, hole_m * 1e3);
    let hole_mm2 = super::tie::rod_area_mm2(hole);
    let comparison = Comparison {
        check: CheckKind::Bearing,
        demand: force_kn,
        resistance: allowed.bearing_mpa * (across * allowed.bearing_mm - hole_mm2).max(0.0) * 1e-3,
        unit: "kN",
        source: allowed.source.into(),
    };
    let numbers = formula!(
        "{} kN / ({} N/mm² × ({} mm × {} mm − {} mm²))",
        number(force_kn),
        number(allowed.bearing_mpa),
        number(across),
        number(allowed.bearing_mm),
        number(hole_mm2)
    );
    let given = formula!("fc90 = {} N/mm²", allowed.bearing_text);
    comparison.verdict_given(given, "F / (fc90 (b l − A0))", numbers)
}

/// Strengths of a member of depth `h` mm on a support of a length in mm.
pub(super) fn allowed(class: TimberClass, basis: Basis, h: f64, bearing_mm: f64) -> Allowed {
    match basis {
        Basis::WorkingLoad => permissible(class, h, bearing_mm),
        Basis::LimitStateB1 | Basis::LimitStateB2 => limit_state(class, basis, h, bearing_mm),
    }
}

/// Wet, no load sharing; bearing with wane and without the short-bearing factor.
fn permissible(class: TimberClass, h: f64, bearing_mm: f64) -> Allowed {
    let (grade, allowed) = (class.grade, bs5268::permissible(&class, WET, K3, h, 1.0));
    let depth = bs5268::depth_factor(h);
    Allowed {
        bending_mpa: allowed.bending_mpa,
        bending_text: formula!(
            "{} × K2 {} × K3 {} × K7 {}",
            stated(grade.bending_mpa),
            stated(WET.bending),
            stated(K3),
            number(depth)
        ),
        shear_mpa: allowed.shear_mpa,
        shear_text: formula!("{} × K2 {} × K3 {}", stated(grade.shear_mpa), stated(WET.shear), stated(K3)),
        bearing_mpa: allowed.across_wane_mpa,
        bearing_text: formula!("{} × K2 {} × K3 {}", stated(grade.bearing_mpa), stated(WET.compression), stated(K3)),
        bearing_mm,
        source: "Permissible stresses in the manner of BS 5268-2:2002 and BS 5975, wet (from memory)",
    }
}

/// Service class 3, short-term. Bearing as at a flush end: 30 mm added on one side only, kc,90 1.0.
fn limit_state(class: TimberClass, basis: Basis, h: f64, bearing_mm: f64) -> Allowed {
    let strength = class.characteristic;
    let divisor = Divisor::new(basis, gamma::TIMBER);
    let (kmod, kh) = (en1995::formwork_kmod(), en1995::depth_factor(h));
    let design = |characteristic| en1995::design_strength(characteristic, kmod, divisor.value());
    Allowed {
        bending_mpa: kh * design(strength.bending_mpa),
        bending_text: formula!(
            "{} × kmod {} × kh {} / {}",
            stated(strength.bending_mpa),
            stated(kmod),
            number(kh),
            divisor
        ),
        shear_mpa: KCR * design(strength.shear_mpa),
        shear_text: formula!(
            "{} × kmod {} × kcr {} / {}",
            stated(strength.shear_mpa),
            stated(kmod),
            stated(KCR),
            divisor
        ),
        bearing_mpa: design(strength.bearing_mpa),
        bearing_text: formula!("{} × kmod {} / {}", stated(strength.bearing_mpa), stated(kmod), divisor),
        bearing_mm: en1995::bearing_length_mm(bearing_mm, 0.0, f64::INFINITY),
        source: match basis {
            Basis::LimitStateB2 => "EN 1995-1-1 6.1.5 to 6.1.7; EN 12812 class B2",
            _ => "EN 1995-1-1 6.1.5 to 6.1.7",
        },
    }
}
