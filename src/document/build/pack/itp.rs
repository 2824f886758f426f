//! The inspection and test plan: every point with the limits that are accepted there, by class, with boxes to sign.

use crate::document::blocks::Head;
use crate::document::desk::{Cell, Column, Table};
use crate::document::pack::{Block, Section};
use crate::document::voice::Voice;
use crate::job::{Class, Notice};
use crate::units::{Duration, Quantity, digits};
use crate::wording::Values;
use crate::work::{Attendance, Point, Step, Task, Value, Work};
use crate::yaml::At;

use super::super::context::Context;
use super::super::words::NONE;
use super::procedures::Procedures;
use super::works::Works;

/// Rows of one point with different values; beyond, one row tells from where to where they go.
const MOST_VALUES: usize = 6;
/// Hours before a point at which it is announced, and confirmed. Source: common practice, no source.
const NOTICE: (&str, &str) = ("24", "2");

/// What a point is called, says and asks for; joints that agree in all of it share a row.
#[derive(Clone, PartialEq)]
struct Said {
    activity: String,
    signs: String,
    accept: String,
    record: String,
    attendance: [Attendance; 3],
}

/// A row of the plan.
#[derive(Clone)]
struct Row {
    said: Said,
    /// The joints, by their places.
    joints: Vec<usize>,
    /// The works in which the point stands.
    works: Vec<(&'static str, Task)>,
}

/// The rows of all points, by the names of the points in the order of the work.
#[derive(Default)]
pub(in crate::document) struct Points(Vec<(String, Vec<Row>)>);

impl Points {
    /// Takes in the points of the work on a joint.
    pub(super) fn add(&mut self, context: &Context<'_>, joint: usize, work: &Work) {
        let mut next = 0;
        for (step, point) in work.points() {
            let Some(name) = &point.name else { continue };
            let at = match self.0.iter().position(|(known, _)| known == name) {
                Some(at) => at,
                None => {
                    self.0.insert(next, (name.clone(), Vec::new()));
                    next
                }
            };
            next = next.max(at + 1);
            let Some((_, rows)) = self.0.get_mut(at) else {
                continue;
            };
            // One more than is printed one by one is enough to know that they are too many.
            let is_full = rows.len() > MOST_VALUES;
            let said = said(context, work, step, point);
            let row = match rows.iter().position(|row| row.said == said) {
                Some(known) => &mut rows[known],
                None if is_full => continue,
                None => {
                    rows.push(Row {
                        said,
                        joints: Vec::new(),
                        works: Vec::new(),
                    });
                    let last = rows.len() - 1;
                    &mut rows[last]
                }
            };
            if row.joints.last() != Some(&joint) {
                row.joints.push(joint);
            }
            if !row.works.contains(&(work.method, work.task)) {
                row.works.push((work.method, work.task));
            }
        }
    }
}

fn said(context: &Context<'_>, work: &Work, step: &Step, point: &Point) -> Said {
    let voice = Voice::new(context);
    let signs = [Some(point.signs), point.also].into_iter().flatten();
    let signs = signs.map(|role| Value::Text(voice.role(role).to_owned()));
    Said {
        activity: voice
            .words(work.method, step, &["sign", "do"], &[])
            .unwrap_or_default(),
        signs: voice.value(&Value::List(signs.collect())),
        accept: voice.limits(work.accepted(point)),
        record: voice.step(work, step, "record").unwrap_or_default(),
        attendance: point.attendance,
    }
}

/// The rows of a point: those of its joints, or where they differ too much those of the merged works.
fn rows_of(context: &Context<'_>, works: &Works, name: &str, rows: &[Row]) -> Vec<Row> {
    if rows.len() <= MOST_VALUES {
        return rows.to_vec();
    }
    let mut merged: Vec<Row> = Vec::new();
    for work in &works.merged {
        let found = work
            .points()
            .filter(|(_, point)| point.name.as_deref() == Some(name));
        for (step, point) in found {
            let said = said(context, work, step, point);
            match merged.iter_mut().find(|row| row.said == said) {
                Some(row) => row.works.push((work.method, work.task)),
                None => merged.push(Row {
                    said,
                    joints: Vec::new(),
                    works: vec![(work.method, work.task)],
                }),
            }
        }
    }
    merged
}

/// The section.
pub(in crate::document) fn section(
    context: &Context<'_>,
    works: &Works,
    procedures: &Procedures,
) -> Section {
    let label = |key: &str| context.label(&format!("pack.itp.{key}"));
    let class = |class: &str| context.say1("card.class", "class", class);
    let mut table = Table::new(
        Head::default(),
        vec![
            Column::new(label("step"), 9.0),
            Column::new(label("point"), 11.0).strong(),
            Column::new(label("activity"), 38.0),
            Column::new(label("reference"), 26.0),
            Column::new(label("accept"), 63.0),
            Column::new(label("record"), 26.0),
            Column::new(class("A"), 10.0).middle(),
            Column::new(class("B"), 10.0).middle(),
            Column::new(class("C"), 10.0).middle(),
            Column::new(label("notice"), 14.0),
            Column::new(label("contractor"), 16.0).middle(),
            Column::new(label("client"), 16.0).middle(),
            Column::new(label("third_party"), 16.0).middle(),
        ],
    );
    table.row_height = 10.0;
    for (name, rows) in &works.points.0 {
        let rows = rows_of(context, works, name, rows);
        for row in &rows {
            let mut cells = cells(context, procedures, (name, row), &rows);
            cells.insert(0, Cell::text((table.rows.len() + 1).to_string()));
            table.rows.push(cells);
        }
    }
    table.notes = notes(context);
    Section {
        label: "itp".to_owned(),
        title: label("title"),
        line: label("line"),
        new_page: true,
        blocks: vec![Block::Table(table)],
    }
}

fn notes(context: &Context<'_>) -> Vec<String> {
    let (given, confirmed) = notice(context);
    let values = Values::new()
        .with("notice", given)
        .with("confirm", confirmed);
    let mut notes = vec![
        context
            .list("pack.itp.definitions", &Values::new())
            .join(" "),
    ];
    notes.push(context.say("pack.itp.notice_default", &values));
    if is_default_notice(context) {
        notes.push(context.label("pack.itp.notice_practice"));
    }
    if context
        .joints
        .iter()
        .any(|joint| joint.mechanics.class.value() == Some(Class::B))
    {
        notes.push(context.label("pack.itp.sampled"));
    }
    notes
}

/// Up to two tags, then how many more.
pub(in crate::document) fn members(context: &Context<'_>, tags: &[&str]) -> String {
    const NAMED: usize = 2;
    let named: Vec<&str> = tags.iter().take(NAMED).copied().collect();
    let named = named.join(", ");
    match tags.len().saturating_sub(NAMED) {
        0 => named,
        more => {
            let values = Values::new().with("first", named).with("count", more);
            context.say("pack.and_more", &values)
        }
    }
}

fn cells(
    context: &Context<'_>,
    procedures: &Procedures,
    (name, row): (&str, &Row),
    rows: &[Row],
) -> Vec<Cell> {
    let said = &row.said;
    let accept = match said.accept.as_str() {
        "" => NONE.to_owned(),
        accept => accept.to_owned(),
    };
    let mut cells = vec![
        Cell::text(name),
        Cell::Two([said.activity.clone(), said.signs.clone()]),
        Cell::text(reference(context, procedures, name, row)),
        match holds_for(context, row, rows) {
            Some(joints) => Cell::Two([accept, joints]),
            None => Cell::Text(accept),
        },
        Cell::text(said.record.clone()),
    ];
    let voice = Voice::new(context);
    let letter = |attendance: Attendance| {
        Cell::text(voice.label(&["work", "attendance", attendance.key(), "letter"]))
    };
    cells.extend(said.attendance.map(letter));
    cells.push(Cell::text(notice_of(context, said.attendance)));
    cells.extend((0..3).map(|_| Cell::Box(String::new())));
    cells
}

/// The joints that a row holds for, where its point has several; with the task, where that tells them apart.
fn holds_for(context: &Context<'_>, row: &Row, rows: &[Row]) -> Option<String> {
    if rows.len() == 1 || row.joints.is_empty() {
        return None;
    }
    let joints = row
        .joints
        .iter()
        .filter_map(|joint| context.joints.get(*joint));
    let tags: Vec<&str> = joints.map(|joint| joint.tag.as_str()).collect();
    let members = members(context, &tags);
    let (_, task) = row.works.first()?;
    let is_of_task = |row: &Row| row.works.iter().all(|(_, of)| of == task);
    if !is_of_task(row) || rows.iter().all(is_of_task) {
        return Some(members);
    }
    let voice = Voice::new(context);
    let task = voice.label(&["work", "task", task.key()]).to_owned();
    let values = [
        ("task", Value::Text(task)),
        ("joints", Value::Text(members)),
    ];
    Some(voice.say(&["work", "line", "holds_for"], &values))
}

/// The rows of the procedures in which the point stands.
fn reference(context: &Context<'_>, procedures: &Procedures, name: &str, row: &Row) -> String {
    let mut numbers: Vec<&str> = Vec::new();
    for (method, task) in &row.works {
        for number in procedures.rows_of(method, *task, name) {
            if !numbers.contains(&number) {
                numbers.push(number);
            }
        }
    }
    context.say1("pack.itp.reference_row", "numbers", numbers.join(", "))
}

fn notice_of_job<'a>(context: &Context<'a>) -> Option<&'a Notice> {
    context.pack()?.notice.as_ref()?.get()
}

/// Whether the job leaves the times of notice to us.
pub(super) fn is_default_notice(context: &Context<'_>) -> bool {
    notice_of_job(context).is_none()
}

/// Hours before a point at which it is announced, and confirmed.
pub(super) fn notice(context: &Context<'_>) -> (String, String) {
    let hours = |time: &At<Duration>| time.get().map(|time| digits(time.si() / 3600.0));
    notice_of_job(context)
        .and_then(|notice| Some((hours(&notice.given)?, hours(&notice.confirmed)?)))
        .unwrap_or_else(|| (NOTICE.0.to_owned(), NOTICE.1.to_owned()))
}

/// Hold and witness points are announced; reviews and surveillance are not.
fn notice_of(context: &Context<'_>, attendance: [Attendance; 3]) -> String {
    if attendance.iter().any(|it| it.is_signed()) {
        let (given, confirmed) = notice(context);
        format!("{given} / {confirmed}")
    } else {
        NONE.to_owned()
    }
}
