//! The work pack at its edges: the longest texts, many joints, nothing known, a new revision.
//!
//! What is asked comes from the specification of this program.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test that cannot go on must stop"
)]

mod built;

use std::collections::BTreeMap;

use built::packs::{pack, pack_of, pages_of};
use built::{
    all_text, collisions, example, lay_out_document, on_pages, outside, text_of, with_job,
};
use studbook::document::build::{CardPages, CardVolume, CardVolumes, missing_characters};
use studbook::document::desk::{Document, Part};
use studbook::job;
use studbook::report::Sources;
use studbook::typeset;

const MAIN: &str = "effluent-cooler.yaml";

fn has_all(text: &str, fields: &[&str]) {
    for field in fields {
        assert!(text.contains(field), "`{field}` is missing in: {text}");
    }
}

/// The content codes of cover, sections and register.
fn codes(document: &Document) -> Vec<String> {
    let codes = document.parts.iter().filter_map(|part| match part {
        Part::Cover(cover) => Some(&cover.furniture),
        Part::Sections(sections) => Some(&sections.furniture),
        Part::Register(sheet) => Some(&sheet.furniture),
        Part::Deviations(sheets) => Some(&sheets.furniture),
        _ => None,
    });
    codes.map(|furniture| furniture.code.clone()).collect()
}

#[test]
fn a_new_revision_keeps_the_code_of_what_did_not_change() {
    let text = example(MAIN);
    let later = text.replace(
        "  units: { system: metric",
        "    - { revision: C, date: 2027-03-15, text: no change, prepared: R. Olsen, checked: M. Tarrant, approved: K. Brandvik }\n  units: { system: metric",
    );
    let changed = text.replace(
        "length: 445 mm, grip: 330 mm",
        "length: 440 mm, grip: 325 mm",
    );
    assert!(later != text && changed != text);
    let of = |text: &str| codes(&pack_of(MAIN, text));
    let (first, second, third) = (of(&text), of(&later), of(&changed));
    assert_eq!(first, second);
    // Cover, desk, inspection plan, procedures, register, deviations.
    assert_eq!(first.len(), 6);
    assert_ne!(first[4], third[4], "another stud is another register");
    assert_eq!(first[5], third[5], "a blank sheet stays the same");
}

#[test]
fn replaced_limits_stand_with_their_reason() {
    let text = example(MAIN).replace(
        "families:\n",
        "limits: { L01: { value: 85 %, reason: owner's rule HL-BS-014 clause 7 } }\nfamilies:\n",
    );
    let pages = lay_out_document(&pack_of(MAIN, &text), BTreeMap::new());
    let text = all_text(&pages);
    has_all(&text, &["85 %", "90 %", "owner's rule HL-BS-014 clause 7"]);
}

/// The times of notice are a default that names its key (common practice, no source), until the job
/// gives its own.
#[test]
fn notice_is_a_default_until_the_job_gives_it() {
    let text = example(MAIN);
    let ours = all_text(&lay_out_document(&pack_of(MAIN, &text), BTreeMap::new()));
    has_all(
        &ours,
        &["24 h / 2 h", "pack.notice", "24 / 2", "Notice 24 h"],
    );
    let own = text.replace(
        "  units: { system: metric",
        "  notice: { given: 3 d, confirmed: 4.5 h }\n  units: { system: metric",
    );
    let theirs = all_text(&lay_out_document(&pack_of(MAIN, &own), BTreeMap::new()));
    has_all(
        &theirs,
        &["72 / 4.5", "Notice 72 h, confirmed 4.5 h before."],
    );
    assert!(!theirs.contains("pack.notice") && !theirs.contains("24 / 2"));
}

/// A tensioner has procedures of its own (common practice, no source), down to the hand round that follows a lost
/// driver; nuts that nobody turns are not spoken of. The plan names the driver as what weighs most.
#[test]
fn tensioners_have_procedures_of_their_own() {
    let text = example("tie-rods.yaml");
    let document = pack_of("tie-rods.yaml", &text);
    let pages = all_text(&lay_out_document(&document, BTreeMap::new())).replace('\u{a0}', " ");
    has_all(
        &pages,
        &[
            "Multi-jackbolt tensioner, tightening: Preparing",
            "D1: all spindles at once",
            "full rounds or more; no jackbolt 20 deg or more",
            "The driver is lost",
            "Lost in D1, 10 % stands",
            "Lost in D2",
            "A jackbolt holds at",
            "Multi-jackbolt tensioner, loosening: Loosening",
            "Heaviest part to lift: MD-4, 46 kg",
            "Tensioners with the driver and by hand",
            // By hand with the printed 13.28, 246.5 deg, 80 % and a peak of 115 %: 13.28 x 0.2 / 0.15 = 17.7, so 18
            // rounds; 0.2 x 246.5 / 18 = 2.74 deg, less than a paint line shows.
            "18 rounds of 2.7",
            // By hand: 4 rods x 2 positions x 4 turns at 3 min are 96 min; 1,100 l/min x 96 min.
            "105.6 m³ if it never stops",
        ],
    );
    for row in [
        "Snug all nuts",
        "A nut that does not move",
        "turned nut faces",
    ] {
        assert!(!pages.contains(row), "{row}");
    }
}

/// What stands among the assumptions is what was used: jackbolts have a torque formula and rounds of their own.
#[test]
fn jackbolts_list_no_default_of_nuts() {
    let text = example("tie-rods.yaml");
    let pages = lay_out_document(&pack_of("tie-rods.yaml", &text), BTreeMap::new());
    let begin = pages.pages_of("assumptions")[0];
    let assumed = [begin, begin + 1]
        .map(|page| text_of(&pages, page))
        .join(" ");
    has_all(&assumed, &["studs.part_diameter", "240 mm", "375 mm"]);
    for key in [
        "tighten.formula",
        "tighten.passes",
        "tighten.circular_round",
        "tighten.snug",
    ] {
        assert!(!assumed.contains(key), "{key}");
    }
}

#[test]
fn missing_facts_are_boxes_and_never_numbers() {
    let text = all_text(&pages_of("smallest.yaml"));
    has_all(
        &text,
        &["D-101-CV-01", "12 × M24", "DRAFT", "given by planner"],
    );
    assert!(!text.contains("NaN"), "{text}");
}

fn wide(count: usize) -> String {
    "W".repeat(count)
}

/// Every text of the pack as long as it may be, in the widest letter.
fn longest() -> String {
    let revision = format!(
        "{{ revision: WWWW, date: 2027-02-12, text: {}, prepared: {}, checked: {}, approved: {} }}",
        wide(70),
        wide(32),
        wide(31),
        wide(30)
    );
    let joint = |number: usize| {
        format!(
            "  - {{ tag: {}{number}, equipment: {}{number}, equipment_name: {}, place: {}, studs: {{ thread: M24, count: 12, grade: A193 B7 }} }}\n",
            wide(31),
            wide(23),
            wide(40),
            wide(60)
        )
    };
    let joints: String = (0..9).map(joint).collect();
    format!(
        "studbook: 1\npack:\n  number: {}\n  title: {}\n  subtitle: {}\n  client: {}\n  owner: {}\n  department: {}\n  status: for construction\n  revisions: [{revision}, {revision}, {revision}, {revision}]\n  distribution: [{}, {}]\njoints:\n{joints}",
        wide(24),
        wide(60),
        wide(90),
        wide(40),
        wide(40),
        wide(30),
        wide(60),
        wide(60)
    )
}

#[test]
fn the_longest_texts_leave_the_cover_one_page() {
    let document = with_job("job.yaml", &longest(), |context| {
        pack(context, CardPages::Here, Vec::new())
    });
    let pages = lay_out_document(&document, BTreeMap::new());
    built::show(&pages, "longest.pdf");
    assert_eq!(pages.pages_of("scope"), [2]);
    // The texts of cards have budgets and rules of their own.
    let (cards, notes) = (pages.pages_of("joint-1")[0], pages.pages_of("note-1")[0]);
    let beyond = on_pages(outside(&pages), |page| page < cards || page >= notes);
    assert_eq!(beyond, [""; 0]);
    // What is too long for the running line is cut by its box, so it is not seen.
    let met = on_pages(collisions(&pages), |page| page == 1);
    let seen = |met: &&String| !met.contains("work pack") && !met.contains("revision WWWW");
    assert_eq!(met.iter().filter(seen).collect::<Vec<_>>(), [""; 0]);
}

/// Sixty joints that differ in their target.
fn many() -> String {
    let joint = |number: usize| {
        format!(
            "  - {{ tag: V-1-J{number}, equipment: V-1, studs: {{ thread: M24, count: 12, grade: A193 B7 }}, lubricant: p, target: {{ stress: {} MPa }}, tighten: {{ method: hand torque wrench }} }}\n",
            200 + number
        )
    };
    let joints: String = (1..=60).map(joint).collect();
    format!(
        "studbook: 1\npack: {{ title: Many }}\nlubricants: {{ p: {{ thread_friction: 0.13, bearing_friction: 0.13 }} }}\njoints:\n{joints}"
    )
}

/// Above 50 joints the cards stand in volumes; the index names the page that it is given.
#[test]
fn large_packs_refer_to_volumes() {
    let volume = |number: usize, [first, last]: [usize; 2]| CardVolume {
        file: format!("HL_cards_V-1_{number}.pdf"),
        equipment: "V-1".to_owned(),
        tags: [format!("first {first}"), format!("last {last}")],
        joints: last - first + 1,
        pages: 4 * (last - first + 1),
    };
    let given = CardVolumes {
        volumes: vec![volume(1, [1, 50]), volume(2, [51, 60])],
        pages: (0..60).map(|joint| (joint, format!("v{joint}"))).collect(),
    };
    let document = with_job("job.yaml", &many(), |context| {
        pack(context, CardPages::Volumes(&given), Vec::new())
    });
    let cards = |part: &Part| matches!(part, Part::Cards(_));
    assert!(!document.parts.iter().any(cards));
    let pages = lay_out_document(&document, BTreeMap::new());
    let master = ["HL_cards_V-1_1.pdf", "first 51", "last 60", "200", "40"];
    has_all(&text_of(&pages, pages.pages_of("volumes")[0]), &master);
    let index = pages.pages_of("index")[0];
    // A joint without a family is a group of its own, so its tag stands twice in its row.
    let rows = |page: usize| text_of(&pages, page).matches("V-1-J").count() / 2;
    assert_eq!(
        [rows(index), rows(index + 1), rows(index + 2)],
        [25, 25, 10]
    );
    has_all(&text_of(&pages, index), &["v0", "v24"]);
}

#[test]
fn signs_without_a_shape_are_named_at_their_text() {
    let text = example(MAIN).replace("Effluent cooler and separator", "Effluent cooler 漢字");
    let (job, findings) = job::open("job.yaml", text.as_bytes(), &mut Sources::default());
    assert!(findings.is_empty(), "{findings:?}");
    let job = job.unwrap();
    let findings = missing_characters(&job, typeset::missing_characters);
    let [finding] = findings.as_slice() else {
        panic!("{findings:?}")
    };
    assert_eq!(&finding.values["characters"], "U+6F22 (漢), U+5B57 (字)");
    assert_eq!(finding.place.map(|place| place.line), Some(7));
}
