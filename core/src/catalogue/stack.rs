use crate::sorting::sort;
use serde::{Deserialize, Serialize};

/// What a leg is put together from: standards end to end, a jack at its head and one at its base.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Stack {
    /// Lengths of standards in stock.
    pub standards_m: Vec<f64>,
    /// Least and greatest extension of the head jack, from the tube to what it carries.
    pub head_jack_m: [f64; 2],
    /// Least and greatest extension of the base jack, from its plate to the tube.
    pub base_jack_m: [f64; 2],
    /// Extension up to which a jack bears its whole working load.
    pub whole_to_m: f64,
    /// Part of the working load that it bears at its greatest extension; in proportion between the two.
    pub part_at_greatest: f64,
    /// What joins standards, if they are not one piece.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub spigot: Option<Joint>,
}

/// Spigot between two standards.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Joint {
    /// Diameter of the spigot.
    pub spigot_m: f64,
    /// How far it enters each tube.
    pub lap_m: f64,
}

/// A stack as it stands under a height.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stacked {
    /// Number of standards; none where a head jack stands alone.
    pub standards: usize,
    /// Extension of the head jack.
    pub head_m: f64,
    /// Extension of the base jack.
    pub base_m: f64,
}

/// Why no stack stands under a height.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Unstacked {
    /// Shorter than the least standard with its jacks screwed in.
    TooShort {
        /// Least height.
        least_m: f64,
    },
    /// Between stacks: the jacks would have to extend further than they may.
    TooFar {
        /// Extension of both jacks together with the fullest stack.
        extension_m: f64,
        /// Greatest that they may have together.
        greatest_m: f64,
    },
}

/// Most lengths of standards of one leg.
const MOST_STANDARDS: usize = 12;

/// Heights are made up to this, m.
const EXACT_M: f64 = 1e-6;

impl Stack {
    /// The stack that leaves the jacks their least extension: longest standards first, and without the longest ones where
    /// that leaves too much. Both jacks extend by the same part of their range.
    ///
    /// # Errors
    /// Where the jacks cannot make up what the standards leave.
    pub fn under(&self, height_m: f64) -> Result<Stacked, Unstacked> {
        let least = self.head_jack_m[0] + self.base_jack_m[0];
        let greatest = self.head_jack_m[1] + self.base_jack_m[1];
        let room = height_m - least + EXACT_M;
        let mut lengths: Vec<f64> = self.standards_m.iter().copied().filter(|&length| length > 0.0).collect();
        sort(&mut lengths, |a, b| b.total_cmp(a));
        let shortest = lengths.last().copied().unwrap_or(f64::INFINITY);
        if room < shortest {
            return Err(Unstacked::TooShort { least_m: shortest + least });
        }
        let mut fullest: Option<(usize, f64)> = None;
        for first in 0..lengths.len() {
            let (count, left_m) = longest_first(&lengths[first..], room);
            if fullest.is_none_or(|(_, best_m)| left_m < best_m - EXACT_M) {
                fullest = Some((count, left_m));
            }
        }
        let (standards, left_m) = fullest.unwrap_or((0, room));
        let left_m = (left_m - EXACT_M).max(0.0);
        let range = greatest - least;
        if left_m > range + EXACT_M {
            return Err(Unstacked::TooFar { extension_m: least + left_m, greatest_m: greatest });
        }
        let part = if range > 0.0 { (left_m / range).min(1.0) } else { 0.0 };
        let extended = |[least, greatest]: [f64; 2]| least + (greatest - least) * part;
        Ok(Stacked { standards, head_m: extended(self.head_jack_m), base_m: extended(self.base_jack_m) })
    }

    /// Why nothing can be put together from it.
    pub(crate) fn impossible(&self) -> Option<&'static str> {
        let Self { standards_m, head_jack_m, base_jack_m, whole_to_m, part_at_greatest, spigot } = self;
        let real = |value: f64, least: f64, most: f64| value >= least && value <= most;
        let range = |[least, greatest]: [f64; 2]| real(least, 0.0, 5.0) && real(greatest, least, 5.0) && greatest > 0.0;
        if standards_m.is_empty() || standards_m.len() > MOST_STANDARDS {
            Some("a leg is made up of one to twelve lengths of standards")
        } else if !standards_m.iter().all(|&length| real(length, 0.1, 20.0)) {
            Some("standards are 0.1 to 20 m long")
        } else if !range(*head_jack_m) || !range(*base_jack_m) {
            Some("a jack extends from its least to its greatest, at most 5 m")
        } else if !real(*whole_to_m, 0.0, 5.0) || !real(*part_at_greatest, 0.0, 1.0) {
            Some("a jack bears a part between 0 and 1 of its load at its greatest extension")
        } else if !spigot.is_none_or(|joint| real(joint.spigot_m, 0.005, 2.0) && real(joint.lap_m, 0.02, 2.0)) {
            Some("a spigot is at least 5 mm thick and enters each tube by 20 mm")
        } else {
            None
        }
    }

    /// Part of its working load that a jack bears at an extension, of a jack that extends this far at most.
    pub fn part_at(&self, extension_m: f64, greatest_m: f64) -> f64 {
        if extension_m <= self.whole_to_m || greatest_m <= self.whole_to_m {
            return 1.0;
        }
        let beyond = ((extension_m - self.whole_to_m) / (greatest_m - self.whole_to_m)).min(1.0);
        1.0 - (1.0 - self.part_at_greatest) * beyond
    }
}

/// Number of lengths that fit into a room, longest first, and what they leave of it.
fn longest_first(lengths_m: &[f64], room_m: f64) -> (usize, f64) {
    lengths_m.iter().fold((0, room_m), |(count, left_m), length_m| {
        let more = (left_m / length_m).floor().clamp(0.0, 1000.0);
        (count + more as usize, left_m - more * length_m)
    })
}
