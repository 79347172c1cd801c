//! How this user likes the page; kept in this browser apart from schemes.

use super::autosave::storage;

const LEFT_HANDED: &str = "falsewright.left-handed";

/// Whether the pens were last at the left.
pub fn left_handed() -> bool {
    storage().and_then(|storage| storage.get_item(LEFT_HANDED).ok().flatten()).is_some_and(|value| value == "yes")
}

/// Keeps where the pens are; a browser that refuses only forgets it.
pub fn keep_left_handed(left: bool) {
    if let Some(storage) = storage() {
        let _ = storage.set_item(LEFT_HANDED, if left { "yes" } else { "no" });
    }
}
