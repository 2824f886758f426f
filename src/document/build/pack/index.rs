//! The index of joints: 25 rows a page, with the page of each card; before it, where the cards stand
//! in volumes, the list of the volumes.

use std::collections::BTreeMap;

use crate::document::blocks::Head;
use crate::document::desk::{Cell, Column, Table};
use crate::document::pack::{Block, INDEX_ROWS, Section};
use crate::document::register::{ColumnId, JointRow};
use crate::methods::Group;

use crate::document::width::one_line;
use crate::wording::Values;

use super::super::context::Context;
use super::super::register::{CardPages, CardVolume, CardVolumes};
use super::super::words::NONE;
use super::{NoteVolume, Subject};

/// Size of the type in the rows and of the line below, in pt.
const TEXT: f64 = 9.5;
const NOTE: f64 = 8.0;
/// Height of a row of two lines, in mm.
const ROW: f64 = 9.4;

/// The columns: key of the head, width in mm.
const COLUMNS: [(&str, f64); 9] = [
    ("tag", 44.0),
    ("studs", 34.0),
    ("method", 29.0),
    ("class", 10.0),
    ("crew", 18.0),
    ("hours", 10.0),
    ("holds", 10.0),
    ("isolation", 12.0),
    ("card", 9.0),
];

/// The section.
pub(super) fn section(context: &Context<'_>, subject: &Subject<'_>) -> Section {
    let columns = COLUMNS.iter().enumerate().map(|(place, (key, width))| {
        let column = Column::new(context.label(&format!("pack.index.{key}")), *width);
        match place {
            0 => column.strong(),
            5 | 6 | 8 => column.right(),
            3 => column.middle(),
            _ => column,
        }
    });
    let mut table = Table::new(Head::default(), columns.collect());
    table.row_height = ROW;
    table.rows_a_page = INDEX_ROWS;
    let by_tag: BTreeMap<&str, usize> = context
        .joints
        .iter()
        .enumerate()
        .map(|(index, joint)| (joint.tag.as_str(), index))
        .collect();
    let rows = subject.register.rows().iter();
    table.rows = rows
        .filter_map(|row| cells(context, subject, *by_tag.get(row.tag.as_str())?, row))
        .collect();
    Section {
        label: "index".to_owned(),
        title: context.label("pack.index.title"),
        line: String::new(),
        new_page: true,
        blocks: vec![Block::Table(table)],
    }
}

/// By which the list of volumes is referred to.
pub(super) const VOLUMES_LABEL: &str = "volumes";

/// The section that lists the volumes of cards and of calculation notes, where there are any.
pub(super) fn volumes(context: &Context<'_>, subject: &Subject<'_>) -> Option<Section> {
    let cards = match subject.pages {
        CardPages::Volumes(volumes) => Some(volumes),
        CardPages::Here => None,
    };
    let notes = &subject.inner.note_volumes;
    let of_notes = (!notes.is_empty()).then(|| Block::Table(notes_table(context, notes)));
    let (title, line) = match (cards, &of_notes) {
        (None, None) => return None,
        (None, Some(_)) => ("beside", context.label("pack.volumes.notes_apart")),
        (Some(cards), _) => {
            let count = Values::new().with("volumes", cards.volumes.len());
            ("master", context.say("pack.volumes.note", &count))
        }
    };
    let of_cards = cards.map(|cards| Block::Table(volumes_table(context, cards)));
    Some(Section {
        label: VOLUMES_LABEL.to_owned(),
        title: context.label(&format!("pack.volumes.{title}")),
        line,
        new_page: true,
        blocks: of_cards.into_iter().chain(of_notes).collect(),
    })
}

/// The files of calculation notes with the groups that they begin and end with.
fn notes_table(context: &Context<'_>, volumes: &[NoteVolume]) -> Table {
    let label = |key: &str| context.label(&format!("pack.volumes.{key}"));
    let columns = vec![
        Column::new(label("file"), 80.0).strong(),
        Column::new(label("groups"), 83.0),
        Column::new(label("notes"), 13.0).right(),
    ];
    let head = Head {
        title: label("of_notes"),
        ..Head::default()
    };
    let mut table = Table::new(head, columns);
    table.row_height = ROW;
    table.rows = volumes.iter().map(|it| note_cells(context, it)).collect();
    table
}

fn note_cells(context: &Context<'_>, volume: &NoteVolume) -> Vec<Cell> {
    let groups = context.plan.groups.get(volume.groups.clone());
    let groups = groups.unwrap_or_default();
    let line = |group: Option<&Group>| {
        group.map_or_else(String::new, |group| one_line(&group.name, TEXT, 80.6))
    };
    vec![
        Cell::text(volume.file.clone()),
        Cell::Two([line(groups.first()), line(groups.last())]),
        Cell::text(groups.len().to_string()),
    ]
}

/// The columns of the list of volumes: key of the head, width in mm.
const VOLUME_COLUMNS: [(&str, f64); 6] = [
    ("volume", 14.0),
    ("file", 66.0),
    ("equipment", 30.0),
    ("tags", 40.0),
    ("joints", 13.0),
    ("pages", 13.0),
];

/// The volumes of cards, by the number that the index of joints names before the stroke.
fn volumes_table(context: &Context<'_>, volumes: &CardVolumes) -> Table {
    let label = |key: &str| context.label(&format!("pack.volumes.{key}"));
    let columns = VOLUME_COLUMNS
        .iter()
        .enumerate()
        .map(|(place, (key, width))| {
            let column = Column::new(label(key), *width);
            match place {
                0 => column.strong(),
                4 | 5 => column.right(),
                _ => column,
            }
        });
    let mut table = Table::new(Head::default(), columns.collect());
    table.row_height = ROW;
    table.rows = (1usize..)
        .zip(&volumes.volumes)
        .map(|(number, volume)| volume_cells(number, volume))
        .collect();
    table
}

fn volume_cells(number: usize, volume: &CardVolume) -> Vec<Cell> {
    let line = |column: usize, text: &str| {
        let width = VOLUME_COLUMNS.get(column).map_or(0.0, |it| it.1);
        one_line(text, TEXT, width - 2.4)
    };
    let equipment = match volume.equipment.as_str() {
        "" => NONE.to_owned(),
        text => line(2, text),
    };
    let [first, last] = &volume.tags;
    vec![
        Cell::text(number.to_string()),
        Cell::text(volume.file.clone()),
        Cell::text(equipment),
        Cell::Two([line(3, first), line(3, last)]),
        Cell::text(volume.joints.to_string()),
        Cell::text(volume.pages.to_string()),
    ]
}

fn cells(
    context: &Context<'_>,
    subject: &Subject<'_>,
    index: usize,
    row: &JointRow,
) -> Option<Vec<Cell>> {
    let (joint, group) = (context.joints.get(index)?, context.plan.of(index)?);
    let line = |column: usize, size: f64, text: &str| {
        let width = COLUMNS.get(column).map_or(0.0, |(_, width)| *width);
        one_line(text, size, width - 2.4)
    };
    let plain = |column: usize, id: ColumnId| match row.text(id) {
        "" => Cell::text(NONE),
        text => Cell::text(line(column, TEXT, text)),
    };
    let set = context
        .setting(joint, &group.computed)
        .map(|set| set.joined());
    Some(vec![
        Cell::Two([
            line(0, TEXT, &row.tag),
            line(0, NOTE, row.text(ColumnId::Place)),
        ]),
        Cell::Two([
            line(1, TEXT, row.text(ColumnId::Studs)),
            line(1, NOTE, &group.name),
        ]),
        Cell::Two([
            line(2, TEXT, row.text(ColumnId::Method)),
            line(2, NOTE, set.as_deref().unwrap_or(NONE)),
        ]),
        plain(3, ColumnId::Class),
        plain(4, ColumnId::Crew),
        plain(5, ColumnId::Hours),
        Cell::text(
            subject
                .works
                .holds
                .get(index)
                .copied()
                .unwrap_or_default()
                .to_string(),
        ),
        plain(7, ColumnId::Isolation),
        Cell::Page(subject.pages.of(index)),
    ])
}
