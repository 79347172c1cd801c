//! Two options in figures, row by row.

use super::{KeyFigures, Print};
use crate::canvas::paint::{names, tone};
use crate::language::{key, look_up, t, told};
use crate::units::{self, System};
use falsewright_core::model::{Model, Role};
use falsewright_core::scheme::Id;
use std::collections::BTreeMap;

/// Rows under a heading.
#[derive(Clone, Debug, PartialEq)]
pub struct Group {
    /// The heading, to be looked up.
    pub title: &'static str,
    /// What is told.
    pub rows: Vec<Row>,
    /// How many more are the same in both and left out.
    pub same: usize,
}

/// One value of both options.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// What it is.
    pub name: String,
    /// As written, the first option's first.
    pub values: [String; 2],
    /// From the first to the second, of the values as written.
    pub difference: String,
    /// Whether it says that something must not be built so.
    pub fails: [bool; 2],
    /// Words, which have no difference.
    pub words: bool,
}

/// Of no value.
const NONE: &str = "–";

impl Row {
    /// Whether the two are not the same.
    pub fn differs(&self) -> bool {
        self.values[0] != self.values[1]
    }

    fn new(name: String, values: [String; 2], difference: String) -> Self {
        Self { name, values, difference, fails: [false; 2], words: false }
    }

    fn text(name: String, values: [String; 2]) -> Self {
        Self { words: true, ..Self::new(name, values, String::new()) }
    }

    /// Values in a unit of SI; the difference is that of the numbers as they are written.
    fn numbers(name: &str, values: [Option<f64>; 2], si: &'static str, decimals: usize) -> Self {
        let written = values.map(|value| value.map(|value| units::amount_trimmed(value, si, decimals)));
        let read = |text: &Option<String>| text.as_deref().and_then(units::parse);
        let difference = match written.each_ref().map(read) {
            [Some(a), Some(b)] => signed(b - a, &units::trimmed((b - a).abs(), 4)),
            _ => String::new(),
        };
        let name = if si.is_empty() { name.to_owned() } else { format!("{name}, {}", t(units::unit(si))) };
        Self::new(name, written.map(|text| text.unwrap_or(NONE.to_owned())), difference)
    }

    /// Lengths as dimensions say them.
    fn lengths(name: &str, values: [Option<f64>; 2]) -> Self {
        let difference = match values {
            [Some(a), Some(b)] => {
                let whole = |metres: f64| match units::system() {
                    System::Metric => libm::round(metres * 1e3) / 1e3,
                    System::Customary => metres,
                };
                signed(whole(b) - whole(a), &units::dimension((whole(b) - whole(a)).abs()))
            }
            _ => String::new(),
        };
        let written = values.map(|value| value.map_or(NONE.to_owned(), units::dimension));
        let same = written[0] == written[1];
        Self::new(units::of_dimension(name), written, if same { String::new() } else { difference })
    }

    fn ratios(name: String, values: [Option<f64>; 2]) -> Self {
        let hundredths = |value: f64| (value * 100.0).round() / 100.0;
        let difference = match values {
            [Some(a), Some(b)] if a.is_finite() && b.is_finite() => {
                let by = hundredths(b) - hundredths(a);
                signed(by, &units::number(by.abs(), 2))
            }
            _ => String::new(),
        };
        let written = values.map(|value| value.map_or(NONE.to_owned(), tone::printed));
        let fails = values.map(|value| value.is_some_and(tone::exceeds));
        Self { fails, ..Self::new(name, written, difference) }
    }
}

/// With its sign; empty for none.
fn signed(difference: f64, written: &str) -> String {
    let is_none = !written.contains(|digit: char| ('1'..='9').contains(&digit));
    match difference {
        _ if is_none => String::new(),
        by if by > 0.0 => format!("+{written}"),
        _ => format!("−{written}"),
    }
}

/// Key figures, ratios, items and equipment. Of the last three only what differs.
pub fn table(a: &Print, b: &Print) -> Vec<Group> {
    let all = [key_figures(a, b), ratios(a, b), items(a, b), bill(a, b)];
    all.into_iter().filter(|group| group.same + group.rows.len() > 0).collect()
}

fn key_figures(a: &Print, b: &Print) -> Group {
    let of = [KeyFigures::of(&a.worked), KeyFigures::of(&b.worked)];
    let each = |get: fn(&KeyFigures) -> Option<f64>| [get(&of[0]), get(&of[1])];
    let mut worst = Row::ratios(t("Worst ratio").to_owned(), each(|of| of.worst));
    let mut failing = Row::numbers(t("Notes of what must not be built so"), each(|of| Some(of.failing as f64)), "", 0);
    failing.fails = [of[0].failing > 0, of[1].failing > 0];
    for (side, _) in of.iter().enumerate().filter(|(_, figures)| figures.failed) {
        worst.values[side] = format!("▲ {}", t("cannot be computed"));
        worst.fails[side] = true;
    }
    let cost = each(|of| of.cost);
    let mut rows = vec![
        worst,
        Row::text(t("Where").to_owned(), [of[0].place.clone(), of[1].place.clone()]),
        failing,
        Row::lengths(t("Clear width"), each(|of| of.clear_m.map(|[width, _]| width))),
        Row::lengths(t("Clear height"), each(|of| of.clear_m.map(|[_, height]| height))),
        Row::numbers(t("Rise"), each(|of| of.rise_m_h), "m/h", 2),
        Row::numbers(t("Pressure"), each(|of| of.pressure_kpa), "kPa", 1),
        Row::numbers(t("Concrete of a bay"), each(|of| Some(of.concrete_m3)), "m³", 1),
        Row::numbers(t("Weight of equipment"), each(|of| Some(of.equipment.mass_kg)), "kg", 0),
        Row::numbers(t("Pieces to handle"), each(|of| Some(of.equipment.pieces)), "", 0),
    ];
    if cost.iter().any(Option::is_some) {
        rows.push(Row::numbers(t("Cost of all bays"), cost, "", 0));
    }
    Group { title: key("Key figures"), rows, same: 0 }
}

/// Only the rows that differ, with the number of the others.
fn differing(title: &'static str, rows: impl Iterator<Item = Row>) -> Group {
    let mut group = Group { title, rows: Vec::new(), same: 0 };
    for row in rows {
        if row.differs() {
            group.rows.push(row);
        } else {
            group.same += 1;
        }
    }
    group
}

/// What each element is and is called.
fn names_of(model: &Model) -> BTreeMap<Id, (&'static str, String)> {
    let mut all = BTreeMap::new();
    for name in names(model) {
        all.insert(name.id, (name.what, name.label));
    }
    all
}

/// Name and greatest ratio of an element.
type Worst = Option<(String, f64)>;

fn ratios(a: &Print, b: &Print) -> Group {
    let mut of_all: BTreeMap<(Id, &str), [Worst; 2]> = BTreeMap::new();
    for (side, print) in [a, b].into_iter().enumerate() {
        for (id, (what, name)) in names_of(&print.worked.design.model) {
            if let Some(check) = print.worked.design.results.governing_of(id) {
                of_all.entry((id, what)).or_default()[side] = Some((name, check.ratio));
            }
        }
    }
    let rows = of_all.into_values().map(|[a, b]| {
        let name = match (&a, &b) {
            (Some((a, _)), Some((b, _))) if a != b => format!("{a}, {b}"),
            (Some((name, _)), _) | (None, Some((name, _))) => name.clone(),
            (None, None) => String::new(),
        };
        Row::ratios(name, [a, b].map(|side| side.map(|(_, ratio)| ratio)))
    });
    differing(key("Greatest ratios"), rows)
}

fn items(a: &Print, b: &Print) -> Group {
    let mut of_all: BTreeMap<(Id, Role), [String; 3]> = BTreeMap::new();
    for (side, print) in [a, b].into_iter().enumerate() {
        let names = names_of(&print.worked.design.model);
        for part in &print.worked.design.model.parts {
            let row = of_all.entry((part.owner, part.role)).or_default();
            if row[side + 1].is_empty() {
                let item = print.catalogue.get(&part.item).map_or(&*part.item, |item| item.name.as_str());
                look_up(item).unwrap_or(item).clone_into(&mut row[side + 1]);
            }
            if row[0].is_empty() {
                let name = names.get(&part.owner).map_or("", |(_, name)| name.as_str());
                row[0] = format!("{name}, {}", t(part.role.name()));
            }
        }
    }
    // An element that one option has not is told by its ratios and its equipment.
    let in_both = of_all.into_values().filter(|row| !row[1].is_empty() && !row[2].is_empty());
    differing(key("Items"), in_both.map(|[name, a, b]| Row::text(name, [a, b])))
}

/// How many of each item, or what they weigh where as many are of other sizes.
fn bill(a: &Print, b: &Print) -> Group {
    let mut of_all: BTreeMap<(String, &'static str), [[f64; 2]; 2]> = BTreeMap::new();
    for (side, print) in [a, b].into_iter().enumerate() {
        for line in print.worked.design.quantities.iter().filter(|line| line.pieces > 0.0) {
            let [count, mass_kg] = &mut of_all.entry((told(&line.item), line.unit)).or_default()[side];
            *count += line.count;
            *mass_kg += line.mass_kg;
        }
    }
    let rows = of_all.into_iter().map(|((item, unit), of)| {
        let decimals = if unit == "no." { 0 } else { 1 };
        let counts = Row::numbers(&item, of.map(|[count, _]| Some(count)), unit, decimals);
        let masses = || Row::numbers(&item, of.map(|[_, mass_kg]| Some(mass_kg)), "kg", 0);
        if counts.differs() { counts } else { masses() }
    });
    differing(key("Equipment of a bay"), rows)
}
