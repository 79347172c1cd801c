use std::f64::consts::{FRAC_1_SQRT_2, PI};

/// Shape of the moment and place of the load in the critical moment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MomentShape {
    /// `C1`.
    pub c1: f64,
    /// `C2`.
    pub c2: f64,
    /// Load above the shear centre, mm.
    pub load_height_mm: f64,
}

impl MomentShape {
    /// Uniform load on a simple span; confirmed in print.
    pub fn uniform_load(load_height_mm: f64) -> Self {
        Self { c1: 1.127, c2: 0.454, load_height_mm }
    }

    /// A load at the middle of a simple span (from memory).
    pub fn central_load(load_height_mm: f64) -> Self {
        Self { c1: 1.348, c2: 0.630, load_height_mm }
    }

    /// Uniform load between fixed ends (from memory, low confidence).
    pub fn uniform_load_fixed_ends(load_height_mm: f64) -> Self {
        Self { c1: 2.578, c2: 1.554, load_height_mm }
    }

    /// End moments only, from 1 (single curvature) to −1: `1.88 − 1.40 ψ + 0.52 ψ² ≤ 2.7` (from memory); 1.0 where
    /// uniform.
    pub fn end_moments(psi: f64) -> Self {
        Self { c1: (1.88 - 1.40 * psi + 0.52 * psi * psi).min(2.7), c2: 0.0, load_height_mm: 0.0 }
    }
}

/// Moments between two places where a beam is held against moving sideways and twisting.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Segment<'a> {
    /// Distance of the two places.
    pub length_m: f64,
    /// Greatest moment, by size.
    pub greatest_knm: f64,
    /// Moments at an eighth, two eighths, and so on.
    pub eighths_knm: [f64; 7],
    /// Downward loads on the beam: distance from the first place, kN.
    pub loads: &'a [(f64, f64)],
}

impl Segment<'_> {
    /// `C1` by the quarter points, `12.5 M / (2.5 M + 3 M1 + 4 M2 + 3 M3)`: Kirby and Nethercot, AISC 360 F1.
    pub fn c1_kirby_nethercot(&self) -> f64 {
        let [_, first, _, middle, _, third, _] = self.parts();
        12.5 / (2.5 + 3.0 * first + 4.0 * middle + 3.0 * third)
    }

    /// `C1` by the quarter points, `√(35 M² / (M² + 9 M1² + 16 M2² + 9 M3²))`: Serna, López, Puente and Yong, Journal of
    /// Constructional Steel Research 62 (2006).
    pub fn c1_serna(&self) -> f64 {
        let [_, first, _, middle, _, third, _] = self.parts();
        (35.0 / (1.0 + 9.0 * first * first + 16.0 * middle * middle + 9.0 * third * third)).sqrt()
    }

    /// What `C1` cannot exceed by Ritz's method with a half wave and a whole wave of twist, which takes the buckle to where
    /// the moment is. With `gₙₘ = 2/L ∫ (M(x)/M)² sin(nπx/L) sin(mπx/L) dx` over the eighths, `1/C1²` is the greater
    /// eigenvalue of `[g₁₁, g₁₂/2; g₁₂/2, g₂₂/4]`: the whole wave takes four times the work where the section resists by
    /// torsion alone, and more where it warps.
    pub fn c1_ritz(&self) -> f64 {
        let parts = self.parts();
        let of = |waves: [f64; 7]| parts.iter().zip(waves).map(|(part, waves)| part * part * waves).sum::<f64>() / 4.0;
        let (half, both, whole) = (of(HALF_WAVE), 0.5 * of(BOTH_WAVES), 0.25 * of(WHOLE_WAVE));
        let apart = 0.5 * (half - whole);
        1.0 / (0.5 * (half + whole) + (apart * apart + both * both).sqrt()).sqrt()
    }

    /// Moments by the greatest.
    fn parts(&self) -> [f64; 7] {
        let greatest = self.greatest_knm.abs();
        self.eighths_knm.map(|moment| if greatest > 0.0 { (moment.abs() / greatest).min(1.0) } else { 1.0 })
    }

    /// The least `C1` of the three rules. `C2 = SHARE C1 L Σ P sin²(π x / L) / (π² M)`: the work of the loads on the height
    /// at which they stand, when the beam twists in a half wave.
    pub fn shape(&self, load_height_mm: f64) -> MomentShape {
        let c1 = self.c1_kirby_nethercot().min(self.c1_serna()).min(self.c1_ritz());
        let work: f64 = self
            .loads
            .iter()
            .map(|&(x, kn)| {
                let twist = libm::sin(PI * (x / self.length_m).clamp(0.0, 1.0));
                kn.max(0.0) * twist * twist
            })
            .sum();
        let greatest = self.greatest_knm.abs();
        let c2 = if greatest > 0.0 { SHARE * c1 * self.length_m * work / (PI * PI * greatest) } else { 0.0 };
        MomentShape { c1, c2, load_height_mm }
    }
}

/// `sin²(π x / L)` at the eighths: `(1 − √½) / 2`, a half, `(1 + √½) / 2`, 1, and back.
const HALF_WAVE: [f64; 7] = [
    0.146_446_609_406_726_24,
    0.5,
    0.853_553_390_593_273_8,
    1.0,
    0.853_553_390_593_273_8,
    0.5,
    0.146_446_609_406_726_24,
];

/// `sin²(2π x / L)` at the eighths.
const WHOLE_WAVE: [f64; 7] = [0.5, 1.0, 0.5, 0.0, 0.5, 1.0, 0.5];

/// `sin(π x / L) sin(2π x / L)` at the eighths: `√((1 − √½) / 4)`, `√½`, `√((1 + √½) / 4)`, 0, and back below 0.
const BOTH_WAVES: [f64; 7] = [
    0.270_598_050_073_098_5,
    FRAC_1_SQRT_2,
    0.653_281_482_438_188_3,
    0.0,
    -0.653_281_482_438_188_3,
    -FRAC_1_SQRT_2,
    -0.270_598_050_073_098_5,
];

/// Loads at points twist a beam more sharply than in a half wave. The half wave alone gives the `C2` of a uniform load in
/// NCCI SN003; with this share it covers that of a load at the middle.
const SHARE: f64 = 1.25;
