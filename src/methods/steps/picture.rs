//! The joint as the crew sees it: its fasteners on their circle, the tools of the first move, what is in the way.

use crate::calc::ids;
use crate::job::{ReactionMember, TurnDirection};
use crate::methods::Case;
use crate::work::{Mark, Marked, Picture, Task};

use super::reading::of_joint;

/// Across corners of a hexagon over across flats.
const CORNERS: f64 = 1.1547;
/// Lengths that nobody gives, in mm or in nuts: drawn in a usual proportion, never printed.
const USUAL_NUT: f64 = 40.0;
const USUAL_PITCH: f64 = 1.35;
const LEAST_CIRCLE: f64 = 3.0;
const USUAL_EDGE: f64 = 1.6;
const LEAST_FACE: f64 = 1.2;

/// The picture for a task; `has_arm` says whether the tool leans on something while it turns.
pub(crate) fn picture(case: &Case<'_>, task: Task, has_arm: bool) -> Picture {
    let around = &case.joint.work;
    let mut picture = Picture {
        has_letters: case.computed.order.is_some(),
        is_clockwise: around.direction.value() != Some(TurnDirection::Anticlockwise),
        ..to_proportion(case)
    };
    for (_, at) in &around.obstacles {
        let at = usize::try_from(*at).ok();
        if let Some(at) = at.filter(|at| (1..=picture.count).contains(at)) {
            picture.sectors.push(Marked {
                first: at,
                last: at,
                by: Mark::Obstacle,
            });
        }
    }
    if !around.obstacles.is_empty() {
        picture.legend.push("obstacle");
    }
    let leans_on_nut = around.reaction_member.value() == Some(ReactionMember::NeighbouringNut);
    tools(&mut picture, case, task, has_arm && leans_on_nut);
    if has_arm {
        picture.legend.push("wrench");
    }
    if has_arm && leans_on_nut && !picture.tools.is_empty() {
        picture.legend.extend(["no_hands", "arm"]);
    }
    picture
}

/// The joint with its fasteners, in mm.
fn to_proportion(case: &Case<'_>) -> Picture {
    let studs = &case.joint.mechanics.studs;
    let count = of_joint(case);
    let flats = case.computed.ledger.get(ids::ACROSS_FLATS);
    let nut = flats.map_or(USUAL_NUT, |flats| flats.to_mm() * CORNERS);
    let circle = studs.bolt_circle.value().map_or_else(
        || {
            let all = u32::try_from(count).map_or(0.0, f64::from);
            (nut * USUAL_PITCH * all / std::f64::consts::PI).max(nut * LEAST_CIRCLE)
        },
        |it| it.to_mm(),
    );
    let outer = studs.flange_diameter.value();
    let outer = outer.map_or(circle + USUAL_EDGE * nut, |it| it.to_mm());
    let inner = circle - (outer - circle).max(LEAST_FACE * nut);
    Picture {
        circles: [outer, inner].map(|diameter| diameter / 2.0).to_vec(),
        count,
        on: circle / 2.0,
        fastener: nut / 2.0,
        ..Picture::default()
    }
}

/// The fasteners of the first move, each with a tool on it; one at a time while loosening. The arm leans on the next
/// stud clockwise while tightening and on the other side while loosening, because it changes sides with the drive.
fn tools(picture: &mut Picture, case: &Case<'_>, task: Task, leans: bool) {
    let computed = case.computed;
    let at_once = match task {
        Task::Loosen => 1,
        Task::Tighten | Task::Recheck => computed.tools_at_once.at_once.max(1),
    };
    let first = computed
        .order
        .as_ref()
        .and_then(|order| order.moves.first());
    let is_forward = picture.is_clockwise == (task != Task::Loosen);
    for &stud in first.into_iter().flatten().take(at_once) {
        let next = match is_forward {
            true => stud % picture.count.max(1) + 1,
            false => (stud + picture.count.max(2) - 2) % picture.count.max(1) + 1,
        };
        picture.tools.push((stud, leans.then_some(next)));
        if leans {
            let (first, last) = if is_forward {
                (stud, next)
            } else {
                (next, stud)
            };
            picture.sectors.push(Marked {
                first,
                last,
                by: Mark::NoHands,
            });
        }
    }
}
