//! The calculation note of studs with jackbolts: its pages are sound, what is predicted is there and says that it is,
//! and the ratio behind all of it can be repeated from the printed stiffnesses.
//!
//! Statics of springs side by side, worked out here anew: the other jackbolts, each of compliance δ_j, against stud and
//! joint of compliance δ_K, make R = (n − 1) δ_K / δ_j.

#![allow(clippy::panic, reason = "a test that cannot go on must stop")]
#![allow(
    clippy::disallowed_methods,
    reason = "the last digit of a machine does not matter to a test of printed digits"
)]

mod built;
mod reading;

use std::collections::BTreeMap;

use built::{all_text, collisions, example, lay_out, outside, show, with_job};
use reading::{leading_number, number, steps, text, tolerance, unit, value};
use studbook::document::build::note;
use studbook::document::desk::{Part, Table};
use studbook::document::note::{Input, Note};

const JOB: &str = "tie-rods.yaml";

/// The example, with the outer diameter of what is clamped where it does not give it, and with wrenches that are strong
/// enough to let go what they tightened.
fn job() -> String {
    let mut text = example(JOB);
    for (tensioner, outer) in [("JT-125", "160 mm"), ("JT-80", "112 mm")] {
        let key = format!("tensioner: {tensioner},");
        let is_given = text
            .lines()
            .any(|line| line.contains(&key) && line.contains("bearing_outer"));
        if !is_given {
            text = text.replace(&key, &format!("bearing_outer: {outer}, {key}"));
        }
    }
    text.replace("range: [110 N·m, 600 N·m]", "range: [110 N·m, 900 N·m]")
        .replace("range: [60 N·m, 320 N·m]", "range: [60 N·m, 450 N·m]")
}

fn notes(text: &str) -> Vec<Note> {
    with_job(JOB, text, |context| {
        let groups = context.plan.groups.iter().enumerate();
        groups
            .filter_map(|(index, group)| note(context, group, format!("note {index}")))
            .map(|made| made.content)
            .collect()
    })
}

fn table<'a>(note: &'a Note, title: &str) -> &'a Table {
    note.tables
        .iter()
        .find(|table| table.head.title == title)
        .unwrap_or_else(|| panic!("{}: no table {title}", note.title))
}

/// The printed result of a step in SI, with half of its last digit.
fn printed(note: &Note, name: &str) -> (f64, f64) {
    let step = steps(note)
        .into_iter()
        .find(|step| step.name == name)
        .unwrap_or_else(|| panic!("{}: no step {name}", note.title));
    let unit = if step.unit.is_empty() {
        1.0
    } else {
        unit(&step.unit)
    };
    (number(&step.result) * unit, tolerance(&step.result) * unit)
}

fn input<'a>(note: &'a Note, meaning: &str) -> &'a Input {
    note.inputs
        .groups
        .iter()
        .flatten()
        .find(|input| input.meaning.contains(meaning))
        .unwrap_or_else(|| panic!("{}: no input {meaning}", note.title))
}

#[test]
fn pages_are_sound() {
    for (index, note) in notes(&job()).iter().enumerate() {
        let pages = lay_out(Part::Note(Box::new(note.clone())), BTreeMap::new());
        show(&pages, &format!("jackbolt-note-{index}.pdf"));
        assert_eq!(outside(&pages), Vec::<String>::new(), "{}", note.title);
        assert_eq!(collisions(&pages), Vec::<String>::new(), "{}", note.title);
        // Twice the inputs and steps of other notes, which have four pages at most.
        assert!(
            pages.page_count() <= 6,
            "{}: {} pages",
            note.title,
            pages.page_count()
        );
        for page in 1..=pages.page_count() {
            let least = pages.smallest_text(page).expect("there is type");
            assert!(least >= 6.0 - 0.01, "{}: {least} pt", note.title);
        }
        let text = all_text(&pages).replace('\u{a0}', " ");
        for part in [
            "predicted, not measured",
            "Stud load and turn, round by round",
            "What the mean turn of the last round says",
            "What is predicted",
            "Rounds",
            "Release rounds",
            "jackbolt while turned, 90 % of yield",
            "pressure under the tips",
            "travel of a jackbolt",
            "clamped lengths of 1 to 30 d",
            "beyond 20 d it is outside the checked range",
            "no jackbolt turns more than 20 deg leaves about",
        ] {
            assert!(text.contains(part), "{}: `{part}` is not there", note.title);
        }
        assert!(!text.contains("common practice and not predicted"));
    }
}

/// R from the printed count and compliances, and the same number in the table of predictions.
#[test]
fn the_ratio_follows_from_the_printed_stiffnesses() {
    for note in notes(&job()) {
        let count = number(&input(&note, "number of jackbolts").value);
        let (own, own_slack) = printed(&note, "compliance of one jackbolt");
        let (joint, joint_slack) = printed(&note, "compliance of stud, body and parts");
        let ours = (count - 1.0) * joint / own;
        let slack = ours * (own_slack / own + joint_slack / joint);
        let row = &table(&note, "What is predicted").rows[0];
        let likely = leading_number(&row[2]);
        let last = tolerance(text(&row[2]));
        assert!(
            (ours - likely).abs() <= slack + last,
            "{}: {ours} against {likely}",
            note.title
        );
        let (low, high) = (leading_number(&row[1]), leading_number(&row[3]));
        assert!(low <= likely && likely <= high, "{low} {likely} {high}");
    }
}

/// The numbers of a line, as somebody would type them into a pocket calculator.
fn numbers(line: &str) -> Vec<f64> {
    line.split(|sign: char| !sign.is_ascii_digit() && sign != '.')
        .filter(|part| part.starts_with(|sign: char| sign.is_ascii_digit()))
        .map(|part| part.parse().expect("digits"))
        .collect()
}

/// No line of the hand check waits for a value, and the load of one jackbolt is that of the stud by their
/// number; its torque follows from the printed line (ISO 16047:2005, 7, a flat tip under it).
#[test]
fn the_hand_check_is_of_jackbolts() {
    for note in notes(&job()) {
        let lines = &note.hand_check.lines;
        assert_eq!(lines.len(), 5);
        assert!(lines.iter().all(|line| !line.contains('?')), "{lines:?}");
        let [stud, count, each] = numbers(&lines[1])[..] else {
            panic!("{}", lines[1]);
        };
        assert!((stud / count - each).abs() <= 0.0011 * each, "{}", lines[1]);
        let [
            each,
            pitch,
            turn,
            flank,
            middle,
            thread,
            tip,
            face,
            three,
            torque,
            set,
        ] = numbers(&lines[2])[..]
        else {
            panic!("{}", lines[2]);
        };
        let arm = pitch / turn + flank * middle * thread + tip * face / three;
        assert!((each * arm - torque).abs() <= 0.0025 * torque, "{arm}");
        assert!((set - torque).abs() <= 5.0, "{}", lines[2]);
    }
}

/// The line about hands alone says what a job without the driver has in its table of hours, and stands only where
/// there is a driver. Source: definition; the same studs worked out twice.
#[test]
fn hours_by_hand_alone_are_those_of_the_job_without_a_driver() {
    let driven = notes(&built::tensioners::tie_rods_with_a_larger_wrench());
    let handed = notes(&built::tensioners::by_hand_alone());
    assert_eq!(driven.len(), handed.len());
    for (driven, handed) in driven.iter().zip(&handed) {
        let hours = table(handed, "Hours");
        let of_driver = |line: &&String| line.starts_with("By hand alone");
        assert_eq!(hours.notes.iter().find(of_driver), None);
        let typical = |name: &str| {
            let row = hours.rows.iter().find(|row| text(&row[0]) == name);
            leading_number(&row.expect("there are sums")[3])
        };
        let line = table(driven, "Hours").notes.iter().find(of_driver);
        let line = line.expect("there is a driver");
        assert!(line.starts_with("By hand alone, typical: ") && line.contains("the driver "));
        let printed = numbers(line);
        for (ours, name) in printed.iter().zip(["by the clock", "of the whole crew"]) {
            assert!((ours - typical(name)).abs() < 1e-9, "{line}: {name}");
        }
        let pages = lay_out(Part::Note(Box::new(driven.clone())), BTreeMap::new());
        assert!(all_text(&pages).contains("By hand alone, typical:"));
    }
}

/// Lines of the job stand in the table of inputs without their file, which the head names once.
#[test]
fn the_file_of_the_inputs_is_named_once() {
    for note in notes(&job()) {
        assert!(note.inputs.head.note.contains(JOB));
        let origins: Vec<&str> = note
            .inputs
            .groups
            .iter()
            .flatten()
            .map(|input| input.origin.as_str())
            .collect();
        assert!(origins.iter().all(|origin| !origin.contains(JOB)));
        assert!(
            origins
                .iter()
                .any(|origin| origin.starts_with("pack, line "))
        );
    }
}

/// More turn means more missing; the table begins and ends where a crew reads.
#[test]
fn the_missing_load_rises_with_the_turn() {
    for note in notes(&job()) {
        let lookup = note.lookup.expect("there is a table");
        let pairs: Vec<[f64; 2]> = lookup
            .entries
            .iter()
            .map(|[turn, missing]| [number(turn), number(missing)])
            .collect();
        assert_eq!(pairs.len(), 10);
        assert!(
            pairs
                .windows(2)
                .all(|two| two[0][0] < two[1][0] && two[0][1] <= two[1][1])
        );
        assert!(
            pairs
                .iter()
                .all(|[_, missing]| (1.0..=100.0).contains(missing))
        );
    }
}

/// Every round leaves less than the one before; at the end nothing is left, or the note says that rounds will not do.
#[test]
fn a_release_ends_with_nothing_left_or_says_so() {
    for note in notes(&job()) {
        let release = table(&note, "Release rounds");
        let left: Vec<f64> = release
            .rows
            .iter()
            .map(|row| leading_number(&row[3]))
            .collect();
        assert!(left.windows(2).all(|two| two[1] < two[0]), "{left:?}");
        let ends = left.last() == Some(&0.0);
        let says = release.notes[0].contains("let all jackbolts of a stud go at once instead");
        assert_ne!(ends, says, "{}: {left:?}", note.title);
    }
}

/// The printed torque of a round over the printed share is the full torque, that of the last round.
#[test]
fn rounds_set_their_share_of_the_full_torque() {
    for note in notes(&job()) {
        let rows = &table(&note, "Rounds").rows;
        let full = leading_number(&rows.last().expect("there are rounds")[2]);
        for row in rows {
            let share = leading_number(&row[1]) / 100.0;
            let off = (share * full - leading_number(&row[2])).abs();
            assert!(off <= 0.0006 * full + 0.05, "{}: {off}", note.title);
        }
    }
}

/// The last point of the loads is the end of the plan: at least the wanted 95 % of the example, likely or better.
#[test]
fn the_chart_ends_at_the_wanted_load() {
    for note in notes(&job()) {
        let plan = note.plan.expect("there is a chart");
        let last = plan.panels[0].points.last().expect("there are steps");
        assert!(number(&last.text) >= 95.0, "{}", last.text);
        assert_eq!(plan.panels[1].lines.len(), 2);
    }
}

/// Other methods have none of it.
#[test]
fn other_methods_predict_nothing() {
    with_job("smallest.yaml", &example("smallest.yaml"), |context| {
        let made = note(context, &context.plan.groups[0], "note".into()).expect("a note");
        assert!(made.content.plan.is_none() && made.content.lookup.is_none());
        assert!(steps(&made.content).iter().all(|step| {
            step.numbers
                .as_ref()
                .is_none_or(|line| value(line).is_finite())
        }));
    });
}
