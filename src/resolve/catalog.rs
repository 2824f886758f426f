//! The shared lists of a job by name, resolved once for all joints.

use std::collections::BTreeMap;
use std::sync::Arc;

use crate::job::{
    Crew, Gasket, Isolation, Job, JointKeys, Lubricant, Material, Pack, Tensioner, ToolKind,
};
use crate::joint::{Boundary, LimitOverride, Tool};
use crate::report::Place;
use crate::units::Units;
use crate::yaml::{At, Named};

use super::boundary::boundary;

/// What joints refer to by name.
pub(super) struct Catalog<'a> {
    job: &'a Job,
    /// Tools by name.
    pub(super) tools: BTreeMap<&'a str, Arc<Tool>>,
    /// Defaults of rules that the job replaces for all joints.
    limits: Vec<LimitOverride>,
    wrenches: Arc<[Arc<Tool>]>,
    sockets: Arc<[Arc<Tool>]>,
    back_ups: Arc<[Arc<Tool>]>,
    boundaries: BTreeMap<&'a str, Arc<Boundary>>,
}

impl<'a> Catalog<'a> {
    /// `tools` are the tools of the job by name, `limits` the defaults of rules that it replaces for all joints.
    pub(super) fn new(
        job: &'a Job,
        tools: BTreeMap<&'a str, Arc<Tool>>,
        limits: Vec<LimitOverride>,
    ) -> Self {
        let of_kind = |kind| -> Arc<[Arc<Tool>]> {
            tools
                .values()
                .filter(|tool: &&Arc<Tool>| tool.kind == kind)
                .cloned()
                .collect()
        };
        Self {
            job,
            limits,
            wrenches: of_kind(ToolKind::HandTorqueWrench),
            sockets: of_kind(ToolKind::Socket),
            back_ups: of_kind(ToolKind::BackUpSpanner),
            boundaries: entries(job.isolations.as_ref())
                .map(|(name, _, isolation)| (name, Arc::new(boundary(isolation))))
                .collect(),
            tools,
        }
    }

    /// Defaults of rules that the job replaces for all joints.
    pub(super) fn limits(&self) -> &[LimitOverride] {
        &self.limits
    }

    /// All hand torque wrenches, sockets and back-up spanners of the job, shared by all joints.
    pub(super) fn candidates(&self) -> [Arc<[Arc<Tool>]>; 3] {
        [&self.wrenches, &self.sockets, &self.back_ups].map(Arc::clone)
    }

    pub(super) fn family(&self, name: &str) -> Option<(&'a str, &'a JointKeys)> {
        find(self.job.families.as_ref(), name).map(|(name, _, keys)| (name, keys))
    }

    pub(super) fn lubricant(&self, name: &str) -> Option<&'a Lubricant> {
        find(self.job.lubricants.as_ref(), name).map(|(_, _, lubricant)| lubricant)
    }

    pub(super) fn gasket(&self, name: &str) -> Option<(Place, &'a Gasket)> {
        find(self.job.gaskets.as_ref(), name).map(|(_, place, gasket)| (place, gasket))
    }

    pub(super) fn material(&self, grade: &str) -> Option<&'a Material> {
        find(self.job.materials.as_ref(), grade).map(|(_, _, material)| material)
    }

    pub(super) fn tensioner(&self, name: &str) -> Option<(Place, &'a Tensioner)> {
        find(self.job.tensioners.as_ref(), name).map(|(_, place, tensioner)| (place, tensioner))
    }

    pub(super) fn isolation(&self, name: &str) -> Option<&'a Isolation> {
        find(self.job.isolations.as_ref(), name).map(|(_, _, isolation)| isolation)
    }

    /// What a boundary holds back.
    pub(super) fn boundary(&self, name: &str) -> Option<Arc<Boundary>> {
        self.boundaries.get(name).map(Arc::clone)
    }

    /// Everybody in a crew, the lead first.
    pub(super) fn crew(&self, name: &str) -> Vec<String> {
        let Some((_, _, crew)) = find(self.job.crews.as_ref(), name) else {
            return Vec::new();
        };
        let lead = Crew::lead.value(Some(crew));
        let members = Crew::members.value(Some(crew)).unwrap_or_default();
        lead.into_iter().chain(members).collect()
    }

    /// The units in which values are printed.
    pub(super) fn units(&self) -> Units {
        self.job.units()
    }

    /// The pack, if it could be read.
    pub(super) fn pack(&self) -> Option<&'a Pack> {
        self.job.pack.get()
    }
}

/// The entries of a named list that could be read.
pub(super) fn entries<T>(list: Option<&At<Named<T>>>) -> impl Iterator<Item = (&str, Place, &T)> {
    list.and_then(At::get)
        .into_iter()
        .flat_map(Named::iter)
        .filter_map(|(name, value)| Some((name.get()?.as_str(), name.place(), value.get()?)))
}

/// One entry of a named list.
pub(super) fn find<'a, T>(
    list: Option<&'a At<Named<T>>>,
    name: &str,
) -> Option<(&'a str, Place, &'a T)> {
    let (name, value) = list.and_then(At::get)?.entry(name)?;
    Some((name.get()?.as_str(), name.place(), value.get()?))
}
