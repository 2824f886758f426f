//! Studs loaded by the jackbolts of a tensioner, by hand or with a multi-spindle driver first.

use std::sync::Arc;

use crate::calc::choose::choose;
use crate::calc::labour::Labour;
use crate::calc::load::{Loading, enter_target};
use crate::calc::{Chosen, Common, Ledger, release, setting, stress, studs};
use crate::job::ToolKind;
use crate::joint::{Fact, Joint, Mechanics, Studs};
use crate::methods::common;
use crate::methods::computed::Computed;
use crate::methods::method::{Method, Plan};
use crate::standards::jackbolts;
use crate::units::{Length, Quantity};
use crate::work::Task;

use super::driver_pays::DriverPays;
use super::rules::RULES;
use super::{ID, JackboltPlan, WORD, enter, hours, ids, loosening, parts, passes, strength, work};

pub(in crate::methods) const METHOD: Method = Method {
    word: WORD,
    id: ID,
    tools: &[ToolKind::HandTorqueWrench],
    // A stud with a tensioner is never turned by its nut.
    is_told_by: |tool, has_tensioner| tool == Some(ToolKind::MultiSpindleDriver) || has_tensioner,
    crew: hours::CREW,
    scatter: "torque_friction_estimated",
    // A jackbolt has no wide bearing face: at the friction of its tightening it comes back at 0.45 to 0.75 of its
    // torque; settled paste may double that (ours).
    break_out: [0.45, 1.3],
    fit: widen_face,
    compute,
    work: |case, task| {
        Some(match task {
            Task::Loosen => work::loosen(case),
            Task::Tighten => work::tighten(case),
            Task::Recheck => work::recheck(case),
        })
    },
    rules: RULES,
};

/// What is worked out of a joint with tensioners.
#[derive(Debug)]
struct Tensioned {
    rounds: Option<JackboltPlan>,
    by_hand: Option<Labour>,
    driver_pays: Option<DriverPays>,
}

impl Plan for Tensioned {
    fn jackbolts(&self) -> Option<&JackboltPlan> {
        self.rounds.as_ref()
    }

    fn by_hand_labour(&self) -> Option<&Labour> {
        self.by_hand.as_ref()
    }

    fn driver_pays(&self) -> Option<&DriverPays> {
        self.driver_pays.as_ref()
    }
}

fn compute(joint: &Joint, common: &Common) -> Computed {
    let mechanics = &joint.mechanics;
    let mut ledger = common::begin(mechanics);
    enter_load(&mut ledger, mechanics);
    let tensioner = mechanics.tensioner.as_ref();
    let flats = tensioner.and_then(|tensioner| tensioner.across_flats.value());
    let chosen = choose(&ledger, joint, flats, true);
    setting::enter_torque(&mut ledger, mechanics, &chosen);
    enter_stress(&mut ledger, mechanics);
    enter_lengths(&mut ledger, mechanics);
    let rounds = enter_plan(&mut ledger, joint, &chosen);
    let passes = passes::enter(&mut ledger, rounds.as_ref());
    loosening::enter(&mut ledger, joint, &chosen, rounds.as_ref());
    let tools_at_once = common::at_once(&ledger, &chosen);
    let hours = hours::enter(
        &mut ledger,
        joint,
        &passes,
        rounds.as_ref(),
        tools_at_once.at_once,
    );
    let computed = Computed {
        ledger,
        chosen,
        plan: Arc::new(Tensioned {
            rounds,
            by_hand: hours.by_hand,
            driver_pays: hours.driver_pays,
        }),
        passes,
        order: None,
        tools_at_once,
        tighten_labour: hours.tighten,
        loosen_labour: hours.loosen,
        recheck_labour: hours.recheck,
    };
    common::finish(computed, mechanics, common)
}

/// Enters target load and torque. The crew turns jackbolts, never the stud's nut: the torque is that of a jackbolt.
fn enter_load(ledger: &mut Ledger, joint: &Mechanics) {
    parts::enter(ledger, joint);
    let loading = Loading {
        from_given_torque: |ledger, _| {
            parts::load_for(ledger, ids::TARGET_TORQUE, ids::JACKBOLT_GIVEN);
            parts::gather_load(ledger, ids::JACKBOLT_GIVEN, ids::TARGET_LOAD);
        },
        twists: false,
    };
    enter_target(ledger, joint, &loading);
    parts::share_load(ledger, ids::TARGET_LOAD, ids::JACKBOLT_TARGET);
    parts::torque_for(ledger, ids::JACKBOLT_TARGET, ids::TORQUE);
}

/// Enters everything that follows from the rounded setting. The stud is pulled and not twisted; the jackbolts have
/// their own stress.
fn enter_stress(ledger: &mut Ledger, joint: &Mechanics) {
    parts::load_for(ledger, ids::SET_TORQUE, ids::JACKBOLT_LOAD);
    parts::gather_load(ledger, ids::JACKBOLT_LOAD, ids::LOAD);
    stress::enter_at_setting(ledger, joint);
    stress::enter_at_greatest(ledger);
    strength::enter(ledger, joint);
}

/// Enters engagement, stretch and stored energy. The body stands on jackbolts and is higher than a nut: its tensioner
/// says how far the stud may stand out. It is not turned under load.
fn enter_lengths(ledger: &mut Ledger, joint: &Mechanics) {
    studs::enter_engagement(ledger, joint);
    studs::enter_stretch_and_compliance(ledger, joint);
    studs::enter_energy(ledger);
}

/// Enters break-out and peak, makes the plan of rounds and enters what it predicts.
fn enter_plan(ledger: &mut Ledger, joint: &Joint, chosen: &Chosen) -> Option<JackboltPlan> {
    release::enter_break_out(ledger, joint);
    let peak = strength::enter_release(ledger, joint, chosen);
    enter::enter(ledger, joint, chosen, peak)
}

/// The face under a tensioner is its washer, twice as wide as the stud where nobody gives it; large studs have no row of
/// a nut or a hole that would say more.
fn widen_face(studs: &mut Studs) {
    let Some(thread) = studs.thread.get() else {
        return;
    };
    let ours = |share: f64, key| Fact::default(Length::from_si(share * thread.diameter.si()), key);
    if studs.bearing_outer.place().is_none() {
        studs.bearing_outer = ours(jackbolts::WASHER_DIAMETERS, "studs.bearing_outer");
    }
    if studs.bearing_inner.get().is_none() {
        studs.bearing_inner = ours(jackbolts::HOLE_DIAMETERS, "studs.bearing_inner");
    }
}
