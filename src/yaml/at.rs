//! Values with the place they were typed at.

use std::fmt;
use std::marker::PhantomData;

use serde::Deserialize;
use serde::de::{Deserializer, MapAccess, SeqAccess, Visitor};

use crate::report::{FileId, Place};

/// The name by which an [`At`] asks our reader for its place.
pub(super) const AT: &str = "\0at";

/// The name by which a [`OneOrMany`] asks our reader for a list or a single value.
pub(super) const MANY: &str = "\0many";

/// A value and where it was typed. The value is absent only while a finding says why.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct At<T> {
    place: Place,
    value: Option<T>,
}

impl<T> At<T> {
    /// A value at a place.
    pub fn new(place: Place, value: T) -> Self {
        Self {
            place,
            value: Some(value),
        }
    }

    /// No value, where a finding stands.
    pub fn empty(place: Place) -> Self {
        Self { place, value: None }
    }

    /// Where it was typed: the whole value.
    pub fn place(&self) -> Place {
        self.place
    }

    /// The value; `None` only while a finding stands.
    pub fn get(&self) -> Option<&T> {
        self.value.as_ref()
    }

    /// The value and its place.
    pub fn both(&self) -> Option<(&T, Place)> {
        self.get().map(|value| (value, self.place))
    }

    /// The value itself.
    pub fn into_inner(self) -> Option<T> {
        self.value
    }

    /// Another value at the same place.
    pub fn map<U>(self, change: impl FnOnce(T) -> U) -> At<U> {
        At {
            place: self.place,
            value: self.value.map(change),
        }
    }
}

impl<'de, T: Deserialize<'de>> Deserialize<'de> for At<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_newtype_struct(AT, Placed(PhantomData))
    }
}

/// Takes what our reader hands over: file, line, column, start, end, and then the value.
struct Placed<T>(PhantomData<T>);

impl<'de, T: Deserialize<'de>> Visitor<'de> for Placed<T> {
    type Value = At<T>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a value with a place, as only our own reader gives it")
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut parts: A) -> Result<At<T>, A::Error> {
        let mut next = || parts.next_element::<u32>().map(Option::unwrap_or_default);
        let file = FileId(u16::try_from(next()?).unwrap_or(u16::MAX));
        let place = Place {
            file,
            line: next()?,
            column: next()?,
            start: next()?,
            end: next()?,
        };
        let value = parts.next_element::<T>()?;
        Ok(At { place, value })
    }
}

/// A map from names that the user chose to values, in the order of the file.
#[derive(Clone, Debug, PartialEq)]
pub struct Named<T>(Vec<(At<String>, At<T>)>);

impl<T> Default for Named<T> {
    fn default() -> Self {
        Self(Vec::new())
    }
}

impl<T> Named<T> {
    /// All entries in the order of the file.
    pub fn iter(&self) -> impl ExactSizeIterator<Item = (&At<String>, &At<T>)> {
        self.0.iter().map(|(name, value)| (name, value))
    }

    /// The entry of a name: its key with its place, and its value.
    pub fn entry(&self, name: &str) -> Option<(&At<String>, &At<T>)> {
        self.iter()
            .find(|(key, _)| key.get().is_some_and(|key| key == name))
    }

    /// The value of a name, if it is there and could be read.
    pub fn get(&self, name: &str) -> Option<&T> {
        self.entry(name).and_then(|(_, value)| value.get())
    }

    /// All names in the order of the file.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        self.0
            .iter()
            .filter_map(|(name, _)| name.get().map(String::as_str))
    }

    /// How many entries there are.
    pub fn len(&self) -> usize {
        self.0.len()
    }

    /// Whether there are none.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }
}

/// The entries of a map that may be absent, in the order of the file.
pub fn entries<T>(map: Option<&At<Named<T>>>) -> impl Iterator<Item = (&At<String>, &At<T>)> {
    map.and_then(At::get).into_iter().flat_map(Named::iter)
}

/// The items of a list that may be absent; those that could not be read are left out.
pub fn items<T>(list: Option<&At<Vec<At<T>>>>) -> impl Iterator<Item = &T> {
    list.and_then(At::get)
        .into_iter()
        .flatten()
        .filter_map(At::get)
}

impl<T> FromIterator<(At<String>, At<T>)> for Named<T> {
    fn from_iter<I: IntoIterator<Item = (At<String>, At<T>)>>(entries: I) -> Self {
        Self(entries.into_iter().collect())
    }
}

impl<'de, T: Deserialize<'de>> Deserialize<'de> for Named<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_map(Entries(PhantomData))
    }
}

struct Entries<T>(PhantomData<T>);

impl<'de, T: Deserialize<'de>> Visitor<'de> for Entries<T> {
    type Value = Named<T>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("map")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Named<T>, A::Error> {
        let mut entries = Vec::with_capacity(map.size_hint().unwrap_or(0));
        while let Some(entry) = map.next_entry()? {
            entries.push(entry);
        }
        Ok(Named(entries))
    }
}

/// One value or a list of them: `with: HW-07` and `with: [HW-07, HW-08]` are both understood.
#[derive(Clone, Debug, PartialEq)]
pub struct OneOrMany<T>(Vec<At<T>>);

impl<T> OneOrMany<T> {
    /// All entries in the order of the file.
    pub fn iter(&self) -> impl ExactSizeIterator<Item = &At<T>> {
        self.0.iter()
    }

    /// The values that could be read.
    pub fn values(&self) -> impl Iterator<Item = &T> {
        self.0.iter().filter_map(At::get)
    }
}

impl<'de, T: Deserialize<'de>> Deserialize<'de> for OneOrMany<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_newtype_struct(MANY, Elements(PhantomData))
    }
}

struct Elements<T>(PhantomData<T>);

impl<'de, T: Deserialize<'de>> Visitor<'de> for Elements<T> {
    type Value = OneOrMany<T>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("one value or a list of values")
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut elements: A) -> Result<OneOrMany<T>, A::Error> {
        let mut values = Vec::new();
        while let Some(value) = elements.next_element()? {
            values.push(value);
        }
        Ok(OneOrMany(values))
    }
}
