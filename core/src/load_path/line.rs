//! Greatest effects along a straight line of members.

/// A greatest value, by size, and where and when it stands.
#[derive(Clone, Copy, Debug, Default)]
pub struct Peak {
    pub value: f64,
    pub at_m: f64,
    /// Index of the load case.
    pub case: usize,
}

impl Peak {
    /// The value of greatest size in a list of places and values.
    pub fn among(case: usize, values: impl IntoIterator<Item = (f64, f64)>) -> Self {
        let mut peak = Self { case, ..Self::default() };
        values.into_iter().for_each(|(at_m, value)| peak.raise(Self { value: value.abs(), at_m, case }));
        peak
    }

    pub fn raise(&mut self, other: Self) {
        if other.value > self.value {
            *self = other;
        }
    }

    pub fn times(self, factor: f64) -> Self {
        Self { value: self.value * factor, ..self }
    }
}

/// Deflection of one span from the straight line between its ends. A cantilever counts as twice its length, as its
/// limit in EN 1995-1-1, 7.2 is twice that of a span.
#[derive(Clone, Copy, Debug, Default)]
pub struct Deflection {
    /// Its size, m.
    pub peak: Peak,
    pub span_m: f64,
}

impl Deflection {
    pub fn raise(&mut self, other: Self) {
        if self.span_m == 0.0 || other.peak.value * self.span_m > self.peak.value * other.span_m {
            *self = other;
        }
    }
}

/// Greatest effects on a member over all its load cases.
#[derive(Clone, Copy, Debug, Default)]
pub struct Envelope {
    /// kNm, or kNm/m for boards.
    pub moment: Peak,
    /// kN, or kN/m for boards.
    pub shear: Peak,
    /// Greatest support force, kN.
    pub bearing: Peak,
    pub deflection: Deflection,
}

impl Envelope {
    pub fn raise(&mut self, other: &Self) {
        self.moment.raise(other.moment);
        self.shear.raise(other.shear);
        self.bearing.raise(other.bearing);
        self.deflection.raise(other.deflection);
    }

    /// The same under `factor` times the load.
    pub fn times(&self, factor: f64) -> Self {
        Self {
            moment: self.moment.times(factor),
            shear: self.shear.times(factor),
            bearing: self.bearing.times(factor),
            deflection: Deflection { peak: self.deflection.peak.times(factor), ..self.deflection },
        }
    }

    /// The same, told of one case.
    pub fn in_case(mut self, case: usize) -> Self {
        for peak in [&mut self.moment, &mut self.shear, &mut self.bearing, &mut self.deflection.peak] {
            peak.case = case;
        }
        self
    }

    /// The same, told of one place and case.
    pub fn told_of(mut self, at_m: f64, case: usize) -> Self {
        for peak in [&mut self.moment, &mut self.shear, &mut self.bearing, &mut self.deflection.peak] {
            (peak.at_m, peak.case) = (at_m, case);
        }
        self
    }
}
