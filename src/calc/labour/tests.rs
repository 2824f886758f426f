//! Blocks and factors against the table they are taken from.

use super::*;

fn minutes(time: Duration) -> f64 {
    time.si() / 60.0
}

fn near(a: f64, b: f64) {
    assert!((a - b).abs() < 1e-9, "{a} is not {b}");
}

/// 24 studs, two wrenches, three passes and two check rounds, worked by hand from the blocks.
fn flange() -> Counts {
    Counts {
        task: Task::Tighten,
        studs: 24,
        set_up: Some(Block::SetUpPump),
        run_down: Block::Snug,
        // Twelve cycles of two wrenches in each of three passes and two check rounds.
        tools: vec![
            (Block::TorqueByHydraulicWrench, 12 * 3),
            (Block::CheckRound, 12 * 2),
        ],
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
    let hours = labour(&Counts {
        task: Task::Loosen,
        studs: 20,
        set_up: None,
        run_down: Block::Snug,
        tools: vec![(Block::LoosenByHand, 20 * 2)],
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
fn factors_stop_at_the_greatest() {
    let stacked = Counts {
        factors: vec![2.0, 1.6, 1.3],
        ..flange()
    };
    near(labour(&stacked).factor, 2.5);
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
