//! What is issued: number, revisions, people who answer for it, scope.

use serde::Deserialize;

use super::{IssueStatus, Name, System, TorqueUnit};
use crate::units::{Date, Duration};
use crate::yaml::{At, Prose, Text};

/// The document that is issued.
#[derive(Debug, Deserialize)]
pub struct Pack {
    /// Identification number in the client's own format.
    pub number: Option<At<Text<24>>>,
    /// Title.
    pub title: At<Text<60>>,
    /// Supplementary title.
    pub subtitle: Option<At<Text<90>>>,
    /// For whom the work is done.
    pub client: Option<At<Text<40>>>,
    /// Legal owner of the document (ISO 7200).
    pub owner: Option<At<Text<40>>>,
    /// Site.
    pub site: Option<At<Text<40>>>,
    /// Unit or area.
    pub unit: Option<At<Text<24>>>,
    /// Responsible department (ISO 7200).
    pub department: Option<At<Text<30>>>,
    /// Technical reference: the person who answers questions (ISO 7200).
    pub technical_reference: Option<At<Name>>,
    /// Status of the document.
    pub status: Option<At<IssueStatus>>,
    /// All revisions, oldest first; the last one is issued.
    pub revisions: Option<At<Vec<At<Revision>>>>,
    /// Language of the wording, a folder of `templates/wording`.
    pub language: Option<At<Text<8>>>,
    /// Which units lead.
    pub units: Option<At<UnitChoices>>,
    /// What the pack covers, in one paragraph.
    pub scope: Option<At<Prose<600>>>,
    /// What it does not cover.
    pub excluded: Option<At<Vec<At<Text<90>>>>>,
    /// Drawings, data sheets, specifications.
    pub references: Option<At<Vec<At<Reference>>>>,
    /// Law and rules under which the work is done.
    pub regime: Option<At<Text<120>>>,
    /// Who gets a copy.
    pub distribution: Option<At<Vec<At<Text<60>>>>>,
    /// Pattern of the client's tags: `#` a digit, `@` a letter, `*` any run of signs.
    pub tag_pattern: Option<At<Text<32>>>,
    /// Last day on which a print may be used.
    pub print_valid: Option<At<Date>>,
    /// When the work is done and with how many hours.
    pub work: Option<At<Work>>,
    /// How long before a hold or witness point it is announced.
    pub notice: Option<At<Notice>>,
    /// Who does what in this job.
    pub roles: Option<At<Roles>>,
}

/// One revision of the pack.
#[derive(Debug, Deserialize)]
pub struct Revision {
    /// Its letter or number.
    pub revision: At<Text<4>>,
    /// Date of issue.
    pub date: At<Date>,
    /// What changed.
    pub text: Option<At<Text<70>>>,
    /// Who prepared it.
    pub prepared: Option<At<Name>>,
    /// Who checked it.
    pub checked: Option<At<Name>>,
    /// Who approved it.
    pub approved: Option<At<Name>>,
}

/// Which units lead on paper.
#[derive(Debug, Deserialize)]
pub struct UnitChoices {
    /// `metric` or `inch` for everything.
    pub system: Option<At<System>>,
    /// The leading unit of torques, where it differs.
    pub torque: Option<At<TorqueUnit>>,
    /// Whether the other torque unit follows in brackets.
    pub brackets: Option<At<bool>>,
}

/// A document that the work rests on.
#[derive(Debug, Deserialize)]
pub struct Reference {
    /// Its number.
    pub document: At<Text<32>>,
    /// Its revision.
    pub revision: Option<At<Text<12>>>,
    /// Its title.
    pub title: Option<At<Text<70>>>,
}

/// When the work is done.
#[derive(Debug, Deserialize)]
pub struct Work {
    /// First day.
    pub first_day: Option<At<Date>>,
    /// Last day; tools and certificates must last until then.
    pub last_day: Option<At<Date>>,
    /// Hours in a shift.
    pub shift: Option<At<Duration>>,
}

/// Times before a hold or witness point.
#[derive(Debug, Deserialize)]
pub struct Notice {
    /// When it is announced.
    pub given: At<Duration>,
    /// When it is confirmed.
    pub confirmed: At<Duration>,
}

impl Notice {
    /// The key in the job.
    pub const KEY: &'static str = "pack.notice";
}

/// Named persons, one for each duty.
#[derive(Debug, Deserialize)]
pub struct Roles {
    /// The person in charge of the work.
    pub in_charge: Option<At<Name>>,
    /// Who obtains permits.
    pub permits: Option<At<Name>>,
    /// Who accepts the isolation at the joint.
    pub isolation: Option<At<Name>>,
    /// Who answers for tools and their calibration.
    pub tools: Option<At<Name>>,
    /// Who answers for the calculation.
    pub calculation: Option<At<Name>>,
    /// Who inspects.
    pub inspection: Option<At<Name>>,
}

/// A permit that the work needs.
#[derive(Debug, Deserialize)]
pub struct Permit {
    /// What kind.
    pub kind: At<Text<40>>,
    /// Its number, once it is known.
    pub number: Option<At<Text<24>>>,
    /// Who obtains it.
    pub by: Option<At<Text<40>>>,
    /// First day of validity.
    pub from: Option<At<Date>>,
    /// Last day of validity.
    pub to: Option<At<Date>>,
    /// The isolation it belongs to.
    pub isolation: Option<At<Name>>,
}

/// A rule's default, replaced.
#[derive(Debug, Deserialize)]
pub struct LimitOverride {
    /// The value that holds instead, with the unit of the default.
    pub value: At<Text<24>>,
    /// Why; printed on the pack.
    pub reason: At<Text<120>>,
}

/// A finding that a named person accepts.
#[derive(Debug, Deserialize)]
pub struct Acceptance {
    /// The rule.
    pub rule: At<Text<8>>,
    /// The joint; all joints if absent.
    pub joint: Option<At<Text<32>>>,
    /// Who accepts.
    pub by: At<Name>,
    /// Why.
    pub reason: At<Text<120>>,
}
