//! What all parts of these cards ask for: the plan, the tensioner, the driver, torques as their tools show them.

use crate::calc::Id;
use crate::document::build::context::Context;
use crate::document::card::{Entry, Fact, Value};
use crate::joint::{Driver, Lack, Tensioner, Tool, ToolReading, Who};
use crate::methods::Readings;
use crate::methods::jackbolt::{Bands, FLAT_RULE, JackboltPlan};
use crate::units::{Angle, Printed, Quantity, Torque, Units};
use crate::wording::Values;

use super::super::Subject;
use super::super::parts::{count, entry, name_and_serial, studs};

/// Full-value rounds beyond the planned ones before the crew stops and calls (common practice, no source).
const FURTHER_ROUNDS: usize = 3;
/// Shown where a number is missing in the middle of a line; the line says who gives it.
const BLANK: &str = "____";

/// One joint with what its cards hang on.
#[derive(Clone, Copy)]
pub(super) struct Case<'a> {
    pub(super) context: &'a Context<'a>,
    pub(super) subject: &'a Subject<'a>,
}

impl<'a> Case<'a> {
    /// Facts beside the one number before that of the driver.
    pub(super) const OWN_FACTS: usize = 5;

    pub(super) fn say(&self, key: &str, values: &Values) -> String {
        self.context.say(key, values)
    }

    pub(super) fn say1(&self, key: &str, name: &'static str, value: &str) -> String {
        self.context.say1(key, name, value)
    }

    pub(super) fn label(&self, key: &str) -> String {
        self.context.label(key)
    }

    pub(super) fn plan(&self) -> Option<&'a JackboltPlan> {
        self.subject.computed.plan.jackbolts()
    }

    pub(super) fn tensioner(&self) -> Option<&'a Tensioner> {
        self.subject.joint.mechanics.tensioner.as_deref()
    }

    /// The driver that the job names, whether or not it fits.
    pub(super) fn driver(&self) -> Option<(&'a Tool, &'a Driver)> {
        let tool = self.subject.joint.mechanics.tools.driver.as_deref()?;
        Some((tool, tool.driver.as_ref()?))
    }

    /// Whether the driver runs jackbolts out once every one has moved by hand.
    pub(super) fn driver_loosens(&self) -> bool {
        self.plan().is_some_and(JackboltPlan::drives_loosening)
    }

    pub(super) fn studs(&self) -> usize {
        count(self.subject)
    }

    /// Jackbolts of one tensioner; none where nobody says so.
    pub(super) fn jackbolts(&self) -> usize {
        let count = self.tensioner().and_then(|it| it.jackbolts.value());
        count.map_or(0, |count| crate::calc::whole(count.si()))
    }

    pub(super) fn get<Q: Quantity>(&self, id: Id<Q>) -> Option<Q> {
        self.subject.computed.ledger.get(id)
    }

    /// What the tools of the joint show.
    pub(super) fn readings(&self) -> Readings<'a> {
        self.subject.computed.readings(self.subject.joint)
    }

    pub(super) fn printed(&self, reading: Result<ToolReading, Lack>) -> Option<Printed> {
        Some(self.context.reading(&reading.ok()?))
    }

    /// What the wrench in hand is set to for a torque of a round.
    pub(super) fn hand(&self, torque: f64) -> Option<Printed> {
        let dial = self.readings().tightening();
        self.printed(dial.set(Torque::from_si(torque)))
    }

    /// What a small wrench is set to for the torque of the seat.
    pub(super) fn seat(&self, torque: f64) -> Option<Printed> {
        let dial = self.readings().tightening().fine();
        self.printed(dial.set(Torque::from_si(torque)))
    }

    /// The never-exceed torque as the wrench shows it.
    pub(super) fn never(&self) -> Option<Printed> {
        self.printed(self.readings().never())
    }

    /// What the driver is set to for a torque of a jackbolt.
    pub(super) fn driver_set(&self, torque: Torque) -> Option<Printed> {
        self.printed(self.readings().driver()?.set(torque))
    }

    /// A torque that the driver never passes.
    pub(super) fn driver_never(&self, torque: Torque) -> Option<Printed> {
        self.printed(self.readings().driver()?.never(torque))
    }

    /// A printed value, or the words of its empty box.
    pub(super) fn value(&self, printed: Option<Printed>, who: Who) -> Value {
        Value {
            unit: printed
                .as_ref()
                .map(|it| it.unit.clone())
                .unwrap_or_default(),
            number: entry(self.context, printed.map(|it| it.value), who),
        }
    }

    /// N and the last round after which the crew stops.
    pub(super) fn full_rounds(&self) -> Option<(usize, usize)> {
        let least = self.plan()?.full_rounds;
        Some((least, least + FURTHER_ROUNDS))
    }

    /// N, or a blank in the middle of a line.
    pub(super) fn full_rounds_text(&self) -> String {
        self.full_rounds()
            .map_or_else(|| BLANK.into(), |(least, _)| least.to_string())
    }

    /// The flat rule's angle as printed.
    pub(super) fn flat(&self) -> Printed {
        self.context.print(Angle::degrees(FLAT_RULE))
    }

    /// Whether ticks for each stud leave room for only one column of what is expected.
    pub(super) fn is_narrow(&self) -> bool {
        (2..=4).contains(&self.studs())
    }

    /// Tensioners, studs, wrench, socket, lubricant and driver.
    pub(super) fn facts(&self) -> Vec<Fact> {
        let wrench = self.subject.computed.chosen.turning.first();
        let lubricant = self.tensioner().and_then(|it| it.lubricant.get().cloned());
        let driver = self.driver().map(|(tool, _)| name_and_serial(tool));
        let mut facts = vec![
            self.fact("tensioners", self.tensioners(), Who::ToolStore),
            self.fact("studs", studs(self.context, self.subject), Who::Planner),
            self.fact(
                "wrench",
                wrench.map(|tool| name_and_serial(tool)),
                Who::ToolStore,
            ),
            self.fact("socket", self.socket(), Who::ToolStore),
            self.fact("lubricant", lubricant, Who::Engineer),
        ];
        if driver.is_some() {
            facts.push(self.fact("driver", driver, Who::ToolStore));
        }
        facts
    }

    /// The same for loosening; in two columns without the studs, whose size the circle shows.
    pub(super) fn release_facts(&self, in_two_columns: bool) -> Vec<Fact> {
        let chosen = &self.subject.computed.chosen;
        let wrench = chosen.loosening.first().or(chosen.turning.first());
        let wrench = wrench.map(|tool| name_and_serial(tool));
        let key = if in_two_columns { "sets" } else { "tensioners" };
        let mut facts = vec![self.fact(key, self.tensioners(), Who::ToolStore)];
        if !in_two_columns {
            facts.push(self.fact("studs", studs(self.context, self.subject), Who::Planner));
        }
        facts.push(self.fact("wrench", wrench, Who::ToolStore));
        facts.push(self.fact("socket", self.socket(), Who::ToolStore));
        facts
    }

    fn fact(&self, key: &str, value: Option<String>, who: Who) -> Fact {
        Fact {
            label: self.label(&format!("jackbolt_card.fact.{key}")),
            value: entry(self.context, value, who),
        }
    }

    /// `4 × 12 × M20`: tensioners, jackbolts on each, their thread.
    fn tensioners(&self) -> Option<String> {
        let thread = self.tensioner()?.thread.get()?;
        let (studs, jackbolts) = (self.studs(), self.jackbolts());
        (studs > 0 && jackbolts > 0)
            .then(|| format!("{studs} × {jackbolts} × {}", thread.designation))
    }

    /// The socket by the jackbolt's own system, whatever unit leads on the page.
    fn socket(&self) -> Option<String> {
        let tensioner = self.tensioner()?;
        let metric = tensioner
            .thread
            .get()
            .is_none_or(|thread| thread.series.is_metric());
        let units = if metric {
            Units::metric()
        } else {
            Units::inch()
        };
        let across = units.print_size(tensioner.across_flats.value()?).joined();
        Some(match &self.subject.computed.chosen.socket {
            Some(socket) => format!("{across} · {}", socket.name),
            None => across,
        })
    }
}

/// Whole percent: what is predicted is known no better.
pub(super) fn percent(ratio: f64) -> String {
    format!("{}\u{a0}%", whole_percent(ratio))
}

/// The same without the sign, below a head that has it.
pub(super) fn whole_percent(ratio: f64) -> String {
    format!("{:.0}", ratio * 100.0)
}

/// The range of the bands in whole percent without the sign, such as `82–86`; empty where the ends print alike.
pub(super) fn band(bands: &Bands<f64>) -> String {
    let [least, greatest] = [bands.least(), bands.greatest()].map(whole_percent);
    if least == greatest {
        String::new()
    } else {
        format!("{least}–{greatest}")
    }
}

/// The number of an entry; a blank where it is missing.
pub(super) fn blank(text: Option<String>) -> Entry {
    Entry::Given(text.unwrap_or_else(|| BLANK.into()))
}

/// Numbers of jackbolts one behind the other.
pub(super) fn numbers(jackbolts: &[usize]) -> String {
    let numbers: Vec<String> = jackbolts.iter().map(ToString::to_string).collect();
    numbers.join(" ")
}
