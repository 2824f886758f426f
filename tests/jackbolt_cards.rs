//! The cards of joints with multi-jackbolt tensioners, built from the example jobs and laid out.
//!
//! Fields are those of the trade's practice for tensioners of this kind (common practice, no open source): two
//! conditions that end the rounds, largest and mean turn of each round, stud end, release by equal small angles.

#![allow(clippy::panic, reason = "a test that cannot go on must stop")]

mod built;

use std::collections::BTreeMap;
use std::f64::consts::PI;

use built::{collisions, example, lay_out, outside, show, text_of, with_job};
use studbook::calc::ids;
use studbook::calc::labour::Task;
use studbook::document::build::{
    Context, Subject, cautions_for_card, joint_label, loosening_card, tightening_card,
};
use studbook::document::card::{Card, Entry};
use studbook::document::desk::{CardsOfJoint, Part};
use studbook::typeset::Typeset;
use studbook::units::Quantity;

/// The tie rods with the bearing faces that the prediction asks for, as far as the example lacks them.
fn tie_rods() -> String {
    let mut text = example("tie-rods.yaml");
    for (tensioner, face) in [("JT-125", "176 mm"), ("JT-80", "112 mm")] {
        let given = format!("tensioner: {tensioner}, bearing_outer: {face}");
        if !text.contains("bearing_outer") || text.contains("bearing_outer: 176 mm,") {
            text = text.replace(&format!("tensioner: {tensioner}"), &given);
        }
    }
    text
}

/// The same with a wrench that bears the break-out of the highest load: then the release has a plan.
fn tie_rods_with_a_larger_wrench() -> String {
    let text = tie_rods();
    let text = text.replace(
        "range: [110 N·m, 600 N·m]",
        "range: [110 N·m, 1000 N·m]",
    );
    text.replace("loosen: { with: TW-31", "loosen: { with: TW-32")
}

/// The anchors without their driver.
fn by_hand_alone() -> String {
    tie_rods_with_a_larger_wrench()
        .replace("driver: MD-3, driver_level: 80 %, reversal: 60 N·m, ", "")
        .replace("driver: MD-4, driver_level: 80 %, reversal: 110 N·m, ", "")
}

/// Tightening, then loosening.
fn cards_of(context: &Context<'_>, tag: &str) -> [Card; 2] {
    let index = context.joints.iter().position(|joint| joint.tag == tag);
    let index = index.unwrap_or_else(|| panic!("no joint {tag}"));
    let group = context.plan.of(index).expect("a group for each joint");
    let joint = &context.joints[index];
    let subject = Subject {
        joint,
        computed: &group.computed,
        group: &group.name,
    };
    let cautions = |task| cautions_for_card(context, joint, &group.computed, task);
    [
        tightening_card(context, &subject, cautions(Task::Tighten)).content,
        loosening_card(context, &subject, cautions(Task::Loosen)).content,
    ]
}

fn pages_of(name: &str, cards: Vec<Card>) -> Typeset {
    let part = CardsOfJoint {
        bookmark: name.into(),
        label: joint_label(0),
        cards,
    };
    let pages = lay_out(Part::Cards(Box::new(part)), BTreeMap::new());
    show(&pages, &format!("{name}.pdf"));
    pages
}

/// Name of the look, file, text, tag.
fn all() -> Vec<(&'static str, &'static str, String, &'static str)> {
    let larger = tie_rods_with_a_larger_wrench;
    let reference = || example("reference.yaml");
    vec![
        ("rods", "tie-rods.yaml", tie_rods(), "PR-120-TR-01"),
        ("anchors", "tie-rods.yaml", tie_rods(), "PR-120-AN-01"),
        ("rods-larger", "tie-rods.yaml", larger(), "PR-120-TR-01"),
        ("anchors-larger", "tie-rods.yaml", larger(), "PR-120-AN-01"),
        ("rods-by-hand", "tie-rods.yaml", by_hand_alone(), "PR-120-TR-01"),
        ("anchors-by-hand", "tie-rods.yaml", by_hand_alone(), "PR-120-AN-01"),
        ("reference", "reference.yaml", reference(), "E-900-TR-01"),
    ]
}

#[test]
fn every_card_is_two_pages_with_nothing_outside_or_in_one_another() {
    for (name, file, text, tag) in all() {
        with_job(file, &text, |context| {
            let cards = cards_of(context, tag);
            for card in &cards {
                let overruns = card.over_budget();
                for o in &overruns { println!("{name} {} {} {:?} {} {}", card.identity.badge.word, o.field, o.text, o.got, o.limit); }
                println!("{name} {:?}", card.free_height());
            }
            let pages = pages_of(name, cards.to_vec());
            assert_eq!(pages.page_count(), 4, "{name}");
            assert_eq!(collisions(&pages), Vec::<String>::new(), "{name}");
            assert_eq!(outside(&pages), Vec::<String>::new(), "{name}");
        });
    }
}
