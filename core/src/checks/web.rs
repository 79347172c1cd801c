//! Webs under concentrated forces: EN 1993-1-5 section 6, and a stiffener where the web alone is too weak. Lengths mm.

use super::buckling::{imperfection, reduction, slenderness};
use super::comparison::Comparison;
use super::divisor::{Divisor, gamma};
use super::steel::source;
use crate::catalogue::{Dimensions, STEEL_MODULUS_MPA, Section, Steel};
use crate::formula::{number, stated};
use crate::results::{CheckKind, Verdict};
use crate::scheme::Basis;
use crate::sentence::{self, Sentence};
use std::f64::consts::PI;

/// Where the force acts, EN 1993-1-5 Figure 6.1. `panel`: clear distance of transverse stiffeners, infinite for none.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum WebLoad {
    /// (a): on one flange inside the span, resisted by shear in the web.
    OneFlange {
        /// Panel length.
        panel_mm: f64,
    },
    /// (b): on both flanges, straight through.
    BothFlanges {
        /// Panel length.
        panel_mm: f64,
    },
    /// (c): on one flange near an end without stiffener.
    End {
        /// From the end to the loaded length.
        beyond_mm: f64,
    },
}

/// Steps of EN 1993-1-5 6.2 to 6.5.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WebResistance {
    /// Buckling coefficient.
    pub kf: f64,
    /// Critical force, kN.
    pub critical_kn: f64,
    /// Flange and web yield together.
    pub m1: f64,
    /// Slender webs; nought where `λF ≤ 0.5`.
    pub m2: f64,
    /// Effective loaded length.
    pub loaded_mm: f64,
    /// `λF`.
    pub slenderness: f64,
    /// `χF`.
    pub reduction: f64,
    /// `Leff = χF ly`.
    pub effective_mm: f64,
    /// Characteristic resistance of one web, kN.
    pub resistance_kn: f64,
}

/// One unstiffened web of flanges and web of one strength. `m2` depends on the slenderness that it leads to; where
/// neither value is consistent, it is 0.
pub fn web_resistance(section: &Section, yield_mpa: f64, stiff_mm: f64, load: WebLoad) -> WebResistance {
    let d = section.dimensions();
    let slender = 0.02 * (d.web_depth() / d.tf) * (d.web_depth() / d.tf);
    let with = steps(d, yield_mpa, stiff_mm, load, slender);
    if with.slenderness > 0.5 { with } else { steps(d, yield_mpa, stiff_mm, load, 0.0) }
}

fn steps(d: Dimensions, yield_mpa: f64, stiff_mm: f64, load: WebLoad, m2: f64) -> WebResistance {
    let Dimensions { b, tw, tf, .. } = d;
    let hw = d.web_depth();
    let panel = |panel_mm: f64| (hw / panel_mm) * (hw / panel_mm);
    let kf = match load {
        WebLoad::OneFlange { panel_mm } => 6.0 + 2.0 * panel(panel_mm),
        WebLoad::BothFlanges { panel_mm } => 3.5 + 2.0 * panel(panel_mm),
        WebLoad::End { beyond_mm } => (2.0 + 6.0 * (stiff_mm + beyond_mm) / hw).min(6.0),
    };
    let critical = 0.9 * kf * STEEL_MODULUS_MPA * tw * tw * tw / hw;
    let m1 = b / tw;
    let inside = stiff_mm + 2.0 * tf * (1.0 + (m1 + m2).sqrt());
    let loaded_mm = match load {
        WebLoad::OneFlange { panel_mm } | WebLoad::BothFlanges { panel_mm } => inside.min(panel_mm),
        WebLoad::End { beyond_mm } => {
            let end = (kf * STEEL_MODULUS_MPA * tw * tw / (2.0 * yield_mpa * hw)).min(stiff_mm + beyond_mm);
            let by_both = end + tf * (m1 / 2.0 + (end / tf) * (end / tf) + m2).sqrt();
            let by_end = end + tf * (m1 + m2).sqrt();
            inside.min(by_both).min(by_end)
        }
    };
    let slenderness = slenderness(loaded_mm * tw * yield_mpa, critical);
    let reduction = (0.5 / slenderness).min(1.0);
    let effective_mm = loaded_mm * reduction;
    WebResistance {
        kf,
        critical_kn: critical * 1e-3,
        m1,
        m2,
        loaded_mm,
        slenderness,
        reduction,
        effective_mm,
        resistance_kn: effective_mm * tw * yield_mpa * 1e-3,
    }
}

/// Web bearing in the manner of BS 5950-1 and BS 5975 Annex J (from memory), kN: `(b1 + n k) tw py`, `k = tf + r`;
/// `n` is 5 inside the span, `2 + 0.6 be / k ≤ 5` at a distance `be` from the end.
pub fn web_bearing_bs5950_kn(k: f64, web_mm: f64, yield_mpa: f64, stiff_mm: f64, from_end_mm: Option<f64>) -> f64 {
    let n = from_end_mm.map_or(5.0, |end| (2.0 + 0.6 * end / k).min(5.0));
    (stiff_mm + n * k) * web_mm * yield_mpa * 1e-3
}

/// A pair of plates between the flanges.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stiffener {
    /// Out from the web on each side.
    pub outstand_mm: f64,
    /// Thickness of each plate.
    pub thickness_mm: f64,
    /// Characteristic resistance, kN.
    pub resistance_kn: f64,
}

/// Thicknesses of flat bars, mm.
const FLATS_MM: [f64; 6] = [6.0, 8.0, 10.0, 12.0, 15.0, 20.0];

/// A pair of stiffeners as wide as the flange, with the web that helps them, EN 1993-1-5 9.1 and 9.4: buckling as a strut
/// of length `0.75 hw` by curve c, and bearing of the plates less a 15 mm snipe. Length of web counted: `15 ε tw` on
/// each side, on one side only at an end.
pub fn stiffened(section: &Section, yield_mpa: f64, thickness_mm: f64, at_end: bool) -> Stiffener {
    let d = section.dimensions();
    let epsilon = (235.0 / yield_mpa).sqrt();
    let outstand_mm = libm::floor((d.b - d.tw) / 2.0).min(14.0 * epsilon * thickness_mm);
    let web = if at_end { 15.0 } else { 30.0 } * epsilon * d.tw + thickness_mm;
    let breadth = 2.0 * outstand_mm + d.tw;
    let inertia = (thickness_mm * breadth * breadth * breadth + (web - thickness_mm) * d.tw * d.tw * d.tw) / 12.0;
    let area = 2.0 * outstand_mm * thickness_mm + web * d.tw;
    let length = 0.75 * d.web_depth();
    let critical = PI * PI * STEEL_MODULUS_MPA * inertia / (length * length);
    let chi = reduction(slenderness(area * yield_mpa, critical), imperfection("c").unwrap_or(0.49));
    let buckling = chi * area * yield_mpa;
    let bearing = (2.0 * (outstand_mm - 15.0).max(0.0) * thickness_mm + web * d.tw) * yield_mpa;
    Stiffener { outstand_mm, thickness_mm, resistance_kn: buckling.min(bearing) * 1e-3 }
}

/// The thinnest pair of flats that carries a characteristic force, kN; none where even the thickest is too weak.
pub fn propose_stiffener(section: &Section, yield_mpa: f64, force_kn: f64, at_end: bool) -> Option<Stiffener> {
    let proposed = FLATS_MM.iter().map(|&thickness| stiffened(section, yield_mpa, thickness, at_end));
    proposed.into_iter().find(|stiffener| stiffener.resistance_kn >= force_kn)
}

/// An unstiffened web under a support force, as at a member end: type (c) with `c = 0`. Where it is too weak, the
/// formula names the stiffeners that would do.
pub(super) fn check(steel: &Steel, yield_mpa: f64, basis: Basis, force_kn: f64, length_m: f64) -> Verdict {
    let web = web_resistance(&steel.section, yield_mpa, length_m * 1e3, WebLoad::End { beyond_mm: 0.0 });
    let d = steel.section.dimensions();
    let divisor = Divisor::new(basis, gamma::STEEL);
    let count = steel.count();
    let comparison = Comparison {
        check: CheckKind::Bearing,
        demand: force_kn,
        resistance: count * web.resistance_kn / divisor.value(),
        unit: "kN",
        source: source("EN 1993-1-5 6.2, web without stiffener", basis),
    };
    let numbers = formula!(
        "{} kN / ({} × {} mm × {} mm × {} N/mm² / {})",
        number(force_kn),
        stated(count),
        number(web.effective_mm),
        number(d.tw),
        number(yield_mpa),
        divisor
    );
    let weak = force_kn > comparison.resistance;
    let symbols = "F / (n Leff tw fy / γ)";
    if weak {
        let given = stiffener_text(steel, yield_mpa, force_kn / count * divisor.value());
        comparison.verdict_given(given, symbols, numbers)
    } else {
        comparison.verdict(symbols, numbers)
    }
}

fn stiffener_text(steel: &Steel, yield_mpa: f64, force_kn: f64) -> Sentence {
    match (steel.section, propose_stiffener(&steel.section, yield_mpa, force_kn, true)) {
        (Section::I { .. }, Some(Stiffener { outstand_mm, thickness_mm, .. })) => {
            formula!(
                "wants two flats {} × {} mm as web stiffeners",
                sentence::number(outstand_mm, "", 0),
                sentence::number(thickness_mm, "", 0)
            )
        }
        _ => "wants a stronger section".into(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const UB305: Section = Section::I { h_mm: 303.4, b_mm: 165.0, tw_mm: 6.0, tf_mm: 10.2, r_mm: 8.9 };

    /// Worked by hand from EN 1993-1-5 section 6: UB 305×165×40 S275 on 100 mm, type (a) 301.1 kN, (c) 202.2 kN.
    #[test]
    fn webs_by_hand() {
        let inside = web_resistance(&UB305, 275.0, 100.0, WebLoad::OneFlange { panel_mm: f64::INFINITY });
        let end = web_resistance(&UB305, 275.0, 100.0, WebLoad::End { beyond_mm: 0.0 });
        assert!((inside.resistance_kn - 301.1).abs() < 0.2, "{inside:?}");
        assert!((end.resistance_kn - 202.2).abs() < 0.2, "{end:?}");
    }

    /// Two flats 79 × 10: web length 15 × 0.924 × 6 + 10 = 93.2 mm; A = 1580 + 559 = 2139 mm²; I = 10 × 164³ / 12 =
    /// 3.676e6 mm⁴; length 212 mm: λ = 0.059, so χ = 1 and 588 kN; bearing (2 × 64 × 10 + 559) × 275 = 505.8 kN.
    #[test]
    fn stiffener_by_hand() {
        let stiffener = stiffened(&UB305, 275.0, 10.0, true);
        assert_eq!(stiffener.outstand_mm, 79.0);
        assert!((stiffener.resistance_kn - 505.8).abs() < 0.5, "{stiffener:?}");
        assert_eq!(propose_stiffener(&UB305, 275.0, 500.0, true).map(|s| s.thickness_mm), Some(10.0));
    }
}
