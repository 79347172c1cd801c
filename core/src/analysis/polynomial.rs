/// Polynomial of the fourth degree, from its constant term up.
#[derive(Clone, Copy, Debug)]
pub(super) struct Polynomial(pub [f64; 5]);

impl Polynomial {
    #[inline]
    pub fn derivative(&self) -> Self {
        let [_, b, c, d, e] = self.0;
        Self([b, 2.0 * c, 3.0 * d, 4.0 * e, 0.0])
    }

    /// From 0 to `x`.
    pub fn integral(&self, x: f64) -> f64 {
        let [a, b, c, d, e] = self.0;
        x * (a + x * (b / 2.0 + x * (c / 3.0 + x * (d / 4.0 + x * e / 5.0))))
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
            roots.solve_quadratic(a, b, c, length);
            return roots;
        }
        let slope = function.derivative();
        let mut from = (0.0, a);
        for &to in derivative.all().iter().chain(&[length]) {
            let here = function.at(to);
            if from.1 * here < 0.0 {
                roots.push(root(from.0, to, from.1, here, |x| (function.at(x), slope.at(x))), length);
            }
            from = (to, here);
        }
        roots
    }

    /// Of `a + b·x + c·x²`, without cancelling.
    #[inline]
    fn solve_quadratic(&mut self, a: f64, b: f64, c: f64, length: f64) {
        if c == 0.0 {
            if b != 0.0 {
                self.push(-a / b, length);
            }
            return;
        }
        let discriminant = b * b - 4.0 * a * c;
        if discriminant > 0.0 {
            let sum = -0.5 * (b + discriminant.sqrt().copysign(b));
            let (p, q) = (sum / c, a / sum);
            self.push(p.min(q), length);
            self.push(p.max(q), length);
        }
    }
}

/// Root between `low` and `high`, at which the function has values of opposite signs: Newton's method kept in bounds.
/// The function gives its value and slope.
pub(super) fn root(
    mut low: f64,
    mut high: f64,
    at_low: f64,
    at_high: f64,
    mut function: impl FnMut(f64) -> (f64, f64),
) -> f64 {
    let close = 8.0 * f64::EPSILON * high;
    let mut x = low + (high - low) * at_low / (at_low - at_high);
    for _ in 0..100 {
        let (value, slope) = function(x);
        if value == 0.0 {
            break;
        }
        if (value < 0.0) == (at_low < 0.0) {
            low = x;
        } else {
            high = x;
        }
        let newton = x - value / slope;
        let next = if newton > low && newton < high { newton } else { 0.5 * (low + high) };
        let step = (next - x).abs();
        x = next;
        // Newton's next step would be of the size of the square of this one.
        if step <= close || (next == newton && step < 1e-9 * high) {
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
}
