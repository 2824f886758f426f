//! From a joint to its numbers: loads, settings, order, passes, release, hours.
//!
//! Pure and total: a missing fact gives missing results, a breached limit is a value that a rule
//! will find. No file, no text, no clock.

mod calibration;
mod choose;
mod common;
mod driver_pays;
mod hours;
pub mod ids;
pub mod jackbolt;
pub mod labour;
mod ledger;
mod load;
pub mod opening;
pub mod order;
mod release;
mod setting;
mod stress;
mod studs;

pub use choose::Chosen;
pub(crate) use choose::same_size;
pub use common::Common;
pub use driver_pays::DriverPays;
pub(crate) use hours::crew_of;
pub use ledger::{Basis, Entry, Id, Key, Lack, Ledger};
pub(crate) use load::is_root;
pub use order::Order;
pub(crate) use release::LEAST_ANGLE;
pub(crate) use setting::scale;
pub use setting::{Pass, PassKind};
pub(crate) use studs::{longest_protrusion, shortest_protrusion};

use std::collections::BTreeMap;
use std::sync::Arc;

use crate::joint::Joint;
use crate::parallel;
use crate::units::Quantity;
use jackbolt::JackboltPlan;

/// Everything that was worked out for one joint, or for a group of joints with equal mechanics.
#[derive(Clone, Debug)]
pub struct Computed {
    /// All values.
    pub ledger: Ledger,
    /// The tools that were named or chosen.
    pub chosen: Chosen,
    /// The plan of a multi-jackbolt tensioner, where the method is that one and everything for it is known.
    pub jackbolts: Option<Arc<JackboltPlan>>,
    /// The passes in their order.
    pub passes: Vec<Pass>,
    /// The order of the stepped passes, with all tools.
    pub order: Option<Arc<Order>>,
    /// How many tools work at once, and how many of those on hand stand idle.
    pub tools_at_once: order::ToolsAtOnce,
    /// The hours, block by block.
    pub tighten_labour: labour::Labour,
    /// The same for loosening.
    pub loosen_labour: labour::Labour,
    /// The same for tightening jackbolts by hand alone, where a driver is planned.
    pub by_hand_labour: Option<Box<labour::Labour>>,
    /// With the driver against by hand, stud by stud, where a driver is planned.
    pub driver_pays: Option<Box<DriverPays>>,
}

/// Works out one joint, and shares what it has in `common` with others.
pub fn compute(joint: &Joint, common: &Common) -> Computed {
    let mechanics = &joint.mechanics;
    let mut ledger = Ledger::default();
    studs::enter(&mut ledger, mechanics);
    stress::enter_section(&mut ledger);
    load::enter(&mut ledger, mechanics);
    let chosen = choose::choose(&ledger, joint);
    setting::enter(&mut ledger, mechanics, &chosen);
    stress::enter(&mut ledger, mechanics);
    let (passes, jackbolts) = if load::is_jackbolted(mechanics) {
        studs::enter_lengths(&mut ledger, mechanics);
        enter_jackbolts(&mut ledger, joint, &chosen)
    } else {
        let passes = setting::passes(&mut ledger, mechanics, &chosen);
        studs::enter_lengths(&mut ledger, mechanics);
        release::enter(&mut ledger, joint, &chosen);
        (passes, None)
    };
    let count = ledger.get(ids::COUNT).map_or(0, |count| whole(count.si()));
    let tools_at_once = order::tools_at_once(count, chosen.turning.len().max(1));
    let order = setting::order(mechanics, count, tools_at_once.at_once);
    let hours = hours::enter(
        &mut ledger,
        joint,
        &passes,
        jackbolts.as_ref(),
        tools_at_once.at_once,
    );
    ledger.close(&common.forms);
    Computed {
        ledger,
        chosen,
        jackbolts: jackbolts.map(Arc::new),
        passes,
        order: order.map(|order| common.orders.share(Arc::new(order))),
        tools_at_once,
        tighten_labour: hours.tighten,
        loosen_labour: hours.loosen,
        by_hand_labour: hours.by_hand.map(Box::new),
        driver_pays: hours.driver_pays.map(Box::new),
    }
}

/// Works out the plan of a multi-jackbolt tensioner, its rounds as passes, and its release.
fn enter_jackbolts(
    ledger: &mut Ledger,
    joint: &Joint,
    chosen: &Chosen,
) -> (Vec<Pass>, Option<JackboltPlan>) {
    release::enter_break_out(ledger, joint);
    let peak = jackbolt::strength::enter_release(ledger, joint, chosen);
    let plan = jackbolt::enter::enter(ledger, joint, chosen, peak);
    let passes = setting::jackbolt_passes(ledger, plan.as_ref());
    release::enter_jackbolts(ledger, joint, chosen, plan.as_ref());
    (passes, plan)
}

/// A count that was entered as a whole number, back as one.
pub fn whole(count: f64) -> usize {
    (0..=order::MOST_FASTENERS)
        .rev()
        .find(|&number| number as f64 <= count)
        .unwrap_or(0)
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
pub struct Plan {
    /// Groups in the order of their first joints.
    pub groups: Vec<Group>,
    /// The group of each joint.
    pub group_of: Vec<usize>,
}

impl Plan {
    /// Works out all joints; equal ones once.
    pub fn new(joints: &[Joint]) -> Self {
        let (first_joints, group_of) = equal_joints(joints);
        let common = Common::default();
        let computed = parallel::map(&first_joints, |joint| Arc::new(compute(joint, &common)));
        let groups = computed.into_iter().map(|computed| Group {
            name: String::new(),
            members: Vec::new(),
            computed,
        });
        let mut plan = Self {
            groups: groups.collect(),
            group_of,
        };
        for (index, &group) in plan.group_of.iter().enumerate() {
            plan.groups[group].members.push(index);
        }
        plan.name_groups(joints);
        plan
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
