//! Five lines by which a reviewer reproduces the governing numbers with a pocket calculator.

use crate::calc::{Key, Ledger};
use crate::document::blocks::Head;
use crate::document::note::HandCheck;
use crate::joint::{Joint, TargetValue};
use crate::methods::Group;
use crate::methods::jackbolt::ids;
use crate::wording::Values;

use super::super::context::{Context, percent};
use super::text;
use crate::units::Quantity;

/// The lines, in the order of the calculation.
pub(super) fn lines(context: &Context<'_>, joint: &Joint, group: &Group) -> HandCheck {
    let ledger = &group.computed.ledger;
    let of = |key: Key| text(context, ledger, key);
    let bare = |key: Key| bare(context, ledger, key);
    let say = |id: &str, values: &Values| context.say(&format!("note.hand_check.{id}"), values);
    let area = if crate::calc::is_root(&joint.mechanics) {
        ids::ROOT_AREA
    } else {
        ids::TENSILE_AREA
    };
    let mut lines = vec![load_line(context, joint, ledger, area.key())];
    let is_jackbolted = ledger.entry(ids::JACKBOLT_COUNT.key()).is_some();
    let is_entered = |key: Key| ledger.entry(key).is_some();
    if is_jackbolted {
        let values = Values::new()
            .with("load", of(ids::TARGET_LOAD.key()))
            .with("count", of(ids::JACKBOLT_COUNT.key()))
            .with("each", of(ids::JACKBOLT_TARGET.key()));
        lines.push(context.say("note_jackbolt.hand_check.each", &values));
    } else if is_entered(ids::EQUIVALENT_NUT_FACTOR.key()) {
        let values = Values::new()
            .with("load", of(ids::LOAD.key()))
            .with("torque", of(ids::SET_TORQUE.key()))
            .with("diameter", of(ids::DIAMETER.key()))
            .with("factor", of(ids::EQUIVALENT_NUT_FACTOR.key()));
        lines.push(say("nut_factor", &values));
    }
    if ledger.entry(ids::SET_PRESSURE.key()).is_some() {
        let values = Values::new()
            .with("p_below", bare(ids::LOW_PRESSURE.at(0).key()))
            .with("t_below", bare(ids::LOW_TORQUE.at(0).key()))
            .with("p_above", bare(ids::HIGH_PRESSURE.at(0).key()))
            .with("t_above", bare(ids::HIGH_TORQUE.at(0).key()))
            .with("torque", bare(ids::TORQUE.key()))
            .with("calculated", of(ids::PRESSURE.key()))
            .with("setting", of(ids::SET_PRESSURE.key()));
        lines.push(say("pressure", &values));
    } else if is_jackbolted && ledger.get(ids::TIP_FRICTION).is_some() {
        lines.push(jackbolt_torque_line(context, ledger));
    } else if is_entered(ids::SET_TURN.key()) {
        let values = Values::new()
            .with("turn", of(ids::SET_TURN.key()))
            .with("least", of(ids::LEAST_TURN.key()))
            .with("most", of(ids::GREATEST_TURN.key()));
        lines.push(say("turn", &values));
    } else {
        let values = Values::new()
            .with("calculated", of(ids::TORQUE.key()))
            .with("setting", of(ids::SET_TORQUE.key()));
        lines.push(say("setting", &values));
    }
    if is_entered(ids::GREATEST_LOAD.key()) {
        let scatter = ledger.get(ids::SCATTER);
        let scatter = scatter.map(|scatter| percent(scatter.si()));
        let values = Values::new()
            .with("load", of(ids::LOAD.key()))
            .with("scatter", scatter.unwrap_or_default())
            .with("greatest", of(ids::GREATEST_LOAD.key()))
            .with("least", of(ids::LEAST_LOAD.key()));
        lines.push(say("scatter", &values));
        lines.push(combined_line(context, ledger, is_jackbolted));
    }
    HandCheck {
        head: Head {
            title: context.label("note.hand_check.title"),
            note: context.label("note.hand_check.note"),
        },
        lines,
    }
}

/// A value without its unit: a line with many numbers of the same unit says it once.
fn bare(context: &Context<'_>, ledger: &Ledger, key: Key) -> String {
    context
        .of_key(ledger, key)
        .map_or_else(|| "?".to_owned(), |it| it.value)
}

/// The torque of one jackbolt by friction in its thread and under its tip.
fn jackbolt_torque_line(context: &Context<'_>, ledger: &Ledger) -> String {
    let of = |key: Key| text(context, ledger, key);
    let bare = |key: Key| bare(context, ledger, key);
    let unit = context.of_key(ledger, ids::TIP_DIAMETER.key());
    let values = Values::new()
        .with("each", of(ids::JACKBOLT_TARGET.key()))
        .with("pitch", bare(ids::JACKBOLT_PITCH.key()))
        .with("pitch_diameter", bare(ids::JACKBOLT_PITCH_DIAMETER.key()))
        .with("thread", bare(ids::JACKBOLT_FRICTION.key()))
        .with("tip", bare(ids::TIP_FRICTION.key()))
        .with("tip_diameter", bare(ids::TIP_DIAMETER.key()))
        .with("unit", unit.map_or_else(String::new, |it| it.unit))
        .with("calculated", of(ids::TORQUE.key()))
        .with("setting", of(ids::SET_TORQUE.key()));
    context.say("note_jackbolt.hand_check.torque", &values)
}

/// Tension with torsion at the greatest load: of the stud, or of the jackbolt that is turned in its place.
fn combined_line(context: &Context<'_>, ledger: &Ledger, is_jackbolted: bool) -> String {
    let (line, stress, strength, share) = if is_jackbolted {
        (
            "note_jackbolt.hand_check.combined",
            ids::JACKBOLT_COMBINED,
            ids::JACKBOLT_YIELD,
            ids::JACKBOLT_SHARE,
        )
    } else {
        (
            "note.hand_check.combined",
            ids::COMBINED_STRESS,
            ids::YIELD_STRENGTH,
            ids::COMBINED_SHARE,
        )
    };
    let share = ledger.get(share).map(|share| percent(share.si()));
    let values = Values::new()
        .with("stress", text(context, ledger, stress.key()))
        .with("yield_strength", text(context, ledger, strength.key()))
        .with("share", share.unwrap_or_else(|| "?".to_owned()));
    context.say(line, &values)
}

fn load_line(context: &Context<'_>, joint: &Joint, ledger: &Ledger, area: Key) -> String {
    let of = |key: Key| text(context, ledger, key);
    let say = |id: &str, values: &Values| context.say(&format!("note.hand_check.{id}"), values);
    let load = Values::new().with("load", of(ids::TARGET_LOAD.key()));
    match joint.mechanics.target.given.value() {
        Some(TargetValue::Stress(_)) => {
            let values = load
                .with("stress", of(ids::TARGET_STRESS.key()))
                .with("area", of(area));
            say("stress_to_load", &values)
        }
        Some(TargetValue::ShareOfYield(_)) => {
            let values = load
                .with("share", of(ids::TARGET_SHARE.key()))
                .with("strength", of(ids::YIELD_STRENGTH.key()))
                .with("area", of(area));
            say("share_to_load", &values)
        }
        Some(TargetValue::ShareOfStrength(_)) => {
            let values = load
                .with("share", of(ids::TARGET_STRENGTH_SHARE.key()))
                .with("strength", of(ids::TENSILE_STRENGTH.key()))
                .with("area", of(ids::TENSILE_AREA.key()));
            say("share_to_load", &values)
        }
        Some(TargetValue::Torque(_)) if ledger.entry(ids::JACKBOLT_COUNT.key()).is_none() => {
            let values = load
                .with("torque", of(ids::TARGET_TORQUE.key()))
                .with("factor", of(ids::EQUIVALENT_NUT_FACTOR.key()))
                .with("diameter", of(ids::DIAMETER.key()));
            say("torque_to_load", &values)
        }
        _ => say("given_load", &load),
    }
}
