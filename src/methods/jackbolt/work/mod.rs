//! What is done to studs with multi-jackbolt tensioners: by hand, with a multi-spindle driver for the bulk, in release,
//! at a re-check. What the plan of the tensioner lacks is a value that somebody must give, never a number.

mod check;
mod driver;
mod driver_prepare;
mod facts;
mod lost;
mod picture;
mod prepare;
mod release;
mod rounds;
mod run_out;

use crate::methods::{Case, Readings, steps};
use crate::work::{HazardKind, Phase, Role, Section, Sequence, Set, Task, Work};

use super::ID;
use facts::Facts;

/// A stud that breaks is met wherever load goes on.
const STRAIN: &[HazardKind] = &[HazardKind::StudInLine];

/// The end of each record: two who did it, who answers for them, who looked, whose plant it is.
const TIGHTENED: &[(&str, Role)] = &[
    ("assembled", Role::Technician),
    ("assembled_too", Role::Technician),
    ("supervised", Role::Supervisor),
    ("inspected", Role::Inspector),
    ("client", Role::Client),
];
const LOOSENED: &[(&str, Role)] = &[
    ("loosened", Role::Technician),
    ("loosened_too", Role::Technician),
    ("supervised", Role::Supervisor),
    ("operated", Role::PlantOperator),
    ("client", Role::Client),
];

/// Closing the joint and bringing its studs to load.
pub(super) fn tighten(case: &Case<'_>) -> Work {
    let facts = Facts::new(case);
    let mut work = steps::begin(ID, Task::Tighten, case);
    steps::make_up(&mut work, case, |work| prepare::make_up(work, &facts));
    prepare::tools(&mut work, &facts);
    rounds::seat(&mut work, &facts);
    steps::ready(&mut work, case);
    rounds::raise(&mut work, &facts);
    if let Some(driver) = facts.driver() {
        driver_prepare::prepare(&mut work, &facts, driver);
        driver::drive(&mut work, &facts, driver);
        lost::decisions(&mut work, &facts);
    }
    rounds::full(&mut work, &facts);
    check::readings(&mut work, &facts);
    prepare::keys(&mut work, &facts);
    prepare::facts(&mut work, &facts);
    work.picture = picture::tightening(&facts);
    steps::finish(&mut work, case, TIGHTENED);
    work
}

/// Letting the studs go in rounds.
pub(super) fn loosen(case: &Case<'_>) -> Work {
    let facts = Facts::new(case);
    let mut work = steps::begin(ID, Task::Loosen, case);
    release::prepare(&mut work, &facts);
    release::rounds(&mut work, &facts);
    run_out::driver(&mut work, &facts);
    run_out::inspect(&mut work);
    release::keys(&mut work, &facts);
    prepare::facts(&mut work, &facts);
    work.picture = picture::loosening(&facts);
    steps::finish(&mut work, case, LOOSENED);
    work
}

/// One round in circle at the full value on cold studs, never more.
pub(super) fn recheck(case: &Case<'_>) -> Work {
    let facts = Facts::new(case);
    let mut work = steps::begin(ID, Task::Recheck, case);
    prepare::tools(&mut work, &facts);
    work.phase(Phase::Load);
    work.set(
        "recheck",
        "C1",
        Set::by(facts.readings().full()),
        Sequence::Circle,
    )
    .share(1.0)
    .meets(STRAIN)
    .accept
    .push(facts::below_flat());
    work.phase(Phase::Check);
    work.read("recheck_turn", Section::Rounds)
        .grid(facts::words(&["largest", "done_by"]), Vec::new())
        .dimension(crate::units::Dimension::Angle)
        .accept
        .push(facts::below_flat());
    check::recheck_limit(&mut work, &facts);
    work.point("rechecked", "W2", steps::WITNESSED_IN_A, Role::Inspector)
        .covers(&["recheck"]);
    prepare::keys(&mut work, &facts);
    prepare::facts(&mut work, &facts);
    work.picture = picture::rechecking(&facts);
    steps::finish(&mut work, case, TIGHTENED);
    work
}
