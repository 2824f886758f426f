//! What every method does alike while it works a joint out: tools at once, order, hours.

use crate::calc::labour::{Block, Counts, Labour, Task, labour};
use crate::calc::order::{ToolsAtOnce, tools_at_once};
use crate::calc::{
    Basis, Chosen, Common, Id, Ledger, Pass, PassKind, ids, setting, stress, studs, whole,
};
use crate::joint::{Joint, Mechanics};
use crate::units::{Count, Duration, Quantity};

use super::computed::Computed;

/// Rounds of the circular pass until no nut turns: two are usual (PCC-1 legacy, read in a
/// restatement).
const CIRCULAR_ROUNDS: usize = 2;

/// A ledger with what the job gives of the studs.
pub(super) fn begin(joint: &Mechanics) -> Ledger {
    let mut ledger = Ledger::default();
    studs::enter(&mut ledger, joint);
    stress::enter_section(&mut ledger);
    ledger
}

/// Studs of a joint, 0 where nobody gives their number.
fn count_of_studs(ledger: &Ledger) -> usize {
    ledger.get(ids::COUNT).map_or(0, |count| whole(count.si()))
}

/// How many of the tools work at once.
pub(super) fn at_once(ledger: &Ledger, chosen: &Chosen) -> ToolsAtOnce {
    tools_at_once(count_of_studs(ledger), chosen.turning.len().max(1))
}

/// Closes the ledger and adds the order, which is the same for all joints with as many studs and tools.
pub(super) fn finish(mut computed: Computed, joint: &Mechanics, common: &Common) -> Computed {
    let count = count_of_studs(&computed.ledger);
    let order = setting::order(joint, count, computed.tools_at_once.at_once);
    computed.order = order.map(|order| common.order(order));
    common.close(&mut computed.ledger);
    computed
}

/// How many passes are of a kind.
pub(super) fn count_of(passes: &[Pass], kind: PassKind) -> usize {
    passes.iter().filter(|pass| pass.kind == kind).count()
}

/// Rounds at the final value that the passes ask for.
pub(super) fn check_rounds(passes: &[Pass]) -> usize {
    CIRCULAR_ROUNDS * count_of(passes, PassKind::Circular) + count_of(passes, PassKind::Repeat)
}

/// Least number of release rounds; two where nobody knows it.
pub(super) fn release_rounds(ledger: &Ledger) -> usize {
    ledger
        .get(ids::RELEASE_ROUNDS)
        .map_or(2, |rounds| whole(rounds.si()))
}

/// Sets of gap readings: after each stepped pass, three times at most, where gaps are read at all.
pub(super) fn gap_sets(joint: &Mechanics, stepped: usize) -> usize {
    if joint.checks.gaps.value() == Some(true) {
        stepped.min(3)
    } else {
        0
    }
}

/// What tightening counts whatever the method; its tools and `set_up` are still to come.
pub(super) fn tightening(
    ledger: &Ledger,
    joint: &Joint,
    (needed, run_down): (usize, Block),
    stepped: usize,
) -> Counts {
    let mechanics = &joint.mechanics;
    let gasket = mechanics.gasket.as_ref();
    Counts {
        task: Task::Tighten,
        studs: count_of_studs(ledger),
        set_up: None,
        run_down,
        tools: Vec::new(),
        gap_sets: gap_sets(mechanics, stepped),
        holds: joint.work.hold_points.len(),
        seat: gasket.and_then(|gasket| gasket.outer.value()),
        factors: Vec::new(),
        crew: joint.work.people.len().max(needed),
    }
}

/// The same for loosening with these tools: nothing is cleaned or put in, and no gap is read.
pub(super) fn loosening(
    tighten: &Counts,
    set_up: Option<Block>,
    tools: Vec<(Block, usize)>,
) -> Counts {
    Counts {
        task: Task::Loosen,
        set_up,
        tools,
        gap_sets: 0,
        seat: None,
        ..tighten.clone()
    }
}

/// The hours of the later look, where the joint has one: one round at the full value, nothing made up. Enters them.
pub(super) fn recheck(
    ledger: &mut Ledger,
    joint: &Joint,
    tighten: &Counts,
    tools: Vec<(Block, usize)>,
) -> Option<Labour> {
    joint.mechanics.recheck.as_ref()?;
    let hours = labour(&Counts {
        task: Task::Recheck,
        ..loosening(tighten, tighten.set_up, tools)
    });
    let ids = [
        ids::RECHECK_HOURS_LOW,
        ids::RECHECK_HOURS,
        ids::RECHECK_HOURS_HIGH,
    ];
    enter_hours(ledger, ids, &hours);
    Some(hours)
}

/// Enters hours: low, typical, high.
pub(super) fn enter_hours(ledger: &mut Ledger, ids: [Id<Duration>; 3], labour: &Labour) {
    let span = labour.elapsed;
    for (id, time) in ids.into_iter().zip([span.low, span.typical, span.high]) {
        ledger.enter(id, Ok(time), Basis::Sum);
    }
}

/// Enters the hours of both tasks.
pub(super) fn enter_both(ledger: &mut Ledger, tighten: &Labour, loosen: &Labour) {
    let ids = [
        ids::TIGHTEN_HOURS_LOW,
        ids::TIGHTEN_HOURS,
        ids::TIGHTEN_HOURS_HIGH,
    ];
    enter_hours(ledger, ids, tighten);
    let ids = [
        ids::LOOSEN_HOURS_LOW,
        ids::LOOSEN_HOURS,
        ids::LOOSEN_HOURS_HIGH,
    ];
    enter_hours(ledger, ids, loosen);
}

/// Enters the people that the method needs.
pub(super) fn enter_crew(ledger: &mut Ledger, needed: usize) {
    let crew = f64::from(u16::try_from(needed).unwrap_or(u16::MAX));
    ledger.enter(ids::CREW, Ok(Count::from_si(crew)), Basis::Sum);
}
