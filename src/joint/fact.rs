//! Values with their origin, and values that are missing.

use std::sync::Arc;

use crate::job::Who;
use crate::report::Place;

/// Which part of the job said it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Level {
    /// The pack or a shared list (lubricants, tools...).
    Shared,
    /// The family.
    Family,
    /// The joint itself.
    Joint,
}

/// Where a value comes from.
#[derive(Clone, Debug)]
pub enum Origin {
    /// The job says so.
    Job {
        /// Where.
        place: Place,
        /// At which level.
        level: Level,
    },
    /// A row of a published table.
    Table {
        /// Document and row.
        row: Arc<str>,
        /// Whether a published source was read; otherwise "not confirmed" is printed.
        confirmed: bool,
    },
    /// Our default; printed as one.
    Default {
        /// The key that replaces it.
        key: &'static str,
    },
    /// Worked out from other values of the joint.
    Computed,
}

/// Two origins are alike when a reader would be told the same kind of thing; the line of the job
/// does not count, so that joints which say the same in different lines share a calculation.
impl PartialEq for Origin {
    fn eq(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Job { level: a, .. }, Self::Job { level: b, .. }) => a == b,
            (
                Self::Table {
                    row: a,
                    confirmed: x,
                },
                Self::Table {
                    row: b,
                    confirmed: y,
                },
            ) => a == b && x == y,
            (Self::Default { key: a }, Self::Default { key: b }) => a == b,
            (Self::Computed, Self::Computed) => true,
            _ => false,
        }
    }
}

/// What is missing and who must give it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Lack {
    /// The key of the job that would give it.
    pub key: &'static str,
    /// Who must give it.
    pub who: Who,
}

/// A value with its origin, or the knowledge that it is missing.
#[derive(Clone, Debug, PartialEq)]
pub enum Fact<T> {
    /// Known.
    Known {
        /// The value.
        value: T,
        /// Where it comes from.
        origin: Origin,
    },
    /// Missing.
    Missing {
        /// The key of the job that would give it.
        key: &'static str,
        /// Who must give it.
        who: Who,
    },
}

impl<T> Fact<T> {
    /// A value from the job.
    pub fn job(value: T, place: Place, level: Level) -> Self {
        Self::Known {
            value,
            origin: Origin::Job { place, level },
        }
    }

    /// A row of a published table.
    pub fn table(value: T, row: impl Into<Arc<str>>, confirmed: bool) -> Self {
        Self::Known {
            value,
            origin: Origin::Table {
                row: row.into(),
                confirmed,
            },
        }
    }

    /// Our default.
    pub fn default(value: T, key: &'static str) -> Self {
        Self::Known {
            value,
            origin: Origin::Default { key },
        }
    }

    /// Worked out from others.
    pub fn computed(value: T) -> Self {
        Self::Known {
            value,
            origin: Origin::Computed,
        }
    }

    /// Missing.
    pub const fn missing(key: &'static str, who: Who) -> Self {
        Self::Missing { key, who }
    }

    /// The value, if it is known.
    pub fn get(&self) -> Option<&T> {
        match self {
            Self::Known { value, .. } => Some(value),
            Self::Missing { .. } => None,
        }
    }

    /// Its origin, if it is known.
    pub fn origin(&self) -> Option<&Origin> {
        match self {
            Self::Known { origin, .. } => Some(origin),
            Self::Missing { .. } => None,
        }
    }

    /// The place in the job, if the job says it.
    pub fn place(&self) -> Option<Place> {
        match self.origin() {
            Some(Origin::Job { place, .. }) => Some(*place),
            _ => None,
        }
    }

    /// Whether it is our default.
    pub fn is_default(&self) -> bool {
        matches!(self.origin(), Some(Origin::Default { .. }))
    }

    /// This fact, or `other` where this one is missing.
    #[must_use]
    pub fn or(self, other: impl FnOnce() -> Self) -> Self {
        match self {
            Self::Known { .. } => self,
            Self::Missing { .. } => other(),
        }
    }

    /// The same with the value turned into another; the origin stays.
    pub fn map<U>(self, turn: impl FnOnce(T) -> U) -> Fact<U> {
        match self {
            Self::Known { value, origin } => Fact::Known {
                value: turn(value),
                origin,
            },
            Self::Missing { key, who } => Fact::Missing { key, who },
        }
    }
}

impl<T: Copy> Fact<T> {
    /// The value, if it is known.
    pub fn value(&self) -> Option<T> {
        self.get().copied()
    }
}
