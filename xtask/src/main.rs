//! The commands of the project: `cargo xtask serve`, `test` and `build`.
fn main() {}
