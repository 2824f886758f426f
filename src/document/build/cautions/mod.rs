//! Which cautions apply to a joint: by its contents, its hazards, its method and its tools.
//!
//! The words live in the wording under `cautions`; here stands when each of them speaks, how grave
//! it is and in front of which part of a card it belongs.

mod gathered;

use crate::calc::labour::Task;
use crate::document::card::{Before, Caution};
use crate::document::pack::Signal;
use crate::job::{Hazard, ToolKind};
use crate::joint::{Joint, Tool};
use crate::methods::Computed;
use crate::methods::{hydraulic, jackbolt};
use crate::units::{Mass, Quantity, Temperature};

use gathered::Gathered;

use super::context::Context;

/// Cautions on one card: more would not be read (ANSI Z535 practice: the gravest first, few).
pub const MOST_ON_CARD: usize = 3;
/// Above this a surface burns at a touch; source: common practice, no source.
const HOT: Temperature = Temperature::celsius(60.0);
/// Above this the word is WARNING; source: common practice, no source.
const VERY_HOT: Temperature = Temperature::celsius(120.0);
/// Below this skin sticks to steel; source: common practice, no source.
const COLD: Temperature = Temperature::celsius(-10.0);

/// On which card a caution may stand.
#[derive(Clone, Copy, PartialEq, Eq)]
enum On {
    /// Both.
    Both,
    /// The card for tightening.
    Tighten,
    /// The card for loosening.
    Loosen,
    /// None: it stands in the pack, because a card says the same in its danger panel or ticks.
    Pack,
}

/// One caution: its id below `cautions`, how grave it is, where it stands and when it applies.
struct Rule {
    id: &'static str,
    signal: Signal,
    on: On,
    before: Before,
    applies: fn(&Case<'_>) -> bool,
}

/// A joint with its numbers.
struct Case<'a> {
    joint: &'a Joint,
    computed: &'a Computed,
    /// The card; none for the whole joint.
    task: Option<Task>,
}

impl Case<'_> {
    fn has(&self, hazard: Hazard) -> bool {
        self.joint.mechanics.hazards.contains(&hazard)
    }

    /// Whether the joint can hold something back; one of which nothing is said may.
    fn can_hold(&self) -> bool {
        let service = &self.joint.mechanics.service;
        let empty = service
            .pressure
            .value()
            .is_some_and(|pressure| pressure.si() <= 0.0);
        !empty || service.fluid.get().is_some()
    }

    fn is_opened(&self) -> bool {
        self.joint.mechanics.loosening.opened.value() != Some(false)
    }

    fn is_hydraulic(&self) -> bool {
        self.joint.mechanics.method.value() == Some(hydraulic::WORD)
    }

    fn has_jackbolts(&self) -> bool {
        self.joint.mechanics.method.value() == Some(jackbolt::WORD)
    }

    /// Whether the driver is on the jackbolts in this part of the work.
    fn has_driver(&self) -> bool {
        let plan = self.computed.plan.jackbolts();
        plan.is_some_and(|plan| match self.task {
            Some(Task::Loosen) => plan.drives_loosening(),
            Some(Task::Tighten) | None => plan.driver.is_some(),
        })
    }

    fn temperature(&self) -> Option<Temperature> {
        self.joint.mechanics.service.temperature.value()
    }

    fn uses(&self, kind: ToolKind) -> bool {
        self.computed.chosen.all().any(|tool| tool.kind == kind)
    }

    fn heaviest(&self) -> Option<(&Tool, Mass)> {
        heaviest(self.computed.chosen.all().map(|tool| &**tool))
    }

    fn heaviest_is_above(&self, rule: &'static str) -> bool {
        self.heaviest()
            .is_some_and(|(_, mass)| mass.si() > self.joint.work.limit(rule))
    }
}

/// The heaviest of some tools, the first of equal ones.
pub(super) fn heaviest<'a>(tools: impl Iterator<Item = &'a Tool>) -> Option<(&'a Tool, Mass)> {
    tools
        .filter_map(|tool| Some((tool, tool.mass.value()?)))
        .fold(None, |best, (tool, mass)| match best {
            Some((_, most)) if most >= mass => best,
            _ => Some((tool, mass)),
        })
}

const fn rule(
    id: &'static str,
    signal: Signal,
    on: On,
    before: Before,
    applies: fn(&Case<'_>) -> bool,
) -> Rule {
    Rule {
        id,
        signal,
        on,
        before,
        applies,
    }
}

use Before::{Steps, Ticks};
use Signal::{Caution as Care, Danger, Notice, Warning};

/// All cautions, the gravest first and among equals the one that is printed first.
const RULES: &[Rule] = &[
    rule("stored_pressure", Danger, On::Pack, Ticks, |case| {
        case.can_hold() && case.is_opened()
    }),
    rule("toxic_contents", Danger, On::Loosen, Ticks, |case| {
        case.has(Hazard::Toxic)
    }),
    rule("inert_gas", Danger, On::Both, Ticks, |case| {
        case.has(Hazard::InertGas)
    }),
    rule("confined_space", Danger, On::Both, Ticks, |case| {
        case.has(Hazard::ConfinedSpace)
    }),
    rule("machine_part", Danger, On::Both, Ticks, |case| {
        case.has(Hazard::RotatingMachine)
    }),
    rule("flammable_contents", Danger, On::Loosen, Ticks, |case| {
        case.has(Hazard::Flammable) || case.has(Hazard::Hydrogen)
    }),
    rule("hydraulic_injection", Danger, On::Both, Steps, |case| {
        case.is_hydraulic()
    }),
    rule("wrong_fasteners", Danger, On::Loosen, Ticks, |case| {
        case.is_opened()
    }),
    rule("hot_bolting", Danger, On::Pack, Ticks, |case| {
        case.can_hold()
    }),
    rule("last_fasteners", Warning, On::Loosen, Steps, |case| {
        case.is_opened() && !case.has_jackbolts()
    }),
    rule("last_jackbolts", Warning, On::Loosen, Steps, |case| {
        case.is_opened() && case.has_jackbolts()
    }),
    rule("driver_turns", Warning, On::Both, Steps, |case| {
        case.has_driver()
    }),
    rule("reaction_pinch", Warning, On::Both, Steps, |case| {
        case.is_hydraulic()
    }),
    rule("trapped_pocket", Warning, On::Loosen, Steps, |case| {
        case.can_hold() && case.is_opened()
    }),
    rule("stud_in_line", Warning, On::Both, Steps, |_| true),
    rule("very_hot_surface", Warning, On::Loosen, Ticks, |case| {
        case.temperature().is_some_and(|warm| warm > VERY_HOT)
    }),
    rule("dropped_object", Warning, On::Both, Ticks, |case| {
        case.has(Hazard::Height) && case.heaviest().is_some()
    }),
    rule("sudden_spring", Warning, On::Loosen, Steps, |case| {
        case.is_opened()
    }),
    rule("hose_burst", Warning, On::Both, Steps, |case| {
        case.is_hydraulic()
    }),
    rule("tool_walks_off", Warning, On::Both, Steps, |case| {
        case.is_hydraulic()
    }),
    rule("hazardous_contents", Warning, On::Loosen, Ticks, |case| {
        case.has(Hazard::Corrosive) || case.has(Hazard::Steam)
    }),
    rule("pyrophoric_scale", Warning, On::Loosen, Ticks, |case| {
        case.has(Hazard::Pyrophoric)
    }),
    rule("fibre_gasket", Warning, On::Loosen, Ticks, |case| {
        case.has(Hazard::HazardousFibre)
    }),
    rule("hot_work", Warning, On::Both, Ticks, |case| {
        case.has(Hazard::HotWork)
    }),
    rule("suspended_load", Warning, On::Both, Ticks, |case| {
        case.uses(ToolKind::LiftingGear) || case.heaviest_is_above("S02")
    }),
    rule("electrical_supply", Warning, On::Pack, Ticks, |case| {
        case.uses(ToolKind::Pump)
    }),
    rule("fragments", Warning, On::Pack, Ticks, |case| {
        case.is_opened()
    }),
    rule("leak_test", Warning, On::Pack, Ticks, |case| {
        case.can_hold()
    }),
    rule("manual_handling", Care, On::Both, Ticks, |case| {
        case.heaviest_is_above("S01")
    }),
    rule("hot_surface", Care, On::Loosen, Ticks, |case| {
        case.temperature()
            .is_some_and(|warm| warm > HOT && warm <= VERY_HOT)
    }),
    rule("cold_surface", Care, On::Both, Ticks, |case| {
        case.temperature().is_some_and(|cold| cold < COLD)
    }),
    rule("noise", Care, On::Pack, Ticks, |case| case.is_hydraulic()),
    rule("chemicals", Care, On::Pack, Ticks, |case| {
        case.joint.mechanics.lubricant.name.get().is_some()
    }),
    rule("weather", Care, On::Pack, Ticks, |case| {
        case.has(Hazard::Height)
    }),
    rule("one_lubricant", Notice, On::Pack, Ticks, |case| {
        case.joint.mechanics.lubricant.name.get().is_some()
    }),
    rule("after_break", Notice, On::Pack, Ticks, |_| true),
];

fn applying<'a>(case: &'a Case<'_>) -> impl Iterator<Item = &'static Rule> + use<'a> {
    RULES.iter().filter(move |rule| (rule.applies)(case))
}

/// The cautions of a card: at most [`MOST_ON_CARD`], the gravest first, each with the part of the
/// card that it stands in front of.
pub fn cautions_for_card(
    context: &Context<'_>,
    joint: &Joint,
    computed: &Computed,
    task: Task,
) -> Vec<Caution> {
    let case = Case {
        joint,
        computed,
        task: Some(task),
    };
    let mut gathered = Gathered::default();
    gathered.add(context, &case);
    let own = match task {
        Task::Tighten => On::Tighten,
        Task::Loosen => On::Loosen,
    };
    applying(&case)
        .filter(|rule| rule.on == On::Both || rule.on == own)
        .take(MOST_ON_CARD)
        .map(|rule| {
            let word = context.label(&format!("cautions.{}.word", rule.id));
            let text = gathered.text(context, rule.id);
            Caution::new(word, rule.signal != Notice, text, rule.before)
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_gravest_come_first() {
        assert!(RULES.is_sorted_by_key(|rule| rule.signal));
    }

    #[test]
    fn every_caution_is_in_the_wording_with_its_word() {
        let wording = crate::wording::Wording::embedded("en").unwrap();
        for rule in RULES {
            let signal = match rule.signal {
                Danger => "danger",
                Warning => "warning",
                Care => "caution",
                Notice => "notice",
            };
            let word = wording.label(&format!("signal.{signal}")).to_owned();
            assert_eq!(
                wording.label(&format!("cautions.{}.word", rule.id)),
                word,
                "{}",
                rule.id
            );
            assert!(
                wording.has(&format!("cautions.{}.text", rule.id)),
                "{}",
                rule.id
            );
        }
    }
}
