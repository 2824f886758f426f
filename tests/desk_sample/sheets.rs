//! A sample register, deviation sheets and photos.

use std::collections::BTreeMap;
use studbook::document::desk::Page;
use studbook::document::pack::{Deviations, PhotoEntry, Photos, Room, WriteIn};
use studbook::document::register::{ColumnId, JointRow, Register, Words};

use super::{furniture, head};

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
