use crate::catalogue::Catalogue;
use crate::model::Model;
use crate::quantities::Quantity;
use crate::results::Results;
use crate::scheme::Scheme;

/// A scheme worked out.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Design {
    /// Where everything is.
    pub model: Model,
    /// What it bears.
    pub results: Results,
    /// How much of it there is, for one bay's set of equipment and one bay's concrete.
    pub quantities: Vec<Quantity>,
}

/// Why a scheme cannot be computed at all.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum DesignError {}

/// Works out a scheme. What is incomplete or out of range comes back as findings in the results.
pub fn design(scheme: &Scheme, catalogue: &Catalogue) -> Result<Design, DesignError> {
    let _ = (scheme, catalogue);
    Ok(Design::default())
}
