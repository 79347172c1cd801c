//! Permissible stresses of solid timber in the manner of BS 5268-2:2002, as BS 5975 uses them; factors from memory.

use crate::catalogue::TimberClass;

/// Load duration of falsework.
pub const K3_FALSEWORK: f64 = 1.4;

/// `K2` of wet timber.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Exposure {
    /// Bending and tension.
    pub bending: f64,
    /// Shear.
    pub shear: f64,
    /// Compression along and across the grain.
    pub compression: f64,
    /// Modulus of elasticity.
    pub modulus: f64,
}

/// Wet exposure.
pub const WET: Exposure = Exposure { bending: 0.8, shear: 0.9, compression: 0.6, modulus: 0.8 };
/// Dry exposure.
pub const DRY: Exposure = Exposure { bending: 1.0, shear: 1.0, compression: 1.0, modulus: 1.0 };

/// `K7`: 1.17 up to 72 mm deep, `(300 / h)^0.11` up to 300 mm, `0.81 (h² + 92300) / (h² + 56800)` above.
pub fn depth_factor(depth_mm: f64) -> f64 {
    match depth_mm {
        h if h <= 72.0 => 1.17,
        h if h <= 300.0 => libm::pow(300.0 / h, 0.11),
        h => 0.81 * (h * h + 92_300.0) / (h * h + 56_800.0),
    }
}

/// `K12` of struts, Annex B: `N = 1.5`, `η = 0.005 λ`; `λ` is length by radius of gyration.
pub fn strut_factor(least_modulus_mpa: f64, along_mpa: f64, lambda: f64) -> f64 {
    let euler = std::f64::consts::PI * std::f64::consts::PI * least_modulus_mpa / (1.5 * lambda * lambda * along_mpa);
    let half = 0.5 + (1.0 + 0.005 * lambda) * euler / 2.0;
    // The lesser root, written so that it does not vanish in rounding for short struts.
    euler / (half + (half * half - euler).max(0.0).sqrt())
}

/// Permissible values of a member.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Permissible {
    /// Bending, N/mm².
    pub bending_mpa: f64,
    /// Shear, N/mm².
    pub shear_mpa: f64,
    /// Compression across the grain without wane, N/mm².
    pub across_mpa: f64,
    /// Compression across the grain with wane, N/mm².
    pub across_wane_mpa: f64,
    /// Compression along the grain before buckling, N/mm².
    pub along_mpa: f64,
    /// Least modulus of elasticity, N/mm².
    pub least_modulus_mpa: f64,
}

/// Grade stresses times `K2`, `K3`, `K7` in bending, and `K8` for load sharing.
pub fn permissible(class: &TimberClass, exposure: Exposure, k3: f64, depth_mm: f64, k8: f64) -> Permissible {
    let grade = &class.grade;
    let shared = k3 * k8;
    Permissible {
        bending_mpa: grade.bending_mpa * exposure.bending * shared * depth_factor(depth_mm),
        shear_mpa: grade.shear_mpa * exposure.shear * shared,
        across_mpa: class.grade_without_wane_mpa * exposure.compression * shared,
        across_wane_mpa: grade.bearing_mpa * exposure.compression * shared,
        along_mpa: grade.compression_mpa * exposure.compression * shared,
        least_modulus_mpa: class.grade_least_modulus_mpa * exposure.modulus,
    }
}
