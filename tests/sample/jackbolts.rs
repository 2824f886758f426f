//! Cards for multi-jackbolt tensioners of a made-up plant. The numbers are plausible and only for the
//! look; no test reads them as results.

use studbook::document::card::{
    Caution, Circle, Expected, Jackbolts, Mark, Order, Picture, Round, Rounds, Sector, SideValue,
    StopPart, StopRule, StudRing,
};

use super::jackbolt_record::record_of;

use super::ring::{angle, letter};
use super::*;

/// What a sample is made of.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Make {
    /// Jackbolts of one tensioner.
    pub(crate) jackbolts: usize,
    /// Studs with a tensioner each.
    pub(crate) studs: usize,
    /// Full-value rounds at least.
    pub(crate) least: usize,
    /// Positions of the driver; none without one.
    pub(crate) positions: Option<usize>,
}

pub(crate) const fn make(jackbolts: usize, studs: usize) -> Make {
    Make {
        jackbolts,
        studs,
        least: 5,
        positions: Some(1),
    }
}

fn marks(count: usize) -> Vec<Mark> {
    let mark = |index: usize| Mark {
        angle: angle(index, count),
        text: (index + 1).to_string(),
        first: index == 0,
    };
    (0..count).map(mark).collect()
}

fn circle(make: Make) -> Circle {
    let count = make.jackbolts;
    let positions = make.positions.unwrap_or(1);
    let letters = ["X", "Y", "Z", "W"];
    Circle {
        head: head("Seen from above", "numbers clockwise"),
        body: 210.0,
        washer: 200.0,
        circle: 156.0,
        jackbolt: 30.0_f64.min(400.0 / count as f64),
        stud: 100.0,
        jackbolts: (0..count).map(|index| angle(index, count)).collect(),
        numbers: marks(count),
        clockwise: true,
        words: vec!["stud".into(), "M100×6".into()],
        positions: if positions > 1 {
            let mark = |index: usize| Mark {
                angle: angle(index, count),
                text: letters[index].into(),
                first: index == 0,
            };
            (0..positions).map(mark).collect()
        } else {
            Vec::new()
        },
        driven: if positions > 1 {
            let every = (0..count).step_by(positions);
            every.map(|index| angle(index, count)).collect()
        } else {
            Vec::new()
        },
        reaction: make.positions.map(|_| Sector {
            from: 134.0,
            to: 150.0,
        }),
        paint: false,
        legend: if positions > 1 {
            vec![
                "X, Y: mark of the driver · ring: spindle at X".into(),
                "bar: reaction on frame pad".into(),
            ]
        } else {
            vec!["bar: reaction on frame pad".into()]
        },
    }
}

fn studs(count: usize) -> Option<StudRing> {
    (count > 1).then(|| StudRing {
        studs: if count <= StudRing::MOST {
            marks(count)
        } else {
            Vec::new()
        },
        words: vec![
            format!("{count} tie rods"),
            "1 at north".into(),
            "all in a round,".into(),
            "then the next".into(),
        ],
    })
}

pub(super) fn ticks_of(studs: usize) -> Vec<Column> {
    let column = |head: String| Column {
        head,
        kind: ColumnKind::Tick,
    };
    match studs {
        1 => vec![column("done".into())],
        2..=4 => (1..=studs).map(|stud| column(stud.to_string())).collect(),
        _ => vec![column("all".into())],
    }
}

pub(super) fn expected(main: &str, under: &str) -> Expected {
    Expected {
        main: main.into(),
        under: under.into(),
    }
}

fn round(name: &str, number: &str, line: &str, of: [&str; 3], boxes: usize) -> Round {
    Round {
        name: name.into(),
        dial: None,
        value: Some(value(number, "N·m")),
        line: line.into(),
        expected: vec![expected(of[0], of[1]), expected(of[2], "")],
        boxes: vec![true; boxes],
    }
}

fn further(name: &str, line: &str, load: &str, turn: &str) -> Round {
    Round {
        name: name.into(),
        dial: None,
        value: None,
        line: line.into(),
        expected: vec![expected(load, ""), expected(turn, "")],
        boxes: Vec::new(),
    }
}

fn rounds(make: Make) -> Rounds {
    let columns = ticks_of(make.studs);
    // Four ticks leave room for one column of what is expected; turns then stand in the line.
    let narrow = columns.len() > 2;
    let boxes = columns.len();
    let line = |long: &str, short: &str| (if narrow { short } else { long }).to_owned();
    let mut rows = vec![round(
        "C0",
        "35",
        &line("seat, 10 %: 1 9 5 13, all", "seat, 10 %"),
        ["4 %", "2–8", ""],
        boxes,
    )];
    if let Some(positions) = make.positions {
        let many = positions > 1;
        let long = if many {
            "driver 80 %: X Y X Y X Y"
        } else {
            "driver, 80 %, one stroke"
        };
        let short = if many { "X Y X Y X Y" } else { "driver 80 %" };
        rows.push(round(
            "D1",
            "250",
            &line(long, short),
            ["71 %", "62–77", ""],
            boxes,
        ));
        let check = line("lift off, try 1 5 9 13", "lift off, try four");
        rows.push(round("D2", "215", &check, ["", "", "5 deg"], boxes));
    } else {
        let star = line("50 %, star 1 9 5 13", "50 %, star");
        rows.push(round(
            "C1",
            "160",
            &star,
            ["38 %", "30–44", "33 deg"],
            boxes,
        ));
        let star = line("75 %, star 1 9 5 13", "75 %, star");
        rows.push(round(
            "C2",
            "240",
            &star,
            ["60 %", "52–66", "31 deg"],
            boxes,
        ));
    }
    let circle = line("100 %, in circle 1 to last", "100 %, circle");
    let mut full = round("C3", "315", &circle, ["78 %", "70–84", "33 deg"], boxes);
    full.boxes = vec![false; boxes];
    rows.push(full);
    rows.push(further("C4", "", "84 %", "20 deg"));
    rows.push(further("C7", "", "93 %", "9 deg"));
    let mut expected = vec![
        expected("stud load", "predicted"),
        expected("largest", "turn"),
    ];
    if narrow {
        expected.truncate(1);
        for row in &mut rows {
            let turn = row.expected.remove(1).main;
            if row.value.is_none() {
                row.line = format!("largest turn {turn}");
            }
        }
    }
    Rounds {
        head: head("Rounds", ""),
        expected,
        columns,
        rows,
        end: Vec::new(),
    }
}

fn stop(make: Make) -> StopRule {
    StopRule {
        title: "Stop when both are true".into(),
        parts: [
            StopPart {
                before: "at least".into(),
                value: value(&make.least.to_string(), ""),
                words: "full rounds".into(),
            },
            StopPart {
                before: "none".into(),
                value: value("20", "deg"),
                words: "or more".into(),
            },
        ],
        and: "and".into(),
        after: format!(
            "Not true after {} rounds: stop, call the engineer.",
            make.least + 3
        ),
    }
}

pub(super) fn strings(words: &[&str]) -> Vec<String> {
    words.iter().map(|word| (*word).to_owned()).collect()
}

/// The strip with the order of the studs, or of the jackbolts where only one stud is there.
fn order_of(make: Make) -> Order {
    if make.studs <= 1 {
        return Order::default();
    }
    let moves: Vec<(String, String)> = (0..make.studs)
        .map(|stud| (letter(stud), (stud + 1).to_string()))
        .collect();
    Order::new("Order", &moves, "")
}

/// A card for tightening, with a driver when `make` has one.
pub(crate) fn tightening(make: Make) -> Card {
    let mut card = super::tightening(4);
    card.running.left =
        "Harrow Lake Works · press shop · crew card, jackbolt tensioners with driver".into();
    card.identity.tag = Tag::new("PR-02-TR");
    card.identity.equipment = format!("Press 2, tie rods, {} tensioners", make.studs);
    card.danger.hazard = "Ram can drop 80 t. Oil stands at 315 bar.".into();
    card.danger.stop = "Nothing turns until the ram rests on its blocks.".into();
    card.cautions = vec![Caution::new(
        "WARNING",
        true,
        "The head of the driver swings against its pad. Hands off while it can run.",
        Before::Steps,
    )];
    card.ticks.head = head(
        "Before the first jackbolt",
        "tick what you have seen yourself",
    );
    card.ticks.items = strings(&[
        "Seat and washer clean, flat, right side up",
        "Grey paste on threads and on every tip",
        "Jackbolts flush with the underside",
        "Body run down, gap spread 0.5 mm at most",
        "16 spindles on 156 mm, sockets 17 mm",
        "Every socket 80 % down on its hexagon",
        "Driver on tighten, reads back 250 N·m",
        "Reaction on the pad, hoist carries 38 kg",
        "People clear, hands off, one voice",
    ]);
    card.target.label = "Full value, wrench TW-14".into();
    card.target.value = value("315", "N·m");
    card.target.words = "three one five, every jackbolt".into();
    card.target.second = None;
    card.target.facts = vec![
        fact(
            "tensioners",
            &format!("{} × {} × M20", make.studs, make.jackbolts),
        ),
        fact("studs", "M100×6"),
        fact("lubricant", "grey paste"),
        fact("socket", "17 mm hexagon"),
        fact("wrench", "TW-14 (902)"),
    ];
    card.picture = Picture::default();
    card.steps = Steps::default();
    card.order = order_of(make);
    card.jackbolts = Some(Box::new(Jackbolts {
        values: vec![
            SideValue {
                label: "Seat, wrench TW-09".into(),
                value: value("35", "N·m"),
                words: "10 % of full".into(),
            },
            SideValue {
                label: "Driver MD-2, 80 %".into(),
                value: value("250", "N·m"),
                words: "never above 280".into(),
            },
        ],
        circle: circle(make),
        studs: studs(make.studs),
        rounds: rounds(make),
        stop: Some(stop(make)),
        key: None,
        measured: vec![row(19, "stud end above body", "limit 0 to 3 mm")],
    }));
    card.record = record_of(make);
    let mut card = card.giving_way();
    // A planner's next step: the three lines that the record side asks for as well.
    if card.free_height()[0] < 0.0 {
        card.ticks.items.truncate(6);
    }
    card
}

/// Every text as long as it may be.
pub(crate) fn longest() -> Card {
    let mut card = tightening(make(32, 4));
    card.identity.tag = Tag::new("E-310A-CH-01/NORTH-UPPER-SIDE-22");
    card.identity.equipment = filled(48);
    card.identity.place = filled(60);
    card.danger.hazard = filled(52);
    card.ticks.items = (0..6).map(|_| filled(38)).collect();
    card.target.label = filled(24);
    card
}
