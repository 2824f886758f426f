//! What all steps ask for: plan, tensioner, driver, torques as their tools show them.

use std::sync::Arc;

use crate::calc::{Id, whole};
use crate::joint::{Dial, Driver, Lack, Tensioner, Tool, ToolReading, Who};
use crate::methods::steps;
use crate::units::{Angle, Quantity, Torque};
use crate::work::{Bound, Limit, Set, Value};

use super::super::{FLAT_RULE, JackboltPlan, Round, RoundKind, ids};
use super::{Case, Readings};

/// Full-value rounds beyond the planned ones before the crew stops and calls (common practice, no source).
const FURTHER_ROUNDS: usize = 3;

/// One joint with what its steps hang on.
#[derive(Clone, Copy)]
pub(super) struct Facts<'a> {
    pub(super) case: &'a Case<'a>,
    pub(super) plan: Option<&'a JackboltPlan>,
    pub(super) tensioner: Option<&'a Tensioner>,
}

/// Who must give what nobody knows.
pub(super) const fn lack(key: &'static str, who: Who) -> Lack {
    Lack { key, who }
}

/// Numbers of jackbolts one behind the other.
pub(super) fn numbers(jackbolts: &[usize]) -> Value {
    Value::List(jackbolts.iter().copied().map(Value::Count).collect())
}

/// Names of rows or columns, below `word`.
pub(super) fn words(ids: &[&'static str]) -> Vec<Value> {
    ids.iter().copied().map(Value::Word).collect()
}

/// No jackbolt turns so far in a whole round.
pub(super) fn below_flat() -> Limit {
    let flat = Value::of(Angle::degrees(FLAT_RULE));
    Limit::new("largest_turn", Bound::Below(flat))
}

impl<'a> Facts<'a> {
    pub(super) fn new(case: &'a Case<'a>) -> Self {
        Self {
            case,
            plan: case.computed.plan.jackbolts(),
            tensioner: case.joint.mechanics.tensioner.as_deref(),
        }
    }

    pub(super) fn get<Q: Quantity>(&self, id: Id<Q>) -> Option<Q> {
        self.case.computed.ledger.get(id)
    }

    /// The driver that the job names; none where the plan says that it does not fit.
    pub(super) fn driver(&self) -> Option<(&'a Arc<Tool>, &'a Driver)> {
        let tool = self.case.joint.mechanics.tools.driver.as_ref()?;
        let fits = self.plan.is_none_or(|plan| plan.driver.is_some());
        Some((tool, tool.driver.as_ref()?)).filter(|_| fits)
    }

    pub(super) fn studs(&self) -> usize {
        self.get(ids::COUNT).map_or(0, |count| whole(count.si()))
    }

    /// Jackbolts on one stud; none where nobody says so.
    pub(super) fn jackbolts(&self) -> usize {
        let count = self.tensioner.and_then(|it| it.jackbolts.value());
        count.map_or(0, |count| whole(count.si()))
    }

    /// What stands on the dials of the tools.
    pub(super) fn readings(&self) -> Readings<'a> {
        self.case.computed.readings(self.case.joint)
    }

    /// What the wrench is set to in a round by hand; a body is seated with a small wrench.
    pub(super) fn by_hand(&self, round: &Round) -> Set {
        let torque = Torque::from_si(round.torque);
        match round.kind {
            RoundKind::Seat => Set::by(self.readings().tightening().fine().set(torque)),
            _ => steps::set(self.case, torque),
        }
    }

    /// What the wrench for loosening never passes at a torque of a jackbolt.
    pub(super) fn never(&self, torque: Option<Torque>) -> Set {
        match torque {
            Some(torque) => steps::never(self.case, torque),
            None => Set::Missing(lack("loosen.never_exceed", Who::Engineer)),
        }
    }

    /// A torque of each jackbolt on the dial of the driver.
    pub(super) fn on_driver(
        &self,
        torque: Option<Torque>,
        read: impl Fn(Dial<'a>, Torque) -> Result<ToolReading, Lack>,
    ) -> Set {
        let known = self.readings().driver().zip(torque);
        let unknown = lack("tools.*.driver", Who::ToolStore);
        Set::by(
            known
                .ok_or(unknown)
                .and_then(|(dial, torque)| read(dial, torque)),
        )
    }

    /// N, and the last round after which the crew stops.
    pub(super) fn full_rounds(&self) -> Option<(usize, usize)> {
        let least = self.plan?.full_rounds;
        Some((least, least + FURTHER_ROUNDS))
    }

    /// Both parts of the rule that ends the work.
    pub(super) fn stop_parts(&self) -> Vec<Limit> {
        let least = match self.full_rounds() {
            Some((least, _)) => Value::Count(least),
            None => Value::Missing(lack("studs.tensioner", Who::Engineer)),
        };
        vec![
            Limit::new("full_rounds", Bound::AtLeast(least)),
            below_flat(),
        ]
    }
}
