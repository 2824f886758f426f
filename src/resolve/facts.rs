//! Keys of the table as facts: what a group of keys says, our default, or who must be asked.

use crate::job::table::Key;
use crate::job::values::Plain;
use crate::joint::{Fact, Level};
use crate::yaml::At;

impl<G, T> Key<G, T> {
    /// Not known; whoever answers for the key must give it.
    pub(super) fn missing<U>(&self) -> Fact<U> {
        Fact::missing(self.field.path, self.field.who)
    }

    /// A default of ours that this key replaces.
    pub(super) fn defaulted<U>(&self, value: U) -> Fact<U> {
        Fact::default(value, self.field.path)
    }

    /// A default that hangs on other facts; missing where these are.
    pub(super) fn default_or_missing<U>(&self, value: Option<U>) -> Fact<U> {
        value.map_or_else(|| self.missing(), |value| self.defaulted(value))
    }
}

impl<G, T: Plain> Key<G, T> {
    /// What holds where nobody says anything: the default of the table, if it has one.
    pub(super) fn absent(&self) -> Fact<T::Plain> {
        self.default_or_missing(self.default.map(|default| default().plain()))
    }

    /// What a group says, where it says anything.
    pub(super) fn given(&self, group: Option<&G>, level: Level) -> Option<Fact<T::Plain>> {
        let (value, place) = group.and_then(self.get)?.both()?;
        Some(Fact::job(value.plain(), place, level))
    }

    /// What a group of that level says, else what holds without it.
    pub(super) fn at_level(&self, group: Option<&G>, level: Level) -> Fact<T::Plain> {
        self.given(group, level).unwrap_or_else(|| self.absent())
    }

    /// The same of an entry of a shared list, or of no entry.
    pub(super) fn shared(&self, entry: Option<&G>) -> Fact<T::Plain> {
        self.at_level(entry, Level::Shared)
    }

    /// The value alone, where nothing asks where it comes from.
    pub(super) fn value(&self, group: Option<&G>) -> Option<T::Plain> {
        group.and_then(self.get).and_then(At::get).map(T::plain)
    }
}
