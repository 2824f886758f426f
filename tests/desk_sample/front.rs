//! The sections behind the cover of a sample pack.

use studbook::document::card::Head;
use studbook::document::desk::{Cell, Column, Page, Paragraphs, Table};
use studbook::document::pack::{
    Block, Cautions, INDEX_ROWS, Panel, Section, Sections, Signal, one_page_of_panels,
};

use super::cover::findings;
use super::{furniture, head, table};

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
