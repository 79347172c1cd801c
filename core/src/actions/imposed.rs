//! Vertical loads on falsework other than the concrete itself, kPa.

/// Uses of a working area in BS 5975 practice (from memory).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Operations {
    /// Access and inspection only.
    Inspection,
    /// In-situ concreting.
    Concreting,
}

impl Operations {
    /// Evenly spread load on the working area.
    pub fn kpa(self) -> f64 {
        match self {
            Self::Inspection => 0.75,
            Self::Concreting => 1.5,
        }
    }
}

/// Evenly spread load of a working scaffold of class 1 to 6, EN 12811-1 Table 3 (from memory); none for other classes.
pub fn scaffold_class_kpa(class: u8) -> Option<f64> {
    [0.75, 1.5, 2.0, 3.0, 4.5, 6.0].get(usize::from(class).checked_sub(1)?).copied()
}

/// Least self weight of soffit formwork in BS 5975 practice (from memory).
pub const FORMWORK_KPA: f64 = 0.5;
/// Least variable persistent load `Q2` of EN 12812 (from memory).
pub const EN12812_Q2_KPA: f64 = 0.75;
/// `Qca`, people and hand tools, EN 1991-1-6 Table 4.1 (from memory).
pub const EN1991_QCA_KPA: f64 = 1.0;
/// `Qcb`, storage, spread, EN 1991-1-6 Table 4.1 (from memory).
pub const EN1991_QCB_KPA: f64 = 0.2;
/// `Qcc`, equipment, at least, EN 1991-1-6 Table 4.1 (from memory).
pub const EN1991_QCC_KPA: f64 = 0.5;
/// Outside the working area, EN 1991-1-6 Table 4.2 (from memory).
pub const EN1991_OUTSIDE_KPA: f64 = 0.75;

/// Concrete, formwork and operations on a level soffit.
pub fn soffit_load_kpa(thickness_m: f64, density_kn_m3: f64, formwork_kpa: f64, operations_kpa: f64) -> f64 {
    thickness_m * density_kn_m3 + formwork_kpa + operations_kpa
}

/// `Q4`, heaped concrete over 3 m × 3 m, EN 12812 (from memory): a tenth of the concrete, 0.75 to 1.75 kPa.
pub fn heaping_en12812_kpa(concrete_kpa: f64) -> f64 {
    (0.1 * concrete_kpa).clamp(0.75, 1.75)
}

/// Working area of 3 m × 3 m or the span, EN 1991-1-6 Table 4.2 (from memory): a tenth of the concrete, 0.75 to 1.5 kPa.
pub fn working_area_en1991_kpa(concrete_kpa: f64) -> f64 {
    (0.1 * concrete_kpa).clamp(0.75, 1.5)
}

/// Pressure of a pump that fills a form from below, ACI 347 (from memory): fluid head and a quarter more.
pub fn pumped_from_below_kpa(density_kn_m3: f64, height_m: f64) -> f64 {
    1.25 * density_kn_m3 * height_m
}

/// Horizontal force on what stands between two sides of a pour whose fronts differ in level, kN/m: the difference of
/// two fluid pressures above a common base.
pub fn unbalance_kn_m(density_kn_m3: f64, high_m: f64, low_m: f64) -> f64 {
    density_kn_m3 * (high_m * high_m - low_m * low_m) / 2.0
}
