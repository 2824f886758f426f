//! One small item for each rule. A rule looks at a joint or at the whole job and returns what it
//! found; its sentences live in the wording under its id, its threshold in `joint::LIMITS`.
//!
//! Rules that speak of one method alone stand with it, in `methods`.
//!
//! To add a rule: write its function in the file of its letter, add a line to that file's `RULES`,
//! word it in `templates/wording/<language>/rules.yaml`, and give it a case in `tests/rules.rs`.

mod certificates;
mod documents;
mod isolation;
mod load;
mod materials;
mod people;
mod procedure;
mod safety;
mod settings;
mod tools;

pub use crate::methods::rule::{Check, IssuedRevision, JointSubject, Rule, Subject};

use crate::methods;
use crate::parallel;
use crate::report::{Finding, Severity, Stage};

/// All rules, by file and number; behind them those that speak of one method alone.
pub fn all() -> impl Iterator<Item = &'static Rule> {
    [
        documents::RULES,
        load::RULES,
        settings::RULES,
        tools::RULES,
        certificates::RULES,
        materials::RULES,
        people::RULES,
        isolation::RULES,
        procedure::RULES,
        safety::RULES,
    ]
    .into_iter()
    .flatten()
    .chain(methods::rules())
}

/// The rule of an id.
pub fn named(id: &str) -> Option<&'static Rule> {
    all().find(|rule| rule.id.eq_ignore_ascii_case(id))
}

/// Asks every rule and returns what they say, together with what the builders of documents found
/// (`from_documents`: texts that do not fit their place). A finding of severity `accept` that a named person
/// accepts in the job becomes a note that says so.
pub fn check(subject: &Subject<'_>, from_documents: Vec<Finding>) -> Vec<Finding> {
    let mut findings = from_documents;
    let joints: Vec<JointSubject<'_>> = subject.joints().collect();
    let of_joints = parallel::map(&joints, of_joint);
    findings.extend(of_joints.into_iter().flatten());
    for rule in all() {
        if let Check::Job(check) = rule.check {
            findings.extend(check(subject));
        }
    }
    for finding in &mut findings {
        subject.accept(finding);
    }
    findings.extend(documents::open_errors(subject, &findings));
    findings
}

/// What the rules of joints say of one.
fn of_joint(joint: &JointSubject<'_>) -> Vec<Finding> {
    let of_rule = |rule: &Rule| match rule.check {
        Check::Joint(check) => check(joint),
        Check::Job(_) | Check::Earlier => Vec::new(),
    };
    all().flat_map(of_rule).collect()
}

/// Whether the findings stop the status "for construction": every page then says DRAFT.
pub fn makes_draft(findings: &[Finding]) -> bool {
    findings
        .iter()
        .any(|finding| finding.severity == Severity::Error || finding.stage == Stage::Job)
}
