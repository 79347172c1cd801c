use super::cubic::Cubic;
use super::element::Element;
use super::piece::Piece;
use super::pieces::Pieces;
use super::polynomial::{Polynomial, Roots, root};
use super::section::{Section, State};

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

/// What is asked for beside forces.
#[derive(Clone, Copy, PartialEq)]
enum Told {
    /// Deflections, and their distance from a line.
    Deflections,
    /// That distance alone.
    OffLine,
}

/// A place within a piece and the state there.
type Place = (f64, State);

/// Greatest and least forces along a member, each with its place in m from node i.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ForceExtremes {
    /// Greatest moment in kNm.
    pub moment_max: (f64, f64),
    /// Least moment in kNm.
    pub moment_min: (f64, f64),
    /// Greatest shear in kN.
    pub shear_max: (f64, f64),
    /// Least shear in kN.
    pub shear_min: (f64, f64),
}

/// Finds the turning points of shear, moment and deflection.
#[derive(Default)]
pub(super) struct Search {
    /// Places in order, between which the functions found so far only rise or only fall.
    places: Vec<Place>,
    found: Vec<Place>,
}

impl Search {
    #[inline]
    pub fn extremes(&mut self, pieces: &Pieces, member: usize) -> Extremes {
        let Element { length, section, .. } = &pieces.elements()[member];
        if section.is_plain() && pieces.acted_on(member).is_empty() {
            return Extremes::unloaded(*length, section, &pieces.starts[member]);
        }
        pieces.of(member, |pieces| self.any_extremes(pieces))
    }

    fn any_extremes(&mut self, pieces: &[Piece]) -> Extremes {
        let Some((last, before)) = pieces.split_last() else {
            return Extremes::at_start(&Section::default(), &State::default());
        };
        let end = last.at(last.length);
        let chord = chord(pieces, &end);
        let mut extremes = Extremes::at_start(&pieces[0].section, &pieces[0].start);
        for piece in before {
            self.widen(&mut extremes, piece, &piece.at(piece.length), chord, Told::Deflections);
        }
        self.widen(&mut extremes, last, &end, chord, Told::Deflections);
        extremes
    }

    /// Those of forces, and the greatest distance of deflections from a straight line, given by its value at node i and
    /// its slope.
    pub fn off_line(&mut self, pieces: &[Piece], line: (f64, f64)) -> (ForceExtremes, (f64, f64)) {
        let first = pieces.first().copied().unwrap_or_default();
        let mut extremes = Extremes::at_start(&first.section, &first.start);
        extremes.deflection_from_chord.0 = off_chord(first.start.deflection, 0.0, line);
        for piece in pieces {
            self.widen(&mut extremes, piece, &piece.at(piece.length), line, Told::OffLine);
        }
        (extremes.forces(), extremes.deflection_from_chord)
    }

    /// The same of forces only.
    pub fn forces(&mut self, pieces: &[Piece]) -> ForceExtremes {
        let first = pieces.first().copied().unwrap_or_default();
        let mut extremes = Extremes::at_start(&first.section, &first.start);
        for piece in pieces {
            let end = piece.at(piece.length);
            if piece.is_plain() {
                extremes.widen_forces(piece, &end);
            } else {
                self.widen(&mut extremes, piece, &end, (0.0, 0.0), Told::OffLine);
            }
        }
        extremes.forces()
    }

    fn widen(&mut self, extremes: &mut Extremes, piece: &Piece, end: &State, chord: (f64, f64), told: Told) {
        if piece.is_plain() {
            extremes.widen_plain(piece, end, chord, told);
            return;
        }
        self.find_places(piece, chord.1);
        for (x, state) in &self.places {
            extremes.widen(piece, *x, state, chord);
        }
    }

    /// Places from node i at which shear, moment, deflection or its distance from the chord may turn, ends included.
    pub fn turning_points(&mut self, pieces: &[Piece]) -> Vec<f64> {
        let Some(last) = pieces.last() else { return Vec::new() };
        let (_, slope) = chord(pieces, &last.at(last.length));
        let mut all = Vec::new();
        for piece in pieces {
            self.find_places(piece, slope);
            all.extend(self.places.iter().map(|(place, _)| piece.x + place));
        }
        all.dedup();
        all
    }

    /// Between two roots of its derivative a function has at most one root: from the growth of the shear up, each
    /// function's roots part the piece for the next one.
    fn find_places(&mut self, piece: &Piece, chord: f64) {
        let Section { tension, compliance, shear_compliance, .. } = piece.section;
        self.places.clear();
        let parts = if tension == 0.0 { 1 } else { PARTS };
        for part in 0..=parts {
            let x = piece.length * part as f64 / parts as f64;
            self.places.push((x, if part == 0 { piece.start } else { piece.at(x) }));
        }

        let growth = piece.growth[1];
        let loaded = tension != 0.0 || growth != 0.0 || piece.load[1] != 0.0;
        if loaded {
            let kappa = piece.section.kappa();
            let slope = growth / piece.section.mu();
            self.part_at_roots(piece, |x, state| (piece.shear_growth(x, state), slope + kappa * piece.shear(state)));
            self.part_at_roots(piece, |x, state| (piece.shear(state), piece.shear_growth(x, state)));
        }
        if shear_compliance != 0.0 {
            let mu = piece.section.mu();
            let slope = |state: &State| (compliance * piece.shear(state) - shear_compliance * growth) / mu;
            let growth_of_slope = |x: f64, state: &State| compliance * piece.shear_growth(x, state) / mu;
            self.part_at_roots(piece, |x, state| (slope(state), growth_of_slope(x, state)));
            self.part_at_roots(piece, |x, state| (piece.bend(x, state), slope(state)));
        }
        self.part_at_roots(piece, |_, state| (state.moment, piece.shear(state)));
        if piece.strain[1] != 0.0 {
            self.part_at_roots(piece, |x, state| (piece.bend(x, state), compliance * piece.shear(state)));
        }
        self.part_at_roots(piece, |x, state| (piece.incline(state), piece.bend(x, state)));
        if chord != 0.0 {
            self.part_at_roots(piece, |x, state| (piece.incline(state) - chord, piece.bend(x, state)));
        }
    }

    /// Adds the roots of a function, given with its derivative, that changes its sign between two places.
    fn part_at_roots(&mut self, piece: &Piece, function: impl Fn(f64, &State) -> (f64, f64)) {
        self.found.clear();
        let mut before: Option<(f64, f64)> = None;
        for place in &self.places {
            let (to, here) = (place.0, function(place.0, &place.1).0);
            if let Some((from, there)) = before
                && there * here < 0.0
            {
                let secant = from + (to - from) * there / (there - here);
                let x = root([from, to], there < 0.0, secant, |x| function(x, &piece.at(x)));
                self.found.push((x, piece.at(x)));
            }
            self.found.push(*place);
            before = Some((to, here));
        }
        std::mem::swap(&mut self.places, &mut self.found);
    }
}

impl Extremes {
    /// Those of moment and shear.
    pub fn forces(&self) -> ForceExtremes {
        let Self { moment_max, moment_min, shear_max, shear_min, .. } = *self;
        ForceExtremes { moment_max, moment_min, shear_max, shear_min }
    }

    #[inline]
    fn at_start(section: &Section, start: &State) -> Self {
        let State { moment, deflection, .. } = *start;
        let shear = section.shear(start);
        Self {
            moment_max: (moment, 0.0),
            moment_min: (moment, 0.0),
            shear_max: (shear, 0.0),
            shear_min: (shear, 0.0),
            deflection_max: (deflection, 0.0),
            deflection_min: (deflection, 0.0),
            deflection_from_chord: (0.0, 0.0),
        }
    }

    /// Of a member that only the forces at its ends bend.
    #[inline]
    fn unloaded(length: f64, section: &Section, start: &State) -> Self {
        let mut extremes = Self::at_start(section, start);
        let State { transverse, moment, slope, deflection, .. } = *start;
        let c = section.compliance;
        let end = moment + length * transverse;
        raise(&mut extremes.moment_max, end, length);
        lower(&mut extremes.moment_min, end, length);
        let bent = Polynomial([slope, c * moment, 0.5 * c * transverse, 0.0, 0.0]);
        let rise = bent.integral(length);
        extremes.widen_deflection(deflection + rise, length);
        if moment != 0.0 || transverse != 0.0 {
            extremes.widen_unloaded(0.0, &bent, (deflection, length), (deflection, rise / length), Told::Deflections);
        }
        extremes
    }

    /// Deflections of a piece without load along it, that begins at `x` with these deflection and length.
    #[inline]
    fn widen_unloaded(
        &mut self,
        x: f64,
        bent: &Polynomial,
        (deflection, length): (f64, f64),
        chord: (f64, f64),
        told: Told,
    ) {
        let at = |x: f64| deflection + bent.integral(x);
        // Any place is a fair candidate: those beyond the ends become the ends.
        if told == Told::Deflections {
            for into in bent.quadratic_roots().map(|x| x.clamp(0.0, length)) {
                self.widen_deflection(at(into), x + into);
            }
        }
        for into in bent.plus(-chord.1).quadratic_roots().map(|x| x.clamp(0.0, length)) {
            raise(&mut self.deflection_from_chord, off_chord(at(into), x + into, chord), x + into);
        }
    }

    #[inline]
    fn widen(&mut self, piece: &Piece, place: f64, state: &State, chord: (f64, f64)) {
        let (x, shear) = (piece.x + place, piece.shear(state));
        raise(&mut self.moment_max, state.moment, x);
        lower(&mut self.moment_min, state.moment, x);
        raise(&mut self.shear_max, shear, x);
        lower(&mut self.shear_min, shear, x);
        raise(&mut self.deflection_max, state.deflection, x);
        lower(&mut self.deflection_min, state.deflection, x);
        raise(&mut self.deflection_from_chord, off_chord(state.deflection, x, chord), x);
    }

    /// Forces over a whole piece that only moments bend: all functions are polynomials then.
    fn widen_forces(&mut self, piece: &Piece, end: &State) {
        let no_chord = (0.0, 0.0);
        self.widen(piece, 0.0, &piece.start, no_chord);
        self.widen(piece, piece.length, end, no_chord);
        if piece.load[1] != 0.0 || piece.growth[1] != 0.0 {
            self.widen_at_turns(piece);
        }
    }

    /// Shear and moment where they turn along a loaded piece that only moments bend, and where the moment does.
    #[inline]
    fn widen_at_turns(&mut self, piece: &Piece) -> Roots {
        let State { transverse, moment, .. } = piece.start;
        let (q, dq) = (piece.load[1], piece.growth[1]);
        let bending = Polynomial([moment, transverse, 0.5 * q, dq * (1.0 / 6.0), 0.0]);
        let shear = bending.derivative();
        let mut turns = Roots::default();
        if dq != 0.0 {
            turns = Roots::of(&shear.derivative(), &turns, piece.length);
            for &x in turns.all() {
                raise(&mut self.shear_max, shear.at(x), piece.x + x);
                lower(&mut self.shear_min, shear.at(x), piece.x + x);
            }
        }
        turns = Roots::of(&shear, &turns, piece.length);
        for &x in turns.all() {
            raise(&mut self.moment_max, bending.at(x), piece.x + x);
            lower(&mut self.moment_min, bending.at(x), piece.x + x);
        }
        turns
    }

    /// All over a whole piece that only moments bend.
    #[inline]
    fn widen_plain(&mut self, piece: &Piece, end: &State, chord: (f64, f64), told: Told) {
        let length = piece.length;
        if piece.x > 0.0 {
            self.widen(piece, 0.0, &piece.start, chord);
        }
        self.widen(piece, length, end, chord);
        let (State { transverse, moment, slope, deflection, .. }, c) = (piece.start, piece.section.compliance);
        let (q, dq) = (piece.load[1], piece.growth[1]);
        let loaded = !piece.is_unloaded();
        if !loaded && (c == 0.0 || (moment == 0.0 && transverse == 0.0)) {
            return;
        }
        let bent = Polynomial([slope, c * moment, 0.5 * c * transverse, c * q * (1.0 / 6.0), c * dq * (1.0 / 24.0)]);
        if !loaded {
            self.widen_unloaded(piece.x, &bent, (deflection, length), chord, told);
            return;
        }
        if dq == 0.0
            && let Some(cubic) = Cubic::new(&bent, length)
        {
            self.widen_evenly_loaded(piece, &cubic, &bent, chord, told);
            return;
        }
        let turns = self.widen_at_turns(piece);
        if c == 0.0 {
            return;
        }
        let at = |x: f64| deflection + bent.integral(x);
        let bending = Polynomial([moment, transverse, 0.5 * q, dq * (1.0 / 6.0), 0.0]);
        let turns = Roots::of(&bending, &turns, length);
        if told == Told::Deflections {
            for &x in Roots::of(&bent, &turns, length).all() {
                self.widen_deflection(at(x), piece.x + x);
            }
        }
        for &x in Roots::of(&bent.plus(-chord.1), &turns, length).all() {
            raise(&mut self.deflection_from_chord, off_chord(at(x), piece.x + x, chord), piece.x + x);
        }
    }

    /// The same over a piece whose slope is a cubic that turns twice, within its ends.
    #[inline]
    fn widen_evenly_loaded(&mut self, piece: &Piece, cubic: &Cubic, bent: &Polynomial, chord: (f64, f64), told: Told) {
        let State { transverse, moment, deflection, .. } = piece.start;
        // Any place is a fair candidate: those beyond the ends become the ends.
        let within = |x: f64| x.clamp(0.0, piece.length);
        let at = |x: f64| deflection + bent.integral(x);
        let top = within(cubic.middle());
        let most = moment + top * (transverse + top * (0.5 * piece.load[1]));
        raise(&mut self.moment_max, most, piece.x + top);
        lower(&mut self.moment_min, most, piece.x + top);
        let [turned, off] = cubic.places([0.0, chord.1]);
        if told == Told::Deflections {
            for x in turned.map(within) {
                self.widen_deflection(at(x), piece.x + x);
            }
        }
        for x in off.map(within) {
            raise(&mut self.deflection_from_chord, off_chord(at(x), piece.x + x, chord), piece.x + x);
        }
    }

    #[inline]
    fn widen_deflection(&mut self, deflection: f64, x: f64) {
        raise(&mut self.deflection_max, deflection, x);
        lower(&mut self.deflection_min, deflection, x);
    }
}

fn off_chord(deflection: f64, x: f64, (start, slope): (f64, f64)) -> f64 {
    (deflection - (start + slope * x)).abs()
}

/// Deflection at node i and slope of the straight line between the displaced ends, of which the last is given.
fn chord(pieces: &[Piece], end: &State) -> (f64, f64) {
    match (pieces.first(), pieces.last()) {
        (Some(first), Some(last)) => {
            let rise = end.deflection - first.start.deflection;
            (first.start.deflection, rise / last.end())
        }
        _ => (0.0, 0.0),
    }
}

#[inline]
fn raise(best: &mut (f64, f64), value: f64, x: f64) {
    if value > best.0 {
        *best = (value, x);
    }
}

#[inline]
fn lower(best: &mut (f64, f64), value: f64, x: f64) {
    if value < best.0 {
        *best = (value, x);
    }
}
