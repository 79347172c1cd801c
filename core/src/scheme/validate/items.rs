use super::{Errors, LONGEST_CODE, LONGEST_NAME};
use crate::catalogue::{Item, Kind, Section, Stack};
use crate::json::value_of;
use crate::scheme::{SchemeError, Subject};
use serde_json::Value;
use std::collections::BTreeSet;

/// Properties that may be zero.
const MAY_BE_ZERO: [&str; 13] = [
    "r_mm",
    "ends_kg",
    "coupler_kg",
    "projection_m",
    "mass_kg",
    "mass_kg_m",
    "mass_kg_m2",
    "footprint_m",
    "breaking_kn",
    "head_jack_m",
    "from_support_m",
    "taper",
    "base_jack_m",
];

impl Errors {
    pub(super) fn check_items(&mut self, items: &[Item]) {
        let mut codes = BTreeSet::new();
        for item in items {
            if item.code.trim().is_empty() {
                self.push(SchemeError::NoCode { name: item.name.chars().take(LONGEST_CODE).collect() });
            }
            for (what, text, limit) in [
                ("item code", &item.code, LONGEST_CODE),
                ("item name", &item.name, LONGEST_NAME),
                ("item source", &item.source, 10 * LONGEST_NAME),
            ] {
                self.text(Subject::Scheme, what, text, limit);
            }
            if !codes.insert(&item.code) {
                self.push(SchemeError::RepeatedCode { code: item.code.clone() });
            }
            self.check_properties(item);
            if let Some(reason) = impossible(&item.kind) {
                self.push(SchemeError::ItemShape { code: item.code.clone(), reason });
            }
        }
    }

    /// Refuses any number of the item that is not positive and finite.
    fn check_properties(&mut self, item: &Item) {
        let mut visit = |property: &str, value: &Value| {
            let usable = match value {
                // Not-a-number and infinity turn into null on the way to JSON.
                Value::Null => false,
                Value::Number(number) => number
                    .as_f64()
                    .is_some_and(|v| (1e-12..=1e12).contains(&v) || (v == 0.0 && MAY_BE_ZERO.contains(&property))),
                _ => true,
            };
            if !usable {
                let value = if value.is_null() { "not a number".to_owned() } else { value.to_string() };
                self.push(SchemeError::ItemProperty { code: item.code.clone(), property: property.to_owned(), value });
            }
        };
        walk("item", &value_of(item), &mut visit);
    }
}

fn walk(name: &str, value: &Value, visit: &mut impl FnMut(&str, &Value)) {
    match value {
        Value::Object(fields) => fields.iter().for_each(|(name, value)| walk(name, value, visit)),
        Value::Array(values) => values.iter().for_each(|value| walk(name, value, visit)),
        leaf => visit(name, leaf),
    }
}

/// Why no such item can exist.
fn impossible(kind: &Kind) -> Option<&'static str> {
    let tube =
        |diameter: f64, wall: f64| (2.0 * wall > diameter).then_some("the tube's wall is thicker than its radius");
    match kind {
        Kind::Leg(leg) => tube(leg.diameter_m, leg.wall_m).or_else(|| leg.stack.as_ref().and_then(Stack::impossible)),
        Kind::Brace(brace) => tube(brace.diameter_m, brace.wall_m),
        Kind::Timber(timber) => timber.notch.and_then(|notch| notch.impossible(timber.depth_m)),
        Kind::Steel(steel) => match steel.section {
            Section::I { h_mm, b_mm, tw_mm, tf_mm, r_mm } => {
                rolled(h_mm, b_mm, tw_mm, tf_mm, r_mm, 2.0 * r_mm + tw_mm > b_mm)
            }
            Section::Channel { h_mm, b_mm, tw_mm, tf_mm, r_mm } => {
                rolled(h_mm, b_mm, tw_mm, tf_mm, r_mm, r_mm + tw_mm > b_mm)
            }
            Section::Hollow { h_mm, b_mm, t_mm } => (h_mm.min(b_mm) <= 4.0 * t_mm)
                .then_some("the walls of the hollow section leave no room for its corners"),
            Section::Round { d_mm, t_mm } => tube(d_mm, t_mm),
        },
        _ => None,
    }
}

fn rolled(h_mm: f64, b_mm: f64, tw_mm: f64, tf_mm: f64, r_mm: f64, roots_wide: bool) -> Option<&'static str> {
    if 2.0 * (tf_mm + r_mm) >= h_mm {
        Some("flanges and root radii leave no web")
    } else if tw_mm >= b_mm || roots_wide {
        Some("web and root radii are wider than the flange")
    } else {
        None
    }
}
