//! The tree as a serde deserializer that goes on after an error.

use std::cell::{Cell, RefCell};

use serde::de::value::StrDeserializer;
use serde::de::{Deserializer, IntoDeserializer, Visitor};
use serde::{Deserialize, forward_to_deserialize_any};

use super::access::{Items, Pairs, Parts, Single, Word};
use super::at::{AT, MANY};
use super::check;
use super::fault::{Complaint, Fault};
use super::leaf::{self, RAW};
use super::slot::{Context, Position, Slot};
use super::tree::{Id, Tree, View};
use crate::report::Finding;
use crate::units::{Dimension, parse_number};

/// Nodes that may be visited beyond four times their number: what shared families and merge keys
/// of a large job need, and an end to a bomb of aliases.
const MORE_VISITS: usize = 250_000;

/// Decodes the node `root`.
pub(super) fn run<'t, T: Deserialize<'t>>(tree: &'t Tree, root: Id) -> (Option<T>, Vec<Finding>) {
    run_leaf(tree, root, "")
}

/// Decodes the node `id`, which messages call `key`.
pub(super) fn run_leaf<'t, T: Deserialize<'t>>(
    tree: &'t Tree,
    id: Id,
    key: &'t str,
) -> (Option<T>, Vec<Finding>) {
    let context = Context {
        tree,
        findings: RefCell::new(Vec::new()),
        visits: Cell::new(tree.len() * 4 + MORE_VISITS),
    };
    let slot = Slot {
        context: &context,
        at: Position::Node(id),
        key,
        key_node: None,
        item: false,
    };
    let value = match T::deserialize(slot) {
        Ok(value) => Some(value),
        Err(fault) => {
            slot.report(fault);
            None
        }
    };
    (value, context.findings.into_inner())
}

macro_rules! whole_numbers {
    ($($method:ident $visit:ident $kind:ty;)*) => { $(
        fn $method<V: Visitor<'t>>(self, visitor: V) -> Result<V::Value, Fault> {
            visitor.$visit(self.whole::<$kind>(i128::from(<$kind>::MIN), i128::from(<$kind>::MAX))?)
        }
    )* };
}

impl<'t> Deserializer<'t> for Slot<'t, '_> {
    type Error = Fault;

    fn deserialize_any<V: Visitor<'t>>(self, visitor: V) -> Result<V::Value, Fault> {
        if self.is_absent() {
            return visitor.visit_unit();
        }
        match self.enter()? {
            View::List(_) => self.deserialize_seq(visitor),
            View::Map(_) => self.deserialize_map(visitor),
            _ => self.deserialize_str(visitor),
        }
    }

    fn deserialize_option<V: Visitor<'t>>(self, visitor: V) -> Result<V::Value, Fault> {
        if self.is_absent() {
            visitor.visit_none()
        } else {
            visitor.visit_some(self)
        }
    }

    fn deserialize_newtype_struct<V: Visitor<'t>>(
        self,
        name: &'static str,
        visitor: V,
    ) -> Result<V::Value, Fault> {
        match name {
            AT => visitor.visit_seq(Parts::new(self)),
            MANY => match self.enter()? {
                View::List(items) => visitor.visit_seq(Items::new(self, items)),
                _ => visitor.visit_seq(Single::new(self)),
            },
            RAW => visitor.visit_str(self.text("text")?),
            _ => visitor.visit_newtype_struct(self),
        }
    }

    fn deserialize_str<V: Visitor<'t>>(self, visitor: V) -> Result<V::Value, Fault> {
        let text = self.text("text")?;
        check::plain_text(text).map_err(Fault::new)?;
        visitor.visit_str(text)
    }

    fn deserialize_bool<V: Visitor<'t>>(self, visitor: V) -> Result<V::Value, Fault> {
        let text = self.text("true or false")?;
        visitor.visit_bool(check::truth(text).map_err(Fault::new)?)
    }

    fn deserialize_f64<V: Visitor<'t>>(self, visitor: V) -> Result<V::Value, Fault> {
        let text = self.text("number")?;
        let number =
            parse_number(text).map_err(|error| leaf::complaint(text, Dimension::Ratio, &error));
        visitor.visit_f64(number.map_err(Fault::new)?)
    }

    fn deserialize_f32<V: Visitor<'t>>(self, visitor: V) -> Result<V::Value, Fault> {
        self.deserialize_f64(visitor)
    }

    whole_numbers! {
        deserialize_u8 visit_u8 u8;
        deserialize_u16 visit_u16 u16;
        deserialize_u32 visit_u32 u32;
        deserialize_u64 visit_u64 u64;
        deserialize_i8 visit_i8 i8;
        deserialize_i16 visit_i16 i16;
        deserialize_i32 visit_i32 i32;
        deserialize_i64 visit_i64 i64;
    }

    fn deserialize_seq<V: Visitor<'t>>(self, visitor: V) -> Result<V::Value, Fault> {
        let items = self.or_empty(Slot::items);
        visitor.visit_seq(Items::new(self, items))
    }

    fn deserialize_tuple<V: Visitor<'t>>(
        self,
        length: usize,
        visitor: V,
    ) -> Result<V::Value, Fault> {
        let items = self.items()?;
        if items.len() != length {
            return Err(Fault::new(
                Complaint::new("job.list_length")
                    .with("found", items.len().to_string())
                    .with("wanted", length.to_string()),
            ));
        }
        visitor.visit_seq(Items::new(self, items))
    }

    fn deserialize_tuple_struct<V: Visitor<'t>>(
        self,
        _name: &'static str,
        length: usize,
        visitor: V,
    ) -> Result<V::Value, Fault> {
        self.deserialize_tuple(length, visitor)
    }

    fn deserialize_map<V: Visitor<'t>>(self, visitor: V) -> Result<V::Value, Fault> {
        let pairs = self.or_empty(Slot::pairs);
        visitor.visit_map(Pairs::all(self, pairs))
    }

    fn deserialize_struct<V: Visitor<'t>>(
        self,
        _name: &'static str,
        fields: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Fault> {
        let pairs = self.pairs()?;
        visitor.visit_map(Pairs::fields(self, pairs, fields))
    }

    fn deserialize_enum<V: Visitor<'t>>(
        self,
        _name: &'static str,
        words: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Fault> {
        let text = self.text("word")?;
        match words.iter().find(|word| **word == text) {
            Some(word) => visitor.visit_enum(Word(word)),
            None => Err(Fault::new(check::unknown_word(text, words))),
        }
    }

    fn deserialize_ignored_any<V: Visitor<'t>>(self, visitor: V) -> Result<V::Value, Fault> {
        visitor.visit_unit()
    }

    fn deserialize_unit<V: Visitor<'t>>(self, visitor: V) -> Result<V::Value, Fault> {
        visitor.visit_unit()
    }

    fn deserialize_string<V: Visitor<'t>>(self, visitor: V) -> Result<V::Value, Fault> {
        self.deserialize_str(visitor)
    }

    fn deserialize_identifier<V: Visitor<'t>>(self, visitor: V) -> Result<V::Value, Fault> {
        self.deserialize_str(visitor)
    }

    fn deserialize_char<V: Visitor<'t>>(self, visitor: V) -> Result<V::Value, Fault> {
        self.deserialize_str(visitor)
    }

    forward_to_deserialize_any! {
        <V: Visitor<'t>>
        i128 u128 bytes byte_buf unit_struct
    }
}

/// A field's name for serde.
pub(super) fn field(name: &str) -> StrDeserializer<'_, Fault> {
    name.into_deserializer()
}
