//! Permits and certificates: those of the job, and those that its joints call for.

use crate::document::blocks::Head;
use crate::document::desk::{Cell, Column, Table};
use crate::document::pack::{Block, Section};
use crate::job::Permit;
use crate::joint::Who;
use crate::wording::Values;
use crate::work::{HazardKind, Task};
use crate::yaml::{At, entries, items};

use super::super::context::Context;
use super::super::words::NONE;
use super::works::Works;

/// A hazard and the permit that it calls for, by its key below `pack.permits`.
const CALLED_FOR: [(HazardKind, &str); 3] = [
    (HazardKind::HotWork, "hot_work"),
    (HazardKind::ConfinedSpace, "confined_space"),
    (HazardKind::Height, "height"),
];

/// The section.
pub(in crate::document) fn section(context: &Context<'_>, works: &Works) -> Section {
    let label = |key: &str| context.label(&format!("pack.permits.{key}"));
    let mut table = Table::new(
        Head::default(),
        vec![
            Column::new(label("kind"), 40.0).strong(),
            Column::new(label("who"), 30.0),
            Column::new(label("linked"), 20.0),
            Column::new(label("number"), 28.0),
            Column::new(label("from"), 22.0).middle(),
            Column::new(label("to"), 22.0).middle(),
            Column::new(label("gas"), 14.0).middle(),
        ],
    );
    table.row_height = 10.0;
    let given: Vec<&Permit> = items(context.job.permits.as_ref()).collect();
    table.rows = given
        .iter()
        .map(|permit| given_row(context, permit))
        .collect();
    table.rows.extend(certificates(context));
    table.rows.extend(called_for(context, works, &given));
    table.none = label("none");
    table.notes = vec![label("note")];
    Section {
        label: "permits".to_owned(),
        title: label("title"),
        line: String::new(),
        new_page: false,
        blocks: vec![Block::Table(table)],
    }
}

fn or_box(text: Option<String>) -> Cell {
    text.map_or_else(|| Cell::Box(String::new()), Cell::Text)
}

fn given_row(context: &Context<'_>, permit: &Permit) -> Vec<Cell> {
    let number = permit
        .number
        .as_ref()
        .and_then(At::get)
        .map(ToString::to_string);
    let by = permit
        .by
        .as_ref()
        .and_then(At::get)
        .map(ToString::to_string);
    let linked = permit
        .isolation
        .as_ref()
        .and_then(At::get)
        .map(ToString::to_string);
    let day = |day: &Option<At<crate::units::Date>>| {
        day.as_ref().and_then(At::get).map(ToString::to_string)
    };
    vec![
        Cell::text(
            permit
                .kind
                .get()
                .map(ToString::to_string)
                .unwrap_or_default(),
        ),
        or_box(by.or_else(|| obtains(context))),
        Cell::text(linked.unwrap_or_else(|| NONE.to_owned())),
        or_box(number),
        or_box(day(&permit.from)),
        or_box(day(&permit.to)),
        or_box(None),
    ]
}

/// Who obtains permits in this job.
fn obtains(context: &Context<'_>) -> Option<String> {
    let roles = context.pack()?.roles.as_ref().and_then(At::get)?;
    roles
        .permits
        .as_ref()
        .and_then(At::get)
        .map(ToString::to_string)
}

/// One certificate for each isolation boundary.
fn certificates(context: &Context<'_>) -> Vec<Vec<Cell>> {
    let isolations = entries(context.job.isolations.as_ref());
    isolations
        .filter_map(|(name, isolation)| Some((name.get()?, isolation.get()?)))
        .map(|(name, isolation)| {
            let number = isolation
                .certificate
                .as_ref()
                .and_then(At::get)
                .map(ToString::to_string);
            vec![
                Cell::text(context.label("pack.permits.isolation")),
                Cell::text(context.who(Who::Operator)),
                Cell::text(name.as_str()),
                or_box(number),
                or_box(None),
                or_box(None),
                Cell::text(NONE),
            ]
        })
        .collect()
}

/// Permits that hazards call for and the job does not name.
fn called_for(context: &Context<'_>, works: &Works, given: &[&Permit]) -> Vec<Vec<Cell>> {
    let mut keys: Vec<&str> = Vec::new();
    // A line is broken where a joint that may hold something back is opened.
    if works
        .hazards_of(Task::Loosen)
        .any(|hazard| hazard.kind == HazardKind::Pressure)
    {
        keys.push("line_break");
    }
    let hazards = works.hazards();
    let is_met = |kind: HazardKind| hazards.iter().any(|hazard| hazard.kind == kind);
    keys.extend(
        CALLED_FOR
            .iter()
            .filter(|(kind, _)| is_met(*kind))
            .map(|(_, key)| *key),
    );
    let named = |kind: &str| {
        let kind = kind.to_lowercase();
        given
            .iter()
            .filter_map(|permit| permit.kind.get())
            .any(|own| own.as_str().to_lowercase().contains(&kind))
    };
    keys.into_iter()
        .map(|key| context.label(&format!("pack.permits.{key}")))
        .filter(|kind| !named(kind))
        .map(|kind| {
            let note = context.say("pack.permits.called_for", &Values::new());
            let mut row = vec![
                Cell::Two([kind, note]),
                or_box(obtains(context)),
                Cell::text(NONE),
            ];
            row.extend((0..4).map(|_| or_box(None)));
            row
        })
        .collect()
}
