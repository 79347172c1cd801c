//! The built-in equipment: complete, sound and with its sources.

use falsewright_core::catalogue::exchange::{ExchangeError, from_csv, from_json, to_csv, to_json};
use falsewright_core::catalogue::{Catalogue, Item, ItemFault, Kind};
use falsewright_core::catalogue::{Grain, LayUp, standard_beam, standard_pair, standard_sections};
use falsewright_core::model::Role;
use falsewright_tests::assert_close;
use std::collections::BTreeSet;

const TEXT: &str = include_str!("../../../core/src/catalogue/catalogue.json");

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

/// Everything that is wrong with a table, one fault in each line.
fn told(text: &str) -> String {
    let faults = from_csv(text).expect_err("a fault");
    faults.iter().map(ToString::to_string).collect::<Vec<_>>().join("\n")
}

/// Whatever is wrong in whatever row is told at once, each with its line and column.
#[test]
fn all_faults_of_a_table_are_told() {
    let mut lines: Vec<String> =
        to_csv(["TIE15", "PLY18", "TUBE48B", "2PFC125"].map(generic).iter()).lines().map(str::to_owned).collect();
    lines[1] = lines[1].replace("0.015", "15 mm");
    lines[2] = lines[2].replace("2.44,1.22", ",1.22").replace("12.0", "");
    lines[3] = lines[3].replace("0.0483", "4.83");
    lines[4] = lines[4].replace("S275", "S999");
    let all = told(&lines.join("\n"));
    for start in [
        "line 2, column \"diameter_m (m, size)\": \"15 mm\" is not a number",
        "line 3, column \"sheet_m.0 (m, size)\": nothing is there",
        "line 4, column \"diameter_m (m, size)\": TUBE48B: its diameter of 4830 mm is not possible",
        "line 5, column \"grade\": 2PFC125: its steel grade \"S999\" is not known; use one of S235, S275, S355",
    ] {
        assert!(all.lines().any(|line| line.starts_with(start)), "{start}\n{all}");
    }
}

/// One of a pair of sizes, the parts of a rating, and what a section needs: whatever is missing is named by its column.
#[test]
fn every_value_that_is_missing_is_named() {
    for item in Catalogue::generic().iter() {
        for (field, _) in item.data() {
            let text = to_csv([item]);
            let (header, row) = text.trim_end().split_once("\r\n").expect("two lines");
            let headings: Vec<&str> = split(header);
            let at =
                headings.iter().position(|heading| heading.trim_matches('"') == field.heading()).expect("a column");
            let mut cells = split(row);
            cells[at] = "";
            let result = from_csv(&format!("{header}\n{}", cells.join(",")));
            let shorter = item
                .leg()
                .and_then(|leg| leg.stack.as_ref())
                .is_some_and(|stack| field.key == format!("stack.standards_m.{}", stack.standards_m.len() - 1));
            if ["material", "stem_m"].contains(&field.key) || shorter {
                assert!(result.is_ok(), "{} has a usual value or is the last of a list", field.key);
                continue;
            }
            let faults = result.expect_err(field.key);
            let named = |fault: &ExchangeError| fault.to_string().contains(&format!("column {:?}", field.heading()));
            assert!(faults.iter().any(named), "{} {}: {faults:?}", item.code, field.key);
        }
    }
}

/// Cells of a line, those in quotation marks with them.
fn split(line: &str) -> Vec<&str> {
    let mut quoted = false;
    line.split(|letter| {
        quoted ^= letter == '"';
        letter == ',' && !quoted
    })
    .collect()
}

#[test]
fn a_suppliers_tie_in_a_table() {
    let text = "code,name,source,kind,diameter_m,area_m2 (m²; wrong),breaking_kn\nT,T,S,tie,0.015,1,2\n";
    let faults = from_csv(text).expect_err("a fault");
    assert!(matches!(faults.as_slice(), [ExchangeError::UnknownColumn { .. }]));
    let text = "\u{feff}code,name,source,kind,diameter_m,area_m2 (m²),breaking_kn,\"working_kn (kN, working)\",modulus_kpa,mass_kg_m,\
                ends_kg,projection_m\n".replace("area_m2 (m²)", "area_m2");
    let good = format!("{text}X15,\"Tie, \"\"X\"\"\",Supplier's sheet,tie,0.015,0.000177,190,95,205e6,1.45,3,0.3\n\n");
    let items = from_csv(&good).expect("an item");
    assert_eq!((items[0].name.as_str(), items[0].tie().expect("a tie").working_kn), ("Tie, \"X\"", 95.0));
    let failure = |from: &str, to: &str| told(&good.replace(from, to));
    let place = "line 2, column \"working_kn (kN, working)\": ";
    assert_eq!(
        failure(",95,", ",95 kN,"),
        format!("{place}\"95 kN\" is not a number; give one with a decimal point and no unit")
    );
    assert_eq!(
        failure(",95,", ",-5,"),
        format!("{place}X15: its working load of -5 kN is not possible; give a value above 0 and below 100000 kN")
    );
    assert_eq!(
        failure(",95,", ",,"),
        format!("{place}nothing is there; an item of this kind needs it, so give a value")
    );
    assert!(failure("\"\"X\"\"\"", "\"\"X\"\"").contains("not closed"));
    assert!(
        failure("tie,0.015", "rope,0.015").starts_with("line 2, column \"kind\": the word is not known; use one of")
    );
    assert!(told(&(good.clone() + good.lines().nth(1).expect("row"))).contains("there twice"));
    assert_eq!(from_csv(&text), Err(vec![ExchangeError::Empty]));
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
    let faults = from_csv(&nan).expect_err("a fault");
    assert!(faults.len() > 1 && faults.iter().all(|fault| matches!(fault, ExchangeError::NotANumber { .. })));
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
    let (one, two) = (standard_beam("PFC 150x75x18", "S275"), standard_pair("PFC 150x75x18", "S275"));
    let (one, two) = (one.and_then(|item| item.beam()).expect("one"), two.and_then(|item| item.beam()).expect("two"));
    assert_close("a pair is twice as stiff", two.ei_knm2, 2.0 * one.ei_knm2, 1e-12);
    assert_close("with its gap", two.breadth_m, 2.0 * one.breadth_m + 0.05, 1e-12);
}
