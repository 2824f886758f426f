//! From the job as written to joints as calculated: references followed, families and joints laid
//! over each other (nearest wins), tables looked up, defaults marked as ours.
//!
//! What cannot be a job at all (two joints with one tag, an unknown name, thread or material) is a
//! finding of stage `Job`. A fact that is merely absent becomes [`Fact::Missing`].

mod boundary;
mod catalog;
mod checks;
mod facts;
mod identity;
mod kinds;
mod layers;
mod limits;
mod names;
mod own;
mod plan;
mod ranges;
mod studs;
mod surroundings;
mod tensioner;
mod tools;

use std::collections::BTreeMap;

use unicode_normalization::UnicodeNormalization;

use crate::job::{Job, JointEntry};
use crate::joint::{Joint, Mechanics};
use crate::methods;
use crate::parallel;
use crate::report::{Finding, Place};
use crate::yaml::At;
use catalog::Catalog;
use layers::Layers;

/// Resolves all joints of a job. The findings hold every problem of every joint.
pub fn resolve(job: &Job) -> (Vec<Joint>, Vec<Finding>) {
    let mut findings = Vec::new();
    let limits = job.limits.as_ref().and_then(At::get);
    let limits = limits.map(|named| limits::read(named, &mut findings));
    let limits = limits.unwrap_or_default();
    let tools = tools::of_job(job, &limits, &mut findings);
    let catalog = Catalog::new(job, tools, limits);
    findings.extend(names::check(job));
    findings.extend(kinds::check(job));
    findings.extend(ranges::check(job));
    let mut tagged: Vec<(&JointEntry, String)> = Vec::new();
    let mut seen: BTreeMap<String, Place> = BTreeMap::new();
    let entries = job.joints.get().map(Vec::as_slice).unwrap_or_default();
    if entries.is_empty() && job.joints.get().is_some() {
        findings.push(Finding::job("job.no_joints", job.joints.place()));
    }
    for entry in entries.iter().filter_map(|entry| entry.get()) {
        let Some(tag) = entry.tag.get() else { continue };
        let tag: String = tag.as_str().nfc().collect();
        // Two tags that differ only in case or separators would be one joint on the radio.
        let folded: String = tag
            .chars()
            .filter(|sign| sign.is_alphanumeric())
            .flat_map(char::to_uppercase)
            .collect();
        let folded = if folded.is_empty() {
            tag.clone()
        } else {
            folded
        };
        if let Some(first) = seen.insert(folded, entry.tag.place()) {
            findings.push(
                Finding::job("D01", entry.tag.place())
                    .on(tag.clone())
                    .with("line", first.line.to_string())
                    .beside(first, "first_use"),
            );
            continue;
        }
        tagged.push((entry, tag));
    }
    let resolved = parallel::map(&tagged, |(entry, tag)| joint(entry, tag, &catalog));
    let joints = resolved.into_iter().map(|(joint, found)| {
        findings.extend(found);
        joint
    });
    (joints.collect(), findings)
}

/// A joint and what is wrong with it.
fn joint(entry: &JointEntry, tag: &str, catalog: &Catalog<'_>) -> (Joint, Vec<Finding>) {
    let family = entry.family.as_ref().and_then(At::get);
    let layers = Layers::new(entry, family.and_then(|name| catalog.family(name)));
    let mut found = ranges::of_layers(&layers, &catalog.units());
    let mechanics = mechanics(&layers, catalog, &mut found);
    let limits = limits::of_joint(&layers, catalog.limits(), &mut found);
    let joint = Joint {
        place: entry.tag.place(),
        family: layers.family_name(),
        identity: identity::identity(&layers, catalog),
        work: surroundings::work(&layers, catalog, limits),
        mechanics: Box::new(mechanics),
        tag: tag.to_owned(),
    };
    let found = found.into_iter().map(|finding| finding.on(tag));
    (joint, found.collect())
}

fn mechanics(layers: &Layers<'_>, catalog: &Catalog<'_>, found: &mut Vec<Finding>) -> Mechanics {
    let tools = tools::tools(layers, catalog);
    let method = plan::method(layers, &tools);
    let gasket = plan::gasket(layers, catalog);
    let service = plan::service(layers, catalog);
    let mut studs = studs::studs(layers, catalog, found);
    if let Some(method) = method.value().and_then(methods::named) {
        (method.fit)(&mut studs);
    }
    let hazards = plan::hazards(layers);
    Mechanics {
        class: plan::class(layers, &service, &hazards),
        tensioner: tensioner::tensioner(layers, catalog, found).map(Box::new),
        lubricant: plan::lubricant(layers, catalog, &method),
        target: plan::target(layers, found),
        plan: plan::plan(layers, &tools, found),
        loosening: plan::loosening(layers, &studs, &method),
        checks: checks::checks(layers, &studs, gasket.as_ref()),
        clearance: checks::clearance(layers),
        anchor: checks::anchor(layers, &studs),
        recheck: checks::recheck(layers, &studs),
        own: own::own(layers),
        method,
        studs,
        tools,
        gasket: gasket.map(Box::new),
        service,
        hazards,
    }
}
