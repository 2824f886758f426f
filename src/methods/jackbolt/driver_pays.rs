//! The same studs with a multi-spindle driver and by hand alone: when the driver pays.
//!
//! Both sides do all other work of a joint alike, so only set-up and the work on each stud decide. Source of all
//! times: the building blocks of [`crate::calc::labour`] (common practice, no source); of the comparison: definition.

use crate::calc::labour::{Block, Counts, Labour, Span, labour};
use crate::calc::order::MOST_FASTENERS;
use crate::calc::{Basis, Ledger, whole};
use crate::job::DriverInput;
use crate::joint::{Driver, Tools};
use crate::units::{Count, Duration, Quantity, Volume};

use super::ids;

/// Set-up and times of one stud, both ways.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DriverPays {
    /// Setting the driver up, once for a joint.
    pub set_up: Span,
    /// One stud with the driver and its finish by hand; preparation included.
    pub with_driver: Span,
    /// One stud by hand alone; preparation included.
    pub by_hand: Span,
    /// Studs of a joint from which the driver takes no longer, with typical times; none where it never does.
    pub from: Option<usize>,
    /// What does not hang on the studs: permit, record, clearing; set-up not included.
    pub fixed: Span,
    /// How long the driver stands on the studs of the joint.
    pub on_studs: Span,
}

impl DriverPays {
    /// Compares the same work with and without its driver.
    pub(super) fn new(with_driver: &Counts, by_hand: &Counts) -> Self {
        let set_up = Block::SetUpDriver.span();
        let (driven, handed) = (labour(with_driver), labour(by_hand));
        // All work on one stud: its share of the work of the wrenches, the whole of its driver.
        let studs = by_hand.studs.max(1) as f64;
        let one = |labour: &Labour| sum(labour, is_of_a_stud).times(1.0 / studs);
        let (with_driver, by_hand) = (one(&driven), one(&handed));
        Self {
            set_up,
            with_driver,
            by_hand,
            from: pays_from(set_up.typical, with_driver.typical, by_hand.typical),
            fixed: sum(&handed, |block| !is_of_a_stud(block)),
            on_studs: sum(&driven, |block| block == Block::DriverOnStud),
        }
    }

    /// Whole studs that one crew finishes in a shift: with the driver, and by hand alone; typical times.
    pub fn studs_a_shift(&self, shift: Duration) -> [usize; 2] {
        let set_up = self.set_up.typical.si();
        [(set_up, self.with_driver), (0.0, self.by_hand)].map(|(set_up, stud)| {
            let room = shift.si() - self.fixed.typical.si() - set_up;
            whole_times(room, stud.typical.si())
        })
    }
}

/// The least whole number of studs for which set-up and driver take no longer than hands alone.
fn pays_from(set_up: Duration, with_driver: Duration, by_hand: Duration) -> Option<usize> {
    let saving = by_hand.si() - with_driver.si();
    (1..=MOST_FASTENERS).find(|studs| *studs as f64 * saving >= set_up.si() - 1e-6)
}

/// How many times a part goes into a time.
fn whole_times(time: f64, part: f64) -> usize {
    if part <= 0.0 {
        return 0;
    }
    whole((time / part + 1e-9).max(0.0))
}

fn is_of_a_stud(block: Block) -> bool {
    matches!(
        block,
        Block::LubricateStud
            | Block::RunBodyDown
            | Block::DriverOnStud
            | Block::JackboltByHand
            | Block::JackboltFinish
    )
}

fn sum(labour: &Labour, counts: impl Fn(Block) -> bool) -> Span {
    let lines = labour.lines.iter().filter(|line| counts(line.block));
    lines.fold(Span::ZERO, |sum, line| sum.and(line.time))
}

/// Enters the comparison and the batteries of a joint.
pub(super) fn enter(ledger: &mut Ledger, pays: &DriverPays, tools: &Tools) {
    ledger.enter(ids::DRIVER_SET_UP, Ok(pays.set_up.typical), Basis::Sum);
    let studs = [
        (ids::STUD_WITH_DRIVER_LOW, pays.with_driver.low),
        (ids::STUD_WITH_DRIVER, pays.with_driver.typical),
        (ids::STUD_WITH_DRIVER_HIGH, pays.with_driver.high),
        (ids::STUD_BY_HAND_LOW, pays.by_hand.low),
        (ids::STUD_BY_HAND, pays.by_hand.typical),
        (ids::STUD_BY_HAND_HIGH, pays.by_hand.high),
    ];
    for (id, time) in studs {
        ledger.enter(id, Ok(time), Basis::Sum);
    }
    if let Some(from) = pays.from {
        let from = Count::from_si(from as f64);
        ledger.enter(ids::DRIVER_PAYS_FROM, Ok(from), Basis::Sum);
    }
    if let Some(driver) = tools.driver.as_ref().and_then(|tool| tool.driver.as_ref()) {
        enter_supply(ledger, pays, driver);
    }
}

/// Batteries or air for the studs of a joint.
fn enter_supply(ledger: &mut Ledger, pays: &DriverPays, driver: &Driver) {
    let studs = ledger.get(ids::COUNT);
    match driver.input.value() {
        Some(DriverInput::Battery) => {
            let on_one = driver.studs_per_battery.value().filter(|it| it.si() > 0.0);
            if let (Some(studs), Some(on_one)) = (studs, on_one) {
                // One spare, because a battery in the cold or of some age gives less (common practice, no source).
                let batteries = (studs.si() / on_one.si() - 1e-9).ceil() + 1.0;
                ledger.enter(ids::BATTERIES, Ok(Count::from_si(batteries)), Basis::Sum);
            }
        }
        Some(DriverInput::Pneumatic) => {
            if let Some(flow) = driver.flow.value() {
                // It runs for a part of that time only.
                let air = flow.si() * pays.on_studs.typical.si();
                ledger.enter(ids::AIR, Ok(Volume::from_si(air)), Basis::Sum);
            }
        }
        _ => {}
    }
}
