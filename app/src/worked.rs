use crate::language::told;
use falsewright_core::catalogue::Catalogue;
use falsewright_core::scheme::Scheme;
use falsewright_core::{Design, DesignError, design};

/// A scheme worked out, or the reason why it cannot be.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Worked {
    /// Empty where there is a reason.
    pub design: Design,
    /// Why nothing could be computed.
    pub fault: Option<DesignError>,
}

impl Worked {
    /// Works a scheme out; a blank sheet comes to nothing.
    pub fn out(scheme: &Scheme, catalogue: &Catalogue) -> Self {
        if scheme.section.outline.is_empty() {
            return Self::default();
        }
        match design(scheme, catalogue) {
            Ok(design) => Self { design, fault: None },
            Err(fault) => Self { design: Design::default(), fault: Some(fault) },
        }
    }

    /// Why nothing could be computed, in whole sentences.
    pub fn reason(&self) -> Option<String> {
        let sentences = self.fault.as_ref()?.sentences();
        Some(sentences.iter().map(told).collect::<Vec<_>>().join("\n"))
    }
}
