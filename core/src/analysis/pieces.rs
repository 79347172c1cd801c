use super::element::Element;
use super::piece::Piece;
use super::section::{Section, State};
use std::sync::Arc;

/// How all members are bent and moved, as pieces between the places where what acts on them changes.
#[derive(Clone, Debug)]
pub(super) struct Pieces {
    elements: Arc<[Element]>,
    /// At the start of each member's first piece.
    pub starts: Vec<State>,
    /// Those of members on which something acts, one member after another.
    pub acted_on: Vec<Piece>,
    /// The first of these of each member; one more than there are members.
    pub firsts: Vec<usize>,
}

impl Default for Pieces {
    fn default() -> Self {
        Self { elements: Arc::default(), starts: Vec::new(), acted_on: Vec::new(), firsts: vec![0] }
    }
}

impl Pieces {
    /// Of the same members, all at rest, with room for so many pieces of those on which something acts.
    pub fn at_rest(elements: &Arc<[Element]>, room: usize) -> Self {
        let mut firsts = Vec::with_capacity(elements.len() + 1);
        firsts.push(0);
        Self {
            elements: elements.clone(),
            starts: vec![State::default(); elements.len()],
            acted_on: Vec::with_capacity(room),
            firsts,
        }
    }

    pub fn elements(&self) -> &Arc<[Element]> {
        &self.elements
    }

    /// Hands over the pieces of a member: one where nothing acts on it.
    pub fn of<T>(&self, member: usize, read: impl FnOnce(&[Piece]) -> T) -> T {
        match self.acted_on(member) {
            [] => read(&[self.bare(member)]),
            pieces => read(pieces),
        }
    }

    /// None where nothing acts on the member.
    pub fn acted_on(&self, member: usize) -> &[Piece] {
        &self.acted_on[self.firsts[member]..self.firsts[member + 1]]
    }

    fn bare(&self, member: usize) -> Piece {
        let Element { length, section, .. } = self.elements[member];
        Piece { length, section, start: self.starts[member], ..Piece::default() }
    }

    /// The cross-section of a member and its state at `x` from node i; inlined, so that only what is read is worked out.
    #[inline(always)]
    pub fn at(&self, member: usize, x: f64) -> (&Section, State) {
        let section = &self.elements[member].section;
        if x <= 0.0 {
            return (section, self.starts[member]);
        }
        let pieces = self.acted_on(member);
        let state = match pieces.partition_point(|piece| piece.x <= x).max(1) {
            _ if pieces.is_empty() && section.is_plain() => {
                self.starts[member].onward(section, x.clamp(0.0, self.elements[member].length))
            }
            _ if pieces.is_empty() => self.bare_at(member, x),
            after => {
                let piece = &pieces[after - 1];
                let into = (x - piece.x).clamp(0.0, piece.length);
                if piece.is_plain() { piece.plain_at(into) } else { piece.any_at(into) }
            }
        };
        (section, state)
    }

    #[cold]
    fn bare_at(&self, member: usize, x: f64) -> State {
        let bare = self.bare(member);
        bare.at(x.clamp(0.0, bare.length))
    }

    /// Makes one member of the parts of each, where `parts` are the first of them.
    pub fn join(self, parts: &[usize]) -> Self {
        let whole = parts.windows(2);
        let elements = whole.clone().map(|parts| self.elements[parts[0]].clone()).collect();
        let mut joined = Self::at_rest(&elements, self.acted_on.len() + self.starts.len());
        for (member, parts) in whole.enumerate() {
            joined.starts[member] = self.starts[parts[0]];
            let mut before = 0.0;
            for part in (parts[0]..parts[1]).filter(|part| parts[1] - parts[0] > 1 || !self.acted_on(*part).is_empty())
            {
                before = self.of(part, |pieces| {
                    joined.acted_on.extend(pieces.iter().map(|piece| Piece { x: piece.x + before, ..*piece }));
                    before + pieces.last().map_or(0.0, Piece::end)
                });
            }
            joined.firsts.push(joined.acted_on.len());
        }
        joined
    }

    /// Fills in the states of a member from the state at its start, before any force and gap there.
    #[inline]
    pub fn set_start(&mut self, member: usize, state: State) {
        let pieces = self.firsts[member]..self.firsts[member + 1];
        self.starts[member] = match self.acted_on.get(pieces.start) {
            Some(first) if !pieces.is_empty() => state.after(first),
            _ => state,
        };
        self.fill_in(member);
    }

    /// Fills in the states of a member's pieces from that at the start of its first.
    #[inline]
    pub fn fill_in(&mut self, member: usize) {
        let mut state = self.starts[member];
        let pieces = &mut self.acted_on[self.firsts[member]..self.firsts[member + 1]];
        for at in 0..pieces.len() {
            pieces[at].start = state;
            if let Some(next) = pieces.get(at + 1) {
                state = pieces[at].at(pieces[at].length).after(next);
            }
        }
    }
}
