//! What can be done with the selection, whether by menu, button or key.

use super::{Editor, Outcome, Refusal, find};
use crate::editor::label::label;
use crate::editor::{Target, counted, swinging};
use crate::language::key;
use falsewright_core::scheme::edit::{Align, Edit, Excerpt};

/// Something to do with what is selected.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Action {
    /// To the clipboard.
    Copy,
    /// To the clipboard, and away.
    Cut,
    /// From the clipboard.
    Paste,
    /// Another one beside it.
    Duplicate,
    /// To the other side of the section's centre line.
    Mirror,
    /// To the other face of the wall.
    Opposite,
    /// The level of the first.
    SameLevel,
    /// The spacing of the first.
    SameSpacing,
    /// Equally apart from the first to the last.
    EquallyApart,
    /// Lets taps add to the selection.
    AddMore,
    /// Selects all.
    SelectAll,
    /// Away.
    Remove,
}

impl Action {
    const ALL: [Self; 12] = [
        Self::Copy,
        Self::Cut,
        Self::Paste,
        Self::Duplicate,
        Self::Mirror,
        Self::Opposite,
        Self::SameLevel,
        Self::SameSpacing,
        Self::EquallyApart,
        Self::AddMore,
        Self::SelectAll,
        Self::Remove,
    ];

    /// In words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Copy => key("Copy"),
            Self::Cut => key("Cut"),
            Self::Paste => key("Paste"),
            Self::Duplicate => key("Duplicate"),
            Self::Mirror => key("Mirror"),
            Self::Opposite => key("Opposite face"),
            Self::SameLevel => key("Same level as the first"),
            Self::SameSpacing => key("Same spacing as the first"),
            Self::EquallyApart => key("Space equally"),
            Self::AddMore => key("Add by tapping"),
            Self::SelectAll => key("Select all"),
            Self::Remove => key("Remove"),
        }
    }

    /// What it does.
    pub fn explained(self) -> &'static str {
        match self {
            Self::Copy => key("Copies to the clipboard, for another face, option or tab"),
            Self::Cut => key("Copies to the clipboard and removes"),
            Self::Paste => key("Places what was copied on the face that is selected, or on the matching face"),
            Self::Duplicate => key("Puts another one on the next free face, or halfway to the next row or line"),
            Self::Mirror => key("Copies to the other side of the section's centre line"),
            Self::Opposite => key("Copies the shutter to the other face of its wall"),
            Self::SameLevel => key("Brings all to the level of the one that was selected first"),
            Self::SameSpacing => key("Gives all the spacings of the one that was selected first"),
            Self::EquallyApart => key("Spaces all equally between the first and the last"),
            Self::AddMore => key("Each tap adds to the selection, or takes out of it"),
            Self::SelectAll => key("Selects all equipment; once more: the section too"),
            Self::Remove => key("Removes what is selected"),
        }
    }

    /// The key that does it, with Ctrl or Command.
    pub fn key(self) -> Option<&'static str> {
        Some(match self {
            Self::Copy => key("Ctrl C"),
            Self::Cut => key("Ctrl X"),
            Self::Paste => key("Ctrl V"),
            Self::Duplicate => key("Ctrl D"),
            Self::SelectAll => key("Ctrl A"),
            Self::Remove => key("Del"),
            _ => return None,
        })
    }

    /// A short name of its own.
    pub fn id(self) -> &'static str {
        match self {
            Self::Copy => "copy",
            Self::Cut => "cut",
            Self::Paste => "paste",
            Self::Duplicate => "duplicate",
            Self::Mirror => "mirror",
            Self::Opposite => "opposite",
            Self::SameLevel => "same-level",
            Self::SameSpacing => "same-spacing",
            Self::EquallyApart => "equally-apart",
            Self::AddMore => "add-more",
            Self::SelectAll => "select-all",
            Self::Remove => "remove",
        }
    }

    /// Whether it makes sense with these.
    fn suits(self, chosen: &[Target]) -> bool {
        let all = |of: fn(&Target) -> bool| !chosen.is_empty() && chosen.iter().all(of);
        let placed = chosen.iter().any(|target| {
            !matches!(
                target,
                Target::Corner(_) | Target::Cut(_) | Target::Face(_) | Target::Joint(_) | Target::Dimension(_)
            )
        });
        let shutter = |target: &Target| matches!(target.whole(), Target::Shutter(_));
        let row = |target: &Target| matches!(target, Target::TieRow(_));
        let line = |target: &Target| matches!(target, Target::LegLine(_));
        let falsework = |target: &Target| matches!(target, Target::Falsework(_));
        let opening = |target: &Target| matches!(target.whole(), Target::Opening(_));
        let several = chosen.len() > 1;
        match self {
            Self::Paste | Self::SelectAll => true,
            Self::Copy | Self::Cut | Self::Duplicate | Self::Mirror => placed,
            Self::Opposite => chosen.iter().any(shutter),
            Self::SameLevel => several && (all(row) || all(shutter) || all(opening)),
            Self::SameSpacing => several && (all(row) || all(shutter) || all(falsework)),
            Self::EquallyApart => chosen.len() > 2 && (all(row) || all(line)),
            Self::AddMore => !chosen.is_empty(),
            Self::Remove => chosen.iter().any(|target| !matches!(target, Target::Face(_) | Target::Dimension(_))),
        }
    }
}

impl Editor {
    /// What makes sense with the selection.
    pub fn actions(&self) -> Vec<Action> {
        Action::ALL.into_iter().filter(|action| action.suits(&self.chosen)).collect()
    }

    /// Does something with the selection that needs no clipboard; none: it does not make sense now.
    pub fn act(&mut self, action: Action) -> Option<Outcome> {
        let ids = self.chosen_ids();
        if !action.suits(&self.chosen) {
            return None;
        }
        let align = |how| Edit::Align { ids: ids.clone(), how };
        let edit = match action {
            Action::Duplicate => Edit::Duplicate(ids),
            Action::Mirror => Edit::Mirror(ids),
            Action::Opposite => Edit::Opposite(ids),
            Action::SameLevel => align(Align::Level),
            Action::SameSpacing => align(Align::Spacing),
            Action::EquallyApart => align(Align::Apart),
            Action::Remove => return self.remove_chosen(key("Remove")),
            Action::AddMore => return Some(self.set_adding(!self.adding)),
            Action::Copy | Action::Cut | Action::Paste | Action::SelectAll => return None,
        };
        let label = format!("{} {}", label(&edit), self.called());
        let adds = matches!(action, Action::Duplicate | Action::Mirror | Action::Opposite);
        let kept = self.keep_proposal();
        let before = self.document.scheme.fresh_id();
        let outcome = self.perform_as(&edit, &label);
        if adds && outcome.committed {
            self.choose_new(before);
        }
        Some(outcome.after(kept))
    }

    /// What is selected as text for the clipboard.
    pub fn copied(&self) -> Result<String, Refusal> {
        Ok(Excerpt::of(&self.document.scheme, &self.chosen_ids())?.write())
    }

    /// Removes what is selected, which was copied before.
    pub fn cut(&mut self) -> Outcome {
        self.remove_chosen(key("Cut")).unwrap_or_default()
    }

    /// Places what a text from the clipboard holds, on the selected face if there is one, and selects it.
    pub fn paste(&mut self, text: &str) -> Result<Outcome, Refusal> {
        let excerpt = Excerpt::read(text)?;
        let onto = if let Some(Target::Face(face)) = self.selection() { Some(face) } else { None };
        let label = if excerpt.count() == 1 { "Paste".into() } else { format!("Paste {} elements", excerpt.count()) };
        let kept = self.keep_proposal();
        let before = self.document.scheme.fresh_id();
        self.drop_gesture();
        let outcome = match (self.change_as(&Edit::Paste { excerpt: Box::new(excerpt), onto }, &label), &kept) {
            (Err(refusal), Some(_)) => Outcome { message: Some(refusal.to_string()), ..Outcome::view() },
            (done, _) => done?,
        };
        if outcome.committed {
            self.choose_new(before);
        }
        Ok(outcome.after(kept))
    }

    /// Removes all that is selected as one step; none: nothing can be.
    pub(super) fn remove_chosen(&mut self, verb: &str) -> Option<Outcome> {
        let part = |target: &Target| match *target {
            Target::Cut(corner) => Some((corner, Edit::SetCut { corner, cut: None })),
            Target::Hinge(id) | Target::Swing(id) => Some((id, swinging::unhinged(&self.document.scheme, id)?)),
            _ => None,
        };
        let (parts, mut edits): (Vec<_>, Vec<Edit>) = self.chosen.iter().filter_map(part).unzip();
        let mut ids = self.chosen_ids();
        ids.retain(|id| !parts.contains(id));
        match ids.as_slice() {
            [] => {}
            [one] => edits.push(Edit::Remove(*one)),
            _ => edits.push(Edit::RemoveAll(ids)),
        }
        let label = format!("{verb} {}", self.called());
        let edit = if edits.len() > 1 { Edit::Several(edits) } else { edits.pop()? };
        Some(self.perform_as(&edit, &label))
    }

    /// Applies an edit as one step of this name; a refusal is told.
    pub(super) fn perform_as(&mut self, edit: &Edit, label: &str) -> Outcome {
        let kept = self.keep_proposal();
        self.drop_gesture();
        let done = self.change_as(edit, label).unwrap_or_else(|refusal| self.refused(&refusal));
        done.after(kept)
    }

    /// What is selected, in words for the list of steps.
    fn called(&self) -> String {
        match self.chosen.as_slice() {
            [one] => one.kind()[0].to_owned(),
            all => counted(all),
        }
    }

    /// The name of a step that changes what is selected.
    pub(super) fn step_name(&self, edit: &Edit) -> String {
        let verb = |edit: &Edit| label(edit).split(' ').next();
        match edit {
            Edit::Several(edits) if self.chosen.len() > 1 && edits.iter().all(|of| verb(of) == verb(&edits[0])) => {
                format!("{} {}", verb(edit).unwrap_or_default(), counted(&self.chosen))
            }
            Edit::Remove(id) => {
                let kind = find(&self.document.scheme, *id).map_or(key("element"), |target| target.kind()[0]);
                format!("Remove {kind}")
            }
            edit => label(edit).to_owned(),
        }
    }
}
