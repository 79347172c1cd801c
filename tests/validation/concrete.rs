use super::{FOUR_FIGURES, Row, Rows};
use falsewright_core::checks::concrete::{Anchor, Cement, PlateOnSlab, characteristic_strength_at, punching_stress};
use falsewright_core::checks::fittings::{Spigot, TiePlate};
use falsewright_core::checks::striking::{
    Form, characteristic_at, equivalent_age_h, hours_until, hours_until_in, least_time_h, nurse_saul_c_h,
    soffit_strength_mpa,
};
use falsewright_core::checks::{EndForce, check_fixed_end};
use falsewright_core::results::CheckKind;
use falsewright_core::scheme::{Basis, Hardening, HeldBy, Temperature};

pub fn rows() -> Vec<Row> {
    let mut rows = Rows::new("Young concrete and anchors");
    age(&mut rows);
    slab(&mut rows);
    anchors(&mut rows);
    plates(&mut rows);
    rows.rows
}

fn age(rows: &mut Rows) {
    rows.from("By hand: 24 × 30 + 12 × 15", "°C h", FOUR_FIGURES);
    rows.check("Nurse–Saul, 24 h at 20 °C and 12 h at 5 °C", 900.0, nurse_saul_c_h(&[(24.0, 20.0), (12.0, 5.0)]));
    // exp(13.65 − 4000 / 278) = exp(−0.7385) = 0.4778.
    rows.from("EN 1992-1-1 (B.10) by hand", "h", FOUR_FIGURES);
    rows.check("24 h at 5 °C", 11.47, equivalent_age_h(&[(24.0, 5.0)]));
    rows.from("EN 1992-1-1 3.1.2(5) by hand: 38 × exp(0.25 × (1 − 2)) − 8", "N/mm²", FOUR_FIGURES);
    rows.check("fck of C30 at 7 days, class N", 21.59, characteristic_strength_at(30.0, Cement::Normal, 7.0));
    // βcc = 10 / 38 = 0.2632: √(28 / t) = 1 + 1.335 / 0.25 = 6.340, t = 0.6966 d = 16.72 h.
    rows.from("EN 1992-1-1 3.1.2(6) by hand", "h", 0.002);
    rows.check(
        "10 N/mm² of 38, class N, 20 °C",
        16.72,
        hours_until(10.0, 38.0, Cement::Normal, 20.0).unwrap_or(f64::NAN),
    );
    // At 20 °C 16.72 h; the first 10 h at 5 °C count exp(13.65 − 4000 / 278) × 10 = 4.778 and 15 / 30 × 10 = 5 of them.
    let cold_first = Temperature::History { hours_celsius: vec![[10.0, 5.0], [10.0, 20.0]] };
    rows.from("The same by hand: 10 + (16.72 − 4.778) / exp(13.65 − 4000 / 293)", "h", 0.002);
    rows.check(
        "10 N/mm² of 38, class N, 10 h at 5 °C and then 20 °C",
        10.0 + 11.942 / 0.99812,
        hours_until_in(10.0, 38.0, Cement::Normal, &cold_first).unwrap_or(f64::NAN),
    );
    // 14 days at 12 °C: exp(13.65 − 4000 / 285) = 0.6804, 9.525 days; βcc = exp(0.25 (1 − √(28 / 9.525))) = 0.8364.
    let hardening =
        Hardening { class_mpa: 32.0, cement: Cement::Normal, temperature: Temperature::Mean { celsius: 12.0 } };
    rows.from("EN 1992-1-1 3.1.2(5) and (B.10) by hand: 40 × 0.8364 − 8", "N/mm²", 0.002);
    rows.check("fck of C32 after 14 days at 12 °C, class N", 25.46, characteristic_at(&hardening, 14.0 * 24.0));
    rows.from("BS 8110 Table 6.2, from memory: 300 / 20; 100 / 20 days", "h", FOUR_FIGURES);
    rows.check("Walls at 10 °C", 15.0, least_time_h(Form::Vertical, 10.0).unwrap_or(f64::NAN));
    rows.check("Slab soffits at 10 °C", 120.0, least_time_h(Form::SlabSoffit, 10.0).unwrap_or(f64::NAN));
    rows.from("w / w_ser, by hand: 8 / 16 × 30", "N/mm²", FOUR_FIGURES);
    rows.check("Soffit with half its load", 15.0, soffit_strength_mpa(8.0, 16.0, 30.0));
}

fn slab(rows: &mut Rows) {
    let plate = PlateOnSlab { sides_m: [0.15, 0.15], slab_m: 0.25, to_edge_m: 1.0 };
    rows.from("EN 1992-1-1 6.7(2) by hand: 0.0225 × 10 × 2.667", "kN", FOUR_FIGURES);
    rows.check("150 mm plate on 250 mm of slab, 10 N/mm²", 600.0, plate.local_bearing_kn(10.0));
    rows.from("EN 1992-1-1 6.7(2) by hand: to the edge 0.1 m", "kN", FOUR_FIGURES);
    rows.check("The same near an edge", 300.0, PlateOnSlab { to_edge_m: 0.1, ..plate }.local_bearing_kn(10.0));
    // d 0.2 m: k = 2; 0.18 / 1.5 × 2 × (100 × 0.005 × 25)^⅓ = 0.5570; floor 0.035 × 2^1.5 × 5 = 0.4950.
    rows.from("EN 1992-1-1 6.4.4 by hand", "N/mm²", FOUR_FIGURES);
    rows.check("vRd,c of C25, 0.5 %, d 0.2 m", 0.5570, punching_stress(25.0, 0.005, 0.2, 1.5));
    rows.from("EN 1992-1-1 6.4.2 by hand: 0.6 + 0.8 π", "m", FOUR_FIGURES);
    rows.check("Perimeter of a 150 mm plate, d 0.2 m", 3.113, plate.control_perimeter_m(0.2));
}

fn anchors(rows: &mut Rows) {
    let anchor = Anchor { depth_m: 0.2, head_m: 0.06, rod_m: 0.02, edge_m: 1.0, spacing_m: 1.0, cracked: true };
    // 8.9 × 5 × 200^1.5 = 125.9 kN.
    rows.from("EN 1992-4 7.2.1.4 from memory, by hand", "kN", FOUR_FIGURES);
    rows.check("Cone of 200 mm in C25, cracked", 125.9, anchor.cone_kn(25.0));
    let close = Anchor { spacing_m: 0.3, ..anchor };
    rows.check("The same 300 mm apart: half", 62.93, close.cone_kn(25.0));
    // 7.5 × π / 4 × (60² − 20²) × 25 = 471.2 kN.
    rows.check("Pull-out of a 60 mm head in C25", 471.2, anchor.pull_out_kn(25.0));
    // α = 0.1 √1.5 = 0.12247, β = 0.1 × 0.16^0.2 = 0.06931: 1.7 × 1.4043 × 1.4153 × 5 × 1000 N.
    let at_edge = Anchor { depth_m: 0.15, rod_m: 0.016, edge_m: 0.1, ..anchor };
    rows.from("EN 1992-4 7.2.2.5 from memory, by hand", "kN", FOUR_FIGURES);
    rows.check("Edge at 100 mm, rod 16 mm, 150 mm deep, C25", 16.89, at_edge.edge_kn(25.0));
    rows.from("EN 1992-4 7.2.2.4 from memory, by hand: twice the cone", "kN", FOUR_FIGURES);
    rows.check("Pry-out of 200 mm in C25", 251.7, anchor.shear_kn(25.0));
    rows.from("EN 1992-4 by hand: (10 / 125.87 + 10 / 251.73) × 2.25", "", FOUR_FIGURES);
    rows.check(
        "10 kN of tension and of shear",
        0.2681,
        anchor.check_together(Basis::WorkingLoad, 25.0, 10.0, 10.0).ratio(),
    );
    kentledge(rows, anchor);
}

fn kentledge(rows: &mut Rows, anchor: Anchor) {
    let block = HeldBy::Kentledge { weight_kn: 20.0, friction: 0.4 };
    let force = EndForce { along_kn: 2.0, out_kn: 3.0, factor: 1.0 };
    let ratio = |basis, kind| {
        let verdicts = check_fixed_end(&block, basis, &force, |_| anchor);
        verdicts.iter().find(|verdict| verdict.check == kind).map_or(f64::NAN, |verdict| verdict.ratio())
    };
    rows.from("Statics with 1.2: 3.6 / 20", "", FOUR_FIGURES);
    rows.check("Block of 20 kN lifted by 3 kN", 0.18, ratio(Basis::WorkingLoad, CheckKind::Uplift));
    rows.from("Statics with 1.2: 2.4 / (0.4 (20 − 3.6))", "", FOUR_FIGURES);
    rows.check("The same pushed by 2 kN", 0.3659, ratio(Basis::WorkingLoad, CheckKind::Sliding));
    rows.from("Statics with 1.5 and 0.9: 3 / (0.9 × 0.4 (20 − 5))", "", FOUR_FIGURES);
    rows.check("The same in limit states", 0.5556, ratio(Basis::LimitStateB1, CheckKind::Sliding));
}

fn plates(rows: &mut Rows) {
    let plate = TiePlate {
        length_m: 0.12,
        width_m: 0.12,
        thickness_m: 0.012,
        gap_m: 0.05,
        hole_m: 0.02,
        nut_m: 0.05,
        yield_mpa: 235.0,
    };
    // M = 90 × (0.0125 − 0.00625) = 0.5625 kNm; W = 100 × 12² / 4 = 3600 mm³: 0.8460 / 1.65 = 0.5127 kNm.
    rows.from("EN 1993-1-1 6.2.5 by hand", "", FOUR_FIGURES);
    rows.check("Tie plate over 50 mm under 90 kN", 1.0971, plate.check_bending(Basis::WorkingLoad, 90.0).ratio());
    // M = 90 × 0.07² / (8 × 0.12) = 0.4594 kNm.
    rows.check("The same on timber", 0.8959, plate.check_overhang(Basis::WorkingLoad, 90.0).ratio());
    let spigot = Spigot { inside_m: 0.0403, spigot_m: 0.038, lap_m: 0.15 };
    rows.from("EN 12811-1 10.2.2.2 from memory, by hand: 1.25 × 2.3 / 150", "rad", FOUR_FIGURES);
    rows.check("Kink at a spigot", 0.01917, spigot.kink());
}
