use super::{FOUR_FIGURES, Row, Rows};
use falsewright_core::catalogue::{Catalogue, Section, standard_section};
use falsewright_core::checks::buckling::{
    Bending, critical_force_kn, curve_of_rolled_i, imperfection, phi, reduction, slenderness,
};
use falsewright_core::checks::en1993;
use falsewright_core::checks::fittings::Coupler;
use falsewright_core::checks::lateral_torsional::{
    MomentShape, Twisting, critical_moment_knm, general_imperfection, rolled_imperfection, rolled_phi, rolled_reduction,
};
use falsewright_core::checks::tie::{bolt_tension_kn, rod_area_mm2, steel_force_kn};
use falsewright_core::checks::web::{WebLoad, web_bearing_bs5950_kn, web_resistance};
use falsewright_core::checks::{BeamColumn, GeneralMethod, check_beam_column};
use falsewright_core::scheme::Basis;

const MSB: &str = "Steel Buildings in Europe, Multi-Storey Part 4";

pub(super) fn section(name: &str) -> Section {
    standard_section(name).unwrap_or_else(|| panic!("no {name}"))
}

pub fn rows() -> Vec<Row> {
    let mut rows = Rows::new("Steel");
    curves(&mut rows);
    columns(&mut rows);
    lateral(&mut rows);
    resistances(&mut rows);
    webs(&mut rows);
    members(&mut rows);
    ties(&mut rows);
    rows.rows
}

const SLENDER: [f64; 10] = [0.2, 0.4, 0.6, 0.8, 1.0, 1.2, 1.5, 2.0, 2.5, 3.0];
// 0.7854 is a reduction factor, not π / 4.
#[allow(clippy::approx_constant)]
const CHI: [(&str, [f64; 10]); 5] = [
    ("a0", [1.0, 0.9701, 0.9276, 0.8533, 0.7253, 0.5732, 0.3953, 0.2323, 0.1515, 0.1063]),
    ("a", [1.0, 0.9528, 0.8900, 0.7957, 0.6656, 0.5300, 0.3724, 0.2229, 0.1467, 0.1036]),
    ("b", [1.0, 0.9261, 0.8371, 0.7245, 0.5970, 0.4781, 0.3422, 0.2095, 0.1397, 0.0994]),
    ("c", [1.0, 0.8973, 0.7854, 0.6622, 0.5399, 0.4338, 0.3145, 0.1962, 0.1325, 0.0951]),
    ("d", [1.0, 0.8504, 0.7100, 0.5797, 0.4671, 0.3762, 0.2766, 0.1766, 0.1214, 0.0882]),
];

fn curves(rows: &mut Rows) {
    rows.from("EN 1993-1-1 6.3.1.2, worked independently", "", FOUR_FIGURES);
    for (curve, printed) in CHI {
        let alpha = imperfection(curve).unwrap_or(f64::NAN);
        for (slender, expected) in SLENDER.into_iter().zip(printed) {
            rows.check(format!("χ of curve {curve} at {slender}"), expected, reduction(slender, alpha));
        }
    }
}

fn columns(rows: &mut Rows) {
    let critical = critical_force_kn(8560e-8, 5.6);
    let squash = 14_900.0 * 0.235;
    let slender = slenderness(squash, critical);
    rows.from(MSB, "kN", FOUR_FIGURES).check("Ncr of HE 300 B, 5.60 m (A.5)", 5657.4, critical);
    rows.from(MSB, "", FOUR_FIGURES).check("λ of HE 300 B, 5.60 m (A.5)", 0.787, slender);
    rows.from(MSB, "", 0.001);
    rows.check("Φ at 0.655, curve b", 0.792, phi(0.655, 0.34)).check(
        "χ at 0.655, curve b",
        0.808,
        reduction(0.655, 0.34),
    );
    let curve = curve_of_rolled_i(1.0, 19.0, Bending::Minor).and_then(imperfection);
    rows.from("EN 1993-1-1 Table 6.2, worked independently", "kN", FOUR_FIGURES);
    rows.check("Nb of HE 300 B about z, 5.60 m", 2348.0, squash * reduction(slender, curve.unwrap_or(f64::NAN)));
}

fn lateral(rows: &mut Rows) {
    let ipe = section("IPE 330").properties();
    let critical = critical_moment_knm(&ipe, MomentShape::uniform_load(165.0), 5.7);
    rows.from(MSB, "kNm", 0.003).check("Mcr of IPE 330, 5.70 m, load on top (A.1)", 113.9, critical);
    let slender = slenderness(en1993::moment_knm(804_300.0, 235.0), 113.9);
    rows.from(MSB, "", 0.001).check("λLT of IPE 330 (A.1)", 1.288, slender);
    let alpha = rolled_imperfection(330.0 / 160.0);
    rows.check("ΦLT of IPE 330 (A.1)", 1.340, rolled_phi(slender, alpha));
    rows.check("χLT of IPE 330 (A.1)", 0.480, rolled_reduction(slender, alpha));
    rows.from("EN 1993-1-1 6.3.2.2, worked independently", "kNm", 0.001);
    let general = reduction(slender, general_imperfection(330.0 / 160.0));
    rows.check("Mb of IPE 330 by the general case", 81.75, general * en1993::moment_knm(804_300.0, 235.0));
    let ub = Twisting { minor_inertia_mm4: 7_643_590.0, torsion_mm4: 147_345.0, warping_mm6: 1.642_73e11 };
    let critical = critical_moment_knm(ub, MomentShape::end_moments(1.0), 3.0);
    let plastic = en1993::moment_knm(623_075.0, 275.0);
    rows.from("NCCI SN003, worked independently", "kNm", 0.005);
    rows.check("Mcr of UB 305×165×40, 3.0 m, even moment", 295.9, critical);
    let chi = rolled_reduction(slenderness(plastic, critical), rolled_imperfection(1.84));
    rows.check("Mb of UB 305×165×40, 3.0 m, even moment", 143.6, chi * plastic);
}

fn resistances(rows: &mut Rows) {
    let ub = section("UB 254x146x31").properties();
    rows.from("Public calculation sheet to EN 1993-1-1", "mm²", 0.003);
    rows.check("Av of UB 254×146×31", 1639.4, ub.shear_area_mm2);
    rows.from("Public calculation sheet to EN 1993-1-1", "kN", 0.003);
    rows.check("Vpl of UB 254×146×31 S275", 260.29, en1993::shear_kn(ub.shear_area_mm2, 275.0));
    rows.from("Public calculation sheet to EN 1993-1-1", "kNm", 0.003);
    rows.check("Mc of UB 254×146×31 S275", 108.08, en1993::moment_knm(ub.plastic_modulus_mm3, 275.0));
    let rho = en1993::high_shear(200.0 / 260.3);
    rows.from("EN 1993-1-1 6.2.8, worked independently", "", FOUR_FIGURES).check("ρ at 200 of 260.3 kN", 0.2880, rho);
    let sheared = en1993::modulus_with_shear_mm3(393_000.0, rho, 1405.2, 6.0);
    rows.from("EN 1993-1-1 6.2.8, worked independently", "kNm", FOUR_FIGURES);
    rows.check("MV at 200 of 260.3 kN", 101.6, en1993::moment_knm(sheared, 275.0));
    let (n, share) = (400.0 / (3970.0 * 0.275), en1993::web_share(3970.0, 146.1, 8.6));
    rows.from("EN 1993-1-1 6.2.9.1, worked independently", "kNm", FOUR_FIGURES);
    rows.check("MN beside 400 kN", 83.87, en1993::moment_with_axial(108.075, n, share));
}

fn webs(rows: &mut Rows) {
    let ub = section("UB 305x165x40");
    rows.from("EN 1993-1-5 section 6, worked independently", "kN", FOUR_FIGURES);
    let inside = web_resistance(&ub, 275.0, 100.0, WebLoad::OneFlange { panel_mm: f64::INFINITY });
    rows.check("UB 305×165×40 on 100 mm, type (a)", 301.1, inside.resistance_kn);
    let end = web_resistance(&ub, 275.0, 100.0, WebLoad::End { beyond_mm: 0.0 });
    rows.check("UB 305×165×40 on 100 mm, type (c)", 202.2, end.resistance_kn);
    rows.from("BS 5950-1 form from memory, worked independently", "kN", FOUR_FIGURES);
    rows.check("100 mm inside the span", 322.6, web_bearing_bs5950_kn(19.1, 6.0, 275.0, 100.0, None));
    rows.check("100 mm at the end", 228.0, web_bearing_bs5950_kn(19.1, 6.0, 275.0, 100.0, Some(0.0)));
}

/// UB 203×133×25 S275, 100 kN and 20 kNm, 3.0 m about y, 1.5 m about z: Nb,y 507.2 kN, Nb,z 457.2 kN, Mb 41.50 kNm after
/// 1.65; λy 0.4039 gives kyy 1.0402.
fn members(rows: &mut Rows) {
    let item = Catalogue::generic().get("UB203x133x25").unwrap_or_else(|| panic!("no UB203x133x25")).clone();
    let member =
        BeamColumn { compression_kn: 100.0, moment_knm: 20.0, minor_moment_knm: 0.0, major_m: 3.0, minor_m: 1.5 };
    let verdicts = check_beam_column(&item, Basis::WorkingLoad, &member);
    rows.from("EN 1993-1-1 6.3.3 with Annex B, worked independently", "", 0.002);
    rows.check("UB 203×133×25, 100 kN and 20 kNm, about y", 0.6985, verdicts[0].ratio());
    rows.check("UB 203×133×25, 100 kN and 20 kNm, about z", 0.7006, verdicts[1].ratio());
    // Wpl,z 70.94 cm³, so Mc,z 11.82 kNm; λz 0.5570: kzz = 1 + (2 × 0.5570 − 0.6) × 100 / 457.2 = 1.1124.
    let both = BeamColumn { minor_moment_knm: 3.0, ..member };
    let verdicts = check_beam_column(&item, Basis::WorkingLoad, &both);
    rows.check("The same with 3 kNm about z, about y", 0.8678, verdicts[0].ratio());
    rows.check("The same with 3 kNm about z, about z", 0.9829, verdicts[1].ratio());
    rows.from("EN 10365 tables (from memory)", "cm³", 0.005);
    for (name, printed) in [("HE 300 B", 870.1), ("HE 240 B", 498.4), ("IPE 330", 153.7), ("UB 305x165x40", 142.0)] {
        rows.check(format!("Wpl,z of {name}"), printed, section(name).properties().minor_modulus_mm3 / 1e3);
    }
    general(rows);
}

/// Compression alone and bending alone must come back to 6.3.1 and 6.3.2.2. Both: IPE 330 S235, 5.70 m, 100 kN and 40 kNm.
fn general(rows: &mut Rows) {
    let ratio = |ultimate, critical, flexural, lateral| {
        let method = GeneralMethod { ultimate, critical, flexural, lateral };
        method.check(Basis::LimitStateB1).ratio() / 1.1
    };
    rows.from("EN 1993-1-1 6.3.4 on a column: 1000 kN by Nb 2348 kN", "", 0.001);
    let critical = critical_force_kn(8560e-8, 5.6) / 1000.0;
    rows.check("HE 300 B S235, 5.60 m, about z", 1000.0 / 2348.0, ratio(3.5015, critical, Some(0.49), None));
    rows.from("EN 1993-1-1 6.3.4 on a beam: 50 kNm by Mb 81.75 kNm", "", 0.001);
    rows.check("IPE 330 S235, 5.70 m", 50.0 / 81.75, ratio(189.01 / 50.0, 113.9 / 50.0, None, Some(0.34)));
    rows.from("EN 1993-1-1 6.3.4, worked independently: αult 3.577, αcr 1.818, χ 0.3806", "", 0.001);
    rows.check("IPE 330 S235, 5.70 m, 100 kN and 40 kNm", 0.8081 / 1.1, ratio(3.5766, 1.8179, Some(0.34), Some(0.34)));
}

fn ties(rows: &mut Rows) {
    for (diameter, yielding, breaking) in [(15.0, 159.0, 194.4), (20.0, 282.7, 345.6)] {
        let area = rod_area_mm2(diameter);
        rows.from("Area × strength, worked independently", "kN", FOUR_FIGURES);
        rows.check(format!("Yield of {diameter} mm rod, 900 N/mm²"), yielding, steel_force_kn(area, 900.0));
        rows.check(format!("Breaking of {diameter} mm rod, 1100 N/mm²"), breaking, steel_force_kn(area, 1100.0));
    }
    rows.from("EN 1993-1-8 Table 3.4, worked independently", "kN", FOUR_FIGURES);
    rows.check("177 mm², 1100 N/mm²", 140.2, bolt_tension_kn(steel_force_kn(177.0, 1100.0), 1.25));
    rows.from("NASC TG20:13", "kN", 1e-9);
    for (coupler, expected) in [
        (Coupler::RightAngleA, 6.1),
        (Coupler::RightAngleB, 9.1),
        (Coupler::SwivelA, 3.6),
        (Coupler::SwivelB, 5.5),
        (Coupler::Putlog, 0.63),
    ] {
        rows.check(format!("{coupler:?} coupler"), expected, coupler.allowed_kn(Basis::WorkingLoad));
    }
}
