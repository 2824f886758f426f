//! What is issued: number, revisions, people who answer for it, scope.

use super::ranges::{NOTICE, SHIFT};
use super::table::keys;
use super::{IssueStatus, Name, System, TorqueUnit};
use crate::units::{Date, Duration};
use crate::yaml::{At, Prose, Text};

keys! {
    /// The document that is issued.
    Pack at "pack." asks Planner {
        /// Identification number in the client's own format.
        number: Text<24>;
        /// Title.
        title [required]: Text<60>;
        /// Supplementary title.
        subtitle: Text<90>;
        /// For whom the work is done.
        client: Text<40>;
        /// Legal owner of the document (ISO 7200).
        owner: Text<40>;
        /// Site.
        site: Text<40>;
        /// Unit or area.
        unit: Text<24>;
        /// Responsible department (ISO 7200).
        department: Text<30>;
        /// Technical reference: the person who answers questions (ISO 7200).
        technical_reference: Name;
        /// Status of the document.
        status: IssueStatus;
        /// All revisions, oldest first; the last one is issued.
        revisions: Vec<At<Revision>>;
        /// Language of the wording, a folder of `templates/wording`.
        language: Text<8>, printed = false;
        /// Which units lead.
        units: UnitChoices;
        /// What the pack covers, in one paragraph.
        scope: Prose<600>;
        /// What it does not cover.
        excluded: Vec<At<Text<90>>>;
        /// Drawings, data sheets, specifications.
        references: Vec<At<Reference>>;
        /// Law and rules under which the work is done.
        regime: Text<120>;
        /// Who gets a copy.
        distribution: Vec<At<Text<60>>>;
        /// Pattern of the client's tags: `#` a digit, `@` a letter, `*` any run of signs.
        tag_pattern: Text<32>;
        /// Last day on which a print may be used.
        print_valid: Date;
        /// When the work is done and with how many hours.
        work: Work;
        /// How long before a hold or witness point it is announced.
        notice: Notice;
        /// Who does what in this job.
        roles: Roles;
    }

    /// One revision of the pack.
    Revision at "pack.revisions." asks Planner {
        /// Its letter or number.
        revision [required]: Text<4>;
        /// Date of issue.
        date [required]: Date;
        /// What changed.
        text: Text<70>;
        /// Who prepared it.
        prepared: Name, list = "people", list_optional = true;
        /// Who checked it.
        checked: Name, list = "people", list_optional = true;
        /// Who approved it.
        approved: Name, list = "people", list_optional = true;
    }

    /// Which units lead on paper.
    UnitChoices at "pack.units." asks Planner {
        /// `metric` or `inch` for everything.
        system: System;
        /// The leading unit of torques, where it differs.
        torque: TorqueUnit;
        /// Whether the other torque unit follows in brackets.
        brackets: bool;
    }

    /// A document that the work rests on.
    Reference at "pack.references." asks Planner {
        /// Its number.
        document [required]: Text<32>;
        /// Its revision.
        revision: Text<12>;
        /// Its title.
        title: Text<70>;
    }

    /// When the work is done.
    Work at "pack.work." asks Planner {
        /// First day.
        first_day: Date;
        /// Last day; tools and certificates must last until then.
        last_day: Date;
        /// Hours in a shift.
        shift: Duration, range = SHIFT;
    }

    /// Times before a hold or witness point.
    Notice at "pack.notice." asks Planner {
        /// When it is announced.
        given [required]: Duration, range = NOTICE;
        /// When it is confirmed.
        confirmed [required]: Duration, range = NOTICE;
    }
}

impl Notice {
    /// The key in the job.
    pub const KEY: &'static str = "pack.notice";
}

keys! {
    /// Named persons, one for each duty.
    Roles at "pack.roles." asks Planner {
        /// The person in charge of the work.
        in_charge: Name, list = "people", list_optional = true;
        /// Who obtains permits.
        permits: Name, list = "people", list_optional = true;
        /// Who accepts the isolation at the joint.
        isolation: Name, list = "people", list_optional = true;
        /// Who answers for tools and their calibration.
        tools: Name, list = "people", list_optional = true;
        /// Who answers for the calculation.
        calculation: Name, list = "people", list_optional = true;
        /// Who inspects.
        inspection: Name, list = "people", list_optional = true;
    }

    /// A permit that the work needs.
    Permit at "permits." asks Planner {
        /// What kind.
        kind [required]: Text<40>;
        /// Its number, once it is known.
        number: Text<24>;
        /// Who obtains it.
        by: Text<40>;
        /// First day of validity.
        from: Date;
        /// Last day of validity.
        to: Date;
        /// The isolation it belongs to.
        isolation: Name, list = "isolations";
    }

    /// A rule's default, replaced.
    LimitOverride at "limits.*." asks Planner {
        /// The value that holds instead, with the unit of the default.
        value [required]: Text<24>;
        /// Why; printed on the pack.
        reason [required]: Text<120>;
    }

    /// A finding that a named person accepts.
    Acceptance at "accepted." asks Planner {
        /// The rule.
        rule [required]: Text<8>, printed = false;
        /// The joint; all joints if absent.
        joint: Text<32>, printed = false;
        /// Who accepts.
        by [required]: Name, list = "people", list_optional = true;
        /// Why.
        reason [required]: Text<120>;
    }
}
