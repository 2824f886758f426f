//! The inspection and test plan: every point with its acceptance value, by class, with boxes to sign.

use crate::calc::ids;
use crate::document::card::Head;
use crate::document::desk::{Cell, Column, Table};
use crate::document::pack::{Block, Section};
use crate::job::{Class, Notice};
use crate::joint::{HoldPoint, Joint};
use crate::methods::{Computed, Group};
use crate::units::{Duration, Quantity, digits};
use crate::wording::Values;
use crate::yaml::At;

use super::super::context::Context;
use super::super::words::{NONE, role_key};

/// The points in the order of the work: their keys below `pack.itp.rows`, and when they apply.
type Point = (&'static str, fn(&Joint) -> bool);

const POINTS: [Point; 8] = [
    ("h1", |_| true),
    ("h2", |_| true),
    ("w1", |_| true),
    ("h3", |_| true),
    ("w2", |_| true),
    ("h4", |joint| !joint.mechanics.checks.stretch.is_empty()),
    ("h5", |joint| joint.work.isolation.get().is_some()),
    ("w3", |joint| {
        joint
            .mechanics
            .service
            .pressure
            .value()
            .is_none_or(|it| it.si() > 0.0)
    }),
];

/// Rows of one point with different values; beyond, one row refers to the cards.
const MOST_VALUES: usize = 6;
/// Hours before a point at which it is announced, and confirmed. Source: common practice, no source.
const NOTICE: (&str, &str) = ("24", "2");

/// The class of a joint; one that is not known is held like the gravest.
fn class_of(joint: &Joint) -> Class {
    joint.mechanics.class.value().unwrap_or(Class::A)
}

/// H, W, R, S or nothing, for a point and a class.
fn letter(context: &Context<'_>, point: &str, class: Class) -> String {
    let class = match class {
        Class::A => "a",
        Class::B => "b",
        Class::C => "c",
    };
    context.label(&format!("pack.itp.rows.{point}.{class}"))
}

/// How many hold points a joint has: those of its class and its own.
pub(super) fn holds_of(context: &Context<'_>, joint: usize) -> usize {
    let Some(joint) = context.joints.get(joint) else {
        return 0;
    };
    let class = class_of(joint);
    let of_class = POINTS
        .iter()
        .filter(|(point, applies)| applies(joint) && letter(context, point, class) == "H")
        .count();
    of_class
        + joint
            .work
            .hold_points
            .iter()
            .filter(|own| is_hold(own))
            .count()
}

fn is_hold(point: &HoldPoint) -> bool {
    point.point.starts_with(['H', 'h'])
}

/// The section.
pub(super) fn section(context: &Context<'_>) -> Section {
    let label = |key: &str| context.label(&format!("pack.itp.{key}"));
    let class = |class: &str| context.say1("card.class", "class", class);
    let mut table = Table::new(
        Head::default(),
        vec![
            Column::new(label("step"), 9.0),
            Column::new(label("point"), 11.0).strong(),
            Column::new(label("activity"), 38.0),
            Column::new(label("reference"), 32.0),
            Column::new(label("accept"), 57.0),
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
    let points = POINTS
        .iter()
        .flat_map(|(point, applies)| point_rows(context, point, *applies));
    table.rows = points
        .chain(own_rows(context))
        .enumerate()
        .map(numbered)
        .collect();
    table.notes = notes(context);
    Section {
        label: "itp".to_owned(),
        title: label("title"),
        line: label("line"),
        new_page: true,
        blocks: vec![Block::Table(table)],
    }
}

fn numbered((place, mut row): (usize, Vec<Cell>)) -> Vec<Cell> {
    row.insert(0, Cell::text((place + 1).to_string()));
    row
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

/// What a row says: reference, acceptance, record.
type Texts = [String; 3];

/// The rows of one point: one for each set of values, with the joints it holds for.
fn point_rows(context: &Context<'_>, point: &str, applies: fn(&Joint) -> bool) -> Vec<Vec<Cell>> {
    let mut found: Vec<(Texts, Vec<&str>)> = Vec::new();
    let mut count = 0usize;
    for (index, joint) in context.joints.iter().enumerate() {
        let Some(group) = context.plan.of(index).filter(|_| applies(joint)) else {
            continue;
        };
        count += 1;
        if found.len() > MOST_VALUES {
            continue;
        }
        let texts = texts(context, point, &values(context, joint, group));
        match found.iter_mut().find(|(known, _)| *known == texts) {
            Some((_, tags)) => tags.push(&joint.tag),
            None => found.push((texts, vec![&joint.tag])),
        }
    }
    if count == 0 {
        return Vec::new();
    }
    if found.len() > MOST_VALUES {
        return vec![row(
            context,
            point,
            texts(context, point, &on_cards(context)),
            String::new(),
        )];
    }
    let single = found.len() == 1;
    found
        .into_iter()
        .map(|(texts, tags)| {
            let members = if single {
                String::new()
            } else {
                members(context, &tags)
            };
            row(context, point, texts, members)
        })
        .collect()
}

fn texts(context: &Context<'_>, point: &str, values: &Values) -> Texts {
    ["reference", "accept", "record"]
        .map(|field| context.say(&format!("pack.itp.rows.{point}.{field}"), values))
}

/// Up to two tags, then how many more.
pub(super) fn members(context: &Context<'_>, tags: &[&str]) -> String {
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

fn row(context: &Context<'_>, point: &str, texts: Texts, members: String) -> Vec<Cell> {
    let field = |key: &str| context.label(&format!("pack.itp.rows.{point}.{key}"));
    let letters = Class::ALL
        .iter()
        .map(|class| letter(context, point, *class));
    let [reference, accept, record] = texts;
    let mut row = vec![
        Cell::text(field("point")),
        Cell::text(field("activity")),
        Cell::text(reference),
        if members.is_empty() {
            Cell::text(accept)
        } else {
            Cell::Two([accept, members])
        },
        Cell::text(record),
    ];
    row.extend(letters.map(|letter| Cell::text(letter.replace('-', NONE))));
    row.push(Cell::text(notice_of(context, &field("point"))));
    row.extend((0..3).map(|_| Cell::Box(String::new())));
    row
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
fn notice_of(context: &Context<'_>, point: &str) -> String {
    if point.starts_with(['H', 'W']) {
        let (given, confirmed) = notice(context);
        format!("{given} / {confirmed}")
    } else {
        NONE.to_owned()
    }
}

/// The values of a joint. What is not known is left to be written.
fn values(context: &Context<'_>, joint: &Joint, group: &Group) -> Values {
    let blank = || context.label("pack.blank");
    let checks = &joint.mechanics.checks;
    let length = |fact: &crate::joint::Fact<crate::units::Length>| {
        fact.value()
            .map_or_else(blank, |length| context.text(length))
    };
    let computed: &Computed = &group.computed;
    let of = |id| {
        context
            .of(&computed.ledger, id)
            .map_or_else(blank, |printed| printed.joined())
    };
    let pressure = joint.mechanics.service.pressure.value();
    Values::new()
        .with(
            "sheet",
            joint.work.isolation.get().cloned().unwrap_or_else(blank),
        )
        .with("offset_limit", length(&checks.centreline))
        .with("parallel_limit", length(&checks.parallelism))
        .with("hole_limit", length(&checks.holes))
        .with("free_gap", length(&checks.gap))
        .with("gap_limit", length(&checks.gap_spread))
        .with(
            "setting",
            context
                .setting(joint, computed)
                .map_or_else(blank, |set| set.joined()),
        )
        .with("least", of(ids::ACCEPT_STRETCH_LEAST))
        .with("most", of(ids::ACCEPT_STRETCH_MOST))
        .with(
            "pressure",
            pressure.map_or_else(blank, |pressure| context.text(pressure)),
        )
}

/// The same where the joints differ too much: every value stands on the card.
fn on_cards(context: &Context<'_>) -> Values {
    let there = context.label("pack.on_card.value");
    let names = [
        "sheet",
        "offset_limit",
        "parallel_limit",
        "hole_limit",
        "free_gap",
        "gap_limit",
        "setting",
        "least",
        "most",
        "pressure",
    ];
    let values = names
        .into_iter()
        .fold(Values::new(), |values, name| values.with(name, &there));
    values.with("sheet", context.label("pack.on_card.sheet"))
}

/// The points that the job adds, each once with its joints.
fn own_rows(context: &Context<'_>) -> Vec<Vec<Cell>> {
    let mut found: Vec<(&HoldPoint, Vec<&Joint>)> = Vec::new();
    for joint in context.joints {
        for point in &joint.work.hold_points {
            let same = |known: &HoldPoint| {
                (&known.point, &known.text, &known.accept, known.by)
                    == (&point.point, &point.text, &point.accept, point.by)
            };
            match found.iter_mut().find(|(known, _)| same(known)) {
                Some((_, joints)) => joints.push(joint),
                None => found.push((point, vec![joint])),
            }
        }
    }
    found
        .iter()
        .map(|(point, joints)| own_row(context, point, joints))
        .collect()
}

fn own_row(context: &Context<'_>, point: &HoldPoint, joints: &[&Joint]) -> Vec<Cell> {
    let tags: Vec<&str> = joints.iter().map(|joint| joint.tag.as_str()).collect();
    let accept = point.accept.clone().unwrap_or_else(|| NONE.to_owned());
    let letter = point
        .point
        .chars()
        .take(1)
        .collect::<String>()
        .to_uppercase();
    let role = point
        .by
        .map(|by| context.label(role_key(by)))
        .unwrap_or_default();
    let mut row = vec![
        Cell::text(point.point.clone()),
        Cell::Two([point.text.clone(), role]),
        Cell::text(context.label("pack.itp.own_reference")),
        Cell::Two([accept, members(context, &tags)]),
        Cell::text(context.label("pack.itp.own_record")),
    ];
    row.extend(Class::ALL.iter().map(|class| {
        let concerned = joints.iter().any(|joint| class_of(joint) == *class);
        Cell::text(if concerned {
            letter.clone()
        } else {
            NONE.to_owned()
        })
    }));
    row.push(Cell::text(notice_of(context, &point.point)));
    row.extend((0..3).map(|_| Cell::Box(String::new())));
    row
}
