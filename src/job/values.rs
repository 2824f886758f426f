//! What may stand behind a key: how checks see it, and what it means once it is read.

use super::table::{Field, Kind};
use crate::report::Place;
use crate::units::{self, Count, Dimension, Quantity};
use crate::yaml::{At, Named, OneOrMany, Prose, Text};

/// A value as a check sees it.
#[derive(Clone, Copy, Debug)]
pub enum Leaf<'a> {
    /// A number in SI.
    Si(f64, Dimension),
    /// A text, or the name of an entry.
    Text(&'a str),
}

/// Who looks at all values of a job.
pub trait Visit {
    /// One value.
    fn leaf(&mut self, field: &'static Field, leaf: Leaf<'_>, place: Place);
    /// What follows belongs to the joint of this tag, or to none.
    fn joint(&mut self, _tag: Option<&str>) {}
}

/// A type that may stand behind a key. What has neither a number nor a free text shows nothing.
pub trait Value {
    /// Its kind.
    const KIND: Kind = Kind::Value;
    /// Shows every number and text in it.
    fn walk(&self, _: &'static Field, _: Place, _: &mut dyn Visit) {}
}

/// A value without the places of the file, as the calculation reads it.
pub trait Plain {
    /// What it becomes.
    type Plain;
    /// The value itself.
    fn plain(&self) -> Self::Plain;
}

macro_rules! plain_copies {
    ($($type:ty)*) => { $(
        impl $crate::job::values::Plain for $type {
            type Plain = Self;
            fn plain(&self) -> Self { *self }
        }
    )* };
}
pub(super) use plain_copies;

macro_rules! quantities {
    ($($type:ident)*) => { $(
        impl Value for units::$type {
            fn walk(&self, field: &'static Field, place: Place, visit: &mut dyn Visit) {
                visit.leaf(field, Leaf::Si(self.si(), Self::DIMENSION), place);
            }
        }
        plain_copies! { units::$type }
    )* };
}
quantities! {
    Ratio Length Area Volume Force Stress Pressure Torque Angle Temperature Mass Duration Noise Acceleration Flow
}

impl Value for bool {}
impl Value for super::TorqueUnit {}
impl Value for units::Date {}
plain_copies! { bool units::Date }

impl Value for u32 {
    fn walk(&self, field: &'static Field, place: Place, visit: &mut dyn Visit) {
        visit.leaf(field, Leaf::Si(f64::from(*self), Dimension::Count), place);
    }
}

impl Plain for u32 {
    type Plain = Count;
    fn plain(&self) -> Count {
        Count::from_si(f64::from(*self))
    }
}

macro_rules! texts {
    ($($type:ident)*) => { $(
        impl<const MAX: usize> Value for $type<MAX> {
            fn walk(&self, field: &'static Field, place: Place, visit: &mut dyn Visit) {
                visit.leaf(field, Leaf::Text(self.as_str()), place);
            }
        }

        impl<const MAX: usize> Plain for $type<MAX> {
            type Plain = String;
            fn plain(&self) -> String {
                self.as_str().to_owned()
            }
        }
    )* };
}
texts! { Text Prose }

impl<T: Value> Value for At<T> {
    const KIND: Kind = T::KIND;
    fn walk(&self, field: &'static Field, _: Place, visit: &mut dyn Visit) {
        if let Some(value) = self.get() {
            value.walk(field, self.place(), visit);
        }
    }
}

macro_rules! lists {
    ($($list:ty)*) => { $(
        impl<T: Value + 'static> Value for $list {
            const KIND: Kind = Kind::List(&T::KIND);
            fn walk(&self, field: &'static Field, place: Place, visit: &mut dyn Visit) {
                self.iter().for_each(|item| item.walk(field, place, visit));
            }
        }

        /// Items that could not be read are left out; a finding names them.
        impl<T: Plain> Plain for $list {
            type Plain = Vec<T::Plain>;
            fn plain(&self) -> Self::Plain {
                self.iter().filter_map(At::get).map(T::plain).collect()
            }
        }
    )* };
}
lists! { Vec<At<T>> OneOrMany<T> }

impl<T: Value + 'static> Value for Named<T> {
    const KIND: Kind = Kind::Named(&T::KIND);
    fn walk(&self, field: &'static Field, place: Place, visit: &mut dyn Visit) {
        for (name, value) in self.iter() {
            if let Some(text) = name.get() {
                visit.leaf(field, Leaf::Text(text), name.place());
            }
            value.walk(field, place, visit);
        }
    }
}

impl<A: Value, B: Value> Value for (At<A>, At<B>) {
    fn walk(&self, field: &'static Field, place: Place, visit: &mut dyn Visit) {
        self.0.walk(field, place, visit);
        self.1.walk(field, place, visit);
    }
}
