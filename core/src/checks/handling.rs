//! Lifting by hand: the filter of HSE guidance L23. 25 and 16 kg at knuckle height and the reductions are confirmed in
//! print, the other zones are from memory. Above the filter a detailed assessment is needed.

/// Height of the hands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Zone {
    /// Shoulder height and above.
    Shoulder,
    /// Elbow height.
    Elbow,
    /// Knuckle height.
    Knuckle,
    /// Middle of the lower leg.
    LowerLeg,
    /// The floor.
    Floor,
}

/// Who lifts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lifter {
    /// Men.
    Man,
    /// Women.
    Woman,
}

/// Guideline weight, kg, close to the body or at arm's length.
pub fn guideline_kg(zone: Zone, lifter: Lifter, close: bool) -> f64 {
    let (men, women) = match zone {
        Zone::Shoulder => ([10.0, 5.0], [7.0, 3.0]),
        Zone::Elbow => ([20.0, 10.0], [13.0, 7.0]),
        Zone::Knuckle => ([25.0, 15.0], [16.0, 10.0]),
        Zone::LowerLeg => ([20.0, 10.0], [13.0, 7.0]),
        Zone::Floor => ([10.0, 5.0], [7.0, 3.0]),
    };
    let [near, far] = if lifter == Lifter::Man { men } else { women };
    if close { near } else { far }
}

/// Reduction for lifts a minute: 30 % for one or two, 50 % for five to eight, 80 % above twelve. Between them the greater
/// is taken.
pub fn repetition(lifts_a_minute: f64) -> f64 {
    match lifts_a_minute {
        n if n < 1.0 => 0.0,
        n if n <= 2.0 => 0.3,
        n if n <= 8.0 => 0.5,
        _ => 0.8,
    }
}

/// Reduction for turning while lifting, degrees: 10 % at 45°, 20 % at 90°.
pub fn twist(degrees: f64) -> f64 {
    match degrees.abs() {
        d if d <= 0.0 => 0.0,
        d if d <= 45.0 => 0.1,
        _ => 0.2,
    }
}

/// A weight less a part of it.
pub fn reduced_kg(base_kg: f64, reduction: f64) -> f64 {
    base_kg * (1.0 - reduction)
}
