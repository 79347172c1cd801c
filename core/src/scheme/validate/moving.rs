use super::Errors;
use crate::scheme::{Moving, Subject};

/// Of lines of jacks, jacks in a line, and rams.
const MOST_JACKS: f64 = 200.0;

impl Errors {
    /// Whether a bay can be moved so.
    pub(super) fn check_moving(&mut self, settings: Subject, moving: &Moving) {
        let Moving { carried_kn, lift, slide } = moving;
        self.range(settings, "a load carried with a bay", *carried_kn, (0.0, 100_000.0), "kN");
        self.range(settings, "a number of lines of jacks", f64::from(lift.lines), (2.0, MOST_JACKS), "");
        self.range(settings, "a number of jacks in a line", f64::from(lift.jacks), (1.0, MOST_JACKS), "");
        self.length(settings, "a distance of jacks from an edge", lift.edge_m, 0.0);
        self.range(settings, "a working load of a jack", lift.jack_kn, (1.0, 100_000.0), "kN");
        self.range(settings, "an unevenness of jacks", lift.unevenness, (1.0, 5.0), "");
        self.length(settings, "a travel of jacks", lift.travel_m, 0.01);
        self.length(settings, "a height of lifting", lift.height_m, 0.0);
        self.length(settings, "a side of a plate", lift.plate_m, 0.05);
        self.range(settings, "an allowable pressure under jacks", lift.allowable_kpa, (1.0, 100_000.0), "kPa");
        if let Some(slide) = slide {
            self.range(settings, "a distance of sliding", slide.distance_m, (0.01, 10_000.0), "m");
            self.range(settings, "a rise of a slide path", slide.rise, (-0.2, 0.2), "");
            self.range(settings, "a friction at the start", slide.start_friction, (0.0, 2.0), "");
            self.range(settings, "a friction of sliding", slide.running_friction, (0.0, 2.0), "");
            self.range(settings, "a number of rams", f64::from(slide.rams), (1.0, MOST_JACKS), "");
            self.range(settings, "a working load of a ram", slide.ram_kn, (1.0, 100_000.0), "kN");
            self.length(settings, "a stroke of rams", slide.stroke_m, 0.01);
            self.range(settings, "a speed of sliding", slide.rate_m_h, (0.001, 1000.0), "m/h");
        }
    }
}
