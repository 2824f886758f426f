//! Who signs on side two of a card: at hold and witness points, and at the end.

use crate::calc::ids;
use crate::document::card::Signature;
use crate::job::{Class, PointRole};
use crate::wording::Values;

use super::super::context::Context;
use super::super::words::role_key;
use super::Subject;
use super::numbers::Numbers;

/// Hold and witness points of the class (common practice, no source), then those of the job.
pub(super) fn points(
    context: &Context<'_>,
    subject: &Subject<'_>,
    numbers: &mut Numbers,
) -> Vec<Signature> {
    let mechanics = &subject.joint.mechanics;
    let role = |role: &str| context.label(&format!("role.{role}"));
    let mut points = Vec::new();
    if mechanics.class.value() == Some(Class::A) {
        points.push((context.say1("sign.h3", "role", role("crew_lead")), true));
        let setting = context
            .setting(subject.joint, subject.computed)
            .map(|printed| printed.joined())
            .unwrap_or_default();
        let values = Values::new()
            .with("value", setting)
            .with("role", role("inspector"));
        points.push((context.say("sign.w2", &values), true));
        if !mechanics.checks.stretch.is_empty() {
            let range = stretch_range(context, subject);
            let values = Values::new()
                .with("value", range)
                .with("role", role("inspector"));
            points.push((context.say("sign.h4", &values), true));
        }
    }
    for point in &subject.joint.work.hold_points {
        let by = point.by.unwrap_or(PointRole::Inspector);
        let values = Values::new()
            .with("point", &point.point)
            .with("text", &point.text)
            .with("accept", point.accept.as_deref().unwrap_or_default())
            .with("role", context.label(role_key(by)))
            .with("witness", point.point.starts_with('W'));
        points.push((context.say("record.own_point", &values), true));
    }
    points
        .into_iter()
        .map(|(label, hold)| Signature {
            number: numbers.next(),
            label,
            hold,
        })
        .collect()
}

fn stretch_range(context: &Context<'_>, subject: &Subject<'_>) -> String {
    let ledger = &subject.computed.ledger;
    let (least, most) = (
        ledger.get(ids::ACCEPT_STRETCH_LEAST),
        ledger.get(ids::ACCEPT_STRETCH_MOST),
    );
    match (least, most) {
        (Some(least), Some(most)) => {
            let values = Values::new()
                .with("least", context.print(least).value)
                .with("most", context.text(most));
            context.say("record.range", &values)
        }
        _ => String::new(),
    }
}

/// The people who sign at the end, by the roles that the card names.
pub(super) fn people(
    context: &Context<'_>,
    numbers: &mut Numbers,
    roles: &[&str],
) -> Vec<Signature> {
    roles
        .iter()
        .map(|role| Signature {
            number: numbers.next(),
            label: context.label(&format!("card.sign.{role}")),
            hold: false,
        })
        .collect()
}
