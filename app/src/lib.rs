//! The Falsewright page, apart from its start.

pub mod editor;
