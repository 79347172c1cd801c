//! Published and independently worked cases, read from `tests/data/reference`.

use serde_json::Value;

/// One case: what goes in, what must come out, and who says so.
pub struct Case {
    id: String,
    source: String,
    inputs: Value,
    expected: Value,
    /// Relative.
    pub tolerance: f64,
}

impl Case {
    /// An input.
    pub fn input(&self, name: &str) -> f64 {
        number(&self.inputs[name], &self.id, name)
    }

    /// An expected value.
    pub fn expected(&self, name: &str) -> f64 {
        number(&self.expected[name], &self.id, name)
    }

    /// A row of inputs.
    pub fn inputs(&self, name: &str) -> Vec<f64> {
        numbers(&self.inputs[name], &self.id, name)
    }

    /// A row of expected values.
    pub fn expected_row(&self, name: &str) -> Vec<f64> {
        numbers(&self.expected[name], &self.id, name)
    }

    /// Compares with an expected value, within the tolerance of the case.
    #[track_caller]
    pub fn assert(&self, name: &str, actual: f64) {
        self.assert_times(name, actual, 1.0);
    }

    /// Compares with an expected value times a factor in which the case differs from what is tested.
    #[track_caller]
    pub fn assert_times(&self, name: &str, actual: f64, factor: f64) {
        let what = format!("{} {name} ({})", self.id, self.source);
        crate::assert_close(&what, actual, self.expected(name) * factor, self.tolerance);
    }
}

fn number(value: &Value, id: &str, name: &str) -> f64 {
    value.as_f64().unwrap_or_else(|| panic!("case {id} has no number {name}"))
}

fn numbers(value: &Value, id: &str, name: &str) -> Vec<f64> {
    let row = value.as_array().unwrap_or_else(|| panic!("case {id} has no row {name}"));
    row.iter().map(|value| number(value, id, name)).collect()
}

/// The cases of a file.
pub fn cases(text: &str) -> Vec<Case> {
    let value: Value = serde_json::from_str(text).expect("reference file is JSON");
    let list = value.as_array().expect("reference file is a list");
    list.iter()
        .map(|case| Case {
            id: case["id"].as_str().expect("id").into(),
            source: case["source"].as_str().expect("source").into(),
            inputs: case["inputs"].clone(),
            expected: case["expected"].clone(),
            tolerance: case["tolerance"].as_f64().expect("tolerance"),
        })
        .collect()
}

/// The case of this id.
pub fn case(text: &str, id: &str) -> Case {
    cases(text).into_iter().find(|case| case.id == id).unwrap_or_else(|| panic!("no case {id}"))
}
