//! The job file as it was written: every leaf with its place, nothing resolved, nothing defaulted.
//!
//! A field that is absent is `None`; a field that is wrong is an [`At`] without a value whose
//! finding has been raised by the reader. Cross-references and completeness are `resolve`'s.

mod entry;
mod hardware;
mod isolation;
mod joint;
mod pack;
mod people;
mod ranges;
mod statement;
pub mod table;
mod tensioner;
mod tools;
pub mod values;
mod words;

pub use entry::JointEntry;
pub use hardware::{Gasket, Lubricant, Material};
pub use isolation::{Contents, EnergyControl, HoldTest, Isolation, Opening, Point, Proof, Purge};
pub use joint::{
    Alignment, Anchor, Checks, Clearance, DrawingReference, HoldPoint, JointKeys, Loosen,
    Numbering, Obstacle, Reaction, Recheck, Service, Studs, Target, Tighten, Turn,
};
pub use pack::{
    Acceptance, LimitOverride, Notice, Pack, Permit, Reference, Revision, Roles, UnitChoices, Work,
};
pub use people::{Certificate, Crew, Person};
pub use statement::{Emergency, Risk, Statement, Waste};
pub use table::Who;
pub use tensioner::{Driver, Tensioner};
pub use tools::{Adapter, Calibration, CalibrationPoint, Tool};
pub use words::*;

use table::{Field, keys};
use values::{Value, Visit};

use crate::report::{Finding, Sources};
use crate::units::Units;
use crate::yaml::{At, Named, Text, entries, items};

keys! {
    /// A whole job: what one YAML file holds.
    Job at "" asks Planner {
        /// The format of the file; 1.
        studbook [required]: u32;
        /// The document that is issued.
        pack [required]: Pack;
        /// What only people know of the method statement.
        statement: Statement;
        /// Lubricants by name.
        lubricants: Named<Lubricant>;
        /// Gaskets by name.
        gaskets: Named<Gasket>;
        /// Bolting materials that the program does not know, or facts that it has no source for.
        materials: Named<Material>;
        /// Tools by the name that is painted on them.
        tools: Named<Tool>;
        /// Multi-jackbolt tensioners by name.
        tensioners: Named<Tensioner>;
        /// People by name.
        people: Named<Person>;
        /// Crews by name.
        crews: Named<Crew>;
        /// Isolation boundaries by number.
        isolations: Named<Isolation>;
        /// Permits that the work needs.
        permits: Vec<At<Permit>>;
        /// Defaults of the rules, replaced with a reason.
        limits: Named<LimitOverride>;
        /// Findings of severity `accept` that a named person accepts.
        accepted: Vec<At<Acceptance>>;
        /// Data shared by several joints.
        families: Named<JointKeys>;
        /// The joints.
        joints [required]: Vec<At<JointEntry>>;
    }
}

impl Job {
    /// Shows every number and text of the job, with its line of the table.
    pub fn visit(&self, visitor: &mut dyn Visit) {
        const JOB: Field = Field::new("", Job::KIND, Who::Planner);
        self.walk(const { &JOB }, self.studbook.place(), visitor);
    }

    /// Gives back the room of what each joint says: resolver and rules have read it, documents read the resolved
    /// joints.
    pub fn forget_joints(&mut self) {
        self.joints = At::empty(self.joints.place());
    }

    /// What joints can say, from every family and every joint.
    pub fn joint_keys(&self) -> impl Iterator<Item = &JointKeys> {
        let families = entries(self.families.as_ref());
        let joints = self.joints.get().into_iter().flatten().filter_map(At::get);
        families
            .filter_map(|(_, keys)| keys.get())
            .chain(joints.map(|entry| &*entry.keys))
    }

    /// The permits that name an isolation boundary.
    pub fn permits_of<'a>(&'a self, isolation: &'a str) -> impl Iterator<Item = &'a Permit> {
        items(self.permits.as_ref()).filter(move |permit| {
            let own = permit.isolation.as_ref().and_then(At::get);
            own.is_some_and(|own| own.as_str() == isolation)
        })
    }
}

/// Adds a job file to the sources and reads it. The findings hold every error of the file; the job
/// is `Some` whenever its outline could be read, so that later checks can add theirs in one run.
pub fn open(name: &str, bytes: &[u8], sources: &mut Sources) -> (Option<Job>, Vec<Finding>) {
    let tree = crate::yaml::open(name, bytes, sources);
    let (job, mut findings) = crate::yaml::decode::<Job>(&tree);
    if let Some(job) = &job
        && let Some((format, place)) = job.studbook.both()
        && *format != 1
    {
        findings.push(Finding::job("job.format", place).with("format", format.to_string()));
    }
    (job, findings)
}

impl Job {
    /// The language of the pack; English if none is given.
    pub fn language(&self) -> &str {
        let pack = self.pack.get();
        let language = pack
            .and_then(|pack| pack.language.as_ref())
            .and_then(At::get);
        language.map_or("en", |language| language.as_str())
    }

    /// The units of the pack; metric if nothing is said.
    pub fn units(&self) -> Units {
        let choices = self
            .pack
            .get()
            .and_then(|pack| pack.units.as_ref())
            .and_then(At::get);
        let Some(choices) = choices else {
            return Units::metric();
        };
        let mut units = match choices.system.as_ref().and_then(At::get) {
            Some(System::Inch) => Units::inch(),
            _ => Units::metric(),
        };
        if let Some(torque) = choices.torque.as_ref().and_then(At::get) {
            units = units.leading(torque.unit());
        }
        match choices.brackets.as_ref().and_then(At::get) {
            Some(true) => units.with_brackets(),
            _ => units,
        }
    }
}

/// A name by which one part of the job refers to another.
pub type Name = Text<32>;

/// The word of a method of loading a joint; which words there are is said further down, by the methods themselves.
pub type MethodWord = Text<40>;
