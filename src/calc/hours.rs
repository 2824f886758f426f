//! Hours from the joint's own counts.

use crate::job::Method;
use crate::joint::Joint;
use crate::units::{Count, Quantity, Torque};

use super::driver_pays::{self, DriverPays};
use super::ids;
use super::jackbolt::{ByHand, JackboltPlan, RoundKind};
use super::labour::{Drive, Labour, Task, Work, labour};
use super::ledger::{Basis, Ledger};
use super::setting::{Pass, PassKind};
use super::whole;

/// Rounds of the circular pass until no nut turns: two are usual (PCC-1 legacy, read in a
/// restatement).
const CIRCULAR_ROUNDS: usize = 2;

/// People that a method needs (common practice, no source).
pub(crate) const fn crew_of(method: Method) -> usize {
    match method {
        Method::HandTorqueWrench => 1,
        Method::HydraulicTorqueWrench | Method::MultiJackboltTensioner => 2,
    }
}

fn is_bulk(kind: RoundKind) -> bool {
    matches!(kind, RoundKind::Bulk { .. })
}

/// By hand, before the full-value rounds.
fn is_before_full(kind: RoundKind) -> bool {
    matches!(kind, RoundKind::Seat | RoundKind::Raise)
}

/// The hours of a joint, block by block.
pub(super) struct Hours {
    pub(super) tighten: Labour,
    pub(super) loosen: Labour,
    /// Tightening by hand alone, where a driver is planned.
    pub(super) by_hand: Option<Labour>,
    /// With the driver against by hand, where one is planned.
    pub(super) driver_pays: Option<DriverPays>,
}

/// Enters the hours and returns their lines.
pub(super) fn enter(
    ledger: &mut Ledger,
    joint: &Joint,
    passes: &[Pass],
    jackbolts: Option<&JackboltPlan>,
    at_once: usize,
) -> Hours {
    let mechanics = &joint.mechanics;
    let method = mechanics.method.value().unwrap_or(Method::HandTorqueWrench);
    let count = |kind| passes.iter().filter(|pass| pass.kind == kind).count();
    let torque = ledger.get(ids::SET_TORQUE).unwrap_or(Torque::nm(0.0));
    let stepped = count(PassKind::Stepped);
    let gap_sets = if mechanics.checks.gaps.value() == Some(true) {
        gap_sets_of(stepped)
    } else {
        0
    };
    let tighten = Work {
        task: Task::Tighten,
        drive: match method {
            Method::HandTorqueWrench => Drive::HandTorque(torque),
            Method::HydraulicTorqueWrench => Drive::HydraulicWrench,
            Method::MultiJackboltTensioner => Drive::Jackbolts {
                jackbolts: ledger
                    .get(ids::JACKBOLT_COUNT)
                    .map_or(0, |count| whole(count.si())),
                settings: jackbolts.map_or(0, |plan| plan.count_of(is_bulk)),
            },
        },
        studs: ledger.get(ids::COUNT).map_or(0, |count| whole(count.si())),
        tools_at_once: at_once.max(1),
        rounds: jackbolts.map_or(stepped, |plan| plan.count_of(is_before_full)),
        check_rounds: match jackbolts {
            Some(plan) => plan.full_rounds,
            None => CIRCULAR_ROUNDS * count(PassKind::Circular) + count(PassKind::Repeat),
        },
        gap_sets,
        holds: joint.work.hold_points.len(),
        seat: mechanics
            .gasket
            .as_ref()
            .and_then(|gasket| gasket.outer.value()),
        factors: Vec::new(),
        crew: joint.work.people.len().max(crew_of(method)),
    };
    let rounds = ledger
        .get(ids::RELEASE_ROUNDS)
        .map_or(2, |rounds| whole(rounds.si()));
    let loosen = Work {
        task: Task::Loosen,
        rounds,
        check_rounds: 0,
        gap_sets: 0,
        seat: None,
        ..tighten.clone()
    };
    let by_hand = jackbolts
        .and_then(|plan| plan.by_hand.as_ref())
        .map(|by_hand| without_driver(&tighten, by_hand));
    let driver_pays = by_hand
        .as_ref()
        .map(|by_hand| DriverPays::new(&tighten, by_hand));
    let hours = Hours {
        tighten: labour(&tighten),
        loosen: labour(&loosen),
        by_hand: by_hand.as_ref().map(labour),
        driver_pays,
    };
    enter_hours(ledger, &hours);
    if let Some(pays) = &hours.driver_pays {
        driver_pays::enter(ledger, pays, &mechanics.tools);
    }
    let crew = Count::from_si(f64::from(
        u16::try_from(crew_of(method)).unwrap_or(u16::MAX),
    ));
    ledger.enter(ids::CREW, Ok(crew), Basis::Sum);
    hours
}

/// Gaps are read after each stepped pass, three times at most.
fn gap_sets_of(stepped: usize) -> usize {
    stepped.min(3)
}

/// The same studs without their driver.
fn without_driver(tighten: &Work, by_hand: &ByHand) -> Work {
    let jackbolts = match tighten.drive {
        Drive::Jackbolts { jackbolts, .. } => jackbolts,
        _ => 0,
    };
    let rounds = by_hand.rounds.len().saturating_sub(by_hand.full_rounds);
    Work {
        drive: Drive::Jackbolts {
            jackbolts,
            settings: 0,
        },
        rounds,
        gap_sets: if tighten.gap_sets > 0 {
            let kinds = by_hand.rounds.iter().map(|round| round.kind);
            gap_sets_of(kinds.filter(|kind| *kind == RoundKind::Raise).count())
        } else {
            0
        },
        check_rounds: by_hand.full_rounds,
        ..tighten.clone()
    }
}

fn enter_hours(ledger: &mut Ledger, hours: &Hours) {
    let tighten = [
        ids::TIGHTEN_HOURS_LOW,
        ids::TIGHTEN_HOURS,
        ids::TIGHTEN_HOURS_HIGH,
    ];
    let loosen = [
        ids::LOOSEN_HOURS_LOW,
        ids::LOOSEN_HOURS,
        ids::LOOSEN_HOURS_HIGH,
    ];
    let by_hand = [
        ids::BY_HAND_HOURS_LOW,
        ids::BY_HAND_HOURS,
        ids::BY_HAND_HOURS_HIGH,
    ];
    let lines = [
        (tighten, Some(&hours.tighten)),
        (loosen, Some(&hours.loosen)),
        (by_hand, hours.by_hand.as_ref()),
    ];
    for (ids, labour) in lines {
        let Some(labour) = labour else { continue };
        let span = labour.elapsed;
        for (id, time) in ids.into_iter().zip([span.low, span.typical, span.high]) {
            ledger.enter(id, Ok(time), Basis::Sum);
        }
    }
}
