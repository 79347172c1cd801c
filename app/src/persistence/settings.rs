//! How this user likes the page; kept in this browser apart from schemes.

use super::autosave::storage;
use crate::editor::View;
use crate::language::{Language, preferred};
use crate::store::Laid;
use crate::units::System;
use web_sys::Event;

const LEFT_HANDED: &str = "falsewright.left-handed";
const TRAY: &str = "falsewright.tray";
const VIEWS: &str = "falsewright.views";
/// `static/theme.js` reads it before anything is drawn.
const THEME: &str = "falsewright.theme";

/// The colours and weights of the page.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Theme {
    /// Light or dark as the system asks.
    System,
    /// Ink on paper.
    Light,
    /// Pale ink on deep blue.
    Dark,
    /// Black on white, one line weight up.
    Sunlight,
}

impl Theme {
    const ALL: [Self; 4] = [Self::System, Self::Light, Self::Dark, Self::Sunlight];

    fn name(self) -> &'static str {
        match self {
            Self::System => "system",
            Self::Light => "light",
            Self::Dark => "dark",
            Self::Sunlight => "sunlight",
        }
    }
}

/// The theme that was last chosen.
pub fn theme() -> Theme {
    let kept = kept(THEME).unwrap_or_default();
    Theme::ALL.into_iter().find(|theme| theme.name() == kept).unwrap_or(Theme::System)
}

/// Shows the page in this theme, and keeps it.
pub fn keep_theme(theme: Theme) {
    keep(THEME, theme.name());
    let Some(window) = web_sys::window() else { return };
    let root = window.document().and_then(|document| document.document_element());
    if let (Some(root), Ok(event)) = (root, Event::new("falsewright-theme")) {
        let _ = root.set_attribute("data-chosen-theme", theme.name());
        let _ = window.dispatch_event(&event);
    }
}

/// Whether the pens were last at the left.
pub fn left_handed() -> bool {
    kept(LEFT_HANDED).is_some_and(|value| value == "yes")
}

/// Keeps where the pens are.
pub fn keep_left_handed(left: bool) {
    keep(LEFT_HANDED, if left { "yes" } else { "no" });
}

const LANGUAGE: &str = "falsewright.language";
const UNITS: &str = "falsewright.units";

fn kept(name: &str) -> Option<String> {
    storage()?.get_item(name).ok().flatten()
}

fn keep(name: &str, value: &str) {
    if let Some(storage) = storage() {
        let _ = storage.set_item(name, value);
    }
}

/// The language that was chosen last, else the first that the browser asks for and the page speaks.
pub fn language() -> Language {
    kept(LANGUAGE).and_then(|code| Language::of_tag(&code)).unwrap_or_else(preferred)
}

/// Keeps the language that was chosen.
pub fn keep_language(language: Language) {
    keep(LANGUAGE, language.code());
}

/// The units that were chosen last.
pub fn system() -> System {
    let known = |code: String| System::ALL.into_iter().find(|system| system.code() == code);
    kept(UNITS).and_then(known).unwrap_or_default()
}

/// Keeps the units that were chosen.
pub fn keep_system(system: System) {
    keep(UNITS, system.code());
}

/// Whether the tray of options was last open; none: it was never opened or folded.
pub fn tray_open() -> Option<bool> {
    kept(TRAY).map(|kept| kept == "open")
}

/// Keeps whether the tray is open.
pub fn keep_tray_open(open: bool) {
    keep(TRAY, if open { "open" } else { "folded" });
}

/// Which views were last laid out on the sheet; the section where none are known.
pub fn laid() -> Laid {
    let known = |id: String| Laid::CHOICES.into_iter().find(|laid| laid.id() == id);
    kept(VIEWS).and_then(known).unwrap_or(Laid::One(View::Section))
}

/// Keeps which views are laid out.
pub fn keep_laid(laid: Laid) {
    keep(VIEWS, laid.id());
}
