//! Prints the table of `tests/VALIDATION.md`.

fn main() {
    print!("{}", falsewright_tests::validation::markdown(&falsewright_tests::validation::all()));
}
