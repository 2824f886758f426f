//! The picture of the joint, drawn from the same data as the list of the order.

use crate::calc::{Order, ids, order};
use crate::document::card::Order as OrderStrip;
use crate::document::card::{Mark, Picture, Sector, ToolMark};
use crate::job::{ReactionMember, TurnDirection};
use crate::methods::hydraulic;
use crate::wording::Values;

use super::super::context::Context;
use super::Subject;
use super::parts::{count, direction};

/// Angles of the fasteners in degrees clockwise from the top, number 1 first.
struct Circle {
    count: usize,
    clockwise: bool,
}

impl Circle {
    fn pitch(&self) -> f64 {
        360.0 / real(self.count.max(1))
    }

    /// The angle of place `index`, counted from 0; halves lie between two fasteners.
    fn at(&self, index: f64) -> f64 {
        let turn = if self.clockwise { index } else { -index };
        (turn * self.pitch()).rem_euclid(360.0)
    }

    /// A sector round place `index`, `half` places to each side, as it lies clockwise.
    fn around(&self, from: f64, to: f64) -> Sector {
        let start = self.at(if self.clockwise { from } else { to });
        Sector {
            from: start,
            to: start + (to - from).abs() * self.pitch(),
        }
    }
}

fn real(count: usize) -> f64 {
    u32::try_from(count).map_or(f64::INFINITY, f64::from)
}

/// The picture. Lengths that the job does not give are drawn in a usual proportion; the crew counts
/// and orients by it, and a dimension is printed only where it was given.
pub(super) fn picture(context: &Context<'_>, subject: &Subject<'_>, loosening: bool) -> Picture {
    let joint = subject.joint;
    let studs = &joint.mechanics.studs;
    let circle = Circle {
        count: count(subject),
        clockwise: joint.work.direction.value() != Some(TurnDirection::Anticlockwise),
    };
    let ledger = &subject.computed.ledger;
    let nut = ledger
        .get(ids::ACROSS_FLATS)
        .map_or(40.0, |flats| flats.to_mm() * 1.1547);
    let bolt_circle = studs.bolt_circle.value().map_or_else(
        || (nut * 1.35 * real(circle.count) / std::f64::consts::PI).max(nut * 3.0),
        |it| it.to_mm(),
    );
    let outer = studs
        .flange_diameter
        .value()
        .map_or(bolt_circle + 1.6 * nut, |it| it.to_mm());
    let inner = bolt_circle - (outer - bolt_circle).max(1.2 * nut);
    let seen = match &joint.work.seen_from {
        Some(words) => context.say1("card.seen_from", "where", words.as_str()),
        None => context.label("card.seen_default"),
    };
    let groups = order::picture_group(circle.count);
    Picture {
        head: crate::document::card::Head {
            title: seen,
            note: facing(context, subject),
        },
        outer,
        inner,
        circle: bolt_circle,
        nut,
        fasteners: (0..circle.count)
            .map(|index| circle.at(real(index)))
            .collect(),
        numbers: numbers(&circle, groups),
        letters: letters(&circle, subject.computed.order.as_deref(), groups),
        divisions: divisions(&circle, groups),
        clockwise: circle.clockwise,
        direction: direction(
            context,
            joint
                .work
                .direction
                .value()
                .unwrap_or(TurnDirection::Clockwise),
        ),
        top: context.label("card.picture.top"),
        tools: tools(subject, &circle, loosening),
        no_hands: no_hands(subject, &circle, loosening),
        obstacles: joint
            .work
            .obstacles
            .iter()
            .filter_map(|(_, at)| usize::try_from(*at).ok())
            .filter(|at| (1..=circle.count).contains(at))
            .map(|at| circle.around(real(at - 1) - 0.45, real(at - 1) + 0.45))
            .collect(),
        legend: legend(context, subject, groups, loosening),
    }
}

/// Where number 1 is.
fn facing(context: &Context<'_>, subject: &Subject<'_>) -> String {
    match subject.joint.work.first.get() {
        Some(first) => context.say1("card.first_at", "first", first.as_str()),
        None => context.label("card.first_unknown"),
    }
}

/// One number for each fastener, or one for the middle of each group.
fn numbers(circle: &Circle, groups: usize) -> Vec<Mark> {
    if groups <= 1 {
        return (0..circle.count)
            .map(|index| Mark {
                angle: circle.at(real(index)),
                text: (index + 1).to_string(),
                first: index == 0,
            })
            .collect();
    }
    order::picture_groups(circle.count)
        .iter()
        .enumerate()
        .filter_map(|(index, group)| {
            let (first, last) = (group.first()?, group.last()?);
            let middle = (real(*first) + real(*last)) / 2.0 - 1.0;
            Some(Mark {
                angle: circle.at(middle),
                text: (index + 1).to_string(),
                first: index == 0,
            })
        })
        .collect()
}

fn divisions(circle: &Circle, groups: usize) -> Vec<f64> {
    if groups <= 1 {
        return Vec::new();
    }
    order::picture_groups(circle.count)
        .iter()
        .filter_map(|group| group.first())
        .map(|first| circle.at(real(*first) - 1.5))
        .collect()
}

/// The letter of the move at each of its fasteners; above 32 at the middle of each group.
fn letters(circle: &Circle, order: Option<&Order>, groups: usize) -> Vec<Mark> {
    let Some(order) = order else {
        return Vec::new();
    };
    let is_by_group = groups > 1 && order.moves.iter().all(|studs| studs.len() <= groups);
    if groups > 1 && !(is_by_group && order.within == order::Move::OneByOne) {
        return Vec::new();
    }
    order
        .lettered()
        .flat_map(|(letter, studs)| {
            let middle =
                studs.iter().map(|stud| real(*stud) - 1.0).sum::<f64>() / real(studs.len());
            let places = if groups > 1 {
                vec![middle]
            } else {
                studs.iter().map(|stud| real(*stud) - 1.0).collect()
            };
            places
                .into_iter()
                .map(|place| Mark {
                    angle: circle.at(place),
                    text: letter.clone(),
                    first: false,
                })
                .collect::<Vec<_>>()
        })
        .collect()
}

/// The studs of the first move, each with a tool on it.
fn first_move(subject: &Subject<'_>, loosening: bool) -> Vec<usize> {
    let tools = subject.computed.tools_at_once.at_once.max(1);
    let order = subject.computed.order.as_ref();
    let first = order
        .and_then(|order| order.moves.first())
        .cloned()
        .unwrap_or_default();
    let take = if loosening { 1 } else { tools };
    first.into_iter().take(take).collect()
}

fn leans_on_neighbour(subject: &Subject<'_>) -> bool {
    subject.joint.work.reaction_member.value() == Some(ReactionMember::NeighbouringNut)
}

fn is_hydraulic(subject: &Subject<'_>) -> bool {
    subject.joint.mechanics.method.value() == Some(hydraulic::WORD)
}

/// The arm is drawn on the next stud clockwise for tightening and on the other side for loosening,
/// because it changes sides when the drive reverses.
fn tools(subject: &Subject<'_>, circle: &Circle, loosening: bool) -> Vec<ToolMark> {
    let lean = lean(circle, loosening);
    first_move(subject, loosening)
        .into_iter()
        .map(|stud| ToolMark {
            angle: circle.at(real(stud) - 1.0),
            reaction: (is_hydraulic(subject) && leans_on_neighbour(subject))
                .then(|| circle.at(real(stud) - 1.0 + lean)),
        })
        .collect()
}

/// To which neighbour the arm leans, in places of the numbering.
fn lean(circle: &Circle, loosening: bool) -> f64 {
    let clockwise = if circle.clockwise { 1.0 } else { -1.0 };
    if loosening { -clockwise } else { clockwise }
}

fn no_hands(subject: &Subject<'_>, circle: &Circle, loosening: bool) -> Vec<Sector> {
    if !is_hydraulic(subject) || !leans_on_neighbour(subject) {
        return Vec::new();
    }
    let lean = lean(circle, loosening);
    first_move(subject, loosening)
        .into_iter()
        .map(|stud| {
            let place = real(stud) - 1.0;
            let (low, high) = (place.min(place + lean), place.max(place + lean));
            circle.around(low - 0.5, high + 0.5)
        })
        .collect()
}

fn legend(
    context: &Context<'_>,
    subject: &Subject<'_>,
    groups: usize,
    loosening: bool,
) -> Vec<String> {
    let hands = !no_hands(
        subject,
        &Circle {
            count: count(subject),
            clockwise: true,
        },
        loosening,
    )
    .is_empty();
    let lines = [
        (!subject.joint.work.obstacles.is_empty(), "legend_obstacle"),
        (hands, "legend_hands"),
        (is_hydraulic(subject), "legend_tool"),
        (hands, "legend_reaction"),
        (groups > 1, "legend_group"),
    ];
    let wanted: Vec<String> = lines
        .into_iter()
        .filter(|(wanted, _)| *wanted)
        .map(|(_, key)| context.label(&format!("card.picture.{key}")))
        .collect();
    let circle = subject.joint.mechanics.studs.bolt_circle.value();
    let circle = circle.map(|it| context.say1("card.bolt_circle", "diameter", context.text(it)));
    // Two lines, evenly filled.
    let all: Vec<String> = wanted.into_iter().chain(circle).collect();
    all.chunks(all.len().div_ceil(2).max(1))
        .map(|line| line.join(" · "))
        .collect()
}

/// The order strip under the picture.
pub(super) fn order_strip(context: &Context<'_>, subject: &Subject<'_>) -> OrderStrip {
    let title = context.label("card.order.title");
    let many = count(subject) > order::MOST_LISTED_ON_CARD;
    let moves: Vec<(String, String)> = match &subject.computed.order {
        Some(order) if !many => order
            .lettered()
            .map(|(letter, studs)| (letter, move_text(order, studs)))
            .collect(),
        _ => Vec::new(),
    };
    let note = if many {
        let values = Values::new().with("note", note_number(context, subject));
        context.say("order.note", &values)
    } else {
        String::new()
    };
    OrderStrip::new(title, &moves, note)
}

/// The number of the calculation note of this joint's group.
pub(super) fn note_number(context: &Context<'_>, subject: &Subject<'_>) -> String {
    let values = Values::new()
        .with("number", context.number())
        .with("group", subject.group);
    context.say("note.number", &values)
}

/// `1·13`, or `1–4` for a group that is gone through one by one.
fn move_text(order: &Order, studs: &[usize]) -> String {
    match (order.within, studs) {
        (order::Move::OneByOne, [first, .., last]) => format!("{first}–{last}"),
        _ => studs
            .iter()
            .map(ToString::to_string)
            .collect::<Vec<_>>()
            .join("·"),
    }
}
