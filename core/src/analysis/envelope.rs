use super::{Extremes, Solution};

/// An extreme over several load cases.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Governing {
    /// The value: kN, kNm or m.
    pub value: f64,
    /// Its place in m from node i.
    pub x: f64,
    /// Index of the load case.
    pub case: usize,
}

/// Extremes of one member over several load cases.
#[derive(Clone, Copy, Debug, PartialEq)]
#[allow(missing_docs)]
pub struct MemberEnvelope {
    pub moment_max: Governing,
    pub moment_min: Governing,
    pub shear_max: Governing,
    pub shear_min: Governing,
    pub deflection_max: Governing,
    pub deflection_min: Governing,
    /// Greatest distance from the straight line between the displaced ends.
    pub deflection_from_chord: Governing,
}

/// Extremes of every member over load cases in their order; empty without cases.
pub fn envelope<'a>(cases: impl IntoIterator<Item = &'a Solution>) -> Vec<MemberEnvelope> {
    let mut all: Vec<MemberEnvelope> = Vec::new();
    for (case, solution) in cases.into_iter().enumerate() {
        let extremes = solution.all_extremes();
        if case == 0 {
            all = extremes.iter().map(|extremes| MemberEnvelope::of(extremes, case)).collect();
        } else {
            all.iter_mut().zip(&extremes).for_each(|(all, extremes)| all.widen(&MemberEnvelope::of(extremes, case)));
        }
    }
    all
}

impl MemberEnvelope {
    fn of(extremes: &Extremes, case: usize) -> Self {
        let governing = |(value, x)| Governing { value, x, case };
        Self {
            moment_max: governing(extremes.moment_max),
            moment_min: governing(extremes.moment_min),
            shear_max: governing(extremes.shear_max),
            shear_min: governing(extremes.shear_min),
            deflection_max: governing(extremes.deflection_max),
            deflection_min: governing(extremes.deflection_min),
            deflection_from_chord: governing(extremes.deflection_from_chord),
        }
    }

    fn widen(&mut self, other: &Self) {
        let higher = |best: &mut Governing, other: Governing| {
            if other.value > best.value {
                *best = other;
            }
        };
        let lower = |best: &mut Governing, other: Governing| {
            if other.value < best.value {
                *best = other;
            }
        };
        higher(&mut self.moment_max, other.moment_max);
        lower(&mut self.moment_min, other.moment_min);
        higher(&mut self.shear_max, other.shear_max);
        lower(&mut self.shear_min, other.shear_min);
        higher(&mut self.deflection_max, other.deflection_max);
        lower(&mut self.deflection_min, other.deflection_min);
        higher(&mut self.deflection_from_chord, other.deflection_from_chord);
    }
}
