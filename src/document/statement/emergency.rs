//! Whom to call, what is done first when it happens, when the work stops, who was told.

use crate::document::blocks::Head;
use crate::document::build::Context;
use crate::document::build::capital;
use crate::document::build::pack::works::{Works, shared};
use crate::document::desk::{Cell, Column, Table};
use crate::document::pack::WriteIn;
use crate::document::voice::Voice;
use crate::job;
use crate::joint::Who;
use crate::work::{HazardKind, Kind, Step, Work};

use super::{Briefing, Called, Emergency, asked, own, text, text_or_box};

/// Names that the record of the briefing has room for.
const BRIEFED: usize = 24;

/// What happens whatever the joints hold.
const ALWAYS: [&str; 2] = ["alarm", "injury"];

/// The page.
pub(super) fn emergency(context: &Context<'_>, works: &Works) -> Emergency {
    let label = |key: &str| context.label(&format!("statement.emergency.{key}"));
    Emergency {
        label: "emergency".to_owned(),
        title: label("title"),
        line: label("line"),
        called: called(context),
        happens: happens(context, works),
        stops: stops(context, works),
        briefing: briefing(context),
    }
}

fn called(context: &Context<'_>) -> Vec<Called> {
    let given = own(context).and_then(|own| own.emergency.as_ref()?.get());
    let of = |key: &str, value: Option<String>, line: Option<String>| Called {
        label: context.label(&format!("statement.emergency.called.{key}")),
        value,
        who: asked(context, Who::Operator),
        line: line.unwrap_or_default(),
    };
    let part = |pick: fn(&job::Emergency) -> Option<String>| given.and_then(pick);
    let reach = given.and_then(|it| it.reach.as_ref()?.get());
    vec![
        of(
            "call",
            part(|it| text(it.call.as_ref())),
            part(|it| text(it.say.as_ref())),
        ),
        of("muster", part(|it| text(it.muster.as_ref())), None),
        of(
            "hospital",
            part(|it| text(it.hospital.as_ref())),
            reach.map(|reach| {
                let minutes = crate::work::Value::of(*reach);
                let time = Voice::new(context).value(&minutes);
                context.say1("statement.emergency.reach", "time", time)
            }),
        ),
        of("rescue", part(|it| text(it.rescue.as_ref())), None),
        of(
            "first_aid",
            text(own(context).and_then(|own| own.first_aid.as_ref())),
            None,
        ),
    ]
}

/// What is done when it happens: what always may, then what these joints bring with them.
fn happens(context: &Context<'_>, works: &Works) -> Table {
    let voice = Voice::new(context);
    let hazards = works.hazards();
    let present: Vec<HazardKind> = hazards.iter().map(|it| it.kind).collect();
    let mut table = Table::new(
        head(context, "happens"),
        vec![Column::new("", 46.0).strong(), Column::new("", 130.0)],
    );
    let keys = ALWAYS.into_iter().chain(present.iter().map(|it| it.key()));
    table.rows = keys
        .filter_map(|key| {
            let of = |field| voice.find(&["statement", "happens", key, field]);
            let (what, first, then) = (of("what")?, of("first")?, of("then")?);
            let done = Cell::Two([first.to_owned(), then.to_owned()]);
            Some(vec![Cell::text(what), done])
        })
        .collect();
    table
}

/// Every decision of the works, numbered: when, then what, and who lets the work go on.
fn stops(context: &Context<'_>, works: &Works) -> Table {
    let voice = Voice::new(context);
    let label = |key: &str| context.label(&format!("statement.stops.{key}"));
    let mut table = Table::new(
        head(context, "stops"),
        vec![
            Column::new("", 8.0),
            Column::new(label("when"), 68.0).strong(),
            Column::new(label("then"), 74.0),
            Column::new(label("who"), 26.0),
        ],
    );
    let all: Vec<&Work> = works.merged.iter().collect();
    let alike = |one: &Work, other: &Work, step: &Step| {
        one.method == other.method
            || ![one, other]
                .iter()
                .any(|work| voice.has_own_words(work.method, step))
    };
    let steps = shared(&all, |_| true, alike);
    let decisions = steps
        .iter()
        .filter(|shared| shared.step.kind == Kind::Decision);
    let mut rows: Vec<[String; 3]> = Vec::new();
    for shared in decisions {
        let Some(work) = shared.works.first() else {
            continue;
        };
        let say = |fields: &[&str]| voice.words(work.method, &shared.step, fields, &[]);
        let (Some(when), Some(then)) = (say(&["when", "card"]), say(&["do", "card"])) else {
            continue;
        };
        let who = capital(voice.role(shared.step.who));
        let row = [when, capital(&then), who];
        if !rows.contains(&row) {
            rows.push(row);
        }
    }
    table.rows = (1..)
        .zip(rows)
        .map(|(number, row)| numbered(number, row.map(Cell::Text)))
        .collect();
    let weather = text(own(context).and_then(|own| own.weather.as_ref()));
    if works
        .hazards()
        .iter()
        .any(|it| it.kind == HazardKind::Weather)
        || weather.is_some()
    {
        let limits = text_or_box(context, weather, Who::Operator);
        let number = table.rows.len() + 1;
        let cells = [Cell::Text(label("weather")), limits, Cell::text("")];
        table.rows.push(numbered(number, cells));
    }
    table
}

fn numbered(number: usize, cells: [Cell; 3]) -> Vec<Cell> {
    let number = Cell::Text(number.to_string());
    std::iter::once(number).chain(cells).collect()
}

fn head(context: &Context<'_>, table: &str) -> Head {
    Head {
        title: context.label(&format!("statement.{table}_head.title")),
        note: context.label(&format!("statement.{table}_head.note")),
    }
}

fn briefing(context: &Context<'_>) -> Briefing {
    let label = |key: &str| context.label(&format!("statement.briefing.{key}"));
    let write_in = |key: &str, width| WriteIn {
        label: label(key),
        width,
    };
    Briefing {
        head: head(context, "briefing"),
        boxes: vec![
            write_in("given", 64.0),
            write_in("date", 52.0),
            write_in("joint", 56.0),
        ],
        columns: ["name", "signature", "language"].map(label),
        lines: BRIEFED,
    }
}
