//! What is under a base: spread of the force, bending of the sole plate, soil.

/// Pressure of a force on a plate, kPa.
pub fn contact_pressure_kpa(force_kn: f64, breadth_m: f64, length_m: f64) -> f64 {
    force_kn / (breadth_m * length_m)
}

/// Pressure at a depth in soil or granular fill, spread two down to one out on every side, kPa.
pub fn pressure_at_depth_kpa(force_kn: f64, breadth_m: f64, length_m: f64, depth_m: f64) -> f64 {
    force_kn / ((breadth_m + depth_m) * (length_m + depth_m))
}

/// Depth of granular fill that spreads a force to a pressure that the ground below allows, m.
pub fn fill_depth_m(force_kn: f64, breadth_m: f64, length_m: f64, allowable_kpa: f64) -> f64 {
    let half = (breadth_m + length_m) / 2.0;
    let missing = force_kn / allowable_kpa - breadth_m * length_m;
    if missing <= 0.0 { 0.0 } else { (half * half + missing).sqrt() - half }
}

/// Breadth below a packing that spreads at 45°; the unit of its arguments.
pub fn breadth_below_packing(breadth: f64, thickness: f64) -> f64 {
    breadth + 2.0 * thickness
}

/// Length of a web that bears, 1 in 2.5 through flange and root on each side of a stiff bearing, mm.
pub fn web_bearing_length_mm(stiff_mm: f64, flange_mm: f64, root_mm: f64) -> f64 {
    stiff_mm + 2.0 * 2.5 * (flange_mm + root_mm)
}

/// A sole plate under a stiff base.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SolePlate {
    /// Along the plate.
    pub length_m: f64,
    /// Across it.
    pub breadth_m: f64,
    /// Of what stands on it, along the plate.
    pub base_m: f64,
}

/// Effects on a sole plate that presses evenly.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SoleEffects {
    /// Reaction along the plate, kN/m.
    pub line_kn_m: f64,
    /// Moment of the cantilever from the edge of the base, kNm.
    pub moment_knm: f64,
    /// Pressure, kPa.
    pub pressure_kpa: f64,
}

impl SolePlate {
    /// From the force on it.
    pub fn effects(&self, force_kn: f64) -> SoleEffects {
        let line_kn_m = force_kn / self.length_m;
        let from_edge = ((self.length_m - self.base_m) / 2.0).max(0.0);
        SoleEffects {
            line_kn_m,
            moment_knm: line_kn_m * from_edge * from_edge / 2.0,
            pressure_kpa: contact_pressure_kpa(force_kn, self.breadth_m, self.length_m),
        }
    }
}

/// `Nc = 2 + π` of a strip on undrained clay, rounded as in practice.
pub const NC_STRIP: f64 = 5.14;
/// Shape factor of a square on undrained clay.
pub const SHAPE_SQUARE: f64 = 1.2;

/// Failure pressure on undrained clay, kPa; `shape` is 1 for a strip.
pub fn clay_failure_kpa(undrained_kpa: f64, nc: f64, shape: f64) -> f64 {
    nc * undrained_kpa * shape
}

/// Ground of BS 8004:1986, its presumed allowable pressure as confirmed in print.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GroundKind {
    /// Dense gravel, or dense sand and gravel.
    DenseGravel,
    /// Medium dense gravel, or sand and gravel.
    MediumGravel,
    /// Loose gravel, or sand and gravel.
    LooseGravel,
    /// Compact sand.
    DenseSand,
    /// Medium dense sand.
    MediumSand,
    /// Loose sand.
    LooseSand,
    /// Very stiff boulder clay, hard clay.
    HardClay,
    /// Stiff clay.
    StiffClay,
    /// Firm clay.
    FirmClay,
    /// Soft clay and silt.
    SoftClay,
    /// Very soft clay, peat, made ground.
    MadeGround,
}

impl GroundKind {
    /// Range in kPa: what may be presumed without tests is the lower value. None where nothing is presumed.
    pub fn presumed_kpa(self) -> Option<(f64, f64)> {
        Some(match self {
            Self::DenseGravel => (600.0, f64::INFINITY),
            Self::MediumGravel => (200.0, 600.0),
            Self::LooseGravel => (0.0, 200.0),
            Self::DenseSand => (300.0, f64::INFINITY),
            Self::MediumSand => (100.0, 300.0),
            Self::LooseSand => (0.0, 100.0),
            Self::HardClay => (300.0, 600.0),
            Self::StiffClay => (150.0, 300.0),
            Self::FirmClay => (75.0, 150.0),
            Self::SoftClay => (0.0, 75.0),
            Self::MadeGround => return None,
        })
    }
}

/// Reduction of a presumed pressure in BS 5975 (from memory): half for granular ground under water, 0.75 for ground not
/// inspected by someone competent.
pub fn presumed_reduction(granular_under_water: bool, inspected: bool) -> f64 {
    (if granular_under_water { 0.5 } else { 1.0 }) * (if inspected { 1.0 } else { 0.75 })
}

/// A point load on an endless beam on springs (Hetényi).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BeamOnSprings {
    /// `β = (k / 4 EI)^¼`, 1/m.
    pub beta: f64,
    /// Settlement under the load, m.
    pub settlement_m: f64,
    /// Moment under the load, kNm.
    pub moment_knm: f64,
}

impl BeamOnSprings {
    /// From the load, the spring stiffness by length in kN/m² and the bending stiffness.
    pub fn new(force_kn: f64, spring_kn_m2: f64, ei_knm2: f64) -> Self {
        let beta = (spring_kn_m2 / (4.0 * ei_knm2)).sqrt().sqrt();
        Self { beta, settlement_m: force_kn * beta / (2.0 * spring_kn_m2), moment_knm: force_kn / (4.0 * beta) }
    }
}
