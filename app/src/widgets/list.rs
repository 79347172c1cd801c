use leptos::prelude::*;

/// An entry of a list before it is drawn.
struct Entry {
    key: String,
    draw: Box<dyn FnOnce() -> AnyView + Send>,
}

/// The entries of a list, each drawn once for its key and kept as long as the key is there. All lists are the same code.
pub fn list<T: Send + 'static>(
    each: impl Fn() -> Vec<T> + Send + 'static,
    key: fn(&T) -> String,
    view: impl Fn(T) -> AnyView + Clone + Send + 'static,
) -> AnyView {
    drawn(Box::new(move || {
        let entry = |item: T| {
            let (key, view) = (key(&item), view.clone());
            Entry { key, draw: Box::new(move || view(item)) }
        };
        each().into_iter().map(entry).collect()
    }))
}

fn drawn(entries: Box<dyn Fn() -> Vec<Entry> + Send>) -> AnyView {
    view! { <For each=entries key=|entry| entry.key.clone() children=|entry: Entry| (entry.draw)()/> }.into_any()
}
