//! Blocks with words of a made-up plant, each short or long.

use studbook::document::blocks::{
    Amount, Block, BoxColumn, BoxWidth, Caution, Cautions, Cell, Danger, Deviation, Expected, Fact,
    Grid, Head, Keys, Line, List, MainValue, Order, Row, Rows, Second, SideValue, Signature,
    Signatures, Stop, StopPart, Tick, Ticks,
};

pub(crate) fn texts(of: &[&str]) -> Vec<String> {
    of.iter().map(|it| (*it).to_owned()).collect()
}

pub(crate) fn ticks(count: usize, spare: Option<u8>) -> Ticks {
    const TEXTS: [&str; 9] = [
        "Tag read by two people, labels in date",
        "Zero shown at this joint: gauge and vent",
        "Nobody but the crew inside the barrier",
        "Hoses, couplings whole, no kink, no leak",
        "BS-75 on the south nut, tied off",
        "Reaction arm on the flange of nut 2",
        "Make-up signed on side 2",
        "Dead-head 455 bar, then set 140 bar",
        "Barrier at 3 m, pump in sight",
    ];
    let item = |index: usize| Tick {
        text: TEXTS[index % TEXTS.len()].into(),
        hold: if index == 6 {
            "H3".into()
        } else {
            String::new()
        },
        spare,
    };
    Ticks::new(
        Head::new("Before the first pass", "tick what you have seen yourself"),
        (0..count).map(item).collect(),
    )
}

pub(crate) fn danger() -> Block {
    Block::Danger(Danger {
        word: "DANGER".into(),
        hazards: texts(&["Hydrogen-rich gas, 92 bar, 310 °C behind this joint."]),
        stop: "No nut moves until zero is shown at this joint.".into(),
        point: "H2".into(),
        boxes: [
            "isolation certificate",
            "zero pressure seen at",
            "time",
            "initials",
        ]
        .map(Into::into),
    })
}

pub(crate) fn cautions(count: usize) -> Block {
    let item = |index: usize| Caution {
        word: ["DANGER", "WARNING", "CAUTION", "NOTICE"][index % 4].into(),
        triangle: index % 4 < 3,
        text: [
            "Oil jet enters the skin from 7 bar on. Never feel for a leak.",
            "Arm closes with tonnes and swings on reverse. Hands off.",
            "12.4 kg on its hanger: nobody below it.",
            "Paste of this card only, another one changes the load.",
        ][index % 4]
            .into(),
    };
    Block::Cautions(Cautions {
        items: (0..count).map(item).collect(),
    })
}

pub(crate) fn fact(label: &str, value: &str) -> Fact {
    Fact {
        label: label.into(),
        value: Amount::given(value, ""),
    }
}

pub(crate) fn keys() -> Block {
    Block::Keys(Box::new(Keys {
        main: MainValue {
            label: "Target, these two wrenches only".into(),
            value: Amount::given("455", "bar"),
            words: "four five five".into(),
            second: Some(Second {
                number: "4150".into(),
                unit: "N·m".into(),
                words: "torque at 455 bar".into(),
            }),
        },
        others: vec![],
        facts: vec![
            fact("studs", "24 × M48×5"),
            fact("wrenches", "HW-07, HW-08"),
            fact("socket", "75 mm"),
            fact("pump", "P-03, G-21"),
            fact("lubricant", "grey paste"),
        ],
    }))
}

pub(crate) fn keys_beside() -> Block {
    let value = |label: &str, value: Amount| SideValue {
        label: label.into(),
        value,
        words: "80 %, never above 280".into(),
    };
    Block::Keys(Box::new(Keys {
        main: MainValue {
            label: "Jackbolts by hand, TW-31".into(),
            value: Amount::given("240", "N·m"),
            words: "two four zero".into(),
            second: None,
        },
        others: vec![
            value("Driver MD-3, limit", Amount::given("233", "N·m")),
            value(
                "Seat torque",
                Amount::missing("to be given by the engineer"),
            ),
        ],
        facts: vec![
            fact("stud", "M80×6"),
            fact("jackbolts", "12 × M20"),
            fact("paste", "JB-2, no other"),
            Fact {
                label: "socket".into(),
                value: Amount::missing("to be given by the planner"),
            },
        ],
    }))
}

pub(crate) fn rows(count: usize, further: Option<u8>) -> Rows {
    let row = |index: usize| Row {
        name: format!("P{}", index + 1),
        dial: (index % 2 == 1).then_some(40.0),
        value: Some(if index == 2 {
            Amount::missing("to be given by the planner")
        } else {
            Amount::given("455", "bar")
        }),
        line: "30 %, A to M, gaps".into(),
        expected: vec![Expected {
            main: "78 %".into(),
            under: "70–84".into(),
        }],
        boxes: vec![index != 3],
        hold: if index == 1 {
            "H3".into()
        } else {
            String::new()
        },
        spare: None,
    };
    let mut rows: Vec<Row> = (0..count).map(row).collect();
    if further.is_some() {
        let name = |it| Row {
            name: format!("P{it}"),
            line: "as before".into(),
            expected: vec![Expected {
                main: "92 %".into(),
                under: "88–95".into(),
            }],
            spare: further,
            ..Row::default()
        };
        rows.extend((count + 1..count + 4).map(name));
    }
    let column = |head: &str, width| BoxColumn {
        head: head.into(),
        width,
    };
    Rows {
        head: Head::new("Passes", ""),
        expected: vec![Expected {
            main: "load".into(),
            under: "range".into(),
        }],
        boxes: vec![column("done", BoxWidth::Tick)],
        rows,
        end: texts(&["Break: redo the pass from A."]),
        ..Rows::default()
    }
}

pub(crate) fn stop() -> Block {
    let part = |before: &str, number: &str, unit: &str, words: &str| StopPart {
        before: before.into(),
        value: Some(Amount::given(number, unit)),
        words: words.into(),
    };
    Block::Stop(Stop {
        title: "Finished when both hold".into(),
        parts: vec![
            part("at least", "5", "", "rounds made"),
            part("below", "20", "deg", "largest turn"),
        ],
        and: "and".into(),
        after: "Not met after P8: stop, call the engineer.".into(),
        ..Stop::default()
    })
}

pub(crate) fn order(count: usize) -> Block {
    let moves = (0..count).map(|it| {
        (
            char::from(b'A' + u8::try_from(it % 24).expect("a letter")).to_string(),
            format!("{}·{}", it + 1, it + 1 + count),
        )
    });
    Block::Order(Order::new(
        "Order",
        moves.collect(),
        "The full list stands on the note.",
    ))
}

pub(crate) fn list(head: &str, boxes: BoxWidth, count: usize) -> Block {
    let line = |it: usize| {
        Line::new(
            (20 + it).to_string(),
            ["HW-07", "gasket", "centreline", "P-03"][it % 4],
            "limit 1.5",
        )
    };
    Block::List(List::new(
        Head::new(head, "mm"),
        boxes,
        (0..count).map(line).collect(),
    ))
}

pub(crate) fn grid(columns: usize, rows: usize, cell: Cell) -> Block {
    let line = |it: usize| Line::new((40 + it).to_string(), format!("P{it}"), "");
    let columns = (1..=columns).map(|it| it.to_string()).collect();
    Block::Grid(Grid::new(
        Head::new("Gap, mm", "largest less smallest at most 0.25"),
        columns,
        (0..rows).map(line).collect(),
        cell,
    ))
}

pub(crate) fn signatures(count: usize) -> Block {
    let item = |it: usize| Signature {
        number: (60 + it).to_string(),
        label: if it < 2 {
            "HOLD H3 joint, gasket, paste are right · crew lead".into()
        } else {
            "assembled by".into()
        },
        hold: it < 2,
    };
    let last = Some(Line::new("70", "tag stub torn off and handed in", ""));
    Block::Signatures(Signatures::new(
        Head::new(
            "Signed",
            "name in capitals, signature · date · time at hold points",
        ),
        (0..count).map(item).collect(),
        last,
    ))
}

pub(crate) fn deviation() -> Block {
    Block::Deviation(Deviation {
        head: Head::new("Deviation", "number, what"),
        number: "43".into(),
        options: ["none", "yes"].map(Into::into),
        next: Head::new("For next time", "galling, worn tips"),
        next_number: "44".into(),
    })
}
