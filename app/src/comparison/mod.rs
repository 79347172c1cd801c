//! Options of a job beside each other: what each comes to, and how two of them differ. No browser in sight.

mod drawn;
mod figures;
mod print;
mod table;
#[cfg(test)]
mod tests;

pub use drawn::{Difference, DifferenceKind, differences};
pub use figures::KeyFigures;
pub use print::Print;
pub use table::{Group, Row, table};
