use super::exchange::Field;
use super::{EndNotch, Item, Kind, Leg, Section, Stack, Timber, TimberClass};
use crate::sentence::{Sentence, Value, term, word};
use std::fmt;

/// Why an item cannot be computed with.
#[derive(Clone, Debug, PartialEq)]
pub enum ItemFault {
    /// A value is not a number, negative, nought or beyond anything real.
    OutOfRange {
        /// The item.
        code: String,
        /// The value's name.
        field: &'static str,
        /// The value.
        value: f64,
        /// What no real item reaches.
        limit: f64,
    },
    /// A name that this program has no strengths for.
    UnknownName {
        /// The item.
        code: String,
        /// What is named.
        field: &'static str,
        /// The name.
        name: String,
        /// The names that are known.
        known: &'static str,
    },
    /// Dimensions that do not make a section.
    Impossible {
        /// The item.
        code: String,
        /// What does not fit.
        reason: &'static str,
    },
}

impl EndNotch {
    /// Why a timber of this depth cannot be notched so.
    pub(crate) fn impossible(&self, depth_m: f64) -> Option<&'static str> {
        let Self { left_m, from_support_m, taper } = *self;
        let real = left_m > 0.0
            && left_m <= depth_m
            && (0.0..=1.0).contains(&from_support_m)
            && (0.0..=100.0).contains(&taper);
        (!real).then_some(term("a notch leaves part of the depth and starts within 1 m of its support"))
    }
}

impl ItemFault {
    /// What is wrong and what to do, without a full stop.
    pub fn sentence(&self) -> Sentence {
        match self {
            Self::OutOfRange { code, field, value, limit } => sentence!(
                "{}: its {} of {} is not possible; give a value above 0 and below {}",
                code,
                name_of(field),
                with_unit(*value, field),
                with_unit(*limit, field)
            ),
            Self::UnknownName { code, field, name, known } => sentence!(
                "{}: its {} {} is not known; use one of {}",
                code,
                name_of(field),
                format!("{name:?}"),
                *known
            ),
            Self::Impossible { code, reason } => sentence!("{}: {}; correct its values", code, word(reason)),
        }
    }

    /// The key of the value at fault, if it is one.
    pub fn field(&self) -> Option<&'static str> {
        match self {
            Self::OutOfRange { field, .. } | Self::UnknownName { field, .. } => Some(field),
            Self::Impossible { .. } => None,
        }
    }
}

impl fmt::Display for ItemFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.sentence().fmt(f)
    }
}

impl std::error::Error for ItemFault {}

fn name_of(key: &'static str) -> Value {
    Field::of_key(key).map_or(word(key), |field| word(field.name))
}

fn with_unit(value: f64, key: &str) -> String {
    Field::of_key(key).map_or_else(|| value.to_string(), |field| field.written(value))
}

impl Item {
    /// The first thing that keeps it from being computed with.
    pub fn fault(&self) -> Option<ItemFault> {
        self.out_of_range().or_else(|| self.unknown_name()).or_else(|| self.impossible())
    }

    fn out_of_range(&self) -> Option<ItemFault> {
        let fault = |(field, value, limit): (&'static str, f64, f64)| {
            let may_be_nought = field == "stem_m";
            let real = (value > 0.0 || may_be_nought && value == 0.0) && value < limit;
            (!real).then(|| ItemFault::OutOfRange { code: self.code.clone(), field, value, limit })
        };
        self.values().into_iter().find_map(fault)
    }

    /// `(name, value, what no real item reaches)`.
    fn values(&self) -> Vec<(&'static str, f64, f64)> {
        match &self.kind {
            Kind::Board(board) => vec![
                ("thickness_m", board.thickness_m, 0.2),
                ("stiffness_knm2_m", board.stiffness_knm2_m, 1e5),
                ("modulus_m3_m", board.modulus_m3_m, 0.01),
                ("bending_mpa", board.bending_mpa, 500.0),
                ("shear_mpa", board.shear_mpa, 100.0),
                ("mass_kg_m2", board.mass_kg_m2, 1000.0),
                ("sheet_m", board.sheet_m[0], 20.0),
                ("sheet_m", board.sheet_m[1], 20.0),
            ],
            Kind::Timber(timber) => {
                let left_m = timber.notch.map_or(timber.depth_m, |notch| notch.left_m);
                vec![
                    ("breadth_m", timber.breadth_m, 1.0),
                    ("depth_m", timber.depth_m, 1.0),
                    ("notch.left_m", left_m, 1.0),
                ]
            }
            Kind::TimberBeam(beam) => vec![
                ("breadth_m", beam.breadth_m, 1.0),
                ("depth_m", beam.depth_m, 1.0),
                ("stiffness_knm2", beam.stiffness_knm2, 1e5),
                ("moment_knm", beam.moment_knm, 1e4),
                ("shear_kn", beam.shear_kn, 1e4),
                ("bearing_kn", beam.bearing_kn, 1e4),
                ("mass_kg_m", beam.mass_kg_m, 1000.0),
            ],
            Kind::RatedBeam(beam) => vec![
                ("breadth_m", beam.breadth_m, 1.0),
                ("depth_m", beam.depth_m, 2.0),
                ("stiffness_knm2", beam.stiffness_knm2, 1e6),
                ("axial_kn", beam.axial_kn, 1e8),
                ("moment_working_knm", beam.moment_working_knm, 1e4),
                ("shear_working_kn", beam.shear_working_kn, 1e4),
                ("bearing_working_kn", beam.bearing_working_kn, 1e4),
                ("mass_kg_m", beam.mass_kg_m, 1000.0),
            ],
            Kind::Steel(steel) => {
                let d = steel.section.dimensions();
                let mut values = match steel.section {
                    Section::I { .. } | Section::Channel { .. } => vec![
                        ("h_mm", d.h, 1500.0),
                        ("b_mm", d.b, 1000.0),
                        ("tw_mm", d.tw, 200.0),
                        ("tf_mm", d.tf, 200.0),
                        ("r_mm", d.r, 200.0),
                    ],
                    Section::Hollow { .. } => {
                        vec![("h_mm", d.h, 1500.0), ("b_mm", d.b, 1000.0), ("t_mm", d.tw, 200.0)]
                    }
                    Section::Round { .. } => vec![("d_mm", d.h, 1500.0), ("t_mm", d.tw, 200.0)],
                };
                values.extend([("side_by_side", steel.count(), 11.0), ("breadth_m", steel.breadth_m, 5.0)]);
                values
            }
            Kind::Tie(tie) => [
                vec![
                    ("diameter_m", tie.diameter_m, 0.2),
                    ("area_m2", tie.area_m2, 0.05),
                    ("breaking_kn", tie.breaking_kn, 1e5),
                    ("working_kn", tie.working_kn, 1e5),
                    ("modulus_kpa", tie.modulus_kpa, 1e9),
                    ("mass_kg_m", tie.mass_kg_m, 1000.0),
                    ("ends_kg", tie.ends_kg, 1000.0),
                    ("projection_m", tie.projection_m, 10.0),
                ],
                tie.plate.map_or(Vec::new(), |plate| {
                    vec![
                        ("plate.length_m", plate.length_m, 2.0),
                        ("plate.width_m", plate.width_m, 2.0),
                        ("plate.thickness_m", plate.thickness_m, 0.2),
                        ("plate.nut_m", plate.nut_m, 1.0),
                        ("plate.yield_mpa", plate.yield_mpa, 1000.0),
                    ]
                }),
            ]
            .concat(),
            Kind::Leg(leg) => vec![
                ("diameter_m", leg.diameter_m, 2.0),
                ("wall_m", leg.wall_m, 0.2),
                ("yield_mpa", leg.yield_mpa, 1000.0),
                ("jack_working_kn", leg.jack_working_kn, 1e5),
                ("footprint_m", leg.footprint_m, 2.0),
                ("ends_kg", leg.ends_kg, 1000.0),
                ("greatest_m", leg.rating.as_ref().map_or(1.0, |rating| rating.greatest_m), 10.0),
            ],
            Kind::Brace(brace) => vec![
                ("diameter_m", brace.diameter_m, 2.0),
                ("wall_m", brace.wall_m, 0.2),
                ("yield_mpa", brace.yield_mpa, 1000.0),
                ("coupler_working_kn", brace.coupler_working_kn, 1e5),
                ("coupler_kg", brace.coupler_kg, 1000.0),
            ],
            Kind::Plate(plate) => vec![
                ("width_m", plate.width_m, 10.0),
                ("length_m", plate.length_m, 10.0),
                ("thickness_m", plate.thickness_m, 1.0),
                ("mass_kg", plate.mass_kg, 1e4),
                ("stem_m", plate.stem_m, 10.0),
            ],
        }
    }

    fn unknown_name(&self) -> Option<ItemFault> {
        const PROP_CLASSES: [&str; 5] = ["A", "B", "C", "D", "E"];
        const CURVES: [&str; 5] = ["a0", "a", "b", "c", "d"];
        let (field, name, known, is_known) = match &self.kind {
            Kind::Timber(t) => ("class", &t.class, "C16, C18, C24, C27, C30", TimberClass::named(&t.class).is_some()),
            Kind::Steel(s) => ("grade", &s.grade, "S235, S275, S355 (up to 40 mm thick)", s.yield_mpa().is_some()),
            Kind::Leg(Leg { rating: Some(rating), .. }) if !PROP_CLASSES.contains(&rating.class.as_str()) => {
                ("rating.class", &rating.class, "A, B, C, D, E", false)
            }
            Kind::Leg(leg) => ("curve", &leg.curve, "a0, a, b, c, d", CURVES.contains(&leg.curve.as_str())),
            Kind::Brace(brace) => ("curve", &brace.curve, "a0, a, b, c, d", CURVES.contains(&brace.curve.as_str())),
            _ => return None,
        };
        (!is_known).then(|| ItemFault::UnknownName { code: self.code.clone(), field, name: name.clone(), known })
    }

    fn impossible(&self) -> Option<ItemFault> {
        let reason = match &self.kind {
            Kind::Timber(Timber { depth_m, notch: Some(notch), .. }) => notch.impossible(*depth_m),
            Kind::Steel(steel) => {
                let d = steel.section.dimensions();
                let fits = match steel.section {
                    Section::I { .. } => d.web_depth() > 2.0 * d.r && (d.b - d.tw) / 2.0 > d.r,
                    Section::Channel { .. } => d.web_depth() > 2.0 * d.r && d.b - d.tw > d.r,
                    Section::Hollow { h_mm, b_mm, t_mm } => h_mm.min(b_mm) > 4.0 * t_mm,
                    Section::Round { d_mm, t_mm } => d_mm > 2.0 * t_mm,
                };
                (!fits).then_some(term("walls, web, flanges and radii do not fit"))
            }
            Kind::Leg(leg) => (leg.wall_m > leg.diameter_m / 2.0)
                .then_some(term("the wall is thicker than the tube"))
                .or_else(|| leg.stack.as_ref().and_then(Stack::impossible)),
            Kind::Brace(brace) => {
                (brace.wall_m > brace.diameter_m / 2.0).then_some(term("the wall is thicker than the tube"))
            }
            _ => None,
        };
        reason.map(|reason| ItemFault::Impossible { code: self.code.clone(), reason })
    }
}
