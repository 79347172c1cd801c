//! The bill of quantities, counted from the placed parts.

mod cutting;
mod reuse;

pub use cutting::{CutList, cut_lists};
pub use reuse::{Cost, Reuse, reuse};

use crate::actions::KN_PER_KG;
use crate::catalogue::{Catalogue, Item, Kind, Origin, STEEL_KG_M3};
use crate::checks::handling::{Lifter, Zone, guideline_kg};
use crate::model::{Model, Part, PlacedJacks, PlacedShutter, PlacedTieRow, Role, Solid};
use crate::scheme::{HeldBy, Id};
use crate::sentence::{Sentence, item as named, length as metres, length_mm, number, word};
use serde::Serialize;
use std::collections::BTreeMap;
use std::f64::consts::PI;
use std::rc::Rc;
use std::sync::Arc;

/// One line of the bill.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Quantity {
    /// Mark on the drawing, such as `S1`; empty for totals.
    pub mark: String,
    /// The element counted; none for totals.
    #[serde(skip)]
    pub owner: Option<Id>,
    /// What it is, in words.
    pub item: Sentence,
    /// Such as `4.250 m` or `2.44 × 1.22 m`.
    pub size: Sentence,
    /// How many `unit`s.
    pub count: f64,
    /// `no.`, `m²`, `m³`, `kg`.
    pub unit: &'static str,
    /// Separate things to handle: members, sheets of board, and what goes with them. None for totals and concrete.
    pub pieces: f64,
    /// Mass of all of them.
    pub mass_kg: f64,
}

impl Quantity {
    /// What each of its pieces weighs, kg; none of what is not handled, or of which no weight is known.
    pub fn piece_kg(&self) -> Option<f64> {
        (self.pieces > 0.0 && self.mass_kg > 0.0).then(|| self.mass_kg / self.pieces)
    }

    /// Whether one of its pieces is too heavy for one person: above [`by_hand_kg`].
    pub fn is_heavy(&self) -> bool {
        self.piece_kg().is_some_and(|kg| kg > by_hand_kg())
    }
}

/// What one person lifts by hand at most, close to the body and between knuckle and elbow, kg; HSE guidance L23.
pub fn by_hand_kg() -> f64 {
    guideline_kg(Zone::Knuckle, Lifter::Man, true)
}

/// What goes onto one line: of one role, mark, item and size as it is written, mm.
type Alike<'a> = (Role, &'a str, Rc<str>, [i64; 2]);

/// Counts the equipment of one bay, its concrete, and what all of the equipment weighs.
pub fn count(model: &Model, catalogue: &Catalogue) -> Vec<Quantity> {
    let mut alike: BTreeMap<(Role, i64, &str, &str), (&Part, u32)> = BTreeMap::new();
    for run in model.parts.chunk_by(is_alike) {
        let part = &run[0];
        let micrometres = libm::round(part.solid.length_m() * 1e6) as i64;
        let (_, count) = alike.entry((part.role, micrometres, &part.mark, &part.item)).or_insert((part, 0));
        *count += run.iter().map(|part| part.count).sum::<u32>();
    }
    let mut named = BTreeMap::new();
    let mut lines: BTreeMap<Alike, Quantity> = BTreeMap::new();
    for (part, count) in alike.into_values() {
        let named = named.entry(&*part.item).or_insert_with(|| Named::of(&part.item, catalogue));
        let Some(named) = named else { continue };
        for Line { quantity: line, item, size_mm } in lines_of(part, f64::from(count), named) {
            let key = (part.role, &*part.mark, item, size_mm);
            match lines.get_mut(&key) {
                Some(known) => {
                    known.count += line.count;
                    known.pieces += line.pieces;
                    known.mass_kg += line.mass_kg;
                }
                None => {
                    lines.insert(key, line);
                }
            }
        }
    }
    let mut bill: Vec<Quantity> = lines.into_values().collect();
    bill.extend(model.ties.iter().filter_map(fixed_ends));
    bill.extend(model.jacks.iter().flat_map(jacks));
    let equipment_kg: f64 = bill.iter().map(|line| line.mass_kg).sum();
    bill.push(total(sentence!("Equipment for one bay"), "kg", equipment_kg, equipment_kg));
    bill.extend(heaviest_lift(model, &bill));
    bill.extend(model.pours.iter().map(|pour| Quantity {
        mark: pour.mark.clone(),
        owner: Some(pour.id),
        item: sentence!("Concrete in one bay"),
        size: sentence!("{} × {}", number(pour.area_m2, "m²", 3), metres(model.bay_m, 3)),
        count: pour.volume_m3,
        unit: "m³",
        pieces: 0.0,
        mass_kg: pour.weight_kn / KN_PER_KG,
    }));
    let volume_m3 = model.pours.iter().map(|pour| pour.volume_m3).sum();
    let concrete_kg = model.pours.iter().map(|pour| pour.weight_kn / KN_PER_KG).sum();
    bill.push(total(sentence!("Concrete in one bay, all pours"), "m³", volume_m3, concrete_kg));
    bill
}

/// Whether parts placed one after another are the same thing again.
fn is_alike(a: &Part, b: &Part) -> bool {
    let is_same = Arc::ptr_eq(&a.mark, &b.mark) && Arc::ptr_eq(&a.item, &b.item) && a.role == b.role;
    is_same && a.solid.length_m() == b.solid.length_m()
}

/// All equipment of one bay.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Equipment {
    /// What it weighs.
    pub mass_kg: f64,
    /// How many separate things there are to handle, each [`Quantity::pieces`].
    pub pieces: f64,
}

/// Sums the equipment of a bill.
pub fn equipment(bill: &[Quantity]) -> Equipment {
    let pieces = bill.iter().map(|line| line.pieces).sum();
    let mass_kg = bill.iter().filter(|line| line.pieces > 0.0).map(|line| line.mass_kg).sum();
    Equipment { mass_kg, pieces }
}

/// The shutter that weighs most when it is lifted as a whole, without its ties and props.
fn heaviest_lift(model: &Model, bill: &[Quantity]) -> Option<Quantity> {
    let kg = |shutter: &PlacedShutter| {
        bill.iter().filter(|line| line.owner == Some(shutter.id)).map(|line| line.mass_kg).sum::<f64>()
    };
    let weighed = model.shutters.iter().map(|shutter| (kg(shutter), shutter));
    let (kg, shutter) = weighed.max_by(|a, b| a.0.total_cmp(&b.0))?;
    Some(total(sentence!("Heaviest shutter in one lift, {}", &shutter.mark), "kg", kg, kg))
}

fn total(item: Sentence, unit: &'static str, count: f64, mass_kg: f64) -> Quantity {
    let (mark, size) = (String::new(), Sentence::default());
    Quantity { mark, owner: None, item, size, count, unit, pieces: 0.0, mass_kg }
}

/// What holds the fixed ends of a row, one at each: blocks of kentledge, or anchors, which stay in the concrete and of
/// which the rod alone is weighed.
fn fixed_ends(row: &PlacedTieRow) -> Option<Quantity> {
    let (item, size, each_kg) = match row.held.filter(|_| row.to.is_none())?.by {
        HeldBy::Thrust => return None,
        HeldBy::Kentledge { weight_kn, .. } => {
            (sentence!("Block of kentledge"), sentence!("{}", number(weight_kn, "kN", 1)), weight_kn / KN_PER_KG)
        }
        HeldBy::Anchor(cast) => (
            sentence!("Headed anchor, cast in"),
            sentence!("{} × {}", length_mm(cast.rod_m), length_mm(cast.depth_m)),
            PI / 4.0 * cast.rod_m * cast.rod_m * cast.depth_m * STEEL_KG_M3,
        ),
    };
    let (mark, owner, count) = (row.mark.clone(), Some(row.id), row.places_m.len() as f64);
    Some(Quantity { mark, owner, item, size, count, unit: "no.", pieces: count, mass_kg: each_kg * count })
}

/// Jacks and rams, of which no weight is known.
fn jacks(placed: &PlacedJacks) -> impl Iterator<Item = Quantity> + use<> {
    let PlacedJacks { lines_m, lift, slide, .. } = placed;
    let line = |mark: &str, item: Sentence, working_kn: f64, count: f64| {
        let size = sentence!("{}", number(working_kn, "kN", 0));
        Quantity { mark: mark.to_owned(), owner: None, item, size, count, unit: "no.", pieces: count, mass_kg: 0.0 }
    };
    let lifting =
        line("J", sentence!("Lifting jack, not weighed"), lift.jack_kn, lines_m.len() as f64 * f64::from(lift.jacks));
    let sliding =
        slide.map(|slide| line("R", sentence!("Sliding ram, not weighed"), slide.ram_kn, f64::from(slide.rams)));
    std::iter::once(lifting).chain(sliding)
}

/// An item, and how the bill calls it and what goes with it, also as a text.
struct Named<'a> {
    item: &'a Item,
    own: (Sentence, Rc<str>),
    /// Nuts, jacks or couplers, one at either end, and the mass of both, kg.
    ends: Option<((Sentence, Rc<str>), f64)>,
}

impl<'a> Named<'a> {
    fn of(code: &str, catalogue: &'a Catalogue) -> Option<Self> {
        let item = catalogue.get(code)?;
        let name = called(item, catalogue);
        let ends = match &item.kind {
            Kind::Tie(tie) => Some((sentence!("Nut and plate for {}", &name), tie.ends_kg)),
            Kind::Leg(leg) => Some((sentence!("Head and base jack for {}", &name), leg.ends_kg)),
            Kind::Brace(brace) => Some((sentence!("Coupler for {}", &name), 2.0 * brace.coupler_kg)),
            _ => None,
        };
        let with_text = |name: Sentence| {
            let text = name.to_string().into();
            (name, text)
        };
        Some(Self { item, own: with_text(name), ends: ends.map(|(name, kg)| (with_text(name), kg)) })
    }
}

/// The name of an item, and whose it is if it is not ours.
fn called(item: &Item, catalogue: &Catalogue) -> Sentence {
    sentence!("{}{}", named(&item.name), word(catalogue.origin(&item.code).map_or("", Origin::words)))
}

/// A line of the bill, with what it is put together by: the name of its item as a text, and its size as it is written.
struct Line {
    quantity: Quantity,
    item: Rc<str>,
    size_mm: [i64; 2],
}

/// The line of so many parts like this one, and one for what goes with them.
fn lines_of(part: &Part, count: f64, named: &Named) -> Vec<Line> {
    let Named { item, own, ends } = named;
    let line = |(item, text): &(Sentence, Rc<str>), size_m: &[f64], count: f64, unit, mass_kg| {
        let (mark, owner, item) = (part.mark.to_string(), Some(part.owner), item.clone());
        let size = match *size_m {
            [length] => sentence!("{}", metres(length, 3)),
            [width, length] => sentence!("{} × {}", metres(width, 3), metres(length, 3)),
            _ => Sentence::default(),
        };
        let mut size_mm = [0; 2];
        size_mm.iter_mut().zip(size_m).for_each(|(mm, m)| *mm = libm::round(m * 1e3) as i64);
        let quantity = Quantity { mark, owner, item, size, count, unit, pieces: count, mass_kg };
        Line { quantity, item: text.clone(), size_mm }
    };
    let length = part.solid.length_m();
    let rod = |kg_m: f64| line(own, &[length], count, "no.", kg_m * length * count);
    let mut lines = Vec::with_capacity(2);
    lines.extend(match (&item.kind, part.solid) {
        (Kind::Board(board), Solid::Sheet { length_m, .. }) => {
            let area = length * length_m;
            let sheets = libm::ceil(area / (board.sheet_m[0] * board.sheet_m[1]) - 1e-9);
            let mut line = line(own, &[length, length_m], area * count, "m²", area * board.mass_kg_m2 * count);
            line.quantity.pieces = sheets * count;
            Some(line)
        }
        (Kind::Plate(plate), Solid::Plate { .. }) => {
            Some(line(own, &[plate.width_m, plate.length_m], count, "no.", plate.mass_kg * count))
        }
        (Kind::Tie(tie), _) => Some(rod(tie.mass_kg_m)),
        (Kind::Leg(leg), _) => Some(rod(leg.mass_kg_m())),
        (Kind::Brace(brace), _) => Some(rod(brace.mass_kg_m())),
        _ => item.beam().map(|beam| rod(beam.mass_kg_m)),
    });
    lines.extend(ends.as_ref().map(|(name, kg)| line(name, &[], 2.0 * count, "no.", kg * count)));
    lines
}

/// The bill as comma-separated values, RFC 4180, with units in the header.
pub fn to_csv(bill: &[Quantity]) -> String {
    let quote = |text: &str| format!("\"{}\"", text.replace('"', "\"\""));
    let mut csv = String::from("mark,item,size,count,unit,mass (kg),mass of a piece (kg)\r\n");
    for line in bill {
        let fields = [
            quote(&line.mark),
            quote(&line.item.to_string()),
            quote(&line.size.to_string()),
            format!("{:.3}", line.count),
            quote(line.unit),
            format!("{:.1}", line.mass_kg),
            line.piece_kg().map_or(String::new(), |kg| format!("{kg:.1}")),
        ];
        csv.push_str(&fields.join(","));
        csv.push_str("\r\n");
    }
    csv
}
