//! What is done to a joint, said once: hazards, steps, settings, readings, points and the rule that ends the work.
//!
//! A method builds a [`Work`] for each of its tasks; cards, procedures, inspection plan, method statement and rules ask
//! it. No text stands here, only ids of the wording and typed values; no document and no method is named. A `Work` is
//! built, asked and dropped: kept for every joint of a large job it would be most of the memory.

mod exhibit;
mod hazard;
mod merge;
mod phase;
mod picture;
mod step;
mod value;

pub use exhibit::{Chart, Exhibit, LoadAfter, Shape, Table, TurnIn};
pub use hazard::{Family, Hazard, HazardKind, Signal};
pub use merge::merge_limits;
pub use phase::{Phase, Role};
pub use picture::{Mark, Marked, Picture, Pictured, Ring};
pub use step::{
    Attendance, Expected, Kind, OPTIONAL, Point, Priority, REPEATED, Reading, Section, Sequence,
    Set, Setting, Step,
};
pub use value::{Bound, Limit, Value, Values};

pub use crate::calc::labour::Task;
use crate::job::Class;

/// When the work is finished: every part must hold.
#[derive(Clone, Debug, PartialEq)]
pub struct StopRule {
    /// The step that is repeated until the rule holds.
    pub step: &'static str,
    /// What must hold.
    pub parts: Vec<Limit>,
    /// The last round; where the rule does not hold after it, the crew stops and calls.
    pub last: Option<String>,
}

/// A value beside the picture. The first is the one number of the card.
#[derive(Clone, Debug, PartialEq)]
pub struct KeyValue {
    /// `key.<id>` names its label and what stands below it.
    pub id: &'static str,
    /// What is set, or never exceeded.
    pub set: Set,
    /// What the words below it name.
    pub values: Values,
}

/// What is done to a joint in one task. Everything that prints or judges the work is a view of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Work {
    /// The group of the wording whose steps come before those that methods share. Opaque to its readers.
    pub method: &'static str,
    /// The task.
    pub task: Task,
    /// What can hurt.
    pub hazards: Vec<Hazard>,
    /// The values beside the picture.
    pub keys: Vec<KeyValue>,
    /// Facts that go with them: studs, tools, lubricant.
    pub facts: Values,
    /// The steps in the order of the work.
    pub steps: Vec<Step>,
    /// When it is finished.
    pub stop: Option<StopRule>,
    /// The picture.
    pub picture: Picture,
    /// How many joints were merged into it.
    pub joints: usize,
    phase: Phase,
}

impl Work {
    /// No steps yet.
    pub const fn new(method: &'static str, task: Task) -> Self {
        Self {
            method,
            task,
            hazards: Vec::new(),
            keys: Vec::new(),
            facts: Vec::new(),
            steps: Vec::new(),
            stop: None,
            picture: Picture::new(),
            joints: 1,
            phase: Phase::Before,
        }
    }

    /// The steps that follow belong to this phase.
    pub const fn phase(&mut self, phase: Phase) {
        self.phase = phase;
    }

    fn push(&mut self, id: &'static str, kind: Kind) -> &mut Step {
        let at = self.steps.len();
        self.steps.push(Step::new(id, self.phase, kind));
        &mut self.steps[at]
    }

    /// Something that is done and of which nothing is written.
    pub fn act(&mut self, id: &'static str) -> &mut Step {
        self.push(id, Kind::Act)
    }

    /// Something that is ticked when it was seen.
    pub fn tick(&mut self, id: &'static str) -> &mut Step {
        self.push(id, Kind::Tick)
    }

    /// When something happens, then...
    pub fn decide(&mut self, id: &'static str) -> &mut Step {
        self.push(id, Kind::Decision)
    }

    /// A pass or round under its name on paper.
    pub fn set(
        &mut self,
        id: &'static str,
        name: impl Into<String>,
        set: Set,
        order: Sequence,
    ) -> &mut Step {
        self.push(id, Kind::Setting(Setting::new(name.into(), set, order)))
    }

    /// A value that is read and written.
    pub fn read(&mut self, id: &'static str, section: Section) -> &mut Step {
        self.push(id, Kind::Reading(Reading::new(section)))
    }

    /// A hold or witness point; [`Step::covers`] names the steps that it accepts.
    pub fn point(
        &mut self,
        id: &'static str,
        name: impl Into<String>,
        attendance: [Attendance; 3],
        signs: Role,
    ) -> &mut Step {
        self.push(
            id,
            Kind::Point(Point {
                name: Some(name.into()),
                attendance,
                signs,
                also: None,
                covers: &[],
            }),
        )
    }

    /// A signature at the end, of no point.
    pub fn sign(&mut self, id: &'static str, signs: Role) -> &mut Step {
        self.push(
            id,
            Kind::Point(Point {
                name: None,
                attendance: [Attendance::Hold; 3],
                signs,
                also: None,
                covers: &[],
            }),
        )
    }

    /// The first step of this id.
    pub fn step(&self, id: &str) -> Option<&Step> {
        self.steps.iter().find(|step| step.id == id)
    }

    /// The settings in their order.
    pub fn settings(&self) -> impl Iterator<Item = (&Step, &Setting)> {
        self.steps.iter().filter_map(|step| match &step.kind {
            Kind::Setting(setting) => Some((step, setting)),
            _ => None,
        })
    }

    /// The readings in their order.
    pub fn readings(&self) -> impl Iterator<Item = (&Step, &Reading)> {
        self.steps.iter().filter_map(|step| match &step.kind {
            Kind::Reading(reading) => Some((step, reading)),
            _ => None,
        })
    }

    /// The points in their order, signatures at the end among them.
    pub fn points(&self) -> impl Iterator<Item = (&Step, &Point)> {
        self.steps.iter().filter_map(|step| match &step.kind {
            Kind::Point(point) => Some((step, point)),
            _ => None,
        })
    }

    /// How many points a class holds the work at.
    pub fn holds(&self, class: Class) -> usize {
        let named = self.points().filter(|(_, point)| point.name.is_some());
        named
            .filter(|(_, point)| point.attendance_of(class) == Attendance::Hold)
            .count()
    }

    /// Without points that cover steps which this joint does not have: a point accepts something or is not there.
    #[must_use]
    pub fn closed(mut self) -> Self {
        let ids: Vec<&str> = self.steps.iter().map(|step| step.id).collect();
        self.steps.retain(|step| match &step.kind {
            Kind::Point(point) => {
                point.covers.is_empty() || point.covers.iter().any(|id| ids.contains(id))
            }
            _ => true,
        });
        self
    }

    /// What is accepted at a point: its own limits, the parts of the stop rule and the limits of the steps that it
    /// covers, each once.
    pub fn accepted(&self, point: &Point) -> Vec<&Limit> {
        let own = self
            .steps
            .iter()
            .filter(|step| matches!(&step.kind, Kind::Point(other) if std::ptr::eq(other, point)));
        let covered = |id: &&'static str| point.covers.contains(id);
        let stop = self.stop.iter().filter(|stop| covered(&stop.step));
        let steps = self.steps.iter().filter(|step| covered(&step.id));
        let limits = own
            .flat_map(|step| &step.accept)
            .chain(stop.flat_map(|stop| &stop.parts))
            .chain(steps.flat_map(|step| &step.accept));
        let mut all: Vec<&Limit> = Vec::new();
        for limit in limits {
            if !all.contains(&limit) {
                all.push(limit);
            }
        }
        all
    }

    /// Whether such a hazard is there.
    pub fn has(&self, kind: HazardKind) -> bool {
        self.hazards.iter().any(|hazard| hazard.kind == kind)
    }

    /// The hazards that a step meets, in the order of harm.
    pub fn met_by<'a>(&'a self, step: &'a Step) -> impl Iterator<Item = &'a Hazard> {
        self.hazards
            .iter()
            .filter(|hazard| step.meets.contains(&hazard.kind))
    }
}
