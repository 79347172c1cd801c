use super::divisor::{Divisor, gamma};
use super::formula::{Comparison, number};
use super::steel::source;
use crate::catalogue::{Dimensions, STEEL_MODULUS_MPA, Steel};
use crate::results::{CheckKind, Verdict};
use crate::scheme::Basis;

/// An unstiffened web under a support force, EN 1993-1-5 section 6, as at a member end: type (c) with `c = 0`.
pub(super) fn check(steel: &Steel, yield_mpa: f64, basis: Basis, force_kn: f64, length_m: f64) -> Verdict {
    let d = steel.section.dimensions();
    let effective_mm = effective_length(d, yield_mpa, length_m * 1e3);
    let divisor = Divisor::new(basis, gamma::STEEL);
    let count = steel.count();
    let comparison = Comparison {
        check: CheckKind::Bearing,
        demand: force_kn,
        resistance: count * effective_mm * d.tw * yield_mpa / divisor.value() * 1e-3,
        unit: "kN",
        source: source("EN 1993-1-5 6.2, web without stiffener", basis),
    };
    let numbers = format!(
        "{} kN / ({count} × {} mm × {} mm × {} N/mm² / {divisor})",
        number(force_kn),
        number(effective_mm),
        number(d.tw),
        number(yield_mpa)
    );
    comparison.verdict("F / (n Leff tw fy / γ)", &numbers)
}

/// `Leff = χF ly`, mm. `m2` depends on the slenderness that it leads to; where neither value is consistent, it is 0.
fn effective_length(d: Dimensions, yield_mpa: f64, stiff_mm: f64) -> f64 {
    let hw = d.web_depth();
    let (length, slenderness) = loaded_length(d, yield_mpa, stiff_mm, 0.02 * (hw / d.tf) * (hw / d.tf));
    let (length, slenderness) =
        if slenderness > 0.5 { (length, slenderness) } else { loaded_length(d, yield_mpa, stiff_mm, 0.0) };
    length * (0.5 / slenderness).min(1.0)
}

/// `(ly, λF)`.
fn loaded_length(d: Dimensions, yield_mpa: f64, stiff_mm: f64, m2: f64) -> (f64, f64) {
    let Dimensions { b, tw, tf, .. } = d;
    let hw = d.web_depth();
    let kf = (2.0 + 6.0 * stiff_mm / hw).min(6.0);
    let critical = 0.9 * kf * STEEL_MODULUS_MPA * tw * tw * tw / hw;
    let m1 = b / tw;
    let end = (kf * STEEL_MODULUS_MPA * tw * tw / (2.0 * yield_mpa * hw)).min(stiff_mm);
    let by_both = end + tf * (m1 / 2.0 + (end / tf) * (end / tf) + m2).sqrt();
    let by_end = end + tf * (m1 + m2).sqrt();
    let inside = stiff_mm + 2.0 * tf * (1.0 + (m1 + m2).sqrt());
    let length = inside.min(by_both).min(by_end);
    (length, (length * tw * yield_mpa / critical).sqrt())
}

#[cfg(test)]
mod tests {
    use super::*;

    /// UB 305×165×40 S275 on 100 mm, type (c) with c = 0, worked by hand from EN 1993-1-5 section 6: 202.2 kN.
    #[test]
    fn web_at_a_member_end() {
        let d = Dimensions { h: 303.4, b: 165.0, tw: 6.0, tf: 10.2, r: 8.9 };
        let kn = effective_length(d, 275.0, 100.0) * d.tw * 275.0 * 1e-3;
        assert!((kn - 202.2).abs() < 0.2, "{kn}");
    }
}
