//! Held against serde_json, which reads and writes the same types by itself.

use super::*;
use crate::scheme::{HeldBy, Scheme, heron_lane};
use serde::Deserialize;

#[derive(Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
enum Word {
    Inner,
    Outer,
}

#[derive(Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Part {
    name: String,
    count: u32,
    length_m: f64,
    #[serde(default)]
    held: Option<bool>,
}

#[derive(Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Whole {
    parts: Vec<Part>,
    word: Word,
    pair: [f64; 2],
    none: Vec<u32>,
}

const GOOD: &str = r#"{
  "parts": [
    {"name": "tie, \"long\" {[\u00e4]}", "count": 3, "length_m": 0.1, "held": true},
    { "name" : "wäling", "count" : 4, "length_m" : -2e-3 , "held": null}
  ],
  "word": "outer", "pair": [1, 2.5],
  "none": []
}"#;

#[test]
fn values_are_read_as_serde_json_reads_them() {
    let plain: Whole = serde_json::from_str(GOOD).unwrap();
    assert_eq!(read::<Whole>(GOOD).unwrap(), plain);
    let text = serde_json::to_string(&heron_lane().unwrap()).unwrap();
    assert_eq!(read::<Scheme>(&text).unwrap(), heron_lane().unwrap());
    for number in ["0", "-0", "-0.0", "5e-324", "1.7976931348623157e308", "0.30000000000000004", "123456789012345678"] {
        let (ours, theirs) = (read::<f64>(number).unwrap(), serde_json::from_str::<f64>(number).unwrap());
        assert_eq!(ours.to_bits(), theirs.to_bits(), "{number}");
    }
}

#[test]
fn values_are_written_as_serde_json_writes_them() {
    let whole: Whole = read(GOOD).unwrap();
    assert_eq!(write_indented(&whole), serde_json::to_string_pretty(&whole).unwrap());
    assert_eq!(write_indented(&heron_lane().unwrap()), serde_json::to_string_pretty(&heron_lane().unwrap()).unwrap());
    for empty in ["[]", "{}", "[[],{},\"\"]", "[{\"a\":{}}]", "\"}\"", "1"] {
        let value: Value = serde_json::from_str(empty).unwrap();
        assert_eq!(write_indented(&value), serde_json::to_string_pretty(&value).unwrap());
    }
}

/// Each text differs from the good one in one place.
#[test]
fn what_is_wrong_is_told_as_by_serde_json_and_at_the_same_place() {
    let faults = [
        ("\"count\": 3", "\"count\": -3"),
        ("\"count\": 3", "\"count\": 3.5"),
        ("\"count\": 3", "\"count\": 4294967296"),
        ("\"count\": 3", "\"count\": \"3\""),
        ("\"count\": 3", "\"count\": null"),
        ("\"count\": 3", "\"count\": true"),
        ("\"count\": 3", "\"count\": 3, \"weight\": 7"),
        ("\"count\": 3", "\"count\": 3, \"count\": 3"),
        ("\"count\": 3, ", ""),
        ("\"count\" : 4, ", ""),
        ("\"held\": true", "\"held\": 1"),
        ("\"name\" : \"wäling\"", "\"name\" : 5"),
        ("\"word\": \"outer\"", "\"word\": \"between\""),
        ("\"word\": \"outer\", ", ""),
        ("\"pair\": [1, 2.5]", "\"pair\": [1, \"2\"]"),
        ("\"pair\": [1, 2.5]", "\"pair\": 2.5"),
        ("\"none\": []", "\"none\": [4, -1]"),
        ("\"none\": []", "\"none\": \"no\""),
        ("\"none\": []", "\"none\": []]"),
        ("\"none\": []", "\"none\": [,]"),
        ("\n}", ""),
    ];
    for (good, bad) in faults {
        assert!(GOOD.contains(good), "{good}");
        let text = GOOD.replacen(good, bad, 1);
        let ours = read::<Whole>(&text).expect_err(bad);
        let theirs = Error::from(serde_json::from_str::<Whole>(&text).expect_err(bad));
        assert_eq!(ours, theirs, "{bad}");
    }
}

#[test]
fn a_list_or_record_out_of_place_is_told_where_it_begins() {
    let error = read::<Whole>(&GOOD.replacen("\"count\": 3", "\"count\": [3]", 1)).unwrap_err();
    assert_eq!(error.to_string(), "invalid type: sequence, expected u32 at line 3 column 51");
    let error = read::<Whole>(&GOOD.replacen("[1, 2.5]", "[1, 2.5, 4]", 1)).unwrap_err();
    assert_eq!(error.to_string(), "invalid length 3, expected an array of length 2 at line 6 column 28");
    let error = read::<Whole>(&GOOD.replacen("[1, 2.5]", "[1]", 1)).unwrap_err();
    assert_eq!(error.to_string(), "invalid length 1, expected an array of length 2 at line 6 column 28");
    let error = read::<Vec<Whole>>("[ [], {} ]").unwrap_err();
    assert_eq!(error.to_string(), "invalid type: sequence, expected struct Whole at line 1 column 3");
}

#[test]
fn records_are_known_by_their_tag() {
    let held = |text: &str| read::<HeldBy>(text).map_err(|error| error.to_string());
    let block = Ok(HeldBy::Kentledge { weight_kn: 10.0, friction: 0.4 });
    assert_eq!(held(r#"{"held_by": "kentledge", "weight_kn": 10, "friction": 0.4}"#), block);
    assert_eq!(held(r#"{"friction": 0.4, "weight_kn": 10.0, "held_by": "kentledge"}"#), block);
    for (text, told) in [
        (r#"{"held_by": "kentledge", "weight_kn": 10}"#, "missing field `friction`"),
        (r#"{"weight_kn": 10}"#, "missing field `held_by`"),
        (r#"{"held_by": "thrust", "weight_kn": 10}"#, "unknown field `weight_kn`"),
        (r#"{"held_by": "rope"}"#, "unknown variant `rope`, expected one of `thrust`, `kentledge`, `anchor`"),
        (r#"{"held_by": "thrust", "held_by": "thrust"}"#, "duplicate field `held_by`"),
        (r#"{"held_by": "kentledge", "weight_kn": "10", "friction": 1}"#, "invalid type: string \"10\", expected f64"),
        (r#"{"held_by": "anchor", "depth_m": 1}"#, "missing field `head_m`"),
        (r#"{"held_by": 1}"#, "invalid type: integer `1`, expected a string"),
        ("\"thrust\"", "invalid type: string \"thrust\", expected a record of fields"),
    ] {
        let error = held(text).expect_err(text);
        assert!(error.starts_with(told), "{text}: {error}");
    }
}
