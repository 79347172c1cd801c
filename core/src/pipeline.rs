use crate::catalogue::Catalogue;
use crate::findings;
use crate::layout;
use crate::load_path::{self, Record};
use crate::model::Model;
use crate::quantities::{self, Quantity, Reuse};
use crate::results::Results;
use crate::scheme::{Scheme, SchemeError};
use crate::sentence::Sentence;
use crate::striking;
use std::borrow::Cow;

/// A scheme worked out.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Design {
    /// Where everything is.
    pub model: Model,
    /// What it bears.
    pub results: Results,
    /// How much of it there is, for one bay's set of equipment and one bay's concrete.
    pub quantities: Vec<Quantity>,
    /// What the equipment comes to over all bays, if that is asked for.
    pub reuse: Option<Reuse>,
}

/// Why a scheme cannot be computed at all.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum DesignError {
    /// The scheme itself is at fault: every reason found.
    #[error("{}", sentences(.0))]
    Scheme(Vec<SchemeError>),
}

fn sentences(errors: &[SchemeError]) -> String {
    errors.iter().map(ToString::to_string).collect::<Vec<_>>().join("\n")
}

impl DesignError {
    /// Every reason found.
    pub fn sentences(&self) -> Vec<Sentence> {
        let Self::Scheme(errors) = self;
        errors.iter().map(SchemeError::sentence).collect()
    }
}

/// Works out a scheme. What is incomplete or out of range comes back as findings in the results.
///
/// # Errors
/// A scheme that does not validate.
pub fn design(scheme: &Scheme, catalogue: &Catalogue) -> Result<Design, DesignError> {
    scheme.validate().map_err(DesignError::Scheme)?;
    let catalogue = catalogue_of(scheme, catalogue);
    let (model, placing) = layout::place(scheme, &catalogue);
    let mut record = Record::new(scheme);
    record.results.findings = placing;
    load_path::solve(scheme, &model, &mut record);
    let mut results = record.results;
    striking::add(scheme, &model, &mut results);
    findings::name_own_items(scheme, &catalogue, &model, &mut results);
    findings::complete(&model, &mut results);
    let quantities = quantities::count(&model, &catalogue);
    let reuse = scheme.programme.map(|programme| quantities::reuse(&scheme.bays, &programme, &quantities));
    Ok(Design { model, results, quantities, reuse })
}

/// The catalogue with the scheme's own items, copied only if there are any.
pub(crate) fn catalogue_of<'a>(scheme: &Scheme, catalogue: &'a Catalogue) -> Cow<'a, Catalogue> {
    match scheme.items.as_slice() {
        [] => Cow::Borrowed(catalogue),
        _ => Cow::Owned(catalogue.clone().with_items_of(scheme)),
    }
}
