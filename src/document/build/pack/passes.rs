//! The passes of a method as steps of its procedure.

use crate::calc::{PassKind, ids};
use crate::job::Pattern;
use crate::joint::Joint;
use crate::methods::Computed;
use crate::units::Quantity;
use crate::wording::Values;

use super::super::context::{Context, percent};
use super::procedures::{Member, StepTexts, common, gap_limit};

/// Kind, number and share of each pass.
fn plan_of(computed: &Computed) -> Vec<(PassKind, u16, String)> {
    let passes = computed
        .passes
        .iter()
        .filter(|pass| pass.kind != PassKind::Snug);
    passes
        .map(|pass| {
            let share = computed.ledger.get(ids::PASS_SHARE.at(pass.number));
            let share = share.map(|share| percent(share.si())).unwrap_or_default();
            (pass.kind, pass.number, share)
        })
        .collect()
}

/// The passes of some joints: one by one where they are alike, else in general.
pub(super) fn passes(context: &Context<'_>, members: &[Member<'_>]) -> Vec<StepTexts> {
    let Some((first, rest)) = members.split_first() else {
        return Vec::new();
    };
    let plan = plan_of(first.1);
    let label = |key: &str| context.label(&format!("pack.passes.{key}"));
    let gap_limit = gap_limit(context, members);
    let accept_gap = context.say1("pack.passes.gap", "limit", gap_limit);
    if rest.iter().any(|(_, computed)| plan_of(computed) != plan) {
        return vec![
            [label("all"), accept_gap, label("gaps"), String::new()],
            [
                label("circle_any"),
                label("no_turn"),
                label("rounds"),
                "W2".to_owned(),
            ],
        ];
    }
    let circular = plan.iter().any(|(kind, ..)| *kind == PassKind::Circular);
    let last = plan
        .iter()
        .rposition(|(kind, ..)| *kind == PassKind::Stepped);
    plan.iter()
        .enumerate()
        .map(|(place, (kind, number, share))| {
            let text = pass_text(context, members, (*kind, *number), share);
            let witness = match kind {
                PassKind::Circular => true,
                PassKind::Stepped => !circular && last == Some(place),
                PassKind::Snug | PassKind::Repeat => false,
            };
            let point = if witness {
                "W2".to_owned()
            } else {
                String::new()
            };
            match kind {
                PassKind::Circular | PassKind::Repeat => {
                    [text, label("no_turn"), label("rounds"), point]
                }
                _ => [text, accept_gap.clone(), label("gaps"), point],
            }
        })
        .collect()
}

fn pass_text(
    context: &Context<'_>,
    members: &[Member<'_>],
    (kind, number): (PassKind, u16),
    share: &str,
) -> String {
    let at = |joint: &Joint, computed: &Computed| {
        let readings = computed.readings(joint);
        let reading = match kind {
            PassKind::Stepped => readings.pass(number),
            _ => readings.full(),
        };
        Some(context.reading(&reading.ok()?).joined())
    };
    let wait = |joint: &Joint, _: &Computed| {
        let wait = joint.mechanics.plan.repeat_after.as_ref()?.value()?;
        Some(context.text(wait))
    };
    let values = Values::new()
        .with("pass", format!("P{number}"))
        .with("percent", share)
        .with("setting", common(context, members, "value", at))
        .with("wait", common(context, members, "wait", wait));
    let circular = members
        .iter()
        .all(|(joint, _)| joint.mechanics.plan.pattern.value() == Some(Pattern::Circular));
    let key = match kind {
        PassKind::Stepped if circular => "stepped_circular",
        PassKind::Stepped | PassKind::Snug => "stepped",
        PassKind::Circular => "circle",
        PassKind::Repeat => "again",
    };
    context.say(&format!("pack.passes.{key}"), &values)
}
