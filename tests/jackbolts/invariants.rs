//! What must hold for every set of springs, whatever its numbers.

use proptest::prelude::*;

use studbook::methods::jackbolt::{Record, Springs, State, Step, run, run_all};
use studbook::standards::{jackbolts, symbols as s};

use super::{circle, springs};

/// Springs over all sizes that are built: R from 0.05 to 60.
pub(crate) fn any_springs() -> impl Strategy<Value = Springs> {
    (2_usize..=32, 0.05_f64..2.5, 1.0_f64..4.0, 2e4_f64..4e5)
        .prop_map(|(count, ratio, pitch, load)| springs(count, 8e5, 8e5 / ratio, pitch, load))
}

fn shuffled(count: usize, seed: u64) -> Vec<usize> {
    let mut order = circle(count);
    let mut draw = seed | 1;
    for last in (1..count).rev() {
        draw = draw
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        let at = usize::try_from(draw >> 33).unwrap() % (last + 1);
        order.swap(last, at);
    }
    order
}

fn levels() -> impl Strategy<Value = Vec<f64>> {
    proptest::collection::vec(0.05_f64..1.0, 1..6)
}

fn full_rounds(set: &Springs, count: usize) -> Vec<Step> {
    vec![Step::one_by_one(circle(set.count), 1.0); count]
}

fn same(a: &Record, b: &Record, within: f64) -> bool {
    let loads = a.loads.iter().zip(&b.loads);
    let turns = a.turns.iter().zip(&b.turns);
    loads.chain(turns).all(|(a, b)| (a - b).abs() <= within)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, failure_persistence: None, ..ProptestConfig::default() })]

    /// In a tightening event the stud never loses, no other jackbolt gains, nobody passes the largest setting used.
    #[test]
    fn a_turn_takes_from_the_others(set in any_springs(), levels in levels(), seed: u64) {
        let mut state = State::snug(&set);
        let mut largest: f64 = 0.0;
        for level in levels {
            largest = largest.max(level);
            for index in shuffled(set.count, seed) {
                let before = state.loads();
                let turned = state.tighten(index, level * set.load);
                let after = state.loads();
                prop_assert!(turned >= 0.0);
                prop_assert!(after.iter().sum::<f64>() >= before.iter().sum::<f64>() - 1e-9 * set.load);
                for (other, (before, after)) in before.iter().zip(&after).enumerate() {
                    prop_assert!(other == index || *after <= before + 1e-9 * set.load);
                    prop_assert!(*after <= largest * set.load * (1.0 + 1e-9));
                }
            }
        }
    }

    /// The last one stands at its setting; the same setting again turns it by nothing.
    #[test]
    fn the_last_one_stands_at_its_setting(set in any_springs(), levels in levels(), seed: u64) {
        let mut state = State::snug(&set);
        for level in levels {
            let order = shuffled(set.count, seed);
            let record = run(&set, &mut state, &Step::one_by_one(order.clone(), level));
            let last = *order.last().unwrap();
            prop_assert!(record.loads[last] >= level - 1e-9);
            let again = state.tighten(last, level * set.load);
            prop_assert!(again.abs() < 1e-12);
        }
    }

    /// Loads and turns go with the load; the contraction does not hang on it.
    #[test]
    fn everything_scales_with_the_load(set in any_springs(), levels in levels(), times in 0.2_f64..5.0) {
        let other = springs(set.count, set.jackbolt / 1e3, set.joint / 1e3, set.pitch * 1e3, times * set.load);
        let steps: Vec<Step> = levels.iter().map(|level| Step::one_by_one(circle(set.count), *level)).collect();
        for (one, other) in run_all(&set, &steps).iter().zip(run_all(&other, &steps)) {
            for (one, other) in one.turns.iter().zip(&other.turns) {
                prop_assert!((one * times - other).abs() < 1e-9 * (1.0 + other.abs()));
            }
            for (one, other) in one.loads.iter().zip(&other.loads) {
                prop_assert!((one - other).abs() < 1e-9);
            }
        }
        prop_assert!((set.contraction().of_round - other.contraction().of_round).abs() < 1e-12);
    }

    /// Another jackbolt as number 1 changes the numbers and nothing else; so does the other direction.
    #[test]
    fn results_follow_the_numbers(set in any_springs(), levels in levels(), by in 0_usize..32, mirrored: bool) {
        let count = set.count;
        let renumbered = |index: usize| {
            let index = (index + by) % count;
            if mirrored { count - 1 - index } else { index }
        };
        let one: Vec<Step> = levels.iter().map(|level| Step::one_by_one(circle(count), *level)).collect();
        let other: Vec<Step> = levels
            .iter()
            .map(|level| Step::one_by_one(circle(count).into_iter().map(renumbered).collect(), *level))
            .collect();
        for (one, other) in run_all(&set, &one).iter().zip(run_all(&set, &other)) {
            for index in 0..count {
                prop_assert!((one.loads[index] - other.loads[renumbered(index)]).abs() < 1e-9);
                prop_assert!((one.turns[index] - other.turns[renumbered(index)]).abs() < 1e-9);
            }
        }
    }

    /// Loads hang on the advances alone, and turning back what was turned restores the state.
    #[test]
    fn the_way_there_does_not_matter(
        set in any_springs(),
        turns in proptest::collection::vec(-0.2_f64..1.0, 32),
        seed: u64,
    ) {
        let (mut one, mut other) = (State::even(&set, 0.3), State::even(&set, 0.3));
        let start = one.loads();
        let order = shuffled(set.count, seed);
        for index in circle(set.count) {
            one.turn(index, turns[index] * set.turn_one);
        }
        for &index in &order {
            other.turn(index, 0.5 * turns[index] * set.turn_one);
        }
        for &index in order.iter().rev() {
            other.turn(index, 0.5 * turns[index] * set.turn_one);
        }
        for (one, other) in one.loads().iter().zip(other.loads()) {
            prop_assert!((one - other).abs() < 1e-9 * set.load);
        }
        for &index in &order {
            one.turn(index, -turns[index] * set.turn_one);
        }
        for (now, then) in one.loads().iter().zip(start) {
            prop_assert!((now - then).abs() < 1e-9 * set.load);
        }
    }

    /// A stud that does not give needs one round, and so do spindles that turn all at once.
    #[test]
    fn one_round_is_enough_without_interaction(set in any_springs()) {
        let rigid = springs(set.count, set.jackbolt / 1e3, 1e15, set.pitch * 1e3, set.load);
        let records = run_all(&rigid, &full_rounds(&rigid, 2));
        prop_assert!((records[0].mean - 1.0).abs() < 1e-6 && records[1].largest_turn < 1e-6);
        let at_once = vec![Step::at_once(circle(set.count), 1.0, Vec::new()); 2];
        let records = run_all(&set, &at_once);
        prop_assert!((records[0].least - 1.0).abs() < 1e-9 && records[1].largest_turn < 1e-9);
    }

    /// While all are in contact the mean load is the mean turn over that of the whole way, exactly.
    #[test]
    fn mean_load_is_mean_turn(set in any_springs(), rounds in 1_usize..6) {
        let mut steps = vec![Step::at_once(circle(set.count), 0.8, Vec::new())];
        steps.extend(full_rounds(&set, rounds));
        let records = run_all(&set, &steps);
        prop_assume!(records.iter().all(|record| record.least > 0.0));
        let turned: f64 = records.iter().map(|record| record.mean_turn).sum();
        let mean = records.last().unwrap().mean;
        prop_assert!((mean - turned / set.turn_all).abs() < 1e-9);
    }

    /// Positions of a driver that are evenly spaced keep their symmetry.
    #[test]
    fn positions_stay_alike(set in any_springs(), positions in 1_usize..4, level in 0.2_f64..0.9) {
        prop_assume!(set.count.is_multiple_of(positions));
        let mut state = State::snug(&set);
        for _ in 0..2 {
            for position in 0..positions {
                let group: Vec<usize> = (position..set.count).step_by(positions).collect();
                let record = run(&set, &mut state, &Step::at_once(group, level, Vec::new()));
                for index in 0..set.count {
                    let twin = (index + positions) % set.count;
                    prop_assert!((record.loads[index] - record.loads[twin]).abs() < 1e-9);
                }
            }
        }
    }

    /// Rounds bring everybody to the full load, each leaving the share of the deficit that the contraction says,
    /// in every order.
    #[test]
    fn rounds_converge_as_predicted(set in any_springs(), seed: u64) {
        let order = shuffled(set.count, seed);
        let contraction = set.contraction().of_round;
        let mut steps = vec![Step::at_once(circle(set.count), 0.9, Vec::new())];
        steps.extend(vec![Step::one_by_one(order, 1.0); 400]);
        let deficits: Vec<f64> = run_all(&set, &steps).iter().map(|record| 1.0 - record.mean).collect();
        prop_assert!(*deficits.last().unwrap() < 1e-3);
        // Once the start is forgotten and before the last digits are reached.
        let late = deficits.windows(2).skip(6).find(|pair| pair[0] < 0.05 && pair[1] > 1e-9);
        if let Some(pair) = late {
            prop_assert!((pair[1] / pair[0] - contraction).abs() < 0.01, "{} {contraction}", pair[1] / pair[0]);
        }
    }

    /// Two jackbolts: exactly the square of R over 1 + R.
    #[test]
    fn two_jackbolts_contract_by_a_square(ratio in 0.05_f64..20.0) {
        let set = springs(2, 8e5, 8e5 / ratio, 2.0, 1e5);
        let expected = set.closed(&jackbolts::CONTRACTION_ABOUT, &[]);
        prop_assert!((set.contraction().of_round - expected).abs() < 1e-12);
    }

    /// For more jackbolts that square is low, by no more than 0.036.
    #[test]
    fn the_square_is_low_by_little(set in any_springs()) {
        let about = set.closed(&jackbolts::CONTRACTION_ABOUT, &[]);
        let by = set.contraction().of_round - about;
        prop_assert!((-1e-9..=0.036).contains(&by), "{by}");
    }

    /// The guarantee of a round in which everybody was turned and nobody further than the stop angle, from any start.
    #[test]
    fn no_round_is_worse_than_its_bound(set in any_springs(), start in levels(), seed: u64) {
        let mut state = State::snug(&set);
        for level in start {
            run(&set, &mut state, &Step::one_by_one(shuffled(set.count, seed), level));
        }
        for round in 0..6 {
            let order = shuffled(set.count, seed.wrapping_add(round));
            let record = run(&set, &mut state, &Step::one_by_one(order, 1.0));
            let bound = set.deficit_bound(record.largest_turn);
            prop_assert!(1.0 - record.mean <= bound.mean + 1e-9);
            prop_assert!(1.0 - record.least <= bound.worst + 1e-9);
        }
    }

    /// A stiffer joint or a shorter stud: fewer rounds, smaller turns.
    #[test]
    fn a_stiffer_joint_needs_less(set in any_springs(), times in 1.1_f64..4.0) {
        let stiffer = springs(set.count, set.jackbolt / 1e3, times * set.joint / 1e3, set.pitch * 1e3, set.load);
        prop_assert!(stiffer.ring_ratio < set.ring_ratio);
        prop_assert!(stiffer.turn_all < set.turn_all);
        prop_assert!(stiffer.contraction().of_round <= set.contraction().of_round + 1e-12);
        prop_assert!(stiffer.full_rounds(0.8, 0.05) <= set.full_rounds(0.8, 0.05));
    }

    /// The closed count of rounds is that of the simulation or one less.
    #[test]
    fn the_count_of_rounds_is_near(set in any_springs(), level in 0.5_f64..0.9) {
        let mut steps = vec![Step::at_once(circle(set.count), level, Vec::new())];
        steps.extend(full_rounds(&set, 300));
        let records = run_all(&set, &steps);
        let needed = records.iter().skip(1).position(|record| record.mean >= 0.95).unwrap() + 1;
        let closed = set.full_rounds(level, 0.05);
        let off = needed.abs_diff(closed);
        prop_assert!(off <= 1 + needed / 12, "{needed} by steps, {closed} closed");
    }

    /// The estimate from the mean turn of a round, from the second round in circle on: below the truth by less than
    /// a point, above it by no more than two.
    #[test]
    fn the_estimate_from_the_mean_turn(set in any_springs()) {
        let mut steps = vec![Step::at_once(circle(set.count), 0.8, Vec::new())];
        steps.extend(full_rounds(&set, 6));
        for record in run_all(&set, &steps).iter().skip(3) {
            let off = set.deficit_of_mean_turn(record.mean_turn) - (1.0 - record.mean);
            prop_assert!((-0.01..0.02).contains(&off), "{off}");
        }
    }

    /// A finish by equal turns from an even load ends even at the full load and keeps its peak.
    #[test]
    fn a_finish_by_angle_ends_exactly(set in any_springs(), level in 0.6_f64..0.95) {
        let (rounds, turn) = set.angle_finish(level, 1.15);
        let mut state = State::even(&set, level);
        for _ in 0..rounds {
            for index in circle(set.count) {
                state.turn(index, turn);
                prop_assert!(state.loads()[index] <= 1.15 * set.load * (1.0 + 1e-9));
            }
        }
        for load in state.loads() {
            prop_assert!((load - set.load).abs() < 1e-6 * set.load);
        }
    }

    /// One round with what the later ones will take added beforehand ends even at the full load, while nobody comes loose
    /// on the way.
    #[test]
    fn a_compensated_round_ends_exactly(set in any_springs(), level in 0.8_f64..0.98) {
        let mut state = State::even(&set, level);
        for (index, share) in set.compensated_round(level).into_iter().enumerate() {
            state.tighten(index, share * set.load);
            prop_assume!(state.loads().iter().all(|load| *load > 0.0));
        }
        for load in state.loads() {
            prop_assert!((load - set.load).abs() < 1e-9 * set.load);
        }
    }

    /// A seized jackbolt, the others brought up by torque.
    #[test]
    fn a_seized_jackbolt_loses(set in any_springs()) {
        let mut state = State::even(&set, 1.0);
        let others: Vec<usize> = (1..set.count).collect();
        state.together(&others, &vec![1.1 * set.load; others.len()]);
        let lost = 1.0 - state.loads()[0] / set.load;
        let expected = set.closed(&jackbolts::SEIZED_LOSS_OF, &[(s::PEAK_LIMIT, 1.1)]);
        prop_assert!((lost - expected.min(1.0)).abs() < 1e-9, "{lost} {expected}");
    }

    /// One position of the driver keeps this much while the other is driven up from loose.
    #[test]
    fn the_other_position_loses(set in any_springs(), level in 0.5_f64..0.9) {
        prop_assume!(set.count.is_multiple_of(2));
        let mut state = State::snug(&set);
        for position in 0..2 {
            let group: Vec<usize> = (position..set.count).step_by(2).collect();
            run(&set, &mut state, &Step::at_once(group, level, Vec::new()));
        }
        let left = state.loads()[0] / set.load;
        let known = [(s::LEVEL, level), (s::BLOCK, (set.count / 2) as f64)];
        let expected = set.closed(&jackbolts::BLOCK_LEFT_OF, &known);
        prop_assert!((left - expected).abs() < 1e-9, "{left} {expected}");
    }

    /// What a resting jackbolt holds more than its setting before it moves leaves the load short by no more than that.
    #[test]
    fn breakaway_leaves_a_little(set in any_springs(), share in 0.02_f64..0.2) {
        let mut state = State::snug(&set).with_breakaway(share);
        let steps = full_rounds(&set, 300);
        let last = steps.iter().map(|step| run(&set, &mut state, step)).last().unwrap();
        prop_assert!(last.least >= 1.0 / (1.0 + share) - 0.01);
    }

    /// The measured turn of one jackbolt gives its compliance back.
    #[test]
    fn a_measured_turn_gives_the_compliance(set in any_springs()) {
        let own = jackbolts::OWN_COMPLIANCE_OF_TURN.value_with(&[
            (s::TURN_ONE, set.turn_one),
            (s::JACKBOLT_PITCH, set.pitch),
            (s::JACKBOLT_LOAD, set.load),
        ]);
        let found = jackbolts::JACKBOLT_COMPLIANCE_OF_TURN.value_with(&[
            (s::OWN_COMPLIANCE, own),
            (s::JACKBOLTS, set.count as f64),
            (s::JOINT_COMPLIANCE, 1.0 / set.joint),
        ]);
        prop_assert!((found * set.jackbolt - 1.0).abs() < 1e-6);
    }
}

/// The same run twice is the same to the last bit.
#[test]
fn a_run_is_repeatable() {
    let set = springs(12, 8e5, 1.1e6, 2.5, 1.3e5);
    let steps = full_rounds(&set, 8);
    let (one, other) = (run_all(&set, &steps), run_all(&set, &steps));
    assert!(
        one.iter()
            .zip(&other)
            .all(|(one, other)| same(one, other, 0.0))
    );
}
