//! Isolation sheets from the example jobs: three pages that a crew can fill in and sign.
//!
//! What is asked of the pages comes from outside: the order of release and proof is that of 29 CFR
//! 1910.147(d) (know the energy, shut down, isolate, lock, relieve, verify), the boxes and the least
//! type are common practice for site paper (no source).

#![allow(
    clippy::panic,
    clippy::too_many_lines,
    reason = "a word that is not on the page ends its test; the fields of a sheet are one long list"
)]

mod built;

use std::collections::BTreeMap;

use built::{all_text, collisions, example, lay_out, outside, show, text_of, with_job};
use studbook::document::build::{
    Boundary, Context, isolation, isolation_room_findings, joints_behind,
};
use studbook::document::desk::Part;
use studbook::document::isolation::IsolationSheet;
use studbook::photo;
use studbook::typeset::Typeset;
use studbook::units::Length;

fn sheet(context: &Context<'_>, name: &str) -> (IsolationSheet, String) {
    let isolations = context.job.isolations.as_ref().and_then(|it| it.get());
    let found = isolations
        .and_then(|list| list.get(name))
        .expect("the job has this boundary");
    let boundary = Boundary {
        name,
        isolation: found,
        label: format!("isolation {name}"),
        picture: None,
        in_pack: true,
    };
    let made = isolation(context, &boundary);
    assert_eq!(isolation_room_findings(&made.content, None), []);
    (made.content, made.code)
}

fn laid_out(job: &str, text: &str, name: &str) -> Typeset {
    let sheet = with_job(job, text, |context| sheet(context, name).0);
    let pages = lay_out(Part::Isolation(Box::new(sheet)), BTreeMap::new());
    show(&pages, &format!("isolation-{name}-{}.pdf", text.len()));
    pages
}

fn is_sound(pages: &Typeset) {
    assert_eq!(pages.page_count(), 3, "{}", all_text(pages));
    assert_eq!(outside(pages), Vec::<String>::new());
    assert_eq!(collisions(pages), Vec::<String>::new());
    for page in 1..=3 {
        let least = pages.smallest_text(page).expect("there is type");
        assert!(least >= 8.5 - 0.01, "{least} pt on page {page}");
    }
    let boxes: Vec<_> = ["box", "point"]
        .into_iter()
        .flat_map(|label| pages.boxes(label))
        .collect();
    for page in 1..=3 {
        for text in pages.texts(page).into_iter().filter(|text| text.upright) {
            let met = boxes
                .iter()
                .find(|it| it.page == page && it.overlaps(&text.region, 0.6));
            assert!(met.is_none(), "{:?} stands in {met:?}", text.text);
        }
    }
    for (index, region) in boxes.iter().enumerate() {
        assert!(
            region.height >= 9.9,
            "a gloved hand needs 10 mm: {region:?}"
        );
        let met = boxes[..index].iter().find(|it| it.overlaps(region, 0.4));
        assert!(met.is_none(), "{region:?} over {met:?}");
        let foot = region.y + region.height;
        assert!(foot <= 272.1, "the footer begins there: {region:?}");
    }
}

/// Whether the words stand on the page one behind the other.
fn in_order(text: &str, words: &[&str]) {
    let mut rest = text;
    for word in words {
        let at = rest
            .find(word)
            .unwrap_or_else(|| panic!("{word} is not behind the others: {text}"));
        rest = &rest[at + word.len()..];
    }
}

#[test]
fn the_sheets_of_the_main_job_are_three_sound_pages() {
    let text = example("effluent-cooler.yaml");
    for name in ["I-04", "I-06"] {
        is_sound(&laid_out("effluent-cooler.yaml", &text, name));
    }
    is_sound(&laid_out(
        "inch-units.yaml",
        &example("inch-units.yaml"),
        "I-11",
    ));
}

#[test]
fn every_field_of_the_sheet_is_there() {
    let pages = laid_out(
        "effluent-cooler.yaml",
        &example("effluent-cooler.yaml"),
        "I-04",
    );
    let fields: [&[&str]; 3] = [
        &[
            "I-04",
            "ISOLATE",
            "class A",
            "Effluent cooler E-310, channel side",
            "HL-31-P-0107 rev 6",
            "permit no.",
            "isolation certificate no.",
            "lock box no.",
            "date",
            "hydrogen-rich gas, 92 bar",
            "310 °C",
            "14 m³",
            "hydrogen sulphide 400 ppm",
            "shell 180 °C for 6 h",
            "work only below 60 °C",
            "pump P-310",
            "positive: spade or gap",
            "kN per bar",
            "0.1 bar =",
            "channel cover",
            "lock no.",
            "tag no.",
            "fitted",
            "verified",
            "removed",
            "HV-3101",
            "SP-31",
            "HV-3107",
            "SP-32",
            "HV-3111",
            "HV-3114",
            "P-310",
            "spade in",
            "E-310-CH-01",
            "E-310-CH-04",
            "content",
            "issued 2027-03-08",
            "page 1 of 3",
        ],
        &[
            "PROVE",
            "procedure HL-31-OP-022",
            "vent HV-3111",
            "drain HV-3114",
            "nitrogen, 3 cycles",
            "below 1 % LEL",
            "60 °C or less",
            "G-21",
            "0.0 and free flow",
            "15 min",
            "no rise",
            "P-310",
            "nothing moves",
            "O₂ 20.9 %",
            "R. Olsen",
            "name",
            "signature",
            "4 h",
        ],
        &[
            "RETURN",
            "4 of 4",
            "2 in, 2 out: SP-31 and SP-32",
            "own lock",
            "no leak",
            "E-310-CH-01",
            "E-310-CH-02",
            "E-310-CH-03",
            "E-310-CH-04",
            "Lock box handover",
            "never stands in its place",
            "page 3 of 3",
        ],
    ];
    for (index, fields) in fields.iter().enumerate() {
        let text = text_of(&pages, index + 1).replace('\u{a0}', " ");
        for field in *fields {
            assert!(text.contains(field), "page {}: {field}: {text}", index + 1);
        }
    }
    // Lock, tag, fitted, verified, removed of eight points.
    assert_eq!(pages.boxes("point").len(), 8 * 5);
}

/// 29 CFR 1910.147(d): (1) prepare, (2) shut down, (3) isolate, (4) lock and tag, (5) relieve stored
/// energy, (6) verify; then the work.
#[test]
fn release_comes_in_the_order_of_the_law() {
    let pages = laid_out(
        "effluent-cooler.yaml",
        &example("effluent-cooler.yaml"),
        "I-04",
    );
    let page = text_of(&pages, 2);
    in_order(
        &page,
        &[
            "Tell everybody",
            "Shut the equipment down",
            "lock and tag",
            "Open vent",
            "Open drain",
            "Purge",
            "surface",
            "Read G-21",
            "Shut vents and drains",
            "every other energy",
            "try to start",
            "Test the air",
            "HOLD H2",
            "first gap",
            "Prove zero again",
        ],
    );
}

/// From first principles: π/4 · 0.92² = 0.664761 m²; 1 bar on it is 66.48 kN; 0.1 bar is 6647.6 N, the
/// weight of 677.9 kg. π/4 · 23.5² = 433.7 in²; 1 psi on it is 433.7 lbf, the weight of 433.7 lb.
#[test]
fn the_push_on_the_cover_is_that_of_its_area() {
    let metric = laid_out(
        "effluent-cooler.yaml",
        &example("effluent-cooler.yaml"),
        "I-04",
    );
    let inch = laid_out("inch-units.yaml", &example("inch-units.yaml"), "I-11");
    let metric = text_of(&metric, 1).replace('\u{a0}', " ");
    let inch = text_of(&inch, 1).replace('\u{a0}', " ");
    for words in [
        "66.48 kN per bar",
        "0.1 bar = 677.9 kg",
        "920 mm across, 0.6648 m²",
    ] {
        assert!(metric.contains(words), "{words}: {metric}");
    }
    for words in [
        "433.7 lbf per psi",
        "1 psi = 433.7 lb",
        "23.5 in across, 433.7 in²",
    ] {
        assert!(inch.contains(words), "{words}: {inch}");
    }
    assert!(
        !inch.contains("bar"),
        "no metric pressure in an inch pack: {inch}"
    );
}

/// A picture of the boundary stands in place of the line of points, which the table still lists.
#[test]
fn a_picture_of_the_job_stands_in_place_of_the_line() {
    let wedge = image::GrayImage::from_fn(400, 200, |x, y| {
        image::Luma([u8::try_from((x + y) % 256).unwrap_or(0)])
    });
    let mut bytes = std::io::Cursor::new(Vec::new());
    wedge
        .write_to(&mut bytes, image::ImageFormat::Png)
        .expect("encodes");
    let room = (Length::mm(176.0), Length::mm(54.0));
    let photo = photo::prepare(&bytes.into_inner(), room.0, room.1).expect("a good picture");
    let job = "effluent-cooler.yaml";
    let sheet = with_job(job, &example(job), |context| {
        let found = context
            .job
            .isolations
            .as_ref()
            .and_then(|it| it.get()?.get("I-06"));
        let boundary = Boundary {
            name: "I-06",
            isolation: found.expect("the job has this boundary"),
            label: "isolation".into(),
            picture: Some("boundary.jpg".into()),
            in_pack: false,
        };
        isolation(context, &boundary).content
    });
    let files = BTreeMap::from([("boundary.jpg".to_owned(), photo.jpeg)]);
    let pages = lay_out(Part::Isolation(Box::new(sheet)), files);
    show(&pages, "picture.pdf");
    is_sound(&pages);
    assert!(
        !text_of(&pages, 1).contains("black is shut"),
        "no legend without the line"
    );
    assert!(
        !text_of(&pages, 1).contains("pack page"),
        "it is issued alone"
    );
    assert_eq!(pages.boxes("point").len(), 4 * 5);
}

/// What the job does not say is asked for on paper, with the person who knows it.
#[test]
fn a_silent_job_gets_empty_boxes_with_a_name() {
    let text = "studbook: 1\npack: { title: Drain pot, number: X-1 }\nisolations:\n  I-1: { boundary: Drain pot }\njoints:\n  - { tag: D-101-CV-01, isolation: I-1 }\n";
    let pages = laid_out("silent.yaml", text, "I-1");
    is_sound(&pages);
    let (one, two) = (text_of(&pages, 1), text_of(&pages, 2));
    assert_eq!(pages.boxes("wanted").len(), 1, "the opening");
    assert_eq!(
        pages.boxes("point").len(),
        6 * 5,
        "points are written in by hand"
    );
    assert!(one.contains("Points to be given by area operator"), "{one}");
    assert!(
        one.contains("Largest opening: to be given by engineer"),
        "{one}"
    );
    assert!(
        !one.contains("kN per bar"),
        "no number stands in for the missing one"
    );
    let asked = [
        "vent by area operator",
        "drain by area operator",
        "medium, end value by area operator",
        "limit by area operator",
        "gauge by area operator",
        "time, rise by area operator",
        "after each break, shift change",
    ];
    for words in asked {
        assert!(two.contains(words), "{words}: {two}");
    }
}

#[test]
fn all_joints_behind_a_boundary_are_signed_on_its_page_three() {
    with_job(
        "effluent-cooler.yaml",
        &example("effluent-cooler.yaml"),
        |context| {
            let tags = |name| -> Vec<&str> {
                joints_behind(context.joints, name)
                    .iter()
                    .map(|joint| joint.tag.as_str())
                    .collect()
            };
            assert_eq!(
                tags("I-04"),
                ["E-310-CH-01", "E-310-CH-02", "E-310-CH-03", "E-310-CH-04"]
            );
            assert_eq!(tags("I-06"), ["V-312-MW-01", "V-312-MW-02"]);
            assert_eq!(tags("I-99"), Vec::<&str>::new());
        },
    );
}

/// A new revision alone keeps the code; a changed point does not.
#[test]
fn the_code_changes_with_the_content_and_only_with_it() {
    let text = example("effluent-cooler.yaml");
    let code = |text: &str| {
        with_job("effluent-cooler.yaml", text, |context| {
            sheet(context, "I-04").1
        })
    };
    let first = code(&text);
    let revised = text.replace(
        "revision: B, date: 2027-03-08",
        "revision: C, date: 2027-03-20",
    );
    assert_ne!(revised, text);
    assert_eq!(code(&revised), first);
    assert_eq!(
        code(&text.replace("status: for approval", "status: for construction")),
        first
    );
    assert_ne!(code(&text.replace("tag: HV-3107", "tag: HV-3108")), first);
    assert_ne!(
        code(&text.replace("diameter: 920 mm", "diameter: 921 mm")),
        first
    );
}
