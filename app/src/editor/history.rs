//! Undo and redo: whole schemes, the oldest dropped first.

use falsewright_core::scheme::Scheme;

/// Steps that can be taken back.
const MOST_STEPS: usize = 300;

/// What was, before each step and after each step taken back.
#[derive(Debug, Default)]
pub struct History {
    past: Vec<Moment>,
    future: Vec<Moment>,
}

#[derive(Debug)]
struct Moment {
    scheme: Scheme,
    label: String,
}

impl History {
    /// Keeps `before`, which a step of this name leaves.
    pub fn record(&mut self, before: Scheme, label: impl Into<String>) {
        if self.past.len() == MOST_STEPS {
            self.past.remove(0);
        }
        self.past.push(Moment { scheme: before, label: label.into() });
        self.future.clear();
    }

    /// Changes `scheme` to what it was before the last step.
    pub fn undo(&mut self, scheme: &mut Scheme) -> bool {
        Self::step(&mut self.past, &mut self.future, scheme)
    }

    /// Changes `scheme` to what it was before the last undo.
    pub fn redo(&mut self, scheme: &mut Scheme) -> bool {
        Self::step(&mut self.future, &mut self.past, scheme)
    }

    fn step(from: &mut Vec<Moment>, to: &mut Vec<Moment>, scheme: &mut Scheme) -> bool {
        let Some(mut moment) = from.pop() else { return false };
        std::mem::swap(&mut moment.scheme, scheme);
        to.push(moment);
        true
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

#[cfg(test)]
mod tests {
    use super::*;
    use falsewright_core::scheme::Section;

    fn named(name: &str) -> Scheme {
        let section = Section { outline: Vec::new(), cells: Vec::new(), joints: Vec::new() };
        Scheme { name: name.into(), ..Scheme::blank(section) }
    }

    #[test]
    fn undo_and_redo_are_inverse_and_a_new_step_ends_redo() {
        let (mut history, mut scheme) = (History::default(), named("a"));
        for name in ["b", "c"] {
            history.record(std::mem::replace(&mut scheme, named(name)), format!("to {name}"));
        }
        assert_eq!(history.undo_label(), Some("to c"));
        assert!(history.undo(&mut scheme) && history.undo(&mut scheme) && !history.undo(&mut scheme));
        assert_eq!((scheme.name.as_str(), history.redo_label()), ("a", Some("to b")));
        assert!(history.redo(&mut scheme));
        assert_eq!((scheme.name.as_str(), history.redo_label()), ("b", Some("to c")));
        history.record(std::mem::replace(&mut scheme, named("d")), "to d");
        assert!(!history.redo(&mut scheme));
        assert!(history.undo(&mut scheme));
        assert_eq!(scheme.name, "b");
    }

    #[test]
    fn the_oldest_step_goes_first() {
        let (mut history, mut scheme) = (History::default(), named("0"));
        for i in 1..=MOST_STEPS + 5 {
            history.record(std::mem::replace(&mut scheme, named(&i.to_string())), "step");
        }
        while history.undo(&mut scheme) {}
        assert_eq!(scheme.name, "5");
    }
}
