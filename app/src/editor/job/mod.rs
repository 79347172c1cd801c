//! All options of a job: which lie in the tray and in which order, which one is on the sheet, which were put away.
//! Nothing is thrown away by a step here, and every step can be taken back.

mod steps;
#[cfg(test)]
mod tests;

pub use steps::TrayStep;

use super::Document;
use falsewright_core::scheme::{self, Scheme};
use steps::Arrangement;

/// More options than these are not kept once they are put away.
const MOST_PUT_AWAY: usize = 20;

/// Tells the options of a job apart for as long as the page is open.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct OptionId(pub u32);

#[derive(Clone, Debug, PartialEq)]
struct Sheet {
    id: OptionId,
    /// None while it is on the sheet, in the hands of the editor.
    document: Option<Document>,
}

/// The options of a job but for the document that is on the sheet, which every change is handed.
#[derive(Clone, Debug, PartialEq)]
pub struct Job {
    sheets: Vec<Sheet>,
    shown: Arrangement,
    past: Vec<(TrayStep, Arrangement)>,
    future: Vec<(TrayStep, Arrangement)>,
    /// The last thing done was a step of the tray.
    in_turn: bool,
    /// Grows with every change of what rests.
    changes: u64,
}

impl Default for Job {
    fn default() -> Self {
        let here = OptionId(0);
        Self {
            sheets: vec![Sheet { id: here, document: None }],
            shown: Arrangement { order: vec![here], here },
            past: Vec::new(),
            future: Vec::new(),
            in_turn: false,
            changes: 0,
        }
    }
}

impl Job {
    /// A job of these options, and the document of the one that is on the sheet.
    pub fn of(options: Vec<Document>, at: usize, put_away: Vec<Document>) -> (Self, Document) {
        let mut job = Self::default();
        let mut here = Document::new(Scheme::empty());
        if !options.is_empty() {
            job.place_all(options, at, put_away, &mut here);
            job.sheets.retain(|sheet| sheet.id != OptionId(0));
        }
        (job, here)
    }

    /// The options in the tray, in their order.
    pub fn order(&self) -> &[OptionId] {
        &self.shown.order
    }

    /// The option on the sheet.
    pub fn here(&self) -> OptionId {
        self.shown.here
    }

    /// Where an option lies in the tray.
    pub fn place_of(&self, id: OptionId) -> Option<usize> {
        self.shown.order.iter().position(|of| *of == id)
    }

    /// Whether there is but one option.
    pub fn is_single(&self) -> bool {
        self.shown.order.len() == 1
    }

    /// The option so many places further in the tray, round its ends.
    pub fn beside(&self, id: OptionId, by: isize) -> OptionId {
        let count = self.shown.order.len() as isize;
        let at = self.place_of(id).unwrap_or_default() as isize;
        self.shown.order.get((at + by).rem_euclid(count.max(1)) as usize).copied().unwrap_or(id)
    }

    /// Options that can be brought back, the one put away last at the end. Sheets on which nothing was drawn are none.
    pub fn put_away(&self) -> impl Iterator<Item = OptionId> {
        let away = |sheet: &&Sheet| self.place_of(sheet.id).is_none() && sheet.document.as_ref().is_some_and(is_drawn);
        self.sheets.iter().filter(away).map(|sheet| sheet.id)
    }

    /// The document of an option that is not on the sheet.
    pub fn resting(&self, id: OptionId) -> Option<&Document> {
        self.sheets.iter().find(|sheet| sheet.id == id)?.document.as_ref()
    }

    /// The scheme of an option.
    pub fn scheme<'a>(&'a self, id: OptionId, on_sheet: &'a Document) -> Option<&'a Scheme> {
        let document = if id == self.here() { Some(on_sheet) } else { self.resting(id) };
        document.map(Document::scheme)
    }

    /// Grows with every change of what is not on the sheet.
    pub fn changes(&self) -> u64 {
        self.changes
    }

    /// A name that no option in the tray has: the first free letter.
    pub fn free_name(&self, on_sheet: &Document) -> String {
        let taken = |name: &str| {
            self.shown.order.iter().any(|id| self.scheme(*id, on_sheet).is_some_and(|scheme| called(scheme) == name))
        };
        let letters = ('A'..='Z').map(String::from).chain((1..).map(|number| format!("Z{number}")));
        letters.into_iter().find(|name| !taken(name)).unwrap_or_default()
    }

    /// Puts another option on the sheet; false: it is there, or not in the tray.
    pub fn switch(&mut self, id: OptionId, on_sheet: &mut Document) -> bool {
        let done = self.place_of(id).is_some() && self.exchange(id, on_sheet);
        if done {
            self.shown.here = id;
            self.in_turn = false;
        }
        done
    }

    /// Adds an option behind the one on the sheet, and takes it in hand.
    pub fn add(&mut self, document: Document, step: TrayStep, on_sheet: &mut Document) {
        self.record(step);
        let id = self.keep(document);
        let at = self.place_of(self.here()).map_or(self.shown.order.len(), |at| at + 1);
        self.shown.order.insert(at, id);
        self.exchange(id, on_sheet);
        self.shown.here = id;
    }

    /// Moves an option to a place in the tray; false: it is there already.
    pub fn place(&mut self, id: OptionId, at: usize) -> bool {
        let Some(from) = self.place_of(id) else { return false };
        let at = at.min(self.shown.order.len() - 1);
        if at == from {
            return false;
        }
        self.record(TrayStep::Move);
        let id = self.shown.order.remove(from);
        self.shown.order.insert(at, id);
        true
    }

    /// Takes an option out of the tray; one is always left, so false for the last. It can be brought back.
    pub fn take_out(&mut self, id: OptionId, on_sheet: &mut Document) -> bool {
        let Some(at) = self.place_of(id).filter(|_| !self.is_single()) else { return false };
        self.record(TrayStep::PutAway);
        if self.here() == id {
            let next = self.shown.order.get(at + 1).or(self.shown.order.get(at.wrapping_sub(1))).copied();
            if let Some(next) = next {
                self.exchange(next, on_sheet);
                self.shown.here = next;
            }
        }
        self.shown.order.remove(at);
        // The list of what was put away is in the order in which it was.
        let index = self.sheets.iter().position(|sheet| sheet.id == id);
        if let Some(sheet) = index.map(|index| self.sheets.remove(index)) {
            self.sheets.push(sheet);
        }
        true
    }

    /// Brings back an option that was put away, behind the others, and takes it in hand.
    pub fn bring_back(&mut self, id: OptionId, on_sheet: &mut Document) -> bool {
        if self.place_of(id).is_some() || self.resting(id).is_none() {
            return false;
        }
        self.record(TrayStep::BringBack);
        self.shown.order.push(id);
        self.exchange(id, on_sheet);
        self.shown.here = id;
        true
    }

    /// Lays other options in the tray in place of those there, which are put away.
    pub fn replace(&mut self, options: Vec<Document>, at: usize, put_away: Vec<Document>, on_sheet: &mut Document) {
        if !options.is_empty() {
            self.record(TrayStep::Open);
            self.place_all(options, at, put_away, on_sheet);
        }
    }

    /// Changes an option that is not on the sheet.
    pub fn change<T>(&mut self, id: OptionId, change: impl FnOnce(&mut Document) -> T) -> Option<T> {
        let document = self.sheets.iter_mut().find(|sheet| sheet.id == id)?.document.as_mut()?;
        self.changes += 1;
        Some(change(document))
    }

    /// Options put away long ago, for which there is no room any more: to be kept elsewhere.
    pub fn let_go(&mut self) -> Vec<Document> {
        let away: Vec<OptionId> = self.put_away().collect();
        let gone = &away[..away.len().saturating_sub(MOST_PUT_AWAY)];
        let mut documents = Vec::new();
        for id in gone {
            if let Some(index) = self.sheets.iter().position(|sheet| sheet.id == *id) {
                documents.extend(self.sheets.remove(index).document);
            }
            let without = |(_, of): &(TrayStep, Arrangement)| !of.order.contains(id);
            self.past.retain(without);
            self.future.retain(without);
        }
        documents
    }

    fn place_all(&mut self, options: Vec<Document>, at: usize, put_away: Vec<Document>, on_sheet: &mut Document) {
        for document in put_away {
            self.keep(document);
        }
        let order: Vec<OptionId> = options.into_iter().map(|document| self.keep(document)).collect();
        if let Some(here) = order.get(at).or(order.first()).copied() {
            self.exchange(here, on_sheet);
            self.shown = Arrangement { order, here };
        }
    }

    fn keep(&mut self, document: Document) -> OptionId {
        let id = OptionId(self.sheets.iter().map(|sheet| sheet.id.0 + 1).max().unwrap_or_default());
        self.sheets.push(Sheet { id, document: Some(document) });
        self.changes += 1;
        id
    }

    /// Takes one document in hand and lets the one in hand rest.
    fn exchange(&mut self, id: OptionId, on_sheet: &mut Document) -> bool {
        let here = self.here();
        let Some(taken) = self.sheets.iter_mut().find(|sheet| sheet.id == id).and_then(|sheet| sheet.document.take())
        else {
            return false;
        };
        let rests = std::mem::replace(on_sheet, taken);
        if let Some(sheet) = self.sheets.iter_mut().find(|sheet| sheet.id == here) {
            sheet.document = Some(rests);
        }
        self.changes += 1;
        true
    }

    /// The job as a file or the browser keeps it: with what was put away, or without.
    pub fn file(&self, on_sheet: &Document, with_put_away: bool) -> scheme::Job {
        let of = |id: OptionId| self.scheme(id, on_sheet).cloned();
        let options = self.shown.order.iter().filter_map(|id| of(*id)).collect();
        let put_away = if with_put_away { self.put_away().filter_map(of).collect() } else { Vec::new() };
        scheme::Job::new(options, self.place_of(self.here()).unwrap_or_default(), put_away)
    }

    /// The resting documents in the order in which [`Self::file`] has them; none for the one on the sheet.
    pub fn documents(&self) -> impl Iterator<Item = Option<&Document>> {
        self.shown.order.iter().copied().chain(self.put_away()).map(|id| self.resting(id))
    }
}

/// What an option is called where it has no name of its own: it was the only one once.
pub fn called(scheme: &Scheme) -> &str {
    if scheme.option.is_empty() { "A" } else { &scheme.option }
}

fn is_drawn(document: &Document) -> bool {
    !document.scheme().is_blank() || document.steps().len() > 1
}
