//! Cards of a made-up plant, for tests of the layout: every part can be made short or long.

#![allow(dead_code, reason = "each test file uses its part of the samples")]
#![allow(clippy::too_many_lines, reason = "a card is one long list of words")]

pub(crate) mod bitmap;
pub(crate) mod checks;
mod jackbolt_record;
pub(crate) mod jackbolts;
pub(crate) mod release;
mod ring;

use studbook::document::card::{
    Badge, Before, Card, Cards, Caution, Choice, Column, ColumnKind, Danger, Draft, Entry, Fact,
    Footer, Grid, GridRow, Head, Identity, Lines, Record, RecordList, RecordRow, Running, Second,
    Signature, Step, Steps, Tag, Target, Ticks, Value,
};
use studbook::document::qr;
use studbook::typeset::{Date, Overrides, Printed, Properties, Request, Typeset, typeset};

use ring::{order, picture};

pub(crate) fn head(title: &str, note: &str) -> Head {
    Head {
        title: title.into(),
        note: note.into(),
    }
}

pub(crate) fn value(number: &str, unit: &str) -> Value {
    Value {
        number: Entry::Given(number.into()),
        unit: unit.into(),
    }
}

fn fact(label: &str, text: &str) -> Fact {
    Fact {
        label: label.into(),
        value: Entry::Given(text.into()),
    }
}

/// A request for the cards; the overrides are empty.
pub(crate) fn request<'a>(cards: &Cards, overrides: &'a Overrides) -> Request<'a> {
    Request {
        template: "cards.typ",
        data: serde_json::to_vec(cards).expect("cards are plain data"),
        files: std::collections::BTreeMap::new(),
        overrides,
        properties: Properties {
            title: "Cards of HL-31-WP-007".into(),
            author: vec!["R. Olsen".into()],
            keywords: vec!["HL-31-WP-007".into(), "revision B".into()],
            date: Date {
                year: 2027,
                month: 3,
                day: 8,
            },
            ident: "HL-31-WP-007/B/cards".into(),
        },
        tagged: false,
    }
}

/// Lays cards out that fit their pages.
pub(crate) fn lay_out(cards: Vec<Card>) -> Typeset {
    for card in &cards {
        let overruns = card.over_budget();
        assert!(
            overruns.is_empty(),
            "{}: {overruns:?}",
            card.identity.tag.text
        );
    }
    let overrides = Overrides::new();
    typeset(&request(&volume(cards), &overrides)).expect("the embedded templates have no fault")
}

/// Upright text; a watermark lies across the page and under everything.
pub(crate) fn upright(pages: &Typeset, page: usize) -> Vec<&Printed> {
    pages
        .texts(page)
        .into_iter()
        .filter(|text| text.upright)
        .collect()
}

pub(crate) fn volume(cards: Vec<Card>) -> Cards {
    Cards {
        language: "en".into(),
        cards,
    }
}

fn step(name: &str, number: &str, unit: &str, line: &str) -> Step {
    Step {
        name: name.into(),
        dial: None,
        value: value(number, unit),
        line: line.into(),
        boxes: vec![true, true],
    }
}

fn columns() -> Vec<Column> {
    vec![
        Column {
            head: "done".into(),
            kind: ColumnKind::Tick,
        },
        Column {
            head: "time".into(),
            kind: ColumnKind::Time,
        },
    ]
}

fn footer() -> Footer {
    Footer {
        number: "HL-31-WP-007   revision B".into(),
        code_label: "content".into(),
        code: "XA7H-CFDY".into(),
        issued: "issued 2027-03-08".into(),
        notes: [
            "Uncontrolled when printed, unless stamped. Check the revision before use. Valid for the permit dated . . . . . . . . . . . .".into(),
            "This card adds to and never replaces the law, site rules, permits and the equipment maker's instructions. In doubt, stop and ask.".into(),
        ],
        pages: ["page 1 of 2".into(), "page 2 of 2".into()],
        qr: qr::svg("HL-31-WP-007/B/XA7HCFDY"),
    }
}

fn row(number: usize, name: &str, limit: &str) -> RecordRow {
    RecordRow {
        number: number.to_string(),
        name: name.into(),
        limit: limit.into(),
    }
}

fn grid_row(number: usize, name: &str, limit: &str) -> GridRow {
    GridRow {
        number: number.to_string(),
        name: name.into(),
        limit: limit.into(),
    }
}

fn sign(number: usize, label: &str, hold: bool) -> Signature {
    Signature {
        number: number.to_string(),
        label: label.into(),
        hold,
    }
}

fn record() -> Record {
    Record {
        tools: RecordList {
            head: head("Tools used", "changed to"),
            rows: vec![
                row(20, "HW-07 s/n 7731", "due 2027-09-01"),
                row(21, "HW-08 s/n 7744", "due 2027-08-15"),
                row(22, "P-03, gauge G-21", "due 2027-05-30"),
                row(23, "depth gauge D-4", "due 2027-06-12"),
            ],
        },
        materials: RecordList {
            head: head("Materials used", "batch or heat"),
            rows: vec![
                row(24, "gasket", ""),
                row(25, "studs", ""),
                row(26, "nuts", ""),
                row(27, "paste", ""),
            ],
        },
        as_found: RecordList {
            head: head("As found", "mm"),
            rows: vec![
                row(28, "centreline", "limit 1.5"),
                row(29, "parallel", "limit 0.8"),
                row(30, "hole offset", "limit 3"),
                row(31, "free gap", "limit 9"),
            ],
        },
        gaps: Some(Grid {
            head: head(
                "Gap at eight studs, mm",
                "largest less smallest above 0.25: stop and call",
            ),
            columns: ["1", "4", "7", "10", "13", "16", "19", "22"]
                .map(String::from)
                .to_vec(),
            rows: vec![
                grid_row(32, "P0", ""),
                grid_row(33, "P1", ""),
                grid_row(34, "P2", ""),
            ],
        }),
        stretch: Some(Grid {
            head: head("Stretch, mm", "accept 0.52 to 0.63"),
            columns: ["before", "after", "difference"].map(String::from).to_vec(),
            rows: vec![
                grid_row(35, "1", ""),
                grid_row(36, "7", ""),
                grid_row(37, "13", ""),
                grid_row(38, "19", ""),
            ],
        }),
        last_round: RecordList {
            head: head("Last round", "accept 0 nuts turned"),
            rows: vec![
                row(39, "nuts that turned", "of 24"),
                row(40, "rounds made", "at least 2"),
            ],
        },
        protrusion: Some(Grid {
            head: head("Thread past nut", ""),
            columns: vec!["least".into(), "most".into()],
            rows: vec![
                grid_row(41, "nut side", "accept 1 to 3 turns"),
                grid_row(42, "far side", "accept 1 to 3 turns"),
            ],
        }),
        jackbolts: None,
        deviation: Choice {
            head: head("Deviation", "number, what"),
            number: "43".into(),
            options: ["none".into(), "yes".into()],
        },
        next_time: Lines {
            head: head("For next time", ""),
            number: "44".into(),
        },
        signed: head(
            "Signed",
            "name in capitals, signature · date YYYY-MM-DD · time at hold points",
        ),
        signatures: vec![
            sign(
                45,
                "HOLD H3 joint, gasket, paste are right · crew lead",
                true,
            ),
            sign(46, "WITNESS W2 no nut turns at 455 bar · inspector", true),
            sign(47, "assembled by", false),
            sign(48, "assembled by", false),
            sign(49, "supervisor", false),
            sign(50, "inspector", false),
            sign(51, "client", false),
        ],
        stub: Some(row(52, "tag stub torn off and handed in", "")),
    }
}

/// A hydraulic wrench card for tightening: `count` studs, two wrenches when the count is even.
pub(crate) fn tightening(count: usize) -> Card {
    let tools = if count.is_multiple_of(2) && count > 2 {
        2
    } else {
        1
    };
    Card {
        running: Running {
            left: "Harrow Lake Works · unit 31 · crew card, hydraulic torque wrench".into(),
            right: "HL-31-WP-007 revision B".into(),
        },
        identity: Identity {
            tag: Tag::new("E-310-CH-01"),
            equipment: "Effluent cooler, channel flange".into(),
            place: "north channel, +6 m platform".into(),
            class: "class A · side 1, do".into(),
            drawing: "drawing HL-31-M-2104 rev 3".into(),
            badge: Badge {
                word: "TIGHTEN".into(),
                outlined: false,
            },
            record_badge: Badge {
                word: "RECORD".into(),
                outlined: false,
            },
        },
        draft: None,
        danger: Danger {
            word: "DANGER".into(),
            hazard: "Hydrogen-rich gas, 92 bar, 310 °C behind this joint.".into(),
            stop: "No nut moves until zero is shown at this joint.".into(),
            boxes: [
                "isolation certificate",
                "zero pressure seen at",
                "time",
                "initials",
            ]
            .map(String::from),
        },
        cautions: vec![Caution::new(
            "WARNING",
            true,
            "The reaction arm closes with tonnes of force. Keep hands off arm, tool and reaction point while the drive can run. One voice controls it.",
            Before::Steps,
        )],
        ticks: Ticks {
            head: head("Before the first nut", "tick what you have seen yourself"),
            items: [
                "Seats clean, flat, no radial scratch",
                "Gasket new, spiral wound, 905 / 935 mm",
                "Nuts run by hand over the whole thread",
                "Grey paste: threads and turned nut faces",
                "Washers under every turned nut",
                "Thread past both nuts, 1 to 3 turns",
                "Numbers on the flange, 1 at the top",
                "Wrenches and gauge in calibration today",
                "People clear, hands off, one pump voice",
            ]
            .map(String::from)
            .to_vec(),
            ..Ticks::default()
        },
        target: Target {
            label: "Target, these two wrenches only".into(),
            value: value("455", "bar"),
            words: "four five five".into(),
            second: Some(Second {
                number: "4150".into(),
                unit: "N·m".into(),
                words: "torque at 455 bar".into(),
            }),
            facts: vec![
                fact("studs", &format!("{count} × M48×5")),
                fact("wrenches", "HW-07 (7731) · HW-08 (7744)"),
                fact("pump", "P-03, both wrenches on it"),
                fact("lubricant", "grey paste, no other"),
                fact("socket", "75 mm on 1 1/2 in square"),
            ],
        },
        picture: picture(count, tools),
        steps: Steps {
            head: head("Passes", ""),
            columns: columns(),
            rows: vec![
                step("P0", "snug", "", "by hand, 25 N·m"),
                step("P1", "135", "bar", "30 %, A to M, gaps"),
                step("P2", "320", "bar", "70 %, A to M, gaps"),
                step("P3", "455", "bar", "100 %, A to M"),
                step("P4", "455", "bar", "one wrench, circle"),
                step("P5", "455", "bar", "as P4, 4 h later"),
            ],
            end: vec!["P4 ends when no nut turns in a round.".into()],
        },
        order: order(count, tools),
        jackbolts: None,
        record: record(),
        footer: footer(),
    }
}

/// The same joint opened: never-exceed value, release round with its dial, count of rounds.
pub(crate) fn loosening(count: usize) -> Card {
    let mut card = tightening(count);
    card.identity.badge = Badge {
        word: "LOOSEN".into(),
        outlined: true,
    };
    card.target.label = "Never exceed".into();
    card.target.value = value("595", "bar");
    card.target.words = "five nine five; then stop and call".into();
    card.target.second = Some(Second {
        number: "365 to 590".into(),
        unit: "bar".into(),
        words: "expected".into(),
    });
    card.steps = Steps {
        head: head("Release rounds", ""),
        columns: columns(),
        rows: vec![
            Step {
                dial: Some(-20.0),
                ..step("R1", "20", "deg", "A to M, gap after")
            },
            Step {
                dial: Some(-20.0),
                ..step("R2", "20", "deg", "then check gap")
            },
            Step {
                boxes: vec![false, true],
                ..step("", "rounds", "", "made: at least 3")
            },
            step("R4", "slack", "", "far side first"),
            step("R5", "off", "", "4 spaced nuts last"),
        ],
        end: vec!["Common practice; peak not predicted.".into()],
    };
    card
}

/// The same card as a draft with values that nobody has given.
pub(crate) fn draft(count: usize) -> Card {
    let mut card = tightening(count);
    card.draft = Some(Draft {
        word: "DRAFT".into(),
        reason: "DRAFT, not for use on site: 2 errors stand.".into(),
    });
    card.target.value.number = Entry::Missing("TO BE GIVEN BY THE ENGINEER".into());
    card.target.facts[2].value = Entry::Missing("TO BE GIVEN BY THE TOOL STORE".into());
    card.steps.rows[1].value.number = Entry::Missing("by hand or other tool".into());
    card
}

/// A text of `count` characters made of words that a planner would write.
fn filled(count: usize) -> String {
    let words = "lower hemisphere nozzle beside the stairway above level four ".chars();
    let mut text = words
        .cycle()
        .take(count)
        .collect::<String>()
        .trim_end()
        .to_owned();
    while text.chars().count() < count {
        text.push('x');
    }
    text
}

/// Every text as long as it may be, nine ticks, three cautions, six facts.
pub(crate) fn longest(count: usize) -> Card {
    let mut card = tightening(count);
    card.identity.tag = Tag::new("E-310A-CH-01/NORTH-UPPER-SIDE-22");
    card.identity.equipment = filled(48);
    card.identity.place = filled(60);
    card.danger.hazard = filled(52);
    card.danger.stop = filled(52);
    card.cautions = ["WARNING", "WARNING", "CAUTION"]
        .map(|word| Caution::new(word, true, filled(130), Before::Steps))
        .to_vec();
    card.ticks.items = (0..6).map(|_| filled(38)).collect();
    card.target.label = filled(38);
    card.target.facts.push(fact("back-up", &filled(26)));
    card.steps.end = vec![filled(38)];
    card
}
