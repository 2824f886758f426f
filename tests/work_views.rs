//! What a work holds is not lost on its way to paper: every point, reading and setting of every joint of the example
//! jobs stands in the procedures, every point in the inspection plan, with the limits of the steps that it covers.
//!
//! What is asked comes from the specification of this program.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test that cannot go on must stop"
)]

mod built;

use built::packs::pack;
use built::{example, with_job};
use studbook::document::build::{CardPages, Context};
use studbook::document::desk::{Cell, Document, Part, Table};
use studbook::document::pack::{Block, Section};
use studbook::document::voice::Voice;
use studbook::methods::{self, Case};
use studbook::work::{Kind, Step, Work};

/// Every example job that holds joints of its own.
const JOBS: [&str; 6] = [
    "effluent-cooler.yaml",
    "inch-units.yaml",
    "tie-rods.yaml",
    "turn-of-nut.yaml",
    "smallest.yaml",
    "broken-rule.yaml",
];

fn works<'a>(context: &'a Context<'_>) -> impl Iterator<Item = (&'a str, Work)> {
    let joints = context.joints.iter().enumerate();
    joints.flat_map(|(index, joint)| {
        let computed = &context.plan.of(index).unwrap().computed;
        let works: Vec<Work> = methods::works(&Case { joint, computed }).collect();
        works.into_iter().map(|work| (joint.tag.as_str(), work))
    })
}

fn section<'a>(document: &'a Document, label: &str) -> &'a Section {
    let sections = document.parts.iter().filter_map(|part| match part {
        Part::Sections(sections) => Some(&sections.sections),
        _ => None,
    });
    let mut all = sections.flatten();
    all.find(|section| section.label == label).unwrap()
}

fn tables(section: &Section) -> impl Iterator<Item = &Table> {
    section.blocks.iter().filter_map(|block| match block {
        Block::Table(table) => Some(table),
        _ => None,
    })
}

/// The first line of a cell.
fn first(cell: &Cell) -> &str {
    match cell {
        Cell::Text(text) | Cell::Strong(text) => text,
        Cell::Two([text, _]) => text,
        Cell::Page(_) | Cell::Box(_) => "",
    }
}

/// The rows of all tables of a section as texts.
fn rows(section: &Section) -> Vec<Vec<&str>> {
    let rows = tables(section).flat_map(|table| &table.rows);
    rows.map(|row| row.iter().map(first).collect()).collect()
}

/// Whether a text is what these words say with some values.
fn is_said(words: &str, text: &str) -> bool {
    let mut rest = text;
    let mut pieces = words
        .split("{{ ")
        .map(|piece| piece.split_once(" }}").map_or(piece, |(_, behind)| behind));
    pieces.all(|piece| match rest.split_once(piece) {
        Some((_, behind)) => {
            rest = behind;
            true
        }
        None => false,
    })
}

/// The words of what is done in a step, with the names of the values in them.
fn words<'a>(voice: &Voice<'a>, work: &Work, step: &Step) -> &'a str {
    let fields = ["do", "card", "sign", "box"].into_iter();
    let found = fields.flat_map(|field| {
        [work.method, "common"].map(|group| voice.find(&["work", "step", group, step.id, field]))
    });
    found
        .flatten()
        .next()
        .unwrap_or_else(|| panic!("{} of {} has no words", step.id, work.method))
}

#[test]
fn every_point_reading_and_setting_stands_in_the_procedures() {
    for name in JOBS {
        with_job(name, &example(name), |context| {
            let document = pack(context, CardPages::Here, Vec::new());
            let rows = rows(section(&document, "procedures"));
            let voice = Voice::new(context);
            for (tag, work) in works(context) {
                // A bare signature stands on the card alone.
                let is_signature =
                    |step: &&Step| matches!(&step.kind, Kind::Point(point) if point.name.is_none());
                for step in work.steps.iter().filter(|step| !is_signature(step)) {
                    let words = words(&voice, &work, step);
                    let stands = match &step.kind {
                        Kind::Point(point) if point.name.is_some() => {
                            let name = point.name.as_deref().unwrap();
                            rows.iter()
                                .any(|row| row[4].split(' ').any(|it| it == name))
                        }
                        Kind::Setting(setting) if setting.further => true,
                        // Many rounds of one kind stand in one row, from the first to the last.
                        _ => rows.iter().any(|row| is_said(words, row[1])),
                    };
                    assert!(
                        stands,
                        "{name}: {tag}, {:?}: {} {:?}",
                        work.task, step.id, step.kind
                    );
                }
            }
        });
    }
}

#[test]
fn every_point_stands_in_the_plan_with_the_limits_of_what_it_covers() {
    /// Rows of a point that are told apart; beyond, spans stand there.
    const TOLD_APART: usize = 6;
    for name in JOBS {
        with_job(name, &example(name), |context| {
            let document = pack(context, CardPages::Here, Vec::new());
            let rows = rows(section(&document, "itp"));
            let voice = Voice::new(context);
            for (tag, work) in works(context) {
                for (_, point) in work.points() {
                    let Some(point_name) = &point.name else {
                        continue;
                    };
                    let of_point: Vec<_> = rows.iter().filter(|row| row[1] == point_name).collect();
                    assert!(!of_point.is_empty(), "{name}: {tag} {point_name}");
                    let accepted = voice.limits(work.accepted(point));
                    assert!(
                        !accepted.is_empty(),
                        "{name}: {tag} {point_name} accepts nothing"
                    );
                    if of_point.len() < TOLD_APART {
                        let stands = of_point.iter().any(|row| row[4] == accepted);
                        assert!(stands, "{name}: {tag} {point_name}: {accepted}");
                    }
                    for (attendance, cell) in point.attendance.iter().zip(6..9) {
                        let letter =
                            voice.label(&["work", "attendance", attendance.key(), "letter"]);
                        assert!(
                            of_point.iter().any(|row| row[cell] == letter),
                            "{name}: {tag} {point_name}"
                        );
                    }
                }
            }
        });
    }
}

/// Words that a view asks for and nobody wrote, or values that nobody gave, are faults that `with_job` finds; words
/// of steps that no method has are left over.
#[test]
#[allow(
    clippy::disallowed_methods,
    reason = "the test reads the sources of the program"
)]
fn no_words_of_steps_are_left_over() {
    let mut named: Vec<String> = Vec::new();
    let mut folders = vec![std::path::PathBuf::from(concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/src/methods"
    ))];
    while let Some(folder) = folders.pop() {
        for entry in std::fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                folders.push(path);
            } else {
                let source = std::fs::read_to_string(path).unwrap();
                named.extend(source.split('"').skip(1).step_by(2).map(str::to_owned));
            }
        }
    }
    let wording = studbook::wording::Wording::embedded("en").unwrap();
    let of_steps = wording.ids().filter_map(|id| id.strip_prefix("work.step."));
    let left: Vec<&str> = of_steps
        .filter(|id| {
            let step = id
                .split_once('.')
                .and_then(|(_, rest)| rest.rsplit_once('.'));
            !step.is_some_and(|(step, _)| named.iter().any(|it| it == step))
        })
        .collect();
    assert_eq!(left, [""; 0]);
}
