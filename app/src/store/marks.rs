//! Elements are told by their marks on the drawing.

use super::Store;
use crate::canvas::paint::name_of;
use falsewright_core::scheme::Id;

impl Store {
    /// A message with the marks of the drawing in place of ids.
    pub(super) fn in_marks(&self, message: &str) -> String {
        let worked = self.worked.get_untracked();
        let mut parts = message.split('#');
        let mut told = parts.next().unwrap_or_default().to_owned();
        for part in parts {
            let digits = part.len() - part.trim_start_matches(|c: char| c.is_ascii_digit()).len();
            let (id, rest) = part.split_at(digits);
            let name = id.parse().ok().and_then(|id| name_of(&worked.design.model, Id(id)));
            // "Shutter #30" becomes "Shutter S3".
            let mark = name.as_deref().and_then(|name| name.rsplit(' ').next()).map(str::to_owned);
            told.push_str(&mark.unwrap_or_else(|| format!("#{id}")));
            told.push_str(rest);
        }
        told
    }
}
