//! What a turn of the nut rests on: a table that holds for the bolt, square faces, a tested lot, new bolts.

use crate::calc::ids;
use crate::job::{StudCondition, Turn};
use crate::methods::rule::{Check, JointSubject, Rule, percent};
use crate::report::{Finding, Severity};
use crate::units::{Force, Quantity, digits};

use super::{diameters, is_anchored, turns};

/// Anchors whose stretch proves the turn (common practice, no source).
const LEAST_MEASURED: usize = 2;

pub(super) const RULES: &[Rule] = &[
    Rule {
        id: "P30",
        severity: Severity::Error,
        check: Check::Joint(no_turn),
    },
    Rule {
        id: "P31",
        severity: Severity::Accept,
        check: Check::Joint(slope_not_given),
    },
    Rule {
        id: "P32",
        severity: Severity::Error,
        check: Check::Joint(lot_not_tested),
    },
    Rule {
        id: "P33",
        severity: Severity::Accept,
        check: Check::Joint(used_bolts),
    },
    Rule {
        id: "P34",
        severity: Severity::Accept,
        check: Check::Joint(no_anchor_measured),
    },
];

fn is_turned(subject: &JointSubject<'_>) -> bool {
    subject.mechanics().method.value() == Some(super::WORD)
}

fn is_bolt(subject: &JointSubject<'_>) -> bool {
    is_turned(subject) && !is_anchored(subject.mechanics())
}

/// No table gives a turn, and no engineer does.
fn no_turn(subject: &JointSubject<'_>) -> Vec<Finding> {
    if !is_bolt(subject) || subject.computed.ledger.get(ids::SET_TURN).is_some() {
        return Vec::new();
    }
    let own = &subject.mechanics().own;
    let standard = own.text(&Turn::standard);
    let known = standard.get().and_then(|name| turns::named(name));
    let slope = own.quantity(&Turn::slope);
    let ratio = diameters(&subject.computed.ledger);
    let (fault, place) = match (known, slope.value().filter(|it| it.si() > 0.0), ratio) {
        (None, ..) => ("standard", standard.place()),
        (_, Some(_), _) => ("sloped", slope.place()),
        (.., None) => ("length", None),
        (.., Some(_)) => ("long", subject.mechanics().studs.length.place()),
    };
    let names: Vec<&str> = turns::STANDARDS.iter().map(|it| it.name).collect();
    let most = known.and_then(|it| it.rows.last());
    vec![
        subject
            .finding("P30", Severity::Error, place)
            .with("fault", fault)
            .with("known", names.join(", "))
            .with("slope", slope.value().map(percent).unwrap_or_default())
            .with("ratio", ratio.map(tenths).unwrap_or_default())
            .with(
                "limit",
                most.map(|row| tenths(row.most)).unwrap_or_default(),
            ),
    ]
}

fn tenths(ratio: f64) -> String {
    digits((ratio * 10.0 * (1.0 - 1e-9)).ceil() / 10.0)
}

fn slope_not_given(subject: &JointSubject<'_>) -> Vec<Finding> {
    let is_given = subject
        .mechanics()
        .own
        .quantity(&Turn::slope)
        .get()
        .is_some();
    if !is_bolt(subject) || is_given {
        return Vec::new();
    }
    vec![subject.finding("P31", Severity::Accept, None)]
}

/// No record of the lot, or a test that showed too little.
fn lot_not_tested(subject: &JointSubject<'_>) -> Vec<Finding> {
    if !is_bolt(subject) {
        return Vec::new();
    }
    let own = &subject.mechanics().own;
    let (lot, tension) = (own.text(&Turn::lot), own.quantity(&Turn::lot_tension));
    let standard = own.text(&Turn::standard);
    let standard = standard.get().and_then(|name| turns::named(name));
    let load = subject.computed.ledger.get(ids::LOAD);
    let needed = standard.zip(load);
    let needed = needed.map(|(it, load)| Force::from_si(load.si() * it.lot_share));
    let found = |fault, place| {
        let print = |force: Option<Force>| force.map(|it| subject.print(it)).unwrap_or_default();
        subject
            .finding("P32", Severity::Error, place)
            .with("fault", fault)
            .with("lot", lot.get().cloned().unwrap_or_default())
            .with("tension", print(tension.value()))
            .with("needed", print(needed))
    };
    match (lot.get(), tension.value(), needed) {
        (None, ..) => vec![found("record", None)],
        (_, None, _) => vec![found("tension", lot.place())],
        (_, Some(shown), Some(least)) if shown.si() < least.si() * (1.0 - 1e-9) => {
            vec![found("low", tension.place())]
        }
        _ => Vec::new(),
    }
}

/// A bolt that was once tensioned has yielded; a galvanised one is never used again.
fn used_bolts(subject: &JointSubject<'_>) -> Vec<Finding> {
    let condition = &subject.mechanics().studs.condition;
    if !is_bolt(subject) || condition.value() != Some(StudCondition::Used) {
        return Vec::new();
    }
    vec![subject.finding("P33", Severity::Accept, condition.place())]
}

/// The turn of an anchor follows from the stretch that is wanted, so its stretch is read.
fn no_anchor_measured(subject: &JointSubject<'_>) -> Vec<Finding> {
    let measured = subject.mechanics().checks.stretch.len();
    if !is_turned(subject) || is_bolt(subject) || measured >= LEAST_MEASURED {
        return Vec::new();
    }
    let place = subject.mechanics().checks.stretch_place;
    vec![
        subject
            .finding("P34", Severity::Accept, place)
            .with("count", measured.to_string())
            .with("least", LEAST_MEASURED.to_string()),
    ]
}
