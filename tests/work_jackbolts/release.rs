//! Letting studs go.

use studbook::joint::Who;
use studbook::units::Length;
use studbook::work::{Bound, HazardKind, Sequence, Set, Task, Value};

use super::tensioned::{by_hand, larger_wrench, long_anchors, tie_rods, with};
use super::{RODS, key, names, plan, printed, readings, setting, shown, step, value, work};

/// The first angle keeps the last jackbolt at 1.3 of its load: (1.3 − 1) · Th · (1 + R)/R at the least of the bands
/// (closed form of the springs in series), in whole degrees below it.
#[test]
fn the_first_angle_is_that_of_the_closed_form() {
    let rods = work(&larger_wrench(), RODS, Task::Loosen);
    let predictions = plan(&larger_wrench(), RODS).predictions;
    let exact = predictions.map(|it| 0.3 * it.turn_one * (1.0 + it.ring_ratio) / it.ring_ratio);
    let whole = exact.least().to_degrees().floor().to_radians();
    let (first, setting) = setting(&rods, "R1");
    assert_eq!(first.id, "back_at_hand");
    let Set::Turn(turn) = setting.set else {
        panic!("{:?}", setting.set);
    };
    assert!((turn + whole).abs() < 1e-9, "{turn} for {whole}");
}

/// 14° on a wrench of 760 mm are 0.2443 · 760 = 185.7 mm, to the nearest 5 mm 185; of a flat of 60° they are 0.233,
/// which is nearest to a quarter. Without the length of the wrench a tenth is said: 60 ÷ 14 = 4.3.
#[test]
fn a_turn_is_said_as_a_hand_sees_it() {
    let rods = work(&larger_wrench(), RODS, Task::Loosen);
    let (first, turned) = setting(&rods, "R1");
    assert_eq!(turned.set, Set::Turn(-14.0_f64.to_radians()));
    assert_eq!(value(first, "part"), &Value::Text("1/4".into()));
    let Value::Si(travel, _) = value(first, "travel") else {
        panic!("{:?}", first.values);
    };
    assert!((travel - Length::mm(185.0).to_mm() / 1000.0).abs() < 1e-9);
    let text = with(&larger_wrench(), &[(", length: 760 mm", "")]);
    let rods = work(&text, RODS, Task::Loosen);
    let (first, _) = setting(&rods, "R1");
    assert_eq!(
        (first.id, value(first, "part")),
        ("back", &Value::Text("1/4.3".into()))
    );
}

/// No jackbolt passes its limit, the load falls from round to round, the last round runs each loose.
#[test]
fn rounds_go_to_the_end_of_the_plan() {
    let rods = work(&larger_wrench(), RODS, Task::Loosen);
    let rounds = plan(&larger_wrench(), RODS).release.rounds.len();
    let expected: Vec<String> = (1..=rounds).map(|number| format!("R{number}")).collect();
    assert_eq!(names(&rods), expected);
    let mut left = 1.0;
    for (_, setting) in rods.settings() {
        assert_eq!(setting.order, Sequence::Circle);
        let expected = setting.expected.expect("it is predicted");
        assert!(expected.peak.expect("a peak") <= 1.3 + 1e-9);
        assert!(expected.load[1] < left);
        left = expected.load[1];
    }
    let (last, setting) = setting(&rods, &format!("R{rounds}"));
    assert_eq!((last.id, &setting.set), ("loose", &Set::Word("loose")));
    assert!(left.abs() < 1e-12);
    let made = &step(&rods, "rounds_made").accept[0].bound;
    assert_eq!(made, &Bound::Is(Value::Count(rounds)));
}

/// Break-out of a jackbolt at 0.45 to 1.3 of its torque (ours): 211.5 and 611 N·m, on steps of 5 and 10 N·m. Where one
/// does not move, the others of that stud are brought to 1.1 · 470 = 517 N·m at most, and never above the bound.
#[test]
fn bounds_are_what_the_wrench_shows() {
    let rods = work(&larger_wrench(), RODS, Task::Loosen);
    let Set::Value(Value::Span(range)) = key(&rods, "break_out_by_hand") else {
        panic!("{:?}", key(&rods, "break_out_by_hand"));
    };
    assert_eq!(
        range.iter().map(printed).collect::<Vec<_>>(),
        ["210\u{a0}N·m", "610\u{a0}N·m"]
    );
    let never = shown(key(&rods, "never"));
    assert_eq!(printed(value(step(&rods, "seized"), "never")), never);
    let Bound::AtMost(most) = &step(&rods, "largest_torque").accept[0].bound else {
        panic!("the largest torque has a bound");
    };
    assert_eq!(printed(most), never);
    let others = value(step(&rods, "seized_others"), "others");
    assert_eq!(printed(others), "515\u{a0}N·m");
    let Bound::AtMost(most) = &step(&rods, "seized_found").accept[0].bound else {
        panic!("the others have a bound");
    };
    assert_eq!(most, others);
}

/// Where the plan overloads the last jackbolt none of its numbers is printed; the engineer gives each angle.
#[test]
fn a_plan_that_overloads_is_not_printed() {
    let overloading = with(
        &tie_rods(),
        &[
            ("range: [110 N·m, 600 N·m]", "range: [110 N·m, 500 N·m]"),
            ("    free_length: 90 mm\n", ""),
            (
                "length: 1480 mm, grip: 1130 mm",
                "length: 2310 mm, grip: 1960 mm",
            ),
        ],
    );
    let rods = work(&overloading, RODS, Task::Loosen);
    assert_eq!(names(&rods), ["R1"]);
    let Set::Missing(lack) = setting(&rods, "R1").1.set else {
        panic!("nobody knows the angle");
    };
    assert_eq!(lack.who, Who::Engineer);
    assert!(rods.step("no_plan").is_some() && rods.step("unload").is_some());
    assert!(
        rods.step("rounds_made")
            .is_some_and(|step| step.accept.is_empty())
    );
    // Then no driver runs anything out, and nothing of it is met.
    assert!(rods.step("loosen_set").is_none() && !rods.has(HazardKind::Driver));
}

/// Only when every one has moved by hand does the driver run them out, at what it reverses with.
#[test]
fn the_driver_runs_out_what_has_moved_by_hand() {
    let rods = work(&larger_wrench(), RODS, Task::Loosen);
    let at = |id: &str| rods.steps.iter().position(|step| step.id == id);
    assert!(at("driver_aside") < at("driver_after") && at("driver_after") < at("loosen_set"));
    assert_eq!(
        printed(value(step(&rods, "loosen_set"), "most")),
        "110\u{a0}N·m"
    );
    assert!(rods.has(HazardKind::Driver) && rods.has(HazardKind::LastFasteners));
    let text = with(&larger_wrench(), &[("      reverse_torque: 110 N·m\n", "")]);
    assert!(
        work(&text, RODS, Task::Loosen)
            .step("loosen_set_lowest")
            .is_some()
    );
    let hand = work(&by_hand(), RODS, Task::Loosen);
    for id in [
        "driver_aside",
        "driver_after",
        "loosen_set",
        "stall_loosening",
    ] {
        assert!(hand.step(id).is_none(), "{id}");
    }
}

#[test]
fn what_came_off_is_looked_at() {
    let rods = work(&by_hand(), RODS, Task::Loosen);
    for id in [
        "run_out",
        "tips_flat",
        "washer_flat",
        "threads_clean",
        "parts_bagged",
    ] {
        assert!(rods.step(id).is_some(), "{id}");
    }
    let found = readings(&rods);
    for id in [
        "rounds_made",
        "largest_torque",
        "seized_found",
        "set_number",
        "washers_out",
        "studs_out",
    ] {
        assert!(found.contains(&id), "{id}: {found:?}");
    }
    assert!(rods.picture.has_lines && rods.stop.is_none());
    // Nothing of a stuck nut: a jackbolt is never tried by angle.
    assert!(rods.step("stuck_nudge").is_none());
}

/// Long anchors on short jackbolts are let go in more rounds than are asked of a crew, 22 (ours).
#[test]
fn a_plan_of_too_many_rounds_is_not_printed() {
    let anchors = work(&long_anchors(), super::ANCHORS, Task::Loosen);
    assert_eq!(names(&anchors), ["R1"]);
    assert!(anchors.step("too_many_rounds").is_some() && anchors.step("unload").is_none());
}
