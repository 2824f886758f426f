//! Every name that is referred to must be described somewhere; both places are shown. The word of a method must be
//! that of a method.

use crate::job::{Job, JointKeys, MethodWord, Name};
use crate::methods::METHODS;
use crate::report::{Finding, Place, near, near_or_list};
use crate::yaml::{At, Named, items};

use super::shared::entries;

/// A list of names that may be referred to.
struct List<'a> {
    /// The key of the list in the job.
    key: &'static str,
    names: Vec<(&'a str, Place)>,
}

impl<'a> List<'a> {
    fn of<T>(key: &'static str, list: Option<&'a At<Named<T>>>) -> Self {
        let names = list
            .and_then(At::get)
            .into_iter()
            .flat_map(Named::iter)
            .filter_map(|(name, _)| Some((name.get()?.as_str(), name.place())))
            .collect();
        Self { key, names }
    }

    fn check(&self, reference: Option<&At<Name>>, findings: &mut Vec<Finding>) {
        let Some(reference) = reference else { return };
        let Some(name) = reference.get() else { return };
        if self.names.iter().any(|(known, _)| *known == name.as_str()) {
            return;
        }
        let near = near(name.as_str(), self.names.iter().map(|(known, _)| *known));
        let mut finding = Finding::job("job.unknown_name", reference.place())
            .with("name", name.as_str())
            .with("list", self.key)
            .with("near", near.unwrap_or_default())
            .with(
                "known",
                self.names
                    .iter()
                    .map(|(known, _)| *known)
                    .collect::<Vec<_>>()
                    .join(", "),
            );
        if let Some((_, place)) = self.names.iter().find(|(known, _)| Some(*known) == near) {
            finding = finding.beside(*place, "described_here");
        }
        findings.push(finding);
    }
}

/// Checks all references of a job.
pub(super) fn check(job: &Job) -> Vec<Finding> {
    let mut findings = Vec::new();
    let tools = List::of("tools", job.tools.as_ref());
    let people = List::of("people", job.people.as_ref());
    let families = List::of("families", job.families.as_ref());
    let joints = job.joints.get().map(Vec::as_slice).unwrap_or_default();
    for entry in joints.iter().filter_map(At::get) {
        families.check(entry.family.as_ref(), &mut findings);
    }
    for keys in job.joint_keys() {
        joint_names(job, keys, &tools, &mut findings);
    }
    for (_, _, crew) in entries(job.crews.as_ref()) {
        people.check(Some(&crew.lead), &mut findings);
        for member in crew.members.iter().filter_map(At::get).flatten() {
            people.check(Some(member), &mut findings);
        }
    }
    for (_, _, isolation) in entries(job.isolations.as_ref()) {
        people.check(isolation.accepted_by.as_ref(), &mut findings);
    }
    let isolations = List::of("isolations", job.isolations.as_ref());
    for permit in items(job.permits.as_ref()) {
        isolations.check(permit.isolation.as_ref(), &mut findings);
    }
    let lubricants = List::of("lubricants", job.lubricants.as_ref());
    for (_, _, tensioner) in entries(job.tensioners.as_ref()) {
        lubricants.check(tensioner.lubricant.as_ref(), &mut findings);
    }
    for (_, _, person) in entries(job.people.as_ref()) {
        for certificate in items(person.certificates.as_ref()) {
            let words = certificate.methods.iter().filter_map(At::get);
            for word in words.flatten() {
                findings.extend(unknown_method("methods", word));
            }
        }
    }
    accepted(job, &people, &mut findings);
    pack_names(job, &people, &mut findings);
    findings
}

/// A finding is accepted for a joint that is there, by somebody who is.
fn accepted(job: &Job, people: &List<'_>, findings: &mut Vec<Finding>) {
    let joints = job.joints.get().map(Vec::as_slice).unwrap_or_default();
    let tags = joints.iter().filter_map(At::get).map(|entry| &entry.tag);
    let names = tags
        .filter_map(|tag| Some((tag.get()?.as_str(), tag.place())))
        .collect();
    let tags = List {
        key: "joints",
        names,
    };
    for entry in job
        .accepted
        .iter()
        .filter_map(At::get)
        .flatten()
        .filter_map(At::get)
    {
        tags.check(entry.joint.as_ref(), findings);
        if !people.names.is_empty() {
            people.check(Some(&entry.by), findings);
        }
    }
}

fn joint_names(job: &Job, keys: &JointKeys, tools: &List<'_>, findings: &mut Vec<Finding>) {
    List::of("lubricants", job.lubricants.as_ref()).check(keys.lubricant.as_ref(), findings);
    List::of("gaskets", job.gaskets.as_ref()).check(keys.gasket.as_ref(), findings);
    List::of("isolations", job.isolations.as_ref()).check(keys.isolation.as_ref(), findings);
    List::of("crews", job.crews.as_ref()).check(keys.crew.as_ref(), findings);
    if let Some(studs) = keys.studs.as_ref().and_then(At::get) {
        List::of("tensioners", job.tensioners.as_ref()).check(studs.tensioner.as_ref(), findings);
    }
    if let Some(tighten) = keys.tighten.as_ref().and_then(At::get) {
        if let Some(word) = &tighten.method {
            findings.extend(unknown_method("method", word));
        }
        for name in tighten
            .with
            .iter()
            .filter_map(At::get)
            .flat_map(|names| names.iter())
        {
            tools.check(Some(name), findings);
        }
        for name in tighten.hydraulics.iter().filter_map(At::get).flatten() {
            tools.check(Some(name), findings);
        }
        for name in [&tighten.socket, &tighten.back_up, &tighten.driver] {
            tools.check(name.as_ref(), findings);
        }
    }
    if let Some(loosen) = keys.loosen.as_ref().and_then(At::get) {
        for name in loosen
            .with
            .iter()
            .filter_map(At::get)
            .flat_map(|names| names.iter())
        {
            tools.check(Some(name), findings);
        }
    }
}

/// A word that is of no method, said as any other word that is not on its list.
fn unknown_method(key: &'static str, word: &At<MethodWord>) -> Option<Finding> {
    let (text, place) = word.both()?;
    let words: Vec<&str> = METHODS.iter().map(|method| method.word).collect();
    if words.contains(&text.as_str()) {
        return None;
    }
    let (near, known) = near_or_list(text.as_str(), &words);
    Some(
        Finding::job("job.unknown_word", place)
            .with("key", key)
            .with("text", text.as_str())
            .with("near", near)
            .with("known", known),
    )
}

fn pack_names(job: &Job, people: &List<'_>, findings: &mut Vec<Finding>) {
    let Some(pack) = job.pack.get() else { return };
    // People who sign may be named without an entry: a pack without a list of people still has
    // preparers. Once there is a list, a name outside it is a typing error.
    if people.names.is_empty() {
        return;
    }
    for revision in pack
        .revisions
        .iter()
        .filter_map(At::get)
        .flatten()
        .filter_map(At::get)
    {
        for name in [&revision.prepared, &revision.checked, &revision.approved] {
            people.check(name.as_ref(), findings);
        }
    }
    if let Some(roles) = pack.roles.as_ref().and_then(At::get) {
        for name in [
            &roles.in_charge,
            &roles.permits,
            &roles.isolation,
            &roles.tools,
            &roles.calculation,
            &roles.inspection,
        ] {
            people.check(name.as_ref(), findings);
        }
    }
}
