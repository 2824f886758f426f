//! The limits of a note: quantity, value, limit, ratio, verdict, source.

use crate::calc::{Group, ids, longest_protrusion, shortest_protrusion};
use crate::document::card::Head;
use crate::document::note::{LimitRow, Limits};
use crate::joint::{Joint, limit_of};
use crate::units::{Dimension, Quantity};
use crate::wording::Values;

use super::super::context::{Context, percent};
use super::two_digits;

/// One limit before it is worded.
pub(super) struct Row {
    pub(super) quantity: String,
    value: Option<String>,
    limit: String,
    /// Use of the limit; above 1 it is broken.
    pub(super) ratio: Option<f64>,
    source: String,
}

/// Every limit that applies to a group.
pub(super) fn rows(context: &Context<'_>, joint: &Joint, group: &Group) -> Vec<Row> {
    let maker = Maker { context, joint };
    let ledger = &group.computed.ledger;
    let mechanics = &joint.mechanics;
    let share = |id| ledger.get(id).map(|share: crate::units::Ratio| share.si());
    let mut rows = vec![
        maker.share("combined", "L01", share(ids::COMBINED_SHARE)),
        maker.share("tension", "L02", share(ids::SHARE_OF_YIELD)),
    ];
    rows.push(maker.least_share("least_share", "L10", share(ids::SHARE_OF_YIELD)));
    rows.push(maker.least_share("engagement", "L08", share(ids::ENGAGEMENT_RATIO)));
    let length = Dimension::Length;
    let least = mechanics.checks.least_protrusion.value().map(Quantity::si);
    let most = mechanics
        .checks
        .greatest_protrusion
        .value()
        .map(Quantity::si);
    let (shortest, longest) = (
        shortest_protrusion(ledger).map(Quantity::si),
        longest_protrusion(ledger).map(Quantity::si),
    );
    rows.extend(maker.at_least("protrusion_least", shortest, least, length));
    rows.extend(maker.at_most("protrusion_most", longest, most, length));
    let service = mechanics.service.temperature.value().map(Quantity::si);
    let stud = mechanics
        .studs
        .highest_temperature
        .value()
        .map(Quantity::si);
    let paste = mechanics
        .lubricant
        .highest_temperature
        .value()
        .map(Quantity::si);
    rows.extend(maker.temperature("temperature", service, stud));
    rows.extend(maker.temperature("lubricant_temperature", service, paste));
    let torque = ledger.get(ids::SET_TORQUE).map(Quantity::si);
    if let Some(tool) = group.computed.chosen.turning.first() {
        let named =
            |key: &str| context.say1(&format!("note.limit.{key}"), "tool", tool.name.as_str());
        let low = tool.points.first().map(|point| point.1.si());
        let low = low.or_else(|| tool.lowest.value().map(Quantity::si));
        let high = tool.highest.value().map(Quantity::si);
        rows.extend(maker.named_least(named("wrench_low"), torque, low, Dimension::Torque));
        rows.extend(maker.named_most(named("wrench_high"), torque, high, Dimension::Torque));
        let square = tool.square_rating.value().map(Quantity::si);
        rows.extend(maker.at_most("square", torque, square, Dimension::Torque));
    }
    if let Some((part, rating)) = group.computed.chosen.weakest() {
        let pressure = ledger.get(ids::SET_PRESSURE).map(Quantity::si);
        let name = context.say1("note.limit.pump", "tool", part.name.as_str());
        rows.extend(maker.named_most(name, pressure, Some(rating.si()), Dimension::Pressure));
    }
    rows
}

struct Maker<'a> {
    context: &'a Context<'a>,
    joint: &'a Joint,
}

impl Maker<'_> {
    /// Where the limit of a rule comes from: the job with its reason, else our default's source.
    fn source(&self, rule: &str) -> String {
        let own = self.joint.work.limits.iter().find(|own| own.rule == rule);
        match (own, limit_of(rule)) {
            (Some(own), _) => own.reason.clone(),
            (None, Some(limit)) => limit.source.to_owned(),
            (None, None) => String::new(),
        }
    }

    fn name(&self, key: &str, rule: &'static str) -> String {
        let values = Values::new().with("percent", percent(self.joint.work.limit(rule)));
        self.context.say(&format!("note.limit.{key}"), &values)
    }

    fn share(&self, key: &str, rule: &'static str, value: Option<f64>) -> Row {
        let limit = self.joint.work.limit(rule);
        Row {
            quantity: self.name(key, rule),
            value: value.map(percent),
            limit: percent(limit),
            ratio: value.map(|value| value / limit),
            source: self.source(rule),
        }
    }

    fn least_share(&self, key: &str, rule: &'static str, value: Option<f64>) -> Row {
        let limit = self.joint.work.limit(rule);
        let ratio = value
            .filter(|value| *value > 0.0)
            .map(|value| limit / value);
        let printed = |share: f64| {
            if key == "engagement" {
                format!("{}\u{a0}d", crate::units::digits(share))
            } else {
                percent(share)
            }
        };
        Row {
            quantity: self.name(key, rule),
            value: value.map(printed),
            limit: format!("≥ {}", printed(limit)),
            ratio,
            source: self.source(rule),
        }
    }

    fn temperature(&self, key: &str, value: Option<f64>, limit: Option<f64>) -> Option<Row> {
        // Degrees have no ratio; the difference in kelvin to a zero far below says nothing.
        let row = self.named_most(
            self.context.label(&format!("note.limit.{key}")),
            value,
            limit,
            Dimension::Temperature,
        )?;
        let celsius = |si: f64| si - 273.15;
        let ratio = value
            .zip(limit)
            .map(|(value, limit)| celsius(value) / celsius(limit));
        Some(Row { ratio, ..row })
    }

    fn at_most(
        &self,
        key: &str,
        value: Option<f64>,
        limit: Option<f64>,
        dimension: Dimension,
    ) -> Option<Row> {
        self.named_most(
            self.context.label(&format!("note.limit.{key}")),
            value,
            limit,
            dimension,
        )
    }

    fn at_least(
        &self,
        key: &str,
        value: Option<f64>,
        limit: Option<f64>,
        dimension: Dimension,
    ) -> Option<Row> {
        self.named_least(
            self.context.label(&format!("note.limit.{key}")),
            value,
            limit,
            dimension,
        )
    }

    fn named_most(
        &self,
        quantity: String,
        value: Option<f64>,
        limit: Option<f64>,
        dimension: Dimension,
    ) -> Option<Row> {
        let print = |si: f64| self.context.units.print_si(si, dimension).joined();
        let limit = limit?;
        Some(Row {
            quantity,
            value: value.map(print),
            limit: print(limit),
            ratio: value.map(|value| value / limit),
            source: String::new(),
        })
    }

    fn named_least(
        &self,
        quantity: String,
        value: Option<f64>,
        limit: Option<f64>,
        dimension: Dimension,
    ) -> Option<Row> {
        let print = |si: f64| self.context.units.print_si(si, dimension).joined();
        let limit = limit?;
        let ratio = value.map(|value| {
            if value > 0.0 {
                limit / value
            } else {
                f64::INFINITY
            }
        });
        Some(Row {
            quantity,
            value: value.map(print),
            limit: format!("≥ {}", print(limit)),
            ratio,
            source: String::new(),
        })
    }
}

/// The limits as a table; the one with the greatest ratio stands out.
pub(super) fn table(context: &Context<'_>, rows: Vec<Row>) -> Limits {
    let label = |key: &str| context.label(&format!("note.limits.{key}"));
    let worst = rows.iter().filter_map(|row| row.ratio).fold(0.0, f64::max);
    let rows = rows
        .into_iter()
        .map(|row| {
            let fails = row.ratio.is_some_and(|ratio| ratio > 1.0 + 1e-9);
            let verdict = match row.ratio {
                None => label("unknown"),
                Some(_) if fails => label("fail"),
                Some(_) => label("pass"),
            };
            LimitRow {
                strong: row.ratio.is_some_and(|ratio| ratio >= worst - 1e-12),
                quantity: row.quantity,
                value: row.value.unwrap_or_default(),
                limit: row.limit,
                ratio: match row.ratio {
                    Some(ratio) if ratio.is_finite() => two_digits(ratio),
                    Some(_) => "> 9".to_owned(),
                    None => String::new(),
                },
                verdict,
                source: row.source,
                fails,
            }
        })
        .collect();
    Limits {
        head: Head {
            title: label("title"),
            note: label("note"),
        },
        columns: ["quantity", "value", "limit", "ratio", "verdict", "source"].map(label),
        rows,
    }
}
