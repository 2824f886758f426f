//! Every name that is referred to must be described somewhere; both places are shown. The word of a method must be
//! that of a method.

use crate::job::Job;
use crate::job::table::Field;
use crate::job::values::{Leaf, Visit};
use crate::methods::METHODS;
use crate::report::{Finding, Place, near, near_or_list};
use crate::work::HazardKind;
use crate::yaml::{At, Named, entries, items};

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

    fn check(&self, name: &str, place: Place, findings: &mut Vec<Finding>) {
        if self.names.iter().any(|(known, _)| *known == name) {
            return;
        }
        let near = near(name, self.names.iter().map(|(known, _)| *known));
        let mut finding = Finding::job("job.unknown_name", place)
            .with("name", name)
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

/// Looks at every name of a job that refers to a list.
struct Names<'a> {
    lists: [List<'a>; 8],
    found: Vec<Finding>,
}

impl Visit for Names<'_> {
    fn leaf(&mut self, field: &'static Field, leaf: Leaf<'_>, place: Place) {
        let (Leaf::Text(name), Some(key)) = (leaf, field.list) else {
            return;
        };
        if key == "methods" {
            let words: Vec<&str> = METHODS.iter().map(|method| method.word).collect();
            self.found
                .extend(unknown_word(field.name(), name, &words, place));
            return;
        }
        let Some(list) = self.lists.iter().find(|list| list.key == key) else {
            return;
        };
        // People who sign may be named without an entry: a pack without a list of people still has
        // preparers. Once there is a list, a name outside it is a typing error.
        if !field.list_optional || !list.names.is_empty() {
            list.check(name, place, &mut self.found);
        }
    }
}

/// Checks all references of a job.
pub(super) fn check(job: &Job) -> Vec<Finding> {
    let lists = [
        List::of("tools", job.tools.as_ref()),
        List::of("people", job.people.as_ref()),
        List::of("families", job.families.as_ref()),
        List::of("lubricants", job.lubricants.as_ref()),
        List::of("gaskets", job.gaskets.as_ref()),
        List::of("tensioners", job.tensioners.as_ref()),
        List::of("isolations", job.isolations.as_ref()),
        List::of("crews", job.crews.as_ref()),
    ];
    let mut names = Names {
        lists,
        found: Vec::new(),
    };
    job.visit(&mut names);
    accepted(job, &mut names.found);
    risks(job, &mut names.found);
    names.found
}

/// A finding is accepted for a joint that is there.
fn accepted(job: &Job, findings: &mut Vec<Finding>) {
    let joints = job.joints.get().map(Vec::as_slice).unwrap_or_default();
    let tags = joints.iter().filter_map(At::get).map(|entry| &entry.tag);
    let names = tags
        .filter_map(|tag| Some((tag.get()?.as_str(), tag.place())))
        .collect();
    let tags = List {
        key: "joints",
        names,
    };
    for entry in items(job.accepted.as_ref()) {
        if let Some((joint, place)) = entry.joint.as_ref().and_then(At::both) {
            tags.check(joint.as_str(), place, findings);
        }
    }
}

/// What people say of a hazard names one that there is.
fn risks(job: &Job, findings: &mut Vec<Finding>) {
    let statement = job.statement.as_ref().and_then(At::get);
    let words: Vec<String> = HazardKind::ALL.iter().map(|kind| kind.word()).collect();
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    for (name, _) in entries(statement.and_then(|it| it.risks.as_ref())) {
        if let Some((word, place)) = name.both() {
            findings.extend(unknown_word("risks", word.as_str(), &words, place));
        }
    }
}

/// A word of a list that is said further down than where the job is read: of methods, of hazards.
fn unknown_word(key: &'static str, word: &str, words: &[&str], place: Place) -> Option<Finding> {
    if words.contains(&word) {
        return None;
    }
    let (near, known) = near_or_list(word, words);
    Some(
        Finding::job("job.unknown_word", place)
            .with("key", key)
            .with("text", word)
            .with("near", near)
            .with("known", known),
    )
}
