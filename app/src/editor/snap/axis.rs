//! Snapping of one coordinate: places and levels.

use falsewright_core::sorting::sort;

/// A coordinate with what drew it there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stop {
    /// Where it is.
    pub at: f64,
    /// Why there.
    pub why: Why,
}

/// Why a coordinate is where it is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Why {
    /// At that of another point, by its index.
    Aligned(usize),
    /// Equal spacing.
    Equal,
    /// Halfway.
    Halfway,
    /// Grid.
    Grid,
}

/// Stations nearer than this are one, m.
const SAME_M: f64 = 1e-4;

/// Draws a coordinate to those of points within reach, else to an equal spacing with them, else to the grid.
pub fn stop(value: f64, points: &[f64], radius_m: f64, grid_m: f64) -> Stop {
    let off = |at: f64| (at - value).abs();
    let nearest = points.iter().enumerate().min_by(|a, b| off(*a.1).total_cmp(&off(*b.1)));
    if let Some((index, &at)) = nearest.filter(|(_, at)| off(**at) <= radius_m) {
        return Stop { at, why: Why::Aligned(index) };
    }
    let spaced = spaced(value, points).into_iter().filter(|stop| off(stop.at) <= radius_m);
    let grid = Stop { at: (value / grid_m).round() * grid_m, why: Why::Grid };
    spaced.min_by(|a, b| off(a.at).total_cmp(&off(b.at))).unwrap_or(grid)
}

/// Where a coordinate would stand in equal spacing with the stations around it.
fn spaced(value: f64, points: &[f64]) -> Vec<Stop> {
    let mut stations = points.to_vec();
    sort(&mut stations, f64::total_cmp);
    stations.dedup_by(|a, b| (*a - *b).abs() < SAME_M);
    let above = stations.partition_point(|at| *at < value);
    let (lower, upper) = stations.split_at(above);
    let gap = |pair: &[f64]| pair[1] - pair[0];
    let (first, last) = (stations.windows(2).next().map(gap), stations.windows(2).next_back().map(gap));
    let mut found = Vec::new();
    let mut equal = |at: Option<f64>| found.extend(at.map(|at| Stop { at, why: Why::Equal }));
    if let Some(below) = lower.last() {
        equal(lower.windows(2).next_back().map(|pair| below + gap(pair)));
        // As the outermost on the other side: walls of a box.
        equal(first.filter(|_| upper.len() < 2 && lower.len() > 1).map(|gap| below + gap));
        equal(first.zip(upper.first()).filter(|_| upper.len() == 1 && lower.len() > 1).map(|(gap, end)| end - gap));
    }
    if let Some(next) = upper.first() {
        equal(upper.windows(2).next().map(|pair| next - gap(pair)));
        equal(last.filter(|_| lower.len() < 2 && upper.len() > 1).map(|gap| next - gap));
        equal(last.zip(lower.first()).filter(|_| lower.len() == 1 && upper.len() > 1).map(|(gap, end)| end + gap));
    }
    if let (Some(below), Some(next)) = (lower.last(), upper.first()) {
        found.push(Stop { at: (below + next) / 2.0, why: Why::Halfway });
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(value: f64, points: &[f64]) -> (f64, Why) {
        let stop = stop(value, points, 0.1, 0.05);
        ((stop.at * 1e9).round() / 1e9, stop.why)
    }

    #[test]
    fn equal_spacing_comes_after_alignment_and_before_the_grid() {
        assert_eq!(at(1.23, &[0.0, 1.2]), (1.2, Why::Aligned(1)));
        assert_eq!(at(2.47, &[0.0, 1.22]), (2.44, Why::Equal));
        assert_eq!(at(0.66, &[0.0, 1.22]), (0.61, Why::Halfway));
        assert_eq!(at(3.13, &[0.0, 1.22]), (3.15, Why::Grid));
        assert_eq!(at(-1.18, &[0.0, 1.22]), (-1.22, Why::Equal));
        assert_eq!(at(0.52, &[]), (0.5, Why::Grid));
    }

    #[test]
    fn the_far_wall_is_as_thick_as_the_near_one() {
        assert_eq!(at(6.49, &[0.0, 0.43, 6.9]), (6.47, Why::Equal));
        assert_eq!(at(6.91, &[0.0, 0.43, 6.45]), (6.88, Why::Equal));
        assert_eq!(at(0.47, &[0.0, 6.5, 6.93]), (0.43, Why::Equal));
    }
}
