//! Files that are not good schemes: each kind is refused with its own error, which names the place and the remedy.

use SchemeError::*;
use falsewright_core::catalogue::Kind;
use falsewright_core::geometry::Point;
use falsewright_core::layout::concrete::{faces, pours};
use falsewright_core::scheme::{
    Arrangement, Bearing, CastAnchor, Corner, Cut, Direction, FaceRef, Falsework, FixedEnd, HeldBy, Hinge, Id, Joint,
    LARGEST_FILE, Lateral, LegLine, Opening, ReadError, Scheme, SchemeError, Section, Shutter, SiteWind, Spacing,
    TieEnd, TieRow, Walls, read, read_bytes, write,
};
use proptest::prelude::*;
use serde_json::{Value, json};

const SPACING: Spacing = Spacing { edge_m: 0.2, max_m: 0.6 };

fn shutter(id: u32, corner: u32) -> Shutter {
    Shutter {
        id: Id(id),
        face: FaceRef { corner: Id(corner), cut: false, pour: Id(100) },
        arrangement: Arrangement::UprightPrimaries,
        facing: "board".into(),
        secondary: "beam".into(),
        secondaries: SPACING,
        primary: "soldier".into(),
        primaries: SPACING,
        below_m: 0.1,
        above_m: 0.05,
        foot_held: false,
        hold_down_kn: Some(4.0),
        hinge: Some(Hinge::default()),
    }
}

/// A box with something of every kind on it.
fn good() -> Scheme {
    let walls = Walls { wall_m: 0.4, roof_m: 0.45, base_m: 0.5, haunch_m: 0.25 };
    let mut scheme = Scheme::blank(Section::box_cell(6.4, 3.5, walls));
    scheme.name = "Example".into();
    scheme.loads.wind = Some(SiteWind::gust(22.0));
    scheme.section.joints = vec![Joint { id: Id(100), z_m: 0.65 }];
    // Corner 4 starts the left outer wall; corner 9 the left wall of the cell.
    scheme.shutters = vec![shutter(101, 4), shutter(102, 9)];
    scheme.ties = vec![TieRow {
        id: Id(103),
        shutter: Id(101),
        to: TieEnd::Shutter { id: Id(102) },
        z_m: 1.5,
        item: "tie".into(),
        spacing: SPACING,
        held: None,
    }];
    scheme.falsework = vec![Falsework {
        id: Id(104),
        soffit: FaceRef { corner: Id(8), cut: false, pour: Id(100) },
        direction: Direction::Across,
        facing: "board".into(),
        secondary: "beam".into(),
        secondaries: SPACING,
        primary: "beam".into(),
        leg: "leg".into(),
        base: "plate".into(),
        brace: "tube".into(),
        leg_lines: (0..4).map(|i| LegLine { id: Id(110 + i), x_m: 1.0 + 1.7 * f64::from(i), braced: i == 0 }).collect(),
        bents: SPACING,
        lift_m: 1.5,
        lateral: Lateral::Braced,
        bearing: Bearing::Slab { strength_mpa: 20.0 },
        slab: None,
    }];
    scheme.openings = vec![Opening {
        id: Id(105),
        falsework: Id(104),
        left_m: 2.0,
        width_m: 3.0,
        height_m: 2.4,
        guard_m: 0.1,
        beam_underside_m: 2.6,
        transfer: "girder".into(),
        transfers: 2,
        restraint_m: Some(1.0),
        trestle: "leg".into(),
        trestle_m: 0.6,
        built_width_m: None,
        built_height_m: None,
    }];
    scheme.items = serde_json::from_value(json!([
        { "code": "leg", "name": "Tube", "source": "from memory", "kind": "leg", "diameter_m": 0.0483, "wall_m": 0.004,
          "yield_mpa": 235.0, "curve": "c", "jack_working_kn": 50.0, "footprint_m": 0.1, "ends_kg": 0.0 },
        { "code": "girder", "name": "Beam", "source": "from memory", "kind": "steel", "grade": "S275",
          "side_by_side": 1, "breadth_m": 0.2, "section":
          { "shape": "i", "h_mm": 200.0, "b_mm": 200.0, "tw_mm": 9.0, "tf_mm": 15.0, "r_mm": 18.0 } }
    ]))
    .unwrap();
    scheme
}

/// Reads the good scheme with the value at a JSON pointer replaced.
fn with(pointer: &str, value: impl Into<Value>) -> ReadError {
    with_all(&[(pointer, value.into())])
}

fn with_all(edits: &[(&str, Value)]) -> ReadError {
    let mut file = serde_json::to_value(good()).unwrap();
    for (pointer, value) in edits {
        *file.pointer_mut(pointer).unwrap_or_else(|| panic!("{pointer}")) = value.clone();
    }
    refused(&file.to_string())
}

/// Reads the good scheme after any edit.
fn edited(edit: impl FnOnce(&mut Scheme)) -> ReadError {
    let mut scheme = good();
    edit(&mut scheme);
    let errors = scheme.validate().unwrap_err();
    // Numbers that JSON cannot carry are only seen by validation itself.
    match read(&write(&scheme)) {
        Err(error @ ReadError::Invalid(_)) => assert_eq!(error, ReadError::Invalid(errors.clone())),
        Err(ReadError::WrongValue { .. }) => {}
        other => panic!("{other:?}"),
    }
    ReadError::Invalid(errors)
}

fn refused(text: &str) -> ReadError {
    read(text).expect_err("this file must be refused")
}

/// Fails unless the error is of this kind, and its message holds these words of place and remedy.
macro_rules! assert_refused {
    ($error:expr, $kind:pat $(if $guard:expr)?, $($words:literal),+) => {{
        let error = $error;
        assert!(matches!(&error, $kind $(if $guard)?), "{error:?}");
        let message = error.to_string();
        $(assert!(message.contains($words), "no “{}” in: {message}", $words);)+
        assert!(message.ends_with('.') || message.ends_with(".)"), "{message}");
        assert!(message.len() < 1000, "{message}");
    }};
}

/// As `assert_refused` for what validation finds, wherever it is among the errors.
macro_rules! assert_invalid {
    ($error:expr, $kind:pat $(if $guard:expr)?, $($words:literal),+) => {{
        let error = $error;
        let ReadError::Invalid(errors) = &error else { panic!("{error:?}") };
        let found = errors.iter().find(|error| matches!(error, $kind $(if $guard)?));
        let message = found.unwrap_or_else(|| panic!("{errors:?}")).to_string();
        $(assert!(message.contains($words), "no “{}” in: {message}", $words);)+
        assert!(message.ends_with('.'), "{message}");
    }};
}

#[test]
fn the_good_scheme_is_good() {
    assert_eq!(read(&write(&good())), Ok(good()));
}

#[test]
fn files_that_are_not_text_or_json() {
    assert_refused!(refused(""), ReadError::Empty, "empty", "another copy");
    assert_refused!(refused(" \n\t "), ReadError::Empty, "empty", "another copy");
    let mut bytes = write(&good()).into_bytes();
    bytes[20] = 0xff;
    assert_refused!(read_bytes(&bytes).unwrap_err(), ReadError::NotText { position: 20 }, "byte 20", "Open");
    let utf16: Vec<u8> = write(&good()).encode_utf16().flat_map(u16::to_le_bytes).collect();
    assert_refused!(read_bytes(&utf16).unwrap_err(), ReadError::Syntax { line: 1, .. }, "line 1", "another copy");
    assert_refused!(refused("Hello"), ReadError::Syntax { line: 1, column: 1, .. }, "line 1, column 1", "mend");
    assert_refused!(refused("<html></html>"), ReadError::Syntax { .. }, "line 1", "mend");
    assert_refused!(refused("[1, 2]"), ReadError::NotAScheme { found: "a list" }, "a list", "Open");
    assert_refused!(refused("\"scheme\""), ReadError::NotAScheme { .. }, "a text", "Open");
    assert_refused!(refused("-17"), ReadError::NotAScheme { .. }, "a number", "Open");
    assert_refused!(refused(" null "), ReadError::NotAScheme { .. }, "a single word", "Open");
}

#[test]
fn a_byte_order_mark_does_no_harm() {
    assert_eq!(read_bytes(format!("\u{feff}{}", write(&good())).as_bytes()), Ok(good()));
}

#[test]
fn files_cut_short_or_damaged() {
    let text = write(&good());
    for length in [1, 10, text.len() / 2, text.len() - 1] {
        assert_refused!(refused(&text[..length]), ReadError::Truncated { .. }, "line", "column", "another copy");
    }
    let twice = format!("{text}{text}");
    assert_refused!(refused(&twice), ReadError::Syntax { .. }, "trailing", "another copy");
    let comma = text.replacen("},", "},,", 1);
    assert_refused!(refused(&comma), ReadError::Syntax { line: 2.., .. }, "line", "mend");
    for literal in ["NaN", "Infinity", "-Infinity", "1e999", "0x10", "01", "+1", "1.", "'1'"] {
        let text = text.replacen("\"temperature_c\": 10.0", &format!("\"temperature_c\": {literal}"), 1);
        assert_refused!(refused(&text), ReadError::Syntax { line: 50.., .. }, "line", "mend");
    }
    let quote = text.replacen("\"Example\"", "\"Exa\u{1}mple\"", 1);
    assert_refused!(refused(&quote), ReadError::Syntax { .. }, "control character", "mend");
}

#[test]
fn versions_are_looked_at_first() {
    let newer = r#"{ "schema": 2, "shape": "unheard of" }"#;
    assert_refused!(refused(newer), ReadError::Newer { found: 2 }, "schema 2", "newer version", "Reload");
    assert_refused!(with("/schema", u64::MAX), ReadError::Newer { .. }, "newer version", "Reload");
    assert_refused!(refused("{}"), ReadError::NoSchema, "schema", "Add");
    assert_refused!(refused(r#"{ "name": "x" }"#), ReadError::NoSchema, "schema", "Add");
    assert_refused!(with("/schema", 0), ReadError::BadSchema { .. }, "schema 0", "Set");
    assert_refused!(with("/schema", -1), ReadError::BadSchema { .. }, "schema -1", "Set");
    assert_refused!(with("/schema", 1.5), ReadError::BadSchema { .. }, "1.5", "Set");
    assert_refused!(with("/schema", "1"), ReadError::BadSchema { .. }, "\"1\"", "Set");
    assert_refused!(with("/schema", Value::Null), ReadError::NoSchema, "schema", "Add");
    assert_invalid!(edited_schema(), Schema { found: 7 }, "schema 7", "Open");
}

fn edited_schema() -> ReadError {
    let mut scheme = good();
    scheme.schema = 7;
    ReadError::Invalid(scheme.validate().unwrap_err())
}

#[test]
fn fields_missing_unknown_repeated_or_of_the_wrong_kind() {
    let mut file = serde_json::to_value(good()).unwrap();
    file.as_object_mut().unwrap().remove("bays");
    assert_refused!(refused(&file.to_string()), ReadError::MissingField { field, .. } if field == "bays", "`bays`", "line 1", "Add");
    let mut file = serde_json::to_value(good()).unwrap();
    file.pointer_mut("/section/outline/2").unwrap().as_object_mut().unwrap().remove("z_m");
    let text = serde_json::to_string_pretty(&file).unwrap();
    assert_refused!(refused(&text), ReadError::MissingField { field, line: 10.., .. } if field == "z_m", "`z_m`", "Add");
    let mut file = serde_json::to_value(good()).unwrap();
    file["section"]["colour"] = json!("grey");
    assert_refused!(refused(&file.to_string()), ReadError::UnknownField { field, .. } if field == "colour", "`colour`", "Remove");
    let twice = write(&good()).replacen("\"name\"", "\"name\": \"a\", \"name\"", 1);
    assert_refused!(refused(&twice), ReadError::RepeatedField { field, .. } if field == "name", "`name`", "line", "Remove");
    assert_refused!(
        with("/bays", "six"),
        ReadError::WrongValue { .. },
        "six",
        "expected a record",
        "line 1",
        "Correct"
    );
    assert_refused!(with("/bays/count", 1.5), ReadError::WrongValue { .. }, "1.5", "Correct");
    assert_refused!(with("/bays/count", -1), ReadError::WrongValue { .. }, "-1", "Correct");
    assert_refused!(with("/bays/count", u64::MAX), ReadError::WrongValue { .. }, "column", "Correct");
    assert_refused!(with("/section/outline/0/x_m", "0"), ReadError::WrongValue { .. }, "string", "Correct");
    assert_refused!(with("/section/outline/0/x_m", Value::Null), ReadError::WrongValue { .. }, "null", "Correct");
    assert_refused!(with("/section/outline/0", json!({})), ReadError::MissingField { .. }, "`id`", "Add");
    assert_refused!(with("/section/outline", json!({})), ReadError::WrongValue { .. }, "map", "Correct");
    assert_refused!(
        with("/section/outline/0/id", u64::from(u32::MAX) + 1),
        ReadError::WrongValue { .. },
        "column",
        "Correct"
    );
    assert_refused!(with("/basis", "hope"), ReadError::WrongValue { .. }, "hope", "limit_state_b1", "Correct");
    assert_refused!(with("/shutters/0/foot_held", 1), ReadError::WrongValue { .. }, "boolean", "Correct");
    assert_refused!(with("/ties/0/to/end", "wall"), ReadError::WrongValue { .. }, "wall", "Correct");
    assert_refused!(with("/items/0/kind", "ladder"), ReadError::WrongValue { .. }, "ladder", "Correct");
    assert_refused!(with("/items/0/wall_m", Value::Null), ReadError::WrongValue { .. }, "null", "Correct");
    let long = "x".repeat(1 << 20);
    assert_refused!(with("/bays", long), ReadError::WrongValue { .. }, "xxx…", "Correct");
}

#[test]
fn hostile_files_are_refused_at_once() {
    let deep = format!("{{\"schema\": 1, \"name\": {}", "[".repeat(1 << 20));
    assert_refused!(refused(&deep), ReadError::Truncated { .. }, "line 1", "another copy");
    let nested = "[".repeat(1000) + &"]".repeat(1000);
    let deep = format!("{{\"schema\": {nested}}}");
    assert_refused!(refused(&deep), ReadError::Syntax { .. }, "recursion limit", "mend");
    let deep = write(&good()).replacen("\"ends_kg\": 0.0", &format!("\"more\": {nested}, \"ends_kg\": 0.0"), 1);
    assert_refused!(refused(&deep), ReadError::Syntax { .. }, "recursion limit", "mend");
    let corner = r#"{"id":1,"x_m":0.1,"z_m":0.2}"#;
    let million =
        format!("{{\"schema\":1,\"section\":{{\"outline\":[{}{corner}]}}}}", format!("{corner},").repeat(999_999));
    assert_refused!(refused(&million), ReadError::TooLarge { bytes: 28_000_000.. }, "4194304", "Open");
    assert_refused!(
        read_bytes(&vec![b' '; LARGEST_FILE + 1]).unwrap_err(),
        ReadError::TooLarge { .. },
        "larger",
        "Open"
    );
    let corners: Vec<Value> = (0..50_000).map(|i| json!({ "id": i, "x_m": i, "z_m": i % 7 })).collect();
    assert_invalid!(
        with("/section/outline", corners),
        TooMany { count: 50_004, limit: 2000, .. },
        "50004 corners",
        "2000"
    );
}

#[test]
fn numbers_out_of_all_reason() {
    type Case = (&'static str, f64, &'static str);
    let cases: [Case; 32] = [
        ("/section/outline/2/x_m", 1e308, "Corner #3"),
        ("/section/outline/2/z_m", -1e308, "Corner #3"),
        ("/section/joints/0/z_m", 1e300, "Joint #100"),
        ("/section/cells/0/corners/2/cut/after_m", -0.25, "Corner #8"),
        ("/section/cells/0/corners/2/cut/before_m", 0.0, "Corner #8"),
        ("/bays/length_m", 0.0, "Settings"),
        ("/bays/length_m", 100.5, "Settings"),
        ("/concrete/unit_weight_kn_m3", 2500.0, "Settings"),
        ("/concrete/temperature_c", -16.0, "Settings"),
        ("/concrete/method/c2", 0.0, "Settings"),
        ("/concrete/delivery/rate_m3_h", 0.0, "Settings"),
        ("/loads/operations_kpa", -1.5, "Settings"),
        ("/loads/horizontal_fraction", 2.5, "Settings"),
        ("/limits/span_over_deflection", 0.0, "Settings"),
        ("/limits/access_tolerance_m", -0.05, "Settings"),
        ("/ground/allowable_kpa", 0.0, "Settings"),
        ("/shutters/0/secondaries/max_m", 0.0, "Shutter #101"),
        ("/shutters/0/primaries/edge_m", -0.1, "Shutter #101"),
        ("/shutters/1/below_m", 1e9, "Shutter #102"),
        ("/shutters/0/hold_down_kn", -1.0, "Shutter #101"),
        ("/shutters/0/hinge/off_m", -0.1, "Shutter #101"),
        ("/shutters/0/hinge/angle_deg", 181.0, "Shutter #101"),
        ("/shutters/0/hinge/gap_m", -0.01, "Shutter #101"),
        ("/loads/wind/basic_speed_m_s", 101.0, "Settings"),
        ("/loads/wind/working_speed_m_s", -1.0, "Settings"),
        ("/ties/0/z_m", 1e9, "Tie row #103"),
        ("/ties/0/spacing/max_m", -0.6, "Tie row #103"),
        ("/falsework/0/lift_m", 0.0, "Falsework #104"),
        ("/falsework/0/bearing/strength_mpa", 0.0, "Falsework #104"),
        ("/falsework/0/leg_lines/1/x_m", -1e5, "Leg line #111"),
        ("/openings/0/width_m", 0.0, "Opening #105"),
        ("/openings/0/trestle_m", f64::MIN_POSITIVE, "Opening #105"),
    ];
    for (pointer, number, place) in cases {
        let error = with(pointer, number);
        assert_invalid!(&error, OutOfRange { value, .. } if *value == number, "Enter a value");
        assert!(error.to_string().starts_with(place), "{error}");
    }
    let anchor = CastAnchor { depth_m: 0.1, head_m: 0.04, rod_m: 0.02, edge_m: 0.2, strength_mpa: 15.0 };
    let held = |below_m, by| {
        edited(|s| {
            s.ties[0].to = TieEnd::Fixed { length_m: 2.0 };
            s.ties[0].held = Some(FixedEnd { below_m, by });
        })
    };
    for held in [
        held(1.97, HeldBy::Thrust),
        held(-0.1, HeldBy::Thrust),
        held(1.0, HeldBy::Kentledge { weight_kn: -1.0, friction: 0.4 }),
        held(1.0, HeldBy::Kentledge { weight_kn: 5.0, friction: f64::NAN }),
        held(0.0, HeldBy::Anchor(CastAnchor { depth_m: 0.0, ..anchor })),
        held(0.0, HeldBy::Anchor(CastAnchor { head_m: 0.01, ..anchor })),
        held(0.0, HeldBy::Anchor(CastAnchor { strength_mpa: 0.0, ..anchor })),
    ] {
        assert_invalid!(held, OutOfRange { .. }, "Tie row #103", "Enter a value");
    }
    assert_invalid!(with("/bays/count", 0), OutOfRange { .. }, "number of bays of 0", "1000");
    assert_invalid!(with("/bays/count", 1001), OutOfRange { .. }, "number of bays of 1001", "Enter");
    assert_invalid!(with("/openings/0/transfers", 0), OutOfRange { .. }, "Opening #105", "Enter");
    assert_invalid!(edited(|s| s.section.outline[1].x_m = f64::NAN), OutOfRange { .. }, "Corner #2", "NaN", "Enter");
    assert_invalid!(edited(|s| s.limits.access_tolerance_m = f64::INFINITY), OutOfRange { .. }, "inf m", "Enter");
}

#[test]
fn too_much_of_anything() {
    assert_invalid!(with("/name", "n".repeat(201)), TextTooLong { count: 201, limit: 200, .. }, "name", "Shorten");
    assert_invalid!(with("/ties/0/item", "n".repeat(101)), TextTooLong { .. }, "Tie row #103", "Shorten");
    assert_invalid!(
        with_all(&[("/shutters/0/primaries/max_m", json!(0.01)), ("/bays/length_m", json!(50.0))]),
        TooMany { .. },
        "Shutter #101",
        "primaries",
        "more than 1000"
    );
    assert_invalid!(
        with_all(&[("/falsework/0/bents/max_m", json!(0.01)), ("/bays/length_m", json!(50.0))]),
        TooMany { .. },
        "Falsework #104",
        "bents",
        "more than 1000"
    );
    let many = |s: &mut Scheme| {
        s.falsework[0].leg_lines = (0..201).map(|i| LegLine { id: Id(1000 + i), x_m: 1.0, braced: false }).collect()
    };
    assert_invalid!(edited(many), TooMany { count: 201, .. }, "Falsework #104", "leg lines", "Take some away");
    let many =
        |s: &mut Scheme| s.section.joints = (0..51).map(|i| Joint { id: Id(1000 + i), z_m: f64::from(i) }).collect();
    assert_invalid!(edited(many), TooMany { count: 51, limit: 50, .. }, "joints", "Take some away");
    let many = |s: &mut Scheme| s.shutters = (0..501).map(|i| shutter(1000 + i, i)).collect();
    assert_invalid!(edited(many), TooMany { count: 501, .. }, "shutters", "Take some away");
}

#[test]
fn names_and_references() {
    assert_invalid!(with("/section/outline/1/id", 4), RepeatedId { id: Id(4) }, "#4", "id of its own");
    assert_invalid!(with("/openings/0/id", 101), RepeatedId { id: Id(101) }, "#101", "id of its own");
    assert_invalid!(with("/falsework/0/leg_lines/0/id", 1), RepeatedId { id: Id(1) }, "#1", "id of its own");
    assert_invalid!(with("/section/outline/1/id", 0), ReservedId, "#0", "from 1 up");
    assert_invalid!(with("/ties/0/shutter", 999), Dangling { missing: Id(999), .. }, "Tie row #103", "#999", "Choose");
    assert_invalid!(with("/ties/0/to/id", 103), Dangling { missing: Id(103), .. }, "Tie row #103", "Choose");
    assert_invalid!(with("/openings/0/falsework", 101), Dangling { missing: Id(101), .. }, "Opening #105", "Choose");
    assert_invalid!(with("/ties/0/to/id", 101), TieToItself { row: Id(103), .. }, "#103", "#101", "Choose");
    assert_invalid!(with("/shutters/1/face/corner", 4), SameFace { .. }, "#101", "#102", "Remove");
    let second = |s: &mut Scheme| s.openings.push(Opening { id: Id(200), ..s.openings[0].clone() });
    assert_invalid!(edited(second), SecondOpening { .. }, "#105", "#200", "falsework #104", "Remove");
}

#[test]
fn a_face_that_is_gone_is_no_error() {
    let mut scheme = good();
    scheme.shutters[0].face.corner = Id(4000);
    scheme.falsework[0].soffit.pour = Id(4001);
    assert_eq!(scheme.validate(), Ok(()));
    assert_eq!(scheme.fresh_id(), Id(4002));
}

#[test]
fn sections_that_are_none() {
    assert_invalid!(with("/section/outline", json!([])), TooFewCorners { count: 0, .. }, "The outline", "three");
    let two = |s: &mut Scheme| s.section.cells[0].corners.truncate(2);
    assert_invalid!(edited(two), TooFewCorners { count: 2, .. }, "Cell #5", "three", "remove");
    assert_invalid!(
        with_all(&[("/section/outline/1/x_m", json!(101.0)), ("/section/outline/2/x_m", json!(101.0))]),
        TooLarge { .. },
        "101.000 m by 4.450 m",
        "Check the units"
    );
    // Bottom right and top right corners changed over.
    let bow = |s: &mut Scheme| s.section.outline.swap(1, 2);
    assert_invalid!(edited(bow), SelfCrossing { .. }, "at x", "Move");
    let pinched = |s: &mut Scheme| {
        // A solid section with its roof pulled down on to its underside.
        s.section.cells.clear();
        let [mut a, mut b] = [s.section.outline[0]; 2];
        (a.id, a.x_m, a.z_m) = (Id(900), 3.0, 0.0);
        (b.id, b.x_m, b.z_m) = (Id(901), 3.0, 4.45);
        s.section.outline.insert(1, a);
        s.section.outline.insert(4, a);
        s.section.outline[4].id = Id(902);
        s.section.outline.insert(4, b);
    };
    assert_invalid!(edited(pinched), SelfCrossing { first, .. } if (first.at - Point::new(3.0, 0.0)).length() < 0.01, "x 3.000 m, z 0.000 m", "Move");
    let spike = |s: &mut Scheme| {
        let mut tip = s.section.outline[1];
        (tip.id, tip.x_m) = (Id(900), 9.0);
        let mut back = tip;
        (back.id, back.x_m, back.z_m) = (Id(901), 7.2, 0.1);
        s.section.outline.splice(2..2, [tip, back]);
        s.section.outline.remove(1);
    };
    assert_invalid!(edited(spike), SharpCorner { at } if at.id == Id(900), "#900 at x 9.000 m", "Move");
    let coincident = |s: &mut Scheme| s.section.outline[1] = Corner { id: Id(900), ..s.section.outline[0] };
    assert_invalid!(edited(coincident), ShortEdge { .. }, "#1 at x 0.000 m, z 0.000 m", "remove");
    assert_invalid!(
        with("/section/cells/0/corners/2/cut/before_m", 3.5),
        CutTooLong { .. },
        "#7 at x 6.800 m, z 0.500 m",
        "Shorten"
    );
    assert_invalid!(
        with_all(&[
            ("/section/cells/0/corners/2/cut/after_m", json!(3.3)),
            ("/section/cells/0/corners/3/cut/before_m", json!(3.2))
        ]),
        CutTooLong { .. },
        "6.400 m long",
        "6.500 m",
        "Shorten"
    );
}

/// Moves every corner of the cell.
fn shifted(x: f64, z: f64) -> ReadError {
    edited(|s| {
        for corner in &mut s.section.cells[0].corners {
            corner.x_m += x;
            corner.z_m += z;
        }
    })
}

#[test]
fn cells_in_the_wrong_place() {
    assert_invalid!(shifted(1.0, 0.0), RingsMeet { .. }, "The outline and Cell #5", "Move them apart");
    assert_invalid!(shifted(0.4, 0.0), RingsMeet { .. }, "touch", "Move them apart");
    assert_invalid!(shifted(20.0, 0.0), CellOutside { cell } if cell.id == Id(5), "Cell #5 at x 20.400 m", "remove");
    // The cell drawn around the outline.
    let around = |s: &mut Scheme| {
        let cell = &mut s.section.cells[0].corners;
        for (corner, (x, z)) in cell.iter_mut().zip([(-1.0, -1.0), (9.0, -1.0), (9.0, 9.0), (-1.0, 9.0)]) {
            (corner.x_m, corner.z_m) = (x, z);
        }
    };
    assert_invalid!(edited(around), CellOutside { .. }, "Cell #5", "Move it into the concrete");
    let inside = |s: &mut Scheme| {
        let mut inner = s.section.cells[0].clone();
        inner.id = Id(900);
        for (i, corner) in (0..).zip(&mut inner.corners) {
            corner.id = Id(901 + i);
            corner.x_m = 3.6 + (corner.x_m - 3.6) / 4.0;
            corner.z_m = 2.25 + (corner.z_m - 2.25) / 4.0;
        }
        s.section.cells.push(inner);
    };
    assert_invalid!(edited(inside), CellInCell { around: Id(5), .. }, "Cell #900 at", "cell #5", "Keep one");
}

#[test]
fn concrete_that_is_too_thin() {
    assert_invalid!(shifted(0.39, 0.0), Sliver { thickness_m, .. } if (thickness_m - 0.01).abs() < 1e-9, "#2 at x 7.195 m", "0.0100 m", "at least 0.020 m");
    // A needle of a cell that comes within 15 mm of the roof.
    let needle = |s: &mut Scheme| {
        let mut tip = s.section.cells[0].corners[2];
        (tip.id, tip.x_m, tip.z_m, tip.cut) = (Id(900), 3.6, 4.435, None);
        s.section.cells[0].corners.insert(3, tip);
    };
    assert_invalid!(edited(needle), Sliver { thickness_m, .. } if (thickness_m - 0.015).abs() < 1e-3, "at x 3.6", "Make it");
    let flat = |s: &mut Scheme| {
        s.section.cells.clear();
        s.section.joints.clear();
        s.section.outline[2].z_m = 0.015;
        s.section.outline[3].z_m = 0.015;
    };
    assert_invalid!(edited(flat), Sliver { .. }, "#1 at x 3.600 m", "0.0150 m", "Make it");
}

#[test]
fn chamfers_of_10_mm_are_no_slivers() {
    let mut scheme = good();
    for corner in &mut scheme.section.outline {
        corner.cut = Some(Cut { before_m: 0.01, after_m: 0.01 });
    }
    assert_eq!(scheme.validate(), Ok(()));
}

#[test]
fn joints_in_the_wrong_place() {
    for z in [-1.0, 0.0, 0.01, 4.44, 4.45, 5.0] {
        assert_invalid!(
            with("/section/joints/0/z_m", z),
            JointOutside { joint: Id(100), .. },
            "Joint #100 at z",
            "remove it"
        );
    }
    let two = |gap: f64| edited(|s| s.section.joints.push(Joint { id: Id(900), z_m: 0.65 + gap }));
    assert_invalid!(two(0.0), JointsTooClose { .. }, "#100 and #900", "z 0.650 m", "Move one");
    assert_invalid!(two(0.019), JointsTooClose { .. }, "#100 and #900", "Move one");
    assert_invalid!(
        with("/section/joints/0/z_m", 0.49),
        ThinLayer { joint: Id(100), .. },
        "Joint #100",
        "0.0100 m",
        "Move the joint"
    );
    assert_invalid!(
        with("/section/joints/0/z_m", 4.01),
        ThinLayer { joint: Id(100), .. },
        "at x 3.6",
        "z 4.000 m",
        "Move the joint"
    );
}

#[test]
fn the_users_own_items() {
    assert_invalid!(with("/items/0/wall_m", 0.0), ItemProperty { property, .. } if property == "wall_m", "\"leg\"", "wall_m is 0.0", "data sheet");
    assert_invalid!(with("/items/0/yield_mpa", -235.0), ItemProperty { .. }, "yield_mpa is -235.0", "data sheet");
    assert_invalid!(with("/items/1/section/tf_mm", 1e300), ItemProperty { .. }, "\"girder\"", "tf_mm", "data sheet");
    assert_invalid!(with("/items/1/side_by_side", 0), ItemProperty { .. }, "side_by_side is 0", "data sheet");
    let not_a_number = |s: &mut Scheme| {
        if let Kind::Leg(leg) = &mut s.items[0].kind {
            leg.diameter_m = f64::NAN;
        }
    };
    assert_invalid!(edited(not_a_number), ItemProperty { .. }, "diameter_m is not a number", "data sheet");
    assert_invalid!(with("/items/0/wall_m", 0.1), ItemShape { .. }, "\"leg\"", "thicker than its radius", "Correct");
    assert_invalid!(with("/items/1/section/tf_mm", 100.0), ItemShape { .. }, "no web", "Correct");
    assert_invalid!(with("/items/1/code", "leg"), RepeatedCode { .. }, "\"leg\"", "code of its own");
    assert_invalid!(with("/items/1/code", " "), NoCode { .. }, "Beam", "Give it one");
}

/// Every pointer into a JSON value.
fn pointers(value: &Value, at: &str, into: &mut Vec<String>) {
    into.push(at.to_owned());
    match value {
        Value::Object(fields) => fields.iter().for_each(|(name, value)| pointers(value, &format!("{at}/{name}"), into)),
        Value::Array(items) => {
            items.iter().enumerate().for_each(|(i, value)| pointers(value, &format!("{at}/{i}"), into))
        }
        _ => {}
    }
}

fn any_value() -> impl Strategy<Value = Value> {
    prop_oneof![
        Just(Value::Null),
        any::<bool>().prop_map(Value::from),
        any::<i64>().prop_map(Value::from),
        (0..130_i64).prop_map(Value::from),
        any::<f64>().prop_map(Value::from),
        (-8.0..8.0).prop_map(Value::from),
        ".{0,20}".prop_map(Value::from),
        Just(json!([])),
        Just(json!({})),
        Just(json!([[1, 2], { "id": 3 }])),
    ]
}

/// Reading must not panic; what it accepts must come through the rest unharmed.
fn read_and_use(bytes: &[u8]) -> Result<(), TestCaseError> {
    match read_bytes(bytes) {
        Err(error) => prop_assert!(!error.to_string().is_empty()),
        Ok(scheme) => {
            prop_assert_eq!(read(&write(&scheme)), Ok(scheme.clone()));
            let poured = pours(&scheme.section, scheme.bays.length_m, 25.0);
            prop_assert!(poured.iter().all(|pour| pour.area_m2 > 0.0 && pour.area_m2.is_finite()));
            prop_assert!(!faces(&scheme.section, scheme.ground.level_m).is_empty());
        }
    }
    Ok(())
}

proptest! {
    #[test]
    fn any_bytes(bytes in prop::collection::vec(any::<u8>(), 0..200)) {
        read_and_use(&bytes)?;
    }

    #[test]
    fn any_damage(place in any::<prop::sample::Index>(), bytes in prop::collection::vec(any::<u8>(), 0..4), gone in 0..20_usize) {
        let mut text = write(&good()).into_bytes();
        let start = place.index(text.len());
        let end = (start + gone).min(text.len());
        text.splice(start..end, bytes);
        read_and_use(&text)?;
    }

    #[test]
    fn any_values_changed(changes in prop::collection::vec((any::<prop::sample::Index>(), any_value()), 1..4)) {
        let mut file = serde_json::to_value(good()).unwrap();
        for (place, value) in changes {
            let mut places = Vec::new();
            pointers(&file, "", &mut places);
            if let Some(old) = file.pointer_mut(&places[place.index(places.len())]) {
                *old = value;
            }
        }
        read_and_use(file.to_string().as_bytes())?;
    }

    #[test]
    fn any_corner_moved(corner in 0..8_usize, x in -2.0..9.0, z in -2.0..6.0, joint in -1.0..6.0) {
        let mut scheme = good();
        let rings = scheme.section.outline.iter_mut().chain(&mut scheme.section.cells[0].corners);
        let corner = rings.into_iter().nth(corner).unwrap();
        (corner.x_m, corner.z_m) = (x, z);
        scheme.section.joints[0].z_m = joint;
        read_and_use(write(&scheme).as_bytes())?;
    }

    #[test]
    fn what_is_written_is_read(width in 1.0..20.0, height in 1.0..8.0, tie in 0.0..9.0, name in "[^\u{0}]{0,40}") {
        let walls = Walls { wall_m: width / 17.0 + 0.1, roof_m: 0.1 + height / 13.0, base_m: 0.3, haunch_m: width / 30.0 };
        let mut scheme = Scheme { section: Section::box_cell(width, height, walls), name, ..good() };
        scheme.section.joints = vec![Joint { id: Id(100), z_m: 0.3 + height / 3.0 }];
        scheme.ties[0].z_m = tie;
        prop_assert_eq!(scheme.validate(), Ok(()));
        prop_assert_eq!(read(&write(&scheme)), Ok(scheme));
    }
}
