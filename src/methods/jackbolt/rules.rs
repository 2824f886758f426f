//! Multi-jackbolt tensioners and the drivers that load them.

use crate::calc::{same_size, whole};

use crate::job::ToolKind;
use crate::joint::{Driver, Fact, Mechanics, Tensioner, Tool};
use crate::report::{Finding, Severity};
use crate::standards::jackbolts;
use crate::units::{Length, Quantity, Ratio};

use super::{JackboltPlan, WORD, ids, positions};

use crate::methods::rule::{Check, JointSubject, Rule, percent, percent_si};

pub(super) const RULES: &[Rule] = &[
    Rule {
        id: "L22",
        severity: Severity::Error,
        check: Check::Joint(overloaded_jackbolt),
    },
    Rule {
        id: "L25",
        severity: Severity::Note,
        check: Check::Joint(flat_rule_leaves),
    },
    Rule {
        id: "M15",
        severity: Severity::Accept,
        check: Check::Joint(unknown_washer),
    },
    Rule {
        id: "P14",
        severity: Severity::Error,
        check: Check::Joint(incomplete_sequence),
    },
    Rule {
        id: "T14",
        severity: Severity::Error,
        check: Check::Joint(wrong_spindles),
    },
    Rule {
        id: "T15",
        severity: Severity::Error,
        check: Check::Joint(wrong_circle),
    },
    Rule {
        id: "T16",
        severity: Severity::Error,
        check: Check::Joint(driver_too_high),
    },
    Rule {
        id: "T17",
        severity: Severity::Accept,
        check: Check::Joint(no_hand_finish),
    },
    Rule {
        id: "T18",
        severity: Severity::Error,
        check: Check::Joint(short_travel),
    },
    Rule {
        id: "T30",
        severity: Severity::Error,
        check: Check::Joint(strong_reversal),
    },
];

/// Whether the jackbolts of a joint are turned, and not its nuts.
pub(crate) fn is_jackbolted(mechanics: &Mechanics) -> bool {
    mechanics.method.value() == Some(WORD)
}

/// The tensioner of a joint that is loaded by its jackbolts.
pub(crate) fn tensioner<'a>(subject: &JointSubject<'a>) -> Option<&'a Tensioner> {
    let mechanics = subject.mechanics();
    let tensioner = mechanics.tensioner.as_deref()?;
    is_jackbolted(mechanics).then_some(tensioner)
}

/// The driver of such a joint, as a tool and with what only drivers have.
pub(crate) fn driver<'a>(subject: &JointSubject<'a>) -> Option<(&'a Tool, &'a Driver)> {
    let mechanics = subject.mechanics();
    let tool = mechanics.tools.driver.as_deref()?;
    let driver = tool.driver.as_ref()?;
    is_jackbolted(mechanics).then_some((tool, driver))
}

/// The greatest load of a jackbolt against its papers, its yield with torsion, and the pressure that the washer bears.
/// Of its yield it may take what a stud may: L01.
fn overloaded_jackbolt(subject: &JointSubject<'_>) -> Vec<Finding> {
    let Some(tensioner) = tensioner(subject) else {
        return Vec::new();
    };
    let ledger = &subject.computed.ledger;
    let mut findings = Vec::new();
    let mut found = |place, fault: &'static str, value: String, limit: String| {
        findings.push(
            subject
                .finding("L22", Severity::Error, place)
                .with("fault", fault)
                .with("value", value)
                .with("limit", limit),
        );
    };
    let load = ledger.get(ids::JACKBOLT_GREATEST);
    if let Some((load, limit)) = load.zip(ledger.get(ids::JACKBOLT_RATING))
        && load.si() > limit.si() * (1.0 + 1e-9)
    {
        found(
            tensioner.jackbolt_load.place(),
            "load",
            subject.print(load),
            subject.print(limit),
        );
    }
    let limit = subject.limit("L01");
    if let Some(share) = ledger.get(ids::JACKBOLT_SHARE)
        && share.si() > limit
    {
        found(
            tensioner.grade.place(),
            "yield",
            percent(share),
            percent_si(limit),
        );
    }
    let limit = subject.limit("L22");
    for (id, fault) in [
        (ids::BODY_SHEAR_SHARE, "body"),
        (ids::THREAD_SHEAR_SHARE, "thread"),
    ] {
        if let Some(share) = ledger.get(id)
            && share.si() > limit
        {
            let place = tensioner.thread_engagement.place();
            found(place, fault, percent(share), percent_si(limit));
        }
    }
    let pressure = ledger.get(ids::TIP_PRESSURE);
    if let Some((pressure, limit)) = pressure.zip(ledger.get(ids::TIP_PRESSURE_LIMIT))
        && pressure.si() > limit.si() * (1.0 + 1e-9)
    {
        found(
            tensioner.tip_pressure.place(),
            "tip",
            subject.print(pressure),
            subject.print(limit),
        );
    }
    findings
}

/// A crew that knows the common rule of 20° must hear where it ends too early.
fn flat_rule_leaves(subject: &JointSubject<'_>) -> Vec<Finding> {
    let Some(plan) = subject.computed.plan.jackbolts() else {
        return Vec::new();
    };
    if !plan.flat_rule_leaves {
        return Vec::new();
    }
    let wanted = &subject.mechanics().plan.wanted_mean;
    let allowed = wanted.value().map(|mean| percent_si(1.0 - mean.si()));
    vec![
        subject
            .finding("L25", Severity::Note, wanted.place())
            .with("likely", percent_si(left(plan).0))
            .with("most", percent_si(left(plan).1))
            .with("allowed", allowed.unwrap_or_default()),
    ]
}

/// What the stud lacks when the rule of 20° is just met: likely, and at worst.
fn left(plan: &JackboltPlan) -> (f64, f64) {
    let left = plan
        .predictions
        .map(|prediction| (1.0 - prediction.flat_rule.mean).max(0.0));
    (left.likely, left.greatest())
}

fn unknown_washer(subject: &JointSubject<'_>) -> Vec<Finding> {
    match tensioner(subject) {
        Some(tensioner) if tensioner.washer_hardness.get().is_none() => vec![
            subject
                .finding("M15", Severity::Accept, Some(tensioner.place))
                .with("tensioner", tensioner.name.clone()),
        ],
        _ => Vec::new(),
    }
}

/// After the driver its sockets are freed by a brief reversal, and the last rounds are done by hand.
fn incomplete_sequence(subject: &JointSubject<'_>) -> Vec<Finding> {
    let Some((tool, _)) = driver(subject) else {
        return Vec::new();
    };
    let reversal = subject.mechanics().plan.reversal.as_ref();
    let no_reversal = reversal.is_none_or(|torque| torque.get().is_none());
    let steps = [
        (no_reversal, "reversal"),
        (subject.computed.chosen.turning.is_empty(), "finish"),
    ];
    steps
        .into_iter()
        .filter(|(is_missing, _)| *is_missing)
        .map(|(_, step)| {
            subject
                .finding("P14", Severity::Error, None)
                .with("tool", tool.name.clone())
                .with("step", step)
        })
        .collect()
}

fn wrong_spindles(subject: &JointSubject<'_>) -> Vec<Finding> {
    let (Some(tensioner), Some((tool, driver))) = (tensioner(subject), driver(subject)) else {
        return Vec::new();
    };
    let (Some(jackbolts), Some(spindles)) = (tensioner.jackbolts.value(), driver.spindles.value())
    else {
        return Vec::new();
    };
    if positions(whole(jackbolts.si()), whole(spindles.si())).is_some() {
        return Vec::new();
    }
    vec![
        subject
            .finding("T14", Severity::Error, driver.spindles.place())
            .with("tool", tool.name.clone())
            .with("spindles", subject.print(spindles))
            .with("jackbolts", subject.print(jackbolts)),
    ]
}

fn wrong_circle(subject: &JointSubject<'_>) -> Vec<Finding> {
    let (Some(tensioner), Some((tool, driver))) = (tensioner(subject), driver(subject)) else {
        return Vec::new();
    };
    let (Some(circle), Some(spindles)) = (tensioner.circle.value(), driver.spindle_circle.value())
    else {
        return Vec::new();
    };
    let limit = subject.limit("T15");
    if (circle.si() - spindles.si()).abs() <= limit * (1.0 + 1e-9) {
        return Vec::new();
    }
    vec![
        subject
            .finding("T15", Severity::Error, driver.spindle_circle.place())
            .with("tool", tool.name.clone())
            .with("spindles", subject.print(spindles))
            .with("jackbolts", subject.print(circle))
            .with("limit", subject.print(Length::from_si(limit))),
    ]
}

/// The level and what the strongest spindle makes of it. What the hand wrench finds above its setting it cannot take
/// off again.
fn driver_too_high(subject: &JointSubject<'_>) -> Vec<Finding> {
    let ledger = &subject.computed.ledger;
    let known = ledger
        .get(ids::DRIVER_LEVEL)
        .zip(ledger.get(ids::SPINDLE_SCATTER));
    let Some((level, scatter)) = known.filter(|_| driver(subject).is_some()) else {
        return Vec::new();
    };
    let limit = subject.limit("T16");
    let strongest = level.si() * (1.0 + scatter.si());
    if level.si() <= limit + 1e-9 && strongest <= 1.0 + 1e-9 {
        return Vec::new();
    }
    // The limit of the job may lie below what the scatter allows.
    let most = (jackbolts::greatest_level(scatter.si()).min(limit) * 100.0 + 1e-9).floor() / 100.0;
    vec![
        subject
            .finding(
                "T16",
                Severity::Error,
                subject.mechanics().plan.driver_level.place(),
            )
            .with("level", percent(level))
            .with("scatter", percent(scatter))
            .with("strongest", percent(Ratio::from_si(strongest)))
            .with("most", percent_si(most)),
    ]
}

/// A driver whose spindles differ is followed by a wrench that can be relied on. That there is none at all is P14's.
fn no_hand_finish(subject: &JointSubject<'_>) -> Vec<Finding> {
    let Some((driver, _)) = driver(subject) else {
        return Vec::new();
    };
    let turning = &subject.computed.chosen.turning;
    let is_relied_on = |tool: &Tool| {
        tool.kind == ToolKind::HandTorqueWrench
            && tool.certificate.get().is_some()
            && tool.due.get().is_some()
    };
    match turning.first() {
        Some(first) if !turning.iter().any(|tool| is_relied_on(tool)) => vec![
            subject
                .finding("T17", Severity::Accept, Some(first.place))
                .with("tool", first.name.clone())
                .with("driver", driver.name.clone()),
        ],
        _ => Vec::new(),
    }
}

/// The travel against what the softest jackbolts would need that the job does not rule out.
fn short_travel(subject: &JointSubject<'_>) -> Vec<Finding> {
    let ledger = &subject.computed.ledger;
    let known = ledger
        .get(ids::TRAVEL_GIVEN)
        .zip(ledger.get(ids::TRAVEL_GREATEST))
        .zip(tensioner(subject));
    match known {
        Some(((given, needed), tensioner)) if given.si() < needed.si() * (1.0 - 1e-9) => vec![
            subject
                .finding("T18", Severity::Error, tensioner.travel.place())
                .with("travel", subject.print(given))
                .with("needed", subject.print(needed)),
        ],
        _ => Vec::new(),
    }
}

/// The reversal only frees the sockets; a stronger one lets the jackbolts go again.
fn strong_reversal(subject: &JointSubject<'_>) -> Vec<Finding> {
    let Some((tool, _)) = driver(subject) else {
        return Vec::new();
    };
    let reversal = subject.mechanics().plan.reversal.as_ref();
    let torque = reversal.and_then(Fact::value);
    let known = torque.zip(subject.computed.ledger.get(ids::REVERSAL_LIMIT));
    match known {
        Some((torque, limit)) if torque.si() > limit.si() * (1.0 + 1e-9) => vec![
            subject
                .finding("T30", Severity::Error, reversal.and_then(Fact::place))
                .with("tool", tool.name.clone())
                .with("torque", subject.print(torque))
                .with("limit", subject.print(limit)),
        ],
        _ => Vec::new(),
    }
}

/// The socket of a driver on the jackbolts: what T12 looks at besides the socket of the wrench.
pub(crate) fn wrong_driver_socket(subject: &JointSubject<'_>) -> Option<Finding> {
    let flats = tensioner(subject)?.across_flats.value()?;
    let (tool, driver) = driver(subject)?;
    let own = driver.socket.value()?;
    (!same_size(own, flats)).then(|| {
        subject
            .finding("T12", Severity::Error, driver.socket.place())
            .with("tool", tool.name.clone())
            .with("socket", subject.print(own))
            .with("nut", subject.print(flats))
            .with("part", "jackbolt")
    })
}
