//! The one number, at most two more, and the facts.

use serde::Serialize;

use super::{Amount, Checker, Fits};
use crate::document::geometry::{Geometry, Mm};

/// What to set, and with what.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Keys {
    /// The one number of the side.
    pub main: MainValue,
    /// Beside it: seat torque, level of the driver, expected break-out; at most two.
    pub others: Vec<SideValue>,
    /// Studs first, then tools, pump, lubricant, socket: at most six.
    pub facts: Vec<Fact>,
}

/// What to set, or what never to exceed.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct MainValue {
    /// What the large value is.
    pub label: String,
    /// The number.
    pub value: Amount,
    /// Its digits in words, or a remark.
    pub words: String,
    /// The other unit, the torque of a pressure, or the range in which nuts are expected to move.
    pub second: Option<Second>,
}

/// The second value.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Second {
    /// The number or range.
    pub number: String,
    /// The unit.
    pub unit: String,
    /// What it is.
    pub words: String,
}

/// A value beside the one number.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SideValue {
    /// What it is: `Driver MD-2, limit`.
    pub label: String,
    /// Number or range, with its unit.
    pub value: Amount,
    /// What goes with it: `80 %, never above 280`; may be empty.
    pub words: String,
}

/// A line beside the values.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Fact {
    /// What.
    pub label: String,
    /// Which; a fact has no unit of its own.
    pub value: Amount,
}

/// Most values beside the one number, and most facts.
const MOST: [usize; 2] = [2, 6];

impl Keys {
    fn facts_at(&self, g: &Geometry) -> Mm {
        if self.others.is_empty() {
            g.keys.facts_at
        } else {
            g.keys.beside_facts_at
        }
    }

    /// Size of type of a fact in pt: larger where nothing stands between it and the one number.
    fn fact_size(&self, index: usize, g: &Geometry) -> f64 {
        match (self.others.is_empty(), index) {
            (true, 0) => g.sizes.head,
            (true, _) => g.sizes.step,
            (false, _) => g.sizes.text,
        }
    }
}

fn fact_height(index: usize, fact: &Fact, g: &Geometry) -> Mm {
    match fact.value {
        Amount::Missing { .. } => g.keys.missing_fact,
        Amount::Given { .. } if index == 0 => g.keys.first_fact,
        Amount::Given { .. } => g.keys.fact,
    }
}

fn value(check: &mut Checker, it: &SideValue, g: &Geometry) {
    let room = g.keys.other_room;
    check.line("keys.label", &it.label, g.sizes.text, room);
    match &it.value {
        Amount::Missing { by } => {
            check.line("keys.missing", by, g.sizes.note, room - Mm::new(7.0));
        }
        Amount::Given { number, unit } => {
            let parts = [(&**number, g.sizes.head), (&**unit, g.sizes.step)];
            check.joined("keys.value", &parts, Mm::new(2.0), room);
            check.line("keys.words", &it.words, g.sizes.text, room);
        }
    }
}

impl Fits for Keys {
    fn heights(&self, _: Mm, g: &Geometry) -> [Mm; 2] {
        let main = match self.main.second {
            Some(_) => g.keys.with_second,
            None => g.keys.height,
        };
        let facts = self.facts.iter().enumerate();
        let facts = facts
            .map(|(index, fact)| fact_height(index, fact, g))
            .sum::<Mm>()
            + g.keys.pad;
        [main.max(g.keys.other.times(self.others.len())).max(facts); 2]
    }

    fn texts(&self, width: Mm, g: &Geometry, check: &mut Checker) {
        check.items("keys.others", self.others.len(), MOST[0]);
        check.items("keys.facts", self.facts.len(), MOST[1]);
        let room = if self.others.is_empty() {
            g.keys.room
        } else {
            g.keys.beside_room
        };
        check.line("keys.label", &self.main.label, g.sizes.text, room);
        check.line("keys.words", &self.main.words, g.sizes.text, room);
        match &self.main.value {
            Amount::Missing { by } => {
                check.line("keys.missing", by, g.sizes.note, room - Mm::new(7.0))
            }
            Amount::Given { number, unit } => {
                let parts = [(&**number, g.sizes.value), (&**unit, g.sizes.head)];
                check.joined("keys.value", &parts, Mm::new(3.0), room);
            }
        }
        if let Some(it) = &self.main.second {
            let parts = [
                (&*it.number, g.sizes.head),
                (&*it.unit, g.sizes.step),
                (&*it.words, g.sizes.text),
            ];
            check.joined("keys.second", &parts, Mm::new(4.0), room);
        }
        for it in &self.others {
            value(check, it, g);
        }
        let room = width - self.facts_at(g) - g.keys.label;
        for (index, fact) in self.facts.iter().enumerate() {
            check.line(
                "facts.label",
                &fact.label,
                g.sizes.text,
                g.keys.label - Mm::new(0.5),
            );
            match &fact.value {
                Amount::Missing { by } => {
                    check.line("facts.missing", by, g.sizes.note, room - Mm::new(3.0))
                }
                Amount::Given { number, .. } => {
                    check.line("facts.value", number, self.fact_size(index, g), room)
                }
            }
        }
    }
}
