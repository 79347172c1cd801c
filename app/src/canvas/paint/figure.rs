use falsewright_core::scheme::Id;

/// One thing on the drawing: what it is called and how it is drawn.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Figure {
    /// Unique on the drawing; also its test id.
    pub key: String,
    /// Said by screen readers.
    pub label: String,
    /// The element that is selected by touching it.
    pub owner: Option<Id>,
    /// Its lines and surfaces, from back to front.
    pub strokes: Vec<Stroke>,
}

/// One path of a figure.
#[derive(Clone, Debug, PartialEq)]
pub struct Stroke {
    /// Style classes.
    pub class: String,
    /// Path data in metres.
    pub d: String,
}

impl Figure {
    /// A figure without lines yet.
    pub fn new(key: impl Into<String>, label: impl Into<String>, owner: Option<Id>) -> Self {
        Self { key: key.into(), label: label.into(), owner, strokes: Vec::new() }
    }

    /// Adds a path, unless it is empty.
    pub fn stroke(&mut self, class: impl Into<String>, path: super::Path) {
        if !path.is_empty() {
            self.strokes.push(Stroke { class: class.into(), d: path.finish() });
        }
    }
}
