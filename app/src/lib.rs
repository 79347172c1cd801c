//! The Falsewright page: an editor without a browser, and the Leptos views around it.

#[macro_use]
mod language;

pub mod editor;

mod app;
mod canvas;
mod comparison;
mod memo;
mod panels;
mod persistence;
mod store;
mod units;
mod warming;
mod widgets;
mod worked;

pub use app::start;
