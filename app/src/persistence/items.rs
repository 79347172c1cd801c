//! Files of items.

use super::files::{chosen, dropped, read};
use crate::language::told;
use crate::store::Store;
use crate::units;
use falsewright_core::catalogue::Item;
use falsewright_core::catalogue::exchange::{ExchangeError, from_csv, from_json};
use falsewright_core::scheme::edit::Edit;
use web_sys::{DragEvent, Event};

/// How a file of items was taken in.
#[derive(Clone, Debug, PartialEq)]
pub struct Import {
    /// What happened.
    pub told: String,
    /// Everything that is wrong with the file; then nothing was changed.
    pub faults: Vec<String>,
}

/// Takes in the file that was chosen in a file field.
pub fn import_file(store: Store, event: &Event) {
    if let Some(file) = chosen(event) {
        read(store, file, import_text);
    }
}

/// Takes in the file that was dropped.
pub fn import_dropped(store: Store, event: &DragEvent) {
    event.stop_propagation();
    if let Some(file) = dropped(event) {
        read(store, file, import_text);
    }
}

/// Whether a file holds items rather than a scheme.
pub(super) fn is_of_items(name: &str, text: &str) -> bool {
    let of_items =
        |value: serde_json::Value| value.is_array() || value.get("items").is_some() && value.get("schema").is_none();
    name.to_lowercase().ends_with(".csv") || serde_json::from_str(text).is_ok_and(of_items)
}

/// Takes in items as one step that can be undone; a faulty file changes nothing.
pub(super) fn import_text(store: Store, name: &str, text: &str) {
    let import = match parse(name, text) {
        Ok(items) => take(store, name, items),
        Err(faults) => refused(name, faults.iter().map(|fault| sentence(&told(&fault.sentence()))).collect()),
    };
    store.set_import(Some(import));
    store.look_up(None);
}

fn parse(name: &str, text: &str) -> Result<Vec<Item>, Vec<ExchangeError>> {
    let is_json = || text.trim_start_matches('\u{feff}').trim_start().starts_with(['{', '[']);
    if name.to_lowercase().ends_with(".json") || is_json() { from_json(text) } else { from_csv(text) }
}

fn take(store: Store, name: &str, items: Vec<Item>) -> Import {
    let count = items.len();
    let own = store.peek(|editor| editor.scheme().items.clone());
    let merged = store.catalogue.with_untracked(|catalogue| catalogue.merged(&own, items));
    if merged == own {
        let told = say!("{}: all {} items are as they were; nothing is changed.", name, count);
        return Import { told, faults: Vec::new() };
    }
    let changed = merged.iter().filter(|item| !own.contains(item)).count();
    match store.attempt(|editor| editor.perform(Edit::SetItems(merged))) {
        Ok(()) => Import {
            told: say!("{}: {} items read, {} of them new or changed. Undo takes them back.", name, count, changed),
            faults: Vec::new(),
        },
        Err(refusal) => refused(name, vec![refusal.to_string()]),
    }
}

fn refused(name: &str, faults: Vec<String>) -> Import {
    Import { told: say!("{} was not taken in; nothing is changed. Mend this in the file:", name), faults }
}

/// With a capital at its head and a full stop.
fn sentence(text: &str) -> String {
    let end = if text.ends_with('.') { "" } else { "." };
    format!("{}{end}", units::capital(text))
}

#[cfg(test)]
mod tests {
    use super::*;
    use falsewright_core::catalogue::Catalogue;
    use falsewright_core::catalogue::exchange::{to_csv, to_json};
    use falsewright_core::scheme::{heron_lane, write};

    #[test]
    fn files_of_items_are_told_from_schemes() {
        let catalogue = Catalogue::generic();
        assert!(is_of_items("Own.CSV", &to_csv(catalogue.iter())));
        assert!(is_of_items("own.json", &to_json(catalogue.iter())));
        assert!(!is_of_items("scheme.json", &write(&heron_lane().expect("the demo"))));
        assert!(!is_of_items("scheme.json", "nonsense"));
    }

    #[test]
    fn csv_and_json_are_told_apart_by_what_is_in_them() {
        let catalogue = Catalogue::generic();
        for (name, text) in [("a.txt", to_csv(catalogue.iter())), ("a.txt", to_json(catalogue.iter()))] {
            assert_eq!(parse(name, &text).expect("items").len(), catalogue.iter().count());
        }
        assert!(parse("a.csv", "code\nX").is_err());
    }
}
