//! Defaults of the rules, replaced with a reason.

use crate::job::{self, JointKeys};
use crate::joint::{Limit, LimitOverride, limit_of};
use crate::report::Finding;
use crate::units::parse_si;
use crate::yaml::Named;

use super::layers::Layers;

/// The replaced defaults of one joint: its own before those `of_job`. A default that holds for the whole job cannot be
/// replaced for one joint.
pub(super) fn of_joint(
    layers: &Layers<'_>,
    of_job: &[LimitOverride],
    found: &mut Vec<Finding>,
) -> Vec<LimitOverride> {
    let own = layers.leaf(&JointKeys::limits).map(|leaf| leaf.value);
    let mut limits = own.map(|named| read(named, found)).unwrap_or_default();
    limits.retain(|limit| {
        let whole = limit_of(&limit.rule).is_some_and(|default| default.whole);
        if whole {
            found.push(
                Finding::job("job.whole_limit", limit.place).with("name", limit.rule.as_str()),
            );
        }
        !whole
    });
    for limit in of_job {
        if !limits.iter().any(|own| own.rule == limit.rule) {
            limits.push(limit.clone());
        }
    }
    limits
}

/// Reads a map of replaced limits. Each value is read in the dimension of the default that it replaces.
pub(super) fn read(
    named: &Named<job::LimitOverride>,
    found: &mut Vec<Finding>,
) -> Vec<LimitOverride> {
    let mut limits = Vec::new();
    for (rule, entry) in named.iter() {
        let (Some(name), Some(entry)) = (rule.get(), entry.get()) else {
            continue;
        };
        let (Some(text), Some(reason)) = (entry.value.get(), entry.reason.get()) else {
            continue;
        };
        let Some(Limit {
            rule: id,
            dimension,
            ..
        }) = limit_of(name)
        else {
            found.push(Finding::job("job.unknown_limit", rule.place()).with("name", name.as_str()));
            continue;
        };
        match parse_si(text.as_str(), *dimension) {
            Ok(value) if value > 0.0 => limits.push(LimitOverride {
                rule: (*id).to_owned(),
                value,
                printed: text.as_str().to_owned(),
                reason: reason.as_str().to_owned(),
                place: entry.value.place(),
            }),
            _ => found.push(
                Finding::job("job.limit_value", entry.value.place())
                    .with("name", name.as_str())
                    .with("text", text.as_str())
                    .with("quantity", dimension.word()),
            ),
        }
    }
    limits
}
