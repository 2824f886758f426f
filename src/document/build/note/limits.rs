//! The limits of a note: quantity, value, limit, ratio, verdict, source.

use crate::calc::{longest_protrusion, shortest_protrusion};
use crate::job::Seat;
use crate::joint::{Fact, Joint, Tool, limit_of, needed_engagement};
use crate::methods::Group;
use crate::methods::jackbolt::ids;
use crate::units::{Dimension, Quantity, Ratio, digits};
use crate::wording::Values;

use super::super::context::{Context, percent};
use super::inputs::origin_in_short;
use super::passes::certificate;

/// One limit before it is worded.
pub(super) struct Row {
    pub(super) quantity: String,
    pub(super) value: Option<String>,
    pub(super) limit: String,
    /// Use of the limit; above 1 it is broken.
    pub(super) ratio: Option<f64>,
    pub(super) source: String,
}

/// On which side of its limit a value must stay.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Side {
    Most,
    Least,
}

/// A value with its limit, in SI.
struct Compared {
    quantity: String,
    value: Option<f64>,
    limit: f64,
    side: Side,
    source: String,
}

/// Every limit that applies to a group.
pub(super) fn rows(context: &Context<'_>, joint: &Joint, group: &Group) -> Vec<Row> {
    let maker = Maker {
        context,
        joint,
        group,
    };
    let mut rows = maker.stresses();
    rows.extend(maker.jackbolts());
    rows.extend(maker.lengths());
    rows.extend(maker.temperatures());
    rows.extend(maker.tools());
    rows.extend(maker.expected_torque());
    rows
}

struct Maker<'a> {
    context: &'a Context<'a>,
    joint: &'a Joint,
    group: &'a Group,
}

impl Maker<'_> {
    fn stresses(&self) -> Vec<Row> {
        let ledger = &self.group.computed.ledger;
        let share = |id| ledger.get(id).map(|share: Ratio| share.si());
        let row = |key, rule, value, side| self.share(key, rule, value, side);
        // Jackbolts twist no stud: tension alone is all that it sees.
        let combined = if ledger.entry(ids::JACKBOLT_COUNT.key()).is_some() {
            share(ids::GREATEST_SHARE)
        } else {
            share(ids::COMBINED_SHARE)
        };
        vec![
            row("combined", "L01", combined, Side::Most),
            row("tension", "L02", share(ids::SHARE_OF_YIELD), Side::Most),
            row(
                "least_share",
                "L10",
                share(ids::SHARE_OF_YIELD),
                Side::Least,
            ),
        ]
    }

    /// What a jackbolt sees, against its papers and its yield.
    fn jackbolts(&self) -> Vec<Row> {
        let ledger = &self.group.computed.ledger;
        let is_turned = ledger.entry(ids::JACKBOLT_COUNT.key()).is_some();
        let tensioner = self.joint.mechanics.tensioner.as_deref();
        let Some(tensioner) = tensioner.filter(|_| is_turned) else {
            return Vec::new();
        };
        let share = ledger.get(ids::JACKBOLT_SHARE).map(Quantity::si);
        let load = ledger.get(ids::JACKBOLT_GREATEST).map(Quantity::si);
        let pressure = ledger.get(ids::TIP_PRESSURE).map(Quantity::si);
        let travel = ledger.get(ids::TRAVEL_GREATEST).map(Quantity::si);
        let most = Side::Most;
        let of_papers = [
            self.fact("jackbolt_load", load, &tensioner.jackbolt_load, most),
            self.fact("tip_pressure", pressure, &tensioner.tip_pressure, most),
            self.fact("travel", travel, &tensioner.travel, most),
        ];
        let shear = |id| ledger.get(id).map(Quantity::si);
        let (body, thread) = (shear(ids::BODY_SHEAR_SHARE), shear(ids::THREAD_SHEAR_SHARE));
        [
            self.share("jackbolt", "L01", share, most),
            self.share("body_thread", "L22", body, most),
            self.share("jackbolt_thread", "L22", thread, most),
        ]
        .into_iter()
        .chain(of_papers.into_iter().flatten())
        .collect()
    }

    fn lengths(&self) -> Vec<Row> {
        let ledger = &self.group.computed.ledger;
        let checks = &self.joint.mechanics.checks;
        let mut rows = vec![self.engagement()];
        let shortest = shortest_protrusion(ledger).map(Quantity::si);
        let longest = longest_protrusion(ledger).map(Quantity::si);
        rows.extend(self.fact(
            "protrusion_least",
            shortest,
            &checks.least_protrusion,
            Side::Least,
        ));
        rows.extend(self.fact(
            "protrusion_most",
            longest,
            &checks.greatest_protrusion,
            Side::Most,
        ));
        rows
    }

    fn temperatures(&self) -> Vec<Row> {
        let mechanics = &self.joint.mechanics;
        let service = mechanics.service.temperature.value().map(Quantity::si);
        let stud = &mechanics.studs.highest_temperature;
        let paste = &mechanics.lubricant.highest_temperature;
        let rows = [
            self.fact("temperature", service, stud, Side::Most),
            self.fact("lubricant_temperature", service, paste, Side::Most),
        ];
        rows.into_iter().flatten().collect()
    }

    fn tools(&self) -> Vec<Row> {
        let computed = &self.group.computed;
        let dial = computed.readings(self.joint).tightening();
        let torque = computed.ledger.get(ids::SET_TORQUE);
        // The wrench and its square bear what the dial shows.
        let torque = torque.map(|torque| dial.shows(torque).si());
        let mut rows = Vec::new();
        if let Some(tool) = computed.chosen.turning.first() {
            rows.extend(self.wrench(tool, torque));
            rows.extend(self.fact("square", torque, &tool.square_rating, Side::Most));
        }
        if let Some((part, rating)) = computed.chosen.weakest() {
            let compared = Compared {
                quantity: self.of_tool("pump", part),
                value: computed.ledger.get(ids::SET_PRESSURE).map(Quantity::si),
                limit: rating.si(),
                side: Side::Most,
                source: self.origin(&part.rating),
            };
            rows.push(self.row(compared, Dimension::Pressure));
        }
        if let Some(socket) = &computed.chosen.socket {
            let outer = socket.outer_diameter.value().map(Quantity::si);
            let room = &self.joint.mechanics.clearance.socket;
            rows.extend(
                outer.and_then(|outer| self.fact("clearance", Some(outer), room, Side::Most)),
            );
        }
        rows
    }

    /// The torque that is set against the range of the wrench: its calibration points, or its scale.
    fn wrench(&self, tool: &Tool, torque: Option<f64>) -> Vec<Row> {
        let points = (tool.points.first(), tool.points.last());
        let (low, high, source) = match points {
            (Some(low), Some(high)) => {
                let source = certificate(self.context, tool);
                (
                    Some(low.1.si()),
                    Some(high.1.si()),
                    [source.clone(), source],
                )
            }
            _ => (
                tool.lowest.value().map(Quantity::si),
                tool.highest.value().map(Quantity::si),
                [self.origin(&tool.lowest), self.origin(&tool.highest)],
            ),
        };
        let [low_source, high_source] = source;
        let compared = |key, limit: Option<f64>, side, source| {
            let quantity = self.of_tool(key, tool);
            limit.map(|limit| Compared {
                quantity,
                value: torque,
                limit,
                side,
                source,
            })
        };
        let ends = [
            compared("wrench_low", low, Side::Least, low_source),
            compared("wrench_high", high, Side::Most, high_source),
        ];
        ends.into_iter()
            .flatten()
            .map(|it| self.row(it, Dimension::Torque))
            .collect()
    }

    /// The torque that others expect, against ours.
    fn expected_torque(&self) -> Option<Row> {
        let expected = self
            .joint
            .mechanics
            .target
            .expected_torque
            .as_ref()?
            .value()?;
        let ours = self.group.computed.ledger.get(ids::TORQUE);
        let off = ours.map(|ours| (expected.si() / ours.si() - 1.0).abs());
        Some(self.share("expected", "L17", off, Side::Most))
    }

    fn engagement(&self) -> Row {
        let ratio = self
            .group
            .computed
            .ledger
            .get(ids::ENGAGEMENT_RATIO)
            .map(Quantity::si);
        let limit = needed_engagement(self.joint);
        let printed = |ratio: f64| format!("{}\u{a0}d", digits(ratio));
        let tapped = self.joint.mechanics.studs.seat.value() == Some(Seat::TappedHole);
        Row {
            quantity: self.context.label("note.limit.engagement"),
            value: ratio.map(printed),
            limit: format!("≥ {}", printed(limit)),
            ratio: ratio.map(|ratio| use_of(ratio, limit, Side::Least)),
            source: if tapped {
                self.context.label("note_more.limit.tapped")
            } else {
                self.of_rule("L08")
            },
        }
    }

    /// A share against the threshold of a rule.
    fn share(&self, key: &str, rule: &'static str, value: Option<f64>, side: Side) -> Row {
        let limit = self.joint.work.limit(rule);
        let values = Values::new().with("percent", percent(limit));
        Row {
            quantity: self.context.say(&format!("note.limit.{key}"), &values),
            value: value.map(percent),
            limit: format!("{} {}", sign(side), percent(limit)),
            ratio: value.map(|value| use_of(value, limit, side)),
            source: self.of_rule(rule),
        }
    }

    /// A value against a fact of the job or a table; none where that is not known.
    fn fact<Q: Quantity>(
        &self,
        key: &str,
        value: Option<f64>,
        limit: &Fact<Q>,
        side: Side,
    ) -> Option<Row> {
        let compared = Compared {
            quantity: self.context.label(&format!("note.limit.{key}")),
            value,
            limit: limit.get()?.si(),
            side,
            source: self.origin(limit),
        };
        Some(self.row(compared, Q::DIMENSION))
    }

    fn row(&self, compared: Compared, dimension: Dimension) -> Row {
        let Compared {
            quantity,
            value,
            limit,
            side,
            source,
        } = compared;
        let units = &self.context.units;
        let print = |si: f64| units.print_si(si, dimension).joined();
        // A ratio of temperatures is that of the printed degrees, so that a reader can repeat it.
        let number = |si: f64| units.of(dimension).map_or(si, |unit| unit.from_si(si));
        Row {
            quantity,
            value: value.map(print),
            limit: format!("{} {}", sign(side), print(limit)),
            ratio: value.map(|value| use_of(number(value), number(limit), side)),
            source,
        }
    }

    fn of_tool(&self, key: &str, tool: &Tool) -> String {
        self.context
            .say1(&format!("note.limit.{key}"), "tool", tool.name.as_str())
    }

    fn origin<Q>(&self, fact: &Fact<Q>) -> String {
        fact.origin()
            .map(|origin| origin_in_short(self.context, origin))
            .unwrap_or_default()
    }

    /// Where the limit of a rule comes from: the job with its reason, else our default's source.
    fn of_rule(&self, rule: &str) -> String {
        let own = self.joint.work.limits.iter().find(|own| own.rule == rule);
        match (own, limit_of(rule)) {
            (Some(own), _) => own.reason.clone(),
            (None, Some(limit)) => self.context.wording.source(limit.source, limit.confirmed),
            (None, None) => String::new(),
        }
    }
}

const fn sign(side: Side) -> &'static str {
    match side {
        Side::Most => "≤",
        Side::Least => "≥",
    }
}

/// Value over limit, or limit over value where the limit is the least: above 1 it is broken.
fn use_of(value: f64, limit: f64, side: Side) -> f64 {
    match side {
        Side::Most => value / limit,
        Side::Least if value > 0.0 => limit / value,
        Side::Least => f64::INFINITY,
    }
}
