use super::Evaluate;
use super::case::{Case, Got};
use falsewright_core::catalogue::{Section, SectionProperties, standard_section};
use falsewright_core::checks::buckling::{critical_force_kn, imperfection, phi, reduction, slenderness};
use falsewright_core::checks::en1993;
use falsewright_core::checks::lateral_torsional::{
    MomentShape, Twisting, critical_moment_knm, rolled_phi, rolled_reduction,
};
use falsewright_core::checks::web::{WebLoad, web_bearing_bs5950_kn, web_resistance};

pub const TOPICS: &[(&str, Evaluate)] = &[
    ("section properties from nominal dimensions", i_section),
    ("channel section properties from nominal dimensions", channel),
    ("EC3 flexural buckling", flexural),
    ("EC3 reduction factor", reduction_factor),
    ("EC3 LTB", lateral_torsional),
    ("EC3 section resistance", section_resistance),
    ("EC3 reduced bending with high shear", high_shear),
    ("EC3 bending and axial force", axial),
    ("EN 1993-1-5 patch load", patch_load),
    ("EN 1993-1-5 end support", patch_load),
    ("BS 5950-1 / BS 5975 Annex J", bs5950_bearing),
    ("published IPE properties", standard_table),
    ("published section properties", standard_table),
    ("published HE", standard_table),
    ("published UB", standard_table),
    ("published UC", standard_table),
    ("published PFC", standard_table),
];

fn dimensions(case: &Case) -> Option<[f64; 5]> {
    Some([case.positive("h")?, case.positive("b")?, case.positive("tw")?, case.positive("tf")?, case.number("r")?])
}

fn i_of(case: &Case) -> Option<Section> {
    let [h_mm, b_mm, tw_mm, tf_mm, r_mm] = dimensions(case)?;
    Some(Section::I { h_mm, b_mm, tw_mm, tf_mm, r_mm })
}

fn channel_of(case: &Case) -> Option<Section> {
    let [h_mm, b_mm, tw_mm, tf_mm, r_mm] = dimensions(case)?;
    Some(Section::Channel { h_mm, b_mm, tw_mm, tf_mm, r_mm })
}

fn properties(properties: &SectionProperties) -> Got {
    Got::of(&[
        ("A_cm2", properties.area_mm2 * 1e-2),
        ("Iy_cm4", properties.major_inertia_mm4 * 1e-4),
        ("Wely_cm3", properties.elastic_modulus_mm3 * 1e-3),
        ("Wply_cm3", properties.plastic_modulus_mm3 * 1e-3),
        ("Iz_cm4", properties.minor_inertia_mm4 * 1e-4),
        ("It_cm4", properties.torsion_mm4 * 1e-4),
        ("Iw_cm6", properties.warping_mm6 * 1e-6),
        ("Av_cm2", properties.shear_area_mm2 * 1e-2),
        ("mass_kg_m", properties.mass_kg_m()),
    ])
}

fn i_section(case: &Case) -> Option<Got> {
    Some(properties(&i_of(case)?.properties()))
}

fn channel(case: &Case) -> Option<Got> {
    Some(properties(&channel_of(case)?.properties()))
}

fn standard_table(case: &Case) -> Option<Got> {
    let names = case.texts("section")?;
    let all: Vec<SectionProperties> = names
        .into_iter()
        .map(|name| standard_section(name).map(|section| section.properties()))
        .collect::<Option<_>>()?;
    let row = |value: &dyn Fn(&SectionProperties) -> f64| -> Vec<f64> { all.iter().map(value).collect() };
    Some(
        Got::default()
            .with("A_cm2", row(&|p| p.area_mm2 * 1e-2))
            .with("Iy_cm4", row(&|p| p.major_inertia_mm4 * 1e-4))
            .with("Wely_cm3", row(&|p| p.elastic_modulus_mm3 * 1e-3))
            .with("Wply_cm3", row(&|p| p.plastic_modulus_mm3 * 1e-3))
            .with("Iz_cm4", row(&|p| p.minor_inertia_mm4 * 1e-4))
            .with("It_cm4", row(&|p| p.torsion_mm4 * 1e-4))
            .with("Iw_cm6", row(&|p| p.warping_mm6 * 1e-6))
            .with("Av_cm2", row(&|p| p.shear_area_mm2 * 1e-2))
            .with("mass_kg_m", row(&SectionProperties::mass_kg_m)),
    )
}

fn flexural(case: &Case) -> Option<Got> {
    let (area, yield_mpa, alpha) = (case.positive("A_mm2")?, case.positive("fy")?, imperfection(case.text("curve")?)?);
    let critical = critical_force_kn(case.positive("I_mm4")? * 1e-12, case.positive("L_mm")? * 1e-3);
    let squash = area * yield_mpa * 1e-3;
    let slender = slenderness(squash, critical);
    let chi = reduction(slender, alpha);
    Some(Got::of(&[
        ("Ncr_kN", critical),
        ("lam", slender),
        ("Phi", phi(slender, alpha)),
        ("chi", chi),
        ("NbRd_kN", chi * squash),
    ]))
}

/// One slenderness on one curve, or a list of them on every curve.
fn reduction_factor(case: &Case) -> Option<Got> {
    let slender = case.numbers("lam")?;
    match (slender.as_slice(), case.text("curve")) {
        (&[slender], Some(curve)) => {
            let alpha = imperfection(curve)?;
            Some(Got::of(&[("Phi", phi(slender, alpha)), ("chi", reduction(slender, alpha))]))
        }
        (_, Some(curve)) => {
            let alpha = imperfection(curve)?;
            let row: Vec<f64> = slender.iter().map(|&slender| reduction(slender, alpha)).collect();
            Some(Got::default().with("chi", row))
        }
        (_, None) => ["a0", "a", "b", "c", "d"].into_iter().try_fold(Got::default(), |got, curve| {
            let alpha = imperfection(curve)?;
            let row: Vec<f64> = slender.iter().map(|&slender| reduction(slender, alpha)).collect();
            Some(got.with(curve, row))
        }),
    }
}

fn lateral_torsional(case: &Case) -> Option<Got> {
    let section = Twisting {
        minor_inertia_mm4: case.positive("Iz")?,
        torsion_mm4: case.positive("It")?,
        warping_mm6: case.positive("Iw")?,
    };
    let shape = MomentShape {
        c1: case.number_or("C1", 1.0),
        c2: case.number_or("C2", 0.0),
        load_height_mm: case.number_or("zg", 0.0),
    };
    let critical = critical_moment_knm(section, shape, case.positive("L_mm")? * 1e-3);
    let moment = en1993::moment_knm(case.positive("Wpl")?, case.positive("fy")?);
    let slender = slenderness(moment, critical);
    let mut got = Got::of(&[("Mcr_kNm", critical), ("lam_LT", slender)]);
    if let Some(alpha) = case.number("alpha_rolled") {
        let chi = rolled_reduction(slender, alpha);
        got = got
            .with("Phi_rolled", rolled_phi(slender, alpha))
            .with("chi_rolled", chi)
            .with("MbRd_rolled_kNm", chi * moment);
    }
    if let Some(alpha) = case.number("alpha_general") {
        let chi = reduction(slender, alpha);
        got = got
            .with("Phi_general", phi(slender, alpha))
            .with("chi_general", chi)
            .with("MbRd_general_kNm", chi * moment);
    }
    Some(got)
}

fn section_resistance(case: &Case) -> Option<Got> {
    let (section, yield_mpa) = (i_of(case)?.properties(), case.positive("fy")?);
    let modulus = case.number_or("Wpl_mm3", section.plastic_modulus_mm3);
    Some(Got::of(&[
        ("Av_mm2", section.shear_area_mm2),
        ("VplRd_kN", en1993::shear_kn(section.shear_area_mm2, yield_mpa)),
        ("McRd_kNm", en1993::moment_knm(modulus, yield_mpa)),
    ]))
}

fn high_shear(case: &Case) -> Option<Got> {
    let rho = en1993::high_shear(case.number("V_Ed")? / case.positive("Vpl_Rd")?);
    let modulus =
        en1993::modulus_with_shear_mm3(case.positive("Wpl_mm3")?, rho, case.number("Aw_mm2")?, case.positive("tw")?);
    Some(Got::of(&[("rho", rho), ("MyV_Rd_kNm", en1993::moment_knm(modulus, case.positive("fy")?))]))
}

fn axial(case: &Case) -> Option<Got> {
    let (area, yield_mpa) = (case.positive("A_mm2")?, case.positive("fy")?);
    let n = case.number("N_Ed_kN")? / (area * yield_mpa * 1e-3);
    let share = en1993::web_share(area, case.positive("b")?, case.positive("tf")?);
    let plastic = match case.number("Mpl_kNm") {
        Some(moment) => moment,
        None => en1993::moment_knm(case.positive("Wpl_mm3")?, yield_mpa),
    };
    Some(Got::of(&[("n", n), ("a", share), ("MNy_Rd_kNm", en1993::moment_with_axial(plastic, n, share))]))
}

fn section_of(case: &Case) -> Option<Section> {
    match case.text("section") {
        Some(name) => standard_section(name),
        None => i_of(case),
    }
}

fn patch_load(case: &Case) -> Option<Got> {
    let panel_mm = case.number("a").or_else(|| case.number("a_mm")).unwrap_or(f64::INFINITY);
    let load = match ["(a)", "(b)", "(c)"].map(|kind| case.topic_has(&format!("type {kind}"))) {
        [true, _, _] => WebLoad::OneFlange { panel_mm },
        [_, true, _] => WebLoad::BothFlanges { panel_mm },
        [_, _, true] => WebLoad::End { beyond_mm: case.number_or("c", 0.0) },
        _ => return None,
    };
    let web = web_resistance(&section_of(case)?, case.positive("fy")?, case.number("ss")?, load);
    Some(Got::of(&[
        ("kF", web.kf),
        ("Fcr_kN", web.critical_kn),
        ("m1", web.m1),
        ("m2", web.m2),
        ("ly", web.loaded_mm),
        ("lam_F", web.slenderness),
        ("chi_F", web.reduction),
        ("Leff", web.effective_mm),
        ("F_Rd_kN", web.resistance_kn),
    ]))
}

fn bs5950_bearing(case: &Case) -> Option<Got> {
    let (k, tw) = (case.positive("tf")? + case.number("r")?, case.positive("tw")?);
    let bearing =
        |from_end| web_bearing_bs5950_kn(k, tw, case.number_or("py", 275.0), case.number_or("b1", 0.0), from_end);
    Some(Got::of(&[("k", k), ("P_int_kN", bearing(None)), ("P_end_kN", bearing(Some(case.number_or("be_end", 0.0))))]))
}
