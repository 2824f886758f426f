//! Nuts turned from snug by an angle: structural bolts by length over diameter, anchors by the stretch that is wanted.
//! No tool with a scale is needed; the load is proved by the lines and by the test of the lot.

mod rules;
mod turns;
mod work;

use std::sync::Arc;

use crate::calc::choose::choose;
use crate::calc::labour::{Block, Labour, labour};
use crate::calc::load::{Loading, enter_target};
use crate::calc::{Basis, Common, LEAST_ANGLE, Ledger, ids, release, stress, studs};
use crate::job::Turn;
use crate::joint::{Fact, Joint, Lack, Mechanics, Who};
use crate::units::{Angle, Quantity};

use super::common;
use super::computed::Computed;
use super::method::{Method, Plan};
use super::nuts;

const WORD: &str = "turn of nut";
/// Its name in the wording.
const ID: &str = "turn_of_nut";
/// One turns, one holds the head (common practice, no source).
const CREW: usize = 2;
/// What a load lacks that cannot be worked out from a torque: no torque is turned.
const NO_LOAD: Lack = Lack {
    key: "target.load",
    who: Who::Engineer,
};
/// Anchors are turned to half of the turn, then to all of it (common practice, no source).
const STAGES: [f64; 2] = [0.5, 1.0];

pub(super) const METHOD: Method = Method {
    word: WORD,
    id: ID,
    tools: &[],
    is_told_by: |_, _| false,
    crew: CREW,
    scatter: "angle_controlled",
    break_out: nuts::BREAK_OUT,
    fit: |_| (),
    compute,
    work: |case, task| Some(work::work(case, task)),
    rules: rules::RULES,
};

/// Nothing beyond what methods share.
#[derive(Debug)]
struct OfTurns;

impl Plan for OfTurns {}

fn is_anchored(joint: &Mechanics) -> bool {
    joint.anchor.is_some()
}

fn compute(joint: &Joint, common: &Common) -> Computed {
    let mechanics = &joint.mechanics;
    let mut ledger = common::begin(mechanics);
    let loading = Loading {
        from_given_torque: |ledger, _| {
            ledger.enter(ids::TARGET_LOAD, Err(NO_LOAD), Basis::Sum);
        },
        twists: false,
    };
    enter_target(&mut ledger, mechanics, &loading);
    let load = ledger.get(ids::TARGET_LOAD);
    let lack = ledger.lack(ids::TARGET_LOAD).unwrap_or(NO_LOAD);
    let basis = [ids::TARGET_LOAD.key()];
    ledger.enter(ids::LOAD, load.ok_or(lack), Basis::Chosen(&basis));
    if is_anchored(mechanics) {
        enter_anchor(&mut ledger, mechanics);
    } else {
        studs::enter_compliances(&mut ledger, mechanics);
        studs::enter_turn(&mut ledger);
        enter_bolt(&mut ledger, mechanics);
    }
    studs::enter_energy(&mut ledger);
    let nut = mechanics.studs.across_flats.value();
    let chosen = choose(&ledger, joint, nut, false);
    if is_anchored(mechanics) {
        release::enter_never_exceed(&mut ledger, joint, &chosen);
    }
    release::enter_first_round(&mut ledger, joint);
    let tools_at_once = common::at_once(&ledger, &chosen);
    let (tighten_labour, loosen_labour, recheck_labour) = enter_hours(&mut ledger, joint);
    let computed = Computed {
        ledger,
        chosen,
        plan: Arc::new(OfTurns),
        passes: Vec::new(),
        order: None,
        tools_at_once,
        tighten_labour,
        loosen_labour,
        recheck_labour,
    };
    let mut computed = common::finish(computed, mechanics, common);
    // Bolts of a splice stand on no circle: they are closed from the stiffest part outwards.
    computed.order = computed.order.filter(|_| is_anchored(mechanics));
    computed
}

/// The turn of an anchor, by what stud and parts give at the load, to what a crew reads off a line.
fn enter_anchor(ledger: &mut Ledger, joint: &Mechanics) {
    stress::enter_at_setting(ledger, joint);
    stress::enter_at_greatest(ledger);
    studs::enter_engagement(ledger, joint);
    studs::enter_stretch_and_compliance(ledger, joint);
    studs::enter_turn(ledger);
    let turn = match joint.own.quantity(&Turn::angle) {
        Fact::Known { value, .. } => Ok(value),
        Fact::Missing { .. } => {
            let exact = ledger.get(ids::TURN);
            let lack = ledger.lack(ids::TURN).unwrap_or(NO_LOAD);
            let steps = |turn: Angle| (turn.to_degrees() / LEAST_ANGLE).round().max(1.0);
            exact
                .map(|turn| Angle::degrees(steps(turn) * LEAST_ANGLE))
                .ok_or(lack)
        }
    };
    ledger.enter(ids::SET_TURN, turn, Basis::Rounded(ids::TURN.key()));
    let step = Angle::degrees(LEAST_ANGLE);
    enter_tolerance(ledger, [step, step]);
}

/// The turn of a structural bolt: as the engineer gives it, else by the table of its specification.
fn enter_bolt(ledger: &mut Ledger, joint: &Mechanics) {
    let (turn, tolerance) = bolt_turn(ledger, joint);
    ledger.input(ids::SET_TURN, &turn);
    enter_tolerance(ledger, tolerance);
}

fn bolt_turn(ledger: &Ledger, joint: &Mechanics) -> (Fact<Angle>, [Angle; 2]) {
    let own = &joint.own;
    let given = own.quantity(&Turn::angle);
    let standard = own.text(&Turn::standard);
    let standard = standard.get().and_then(|name| turns::named(name));
    let is_square = own
        .quantity(&Turn::slope)
        .value()
        .is_none_or(|it| it.si() <= 0.0);
    let row = standard
        .filter(|_| is_square)
        .zip(diameters(ledger))
        .and_then(|(standard, diameters)| Some((standard, standard.row(diameters)?)));
    match (given, row) {
        (given @ Fact::Known { .. }, row) => {
            let tolerance = row.map_or(turns::USUAL_TOLERANCE, |(_, row)| row.tolerance);
            (given, tolerance)
        }
        (Fact::Missing { .. }, Some((standard, row))) => {
            let turn = Fact::table(row.turn, standard.name, false);
            (turn, row.tolerance)
        }
        (missing, None) => (missing, turns::USUAL_TOLERANCE),
    }
}

/// Length of a bolt from below its head to its end, in diameters.
fn diameters(ledger: &Ledger) -> Option<f64> {
    let (length, diameter) = (ledger.get(ids::LENGTH)?, ledger.get(ids::DIAMETER)?);
    Some(length.si() / diameter.si())
}

fn enter_tolerance(ledger: &mut Ledger, [short, beyond]: [Angle; 2]) {
    let turn = ledger.get(ids::SET_TURN);
    let lack = ledger.lack(ids::SET_TURN).unwrap_or(NO_LOAD);
    let by = |more: f64| {
        turn.map(|turn| Angle::from_si(turn.si() + more))
            .ok_or(lack)
    };
    let basis = ids::SET_TURN.key();
    ledger.enter(ids::LEAST_TURN, by(-short.si()), Basis::Rounded(basis));
    ledger.enter(ids::GREATEST_TURN, by(beyond.si()), Basis::Rounded(basis));
}

/// Enters the hours: each bolt is marked and turned once, an anchor in two stages. Gives those of tightening, of
/// loosening and of the later look.
fn enter_hours(ledger: &mut Ledger, joint: &Joint) -> (Labour, Labour, Option<Labour>) {
    let mut tighten = common::tightening(ledger, joint, (CREW, Block::Snug), 0);
    let stages = if is_anchored(&joint.mechanics) {
        STAGES.len()
    } else {
        1
    };
    tighten.tools = vec![(Block::TurnNut, tighten.studs * stages)];
    let rounds = tighten.studs * common::release_rounds(ledger);
    let loosen = common::loosening(&tighten, None, vec![(Block::LoosenByHand, rounds)]);
    let looked_at = vec![(Block::CheckRound, tighten.studs)];
    let [on, off] = [&tighten, &loosen].map(labour);
    common::enter_both(ledger, &on, &off);
    let recheck = common::recheck(ledger, joint, &tighten, looked_at);
    common::enter_crew(ledger, CREW);
    (on, off, recheck)
}
