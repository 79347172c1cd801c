//! Values as they stand in a text, and a deserializer over them.

use super::place::{self, Step};
use super::{Cause, Error};
use serde::de::value::StrDeserializer;
use serde::de::{
    DeserializeSeed, Deserializer, EnumAccess, Error as _, Expected, IntoDeserializer, MapAccess, SeqAccess,
    Unexpected, Visitor,
};
use serde::{Deserialize, forward_to_deserialize_any};
use std::fmt;

/// A value of JSON; its fields in their order, repeated ones too.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Tree {
    Null,
    Bool(bool),
    Unsigned(u64),
    Signed(i64),
    Float(f64),
    Text(String),
    List(Vec<Tree>),
    Record(Vec<(String, Tree)>),
}

impl<'de> Deserialize<'de> for Tree {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        from.deserialize_any(AnyValue)
    }
}

struct AnyValue;

impl<'de> Visitor<'de> for AnyValue {
    type Value = Tree;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("any value")
    }

    fn visit_bool<E>(self, value: bool) -> Result<Tree, E> {
        Ok(Tree::Bool(value))
    }

    fn visit_u64<E>(self, value: u64) -> Result<Tree, E> {
        Ok(Tree::Unsigned(value))
    }

    fn visit_i64<E>(self, value: i64) -> Result<Tree, E> {
        Ok(Tree::Signed(value))
    }

    fn visit_f64<E>(self, value: f64) -> Result<Tree, E> {
        Ok(Tree::Float(value))
    }

    fn visit_str<E>(self, value: &str) -> Result<Tree, E> {
        Ok(Tree::Text(value.to_owned()))
    }

    fn visit_string<E>(self, value: String) -> Result<Tree, E> {
        Ok(Tree::Text(value))
    }

    fn visit_unit<E>(self) -> Result<Tree, E> {
        Ok(Tree::Null)
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut values: A) -> Result<Tree, A::Error> {
        let mut all = Vec::new();
        while let Some(value) = values.next_element()? {
            all.push(value);
        }
        Ok(Tree::List(all))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut fields: A) -> Result<Tree, A::Error> {
        let mut all = Vec::new();
        while let Some(field) = fields.next_entry()? {
            all.push(field);
        }
        Ok(Tree::Record(all))
    }
}

impl Tree {
    fn unexpected(&self, expected: &dyn Expected) -> Fault {
        let found = match self {
            Self::Null => Unexpected::Unit,
            Self::Bool(value) => Unexpected::Bool(*value),
            Self::Unsigned(value) => Unexpected::Unsigned(*value),
            Self::Signed(value) => Unexpected::Signed(*value),
            Self::Float(value) => Unexpected::Float(*value),
            Self::Text(text) => Unexpected::Str(text),
            Self::List(_) => Unexpected::Seq,
            Self::Record(_) => Unexpected::Map,
        };
        Fault::invalid_type(found, expected)
    }

    #[inline(never)]
    fn number<'de, V: Visitor<'de>>(&self, visitor: V) -> Result<V::Value, Fault> {
        match self {
            Self::Unsigned(value) => visitor.visit_u64(*value),
            Self::Signed(value) => visitor.visit_i64(*value),
            Self::Float(value) => visitor.visit_f64(*value),
            _ => Err(self.unexpected(&visitor)),
        }
    }

    fn values(&self, expected: &dyn Expected) -> Result<Values<'_>, Fault> {
        match self {
            Self::List(all) => Ok(Values { all, next: 0 }),
            _ => Err(self.unexpected(expected)),
        }
    }

    fn members(&self, expected: &dyn Expected) -> Result<Members<'_>, Fault> {
        match self {
            Self::Record(all) => Ok(Members { all, next: 0 }),
            _ => Err(self.unexpected(expected)),
        }
    }
}

macro_rules! numbers {
    ($($method:ident)*) => {$(
        fn $method<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
            self.number(visitor)
        }
    )*};
}

impl<'de> Deserializer<'de> for &'de Tree {
    type Error = Fault;

    #[inline(never)]
    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        match self {
            Tree::Null => visitor.visit_unit(),
            Tree::Bool(value) => visitor.visit_bool(*value),
            Tree::Text(text) => visitor.visit_str(text),
            Tree::List(_) => self.deserialize_seq(visitor),
            Tree::Record(_) => self.deserialize_map(visitor),
            number => number.number(visitor),
        }
    }

    numbers! { deserialize_u32 deserialize_u64 deserialize_f64 }

    fn deserialize_bool<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        match self {
            Tree::Bool(value) => visitor.visit_bool(*value),
            _ => Err(self.unexpected(&visitor)),
        }
    }

    fn deserialize_str<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        match self {
            Tree::Text(text) => visitor.visit_str(text),
            _ => Err(self.unexpected(&visitor)),
        }
    }

    fn deserialize_string<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        self.deserialize_str(visitor)
    }

    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        match self {
            Tree::Null => visitor.visit_none(),
            _ => visitor.visit_some(self),
        }
    }

    fn deserialize_newtype_struct<V: Visitor<'de>>(self, _: &'static str, visitor: V) -> Result<V::Value, Fault> {
        visitor.visit_newtype_struct(self)
    }

    #[inline(never)]
    fn deserialize_seq<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        let mut values = self.values(&visitor)?;
        visitor.visit_seq(&mut values)
    }

    #[inline(never)]
    fn deserialize_tuple<V: Visitor<'de>>(self, length: usize, visitor: V) -> Result<V::Value, Fault> {
        let mut values = self.values(&visitor)?;
        if values.all.len() > length {
            return Err(Fault::invalid_length(values.all.len(), &visitor));
        }
        visitor.visit_seq(&mut values)
    }

    #[inline(never)]
    fn deserialize_map<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        let mut members = self.members(&visitor)?;
        visitor.visit_map(&mut members).map_err(|fault| fault.repeated(members.next))
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Fault> {
        self.deserialize_map(visitor)
    }

    #[inline(never)]
    fn deserialize_enum<V: Visitor<'de>>(
        self,
        _: &'static str,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Fault> {
        match self {
            Tree::Text(text) => visitor.visit_enum(Word(text)),
            _ => Err(self.unexpected(&"a word")),
        }
    }

    fn deserialize_ignored_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        visitor.visit_unit()
    }

    forward_to_deserialize_any! {
        i8 i16 i32 i64 i128 u8 u16 u128 f32 char bytes byte_buf unit unit_struct tuple_struct identifier
    }
}

/// A variant of an enum without values.
struct Word<'de>(&'de str);

impl<'de> EnumAccess<'de> for Word<'de> {
    type Error = Fault;
    type Variant = <StrDeserializer<'de, Fault> as EnumAccess<'de>>::Variant;

    fn variant_seed<S: DeserializeSeed<'de>>(self, seed: S) -> Result<(S::Value, Self::Variant), Fault> {
        let word: StrDeserializer<'de, Fault> = self.0.into_deserializer();
        word.variant_seed(seed)
    }
}

struct Values<'de> {
    all: &'de [Tree],
    next: usize,
}

impl<'de> SeqAccess<'de> for Values<'de> {
    type Error = Fault;

    #[inline(never)]
    fn next_element_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<Option<S::Value>, Fault> {
        let Some(value) = self.all.get(self.next) else { return Ok(None) };
        self.next += 1;
        seed.deserialize(value).map(Some).map_err(|fault| fault.within(Step::Value(self.next - 1)))
    }
}

struct Members<'de> {
    all: &'de [(String, Tree)],
    next: usize,
}

impl<'de> MapAccess<'de> for Members<'de> {
    type Error = Fault;

    fn next_key_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<Option<S::Value>, Fault> {
        let Some((name, _)) = self.all.get(self.next) else { return Ok(None) };
        let name: StrDeserializer<'_, Fault> = name.as_str().into_deserializer();
        seed.deserialize(name).map(Some).map_err(|fault| fault.within(Step::Name(self.next)))
    }

    #[inline(never)]
    fn next_value_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<S::Value, Fault> {
        let (_, value) = self.all.get(self.next).ok_or_else(|| Fault::custom("a name without a value"))?;
        self.next += 1;
        seed.deserialize(value).map_err(|fault| fault.within(Step::Value(self.next - 1)))
    }
}

/// What is wrong with a tree.
#[derive(Debug)]
pub(crate) struct Fault(Box<Wrong>);

#[derive(Debug)]
struct Wrong {
    what: String,
    /// The way to it, its last step first.
    path: Vec<Step>,
}

impl Fault {
    fn within(mut self, step: Step) -> Self {
        self.0.path.push(step);
        self
    }

    /// A repeated field is at its name, which is looked at before its value.
    fn repeated(self, index: usize) -> Self {
        let here = self.0.path.is_empty() && self.0.what.starts_with("duplicate field");
        if here { self.within(Step::Name(index)) } else { self }
    }

    pub fn found_in(self, text: &str) -> Error {
        let Wrong { what, path } = *self.0;
        let at = place::end_of(text.as_bytes(), &path, what.starts_with("missing field"));
        let (line, column) = place::line_and_column(text.as_bytes(), at);
        Error { cause: Cause::Value, what, line, column }
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0.what)
    }
}

impl std::error::Error for Fault {}

impl serde::de::Error for Fault {
    #[inline(never)]
    fn custom<T: fmt::Display>(message: T) -> Self {
        Self(Box::new(Wrong { what: message.to_string(), path: Vec::new() }))
    }

    #[inline(never)]
    fn invalid_type(found: Unexpected<'_>, expected: &dyn Expected) -> Self {
        match found {
            Unexpected::Unit => Self::custom(format_args!("invalid type: null, expected {expected}")),
            found => Self::custom(format_args!("invalid type: {found}, expected {expected}")),
        }
    }
}
