//! Pressure over the height of a full pour.

/// Greatest pressure at every depth of a full pour: fluid down to a limit, constant below. Force and moment are for a
/// metre of form.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PressureEnvelope {
    /// Weight density of the concrete.
    pub density_kn_m3: f64,
    /// What the pressure does not pass.
    pub limit_kpa: f64,
    /// Height of the pour.
    pub height_m: f64,
}

impl PressureEnvelope {
    /// Depth over which the concrete presses as a fluid.
    pub fn fluid_depth_m(&self) -> f64 {
        (self.limit_kpa / self.density_kn_m3).min(self.height_m)
    }

    /// Pressure at a depth below the surface.
    pub fn at_depth_kpa(&self, depth_m: f64) -> f64 {
        (self.density_kn_m3 * depth_m.max(0.0)).min(self.limit_kpa)
    }

    /// Force on the form.
    pub fn force_kn_m(&self) -> f64 {
        let fluid = self.fluid_depth_m();
        self.density_kn_m3 * fluid * (self.height_m - fluid / 2.0)
    }

    /// Moment about the base of the pour.
    pub fn moment_about_base_knm_m(&self) -> f64 {
        let (fluid, greatest) = (self.fluid_depth_m(), self.density_kn_m3 * self.fluid_depth_m());
        let below = self.height_m - fluid;
        greatest * below * below / 2.0 + greatest * fluid / 2.0 * (below + fluid / 3.0)
    }

    /// Height of the force above the base of the pour.
    pub fn height_of_force_m(&self) -> f64 {
        self.moment_about_base_knm_m() / self.force_kn_m()
    }
}

/// Force of a tie that holds this much of a form under an even pressure, kN.
pub fn tie_force_kn(pressure_kpa: f64, across_m: f64, upward_m: f64) -> f64 {
    pressure_kpa * across_m * upward_m
}
