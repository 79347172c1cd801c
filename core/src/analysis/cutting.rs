use super::Strain;
use super::element::Element;
use super::loads::{LocalForce, LocalGap, LocalLoad, LocalLoads};
use super::piece::Piece;
use super::pieces::Pieces;
use super::section::State;
use crate::sorting::sort;
use std::sync::Arc;

/// What loads do to a member that starts at rest: the state at its end.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Response {
    pub end: State,
}

impl Response {
    /// Of a member on which nothing acts.
    pub const REST: Self =
        Self { end: State { axial: 0.0, transverse: 0.0, moment: 0.0, slope: 0.0, deflection: 0.0, along: 0.0 } };

    fn of(pieces: &mut [Piece]) -> Self {
        let mut state = State::default();
        for piece in pieces {
            piece.start = state.after(piece);
            state = piece.at(piece.length);
        }
        Self { end: state }
    }
}

impl Pieces {
    /// Cuts members where their loads jump or kink, and finds how each responds; none where nothing acts on it.
    pub fn cut(elements: &Arc<[Element]>, loads: &LocalLoads) -> (Self, Vec<Option<Response>>) {
        let mut pieces = Self::at_rest(elements, 3 * loads.lines.len() + loads.forces.len() + loads.gaps.len());
        let mut responses = Vec::with_capacity(elements.len());
        let (mut lines, mut forces) = (loads.lines.as_slice(), loads.forces.as_slice());
        let (mut gaps, mut strains) = (loads.gaps.as_slice(), loads.strains.as_slice());
        let mut breaks = Vec::with_capacity(16);
        for (member, element) in elements.iter().enumerate() {
            let own = Own {
                lines: take(&mut lines, |load| load.member == member),
                forces: take(&mut forces, |load| load.member == member),
                gaps: take(&mut gaps, |load| load.member == member),
                strains: take(&mut strains, |load| load.member == member),
            };
            let first = pieces.acted_on.len();
            if own.is_nothing() && element.imperfection == [0.0; 2] {
                pieces.firsts.push(first);
                responses.push(None);
                continue;
            }
            if own.is_even(element.length) {
                own.add_piece(element, 0.0, element.length, &mut pieces.acted_on);
            } else {
                own.breaks(element.length, &mut breaks);
                for ends in breaks.windows(2) {
                    own.add_piece(element, ends[0], ends[1], &mut pieces.acted_on);
                }
                if own.gaps.last().is_some_and(|gap| gap.x == element.length) {
                    own.add_piece(element, element.length, element.length, &mut pieces.acted_on);
                }
            }
            pieces.firsts.push(pieces.acted_on.len());
            responses.push(Some(Response::of(&mut pieces.acted_on[first..])));
        }
        (pieces, responses)
    }
}

/// What acts on one member.
struct Own<'a> {
    lines: &'a [LocalLoad],
    forces: &'a [LocalForce],
    gaps: &'a [LocalGap],
    strains: &'a [Strain],
}

/// Takes the first loads, those of one member, off all that are left.
fn take<'a, T>(left: &mut &'a [T], is_own: impl Fn(&T) -> bool) -> &'a [T] {
    let count = left.iter().take_while(|load| is_own(load)).count();
    let (own, rest) = left.split_at(count);
    *left = rest;
    own
}

impl Own<'_> {
    fn is_nothing(&self) -> bool {
        self.lines.is_empty() && self.forces.is_empty() && self.gaps.is_empty() && self.strains.is_empty()
    }

    /// Whether nothing jumps or kinks along the member.
    fn is_even(&self, length: f64) -> bool {
        let is_whole = |load: &LocalLoad| load.a == 0.0 && load.b == length;
        self.forces.is_empty() && self.gaps.is_empty() && self.lines.iter().all(is_whole)
    }

    fn breaks(&self, length: f64, breaks: &mut Vec<f64>) {
        breaks.clear();
        breaks.extend([0.0, length]);
        breaks.extend(self.lines.iter().flat_map(|load| [load.a, load.b]));
        breaks.extend(self.forces.iter().map(|load| load.x));
        breaks.extend(self.gaps.iter().map(|gap| gap.x));
        sort(breaks, f64::total_cmp);
        breaks.dedup();
    }

    fn add_piece(&self, element: &Element, from: f64, to: f64, pieces: &mut Vec<Piece>) {
        pieces.push(Piece::default());
        let Some(piece) = pieces.last_mut() else { return };
        (piece.x, piece.length, piece.section) = (from, to - from, element.section);
        for load in self.lines.iter().filter(|load| load.a <= from && to <= load.b && from < to) {
            let ([p_a, q_a], [p_b, q_b], length) = (load.at_a, load.at_b, load.b - load.a);
            let (along, across) = ((p_b - p_a) / length, (q_b - q_a) / length);
            let ([p, q], [dp, dq], into) = (piece.load, piece.growth, from - load.a);
            piece.load = [p + (p_a + along * into), q + (q_a + across * into)];
            piece.growth = [dp + along, dq + across];
        }
        for load in self.forces.iter().filter(|load| load.x == from) {
            for axis in 0..2 {
                piece.force[axis] += load.force[axis];
            }
        }
        for gap in self.gaps.iter().filter(|gap| gap.x == from) {
            for (jump, gap) in piece.jump.iter_mut().zip(gap.jump) {
                *jump += gap;
            }
        }
        for strain in self.strains {
            piece.strain[0] += strain.axial;
            if element.ei > 0.0 {
                piece.strain[1] += strain.curvature;
            }
        }
        if element.imperfection != [0.0; 2] {
            let [at_i, at_j] = element.imperfection;
            piece.load[1] += element.section.tension * (at_j - at_i) / element.length;
        }
    }
}
