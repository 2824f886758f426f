//! Short words that registers and packs share: methods, settings, tags, texts cut to a line.

use crate::calc::{ids, scale};
use crate::job::{PointRole, Seat};
use crate::joint::{Joint, Tool};
use crate::methods::Computed;
use crate::methods::{self, hydraulic, jackbolt};
use crate::standards::mechanics::WRENCH_SETTING_OF;
use crate::units::{Length, Printed, Quantity, Torque};

use super::context::Context;

/// What stands for "nothing" in a cell.
pub(super) const NONE: &str = "–";

/// A sentence begins with a capital whatever the job writes.
pub(super) fn capital(text: &str) -> String {
    let mut signs = text.chars();
    match signs.next() {
        Some(first) => first.to_uppercase().chain(signs).collect(),
        None => String::new(),
    }
}

/// The key of the word for who signs a point.
pub(super) const fn role_key(role: PointRole) -> &'static str {
    match role {
        PointRole::CrewLead => "role.crew_lead",
        PointRole::Supervisor => "role.supervisor",
        PointRole::Inspector => "role.inspector",
        PointRole::Client => "role.client",
        PointRole::ThirdParty => "role.third_party",
    }
}

/// The key of a method in the groups `method` and `method_short`, whatever tools do it.
pub(super) fn method_key(word: &str) -> Option<&'static str> {
    methods::named(word).map(|method| method.id)
}

/// The key of the method of a joint in the groups `method`, `method_short` and `method_card`, none where nobody
/// says it: jackbolts by hand, or with a driver where one is planned.
pub(super) fn method_of(joint: &Joint) -> Option<&'static str> {
    let mechanics = &joint.mechanics;
    Some(match mechanics.method.value()? {
        jackbolt::WORD if mechanics.tools.driver.is_some() => "jackbolt_driver",
        jackbolt::WORD => "jackbolt_hand",
        word => method_key(word)?,
    })
}

/// The key of a seat in the group `seat`.
pub(super) const fn seat_key(seat: Seat) -> &'static str {
    match seat {
        Seat::ThroughBolts => "through_bolts",
        Seat::TappedHole => "tapped_hole",
        Seat::BlindFlange => "blind_flange",
        Seat::Anchor => "anchor",
    }
}

/// What the tool is set to: a pressure, or a torque on the scale of the wrench in hand.
pub(super) fn setting(
    context: &Context<'_>,
    joint: &Joint,
    computed: &Computed,
) -> Option<Printed> {
    let ledger = &computed.ledger;
    if joint.mechanics.method.value() == Some(hydraulic::WORD) {
        return context.of(ledger, ids::SET_PRESSURE);
    }
    let set = ledger.get(ids::SET_TORQUE);
    set.map(|torque| on_wrench(joint, computed, torque))
}

/// A torque of what is turned, as the wrench in hand is set to it: on its scale, and with an adapter in
/// line the lower value that gives it, in whole units. Every page that says what to set asks here.
pub(super) fn on_wrench(joint: &Joint, computed: &Computed, torque: Torque) -> Printed {
    let scale = scale(&joint.mechanics, &computed.chosen);
    match adapter(computed) {
        Some((wrench, extension)) => {
            let shown = WRENCH_SETTING_OF.value(&[torque.si(), wrench.si(), extension.si()]);
            scale.print_si(scale.to_si(scale.from_si(shown).round()))
        }
        None => scale.print_si(torque.si()),
    }
}

/// Length of the wrench that turns and of the adapter in line with it, where it has one.
pub(super) fn adapter(computed: &Computed) -> Option<(Length, Length)> {
    computed.chosen.turning.first()?.adapter
}

/// `24 × M48×5`.
pub(super) fn studs(context: &Context<'_>, joint: &Joint) -> Option<String> {
    let studs = &joint.mechanics.studs;
    let (count, thread) = (studs.count.value()?, studs.thread.get()?);
    Some(format!("{} × {}", context.text(count), thread.designation))
}

/// Names of tools behind one another.
pub(super) fn names<'a>(tools: impl IntoIterator<Item = &'a std::sync::Arc<Tool>>) -> String {
    let names: Vec<&str> = tools.into_iter().map(|tool| tool.name.as_str()).collect();
    names.join(", ")
}
