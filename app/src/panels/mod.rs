//! The margin of the sheet: notes, schedule, title block, and the pens at its foot.

mod catalogue;
mod checks;
mod compare;
mod element;
mod folds;
mod fresh_concrete;
mod hardening;
mod hint;
mod ledger;
mod margin;
mod notes;
mod options;
mod page_settings;
mod pens;
mod presenting;
mod ratio;
mod schedule;
mod site_card;
mod site_loads;
mod skips;
mod speech;
mod spoken;
mod start;
mod steps;
mod title_block;

pub use folds::Folds;
pub use hint::Hint;
pub use margin::Margin;
pub use options::Options;
pub use pens::Pens;
pub use presenting::Presenting;
pub use skips::{Skips, to_next_part};
pub use spoken::Spoken;
pub use start::Start;
pub use title_block::TitleBlock;
