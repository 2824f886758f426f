//! A joint laid over its family: the nearest value wins, leaf by leaf.

use crate::job::table::Key;
use crate::job::values::Plain;
use crate::job::{
    Anchor, Checks, Clearance, JointEntry, JointKeys, Loosen, Recheck, Service, Studs, Target,
    Tighten,
};
use crate::joint::{Fact, Level};
use crate::report::Place;
use crate::yaml::At;

/// A group of keys that a family and a joint may have.
pub(super) trait OfJoint: Sized + 'static {
    fn of(keys: &JointKeys) -> Option<&Self>;
}

impl OfJoint for JointKeys {
    fn of(keys: &JointKeys) -> Option<&Self> {
        Some(keys)
    }
}

macro_rules! of_joint {
    ($($group:ident $name:ident)*) => { $(
        impl OfJoint for $group {
            fn of(keys: &JointKeys) -> Option<&Self> {
                keys.$name.as_ref()?.get()
            }
        }
    )* };
}
of_joint! {
    Service service  Studs studs  Target target  Tighten tighten  Loosen loosen  Checks checks  Clearance clearance  Anchor anchor
    Recheck recheck
}

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
    /// `family` is the family of that joint with its name, if it is described.
    pub(super) fn new(joint: &'a JointEntry, family: Option<(&'a str, &'a JointKeys)>) -> Self {
        Self { joint, family }
    }

    pub(super) fn family_name(&self) -> Option<String> {
        self.family.map(|(name, _)| name.to_owned())
    }

    /// The keys of the family, then those of the joint.
    pub(super) fn family_keys(&self) -> impl Iterator<Item = (&'a JointKeys, Level)> {
        let family = self.family.map(|(_, keys)| (keys, Level::Family));
        let own: &'a JointKeys = &self.joint.keys;
        family.into_iter().chain([(own, Level::Joint)])
    }

    /// Where the joint itself stands.
    pub(super) fn place(&self) -> Place {
        self.joint.tag.place()
    }

    fn nearest<G: OfJoint, T>(&self, key: &Key<G, T>) -> Option<(&'a At<T>, Level)> {
        let of = |keys: &'a JointKeys| G::of(keys).and_then(key.get);
        let own = of(&self.joint.keys).map(|at| (at, Level::Joint));
        own.or_else(|| Some((of(self.family?.1)?, Level::Family)))
    }

    /// What the nearest layer says of a key, with the value or without.
    pub(super) fn at<G: OfJoint, T>(&self, key: &Key<G, T>) -> Option<&'a At<T>> {
        self.nearest(key).map(|(at, _)| at)
    }

    /// The same where the value could be read.
    pub(super) fn leaf<G: OfJoint, T>(&self, key: &Key<G, T>) -> Option<Leaf<'a, T>> {
        let (at, level) = self.nearest(key)?;
        let (value, place) = at.both()?;
        Some(Leaf {
            value,
            place,
            level,
        })
    }

    /// The same as a fact, where nothing prints for a value that no layer has.
    pub(super) fn given<G: OfJoint, T: Plain>(&self, key: &Key<G, T>) -> Option<Fact<T::Plain>> {
        self.leaf(key)
            .map(|leaf| Fact::job(leaf.value.plain(), leaf.place, leaf.level))
    }

    /// The same; without a value the default of the table, or missing.
    pub(super) fn fact<G: OfJoint, T: Plain>(&self, key: &Key<G, T>) -> Fact<T::Plain> {
        self.given(key).unwrap_or_else(|| key.absent())
    }

    /// The value alone, where nothing asks where it comes from.
    pub(super) fn value<G: OfJoint, T: Plain>(&self, key: &Key<G, T>) -> Option<T::Plain> {
        self.leaf(key).map(|leaf| leaf.value.plain())
    }
}
