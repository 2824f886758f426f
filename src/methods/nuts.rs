//! What the methods share that turn nuts with a torque.

use std::sync::Arc;

use crate::calc::choose::choose;
use crate::calc::labour::{Block, Labour, Task, labour};
use crate::calc::load::{Loading, enter_friction, enter_target, load_for, torque_for};
use crate::calc::setting::SetPass;
use crate::calc::{Chosen, Common, Ledger, Pass, PassKind, ids, release, setting, stress, studs};
use crate::joint::{Dial, Joint, Mechanics};
use crate::units::Torque;

use super::common;
use super::computed::Computed;
use super::method::Plan;

/// Least and greatest break-out torque of a nut as shares of its last torque.
pub(crate) const BREAK_OUT: [f64; 2] = [0.8, 2.0];

/// How a tool turns nuts.
#[derive(Clone, Copy)]
pub(super) struct Turning {
    /// Whether the best wrench of the job is chosen where no tool is named.
    pub(super) chooses_wrench: bool,
    /// Whether the gauge of a pump shows what is set.
    pub(super) shows_pressure: bool,
    /// Enters what the tool is set to for the final value.
    pub(super) set: fn(&mut Ledger, &Mechanics, &Chosen),
    /// Enters what it is set to in a pass below that.
    pub(super) set_pass: SetPass,
    /// Enters what is never exceeded while loosening on the tool's own scale, where that is no torque.
    pub(super) never_exceed: fn(&mut Ledger, Dial<'_>),
    /// People that it needs.
    pub(super) crew: usize,
    /// What is set up before it can run.
    pub(super) set_up: Option<Block>,
    /// One stud in one pass at such a final torque.
    pub(super) pass: fn(Torque) -> Block,
    /// One stud in one release round.
    pub(super) release: Block,
}

/// Nothing beyond what methods share.
#[derive(Debug)]
struct OfNuts;

impl Plan for OfNuts {}

/// Works out a joint whose nuts are turned.
pub(super) fn compute(joint: &Joint, common: &Common, turning: &Turning) -> Computed {
    let mechanics = &joint.mechanics;
    let mut ledger = common::begin(mechanics);
    enter_load(&mut ledger, mechanics);
    let nut = mechanics.studs.across_flats.value();
    let chosen = Chosen {
        shows_pressure: turning.shows_pressure,
        ..choose(&ledger, joint, nut, turning.chooses_wrench)
    };
    (turning.set)(&mut ledger, mechanics, &chosen);
    enter_stress(&mut ledger, mechanics);
    let passes = setting::passes(&mut ledger, mechanics, &chosen, turning.set_pass);
    enter_lengths(&mut ledger, mechanics);
    release::enter_break_out(&mut ledger, joint);
    release::enter_never_exceed(&mut ledger, joint, &chosen);
    (turning.never_exceed)(&mut ledger, chosen.dial(mechanics, Task::Loosen));
    release::enter_first_round(&mut ledger, joint);
    let tools_at_once = common::at_once(&ledger, &chosen);
    let (tighten_labour, loosen_labour, recheck_labour) =
        enter_hours(&mut ledger, joint, &passes, turning, tools_at_once.at_once);
    let computed = Computed {
        ledger,
        chosen,
        plan: Arc::new(OfNuts),
        passes,
        order: None,
        tools_at_once,
        tighten_labour,
        loosen_labour,
        recheck_labour,
    };
    common::finish(computed, mechanics, common)
}

/// Enters friction, target load and the torque for it.
fn enter_load(ledger: &mut Ledger, joint: &Mechanics) {
    enter_friction(ledger, joint);
    let loading = Loading {
        from_given_torque: |ledger, joint| {
            load_for(ledger, joint, ids::TARGET_TORQUE, ids::TARGET_LOAD);
        },
        twists: true,
    };
    enter_target(ledger, joint, &loading);
    torque_for(ledger, joint, ids::TARGET_LOAD, ids::TORQUE);
}

/// Enters everything that follows from the rounded setting.
fn enter_stress(ledger: &mut Ledger, joint: &Mechanics) {
    load_for(ledger, joint, ids::SET_TORQUE, ids::LOAD);
    stress::enter_at_setting(ledger, joint);
    stress::enter_nut_factor(ledger);
    stress::enter_at_greatest(ledger);
    stress::enter_twist(ledger, joint);
}

/// Enters engagement, protrusion, stretch, turn and stored energy.
fn enter_lengths(ledger: &mut Ledger, joint: &Mechanics) {
    studs::enter_engagement(ledger, joint);
    studs::enter_protrusion(ledger, joint);
    studs::enter_stretch_and_compliance(ledger, joint);
    studs::enter_turn(ledger);
    studs::enter_energy(ledger);
}

/// Enters the hours, and gives those of tightening, of loosening and of the later look.
fn enter_hours(
    ledger: &mut Ledger,
    joint: &Joint,
    passes: &[Pass],
    turning: &Turning,
    at_once: usize,
) -> (Labour, Labour, Option<Labour>) {
    let stepped = common::count_of(passes, PassKind::Stepped);
    let torque = ledger.get(ids::SET_TORQUE).unwrap_or(Torque::nm(0.0));
    let need = (turning.crew, Block::Snug);
    let mut tighten = common::tightening(ledger, joint, need, stepped);
    let cycles = cycles(tighten.studs, at_once);
    tighten.set_up = turning.set_up;
    tighten.tools = vec![
        ((turning.pass)(torque), cycles * stepped),
        (Block::CheckRound, cycles * common::check_rounds(passes)),
    ];
    let rounds = cycles * common::release_rounds(ledger);
    let loosen = common::loosening(&tighten, turning.set_up, vec![(turning.release, rounds)]);
    let hours = [&tighten, &loosen].map(labour);
    common::enter_both(ledger, &hours[0], &hours[1]);
    let round = vec![(Block::CheckRound, cycles)];
    let recheck = common::recheck(ledger, joint, &tighten, round);
    common::enter_crew(ledger, turning.crew);
    let [tighten, loosen] = hours;
    (tighten, loosen, recheck)
}

/// How often the tools are set down on studs in one round.
pub(super) fn cycles(studs: usize, at_once: usize) -> usize {
    studs.div_ceil(at_once.max(1))
}

#[cfg(test)]
mod tests {
    use super::cycles;

    /// Definition.
    #[test]
    fn odd_counts_take_a_cycle_for_the_last_stud() {
        assert_eq!(cycles(7, 2), 4);
    }
}
