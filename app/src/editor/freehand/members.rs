//! Level, upright and slanting members fitted to a stroke, and the corners where they meet.

use super::simplify::outstanding;
use falsewright_core::geometry::Point;
use falsewright_core::scheme::Cut;

/// A member within this of the level or the plumb was meant so: tan 25°.
const SQUARE_WITHIN: f64 = 0.466;

/// A slanting member whose lesser leg is shorter than this many tolerances is a corner rounded in haste.
const SHORTEST_LEG: f64 = 4.0;
/// Any other shorter than this is a wobble.
const SHORTEST: f64 = 2.0;

/// A slant across a corner is its haunch if it takes no more of either side.
const MOST_OF_SIDE: f64 = 0.4;

/// A straight member.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Member {
    /// At this level.
    Level(f64),
    /// At this place.
    Upright(f64),
    /// Through these points.
    Slant(Point, Point),
}

impl Member {
    fn of_same_kind(&self, other: &Self) -> bool {
        std::mem::discriminant(self) == std::mem::discriminant(other)
    }

    /// Where it meets another; none where they run alike.
    fn meets(&self, other: &Self) -> Option<Point> {
        let line = |member: &Self| match *member {
            Self::Level(z) => (Point::new(0.0, z), Point::new(1.0, 0.0)),
            Self::Upright(x) => (Point::new(x, 0.0), Point::new(0.0, 1.0)),
            Self::Slant(from, to) => (from, (to - from).unit()),
        };
        let ((p, u), (q, v)) = (line(self), line(other));
        let turn = u.cross(v);
        (turn.abs() > 0.15).then(|| p + u * ((q - p).cross(v) / turn))
    }
}

/// A corner with its haunch or chamfer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bend {
    /// Where it is.
    pub at: Point,
    /// What is cut off there.
    pub cut: Option<Cut>,
}

/// Members that follow on each other.
#[derive(Clone, Debug, PartialEq)]
pub struct Members {
    /// In the order drawn.
    pub list: Vec<Member>,
    /// Where the pen turned from each to the next, and the two ends of an open stroke.
    turns: Vec<Point>,
    closed: bool,
}

impl Members {
    /// Fits members to points equally far apart; a closed stroke ends where it starts.
    pub fn fit(points: &[Point], closed: bool, tolerance_m: f64) -> Self {
        let points = if closed { from_corner(points) } else { points.to_vec() };
        let kept = outstanding(&points, tolerance_m);
        let runs = kept.windows(2).map(|ends| points[ends[0]..=ends[1]].to_vec()).collect();
        let runs = reduced(runs, closed, tolerance_m);
        let mut turns: Vec<Point> = runs.iter().filter_map(|run| run.first().copied()).collect();
        turns.extend(runs.last().and_then(|run| run.last().copied()).filter(|_| !closed));
        Self { list: runs.iter().map(|run| fitted(run)).collect(), turns, closed }
    }

    /// Lets the first member of an open stroke go through a point.
    pub fn start_at(&mut self, at: Point) {
        match self.list.first_mut() {
            Some(Member::Level(z)) => *z = at.z,
            Some(Member::Upright(x)) => *x = at.x,
            Some(Member::Slant(from, _)) => *from = at,
            None => {}
        }
        if let Some(first) = self.turns.first_mut() {
            *first = at;
        }
    }

    /// The corners once round, or from end to end.
    pub fn points(&self) -> Vec<Point> {
        let count = self.list.len();
        let turn = |i: usize| {
            let before = if i > 0 { i - 1 } else { count - 1 };
            self.list[before].meets(&self.list[i]).unwrap_or(self.turns[i])
        };
        if self.closed {
            return (0..count).map(turn).collect();
        }
        let on = |member: &Member, p: Point| match *member {
            Member::Level(z) => Point::new(p.x, z),
            Member::Upright(x) => Point::new(x, p.z),
            Member::Slant(..) => p,
        };
        let first = self.list.first().map(|member| on(member, self.turns[0]));
        let last = self.list.last().map(|member| on(member, self.turns[count]));
        first.into_iter().chain((1..count).map(turn)).chain(last).collect()
    }

    /// The corners once round, slants across them as haunches.
    pub fn bends(&self) -> Vec<Bend> {
        let points = self.points();
        let count = self.list.len();
        let mut bends = Vec::new();
        let across = |i: usize| self.haunch(&points, i % count);
        for (i, at) in points.iter().enumerate() {
            // A member ends in the corner that it shares with the next; a haunch is that corner.
            match (across(i), across(i + count - 1)) {
                (Some(bend), _) => bends.push(bend),
                (None, Some(_)) => {}
                (None, None) => bends.push(Bend { at: *at, cut: None }),
            }
        }
        bends
    }

    fn haunch(&self, points: &[Point], i: usize) -> Option<Bend> {
        let count = self.list.len();
        if count < 5 || !matches!(self.list[i], Member::Slant(..)) {
            return None;
        }
        let (before, after) = (self.list[(i + count - 1) % count], self.list[(i + 1) % count]);
        let square = |a: &Member| !matches!(a, Member::Slant(..));
        if !square(&before) || !square(&after) || before.of_same_kind(&after) {
            return None;
        }
        let at = before.meets(&after)?;
        let [start, from, to, end] = [count - 1, 0, 1, 2].map(|step| points[(i + step) % count]);
        let (before_m, after_m) = ((at - from).length(), (to - at).length());
        let onward = (from - start).dot(at - from) > 0.0 && (to - at).dot(end - to) > 0.0;
        let small = before_m <= MOST_OF_SIDE * (at - start).length() && after_m <= MOST_OF_SIDE * (end - at).length();
        (onward && small).then_some(Bend { at, cut: Some(Cut { before_m, after_m }) })
    }
}

/// The ring from its corner farthest from the middle, back to it.
fn from_corner(points: &[Point]) -> Vec<Point> {
    let ring = &points[..points.len().saturating_sub(1)];
    let middle = ring.iter().fold(Point::default(), |sum, p| sum + *p) * (1.0 / ring.len().max(1) as f64);
    let off = |i: &usize| (ring[*i] - middle).length();
    let start = (0..ring.len()).max_by(|a, b| off(a).total_cmp(&off(b))).unwrap_or(0);
    ring[start..].iter().chain(&ring[..start]).chain(ring.get(start)).copied().collect()
}

fn chord(run: &[Point]) -> Point {
    match (run.first(), run.last()) {
        (Some(&first), Some(&last)) => last - first,
        _ => Point::default(),
    }
}

/// What a run of points was meant to be, its place the mean of its middle, where no corner rounds it off.
fn fitted(run: &[Point]) -> Member {
    let along = chord(run);
    let middle = &run[run.len() / 5..(run.len() - run.len() / 5).max(run.len() / 5 + 1).min(run.len())];
    let mean = |of: fn(&Point) -> f64| middle.iter().map(of).sum::<f64>() / middle.len().max(1) as f64;
    if along.z.abs() <= SQUARE_WITHIN * along.x.abs() {
        Member::Level(mean(|p| p.z))
    } else if along.x.abs() <= SQUARE_WITHIN * along.z.abs() {
        Member::Upright(mean(|p| p.x))
    } else {
        // The line that lies nearest to its middle, as long as the run.
        let (x_m, z_m) = (mean(|p| p.x), mean(|p| p.z));
        let off = |p: &Point| (p.x - x_m, p.z - z_m);
        let sums = middle.iter().map(off).fold([0.0, 0.0], |[m, n], (x, z)| [m + x * x - z * z, n + 2.0 * x * z]);
        let turn = libm::atan2(sums[1], sums[0]) / 2.0;
        let way = Point::new(libm::cos(turn), libm::sin(turn));
        let on = |p: Point| Point::new(x_m, z_m) + way * (p - Point::new(x_m, z_m)).dot(way);
        Member::Slant(on(run[0]), on(run[run.len() - 1]))
    }
}

/// Joins runs that are one member, and leaves out those too short to be meant.
fn reduced(mut runs: Vec<Vec<Point>>, closed: bool, tolerance_m: f64) -> Vec<Vec<Point>> {
    let least = if closed { 3 } else { 1 };
    while runs.len() > least {
        let count = runs.len();
        let pairs = if closed { count } else { count - 1 };
        let same = (0..pairs).find(|&i| one_member(&runs[i], &runs[(i + 1) % count]));
        if let Some(i) = same {
            let next = runs[(i + 1) % count].clone();
            runs[i].extend(next);
            runs.remove((i + 1) % count);
            continue;
        }
        let size = |i: &usize| size(&runs[*i]);
        match (0..count).min_by(|a, b| size(a).total_cmp(&size(b))).filter(|i| size(i) < tolerance_m) {
            Some(i) => runs.remove(i),
            None => break,
        };
    }
    runs
}

/// Size in tolerances that would just do.
fn size(run: &[Point]) -> f64 {
    let along = chord(run);
    match fitted(run) {
        Member::Slant(..) => along.x.abs().min(along.z.abs()) / SHORTEST_LEG,
        _ => along.length() / SHORTEST,
    }
}

fn one_member(a: &[Point], b: &[Point]) -> bool {
    let (first, second) = (fitted(a), fitted(b));
    let straight = || chord(a).unit().dot(chord(b).unit()) > 0.94;
    first.of_same_kind(&second) && (!matches!(first, Member::Slant(..)) || straight())
}
