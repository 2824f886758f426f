//! The cover: title block, totals, equipment, contents, findings, revisions, approvals.

use std::collections::BTreeMap;

use crate::document::blocks::{Badge, Head};
use crate::document::desk::{BigValue, Cell, Column, Field, Page, Table, TitleBlock};
use crate::document::pack::{
    Approvals, CONTENTS_ON_COVER, COVER_ROW, Contents, ContentsEntry, Cover, EQUIPMENT_ON_COVER,
    FINDINGS_ON_COVER, REVISIONS_ON_COVER,
};
use crate::document::width;
use crate::document::width::one_line;
use crate::job::{Name, Revision};
use crate::units::Dimension;
use crate::wording::Values;
use crate::yaml::At;

use super::super::context::Context;
use super::super::furniture::{bare_furniture, bare_title_block, sealed, sealed_title_block};
use super::super::register::REGISTER_LABEL;
use super::super::words::{NONE, capital};
use super::index::VOLUMES_LABEL;
use super::totals::{Totals, totals};
use super::{Subject, findings, isolation_label, note_label};

/// Size of the text on the cover, in pt.
const TEXT: f64 = 9.5;

/// How much the cover names. A title or subtitle of several lines takes the room of other rows.
struct Room {
    findings: usize,
    revisions: usize,
}

impl Room {
    fn beside(title: &str, subtitle: &str) -> Self {
        let (width, title_size, subtitle_size) = (176.0, 20.0, 11.0);
        let is_long =
            width::of(title, title_size) > width || width::of(subtitle, subtitle_size) > width;
        let less = usize::from(is_long);
        Self {
            findings: FINDINGS_ON_COVER - less,
            revisions: REVISIONS_ON_COVER - less,
        }
    }
}

/// The cover with its content code. The code hangs on everything but what a revision changes.
pub(super) fn cover(context: &Context<'_>, subject: &Subject<'_>) -> Cover {
    let document = context.label("document.pack");
    let text = |text: Option<String>| text.unwrap_or_default();
    let pack = context.pack();
    let title = text(
        pack.and_then(|pack| pack.title.get())
            .map(ToString::to_string),
    );
    let subtitle = pack
        .and_then(|pack| pack.subtitle.as_ref())
        .and_then(At::get);
    let subtitle = text(subtitle.map(ToString::to_string));
    let room = Room::beside(&title, &subtitle);
    let label = |key: &str| context.label(&format!("pack.cover.{key}"));
    let mut cover = Cover {
        furniture: bare_furniture(context, &document),
        document_type: capital(&document),
        totals: big_values(context, &totals(context, subject.register, subject.works)),
        totals_note: label("counts"),
        status: Badge {
            word: String::new(),
            outlined: false,
        },
        stamp: label("stamp"),
        equipment: equipment(context, subject),
        contents: contents(context, subject),
        findings: findings::on_cover(context, false, room.findings),
        revisions: Table::default(),
        approvals: Approvals {
            head: Head {
                title: label("approvals"),
                note: label("approvals_note"),
            },
            labels: ["prepared", "checked", "approved"].map(label).to_vec(),
        },
        notes: Vec::new(),
        title_block: in_title_block(context, &document, &title, &subtitle),
        title,
        subtitle,
    };
    let code = context.code(&cover);
    cover.furniture = sealed(context, cover.furniture, &code);
    cover.status = Badge {
        word: context.status(),
        outlined: context.draft.is_some(),
    };
    cover.findings = findings::on_cover(context, true, room.findings);
    cover.revisions = revisions(context, room.revisions);
    cover.notes = notes(context);
    let title_block = sealed_title_block(context, cover.title_block, context.number());
    cover.title_block = shortened(title_block);
    cover
}

/// Fields of the title block in at most two lines of small type.
pub(in crate::document) fn shortened(block: TitleBlock) -> TitleBlock {
    let cut = |field: Field, room: f64| Field {
        value: one_line(&field.value, 8.0, 2.0 * room),
        ..field
    };
    TitleBlock {
        department: cut(block.department, 26.0),
        prepared: cut(block.prepared, 26.0),
        checked: cut(block.checked, 26.0),
        approved: cut(block.approved, 26.0),
        reference: cut(block.reference, 26.0),
        owner: cut(block.owner, 34.0),
        ..block
    }
}

/// The title block; its field for the titles has room for two lines of small type for each.
pub(in crate::document) fn in_title_block(
    context: &Context<'_>,
    document: &str,
    title: &str,
    subtitle: &str,
) -> TitleBlock {
    const TWO_LINES: f64 = 2.0 * 108.0;
    let fitting = |text: &str| one_line(text, 8.0, TWO_LINES);
    bare_title_block(context, document, &fitting(title), &fitting(subtitle))
}

/// Joints, studs, hold points, crews, shifts and hours.
pub(in crate::document) fn big_values(context: &Context<'_>, totals: &Totals) -> Vec<BigValue> {
    let counted = |key: &str, count: usize| BigValue {
        label: context.say1(&format!("pack.cover.{key}"), "count", count),
        value: count.to_string(),
        unit: String::new(),
        line: String::new(),
    };
    let or_unknown = |key: &str, count: Option<usize>| match count {
        Some(count) => counted(key, count),
        None => BigValue {
            value: NONE.to_owned(),
            ..counted(key, 0)
        },
    };
    vec![
        counted("joints", totals.joints),
        counted("studs", usize::try_from(totals.studs).unwrap_or(usize::MAX)),
        counted("holds", totals.holds),
        or_unknown("crews", totals.crews),
        or_unknown("shifts", totals.shifts),
        BigValue {
            label: context.label("pack.cover.hours"),
            value: totals.hours.clone(),
            unit: context
                .units
                .of(Dimension::Duration)
                .map_or("h", |unit| unit.name)
                .to_owned(),
            line: String::new(),
        },
    ]
}

fn equipment(context: &Context<'_>, subject: &Subject<'_>) -> Table {
    let (tag, name) = (22.0, 36.0);
    let mut table = Table::new(
        Head::default(),
        vec![
            Column::new("", tag).strong(),
            Column::new("", name),
            Column::new("", 12.0).right(),
            Column::new("", 14.0).right(),
        ],
    );
    table.row_height = COVER_ROW;
    let mut names: BTreeMap<&str, &str> = BTreeMap::new();
    for joint in context.joints {
        if let (Some(tag), Some(name)) = (
            joint.identity.equipment.get(),
            &joint.identity.equipment_name,
        ) {
            names.entry(tag).or_insert(name);
        }
    }
    let mut found: Vec<(&str, usize, u32)> = Vec::new();
    for row in subject.register.rows() {
        match found.last_mut() {
            Some((last, joints, studs)) if *last == row.equipment => {
                *joints += 1;
                *studs += row.studs;
            }
            _ => found.push((&row.equipment, 1, row.studs)),
        }
    }
    table.rows = found
        .iter()
        .map(|(equipment, joints, studs)| {
            let shown = if equipment.is_empty() {
                NONE
            } else {
                equipment
            };
            let words = names.get(equipment).copied().unwrap_or_default();
            vec![
                Cell::text(one_line(shown, TEXT, tag - 2.4)),
                Cell::text(one_line(words, TEXT, name - 2.4)),
                Cell::text(joints.to_string()),
                Cell::text(studs.to_string()),
            ]
        })
        .collect();
    let left_out = table.keep_first(EQUIPMENT_ON_COVER);
    let note = context.label("pack.cover.equipment_note");
    let more = context.say1("pack.cover.equipment_more", "count", left_out);
    table.head = Head {
        title: context.label("pack.cover.equipment"),
        note: if left_out > 0 {
            format!("{more} · {note}")
        } else {
            note
        },
    };
    table
}

fn contents(context: &Context<'_>, subject: &Subject<'_>) -> Contents {
    let label = |key: &str| context.label(&format!("pack.contents.{key}"));
    let entry = |key: &str, label_of_page: String| ContentsEntry {
        title: label(key),
        page: Page::At(label_of_page),
    };
    let inner = subject.inner;
    let mut entries = vec![
        entry("scope", "scope".to_owned()),
        entry("index", "index".to_owned()),
        entry("itp", "itp".to_owned()),
    ];
    // The first of the labels that the pack really holds.
    let cards = inner.cards.first().map(|cards| cards.label.clone());
    let isolations = (!inner.isolations.is_empty()).then(|| isolation_label(0));
    entries.extend(cards.or(isolations).map(|label| entry("cards", label)));
    let notes = (!inner.notes.is_empty()).then(|| note_label(0));
    let listed = (!inner.note_volumes.is_empty()).then(|| VOLUMES_LABEL.to_owned());
    entries.extend(notes.or(listed).map(|label| entry("notes", label)));
    entries.push(entry("register", REGISTER_LABEL.to_owned()));
    entries.truncate(CONTENTS_ON_COVER);
    Contents {
        head: Head {
            title: context.label("pack.cover.contents"),
            note: context.label("pack.cover.contents_note"),
        },
        entries,
    }
}

/// The latest revisions.
pub(in crate::document) fn revisions(context: &Context<'_>, most: usize) -> Table {
    let label = |key: &str| context.label(&format!("pack.cover.{key}"));
    let widths = [12.0, 26.0, 68.0, 24.0, 23.0, 23.0];
    let heads = [
        "revision", "date", "change", "prepared", "checked", "approved",
    ];
    let columns = heads
        .iter()
        .zip(widths)
        .enumerate()
        .map(|(place, (key, width))| {
            let column = Column::new(label(key), width);
            if place == 0 { column.strong() } else { column }
        });
    let mut table = Table::new(
        Head {
            title: label("revisions"),
            note: String::new(),
        },
        columns.collect(),
    );
    table.row_height = COVER_ROW;
    let revisions = context
        .pack()
        .and_then(|pack| pack.revisions.as_ref())
        .and_then(At::get);
    let revisions: Vec<&Revision> = revisions
        .into_iter()
        .flatten()
        .filter_map(At::get)
        .collect();
    table.rows = revisions
        .iter()
        .map(|revision| {
            let name = |person: &Option<At<Name>>| {
                person.as_ref().and_then(At::get).map(ToString::to_string)
            };
            let texts = [
                revision.revision.get().map(ToString::to_string),
                revision.date.get().map(ToString::to_string),
                revision
                    .text
                    .as_ref()
                    .and_then(At::get)
                    .map(ToString::to_string),
                name(&revision.prepared),
                name(&revision.checked),
                name(&revision.approved),
            ];
            let cells = texts.into_iter().zip(widths);
            cells
                .map(|(text, width)| {
                    Cell::text(one_line(&text.unwrap_or_default(), TEXT, width - 2.4))
                })
                .collect()
        })
        .collect();
    table.none = label("no_revision");
    table.keep_last(most);
    table
}

/// Units, printed copies, who defers to whom, distribution, language.
fn notes(context: &Context<'_>) -> Vec<String> {
    let unit = |dimension| context.units.of(dimension).map_or("", |unit| unit.name);
    let units = Values::new()
        .with("torque", unit(Dimension::Torque))
        .with("pressure", unit(Dimension::Pressure))
        .with("length", unit(Dimension::Length))
        .with("load", unit(Dimension::Force))
        .with(
            "brackets",
            context.units.bracket(Dimension::Torque).is_some(),
        );
    let language = context.say1(
        "pack.cover.language",
        "language",
        context.wording.language(),
    );
    let valid = context
        .pack()
        .and_then(|pack| pack.print_valid.as_ref())
        .and_then(At::get);
    let printed = match valid {
        Some(date) => context.say1("footer.valid_until", "date", date.to_string()),
        None => context.say1("footer.printed", "permit_date", ""),
    };
    let mut notes = vec![
        format!("{} {language}", context.say("units.line", &units)),
        printed,
        context.label("footer.defer"),
    ];
    let distribution = context
        .pack()
        .and_then(|pack| pack.distribution.as_ref())
        .and_then(At::get);
    if let Some(list) = distribution {
        let names: Vec<String> = list
            .iter()
            .filter_map(At::get)
            .map(ToString::to_string)
            .collect();
        let who = context.say1(
            "pack.cover.distribution",
            "who_list",
            context.wording.join(&names),
        );
        notes.push(one_line(&who, 8.0, 174.0));
    }
    notes
}
