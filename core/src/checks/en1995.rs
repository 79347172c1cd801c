//! Timber by EN 1995-1-1, one clause a function. Lengths mm, strengths N/mm². `kcr`, bearing lengths, notches and
//! columns are from memory; `kmod`, `kh` and γM are confirmed in print.

use std::f64::consts::PI;

/// Where timber is used, 2.3.1.3.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ServiceClass {
    /// Heated and dry.
    Dry,
    /// Under a roof.
    Covered,
    /// In the open, as formwork is.
    Wet,
}

/// How long a load stays, Table 2.1.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Duration {
    /// More than ten years.
    Permanent,
    /// Half a year to ten years.
    Long,
    /// A week to half a year.
    Medium,
    /// Less than a week: fresh concrete.
    Short,
    /// A gust.
    Instantaneous,
}

/// `kmod` of solid timber and plywood, Table 3.1.
pub fn kmod(class: ServiceClass, duration: Duration) -> f64 {
    let wet = class == ServiceClass::Wet;
    match duration {
        Duration::Permanent => {
            if wet {
                0.50
            } else {
                0.60
            }
        }
        Duration::Long => {
            if wet {
                0.55
            } else {
                0.70
            }
        }
        Duration::Medium => {
            if wet {
                0.65
            } else {
                0.80
            }
        }
        Duration::Short => {
            if wet {
                0.70
            } else {
                0.90
            }
        }
        Duration::Instantaneous => {
            if wet {
                0.90
            } else {
                1.10
            }
        }
    }
}

/// `kmod` of formwork: wet, loaded for less than a week.
pub fn formwork_kmod() -> f64 {
    kmod(ServiceClass::Wet, Duration::Short)
}

/// `kdef` of solid timber, Table 3.2 (from memory).
pub fn kdef_solid(class: ServiceClass) -> f64 {
    match class {
        ServiceClass::Dry => 0.6,
        ServiceClass::Covered => 0.8,
        ServiceClass::Wet => 2.0,
    }
}

/// `kdef` of plywood, Table 3.2 (from memory).
pub fn kdef_plywood(class: ServiceClass) -> f64 {
    match class {
        ServiceClass::Dry => 0.8,
        ServiceClass::Covered => 1.0,
        ServiceClass::Wet => 2.5,
    }
}

/// Width that remains of a cracked solid member in shear, 6.1.7.
pub const KCR_SOLID: f64 = 0.67;

/// `kh`, 3.2(3): `(150 / h)^0.2 ≤ 1.3` below 150 mm.
pub fn depth_factor(depth_mm: f64) -> f64 {
    if depth_mm >= 150.0 { 1.0 } else { libm::pow(150.0 / depth_mm, 0.2).min(1.3) }
}

/// `kmod f / γM`, 2.4.1.
pub fn design_strength(characteristic_mpa: f64, kmod: f64, gamma: f64) -> f64 {
    kmod * characteristic_mpa / gamma
}

/// Bending resistance of a rectangle, 6.1.6, kNm.
pub fn bending_knm(strength_mpa: f64, breadth_mm: f64, depth_mm: f64) -> f64 {
    strength_mpa * breadth_mm * depth_mm * depth_mm / 6.0 * 1e-6
}

/// Shear resistance of a rectangle, 6.1.7, kN: `τ = 1.5 V / (kcr b h)`.
pub fn shear_kn(strength_mpa: f64, kcr: f64, breadth_mm: f64, depth_mm: f64) -> f64 {
    strength_mpa * kcr * breadth_mm * depth_mm / 1.5 * 1e-3
}

/// Length that counts in compression across the grain, 6.1.5(1): the contact and up to 30 mm on each side, no more
/// than the length itself, the distance to the member's end there, or half of what is clear to the next contact.
pub fn bearing_length_mm(contact_mm: f64, to_end_mm: f64, clear_mm: f64) -> f64 {
    let most = 30f64.min(contact_mm).min(clear_mm / 2.0).max(0.0);
    contact_mm + most + most.min(to_end_mm.max(0.0))
}

/// `kc,90` of solid softwood, 6.1.5(2) to (4): more than 1 only where the next contact is two depths away.
pub fn bearing_factor(discrete_support: bool, clear_mm: f64, depth_mm: f64) -> f64 {
    match (clear_mm >= 2.0 * depth_mm, discrete_support) {
        (false, _) => 1.0,
        (true, true) => 1.5,
        (true, false) => 1.25,
    }
}

/// `kn` of solid timber, 6.5.2.
pub const KN_SOLID: f64 = 5.0;

/// A notch at a support, on its side, 6.5.2.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Notch {
    /// Depth of the member.
    pub depth_mm: f64,
    /// Depth that the notch leaves.
    pub left_mm: f64,
    /// From the middle of the support to the notch's corner.
    pub from_support_mm: f64,
    /// Slope of the notch, along the grain for one across; 0 for a square one.
    pub taper: f64,
    /// `kn`: 5 solid, 4.5 LVL, 6.5 glued laminated.
    pub kn: f64,
}

impl Notch {
    /// `α = hef / h`.
    pub fn alpha(&self) -> f64 {
        self.left_mm / self.depth_mm
    }

    /// `kv`, which reduces the shear strength over the depth that is left.
    pub fn factor(&self) -> f64 {
        let (alpha, root) = (self.alpha(), self.depth_mm.sqrt());
        let tapered = self.kn * (1.0 + 1.1 * self.taper * self.taper.sqrt() / root);
        let place = 0.8 * self.from_support_mm / self.depth_mm * (1.0 / alpha - alpha * alpha).max(0.0).sqrt();
        let divisor = root * ((alpha * (1.0 - alpha)).max(0.0).sqrt() + place);
        if divisor > 0.0 { (tapered / divisor).min(1.0) } else { 1.0 }
    }

    /// Shear resistance at the notch, kN.
    pub fn shear_kn(&self, strength_mpa: f64, kcr: f64, breadth_mm: f64) -> f64 {
        self.factor() * shear_kn(strength_mpa, kcr, breadth_mm, self.left_mm)
    }
}

/// A timber strut, 6.3.2.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Slenderness {
    /// Length by radius of gyration.
    pub lambda: f64,
    /// `λrel`.
    pub relative: f64,
    /// `k`.
    pub k: f64,
    /// `kc`, by which compression along the grain is reduced.
    pub kc: f64,
}

/// Slenderness of a rectangle that buckles across `depth_mm`; `βc` is 0.2 for solid timber, 0.1 for glued laminated.
pub fn slenderness(length_mm: f64, depth_mm: f64, compression_mpa: f64, e005_mpa: f64, beta_c: f64) -> Slenderness {
    let lambda = length_mm / (depth_mm / 12f64.sqrt());
    let relative = lambda / PI * (compression_mpa / e005_mpa).sqrt();
    let k = 0.5 * (1.0 + beta_c * (relative - 0.3) + relative * relative);
    let kc = (1.0 / (k + (k * k - relative * relative).max(0.0).sqrt())).min(1.0);
    Slenderness { lambda, relative, k, kc }
}
