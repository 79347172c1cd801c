//! Undo and redo: whole schemes as text, the oldest dropped first.

use falsewright_core::json;
use falsewright_core::scheme::{Scheme, write_on_one_line};

/// Steps that can be taken back.
pub(super) const MOST_STEPS: usize = 300;

/// What was before each step, and after each step taken back.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct History {
    pub(super) past: Vec<Moment>,
    pub(super) future: Vec<Moment>,
}

/// A state on the other side of a step.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Moment {
    /// Name of the step.
    pub label: String,
    /// The scheme.
    pub text: String,
}

impl History {
    /// Keeps `before`, which a step of this name leaves.
    pub fn record(&mut self, before: &Scheme, label: impl Into<String>) {
        if self.past.len() == MOST_STEPS {
            self.past.remove(0);
        }
        self.past.push(Moment { text: to_text(before), label: label.into() });
        self.future.clear();
    }

    /// Changes `scheme` to what it was after so many steps; false: there is no such state.
    pub fn go(&mut self, step: usize, scheme: &mut Scheme) -> bool {
        if step > self.past.len() + self.future.len() || step == self.past.len() {
            return false;
        }
        while self.past.len() > step {
            if !Self::step(&mut self.past, &mut self.future, scheme) {
                return false;
            }
        }
        while self.past.len() < step {
            if !Self::step(&mut self.future, &mut self.past, scheme) {
                return false;
            }
        }
        true
    }

    /// A state that cannot be read, as from a damaged store, goes with all beyond it.
    fn step(from: &mut Vec<Moment>, to: &mut Vec<Moment>, scheme: &mut Scheme) -> bool {
        let Some(Moment { label, text }) = from.pop() else { return false };
        let Some(other) = from_text(&text) else {
            from.clear();
            return false;
        };
        let text = to_text(&std::mem::replace(scheme, other));
        to.push(Moment { label, text });
        true
    }

    /// How many steps led here.
    pub fn at(&self) -> usize {
        self.past.len()
    }

    /// Names of all steps from the first, those taken back at the end.
    pub fn labels(&self) -> impl Iterator<Item = &str> {
        self.past.iter().chain(self.future.iter().rev()).map(|moment| moment.label.as_str())
    }

    /// Name of the step that undo takes back.
    pub fn undo_label(&self) -> Option<&str> {
        self.past.last().map(|moment| moment.label.as_str())
    }

    /// Name of the step that redo does again.
    pub fn redo_label(&self) -> Option<&str> {
        self.future.last().map(|moment| moment.label.as_str())
    }
}

pub(super) fn to_text(scheme: &Scheme) -> String {
    write_on_one_line(scheme)
}

/// None for what the page could not have made.
fn from_text(text: &str) -> Option<Scheme> {
    let scheme: Scheme = json::read(text).ok()?;
    (scheme.section.outline.is_empty() || scheme.validate().is_ok()).then_some(scheme)
}

#[cfg(test)]
mod tests {
    use super::*;
    use falsewright_core::scheme::Section;

    fn named(name: &str) -> Scheme {
        let section = Section { outline: Vec::new(), cells: Vec::new(), joints: Vec::new() };
        Scheme { name: name.into(), ..Scheme::blank(section) }
    }

    fn walked(names: &[&str]) -> (History, Scheme) {
        let (mut history, mut scheme) = (History::default(), named(names[0]));
        for name in &names[1..] {
            history.record(&std::mem::replace(&mut scheme, named(name)), format!("to {name}"));
        }
        (history, scheme)
    }

    #[test]
    fn any_state_can_be_gone_to_and_a_new_step_ends_what_was_taken_back() {
        let (mut history, mut scheme) = walked(&["a", "b", "c", "d"]);
        for step in [0, 3, 1, 2] {
            assert!(history.go(step, &mut scheme));
            assert_eq!((history.at(), scheme.name.as_str()), (step, ["a", "b", "c", "d"][step]));
            assert_eq!(history.labels().collect::<Vec<_>>(), ["to b", "to c", "to d"]);
        }
        assert!(!history.go(2, &mut scheme) && !history.go(4, &mut scheme));
        assert_eq!((history.undo_label(), history.redo_label()), (Some("to c"), Some("to d")));
        history.record(&std::mem::replace(&mut scheme, named("e")), "to e");
        assert_eq!(history.labels().collect::<Vec<_>>(), ["to b", "to c", "to e"]);
    }

    #[test]
    fn the_oldest_step_goes_first() {
        let names: Vec<String> = (0..=MOST_STEPS + 5).map(|i| i.to_string()).collect();
        let (mut history, mut scheme) = walked(&names.iter().map(String::as_str).collect::<Vec<_>>());
        assert_eq!(history.at(), MOST_STEPS);
        assert!(history.go(0, &mut scheme));
        assert_eq!(scheme.name, "5");
    }

    #[test]
    fn a_state_that_cannot_be_read_leaves_the_scheme_as_it_is() {
        let (mut history, mut scheme) = walked(&["a", "b", "c"]);
        history.past[0].text.truncate(20);
        assert!(!history.go(0, &mut scheme));
        assert_eq!((scheme.name.as_str(), history.at()), ("b", 0));
        assert!(history.go(1, &mut scheme));
        assert_eq!(scheme.name, "c");
    }
}
