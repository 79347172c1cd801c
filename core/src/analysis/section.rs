use super::transfer::transfer;

/// Forces and movement at one place of a member, in its local axes.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct State {
    /// Axial force, tension positive.
    pub axial: f64,
    /// Force across the unloaded axis: the shear, less the part of the axial force that the slope turns across. The
    /// part that an imperfection turns across is counted in.
    pub transverse: f64,
    pub moment: f64,
    /// Rotation of the cross-section.
    pub slope: f64,
    pub deflection: f64,
    /// Movement along the member.
    pub along: f64,
}

/// What all cross-sections of a member have in common.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Section {
    /// 1 / EI; 0 for a bar, which stays straight.
    pub compliance: f64,
    /// 1 / GA; 0 after Euler and Bernoulli.
    pub shear_compliance: f64,
    /// 1 / EA.
    pub axial_compliance: f64,
    /// Axial force that acts on the deflections: 0 in a linear analysis.
    pub tension: f64,
}

impl Section {
    /// Whether only moments bend a member of it.
    pub fn is_plain(&self) -> bool {
        self.tension == 0.0 && self.shear_compliance == 0.0
    }

    /// 1 + N/GA: by how much more a tensioned member resists shear, after Engesser.
    pub fn mu(&self) -> f64 {
        1.0 + self.tension * self.shear_compliance
    }

    /// N / μEI.
    pub fn kappa(&self) -> f64 {
        self.tension * self.compliance / self.mu()
    }

    pub fn transfer(&self, x: f64) -> [f64; 6] {
        transfer(self.kappa(), x)
    }

    /// dM/dx where the state is `state`.
    pub fn shear(&self, state: &State) -> f64 {
        (state.transverse + self.tension * state.slope) / self.mu()
    }
}

impl State {
    /// `x` m onward along a member without load that only moments bend.
    #[inline(always)]
    pub fn onward(self, section: &Section, x: f64) -> Self {
        let Self { axial, transverse, moment, slope, deflection, along } = self;
        let (m, t) = (section.compliance * moment, section.compliance * transverse);
        Self {
            moment: moment + x * transverse,
            slope: slope + x * (m + 0.5 * x * t),
            deflection: deflection + x * (slope + x * (0.5 * m + t * x * (1.0 / 6.0))),
            along: along + x * section.axial_compliance * axial,
            ..self
        }
    }
}
