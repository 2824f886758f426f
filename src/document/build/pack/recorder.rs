//! What one joint took from the program: defaults by key, tables and formulas from memory.

use std::collections::{BTreeMap, BTreeSet};

use crate::calc::{Basis, GAUGE_STEP};
use crate::job::ToolKind;
use crate::joint::{Fact, Joint, Origin, Plan, TargetValue, usual_steps};
use crate::methods::Computed;
use crate::methods::{hydraulic, jackbolt};
use crate::units::{Dimension, Quantity, Unit, digits};
use crate::wording::Values;

use super::super::context::{Context, percent};
use super::super::words::seat_key;

/// What one joint took from us.
pub(super) struct Recorder<'a> {
    context: &'a Context<'a>,
    /// Key to the values that stand for it.
    pub(super) defaults: BTreeMap<String, Vec<String>>,
    /// Tables and formulas that are not confirmed, each with no value.
    pub(super) memory: BTreeMap<String, Vec<String>>,
    /// Keys that the ledger holds; the facts behind them are not taken a second time.
    seen: BTreeSet<&'static str>,
}

impl<'a> Recorder<'a> {
    pub(super) fn of(context: &'a Context<'a>, joint: &Joint, computed: &Computed) -> Self {
        let mut recorder = Self {
            context,
            defaults: BTreeMap::new(),
            memory: BTreeMap::new(),
            seen: BTreeSet::new(),
        };
        recorder.ledger(computed);
        recorder.studs(joint);
        recorder.plan(joint);
        recorder.checks(joint);
        if let Some(recheck) = &joint.mechanics.recheck {
            recorder.quantity(&recheck.after);
        }
        recorder.tools(joint, computed);
        recorder
    }

    fn take(&mut self, key: &'static str, value: String) {
        let values = self.defaults.entry(key.to_owned()).or_default();
        if !values.contains(&value) {
            values.push(value);
        }
    }

    fn note_memory(&mut self, source: &str) {
        self.memory.entry(source.to_owned()).or_default();
    }

    fn ledger(&mut self, computed: &Computed) {
        for entry in computed.ledger.entries() {
            match (entry.basis, entry.value) {
                (Basis::Input(Origin::Default { key }), Ok(value)) => {
                    let printed = match entry.dimension {
                        Dimension::Ratio => percent(value),
                        dimension => self.context.units.print_si(value, dimension).joined(),
                    };
                    self.seen.insert(key);
                    self.take(key, printed);
                }
                (
                    Basis::Input(Origin::Table {
                        row,
                        confirmed: false,
                    }),
                    Ok(_),
                ) => self.note_memory(row),
                (Basis::Formula(formula, _), Ok(_)) if !formula.confirmed => {
                    self.note_memory(formula.source);
                }
                _ => {}
            }
        }
    }

    /// A fact that is not in the ledger.
    fn fact<T>(&mut self, fact: &Fact<T>, print: impl Fn(&T) -> String) {
        let Fact::Known { value, origin } = fact else {
            return;
        };
        match origin {
            Origin::Default { key } if !self.seen.contains(key) => self.take(key, print(value)),
            Origin::Table {
                row,
                confirmed: false,
            } => self.note_memory(row),
            _ => {}
        }
    }

    fn quantity<Q: Quantity>(&mut self, fact: &Fact<Q>) {
        let context = self.context;
        self.fact(fact, |value| context.text(*value));
    }

    fn yes_or_no(&mut self, fact: &Fact<bool>) {
        let context = self.context;
        self.fact(fact, |yes| {
            context.label(if *yes { "pack.yes" } else { "pack.no" })
        });
    }

    fn studs(&mut self, joint: &Joint) {
        let studs = &joint.mechanics.studs;
        self.quantity(&studs.yield_strength);
        self.quantity(&studs.tensile_strength);
        self.quantity(&studs.modulus);
        self.quantity(&studs.highest_temperature);
        self.fact(&studs.nut_pairs, |pairs| pairs.join(", "));
        for length in [
            &studs.nut_height,
            &studs.across_flats,
            &studs.bearing_outer,
            &studs.bearing_inner,
            &studs.flange_thickness,
        ] {
            self.quantity(length);
        }
        let context = self.context;
        self.fact(&studs.seat, |seat| {
            context.label(&format!("seat.{}", seat_key(*seat)))
        });
    }

    fn plan(&mut self, joint: &Joint) {
        let mechanics = &joint.mechanics;
        let plan = &mechanics.plan;
        let context = self.context;
        self.fact(&mechanics.class, |class| class.word().to_owned());
        self.fact(&mechanics.lubricant.scatter, |scatter| {
            format!("± {}", percent(scatter.si()))
        });
        let given = mechanics.target.given.value();
        if matches!(
            given,
            Some(TargetValue::Stress(_) | TargetValue::ShareOfYield(_))
        ) {
            self.fact(&mechanics.target.area, |area| area.word().to_owned());
        }
        if matches!(given, Some(TargetValue::ShareOfYield(_))) {
            self.fact(&mechanics.target.measure, |measure| {
                measure.word().to_owned()
            });
        }
        self.fact(&plan.pattern, |pattern| pattern.word().to_owned());
        // Jackbolts are turned by a plan of rounds and have a torque formula of their own.
        if mechanics.method.value() != Some(jackbolt::WORD) {
            self.passes(plan);
        }
        let loosening = &mechanics.loosening;
        self.yes_or_no(&loosening.opened);
        if loosening.opened.value() != Some(false) {
            self.yes_or_no(&loosening.staged);
            self.quantity(&loosening.rounds);
            for share in [&loosening.break_out_least, &loosening.break_out_greatest] {
                self.fact(share, |share| percent(share.si()));
            }
        }
        self.fact(&joint.work.direction, |direction| {
            context.label(match direction {
                crate::job::TurnDirection::Clockwise => "card.turns_clockwise",
                crate::job::TurnDirection::Anticlockwise => "card.turns_anticlockwise",
            })
        });
    }

    /// Passes on nuts and the formula of their torque.
    fn passes(&mut self, plan: &Plan) {
        self.fact(&plan.passes, |passes| {
            let shares: Vec<String> = passes.iter().map(|share| percent(share.si())).collect();
            shares.join(", ")
        });
        self.yes_or_no(&plan.circular_round);
        self.quantity(&plan.snug);
        self.fact(&plan.formula, |formula| formula.name().to_owned());
    }

    fn checks(&mut self, joint: &Joint) {
        let checks = &joint.mechanics.checks;
        self.yes_or_no(&checks.gaps);
        if checks.gaps.value() == Some(true) {
            self.quantity(&checks.gap_spread);
        }
        if !checks.stretch.is_empty() {
            self.yes_or_no(&checks.zero_reading);
        }
        for length in [
            &checks.centreline,
            &checks.parallelism,
            &checks.holes,
            &checks.gap,
            &checks.least_protrusion,
            &checks.greatest_protrusion,
        ] {
            self.quantity(length);
        }
    }

    fn tools(&mut self, joint: &Joint, computed: &Computed) {
        let hydraulic = joint.mechanics.method.value() == Some(hydraulic::WORD);
        for tool in &computed.chosen.turning {
            self.fact(&tool.lowest, |lowest| {
                tool.scale.print_si(lowest.si()).joined()
            });
            if hydraulic && tool.pressure_step.is_none() {
                self.take("tools.*.step", self.context.text(GAUGE_STEP));
            } else if tool.kind == ToolKind::HandTorqueWrench && tool.torque_step.is_none() {
                self.take(
                    "tools.*.step",
                    usual_steps_in_words(self.context, tool.scale),
                );
            }
        }
    }
}

/// The steps of a scale where its tool says none.
fn usual_steps_in_words(context: &Context<'_>, scale: &Unit) -> String {
    let named = Values::new().with("scale", scale.name);
    match usual_steps(scale) {
        Some([small, middle, large]) => {
            let values = named
                .with("small_step", digits(small))
                .with("middle_step", digits(middle))
                .with("large_step", digits(large));
            context.say("pack.assumptions.step_by_range", &values)
        }
        None => context.say("pack.assumptions.step_by_size", &named),
    }
}
