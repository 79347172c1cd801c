//! Continuous beams on rigid supports by the theorem of three moments, apart from the frame solver of the core.

/// Steps of Simpson's rule over a span.
const STEPS: usize = 4000;

/// A beam of constant stiffness on supports in rising order, with overhangs up to its ends. Loads act downward.
#[derive(Clone, Debug, Default)]
pub struct Beam {
    /// Left and right end.
    pub ends: [f64; 2],
    /// Places of the supports, at least two.
    pub supports: Vec<f64>,
    /// Place and force of each point load.
    pub points: Vec<(f64, f64)>,
    /// Each load that changes linearly: from, to, and its value at both.
    pub lines: Vec<[f64; 4]>,
}

/// What the supports bear.
#[derive(Clone, Debug)]
pub struct Solved {
    /// Moment over each support, sagging positive, kNm.
    pub moments: Vec<f64>,
    /// Of each support, upward, kN.
    pub reactions: Vec<f64>,
}

impl Beam {
    /// Under one load all along.
    pub fn uniform(ends: [f64; 2], supports: &[f64], w: f64) -> Self {
        Self { ends, supports: supports.to_vec(), lines: vec![[ends[0], ends[1], w, w]], ..Self::default() }
    }

    /// Load strictly between two places, and its moment about the first.
    fn part(&self, from: f64, to: f64) -> (f64, f64) {
        let mut sum = (0.0, 0.0);
        for &(a, p) in self.points.iter().filter(|(a, _)| *a > from + 1e-9 && *a < to - 1e-9) {
            sum = (sum.0 + p, sum.1 + p * (a - from));
        }
        for &[a, b, wa, wb] in &self.lines {
            let (left, right) = (a.max(from), b.min(to));
            if right > left {
                let w = |x: f64| wa + (wb - wa) * (x - a) / (b - a);
                let (length, wl, wr) = (right - left, w(left), w(right));
                let load = length * (wl + wr) / 2.0;
                sum = (sum.0 + load, sum.1 + load * (left - from) + length * length * (wl + 2.0 * wr) / 6.0);
            }
        }
        sum
    }

    /// Reaction at the left of a simple span.
    fn simple_left(&self, a: f64, b: f64) -> f64 {
        let (load, moment) = self.part(a, b);
        load - moment / (b - a)
    }

    /// Moment in a simple span.
    fn simple_moment(&self, a: f64, b: f64, x: f64) -> f64 {
        let (load, moment) = self.part(a, x);
        self.simple_left(a, b) * (x - a) - load * (x - a) + moment
    }

    /// `∫ M₀ · arm / L` over a simple span, the arm measured from its left or its right.
    fn turned(&self, a: f64, b: f64, from_left: bool) -> f64 {
        let step = (b - a) / STEPS as f64;
        let value = |i: usize| {
            let x = a + step * i as f64;
            self.simple_moment(a, b, x) * if from_left { x - a } else { b - x } / (b - a)
        };
        let inner: f64 = (1..STEPS).map(|i| value(i) * if i % 2 == 1 { 4.0 } else { 2.0 }).sum();
        (value(0) + inner + value(STEPS)) * step / 3.0
    }

    /// Moments from the slope that neighbouring spans share over each inner support, then reactions by statics.
    pub fn solve(&self) -> Solved {
        let s = &self.supports;
        let last = s.len() - 1;
        let mut moments = vec![0.0; s.len()];
        let (left, right) = (self.part(self.ends[0] - 1.0, s[0]), self.part(s[last], self.ends[1] + 1.0));
        moments[0] = left.1 - left.0 * (s[0] - self.ends[0] + 1.0);
        moments[last] = -right.1;
        let mut rows = vec![vec![0.0; last]; last - 1];
        for i in 1..last {
            let (before, after) = (s[i] - s[i - 1], s[i + 1] - s[i]);
            let row = &mut rows[i - 1];
            row[last - 1] = -self.turned(s[i - 1], s[i], true) - self.turned(s[i], s[i + 1], false);
            for (j, factor) in [(i - 1, before / 6.0), (i, (before + after) / 3.0), (i + 1, after / 6.0)] {
                if j == 0 || j == last {
                    row[last - 1] -= factor * moments[j];
                } else {
                    row[j - 1] = factor;
                }
            }
        }
        moments[1..last].copy_from_slice(&eliminate(rows));

        let mut reactions: Vec<f64> = s.iter().map(|place| self.points_at(*place)).collect();
        reactions[0] += left.0;
        reactions[last] += right.0;
        for i in 0..last {
            let shear = (moments[i + 1] - moments[i]) / (s[i + 1] - s[i]);
            let simple = self.simple_left(s[i], s[i + 1]);
            reactions[i] += simple + shear;
            reactions[i + 1] += self.part(s[i], s[i + 1]).0 - simple - shear;
        }
        Solved { moments, reactions }
    }

    /// The same beam where supports can only push: the one that pulls hardest goes first.
    pub fn resting(&self) -> Self {
        let mut beam = self.clone();
        loop {
            let reactions = beam.solve().reactions;
            let least = (0..reactions.len()).min_by(|&a, &b| reactions[a].total_cmp(&reactions[b]));
            match least {
                Some(least) if reactions[least] < -1e-9 && reactions.len() > 2 => drop(beam.supports.remove(least)),
                _ => return beam,
            }
        }
    }

    /// Reaction of the support at a place; nothing where there is none.
    pub fn reaction_at(&self, place: f64) -> f64 {
        let index = self.supports.iter().position(|support| (support - place).abs() < 1e-9);
        index.map_or(0.0, |index| self.solve().reactions[index])
    }

    /// EI times the deflection in the middle of a span from its chord, by virtual work.
    pub fn sag(&self, from: f64, to: f64) -> f64 {
        let moments = self.solve().moments;
        let over = |place: f64| self.supports.iter().position(|s| (s - place).abs() < 1e-9).map(|i| moments[i]);
        let (Some(left), Some(right)) = (over(from), over(to)) else { return f64::NAN };
        let step = (to - from) / STEPS as f64;
        (0..STEPS)
            .map(|i| {
                let x = (i as f64 + 0.5) * step;
                let moment = left + (right - left) * x / (to - from) + self.simple_moment(from, to, from + x);
                moment * x.min(to - from - x) / 2.0 * step
            })
            .sum()
    }

    /// Greatest moment of either sign, over supports and at 1000 places of each span.
    pub fn greatest_moment(&self) -> f64 {
        let Solved { moments, .. } = self.solve();
        let spans = self.supports.windows(2).zip(moments.windows(2)).flat_map(|(place, moment)| {
            (0..=1000).map(move |i| {
                let part = f64::from(i) / 1000.0;
                let x = place[0] + part * (place[1] - place[0]);
                moment[0] + part * (moment[1] - moment[0]) + self.simple_moment(place[0], place[1], x)
            })
        });
        spans.fold(0.0, |most, moment| most.max(moment.abs()))
    }

    fn points_at(&self, place: f64) -> f64 {
        self.points.iter().filter(|(a, _)| (a - place).abs() <= 1e-9).map(|(_, p)| p).sum()
    }
}

/// Solves equations by Gauss's elimination; the last column holds the constants.
fn eliminate(mut rows: Vec<Vec<f64>>) -> Vec<f64> {
    let n = rows.len();
    for column in 0..n {
        let top = rows[column].clone();
        for row in &mut rows[column + 1..] {
            let factor = row[column] / top[column];
            row.iter_mut().zip(&top).for_each(|(value, above)| *value -= factor * above);
        }
    }
    let mut solution = vec![0.0; n];
    for i in (0..n).rev() {
        let known: f64 = (i + 1..n).map(|j| rows[i][j] * solution[j]).sum();
        solution[i] = (rows[i][n] - known) / rows[i][i];
    }
    solution
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assert_close;

    /// Equal spans under uniform load, from the theorem: 2, 3 and 4 spans of the tables in any beam handbook.
    #[test]
    fn equal_spans() {
        let reactions = |spans: u32| {
            let supports: Vec<f64> = (0..=spans).map(f64::from).collect();
            Beam::uniform([0.0, f64::from(spans)], &supports, 1.0).solve().reactions
        };
        for (spans, expected) in [(2, [0.375, 1.25]), (3, [0.4, 1.1]), (4, [11.0 / 28.0, 8.0 / 7.0])] {
            for (actual, expected) in reactions(spans).iter().zip(expected) {
                assert_close("reaction / wL", *actual, expected, 1e-9);
            }
        }
    }

    /// A span of 1.5 m under 30 kN/m with one overhang of 0.5 m: reactions 20 and 40 kN by statics.
    #[test]
    fn overhang_and_point_load() {
        let solved = Beam::uniform([0.0, 2.0], &[0.0, 1.5], 30.0).solve();
        assert_close("left", solved.reactions[0], 20.0, 1e-12);
        assert_close("right", solved.reactions[1], 40.0, 1e-12);
        let central = Beam {
            ends: [0.0, 2.0],
            supports: vec![0.0, 1.0, 2.0],
            points: vec![(0.5, 16.0), (1.5, 16.0)],
            lines: vec![],
        };
        assert_close("3 P L / 16", -central.solve().moments[1], 3.0, 1e-6);
        assert_close("11 P / 8", central.solve().reactions[1], 22.0, 1e-6);
    }
}
