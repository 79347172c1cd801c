//! Resistances against published and hand-worked values, and what every resistance must obey.

mod formulas;
mod lateral_torsional;
mod monotonic;
mod path;
mod properties;
mod steel;
mod timber_and_ground;
