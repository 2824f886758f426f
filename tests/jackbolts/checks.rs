//! Check values of general mechanics for n equal springs on one, worked apart from this program, and the torque of a
//! jackbolt. In the first of these r is the stiffness of the joint over that of all jackbolts together.

use studbook::methods::jackbolt::{
    FLAT_RULE, Springs, State, Step, peak_of_round, peak_of_running_loose, run_all,
};
use studbook::standards::{Thread, iso_16047, jackbolts, symbols as s, vdi_2230};
use studbook::units::Quantity;

use super::{circle, near, springs};

/// The figures are printed to three decimals and were worked with lift-off.
const WITHIN: f64 = 0.0005;

fn of_ratio(count: usize, ratio: f64) -> Springs {
    springs(count, 1.0, ratio * count as f64, 2.0, 1.0)
}

fn torque(size: &str, load: f64, friction: f64, share: f64, back: bool) -> f64 {
    let thread = Thread::parse(size).unwrap();
    let formula = if back {
        &*jackbolts::LOOSENING_TORQUE_OF
    } else {
        &*jackbolts::TORQUE_OF
    };
    let pitch_diameter = thread.pitch_diameter_formula().value_with(&thread.inputs());
    formula.value_with(&[
        (s::JACKBOLT_LOAD, load),
        (s::JACKBOLT_PITCH, thread.pitch.si()),
        (s::JACKBOLT_PITCH_DIAMETER, pitch_diameter),
        (s::JACKBOLT_FRICTION, friction),
        (s::TIP_FRICTION, friction),
        (s::TIP_DIAMETER, share * thread.diameter.si()),
    ])
}

/// B-1 to B-4: the form itself, and three sizes.
#[test]
fn torque_of_a_jackbolt_with_a_flat_tip() {
    for (size, load, expected) in [
        ("M12", 40e3, 54.7),
        ("M16", 80e3, 142.8),
        ("M20", 120e3, 267.7),
    ] {
        near(torque(size, load, 0.12, 0.7, false) / expected, 1.0, 0.001);
    }
    // By hand in N and mm: 80 kN on M16, 14.701 mm of pitch diameter, 2/3 of the radius of an 11.2 mm tip.
    let by_hand =
        80e3 * (2.0 / std::f64::consts::TAU + 0.577 * 0.12 * 14.701 + 0.12 * 2.0 / 3.0 * 5.6) / 1e3;
    near(torque("M16", 80e3, 0.12, 0.7, false), by_hand, 0.01);
}

/// B-5: one nut of M64 at 640 kN wants 44.6 to 44.7 times the torque of each of eight M16 jackbolts.
#[test]
fn one_large_nut_against_eight_jackbolts() {
    let thread = Thread::parse("M64x6").unwrap();
    let mut inputs = thread.inputs().to_vec();
    let pitch_diameter = thread.pitch_diameter_formula().value_with(&inputs);
    inputs.extend([
        (s::LOAD, 640e3),
        (s::PITCH_DIAMETER, pitch_diameter),
        (s::THREAD_FRICTION, 0.12),
        (s::BEARING_FRICTION, 0.12),
        (s::BEARING_DIAMETER, 0.0805),
    ]);
    near(vdi_2230::TORQUE_OF.value_with(&inputs), 6382.0, 1.0);
    near(iso_16047::TORQUE_OF.value_with(&inputs), 6366.0, 1.0);
    let one = torque("M16", 80e3, 0.12, 0.7, false);
    near(iso_16047::TORQUE_OF.value_with(&inputs) / one, 44.6, 0.1);
}

/// B-8, common practice: full-value rounds end when no jackbolt moves 20° or more. An angle, and no order of steps.
#[test]
fn the_flat_rule_is_twenty_degrees() {
    near(FLAT_RULE, 20.0, 0.0);
}

/// B-11: one jackbolt fully released, mean rise on the others; B-12: the same with a stud that keeps its load.
#[test]
fn one_jackbolt_released() {
    for (count, ratio, expected) in [
        (8, 0.05, 1.1351),
        (8, 0.1, 1.1282),
        (8, 0.2, 1.1163),
        (8, 0.5, 1.0909),
        (4, 0.1, 1.2941),
        (12, 0.1, 1.0820),
        (16, 0.1, 1.0602),
        (4, 1e-9, 4.0 / 3.0),
        (6, 1e-9, 1.2),
        (8, 1e-9, 1.1429),
        (10, 1e-9, 1.111_11),
        (12, 1e-9, 1.0909),
        (16, 1e-9, 1.0667),
    ] {
        let set = of_ratio(count, ratio);
        let mut state = State::even(&set, 1.0);
        state.run_loose(0);
        let loads = state.loads();
        near(loads[0], 0.0, 0.0);
        near(loads[1], expected, WITHIN);
        near(
            set.closed(&jackbolts::OTHERS_SHARE_OF, &[]),
            expected,
            WITHIN,
        );
    }
}

/// B-13: all released fully one after another, load on the last.
#[test]
fn the_last_jackbolt_inherits_all() {
    for (count, ratio, expected) in [
        (8, 0.05, 6.000),
        (8, 0.1, 4.889),
        (8, 0.2, 3.692),
        (8, 0.5, 2.400),
        (12, 0.05, 7.875),
        (12, 0.1, 6.000),
        (12, 0.2, 4.235),
        (12, 0.5, 2.571),
    ] {
        let set = of_ratio(count, ratio);
        near(peak_of_running_loose(&set, 1.0), expected, WITHIN);
        near(set.closed(&jackbolts::LAST_SHARE_OF, &[]), expected, WITHIN);
    }
}

/// B-14: the first round of equal small steps, load on the last before its step.
#[test]
fn a_round_of_small_steps() {
    for (step, expected) in [(0.01, 1.0875), (0.02, 1.1750), (0.05, 1.4375)] {
        let set = of_ratio(8, 0.1);
        near(
            peak_of_round(&set, 1.0, step * set.turn_all),
            expected,
            WITHIN,
        );
    }
}

/// B-15: each jackbolt brought to its load in turn, round by round from loose.
#[test]
fn rounds_by_hand_from_loose() {
    for (count, ratio, expected) in [
        (
            8,
            0.1,
            [0.343, 0.475, 0.576, 0.658, 0.723, 0.777, 0.820, 0.854],
        ),
        (
            8,
            0.2,
            [0.436, 0.622, 0.747, 0.831, 0.887, 0.924, 0.949, 0.966],
        ),
        (
            12,
            0.1,
            [0.322, 0.454, 0.555, 0.637, 0.704, 0.759, 0.803, 0.840],
        ),
    ] {
        let set = of_ratio(count, ratio);
        let steps = vec![Step::one_by_one(circle(count), 1.0); 8];
        for (record, expected) in run_all(&set, &steps).iter().zip(expected) {
            near(record.mean, expected, WITHIN);
        }
    }
}

/// B-16: a jackbolt comes back at 0.45 to 0.75 of its torque, so a reversal at a third moves none.
#[test]
fn torque_to_loosen_over_torque_to_tighten() {
    for (size, expected) in [
        ("M12", [0.445, 0.593, 0.678]),
        ("M16", [0.509, 0.643, 0.720]),
        ("M20", [0.509, 0.643, 0.720]),
        ("M30", [0.535, 0.664, 0.737]),
    ] {
        for (friction, expected) in [0.08, 0.12, 0.16].into_iter().zip(expected) {
            let share =
                torque(size, 80e3, friction, 0.7, true) / torque(size, 80e3, friction, 0.7, false);
            near(share, expected, 0.001);
            assert!(share > studbook::methods::jackbolt::REVERSAL, "{size}");
        }
    }
}
