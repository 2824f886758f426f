//! The work pack as it is laid out, from the example jobs: mandatory fields, totals, page numbers.
//!
//! What is asked of the pages comes from outside: the fields of a title block from ISO 7200:2004, the
//! order of signal words from ANSI Z535.4, the letters H, W, R and S as they are common in inspection
//! plans (common practice, no source), the rest from the specification of this program.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test that cannot go on must stop"
)]

mod built;

use std::collections::BTreeMap;

use built::packs::{EXAMPLES, is_of_card, pack, pack_of, pages_of};
use built::{
    all_text, collisions, example, lay_out_document, on_pages, outside, show, text_of, with_job,
};
use studbook::calc::Basis;
use studbook::document::build::{CardPages, Context, PhotoOf, register};
use studbook::document::desk::{Document, Part};
use studbook::document::pack::{Block, Section};
use studbook::joint::{Joint, Origin};
use studbook::methods::{self, Case};
use studbook::report::Severity;
use studbook::typeset::{Printed, Typeset};
use studbook::work::{self, HazardKind};

const MAIN: &str = "effluent-cooler.yaml";

/// Fields may ask for the spaces around them.
fn has_all(text: &str, fields: &[&str]) {
    let text = format!(" {text} ");
    for field in fields {
        assert!(text.contains(field), "`{field}` is missing in: {text}");
    }
}

#[test]
fn every_example_makes_sound_pages() {
    for name in EXAMPLES {
        let pages = pages_of(name);
        show(&pages, &name.replace(".yaml", ".pdf"));
        let count = pages.page_count();
        let notes = pages.pages_of("note-1")[0]..pages.pages_of("register")[0];
        for page in 1..=count {
            let text = text_of(&pages, page);
            let card = is_of_card(&pages, page);
            let numbered = text.contains(&format!("page {page} of {count}"));
            assert!(numbered || card, "{name}, page {page}: {text}");
            // Indices of formulas may be 6 pt; they stand on the notes only.
            let least = if notes.contains(&page) { 6.0 } else { 8.0 };
            let smallest = pages.smallest_text(page).unwrap();
            assert!(
                smallest > least - 0.01,
                "{name}, page {page}: {smallest} pt"
            );
        }
        assert_eq!(
            pages.pages_of("scope"),
            [2],
            "{name}: the cover is one page"
        );
        let deviations = pages.pages_of("deviations")[0];
        assert_eq!(count, deviations + 2, "{name}: a deviation sheet is a page");
        assert_eq!(outside(&pages), [""; 0], "{name}");
        let cards = pages.pages_of("joint-1")[0];
        let met = on_pages(collisions(&pages), |page| page < cards);
        assert_eq!(met, [""; 0], "{name}");
    }
}

#[test]
fn the_cover_has_the_fields_of_a_title_block_and_more() {
    let text = text_of(&pages_of(MAIN), 1);
    let title_block = "responsible department|Bolting, unit 31|technical reference|K. Brandvik|document type|\
        title, supplementary title|Effluent cooler and separator|owner|Harrow Lake Works|identification number|\
        HL-31-WP-007|date of issue|2027-03-08|prepared|R. Olsen|checked|M. Tarrant|approved";
    has_all(&text, &title_block.split('|').collect::<Vec<_>>());
    let rest = "Revisions|first issue for comment|E-310|effluent cooler|V-312|Contents|Open findings|Approvals|\
        client stamp|Torque N·m · pressure bar · length mm · load kN|Not a controlled copy|Language en|content ";
    has_all(&text, &rest.split('|').collect::<Vec<_>>());
}

/// The numbers of the cover are those of the last row of the register, and those of the job: four
/// joints of 24 studs and two of 20.
#[test]
fn totals_agree_with_the_register_and_the_job() {
    let pages = pages_of(MAIN);
    let cover = text_of(&pages, 1);
    has_all(&cover, &["6 joints", "136 studs", "2 crews"]);
    let last = text_of(&pages, pages.pages_of("register")[0]);
    has_all(&last, &["6 joints", "136 studs", "96 M48×5", "40 1-8UN"]);
    let hours: f64 = with_job(MAIN, &example(MAIN), |context| {
        let rows = register(context, CardPages::Here).csv_rows();
        let at = rows[0].iter().position(|head| head == "h").unwrap();
        rows[1..]
            .iter()
            .map(|row| row[at].parse::<f64>().unwrap())
            .sum()
    });
    let hours = format!("{hours:.1}");
    let hours = hours.trim_end_matches(".0");
    has_all(&cover, &[&format!("{hours} h labour, typical")]);
    has_all(&last, &[&format!(" {hours} ")]);
}

#[test]
fn the_csv_has_a_row_a_joint_in_the_order_of_equipment_and_tag() {
    let csv = with_job(MAIN, &example(MAIN), |context| {
        String::from_utf8(register(context, CardPages::Here).csv()).unwrap()
    });
    let mut lines = csv.lines();
    has_all(
        lines.next().unwrap(),
        &["tag,equipment,unit,place,", "load kN"],
    );
    let tags: Vec<&str> = lines.map(|line| line.split(',').next().unwrap()).collect();
    let wanted = "E-310-CH-01 E-310-CH-02 E-310-CH-03 E-310-CH-04 V-312-MW-01 V-312-MW-02";
    assert_eq!(tags.join(" "), wanted);
    has_all(
        &csv,
        &["24 × M48×5", "A193 B7 / A194 2H", "HW-07, HW-08", "I-04"],
    );
}

#[test]
fn references_to_pages_are_right() {
    let pages = pages_of(MAIN);
    let cover = text_of(&pages, 1);
    for (title, label) in [
        ("Scope, limits, assumptions, findings", "scope"),
        ("Index, plan, permits, cautions, people", "index"),
        ("Inspection and test plan, procedures", "itp"),
        ("Cards and isolation sheets", "joint-1"),
        ("Calculation notes", "note-1"),
        ("Register, deviation sheets, photos", "register"),
    ] {
        let page = pages.pages_of(label)[0];
        has_all(&cover, &[&format!("{title} {page}")]);
    }
    let index = text_of(&pages, pages.pages_of("index")[0]);
    let register = text_of(&pages, pages.pages_of("register")[0]);
    for joint in 1..=6 {
        let card = pages.pages_of(&format!("joint-{joint}"))[0];
        has_all(&index, &[&format!(" {card} ")]);
        has_all(&register, &[&format!(" {card} ")]);
    }
}

#[test]
fn the_front_holds_what_each_reader_needs() {
    let pages = pages_of(MAIN);
    let cards = pages.pages_of("joint-1")[0];
    let front: Vec<String> = (2..cards).map(|page| text_of(&pages, page)).collect();
    let front = front.join(" ");
    let readers = [
        "from the first nut to the signed card|scaffold and lagging|HL-31-M-2104|V-312 manway|site rules HL-BS-014",
        "tighten.formula|checks.gap_spread|0.25 mm|studs.nut_height|loosen.break_out",
        "crew 1|2027-04-12|line break|A. Quill|onfined space|isolation certificate",
        "HLC-0411|2028-01-31|P. Nakamura|HW-07|7731|C-2291|2027-09-01|905 to 6340 N·m|100 to 500 ft·lb",
        "H, hold|W, witness|R, review|S, surveillance|1.5 mm|24 / 2|no nut turns at",
        "Hydraulic torque wrench, tightening|Hand torque wrench, tightening|Hand torque wrench, loosening",
        // 24 studs by two wrenches at once are 12 letters, 20 by one are 20; I and O are no letters of an order.
        "P1: cross order A to M, 30 % of the target|P1: cross order A to V, 25 % of the target",
    ];
    for fields in readers {
        has_all(&front, &fields.split('|').collect::<Vec<_>>());
    }
}

/// The keys of all defaults in the ledgers, and of some that no ledger holds.
fn default_keys(context: &Context<'_>) -> Vec<&'static str> {
    let of = |origin: Option<&Origin>| match origin {
        Some(Origin::Default { key }) => Some(*key),
        _ => None,
    };
    let ledgers = context
        .plan
        .groups
        .iter()
        .flat_map(|group| group.computed.ledger.entries());
    let inputs = ledgers.filter_map(|entry| match &entry.basis {
        Basis::Input(origin) => of(Some(origin)),
        _ => None,
    });
    let facts = |joint: &Joint| {
        let it = &joint.mechanics;
        [
            of(it.plan.passes.origin()),
            of(it.plan.formula.origin()),
            of(it.class.origin()),
            of(it.checks.holes.origin()),
            of(it.checks.gap_spread.origin()),
            of(it.loosening.opened.origin()),
            of(it.studs.seat.origin()),
        ]
    };
    inputs
        .chain(context.joints.iter().flat_map(facts).flatten())
        .collect()
}

#[test]
fn every_default_is_named_with_its_key() {
    for name in EXAMPLES {
        let keys = with_job(name, &example(name), default_keys);
        let text = all_text(&pages_of(name));
        assert!(!keys.is_empty());
        has_all(&text, &keys);
    }
}

#[test]
fn a_broken_rule_makes_a_draft_that_says_why() {
    let name = "broken-rule.yaml";
    let (errors, told) = with_job(name, &example(name), |context| {
        let errors = context.findings.iter();
        let errors = errors
            .filter(|finding| finding.severity == Severity::Error)
            .count();
        let told = context.findings.iter();
        let told: Vec<(&str, String)> = told
            .map(|it| (it.id, context.wording.tell(it).fix))
            .collect();
        (errors, told)
    });
    assert!(errors > 2);
    let pages = pages_of(name);
    let stop = format!("{errors} errors stand. Not for use on site.");
    has_all(&text_of(&pages, 1), &["DRAFT", &stop]);
    let text = all_text(&pages);
    for (id, fix) in told {
        let start: String = fix.chars().take(12).collect();
        has_all(&text, &[id, &start]);
    }
}

#[test]
fn cautions_follow_contents_hazards_and_method() {
    with_job(MAIN, &example(MAIN), |context| {
        let met = |index: usize, kind: HazardKind| {
            let joint = &context.joints[index];
            let computed = &context.plan.of(index).unwrap().computed;
            let work = methods::work(&Case { joint, computed }, work::Task::Loosen).unwrap();
            work.has(kind)
        };
        for kind in [
            HazardKind::Toxic,
            HazardKind::Flammable,
            HazardKind::Oil,
            HazardKind::Heat,
        ] {
            assert!(met(0, kind), "{kind:?}");
        }
        assert!(!met(0, HazardKind::ConfinedSpace));
        assert!(met(4, HazardKind::ConfinedSpace) && !met(4, HazardKind::Oil));
        for index in 0..context.joints.len() {
            for card in built::cards::cards_of(context, index) {
                let cautions = built::cards::blocks(&card).filter_map(|block| match block {
                    studbook::document::blocks::Block::Cautions(it) => Some(&it.items),
                    _ => None,
                });
                let words = ["DANGER", "WARNING", "CAUTION", "NOTICE"];
                let grave = |word: &str| words.iter().position(|it| *it == word);
                for items in cautions {
                    assert!((1..=4).contains(&items.len()));
                    assert!(items.is_sorted_by_key(|it| grave(&it.word)));
                }
            }
        }
    });
}

/// A warning stands before the step that it belongs to (guides for writing maintenance procedures, from
/// memory; rule P19): on every card the cautions end above the first pass or round.
#[test]
fn cautions_of_a_card_stand_before_its_steps() {
    let pages = pages_of(MAIN);
    let mut seen = 0;
    for page in pages.pages_of("card") {
        let texts = pages.texts(page);
        let top = |names: &[&str]| {
            let found = texts.iter().filter(|it| names.contains(&it.text.trim()));
            found.map(|it| it.region.y).collect::<Vec<f64>>()
        };
        // The large word of what kills is no caution but a panel of its own.
        let panel = |it: &&&Printed| it.size > 13.5 && it.text.trim() == "DANGER";
        let panel = texts.iter().find(panel).map(|it| it.region.y);
        let cautions = top(&["DANGER", "WARNING", "CAUTION", "NOTICE"]);
        let first = top(&["P0", "P1", "R1"])
            .into_iter()
            .fold(f64::MAX, f64::min);
        assert!(first < f64::MAX, "page {page} has no step");
        assert!(cautions.iter().all(|y| *y < first), "page {page}");
        seen += cautions.iter().filter(|y| Some(**y) != panel).count();
    }
    assert!(seen >= 12, "six joints have two cards each: {seen}");
}

fn sections(document: &Document) -> Vec<&Section> {
    let parts = document.parts.iter().filter_map(|part| match part {
        Part::Sections(sections) => Some(&sections.sections),
        _ => None,
    });
    parts.flatten().collect()
}

#[test]
fn the_gravest_cautions_of_the_pack_come_first_on_one_page() {
    let document = pack_of(MAIN, &example(MAIN));
    let sections = sections(&document);
    let section = sections
        .iter()
        .find(|section| section.label == "cautions")
        .unwrap();
    let Some(Block::Cautions(cautions)) = section.blocks.first() else {
        panic!("panels")
    };
    assert!(cautions.panels.is_sorted_by_key(|panel| panel.signal));
    assert!(cautions.notes.last().unwrap().contains("stricter"));
    let pages = lay_out_document(&document, BTreeMap::new());
    let begin = pages.pages_of("cautions")[0];
    assert_eq!(pages.pages_of("people"), [begin + 1]);
}

#[test]
fn photos_stand_four_a_page_with_their_tag() {
    let wedge = image::GrayImage::from_fn(200, 150, |x, y| {
        image::Luma([u8::try_from((x + y) % 256).unwrap()])
    });
    let mut bytes = std::io::Cursor::new(Vec::new());
    wedge
        .write_to(&mut bytes, image::ImageFormat::Jpeg)
        .unwrap();
    let bytes = bytes.into_inner();
    let names = (1..=5).map(|photo| format!("picture-{photo}.jpg"));
    let photos = names.clone().map(|file| PhotoOf { joint: 0, file });
    let document = with_job(MAIN, &example(MAIN), |context| {
        pack(context, CardPages::Here, photos.collect())
    });
    let files = names.map(|name| (name, bytes.clone())).collect();
    let pages: Typeset = lay_out_document(&document, files);
    let first = pages.pages_of("photos")[0];
    assert_eq!(pages.page_count(), first + 1);
    has_all(
        &text_of(&pages, first),
        &["E-310-CH-01", "north channel, +6 m platform"],
    );
}
