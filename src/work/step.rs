//! One step of the work: who does it, when, and what is set, read, signed or decided in it.

use crate::job::Class;
use crate::joint::{Lack, ToolReading};
use crate::units::{Angle, Dimension, Quantity};

use super::{Bound, HazardKind, Limit, Phase, Role, Value, Values};

/// How much a step matters to the crew's card.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Priority {
    /// It never gives way; a second sheet comes instead.
    Must,
    /// It may go from a full card, the highest rank first; the pack says it all the same.
    May(u8),
    /// It stands in the pack only.
    PackOnly,
}

/// Another part of the same card asks for the same.
pub const REPEATED: Priority = Priority::May(2);
/// Good practice that the pack says too.
pub const OPTIONAL: Priority = Priority::May(1);

/// One step.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// Its id; `step.<method>.<id>`, else `step.common.<id>`, holds its words.
    pub id: &'static str,
    /// Where in the work it stands.
    pub phase: Phase,
    /// Who does it.
    pub who: Role,
    /// What it is.
    pub kind: Kind,
    /// What its words name.
    pub values: Values,
    /// The limits within which it is accepted.
    pub accept: Vec<Limit>,
    /// The hazards that it meets; their cautions stand before it.
    pub meets: &'static [HazardKind],
    /// How much it matters to the card.
    pub priority: Priority,
}

/// What a step is.
#[derive(Clone, Debug, PartialEq)]
pub enum Kind {
    /// Something is done and nothing is written.
    Act,
    /// Something is ticked when it was seen.
    Tick,
    /// Something is set.
    Setting(Setting),
    /// Something is read and written.
    Reading(Reading),
    /// Somebody accepts or signs.
    Point(Point),
    /// When this, then that.
    Decision,
}

/// A pass or round.
#[derive(Clone, Debug, PartialEq)]
pub struct Setting {
    /// Its name on paper: `P3`, `R1`, `C0`.
    pub name: String,
    /// What is set.
    pub set: Set,
    /// The share of the full value.
    pub share: Option<f64>,
    /// In which order.
    pub order: Sequence,
    /// What is predicted after it.
    pub expected: Option<Expected>,
    /// Whether it only says what a further round reaches; it may go from the card.
    pub further: bool,
}

/// What is set: by tools, by a turn, or in words.
#[derive(Clone, Debug, PartialEq)]
pub enum Set {
    /// What each tool shows; one tool, or several on one pump.
    Tools(Vec<ToolReading>),
    /// A turn in rad, below zero where it loosens.
    Turn(f64),
    /// A word below `word`: slack, off, by hand.
    Word(&'static str),
    /// A value that is named and not set: what is expected.
    Value(Value),
    /// Not known, and who must give it.
    Missing(Lack),
}

impl Set {
    /// One reading, or what it lacks.
    pub fn by(reading: Result<ToolReading, Lack>) -> Self {
        reading.map_or_else(Self::Missing, |reading| Self::Tools(vec![reading]))
    }

    /// Back by an angle.
    pub fn back_by(angle: Result<Angle, Lack>) -> Self {
        angle.map_or_else(Self::Missing, |angle| Self::Turn(-angle.si()))
    }

    /// As a value that words may name.
    pub fn value(&self) -> Value {
        match self {
            Self::Tools(readings) => readings
                .first()
                .cloned()
                .map_or(Value::OnCard, Value::Reading),
            Self::Turn(turn) => Value::Si(turn.abs(), Dimension::Angle),
            Self::Word(word) => Value::Word(word),
            Self::Value(value) => value.clone(),
            Self::Missing(lack) => Value::Missing(*lack),
        }
    }
}

/// In which order fasteners are gone through.
#[derive(Clone, Debug, PartialEq)]
pub enum Sequence {
    /// By the printed order of the joint.
    Order,
    /// Round the circle, one after the other.
    Circle,
    /// These first, then all.
    First(Vec<usize>),
    /// As the words of the step say.
    AsWorded,
}

/// Predicted, never measured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Expected {
    /// Low, likely and high share of the target load.
    pub load: [f64; 3],
    /// Largest turn in rad, likely.
    pub turn: Option<f64>,
    /// The same at the high end.
    pub turn_most: Option<f64>,
    /// Highest load of one fastener as a share.
    pub peak: Option<f64>,
}

/// A value that is read and written.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// Where readings of one kind stand together.
    pub section: Section,
    /// Names of the rows of boxes; none for one box.
    pub rows: Vec<Value>,
    /// Names of the columns of boxes; none for one box.
    pub columns: Vec<Value>,
    /// What is read; none for words or numbers without a unit.
    pub dimension: Option<Dimension>,
    /// Names of the settings after which it is read.
    pub after: Vec<String>,
}

impl Reading {
    pub(super) const fn new(section: Section) -> Self {
        Self {
            section,
            rows: Vec::new(),
            columns: Vec::new(),
            dimension: None,
            after: Vec::new(),
        }
    }
}

/// Where readings of one kind stand together on the record side.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Section {
    /// Tools used.
    Tools,
    /// Batches and numbers of what was fitted.
    Materials,
    /// Measured before the work.
    AsFound,
    /// Gaps after passes.
    Gaps,
    /// Rounds made and what turned in them.
    Rounds,
    /// Proof of load.
    Load,
    /// Thread past the nuts.
    Protrusion,
    /// What came off, and its condition.
    Removed,
}

impl Section {
    /// The key of its title.
    pub const fn key(self) -> &'static str {
        match self {
            Self::Tools => "tools",
            Self::Materials => "materials",
            Self::AsFound => "as_found",
            Self::Gaps => "gaps",
            Self::Rounds => "rounds",
            Self::Load => "load",
            Self::Protrusion => "protrusion",
            Self::Removed => "removed",
        }
    }
}

/// A point at which somebody accepts. It holds no value of its own: it covers steps and shows their limits.
#[derive(Clone, Debug, PartialEq)]
pub struct Point {
    /// `H3`; a signature at the end has none.
    pub name: Option<String>,
    /// For the classes A, B and C.
    pub attendance: [Attendance; 3],
    /// Who signs.
    pub signs: Role,
    /// Who signs beside him.
    pub also: Option<Role>,
    /// Ids of the steps whose limits are accepted here.
    pub covers: &'static [&'static str],
}

/// How a point is attended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Attendance {
    /// Work stops until it is signed.
    Hold,
    /// It is announced and signed by who comes.
    Witness,
    /// The record is reviewed, for a sample of joints.
    Review,
    /// Looked at in passing; no box.
    Surveillance,
    /// Not in this class.
    Off,
}

impl Attendance {
    /// The key of its letter and word.
    pub const fn key(self) -> &'static str {
        match self {
            Self::Hold => "hold",
            Self::Witness => "witness",
            Self::Review => "review",
            Self::Surveillance => "surveillance",
            Self::Off => "off",
        }
    }

    /// Whether somebody signs on the card.
    pub const fn is_signed(self) -> bool {
        matches!(self, Self::Hold | Self::Witness)
    }
}

impl Point {
    /// How it is attended in a class.
    pub const fn attendance_of(&self, class: Class) -> Attendance {
        match class {
            Class::A => self.attendance[0],
            Class::B => self.attendance[1],
            Class::C => self.attendance[2],
        }
    }
}

impl Setting {
    pub(super) const fn new(name: String, set: Set, order: Sequence) -> Self {
        Self {
            name,
            set,
            share: None,
            order,
            expected: None,
            further: false,
        }
    }

    /// What it adds to the values of its step: what is set and the share of the full value.
    pub fn values(&self) -> Values {
        let mut values = vec![("set", self.set.value())];
        values.extend(self.share.map(|share| ("share", Value::Percent(share))));
        values
    }
}

impl Step {
    pub(super) const fn new(id: &'static str, phase: Phase, kind: Kind) -> Self {
        Self {
            id,
            phase,
            who: Role::Technician,
            kind,
            values: Vec::new(),
            accept: Vec::new(),
            meets: &[],
            priority: Priority::Must,
        }
    }

    /// A value that its words name.
    pub fn with(&mut self, name: &'static str, value: Value) -> &mut Self {
        self.values.push((name, value));
        self
    }

    /// A limit within which it is accepted.
    pub fn accept(&mut self, id: &'static str, bound: Bound) -> &mut Self {
        self.accept.push(Limit::new(id, bound));
        self
    }

    /// The hazards that it meets.
    pub const fn meets(&mut self, hazards: &'static [HazardKind]) -> &mut Self {
        self.meets = hazards;
        self
    }

    /// How much it matters to the card.
    pub const fn priority(&mut self, priority: Priority) -> &mut Self {
        self.priority = priority;
        self
    }

    /// Who does it.
    pub const fn by(&mut self, who: Role) -> &mut Self {
        self.who = who;
        self
    }

    /// The steps whose limits are accepted; of a point.
    pub const fn covers(&mut self, ids: &'static [&'static str]) -> &mut Self {
        if let Kind::Point(point) = &mut self.kind {
            point.covers = ids;
        }
        self
    }

    /// Who signs beside the first; of a point.
    pub const fn also(&mut self, who: Role) -> &mut Self {
        if let Kind::Point(point) = &mut self.kind {
            point.also = Some(who);
        }
        self
    }

    /// The share of the full value; of a setting.
    pub fn share(&mut self, share: f64) -> &mut Self {
        if let Kind::Setting(setting) = &mut self.kind {
            setting.share = Some(share);
        }
        self
    }

    /// What is predicted after it; of a setting.
    pub fn expect(&mut self, expected: Expected) -> &mut Self {
        if let Kind::Setting(setting) = &mut self.kind {
            setting.expected = Some(expected);
        }
        self
    }

    /// It only says what a further round reaches; of a setting.
    pub fn further(&mut self) -> &mut Self {
        if let Kind::Setting(setting) = &mut self.kind {
            setting.further = true;
        }
        self
    }

    /// The names of rows and columns of boxes; of a reading.
    pub fn grid(&mut self, rows: Vec<Value>, columns: Vec<Value>) -> &mut Self {
        if let Kind::Reading(reading) = &mut self.kind {
            (reading.rows, reading.columns) = (rows, columns);
        }
        self
    }

    /// What is read; of a reading.
    pub fn dimension(&mut self, dimension: Dimension) -> &mut Self {
        if let Kind::Reading(reading) = &mut self.kind {
            reading.dimension = Some(dimension);
        }
        self
    }

    /// The settings after which it is read; of a reading.
    pub fn after(&mut self, settings: Vec<String>) -> &mut Self {
        if let Kind::Reading(reading) = &mut self.kind {
            reading.after = settings;
        }
        self
    }
}
