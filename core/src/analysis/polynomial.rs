/// Polynomial of the fourth degree, from its constant term up.
#[derive(Clone, Copy, Debug)]
pub(super) struct Polynomial(pub [f64; 5]);

impl Polynomial {
    pub fn derivative(&self) -> Self {
        let [_, b, c, d, e] = self.0;
        Self([b, 2.0 * c, 3.0 * d, 4.0 * e, 0.0])
    }

    #[inline]
    fn at(&self, x: f64) -> f64 {
        let [a, b, c, d, e] = self.0;
        a + x * (b + x * (c + x * (d + x * e)))
    }
}

/// Most places: each of five functions of the second to fourth degree adds no more than its degree.
const MOST: usize = 24;

/// Places in order, between which the functions put in so far only rise or only fall.
pub(super) struct Breaks {
    places: [f64; MOST],
    count: usize,
}

impl Breaks {
    pub fn new(length: f64) -> Self {
        let mut places = [0.0; MOST];
        places[1] = length;
        Self { places, count: 2 }
    }

    pub fn places(&self) -> &[f64] {
        &self.places[..self.count]
    }

    /// Adds the roots of a function of which those of the derivative are in.
    #[inline]
    pub fn add_roots(&mut self, function: &Polynomial) {
        let mut found = [0.0; MOST];
        let mut count = 0;
        let derivative = function.derivative();
        let mut before = (0.0, 0.0);
        for &to in &self.places[..self.count] {
            let here = function.at(to);
            if before.1 * here < 0.0 && count + 2 < MOST {
                found[count] = root(before.0, to, before.1, here, |x| (function.at(x), derivative.at(x)));
                count += 1;
            }
            if count < MOST {
                found[count] = to;
                count += 1;
            }
            before = (to, here);
        }
        (self.places, self.count) = (found, count);
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
        let function = Polynomial([0.0126, -0.221, 1.07, -1.9, 1.0]);
        let mut breaks = Breaks::new(1.0);
        let mut chain = vec![function];
        (0..3).for_each(|n| chain.push(chain[n].derivative()));
        chain.iter().rev().for_each(|function| breaks.add_roots(function));
        for expected in [0.1, 0.2, 0.7, 0.9] {
            assert!(breaks.places().iter().any(|x| (x - expected).abs() < 1e-13), "{expected}: {:?}", breaks.places());
        }
        assert_eq!(breaks.places().len(), 2 + 1 + 2 + 3 + 4);
    }
}
