//! The method statement: nothing of the works is lost in it, what only people know comes from the job or is a box with
//! who fills it, and its pages can be read.
//!
//! What is asked comes from the specification of this program and from the example jobs as they are written.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::disallowed_methods,
    unreachable_pub,
    reason = "a test stops at the first thing that is not as it should be, and runs the program in a folder"
)]

mod built;
mod support;

use built::{all_text, collisions, example, lay_out_data, outside, show, text_of, with_job};
use studbook::document::build::Context;
use studbook::document::desk::{Cell, Table};
use studbook::document::pack::{Block, Section};
use studbook::document::statement::{Cover, Emergency, Part, Risks, Statement, statement};
use studbook::document::voice::Voice;
use studbook::job;
use studbook::methods::{self, Case};
use studbook::report::Sources;
use studbook::resolve;
use studbook::typeset::Typeset;
use studbook::work::{HazardKind, Kind, Task, Work};
use support::Bench;

const JOBS: [&str; 4] = [
    "effluent-cooler.yaml",
    "inch-units.yaml",
    "tie-rods.yaml",
    "smallest.yaml",
];

fn of(name: &str) -> Statement {
    with_job(name, &example(name), statement)
}

fn laid_out(statement: &Statement) -> Typeset {
    lay_out_data("statement.typ", serde_json::to_vec(statement).unwrap())
}

fn cover(statement: &Statement) -> &Cover {
    let found = statement.parts.iter().find_map(|part| match part {
        Part::Cover(cover) => Some(cover),
        _ => None,
    });
    found.unwrap()
}

fn risks(statement: &Statement) -> &Risks {
    let found = statement.parts.iter().find_map(|part| match part {
        Part::Risks(risks) => Some(risks),
        _ => None,
    });
    found.unwrap()
}

fn emergency(statement: &Statement) -> &Emergency {
    let found = statement.parts.iter().find_map(|part| match part {
        Part::Emergency(emergency) => Some(emergency),
        _ => None,
    });
    found.unwrap()
}

fn section<'a>(statement: &'a Statement, label: &str) -> &'a Section {
    let sections = statement.parts.iter().filter_map(|part| match part {
        Part::Sections(pages) => Some(&pages.sections),
        _ => None,
    });
    let mut all = sections.flatten();
    all.find(|section| section.label == label).unwrap()
}

fn rows(section: &Section) -> Vec<Vec<String>> {
    let tables = section.blocks.iter().filter_map(|block| match block {
        Block::Table(table) => Some(table),
        _ => None,
    });
    tables.flat_map(texts).collect()
}

/// Rows as texts, lines of a cell behind one another.
fn texts(table: &Table) -> Vec<Vec<String>> {
    let cell = |cell: &Cell| match cell {
        Cell::Text(text) | Cell::Strong(text) | Cell::Box(text) => text.clone(),
        Cell::Two(lines) => lines.join(" | "),
        Cell::Page(_) => String::new(),
    };
    table
        .rows
        .iter()
        .map(|row| row.iter().map(cell).collect())
        .collect()
}

/// The works on each joint that a pack has cards for.
fn works(context: &Context<'_>) -> Vec<Work> {
    let joints = context.joints.iter().enumerate();
    let each = joints.flat_map(|(index, joint)| {
        let computed = &context.plan.of(index).unwrap().computed;
        [Task::Loosen, Task::Tighten].map(|task| methods::work(&Case { joint, computed }, task))
    });
    each.flatten().collect()
}

#[test]
fn every_hazard_of_every_joint_is_a_row_of_the_risks() {
    for name in JOBS {
        with_job(name, &example(name), |context| {
            let statement = statement(context);
            let rows = texts(&risks(&statement).table);
            let voice = Voice::new(context);
            for hazard in works(context).iter().flat_map(|work| &work.hazards) {
                let called = voice.hazard(hazard, "name").unwrap();
                let row = rows
                    .iter()
                    .find(|row| row[0].starts_with(&format!("{called} | ")))
                    .unwrap_or_else(|| panic!("{name}: no row for {:?}", hazard.kind));
                assert!(!row[1].is_empty() && !row[2].is_empty(), "{row:?}");
            }
        });
    }
}

#[test]
fn every_kind_of_hazard_has_a_name_and_says_whom_it_hurts() {
    with_job("smallest.yaml", &example("smallest.yaml"), |context| {
        for kind in HazardKind::ALL {
            for field in ["name", "who", "risk", "line"] {
                let words = ["work", "hazard", kind.key(), field];
                let found = context.wording.find(&words);
                assert!(found.is_some(), "{kind:?} has no {field}");
            }
        }
    });
}

/// The words of a decision up to the first value in them.
fn beginning(words: &str) -> &str {
    words.split("{{").next().unwrap().trim()
}

#[test]
fn every_decision_of_every_joint_stops_the_work() {
    for name in JOBS {
        with_job(name, &example(name), |context| {
            let statement = statement(context);
            let rows = texts(&emergency(&statement).stops);
            for work in works(context) {
                let decisions = work.steps.iter().filter(|it| it.kind == Kind::Decision);
                for step in decisions {
                    let groups = [work.method, "common"].into_iter();
                    let found = groups.flat_map(|group| {
                        ["when", "card"].map(|field| {
                            context
                                .wording
                                .find(&["work", "step", group, step.id, field])
                        })
                    });
                    let words = beginning(found.flatten().next().unwrap());
                    let is_there = rows.iter().any(|row| row[1].starts_with(words));
                    assert!(is_there, "{name}: {}: {words}", step.id);
                }
            }
        });
    }
}

#[test]
fn every_point_of_every_joint_is_in_the_steps_and_in_the_plan_of_inspection() {
    for name in JOBS {
        with_job(name, &example(name), |context| {
            let statement = statement(context);
            let steps = rows(section(&statement, "steps"));
            let plan = rows(section(&statement, "itp"));
            for work in works(context) {
                for point in work.points().filter_map(|(_, point)| point.name.clone()) {
                    let in_steps = steps
                        .iter()
                        .any(|row| row[4].split(' ').any(|it| it == point));
                    assert!(in_steps, "{name}: {point} in no step");
                    assert!(plan.iter().any(|row| row[1] == point), "{name}: {point}");
                }
            }
        });
    }
}

#[test]
fn a_limit_that_differs_from_joint_to_joint_stands_with_both_ends() {
    // The job: channel flanges at 92 bar, manways at 18 bar; both are tested at their own pressure.
    let steps = rows(section(&of("effluent-cooler.yaml"), "steps"));
    let leak = steps.iter().find(|row| row[4] == "W3").unwrap();
    assert_eq!(leak[2].replace('\u{a0}', " "), "no leak at 18 to 92 bar");
}

#[test]
fn how_grave_a_risk_is_comes_from_the_job_or_is_an_empty_box() {
    let given = of("effluent-cooler.yaml");
    let row = |name: &str| {
        let rows = &risks(&given).table.rows;
        let is_it = |row: &&Vec<Cell>| matches!(&row[0], Cell::Two([own, _]) if own == name);
        rows.iter().find(is_it).unwrap().clone()
    };
    let pressure = row("Pressure behind the joint");
    assert!(matches!(&pressure[5], Cell::Strong(level) if level == "4 × 5"));
    assert!(matches!(&pressure[6], Cell::Strong(level) if level == "1 × 5"));
    assert!(matches!(&pressure[4], Cell::Text(owner) if owner == "A. Quill"));
    let noise = row("Noise");
    assert!(matches!(&noise[5], Cell::Box(_)) && matches!(&noise[6], Cell::Box(_)));
    for row in &risks(&of("smallest.yaml")).table.rows {
        assert!(matches!((&row[5], &row[6]), (Cell::Box(_), Cell::Box(_))));
    }
}

#[test]
fn what_nobody_said_is_a_box_with_who_fills_it() {
    let bare = of("smallest.yaml");
    let duties = texts(&cover(&bare).duties);
    let (last, named) = duties.split_last().unwrap();
    assert!(
        named.iter().all(|row| row[1] == "given by planner"),
        "{named:?}"
    );
    assert_eq!(last[1], "everybody");
    for called in &emergency(&bare).called {
        assert_eq!(called.value, None);
        assert_eq!(called.who, "given by area operator");
    }
    let told = of("effluent-cooler.yaml");
    let values: Vec<_> = emergency(&told)
        .called
        .iter()
        .map(|it| it.value.as_deref())
        .collect();
    assert_eq!(values[0], Some("channel 1, 5555"));
    assert!(values.iter().all(Option::is_some), "{values:?}");
}

#[test]
fn the_law_is_the_one_that_the_job_names() {
    let under = |regime: &str| {
        let text = example("effluent-cooler.yaml")
            .replace("regime: site\n", &format!("regime: {regime}\n"));
        let statement = with_job("job.yaml", &text, statement);
        let cover = cover(&statement);
        (cover.document_type.clone(), cover.law.texts.join(" "))
    };
    assert!(
        under("GB")
            .1
            .contains("Health and Safety at Work etc. Act 1974")
    );
    assert!(under("US").1.contains("1910.147"));
    assert!(under("EU").1.contains("89/391/EEC"));
    assert_eq!(under("US").0, "Work method and job hazard analysis");
    assert_eq!(under("site").0, "Method statement");
}

#[test]
fn a_risk_of_no_hazard_is_said() {
    let text = example("effluent-cooler.yaml").replace("    pressure: {", "    presure: {");
    let mut sources = Sources::default();
    let (job, _) = job::open("job.yaml", text.as_bytes(), &mut sources);
    let (_, findings) = resolve::resolve(&job.unwrap());
    let values: Vec<String> = findings.iter().map(|it| format!("{it:?}")).collect();
    assert_eq!(findings.len(), 1, "{values:?}");
    assert!(
        values[0].contains("unknown_word") && values[0].contains("presure"),
        "{values:?}"
    );
}

#[test]
fn the_pages_can_be_read() {
    for name in JOBS {
        let pages = laid_out(&of(name));
        show(&pages, &format!("statement-{name}.pdf"));
        assert_eq!(collisions(&pages), Vec::<String>::new(), "{name}");
        assert_eq!(outside(&pages), Vec::<String>::new(), "{name}");
        // The cover is one page, the risks begin the second.
        assert!(
            text_of(&pages, 1).contains("Who answers for what"),
            "{name}"
        );
        assert!(text_of(&pages, 2).contains("What can hurt"), "{name}");
        for page in 1..=pages.page_count() {
            assert!(
                pages.smallest_text(page).unwrap() > 7.9,
                "{name} page {page}"
            );
        }
    }
}

#[test]
fn the_record_of_the_briefing_has_room_for_twenty_four() {
    let pages = laid_out(&of("effluent-cooler.yaml"));
    let text = all_text(&pages);
    assert!(
        text.contains("I have heard this in a language that I understand"),
        "{text}"
    );
    assert_eq!(pages.boxes("name").len(), 24);
}

#[test]
fn the_number_is_its_own_and_the_same_job_gives_the_same_bytes() {
    let [one, other] = [(); 2].map(|()| of("effluent-cooler.yaml"));
    assert_eq!(cover(&one).title_block.number.value, "HL-31-MS-004");
    assert_eq!(one.furniture.running.right, "HL-31-MS-004 revision B");
    let bytes = [one, other].map(|it| laid_out(&it).write_pdf().unwrap());
    assert!(bytes[0] == bytes[1]);
}

#[test]
fn each_document_is_issued_by_its_name() {
    let bench = Bench::new();
    bench.example("effluent-cooler.yaml");
    let only = ["--only", "method statement", "--only", "talk sheet"];
    let run = bench.run(&[&["issue", "effluent-cooler.yaml"], &only[..]].concat());
    assert_eq!(run.code, Some(0), "{}", run.err);
    for part in ["statement", "talk"] {
        assert!(
            run.out.contains(&format!("HL-31-WP-007_B_{part}.pdf")),
            "{}",
            run.out
        );
    }
    let run = bench.run(&["issue", "effluent-cooler.yaml", "--only", "statements"]);
    assert_eq!(run.code, Some(2));
    assert!(run.err.contains("method statement"), "{}", run.err);
}
