//! The reference cases, through the example that works them out.

#[allow(dead_code)]
#[path = "../../../core/examples/reference.rs"]
mod example;

use serde_json::{Value, json};

const CASES: &str = include_str!("../../data/reference/cases.json");

#[test]
fn every_case_passes() {
    let counts = example::count(CASES).expect("the cases are read");
    assert_eq!((counts.failed, counts.unknown), (0, 0));
    assert_eq!(counts.passed, 115);
}

#[test]
fn unknown_topics_are_not_passed() {
    let cases = json!([{ "id": "A", "topic": "weather", "inputs": {}, "expected": {}, "tolerance": {}, "source": "" }]);
    let counts = example::count(&cases.to_string()).expect("a list");
    assert_eq!((counts.passed, counts.failed, counts.unknown), (0, 0, 1));
    assert!(example::count("{").is_err() && example::count("{}").is_err());
}

/// A case with a wrong expected value fails, whatever its topic.
#[test]
fn wrong_values_fail() {
    let mut cases: Value = serde_json::from_str(CASES).expect("JSON");
    let list = cases.as_array_mut().expect("a list");
    for case in list.iter_mut() {
        let first = case["expected"].as_object_mut().and_then(|all| all.values_mut().next()).expect("a value");
        *first = json!(-12345.0);
    }
    let counts = example::count(&cases.to_string()).expect("a list");
    assert_eq!((counts.passed, counts.failed), (0, 115));
}

/// Any input replaced by anything.
#[test]
fn hostile_inputs_do_not_panic() {
    let cases: Value = serde_json::from_str(CASES).expect("JSON");
    let odd = [
        json!(null),
        json!(-1),
        json!(0),
        json!(1e308),
        json!(1e-308),
        json!("x"),
        json!([]),
        json!([1, "a"]),
        json!({}),
    ];
    let mut all = vec![json!(5), json!(null), json!({ "id": 3, "topic": 7, "inputs": [1], "expected": [2] })];
    for case in cases.as_array().expect("a list") {
        for key in case["inputs"].as_object().expect("inputs").keys() {
            for value in &odd {
                let mut changed = case.clone();
                changed["inputs"][key] = value.clone();
                all.push(changed);
            }
        }
    }
    let counts = example::count(&Value::Array(all).to_string()).expect("a list");
    assert!(counts.failed > 1000 && counts.unknown >= 3, "{counts:?}");
}
