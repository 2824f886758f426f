//! What a work holds is not lost on its way to the card: every named point that somebody signs there, every reading,
//! every setting and every tick that must stand, on the cards of all example jobs.
//!
//! What is asked comes from the specification of this program.

#![allow(clippy::panic, reason = "a test that cannot go on must stop")]

mod built;

use built::cards::{blocks, cards_of, overruns_of, rows, ticks};
use built::{example, with_job};
use studbook::document::blocks::{Block, Card};
use studbook::document::build::Context;
use studbook::document::voice::Voice;
use studbook::job::Class;
use studbook::methods::{self, Case};
use studbook::work::{Kind, Phase, Priority, Task, Work};

const JOBS: [&str; 5] = [
    "effluent-cooler.yaml",
    "inch-units.yaml",
    "tie-rods.yaml",
    "smallest.yaml",
    "broken-rule.yaml",
];

/// Cards that need a second sheet: class A with all points, and with stretch or with gaps at eight studs beside the
/// ticks of the making up; rounds of a driver, each with what is expected, or more than nine rounds of release, below
/// their cautions.
const TWO_SHEETS: [&str; 7] = [
    "R-440-HD-01 TIGHTEN",
    "E-310-CH-01 TIGHTEN",
    "E-310-CH-02 TIGHTEN",
    "E-310-CH-03 TIGHTEN",
    "E-310-CH-04 TIGHTEN",
    "PR-120-TR-01",
    "PR-120-AN-01",
];

fn each_card(then: impl Fn(&Context<'_>, usize, Task, &Card)) {
    for job in JOBS {
        with_job(job, &example(job), |context| {
            for index in 0..context.joints.len() {
                let [tighten, loosen] = cards_of(context, index);
                then(context, index, Task::Tighten, &tighten);
                then(context, index, Task::Loosen, &loosen);
            }
        });
    }
}

fn work(context: &Context<'_>, index: usize, task: Task) -> Work {
    let joint = &context.joints[index];
    let group = context.plan.of(index).unwrap_or_else(|| panic!("a group"));
    let computed = &group.computed;
    methods::work(&Case { joint, computed }, task).unwrap_or_else(|| panic!("a work"))
}

#[test]
fn every_example_fits_its_sheet() {
    each_card(|context, index, _, card| {
        let name = format!("{} {}", card.tag, built::cards::word(card));
        let found = overruns_of(context, index);
        assert!(found.is_empty(), "{name}: {found:?}");
        let may = TWO_SHEETS.iter().any(|it| name.starts_with(it));
        assert!(card.sides.len() <= if may { 4 } else { 2 }, "{name}");
    });
}

#[test]
fn nothing_that_must_stand_is_lost() {
    each_card(|context, index, task, card| {
        let work = work(context, index, task);
        let voice = Voice::new(context).brief();
        let class = context.joints[index]
            .mechanics
            .class
            .value()
            .unwrap_or(Class::A);
        let all = serde_json::to_string(&card.sides).unwrap_or_default();
        let (settings, ticks) = (rows(card), ticks(card));
        for step in &work.steps {
            let said = |field: &str| voice.step(&work, step, field).unwrap_or_default();
            match &step.kind {
                Kind::Setting(setting) if !setting.further => {
                    assert!(
                        settings.iter().any(|row| row.name == setting.name),
                        "{}",
                        setting.name
                    );
                }
                // The stub is torn off at the end of the record.
                Kind::Tick if step.priority == Priority::Must => {
                    let is_there = ticks.iter().any(|tick| tick.text == said("card"));
                    assert!(is_there || all.contains(&said("card")), "{}", step.id);
                }
                Kind::Reading(_) if step.priority == Priority::Must => {
                    let words = [said("box"), said("short")];
                    let lower = all.to_lowercase();
                    let is_there =
                        |it: &String| !it.is_empty() && lower.contains(&it.to_lowercase());
                    assert!(words.iter().any(is_there), "{}: {}", card.tag, step.id);
                }
                Kind::Point(point) if step.priority != Priority::PackOnly => {
                    let Some(name) = &point.name else { continue };
                    if point.attendance_of(class).is_signed() {
                        assert!(all.contains(name.as_str()), "{}: {name}", card.tag);
                    }
                }
                _ => {}
            }
        }
    });
}

/// A crew reads nine ticks before the first turn; making up is ticked overleaf and counts as one of them.
#[test]
fn side_one_has_at_most_nine_ticks() {
    each_card(|context, index, task, card| {
        let first = card.sides[0]
            .blocks
            .iter()
            .filter_map(|it| match &it.block {
                Block::Ticks(ticks) => Some(ticks.items.len()),
                _ => None,
            });
        assert!(first.sum::<usize>() <= 9, "{}", card.tag);
        let work = work(context, index, task);
        let made_up = work
            .steps
            .iter()
            .any(|it| it.phase == Phase::MakeUp && it.kind == Kind::Tick);
        let cautions = blocks(card).filter_map(|it| match it {
            Block::Cautions(it) => Some(it.items.len()),
            _ => None,
        });
        assert!(cautions.sum::<usize>() <= 8, "{}", card.tag);
        assert_eq!(made_up, task == Task::Tighten, "{}", card.tag);
    });
}
