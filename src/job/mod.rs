//! The job file as it was written: every leaf with its place, nothing resolved, nothing defaulted.
//!
//! A field that is absent is `None`; a field that is wrong is an [`At`] without a value whose
//! finding has been raised by the reader. Cross-references and completeness are `resolve`'s.

mod hardware;
mod isolation;
mod joint;
mod pack;
mod people;
mod tensioner;
mod tools;
mod words;

pub use hardware::{Gasket, Lubricant, Material};
pub use isolation::{Contents, EnergyControl, HoldTest, Isolation, Opening, Point, Proof, Purge};
pub use joint::{
    Alignment, Checks, Clearance, DrawingReference, HoldPoint, JointEntry, JointKeys, Loosen,
    Numbering, Obstacle, Reaction, Service, Studs, Target, Tighten,
};
pub use pack::{
    Acceptance, LimitOverride, Notice, Pack, Permit, Reference, Revision, Roles, UnitChoices, Work,
};
pub use people::{Certificate, Crew, Person};
pub use tensioner::{Driver, Tensioner};
pub use tools::{Adapter, Calibration, CalibrationPoint, Tool};
pub use words::*;

use serde::Deserialize;

use crate::report::{Finding, Sources};
use crate::units::Units;
use crate::yaml::{At, Named, Text, entries, items};

/// A whole job: what one YAML file holds.
#[derive(Debug, Deserialize)]
pub struct Job {
    /// The format of the file; 1.
    pub studbook: At<u32>,
    /// The document that is issued.
    pub pack: At<Pack>,
    /// Lubricants by name.
    pub lubricants: Option<At<Named<Lubricant>>>,
    /// Gaskets by name.
    pub gaskets: Option<At<Named<Gasket>>>,
    /// Bolting materials that the program does not know, or facts that it has no source for.
    pub materials: Option<At<Named<Material>>>,
    /// Tools by the name that is painted on them.
    pub tools: Option<At<Named<Tool>>>,
    /// Multi-jackbolt tensioners by name.
    pub tensioners: Option<At<Named<Tensioner>>>,
    /// People by name.
    pub people: Option<At<Named<Person>>>,
    /// Crews by name.
    pub crews: Option<At<Named<Crew>>>,
    /// Isolation boundaries by number.
    pub isolations: Option<At<Named<Isolation>>>,
    /// Permits that the work needs.
    pub permits: Option<At<Vec<At<Permit>>>>,
    /// Defaults of the rules, replaced with a reason.
    pub limits: Option<At<Named<LimitOverride>>>,
    /// Findings of severity `accept` that a named person accepts.
    pub accepted: Option<At<Vec<At<Acceptance>>>>,
    /// Data shared by several joints.
    pub families: Option<At<Named<JointKeys>>>,
    /// The joints.
    pub joints: At<Vec<At<JointEntry>>>,
}

impl Job {
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
