//! Every threshold that a rule compares with, in one table: our defaults, each replaceable in the
//! job by `limits: { RULE: { value, reason } }` with a printed reason.

use crate::job::{HoleMaterial, Seat};
use crate::standards::practice;
use crate::units::Dimension;

use super::Joint;

/// The default of one rule.
#[derive(Debug, PartialEq)]
pub struct Limit {
    /// The rule, which is also the key in the job.
    pub rule: &'static str,
    /// What the value measures.
    pub dimension: Dimension,
    /// Default in SI.
    pub value: f64,
    /// Where the default comes from: a document, or a key of the wording's `source`.
    pub source: &'static str,
    /// Whether the document itself was read; otherwise the figure is from memory.
    pub confirmed: bool,
    /// Whether it holds for the whole job: a joint or family cannot replace it for itself.
    pub whole: bool,
}

impl Limit {
    const fn of(
        rule: &'static str,
        dimension: Dimension,
        value: f64,
        source: &'static str,
    ) -> Self {
        Self {
            rule,
            dimension,
            value,
            source,
            confirmed: true,
            whole: false,
        }
    }

    const fn unconfirmed(self) -> Self {
        Self {
            confirmed: false,
            ..self
        }
    }

    const fn whole(self) -> Self {
        Self {
            whole: true,
            ..self
        }
    }
}

const fn share(rule: &'static str, value: f64, source: &'static str) -> Limit {
    Limit::of(rule, Dimension::Ratio, value, source)
}

const fn mass(rule: &'static str, value: f64, source: &'static str) -> Limit {
    Limit::of(rule, Dimension::Mass, value, source)
}

const fn length(rule: &'static str, value: f64, source: &'static str) -> Limit {
    Limit::of(rule, Dimension::Length, value, source)
}

const fn days(rule: &'static str, value: f64, source: &'static str) -> Limit {
    Limit::of(rule, Dimension::Duration, value * DAY, source)
}

/// A day in seconds.
pub const DAY: f64 = 86_400.0;

/// All defaults, by rule.
pub static LIMITS: &[Limit] = &[
    share("D13", 0.10, practice::SOURCE).whole(),
    share("L01", 0.90, "VDI 2230").unconfirmed(),
    share("L02", 0.75, practice::SOURCE),
    share("L08", 0.80, practice::SOURCE),
    share("L10", 0.30, practice::SOURCE),
    share("L14", 3.0, "VDI 2230").unconfirmed(),
    share("L17", 0.10, practice::SOURCE),
    share("L18", 0.10, practice::SOURCE),
    share("L22", 0.75, practice::SOURCE),
    share("T01", 0.20, "ISO 6789:2003").unconfirmed().whole(),
    share("T03", 0.90, practice::SOURCE),
    days("T05", 14.0, practice::SOURCE).whole(),
    share("T08", 0.85, practice::SOURCE),
    share("T09", 0.10, practice::SOURCE),
    share("T09_final", 0.25, practice::SOURCE),
    length("T15", 0.000_5, practice::SOURCE),
    share("T16", 0.90, practice::SOURCE),
    share("T23", 0.03, practice::SOURCE),
    share("P01", 0.35, "PCC-1").unconfirmed(),
    share("P01_soft", 0.30, "PCC-1").unconfirmed(),
    share("P08", 1.30, practice::SOURCE),
    days("Q03", 30.0, practice::SOURCE).whole(),
    mass("S01", 25.0, "HSE manual handling filters").unconfirmed(),
    mass("S02", 50.0, "HSE manual handling filters").unconfirmed(),
];

/// The default of a rule.
pub fn limit_of(rule: &str) -> Option<&'static Limit> {
    LIMITS.iter().find(|limit| limit.rule == rule)
}

/// Engagement that a thread needs, in diameters: L08 in a nut; in tapped holes, by the German
/// trade-association rule TH-6, 1 in steel, 1.25 in cast iron, 2 in aluminium.
pub fn needed_engagement(joint: &Joint) -> f64 {
    let studs = &joint.mechanics.studs;
    match (studs.seat.value(), studs.hole_material.value()) {
        (Some(Seat::TappedHole), Some(HoleMaterial::CastIron)) => 1.25,
        (Some(Seat::TappedHole), Some(HoleMaterial::Aluminium)) => 2.0,
        (Some(Seat::TappedHole), _) => 1.0,
        _ => joint.work.limit("L08"),
    }
}
