//! Fewer points that say the same.

use falsewright_core::geometry::{Edge, Point};

/// Most points that a stroke is looked at by.
const MOST_POINTS: f64 = 400.0;

/// Length of a line through all points.
pub fn length(points: &[Point]) -> f64 {
    points.windows(2).map(|pair| (pair[1] - pair[0]).length()).sum()
}

/// The stroke by points equally far apart, about `apart_m`: a pen that rests or hurries counts no more and no less.
pub fn evenly(points: &[Point], apart_m: f64) -> Vec<Point> {
    let whole = length(points);
    let (Some(&first), Some(&last)) = (points.first(), points.last()) else { return Vec::new() };
    let apart = apart_m.max(whole / MOST_POINTS);
    if !apart.is_finite() || apart <= 0.0 || whole <= apart {
        return vec![first, last];
    }
    let mut even = vec![first];
    let mut walked = 0.0;
    for pair in points.windows(2) {
        let step = (pair[1] - pair[0]).length();
        while even.len() as f64 * apart <= walked + step {
            let t = (even.len() as f64 * apart - walked) / step;
            even.push(pair[0].lerp(pair[1], t));
        }
        walked += step;
    }
    even.push(last);
    even
}

/// The points that stand out of the line between their neighbours by more than `tolerance_m`, both ends included, as
/// indices. The algorithm of Ramer (1972) and of Douglas and Peucker (1973).
pub fn outstanding(points: &[Point], tolerance_m: f64) -> Vec<usize> {
    let Some(last) = points.len().checked_sub(1) else { return Vec::new() };
    let mut kept = vec![0];
    let mut open = vec![(0, last)];
    while let Some((from, to)) = open.pop() {
        let chord = Edge::new(points[from], points[to]);
        let off = |i: usize| (chord.nearest(points[i]) - points[i]).length();
        let farthest = (from + 1..to).max_by(|a, b| off(*a).total_cmp(&off(*b)));
        match farthest.filter(|i| off(*i) > tolerance_m) {
            Some(middle) => open.extend([(middle, to), (from, middle)]),
            None if kept.last() != Some(&to) => kept.push(to),
            None => {}
        }
    }
    kept
}

/// The part of a stroke that goes once round and meets itself; none where its ends are further apart than `gap_m`.
pub fn once_round(points: &[Point], gap_m: f64) -> Option<Vec<Point>> {
    let tail = (points.len() / 5).max(1);
    let heads = 0..tail.min(points.len());
    let pairs = heads.flat_map(|i| (points.len().saturating_sub(tail)..points.len()).map(move |j| (i, j)));
    let apart = |pair: &(usize, usize)| (points[pair.0] - points[pair.1]).length();
    let (i, j) = pairs.min_by(|a, b| apart(a).total_cmp(&apart(b)))?;
    (j > i + 2 && apart(&(i, j)) <= gap_m).then(|| points[i..=j].to_vec())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn line(points: &[(f64, f64)]) -> Vec<Point> {
        points.iter().map(|&(x, z)| Point::new(x, z)).collect()
    }

    #[test]
    fn a_pen_at_rest_counts_no_more_than_one_that_moves() {
        let rests = line(&[(0.0, 0.0), (0.0, 0.0), (0.001, 0.0), (0.0, 0.0), (1.0, 0.0), (1.0, 1.0)]);
        let even = evenly(&rests, 0.1);
        assert!(even.windows(2).all(|pair| (pair[1] - pair[0]).length() <= 0.1 + 1e-9), "{even:?}");
        assert_eq!((even[0], *even.last().unwrap()), (rests[0], rests[5]));
        assert_eq!(evenly(&[], 0.1), []);
        assert_eq!(evenly(&line(&[(1.0, 1.0)]), 0.1).len(), 2);
    }

    #[test]
    fn corners_stand_out_and_wobbles_do_not() {
        let bent = line(&[(0.0, 0.0), (1.0, 0.04), (2.0, -0.04), (3.0, 0.0), (3.02, 1.0), (3.0, 2.0)]);
        assert_eq!(outstanding(&bent, 0.1), [0, 3, 5]);
        assert_eq!(outstanding(&bent, 5.0), [0, 5]);
        assert_eq!(outstanding(&[], 0.1), Vec::<usize>::new());
    }

    #[test]
    fn a_ring_drawn_past_its_start_is_cut_where_it_meets_itself() {
        let ring = evenly(&line(&[(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0), (0.0, 0.0), (0.6, 0.05)]), 0.1);
        let once = once_round(&ring, 0.3).unwrap();
        assert!((once[0] - *once.last().unwrap()).length() < 0.1);
        assert!(once.len() < ring.len());
        let open = evenly(&line(&[(0.0, 0.0), (4.0, 0.0), (4.0, 4.0)]), 0.1);
        assert_eq!(once_round(&open, 0.3), None);
    }
}
