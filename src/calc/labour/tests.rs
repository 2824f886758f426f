//! Blocks and factors against the table they are taken from.

use super::*;

fn minutes(time: Duration) -> f64 {
    time.si() / 60.0
}

fn near(a: f64, b: f64) {
    assert!((a - b).abs() < 1e-9, "{a} is not {b}");
}

/// 24 studs, two wrenches, three passes and two check rounds, worked by hand from the blocks.
fn flange() -> Work {
    Work {
        task: Task::Tighten,
        drive: Drive::HydraulicWrench,
        studs: 24,
        tools_at_once: 2,
        rounds: 3,
        check_rounds: 2,
        gap_sets: 3,
        holds: 2,
        seat: Some(Length::mm(1000.0)),
        factors: vec![1.1],
        crew: 2,
    }
}

#[test]
fn tightening_adds_up_as_by_hand() {
    let hours = labour(&flange());
    // Before: 40 + 25 + 60 + 24 x 2 + 20 + 24 x 2.25 = 247 min; tools: (36 x 2.5 + 24 x 0.9) x
    // 1.1 = 122.76 min; after: 3 x 5 + 2 x 22.5 + 12 + 15 = 87 min.
    near(minutes(hours.tool.typical), 122.76);
    near(minutes(hours.elapsed.typical), 247.0 + 122.76 + 87.0);
    near(minutes(hours.labour.typical), 2.0 * (247.0 + 122.76 + 87.0));
    // Low: 20 + 15 + 60 + 24 + 10 + 36 = 165; (36 x 1.5 + 24 x 0.5) x 1.1 = 72.6;
    // 9 + 30 + 8 + 10 = 57.
    near(minutes(hours.elapsed.low), 165.0 + 72.6 + 57.0);
    // High: 90 + 45 + 60 + 96 + 30 + 72 = 393; (36 x 5 + 24 x 1.5) x 1.1 = 237.6;
    // 24 + 60 + 20 + 30 = 134.
    near(minutes(hours.elapsed.high), 393.0 + 237.6 + 134.0);
}

#[test]
fn loosening_by_hand_has_no_gasket_and_no_pump() {
    let hours = labour(&Work {
        task: Task::Loosen,
        drive: Drive::HandTorque(Torque::nm(680.0)),
        studs: 20,
        tools_at_once: 1,
        rounds: 2,
        check_rounds: 0,
        gap_sets: 1,
        holds: 1,
        seat: None,
        factors: vec![2.0],
        crew: 1,
    });
    // 40 + 40 x 0.8 x 2 + 5 + 22.5 + 12 + 15.
    near(minutes(hours.elapsed.typical), 40.0 + 64.0 + 54.5);
    assert_eq!(hours.lines.len(), 6);
}

#[test]
fn multiplier_is_used_above_400_nm() {
    let by_hand = Work {
        drive: Drive::HandTorque(Torque::nm(400.0)),
        ..flange()
    };
    assert_eq!(tool_blocks(&by_hand)[0].0, Block::TorqueByHand);
    let above = Work {
        drive: Drive::HandTorque(Torque::nm(401.0)),
        ..flange()
    };
    assert_eq!(tool_blocks(&above)[0].0, Block::TorqueByMultiplier);
}

#[test]
fn factors_stop_at_the_greatest() {
    let stacked = Work {
        factors: vec![2.0, 1.6, 1.3],
        ..flange()
    };
    near(labour(&stacked).factor, 2.5);
}

#[test]
fn odd_counts_take_a_cycle_for_the_last_stud() {
    let odd = Work {
        studs: 7,
        tools_at_once: 2,
        rounds: 1,
        ..flange()
    };
    assert_eq!(tool_blocks(&odd)[0].1, 4);
}

#[test]
fn faces_between_and_beyond_the_known_diameters() {
    let at = |mm: f64| minutes(clean_faces(Length::mm(mm)).typical);
    near(at(100.0), 20.0);
    near(at(600.0), 35.0);
    near(at(800.0), 47.5);
    near(at(2000.0), 120.0);
    near(at(3000.0), 180.0);
}

#[test]
fn printed_hours_are_round() {
    let printed = |hours: f64| to_print(Duration::from_si(hours * 3600.0)).si() / 3600.0;
    near(printed(3.44), 3.4);
    near(printed(3.96), 4.0);
    near(printed(4.3), 4.5);
    near(printed(10.2), 10.0);
    near(printed(0.04), 0.0);
}

/// Four studs with twelve jackbolts: seating by hand, two settings of the driver, three full rounds by hand.
#[test]
fn jackbolts_add_up_as_by_hand() {
    let work = Work {
        drive: Drive::Jackbolts {
            jackbolts: 12,
            settings: 2,
        },
        studs: 4,
        tools_at_once: 1,
        rounds: 1,
        check_rounds: 3,
        factors: Vec::new(),
        ..flange()
    };
    let hours = labour(&work);
    // 48 jackbolts x 14/72 min, 8 settings x 3 min, 4 studs x 4 min of full rounds.
    near(
        minutes(hours.tool.typical),
        48.0 * 14.0 / 72.0 + 24.0 + 16.0,
    );
    near(minutes(hours.tool.low), 48.0 * 8.0 / 72.0 + 16.0 + 8.0);
    near(minutes(hours.tool.high), 48.0 * 25.0 / 72.0 + 40.0 + 28.0);
    // Before: 40 + 25 for the driver + 60 + 4 x 2 + 20 + 4 x 2.25 = 162; after: 87 as above.
    near(
        minutes(hours.elapsed.typical),
        162.0 + 48.0 * 14.0 / 72.0 + 40.0 + 87.0,
    );
    let of_others = [
        Block::SetUpPump,
        Block::Snug,
        Block::CheckRound,
        Block::TorqueByHydraulicWrench,
        Block::TorqueByMultiplier,
    ];
    assert!(
        hours
            .lines
            .iter()
            .all(|line| !of_others.contains(&line.block))
    );
    let loosen = Work {
        task: Task::Loosen,
        rounds: 6,
        check_rounds: 0,
        ..work
    };
    // 6 rounds x 4 studs x 12 jackbolts x 0.25 min; no pump is set up.
    near(minutes(labour(&loosen).tool.typical), 72.0);
    assert!(
        labour(&loosen)
            .lines
            .iter()
            .all(|line| ![Block::SetUpPump, Block::SetUpDriver].contains(&line.block))
    );
}

/// The same studs by hand alone: nothing is set up, and every round takes what it takes by hand.
#[test]
fn without_a_driver_every_round_is_by_hand() {
    let work = Work {
        drive: Drive::Jackbolts {
            jackbolts: 12,
            settings: 0,
        },
        studs: 4,
        tools_at_once: 1,
        rounds: 3,
        check_rounds: 3,
        factors: Vec::new(),
        ..flange()
    };
    let hours = labour(&work);
    // 6 rounds of twelve on each of 4 studs: 4 x 14 min, the table's own figure.
    near(minutes(hours.tool.typical), 56.0);
    // Before: 40 + 60 + 4 x 2 + 20 + 4 x 2.25 = 137.
    near(minutes(hours.elapsed.typical), 137.0 + 56.0 + 87.0);
}

/// The full rounds of a stud after a driver: 2, 4 and 7 min.
#[test]
fn a_finish_takes_what_the_table_says() {
    let round = Block::JackboltFinish.span().times(3.0 * 12.0);
    near(minutes(round.low), 2.0);
    near(minutes(round.typical), 4.0);
    near(minutes(round.high), 7.0);
}

/// A stud with twelve jackbolts by hand, complete: 8, 14 and 25 min.
#[test]
fn a_stud_by_hand_takes_what_the_table_says() {
    let round = Block::JackboltByHand.span().times(6.0 * 12.0);
    near(minutes(round.low), 8.0);
    near(minutes(round.typical), 14.0);
    near(minutes(round.high), 25.0);
}
