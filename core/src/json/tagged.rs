//! Records in which one field tells what the others are.

use super::{Fault, Tree};
use serde::de::{Deserialize, DeserializeOwned, Deserializer, Error, Unexpected};

/// The fields of a record, taken out one by one.
pub(crate) struct Fields(Vec<(String, Tree)>);

impl Fields {
    pub fn read<'de, D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        match Tree::deserialize(from)? {
            Tree::Record(fields) => Ok(Self(fields)),
            Tree::Null => Err(D::Error::custom("invalid type: null, expected a record of fields")),
            Tree::Text(text) => Err(D::Error::invalid_type(Unexpected::Str(&text), &"a record of fields")),
            Tree::List(_) => Err(D::Error::invalid_type(Unexpected::Seq, &"a record of fields")),
            _ => Err(D::Error::custom("invalid type: a single value, expected a record of fields")),
        }
    }

    #[inline(never)]
    fn tree(&mut self, name: &'static str) -> Result<Tree, Fault> {
        let Some(index) = self.0.iter().position(|(own, _)| own == name) else {
            return Err(Fault::missing_field(name));
        };
        let (_, value) = self.0.remove(index);
        if self.0.iter().any(|(own, _)| own == name) {
            return Err(Fault::duplicate_field(name));
        }
        Ok(value)
    }

    /// The value of a field.
    #[inline(never)]
    pub fn take<T: DeserializeOwned>(&mut self, name: &'static str) -> Result<T, Fault> {
        T::deserialize(&self.tree(name)?)
    }

    /// All that was not taken, as one record.
    #[inline(never)]
    pub fn rest<T: DeserializeOwned>(&mut self) -> Result<T, Fault> {
        T::deserialize(&Tree::Record(std::mem::take(&mut self.0)))
    }

    /// Refuses what was not taken.
    pub fn end(self) -> Result<(), Fault> {
        match self.0.first() {
            None => Ok(()),
            Some((name, _)) => Err(Fault::custom(format_args!("unknown field `{name}`"))),
        }
    }
}

/// Reads an enum whose kind stands in a field beside its values, which is what serde calls an internal tag. Fields of no
/// use are refused, or ignored where that is said.
macro_rules! tagged {
    ($type:ty, $tag:literal, $(others $ignored:ident,)? |$fields:ident| { $($name:literal => $value:expr),+ $(,)? }) => {
        impl<'de> serde::Deserialize<'de> for $type {
            fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
                #[inline(never)]
                fn of(mut $fields: $crate::json::Fields) -> Result<$type, $crate::json::Fault> {
                    let kind: String = $fields.take($tag)?;
                    let value = match kind.as_str() {
                        $($name => $value,)+
                        other => return Err(serde::de::Error::unknown_variant(other, &[$($name),+])),
                    };
                    let refused = true $(&& stringify!($ignored) != "ignored")?;
                    if refused {
                        $fields.end()?;
                    }
                    Ok(value)
                }
                of($crate::json::Fields::read(from)?).map_err(serde::de::Error::custom)
            }
        }
    };
}
pub(crate) use tagged;
