//! The works of a pack: those of each joint are built, asked and dropped; one for each method and task stays, merged
//! over all joints. What the pack says of steps, hazards and points is a view of these.

use crate::job::Class;
use crate::joint::Joint;
use crate::methods::{self, Case};
use crate::work::{Attendance, Hazard, Kind, Limit, Phase, Step, Task, Work, merge_limits};

use super::super::context::Context;
use super::itp::Points;

/// What the joints of a pack have in common, and how they differ at their points.
#[derive(Default)]
pub(in crate::document) struct Works {
    /// One for each task and method, in the order of tasks and then of the joints.
    pub(in crate::document) merged: Vec<Work>,
    /// The rows of the inspection plan.
    pub(super) points: Points,
    /// How many hold points each of the joints has, in their order.
    pub(super) holds: Vec<usize>,
}

/// The class of a joint; one that is not known is held like the gravest.
pub(super) fn class_of(joint: &Joint) -> Class {
    joint.mechanics.class.value().unwrap_or(Class::A)
}

impl Works {
    /// The works on all joints of a pack.
    pub(in crate::document) fn of(context: &Context<'_>) -> Self {
        Self::of_joints(context, 0..context.joints.len())
    }

    /// The works on some joints, by their places.
    pub(in crate::document) fn of_joints(
        context: &Context<'_>,
        joints: impl IntoIterator<Item = usize>,
    ) -> Self {
        let mut works = Self::default();
        for index in joints {
            let Some(joint) = context.joints.get(index) else {
                continue;
            };
            let mut held: Vec<String> = Vec::new();
            if let Some(group) = context.plan.of(index) {
                let case = Case {
                    joint,
                    computed: &group.computed,
                };
                for work in methods::works(&case) {
                    works.points.add(context, index, &work);
                    held.extend(holds(&work, class_of(joint)));
                    works.merge(work);
                }
            }
            held.sort_unstable();
            held.dedup();
            works.holds.push(held.len());
        }
        works.merged.sort_by_key(|work| work.task);
        works
    }

    fn merge(&mut self, work: Work) {
        let same = |known: &&mut Work| (known.method, known.task) == (work.method, work.task);
        match self.merged.iter_mut().find(same) {
            Some(known) => known.merge(&work),
            None => self.merged.push(work),
        }
    }

    /// Every hazard once, the gravest first.
    pub(in crate::document) fn hazards(&self) -> Vec<Hazard> {
        let mut all: Vec<Hazard> = Vec::new();
        for hazard in self.merged.iter().flat_map(|work| &work.hazards) {
            match all.iter_mut().find(|known| known.kind == hazard.kind) {
                Some(known) => known.merge(hazard),
                None => all.push(hazard.clone()),
            }
        }
        all.sort_by_key(|hazard| (hazard.signal, hazard.kind));
        all
    }

    /// The hazards of the works of one task.
    pub(super) fn hazards_of(&self, task: Task) -> impl Iterator<Item = &Hazard> {
        let works = self.merged.iter().filter(move |work| work.task == task);
        works.flat_map(|work| &work.hazards)
    }
}

/// The names of the points that hold the work on a joint of this class. A point that both of its cards have is signed
/// on both and counted once.
fn holds(work: &Work, class: Class) -> impl Iterator<Item = String> {
    let points = work.points();
    let held = points.filter(move |(_, point)| point.attendance_of(class) == Attendance::Hold);
    held.filter_map(|(_, point)| point.name.clone())
}

/// A step of one or more works that say it in the same words.
pub(in crate::document) struct Shared<'a> {
    /// The step with the values of all of them.
    pub(in crate::document) step: Step,
    /// The works, in the order of the pack.
    pub(in crate::document) works: Vec<&'a Work>,
}

/// The steps of some works in some phases, each once: a step that is new comes behind the one that it follows in its
/// own work. `alike` says whether two works have the same words for a step.
pub(in crate::document) fn shared<'a>(
    works: &[&'a Work],
    is_in: impl Fn(Phase) -> bool,
    alike: impl Fn(&Work, &Work, &Step) -> bool,
) -> Vec<Shared<'a>> {
    let mut all: Vec<Shared<'a>> = Vec::new();
    for work in works {
        let mut next = 0;
        for step in work.steps.iter().filter(|step| is_in(step.phase)) {
            let same = |known: &Shared<'_>| {
                known.step.is_like(step)
                    && known
                        .works
                        .first()
                        .is_some_and(|first| alike(first, work, step))
            };
            if let Some(at) = all.iter().position(same) {
                let known = &mut all[at];
                known.step.merge(step);
                if !known.works.iter().any(|it| std::ptr::eq(*it, *work)) {
                    known.works.push(work);
                }
                next = next.max(at + 1);
            } else {
                let (step, works) = (step.clone(), vec![*work]);
                all.insert(next, Shared { step, works });
                next += 1;
            }
        }
    }
    all
}

impl Shared<'_> {
    /// What is accepted in it, over all of its works: its own limits, those that end the work with it, and at a point
    /// those of the steps that it covers.
    pub(super) fn limits(&self) -> Vec<Limit> {
        let mut limits = self.step.accept.clone();
        for work in &self.works {
            let stop = work.stop.iter().filter(|stop| stop.step == self.step.id);
            let ends = stop.flat_map(|stop| &stop.parts);
            let covered = match &self.step.kind {
                Kind::Point(point) => work.accepted(point),
                _ => Vec::new(),
            };
            let more: Vec<Limit> = ends.chain(covered).cloned().collect();
            merge_limits(&mut limits, &more);
        }
        limits
    }
}
