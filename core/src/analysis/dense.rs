/// A pivot of which no more than this is left has nothing but rounding.
const LEAST_PIVOT: f64 = 1e-9;

/// A small definite system of equations, factorised. Its diagonal is of the size of 1.
#[derive(Clone, Debug)]
pub(super) struct Dense(Vec<Vec<f64>>);

impl Dense {
    /// Factorises, or gives the first unknown that those before it leave without resistance.
    pub fn factorise(mut rows: Vec<Vec<f64>>) -> Result<Self, usize> {
        for column in 0..rows.len() {
            let (above, below) = rows.split_at_mut(column + 1);
            let pivot = &above[column];
            let strong = pivot[column].abs() > LEAST_PIVOT;
            if !strong {
                return Err(column);
            }
            for row in below {
                let factor = row[column] / pivot[column];
                row[column] = factor;
                for (entry, above) in row[column + 1..].iter_mut().zip(&pivot[column + 1..]) {
                    *entry -= factor * above;
                }
            }
        }
        Ok(Self(rows))
    }

    /// Size of the least pivot: infinite without unknowns.
    pub fn weakest(&self) -> f64 {
        self.0.iter().enumerate().fold(f64::INFINITY, |least, (at, row)| least.min(row[at].abs()))
    }

    pub fn solve(&self, mut x: Vec<f64>) -> Vec<f64> {
        for (at, row) in self.0.iter().enumerate() {
            x[at] -= row[..at].iter().zip(&x).map(|(entry, x)| entry * x).sum::<f64>();
        }
        for (at, row) in self.0.iter().enumerate().rev() {
            let rest: f64 = row[at + 1..].iter().zip(&x[at + 1..]).map(|(entry, x)| entry * x).sum();
            x[at] = (x[at] - rest) / row[at];
        }
        x
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn solves_and_finds_what_is_loose() {
        let rows = vec![vec![4.0, 2.0, 1.0], vec![2.0, 3.0, 0.0], vec![1.0, 0.0, 5.0]];
        let x = Dense::factorise(rows).expect("definite").solve(vec![11.0, 8.0, 16.0]);
        for (x, expected) in x.iter().zip([1.0, 2.0, 3.0]) {
            assert!((x - expected).abs() < 1e-14);
        }
        assert_eq!(Dense::factorise(vec![vec![1.0, 2.0], vec![2.0, 4.0]]).err(), Some(1));
    }
}
