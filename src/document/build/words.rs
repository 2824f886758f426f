//! Short words that registers and packs share: methods, settings, tags, texts cut to a line.

use crate::job::Seat;
use crate::joint::{Joint, Tool};
use crate::methods::{self, jackbolt};

use super::context::Context;

/// What stands for "nothing" in a cell.
pub(in crate::document) const NONE: &str = "–";

/// A sentence begins with a capital whatever the job writes.
pub(in crate::document) fn capital(text: &str) -> String {
    let mut signs = text.chars();
    match signs.next() {
        Some(first) => first.to_uppercase().chain(signs).collect(),
        None => String::new(),
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
