//! The numbers of one joint, and those of a whole job with like joints worked out once.

use std::collections::BTreeMap;
use std::sync::Arc;

use crate::calc::labour::{Labour, Task};
use crate::calc::order::ToolsAtOnce;
use crate::calc::{Chosen, Common, Ledger, Order, Pass};
use crate::joint::Joint;
use crate::parallel;

use super::method::Plan;

/// Everything that was worked out for one joint, or for a group of joints with equal mechanics.
#[derive(Clone, Debug)]
pub struct Computed {
    /// All values.
    pub ledger: Ledger,
    /// The tools that were named or chosen.
    pub chosen: Chosen,
    /// What the method worked out beyond what methods share.
    pub plan: Arc<dyn Plan>,
    /// The passes in their order.
    pub passes: Vec<Pass>,
    /// The order of the stepped passes, with all tools.
    pub order: Option<Arc<Order>>,
    /// How many tools work at once, and how many of those on hand stand idle.
    pub tools_at_once: ToolsAtOnce,
    /// The hours, block by block.
    pub tighten_labour: Labour,
    /// The same for loosening.
    pub loosen_labour: Labour,
    /// The same for the later look, where the joint has one.
    pub recheck_labour: Option<Labour>,
}

impl Computed {
    /// The hours of a task; none of one that the joint does not have.
    pub fn labour(&self, task: Task) -> Option<&Labour> {
        match task {
            Task::Loosen => Some(&self.loosen_labour),
            Task::Tighten => Some(&self.tighten_labour),
            Task::Recheck => self.recheck_labour.as_ref(),
        }
    }
}

/// A joint with its numbers: what is asked what is done to it.
#[derive(Clone, Copy, Debug)]
pub struct Case<'a> {
    /// The joint.
    pub joint: &'a Joint,
    /// Its numbers.
    pub computed: &'a Computed,
}

/// Joints with equal mechanics and equal limits, worked out once.
#[derive(Clone, Debug)]
pub struct Group {
    /// `channel flange/a`; the tag for a joint without a family.
    pub name: String,
    /// Members, as indices into the list of joints.
    pub members: Vec<usize>,
    /// Their numbers.
    pub computed: Arc<Computed>,
}

/// The numbers of a whole job.
#[derive(Clone, Debug, Default)]
pub struct Calculation {
    /// Groups in the order of their first joints.
    pub groups: Vec<Group>,
    /// The group of each joint.
    pub group_of: Vec<usize>,
}

impl Calculation {
    /// Works out all joints with `compute`; equal ones once.
    pub(super) fn new(joints: &[Joint], compute: fn(&Joint, &Common) -> Computed) -> Self {
        let (first_joints, group_of) = equal_joints(joints);
        let common = Common::default();
        let computed = parallel::map(&first_joints, |joint| Arc::new(compute(joint, &common)));
        let groups = computed.into_iter().map(|computed| Group {
            name: String::new(),
            members: Vec::new(),
            computed,
        });
        let mut calculation = Self {
            groups: groups.collect(),
            group_of,
        };
        for (index, &group) in calculation.group_of.iter().enumerate() {
            calculation.groups[group].members.push(index);
        }
        calculation.name_groups(joints);
        calculation
    }

    /// The numbers of some joints alone, in the order of `chosen`; groups keep their names.
    #[must_use]
    pub fn of_joints(&self, chosen: &[usize]) -> Self {
        let mut part = Self::default();
        let mut moved: BTreeMap<usize, usize> = BTreeMap::new();
        for (index, joint) in chosen.iter().enumerate() {
            let Some((&old, group)) = self.group_of.get(*joint).zip(self.of(*joint)) else {
                continue;
            };
            let new = *moved.entry(old).or_insert_with(|| {
                part.groups.push(Group {
                    members: Vec::new(),
                    ..group.clone()
                });
                part.groups.len() - 1
            });
            part.groups[new].members.push(index);
            part.group_of.push(new);
        }
        part
    }

    /// `family/a`, `family/b`... in the order of appearance.
    fn name_groups(&mut self, joints: &[Joint]) {
        let mut counts: BTreeMap<&str, usize> = BTreeMap::new();
        for group in &mut self.groups {
            let Some(first) = group.members.first().and_then(|&first| joints.get(first)) else {
                continue;
            };
            group.name = match &first.family {
                Some(family) => {
                    let count = counts.entry(family.as_str()).or_default();
                    *count += 1;
                    format!("{family}/{}", letters(*count))
                }
                None => first.tag.clone(),
            };
        }
    }

    /// The numbers of a joint.
    pub fn of(&self, joint: usize) -> Option<&Group> {
        self.group_of
            .get(joint)
            .and_then(|&group| self.groups.get(group))
    }
}

/// The first joint of each group of equal joints, and the group of each joint. Only joints of one family
/// are equal: what nobody says belongs together has a note of its own.
fn equal_joints(joints: &[Joint]) -> (Vec<&Joint>, Vec<usize>) {
    let mut first_joints: Vec<&Joint> = Vec::new();
    let mut alike: BTreeMap<String, Vec<usize>> = BTreeMap::new();
    let group_of = joints.iter().map(|joint| {
        let groups = joint
            .family
            .as_deref()
            .map(|family| alike.entry(likeness(family, joint)).or_default());
        let is_equal = |&group: &usize| {
            let first: &Joint = first_joints[group];
            first.mechanics == joint.mechanics && first.work.limits == joint.work.limits
        };
        let found = groups
            .as_ref()
            .and_then(|groups| groups.iter().copied().find(is_equal));
        found.unwrap_or_else(|| {
            let group = first_joints.len();
            first_joints.push(joint);
            if let Some(groups) = groups {
                groups.push(group);
            }
            group
        })
    });
    let group_of = group_of.collect();
    (first_joints, group_of)
}

/// What mostly differs between the joints of a family, so that few of them are compared in full.
fn likeness(family: &str, joint: &Joint) -> String {
    let studs = &joint.mechanics.studs;
    let target = joint.mechanics.target.given.value();
    let (thread, count) = (studs.thread.get(), studs.count.value());
    format!("{family} {thread:?} {count:?} {target:?}")
}

/// 1 is a, 26 is z, 27 is aa.
fn letters(mut number: usize) -> String {
    let mut text = String::new();
    while number > 0 {
        let index = (number - 1) % 26;
        text.insert(0, char::from(b'a' + u8::try_from(index).unwrap_or(0)));
        number = (number - 1) / 26;
    }
    text
}
