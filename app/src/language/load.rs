//! Fetches the words of a language.

use super::{GERMAN, Language, Table};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{AbortSignal, RequestInit, Response};

/// Words that do not come so soon are waited for no longer.
const LONGEST_MS: u32 = 4000;

/// The first language that the browser asks for and the page speaks.
pub fn preferred() -> Language {
    let wanted = web_sys::window().map(|window| window.navigator().languages());
    let tags = wanted.into_iter().flat_map(|tags| tags.to_vec()).filter_map(|tag| tag.as_string());
    tags.into_iter().find_map(|tag| Language::of_tag(&tag)).unwrap_or_default()
}

/// Makes sure that the words of a language are there; false: they cannot be had.
pub async fn load(language: Language) -> bool {
    if language == Language::English || GERMAN.with_borrow(|table| !table.is_empty()) {
        return true;
    }
    let Ok(table) = fetch(language).await else { return false };
    GERMAN.set(table);
    true
}

async fn fetch(language: Language) -> Result<Table, JsValue> {
    let window = web_sys::window().ok_or(JsValue::NULL)?;
    let options = RequestInit::new();
    options.set_signal(Some(&AbortSignal::timeout_with_u32(LONGEST_MS)));
    let address = format!("language/{}.json", language.code());
    let answer = JsFuture::from(window.fetch_with_str_and_init(&address, &options)).await?;
    let answer: Response = answer.dyn_into()?;
    if !answer.ok() {
        return Err(JsValue::NULL);
    }
    let words: js_sys::Object = JsFuture::from(answer.json()?).await?.dyn_into()?;
    let mut table = Table::new();
    for pair in js_sys::Object::entries(&words).iter() {
        let pair: js_sys::Array = pair.dyn_into()?;
        if let (Some(english), Some(other)) = (pair.get(0).as_string(), pair.get(1).as_string()) {
            // Read once for as long as the page lives.
            table.insert(Box::leak(english.into_boxed_str()), Box::leak(other.into_boxed_str()));
        }
    }
    Ok(table)
}
