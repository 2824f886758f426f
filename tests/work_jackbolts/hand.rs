//! Rounds by hand and what proves them.

use studbook::units::{Angle, Length, Quantity};
use studbook::work::{Attendance, Bound, Kind, Limit, Sequence, Set, Task, Value};

use super::tensioned::{all, by_hand, larger_wrench, tie_rods, with};
use super::{
    ANCHORS, RODS, accepted, ids, key, names, plan, printed, readings, setting, shown, step, value,
    work,
};

/// C0 seats, U raises, C goes in circle as often as the plan says.
#[test]
fn rounds_stand_in_the_order_of_the_work() {
    let rods = work(&by_hand(), RODS, Task::Tighten);
    let planned = plan(&by_hand(), RODS);
    let raised = planned.rounds.len() - planned.full_rounds - 1;
    let mut expected = vec!["C0".to_owned()];
    expected.extend((1..=raised).map(|number| format!("U{number}")));
    expected.extend((1..=planned.full_rounds).map(|number| format!("C{number}")));
    assert_eq!(names(&rods), expected);
    // The first round at full value is set; those behind it only say what they reach.
    let further: Vec<bool> = rods
        .settings()
        .map(|(_, setting)| setting.further)
        .collect();
    assert_eq!(further.iter().filter(|it| !**it).count(), raised + 2);
    assert!(further.is_sorted());
}

/// A tenth of 470 N·m seats (common practice, no source), on a small wrench that is set to one unit.
#[test]
fn torques_are_what_the_wrench_shows() {
    let rods = work(&by_hand(), RODS, Task::Tighten);
    assert_eq!(shown(key(&rods, "full")), "470\u{a0}N·m");
    assert_eq!(shown(key(&rods, "seat")), "47\u{a0}N·m");
    assert_eq!(shown(&setting(&rods, "C0").1.set), "47\u{a0}N·m");
    assert_eq!(shown(&setting(&rods, "C1").1.set), "470\u{a0}N·m");
}

/// With an adapter of 40 mm in line with 760 mm the wrench shows 470 · 760/800 = 446.5 N·m, on steps of 5 N·m 445; the
/// jackbolt then gets 445 · 800/760 = 468.4 N·m.
#[test]
fn an_adapter_counts_for_jackbolts_too() {
    let adapted = with(
        &larger_wrench(),
        &[(
            "range: [110 N·m, 1000 N·m]",
            "range: [110 N·m, 1000 N·m], adapter: { wrench_length: 760 mm, extension: 40 mm }",
        )],
    );
    let rods = work(&adapted, RODS, Task::Tighten);
    assert_eq!(shown(key(&rods, "full")), "445\u{a0}N·m");
    let Set::Tools(readings) = key(&rods, "full") else {
        panic!("a wrench sets it");
    };
    let at_jackbolt = readings[0].gives().si();
    assert!((at_jackbolt - 445.0 * 800.0 / 760.0).abs() < 1e-6);
    // 445 N·m · 800 / 760 = 468.4 N·m stands beside it.
    let printed = readings[0].at_nut().map(|it| it.joined());
    assert_eq!(printed.as_deref(), Some("468.4\u{a0}N·m"));
}

/// Four jackbolts a quarter of the circle of 16 apart first, then all.
#[test]
fn the_body_is_seated_by_jackbolts_spread_round_it() {
    let rods = work(&by_hand(), RODS, Task::Tighten);
    assert_eq!(
        setting(&rods, "C0").1.order,
        Sequence::First(vec![1, 5, 9, 13])
    );
    assert_eq!(setting(&rods, "C1").1.order, Sequence::Circle);
}

/// Least, likely and greatest of what the bands predict; the turn of full-value rounds alone.
#[test]
fn what_is_expected_comes_from_the_plan() {
    let rods = work(&by_hand(), RODS, Task::Tighten);
    let planned = plan(&by_hand(), RODS);
    let last = planned.rounds.last().expect("rounds");
    let mean = last.predicted.map(|record| record.mean);
    let turn = last.predicted.map(|record| record.largest_turn);
    let name = format!("C{}", planned.full_rounds);
    let expected = setting(&rods, &name).1.expected.expect("it is predicted");
    let bands = [mean.least(), mean.likely, mean.greatest()];
    for (share, band) in expected.load.iter().zip(bands) {
        assert!((share - band).abs() < 1e-12);
    }
    assert_eq!(
        (expected.turn, expected.turn_most),
        (Some(turn.likely), Some(turn.greatest()))
    );
    let seat = setting(&rods, "C0").1.expected.expect("it is predicted");
    assert_eq!((seat.turn, seat.peak), (None, None));
}

/// N rounds and no jackbolt 20° or more; three rounds beyond N the crew stops (common practice, no source).
#[test]
fn both_parts_of_the_stop_rule_are_witnessed() {
    for text in [by_hand(), larger_wrench()] {
        let rods = work(&text, RODS, Task::Tighten);
        let least = plan(&text, RODS).full_rounds;
        let stop = rods.stop.as_ref().expect("a rule ends the work");
        let flat = Value::of(Angle::degrees(20.0));
        let parts = [
            Limit::new("full_rounds", Bound::AtLeast(Value::Count(least))),
            Limit::new("largest_turn", Bound::Below(flat)),
        ];
        assert_eq!(
            (stop.step, stop.parts.as_slice()),
            ("full", parts.as_slice())
        );
        assert_eq!(stop.last, Some(format!("C{}", least + 3)));
        let witnessed: Vec<Limit> = accepted(&rods, "W2").into_iter().cloned().collect();
        assert_eq!(witnessed, parts);
    }
}

/// Seat 0.5 mm, stud end 0 to 4 mm as the tensioner's papers say (common practice; the job).
#[test]
fn points_accept_what_stands_in_their_steps() {
    let rods = work(&larger_wrench(), RODS, Task::Tighten);
    let ready = accepted(&rods, "H3");
    assert_eq!(
        ids(&ready)
            .iter()
            .filter(|id| **id != "made_up")
            .copied()
            .collect::<Vec<_>>(),
        ["above_body", "gap_spread", "circle_differs"]
    );
    let half = Bound::AtMost(Value::of(Length::mm(0.5)));
    assert!(ready.contains(&&Limit::new("gap_spread", half)));
    let above = Bound::Between(Value::of(Length::mm(0.0)), Value::of(Length::mm(4.0)));
    assert!(ready.contains(&&Limit::new("above_body", above)));
    assert_eq!(ids(&accepted(&rods, "W1")), ["flat", "one_paste"]);
    assert_eq!(ids(&accepted(&rods, "H4")), ["stretch"]);
    let w2 = rods
        .points()
        .find(|(_, point)| point.name.as_deref() == Some("W2"));
    let attendance = w2.map(|(_, point)| point.attendance);
    assert_eq!(
        attendance,
        Some([Attendance::Witness, Attendance::Review, Attendance::Off])
    );
}

#[test]
fn every_box_of_the_record_is_there() {
    let rods = work(&larger_wrench(), RODS, Task::Tighten);
    let found = readings(&rods);
    for id in [
        "stud_end",
        "set_number",
        "seated",
        "spindles",
        "tried",
        "turns",
        "tally",
        "second",
        "gap_end",
        "stretch",
    ] {
        assert!(found.contains(&id), "{id}: {found:?}");
    }
    // Four studs have a line each, sixteen a box each; stretch that is read makes the growth of the gap needless.
    assert!(!found.contains(&"last_round") && !found.contains(&"growth"));
    let anchors = work(&by_hand(), ANCHORS, Task::Tighten);
    let found = readings(&anchors);
    assert!(found.contains(&"last_round") && found.contains(&"growth"));
    assert!(!found.contains(&"stretch") && !found.contains(&"spindles"));
    assert!(!found.contains(&"start_gap"), "3 mm are given");
}

/// Up to eight rounds have a column each; beyond that the last two and a tally (the room of the record).
#[test]
fn rounds_have_columns_or_a_tally() {
    for (text, tag) in [
        (by_hand(), RODS),
        (larger_wrench(), RODS),
        (by_hand(), ANCHORS),
    ] {
        let of_tag = work(&text, tag, Task::Tighten);
        let last = plan(&text, tag).full_rounds + 3;
        let Kind::Reading(turns) = &step(&of_tag, "turns").kind else {
            panic!("turns are read");
        };
        assert_eq!(turns.columns.len(), last.min(8));
        assert_eq!(of_tag.step("tally").is_some(), last > 8);
    }
}

/// Every tenth stud, two at least, four jackbolts each (common practice, no source).
#[test]
fn a_second_person_tries_a_sample() {
    for (studs, sample) in [(1, 1), (2, 2), (4, 2), (20, 2), (21, 3), (30, 3)] {
        let text = with(
            &by_hand(),
            &[("studs: { count: 4,", &format!("studs: {{ count: {studs},"))],
        );
        let rods = work(&text, RODS, Task::Tighten);
        let second = step(&rods, "second");
        assert_eq!(value(second, "studs"), &Value::Count(sample), "{studs}");
        assert_eq!(value(second, "count"), &Value::Count(4));
    }
}

/// Nothing is guessed where nobody knows the clamped length: seat and number of rounds are to be given.
#[test]
fn without_a_plan_nothing_is_guessed() {
    let text = with(
        &larger_wrench(),
        &[
            ("length: 1480 mm, grip: 1130 mm, ", "length: 1480 mm, "),
            ("    start_gap: 4 mm\n", ""),
            ("    stud_above_body: 4 mm\n", ""),
        ],
    );
    let rods = work(&text, RODS, Task::Tighten);
    assert_eq!(names(&rods), ["C0", "C1"]);
    assert!(matches!(setting(&rods, "C0").1.set, Set::Missing(_)));
    let stop = rods.stop.as_ref().expect("a rule ends the work");
    assert!(matches!(
        stop.parts[0].bound,
        Bound::AtLeast(Value::Missing(_))
    ));
    assert_eq!(stop.last, None);
    assert!(readings(&rods).contains(&"start_gap"));
    let limits = &step(&rods, "stud_end").accept;
    assert!(matches!(
        limits[0].bound,
        Bound::Between(_, Value::Missing(_))
    ));
}

/// One round at the full value with the same stop angle; no driver, whatever the job has.
#[test]
fn a_recheck_is_one_round_by_hand() {
    let rods = work(&tie_rods(), RODS, Task::Recheck);
    assert_eq!(names(&rods), ["C1"]);
    assert_eq!(shown(&setting(&rods, "C1").1.set), "470\u{a0}N·m");
    assert_eq!(ids(&accepted(&rods, "W2")), ["largest_turn"]);
    assert!(matches!(
        value(step(&rods, "recheck_over"), "limit"),
        Value::Missing(_)
    ));
    assert!(rods.step("driver_set").is_none() && rods.stop.is_none());
    assert_eq!(rods.keys.len(), 1);
    assert_eq!(rods.picture.sets, Vec::<Vec<usize>>::new());
    let Some((_, Value::List(wrenches))) = rods.facts.iter().find(|(id, _)| *id == "wrench") else {
        panic!("{:?}", rods.facts);
    };
    assert_eq!(wrenches.len(), 1);
}

/// The body 330 mm, the jackbolts on 262 mm, the stud M125; the washer carries every tip: 262 + 19 mm.
#[test]
fn the_picture_is_drawn_to_the_lengths_of_the_job() {
    let rods = work(&by_hand(), RODS, Task::Tighten);
    let picture = &rods.picture;
    for (radius, diameter) in picture.circles.iter().zip([330.0, 281.0, 125.0]) {
        assert!((radius * 2.0 - diameter).abs() < 1e-6, "{radius}");
    }
    assert_eq!((picture.count, picture.order.len()), (16, 16));
    assert!((picture.on - 131.0).abs() < 1e-6);
    assert!(picture.sets.is_empty() && picture.sectors.is_empty() && !picture.has_lines);
    let ring = picture.ring.as_ref().expect("four studs stand in a ring");
    assert_eq!((ring.count, ring.is_clockwise), (4, true));
    let one = with(&by_hand(), &[("studs: { count: 4,", "studs: { count: 1,")]);
    assert_eq!(work(&one, RODS, Task::Tighten).picture.ring, None);
}

#[test]
fn joints_of_one_method_merge_into_spans() {
    let mut merged = work(&by_hand(), RODS, Task::Tighten);
    let anchors = work(&by_hand(), ANCHORS, Task::Tighten);
    let before = merged.settings().count();
    merged.merge(&anchors);
    assert_eq!(merged.joints, 2);
    assert_eq!(
        merged.stop.as_ref().and_then(|stop| stop.last.clone()),
        None
    );
    let Bound::AtLeast(Value::Span(rounds)) = &merged.stop.as_ref().expect("a rule").parts[0].bound
    else {
        panic!("{:?}", merged.stop);
    };
    let counts = [RODS, ANCHORS].map(|tag| plan(&by_hand(), tag).full_rounds);
    assert_eq!(**rounds, [Value::Count(counts[0]), Value::Count(counts[1])]);
    let Value::Span(full) = value(setting(&merged, "C1").0, "set") else {
        panic!("both wrenches have N·m");
    };
    let numbers: Vec<f64> = full
        .iter()
        .map(|it| match it {
            Value::Reading(reading) => reading.gives().si(),
            other => panic!("{other:?} of {}", printed(other)),
        })
        .collect();
    assert!(numbers.is_sorted() && merged.settings().count() > before);
}

/// Words of a row, a tick, a decision with values of usual length: 40, 56 and 56 letters.
#[test]
fn every_work_is_there_for_every_job() {
    for text in all() {
        for tag in [RODS, ANCHORS] {
            for task in Task::ALL {
                let of_tag = work(&text, tag, task);
                assert_eq!(of_tag.task, task);
                assert!(of_tag.settings().next().is_some(), "{tag} {task:?}");
            }
        }
    }
}
