//! A tool that is named for a purpose must be of a kind that serves it; otherwise it would stand on
//! the card of a crew that cannot use it.

use crate::job::{Job, JointKeys, Name, ToolKind};
use crate::methods::{self, METHODS, Method};
use crate::report::{Finding, Place};
use crate::yaml::At;

use super::catalog::find;

const LOOSENERS: &[ToolKind] = &[
    ToolKind::HandTorqueWrench,
    ToolKind::HydraulicTorqueWrench,
    ToolKind::LooseningBar,
    ToolKind::MultiSpindleDriver,
];
const HYDRAULICS: &[ToolKind] = &[
    ToolKind::Pump,
    ToolKind::Hose,
    ToolKind::Coupler,
    ToolKind::Gauge,
];

/// Checks every tool that a family or a joint names.
pub(super) fn check(job: &Job) -> Vec<Finding> {
    job.joint_keys()
        .flat_map(named)
        .filter_map(|(key, name, kinds)| wrong(job, key, name?, &kinds))
        .collect()
}

type Reference<'a> = (&'static str, Option<&'a At<Name>>, Vec<ToolKind>);

/// The tools that one layer names, each with the kinds that serve there.
fn named(keys: &JointKeys) -> Vec<Reference<'_>> {
    let mut references: Vec<Reference<'_>> = Vec::new();
    if let Some(tighten) = keys.tighten.as_ref().and_then(At::get) {
        let method = tighten.method.as_ref().and_then(At::get);
        let wrenches = tools_of(method.and_then(|word| methods::named(word.as_str())));
        let with = tighten
            .with
            .iter()
            .filter_map(At::get)
            .flat_map(|names| names.iter());
        references.extend(with.map(|name| ("with", Some(name), wrenches.clone())));
        let line = tighten.hydraulics.iter().filter_map(At::get).flatten();
        references.extend(line.map(|name| ("hydraulics", Some(name), HYDRAULICS.to_vec())));
        references.push(("socket", tighten.socket.as_ref(), vec![ToolKind::Socket]));
        references.push((
            "back_up",
            tighten.back_up.as_ref(),
            vec![ToolKind::BackUpSpanner],
        ));
        references.push((
            "driver",
            tighten.driver.as_ref(),
            vec![ToolKind::MultiSpindleDriver],
        ));
    }
    if let Some(loosen) = keys.loosen.as_ref().and_then(At::get) {
        let with = loosen
            .with
            .iter()
            .filter_map(At::get)
            .flat_map(|names| names.iter());
        references.extend(with.map(|name| ("with", Some(name), LOOSENERS.to_vec())));
    }
    references
}

/// The kinds of tools that tighten with a method, or with any where none is given; each once.
fn tools_of(method: Option<&Method>) -> Vec<ToolKind> {
    let methods = METHODS
        .iter()
        .filter(|known| method.is_none_or(|method| method.word == known.word));
    let mut kinds = Vec::new();
    for kind in methods.flat_map(|method| method.tools) {
        if !kinds.contains(kind) {
            kinds.push(*kind);
        }
    }
    kinds
}

fn wrong(
    job: &Job,
    key: &'static str,
    reference: &At<Name>,
    kinds: &[ToolKind],
) -> Option<Finding> {
    let (name, place) = reference.both()?;
    let (_, described, tool): (_, Place, _) = find(job.tools.as_ref(), name.as_str())?;
    let kind = tool.kind.get()?;
    if kinds.contains(kind) {
        return None;
    }
    let known: Vec<&str> = kinds.iter().map(|kind| kind.word()).collect();
    Some(
        Finding::job("job.tool_kind", place)
            .with("key", key)
            .with("name", name.as_str())
            .with("kind", kind.word())
            .with("known", known.join(", "))
            .beside(described, "described_here"),
    )
}
