use super::{FOUR_FIGURES, Row, Rows};
use falsewright_core::catalogue::{Catalogue, Item, Kind, Timber, TimberClass};
use falsewright_core::checks::bs5268::{self, WET};
use falsewright_core::checks::en1995::{self, Duration, Notch, ServiceClass};
use falsewright_core::checks::{check_beam, check_deflection};
use falsewright_core::scheme::Basis;

const EN1995: &str = "EN 338:2016 and EN 1995-1-1, worked independently";

fn class(name: &str) -> TimberClass {
    TimberClass::named(name).unwrap_or_else(|| panic!("no class {name}"))
}

pub fn rows() -> Vec<Row> {
    let mut rows = Rows::new("Timber");
    factors(&mut rows);
    beams(&mut rows);
    supports_and_notches(&mut rows);
    columns(&mut rows);
    permissible(&mut rows);
    formwork_beams(&mut rows);
    rows.rows
}

fn factors(rows: &mut Rows) {
    rows.from("EN 1995-1-1 Table 3.1 in the ICE Manual of Structural Design, Table 19.9", "", 1e-9);
    let durations = [Duration::Permanent, Duration::Long, Duration::Medium, Duration::Short, Duration::Instantaneous];
    for (service, printed) in [
        (ServiceClass::Dry, [0.60, 0.70, 0.80, 0.90, 1.10]),
        (ServiceClass::Covered, [0.60, 0.70, 0.80, 0.90, 1.10]),
        (ServiceClass::Wet, [0.50, 0.55, 0.65, 0.70, 0.90]),
    ] {
        for (duration, expected) in durations.into_iter().zip(printed) {
            rows.check(format!("kmod, {service:?}, {duration:?}"), expected, en1995::kmod(service, duration));
        }
    }
    rows.from("EN 1995-1-1 3.2(3), form confirmed in print", "", FOUR_FIGURES);
    for (depth, expected) in [(50.0, 1.246), (75.0, 1.149), (100.0, 1.084), (150.0, 1.0)] {
        rows.check(format!("kh at {depth} mm"), expected, en1995::depth_factor(depth));
    }
}

fn beams(rows: &mut Rows) {
    for (name, b, h, kmod, [moment, shear, stiffness]) in [
        ("C24", 75.0, 150.0, 0.7, [3.635, 10.82, 232.0]),
        ("C16", 100.0, 100.0, 0.7, [1.557, 7.696, 66.67]),
        ("C24", 75.0, 225.0, 0.9, [10.51, 20.87, 783.1]),
    ] {
        let class = class(name);
        let of = format!("of {name} {b} × {h}, kmod {kmod}");
        let bending = en1995::depth_factor(h) * en1995::design_strength(class.characteristic.bending_mpa, kmod, 1.3);
        let along = en1995::design_strength(class.characteristic.shear_mpa, kmod, 1.3);
        rows.from(EN1995, "kNm", FOUR_FIGURES);
        rows.check(format!("Moment {of}"), moment, en1995::bending_knm(bending, b, h));
        rows.from(EN1995, "kN", FOUR_FIGURES);
        rows.check(format!("Shear {of}"), shear, en1995::shear_kn(along, en1995::KCR_SOLID, b, h));
        rows.from(EN1995, "kNm²", FOUR_FIGURES);
        rows.check(format!("EI {of}"), stiffness, class.modulus_mpa * b * h * h * h / 12.0 * 1e-9);
    }
}

fn supports_and_notches(rows: &mut Rows) {
    rows.from("EN 1995-1-1 6.1.5, worked independently", "mm", FOUR_FIGURES);
    rows.check("Bearing length inside", 160.0, en1995::bearing_length_mm(100.0, 200.0, 600.0));
    rows.check("Bearing length at a flush end", 130.0, en1995::bearing_length_mm(100.0, 0.0, 500.0));
    let bearing = |name: &str| en1995::design_strength(class(name).characteristic.bearing_mpa, 0.7, 1.3);
    rows.from("EN 1995-1-1 6.1.5, worked independently", "kN", FOUR_FIGURES);
    rows.check("C24, 75 mm, discrete support", 24.23, 1.5 * bearing("C24") * 75.0 * 160.0 * 1e-3);
    rows.check("C16, 100 mm, flush end", 15.40, bearing("C16") * 100.0 * 130.0 * 1e-3);
    rows.from("EN 1995-1-1 6.1.5(3)", "", FOUR_FIGURES);
    rows.check("kc,90 discrete, clear of two depths", 1.5, en1995::bearing_factor(true, 600.0, 150.0));
    rows.check("kc,90 discrete, close", 1.0, en1995::bearing_factor(true, 200.0, 150.0));
    rows.from("EN 1995-1-1 6.5.2, worked independently", "", FOUR_FIGURES);
    for (left_mm, from_support_mm, taper, expected) in [(150.0, 75.0, 0.0, 0.5077), (160.0, 60.0, 4.0, 0.9764)] {
        let notch = Notch { depth_mm: 200.0, left_mm, from_support_mm, taper, kn: 5.0 };
        rows.check(format!("kv, 200 mm notched to {left_mm} mm, i {taper}"), expected, notch.factor());
    }
}

fn columns(rows: &mut Rows) {
    for (name, side, length, [relative, kc, force]) in
        [("C24", 100.0, 2500.0, [1.469, 0.3934, 44.49]), ("C16", 75.0, 1500.0, [1.237, 0.5203, 26.79])]
    {
        let class = class(name);
        let along = class.characteristic.compression_mpa;
        let slender = en1995::slenderness(length, side, along, class.modulus_005_mpa, 0.2);
        let of = format!("of {name} {side} × {side}, {length} mm");
        rows.from("EN 1995-1-1 6.3.2, worked independently", "", FOUR_FIGURES);
        rows.check(format!("λrel {of}"), relative, slender.relative).check(format!("kc {of}"), kc, slender.kc);
        let got = slender.kc * en1995::design_strength(along, 0.7, 1.3) * side * side * 1e-3;
        rows.from("EN 1995-1-1 6.3.2, worked independently", "kN", FOUR_FIGURES).check(format!("N {of}"), force, got);
    }
}

fn permissible(rows: &mut Rows) {
    for (name, b, h, k8, [bending, shear, across, moment]) in [
        ("C24", 75.0, 150.0, 1.0, [9.066, 0.8946, 2.016, 2.550]),
        ("C16", 50.0, 100.0, 1.1, [7.368, 0.9286, 2.033, 0.6140]),
    ] {
        let allowed = bs5268::permissible(&class(name), WET, bs5268::K3_FALSEWORK, h, k8);
        let of = format!("of {name} {b} × {h}, wet, K8 {k8}");
        rows.from("BS 5268-2:2002 from memory, worked independently", "N/mm²", FOUR_FIGURES);
        rows.check(format!("Bending {of}"), bending, allowed.bending_mpa);
        rows.check(format!("Shear {of}"), shear, allowed.shear_mpa);
        rows.check(format!("Across the grain {of}"), across, allowed.across_mpa);
        rows.from("BS 5268-2:2002 from memory, worked independently", "kNm", FOUR_FIGURES);
        rows.check(format!("Moment {of}"), moment, en1995::bending_knm(allowed.bending_mpa, b, h));
    }
    rows.from("BS 5268-2:2002 Annex B, worked by hand", "", FOUR_FIGURES);
    rows.check("K12, E/σ 1000, λ 60", 0.6772, bs5268::strut_factor(1000.0, 1.0, 60.0));
    rows.from("BS 5268-2:2002 Table 22, from memory", "", 0.002);
    rows.check("K12, E/σ 1000, λ 5", 0.975, bs5268::strut_factor(1000.0, 1.0, 5.0));
    let timber = Timber { breadth_m: 0.075, depth_m: 0.15, class: "C24".into(), notch: None };
    let item = Item { code: "T".into(), name: "T".into(), source: "T".into(), kind: Kind::Timber(timber) };
    let verdicts = check_beam(&item, Basis::WorkingLoad, 1.0, 1.0, None, 0.1);
    rows.from("BS 5268-2:2002 from memory, worked independently", "kN", FOUR_FIGURES);
    rows.check("Shear of C24 75 × 150, wet", 6.710, verdicts[1].resistance);
    rows.from("Statics, span/270", "", FOUR_FIGURES);
    rows.check("5.556 mm on 2.0 m", 0.75, check_deflection(0.005_555_6, 2.0, 270.0).ratio());
}

fn formwork_beams(rows: &mut Rows) {
    let published = "Public technical sheet to EN 13377 class P20: 5.0, 11.0, 22.0";
    let memory = "EN 13377 from memory, worked independently";
    for (code, source, tolerance, printed) in [
        ("TB16", memory, FOUR_FIGURES, [2.723, 8.492, 16.98]),
        ("TB20", published, 0.007, [5.0, 11.0, 22.0]),
        ("TB24", memory, FOUR_FIGURES, [6.508, 13.02, 25.98]),
    ] {
        let item = Catalogue::generic().get(code).unwrap_or_else(|| panic!("no {code}")).clone();
        let verdicts = check_beam(&item, Basis::WorkingLoad, 1.0, 1.0, Some(1.0), 0.1);
        for ((name, unit), (verdict, expected)) in
            [("moment", "kNm"), ("shear", "kN"), ("bearing", "kN")].into_iter().zip(verdicts.iter().zip(printed))
        {
            rows.from(source, unit, tolerance).check(format!("{code} working {name}"), expected, verdict.resistance);
        }
    }
}
