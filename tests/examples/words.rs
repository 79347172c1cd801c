//! Prints every text of the page as a file of words.

fn main() {
    println!("{}", falsewright_tests::words::file());
}
