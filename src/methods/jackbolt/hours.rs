//! Hours of tensioners: every jackbolt of a stud in every round.

use crate::calc::labour::{Block, Counts, Labour, labour};
use crate::calc::{Ledger, Pass, PassKind, whole};
use crate::joint::Joint;
use crate::methods::{common, nuts};
use crate::units::Quantity;

use super::driver_pays::{self, DriverPays};
use super::ids;
use super::{ByHand, JackboltPlan, RoundKind};

/// People that it needs (common practice, no source).
pub(super) const CREW: usize = 2;

/// The hours of a joint, block by block.
pub(super) struct Hours {
    pub(super) tighten: Labour,
    pub(super) loosen: Labour,
    /// The later look, where the joint has one.
    pub(super) recheck: Option<Labour>,
    /// Tightening by hand alone, where a driver is planned.
    pub(super) by_hand: Option<Labour>,
    /// With the driver against by hand, where one is planned.
    pub(super) driver_pays: Option<DriverPays>,
}

/// The rounds of a joint, as they are worked.
#[derive(Clone, Copy)]
struct Rounds {
    studs: usize,
    /// Jackbolts of a stud.
    jackbolts: usize,
    /// Wrenches that work at the same time.
    at_once: usize,
    /// By hand, before the full value.
    before: usize,
    /// Settings of the driver on a stud, each position counted.
    settings: usize,
    /// At the full value.
    full: usize,
}

impl Rounds {
    fn of_jackbolts(&self, rounds: usize) -> usize {
        nuts::cycles(self.studs, self.at_once) * self.jackbolts * rounds
    }

    /// What is set up before the tools can run.
    fn set_up(&self) -> Option<Block> {
        (self.settings > 0).then_some(Block::SetUpDriver)
    }

    /// The blocks of tightening; after a driver the full rounds find little left to turn.
    fn tighten(&self) -> Vec<(Block, usize)> {
        if self.settings == 0 {
            let rounds = self.of_jackbolts(self.before + self.full);
            return vec![(Block::JackboltByHand, rounds)];
        }
        vec![
            (Block::JackboltByHand, self.of_jackbolts(self.before)),
            // One driver goes from stud to stud, however many wrenches follow it.
            (Block::DriverOnStud, self.studs * self.settings),
            (Block::JackboltFinish, self.of_jackbolts(self.full)),
        ]
    }
}

/// Enters the hours and gives their lines.
pub(super) fn enter(
    ledger: &mut Ledger,
    joint: &Joint,
    passes: &[Pass],
    plan: Option<&JackboltPlan>,
    at_once: usize,
) -> Hours {
    let stepped = common::count_of(passes, PassKind::Stepped);
    let base = common::tightening(ledger, joint, (CREW, Block::RunBodyDown), stepped);
    let jackbolts = ledger.get(ids::JACKBOLT_COUNT);
    let rounds = Rounds {
        studs: base.studs,
        jackbolts: jackbolts.map_or(0, |count| whole(count.si())),
        at_once,
        before: plan.map_or(stepped, |plan| plan.count_of(is_before_full)),
        settings: plan.map_or(0, |plan| plan.count_of(is_bulk)),
        full: plan.map_or_else(|| common::check_rounds(passes), |plan| plan.full_rounds),
    };
    let tighten = with_tools(&base, &rounds);
    let released = rounds.of_jackbolts(common::release_rounds(ledger));
    // A driver only runs out what hands have let go, so nothing is set up for it.
    let loosen = common::loosening(&base, None, vec![(Block::LoosenJackbolt, released)]);
    let by_hand = plan.and_then(|plan| plan.by_hand.as_ref());
    let by_hand = by_hand.map(|by_hand| without_driver(&tighten, &rounds, joint, by_hand));
    let driver_pays = by_hand
        .as_ref()
        .map(|by_hand| DriverPays::new(&tighten, by_hand));
    let mut hours = Hours {
        tighten: labour(&tighten),
        loosen: labour(&loosen),
        recheck: None,
        by_hand: by_hand.as_ref().map(labour),
        driver_pays,
    };
    common::enter_both(ledger, &hours.tighten, &hours.loosen);
    if let Some(by_hand) = &hours.by_hand {
        let ids = [
            ids::BY_HAND_HOURS_LOW,
            ids::BY_HAND_HOURS,
            ids::BY_HAND_HOURS_HIGH,
        ];
        common::enter_hours(ledger, ids, by_hand);
    }
    if let Some(pays) = &hours.driver_pays {
        driver_pays::enter(ledger, pays, &joint.mechanics.tools);
    }
    // One round by hand on what is loaded; nothing is set up for it.
    let by_hand = Counts {
        set_up: None,
        ..tighten
    };
    let round = vec![(Block::JackboltFinish, rounds.of_jackbolts(1))];
    hours.recheck = common::recheck(ledger, joint, &by_hand, round);
    common::enter_crew(ledger, CREW);
    hours
}

fn is_bulk(kind: RoundKind) -> bool {
    matches!(kind, RoundKind::Bulk { .. })
}

/// By hand, before the full-value rounds.
fn is_before_full(kind: RoundKind) -> bool {
    matches!(kind, RoundKind::Seat | RoundKind::Raise)
}

fn with_tools(base: &Counts, rounds: &Rounds) -> Counts {
    Counts {
        set_up: rounds.set_up(),
        tools: rounds.tighten(),
        ..base.clone()
    }
}

/// The same studs without their driver.
fn without_driver(tighten: &Counts, driven: &Rounds, joint: &Joint, by_hand: &ByHand) -> Counts {
    let rounds = Rounds {
        before: by_hand.rounds.len().saturating_sub(by_hand.full_rounds),
        settings: 0,
        full: by_hand.full_rounds,
        ..*driven
    };
    let raises = by_hand.rounds.iter();
    let raises = raises
        .filter(|round| round.kind == RoundKind::Raise)
        .count();
    let reads_gaps = tighten.gap_sets > 0;
    Counts {
        gap_sets: if reads_gaps {
            common::gap_sets(&joint.mechanics, raises)
        } else {
            0
        },
        ..with_tools(tighten, &rounds)
    }
}

#[cfg(test)]
mod tests;
