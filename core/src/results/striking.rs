use serde::Serialize;

/// When forms may go.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct StrikingTime {
    /// Mark of the pour.
    pub pour: String,
    /// Which of its forms.
    pub form: StruckForm,
    /// Strength that the concrete must have then.
    pub required_mpa: f64,
    /// Hours from placing until it has it; none if it never does.
    pub hours: Option<f64>,
    /// Hours that are usual where strength is not tested; none at temperatures below freezing.
    pub untested_h: Option<f64>,
    /// Clause or practice behind the strength.
    pub source: String,
    /// The strength with its numbers.
    pub formula: String,
}

/// Forms that are struck together.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum StruckForm {
    /// Wall shutters.
    Walls,
    /// Soffits with all that carries them.
    Soffits,
}

impl StruckForm {
    /// In words.
    pub fn name(self) -> &'static str {
        match self {
            Self::Walls => "walls",
            Self::Soffits => "soffits",
        }
    }
}
