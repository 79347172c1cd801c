//! Steel by EN 1993-1-1, one clause a function. Resistances are characteristic: a basis divides them by its factor.

/// Plastic shear resistance, 6.2.6(2), kN.
pub fn shear_kn(shear_area_mm2: f64, yield_mpa: f64) -> f64 {
    shear_area_mm2 * yield_mpa / 3f64.sqrt() * 1e-3
}

/// Shear area of a round tube, 6.2.6(3): `2 A / π`.
pub fn tube_shear_area(area: f64) -> f64 {
    2.0 * area / std::f64::consts::PI
}

/// Bending resistance, 6.2.5(2), kNm.
pub fn moment_knm(modulus_mm3: f64, yield_mpa: f64) -> f64 {
    modulus_mm3 * yield_mpa * 1e-6
}

/// `ρ = (2 V / Vpl − 1)²` above half the shear resistance, 6.2.8(3); nought below.
pub fn high_shear(shear_by_resistance: f64) -> f64 {
    let excess = (2.0 * shear_by_resistance - 1.0).clamp(0.0, 1.0);
    excess * excess
}

/// Plastic modulus of an I-section with high shear, 6.2.8(5), mm³: `Wpl − ρ Aw² / (4 tw)`.
pub fn modulus_with_shear_mm3(plastic_mm3: f64, rho: f64, web_area_mm2: f64, web_mm: f64) -> f64 {
    plastic_mm3.min(plastic_mm3 - rho * web_area_mm2 * web_area_mm2 / (4.0 * web_mm))
}

/// `a = (A − 2 b tf) / A ≤ 0.5`, 6.2.9.1(5).
pub fn web_share(area_mm2: f64, breadth_mm: f64, flange_mm: f64) -> f64 {
    ((area_mm2 - 2.0 * breadth_mm * flange_mm) / area_mm2).min(0.5)
}

/// Plastic moment of an I-section beside an axial force, 6.2.9.1(5): `Mpl (1 − n) / (1 − 0.5 a) ≤ Mpl`.
pub fn moment_with_axial(plastic_moment: f64, axial_by_resistance: f64, web_share: f64) -> f64 {
    (plastic_moment * (1.0 - axial_by_resistance) / (1.0 - 0.5 * web_share)).max(0.0).min(plastic_moment)
}

/// Axial force and bending of any class 1 to 3 section, added up, 6.2.1(7).
pub fn added_up(axial_by_resistance: f64, moment_by_resistance: f64) -> f64 {
    axial_by_resistance + moment_by_resistance
}

/// `Cm = 0.6 + 0.4 ψ ≥ 0.4` for end moments, Annex B Table B.3.
pub fn equivalent_moment(psi: f64) -> f64 {
    (0.6 + 0.4 * psi).max(0.4)
}

/// `a` of `k = Cm (1 + a n)`, Annex B Table B.1, where `n` is the force by the buckling resistance: `λ − 0.2 ≤ 0.8` of
/// class 1 and 2 sections, `0.6 λ ≤ 0.6` of class 3.
pub fn interaction_rate(slenderness: f64, plastic: bool) -> f64 {
    if plastic { (slenderness - 0.2).clamp(0.0, 0.8) } else { 0.6 * slenderness.min(1.0) }
}

/// `a` of `kzz = Cm (1 + a n)` of I-sections of class 1 and 2, Annex B Table B.1: `2 λz − 0.6 ≤ 1.4`. Never taken below 0.
pub fn minor_interaction_rate(slenderness: f64) -> f64 {
    (2.0 * slenderness - 0.6).clamp(0.0, 1.4)
}

/// `N / Nb,z + My / Mb + 1.5 Mz / Mc,z`, a simple sum for rolled sections used in UK practice (from memory).
pub fn simple_sum(axial: f64, major: f64, minor: f64) -> f64 {
    axial + major + 1.5 * minor
}

/// Class of a round tube, Table 5.2; none for class 4.
pub fn tube_class(diameter_by_wall: f64, yield_mpa: f64) -> Option<u8> {
    let square = 235.0 / yield_mpa;
    [50.0, 70.0, 90.0].iter().zip(1..).find(|(limit, _)| diameter_by_wall <= *limit * square).map(|(_, class)| class)
}
