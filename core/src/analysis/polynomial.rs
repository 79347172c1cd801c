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

    /// Moves places by some steps of Halley's method to where the function has these values, and returns Newton's steps
    /// before the last: for several at once, as a processor would wait most of the time for one.
    #[inline]
    fn approach(&self, x: &mut Lanes, levels: &Lanes) -> Lanes {
        let mut newton = [0.0; LANES];
        for _ in 0..STEPS {
            for ((x, level), newton) in x.iter_mut().zip(levels).zip(&mut newton) {
                let step = self.step(*x, *level);
                *newton = step.value / step.slope;
                *x -= step.halley;
            }
        }
        newton
    }

    /// Where the function has a value between two places, begun at `x`, by Halley's method kept between them.
    #[cold]
    fn kept_root(&self, [low, high]: [f64; 2], level: f64, x: f64) -> f64 {
        let back = |x| {
            let Step { value, slope, halley } = self.step(x, level);
            // Where all is flat Halley's steps are short far from a root.
            let newton = value / slope;
            (value, if halley.abs() < 0.5 * newton.abs() { newton } else { halley })
        };
        root(low, high, self.at(low) < level, x, HALLEY, back)
    }

    #[inline]
    fn step(&self, x: f64, level: f64) -> Step {
        let [a, b, c, d, e] = self.0;
        let square = x * x;
        let value = ((a - level) + b * x) + square * ((c + d * x) + square * e);
        let slope = (b + 2.0 * c * x) + square * (3.0 * d + 4.0 * e * x);
        let half_bend = (c + 3.0 * d * x) + 6.0 * e * square;
        Step { value, slope, halley: value * slope / (slope * slope - value * half_bend) }
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

/// A step towards a root.
struct Step {
    value: f64,
    slope: f64,
    /// What Halley's method goes back by.
    halley: f64,
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
        let [roots] = Self::at_levels(function, [0.0], derivative, length);
        roots
    }

    /// Where a polynomial has each of these values between 0 and `length`, given the roots of its derivative.
    #[inline]
    pub fn at_levels<const N: usize>(
        function: &Polynomial,
        levels: [f64; N],
        derivative: &Self,
        length: f64,
    ) -> [Self; N] {
        let turns = derivative.all();
        let mut roots = [Self::default(); N];
        let mut crossings = Crossings::default();
        let mut from = (0.0, function.0[0]);
        for part in 0..=turns.len() {
            let to = turns.get(part).map_or(length, |turn| *turn);
            let here = function.at(to);
            for (index, level) in levels.into_iter().enumerate() {
                let (before, after) = (from.1 - level, here - level);
                if before * after < 0.0 {
                    let share = before / (before - after);
                    // At a turn it begins or ends like a parabola.
                    let share = match (part > 0, part < turns.len()) {
                        (true, false) => share.sqrt(),
                        (false, true) => 1.0 - (1.0 - share).sqrt(),
                        _ => share,
                    };
                    if crossings.count == LANES {
                        crossings.take(function, length, &mut roots);
                    }
                    crossings.push(from.0 + (to - from.0) * share, [from.0, to], (index, level));
                }
            }
            from = (to, here);
        }
        crossings.take(function, length, &mut roots);
        roots
    }
}

/// Places at which a function is sought at once.
const LANES: usize = 4;
type Lanes = [f64; LANES];

/// Stretches in each of which a function comes to a value.
#[derive(Default)]
struct Crossings {
    count: usize,
    /// A place to begin at.
    begun: Lanes,
    bounds: [[f64; 2]; LANES],
    levels: Lanes,
    /// Number of the value.
    of: [usize; LANES],
}

impl Crossings {
    fn push(&mut self, begun: f64, bounds: [f64; 2], (index, level): (usize, f64)) {
        let k = self.count;
        (self.begun[k], self.bounds[k], self.levels[k], self.of[k]) = (begun, bounds, level, index);
        self.count += 1;
    }

    /// Finds the places and leaves none.
    #[inline]
    fn take(&mut self, function: &Polynomial, length: f64, roots: &mut [Roots]) {
        if self.count == 0 {
            return;
        }
        let mut near = self.begun;
        let newton = function.approach(&mut near, &self.levels);
        for k in 0..self.count {
            let [low, high] = self.bounds[k];
            let found = low < near[k] && near[k] < high && newton[k].abs() < HALLEY * high;
            let x = if found { near[k] } else { function.kept_root(self.bounds[k], self.levels[k], self.begun[k]) };
            roots[self.of[k]].push(x, length);
        }
        self.count = 0;
    }
}

/// A step of Newton's method, by the root, after which the next would be lost in rounding: the error is squared.
pub(super) const NEWTON: f64 = 1e-9;

/// The same of Halley's method, which takes the third power.
const HALLEY: f64 = 1e-5;

/// Steps of Halley's method that hardly a root needs more than.
const STEPS: usize = 3;

/// Root between `low` and `high`, at which the function has values of opposite signs: a method kept in bounds that begins
/// at `x`. The function gives its value and the step back that the method takes; a step below `last` is the last.
#[inline]
pub(super) fn root(
    mut low: f64,
    mut high: f64,
    rises: bool,
    mut x: f64,
    last: f64,
    mut function: impl FnMut(f64) -> (f64, f64),
) -> f64 {
    let close = 8.0 * f64::EPSILON * high;
    for _ in 0..100 {
        let (value, back) = function(x);
        if value == 0.0 {
            break;
        }
        if (value < 0.0) == rises {
            low = x;
        } else {
            high = x;
        }
        let far = x - back;
        let next = if far > low && far < high { far } else { 0.5 * (low + high) };
        let step = (next - x).abs();
        x = next;
        if step <= close || (next == far && step < last * high) {
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
    fn finds_where_two_values_are_come_to_more_often_than_places_are_sought_at_once() {
        // (x − 0.1)(x − 0.2)(x − 0.7)(x − 0.9)
        let function = Polynomial([0.0126, -0.221, 1.13, -1.9, 1.0]);
        let chain = [function.derivative().derivative(), function.derivative()];
        let turns = chain.iter().fold(Roots::default(), |roots, function| Roots::of(function, &roots, 1.0));
        let level = 2e-4;
        let found = Roots::at_levels(&function, [0.0, level], &turns, 1.0);
        for (roots, level) in found.iter().zip([0.0, level]) {
            assert_eq!(roots.all().len(), 4, "{level}");
            for &x in roots.all() {
                assert!((function.at(x) - level).abs() < 1e-15, "{x} {level}");
            }
        }
    }

    #[test]
    fn finds_a_root_that_free_steps_miss() {
        // x⁴ = 1e-9, begun where all derivatives all but vanish.
        let function = Polynomial([-1e-9, 0.0, 0.0, 0.0, 1.0]);
        let expected = 1e-9_f64.sqrt().sqrt();
        let mut near = [1e-9; LANES];
        function.approach(&mut near, &[0.0; LANES]);
        assert!((near[0] - expected).abs() > 1e-3, "{near:?}");
        let roots = Roots::of(&function, &Roots::default(), 1.0);
        assert_eq!(roots.all().len(), 1);
        assert!((roots.all()[0] - expected).abs() < 1e-12, "{roots:?} {expected}");
    }
}
