//! Where the keys go.

use wasm_bindgen::JsCast;
use web_sys::{Document, Element, HtmlElement, KeyboardEvent};

/// Gives the focus to the first element of this selector. False: there is none.
pub fn focus_on(selector: &str) -> bool {
    let found = document().and_then(|document| document.query_selector(selector).ok().flatten());
    found.is_some_and(|element| focus(&element))
}

/// Moves the focus to the next one of a row, or the one before, all round.
pub fn focus_sibling(event: &KeyboardEvent, forward: bool) {
    let Some(item) = event.target().and_then(|target| target.dyn_into::<Element>().ok()) else { return };
    let next = if forward { item.next_element_sibling() } else { item.previous_element_sibling() };
    let around = || {
        let list = item.parent_element()?;
        if forward { list.first_element_child() } else { list.last_element_child() }
    };
    if let Some(next) = next.or_else(around) {
        focus(&next);
    }
}

/// The same among all of a selector, from the one that has the focus. False: there is none.
pub fn focus_next(selector: &str, forward: bool) -> bool {
    let Some(found) = document().and_then(|document| document.query_selector_all(selector).ok()) else { return false };
    let count = found.length();
    let element = |index: u32| found.get(index).and_then(|node| node.dyn_into::<Element>().ok());
    let here = focused().and_then(|focused| (0..count).find(|index| element(*index).as_ref() == Some(&focused)));
    let next = match here {
        _ if count == 0 => return false,
        Some(here) if forward => (here + 1) % count,
        Some(here) => (here + count - 1) % count,
        None if forward => 0,
        None => count - 1,
    };
    element(next).is_some_and(|element| focus(&element))
}

/// What has the focus; none while it is nowhere.
pub fn focused() -> Option<Element> {
    document()?.active_element().filter(|element| element.tag_name() != "BODY")
}

fn focus(element: &Element) -> bool {
    // Elements of a drawing take the focus by the same name.
    element.unchecked_ref::<HtmlElement>().focus().is_ok()
}

fn document() -> Option<Document> {
    web_sys::window()?.document()
}
