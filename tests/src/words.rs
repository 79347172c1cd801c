//! The texts that the page looks up in the file of a language, read from the sources.

use falsewright_core::catalogue::Catalogue;
use falsewright_core::catalogue::exchange::FIELDS;
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

/// Behind these a text is looked up.
const MARKS: [&str; 6] = ["t(", "say!(", "key(", "sentence!(", "word(", "term("];
/// Behind these as well, in the panels: labels of fields.
const FIELD_MARKS: [&str; 7] = [".number(", ".count(", ".optional(", ".choice(", ".code(", ".toggle(", ".text("];
/// Behind this as well, in the load path: names of what passes loads on.
const LEVEL_MARK: &str = "level(";
/// Functions of `core` that name things, by their files.
const NAMING: [&str; 6] = [
    "results/check.rs",
    "results/striking.rs",
    "model/part.rs",
    "actions/combinations.rs",
    "load_path/wall.rs",
    "catalogue/origin.rs",
];
/// Files of `core` whose texts are parts of refusals.
const REFUSING: [&str; 2] = ["scheme/validate", "scheme/edit/"];
/// What is only a piece of a text: roles of members, levels of a path, units that are words, and what names of steps
/// begin or end with.
const PIECES: [&str; 15] = [
    "bent",
    "foot",
    "plate",
    "fixed end",
    "on its own weight",
    "clear width",
    "clear height",
    "secondaries",
    "primaries",
    "days",
    "no.",
    "Move",
    "Add",
    "Space",
    "elements",
];

/// Every text that is looked up.
pub fn all() -> BTreeSet<String> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    let mut texts: BTreeSet<String> = PIECES.map(str::to_owned).into();
    texts.extend(FIELDS.iter().filter(|field| !field.is_identity()).map(|field| field.name.to_owned()));
    texts.extend(Catalogue::generic().iter().map(|item| item.name.clone()));
    for folder in ["app/src", "core/src"] {
        let folder = root.join(folder);
        for file in sources(&folder) {
            let name = file.strip_prefix(&folder).unwrap_or(&file).to_string_lossy().replace('\\', "/");
            let source = std::fs::read_to_string(&file).unwrap_or_default();
            let is_core = folder.ends_with("core/src");
            let looked_up = |literal: &Literal| is_looked_up(literal, &name, is_core);
            texts.extend(literals(&source).into_iter().filter(looked_up).map(|literal| literal.text));
        }
    }
    texts.retain(|text| text.chars().any(char::is_alphabetic));
    texts
}

/// The texts as a file of words, each for itself.
pub fn file() -> String {
    let words: std::collections::BTreeMap<String, String> =
        all().into_iter().map(|text| (text.clone(), text)).collect();
    serde_json::to_string_pretty(&words).unwrap_or_default()
}

fn is_looked_up(literal: &Literal, file: &str, is_core: bool) -> bool {
    let behind = |mark: &str| {
        literal.before.strip_suffix(mark).is_some_and(|code| {
            mark.starts_with('.') || !code.ends_with(|c: char| c.is_alphanumeric() || matches!(c, '_' | '.'))
        })
    };
    if MARKS.into_iter().any(behind) {
        return true;
    }
    if !is_core {
        return file.starts_with("panels/") && FIELD_MARKS.into_iter().any(behind);
    }
    let names = NAMING.contains(&file) && literal.before.ends_with("=>") && literal.before.contains("Self::");
    let refuses = REFUSING.iter().any(|part| file.starts_with(part)) && is_term(&literal.text);
    names || refuses || (file.starts_with("load_path/") && behind(LEVEL_MARK))
}

/// Whether a text of a refusal is said, unlike units, codes and keys.
fn is_term(text: &str) -> bool {
    const OTHERS: [&str; 8] = ["kPa", "kN", "mm", "days", "MPa", "°C", "m/h", "m/s"];
    text.chars().count() > 2
        && !OTHERS.contains(&text)
        && !text.contains(['_', '{', '³'])
        && text.chars().any(char::is_lowercase)
        && !text.chars().any(|c| c.is_ascii_digit() && !text.contains(' '))
}

/// A text in a source, with the code before it.
struct Literal {
    text: String,
    before: String,
}

fn sources(folder: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in std::fs::read_dir(folder).into_iter().flatten().flatten() {
        let (path, name) = (entry.path(), entry.file_name().to_string_lossy().into_owned());
        if path.is_dir() {
            if name != "tests" {
                found.extend(sources(&path));
            }
        } else if name.ends_with(".rs") && name != "tests.rs" {
            found.push(path);
        }
    }
    found.sort();
    found
}

/// The texts of a source without its comments and tests.
fn literals(source: &str) -> Vec<Literal> {
    let code = source.find("#[cfg(test)]\nmod tests {").map_or(source, |end| &source[..end]);
    let mut found = Vec::new();
    let mut before = String::new();
    let mut rest = code.chars().peekable();
    while let Some(c) = rest.next() {
        match c {
            '/' if rest.peek() == Some(&'/') => while rest.next_if(|c| *c != '\n').is_some() {},
            '\'' => {
                // A character, not a lifetime.
                let mut ahead = rest.clone();
                let escaped = ahead.next() == Some('\\');
                if escaped || ahead.next() == Some('\'') {
                    if escaped {
                        rest.next();
                    }
                    rest.next();
                    while rest.next_if(|c| *c != '\'').is_some() {}
                    rest.next();
                }
                before.push(c);
            }
            '"' => {
                let text = literal(&mut rest);
                found.push(Literal { text, before: tail(&before) });
                before.push('"');
            }
            c if c.is_whitespace() => {}
            c => before.push(c),
        }
    }
    found
}

fn tail(code: &str) -> String {
    const LONGEST: usize = 80;
    code.chars().skip(code.chars().count().saturating_sub(LONGEST)).collect()
}

/// What stands in quotation marks, up to and with the closing one.
fn literal(rest: &mut std::iter::Peekable<std::str::Chars>) -> String {
    let mut text = String::new();
    while let Some(c) = rest.next() {
        match c {
            '"' => break,
            '\\' => match rest.next() {
                Some('n') => text.push('\n'),
                Some('\n') => while rest.next_if(|c| c.is_whitespace()).is_some() {},
                Some('u') => {
                    let digits: String = rest.by_ref().skip(1).take_while(|c| *c != '}').collect();
                    text.extend(u32::from_str_radix(&digits, 16).ok().and_then(char::from_u32));
                }
                Some(c) => text.push(c),
                None => {}
            },
            c => text.push(c),
        }
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn texts_are_found_behind_their_marks_and_nowhere_else() {
        let source = r#"
            // t("in a comment")
            let a = t("one"); let c = '"'; let d: &'static str = "no text";
            say!("two \
                  lines and a \"mark\"", t("three"));
            tell(key( "four"));
            let b = ascent("not this"); let n = format("nor this");
        "#;
        let found: Vec<String> =
            literals(source).into_iter().filter(|of| is_looked_up(of, "x.rs", false)).map(|of| of.text).collect();
        assert_eq!(found, ["one", "two lines and a \"mark\"", "three", "four"]);
    }
}
