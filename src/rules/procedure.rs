//! Procedure, sequence, records.

use crate::calc::{LEAST_ANGLE, order};
use crate::job::{Class, GasketKind, Pattern, ToolKind};
use crate::joint::Fact;
use crate::methods::jackbolt::ids;
use crate::report::{Finding, Severity};
use crate::units::{Angle, Quantity};

use crate::methods::jackbolt::{release_rules, rules as jackbolts};
use crate::methods::rule::{Check, JointSubject, Rule, percent, percent_si};

pub(super) const RULES: &[Rule] = &[
    Rule {
        id: "P01",
        severity: Severity::Error,
        check: Check::Joint(pass_shares),
    },
    Rule {
        id: "P02",
        severity: Severity::Error,
        check: Check::Joint(no_full_round),
    },
    Rule {
        id: "P03",
        severity: Severity::Error,
        check: Check::Joint(sequence),
    },
    Rule {
        id: "P04",
        severity: Severity::Accept,
        check: Check::Joint(circular_first),
    },
    Rule {
        id: "P05",
        severity: Severity::Accept,
        check: Check::Joint(no_gaps),
    },
    Rule {
        id: "P06",
        severity: Severity::Accept,
        check: Check::Joint(no_alignment),
    },
    Rule {
        id: "P07",
        severity: Severity::Error,
        check: Check::Joint(no_release_plan),
    },
    Rule {
        id: "P08",
        severity: Severity::Error,
        check: Check::Joint(release_steps),
    },
    Rule {
        id: "P09",
        severity: Severity::Error,
        check: Check::Joint(no_never_exceed),
    },
    Rule {
        id: "P10",
        severity: Severity::Accept,
        check: Check::Joint(no_repeat),
    },
    Rule {
        id: "P12",
        severity: Severity::Error,
        check: Check::Joint(hold_without_value),
    },
    Rule {
        id: "P16",
        severity: Severity::Accept,
        check: Check::Joint(no_zero_reading),
    },
    Rule {
        id: "P17",
        severity: Severity::Accept,
        check: Check::Joint(numbering),
    },
    Rule {
        id: "P19",
        severity: Severity::Error,
        check: Check::Earlier,
    },
    Rule {
        id: "P20",
        severity: Severity::Accept,
        check: Check::Joint(no_protrusion_limits),
    },
];

/// Shares rise to 100 %, the first one gentle.
fn pass_shares(subject: &JointSubject<'_>) -> Vec<Finding> {
    let plan = &subject.mechanics().plan;
    let Some(shares) = plan.passes.get() else {
        return Vec::new();
    };
    let soft = subject
        .mechanics()
        .gasket
        .as_ref()
        .is_some_and(|gasket| gasket.is_soft());
    let limit = subject.limit(if soft { "P01_soft" } else { "P01" });
    let rising = shares.windows(2).all(|pair| match pair {
        [first, second] => first < second,
        _ => true,
    });
    let ends = shares
        .last()
        .is_some_and(|last| (last.si() - 1.0).abs() < 1e-9);
    let first = shares.first().map_or(0.0, |first| first.si());
    let gentle = first <= limit + 1e-9 && first > 0.0;
    if rising && ends && gentle {
        return Vec::new();
    }
    let list: Vec<String> = shares.iter().map(|share| percent(*share)).collect();
    vec![
        subject
            .finding("P01", Severity::Error, plan.passes.place())
            .with("passes", list.join(", "))
            .with("first", percent_si(first))
            .with("limit", percent_si(limit))
            .with(
                "fault",
                if !gentle {
                    "first"
                } else if rising {
                    "end"
                } else {
                    "rising"
                },
            ),
    ]
}

fn no_full_round(subject: &JointSubject<'_>) -> Vec<Finding> {
    let round = &subject.mechanics().plan.circular_round;
    if round.value() == Some(false) {
        return vec![subject.finding("P02", Severity::Error, round.place())];
    }
    Vec::new()
}

/// The printed order holds every stud once. It is ours, so this is a check on ourselves.
fn sequence(subject: &JointSubject<'_>) -> Vec<Finding> {
    let Some(order) = &subject.computed.order else {
        return Vec::new();
    };
    let Some(count) = subject.computed.ledger.get(ids::COUNT) else {
        return Vec::new();
    };
    let faults = order::check_sequence(&order.sequence(), crate::calc::whole(count.si()));
    faults
        .into_iter()
        .map(|fault| {
            let (stud, kind) = match fault {
                order::SequenceFault::Missing(stud) => (stud, "missing"),
                order::SequenceFault::Repeated(stud) => (stud, "twice"),
                order::SequenceFault::NoSuchStud(stud) => (stud, "unknown"),
            };
            subject
                .finding("P03", Severity::Error, None)
                .with("stud", stud.to_string())
                .with("fault", kind)
        })
        .collect()
}

fn circular_first(subject: &JointSubject<'_>) -> Vec<Finding> {
    let mechanics = subject.mechanics();
    let pattern = &mechanics.plan.pattern;
    if mechanics.gasket.is_some() && pattern.value() == Some(Pattern::Circular) {
        return vec![subject.finding("P04", Severity::Accept, pattern.place())];
    }
    Vec::new()
}

fn no_gaps(subject: &JointSubject<'_>) -> Vec<Finding> {
    let mechanics = subject.mechanics();
    if mechanics.class.value() == Some(Class::A) && mechanics.checks.gaps.value() == Some(false) {
        return vec![subject.finding("P05", Severity::Accept, mechanics.checks.gaps.place())];
    }
    Vec::new()
}

/// Offset, parallelism and holes have defaults; the free gap follows from the gasket's thickness.
/// Faces that meet without a gasket have no gap to measure.
fn no_alignment(subject: &JointSubject<'_>) -> Vec<Finding> {
    let mechanics = subject.mechanics();
    let Some(gasket) = &mechanics.gasket else {
        return Vec::new();
    };
    if gasket.kind == GasketKind::MetalToMetal {
        return Vec::new();
    }
    let checks = &mechanics.checks;
    let limits = [
        &checks.centreline,
        &checks.parallelism,
        &checks.holes,
        &checks.gap,
    ];
    let missing: Vec<&str> = limits
        .into_iter()
        .filter_map(|limit| match limit {
            Fact::Missing { key, .. } => key.rsplit('.').next(),
            Fact::Known { .. } => None,
        })
        .collect();
    if missing.is_empty() {
        return Vec::new();
    }
    vec![
        subject
            .finding("P06", Severity::Accept, Some(gasket.place))
            .with("missing", missing.join(", ")),
    ]
}

/// A joint that is opened needs a first release angle that can be printed, or an explicit one.
fn no_release_plan(subject: &JointSubject<'_>) -> Vec<Finding> {
    if subject.mechanics().loosening.opened.value() != Some(true) {
        return Vec::new();
    }
    let ledger = &subject.computed.ledger;
    // Without a plan of rounds for its jackbolts a stud has no release either.
    let lack = ledger
        .lack(ids::RELEASE_SET)
        .or(ledger.lack(ids::FULL_ROUNDS));
    let lack = lack.map(|lack| lack.key);
    let finding = |key: &str| {
        subject
            .finding("P07", Severity::Error, None)
            .with("key", key)
    };
    lack.map(finding).into_iter().collect()
}

/// On large or stiff joints: at least two rounds, the first no more than half the computed turn.
/// The peak on the last fasteners is predicted for jackbolts only; their plan is judged by it.
fn release_steps(subject: &JointSubject<'_>) -> Vec<Finding> {
    let loosening = &subject.mechanics().loosening;
    let ledger = &subject.computed.ledger;
    if loosening.opened.value() != Some(true) || loosening.staged.value() != Some(true) {
        return Vec::new();
    }
    if jackbolts::is_jackbolted(subject.mechanics()) {
        return release_rules::release_breach(subject);
    }
    let rounds = loosening.rounds.value();
    let few = rounds.is_some_and(|rounds| rounds.si() < 2.0);
    let (half, set) = (ledger.get(ids::RELEASE_ANGLE), ledger.get(ids::RELEASE_SET));
    // No crew reads less than the smallest angle off a paint line, so it is allowed on any joint.
    let least = Angle::degrees(LEAST_ANGLE).si();
    let far =
        matches!((half, set), (Some(half), Some(set)) if set.si() > half.si().max(least) + 1e-9);
    if !few && !far {
        return Vec::new();
    }
    let print = |angle: Option<Angle>| angle.map(|angle| subject.print(angle)).unwrap_or_default();
    let place = if few {
        loosening.rounds.place()
    } else {
        loosening.first_step.as_ref().and_then(Fact::place)
    };
    vec![
        subject
            .finding("P08", Severity::Error, place)
            .with(
                "rounds",
                rounds
                    .map(|rounds| subject.print(rounds))
                    .unwrap_or_default(),
            )
            .with("angle", print(set))
            .with("half", print(half))
            .with("round", "")
            .with("peak", "")
            .with("limit", "")
            .with("fault", if few { "rounds" } else { "angle" }),
    ]
}

/// A torque that is never exceeded, and with a hydraulic wrench the pressure for it.
fn no_never_exceed(subject: &JointSubject<'_>) -> Vec<Finding> {
    let mechanics = subject.mechanics();
    if mechanics.loosening.opened.value() != Some(true) {
        return Vec::new();
    }
    let ledger = &subject.computed.ledger;
    let tool = subject.computed.chosen.loosening.first();
    let hydraulic = tool.filter(|tool| tool.kind == ToolKind::HydraulicTorqueWrench);
    let no_pressure = || hydraulic.zip(ledger.lack(ids::NEVER_EXCEED_PRESSURE));
    let target = &mechanics.target.given;
    let (place, key, fault) = match (ledger.lack(ids::NEVER_EXCEED), no_pressure()) {
        // With a target the formula had all it needs: the stud has no strength left for torsion.
        (Some(lack), _) if lack.key == "target" && target.get().is_some() => {
            (target.place(), "", "past")
        }
        (Some(lack), _) => (None, lack.key, "missing"),
        (None, Some((tool, lack))) => (Some(tool.place), lack.key, "pressure"),
        (None, None) => return Vec::new(),
    };
    let finding = subject.finding("P09", Severity::Error, place);
    vec![finding.with("key", key).with("fault", fault)]
}

/// Soft gaskets creep: one more full-value round after some hours.
fn no_repeat(subject: &JointSubject<'_>) -> Vec<Finding> {
    let mechanics = subject.mechanics();
    match &mechanics.gasket {
        Some(gasket) if gasket.is_soft() && mechanics.plan.repeat_after.is_none() => vec![
            subject
                .finding("P10", Severity::Accept, Some(gasket.place))
                .with("gasket", gasket.name.clone()),
        ],
        _ => Vec::new(),
    }
}

fn hold_without_value(subject: &JointSubject<'_>) -> Vec<Finding> {
    let points = subject
        .joint
        .work
        .hold_points
        .iter()
        .filter(|point| point.accept.is_none());
    points
        .map(|point| {
            subject
                .finding("P12", Severity::Error, Some(point.place))
                .with("point", point.point.clone())
        })
        .collect()
}

fn no_zero_reading(subject: &JointSubject<'_>) -> Vec<Finding> {
    let checks = &subject.mechanics().checks;
    if checks.stretch_place.is_some() && checks.zero_reading.value() == Some(false) {
        return vec![subject.finding("P16", Severity::Accept, checks.zero_reading.place())];
    }
    Vec::new()
}

fn numbering(subject: &JointSubject<'_>) -> Vec<Finding> {
    let work = &subject.joint.work;
    if work.first.get().is_some() && work.direction.get().is_some() {
        return Vec::new();
    }
    vec![subject.finding("P17", Severity::Accept, work.first.place())]
}

/// One to three threads are the default, so only a joint without thread has no limits.
fn no_protrusion_limits(subject: &JointSubject<'_>) -> Vec<Finding> {
    let checks = &subject.mechanics().checks;
    if checks.least_protrusion.get().is_some() && checks.greatest_protrusion.get().is_some() {
        return Vec::new();
    }
    vec![subject.finding("P20", Severity::Accept, None)]
}
