use super::{Errors, LONGEST_CODE};
use crate::scheme::{
    Arrangement, Bearing, Direction, FaceRef, Falsework, FixedEnd, HeldBy, Id, Opening, Scheme, SchemeError, Shutter,
    Spacing, Subject, TieEnd, TieRow,
};
use crate::sorting::sort;

/// No row of members has more.
const MOST_MEMBERS: f64 = 1000.0;

/// Fall of a raking prop by its length, at most: 78° to the level.
const STEEPEST_PROP: f64 = 0.98;

impl Errors {
    pub(super) fn check_placing(&mut self, scheme: &Scheme) {
        let bay_m = scheme.bays.length_m;
        let [width_m, height_m] = scheme.section.size();
        for shutter in &scheme.shutters {
            self.check_shutter(shutter, bay_m, height_m);
        }
        for row in &scheme.ties {
            self.check_ties(row, bay_m);
        }
        for falsework in &scheme.falsework {
            self.check_falsework(falsework, bay_m, width_m);
        }
        for opening in &scheme.openings {
            self.check_opening(opening);
        }
        for repeat in &scheme.repeats {
            let subject = Subject::Element("Regular rows or lines of", repeat.of);
            self.spacing(subject, "rows or lines", &repeat.spacing, width_m.max(height_m));
            for moved in &repeat.moved {
                self.range(subject, "a place moved from", moved.at, (0.0, 1.0), "");
            }
        }
    }

    fn check_shutter(&mut self, shutter: &Shutter, bay_m: f64, height_m: f64) {
        let subject = Subject::Element("Shutter", shutter.id);
        self.codes(subject, &[&shutter.facing, &shutter.secondary, &shutter.primary]);
        let secondaries_over = match shutter.arrangement {
            Arrangement::UprightPrimaries => height_m,
            Arrangement::LevelPrimaries => bay_m,
        };
        self.spacing(subject, "secondaries", &shutter.secondaries, secondaries_over);
        self.spacing(subject, "primaries", &shutter.primaries, bay_m);
        self.range(subject, "a lap below the face", shutter.below_m, (0.0, 10.0), "m");
        self.range(subject, "a height above the face", shutter.above_m, (0.0, 10.0), "m");
        if let Some(hold_down_kn) = shutter.hold_down_kn {
            self.range(subject, "a hold-down of each upright", hold_down_kn, (0.0, 1000.0), "kN");
        }
        if let Some(hinge) = &shutter.hinge {
            self.range(subject, "a hinge above its top", hinge.above_top_m, (-100.0, 100.0), "m");
            self.range(subject, "a hinge off its face", hinge.off_m, (0.0, 100.0), "m");
            self.range(subject, "a swing", hinge.angle_deg, (0.0, 180.0), "°");
            self.range(subject, "a drop", hinge.drop_m, (0.0, 100.0), "m");
            self.range(subject, "a gap when swung", hinge.gap_m, (0.0, 100.0), "m");
        }
    }

    fn check_ties(&mut self, row: &TieRow, bay_m: f64) {
        let subject = Subject::Element("Tie row", row.id);
        self.codes(subject, &[&row.item]);
        self.place(subject, "a level", row.z_m);
        self.spacing(subject, "ties", &row.spacing, bay_m);
        if let TieEnd::Fixed { length_m } = row.to {
            self.length(subject, "a length to its fixed end", length_m, 0.05);
            if let Some(held) = &row.held {
                self.check_fixed_end(subject, held, length_m);
            }
        }
    }

    fn check_fixed_end(&mut self, subject: Subject, held: &FixedEnd, length_m: f64) {
        let most = STEEPEST_PROP * length_m.abs();
        self.range(subject, "a depth of its fixed end below the row", held.below_m, (0.0, most), "m");
        match held.by {
            HeldBy::Thrust => {}
            HeldBy::Kentledge { weight_kn, friction } => {
                self.range(subject, "a weight of kentledge", weight_kn, (0.0, 10_000.0), "kN");
                self.range(subject, "a coefficient of friction", friction, (0.0, 1.5), "");
            }
            HeldBy::Anchor(anchor) => {
                self.range(subject, "a depth of anchor", anchor.depth_m, (0.04, 3.0), "m");
                self.range(subject, "a diameter of anchor rod", anchor.rod_m, (0.005, 0.2), "m");
                self.range(subject, "a diameter of anchor head", anchor.head_m, (anchor.rod_m, 1.0), "m");
                self.range(subject, "a distance of the anchor to an edge", anchor.edge_m, (0.02, 100.0), "m");
                self.range(
                    subject,
                    "a strength of the concrete around the anchor",
                    anchor.strength_mpa,
                    (0.5, 150.0),
                    "MPa",
                );
            }
        }
    }

    fn check_falsework(&mut self, falsework: &Falsework, bay_m: f64, width_m: f64) {
        let subject = Subject::Element("Falsework", falsework.id);
        let Falsework { facing, secondary, primary, leg, base, brace, .. } = falsework;
        self.codes(subject, &[facing, secondary, primary, leg, base, brace]);
        let secondaries_over = match falsework.direction {
            Direction::Across => width_m,
            Direction::Along => bay_m,
        };
        self.spacing(subject, "secondaries", &falsework.secondaries, secondaries_over);
        self.spacing(subject, "bents", &falsework.bents, bay_m);
        self.length(subject, "a lift between levels of bracing", falsework.lift_m, 0.1);
        for line in &falsework.leg_lines {
            self.place(Subject::Element("Leg line", line.id), "a place", line.x_m);
        }
        if let Bearing::Slab { strength_mpa } = falsework.bearing {
            self.range(subject, "a strength of the slab below", strength_mpa, (0.5, 150.0), "MPa");
        }
        if let Some(slab) = &falsework.slab {
            self.range(subject, "an age of the slab below", slab.age_days, (0.0, 36_500.0), "days");
            self.hardening(subject, &slab.hardening);
        }
    }

    fn check_opening(&mut self, opening: &Opening) {
        let subject = Subject::Element("Opening", opening.id);
        self.codes(subject, &[&opening.transfer, &opening.trestle]);
        self.place(subject, "a left edge", opening.left_m);
        self.length(subject, "a clear width", opening.width_m, 0.1);
        self.length(subject, "a clear height", opening.height_m, 0.1);
        self.range(subject, "a width for guards", opening.guard_m, (0.0, 10.0), "m");
        self.length(subject, "a height under its transfer beams", opening.beam_underside_m, 0.1);
        self.range(subject, "a number of transfer beams", f64::from(opening.transfers), (1.0, 20.0), "");
        if let Some(restraint_m) = opening.restraint_m {
            self.length(subject, "a distance between restraints", restraint_m, 0.05);
        }
        self.range(subject, "a distance between trestle legs", opening.trestle_m, (0.05, 20.0), "m");
        for (quantity, measured) in
            [("a measured width", opening.built_width_m), ("a measured height", opening.built_height_m)]
        {
            measured.into_iter().for_each(|measured| self.length(subject, quantity, measured, 0.0));
        }
    }

    fn codes(&mut self, subject: Subject, codes: &[&str]) {
        codes.iter().for_each(|code| self.text(subject, "item code", code, LONGEST_CODE));
    }

    /// Refuses spacings that are not positive or that fill the length with too many members.
    fn spacing(&mut self, subject: Subject, what: &'static str, spacing: &Spacing, length_m: f64) {
        let errors_before = self.0.len();
        self.length(subject, "an end distance", spacing.edge_m, 0.0);
        self.length(subject, "a spacing", spacing.max_m, 0.01);
        if self.0.len() == errors_before && length_m.is_finite() {
            let members = (length_m - 2.0 * spacing.edge_m) / spacing.max_m + 1.0;
            if members > MOST_MEMBERS {
                self.count(subject, what, members.ceil() as usize, MOST_MEMBERS as usize);
            }
        }
    }

    pub(super) fn check_references(&mut self, scheme: &Scheme) {
        let has_shutter = |id: Id| scheme.shutters.iter().any(|shutter| shutter.id == id);
        for row in &scheme.ties {
            let subject = Subject::Element("Tie row", row.id);
            let far = match row.to {
                TieEnd::Shutter { id } => Some(id),
                TieEnd::Fixed { .. } => None,
            };
            for missing in std::iter::once(row.shutter).chain(far).filter(|&id| !has_shutter(id)) {
                self.push(SchemeError::Dangling { subject, what: "its shutter", missing });
            }
            if far == Some(row.shutter) {
                self.push(SchemeError::TieToItself { row: row.id, shutter: row.shutter });
            }
        }
        for (i, opening) in scheme.openings.iter().enumerate() {
            if !scheme.falsework.iter().any(|falsework| falsework.id == opening.falsework) {
                let subject = Subject::Element("Opening", opening.id);
                self.push(SchemeError::Dangling { subject, what: "its falsework", missing: opening.falsework });
            }
            if let Some(first) = scheme.openings[..i].iter().find(|other| other.falsework == opening.falsework) {
                let (first, second) = (first.id, opening.id);
                self.push(SchemeError::SecondOpening { falsework: opening.falsework, first, second });
            }
        }
        let known: std::collections::BTreeSet<Id> = scheme.ids().collect();
        for repeat in &scheme.repeats {
            let subject = Subject::Element("Regular rows or lines of", repeat.of);
            let all = repeat.members.iter().copied().chain(repeat.moved.iter().map(|moved| moved.id));
            for missing in std::iter::once(repeat.of).chain(all).filter(|id| !known.contains(id)) {
                self.push(SchemeError::Dangling { subject, what: "one of them", missing });
            }
        }
        self.same_face("Shutters", scheme.shutters.iter().map(|shutter| (shutter.face, shutter.id)));
        self.same_face("Falsework", scheme.falsework.iter().map(|falsework| (falsework.soffit, falsework.id)));
    }

    fn same_face(&mut self, kind: &'static str, placed: impl Iterator<Item = (FaceRef, Id)>) {
        let mut placed: Vec<(FaceRef, Id)> = placed.collect();
        sort(&mut placed, Ord::cmp);
        for pair in placed.windows(2).filter(|pair| pair[0].0 == pair[1].0) {
            self.push(SchemeError::SameFace { kind, first: pair[0].1, second: pair[1].1 });
        }
    }
}
