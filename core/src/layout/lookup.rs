//! Items by code, with a finding where the code or the kind is wrong.

use crate::catalogue::{Catalogue, Item};
use crate::results::{Finding, Severity};
use crate::scheme::Id;
use crate::sentence::{Sentence, item as named, word};

/// Looks items up for one element and collects what is wrong.
pub struct Lookup<'a> {
    pub catalogue: &'a Catalogue,
    pub owner: Id,
    pub mark: &'a str,
}

impl Lookup<'_> {
    /// The item of `code` if it serves as `role`, which `fits` decides.
    pub fn item(
        &self,
        code: &str,
        role: &'static str,
        fits: impl Fn(&Item) -> bool,
        findings: &mut Vec<Finding>,
    ) -> Option<Item> {
        let (text, remedy) = match self.catalogue.get(code) {
            Some(item) if fits(item) => return Some(item.clone()),
            Some(item) => (
                sentence!("{}: {} cannot serve as {}.", self.mark, named(&item.name), word(role)),
                sentence!("Choose another item as {}.", word(role)),
            ),
            None => (
                sentence!(
                    "{}: there is no item with the code {} for its {}.",
                    self.mark,
                    format!("{code:?}"),
                    word(role)
                ),
                sentence!("Choose an item of the catalogue or add your own with this code."),
            ),
        };
        findings.push(fail(self.owner, text, remedy));
        None
    }
}

/// A finding that keeps an element from being built as drawn.
pub fn fail(owner: Id, text: Sentence, remedy: Sentence) -> Finding {
    finding(Severity::Fail, owner, text, remedy)
}

/// A finding about something missing.
pub fn warn(owner: Id, text: Sentence, remedy: Sentence) -> Finding {
    finding(Severity::Warn, owner, text, remedy)
}

fn finding(severity: Severity, owner: Id, text: Sentence, remedy: Sentence) -> Finding {
    Finding { severity, owner: Some(owner), at: None, check: None, text, remedy }
}
