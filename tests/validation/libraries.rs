use super::{Row, Rows};
use falsewright_core::catalogue::{Hollow, Section, SectionProperties, Steel, TimberClass};
use falsewright_core::checks::concrete::{Cement, mean_strength_at, mean_tension, modulus};
use falsewright_core::checks::en1993;
use falsewright_core::checks::striking::equivalent_age_h;
use falsewright_core::checks::tie::{bolt_tension_kn, steel_force_kn};
use serde::Deserialize;
use serde_json::Value;
use std::collections::BTreeMap;

#[derive(Deserialize)]
struct Case {
    id: String,
    topic: String,
    source: String,
    inputs: Value,
    expected: BTreeMap<String, f64>,
}

impl Case {
    fn number(&self, name: &str) -> f64 {
        self.inputs[name].as_f64().unwrap_or_else(|| panic!("{} has no {name}", self.id))
    }

    fn text(&self, name: &str) -> &str {
        self.inputs[name].as_str().unwrap_or_else(|| panic!("{} has no {name}", self.id))
    }

    fn section(&self) -> Section {
        let (h_mm, b_mm) = (self.number("h"), self.number("b"));
        let (tw_mm, tf_mm, r_mm) = (self.number("tw"), self.number("tf"), self.number("r"));
        if self.topic.starts_with("channel") {
            Section::Channel { h_mm, b_mm, tw_mm, tf_mm, r_mm }
        } else {
            Section::I { h_mm, b_mm, tw_mm, tf_mm, r_mm }
        }
    }

    fn cement(&self) -> Cement {
        match self.text("cement") {
            "R" => Cement::Rapid,
            "N" => Cement::Normal,
            _ => Cement::Slow,
        }
    }
}

/// Fixtures of `tests/peers_codes`.
pub fn rows() -> Vec<Row> {
    let cases: Vec<Case> =
        serde_json::from_str(include_str!("../data/reference/peers_codes.json")).expect("the fixtures are JSON");
    let mut rows = Rows::new("Independent libraries");
    for case in &cases {
        let source = match case.source.as_str() {
            source if source.starts_with("sectionproperties") => "sectionproperties 3.10.2, finite elements",
            source if source.starts_with("structuralcodes") => "structuralcodes 0.7.2",
            _ => "blue-prints 0.8.0",
        };
        for (name, &expected) in &case.expected {
            let (got, unit, tolerance) = value(case, name);
            rows.from(source, unit, tolerance).check(format!("{}: {name}", case.id), expected, got);
        }
    }
    rows.rows
}

/// What is got, its unit and the tolerance: torsion by a fitted expression, and warping of flanges only, are the least
/// exact.
fn value(case: &Case, name: &str) -> (f64, &'static str, f64) {
    match case.topic.as_str() {
        "i" | "channel" => property(&case.section().properties(), name),
        "hollow" => {
            let hollow = Hollow { h_mm: case.number("h"), b_mm: case.number("b"), t_mm: case.number("t") };
            property(&hollow.properties(), name)
        }
        "concrete" if name == "fctm" => (mean_tension(case.number("fck")), "N/mm²", 1e-5),
        "concrete" => (modulus(case.number("fck")), "N/mm²", 1e-5),
        "hardening" if name == "fcm" => {
            (mean_strength_at(case.number("fck"), case.cement(), case.number("days")), "N/mm²", 1e-5)
        }
        "hardening" => (case.cement().hardening(case.number("days")), "", 1e-5),
        "age" => {
            let history: Vec<(f64, f64)> = serde_json::from_value(case.inputs["history"].clone()).expect("a history");
            (equivalent_age_h(&history), "h", 1e-5)
        }
        "resistance" => resistance(case, name),
        "channel shear" => (case.section().properties().shear_area_mm2, "mm²", 0.001),
        "bolt" => (bolt_tension_kn(steel_force_kn(case.number("As"), case.number("fu")), 1.25), "kN", 1e-5),
        "yield" => {
            let t = case.number("t");
            let section = Section::I { h_mm: 300.0, b_mm: 150.0, tw_mm: t, tf_mm: t, r_mm: 10.0 };
            let steel = Steel { section, grade: case.text("grade").into(), side_by_side: 1, breadth_m: 0.15 };
            (steel.yield_mpa().unwrap_or(f64::NAN), "N/mm²", 1e-9)
        }
        "timber" => (timber(case, name), "N/mm²", 1e-9),
        _ => (f64::NAN, "", 0.0),
    }
}

fn property(properties: &SectionProperties, name: &str) -> (f64, &'static str, f64) {
    match name {
        "area_mm2" => (properties.area_mm2, "mm²", 0.001),
        "major_inertia_mm4" => (properties.major_inertia_mm4, "mm⁴", 0.001),
        "minor_inertia_mm4" => (properties.minor_inertia_mm4, "mm⁴", 0.001),
        "plastic_modulus_mm3" => (properties.plastic_modulus_mm3, "mm³", 0.001),
        "torsion_mm4" => (properties.torsion_mm4, "mm⁴", 0.03),
        "warping_mm6" => (properties.warping_mm6, "mm⁶", 0.03),
        _ => (f64::NAN, "", 0.0),
    }
}

fn resistance(case: &Case, name: &str) -> (f64, &'static str, f64) {
    let properties = case.section().properties();
    let (fy, tw) = (case.number("fy"), case.number("tw"));
    let plastic = en1993::moment_knm(properties.plastic_modulus_mm3, fy);
    match name {
        "shear_area_mm2" => (properties.shear_area_mm2, "mm²", 0.001),
        "shear_kn" => (en1993::shear_kn(properties.shear_area_mm2, fy), "kN", 0.001),
        "moment_knm" => (plastic, "kNm", 0.001),
        "moment_at_0.8_shear_knm" => {
            let web = (case.number("h") - 2.0 * case.number("tf")) * tw;
            let rho = en1993::high_shear(0.8);
            let modulus = en1993::modulus_with_shear_mm3(properties.plastic_modulus_mm3, rho, web, tw);
            (en1993::moment_knm(modulus, fy), "kNm", 0.001)
        }
        _ => {
            let share = en1993::web_share(properties.area_mm2, case.number("b"), case.number("tf"));
            (en1993::moment_with_axial(plastic, 0.4, share), "kNm", 0.001)
        }
    }
}

fn timber(case: &Case, name: &str) -> f64 {
    let class = TimberClass::named(case.text("class")).expect("a class");
    match name {
        "bending" => class.characteristic.bending_mpa,
        "shear" => class.characteristic.shear_mpa,
        "bearing" => class.characteristic.bearing_mpa,
        "compression" => class.characteristic.compression_mpa,
        "modulus" => class.modulus_mpa,
        _ => class.modulus_005_mpa,
    }
}
