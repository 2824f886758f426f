//! The points of a boundary.

use crate::document::blocks::Head;
use crate::document::isolation::{Point, PointKind, Points};
use crate::job::{self, Isolation};
use crate::joint::Who;
use crate::wording::Values;
use crate::yaml::{At, items};

use super::super::context::Context;

/// Lines for points that the job does not give.
const BLANK_POINTS: usize = 6;

/// The points of a boundary that could be read, in the order of the job.
pub(super) fn listed(isolation: &Isolation) -> impl Iterator<Item = &job::Point> {
    items(isolation.points.as_ref())
}

/// The tags of the points of some kinds, in words.
pub(super) fn tags(
    context: &Context<'_>,
    isolation: &Isolation,
    kinds: &[job::PointKind],
) -> (usize, String) {
    let wanted =
        listed(isolation).filter(|point| point.kind.get().is_some_and(|kind| kinds.contains(kind)));
    let tags: Vec<String> = wanted
        .filter_map(|point| point.tag.get())
        .map(|tag| tag.as_str().to_owned())
        .collect();
    (tags.len(), context.wording.join(&tags))
}

/// The table of points; lines to be filled in where the job gives none.
pub(super) fn table(context: &Context<'_>, isolation: &Isolation) -> Points {
    let label = |key: &str| context.label(&format!("isolation.points.{key}"));
    let mut rows: Vec<Point> = (1usize..)
        .zip(listed(isolation))
        .map(|(number, it)| point(context, number, it))
        .collect();
    let missing = if rows.is_empty() {
        context.who(Who::Operator)
    } else {
        String::new()
    };
    if rows.is_empty() {
        rows.extend((1..=BLANK_POINTS).map(blank));
    }
    Points {
        head: Head {
            title: label("title"),
            note: context.say1("isolation.points.note", "missing", missing),
        },
        columns: ["number", "tag", "make"].map(label),
        boxes: ["lock", "label", "fitted", "verified", "removed"].map(label),
        rows,
        continued: label("continued"),
    }
}

/// A line that is filled in by hand.
fn blank(number: usize) -> Point {
    Point {
        number: number.to_string(),
        kind: PointKind::Unknown,
        tag: String::new(),
        place: String::new(),
        make: String::new(),
    }
}

fn point(context: &Context<'_>, number: usize, point: &job::Point) -> Point {
    let kind = point.kind.get().copied().unwrap_or(job::PointKind::Lock);
    let key = kind.word().replace(' ', "_");
    let text = |text: Option<&str>| text.unwrap_or_default().to_owned();
    let place = Values::new()
        .with("what", context.label(&format!("isolation.kind.{key}")))
        .with(
            "place",
            text(
                point
                    .location
                    .as_ref()
                    .and_then(At::get)
                    .map(|it| it.as_str()),
            ),
        );
    let position = point
        .position
        .as_ref()
        .and_then(At::get)
        .map(|it| it.as_str().to_owned());
    Point {
        number: number.to_string(),
        kind: drawn(kind),
        tag: text(point.tag.get().map(|tag| tag.as_str())),
        place: context.say("isolation.kind.place", &place),
        make: position.unwrap_or_else(|| context.label(&format!("isolation.make.{key}"))),
    }
}

/// The symbol of a kind of point; a blind is drawn as the spade that it is.
const fn drawn(kind: job::PointKind) -> PointKind {
    match kind {
        job::PointKind::ValveShut => PointKind::ValveShut,
        job::PointKind::ValveOpen => PointKind::ValveOpen,
        job::PointKind::Spade | job::PointKind::Blind => PointKind::Spade,
        job::PointKind::Vent => PointKind::Vent,
        job::PointKind::Drain => PointKind::Drain,
        job::PointKind::Gauge => PointKind::Gauge,
        job::PointKind::Motor => PointKind::Motor,
        job::PointKind::Lock => PointKind::Lock,
    }
}
