//! Factors on loads.

use crate::scheme::Basis;

/// Factors on unfavourable loads.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Factors {
    /// Self weight, and fresh concrete on soffits once placed.
    pub permanent: f64,
    /// Construction operations and wind.
    pub variable: f64,
    /// Lateral pressure of fresh concrete on shutters.
    pub fresh_concrete_pressure: f64,
}

/// Factors of a basis: 1.0 against permissible values; 1.35 and 1.5 of EN 12812 (from memory), with 1.5 on the
/// pressure of fresh concrete as in DIN 18218:2010 (from memory).
pub fn factors(basis: Basis) -> Factors {
    match basis {
        Basis::WorkingLoad => Factors { permanent: 1.0, variable: 1.0, fresh_concrete_pressure: 1.0 },
        Basis::LimitStateB1 | Basis::LimitStateB2 => {
            Factors { permanent: 1.35, variable: 1.5, fresh_concrete_pressure: 1.5 }
        }
    }
}
