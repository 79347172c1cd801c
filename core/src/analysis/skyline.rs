/// A pivot below this part of its diagonal has nothing left but rounding.
const WEAK_PIVOT: f64 = 1e-11;

/// A pivot below this part of its diagonal may be nothing but rounding.
const DOUBTFUL_PIVOT: f64 = 1e-7;

/// Products of fewer are summed up one after another.
const FEW: usize = 8;

/// What stands for a pivot of exactly 0, by its diagonal: small, yet it leaves figures enough in the rows below.
const LEAST_PIVOT: f64 = 1e-12;

/// A symmetric matrix that keeps of each row what lies between its first entry and its diagonal.
///
/// Once factorised it holds L and 1 / D of `L·D·Lᵀ`. Source: A. George, J. W. H. Liu, *Computer Solution of Large Sparse
/// Positive Definite Systems*, 1981, section 4.4 (envelope method).
///
/// Measured against faer 0.24, a general sparse Cholesky, on the matrices of the benchmark's bents, factorising and
/// solving, in µs, native (in WebAssembly under Node): 50 legs 8 (12), faer 44 (50), with its order known 20 (18);
/// 200 legs 25 (20), faer 159 (198), 59 (72); 1000 legs 118 (105), faer 727 (819), 329 (313). These frames are long and
/// narrow: few entries of their rows are zeros, and short rows in order cost less than finding and following a pattern.
#[derive(Clone, Debug, Default)]
pub(super) struct Skyline {
    /// First column of each row.
    first: Vec<usize>,
    /// Where each row begins in `lower`; one more than there are rows.
    starts: Vec<usize>,
    lower: Vec<f64>,
    diagonal: Vec<f64>,
    /// 1 / D.
    inverse: Vec<f64>,
    /// First row whose pivot is weak.
    weak: Option<usize>,
    /// Rows whose pivots may be, with these.
    doubtful: Vec<(usize, f64)>,
}

impl Skyline {
    /// A matrix of zeros with room for row `i` from column `first[i]` on.
    pub fn new(first: Vec<usize>) -> Self {
        let mut starts = Vec::with_capacity(first.len() + 1);
        let mut end = 0;
        starts.push(0);
        for (row, &first) in first.iter().enumerate() {
            end += row - first;
            starts.push(end);
        }
        let size = first.len();
        let zeros = || vec![0.0; size];
        Self {
            first,
            starts,
            lower: vec![0.0; end],
            diagonal: zeros(),
            inverse: zeros(),
            weak: None,
            doubtful: Vec::new(),
        }
    }

    pub fn size(&self) -> usize {
        self.first.len()
    }

    pub fn clear(&mut self) {
        self.lower.fill(0.0);
        self.diagonal.fill(0.0);
    }

    /// Adds a symmetric part. A row that the matrix does not have is left out.
    pub fn add<const N: usize>(&mut self, rows: &[usize; N], part: &[[f64; N]; N]) {
        for (k, (&row, values)) in rows.iter().zip(part).enumerate() {
            let Some(diagonal) = self.diagonal.get_mut(row) else { continue };
            *diagonal += values[k];
            let end = self.starts[row + 1];
            for (&column, value) in rows.iter().zip(values) {
                if column < row {
                    self.lower[end - (row - column)] += value;
                }
            }
        }
    }

    /// Factorises in place and returns the number of negative pivots.
    pub fn factorise(&mut self) -> usize {
        let mut negative = 0;
        (self.weak, self.doubtful) = (None, Vec::new());
        for i in 0..self.size() {
            let first = self.first[i];
            let (above, rest) = self.lower.split_at_mut(self.starts[i]);
            let row = &mut rest[..i - first];

            for (j, ends) in self.starts[first..=i].windows(2).enumerate() {
                let (before, rest) = row.split_at_mut(j);
                rest[0] -= dot_of_ends(before, &above[ends[0]..ends[1]]);
            }
            let diagonal = self.diagonal[i];
            let mut pivot = diagonal;
            for (entry, inverse) in row.iter_mut().zip(&self.inverse[first..i]) {
                let scaled = *entry * inverse;
                pivot -= *entry * scaled;
                *entry = scaled;
            }
            if pivot == 0.0 {
                pivot = -LEAST_PIVOT * diagonal.abs().max(1.0);
            }
            negative += usize::from(pivot < 0.0);
            self.inverse[i] = 1.0 / pivot;
            // Written so that a pivot that is not a number is weak.
            let exceeds = |part: f64| pivot > part * diagonal && diagonal > 0.0;
            if !exceeds(DOUBTFUL_PIVOT) {
                if exceeds(WEAK_PIVOT) {
                    self.doubtful.push((i, pivot));
                } else if self.weak.is_none() {
                    self.weak = Some(i);
                }
            }
        }
        negative
    }

    /// First row whose pivot has nothing left of its diagonal but rounding.
    pub fn weak_pivot(&self) -> Option<usize> {
        self.weak
    }

    /// Rows whose pivots may be nothing but rounding, with these: each is the work of that row's [`Self::soft_movement`].
    pub fn doubtful_pivots(&self) -> &[(usize, f64)] {
        &self.doubtful
    }

    /// The movement, 1 in `row` and nothing after it, that the rows up to there hardly resist.
    pub fn soft_movement(&self, row: usize) -> Vec<f64> {
        let mut movement = vec![0.0; self.size()];
        movement[row] = 1.0;
        self.substitute_back(&mut movement, row + 1);
        movement
    }

    /// Replaces the right-hand side by the solution.
    pub fn solve(&self, x: &mut [f64]) {
        for i in 0..self.size() {
            let row = &self.lower[self.starts[i]..self.starts[i + 1]];
            x[i] -= dot_of_ends(row, &x[self.first[i]..i]);
        }
        for (x, inverse) in x.iter_mut().zip(&self.inverse) {
            *x *= inverse;
        }
        self.substitute_back(x, self.size());
    }

    fn substitute_back(&self, x: &mut [f64], rows: usize) {
        for i in (0..rows).rev() {
            let value = x[i];
            let row = &self.lower[self.starts[i]..self.starts[i + 1]];
            for (x, entry) in x[self.first[i]..i].iter_mut().zip(row) {
                *x -= entry * value;
            }
        }
    }
}

/// Product of what both have in common at their ends.
#[inline]
fn dot_of_ends(a: &[f64], b: &[f64]) -> f64 {
    let common = a.len().min(b.len());
    let (a, b) = (&a[a.len() - common..], &b[b.len() - common..]);
    if common < FEW { a.iter().zip(b).fold(0.0, |sum, (a, b)| sum + a * b) } else { dot_of_many(a, b) }
}

/// In four sums, none of which waits for another.
fn dot_of_many(a: &[f64], b: &[f64]) -> f64 {
    let (fours_a, fours_b) = (a.chunks_exact(4), b.chunks_exact(4));
    let rest = fours_a.remainder().iter().zip(fours_b.remainder());
    let rest = rest.fold(0.0, |sum, (a, b)| sum + a * b);
    let mut sums = [0.0; 4];
    for (a, b) in fours_a.zip(fours_b) {
        for (sum, (a, b)) in sums.iter_mut().zip(a.iter().zip(b)) {
            *sum += a * b;
        }
    }
    (sums[0] + sums[1]) + (sums[2] + sums[3]) + rest
}

#[cfg(test)]
mod tests {
    use super::*;

    fn add(matrix: &mut Skyline, row: usize, column: usize, value: f64) {
        if row == column {
            matrix.add(&[row], &[[value]]);
        } else {
            matrix.add(&[row, column], &[[0.0, value], [value, 0.0]]);
        }
    }

    fn example(corner: f64) -> Skyline {
        let mut matrix = Skyline::new(vec![0, 0, 1, 0]);
        for (row, column, value) in
            [(0, 0, 4.0), (1, 0, 1.0), (1, 1, 3.0), (2, 1, -1.0), (2, 2, 5.0), (0, 3, 2.0), (3, 3, corner)]
        {
            add(&mut matrix, row, column, value);
        }
        matrix
    }

    #[test]
    fn solves_a_matrix_with_a_gap() {
        let mut matrix = example(6.0);
        assert_eq!(matrix.factorise(), 0);
        // The product of the matrix with (1, -2, 3, 0.5).
        let mut x = [3.0, -8.0, 17.0, 5.0];
        matrix.solve(&mut x);
        for (x, expected) in x.iter().zip([1.0, -2.0, 3.0, 0.5]) {
            assert!((x - expected).abs() < 1e-14, "{x} {expected}");
        }
    }

    #[test]
    fn counts_negative_eigenvalues() {
        // With the corner at -6 one eigenvalue turns negative.
        assert_eq!(example(-6.0).factorise(), 1);
    }

    #[test]
    fn counts_past_a_pivot_of_nothing() {
        let mut matrix = Skyline::new(vec![0, 0, 0]);
        for (row, column) in [(1, 0), (2, 0), (2, 1)] {
            add(&mut matrix, row, column, 1.0);
        }
        // Its eigenvalues are -1, -1 and 2.
        assert_eq!(matrix.factorise(), 2);
    }

    #[test]
    fn finds_the_weak_pivot_and_its_movement() {
        let mut matrix = Skyline::new(vec![0, 0]);
        for (row, column, value) in [(0, 0, 2.0), (1, 0, -2.0), (1, 1, 2.0)] {
            add(&mut matrix, row, column, value);
        }
        matrix.factorise();
        assert_eq!(matrix.weak_pivot(), Some(1));
        assert_eq!(matrix.soft_movement(1), [1.0, 1.0]);
    }
}
