//! Keeps what the user makes: in this browser after every change, and in files.

mod autosave;
mod copied;
mod files;
mod items;
mod settings;
mod shelf;

pub use autosave::{keep, restore};
pub use copied::{copied, keep_copied};
pub use files::{download, file_name, open_dropped, open_file, open_text, save_to_file, set_present_aside};
pub use items::{Import, import_dropped, import_file};
pub use settings::{
    Theme, keep_laid, keep_language, keep_left_handed, keep_system, keep_theme, keep_tray_open, laid, language,
    left_handed, system, theme, tray_open,
};
pub use shelf::{Kept, kept, put_aside};

/// How the scheme is kept in this browser.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub enum Saved {
    /// Nothing to keep yet.
    #[default]
    Nothing,
    /// A change waits to be kept.
    Waiting,
    /// Kept.
    Kept,
    /// The browser refused to keep it.
    Failed,
}
