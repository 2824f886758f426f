//! Side two of the cards for multi-jackbolt tensioners.

use studbook::document::card::{CellRow, Cells, JackboltRecord};

use super::jackbolts::{Make, strings};
use super::*;

pub(super) fn grid(title: (&str, &str), columns: &[String], rows: Vec<GridRow>) -> Grid {
    Grid {
        head: head(title.0, title.1),
        columns: columns.to_vec(),
        rows,
    }
}

/// What side two holds of the rounds: lines per stud up to four studs, small boxes above.
fn jackbolt_record(make: Make) -> JackboltRecord {
    let count = make.least + 3;
    let columns: Vec<String> = if count <= 8 {
        (1..=count).map(|round| format!("C{}", round + 2)).collect()
    } else {
        strings(&["C3", "C4", "C5", "C6", "C7", "C8", "last but 1", "last"])
    };
    let measured: Vec<GridRow> = match make.studs {
        0..=4 => (1..=make.studs)
            .map(|stud| grid_row(50 + stud, &stud.to_string(), ""))
            .collect(),
        _ => vec![grid_row(51, "1", ""), grid_row(52, "9", "")],
    };
    let checks = [
        row(60, "spindles turned", "accept all 16"),
        row(61, "reversal check", "215, 5 deg or less"),
        row(62, "second person", "tried, at least 4"),
        row(63, "their largest turn", "below 20 deg"),
    ];
    JackboltRecord {
        rounds: Some(grid(
            (
                "Rounds at 315 N·m, turn in degrees",
                "at least 5 rounds and largest below 20",
            ),
            &columns,
            vec![
                grid_row(40, "largest", ""),
                grid_row(41, "mean", ""),
                grid_row(42, "done by", ""),
            ],
        )),
        tally: (count > 8).then(|| {
            row(
                43,
                "rounds made, one stroke for each",
                "at least 14, after 17 stop and call",
            )
        }),
        studs: (make.studs > 4).then(|| Cells {
            head: head("Last round, largest turn of each stud", "below 20 deg"),
            kind: ColumnKind::Tick,
            columns: (1..=make.studs).map(|stud| stud.to_string()).collect(),
            rows: vec![CellRow {
                name: "last".into(),
                number: "44".into(),
            }],
        }),
        measured: Some(grid(
            ("Stud end to body, mm", "accept stretch 1.19 to 1.45"),
            &strings(&["before", "after", "stretch", "above body"]),
            measured,
        )),
        checks: RecordList {
            head: head("Check", ""),
            rows: checks[..if make.studs > 4 { 2 } else { 4 }].to_vec(),
        },
        before_driver: None,
        ticks: None,
    }
}

pub(super) fn record_of(make: Make) -> Record {
    let mut record = super::record();
    let most = if make.studs > 4 { 2 } else { 4 };
    record.tools.rows.truncate(most);
    record.materials.rows.truncate(most);
    record.as_found = RecordList {
        head: head("Seat as found", "mm"),
        rows: vec![
            row(28, "gap spread", "limit 0.5"),
            row(29, "washer dent", "limit 0.1"),
        ],
    };
    record.gaps = None;
    record.stretch = None;
    record.last_round = RecordList::default();
    record.protrusion = None;
    record.jackbolts = Some(jackbolt_record(make));
    record
}
