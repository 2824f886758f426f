//! The talk before the work: one page for each crew and day, with everything that can hurt there.
//!
//! What is asked comes from the specification of this program and from the example jobs as they are written.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test that cannot go on must stop"
)]

mod built;

use built::{collisions, example, lay_out_data, outside, show, text_of, with_job};
use studbook::document::talk::{Talks, talks};
use studbook::document::voice::Voice;
use studbook::methods::{self, Case};
use studbook::typeset::Typeset;
use studbook::work::Task;

const JOBS: [&str; 4] = [
    "effluent-cooler.yaml",
    "inch-units.yaml",
    "tie-rods.yaml",
    "smallest.yaml",
];

fn of(name: &str) -> Talks {
    with_job(name, &example(name), talks)
}

fn laid_out(talks: &Talks) -> Typeset {
    lay_out_data("talk.typ", serde_json::to_vec(talks).unwrap())
}

#[test]
fn each_crew_has_a_sheet_for_each_day() {
    // The job: crew 1 on 12 and 13 April, crew 2 on 14 April, two joints each.
    let talks = of("effluent-cooler.yaml");
    let crews: Vec<&str> = talks.sheets.iter().map(|it| it.crew.as_str()).collect();
    assert_eq!(
        crews,
        [
            "crew 1 · 2027-04-12",
            "crew 1 · 2027-04-13",
            "crew 2 · 2027-04-14"
        ]
    );
    assert_eq!(talks.sheets[2].joints, "V-312-MW-01, V-312-MW-02");
    assert_eq!(talks.sheets[0].title, "E-310");
    assert_eq!(of("smallest.yaml").sheets.len(), 1);
}

#[test]
fn everything_that_can_hurt_is_on_the_sheet_the_gravest_first() {
    for name in JOBS {
        with_job(name, &example(name), |context| {
            let talks = talks(context);
            let voice = Voice::new(context);
            for (index, joint) in context.joints.iter().enumerate() {
                let computed = &context.plan.of(index).unwrap().computed;
                let day = joint.work.start.map(|day| day.to_string());
                let is_of = |crew: &str| {
                    joint
                        .work
                        .crew
                        .get()
                        .is_none_or(|it| crew.starts_with(it.as_str()))
                        && day.as_ref().is_none_or(|day| crew.ends_with(day.as_str()))
                };
                let sheet = talks.sheets.iter().find(|it| is_of(&it.crew)).unwrap();
                let told: Vec<&str> = sheet
                    .gravest
                    .iter()
                    .map(|it| it.name.as_str())
                    .chain(sheet.others.iter().map(String::as_str))
                    .collect();
                let tasks = [Task::Loosen, Task::Tighten].into_iter();
                let works = tasks.filter_map(|task| methods::work(&Case { joint, computed }, task));
                for hazard in works.flat_map(|work| work.hazards) {
                    let called = voice.hazard(&hazard, "name").unwrap();
                    assert!(told.contains(&called.as_str()), "{name}: {called}");
                }
            }
        });
    }
    // The job: hydrogen-rich gas at 92 bar with hydrogen sulphide.
    let first = &of("effluent-cooler.yaml").sheets[0];
    assert_eq!(first.gravest[0].name, "Pressure behind the joint");
    assert_eq!(first.gravest[1].name, "Poisonous contents");
    assert!(first.gravest[1].line.starts_with("Hydrogen-rich gas"));
}

#[test]
fn three_numbers_and_who_may_stop() {
    let talks = of("effluent-cooler.yaml");
    for sheet in &talks.sheets {
        assert_eq!(sheet.numbers.len(), 3, "{sheet:?}");
        assert_eq!(
            sheet.after_stop,
            "Start again: R. Olsen only. Help: channel 1, 5555. Meet at M3, north gate."
        );
    }
    let pressures: Vec<&str> = talks
        .sheets
        .iter()
        .map(|it| it.numbers[0].value.as_str())
        .collect();
    assert_eq!(pressures, ["92", "92", "18"]);
    assert_eq!(talks.sheets[0].numbers[0].unit, "bar");
    let bare = &of("smallest.yaml").sheets[0];
    assert!(
        bare.after_stop.contains("______ (area operator says)"),
        "{}",
        bare.after_stop
    );
}

#[test]
fn the_crew_signs_and_has_room_for_those_who_come_later() {
    let heard = &of("effluent-cooler.yaml").sheets[0].heard;
    assert_eq!(
        heard[..2],
        ["R. Olsen".to_owned(), "P. Nakamura".to_owned()]
    );
    assert!(heard.iter().filter(|name| name.is_empty()).count() >= 4);
    assert_eq!(heard.len() % 2, 0);
}

#[test]
fn a_sheet_is_one_page_that_can_be_read() {
    for name in JOBS {
        let talks = of(name);
        let pages = laid_out(&talks);
        show(&pages, &format!("talk-{name}.pdf"));
        assert_eq!(pages.page_count(), talks.sheets.len(), "{name}");
        assert_eq!(collisions(&pages), Vec::<String>::new(), "{name}");
        assert_eq!(outside(&pages), Vec::<String>::new(), "{name}");
        let signs = pages.boxes("sign");
        for (page, sheet) in (1..).zip(&talks.sheets) {
            let text = text_of(&pages, page);
            assert!(text.contains("Anybody may stop this work."), "{text}");
            let own: Vec<_> = signs.iter().filter(|it| it.page == page).collect();
            assert_eq!(own.len(), sheet.heard.len(), "{name}");
            // A gloved hand writes in 7 mm.
            assert!(own.iter().all(|it| it.height > 6.9), "{name}: {own:?}");
        }
    }
}

#[test]
fn the_same_job_gives_the_same_bytes() {
    let [one, other] = [(); 2].map(|()| laid_out(&of("tie-rods.yaml")).write_pdf().unwrap());
    assert!(one == other);
}
