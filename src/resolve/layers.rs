//! A joint laid over its family: the nearest value wins, leaf by leaf.

use crate::job::{JointEntry, JointKeys};
use crate::joint::{Fact, Level, Who};
use crate::report::Place;
use crate::yaml::At;

use super::Catalog;

/// The keys that may speak for one joint, nearest first.
pub(super) struct Layers<'a> {
    joint: &'a JointEntry,
    family: Option<(&'a str, &'a JointKeys)>,
}

/// A value that was found, with its place and level.
pub(super) struct Leaf<'a, T> {
    pub(super) value: &'a T,
    pub(super) place: Place,
    pub(super) level: Level,
}

impl<'a> Layers<'a> {
    pub(super) fn new(joint: &'a JointEntry, catalog: &Catalog<'a>) -> Self {
        let family = joint
            .family
            .as_ref()
            .and_then(At::get)
            .and_then(|name| catalog.family(name.as_str()));
        Self { joint, family }
    }

    pub(super) fn family_name(&self) -> Option<String> {
        self.family.map(|(name, _)| name.to_owned())
    }

    /// Where the joint itself stands.
    pub(super) fn place(&self) -> Place {
        self.joint.tag.place()
    }

    /// What the nearest layer says of a leaf, with the value or without.
    pub(super) fn at<T: 'a>(
        &self,
        get: impl Fn(&'a JointKeys) -> Option<&'a At<T>>,
    ) -> Option<&'a At<T>> {
        get(&self.joint.keys).or_else(|| self.family.and_then(|(_, keys)| get(keys)))
    }

    /// The nearest layer in which `get` finds a leaf that could be read.
    pub(super) fn leaf<T: 'a>(
        &self,
        get: impl Fn(&'a JointKeys) -> Option<&'a At<T>>,
    ) -> Option<Leaf<'a, T>> {
        let own = get(&self.joint.keys).map(|at| (at, Level::Joint));
        let found = own.or_else(|| {
            self.family
                .and_then(|(_, keys)| get(keys))
                .map(|at| (at, Level::Family))
        })?;
        let (at, level) = found;
        at.get().map(|value| Leaf {
            value,
            place: at.place(),
            level,
        })
    }

    /// The same as a fact; missing under `key` if no layer has it.
    pub(super) fn fact<T: Copy + 'a>(
        &self,
        key: &'static str,
        who: Who,
        get: impl Fn(&'a JointKeys) -> Option<&'a At<T>>,
    ) -> Fact<T> {
        match self.leaf(get) {
            Some(leaf) => Fact::job(*leaf.value, leaf.place, leaf.level),
            None => Fact::missing(key, who),
        }
    }

    /// The same where nothing prints for a value that no layer has.
    pub(super) fn given<T: Copy + 'a>(
        &self,
        get: impl Fn(&'a JointKeys) -> Option<&'a At<T>>,
    ) -> Option<Fact<T>> {
        self.leaf(get)
            .map(|leaf| Fact::job(*leaf.value, leaf.place, leaf.level))
    }

    /// The same for a text.
    pub(super) fn text<const MAX: usize>(
        &self,
        key: &'static str,
        who: Who,
        get: impl Fn(&'a JointKeys) -> Option<&'a At<crate::yaml::Text<MAX>>>,
    ) -> Fact<String> {
        match self.leaf(get) {
            Some(leaf) => Fact::job(leaf.value.as_str().to_owned(), leaf.place, leaf.level),
            None => Fact::missing(key, who),
        }
    }
}

/// A field of one of the nested maps of a joint: `nested!(keys.studs.count)`.
macro_rules! nested {
    ($group:ident . $field:ident) => {
        |keys| {
            keys.$group
                .as_ref()
                .and_then($crate::yaml::At::get)
                .and_then(|group| group.$field.as_ref())
        }
    };
}
pub(super) use nested;

/// Such a field as a fact that is missing under its own name: `fact!(layers, studs.grip, Planner)`.
macro_rules! fact {
    ($layers:expr, $group:ident . $field:ident, $who:ident) => {
        $layers.fact(
            concat!(stringify!($group), ".", stringify!($field)),
            Who::$who,
            nested!($group.$field),
        )
    };
}
pub(super) use fact;
