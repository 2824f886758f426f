//! Cautions and people of a pack.

use std::collections::BTreeMap;

use crate::document::blocks::Head;
use crate::document::desk::{Cell, Column, Table};
use crate::document::pack::{Block, Cautions, Panel, Section, one_page_of_panels};
use crate::document::voice::Voice;
use crate::job::{Certificate, Person};
use crate::work::Hazard;
use crate::yaml::{At, entries};

use super::super::context::Context;
use super::super::words::{NONE, capital, method_key};
use super::works::Works;

/// The cautions that apply, the gravest first: those of the page of cautions, and those that stand
/// in front of the procedures because that page is full.
pub(super) fn split_panels(context: &Context<'_>, works: &Works) -> (Vec<Panel>, Vec<Panel>) {
    let mut all: Vec<Panel> = works
        .hazards()
        .iter()
        .map(|hazard| panel(context, hazard))
        .collect();
    let (fitting, _) = one_page_of_panels(all.clone());
    let rest = all.split_off(fitting.len());
    (all, rest)
}

/// The line that stands on cards and what there is no room for there.
fn panel(context: &Context<'_>, hazard: &Hazard) -> Panel {
    let voice = Voice::new(context);
    let line = voice.hazard(hazard, "line").unwrap_or_default();
    let text = match voice.hazard(hazard, "more") {
        Some(more) => format!("{} {more}", capital(&line)),
        None => capital(&line),
    };
    Panel {
        signal: hazard.signal,
        word: voice.label(&["signal", hazard.signal.key()]).to_owned(),
        text,
    }
}

/// The page of cautions.
pub(super) fn cautions(context: &Context<'_>, works: &Works) -> Section {
    let (panels, rest) = split_panels(context, works);
    let mut notes = Vec::new();
    if !rest.is_empty() {
        notes.push(context.say1("pack.cautions.before_procedures", "count", rest.len()));
    }
    notes.push(context.label("pack.cautions.closing"));
    Section {
        label: "cautions".to_owned(),
        title: context.label("pack.cautions.title"),
        line: String::new(),
        new_page: true,
        blocks: vec![Block::Cautions(Cautions { panels, notes })],
    }
}

/// A section of tables.
pub(in crate::document) fn section(
    label: &str,
    title: String,
    new_page: bool,
    tables: Vec<Table>,
) -> Section {
    Section {
        label: label.to_owned(),
        title,
        line: String::new(),
        new_page,
        blocks: tables.into_iter().map(Block::Table).collect(),
    }
}

/// Who works and who answers for what.
pub(super) fn people(context: &Context<'_>) -> Section {
    let title = context.label("pack.people.title");
    section(
        "people",
        title,
        true,
        vec![persons(context), crews(context), roles(context)],
    )
}

/// Everybody whom the job names, with certificates.
pub(in crate::document) fn persons(context: &Context<'_>) -> Table {
    let label = |key: &str| context.label(&format!("pack.people.{key}"));
    let mut table = Table::new(
        Head::default(),
        vec![
            Column::new(label("name"), 36.0).strong(),
            Column::new(label("role"), 36.0),
            Column::new(label("certificate"), 34.0),
            Column::new(label("scope"), 46.0),
            Column::new(label("expires"), 24.0),
        ],
    );
    table.none = label("none");
    let people = entries(context.job.people.as_ref());
    for (name, person) in people {
        let (Some(name), Some(person)) = (name.get(), person.get()) else {
            continue;
        };
        table.rows.extend(person_rows(context, name, person));
    }
    table
}

fn person_rows(context: &Context<'_>, name: &str, person: &Person) -> Vec<Vec<Cell>> {
    let text = |leaf: Option<String>| leaf.unwrap_or_default();
    let role = text(
        person
            .role
            .as_ref()
            .and_then(At::get)
            .map(ToString::to_string),
    );
    let company = text(
        person
            .company
            .as_ref()
            .and_then(At::get)
            .map(ToString::to_string),
    );
    let certificates = person
        .certificates
        .iter()
        .filter_map(At::get)
        .flatten()
        .filter_map(At::get);
    let mut rows: Vec<Vec<Cell>> = certificates
        .map(|certificate| {
            let mut row = vec![Cell::text(""), Cell::text("")];
            row.extend(certificate_cells(context, certificate));
            row
        })
        .collect();
    if rows.is_empty() {
        rows.push(vec![
            Cell::text(""),
            Cell::text(""),
            Cell::text(NONE),
            Cell::text(NONE),
            Cell::text(NONE),
        ]);
    }
    if let Some([first, second, ..]) = rows.first_mut().map(Vec::as_mut_slice) {
        *first = Cell::text(name);
        *second = Cell::Two([role, company]);
    }
    rows
}

fn certificate_cells(context: &Context<'_>, certificate: &Certificate) -> [Cell; 3] {
    let methods = certificate
        .methods
        .iter()
        .filter_map(At::get)
        .flatten()
        .filter_map(At::get);
    let methods: Vec<String> = methods
        .filter_map(|word| method_key(word.as_str()))
        .map(|key| context.label(&format!("method.{key}")))
        .collect();
    [
        Cell::text(
            certificate
                .name
                .get()
                .map(ToString::to_string)
                .unwrap_or_default(),
        ),
        Cell::text(methods.join(", ")),
        match certificate.until.as_ref().and_then(At::get) {
            Some(until) => Cell::text(until.to_string()),
            None => Cell::Box(String::new()),
        },
    ]
}

/// The crews, with how many joints each has.
pub(in crate::document) fn crews(context: &Context<'_>) -> Table {
    let label = |key: &str| context.label(&format!("pack.crews.{key}"));
    let head = Head {
        title: label("title"),
        note: String::new(),
    };
    let mut table = Table::new(
        head,
        vec![
            Column::new(label("crew"), 36.0).strong(),
            Column::new(label("lead"), 36.0),
            Column::new(label("members"), 80.0),
            Column::new(label("joints"), 24.0).right(),
        ],
    );
    table.none = label("none");
    let mut joints: BTreeMap<&str, usize> = BTreeMap::new();
    for crew in context
        .joints
        .iter()
        .filter_map(|joint| joint.work.crew.get())
    {
        *joints.entry(crew).or_default() += 1;
    }
    let crews = entries(context.job.crews.as_ref());
    table.rows = crews
        .filter_map(|(name, crew)| {
            let (name, crew) = (name.get()?, crew.get()?);
            let members = crew
                .members
                .iter()
                .filter_map(At::get)
                .flatten()
                .filter_map(At::get);
            let members: Vec<&str> = members.map(|name| name.as_str()).collect();
            Some(vec![
                Cell::text(name.as_str()),
                Cell::text(crew.lead.get().map(ToString::to_string).unwrap_or_default()),
                Cell::text(members.join(", ")),
                Cell::text(
                    joints
                        .get(name.as_str())
                        .copied()
                        .unwrap_or_default()
                        .to_string(),
                ),
            ])
        })
        .collect();
    table
}

/// One named person for each duty; a duty without a person is a box.
fn roles(context: &Context<'_>) -> Table {
    let label = |key: &str| context.label(&format!("pack.roles.{key}"));
    let head = Head {
        title: label("title"),
        note: String::new(),
    };
    let mut table = Table::new(
        head,
        vec![Column::new("", 60.0).strong(), Column::new("", 116.0)],
    );
    let roles = context
        .pack()
        .and_then(|pack| pack.roles.as_ref())
        .and_then(At::get);
    let name = |pick: fn(&crate::job::Roles) -> &Option<At<crate::job::Name>>| {
        roles
            .and_then(|roles| pick(roles).as_ref())
            .and_then(At::get)
            .map(ToString::to_string)
    };
    let named = [
        ("work", name(|roles| &roles.in_charge)),
        ("permits", name(|roles| &roles.permits)),
        ("isolation", name(|roles| &roles.isolation)),
        ("calibration", name(|roles| &roles.tools)),
        ("calculation", name(|roles| &roles.calculation)),
        ("inspection", name(|roles| &roles.inspection)),
        ("first_aid", None),
        ("stop", Some(label("stop_everybody"))),
    ];
    table.rows = named
        .into_iter()
        .map(|(duty, name)| {
            let name = name.map_or_else(|| Cell::Box(String::new()), Cell::Text);
            vec![Cell::text(label(duty)), name]
        })
        .collect();
    table.row_height = 7.0;
    table
}
