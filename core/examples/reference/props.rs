use super::Evaluate;
use super::case::{Case, Got};
use falsewright_core::catalogue::Tube;
use falsewright_core::checks::buckling::{critical_force_kn, imperfection, phi, reduction, slenderness};
use falsewright_core::checks::prop::{OldProp, PropClass};
use falsewright_core::checks::tie::steel_force_kn;

pub const TOPICS: &[(&str, Evaluate)] = &[
    ("EN 1065 prop", prop),
    ("tube 48.3 mm section properties", tube),
    ("tube section properties", tube),
    ("tube buckling", buckling),
    ("published safe axial loads, tube", safe_loads),
    ("BS 4074 prop", old_prop),
];

fn prop(case: &Case) -> Option<Got> {
    let class = PropClass::named(case.text("cls")?)?;
    let characteristic = class.characteristic_kn(case.positive("lmax_m")?, case.positive("l_m")?)?;
    let divisor = case.number_or("gF", 1.5) * case.number_or("gM", 1.1);
    Some(Got::of(&[
        ("R_yk_kN", characteristic),
        ("work_1p65_kN", characteristic / divisor),
        ("work_B2_kN", characteristic / (divisor * case.number_or("extra", 1.15))),
    ]))
}

fn tube_of(case: &Case) -> Option<Tube> {
    let (diameter, wall) = (case.positive("D")?, case.positive("t")?);
    (2.0 * wall <= diameter).then_some(Tube { diameter_m: diameter * 1e-3, wall_m: wall * 1e-3 })
}

fn tube(case: &Case) -> Option<Got> {
    let tube = tube_of(case)?;
    Some(Got::of(&[
        ("A_mm2", tube.area_m2() * 1e6),
        ("I_mm4", tube.inertia_m4() * 1e12),
        ("Wel_mm3", tube.elastic_modulus_m3() * 1e9),
        ("Wpl_mm3", tube.plastic_modulus_m3() * 1e9),
        ("i_mm", tube.gyration_m() * 1e3),
        ("mass_kg_m", tube.mass_kg_m()),
    ]))
}

/// Critical force kN, slenderness, Φ, χ and buckling resistance kN of a tube.
fn strut(tube: &Tube, yield_mpa: f64, curve: &str, length_m: f64) -> Option<[f64; 5]> {
    let alpha = imperfection(curve)?;
    let (critical, squash) =
        (critical_force_kn(tube.inertia_m4(), length_m), steel_force_kn(tube.area_m2() * 1e6, yield_mpa));
    let slender = slenderness(squash, critical);
    let chi = reduction(slender, alpha);
    Some([critical, slender, phi(slender, alpha), chi, chi * squash])
}

fn buckling(case: &Case) -> Option<Got> {
    let tube = tube_of(case)?;
    let [critical, slender, phi, chi, resistance] =
        strut(&tube, case.positive("fy")?, case.text("curve")?, case.positive("L_m")?)?;
    Some(Got::of(&[
        ("Ncr_kN", critical),
        ("lam", slender),
        ("Phi", phi),
        ("chi", chi),
        ("NbRd_kN", resistance),
        ("safe_1p65_kN", resistance / case.number_or("global_factor", 1.65)),
    ]))
}

fn safe_loads(case: &Case) -> Option<Got> {
    let (tube, yield_mpa, curve) = (tube_of(case)?, case.positive("fy")?, case.text("curve")?);
    let divisor = case.number_or("divisor", 1.65);
    let safe = |&length: &f64| strut(&tube, yield_mpa, curve, length).map(|strut| strut[4] / divisor);
    let loads: Vec<f64> = case.numbers("L_m")?.iter().map(safe).collect::<Option<_>>()?;
    Some(Got::default().with("safe_kN", loads))
}

fn old_prop(case: &Case) -> Option<Got> {
    let size = if case.topic_has("size 4") { OldProp::Size4 } else { OldProp::Sizes0To3 };
    let heights = case.numbers("height_m")?;
    let row = |eccentric: bool| -> Option<Vec<f64>> {
        heights.iter().map(|&height| size.safe_kn(height, eccentric)).collect()
    };
    Some(Got::default().with("eccentric_25mm_kN", row(true)?).with("concentric_kN", row(false)?))
}
