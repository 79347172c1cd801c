use crate::language::t;
use crate::memo::Memo;
use crate::units::Unit;
use leptos::prelude::*;
use std::sync::Arc;
use web_sys::{Event, FocusEvent, HtmlInputElement, KeyboardEvent};

/// Fields that change one value in place, or several alike: what differs between them is left empty.
pub struct Form<T: Send + Sync + 'static> {
    values: Memo<Vec<T>>,
    put: Callback<Vec<T>>,
}

impl<T: Send + Sync> Clone for Form<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T: Send + Sync> Copy for Form<T> {}

impl<T: Clone + PartialEq + Send + Sync> Form<T> {
    /// Fields of a value that is read from `value` and put back by `put`.
    pub fn new(value: Memo<T>, put: impl Fn(T) + Send + Sync + 'static) -> Self {
        let one = move |mut values: Vec<T>| {
            if let Some(value) = values.pop() {
                put(value);
            }
        };
        Self::of_several(Memo::new(move |_| vec![value.get()]), one)
    }

    /// Fields of all values alike.
    pub fn of_several(values: Memo<Vec<T>>, put: impl Fn(Vec<T>) + Send + Sync + 'static) -> Self {
        Self { values, put: Callback::new(put) }
    }

    /// What all values have in common.
    fn common<C: PartialEq>(self, get: impl Fn(&T) -> C) -> Option<C> {
        let same = |values: &Vec<T>| {
            let first = get(values.first()?);
            values.iter().all(|value| get(value) == first).then_some(first)
        };
        self.values.try_with(same).flatten()
    }

    fn change(self, change: impl FnMut(&mut T)) {
        // A field may still lose the focus while it is taken away with its form.
        if let Some(before) = self.values.try_get_untracked() {
            let mut values = before.clone();
            values.iter_mut().for_each(change);
            if values != before {
                self.put.try_run(values);
            }
        }
    }

    /// A number. What is not a number is put back as it was.
    pub fn number(self, label: &'static str, unit: Unit, get: fn(&T) -> f64, set: fn(&mut T, f64)) -> AnyView {
        let written: Read<String> = Arc::new(move || self.common(|value| unit.written(get(value))).unwrap_or_default());
        let put: Put<Option<f64>> = Arc::new(move |number| {
            if let Some(number) = number {
                self.change(|value| set(value, number));
            }
        });
        amount(label, unit, written, put)
    }

    /// How many of something.
    pub fn count(self, label: &'static str, get: fn(&T) -> u32, set: fn(&mut T, u32)) -> AnyView {
        let text = move |value: &T| Unit::NONE.written(f64::from(get(value)));
        let written: Read<String> = Arc::new(move || self.common(text).unwrap_or_default());
        let put: Put<Option<f64>> = Arc::new(move |number| {
            if let Some(number) = number {
                self.change(|value| set(value, number.round().max(0.0) as u32));
            }
        });
        amount(label, Unit::NONE, written, put)
    }

    /// A number that may be left empty.
    pub fn optional(
        self,
        label: &'static str,
        unit: Unit,
        get: fn(&T) -> Option<f64>,
        set: fn(&mut T, Option<f64>),
    ) -> AnyView {
        let text = move |value: &T| get(value).map(|number| unit.written(number));
        let written: Read<String> = Arc::new(move || self.common(text).flatten().unwrap_or_default());
        amount(label, unit, written, Arc::new(move |number| self.change(|value| set(value, number))))
    }

    /// A line of text. What the value does not take is put back as it was.
    pub fn text(self, label: &'static str, get: fn(&T) -> &str, set: fn(&mut T, String)) -> AnyView {
        let written: Read<String> = Arc::new(move || self.common(|value| get(value).to_owned()).unwrap_or_default());
        line(label, written, Arc::new(move |text: String| self.change(|value| set(value, text.clone()))))
    }

    /// One of several named values.
    pub fn choice<C>(
        self,
        label: &'static str,
        options: &'static [(C, &'static str)],
        get: fn(&T) -> C,
        set: fn(&mut T, C),
    ) -> AnyView
    where
        C: Copy + PartialEq + Send + Sync + 'static,
    {
        let all =
            options.iter().enumerate().map(|(index, (_, name))| (index.to_string(), t(name).to_owned())).collect();
        let chosen: Read<String> = Arc::new(move || {
            let value = self.common(get);
            options.iter().position(|(option, _)| Some(*option) == value).unwrap_or(options.len()).to_string()
        });
        let put: Put<String> = Arc::new(move |index: String| {
            if let Some((option, _)) = index.parse().ok().and_then(|index: usize| options.get(index)) {
                self.change(|value| set(value, *option));
            }
        });
        select(label, Signal::stored(all), chosen, put)
    }

    /// One of the codes in a list of codes and names.
    pub fn code(
        self,
        label: &'static str,
        options: Memo<Vec<(String, String)>>,
        get: fn(&T) -> &str,
        set: fn(&mut T, String),
    ) -> AnyView {
        let chosen: Read<String> = Arc::new(move || self.common(|value| get(value).to_owned()).unwrap_or_default());
        let put: Put<String> = Arc::new(move |code: String| self.change(|value| set(value, code.clone())));
        select(label, options.into(), chosen, put)
    }

    /// Yes or no.
    pub fn toggle(self, label: &'static str, get: fn(&T) -> bool, set: fn(&mut T, bool)) -> AnyView {
        let ticked: Read<Option<bool>> = Arc::new(move || self.common(get));
        tick(label, ticked, Arc::new(move |now: bool| self.change(|value| set(value, now))))
    }
}

impl<T: Clone + PartialEq + Send + Sync> Form<Option<T>> {
    /// Fields of what there is.
    pub fn within(self) -> Form<T> {
        let values = Memo::new(move |_| self.values.get().into_iter().flatten().collect::<Vec<_>>());
        Form::of_several(values, move |all: Vec<T>| {
            self.put.try_run(all.into_iter().map(Some).collect());
        })
    }
}

/// What a field shows. Views of fields are the same code whatever the form is of.
type Read<V> = Arc<dyn Fn() -> V + Send + Sync>;

/// Takes what was entered.
type Put<V> = Arc<dyn Fn(V) + Send + Sync>;

fn amount(label: &'static str, unit: Unit, written: Read<String>, put: Put<Option<f64>>) -> AnyView {
    let on_focus = |event: FocusEvent| event_target::<HtmlInputElement>(&event).select();
    let before = written.clone();
    let on_key = move |event: KeyboardEvent| {
        let input = event_target::<HtmlInputElement>(&event);
        if event.key() == "Escape" {
            input.set_value(&untrack(|| before()));
        }
        if matches!(event.key().as_str(), "Enter" | "Escape") {
            let _ = input.blur();
        }
    };
    let after = written.clone();
    let on_change = move |event: Event| {
        let input = event_target::<HtmlInputElement>(&event);
        let number = unit.read(&input.value());
        if number.is_some() || input.value().trim().is_empty() {
            put(number);
        }
        input.set_value(&untrack(|| after()));
    };
    view! {
        <label class="field">
            <span>{t(label)}</span>
            <span class="amount">
                <span>
                    <input
                        type="text"
                        inputmode="decimal"
                        autocomplete="off"
                        data-testid=test_id(label)
                        prop:value=move || written()
                        on:focus=on_focus
                        on:keydown=on_key
                        on:change=on_change
                    />
                </span>
                <span class="unit">{t(unit.name())}</span>
            </span>
        </label>
    }
    .into_any()
}

fn line(label: &'static str, written: Read<String>, put: Put<String>) -> AnyView {
    let after = written.clone();
    let on_change = move |event: Event| {
        let input = event_target::<HtmlInputElement>(&event);
        put(input.value());
        input.set_value(&untrack(|| after()));
    };
    view! {
        <label class="field wide text">
            <span>{t(label)}</span>
            <input
                type="text"
                data-testid=test_id(label)
                prop:value=move || written()
                on:change=on_change
            />
        </label>
    }
    .into_any()
}

fn tick(label: &'static str, ticked: Read<Option<bool>>, put: Put<bool>) -> AnyView {
    let mixed = ticked.clone();
    view! {
        <label class="field tick">
            <input
                type="checkbox"
                data-testid=test_id(label)
                prop:checked=move || ticked().unwrap_or_default()
                prop:indeterminate=move || mixed().is_none()
                on:change=move |event| put(event_target_checked(&event))
            />
            <span>{t(label)}</span>
        </label>
    }
    .into_any()
}

fn select(
    label: &'static str,
    options: Signal<Vec<(String, String)>>,
    chosen: Read<String>,
    put: Put<String>,
) -> AnyView {
    const SHORT: usize = 12;
    const SHORT_WITH_LABEL: usize = 18;
    let label_length = t(label).chars().count();
    let fits = |name: &str| {
        let length = name.chars().count();
        length <= SHORT && length + label_length <= SHORT_WITH_LABEL
    };
    let short = options.with_untracked(|options| options.iter().all(|(_, name)| fits(name)));
    let now = chosen.clone();
    let option = move |(code, name): (String, String)| {
        let own = code.clone();
        let now = now.clone();
        view! { <option value=code selected=move || now() == own>{name}</option> }
    };
    view! {
        <label class="field" class:wide=!short>
            <span>{t(label)}</span>
            <select
                data-testid=test_id(label)
                prop:value=move || chosen()
                on:change=move |event| put(event_target_value(&event))
            >
                {move || options.get().into_iter().map(&option).collect_view()}
            </select>
        </label>
    }
    .into_any()
}

fn test_id(label: &str) -> String {
    format!("field-{}", label.to_lowercase().replace([' ', ','], "-"))
}
