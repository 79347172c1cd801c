//! The built-in equipment: complete, sound and with its sources.

use falsewright_core::catalogue::exchange::{ExchangeError, from_csv, from_json, to_csv, to_json};
use falsewright_core::catalogue::{Catalogue, Item, ItemFault, Kind};
use falsewright_core::catalogue::{Grain, LayUp, standard_beam, standard_sections};
use falsewright_core::model::Role;
use falsewright_tests::assert_close;
use std::collections::BTreeSet;

const TEXT: &str = include_str!("../../core/src/catalogue/catalogue.json");

fn generic(code: &str) -> Item {
    Catalogue::generic().get(code).unwrap_or_else(|| panic!("no {code}")).clone()
}

#[test]
fn every_item_is_read_under_its_own_code() {
    let items: Vec<Item> = serde_json::from_str(TEXT).expect("catalogue.json");
    let codes: BTreeSet<&str> = items.iter().map(|item| item.code.as_str()).collect();
    assert_eq!(codes.len(), items.len(), "a code is used twice");
    assert_eq!(Catalogue::generic().iter().count(), items.len());
}

#[test]
fn every_item_is_sound_and_names_its_source() {
    for item in Catalogue::generic().iter() {
        assert_eq!(item.fault(), None);
        assert!(!item.source.is_empty() && !item.name.is_empty(), "{}", item.code);
    }
}

#[test]
fn every_field_of_the_data_is_used() {
    let read: Vec<Item> = serde_json::from_str(TEXT).expect("catalogue.json");
    let written = serde_json::to_value(&read).expect("items");
    let raw: serde_json::Value = serde_json::from_str(TEXT).expect("JSON");
    for (raw, written) in raw.as_array().expect("list").iter().zip(written.as_array().expect("list")) {
        for field in raw.as_object().expect("item").keys() {
            assert!(written.get(field).is_some(), "{} has an unknown field {field}", raw["code"]);
        }
    }
}

#[test]
fn every_role_has_choices() {
    let catalogue = Catalogue::generic();
    for role in [
        Role::Facing,
        Role::Secondary,
        Role::Primary,
        Role::Tie,
        Role::Prop,
        Role::Leg,
        Role::Stub,
        Role::Trestle,
        Role::Transfer,
        Role::Brace,
        Role::Base,
    ] {
        assert!(catalogue.choices(role).len() >= 2, "{role:?}");
    }
    assert!(catalogue.choices(Role::Transfer).iter().all(|item| matches!(item.kind, Kind::Steel(_))));
}

/// Stiffness and weight of beams from published tables: EN 10365 for the UB (8503 cm⁴, 40.3 kg/m), EN 13377 P20.
#[test]
fn beams_have_stiffness_and_weight() {
    let ub = generic("UB305x165x40").beam().expect("beam");
    assert_close("EI", ub.ei_knm2, 210e6 * 8503e-8, 0.001);
    assert_close("EA", ub.ea_kn, 210e6 * 51.3e-4, 0.001);
    assert_close("kg/m", ub.mass_kg_m, 40.3, 0.005);
    let twin = generic("2PFC150x75").beam().expect("beam");
    assert_close("twin EI", twin.ei_knm2, 2.0 * 210e6 * 861e-8, 0.001);
    assert_close("twin kg/m", twin.mass_kg_m, 2.0 * 17.9, 0.005);
    assert_close("twin breadth", twin.breadth_m, 2.0 * 0.075 + 0.05, 1e-12);
    let beam = generic("TB20").beam().expect("beam");
    assert_close("P20", beam.ei_knm2, 450.0, 1e-12);
    assert!(generic("TIE15").beam().is_none());
}

/// Steel plates weigh what their size says: 7850 kg/m³.
#[test]
fn plates_weigh_their_volume() {
    for code in ["BASE150", "BASE200", "BASE250"] {
        let item = generic(code);
        let plate = item.plate().expect("plate");
        assert_close(code, plate.mass_kg, plate.width_m * plate.length_m * plate.thickness_m * 7850.0, 0.005);
    }
}

fn with(code: &str, change: impl Fn(&mut Kind)) -> Option<ItemFault> {
    let mut item = generic(code);
    change(&mut item.kind);
    item.fault()
}

#[test]
fn unreal_values_are_faults() {
    for value in [f64::NAN, f64::INFINITY, 0.0, -1.0, 1e308] {
        let fault = with("TIE20", |kind| {
            if let Kind::Tie(tie) = kind {
                tie.working_kn = value;
            }
        });
        assert!(matches!(fault, Some(ItemFault::OutOfRange { field: "working_kn", .. })), "{value}");
    }
}

#[test]
fn unknown_names_are_faults() {
    let timber = with("T75x150", |kind| {
        if let Kind::Timber(timber) = kind {
            timber.class = "C99".into();
        }
    });
    assert!(timber.expect("fault").to_string().contains("use one of C16, C18, C24"));
    let leg = with("LEG48", |kind| {
        if let Kind::Leg(leg) = kind {
            leg.curve = "z".into();
        }
    });
    assert!(matches!(leg, Some(ItemFault::UnknownName { field: "curve", .. })));
}

#[test]
fn impossible_dimensions_are_faults() {
    let leg = with("LEG48", |kind| {
        if let Kind::Leg(leg) = kind {
            leg.wall_m = 0.03;
        }
    });
    assert!(matches!(leg, Some(ItemFault::Impossible { .. })));
    let steel = with("2PFC125", |kind| {
        if let Kind::Steel(steel) = kind
            && let falsewright_core::catalogue::Section::Channel { r_mm, .. } = &mut steel.section
        {
            *r_mm = 70.0;
        }
    });
    assert!(matches!(steel, Some(ItemFault::Impossible { .. })));
}

#[test]
fn items_come_back_from_csv_and_json() {
    let items: Vec<Item> = Catalogue::generic().iter().cloned().collect();
    let csv = to_csv(&items);
    assert_eq!(from_csv(&csv).expect("CSV"), items);
    assert_eq!(from_json(&to_json(&items)).expect("JSON"), items);
    let header = csv.lines().next().expect("a header");
    assert!(header.contains("working_kn (kN, working)") && header.contains("bending_mpa (N/mm², characteristic)"));
}

/// Every value of every kind of item has a column, and so a unit and a meaning.
#[test]
fn every_value_says_what_it_is() {
    let csv = to_csv(Catalogue::generic().iter());
    for heading in ["jack_working_kn (kN, working)", "yield_mpa (N/mm², characteristic)", "stiffness_knm2 (kNm², mean)"]
    {
        assert!(csv.contains(heading), "{heading}");
    }
    for item in Catalogue::generic().iter() {
        assert!(!item.source.is_empty(), "{}", item.code);
        assert_eq!(from_csv(&to_csv([item])).expect("CSV"), std::slice::from_ref(item));
    }
}

#[test]
fn a_suppliers_tie_in_a_table() {
    let text = "code,name,source,kind,diameter_m,area_m2 (m²; wrong),breaking_kn\nT,T,S,tie,0.015,1,2\n";
    assert!(matches!(from_csv(text), Err(ExchangeError::UnknownColumn { .. })));
    let text = "\u{feff}code,name,source,kind,diameter_m,area_m2 (m²),breaking_kn,\"working_kn (kN, working)\",modulus_kpa,mass_kg_m,\
                ends_kg,projection_m\n".replace("area_m2 (m²)", "area_m2");
    let good = format!("{text}X15,\"Tie, \"\"X\"\"\",Supplier's sheet,tie,0.015,0.000177,190,95,205e6,1.45,3,0.3\n\n");
    let items = from_csv(&good).expect("an item");
    assert_eq!((items[0].name.as_str(), items[0].tie().expect("a tie").working_kn), ("Tie, \"X\"", 95.0));
    let failure = |from: &str, to: &str| from_csv(&good.replace(from, to)).expect_err("a fault").to_string();
    assert!(
        failure(",95,", ",95 kN,").starts_with("line 2: \"working_kn") || failure(",95,", ",95 kN,").contains("95 kN")
    );
    assert!(failure(",95,", ",-5,").contains("working_kn is -5"));
    assert!(failure(",95,", ",,").contains("missing field `working_kn`"));
    assert!(failure("\"\"X\"\"\"", "\"\"X\"\"").contains("not closed"));
    assert!(failure("tie,0.015", "rope,0.015").contains("line 2"));
    assert!(
        from_csv(&(good.clone() + good.lines().nth(1).expect("row"))).expect_err("twice").to_string().contains("twice")
    );
    assert_eq!(from_csv(&text), Err(ExchangeError::Empty));
}

#[test]
fn hostile_tables_are_refused() {
    for text in
        ["", "\"", "a,b\n1,2", "code\n,", "{}", "[]", "[5]", "[{\"code\":1}]", "code,code\nA,B", "code\nA,B,C", "\u{0}"]
    {
        assert!(from_csv(text).is_err(), "{text:?}");
        assert!(from_json(text).is_err(), "{text:?}");
    }
    let nan = to_csv(Catalogue::generic().iter()).replace("0.0483", "NaN");
    assert!(matches!(from_csv(&nan), Err(ExchangeError::NotANumber { .. })));
}

/// Boards of the catalogue have three figures of what their lay-up gives.
#[test]
fn boards_follow_their_lay_up() {
    for (thickness, plies) in [(12, 9), (15, 11), (18, 13), (21, 15)] {
        for (suffix, grain) in [("", Grain::Along), ("X", Grain::Across)] {
            let item = generic(&format!("PLY{thickness}{suffix}"));
            let board = item.board().expect("board");
            let made = LayUp::birch(plies).board(grain, board.shear_mpa, 680.0, board.sheet_m).expect("plywood");
            for (name, got, expected) in [
                ("thickness", board.thickness_m, made.thickness_m),
                ("stiffness", board.stiffness_knm2_m, made.stiffness_knm2_m),
                ("modulus", board.modulus_m3_m, made.modulus_m3_m),
                ("strength", board.bending_mpa, made.bending_mpa),
                ("mass", board.mass_kg_m2, made.mass_kg_m2),
            ] {
                assert_close(&format!("{} {name}", item.code), got, expected, 0.005);
            }
        }
    }
    assert!(LayUp::birch(4).board(Grain::Along, 2.0, 680.0, [1.0, 1.0]).is_none());
}

#[test]
fn any_standard_section_is_a_beam() {
    let item = standard_beam("HE 300 B", "S275").expect("a section");
    assert_eq!((item.fault(), item.steel().expect("steel").yield_mpa()), (None, Some(265.0)));
    assert!(
        standard_sections().all(|(name, _)| standard_beam(name, "S355").is_some_and(|item| item.fault().is_none()))
    );
}
