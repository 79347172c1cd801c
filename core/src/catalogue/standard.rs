use super::{Item, Kind, Section, Steel};

/// Dimensions of EN 10365 and BS 4-1. UB 203×133×25, 254×146×31, 305×165×40, IPE 200 to 330, HE 240 B and HE 300 B are
/// confirmed in print, the others from memory.
const TABLE: &str = include_str!("sections.csv");

/// The rolled section of this name, such as `IPE 300` or `UB 305x165x40`. Spaces, case and what follows in brackets do
/// not matter.
pub fn standard_section(name: &str) -> Option<Section> {
    let wanted = plain(name);
    standard_sections().find(|(name, _)| plain(name) == wanted).map(|(_, section)| section)
}

/// Every rolled section of the table with its name.
pub fn standard_sections() -> impl Iterator<Item = (&'static str, Section)> {
    TABLE.lines().skip(1).filter_map(read)
}

/// Grades of EN 10025-2 whose strengths are known here.
pub const GRADES: [&str; 3] = ["S235", "S275", "S355"];

/// Between the two sections of a pair, m: room for ties of up to 20 mm and their sleeves, common practice.
const PAIR_GAP_M: f64 = 0.05;
const PAIR: &str = "2x";

/// A beam of one rolled section of the table in a grade, such as `S275`.
pub fn standard_beam(name: &str, grade: &str) -> Option<Item> {
    beam(name, grade, 1)
}

/// A beam of two such sections side by side, 50 mm apart, as walings for ties are.
pub fn standard_pair(name: &str, grade: &str) -> Option<Item> {
    beam(name, grade, 2)
}

/// The beam that one of these makes under this code.
pub(super) fn standard_of_code(code: &str) -> Option<Item> {
    let (rest, grade) = code.rsplit_once('-')?;
    let grade = GRADES.into_iter().find(|known| *known == grade)?;
    let item = match rest.strip_prefix(PAIR) {
        Some(name) => standard_pair(name, grade),
        None => standard_beam(rest, grade),
    };
    item.filter(|item| item.code == code)
}

fn beam(name: &str, grade: &str, side_by_side: u32) -> Option<Item> {
    let wanted = plain(name);
    let (name, section) = standard_sections().find(|(name, _)| plain(name) == wanted)?;
    let count = f64::from(side_by_side);
    let breadth_m = count * section.dimensions().b * 1e-3 + (count - 1.0) * PAIR_GAP_M;
    let steel = Steel { section, grade: grade.into(), side_by_side, breadth_m };
    let (before, size) = if side_by_side > 1 { (PAIR, format!("Two {name}")) } else { ("", name.to_owned()) };
    Some(Item {
        code: format!("{before}{}-{grade}", name.replace(' ', "")),
        name: format!("{size} {grade}"),
        source: "EN 10365 and BS 4-1 dimensions, partly from memory; properties computed".into(),
        kind: Kind::Steel(steel),
    })
}

fn plain(name: &str) -> String {
    let name = name.split('(').next().unwrap_or_default();
    name.chars().filter(|c| !c.is_whitespace()).map(|c| if c == '×' { 'X' } else { c.to_ascii_uppercase() }).collect()
}

fn read(line: &'static str) -> Option<(&'static str, Section)> {
    let mut cells = line.split(',');
    let (name, shape) = (cells.next()?, cells.next()?);
    let mut size = || cells.next()?.parse::<f64>().ok();
    let (h_mm, b_mm, tw_mm, tf_mm, r_mm) = (size()?, size()?, size()?, size()?, size()?);
    let section = match shape {
        "i" => Section::I { h_mm, b_mm, tw_mm, tf_mm, r_mm },
        "channel" => Section::Channel { h_mm, b_mm, tw_mm, tf_mm, r_mm },
        _ => return None,
    };
    Some((name, section))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_line_is_read() {
        assert_eq!(standard_sections().count(), TABLE.lines().count() - 1);
    }

    #[test]
    fn names_are_read_loosely() {
        assert_eq!(standard_section("ub305×165×40 (properties computed)"), standard_section("UB 305x165x40"));
        assert!(standard_section("HE300B").is_some() && standard_section("IPE 301").is_none());
    }
}
