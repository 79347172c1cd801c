//! Typed lengths.

/// Why a typed length is not understood.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum QuantityError {
    /// Nothing typed.
    #[error("Type a length, such as 3.6, 450 mm or 2*300+1200.")]
    Empty,
}

/// Reads a length in metres.
pub fn parse_length(text: &str) -> Result<f64, QuantityError> {
    let _ = text;
    Err(QuantityError::Empty)
}
