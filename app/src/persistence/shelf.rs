//! Earlier sheets: what was replaced or could not be read, kept in this browser unchanged.

use super::autosave::storage;
use crate::language::t;
use falsewright_core::json;
use serde::{Deserialize, Serialize};

const KEY: &str = "falsewright.shelf";
const MOST: usize = 20;

/// A sheet set aside.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Kept {
    /// When, as the browser writes it.
    pub when: String,
    /// The file, unchanged.
    pub text: String,
}

/// All sheets set aside, the latest first.
pub fn kept() -> Vec<Kept> {
    let Some(text) = storage().and_then(|storage| storage.get_item(KEY).ok().flatten()) else { return Vec::new() };
    json::read(&text).unwrap_or_else(|_| vec![Kept { when: t("an unknown day").into(), text }])
}

/// Sets a sheet aside; false: the browser refused. A sheet that is there already is not kept twice.
pub fn put_aside(text: &str) -> bool {
    let mut all = kept();
    if all.iter().any(|kept| kept.text == text) {
        return true;
    }
    let when = js_sys::Date::new_0().to_locale_string("default", &wasm_bindgen::JsValue::UNDEFINED);
    all.insert(0, Kept { when: when.into(), text: text.to_owned() });
    all.truncate(MOST);
    let Some(storage) = storage() else { return false };
    storage.set_item(KEY, &json::write(&all)).is_ok()
}
