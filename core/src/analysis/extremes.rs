use super::piece::{Piece, State};

/// Greatest and least values along a member, each with its place in m from node i.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Extremes {
    /// Greatest moment in kNm.
    pub moment_max: (f64, f64),
    /// Least moment in kNm.
    pub moment_min: (f64, f64),
    /// Greatest shear in kN.
    pub shear_max: (f64, f64),
    /// Least shear in kN.
    pub shear_min: (f64, f64),
    /// Greatest deflection along local y in m.
    pub deflection_max: (f64, f64),
    /// Least deflection along local y in m.
    pub deflection_min: (f64, f64),
    /// Greatest distance in m from the straight line between the displaced ends, on either side.
    pub deflection_from_chord: (f64, f64),
}

/// Parts into which a piece is cut first in second-order analysis, where the load alone does not tell how often the
/// moment may turn.
const PARTS: usize = 8;

/// Finds the turning points of shear, moment and deflection of one member.
pub(super) struct Search<'a> {
    pieces: &'a [Piece],
    /// Deflection at node i and slope of the straight line between the displaced ends.
    chord: (f64, f64),
    /// Places within the current piece, in order, between which the functions found so far only rise or only fall.
    places: Vec<f64>,
    found: Vec<f64>,
}

impl<'a> Search<'a> {
    pub fn new(pieces: &'a [Piece]) -> Self {
        let chord = match (pieces.first(), pieces.last()) {
            (Some(first), Some(last)) => {
                let rise = last.at(last.length).deflection - first.start.deflection;
                (first.start.deflection, rise / last.end())
            }
            _ => (0.0, 0.0),
        };
        Self { pieces, chord, places: Vec::with_capacity(16), found: Vec::with_capacity(16) }
    }

    pub fn extremes(mut self) -> Extremes {
        let (low, high) = ((f64::INFINITY, 0.0), (f64::NEG_INFINITY, 0.0));
        let mut extremes = Extremes {
            moment_max: high,
            moment_min: low,
            shear_max: high,
            shear_min: low,
            deflection_max: high,
            deflection_min: low,
            deflection_from_chord: high,
        };
        for piece in self.pieces {
            self.find_places(piece);
            for &place in &self.places {
                let (x, state) = (piece.x + place, piece.at(place));
                let shear = piece.shear(&state);
                let off = (state.deflection - (self.chord.0 + self.chord.1 * x)).abs();
                raise(&mut extremes.moment_max, state.moment, x);
                lower(&mut extremes.moment_min, state.moment, x);
                raise(&mut extremes.shear_max, shear, x);
                lower(&mut extremes.shear_min, shear, x);
                raise(&mut extremes.deflection_max, state.deflection, x);
                lower(&mut extremes.deflection_min, state.deflection, x);
                raise(&mut extremes.deflection_from_chord, off, x);
            }
        }
        extremes
    }

    /// Between two roots of its derivative a function has at most one root: from the growth of the shear up, each
    /// function's roots part the piece for the next one.
    fn find_places(&mut self, piece: &Piece) {
        let parts = if piece.tension == 0.0 { 1 } else { PARTS };
        self.places.clear();
        self.places.extend((0..=parts).map(|part| piece.length * part as f64 / parts as f64));

        let kappa = piece.tension * piece.compliance;
        let growth = piece.growth[1];
        self.part_at_roots(piece, |x, state| (piece.shear_growth(x, state), growth + kappa * piece.shear(state)));
        self.part_at_roots(piece, |x, state| (piece.shear(state), piece.shear_growth(x, state)));
        self.part_at_roots(piece, |_, state| (state.moment, piece.shear(state)));
        for slope in [0.0, self.chord.1] {
            self.part_at_roots(piece, |_, state| (state.slope - slope, state.moment * piece.compliance));
        }
    }

    /// Adds the roots of a function, given with its derivative, that changes its sign between two places.
    fn part_at_roots(&mut self, piece: &Piece, function: impl Fn(f64, &State) -> (f64, f64)) {
        let value = |x: f64| function(x, &piece.at(x));
        self.found.clear();
        let mut before: Option<(f64, f64)> = None;
        for &to in &self.places {
            let here = value(to).0;
            if let Some((from, there)) = before
                && (there < 0.0) != (here < 0.0)
                && there != 0.0
                && here != 0.0
            {
                self.found.push(root(from, to, there, here, value));
            }
            self.found.push(to);
            before = Some((to, here));
        }
        std::mem::swap(&mut self.places, &mut self.found);
    }
}

/// Root between `low` and `high`, at which the function has values of opposite signs: Newton's method kept in bounds.
fn root(mut low: f64, mut high: f64, at_low: f64, at_high: f64, function: impl Fn(f64) -> (f64, f64)) -> f64 {
    let close = 4.0 * f64::EPSILON * high;
    let mut x = low + (high - low) * at_low / (at_low - at_high);
    for _ in 0..100 {
        let (value, slope) = function(x);
        if value == 0.0 {
            break;
        }
        if (value < 0.0) == (at_low < 0.0) {
            low = x;
        } else {
            high = x;
        }
        let newton = x - value / slope;
        let next = if newton > low && newton < high { newton } else { 0.5 * (low + high) };
        let step = (next - x).abs();
        x = next;
        if step <= close {
            break;
        }
    }
    x
}

fn raise(best: &mut (f64, f64), value: f64, x: f64) {
    if value > best.0 {
        *best = (value, x);
    }
}

fn lower(best: &mut (f64, f64), value: f64, x: f64) {
    if value < best.0 {
        *best = (value, x);
    }
}
