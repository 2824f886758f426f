//! Hours from the joint's own counts.

use crate::job::Method;
use crate::joint::Joint;
use crate::units::{Count, Quantity, Torque};

use super::ids;
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

/// Enters the hours and returns their lines.
pub(super) fn enter(
    ledger: &mut Ledger,
    joint: &Joint,
    passes: &[Pass],
    at_once: usize,
) -> (Labour, Labour) {
    let mechanics = &joint.mechanics;
    let method = mechanics.method.value().unwrap_or(Method::HandTorqueWrench);
    let count = |kind| passes.iter().filter(|pass| pass.kind == kind).count();
    let torque = ledger.get(ids::SET_TORQUE).unwrap_or(Torque::nm(0.0));
    let stepped = count(PassKind::Stepped);
    let gap_sets = if mechanics.checks.gaps.value() == Some(true) {
        stepped.min(3)
    } else {
        0
    };
    let tighten = Work {
        task: Task::Tighten,
        drive: match method {
            Method::HandTorqueWrench => Drive::HandTorque(torque),
            _ => Drive::HydraulicWrench,
        },
        studs: ledger.get(ids::COUNT).map_or(0, |count| whole(count.si())),
        tools_at_once: at_once.max(1),
        rounds: stepped,
        check_rounds: CIRCULAR_ROUNDS * count(PassKind::Circular) + count(PassKind::Repeat),
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
    let (tighten, loosen) = (labour(&tighten), labour(&loosen));
    for (ids, labour) in [
        (
            [
                ids::TIGHTEN_HOURS_LOW,
                ids::TIGHTEN_HOURS,
                ids::TIGHTEN_HOURS_HIGH,
            ],
            &tighten,
        ),
        (
            [
                ids::LOOSEN_HOURS_LOW,
                ids::LOOSEN_HOURS,
                ids::LOOSEN_HOURS_HIGH,
            ],
            &loosen,
        ),
    ] {
        let span = labour.elapsed;
        for (id, time) in ids.into_iter().zip([span.low, span.typical, span.high]) {
            ledger.enter(id, Ok(time), Basis::Sum);
        }
    }
    let crew = Count::from_si(f64::from(
        u16::try_from(crew_of(method)).unwrap_or(u16::MAX),
    ));
    ledger.enter(ids::CREW, Ok(crew), Basis::Sum);
    (tighten, loosen)
}
