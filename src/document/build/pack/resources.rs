//! Cautions, people and tools of a pack.

use std::collections::BTreeMap;

use crate::document::card::Head;
use crate::document::desk::{Cell, Column, Table};
use crate::document::pack::{Block, Cautions, Section, one_page_of_panels};
use crate::job::{Certificate, Person, Tool, ToolKind};
use crate::units::{Dimension, Quantity};
use crate::wording::Values;
use crate::yaml::At;

use super::super::cautions;
use super::super::context::Context;
use super::super::words::{NONE, method_key};

/// The cautions that apply: one page, the gravest first.
pub(super) fn cautions(context: &Context<'_>) -> Section {
    let (panels, left_out) = one_page_of_panels(cautions::panels(context));
    let mut notes = Vec::new();
    if left_out > 0 {
        notes.push(context.say1("pack.cautions.more", "count", left_out));
    }
    notes.push(context.label("cautions.closing"));
    Section {
        label: "cautions".to_owned(),
        title: context.label("pack.cautions.title"),
        line: String::new(),
        new_page: true,
        blocks: vec![Block::Cautions(Cautions { panels, notes })],
    }
}

fn section(label: &str, title: String, new_page: bool, tables: Vec<Table>) -> Section {
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

fn persons(context: &Context<'_>) -> Table {
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
    let people = context
        .job
        .people
        .iter()
        .filter_map(At::get)
        .flat_map(|people| people.iter());
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
        .map(|method| context.label(&format!("method.{}", method_key(*method))))
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

fn crews(context: &Context<'_>) -> Table {
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
    let crews = context
        .job
        .crews
        .iter()
        .filter_map(At::get)
        .flat_map(|crews| crews.iter());
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

/// The tools with serial and calibration date, those in use first.
pub(super) fn tools(context: &Context<'_>) -> Section {
    let label = |key: &str| context.label(&format!("pack.tools.{key}"));
    let head = Head::default();
    let mut table = Table::new(
        head,
        vec![
            Column::new(label("tool"), 25.0).strong(),
            Column::new(label("kind"), 40.0),
            Column::new(label("serial"), 22.0),
            Column::new(label("range"), 31.0),
            Column::new(label("certificate"), 20.0),
            Column::new(label("due"), 20.0),
            Column::new(label("mass"), 18.0).right(),
        ],
    );
    table.none = label("none");
    let used = used(context);
    let listed = context
        .job
        .tools
        .iter()
        .filter_map(At::get)
        .flat_map(|tools| tools.iter());
    table.rows = listed
        .filter_map(|(name, tool)| Some((name.get()?, tool.get()?)))
        .map(|(name, tool)| {
            let joints = used.get(name.as_str()).copied().unwrap_or_default();
            tool_row(context, name, tool, joints)
        })
        .collect();
    table.notes = vec![label("note")];
    section("tools", label("title"), false, vec![table])
}

/// Joints in which each tool is used.
fn used<'a>(context: &Context<'a>) -> BTreeMap<&'a str, usize> {
    let mut used = BTreeMap::new();
    for group in &context.plan.groups {
        for tool in group.computed.chosen.all() {
            *used.entry(tool.name.as_str()).or_default() += group.members.len();
        }
    }
    used
}

fn tool_row(context: &Context<'_>, name: &str, tool: &Tool, joints: usize) -> Vec<Cell> {
    let calibration = tool.calibration.as_ref().and_then(At::get);
    let certificate = calibration
        .and_then(|it| it.certificate.as_ref())
        .and_then(At::get);
    let due = calibration.and_then(|it| it.due.as_ref()).and_then(At::get);
    let kind = tool.kind.get().copied();
    let needs = kind.is_some_and(must_be_calibrated);
    let missing = || {
        if needs {
            Cell::Box(String::new())
        } else {
            Cell::text(NONE)
        }
    };
    let in_use = match joints {
        0 => context.label("pack.tools.spare"),
        count => context.say1("pack.tools.used_at", "count", count),
    };
    vec![
        Cell::text(name),
        Cell::Two([
            kind.map_or(String::new(), |kind| kind.word().to_owned()),
            in_use,
        ]),
        match tool.serial.as_ref().and_then(At::get) {
            Some(serial) => Cell::text(serial.as_str()),
            None => missing(),
        },
        Cell::text(range(context, tool).unwrap_or_else(|| NONE.to_owned())),
        certificate.map_or_else(missing, |certificate| Cell::text(certificate.as_str())),
        due.map_or_else(missing, |due| Cell::Strong(due.to_string())),
        Cell::text(
            tool.mass
                .as_ref()
                .and_then(At::get)
                .map_or(NONE.to_owned(), |mass| context.text(*mass)),
        ),
    ]
}

/// What sets or measures a load has a calibration date (ISO 6789, from memory).
const fn must_be_calibrated(kind: ToolKind) -> bool {
    matches!(
        kind,
        ToolKind::HandTorqueWrench
            | ToolKind::HydraulicTorqueWrench
            | ToolKind::Gauge
            | ToolKind::DepthGauge
            | ToolKind::MultiSpindleDriver
    )
}

/// `905 to 6340 N·m`: between the calibration points, else the scale; of others the rating or size.
fn range(context: &Context<'_>, tool: &Tool) -> Option<String> {
    let torque = context.units.of(Dimension::Torque)?;
    let scale = tool
        .scale
        .as_ref()
        .and_then(At::get)
        .map_or(torque, |scale| scale.unit());
    let points = tool
        .calibration
        .as_ref()
        .and_then(At::get)
        .and_then(|it| it.points.as_ref());
    let points: Vec<f64> = points
        .and_then(At::get)
        .into_iter()
        .flatten()
        .filter_map(At::get)
        .filter_map(|(_, torque)| torque.get())
        .map(|torque| torque.si())
        .collect();
    let marks: Vec<f64> = tool
        .range
        .iter()
        .filter_map(At::get)
        .flatten()
        .filter_map(At::get)
        .map(|torque| torque.si())
        .collect();
    let ends = if points.is_empty() { &marks } else { &points };
    if let (Some(low), Some(high)) = (ends.first(), ends.last()) {
        let high = scale.print_si(*high);
        let values = Values::new()
            .with("low", scale.print_si(*low).value)
            .with("high", high.joined());
        return Some(context.say("pack.plan.range", &values));
    }
    let pressure = tool
        .rating
        .as_ref()
        .or(tool.gauge_top.as_ref())
        .and_then(At::get);
    let size = tool.across_flats.as_ref().and_then(At::get);
    let square = tool.square.as_ref().and_then(At::get);
    pressure
        .map(|pressure| context.text(*pressure))
        .or_else(|| size.map(|size| context.units.print_size(*size).joined()))
        .or_else(|| square.map(|square| context.units.print_size(*square).joined()))
}
