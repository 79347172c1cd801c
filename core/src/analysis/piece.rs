use super::section::{Section, State};

/// A stretch of a member on which the load is linear.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Piece {
    /// Where it begins, from node i.
    pub x: f64,
    pub length: f64,
    /// Load at its start along local x and y, and how it grows.
    pub load: [f64; 2],
    pub growth: [f64; 2],
    /// Force at its start along local x and y.
    pub force: [f64; 2],
    /// Gap at its start along local x and y, and kink.
    pub jump: [f64; 3],
    /// Strain and curvature that it takes on freely.
    pub strain: [f64; 2],
    pub section: Section,
    /// Just after the force and the gap at its start.
    pub start: State,
}

impl Piece {
    pub fn end(&self) -> f64 {
        self.x + self.length
    }

    /// Whether only moments bend it, so that all along it is a polynomial.
    pub fn is_plain(&self) -> bool {
        self.section.is_plain() && self.strain[1] == 0.0
    }

    /// Whether no load across it acts along it.
    pub fn is_unloaded(&self) -> bool {
        self.load[1] == 0.0 && self.growth[1] == 0.0
    }

    /// Solution of `M' = T + N·v'`, `θ' = M/EI + κ₀`, `v' = θ − (T + N·v')/GA`, `T' = q` from the start of the piece.
    #[inline]
    pub fn at(&self, x: f64) -> State {
        if self.is_plain() { self.plain_at(x) } else { self.any_at(x) }
    }

    /// The same where only moments bend it.
    #[inline(always)]
    pub fn plain_at(&self, x: f64) -> State {
        let State { axial, transverse, moment, slope, deflection, along } = self.start;
        let Section { compliance, axial_compliance, .. } = self.section;
        let ([p, q], [dp, dq]) = (self.load, self.growth);
        let (m, t, q3, q4) = (compliance * moment, compliance * transverse, compliance * q, compliance * dq);
        State {
            axial: axial - x * (p + 0.5 * x * dp),
            transverse: transverse + x * (q + 0.5 * x * dq),
            moment: moment + x * (transverse + x * (0.5 * q + x * dq * (1.0 / 6.0))),
            slope: slope + x * (m + x * (0.5 * t + x * (q3 * (1.0 / 6.0) + x * q4 * (1.0 / 24.0)))),
            deflection: deflection
                + x * (slope
                    + x * (0.5 * m + x * (t * (1.0 / 6.0) + x * (q3 * (1.0 / 24.0) + x * q4 * (1.0 / 120.0))))),
            along: along + x * (self.strain[0] + axial_compliance * (axial - x * (0.5 * p + x * dp * (1.0 / 6.0)))),
        }
    }

    /// The same of any piece.
    #[cold]
    pub fn any_at(&self, x: f64) -> State {
        let State { axial, transverse, moment, slope, deflection, along } = self.start;
        let Section { compliance, shear_compliance, axial_compliance, tension } = self.section;
        let ([p, q], [dp, dq], [strain, curvature]) = (self.load, self.growth, self.strain);
        let (mu, s, x2) = (self.section.mu(), self.section.transfer(x), 0.5 * x * x);
        let pushed = tension * slope;
        let bent = compliance * (moment * s[2] + (transverse * s[3] + q * s[4] + dq * s[5]) / mu);
        let sheared = shear_compliance * (transverse * x + q * x2 + dq * x2 * x / 3.0);
        State {
            axial: axial - p * x - dp * x2,
            transverse: transverse + q * x + dq * x2,
            moment: moment * s[0] + ((transverse + pushed) * s[1] + (q + tension * curvature) * s[2] + dq * s[3]) / mu,
            slope: slope * s[0]
                + compliance * (moment * s[1] + (transverse * s[2] + q * s[3] + dq * s[4]) / mu)
                + curvature * s[1],
            deflection: deflection + (slope * s[1] + bent - sheared + curvature * s[2]) / mu,
            along: along + strain * x + axial_compliance * (axial * x - x2 * (p + dp * x / 3.0)),
        }
    }

    /// dM/dx where the state is `state`.
    pub fn shear(&self, state: &State) -> f64 {
        self.section.shear(state)
    }

    /// d²M/dx² at `x`, where the state is `state`.
    pub fn shear_growth(&self, x: f64, state: &State) -> f64 {
        let Section { tension, compliance, .. } = self.section;
        let load = self.load[1] + self.growth[1] * x + tension * (compliance * state.moment + self.strain[1]);
        load / self.section.mu()
    }

    /// Slope of the axis, dv/dx, where the state is `state`.
    pub fn incline(&self, state: &State) -> f64 {
        (state.slope - self.section.shear_compliance * state.transverse) / self.section.mu()
    }

    /// d²v/dx² at `x`, where the state is `state`.
    pub fn bend(&self, x: f64, state: &State) -> f64 {
        let Section { compliance, shear_compliance, .. } = self.section;
        let load = self.load[1] + self.growth[1] * x;
        (compliance * state.moment + self.strain[1] - shear_compliance * load) / self.section.mu()
    }
}

impl State {
    /// Just after the force and the gap at the start of a piece.
    pub fn after(self, piece: &Piece) -> Self {
        let ([along, across], [gap_along, gap_across, turn]) = (piece.force, piece.jump);
        Self {
            axial: self.axial - along,
            transverse: self.transverse + across,
            slope: self.slope + turn,
            deflection: self.deflection + gap_across,
            along: self.along + gap_along,
            ..self
        }
    }
}
