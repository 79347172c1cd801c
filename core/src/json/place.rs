//! Places in a text that is known to be JSON. Nothing is found in one that is not.

/// A step into a list or a record.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Step {
    /// To the value at this index.
    Value(usize),
    /// To the name of the field at this index.
    Name(usize),
}

/// Bytes up to the end of a value: of a list or record only its first one, unless its end is asked for.
pub(super) fn end_of(text: &[u8], path: &[Step], of_all: bool) -> usize {
    let mut at = space(text, 0);
    for step in path.iter().rev() {
        let (Step::Value(index) | Step::Name(index)) = *step;
        let names = text.get(at) == Some(&b'{');
        at = space(text, at + 1);
        for _ in 0..index {
            at = space(text, skip(text, if names { value_of(text, at) } else { at }));
            at = space(text, at + 1);
        }
        match step {
            Step::Name(_) => return skip(text, at),
            Step::Value(_) if names => at = value_of(text, at),
            Step::Value(_) => {}
        }
    }
    let opens = matches!(text.get(at), Some(b'{' | b'['));
    if opens && !of_all { at + 1 } else { skip(text, at) }
}

/// Line from 1, and the bytes of that line up to this many bytes of the text.
pub(super) fn line_and_column(text: &[u8], bytes: usize) -> (usize, usize) {
    let before = text.get(..bytes).unwrap_or(text);
    let start = before.iter().rposition(|&byte| byte == b'\n').map_or(0, |newline| newline + 1);
    (1 + before.iter().filter(|&&byte| byte == b'\n').count(), before.len() - start)
}

/// The value of the field whose name is at this place.
fn value_of(text: &[u8], name: usize) -> usize {
    space(text, space(text, skip(text, name)) + 1)
}

fn space(text: &[u8], mut at: usize) -> usize {
    while text.get(at).is_some_and(u8::is_ascii_whitespace) {
        at += 1;
    }
    at
}

/// The end of the value or name that begins here.
fn skip(text: &[u8], mut at: usize) -> usize {
    let mut depth = 0;
    loop {
        match text.get(at) {
            None => return text.len(),
            Some(b'"') => at = skip_text(text, at),
            Some(b'{' | b'[') => (depth, at) = (depth + 1, at + 1),
            Some(b'}' | b']') => (depth, at) = (depth - 1, at + 1),
            Some(b',' | b':' | b' ' | b'\n' | b'\r' | b'\t') => at += 1,
            Some(_) => at += text[at..].iter().take_while(|byte| !b",:]} \n\r\t".contains(byte)).count(),
        }
        if depth <= 0 {
            return at;
        }
    }
}

fn skip_text(text: &[u8], quote: usize) -> usize {
    let mut at = quote + 1;
    loop {
        match text.get(at) {
            None => return text.len(),
            Some(b'"') => return at + 1,
            Some(b'\\') => at += 2,
            Some(_) => at += 1,
        }
    }
}

/// JSON without spaces, with each value on a line of its own, two spaces in at each level.
pub(super) fn indented(text: &str) -> String {
    let bytes = text.as_bytes();
    let mut out = String::with_capacity(text.len() * 2);
    let (mut depth, mut at) = (0_usize, 0);
    let line = |out: &mut String, depth: usize| {
        out.push('\n');
        (0..depth).for_each(|_| out.push_str("  "));
    };
    while let Some(&byte) = bytes.get(at) {
        let end = if byte == b'"' { skip_text(bytes, at) } else { at + 1 };
        let closes = |at: usize| matches!(bytes.get(at), Some(b'}' | b']'));
        if closes(at) {
            depth = depth.saturating_sub(1);
            if !at.checked_sub(1).is_some_and(|before| matches!(bytes[before], b'{' | b'[')) {
                line(&mut out, depth);
            }
        }
        match text.get(at..end) {
            Some(piece) => out.push_str(piece),
            // A character of several bytes stands only in a text, which is taken as a whole.
            None => return text.to_owned(),
        }
        match byte {
            b'{' | b'[' => {
                depth += 1;
                if !closes(end) {
                    line(&mut out, depth);
                }
            }
            b',' => line(&mut out, depth),
            b':' => out.push(' '),
            _ => {}
        }
        at = end;
    }
    out
}
