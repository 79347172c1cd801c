use super::polynomial::Polynomial;
use std::array::from_fn;

/// Places are found up to so many halves from the middle.
const REACH: f64 = 2.5;

/// Halves longer than so many lengths leave too few figures of a place.
const FAR: f64 = 1e4;

/// A function of the third degree that turns twice, at `u = ±1`: its value in the `middle` and a multiple of `u³ − 3u`,
/// where `u` is the distance from there by `half` of that between the turns.
pub(super) struct Cubic {
    function: [f64; 4],
    middle: f64,
    half: f64,
    at_middle: f64,
    per_unit: f64,
}

impl Cubic {
    /// None unless it turns twice and no place from 0 to `length` is far off.
    #[inline]
    pub fn new(function: &Polynomial, length: f64) -> Option<Self> {
        let [a, b, c, d, _] = function.0;
        let middle = -c / (3.0 * d);
        let half = (middle * middle - b / (3.0 * d)).sqrt();
        let near = |distance: f64| distance <= REACH * half;
        let at_middle = a + middle * (b + middle * (c + middle * d));
        let per_unit = 1.0 / (d * half * half * half);
        // Where it does not turn twice, half is not a number and nothing is near.
        let is_near = near(middle) && near(length - middle) && half < FAR * length;
        is_near.then_some(Self { function: [a, b, c, d], middle, half, at_middle, per_unit })
    }

    pub fn middle(&self) -> f64 {
        self.middle
    }

    /// The places at which it has each of two values, to 11 figures of their distance from the nearest turn; anything, or
    /// no number, instead of those that there are not. All at once, as a processor would wait most of the time for one.
    #[inline]
    pub fn places(&self, levels: [f64; 2]) -> [[f64; 3]; 2] {
        let [p, q] = levels.map(|level| (level - self.at_middle) * self.per_unit);
        let moved = [2.0 + p, 2.0 + q, 2.0 - p, 2.0 - q];
        let [right_p, right_q, left_p, left_q] = moved.map(|moved| (moved * (1.0 / 3.0)).sqrt());
        let inward = |right: f64, left: f64| if right < left { -right } else { -left };
        let out = [right_p, right_q, left_p, left_q, inward(right_p, left_p), inward(right_q, left_q)].map(from_turn);
        let [right_p, right_q, left_p, left_q, in_p, in_q] = out.map(|e| 1.0 + e);
        let about = [right_p, right_q, -left_p, -left_q, in_p.copysign(-p), in_q.copysign(-q)];
        let [a, b, c, d, e, f] = from_fn(|k| self.step(self.middle + self.half * about[k], levels[k % 2]));
        [[a, c, e], [b, d, f]]
    }

    /// A step of Halley's method: what was known to 4 figures is to 12 after it.
    #[inline]
    fn step(&self, x: f64, level: f64) -> f64 {
        let [a, b, c, d] = self.function;
        let value = (a - level) + x * (b + x * (c + x * d));
        let slope = b + x * (2.0 * c + x * (3.0 * d));
        let half_bend = c + 3.0 * d * x;
        x - value * slope / (slope * slope - value * half_bend)
    }
}

/// How far outward from a turn `u³ − 3u` has moved by `3s²`, inward where `s` is less than 0: `e·√(1 + e/3) = s`, by a
/// fraction fitted between the middle and [`REACH`] to 6·10⁻⁵ of it.
#[inline]
fn from_turn(s: f64) -> f64 {
    let above = 1.0000234 + s * (0.7065192 + s * 0.0612421);
    let below = 1.0 + s * (0.8729221 + s * 0.1374016);
    s * above / below
}

#[cfg(test)]
mod tests {
    use super::*;

    /// `scale·(x − p)(x − q)(x − r) + level`.
    fn with_roots([p, q, r]: [f64; 3], scale: f64, level: f64) -> Polynomial {
        let [a, b, c] = [-p * q * r, p * q + q * r + r * p, -(p + q + r)].map(|part| scale * part);
        Polynomial([a + level, b, c, scale, 0.0])
    }

    #[test]
    fn finds_every_place_within_its_reach() {
        let steps = || (0..=20).map(|step| f64::from(step) * 0.1 - 0.5);
        let mut found = 0;
        for (p, q, r) in steps().flat_map(|p| steps().flat_map(move |q| steps().map(move |r| (p, q, r)))) {
            if !(p < q && q < r) {
                continue;
            }
            for (scale, level) in [(1.0, 0.0), (-3.7, 12.0)] {
                let Some(cubic) = Cubic::new(&with_roots([p, q, r], scale, level), 1.0) else { continue };
                for root in [p, q, r].into_iter().filter(|root| (0.0..=1.0).contains(root)) {
                    let [_, places] = cubic.places([level + 0.3, level]);
                    let off = places.into_iter().map(|x| (x - root).abs()).fold(f64::INFINITY, f64::min);
                    assert!(off < 1e-11, "{p} {q} {r} {scale}: {root} by {off}");
                    found += 1;
                }
            }
        }
        assert!(found > 2000, "{found}");
    }

    #[test]
    fn finds_the_one_place_beyond_a_turn() {
        // x³ − 3x, whose turns are at ±1, moved right by 1: u = 2.2 is at 3.2.
        let cubic = Cubic::new(&Polynomial([2.0, 0.0, -3.0, 1.0, 0.0]), 3.4).expect("it turns twice");
        let [[right, left, middle], _] = cubic.places([2.2_f64.powi(3) - 6.6, 0.0]);
        assert!((right - 3.2).abs() < 1e-11, "{right}");
        assert!(left.is_nan() && !(0.0..3.1).contains(&middle), "{left} {middle}");
    }

    #[test]
    fn is_none_where_places_would_be_lost() {
        let none = |function, length| Cubic::new(&Polynomial(function), length).is_none();
        // x³ + 3x never turns, x² only once; x³ − 3x at 3 and x³ − 3·10¹⁰x between 0 and 1 are far off.
        assert!(none([0.0, 3.0, 0.0, 1.0, 0.0], 1.0));
        assert!(none([0.0, 0.0, 1.0, 0.0, 0.0], 1.0));
        assert!(none([0.0, -3.0, 0.0, 1.0, 0.0], 3.0));
        assert!(none([0.0, -3e10, 0.0, 1.0, 0.0], 1.0));
        assert!(!none([0.0, -3.0, 0.0, 1.0, 0.0], 2.0));
    }
}
