//! Copies and pastes elements as text: by the browser's own events where keys are used, by its clipboard where buttons are.
//! A copy is kept in this browser too, for buttons in browsers that refuse a page their clipboard.

use super::Store;
use crate::language::listed;
use crate::persistence::{copied, keep_copied};
use leptos::task::spawn_local;
use wasm_bindgen_futures::JsFuture;

impl Store {
    /// The selection as text; none, with the reason told, where nothing can be copied.
    pub fn copied_text(&self) -> Option<String> {
        match self.peek(|editor| editor.copied()) {
            Ok(text) => {
                keep_copied(&text);
                let count = listed(&self.chosen.with_untracked(|chosen| crate::editor::counted(chosen)));
                self.tell(Some(say!("Copied {}. Paste here, in another option or in another tab.", count)));
                Some(text)
            }
            Err(refusal) => {
                self.tell(Some(refusal.to_string()));
                None
            }
        }
    }

    /// Copies the selection by a button.
    pub(super) fn copy(&self) {
        if let Some(text) = self.copied_text() {
            to_clipboard(text);
        }
    }

    /// Copies the selection by a button and removes it.
    pub(super) fn cut(&self) {
        if let Some(text) = self.copied_text() {
            to_clipboard(text);
            self.remove_copied();
        }
    }

    /// Removes the selection after it was copied.
    pub fn remove_copied(&self) {
        self.tell(None);
        self.run(crate::editor::Editor::cut);
    }

    /// Pastes by a button.
    pub(super) fn paste_from_clipboard(&self) {
        let store = *self;
        spawn_local(async move {
            let read = clipboard().map(|clipboard| clipboard.read_text());
            let text = match read {
                Some(read) => JsFuture::from(read).await.ok().and_then(|text| text.as_string()),
                None => None,
            };
            let ours = text.filter(|text| falsewright_core::scheme::edit::Excerpt::read(text).is_ok());
            match ours.or_else(copied) {
                Some(text) => store.paste(&text),
                None => {
                    store.tell(Some(say!("Nothing was copied yet. Select shutters, ties or falsework, and copy them.")))
                }
            }
        });
    }

    /// Places what a text holds, or says why not.
    pub fn paste(&self, text: &str) {
        self.try_run(|editor| editor.paste(text));
    }
}

/// A browser that refuses still has the copy that is kept apart.
fn to_clipboard(text: String) {
    spawn_local(async move {
        if let Some(clipboard) = clipboard() {
            let _ = JsFuture::from(clipboard.write_text(&text)).await;
        }
    });
}

/// None on a page that is not served securely.
fn clipboard() -> Option<web_sys::Clipboard> {
    let navigator = web_sys::window()?.navigator();
    let there = js_sys::Reflect::get(&navigator, &"clipboard".into()).is_ok_and(|value| value.is_object());
    there.then(|| navigator.clipboard())
}
