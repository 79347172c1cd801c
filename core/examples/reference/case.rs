use serde_json::{Map, Value};
use std::fmt;

/// One case of the file.
pub struct Case {
    pub id: String,
    pub topic: String,
    inputs: Value,
    expected: Map<String, Value>,
    tolerance: Value,
}

/// What became of a case.
pub enum Outcome {
    Got(Got),
    Unknown,
    Unusable,
}

impl Case {
    pub fn read(index: usize, value: &Value) -> Self {
        let text = |name: &str| value[name].as_str().unwrap_or_default().to_owned();
        let id = value["id"].as_str().map_or_else(|| format!("case {index}"), str::to_owned);
        Self {
            id,
            topic: text("topic"),
            inputs: value["inputs"].clone(),
            expected: value["expected"].as_object().cloned().unwrap_or_default(),
            tolerance: value["tolerance"].clone(),
        }
    }

    /// An input number.
    pub fn number(&self, name: &str) -> Option<f64> {
        self.inputs[name].as_f64()
    }

    /// An input number, or what it usually is.
    pub fn number_or(&self, name: &str, usual: f64) -> f64 {
        self.number(name).unwrap_or(usual)
    }

    /// An input above nought.
    pub fn positive(&self, name: &str) -> Option<f64> {
        self.number(name).filter(|&value| value > 0.0)
    }

    /// An input word.
    pub fn text(&self, name: &str) -> Option<&str> {
        self.inputs[name].as_str()
    }

    /// A list of input numbers, or one number as a list.
    pub fn numbers(&self, name: &str) -> Option<Vec<f64>> {
        match &self.inputs[name] {
            Value::Array(values) => values.iter().map(Value::as_f64).collect(),
            value => value.as_f64().map(|number| vec![number]),
        }
    }

    /// A list of input words, or one word as a list.
    pub fn texts(&self, name: &str) -> Option<Vec<&str>> {
        match &self.inputs[name] {
            Value::Array(values) => values.iter().map(Value::as_str).collect(),
            value => value.as_str().map(|text| vec![text]),
        }
    }

    pub fn topic_has(&self, words: &str) -> bool {
        self.topic.contains(words)
    }

    /// The steel grade named in the topic, as its yield strength; S275 if none is.
    pub fn grade_of_topic(&self) -> f64 {
        [235.0, 275.0, 355.0].into_iter().find(|grade| self.topic_has(&format!("S{grade}"))).unwrap_or(275.0)
    }

    /// Relative and absolute tolerance of a value: `rel`, or `rel_It` for those whose name begins with `It`.
    fn tolerance(&self, key: &str) -> (f64, f64) {
        let own = self.tolerance.as_object().into_iter().flatten().find_map(|(name, value)| {
            name.strip_prefix("rel_").filter(|start| key.starts_with(start)).and_then(|_| value.as_f64())
        });
        let plain = |name: &str| self.tolerance[name].as_f64();
        let rel = own.or_else(|| plain("rel")).or_else(|| self.tolerance.as_f64()).unwrap_or(0.0);
        (rel, plain("abs").unwrap_or(0.0))
    }
}

/// What was worked out.
#[derive(Default)]
pub struct Got {
    values: Map<String, Value>,
}

impl Got {
    pub fn with(mut self, name: &str, value: impl Into<Value>) -> Self {
        self.values.insert(name.to_owned(), value.into());
        self
    }

    pub fn of(pairs: &[(&str, f64)]) -> Self {
        pairs.iter().fold(Self::default(), |got, &(name, value)| got.with(name, value))
    }

    /// The values that the case asks for; null where one is not worked out.
    pub fn with_keys_of(&self, case: &Case) -> Value {
        let value = |key: &String| (key.clone(), self.values.get(key).cloned().unwrap_or(Value::Null));
        Value::Object(case.expected.keys().map(value).collect())
    }

    /// Whether every value is within its tolerance.
    pub fn passes(&self, case: &Case) -> bool {
        let lines = self.compare(case);
        !lines.is_empty() && lines.iter().all(|line| line.pass)
    }

    pub fn compare(&self, case: &Case) -> Vec<Line> {
        let missing = Value::Null;
        let line = |(key, expected): (&String, &Value)| {
            compare(key, expected, self.values.get(key).unwrap_or(&missing), case.tolerance(key))
        };
        case.expected.iter().flat_map(line).collect()
    }
}

/// One compared value.
pub struct Line {
    key: String,
    expected: Value,
    got: Value,
    pass: bool,
}

fn compare(key: &str, expected: &Value, got: &Value, tolerance: (f64, f64)) -> Vec<Line> {
    if let (Value::Array(wanted), Value::Array(found)) = (expected, got)
        && wanted.len() == found.len()
    {
        let each = |(index, (expected, got))| compare(&format!("{key}[{index}]"), expected, got, tolerance);
        return wanted.iter().zip(found).enumerate().flat_map(each).collect();
    }
    let pass = match (expected.as_f64(), got.as_f64()) {
        (Some(expected), Some(got)) => {
            let (rel, abs) = tolerance;
            (got - expected).abs() <= (rel * expected.abs()).max(abs).max(1e-12)
        }
        _ => expected == got,
    };
    vec![Line { key: key.to_owned(), expected: expected.clone(), got: got.clone(), pass }]
}

impl fmt::Display for Line {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let verdict = if self.pass { "pass" } else { "FAIL" };
        match (self.expected.as_f64(), self.got.as_f64()) {
            (Some(expected), Some(got)) if expected != 0.0 => write!(
                f,
                "{:22} expected {expected:<12} got {got:<14.6} ratio {:.5} {verdict}",
                self.key,
                got / expected
            ),
            _ => write!(f, "{:22} expected {:<12} got {:<14} {verdict}", self.key, self.expected, self.got),
        }
    }
}
