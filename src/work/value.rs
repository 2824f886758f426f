//! Values that words may name, and limits within which a value is accepted.

use crate::joint::{Fact, Lack, ToolReading};
use crate::units::{Dimension, Quantity};

/// A value that words may name. A view prints it in the pack's units; a reading only on its tool's own scale.
#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    /// A quantity in SI.
    Si(f64, Dimension),
    /// A ratio that is printed in per cent.
    Percent(f64),
    /// A whole number of things.
    Count(usize),
    /// What a tool shows.
    Reading(ToolReading),
    /// Text of the job.
    Text(String),
    /// Other words, by their id below `word`.
    Word(&'static str),
    /// Names or numbers behind one another, joined by the view.
    List(Vec<Value>),
    /// Not known, and who must give it.
    Missing(Lack),
    /// Of several joints: from the least to the greatest.
    Span(Box<[Value; 2]>),
    /// Of several joints that have nothing in common: it stands on their cards.
    OnCard,
}

/// Names of several joints that stand behind one another; more are looked up on the cards.
const MOST_NAMES: usize = 3;

/// Values by the names under which words ask for them.
pub type Values = Vec<(&'static str, Value)>;

impl Value {
    /// A quantity.
    pub fn of<Q: Quantity>(value: Q) -> Self {
        Self::Si(value.si(), Q::DIMENSION)
    }

    /// A fact of the joint that is a quantity, or what it lacks.
    pub fn fact<Q: Quantity>(fact: &Fact<Q>) -> Self {
        match fact {
            Fact::Known { value, .. } => Self::of(*value),
            Fact::Missing { key, who } => Self::Missing(Lack { key, who: *who }),
        }
    }

    /// A fact of the joint that is a text, or what it lacks.
    pub fn text(fact: &Fact<String>) -> Self {
        match fact {
            Fact::Known { value, .. } => Self::Text(value.clone()),
            Fact::Missing { key, who } => Self::Missing(Lack { key, who: *who }),
        }
    }

    /// A reading, or what it lacks.
    pub fn reading(reading: Result<ToolReading, Lack>) -> Self {
        reading.map_or_else(Self::Missing, Self::Reading)
    }

    /// A quantity, or what it lacks.
    pub fn or_missing<Q: Quantity>(value: Result<Q, Lack>) -> Self {
        value.map_or_else(Self::Missing, Self::of)
    }

    /// Takes in the value of another joint: equal values stay, comparable ones become a span, a few names a list.
    pub(super) fn merge(&mut self, other: &Self) {
        if self == other || *self == Self::OnCard {
            return;
        }
        if self.is_name() && other.is_name() {
            self.add_names(other);
            if self.names().len() > MOST_NAMES {
                *self = Self::OnCard;
            }
            return;
        }
        let (least, most) = self.ends();
        let (other_least, other_most) = other.ends();
        *self = match (lower(least, other_least), higher(most, other_most)) {
            (Some(least), Some(most)) => Self::Span(Box::new([least, most])),
            _ => Self::OnCard,
        };
    }

    /// The same for what can hurt: every name is told, the greatest magnitude counts, or the least where `is_least`,
    /// and what is missing gives way to what is known.
    pub(super) fn gather(&mut self, other: &Self, is_least: bool) {
        match (&mut *self, other) {
            (_, Self::Missing(_)) => {}
            (Self::Missing(_), known) => *self = known.clone(),
            (own, other) if own.is_name() && other.is_name() => own.add_names(other),
            (own, other) => match own.is_less_than(other) {
                Some(is_less) if is_less != is_least => *self = other.clone(),
                Some(_) => {}
                None => own.merge(other),
            },
        }
    }

    /// Whether it is less than another; none where they cannot be compared.
    pub(super) fn is_less_than(&self, other: &Self) -> Option<bool> {
        Some(!is_at_most(other, self)?)
    }

    fn add_names(&mut self, other: &Self) {
        let mut names = self.names().to_vec();
        for name in other.names() {
            if !names.contains(name) {
                names.push(name.clone());
            }
        }
        if names.len() > 1 {
            *self = Self::List(names);
        }
    }

    const fn is_name(&self) -> bool {
        matches!(self, Self::Text(_) | Self::Word(_) | Self::List(_))
    }

    fn names(&self) -> &[Self] {
        match self {
            Self::List(names) => names,
            one => std::slice::from_ref(one),
        }
    }

    fn ends(&self) -> (Self, Self) {
        match self {
            Self::Span(ends) => (ends[0].clone(), ends[1].clone()),
            one => (one.clone(), one.clone()),
        }
    }
}

fn lower(one: Value, other: Value) -> Option<Value> {
    Some(if is_at_most(&one, &other)? {
        one
    } else {
        other
    })
}

fn higher(one: Value, other: Value) -> Option<Value> {
    Some(if is_at_most(&one, &other)? {
        other
    } else {
        one
    })
}

/// Whether one value is at most another; none where the two cannot be compared.
fn is_at_most(one: &Value, other: &Value) -> Option<bool> {
    match (one, other) {
        (Value::Si(a, of), Value::Si(b, other)) if of == other => Some(a <= b),
        (Value::Percent(a), Value::Percent(b)) => Some(a <= b),
        (Value::Count(a), Value::Count(b)) => Some(a <= b),
        (Value::Reading(a), Value::Reading(b)) => Some(std::ptr::eq(a.span(b)?[0], a)),
        _ => None,
    }
}

/// What is limited and how.
#[derive(Clone, Debug, PartialEq)]
pub struct Limit {
    /// `limit.<id>` names what is limited.
    pub id: &'static str,
    /// The bound.
    pub bound: Bound,
}

/// How a value is bounded.
#[derive(Clone, Debug, PartialEq)]
pub enum Bound {
    /// The value or less.
    AtMost(Value),
    /// The value or more.
    AtLeast(Value),
    /// Less than the value.
    Below(Value),
    /// From one to the other.
    Between(Value, Value),
    /// Not one.
    Zero,
    /// This and nothing else.
    Is(Value),
    /// Nothing but the words of the limit.
    Words,
}

impl Limit {
    /// A limit.
    pub const fn new(id: &'static str, bound: Bound) -> Self {
        Self { id, bound }
    }

    /// Whether the other limits the same thing in the same way.
    pub(super) fn is_like(&self, other: &Self) -> bool {
        self.id == other.id
            && std::mem::discriminant(&self.bound) == std::mem::discriminant(&other.bound)
    }

    /// The values of the bound.
    pub(super) fn values(&self) -> Vec<&Value> {
        match &self.bound {
            Bound::AtMost(value)
            | Bound::AtLeast(value)
            | Bound::Below(value)
            | Bound::Is(value) => vec![value],
            Bound::Between(least, most) => vec![least, most],
            Bound::Zero | Bound::Words => Vec::new(),
        }
    }

    /// The same, to be changed.
    pub(super) fn values_mut(&mut self) -> Vec<&mut Value> {
        match &mut self.bound {
            Bound::AtMost(value)
            | Bound::AtLeast(value)
            | Bound::Below(value)
            | Bound::Is(value) => vec![value],
            Bound::Between(least, most) => vec![least, most],
            Bound::Zero | Bound::Words => Vec::new(),
        }
    }
}
