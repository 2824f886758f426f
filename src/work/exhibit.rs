//! What only a calculation note or the plan of a pack prints of a method: tables of typed cells, and the chart of what
//! is predicted from setting to setting.

use crate::calc::Key;
use crate::units::{Angle, Quantity};

use super::{Value, Values, Work};

/// A table or chart under its title, with the notes below it.
#[derive(Clone, Debug, PartialEq)]
pub struct Exhibit {
    /// `exhibit.<id>` holds its title, the heads of its columns and the words of its notes.
    pub id: &'static str,
    /// What is shown.
    pub shape: Shape,
    /// Notes below it, each with what its words name.
    pub notes: Vec<(&'static str, Values)>,
    /// A result whose formula is printed below it.
    pub formula: Option<Key>,
}

/// How an exhibit is shown.
#[derive(Clone, Debug, PartialEq)]
pub enum Shape {
    /// Row below row.
    Table(Table),
    /// Few columns and many rows, which stand side by side: a crew reads one value off another.
    Strip(Table),
    /// Drawn.
    Chart(Chart),
}

/// Typed cells.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Table {
    /// Ids of the heads of the columns, below the id of the exhibit.
    pub columns: Vec<&'static str>,
    /// The cells, row by row; a word among them stands below the id of the exhibit.
    pub rows: Vec<Vec<Value>>,
}

/// Load after each setting, and turn in those at full value.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Chart {
    /// Load after each setting of which one is predicted.
    pub loads: Vec<LoadAfter>,
    /// Turn in each setting of which one is predicted.
    pub turns: Vec<TurnIn>,
    /// Turns at which the work may end, each with the id of its words.
    pub ends: Vec<(&'static str, Angle)>,
}

/// The load after a setting.
#[derive(Clone, Debug, PartialEq)]
pub struct LoadAfter {
    /// The name of the setting.
    pub name: String,
    /// Low, likely and high share of the target load.
    pub load: [f64; 3],
}

/// The largest turn in a setting.
#[derive(Clone, Debug, PartialEq)]
pub struct TurnIn {
    /// The name of the setting.
    pub name: String,
    /// Likely.
    pub likely: Angle,
    /// High.
    pub high: Angle,
}

impl Exhibit {
    /// Without notes.
    pub const fn new(id: &'static str, shape: Shape) -> Self {
        Self {
            id,
            shape,
            notes: Vec::new(),
            formula: None,
        }
    }

    /// With a note below it.
    #[must_use]
    pub fn note(mut self, id: &'static str, values: Values) -> Self {
        self.notes.push((id, values));
        self
    }
}

impl Chart {
    /// What is predicted of each setting of a work; empty where nothing is.
    pub fn new(work: &Work, ends: Vec<(&'static str, Angle)>) -> Self {
        let mut chart = Self {
            ends,
            ..Self::default()
        };
        for (_, setting) in work.settings() {
            let Some(expected) = setting.expected else {
                continue;
            };
            chart.loads.push(LoadAfter {
                name: setting.name.clone(),
                load: expected.load,
            });
            if let Some(likely) = expected.turn {
                chart.turns.push(TurnIn {
                    name: setting.name.clone(),
                    likely: Angle::from_si(likely),
                    high: Angle::from_si(expected.turn_most.unwrap_or(likely)),
                });
            }
        }
        chart
    }
}
