use super::{ReadError, Scheme, read};

/// The Heron Lane subway: an invented cycle subway, cast in bays under a bypass with a site lane kept open.
///
/// # Errors
/// None in a released build: the tests read it.
pub fn heron_lane() -> Result<Scheme, ReadError> {
    read(include_str!("heron_lane.json"))
}
