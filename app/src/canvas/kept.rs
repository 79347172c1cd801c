//! Elements of the drawing that stay in place while what they show changes: only what is another is written.

use wasm_bindgen::JsCast;
use web_sys::{Element, Event};

const SVG: &str = "http://www.w3.org/2000/svg";

/// What an SVG element is to be.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Drawn {
    key: String,
    name: &'static str,
    attributes: Vec<(&'static str, String)>,
    text: String,
    children: Vec<Drawn>,
}

impl Drawn {
    /// An element of this name.
    pub fn new(name: &'static str) -> Self {
        Self { name, ..Self::default() }
    }

    /// A path of this class.
    pub fn path(class: &str, d: String) -> Self {
        Self::new("path").set("class", class).set("d", d)
    }

    /// With a key that tells it from those beside it.
    pub fn keyed(mut self, key: impl Into<String>) -> Self {
        self.key = key.into();
        self
    }

    /// With an attribute.
    pub fn set(mut self, name: &'static str, value: impl Into<String>) -> Self {
        self.attributes.push((name, value.into()));
        self
    }

    /// With an attribute, if there is a value.
    pub fn set_if(self, name: &'static str, value: Option<impl Into<String>>) -> Self {
        match value {
            Some(value) => self.set(name, value),
            None => self,
        }
    }

    /// With words in it.
    pub fn saying(mut self, text: impl Into<String>) -> Self {
        self.text = text.into();
        self
    }

    /// With elements in it.
    pub fn holding(mut self, children: impl IntoIterator<Item = Self>) -> Self {
        self.children.extend(children);
        self
    }

    fn value(&self, name: &str) -> Option<&String> {
        self.attributes.iter().find(|(of, _)| *of == name).map(|(_, value)| value)
    }

    fn make(&self) -> Option<Element> {
        let element = web_sys::window()?.document()?.create_element_ns(Some(SVG), self.name).ok()?;
        for (name, value) in &self.attributes {
            let _ = element.set_attribute(name, value);
        }
        if !self.text.is_empty() {
            element.set_text_content(Some(&self.text));
        }
        for child in self.children.iter().filter_map(Self::make) {
            let _ = element.append_child(&child);
        }
        Some(element)
    }

    /// Writes what is another than `before` in an element.
    fn write(&self, element: &Element, before: &Self) {
        for (name, value) in &self.attributes {
            if before.value(name) != Some(value) {
                let _ = element.set_attribute(name, value);
            }
        }
        for (name, _) in before.attributes.iter().filter(|(name, _)| self.value(name).is_none()) {
            let _ = element.remove_attribute(name);
        }
        if self.text != before.text {
            match element.first_child() {
                Some(node) if !self.text.is_empty() => node.set_node_value(Some(&self.text)),
                _ => element.set_text_content(Some(&self.text)),
            }
        }
        if self.children != before.children {
            self.write_children(element, &before.children);
        }
    }

    fn write_children(&self, element: &Element, before: &[Self]) {
        let mut place = element.first_element_child();
        let mut before = before.iter();
        for child in &self.children {
            let was = before.next();
            let next = place.as_ref().and_then(Element::next_element_sibling);
            match (place, was) {
                (Some(there), Some(was)) if was.name == child.name => {
                    if was != child {
                        child.write(&there, was);
                    }
                }
                (there, _) => {
                    if let Some(made) = child.make() {
                        let _ = element.insert_before(&made, there.as_deref());
                    }
                    if let Some(there) = there {
                        there.remove();
                    }
                }
            }
            place = next;
        }
        while let Some(left) = place {
            place = left.next_element_sibling();
            left.remove();
        }
    }
}

/// Elements beside each other as they are on the page.
#[derive(Default)]
pub struct Kept(Vec<(Drawn, Element)>);

impl Kept {
    /// Makes the elements in `parent` what is drawn. Unless they are to be in this order, those that were there keep their
    /// places, since each that moves costs about as much as a new one.
    pub fn follow(&mut self, parent: &Element, drawn: impl IntoIterator<Item = Drawn>, in_order: bool) {
        let mut before: Vec<_> = std::mem::take(&mut self.0).into_iter().map(Some).collect();
        let mut stayed: Vec<Option<(Drawn, Element)>> = before.iter().map(|_| None).collect();
        let mut now = Vec::new();
        let (mut next, mut moved) = (0, false);
        for new in drawn {
            let is_it = |was: &Option<(Drawn, Element)>| {
                was.as_ref().is_some_and(|(was, _)| was.key == new.key && was.name == new.name)
            };
            let found = (next..before.len()).chain(0..next).find(|index| is_it(&before[*index]));
            let Some((index, (was, element))) = found.and_then(|index| Some((index, before[index].take()?))) else {
                now.extend(new.make().map(|element| (new, element)));
                moved = true;
                continue;
            };
            if was != new {
                new.write(&element, &was);
            }
            moved |= in_order && index < next;
            next = index + 1;
            if in_order {
                now.push((new, element));
            } else {
                stayed[index] = Some((new, element));
            }
        }
        for (_, element) in before.into_iter().flatten() {
            element.remove();
        }
        self.0 = stayed.into_iter().flatten().chain(now).collect();
        if moved {
            self.put_in_order(parent);
        }
    }

    fn put_in_order(&self, parent: &Element) {
        let mut place = parent.first_element_child();
        for (_, element) in &self.0 {
            if place.as_ref() == Some(element) {
                place = element.next_element_sibling();
            } else {
                let _ = parent.insert_before(element, place.as_deref());
            }
        }
    }
}

/// The test id of what an event falls on, among what answers a selector.
pub fn hit(event: &Event, selector: &str) -> Option<String> {
    let element = event.target()?.dyn_into::<Element>().ok()?.closest(selector).ok()??;
    element.get_attribute("data-testid")
}
