//! Comma-separated values, RFC 4180.

/// A row of cells with the line that it begins on, from 1.
pub struct Row {
    pub line: usize,
    pub cells: Vec<String>,
}

/// Rows of a text; blank lines are passed over. None for a quote that is never closed, with its line.
pub fn read(text: &str) -> Result<Vec<Row>, usize> {
    let mut rows = Vec::new();
    let mut row = Row { line: 1, cells: Vec::new() };
    let (mut cell, mut line, mut quoted_from) = (String::new(), 1, None);
    let mut letters = text.trim_start_matches('\u{feff}').chars().peekable();
    while let Some(letter) = letters.next() {
        line += usize::from(letter == '\n');
        match (letter, quoted_from) {
            ('"', Some(_)) if letters.next_if_eq(&'"').is_some() => cell.push('"'),
            ('"', Some(_)) => quoted_from = None,
            ('"', None) if cell.is_empty() => quoted_from = Some(line),
            (',', None) => row.cells.push(std::mem::take(&mut cell)),
            ('\r', None) if letters.peek() == Some(&'\n') => {}
            ('\n', None) => {
                row.cells.push(std::mem::take(&mut cell));
                rows.push(std::mem::replace(&mut row, Row { line, cells: Vec::new() }));
            }
            (letter, _) => cell.push(letter),
        }
    }
    if let Some(line) = quoted_from {
        return Err(line);
    }
    row.cells.push(cell);
    rows.push(row);
    rows.retain(|row| row.cells.iter().any(|cell| !cell.trim().is_empty()));
    Ok(rows)
}

/// A cell, quoted where it has to be.
pub fn write_cell(cell: &str) -> String {
    if cell.contains([',', '"', '\n', '\r']) { format!("\"{}\"", cell.replace('"', "\"\"")) } else { cell.into() }
}
