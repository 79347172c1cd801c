/// `s_k(x) = Σ κᵐ x²ᵐ⁺ᵏ / (2m+k)!` for k from 0 to 5, where `κ = N/EI`: each is the derivative of the next.
///
/// With κ = 0 these are the powers of the linear theory, else the sines or hyperbolic sines of the beam-column.
pub(super) fn transfer(kappa: f64, x: f64) -> [f64; 6] {
    let square = x * x;
    let (p2, p3, p4, p5) = (square / 2.0, square * x / 6.0, square * square / 24.0, square * square * x / 120.0);
    if kappa == 0.0 {
        return [1.0, x, p2, p3, p4, p5];
    }
    let z = kappa * square;
    let [fourth, fifth] = series(z);
    let (s4, s5) = (p4 * fourth, p5 * fifth);
    let (s2, s3) = (p2 + kappa * s4, p3 + kappa * s5);
    [1.0 + kappa * s2, x + kappa * s3, s2, s3, s4, s5]
}

/// Terms of the series below that leave nothing out up to a size of `NEAR` of its variable.
const TERMS: usize = 16;
const NEAR: f64 = 16.0;

const FOURTH: [f64; TERMS] = terms(4);
const FIFTH: [f64; TERMS] = terms(5);

/// `k! / (2m+k)!` for each m.
const fn terms(k: usize) -> [f64; TERMS] {
    let mut terms = [1.0; TERMS];
    let mut m = 1;
    while m < TERMS {
        terms[m] = terms[m - 1] / ((2 * m + k - 1) * (2 * m + k)) as f64;
        m += 1;
    }
    terms
}

/// `Σ zᵐ k! / (2m+k)!` for k = 4 and k = 5.
fn series(z: f64) -> [f64; 2] {
    if z.abs() <= NEAR {
        return [&FOURTH, &FIFTH].map(|terms| terms.iter().rev().fold(0.0, |sum, term| sum * z + term));
    }
    [4.0, 5.0].map(|k| {
        let (mut sum, mut term, mut n) = (1.0, 1.0, k);
        while n < 400.0 {
            term *= z / ((n + 1.0) * (n + 2.0));
            n += 2.0;
            sum += term;
            if term.abs() <= 1e-3 * f64::EPSILON * f64::abs(sum) {
                break;
            }
        }
        sum
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn transfer_functions_are_those_of_the_beam_column() {
        let (k, x) = (1.3, 2.1);
        let (sine, cosine) = (libm::sin(k * x), libm::cos(k * x));
        let s = transfer(-k * k, x);
        let expected = [cosine, sine / k, (1.0 - cosine) / (k * k), (k * x - sine) / (k * k * k)];
        for (s, expected) in s.iter().zip(expected) {
            assert!((s - expected).abs() < 1e-14, "{s} {expected}");
        }
        let tension = transfer(k * k, x);
        assert!((tension[0] - libm::cosh(k * x)).abs() < 1e-13);
        assert!((tension[1] - libm::sinh(k * x) / k).abs() < 1e-13);
    }

    #[test]
    fn each_transfer_function_is_the_derivative_of_the_next() {
        for kappa in [-4.0, 0.0, 3.0] {
            let (low, mid, high) = (transfer(kappa, 0.999), transfer(kappa, 1.0), transfer(kappa, 1.001));
            for k in 1..6 {
                let slope = (high[k] - low[k]) / 0.002;
                assert!((slope - mid[k - 1]).abs() < 1e-5, "kappa {kappa}, k {k}: {slope} {}", mid[k - 1]);
            }
        }
    }
}
