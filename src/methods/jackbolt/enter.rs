//! From the ledger to a plan and back: what the plan hangs on, and what of it others can check.

use crate::job::{Pattern, Seat};
use crate::joint::{Dial, Fact, Joint, Lack, Mechanics, Tensioner, Who};
use crate::standards::jackbolts;
use crate::units::{Angle, Count, Length, Quantity, Ratio, Torque};

use super::ids;
use super::{
    Bands, CHECKED_TO, FLAT_RULE, Inputs, JackboltPlan, LONGEST, ReleaseInputs, Round, SHORTEST,
    Springs, driver_settings, plan, stiffness,
};
use crate::calc::Chosen;
use crate::calc::Order;
use crate::calc::labour::Task;
use crate::calc::{Basis, Key, Ledger};

/// Share of the full value at which a body is seated (common practice: 5 to 15 %).
const SEAT: f64 = 0.10;
/// By how much a raising round may lift the setting where no gasket is squeezed (ours).
const GREATEST_RISE: f64 = 0.50;
/// Gap difference across the body that no round may pass (common practice, no source).
const GREATEST_TILT: Length = Length::mm(0.5);
/// What a gasket gives while it is squeezed, as a share of its thickness (ours).
const GASKET_CLOSING: f64 = 0.30;

/// Enters the stiffnesses, makes the plan and enters what it predicts. `peak` is the highest load of a jackbolt while
/// loosening, as a share of the installed load.
pub(super) fn enter(
    ledger: &mut Ledger,
    joint: &Joint,
    chosen: &Chosen,
    peak: Option<f64>,
) -> Option<JackboltPlan> {
    let mechanics = &joint.mechanics;
    let springs = stiffness::enter(ledger, mechanics);
    enter_travel(ledger, mechanics);
    let deficit = mechanics
        .plan
        .wanted_mean
        .clone()
        .map(|mean| Ratio::from_si(1.0 - mean.si()));
    ledger.input(ids::WANTED_DEFICIT, &deficit);
    enter_stop_turn(ledger);
    driver_settings::enter(ledger, mechanics, chosen);
    let springs = springs.filter(|_| slenderness(ledger).is_some_and(is_in_range));
    let inputs = springs.and_then(|springs| inputs(ledger, joint, chosen, (springs, peak?)));
    let made = inputs.map(|inputs| {
        let mut made = plan(&inputs);
        made.checked = slenderness(ledger).is_some_and(|times| times <= CHECKED_TO);
        made
    });
    enter_predictions(ledger, made.as_ref());
    made
}

/// The clamped length in diameters.
fn slenderness(ledger: &Ledger) -> Option<f64> {
    Some(ledger.get(ids::GRIP)?.si() / ledger.get(ids::DIAMETER)?.si())
}

fn is_in_range(times: f64) -> bool {
    (SHORTEST..=LONGEST).contains(&times)
}

fn inputs(
    ledger: &Ledger,
    joint: &Joint,
    chosen: &Chosen,
    (springs, peak): (Bands<Springs>, f64),
) -> Option<Inputs> {
    let mechanics = &joint.mechanics;
    let torque = ledger.get(ids::SET_TORQUE)?;
    if torque.si() <= 0.0 || springs.likely.load <= 0.0 {
        return None;
    }
    let hand = chosen.dial(mechanics, Task::Tighten);
    let seat = seat(hand, Torque::from_si(SEAT * torque.si()));
    let order = Order::new(Pattern::Cross, springs.likely.count, 1).ok()?;
    let greatest_rise = match &mechanics.gasket {
        Some(gasket) if gasket.is_soft() => joint.work.limit("P01_soft"),
        Some(_) => joint.work.limit("P01"),
        None => GREATEST_RISE,
    };
    Some(Inputs {
        springs,
        order: order
            .moves
            .concat()
            .iter()
            .map(|number| number - 1)
            .collect(),
        torque: torque.si(),
        seat: seat.si() / torque.si(),
        grain: hand.step(torque).si() / torque.si(),
        greatest_rise,
        greatest_tilt: GREATEST_TILT.si(),
        deficit: ledger.get(ids::WANTED_DEFICIT)?.si(),
        driver: driver_settings::inputs(ledger, mechanics, torque),
        release: ReleaseInputs {
            limit: peak,
            first_step: first_step(mechanics),
        },
    })
}

/// What a body is seated with, as near as a small wrench can be set; at least one step.
fn seat(hand: Dial<'_>, wanted: Torque) -> Torque {
    let fine = hand.fine();
    let reading = fine.about(wanted);
    reading.map_or_else(|_| fine.step(wanted), |reading| reading.gives())
}

fn first_step(joint: &Mechanics) -> Option<f64> {
    let step = joint.loosening.first_step.as_ref()?;
    step.value().map(Quantity::si)
}

/// Enters the travel that a jackbolt needs: it must also be to be had when the tensioner comes off.
fn enter_travel(ledger: &mut Ledger, joint: &Mechanics) {
    let Some(tensioner) = joint.tensioner.as_deref() else {
        return;
    };
    ledger.input(ids::START_GAP, &tensioner.start_gap);
    enter_above_body(ledger, joint, tensioner);
    let closing = match &joint.gasket {
        Some(gasket) => gasket
            .thickness
            .clone()
            .map(|thickness| Length::from_si(GASKET_CLOSING * thickness.si())),
        None => Fact::computed(Length::from_si(0.0)),
    };
    ledger.input(ids::CLOSING, &closing);
    // One turn of a jackbolt.
    let reserve = tensioner.thread.clone().map(|thread| thread.pitch);
    ledger.input(ids::RESERVE, &reserve);
    for (travel, turn) in [
        (ids::TRAVEL, ids::TURN_ALL),
        (ids::TRAVEL_GREATEST, ids::TURN_ALL_GREATEST),
    ] {
        if ledger.entry(turn.key()).is_none() {
            continue;
        }
        ledger.apply(
            travel,
            &jackbolts::TRAVEL_OF,
            &[
                ("g_0", ids::START_GAP.key()),
                ("θ_tot", turn.key()),
                ("P_j", ids::JACKBOLT_PITCH.key()),
                ("g_c", ids::CLOSING.key()),
                ("g_r", ids::RESERVE.key()),
            ],
        );
    }
    if let Fact::Known { .. } = tensioner.travel {
        ledger.input(ids::TRAVEL_GIVEN, &tensioner.travel);
    }
}

/// Enters how far the stud stands above the body, where its far end is known: a stud that stands too high blocks the
/// driver, one that ends inside the body does not fill its thread.
fn enter_above_body(ledger: &mut Ledger, joint: &Mechanics, tensioner: &Tensioner) {
    if let Fact::Known { .. } = tensioner.stud_above_body {
        ledger.input(ids::ABOVE_BODY_LIMIT, &tensioner.stud_above_body);
    }
    ledger.input(ids::BODY_HEIGHT, &tensioner.body_height);
    let tapped = joint.studs.seat.value() == Some(Seat::TappedHole);
    let lengths = [
        ("l", ids::LENGTH.key()),
        ("L", ids::GRIP.key()),
        ("m", ids::NUT_HEIGHT.key()),
        ("u_far", ids::FAR_PROTRUSION.key()),
        ("l_e", ids::ENGAGEMENT.key()),
        ("h_b", ids::BODY_HEIGHT.key()),
        ("g_0", ids::START_GAP.key()),
    ];
    if tapped {
        ledger.apply(ids::ABOVE_BODY, &jackbolts::ABOVE_BODY_TAPPED_OF, &lengths);
        return;
    }
    let far = joint.studs.far_protrusion.clone();
    ledger.input(
        ids::FAR_PROTRUSION,
        &far.unwrap_or(Fact::missing("studs.far_protrusion", Who::CrewLead)),
    );
    ledger.apply(ids::ABOVE_BODY, &jackbolts::ABOVE_BODY_OF, &lengths);
}

fn enter_stop_turn(ledger: &mut Ledger) {
    for (id, all, ring) in [
        (ids::STOP_TURN, ids::TURN_ALL, ids::RING_RATIO),
        (
            ids::STOP_TURN_HIGH,
            ids::TURN_ALL_HIGH,
            ids::RING_RATIO_HIGH,
        ),
    ] {
        if ledger.entry(all.key()).is_some() && ledger.entry(ring.key()).is_some() {
            let inputs = [
                ("ε", ids::WANTED_DEFICIT.key()),
                ("θ_tot", all.key()),
                ("R", ring.key()),
            ];
            ledger.apply(id, &jackbolts::STOP_TURN_OF, &inputs);
        }
    }
}

/// What every prediction comes from.
const SIMULATED: Basis<'static> = Basis::Simulated(&[
    ids::JACKBOLT_COUNT.key(),
    ids::JACKBOLT_COMPLIANCE.key(),
    ids::JOINT_COMPLIANCE.key(),
    ids::JACKBOLT_LOAD.key(),
]);

fn enter_predictions(ledger: &mut Ledger, made: Option<&JackboltPlan>) {
    let Some(made) = made else {
        let lack = lack(ledger);
        ledger.enter(ids::FULL_ROUNDS, Err::<Count, _>(lack), SIMULATED);
        return;
    };
    let bands = &made.predictions;
    enter_counts(ledger, made);
    super::finish::enter(ledger, made);
    ledger.enter(ids::CONTRACTION, ratio(bands.likely.contraction), SIMULATED);
    ledger.enter(
        ids::CONTRACTION_HIGH,
        ratio(bands.high.contraction),
        SIMULATED,
    );
    let flat = Fact::computed(Angle::degrees(FLAT_RULE));
    ledger.input(ids::FLAT_TURN, &flat);
    ledger.apply(
        ids::FLAT_BOUND,
        &jackbolts::MEAN_BOUND_OF,
        &[
            ("R", ids::RING_RATIO_HIGH.key()),
            ("θ_max", ids::FLAT_TURN.key()),
            ("θ_tot", ids::TURN_ALL_HIGH.key()),
        ],
    );
    ledger.enter(
        ids::FLAT_EXPECTED,
        ratio(bands.likely.flat_expected.mean),
        SIMULATED,
    );
    for (id, prediction) in [
        (ids::FLAT_MEAN_LOW, &bands.low),
        (ids::FLAT_MEAN, &bands.likely),
        (ids::FLAT_MEAN_HIGH, &bands.high),
    ] {
        ledger.enter(id, ratio(prediction.flat_rule.mean), SIMULATED);
    }
    if let Some(driver) = &made.driver {
        let reached = &driver.stud_load_reached;
        ledger.enter(ids::DRIVER_REACHED_LOW, ratio(reached.low), SIMULATED);
        ledger.enter(ids::DRIVER_REACHED, ratio(reached.likely), SIMULATED);
        ledger.enter(ids::DRIVER_REACHED_HIGH, ratio(reached.high), SIMULATED);
    }
    for (number, round) in (1u16..).zip(&made.rounds) {
        enter_round(ledger, number, round);
    }
}

/// What is missing for a plan: the first thing that the springs or the torque lack, else a length outside the range.
fn lack(ledger: &Ledger) -> Lack {
    let of = |key: Key| ledger.entry(key)?.value.as_ref().err().copied();
    let wanted = [ids::TURN_ALL.key(), ids::SET_TORQUE.key(), ids::PEAK.key()];
    wanted.into_iter().find_map(of).unwrap_or(Lack {
        key: "studs.grip",
        who: Who::Engineer,
    })
}

fn enter_counts(ledger: &mut Ledger, made: &JackboltPlan) {
    let count = |number: usize| Ok(Count::from_si(number as f64));
    ledger.enter(ids::FULL_ROUNDS, count(made.full_rounds), SIMULATED);
    ledger.enter(
        ids::FULL_ROUNDS_LIKELY,
        count(made.predictions.likely.full_rounds),
        SIMULATED,
    );
    ledger.enter(
        ids::FULL_ROUNDS_LOW,
        count(made.predictions.low.full_rounds),
        SIMULATED,
    );
}

fn enter_round(ledger: &mut Ledger, number: u16, round: &Round) {
    let share = Fact::computed(Ratio::from_si(round.share));
    ledger.input(ids::ROUND_SHARE.at(number), &share);
    let torque = Ok(Torque::from_si(round.torque));
    let set = Basis::Rounded(ids::SET_TORQUE.key());
    ledger.enter(ids::ROUND_TORQUE.at(number), torque, set);
    let Bands { low, likely, high } = &round.predicted;
    for (id, value) in [
        (ids::ROUND_MEAN_LOW, low.mean),
        (ids::ROUND_MEAN, likely.mean),
        (ids::ROUND_MEAN_HIGH, high.mean),
        (ids::ROUND_LEAST, likely.least),
    ] {
        ledger.enter(id.at(number), ratio(value), SIMULATED);
    }
    for (id, value) in [
        (ids::ROUND_TURN_LOW, low.largest_turn),
        (ids::ROUND_TURN, likely.largest_turn),
        (ids::ROUND_TURN_HIGH, high.largest_turn),
        (ids::ROUND_MEAN_TURN, likely.mean_turn),
    ] {
        ledger.enter(id.at(number), Ok(Angle::from_si(value)), SIMULATED);
    }
}

#[expect(clippy::unnecessary_wraps, reason = "what the ledger takes")]
fn ratio(value: f64) -> Result<Ratio, Lack> {
    Ok(Ratio::from_si(value))
}

/// Enters the rounds of the release plan.
pub(super) fn enter_release(ledger: &mut Ledger, made: &JackboltPlan) {
    let release = &made.release;
    for (number, round) in (1u16..).zip(&release.rounds) {
        if let Some(angle) = round.angle {
            let basis = Basis::Simulated(&[ids::PEAK.key(), ids::RING_RATIO_HIGH.key()]);
            ledger.enter(
                ids::RELEASE_ROUND_ANGLE.at(number),
                Ok(Angle::from_si(angle)),
                basis,
            );
        }
        ledger.enter(
            ids::RELEASE_ROUND_PEAK.at(number),
            ratio(round.peak),
            SIMULATED,
        );
        let left = round.mean_left.likely;
        ledger.enter(ids::RELEASE_ROUND_LEFT.at(number), ratio(left), SIMULATED);
    }
    ledger.enter(ids::ALL_BUT_ONE, ratio(release.all_but_one), SIMULATED);
}
