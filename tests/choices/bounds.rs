//! Bounds and directions of rounding that no single value shows.

use studbook::calc::order::gap_positions;
use studbook::calc::{Id, ids};
use studbook::methods::Computed;
use studbook::methods::jackbolt::{GREATEST_STEP, LEAST_STEP, ids as jackbolt_ids, positions};
use studbook::standards::jackbolts::greatest_level;
use studbook::standards::vdi_2230::SCATTER_ROWS;
use studbook::units::Quantity;

use super::{TABLES, Table, computed};

/// VDI 2230:1986, read in a table that quotes it: ± per cent of the load, with good control and otherwise.
#[test]
fn scatter_is_that_of_the_guideline() {
    let rows = SCATTER_ROWS
        .iter()
        .map(|row| (row.method, row.least, row.greatest));
    let wanted = [
        ("yield_controlled", 0.05, 0.12),
        ("angle_controlled", 0.05, 0.12),
        ("hydraulic_tensioning", 0.09, 0.23),
        ("torque_set_by_test", 0.17, 0.23),
        ("torque_friction_estimated", 0.23, 0.28),
        ("powered_driver", 0.26, 0.43),
    ];
    assert_eq!(rows.collect::<Vec<_>>(), wanted);
}

/// A joint whose stud has this clamped length.
fn with_grip(grip: f64) -> Computed {
    let table: Table = serde_yaml::from_str(TABLES[0]).expect("the table of nuts");
    computed(
        &table
            .job
            .replace("grip: 90 mm", &format!("grip: {grip} mm")),
    )
    .1
}

fn si<Q: Quantity>(computed: &Computed, id: Id<Q>) -> f64 {
    computed
        .ledger
        .get(id)
        .unwrap_or_else(|| panic!("{} is missing", id.key()))
        .si()
}

/// Half of the computed turn (common practice, no source), down to whole degrees: never farther than that.
#[test]
fn the_first_release_round_is_half_the_turn_and_never_more() {
    let mut inside = 0;
    for step in 0..30 {
        let computed = with_grip(60.0 + 7.0 * f64::from(step));
        let half = si(&computed, ids::TURN).to_degrees() / 2.0;
        let set = si(&computed, ids::RELEASE_SET).to_degrees();
        if (5.0..=45.0).contains(&half) {
            inside += 1;
            assert!((set - set.round()).abs() < 1e-9, "{set}");
            assert!(set <= half + 1e-9 && half < set + 1.0, "{set} of {half}");
        }
    }
    assert!(inside > 10, "{inside}");
}

/// A reading inside the band that is accepted is inside the computed one: its ends are rounded inward to 0.01 mm.
#[test]
fn the_accepted_stretch_is_never_wider_than_the_computed_one() {
    for step in 0..30 {
        let computed = with_grip(60.0 + 7.0 * f64::from(step));
        let mm = |id| si(&computed, id) * 1e3;
        let (least, most) = (mm(ids::LEAST_STRETCH), mm(ids::GREATEST_STRETCH));
        let (from, to) = (mm(ids::ACCEPT_STRETCH_LEAST), mm(ids::ACCEPT_STRETCH_MOST));
        assert!(
            from > least - 1e-6 && from < least + 0.01,
            "{from} of {least}"
        );
        assert!(to < most + 1e-6 && to > most - 0.01, "{to} of {most}");
        assert!((from * 100.0 - (from * 100.0).round()).abs() < 1e-6);
    }
}

/// Four readings up to eight studs, eight above; PCC-1 (from memory).
#[test]
fn gaps_are_read_at_four_or_eight_places() {
    for (studs, places) in [(3, 3), (4, 4), (8, 4), (9, 8), (12, 8), (24, 8), (400, 8)] {
        assert_eq!(gap_positions(studs).len(), places, "{studs} studs");
    }
}

/// No spindle may pass the full value: 1 / (1 + scatter), down to whole per cent; the hand finds something left to turn
/// at 90 % at most (common practice, no source).
#[test]
fn the_level_of_a_driver_is_bounded_by_its_scatter() {
    for (scatter, level) in [
        (0.0, 0.90),
        (0.11, 0.90),
        (0.12, 0.89),
        (0.15, 0.86),
        (0.25, 0.80),
        (0.30, 0.76),
    ] {
        let got = greatest_level(scatter);
        assert!((got - level).abs() < 1e-12, "{scatter}: {got} for {level}");
    }
}

/// A head fits whose spindles divide the jackbolts, in four positions at most; a single spindle is no head (ours).
#[test]
fn a_head_fits_in_four_positions_at_most() {
    let fits = [
        (12, 12, Some(1)),
        (12, 6, Some(2)),
        (12, 4, Some(3)),
        (12, 3, Some(4)),
        (12, 2, None),
        (12, 5, None),
        (4, 1, None),
        (4, 2, Some(2)),
        (12, 0, None),
        (12, 24, None),
    ];
    for (jackbolts, spindles, wanted) in fits {
        assert_eq!(
            positions(jackbolts, spindles),
            wanted,
            "{spindles} on {jackbolts}"
        );
    }
}

/// A stud with twelve jackbolts, typical minutes (common practice, no source): 2 to clean and 2.25 to run the body down;
/// 14 / 72 for a jackbolt in a round by hand, 4 / 36 in a full round after the driver, which takes 3 for each setting: two
/// of them, since 10 to 80 % of the load is more than the half that it may rise at once.
#[test]
fn a_stud_with_jackbolts_takes_its_rounds() {
    let table: Table = serde_yaml::from_str(TABLES[6]).expect("the table of jackbolts");
    let (_, computed) = computed(&table.job);
    let plan = computed.plan.jackbolts().expect("a plan");
    let by_hand = plan.by_hand.as_ref().expect("a plan by hand");
    let minutes = |id| si(&computed, id) / 60.0;
    let round = |minutes: f64, rounds: usize| 12.0 * minutes * rounds as f64;
    let prepared = 2.0 + 2.25;
    let driven = prepared + round(14.0 / 72.0, 1) + 2.0 * 3.0 + round(4.0 / 36.0, plan.full_rounds);
    let handed = prepared + round(14.0 / 72.0, by_hand.rounds.len());
    // Gaps are read after each raising round, three times at most: seating and full rounds are none.
    let raised = by_hand.rounds.len() - by_hand.full_rounds - 1;
    let whole = 40.0 + 16.0 * handed + 5.0 * raised.min(3) as f64 + 12.0 + 15.0;
    let near = |got: f64, wanted: f64| assert!((got - wanted).abs() < 1e-6, "{got} for {wanted}");
    near(minutes(jackbolt_ids::STUD_WITH_DRIVER), driven);
    near(minutes(jackbolt_ids::STUD_BY_HAND), handed);
    near(minutes(jackbolt_ids::BY_HAND_HOURS), whole);
    near(minutes(jackbolt_ids::DRIVER_SET_UP), 25.0);
}

/// Common practice, no source: 5° is the least that a crew reads off a paint line, 45° the most of one round.
#[test]
fn a_round_of_release_is_between_what_can_be_read_and_what_is_gentle() {
    assert!((LEAST_STEP - 5.0).abs() < 1e-12 && (GREATEST_STEP - 45.0).abs() < 1e-12);
}
