/// Polynomial of the fourth degree, from its constant term up.
#[derive(Clone, Copy, Debug)]
pub(super) struct Polynomial(pub [f64; 5]);

impl Polynomial {
    #[inline]
    pub fn derivative(&self) -> Self {
        let [_, b, c, d, e] = self.0;
        Self([b, 2.0 * c, 3.0 * d, 4.0 * e, 0.0])
    }

    pub fn plus(&self, constant: f64) -> Self {
        let [a, rest @ ..] = self.0;
        let [b, c, d, e] = rest;
        Self([a + constant, b, c, d, e])
    }

    /// Roots as if it were of the second degree, without cancelling: anything where there are none.
    #[inline]
    pub fn quadratic_roots(&self) -> [f64; 2] {
        let [a, b, c, ..] = self.0;
        let sum = -0.5 * (b + (b * b - 4.0 * a * c).sqrt().copysign(b));
        [sum / c, a / sum]
    }

    /// From 0 to `x`.
    #[inline]
    pub fn integral(&self, x: f64) -> f64 {
        let [a, b, c, d, e] = self.0;
        x * (a + x * (0.5 * b + x * (c * (1.0 / 3.0) + x * (0.25 * d + x * (0.2 * e)))))
    }

    #[inline]
    pub fn at(&self, x: f64) -> f64 {
        let [a, b, c, d, e] = self.0;
        a + x * (b + x * (c + x * (d + x * e)))
    }
}

/// Roots strictly between two places, in order.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Roots {
    x: [f64; 4],
    count: usize,
}

impl Roots {
    pub fn all(&self) -> &[f64] {
        &self.x[..self.count]
    }

    fn push(&mut self, x: f64, length: f64) {
        if 0.0 < x && x < length && self.count < 4 {
            self.x[self.count] = x;
            self.count += 1;
        }
    }

    /// Of a polynomial between 0 and `length`, given those of its derivative.
    #[inline]
    pub fn of(function: &Polynomial, derivative: &Self, length: f64) -> Self {
        let [a, b, c, d, e] = function.0;
        let mut roots = Self::default();
        if d == 0.0 && e == 0.0 {
            if c != 0.0 {
                let [p, q] = function.quadratic_roots();
                roots.push(p.min(q), length);
                roots.push(p.max(q), length);
            } else if b != 0.0 {
                roots.push(-a / b, length);
            }
            return roots;
        }
        let (slope, turns) = (function.derivative(), derivative.all());
        let mut from = (0.0, a);
        for part in 0..=turns.len() {
            let to = turns.get(part).map_or(length, |turn| *turn);
            let here = function.at(to);
            if from.1 * here < 0.0 {
                let share = from.1 / (from.1 - here);
                // At a turn it begins or ends like a parabola.
                let share = match (part > 0, part < turns.len()) {
                    (true, false) => share.sqrt(),
                    (false, true) => 1.0 - (1.0 - share).sqrt(),
                    _ => share,
                };
                let begin = from.0 + (to - from.0) * share;
                roots.push(root([from.0, to], from.1 < 0.0, begin, |x| (function.at(x), slope.at(x))), length);
            }
            from = (to, here);
        }
        roots
    }
}

/// A step, by the root, after which the next would be lost in rounding: the error is squared.
const LAST_STEP: f64 = 1e-9;

/// Root between two places at which a function has values of opposite signs, by Newton's method kept between them that
/// begins at `x`. The function gives its value and its slope.
#[inline]
pub(super) fn root(
    [mut low, mut high]: [f64; 2],
    rises: bool,
    mut x: f64,
    function: impl Fn(f64) -> (f64, f64),
) -> f64 {
    let close = 8.0 * f64::EPSILON * high;
    for _ in 0..100 {
        let (value, slope) = function(x);
        if value == 0.0 {
            break;
        }
        if (value < 0.0) == rises {
            low = x;
        } else {
            high = x;
        }
        let far = x - value / slope;
        let next = if far > low && far < high { far } else { 0.5 * (low + high) };
        let step = (next - x).abs();
        x = next;
        if step <= close || (next == far && step < LAST_STEP * high) {
            break;
        }
    }
    x
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn finds_all_roots_from_the_highest_derivative_down() {
        // (x − 0.1)(x − 0.2)(x − 0.7)(x − 0.9)
        let function = Polynomial([0.0126, -0.221, 1.13, -1.9, 1.0]);
        let mut chain = vec![function];
        (0..2).for_each(|n| chain.push(chain[n].derivative()));
        let roots = chain.iter().rev().fold(Roots::default(), |roots, function| Roots::of(function, &roots, 1.0));
        assert_eq!(roots.all().len(), 4);
        for (x, expected) in roots.all().iter().zip([0.1, 0.2, 0.7, 0.9]) {
            assert!((x - expected).abs() < 1e-13, "{x} {expected}");
        }
        let part = Roots::of(&function, &Roots::of(&chain[1], &Roots::of(&chain[2], &Roots::default(), 0.5), 0.5), 0.5);
        assert_eq!(part.all().len(), 2);
    }

    #[test]
    fn finds_a_root_where_all_derivatives_all_but_vanish() {
        // x⁴ = 1e-9
        let function = Polynomial([-1e-9, 0.0, 0.0, 0.0, 1.0]);
        let expected = 1e-9_f64.sqrt().sqrt();
        let roots = Roots::of(&function, &Roots::default(), 1.0);
        assert_eq!(roots.all().len(), 1);
        assert!((roots.all()[0] - expected).abs() < 1e-12, "{roots:?} {expected}");
    }
}
