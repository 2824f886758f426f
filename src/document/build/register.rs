//! The joint register of a job: one row a joint, for paper and for the CSV file.

use std::collections::BTreeMap;

use crate::calc::labour::{Labour, Span, to_print};
use crate::calc::{ids, whole};
use crate::document::desk::{Page, Part};
use crate::document::register::{ColumnId, JointRow, Register, Words};
use crate::joint::Joint;
use crate::methods::{self, Computed};
use crate::units::{Dimension, Duration, Quantity};
use crate::wording::Values;
use crate::yaml::At;

use super::context::{Context, Made};
use super::furniture::{bare_furniture, sealed};
use super::words::{method_of, names, seat_key, studs};

/// By which the first page of the register is referred to.
pub const REGISTER_LABEL: &str = "register";

/// Where the cards of the joints stand.
#[derive(Clone, Copy, Debug)]
pub enum CardPages<'a> {
    /// In the same document, under [`joint_label`].
    Here,
    /// In volumes of their own.
    Volumes(&'a CardVolumes),
}

/// The volumes of crew cards of a job.
#[derive(Clone, Debug, Default)]
pub struct CardVolumes {
    /// The volumes in their order.
    pub volumes: Vec<CardVolume>,
    /// The words for the page of each joint, such as `2/9`, by its index.
    pub pages: BTreeMap<usize, String>,
}

/// One volume of crew cards.
#[derive(Clone, Debug)]
pub struct CardVolume {
    /// Name of its file.
    pub file: String,
    /// The equipment of its joints; may be empty.
    pub equipment: String,
    /// First and last tag.
    pub tags: [String; 2],
    /// Number of joints.
    pub joints: usize,
    /// Number of pages.
    pub pages: usize,
}

impl CardPages<'_> {
    /// The page of the card of a joint.
    pub fn of(&self, joint: usize) -> Page {
        match self {
            Self::Here => Page::At(joint_label(joint)),
            Self::Volumes(volumes) => {
                Page::Given(volumes.pages.get(&joint).cloned().unwrap_or_default())
            }
        }
    }
}

/// By which the cards of a joint are referred to inside a pack; `joint` is its index in the job.
pub fn joint_label(joint: usize) -> String {
    format!("joint-{}", joint + 1)
}

/// The register of all joints, sorted by equipment and tag.
pub fn register(context: &Context<'_>, pages: CardPages<'_>) -> Register {
    let rows = context
        .joints
        .iter()
        .enumerate()
        .filter_map(|(index, joint)| {
            let group = context.plan.of(index)?;
            Some(row(context, joint, &group.computed, pages.of(index)))
        });
    Register::new(words(context), rows.collect())
}

/// The printed registers, each of at most a thousand rows, with their content code.
pub fn register_parts(context: &Context<'_>, register: &Register) -> Made<Vec<Part>> {
    let document = context.label("document.register");
    let bare = bare_furniture(context, &document);
    let code = context.code(&lasting(register));
    let furniture = sealed(context, bare, &code);
    let sheets = register.sheets(&furniture, REGISTER_LABEL);
    let content = sheets
        .into_iter()
        .map(|sheet| Part::Register(Box::new(sheet)))
        .collect();
    Made { content, code }
}

/// The rows without page and revision, which change while the joints do not.
fn lasting(register: &Register) -> Vec<Vec<String>> {
    let mut rows = register.csv_rows();
    for row in &mut rows {
        let kept = ColumnId::ALL
            .iter()
            .zip(row.iter())
            .filter(|(column, _)| !matches!(column, ColumnId::CardPage | ColumnId::Revision));
        *row = kept.map(|(_, text)| text.clone()).collect();
    }
    rows
}

fn words(context: &Context<'_>) -> Words {
    let label = |key: &str| context.label(&format!("register.{key}"));
    let mut headings: BTreeMap<ColumnId, String> = ColumnId::ALL
        .into_iter()
        .map(|column| (column, context.label(column.id())))
        .collect();
    if let (Some(load), Some(unit)) = (
        headings.get_mut(&ColumnId::Load),
        context.units.of(Dimension::Force),
    ) {
        *load = format!("{load} {}", unit.name);
    }
    let status = [
        "apart",
        "cleaned",
        "made_up",
        "at_load",
        "checked",
        "proved",
        "no_leak",
        "deviation",
    ];
    Words {
        headings,
        status: status.map(|key| label(&format!("status.{key}"))),
        title: label("title"),
        remark: label("remark"),
        range: range(context),
        joints: label("total_joints"),
        studs: label("total_studs"),
    }
}

/// The words around the three numbers of `rows 1 to 25 of 61`.
fn range(context: &Context<'_>) -> [String; 3] {
    const NUMBER: &str = "\u{1}";
    let values = Values::new()
        .with("first", NUMBER)
        .with("last", NUMBER)
        .with("total", NUMBER);
    let said = context.say("register.rows.range", &values);
    let mut words = said.split(NUMBER).map(str::to_owned);
    std::array::from_fn(|_| words.next().unwrap_or_default())
}

/// Hours of labour of a joint in all of its tasks, typical, rounded as they are printed.
pub(super) fn labour_hours(joint: &Joint, computed: &Computed) -> Duration {
    to_print(hours_of(joint, computed, |labour| labour.labour).typical)
}

/// A part of the hours of a joint, over all of its tasks.
pub(super) fn hours_of(joint: &Joint, computed: &Computed, part: fn(&Labour) -> Span) -> Span {
    let labours = methods::tasks(joint).filter_map(|task| computed.labour(task));
    labours.map(part).fold(Span::ZERO, Span::and)
}

fn row(context: &Context<'_>, joint: &Joint, computed: &Computed, card_page: Page) -> JointRow {
    let studs = &joint.mechanics.studs;
    let hours = labour_hours(joint, computed);
    let fasteners = computed
        .ledger
        .get(ids::COUNT)
        .map_or(0, |count| whole(count.si()));
    JointRow {
        equipment: joint.identity.equipment.get().cloned().unwrap_or_default(),
        tag: joint.tag.clone(),
        texts: texts(context, joint, computed, hours),
        card_page,
        studs: u32::try_from(fasteners).unwrap_or(u32::MAX),
        thread: studs
            .thread
            .get()
            .map(|thread| thread.designation.clone())
            .unwrap_or_default(),
        hours: hours.si() / 3600.0,
    }
}

fn texts(
    context: &Context<'_>,
    joint: &Joint,
    computed: &Computed,
    hours: Duration,
) -> BTreeMap<ColumnId, String> {
    let (identity, mechanics, work) = (&joint.identity, &joint.mechanics, &joint.work);
    let method = method_of(joint);
    let size = mechanics
        .studs
        .flange_diameter
        .value()
        .map(|size| context.text(size));
    let texts = [
        (ColumnId::Unit, identity.unit.get().cloned()),
        (ColumnId::Place, identity.location.get().cloned()),
        (ColumnId::Drawing, drawing(context, joint)),
        (
            ColumnId::JointType,
            mechanics
                .studs
                .seat
                .value()
                .map(|seat| context.label(&format!("seat.{}", seat_key(seat)))),
        ),
        (ColumnId::Size, size),
        (ColumnId::Studs, studs(context, joint)),
        (
            ColumnId::StudLength,
            mechanics
                .studs
                .length
                .value()
                .map(|length| context.text(length)),
        ),
        (ColumnId::Material, material(joint)),
        (
            ColumnId::Gasket,
            mechanics.gasket.as_ref().map(|gasket| gasket.name.clone()),
        ),
        (ColumnId::Lubricant, mechanics.lubricant.name.get().cloned()),
        (
            ColumnId::Method,
            method.map(|key| context.label(&format!("method_short.{key}"))),
        ),
        (
            ColumnId::Load,
            context
                .of(&computed.ledger, ids::LOAD)
                .map(|load| load.value),
        ),
        (
            ColumnId::Setting,
            context.setting(joint, computed).map(|set| set.joined()),
        ),
        (ColumnId::Tool, Some(names(&computed.chosen.turning))),
        (
            ColumnId::Class,
            mechanics.class.value().map(|class| class.word().to_owned()),
        ),
        (ColumnId::Isolation, work.isolation.get().cloned()),
        (ColumnId::Permit, permit(context, joint)),
        (ColumnId::Crew, work.crew.get().cloned()),
        (ColumnId::Start, work.start.map(|start| start.to_string())),
        (ColumnId::Hours, Some(hours_text(hours))),
        (ColumnId::Revision, Some(context.revision_name().to_owned())),
    ];
    texts
        .into_iter()
        .filter_map(|(column, text)| Some((column, text?)))
        .collect()
}

/// Hours without their unit, which stands in the heading.
pub(super) fn hours_text(hours: Duration) -> String {
    crate::units::digits((hours.si() / 360.0).round() / 10.0)
}

fn drawing(context: &Context<'_>, joint: &Joint) -> Option<String> {
    let (number, revision) = joint.identity.drawing.as_ref()?;
    Some(match revision {
        Some(revision) => {
            let values = Values::new()
                .with("number", number)
                .with("revision", revision);
            context.say("card.drawing", &values)
        }
        None => number.clone(),
    })
}

fn material(joint: &Joint) -> Option<String> {
    let studs = &joint.mechanics.studs;
    let grades: Vec<&str> = [studs.grade.get(), studs.nut_grade.get()]
        .into_iter()
        .flatten()
        .map(String::as_str)
        .collect();
    (!grades.is_empty()).then(|| grades.join(" / "))
}

/// Numbers of the permits of the boundary that the joint lies behind.
fn permit(context: &Context<'_>, joint: &Joint) -> Option<String> {
    let name = joint.work.isolation.get()?;
    let isolation = context
        .job
        .isolations
        .as_ref()
        .and_then(At::get)
        .and_then(|all| all.get(name));
    let own = isolation
        .and_then(|isolation| isolation.permit.as_ref())
        .and_then(At::get);
    let linked = context
        .job
        .permits_of(name)
        .filter_map(|permit| permit.number.as_ref().and_then(At::get));
    let numbers: Vec<&str> = own
        .into_iter()
        .chain(linked)
        .map(|number| number.as_str())
        .collect();
    (!numbers.is_empty()).then(|| numbers.join(", "))
}
