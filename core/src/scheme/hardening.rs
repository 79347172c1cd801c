use crate::json::tagged;
use serde::{Deserialize, Serialize};
use std::fmt;
use std::str::FromStr;

/// How fast cement hardens, EN 1992-1-1 3.1.2(6).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Cement {
    /// Class R.
    Rapid,
    /// Class N.
    Normal,
    /// Class S.
    Slow,
}

/// What concrete hardens to, and how warm it is meanwhile.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Hardening {
    /// Characteristic cylinder strength at 28 days.
    pub class_mpa: f64,
    /// Its cement.
    pub cement: Cement,
    /// Its temperature from placing on.
    pub temperature: Temperature,
}

/// Temperature of concrete from placing on.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "by", rename_all = "snake_case")]
pub enum Temperature {
    /// The same all the time.
    Mean {
        /// Mean of the concrete.
        celsius: f64,
    },
    /// As measured or foreseen.
    History {
        /// Hours and the °C during them, from placing on.
        hours_celsius: Vec<[f64; 2]>,
    },
}

tagged! { Temperature, "by", |fields| {
    "mean" => Temperature::Mean { celsius: fields.take("celsius")? },
    "history" => Temperature::History { hours_celsius: fields.take("hours_celsius")? },
} }

/// Text that is no temperature and no list of hours and temperatures.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[error("write one temperature, or hours and temperatures such as \"24 h 15; 48 h 8\"")]
pub struct TemperatureTextError;

impl fmt::Display for Temperature {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Mean { celsius } => write!(f, "{celsius}"),
            Self::History { hours_celsius } => {
                for (index, [hours, celsius]) in hours_celsius.iter().enumerate() {
                    write!(f, "{}{hours} h {celsius}", if index > 0 { "; " } else { "" })?;
                }
                Ok(())
            }
        }
    }
}

impl FromStr for Temperature {
    type Err = TemperatureTextError;

    /// One temperature, or `hours h temperature` with semicolons between; `°C` may follow each. Decimals follow a point or
    /// a comma; where no semicolon stands, commas part the entries.
    fn from_str(text: &str) -> Result<Self, Self::Err> {
        let number = |text: &str| {
            let text = text.trim().trim_end_matches("°C").trim().replace('−', "-").replace(',', ".");
            let value: f64 = text.parse().ok()?;
            value.is_finite().then_some(value)
        };
        let each = |part: &str| {
            let (hours, celsius) = part.split_once('h')?;
            Some([number(hours)?, number(celsius)?])
        };
        if let Some(celsius) = number(text) {
            return Ok(Self::Mean { celsius });
        }
        let between = if text.contains(';') { ';' } else { ',' };
        let hours_celsius = text.split(between).map(each).collect::<Option<Vec<_>>>().ok_or(TemperatureTextError)?;
        Ok(Self::History { hours_celsius })
    }
}

/// Concrete cast earlier that the works stand on.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SlabAge {
    /// From its placing to the day when the works are loaded.
    pub age_days: f64,
    /// How it hardens.
    pub hardening: Hardening,
}

/// When the forms of a pour may go.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Striking {
    /// How its concrete hardens.
    pub hardening: Hardening,
    /// Load that its soffits are designed for, own weight included, unfactored; if not known, soffits wait for the whole
    /// strength of their class.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub service_kpa: Option<f64>,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn temperatures_are_written_as_they_are_read() {
        for text in ["12.5", "-3", "24 h 15; 48 h 8.5"] {
            assert_eq!(text.parse::<Temperature>().map(|read| read.to_string()), Ok(text.to_owned()));
        }
        let history = Temperature::History { hours_celsius: vec![[24.0, 15.0], [48.0, -2.0]] };
        assert_eq!("24h15 °C; 48 h −2".parse(), Ok(history));
        let other = Temperature::History { hours_celsius: vec![[24.0, 15.5], [48.0, 8.0]] };
        assert_eq!("24 h 15,5; 48 h 8".parse(), Ok(other.clone()));
        assert_eq!("24 h 15.5, 48 h 8".parse(), Ok(other));
        assert_eq!("12,5".parse(), Ok(Temperature::Mean { celsius: 12.5 }));
        for text in ["", "warm", "24 h", "24 h 15, 8", "24 h 15,5, 48 h 8", "inf"] {
            assert_eq!(text.parse::<Temperature>(), Err(TemperatureTextError), "{text}");
        }
    }
}
