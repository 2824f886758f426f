//! Sides of a made-up plant, built of blocks: every part can be made short or long.

use studbook::document::blocks::{
    Amount, Badge, Band, Block, Bolts, BoxColumn, BoxWidth, Card, Caution, Cautions, Cell, Danger,
    Deviation, Dial, Draft, Expected, Fact, Footer, Front, Grid, Head, Heads, Identity,
    IdentityLines, Keys, Line, List, MainValue, Mark, Notes, Order, Outline, OutlineLine, Picture,
    Row, Rows, Running, Second, Sector, Shape, Side, SideValue, Signature, Signatures, Stop,
    StopPart, Studs, Tag, Tick, Ticks, ToolMark, Volume, flow, interleave, place,
};
use studbook::document::geometry::Geometry;
use studbook::document::qr;
use studbook::typeset::{Date, Overrides, Properties, Request, Typeset, typeset};

fn texts(of: &[&str]) -> Vec<String> {
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

fn fact(label: &str, value: &str) -> Fact {
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

fn keys_beside() -> Block {
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

fn around(count: usize) -> Vec<f64> {
    (0..count)
        .map(|index| 360.0 / real(count) * real(index))
        .collect()
}

fn real(count: usize) -> f64 {
    f64::from(u32::try_from(count).expect("a small count"))
}

fn marks(angles: &[f64], text: impl Fn(usize) -> String) -> Vec<Mark> {
    let mark = |(index, angle): (usize, &f64)| Mark {
        angle: *angle,
        text: text(index),
        first: index == 0,
    };
    angles.iter().enumerate().map(mark).collect()
}

/// A flange with its nuts; above 32 they are numbered in groups of four.
pub(crate) fn flange(count: usize) -> Picture {
    let angles = around(count);
    let group = if count > 32 { 4 } else { 1 };
    let numbered: Vec<f64> = around(count / group);
    Picture {
        head: Head::new("From the nut side", "1 at the top, clockwise"),
        outline: Outline {
            edge: 650.0,
            washer: None,
            inner: 470.0,
            line: OutlineLine::Opening,
        },
        bolts: Bolts {
            shape: Shape::Nut,
            circle: 560.0,
            half: (560.0 * 2.2 / real(count)).min(43.0),
            angles: angles.clone(),
            driven: vec![],
        },
        numbers: marks(&numbered, |it| (it + 1).to_string()),
        letters: marks(&numbered, |it| {
            char::from(b'A' + u8::try_from(it % 12).expect("a letter")).to_string()
        }),
        divisions: if group > 1 {
            numbered
                .iter()
                .map(|it| it - 180.0 / real(count / group))
                .collect()
        } else {
            vec![]
        },
        clockwise: true,
        top: "top".into(),
        middle: texts(&["numbers run", "clockwise"]),
        tools: vec![ToolMark {
            angle: 0.0,
            reaction: angles.get(1).copied(),
        }],
        no_hands: vec![Sector {
            from: 2.0,
            to: 28.0,
        }],
        obstacles: vec![Sector {
            from: 232.0,
            to: 248.0,
        }],
        legend: texts(&["grey: no hands", "bar: arm bears here", "hatched: bracket"]),
        ..Picture::default()
    }
}

/// A tensioner with its jackbolts.
pub(crate) fn tensioner(count: usize) -> Picture {
    let angles = around(count);
    let driven = angles.iter().step_by(2).copied().collect();
    Picture {
        head: Head::new("Seen from above", "numbers run clockwise"),
        outline: Outline {
            edge: 90.0,
            washer: Some(82.0),
            inner: 40.0,
            line: OutlineLine::Stud,
        },
        bolts: Bolts {
            shape: Shape::Screw,
            circle: 65.0,
            half: 15.0_f64.min(65.0 * 2.6 / real(count)),
            angles: angles.clone(),
            driven,
        },
        numbers: marks(&angles, |it| (it + 1).to_string()),
        clockwise: true,
        middle: texts(&["stud", "M80×6"]),
        reaction: Some(Sector {
            from: 100.0,
            to: 170.0,
        }),
        positions: marks(&angles[..2], |it| ["X", "Y"][it].to_owned()),
        legend: texts(&[
            "heavy rings: driver in position X",
            "hatched: the driver leans here",
        ]),
        ..Picture::default()
    }
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

pub(crate) fn identity(word: &str, full: bool, g: &Geometry) -> Block {
    let lines = IdentityLines {
        name: "Effluent cooler, channel flange".into(),
        place: "north channel, +6 m platform".into(),
        class: "class A · side 1, do".into(),
        drawing: "drawing HL-31-M-2104 rev 3".into(),
    };
    Block::Identity(Identity {
        tag: Tag::new("E-310-CH-01", g),
        badge: Badge {
            word: word.into(),
            outlined: word == "LOOSEN",
        },
        lines: full.then_some(lines),
    })
}

pub(crate) fn do_heads(word: &str, g: &Geometry) -> Heads {
    Heads {
        first: vec![identity(word, true, g)],
        again: vec![identity(word, false, g)],
    }
}

pub(crate) fn record_heads(g: &Geometry) -> Heads {
    Heads::every(vec![identity("RECORD", false, g)])
}

/// Side one of a flange: cautions before ticks and before the work.
pub(crate) fn flange_front(count: usize, passes: Rows, g: &Geometry) -> Front {
    let work = Band::beside(
        vec![Block::Picture(Box::new(flange(count)))],
        vec![Block::Rows(passes), stop()],
        g,
    );
    let whole = [
        danger(),
        cautions(2),
        Block::Ticks(ticks(9, None)),
        keys(),
        cautions(1),
    ];
    let mut bands: Vec<Band> = whole.into_iter().map(|it| Band::of(it, g)).collect();
    bands.push(work);
    Front {
        bands,
        foot: Some(order(count.div_ceil(4).min(24))),
    }
}

/// Side one of a tensioner with driver.
pub(crate) fn tensioner_front(count: usize, g: &Geometry) -> Front {
    let studs = Studs {
        studs: marks(&around(6), |it| (it + 1).to_string()),
        words: texts(&["6 studs", "1 at the top", "in the order", "1 4 2 5 3 6"]),
        spare: Some(5),
        ..Studs::default()
    };
    let dial = Dial {
        angle: -40.0,
        words: texts(&["one round:", "40 deg, two thirds", "of a flat"]),
    };
    let left = vec![
        Block::Picture(Box::new(tensioner(count))),
        Block::Studs(studs),
        Block::Dial(dial),
    ];
    let bands = [danger(), Block::Ticks(ticks(6, None)), keys_beside()];
    let mut bands: Vec<Band> = bands.into_iter().map(|it| Band::of(it, g)).collect();
    bands.push(Band::beside(
        left,
        vec![Block::Rows(rows(3, Some(2))), stop()],
        g,
    ));
    Front { bands, foot: None }
}

/// Side two with every kind of box.
pub(crate) fn record() -> Vec<Block> {
    vec![
        list("Tools used", BoxWidth::Number, 3),
        list("Materials", BoxWidth::Number, 3),
        list("As found", BoxWidth::Number, 3),
        grid(8, 3, Cell::Number),
        grid(16, 1, Cell::Tick),
        list("", BoxWidth::Strokes, 1),
        deviation(),
        signatures(6),
    ]
}

pub(crate) fn card(front: Vec<Side>, back: Vec<Side>, g: &Geometry) -> Card {
    let notes = || {
        let lines = Block::Notes(Notes::new(Head::new("Notes", "")));
        flow(&[lines], &record_heads(g), g).swap_remove(0)
    };
    let sides = interleave(front, back, notes, |it, of| format!("sheet {it} of {of}"));
    let count = sides.len();
    Card {
        tag: "E-310-CH-01".into(),
        running: Running {
            left: "Harrow Lake Works · unit 31 · crew card".into(),
            right: "HL-31-WP-007 revision B".into(),
        },
        draft: Some(Draft {
            word: "DRAFT".into(),
            reason: "DRAFT: the zero has no proof".into(),
        }),
        sides,
        footer: Footer {
            number: "HL-31-WP-007 revision B".into(),
            code_label: "content".into(),
            code: "9F3A-11C2".into(),
            issued: "issued 2027-03-08".into(),
            notes: [
                "Uncontrolled when printed, unless stamped. Check the revision before use.",
                "In doubt, stop and ask.",
            ]
            .map(Into::into),
            pages: (1..=count)
                .map(|it| format!("page {it} of {count}"))
                .collect(),
            qr: qr::svg("HL-31-WP-007/B/9F3A-11C2"),
        },
    }
}

/// Fronts and backs of many sizes.
pub(crate) fn cards(g: &Geometry) -> Vec<Card> {
    let back = || flow(&record(), &record_heads(g), g);
    let flanges = [4, 8, 24, 32, 48].map(|count| {
        card(
            place(
                &flange_front(count, rows(3, None), g),
                &do_heads("TIGHTEN", g),
                g,
            ),
            back(),
            g,
        )
    });
    let tensioners = [6, 12, 24, 32].map(|count| {
        card(
            place(&tensioner_front(count, g), &do_heads("LOOSEN", g), g),
            back(),
            g,
        )
    });
    let long = flange_front(24, rows(14, None), g);
    let long = card(place(&long, &do_heads("TIGHTEN", g), g), back(), g);
    flanges
        .into_iter()
        .chain(tensioners)
        .chain([long])
        .collect()
}

pub(crate) fn lay_out(cards: Vec<Card>, overrides: &Overrides) -> Typeset {
    let volume = Volume {
        language: "en".into(),
        cards,
    };
    let request = Request {
        template: "sheets.typ",
        data: serde_json::to_vec(&volume).expect("plain data"),
        files: std::collections::BTreeMap::new(),
        overrides,
        properties: Properties {
            title: "Cards".into(),
            author: vec!["R. Olsen".into()],
            keywords: vec![],
            date: Date {
                year: 2027,
                month: 3,
                day: 8,
            },
            ident: "HL-31-WP-007/B/cards".into(),
        },
        tagged: false,
    };
    typeset(&request).unwrap_or_else(|faults| panic!("{faults:#?}"))
}
