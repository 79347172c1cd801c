//! Files on the user's own disk.

use super::items::{import_text, is_of_items};
use super::put_aside;
use crate::language::{t, told};
use crate::store::Store;
use falsewright_core::scheme;
use leptos::task::spawn_local;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, BlobPropertyBag, DragEvent, Event, File, HtmlAnchorElement, HtmlInputElement, Url};

/// Larger files are neither schemes nor items.
const MOST_BYTES: f64 = 4.0 * 1024.0 * 1024.0;

/// Hands a text to the browser as a file to be saved.
pub fn download(name: &str, kind: &str, text: &str) -> Result<(), JsValue> {
    let options = BlobPropertyBag::new();
    options.set_type(kind);
    let blob = Blob::new_with_str_sequence_and_options(&js_sys::Array::of1(&text.into()), &options)?;
    let address = Url::create_object_url_with_blob(&blob)?;
    let document = web_sys::window().and_then(|window| window.document()).ok_or(JsValue::NULL)?;
    let anchor: HtmlAnchorElement = document.create_element("a")?.unchecked_into();
    anchor.set_href(&address);
    anchor.set_download(name);
    anchor.click();
    Url::revoke_object_url(&address)
}

/// Saves the scheme, or all options of the job, as a file named after it.
pub fn save_to_file(store: Store) {
    let (name, text) = (store.peek(|editor| editor.scheme().name.clone()), store.job_text(false));
    if download(&format!("{}.json", file_name(&name)), "application/json", &text).is_err() {
        store.tell(Some(t("The browser did not save the file. Try again, or allow downloads for this page.").into()));
    }
}

/// A name that every file system takes.
pub fn file_name(name: &str) -> String {
    let plain: String = name.chars().map(|c| if c.is_alphanumeric() { c.to_ascii_lowercase() } else { '-' }).collect();
    let words: Vec<&str> = plain.split('-').filter(|word| !word.is_empty()).collect();
    if words.is_empty() { "scheme".to_owned() } else { words.join("-") }
}

/// Opens the file that was chosen in a file field.
pub fn open_file(store: Store, event: &Event) {
    if let Some(file) = chosen(event) {
        read(store, file, open_text);
    }
}

/// Opens the file that was dropped on the page: a scheme, or items of the user's own.
pub fn open_dropped(store: Store, event: &DragEvent) {
    if let Some(file) = dropped(event) {
        let take = |store, name: &str, text: &str| {
            if is_of_items(name, text) { import_text(store, name, text) } else { open_text(store, name, text) }
        };
        read(store, file, take);
    }
}

/// The file that was chosen in a file field, which is empty again afterwards.
pub(super) fn chosen(event: &Event) -> Option<File> {
    let input = event.target().and_then(|target| target.dyn_into::<HtmlInputElement>().ok())?;
    let file = input.files().and_then(|files| files.get(0));
    input.set_value("");
    file
}

/// The file that was dropped.
pub(super) fn dropped(event: &DragEvent) -> Option<File> {
    event.prevent_default();
    event.data_transfer().and_then(|data| data.files()).and_then(|files| files.get(0))
}

/// Reads a file and hands its name and text on; tells the user if it cannot.
pub(super) fn read(store: Store, file: File, take: impl FnOnce(Store, &str, &str) + 'static) {
    spawn_local(async move {
        let name = file.name();
        if file.size() > MOST_BYTES {
            store.tell(Some(say!("{} is too large to be read here; choose a file that this page saved.", name)));
            return;
        }
        let text = JsFuture::from(file.text()).await.ok().and_then(|text| text.as_string());
        match text {
            Some(text) => take(store, &name, &text),
            None => store.tell(Some(say!("{} could not be read; check that it is still there.", name))),
        }
    });
}

/// Opens a scheme, or all options of a job, and sets the present one aside; a faulty text changes nothing.
pub fn open_text(store: Store, name: &str, text: &str) {
    match scheme::Job::read(text) {
        Ok(job) => {
            set_present_aside(store);
            store.open_job(job);
        }
        Err(error) => {
            let why = told(&error.sentence());
            store.tell(Some(say!("{} was not opened: {} The drawing on the sheet is as it was.", name, why)));
        }
    }
}

/// Keeps a copy of the drawing on the sheet before another takes its place.
pub fn set_present_aside(store: Store) {
    store.peek(|editor| {
        if !editor.scheme().section.outline.is_empty() {
            put_aside(&scheme::write(editor.scheme()));
        }
    });
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn file_names_are_plain() {
        assert_eq!(file_name("Heron Lane, bay 2/4"), "heron-lane-bay-2-4");
        assert_eq!(file_name("../"), "scheme");
    }
}
