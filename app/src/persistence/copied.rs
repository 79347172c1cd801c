//! What was copied last, kept for the other tabs of this browser.

use super::autosave::storage;

const KEY: &str = "falsewright.copied";

/// Keeps what was copied.
pub fn keep_copied(text: &str) {
    if let Some(storage) = storage() {
        let _ = storage.set_item(KEY, text);
    }
}

/// What was copied last.
pub fn copied() -> Option<String> {
    storage()?.get_item(KEY).ok().flatten()
}
