use super::{Brace, Leg};
use std::f64::consts::PI;

/// Density of steel; 77 to 78.5 kN/m³ in EN 1991-1-1, table A.4, from memory.
pub const STEEL_KG_M3: f64 = 7850.0;

/// Round hollow section.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tube {
    /// Outside diameter.
    pub diameter_m: f64,
    /// Wall thickness.
    pub wall_m: f64,
}

impl Tube {
    /// Area of the steel.
    pub fn area_m2(&self) -> f64 {
        let (outer, inner) = self.diameters();
        PI / 4.0 * (outer * outer - inner * inner)
    }

    /// Second moment of area about a diameter.
    pub fn inertia_m4(&self) -> f64 {
        let (outer, inner) = self.diameters();
        PI / 64.0 * (outer * outer * outer * outer - inner * inner * inner * inner)
    }

    /// Elastic modulus.
    pub fn elastic_modulus_m3(&self) -> f64 {
        self.inertia_m4() / (self.diameter_m / 2.0)
    }

    /// Plastic modulus `(D³ − d³) / 6`.
    pub fn plastic_modulus_m3(&self) -> f64 {
        let (outer, inner) = self.diameters();
        (outer * outer * outer - inner * inner * inner) / 6.0
    }

    /// Radius of gyration.
    pub fn gyration_m(&self) -> f64 {
        (self.inertia_m4() / self.area_m2()).sqrt()
    }

    /// Weight by length.
    pub fn mass_kg_m(&self) -> f64 {
        STEEL_KG_M3 * self.area_m2()
    }

    fn diameters(&self) -> (f64, f64) {
        (self.diameter_m, (self.diameter_m - 2.0 * self.wall_m).max(0.0))
    }
}

impl Leg {
    /// Its tube.
    pub fn tube(&self) -> Tube {
        Tube { diameter_m: self.diameter_m, wall_m: self.wall_m }
    }

    /// Area of the steel.
    pub fn area_m2(&self) -> f64 {
        self.tube().area_m2()
    }

    /// Second moment of area about a diameter.
    pub fn inertia_m4(&self) -> f64 {
        self.tube().inertia_m4()
    }

    /// Weight of the tube by length.
    pub fn mass_kg_m(&self) -> f64 {
        self.tube().mass_kg_m()
    }
}

impl Brace {
    /// Its tube.
    pub fn tube(&self) -> Tube {
        Tube { diameter_m: self.diameter_m, wall_m: self.wall_m }
    }

    /// Area of the steel.
    pub fn area_m2(&self) -> f64 {
        self.tube().area_m2()
    }

    /// Second moment of area about a diameter.
    pub fn inertia_m4(&self) -> f64 {
        self.tube().inertia_m4()
    }

    /// Weight of the tube by length.
    pub fn mass_kg_m(&self) -> f64 {
        self.tube().mass_kg_m()
    }
}
