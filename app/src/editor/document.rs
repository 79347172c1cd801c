//! One drawing with all its steps. A page may hold several.

use super::history::{History, Moment, to_text};
use crate::language::key;
use falsewright_core::json;
use falsewright_core::scheme::Scheme;
use serde::{Deserialize, Serialize};

/// Version of the text of [`Document::written_steps`].
const SCHEMA: u32 = 1;
/// That text is no longer than this, bytes: browsers keep some five million for a site.
const LONGEST: usize = 1_200_000;

/// A scheme and how it came about.
#[derive(Clone, Debug, PartialEq)]
pub struct Document {
    pub(super) scheme: Scheme,
    pub(super) history: History,
}

/// A named state in the list of steps.
#[derive(Clone, Debug, PartialEq)]
pub struct StepName {
    /// Steps from the first kept state: what [`super::Editor::go_to`] takes.
    pub number: usize,
    /// In plain words.
    pub label: String,
}

/// The states from the first kept one: each as what changes in the text of the one before.
#[derive(Serialize, Deserialize)]
struct Written {
    schema: u32,
    at: usize,
    first: String,
    steps: Vec<WrittenStep>,
}

#[derive(Serialize, Deserialize)]
struct WrittenStep {
    label: String,
    /// Bytes kept at the beginning and at the end of the text before.
    keep: [usize; 2],
    /// What comes between.
    put: String,
}

impl Document {
    /// A scheme with no steps yet.
    pub fn new(scheme: Scheme) -> Self {
        Self { scheme, history: History::default() }
    }

    /// A scheme with the steps that were kept for it; without them where they belong to another or are damaged.
    pub fn with_steps(scheme: Scheme, written: &str) -> Self {
        let history = read(&scheme, written).unwrap_or_default();
        Self { scheme, history }
    }

    /// The scheme as last committed.
    pub fn scheme(&self) -> &Scheme {
        &self.scheme
    }

    /// Names the option, as one step.
    pub fn name_option(&mut self, option: &str) {
        if self.scheme.option != option {
            let next = Scheme { option: option.to_owned(), ..self.scheme.clone() };
            self.history.record(&std::mem::replace(&mut self.scheme, next), "Rename");
        }
    }

    /// All states with the names of the steps that led to them, the first kept one first.
    pub fn steps(&self) -> Vec<StepName> {
        let first = if self.history.past.first().is_some_and(|moment| is_blank(&moment.text)) {
            key("Blank sheet")
        } else {
            key("Where the steps begin")
        };
        let all = std::iter::once(first).chain(self.history.labels());
        all.enumerate().map(|(number, label)| StepName { number, label: label.to_owned() }).collect()
    }

    /// The number of the state that is shown.
    pub fn at(&self) -> usize {
        self.history.at()
    }

    /// All steps as a text, the oldest left out where it would be too long.
    pub fn written_steps(&self) -> String {
        let History { past, future } = &self.history;
        let here = to_text(&self.scheme);
        let texts = || {
            let before = past.iter().map(|moment| moment.text.as_str());
            before.chain(std::iter::once(here.as_str())).chain(future.iter().rev().map(|moment| moment.text.as_str()))
        };
        let steps = texts().zip(texts().skip(1)).zip(self.history.labels());
        let mut steps: Vec<WrittenStep> = steps.map(|((was, is), label)| change(was, is, label)).collect();
        let size = |step: &WrittenStep| json::write(step).len() + 1;
        let room = LONGEST.saturating_sub(here.len() * 2);
        let mut whole: usize = steps.iter().map(size).sum();
        let mut left_out = 0;
        while whole > room && left_out < past.len() {
            whole -= size(&steps[left_out]);
            left_out += 1;
        }
        steps.drain(..left_out);
        while whole > room && steps.len() > past.len() - left_out {
            whole -= steps.pop().as_ref().map_or(0, size);
        }
        let first = texts().nth(left_out).unwrap_or_default().to_owned();
        let written = Written { schema: SCHEMA, at: past.len() - left_out, first, steps };
        json::write(&written)
    }
}

fn is_blank(text: &str) -> bool {
    json::read::<Scheme>(text).is_ok_and(|scheme| scheme.section.outline.is_empty())
}

fn change(was: &str, is: &str, label: &str) -> WrittenStep {
    let same = |mut a: std::str::Chars, mut b: std::str::Chars, back: bool, most: usize| {
        let mut bytes = 0;
        loop {
            let next = if back { (a.next_back(), b.next_back()) } else { (a.next(), b.next()) };
            match next {
                (Some(x), Some(y)) if x == y && bytes + x.len_utf8() <= most => bytes += x.len_utf8(),
                _ => return bytes,
            }
        }
    };
    let shorter = was.len().min(is.len());
    let start = same(was.chars(), is.chars(), false, shorter);
    let end = same(was.chars(), is.chars(), true, shorter - start);
    let put = is.get(start..is.len() - end).unwrap_or_default().to_owned();
    WrittenStep { label: label.to_owned(), keep: [start, end], put }
}

fn read(scheme: &Scheme, written: &str) -> Option<History> {
    let Written { schema, at, first, steps } = json::read(written).ok()?;
    if schema != SCHEMA || at > steps.len() {
        return None;
    }
    let mut texts = vec![first];
    let mut labels = Vec::with_capacity(steps.len());
    for WrittenStep { label, keep: [start, end], put } in steps {
        let was = texts.last()?;
        let tail = was.get(was.len().checked_sub(end)?..)?;
        let text = format!("{}{put}{tail}", was.get(..start)?);
        texts.push(text);
        labels.push(label);
    }
    if texts[at] != to_text(scheme) {
        return None;
    }
    let mut future: Vec<Moment> =
        texts.drain(at + 1..).zip(labels.drain(at..)).map(|(text, label)| Moment { label, text }).collect();
    future.reverse();
    let past = texts.into_iter().zip(labels).map(|(text, label)| Moment { label, text }).collect();
    Some(History { past, future })
}

#[cfg(test)]
mod tests {
    use super::*;
    use falsewright_core::scheme::heron_lane;

    /// The demo with its name changed so many times, a few of them taken back.
    fn renamed(count: usize) -> Document {
        let mut document = Document::new(heron_lane().unwrap());
        for i in 0..count {
            let next = Scheme { name: format!("Bay {i} – Südwand"), ..document.scheme.clone() };
            document.history.record(&std::mem::replace(&mut document.scheme, next), format!("Rename to {i}"));
        }
        document.history.go(count.saturating_sub(3), &mut document.scheme);
        document
    }

    #[test]
    fn all_steps_come_back_with_the_scheme() {
        for count in [0, 1, 5, 150] {
            let document = renamed(count);
            let back = Document::with_steps(document.scheme.clone(), &document.written_steps());
            assert_eq!(back, document);
            assert_eq!(back.steps().len(), count + 1);
        }
    }

    #[test]
    fn two_hundred_and_fifty_steps_of_the_demo_take_a_small_part_of_what_a_browser_keeps() {
        assert!(renamed(250).written_steps().len() < 60_000);
    }

    #[test]
    fn the_oldest_steps_are_left_out_where_the_text_would_be_too_long() {
        let mut document = Document::new(heron_lane().unwrap());
        for i in 0..40 {
            let mut next = document.scheme.clone();
            next.name = format!("{i}").repeat(40_000);
            document.history.record(&std::mem::replace(&mut document.scheme, next), format!("Rename {i}"));
        }
        let written = document.written_steps();
        assert!(written.len() <= LONGEST, "{}", written.len());
        let back = Document::with_steps(document.scheme.clone(), &written);
        assert!((5..40).contains(&back.at()), "{}", back.at());
        assert_eq!(back.history.undo_label(), Some("Rename 39"));
    }

    #[test]
    fn steps_of_another_scheme_and_damaged_ones_are_left_out() {
        let document = renamed(5);
        let written = document.written_steps();
        let other = heron_lane().unwrap();
        assert_eq!(Document::with_steps(other.clone(), &written), Document::new(other));
        let scheme = &document.scheme;
        for cut in [0, 1, written.len() / 2, written.len() - 1] {
            assert_eq!(Document::with_steps(scheme.clone(), &written[..cut]), Document::new(scheme.clone()));
        }
        let damaged = written.replace("\"keep\":[", "\"keep\":[9999");
        assert_eq!(Document::with_steps(scheme.clone(), &damaged), Document::new(scheme.clone()));
    }
}
