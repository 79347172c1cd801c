//! Names of steps, which are kept in English whatever the page speaks.

use super::look_up;
use crate::language::t;

/// The name of a step in the language of the page.
pub fn step(name: &str) -> String {
    if let Some(known) = look_up(name) {
        return known.to_owned();
    }
    let apart = |(at, _): (usize, &str)| Some((look_up(&name[..at])?, translated(&name[at + 1..])?));
    match name.match_indices(' ').find_map(apart) {
        Some((verb, what)) => format!("{verb}: {what}"),
        None => name.to_owned(),
    }
}

/// What was counted, such as `2 shutters and 1 row of ties`, in the language of the page.
pub fn listed(counted: &str) -> String {
    translated(counted).unwrap_or_else(|| counted.to_owned())
}

fn translated(list: &str) -> Option<String> {
    let one = |part: &str| {
        let digits = part.chars().take_while(char::is_ascii_digit).count();
        let (count, kind) = part.split_at(digits);
        let known = look_up(kind.trim_start())?;
        Some(if count.is_empty() { known.to_owned() } else { format!("{count} {known}") })
    };
    match list.rsplit_once(" and ") {
        Some((others, last)) => {
            let others: Option<Vec<String>> = others.split(", ").map(one).collect();
            Some(format!("{} {} {}", others?.join(", "), t("and"), one(last)?))
        }
        None => one(list),
    }
}
