//! The language of the page. English stands in the code and is what another language is looked up by.

use std::cell::RefCell;
use std::collections::BTreeMap;

thread_local! {
    static SPOKEN: RefCell<BTreeMap<&'static str, &'static str>> = const { RefCell::new(BTreeMap::new()) };
}

/// The text in the language of the page; in English where that has no words for it.
pub fn t(english: &'static str) -> &'static str {
    SPOKEN.with_borrow(|spoken| spoken.get(english).copied().unwrap_or(english))
}
