//! Which item of the catalogue is looked at, and how a file of items was taken in.

use super::Store;
use crate::persistence::Import;
use leptos::prelude::*;

impl Store {
    /// The item that is open in the catalogue.
    pub fn open_item(&self) -> Option<String> {
        self.item.get()
    }

    /// Opens an item of the catalogue, or none.
    pub fn set_open_item(&self, code: Option<String>) {
        self.item.set(code);
    }

    /// Shows an item in the catalogue, wherever the user is.
    pub fn look_up(&self, code: Option<String>) {
        self.item.set(code);
        self.look_ups.update(|count| *count += 1);
    }

    /// Grows whenever the catalogue is to be shown.
    pub fn look_ups(&self) -> u64 {
        self.look_ups.get()
    }

    /// How the last file of items was taken in.
    pub fn import(&self) -> Option<Import> {
        self.import.get()
    }

    /// Notes how a file of items was taken in.
    pub fn set_import(&self, import: Option<Import>) {
        self.import.set(import);
    }
}
