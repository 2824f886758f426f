//! Cards for loosening multi-jackbolt tensioners in release rounds.

use studbook::document::card::{DialKey, JackboltRecord, Order, Round, Rounds, SideValue};

use super::jackbolt_record::grid;
use super::jackbolts::{Make, expected, strings, ticks_of, tightening};
use super::*;

fn release(index: usize, of: usize) -> Round {
    let angle = (3.0 + index as f64 * 42.0 / of as f64).min(45.0);
    Round {
        name: format!("R{}", index + 1),
        dial: Some(-angle),
        value: Some(value(&format!("{angle:.0}"), "deg")),
        line: format!("1/{} flat · {:.0} mm", (60.0 / angle).round(), angle * 10.5),
        expected: vec![expected(&format!("{} %", 95 - 90 * index / of), "130 %")],
        boxes: vec![true],
    }
}

/// A card for loosening with as many release rounds.
pub(crate) fn loosening(make: Make, count: usize) -> Card {
    let mut card = tightening(make);
    card.identity.badge = Badge {
        word: "LOOSEN".into(),
        outlined: true,
    };
    card.cautions.truncate(usize::from(count <= 10));
    card.ticks.head = head("Before the first turn", "tick what you have seen yourself");
    card.ticks.items = strings(&[
        "Frame below 60 °C, touch reading taken",
        "Sockets clean, oil on, 20 minutes waited",
        "Paint line over each jackbolt and body",
        "Nobody above a rod, deck below closed",
        "Caps off, jackbolt 1 found and marked",
        "Driver off the deck, hoist clear",
    ]);
    card.ticks.items.truncate(if count > 10 { 4 } else { 6 });
    card.target.label = "Never exceed".into();
    card.target.value = value("410", "N·m");
    card.target.words = "four one zero; then stop, call".into();
    card.target.facts = vec![
        fact(
            "tensioners",
            &format!("{} × {}", make.studs, make.jackbolts),
        ),
        fact("wrench", "TW-21, 600 mm"),
    ];
    if let Some(work) = &mut card.jackbolts {
        work.values = vec![SideValue {
            label: "Expect to break at".into(),
            value: value("250 to 360", "N·m"),
            words: "by hand, no driver".into(),
        }];
        work.circle.paint = true;
        work.circle.reaction = None;
        work.circle.positions.clear();
        work.circle.driven.clear();
        work.circle.legend.clear();
        work.stop = None;
        work.measured.clear();
        work.key = (count <= 10).then(|| DialKey {
            angle: -20.0,
            words: strings(&["Black is the turn", "from the line.", "Anticlockwise."]),
        });
        if count > 10 {
            work.studs = None;
        }
        work.rounds = Rounds {
            head: head("Release rounds", ""),
            expected: vec![expected("load left", "last jackbolt")],
            columns: ticks_of(if make.studs > 2 { 5 } else { make.studs }),
            rows: (0..count).map(|index| release(index, count)).collect(),
            end: strings(&["All jackbolts, all studs, then next."]),
        };
        let boxes = work.rounds.columns.len();
        for round in &mut work.rounds.rows {
            round.boxes = vec![true; boxes];
        }
    }
    if count > 10 {
        card.order = Order::default();
    }
    card.record.jackbolts = Some(seized());
    card
}

fn seized() -> JackboltRecord {
    JackboltRecord {
        measured: Some(grid(
            ("Seized jackbolts", "others at most 345 N·m"),
            &strings(&["stud", "jackbolt", "tried, N·m", "came free"]),
            vec![
                grid_row(40, "first", ""),
                grid_row(41, "second", ""),
                grid_row(42, "third", ""),
            ],
        )),
        checks: RecordList {
            head: head("Rounds made", ""),
            rows: vec![
                row(43, "rounds made", "printed 10"),
                row(44, "largest torque", "never 410"),
            ],
        },
        before_driver: None,
        ticks: Some(Ticks {
            head: head("Run-out and inspection", "replace the set at the first no"),
            items: strings(&[
                "Every jackbolt run out by hand",
                "Tips flat, not mushroomed",
                "Washer not dented",
                "Threads clean, no metal in the paste",
                "Body turns freely on the stud",
                "Parts marked by stud and bagged",
            ]),
            ..Ticks::default()
        }),
        ..JackboltRecord::default()
    }
}
