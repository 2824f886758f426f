//! Lists, maps, words and placed values as serde asks for them.

use serde::de::{
    DeserializeSeed, EnumAccess, IntoDeserializer, MapAccess, SeqAccess, VariantAccess,
};
use serde::de::{Error, Visitor};

use super::decode::field;
use super::fault::Fault;
use super::slot::{Position, Slot};
use super::tree::Id;
use crate::report::{Finding, near_or_list};

/// The parts of an `At<T>`: file, line, column, start, end, and the value. Here an error becomes a
/// finding, so that everything around it is still read.
pub(super) struct Parts<'t, 'c> {
    slot: Slot<'t, 'c>,
    next: usize,
}

impl<'t, 'c> Parts<'t, 'c> {
    pub(super) fn new(slot: Slot<'t, 'c>) -> Self {
        Self { slot, next: 0 }
    }
}

impl<'t> SeqAccess<'t> for Parts<'t, '_> {
    type Error = Fault;

    fn next_element_seed<S: DeserializeSeed<'t>>(
        &mut self,
        seed: S,
    ) -> Result<Option<S::Value>, Fault> {
        let place = self.slot.place();
        let numbers = [
            u32::from(place.file.0),
            place.line,
            place.column,
            place.start,
            place.end,
        ];
        let index = self.next;
        self.next += 1;
        if let Some(&number) = numbers.get(index) {
            return seed.deserialize(number.into_deserializer()).map(Some);
        }
        match seed.deserialize(self.slot) {
            Ok(value) => Ok(Some(value)),
            Err(fault) => {
                self.slot.report(fault);
                Ok(None)
            }
        }
    }
}

/// One value that stands where a list of values might.
pub(super) struct Single<'t, 'c>(Option<Slot<'t, 'c>>);

impl<'t, 'c> Single<'t, 'c> {
    pub(super) fn new(slot: Slot<'t, 'c>) -> Self {
        Self(Some(slot))
    }
}

impl<'t> SeqAccess<'t> for Single<'t, '_> {
    type Error = Fault;

    fn next_element_seed<S: DeserializeSeed<'t>>(
        &mut self,
        seed: S,
    ) -> Result<Option<S::Value>, Fault> {
        self.0.take().map(|slot| seed.deserialize(slot)).transpose()
    }
}

/// The elements of a list.
pub(super) struct Items<'t, 'c> {
    list: Slot<'t, 'c>,
    items: &'t [Id],
}

impl<'t, 'c> Items<'t, 'c> {
    pub(super) fn new(list: Slot<'t, 'c>, items: &'t [Id]) -> Self {
        Self { list, items }
    }
}

impl<'t> SeqAccess<'t> for Items<'t, '_> {
    type Error = Fault;

    fn next_element_seed<S: DeserializeSeed<'t>>(
        &mut self,
        seed: S,
    ) -> Result<Option<S::Value>, Fault> {
        let Some((&item, rest)) = self.items.split_first() else {
            return Ok(None);
        };
        self.items = rest;
        let slot = Slot {
            at: Position::Node(item),
            key_node: None,
            item: true,
            ..self.list
        };
        seed.deserialize(slot).map(Some)
    }

    fn size_hint(&self) -> Option<usize> {
        Some(self.items.len())
    }
}

/// The entries of a map: all of them, or the fields of a struct.
pub(super) struct Pairs<'t, 'c> {
    map: Slot<'t, 'c>,
    pairs: &'t [(Id, Id)],
    fields: Option<&'static [&'static str]>,
    /// Fields that the map lacks, which are handed over as missing.
    missing: Vec<&'static str>,
    value: Option<Slot<'t, 'c>>,
}

impl<'t, 'c> Pairs<'t, 'c> {
    pub(super) fn all(map: Slot<'t, 'c>, pairs: &'t [(Id, Id)]) -> Self {
        Self {
            map,
            pairs,
            fields: None,
            missing: Vec::new(),
            value: None,
        }
    }

    pub(super) fn fields(
        map: Slot<'t, 'c>,
        pairs: &'t [(Id, Id)],
        fields: &'static [&'static str],
    ) -> Self {
        let tree = map.context.tree;
        let missing = fields
            .iter()
            .copied()
            .filter(|field| !pairs.iter().any(|&(key, _)| tree.text_at(key) == *field));
        Self {
            missing: missing.collect(),
            fields: Some(fields),
            ..Self::all(map, pairs)
        }
    }

    /// The next entry that is wanted; unknown keys are reported and passed over.
    fn next_pair(&mut self) -> Option<(Id, Id)> {
        loop {
            let (&(key, value), rest) = self.pairs.split_first()?;
            self.pairs = rest;
            let name = self.map.context.tree.text_at(key);
            match self.fields {
                Some(fields) if !fields.contains(&name) => self.unknown(key, name, fields),
                _ => return Some((key, value)),
            }
        }
    }

    fn unknown(&self, key: Id, name: &str, fields: &[&str]) {
        // A key that stands already is not what a misspelt one was meant to be.
        let (near, _) = near_or_list(name, &self.missing);
        let (_, known) = near_or_list(name, fields);
        let item = if self.map.item { "yes" } else { "" };
        let finding = Finding::job("job.unknown_key", self.map.context.tree.place(key))
            .with("key", name)
            .with("near", near)
            .with("known", known)
            .with("within", self.map.key)
            .with("item", item);
        self.map.tell(finding);
    }
}

impl<'t> MapAccess<'t> for Pairs<'t, '_> {
    type Error = Fault;

    fn next_key_seed<S: DeserializeSeed<'t>>(
        &mut self,
        seed: S,
    ) -> Result<Option<S::Value>, Fault> {
        let tree = self.map.context.tree;
        if let Some((key, value)) = self.next_pair() {
            let name = tree.text_at(key);
            self.value = Some(Slot {
                at: Position::Node(value),
                key: name,
                key_node: Some(key),
                item: false,
                ..self.map
            });
            if self.fields.is_some() {
                return seed.deserialize(field(name)).map(Some);
            }
            let slot = Slot {
                at: Position::Node(key),
                key_node: None,
                ..self.map
            };
            return seed.deserialize(slot).map(Some);
        }
        let Some(name) = self.missing.pop() else {
            return Ok(None);
        };
        self.value = Some(Slot {
            at: Position::Missing {
                map: self.map.map_place(),
                within: self.map.key,
                item: self.map.item,
            },
            key: name,
            key_node: None,
            item: false,
            ..self.map
        });
        seed.deserialize(field(name)).map(Some)
    }

    fn next_value_seed<S: DeserializeSeed<'t>>(&mut self, seed: S) -> Result<S::Value, Fault> {
        match self.value.take() {
            Some(slot) => seed.deserialize(slot),
            None => Err(Fault::Silent),
        }
    }

    fn size_hint(&self) -> Option<usize> {
        Some(self.pairs.len() + self.missing.len())
    }
}

/// A word of a choice.
pub(super) struct Word(pub(super) &'static str);

impl<'t> EnumAccess<'t> for Word {
    type Error = Fault;
    type Variant = Bare;

    fn variant_seed<S: DeserializeSeed<'t>>(self, seed: S) -> Result<(S::Value, Bare), Fault> {
        Ok((seed.deserialize(field(self.0))?, Bare))
    }
}

/// Words carry no data.
pub(super) struct Bare;

impl Bare {
    fn refuse<T>() -> Result<T, Fault> {
        Err(Fault::custom("a choice of words cannot carry data"))
    }
}

impl<'t> VariantAccess<'t> for Bare {
    type Error = Fault;

    fn unit_variant(self) -> Result<(), Fault> {
        Ok(())
    }

    fn newtype_variant_seed<S: DeserializeSeed<'t>>(self, _seed: S) -> Result<S::Value, Fault> {
        Self::refuse()
    }

    fn tuple_variant<V: Visitor<'t>>(self, _length: usize, _visitor: V) -> Result<V::Value, Fault> {
        Self::refuse()
    }

    fn struct_variant<V: Visitor<'t>>(
        self,
        _fields: &'static [&'static str],
        _visitor: V,
    ) -> Result<V::Value, Fault> {
        Self::refuse()
    }
}
