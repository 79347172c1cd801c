use std::fmt;
use std::ops::AddAssign;

/// How many tests passed and failed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Tally {
    pub passed: u64,
    pub failed: u64,
}

impl Tally {
    /// A step that is one test in itself.
    pub fn one(succeeded: bool) -> Self {
        Self { passed: u64::from(succeeded), failed: u64::from(!succeeded) }
    }

    /// Reads one line of a test runner: Rust's `test result:` or the totals of Node's.
    pub fn of_line(line: &str) -> Self {
        let line = line.trim();
        if let Some(result) = line.strip_prefix("test result: ") {
            let count = |word: &str| {
                let before = result.split(['.', ';']).find_map(|part| part.trim().strip_suffix(word));
                before.and_then(|number| number.trim().parse().ok()).unwrap_or(0)
            };
            return Self { passed: count("passed"), failed: count("failed") };
        }
        let Some(total) = line.strip_prefix("ℹ ").or(line.strip_prefix("# ")) else { return Self::default() };
        match total.split_once(' ').map(|(what, number)| (what, number.parse())) {
            Some(("pass", Ok(passed))) => Self { passed, failed: 0 },
            Some(("fail" | "cancelled", Ok(failed))) => Self { passed: 0, failed },
            _ => Self::default(),
        }
    }

    /// What a runner that ended thus must be counted as: one that failed to build or crashed, or ran no test at all,
    /// has failed even if no test says so.
    pub fn judged(self, succeeded: bool) -> Self {
        let silent = if succeeded { self.passed == 0 } else { self.failed == 0 };
        Self { failed: self.failed + u64::from(silent), ..self }
    }
}

impl AddAssign for Tally {
    fn add_assign(&mut self, other: Self) {
        self.passed += other.passed;
        self.failed += other.failed;
    }
}

impl fmt::Display for Tally {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} passed, {} failed", self.passed, self.failed)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn tally(passed: u64, failed: u64) -> Tally {
        Tally { passed, failed }
    }

    fn read(output: &str) -> Tally {
        let mut sum = Tally::default();
        output.lines().for_each(|line| sum += Tally::of_line(line));
        sum
    }

    #[test]
    fn rust_results_are_summed() {
        let output = "running 2 tests\ntest a ... ok\n\
                      test result: ok. 5 passed; 0 failed; 1 ignored; 0 measured; 0 filtered out; finished in 0.01s\n\
                      test result: FAILED. 12 passed; 3 failed; 0 ignored; 0 measured; 0 filtered out; finished in 2.4s\n";
        assert_eq!(read(output), tally(17, 3));
    }

    #[test]
    fn node_totals_are_read_in_both_reports() {
        assert_eq!(read("ℹ tests 4\nℹ pass 3\nℹ fail 1\nℹ cancelled 0\nℹ skipped 0"), tally(3, 1));
        assert_eq!(read("# tests 4\n# pass 2\n# fail 1\n# cancelled 1\n# todo 0"), tally(2, 2));
    }

    #[test]
    fn talk_of_passing_counts_for_nothing() {
        assert_eq!(read("5 passed; 0 failed\n# passing 3\nnote: pass 4\nℹ pass many"), tally(0, 0));
    }

    #[test]
    fn silence_is_failure() {
        assert_eq!(tally(0, 0).judged(true), tally(0, 1));
        assert_eq!(tally(4, 0).judged(false), tally(4, 1));
        assert_eq!(tally(4, 2).judged(false), tally(4, 2));
        assert_eq!(tally(4, 0).judged(true), tally(4, 0));
    }
}
