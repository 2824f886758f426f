//! Hours of tensioners against the table of blocks (common practice, no source).

use super::*;
use crate::calc::labour::Task;
use crate::units::{Duration, Length};

fn minutes(time: Duration) -> f64 {
    time.si() / 60.0
}

fn near(a: f64, b: f64) {
    assert!((a - b).abs() < 1e-9, "{a} is not {b}");
}

/// Four studs with a gasket, three sets of gaps, two hold points, a crew of two.
fn base() -> Counts {
    Counts {
        task: Task::Tighten,
        studs: 4,
        set_up: None,
        run_down: Block::RunBodyDown,
        tools: Vec::new(),
        gap_sets: 3,
        holds: 2,
        seat: Some(Length::mm(1000.0)),
        factors: Vec::new(),
        crew: 2,
    }
}

/// Twelve jackbolts on each of them, one wrench.
fn rounds(before: usize, settings: usize, full: usize) -> Rounds {
    Rounds {
        studs: 4,
        jackbolts: 12,
        at_once: 1,
        before,
        settings,
        full,
    }
}

/// Seating by hand, two settings of the driver, three full rounds by hand.
#[test]
fn jackbolts_add_up_as_by_hand() {
    let hours = labour(&with_tools(&base(), &rounds(1, 2, 3)));
    // 48 jackbolts x 14/72 min, 8 settings x 3 min, 4 studs x 4 min of full rounds.
    near(
        minutes(hours.tool.typical),
        48.0 * 14.0 / 72.0 + 24.0 + 16.0,
    );
    near(minutes(hours.tool.low), 48.0 * 8.0 / 72.0 + 16.0 + 8.0);
    near(minutes(hours.tool.high), 48.0 * 25.0 / 72.0 + 40.0 + 28.0);
    // Before: 40 + 25 for the driver + 60 + 4 x 2 + 20 + 4 x 2.25 = 162; after: 3 x 5 + 2 x 22.5 + 12 + 15 = 87.
    near(
        minutes(hours.elapsed.typical),
        162.0 + 48.0 * 14.0 / 72.0 + 40.0 + 87.0,
    );
}

/// 6 rounds x 4 studs x 12 jackbolts x 0.25 min; nothing is set up.
#[test]
fn loosening_takes_every_jackbolt_in_every_round() {
    let tools = vec![(Block::LoosenJackbolt, rounds(1, 2, 3).of_jackbolts(6))];
    let hours = labour(&common::loosening(&base(), None, tools));
    near(minutes(hours.tool.typical), 72.0);
    let is_set_up = |block| [Block::SetUpPump, Block::SetUpDriver].contains(&block);
    assert!(!hours.lines.iter().any(|line| is_set_up(line.block)));
}

/// The same studs by hand alone: nothing is set up, and every round takes what it takes by hand.
#[test]
fn without_a_driver_every_round_is_by_hand() {
    let hours = labour(&with_tools(&base(), &rounds(3, 0, 3)));
    // 6 rounds of twelve on each of 4 studs: 4 x 14 min, the table's own figure.
    near(minutes(hours.tool.typical), 56.0);
    // Before: 40 + 60 + 4 x 2 + 20 + 4 x 2.25 = 137.
    near(minutes(hours.elapsed.typical), 137.0 + 56.0 + 87.0);
}

/// 16 studs of twelve, one round before the full value.
fn compared(settings: usize, rounds: usize, at_once: usize) -> Counts {
    let rounds = Rounds {
        studs: 16,
        jackbolts: 12,
        at_once,
        before: 1,
        settings,
        full: rounds - 1,
    };
    let bare = Counts {
        studs: 16,
        gap_sets: 0,
        holds: 0,
        seat: None,
        ..base()
    };
    with_tools(&bare, &rounds)
}

/// Worked by hand from the blocks (common practice, no source): clean 2, run down 2.25, a jackbolt in a round
/// 14/72, after the driver 4/36, a setting 3, set-up 25 min. Driver: one round before it, 2 settings and 3 rounds
/// of 12 behind it take 4.25 + 2.333 + 6 + 4 = 16.583; by hand 9 rounds take 4.25 + 21 = 25.25.
/// 25 / 8.667 = 2.88, so it pays from 3 studs on.
#[test]
fn driver_pays_from_the_third_stud_on() {
    let pays = DriverPays::new(&compared(2, 4, 1), &compared(0, 9, 1));
    near(minutes(pays.with_driver.typical), 16.0 + 7.0 / 12.0);
    near(minutes(pays.by_hand.typical), 25.25);
    assert_eq!(pays.from, Some(3));
    // 16 studs x 2 settings x 3 min; at 1,100 l/min these are 105.6 m³ (see the example of the tie rods).
    near(minutes(pays.on_studs.typical), 96.0);
    // Permit 40, record 12, clear 15 min leave 533 of 600 min: 21 by hand; 508 with the set-up off: 30.
    let shift = Duration::minutes(600.0);
    assert_eq!(pays.studs_a_shift(shift), [30, 21]);
    assert_eq!(pays.studs_a_shift(Duration::minutes(30.0)), [0, 0]);
}

/// Five settings of 3 min spare only half of each of eight rounds: 4.25 + 2.333 + 15 + 10.667 = 32.25 min, and it
/// never pays.
#[test]
fn driver_that_takes_longer_than_it_spares_never_pays() {
    let pays = DriverPays::new(&compared(5, 9, 1), &compared(0, 9, 1));
    assert_eq!(pays.from, None);
}

/// Two wrenches halve the rounds, not the settings of the one driver: 16 x 2 settings x 3 min stay 96 min.
#[test]
fn one_driver_serves_one_stud_at_a_time() {
    let lines = labour(&compared(2, 4, 2)).lines;
    let driver = lines.iter().find(|line| line.block == Block::DriverOnStud);
    near(driver.map_or(0.0, |line| minutes(line.time.typical)), 96.0);
}
