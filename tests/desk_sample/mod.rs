//! Desk documents of a made-up plant, for tests of the layout: every part can be made short or long.

use std::collections::BTreeMap;

use studbook::document::card::{Badge, Head, Running};
use studbook::document::desk::{
    BigValue, Cell, Column, Document, Field, Furniture, Page, PageWords, Paragraphs, Part, Table,
    TitleBlock,
};
use studbook::document::isolation::{
    ContentsAndEnergy, Force, Grid, IsolationFooter, IsolationIdentity, IsolationSheet, Labelled,
    Point, PointKind, Points, ProofStep, Return, SignList, Sketch, Steps,
};
use studbook::document::pack::{
    Approvals, Block, CONTENTS_ON_COVER, COVER_ROW, Cautions, Contents, ContentsEntry, Cover,
    Deviations, Findings, INDEX_ROWS, Panel, PhotoEntry, Photos, Room, Section, Sections, Signal,
    WriteIn, one_page_of_panels,
};
use studbook::document::qr;
use studbook::document::register::{ColumnId, JointRow, Register, Words};
use studbook::typeset::{Date, Overrides, Properties, Request};

pub(crate) mod note;

pub(crate) fn head(title: &str, note: &str) -> Head {
    Head {
        title: title.into(),
        note: note.into(),
    }
}

pub(crate) fn pages(before: &str, after: &str) -> PageWords {
    PageWords {
        before: before.into(),
        between: " of ".into(),
        after: after.into(),
    }
}

pub(crate) fn furniture(kind: &str, draft: bool) -> Furniture {
    let status = if draft { "DRAFT" } else { "for approval" };
    Furniture {
        running: Running {
            left: format!("Harrow Lake Works · unit 31 · {kind}"),
            right: "HL-31-WP-007 revision B".into(),
        },
        number: format!("HL-31-WP-007 · revision B · {status}"),
        code_label: "content".into(),
        code: "3A99-14D0".into(),
        own_pages: None,
        pages: pages("page ", ""),
        draft: draft.then(|| "DRAFT".to_owned()),
    }
}

pub(crate) fn title_block(kind: &str, title: &str, subtitle: &str) -> TitleBlock {
    TitleBlock {
        department: Field::new("responsible department", "Bolting, unit 31"),
        reference: Field::new("technical reference", "K. Brandvik"),
        document_type: Field::new("document type", kind),
        prepared: Field::new("prepared", "R. Olsen"),
        checked: Field::new("checked", "M. Tarrant"),
        approved: Field::new("approved", ""),
        title: Field::new("title, supplementary title", title),
        subtitle: subtitle.into(),
        owner: Field::new("owner", "Harrow Lake Works"),
        number: Field::new("identification number", "HL-31-WP-007"),
        revision: Field::new("rev", "B"),
        date: Field::new("date of issue", "2027-03-08"),
    }
}

pub(crate) fn table(head: Head, columns: Vec<Column>, rows: &[&[&str]]) -> Table {
    let mut table = Table::new(head, columns);
    let cells = rows
        .iter()
        .map(|row| row.iter().map(|text| Cell::text(*text)).collect());
    table.rows = cells.collect();
    table
}

fn total(value: &str, unit: &str, label: &str) -> BigValue {
    BigValue {
        label: label.into(),
        value: value.into(),
        unit: unit.into(),
        line: String::new(),
    }
}

fn findings(draft: bool) -> Findings {
    let mut rows: Vec<[&str; 4]> = vec![
        [
            "T04",
            "accept",
            "HW-08 calibration ends 2027-08-15, job ends 2027-08-20",
            "tool store",
        ],
        [
            "Q05",
            "accept",
            "E-311-CH-01 needs 3 people from 06:00, crew 2 has 2",
            "planner",
        ],
        [
            "D14",
            "note",
            "bearing diameter of 12 joints is our default",
            "engineer",
        ],
    ];
    if draft {
        rows.truncate(2);
        rows.insert(
            0,
            [
                "L08",
                "error",
                "E-311-CH-02: load left in service 352 kN, needed 381 kN",
                "engineer: target or gasket",
            ],
        );
        rows.insert(
            1,
            [
                "I01",
                "error",
                "V-312-MW-01: no isolation named",
                "planner: key isolation",
            ],
        );
    }
    let widths = if draft {
        [12.0, 16.0, 96.0, 44.0]
    } else {
        [12.0, 16.0, 104.0, 44.0]
    };
    let [id, severity, text, who] = widths;
    let columns = vec![
        Column::new("", id).strong(),
        Column::new("", severity),
        Column::new("", text),
        Column::new("", who).right(),
    ];
    let rows: Vec<&[&str]> = rows.iter().map(|row| row.as_slice()).collect();
    let counts = if draft {
        "2 errors · 2 to accept · 1 note"
    } else {
        "0 errors · 2 to accept · 1 note"
    };
    Findings {
        head: head("Open findings", counts),
        stop: draft.then(|| "2 errors stand. Not for use on site.".to_owned()),
        table: low(table(Head::default(), columns, &rows)),
    }
}

/// The rows of a cover are low.
fn low(mut table: Table) -> Table {
    table.row_height = COVER_ROW;
    table.keep_first(6);
    table
}

pub(crate) fn cover(draft: bool) -> Cover {
    let entry = |title: &str, label: &str| ContentsEntry {
        title: title.into(),
        page: Page::At(label.into()),
    };
    Cover {
        furniture: furniture("work pack", draft),
        document_type: "Work pack".into(),
        title: "Effluent cooler, channel end".into(),
        subtitle: "Break, clean, new gaskets, tighten: from channel cover to pass plate, both channels".into(),
        totals: vec![
            total("14", "", "joints"),
            total("312", "", "studs"),
            total("22", "", "hold points"),
            total("2", "", "crews"),
            total("6", "", "shifts"),
            total("214", "h", "labour, typical"),
        ],
        totals_note: "Counts come from the register; its last row must agree.".into(),
        status: Badge {
            word: if draft { "DRAFT" } else { "FOR APPROVAL" }.into(),
            outlined: draft,
        },
        stamp: "client stamp, copy number".into(),
        equipment: low(table(
            head("Equipment", "joints · studs"),
            vec![
                Column::new("", 18.0).strong(),
                Column::new("", 40.0),
                Column::new("", 12.0).right(),
                Column::new("", 14.0).right(),
            ],
            &[
                &["E-310", "effluent cooler", "4", "96"],
                &["E-311", "feed preheater", "6", "144"],
                &["V-312", "separator, manways", "2", "40"],
                &["PR-02", "press, tie rods", "1", "4"],
                &["P-310", "charge pump, casing", "1", "28"],
            ],
        )),
        contents: Contents {
            head: head("Contents", "page"),
            entries: vec![
                entry("Scope, limits, assumptions", "scope"),
                entry("Index of joints", "index"),
                entry("Plan, permits, people, tools", "plan"),
                entry("Cautions that apply", "cautions"),
                entry("Inspection and test plan", "itp"),
                entry("Isolation sheets", "isolation-1"),
                entry("Calculation notes", "note-1"),
                entry("Register", "register"),
            ][..CONTENTS_ON_COVER].to_vec(),
        },
        findings: findings(draft),
        revisions: low(table(
            head("Revisions", ""),
            vec![
                Column::new("rev", 12.0).strong(),
                Column::new("date", 26.0),
                Column::new("what changed", 68.0),
                Column::new("prepared", 22.0),
                Column::new("checked", 24.0),
                Column::new("approved", 24.0),
            ],
            &[
                &["A", "2027-02-12", "first issue, for comment", "R. Olsen", "M. Tarrant", "–"],
                &["B", "2027-03-08", "paste by trial; 24 cards re-issued", "R. Olsen", "M. Tarrant", "K. Brandvik"],
                &["C", "2027-03-21", "V-312 added", "R. Olsen", "", ""],
            ],
        )),
        approvals: Approvals {
            head: head("Approvals", "name in capitals, signature, date YYYY-MM-DD"),
            labels: vec!["prepared".into(), "checked".into(), "approved".into()],
        },
        notes: vec![
            "Torque N·m · pressure bar · length mm · load kN. Printed copies are uncontrolled unless stamped; check the revision before use. Language en.".into(),
        ],
        title_block: title_block("work pack", "Effluent cooler, channel end", "Break, clean, tighten; 14 joints"),
    }
}

fn paragraphs(title: &str, texts: &[&str]) -> Block {
    Block::Text(Paragraphs {
        head: head(title, ""),
        texts: texts.iter().map(|text| (*text).to_owned()).collect(),
    })
}

fn section(label: &str, title: &str, line: &str, blocks: Vec<Block>) -> Section {
    Section {
        label: label.into(),
        title: title.into(),
        line: line.into(),
        new_page: true,
        blocks,
    }
}

fn scope() -> Section {
    let assumptions = table(
        head(
            "Assumptions made by the program",
            "a value of ours until the key beside it is given",
        ),
        vec![
            Column::new("no.", 9.0).strong(),
            Column::new("what", 62.0),
            Column::new("value", 30.0),
            Column::new("key that replaces it", 45.0),
            Column::new("joints", 30.0),
        ],
        &[
            &[
                "1",
                "bearing diameter of the nut: across flats",
                "71.2 mm",
                "studs.bearing_diameter",
                "E-310-CH-01 to 04, E-311-CH-01 to 06",
            ],
            &[
                "2",
                "hole under the nut",
                "52 mm",
                "studs.hole",
                "E-310-CH-01 to 04",
            ],
            &[
                "3",
                "loss by settling",
                "8 %",
                "tighten.settling_loss",
                "all",
            ],
            &[
                "4",
                "first pass, soft gasket",
                "30 %",
                "tighten.passes",
                "V-312-MW-01",
            ],
        ],
    );
    let references = table(
        head("Reference documents", ""),
        vec![
            Column::new("number", 46.0).strong(),
            Column::new("rev", 14.0),
            Column::new("title", 116.0),
        ],
        &[
            &["HL-31-M-2104", "3", "Channel flange, general arrangement"],
            &["HL-31-P-0107", "6", "Flow diagram, effluent section"],
            &[
                "ISO 16047:2005",
                "",
                "Fasteners: torque and clamp force testing",
            ],
        ],
    );
    section(
        "scope",
        "Scope, limits, assumptions",
        "From channel cover to pass plate, both channels; four further machines",
        vec![
            paragraphs(
                "Scope",
                &[
                    "Break, clean, re-gasket and tighten 14 joints on E-310, E-311, V-312, P-310 and the press PR-02, in the order of the plan.",
                ],
            ),
            paragraphs(
                "Excluded",
                &["Scaffold, lagging, isolation, supply of gaskets, leak test."],
            ),
            Block::Table(assumptions),
            Block::Table(Table {
                head: head("Open findings", "0 errors · 2 to accept · 1 note"),
                ..findings(false).table
            }),
            Block::Table(references),
        ],
    )
}

/// An index of `joints` joints.
pub(crate) fn index(joints: usize) -> Section {
    let columns = vec![
        Column::new("tag, place", 48.0).strong(),
        Column::new("equipment", 20.0),
        Column::new("studs, size", 31.0),
        Column::new("method", 28.0),
        Column::new("crew", 10.0).right(),
        Column::new("h", 11.0).right(),
        Column::new("class", 10.0).middle(),
        Column::new("holds", 10.0).right(),
        Column::new("card", 8.0).right(),
    ];
    let mut index = Table::new(Head::default(), columns);
    index.row_height = 9.4;
    index.rows_a_page = INDEX_ROWS;
    index.rows = (1..=joints)
        .map(|joint| {
            vec![
                Cell::Two([
                    format!("E-310-CH-{joint:02}"),
                    "north channel, +6 m platform".into(),
                ]),
                Cell::text("E-310"),
                Cell::Two(["24 × M48×5".into(), "DN 900, class 600".into()]),
                Cell::text("hydraulic wrench"),
                Cell::text("3"),
                Cell::text("3.4"),
                Cell::text("A"),
                Cell::text("2"),
                Cell::Page(Page::Given((7 + 2 * joint).to_string())),
            ]
        })
        .collect();
    section("index", "Index of joints", "", vec![Block::Table(index)])
}

fn plan() -> Section {
    let plan = table(
        head("Plan", "windows by the clock of the site"),
        vec![
            Column::new("joint", 30.0).strong(),
            Column::new("after", 40.0),
            Column::new("window", 46.0),
            Column::new("crew", 20.0),
            Column::new("elapsed", 20.0).right(),
            Column::new("labour", 20.0).right(),
        ],
        &[
            &[
                "E-310-CH-01",
                "bundle in",
                "2027-04-12 06:00 to 13:00",
                "1",
                "3.4 h",
                "10.2 h",
            ],
            &[
                "E-310-CH-02",
                "E-310-CH-01",
                "2027-04-12 13:00 to 20:00",
                "1",
                "3.4 h",
                "10.2 h",
            ],
        ],
    );
    let mut permits = Table::new(
        head(
            "Permits and certificates",
            "numbers are written when the permit is given",
        ),
        vec![
            Column::new("permit", 40.0).strong(),
            Column::new("who obtains it", 34.0),
            Column::new("linked isolation", 26.0),
            Column::new("number", 38.0),
            Column::new("valid from, to", 38.0),
        ],
    );
    permits.row_height = 10.0;
    permits.rows = ["line break", "lifting over live plant"]
        .map(|name| {
            vec![
                Cell::text(name),
                Cell::text("R. Olsen"),
                Cell::text("I-04"),
                Cell::Box(String::new()),
                Cell::Box(String::new()),
            ]
        })
        .to_vec();
    let people = table(
        head("People", ""),
        vec![
            Column::new("name", 34.0).strong(),
            Column::new("role", 36.0),
            Column::new("certificate", 46.0),
            Column::new("scope", 36.0),
            Column::new("valid until", 24.0),
        ],
        &[
            &[
                "R. Olsen",
                "crew lead",
                "BT-2214",
                "torque, hydraulic",
                "2028-02-01",
            ],
            &[
                "M. Tarrant",
                "technician",
                "BT-1870",
                "torque, hydraulic",
                "2027-11-15",
            ],
        ],
    );
    let tools = table(
        head(
            "Tools",
            "read serial and date at the store: no label or past date, no use",
        ),
        vec![
            Column::new("tool", 20.0).strong(),
            Column::new("kind", 46.0),
            Column::new("serial", 24.0),
            Column::new("range", 40.0),
            Column::new("certificate", 22.0),
            Column::new("calibrated until", 24.0),
        ],
        &[
            &[
                "HW-07",
                "hydraulic torque wrench",
                "7731",
                "905 to 6340 N·m",
                "C-2291",
                "2027-09-01",
            ],
            &[
                "TW-21",
                "hand torque wrench",
                "0482",
                "200 to 1000 ft·lb",
                "C-2310",
                "2027-06-30",
            ],
        ],
    );
    section(
        "plan",
        "Plan, permits, people, tools",
        "",
        vec![
            Block::Table(plan),
            Block::Table(permits),
            Block::Table(people),
            Block::Table(tools),
        ],
    )
}

/// Panels of every signal word, `count` of them.
pub(crate) fn panels(count: usize) -> Vec<Panel> {
    let texts = [
        (
            Signal::Notice,
            "NOTICE",
            "The value holds only for the lubricant named. Another lubricant needs a new value.",
        ),
        (
            Signal::Danger,
            "DANGER",
            "Pressure behind this joint can throw parts and contents at you. Do not move a nut until zero pressure is shown at this joint and you have signed for it, under your site's isolation rules.",
        ),
        (
            Signal::Warning,
            "WARNING",
            "The reaction arm closes with tonnes of force and swings to the other side when the drive reverses. Keep hands off arm, tool and reaction point while the drive can run. One voice controls it.",
        ),
        (
            Signal::Caution,
            "CAUTION",
            "HW-07 weighs 9.8 kg. Share it or use lifting gear; local limits apply.",
        ),
    ];
    let chosen = texts.iter().cycle().take(count);
    chosen
        .map(|(signal, word, text)| Panel {
            signal: *signal,
            word: (*word).into(),
            text: (*text).into(),
        })
        .collect()
}

/// The cautions of a pack that has `count` of them.
pub(crate) fn cautions(count: usize) -> Section {
    let (panels, left_out) = one_page_of_panels(panels(count));
    let mut notes = vec!["These cautions add to, and never replace, local law, the site's rules and permits, the equipment maker's instructions and the judgement of competent, authorised persons. Where they differ, the stricter applies; if in doubt stop and ask.".to_owned()];
    if left_out > 0 {
        notes.insert(
            0,
            format!("{left_out} more stand on the cards they belong to."),
        );
    }
    section(
        "cautions",
        "Cautions that apply",
        "",
        vec![Block::Cautions(Cautions { panels, notes })],
    )
}

/// An inspection and test plan of `steps` steps.
pub(crate) fn inspection(steps: usize) -> Sections {
    let mut table = Table::new(
        Head::default(),
        vec![
            Column::new("step", 10.0).strong(),
            Column::new("activity", 50.0),
            Column::new("reference", 34.0),
            Column::new("acceptance", 58.0),
            Column::new("record", 20.0),
            Column::new("contr.", 12.0).middle(),
            Column::new("client", 12.0).middle(),
            Column::new("third", 12.0).middle(),
            Column::new("notice h", 15.0).right(),
            Column::new("contr.", 14.0),
            Column::new("client", 14.0),
            Column::new("third", 14.0),
        ],
    );
    table.row_height = 10.0;
    table.rows = (1..=steps)
        .map(|step| {
            let mut row = vec![Cell::text(step.to_string())];
            let texts = [
                "Final circular pass",
                "3.2, step 9; PCC-1",
                "no nut moves at 4150 N·m, whole circuit",
                "box 14",
                "H",
                "W",
                "R",
                "24",
            ];
            row.extend(texts.map(Cell::text));
            row.extend((0..3).map(|_| Cell::Box(String::new())));
            row
        })
        .collect();
    table.notes = vec![
        "H hold: work stops until signed. W witness: invited at the agreed notice; work goes on at the agreed time if nobody comes, and that is written down.".into(),
        "R review: the record is checked afterwards. S surveillance: at random.".into(),
    ];
    Sections {
        furniture: furniture("inspection and test plan", false),
        landscape: true,
        sections: vec![section(
            "itp",
            "Inspection and test plan",
            "",
            vec![Block::Table(table)],
        )],
    }
}

pub(crate) fn front(joints: usize) -> Sections {
    Sections {
        furniture: furniture("work pack", false),
        landscape: false,
        sections: vec![scope(), index(joints), plan(), cautions(9)],
    }
}

fn labelled(number: &str, label: &str, width: f64, unit: &str) -> Labelled {
    Labelled {
        number: number.into(),
        label: label.into(),
        width,
        unit: unit.into(),
    }
}

fn proof(number: &str, text: &str, accept: &str, boxes: &[(&str, f64, &str)]) -> ProofStep {
    ProofStep {
        number: number.into(),
        text: text.into(),
        accept: accept.into(),
        boxes: boxes
            .iter()
            .map(|(label, width, unit)| labelled("", label, *width, unit))
            .collect(),
        hold: false,
        again: 0,
    }
}

fn proof_steps() -> Vec<ProofStep> {
    let time: &[(&str, f64, &str)] = &[("", 20.0, "")];
    let mut steps = vec![
        proof("1", "Tell everybody whom the shutdown touches.", "", time),
        proof("2", "Shut down by procedure HL-31-OP-044.", "", time),
        proof(
            "3",
            "Shut, lock and tag every point of page 1.",
            "all boxes of page 1 filled",
            time,
        ),
        proof(
            "4",
            "Open the vent HV-3111, DN 25, to the flare header.",
            "free flow felt or heard, not plugged",
            time,
        ),
        proof(
            "5",
            "Open the drain HV-3114 at the low point, closed system.",
            "free flow seen, not plugged",
            time,
        ),
        proof(
            "6",
            "Purge with nitrogen, 3 cycles.",
            "≤ 10 % LEL, ≤ 10 ppm",
            &[("LEL %", 20.0, ""), ("ppm", 20.0, "")],
        ),
        proof(
            "7",
            "Measure the surface at the joint.",
            "≤ 60 °C to work",
            &[("°C", 20.0, ""), ("time", 20.0, "")],
        ),
        proof(
            "8",
            "Read the pressure at the joint side; gauge proved live before, zero after, last reading on a low range.",
            "0.0 bar and free flow at the open vent",
            &[("gauge", 25.0, ""), ("bar", 25.0, ""), ("time", 20.0, "")],
        ),
        proof(
            "9",
            "Hold test: vents and drains shut 15 min; then open again, leave open, tag open.",
            "no rise",
            &[("rise bar", 25.0, ""), ("open again at", 22.0, "")],
        ),
        proof(
            "10",
            "Other energy: bled, blocked, locked, landed.",
            "before any try-start",
            time,
        ),
        proof(
            "11",
            "Try to start P-310, people clear; control back to off.",
            "does not move",
            &[("result", 30.0, ""), ("time", 20.0, "")],
        ),
        proof(
            "12",
            "Test the gas at the joint. No head into the opening.",
            "O₂ 20.9 %, LEL 0 %, H₂S 0 ppm",
            &[("O₂ %", 20.0, ""), ("LEL %", 20.0, ""), ("ppm", 20.0, "")],
        ),
        proof(
            "13",
            "HOLD: zero accepted by the crew lead at the joint.",
            "",
            &[
                ("name", 38.0, ""),
                ("signature", 36.0, ""),
                ("date", 28.0, ""),
                ("time", 20.0, ""),
            ],
        ),
        proof(
            "14",
            "First crack of the joint.",
            "dry, drip, gas, smell",
            &[("seen", 38.0, ""), ("time", 20.0, "")],
        ),
        proof(
            "15",
            "Prove again after a break of 2 h, at a shift change, after any change of the line-up.",
            "as step 8",
            &[
                ("date, time", 40.0, ""),
                ("bar", 25.0, ""),
                ("initials", 22.0, ""),
            ],
        ),
    ];
    steps[12].hold = true;
    steps[14].again = 2;
    steps
}

fn returning() -> Return {
    let signed: &[(&str, f64, &str)] = &[("initials", 22.0, ""), ("time", 20.0, "")];
    Return {
        head: head("Give it back, in this order", "the person who fitted a lock removes it"),
        steps: vec![
            proof("1", "Work complete, tools counted, people clear, covers on.", "", signed),
            proof("2", "Spades out: each is a joint with its own card.", "2 spades: SP-31, SP-32", &[("spades out", 20.0, ""), ("initials", 22.0, "")]),
            proof("3", "Vents and drains shut, caps on.", "", signed),
            proof("4", "Locks and tags removed, each by the person who fitted it.", "all boxes of page 1 filled", signed),
            proof("5", "Everybody told whom the start touches.", "", signed),
            proof("6", "Leak test in steps, nobody near.", "no leak", &[("bar", 25.0, ""), ("time", 20.0, "")]),
            proof("7", "Line-up restored.", "", signed),
        ],
        joints: SignList {
            head: head("Joints signed at load", "all of them, before the first lock"),
            names: ["E-310-CH-01", "E-310-CH-02", "E-310-CH-03", "E-310-CH-04"].map(str::to_owned).to_vec(),
            more: String::new(),
        },
        handover: Grid {
            head: head("Lock box at shift change", "the key goes from hand to hand"),
            columns: vec![
                labelled("", "date, time", 40.0, ""),
                labelled("", "out: name, signature", 57.0, ""),
                labelled("", "in: name, signature", 57.0, ""),
                labelled("", "key", 22.0, ""),
            ],
            rows: 3,
        },
        closing: "This sheet supports the site's own isolation certificate and never replaces it. Where they differ, the stricter applies; if in doubt stop and ask.".into(),
    }
}

/// A sheet with `count` points.
pub(crate) fn isolation(count: usize) -> IsolationSheet {
    let kinds = [
        (
            PointKind::ValveShut,
            "HV-3101",
            "gate valve DN 200, from R-301",
            "shut, locked",
        ),
        (
            PointKind::Vent,
            "HV-3102",
            "bleed between the valves",
            "open",
        ),
        (PointKind::Spade, "SP-31", "inlet flange, north", "spade in"),
        (
            PointKind::ValveShut,
            "HV-3107",
            "gate valve DN 200, to V-312",
            "shut, locked",
        ),
        (
            PointKind::Gauge,
            "PI-3110",
            "gauge at the joint, 0 to 4 bar",
            "proved live",
        ),
        (
            PointKind::ValveOpen,
            "HV-3111",
            "equalising line",
            "open, locked",
        ),
        (
            PointKind::Drain,
            "HV-3114",
            "low point, closed system",
            "open, proved",
        ),
        (
            PointKind::Motor,
            "P-310",
            "charge pump, switch room 2",
            "off, locked",
        ),
        (
            PointKind::Gap,
            "SP-33",
            "spool taken out, level bridle",
            "apart",
        ),
        (PointKind::Lock, "ZS-31", "tilting gear, pin", "pin in"),
    ];
    let rows = kinds.iter().cycle().take(count).enumerate();
    let badge = |word: &str| Badge {
        word: word.into(),
        outlined: true,
    };
    IsolationSheet {
        label: "isolation-1".into(),
        bookmark: "I-04 Effluent cooler E-310, channel side".into(),
        running: furniture("isolation and pressure release", false).running,
        footer: IsolationFooter {
            number: "HL-31-WP-007   revision B".into(),
            code_label: "content".into(),
            code: "6B1E-07F3".into(),
            issued: "issued 2027-03-08".into(),
            note: "Uncontrolled when printed, unless stamped. Check the revision before use. Valid for the permit dated . . . . . . . . . . . .".into(),
            own_pages: pages("page ", ""),
            pages: Some(pages("pack page ", "")),
            qr: qr::svg("HL-31-WP-007 B 6B1E-07F3"),
        },
        draft: None,
        identity: IsolationIdentity {
            number: "I-04".into(),
            boundary: "Effluent cooler E-310, channel side".into(),
            line: "joints E-310-CH-01 to CH-04 · flow diagram HL-31-P-0107 rev 6".into(),
            badges: [badge("ISOLATE"), badge("PROVE"), badge("RETURN")],
            class: "class A".into(),
            pages: ["make it safe".into(), "release, prove zero".into(), "give it back".into()],
            continued: "make it safe, more points".into(),
        },
        papers: vec![
            labelled("1", "permit no.", 40.0, ""),
            labelled("2", "isolation certificate no.", 48.0, ""),
            labelled("3", "lock box no.", 40.0, ""),
            labelled("4", "date YYYY-MM-DD", 36.0, ""),
        ],
        contents: ContentsAndEnergy {
            head: head("Contents and energy", ""),
            facts: [
                ["gas", "hydrogen-rich, 92 bar", "310 °C"],
                ["volume", "14 m³ between points", "two phase"],
                ["toxic", "hydrogen sulphide 400 ppm", ""],
                ["heat", "shell 180 °C for 6 h", "work below 60 °C"],
                ["moving", "pump P-310 can start", "point 8"],
                ["wanted", "positive: spade or gap", "contents"],
            ]
            .map(|fact| fact.map(str::to_owned))
            .to_vec(),
        },
        force: Force {
            head: head("Force on the channel cover", ""),
            per_pressure: "66".into(),
            unit: "kN per bar".into(),
            little: "0.1 bar = 680 kg".into(),
            opening: "Opening 920 mm across, 0.665 m².".into(),
            warning: "Nearly zero is not zero.".into(),
        },
        sketch: Sketch {
            head: head("Boundary", "points in the order of the table; black is shut, white is open"),
            picture: None,
            alt: "line of the isolation points".into(),
            ends: ["from R-301".into(), "to V-312".into()],
        },
        points: Points {
            head: head("Points", "initials and time in each box; the person who fits a lock removes it"),
            columns: ["no.".into(), "tag".into(), "make it".into()],
            boxes: ["lock no.", "tag no.", "fitted", "verified", "removed"].map(str::to_owned),
            rows: rows
                .map(|(at, (kind, tag, place, make))| Point {
                    number: (at + 1).to_string(),
                    kind: *kind,
                    tag: (*tag).into(),
                    place: (*place).into(),
                    make: (*make).into(),
                })
                .collect(),
            continued: "continued from page 1".into(),
        },
        proof: Steps {
            head: head("Release and proof of zero, in this order", "a box without a label: time, 24 h"),
            steps: proof_steps(),
        },
        return_to_service: returning(),
    }
}

/// A register of `joints` rows.
pub(crate) fn register(joints: usize) -> Register {
    let headings = [
        (ColumnId::Tag, "tag"),
        (ColumnId::Equipment, "equipment"),
        (ColumnId::Unit, "unit"),
        (ColumnId::Place, "place"),
        (ColumnId::Drawing, "drawing"),
        (ColumnId::JointType, "joint type"),
        (ColumnId::Size, "size, class"),
        (ColumnId::Studs, "studs"),
        (ColumnId::StudLength, "length mm"),
        (ColumnId::Material, "stud, nut"),
        (ColumnId::Gasket, "gasket"),
        (ColumnId::Lubricant, "paste"),
        (ColumnId::Method, "method"),
        (ColumnId::Load, "load kN"),
        (ColumnId::Setting, "set to"),
        (ColumnId::Tool, "tool"),
        (ColumnId::Class, "class"),
        (ColumnId::Isolation, "isol."),
        (ColumnId::Permit, "permit"),
        (ColumnId::Crew, "crew"),
        (ColumnId::Start, "start"),
        (ColumnId::Hours, "h"),
        (ColumnId::CardPage, "p."),
        (ColumnId::Revision, "rev"),
    ];
    let words = Words {
        headings: headings
            .iter()
            .map(|(id, head)| (*id, (*head).to_owned()))
            .collect(),
        status: [
            "apart",
            "cleaned",
            "made up",
            "at load",
            "checked",
            "proved",
            "no leak",
            "deviation",
        ]
        .map(str::to_owned),
        title: "Joint register".into(),
        remark: "tick when done; a number in the last box is a deviation".into(),
        range: ["rows ".into(), " to ".into(), " of ".into()],
        joints: "joints".into(),
        studs: "studs".into(),
    };
    let rows = (1..=joints).map(|joint| {
        let texts: BTreeMap<ColumnId, String> = [
            (ColumnId::Place, "north channel, +6 m"),
            (ColumnId::Studs, "24 × M48×5"),
            (ColumnId::Gasket, "spiral 905/935"),
            (ColumnId::Lubricant, "grey"),
            (ColumnId::Method, "hydraulic"),
            (ColumnId::Load, "508"),
            (ColumnId::Setting, "455 bar"),
            (ColumnId::Tool, "HW-07, 08"),
            (ColumnId::Class, "A"),
            (ColumnId::Isolation, "I-04"),
            (ColumnId::Crew, "1"),
            (ColumnId::Start, "04-12 06:00"),
            (ColumnId::Hours, "3.4"),
        ]
        .map(|(id, text)| (id, text.to_owned()))
        .into();
        JointRow {
            equipment: format!("E-{}", 310 + joint / 10),
            tag: format!("E-{}-CH-{joint:02}", 310 + joint / 10),
            texts,
            card_page: Page::Given((7 + 2 * joint).to_string()),
            studs: 24,
            thread: if joint % 3 == 0 { "M42" } else { "M48" }.into(),
            hours: 3.4,
        }
    });
    Register::new(words, rows.collect())
}

pub(crate) fn deviations(count: usize) -> Deviations {
    let write_in = |label: &str, width: f64| WriteIn {
        label: label.into(),
        width,
    };
    Deviations {
        furniture: furniture("deviation sheet", false),
        label: "deviations".into(),
        head: head("Deviation sheet", "one deviation a sheet"),
        count,
        boxes: vec![
            vec![
                write_in("deviation no.", 40.0),
                write_in("joint", 60.0),
                write_in("card box no.", 30.0),
                write_in("date YYYY-MM-DD", 40.0),
            ],
            vec![write_in("found by", 86.0), write_in("told to", 88.0)],
        ],
        rooms: vec![
            Room {
                head: head("What was found", "value, limit, where"),
                lines: 4,
                blank: false,
            },
            Room {
                head: head("Sketch or photo", ""),
                lines: 6,
                blank: true,
            },
            Room {
                head: head("What is done, and why it is enough", ""),
                lines: 3,
                blank: false,
            },
        ],
        decisions: [
            "use as it is",
            "make good",
            "replace",
            "concession by the owner",
        ]
        .map(str::to_owned)
        .to_vec(),
        decision_head: head("Decision", "one tick"),
        signatures: ["crew lead", "engineer", "owner"]
            .map(str::to_owned)
            .to_vec(),
    }
}

pub(crate) fn photos(count: usize) -> Photos {
    Photos {
        furniture: furniture("photos", false),
        label: "photos".into(),
        head: head("Photos", "as found; grey so that a copy keeps them"),
        photos: (1..=count)
            .map(|photo| PhotoEntry {
                file: format!("picture-{photo}.jpg"),
                tag: format!("E-310-CH-{photo:02}"),
                caption: "north channel, +6 m platform, seen from the ladder".into(),
            })
            .collect(),
    }
}

pub(crate) fn document(parts: Vec<Part>) -> Document {
    Document::new("en", parts)
}

pub(crate) fn request<'a>(
    document: &Document,
    files: BTreeMap<String, Vec<u8>>,
    overrides: &'a Overrides,
) -> Request<'a> {
    Request {
        template: "pack.typ",
        data: serde_json::to_vec(document).expect("documents are plain data"),
        files,
        overrides,
        properties: Properties {
            title: "HL-31-WP-007 Effluent cooler, channel end".into(),
            author: vec!["R. Olsen".into()],
            keywords: vec!["HL-31-WP-007".into(), "revision B".into()],
            date: Date {
                year: 2027,
                month: 3,
                day: 8,
            },
            ident: "HL-31-WP-007/B/pack".into(),
        },
        tagged: true,
    }
}
