use super::Evaluate;
use super::case::{Case, Got};
use falsewright_core::catalogue::{Catalogue, Grain, Item, Kind, LayUp, TimberBeam, TimberClass, board_section};
use falsewright_core::checks::bs5268::{self, DRY, WET};
use falsewright_core::checks::en1995::{self, Duration, Notch, ServiceClass};

pub const TOPICS: &[(&str, Evaluate)] = &[
    ("EC5 size factor kh", size_factor),
    ("EC5 rectangular beam", beam),
    ("EC5 bearing", bearing),
    ("EC5 end notch", notch),
    ("EC5 tapered notch", notch),
    ("EC5 notch", notch),
    ("EC5 column", column),
    ("BS 5268-2 permissible", permissible),
    ("EN 13377 formwork beam", formwork_beam),
    ("birch plywood section", plywood),
    ("published birch plywood", plywood_table),
    ("published BS 5268-2 section properties", board_table),
    ("birch ply sheeting", sheeting),
    ("kmod solid timber and plywood", kmod_table),
];

fn class(case: &Case) -> Option<TimberClass> {
    TimberClass::named(case.text("cls")?)
}

fn size_factor(case: &Case) -> Option<Got> {
    Some(Got::of(&[("kh", en1995::depth_factor(case.positive("h_mm")?))]))
}

fn beam(case: &Case) -> Option<Got> {
    let (class, b, h) = (class(case)?, case.positive("b")?, case.positive("h")?);
    let (kmod, gamma) = (case.number("kmod")?, case.number_or("gammaM", 1.3));
    let (ksys, kcr) = (case.number_or("ksys", 1.0), case.number_or("kcr", en1995::KCR_SOLID));
    let design = |characteristic| ksys * en1995::design_strength(characteristic, kmod, gamma);
    let bending = en1995::depth_factor(h) * design(class.characteristic.bending_mpa);
    let shear = design(class.characteristic.shear_mpa);
    let inertia = b * h * h * h / 12.0;
    Some(Got::of(&[
        ("W_mm3", inertia / (h / 2.0)),
        ("I_mm4", inertia),
        ("fm_d", bending),
        ("fv_d", shear),
        ("M_Rd_kNm", en1995::bending_knm(bending, b, h)),
        ("V_Rd_kN", en1995::shear_kn(shear, kcr, b, h)),
        ("EI_kNm2", class.modulus_mpa * inertia * 1e-9),
    ]))
}

fn bearing(case: &Case) -> Option<Got> {
    let (class, b, contact) = (class(case)?, case.positive("b")?, case.positive("l")?);
    let clear = case.number_or("l1", f64::INFINITY);
    let length = en1995::bearing_length_mm(contact, case.number_or("a_end", f64::INFINITY), clear);
    let strength =
        en1995::design_strength(class.characteristic.bearing_mpa, case.number("kmod")?, case.number_or("gammaM", 1.3));
    let area = b * length;
    let resistance = case.number_or("kc90", 1.0) * strength * area * 1e-3;
    Some(Got::of(&[("l_ef", length), ("A_ef", area), ("fc90_d", strength), ("R_d_kN", resistance)]))
}

fn notch(case: &Case) -> Option<Got> {
    let notch = Notch {
        depth_mm: case.positive("h")?,
        left_mm: case.positive("hef")?,
        from_support_mm: case.number("x")?,
        taper: case.number_or("i", 0.0),
        kn: case.number_or("kn", 5.0),
    };
    Some(Got::of(&[("alpha", notch.alpha()), ("kv", notch.factor())]))
}

fn column(case: &Case) -> Option<Got> {
    let (class, b, h) = (class(case)?, case.positive("b")?, case.positive("h")?);
    let strength = class.characteristic.compression_mpa;
    let thin = b.min(h);
    let slender = en1995::slenderness(
        case.positive("L_mm")?,
        thin,
        strength,
        class.modulus_005_mpa,
        case.number_or("beta_c", 0.2),
    );
    let design = en1995::design_strength(strength, case.number("kmod")?, case.number_or("gammaM", 1.3));
    Some(Got::of(&[
        ("lam", slender.lambda),
        ("lam_rel", slender.relative),
        ("k", slender.k),
        ("kc", slender.kc),
        ("N_Rd_kN", slender.kc * design * b * h * 1e-3),
    ]))
}

fn permissible(case: &Case) -> Option<Got> {
    let (class, b, h) = (class(case)?, case.positive("b")?, case.positive("h")?);
    let exposure = match case.text("K2") {
        Some("wet") => WET,
        Some("dry") | None => DRY,
        Some(_) => return None,
    };
    let (k3, k8) = (case.number_or("K3", bs5268::K3_FALSEWORK), case.number_or("K8", 1.0));
    let allowed = bs5268::permissible(&class, exposure, k3, h, k8);
    Some(Got::of(&[
        ("K7", bs5268::depth_factor(h)),
        ("sigma_m", allowed.bending_mpa),
        ("tau", allowed.shear_mpa),
        ("sigma_c_perp", allowed.across_mpa),
        ("M_kNm", en1995::bending_knm(allowed.bending_mpa, b, h)),
        ("V_kN", en1995::shear_kn(allowed.shear_mpa, 1.0, b, h)),
        ("EI_kNm2", allowed.least_modulus_mpa * b * h * h * h / 12.0 * 1e-9),
    ]))
}

/// The catalogue's beam of a class.
fn beam_of_class(name: &str) -> Option<TimberBeam> {
    let item: Item = Catalogue::generic().get(&format!("TB{}", name.strip_prefix('P')?))?.clone();
    match item.kind {
        Kind::TimberBeam(beam) => Some(beam),
        _ => None,
    }
}

fn formwork_beam(case: &Case) -> Option<Got> {
    let beam = beam_of_class(case.text("cls")?)?;
    let (kmod, gamma) = (case.number_or("kmod", 0.9), case.number_or("gammaM", 1.3));
    let load_factor = case.number_or("gammaF", 1.5);
    let mut got = Got::of(&[("EI", beam.stiffness_knm2)]);
    for (name, characteristic) in [
        ("M", case.number_or("k_M", beam.moment_knm)),
        ("V", case.number_or("k_V", beam.shear_kn)),
        ("R", case.number_or("k_R", beam.bearing_kn)),
    ] {
        let design = en1995::design_strength(characteristic, kmod, gamma);
        got = got.with(&format!("{name}_d"), design).with(&format!("{name}_work"), design / load_factor);
    }
    Some(got)
}

fn plies(number: f64) -> Option<u32> {
    (3.0..=99.0).contains(&number).then_some(number as u32)
}

fn lay_up(case: &Case) -> Option<LayUp> {
    let birch = LayUp::birch(plies(case.number("plies")?)?);
    Some(LayUp {
        plies: birch.plies,
        veneer_mm: case.number_or("veneer_mm", birch.veneer_mm),
        face_mm: case.number_or("face_mm", birch.face_mm),
        ply_modulus_mpa: case.number_or("E_ply", birch.ply_modulus_mpa),
        ply_bending_mpa: case.number_or("fm_ply", birch.ply_bending_mpa),
    })
}

fn plywood(case: &Case) -> Option<Got> {
    let board = lay_up(case)?;
    Some(Got::of(&[
        ("t", board.thickness_mm()),
        ("W", board.modulus_mm2()),
        ("I", board.inertia_mm3()),
        ("E_par", board.bending_modulus_mpa(Grain::Along)),
        ("E_perp", board.bending_modulus_mpa(Grain::Across)),
        ("fm_par", board.bending_mpa(Grain::Along)),
        ("fm_perp", board.bending_mpa(Grain::Across)),
    ]))
}

fn plywood_table(case: &Case) -> Option<Got> {
    let boards: Vec<LayUp> =
        case.numbers("plies")?.into_iter().map(|number| plies(number).map(LayUp::birch)).collect::<Option<_>>()?;
    let row = |value: &dyn Fn(&LayUp) -> f64| -> Vec<f64> { boards.iter().map(value).collect() };
    Some(
        Got::default()
            .with("t", row(&LayUp::thickness_mm))
            .with("W", row(&LayUp::modulus_mm2))
            .with("I", row(&LayUp::inertia_mm3))
            .with("fm_par", row(&|board| board.bending_mpa(Grain::Along)))
            .with("fm_perp", row(&|board| board.bending_mpa(Grain::Across)))
            .with("E_par", row(&|board| board.bending_modulus_mpa(Grain::Along)))
            .with("E_perp", row(&|board| board.bending_modulus_mpa(Grain::Across))),
    )
}

fn board_table(case: &Case) -> Option<Got> {
    let sections: Vec<(f64, f64)> = case.numbers("t_min_mm")?.into_iter().map(board_section).collect();
    let moduli: Vec<f64> = sections.iter().map(|section| section.0 * 1e-3).collect();
    let inertias: Vec<f64> = sections.iter().map(|section| section.1 * 1e-3).collect();
    Some(Got::default().with("Z_1e3mm3", moduli).with("I_1e3mm4", inertias))
}

fn duration(name: &str) -> Option<Duration> {
    Some(match name {
        "permanent" => Duration::Permanent,
        "long" => Duration::Long,
        "medium" => Duration::Medium,
        "short" => Duration::Short,
        "instantaneous" => Duration::Instantaneous,
        _ => return None,
    })
}

fn kmod_table(case: &Case) -> Option<Got> {
    let durations: Vec<Duration> = case.texts("duration")?.into_iter().map(duration).collect::<Option<_>>()?;
    let row = |class| -> Vec<f64> { durations.iter().map(|&duration| en1995::kmod(class, duration)).collect() };
    Some(
        Got::default()
            .with("SC1", row(ServiceClass::Dry))
            .with("SC2", row(ServiceClass::Covered))
            .with("SC3", row(ServiceClass::Wet)),
    )
}

/// Sheeting under an even pressure by coefficients of moment, shear and deflection.
fn sheeting(case: &Case) -> Option<Got> {
    let board = lay_up(case)?;
    let grain = match case.text("direction")? {
        "parallel" => Grain::Along,
        "perpendicular" => Grain::Across,
        _ => return None,
    };
    let coefficients = case.numbers("coeff")?;
    let [by_moment, by_shear, by_deflection] = coefficients.as_slice() else { return None };
    let (span_m, pressure) = (case.positive("span_mm")? * 1e-3, case.number("p_k")?);
    let strength = case.number("fv_planar")?;
    let board = board.board(grain, strength, 680.0, [2.44, 1.22])?;
    let (kmod, gamma) = (case.number("kmod")?, case.number("gammaM")?);
    let design = pressure * case.number_or("gammaF", 1.5);
    let design_strength = |mpa| en1995::design_strength(mpa, kmod, gamma);
    let moment_resistance = design_strength(board.bending_mpa) * 1e3 * board.modulus_m3_m;
    let shear_resistance = design_strength(strength) * 1e3 * board.thickness_m / 1.5;
    let (moment, shear) = (by_moment * design * span_m * span_m, by_shear * design * span_m);
    let deflection_m = by_deflection * pressure * libm::pow(span_m, 4.0) / board.stiffness_knm2_m;
    Some(Got::of(&[
        ("M_Ed_kNm_m", moment),
        ("M_Rd_kNm_m", moment_resistance),
        ("V_Ed_kN_m", shear),
        ("V_Rd_kN_m", shear_resistance),
        ("util_M", moment / moment_resistance),
        ("util_V", shear / shear_resistance),
        ("defl_mm", deflection_m * 1e3),
        ("span_over_defl", span_m / deflection_m),
    ]))
}
