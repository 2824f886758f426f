//! Method, lubricant, target, passes, loosening, checks: what the work is to be.

use crate::job::{Class, Hazard, Pattern, YieldMeasure};
use crate::joint::{
    Fact, Gasket, Level, Loosening, Lubricant, Plan, Service, Studs, Target, TargetValue, Tools,
    Who,
};
use crate::methods::{self, Method};
use crate::report::Finding;
use crate::standards::{TorqueFormula, vdi_2230};
use crate::units::{Count, Length, Pressure, Quantity, Ratio, Temperature, Torque};
use crate::yaml::At;

use super::Catalog;
use super::layers::{Layers, fact, nested};
use super::shared::opening_area;

/// The method as given, else the one that the first tool or the tensioner tells.
pub(super) fn method(layers: &Layers<'_>, tools: &Tools) -> Fact<&'static str> {
    let leaf = layers.leaf(nested!(tighten.method));
    let given = leaf.and_then(|leaf| {
        let method = methods::named(leaf.value.as_str())?;
        Some(Fact::job(method.word, leaf.place, leaf.level))
    });
    given.unwrap_or_else(|| {
        let tool = tools.tightening.first().map(|tool| tool.kind);
        let has_tensioner = layers.leaf(nested!(studs.tensioner)).is_some();
        match methods::told_by(tool, has_tensioner) {
            Some(method) => Fact::computed(method.word),
            None => Fact::missing("tighten.method", Who::Planner),
        }
    })
}

pub(super) fn lubricant(
    layers: &Layers<'_>,
    catalog: &Catalog<'_>,
    method: &Fact<&'static str>,
) -> Lubricant {
    let name = layers.text("lubricant", Who::Planner, |keys| keys.lubricant.as_ref());
    let entry = name.get().and_then(|name| catalog.lubricant(name));
    let shared = |leaf: Option<&At<Ratio>>, key: &'static str| fact_of(leaf, key, Who::Engineer);
    let scatter = shared(
        entry.and_then(|entry| entry.scatter.as_ref()),
        "lubricants.*.scatter",
    )
    .or(|| match method.value().and_then(methods::named) {
        Some(method) => scatter_of(method),
        None => Fact::missing("lubricants.*.scatter", Who::Engineer),
    });
    Lubricant {
        thread_friction: shared(
            entry.and_then(|entry| entry.thread_friction.as_ref()),
            "lubricants.*.thread_friction",
        ),
        bearing_friction: shared(
            entry.and_then(|entry| entry.bearing_friction.as_ref()),
            "lubricants.*.bearing_friction",
        ),
        nut_factor: shared(
            entry.and_then(|entry| entry.nut_factor.as_ref()),
            "lubricants.*.nut_factor",
        ),
        scatter,
        highest_temperature: fact_of(
            entry.and_then(|entry| entry.highest_temperature.as_ref()),
            "lubricants.*.highest_temperature",
            Who::Engineer,
        ),
        source: match entry.and_then(|entry| entry.source.as_ref()) {
            Some(source) => match source.get() {
                Some(text) => Fact::job(text.as_str().to_owned(), source.place(), Level::Shared),
                None => Fact::missing("lubricants.*.source", Who::Engineer),
            },
            None => Fact::missing("lubricants.*.source", Who::Engineer),
        },
        free_of: entry
            .and_then(|entry| entry.free_of.as_ref())
            .and_then(At::get)
            .into_iter()
            .flatten()
            .filter_map(At::get)
            .map(|text| text.as_str().to_owned())
            .collect(),
        oxygen_safe: entry
            .and_then(|entry| entry.oxygen_safe.as_ref())
            .and_then(At::get)
            .copied()
            .unwrap_or(false),
        name,
    }
}

/// The wide end of the guideline's band: nothing is known of how the friction was found.
fn scatter_of(method: &Method) -> Fact<Ratio> {
    match vdi_2230::scatter_of(method.scatter) {
        Some(row) => Fact::default(Ratio::from_si(row.greatest), "lubricants.*.scatter"),
        None => Fact::missing("lubricants.*.scatter", Who::Engineer),
    }
}

/// A leaf of a shared list as a fact.
pub(super) fn fact_of<T: Copy>(leaf: Option<&At<T>>, key: &'static str, who: Who) -> Fact<T> {
    match leaf.and_then(At::both) {
        Some((value, place)) => Fact::job(*value, place, Level::Shared),
        None => Fact::missing(key, who),
    }
}

/// The one value of the target. A joint that gives its own replaces the family's whatever kind
/// that was, so that `stress` in the family and `load` in the joint are no contradiction.
pub(super) fn target(layers: &Layers<'_>, found: &mut Vec<Finding>) -> Target {
    let mut given: Vec<(Level, &'static str, Fact<TargetValue>)> = Vec::new();
    if let Some(leaf) = layers.leaf(nested!(target.stress)) {
        let value = TargetValue::Stress(*leaf.value);
        given.push((
            leaf.level,
            "stress",
            Fact::job(value, leaf.place, leaf.level),
        ));
    }
    if let Some(leaf) = layers.leaf(nested!(target.share_of_yield)) {
        let value = TargetValue::ShareOfYield(*leaf.value);
        given.push((
            leaf.level,
            "share_of_yield",
            Fact::job(value, leaf.place, leaf.level),
        ));
    }
    if let Some(leaf) = layers.leaf(nested!(target.load)) {
        let value = TargetValue::Load(*leaf.value);
        given.push((leaf.level, "load", Fact::job(value, leaf.place, leaf.level)));
    }
    if let Some(leaf) = layers.leaf(nested!(target.torque)) {
        let value = TargetValue::Torque(*leaf.value);
        given.push((
            leaf.level,
            "torque",
            Fact::job(value, leaf.place, leaf.level),
        ));
    }
    let nearest = given.iter().map(|(level, _, _)| *level).max();
    given.retain(|(level, _, _)| Some(*level) == nearest);
    if let [(_, first, _), (_, second, fact), ..] = given.as_slice() {
        found.push(
            Finding::job("job.two_targets", fact.place())
                .with("first", *first)
                .with("second", *second),
        );
    }
    let value = given.into_iter().next().map(|(_, _, fact)| fact);
    Target {
        given: value.unwrap_or(Fact::missing("target", Who::Engineer)),
        area: fact!(layers, target.area, Engineer)
            .or(|| Fact::default(crate::job::StressArea::Tensile, "target.area")),
        measure: fact!(layers, target.measure, Engineer)
            .or(|| Fact::default(YieldMeasure::Tension, "target.measure")),
        expected_torque: layers.given(nested!(target.expected_torque)),
    }
}

/// Passes, pattern, torque formula. Defaults are the legacy rounds of PCC-1 (from memory):
/// 30, 70, 100 % crosswise (at most 30 % first on soft gaskets), then in circle until no nut turns.
pub(super) fn plan(layers: &Layers<'_>, tools: &Tools, found: &mut Vec<Finding>) -> Plan {
    let passes = match layers.leaf(nested!(tighten.passes)) {
        Some(leaf) => {
            let shares: Vec<Ratio> = leaf.value.iter().filter_map(At::get).copied().collect();
            if shares.is_empty() || shares.len() > MOST_PASSES {
                found.push(
                    Finding::job("job.passes", leaf.place).with("most", MOST_PASSES.to_string()),
                );
            }
            Fact::job(shares, leaf.place, leaf.level)
        }
        None => Fact::default(
            [0.3, 0.7, 1.0].map(Ratio::from_si).to_vec(),
            "tighten.passes",
        ),
    };
    Plan {
        passes,
        pattern: fact!(layers, tighten.pattern, Engineer)
            .or(|| Fact::default(Pattern::Cross, "tighten.pattern")),
        circular_round: fact!(layers, tighten.circular_round, Engineer)
            .or(|| Fact::default(true, "tighten.circular_round")),
        repeat_after: layers.given(nested!(tighten.repeat_after)),
        snug: fact!(layers, tighten.snug, Engineer)
            .or(|| Fact::default(Torque::nm(25.0), "tighten.snug")),
        formula: formula(layers, found),
        driver_level: fact!(layers, tighten.driver_level, Engineer)
            .or(|| super::tensioner::usual_level(tools)),
        reversal: layers.given(nested!(tighten.reversal)),
        wanted_mean: fact!(layers, tighten.wanted_mean, Engineer)
            .or(|| Fact::default(Ratio::from_si(0.95), "tighten.wanted_mean")),
    }
}

/// A card has room for four stepped passes beside snug, circular round and repeat.
const MOST_PASSES: usize = 4;

fn formula(layers: &Layers<'_>, found: &mut Vec<Finding>) -> Fact<TorqueFormula> {
    let Some(leaf) = layers.leaf(nested!(tighten.formula)) else {
        return Fact::default(TorqueFormula::Iso16047, "tighten.formula");
    };
    match TorqueFormula::parse(leaf.value.as_str()) {
        Ok(formula) => Fact::job(formula, leaf.place, leaf.level),
        Err(_) => {
            let known = TorqueFormula::ALL.iter().map(|formula| formula.name());
            found.push(
                Finding::job("job.unknown_formula", leaf.place)
                    .with("name", leaf.value.as_str())
                    .with("known", known.collect::<Vec<_>>().join(", ")),
            );
            Fact::missing("tighten.formula", Who::Engineer)
        }
    }
}

pub(super) fn gasket(layers: &Layers<'_>, catalog: &Catalog<'_>) -> Option<Gasket> {
    let leaf = layers.leaf(|keys| keys.gasket.as_ref())?;
    let (place, gasket) = catalog.gasket(leaf.value.as_str())?;
    let length = |leaf: Option<&At<Length>>, key| fact_of(leaf, key, Who::Engineer);
    Some(Gasket {
        name: leaf.value.as_str().to_owned(),
        kind: *gasket.kind.get()?,
        inner: length(gasket.inner.as_ref(), "gaskets.*.inner"),
        outer: length(gasket.outer.as_ref(), "gaskets.*.outer"),
        thickness: length(gasket.thickness.as_ref(), "gaskets.*.thickness"),
        used: gasket
            .used
            .as_ref()
            .and_then(At::get)
            .copied()
            .unwrap_or(false),
        approval: gasket
            .approval
            .as_ref()
            .and_then(At::get)
            .map(|approval| approval.as_str().to_owned()),
        place: gasket.used.as_ref().map_or(place, At::place),
    })
}

pub(super) fn service(layers: &Layers<'_>, catalog: &Catalog<'_>) -> Service {
    let opening = layers
        .leaf(|keys| keys.isolation.as_ref())
        .and_then(|leaf| catalog.isolation(leaf.value.as_str()))
        .and_then(opening_area)
        .map(|(area, place)| Fact::job(area, place, Level::Shared));
    Service {
        fluid: layers.text("service.fluid", Who::Operator, nested!(service.fluid)),
        pressure: fact!(layers, service.pressure, Operator),
        temperature: fact!(layers, service.temperature, Operator),
        opening: opening.unwrap_or(Fact::missing("isolations.*.opening", Who::Engineer)),
    }
}

pub(super) fn hazards(layers: &Layers<'_>) -> Vec<Hazard> {
    let mut hazards: Vec<Hazard> = layers
        .leaf(|keys| keys.hazards.as_ref())
        .map(|leaf| leaf.value.iter().filter_map(At::get).copied().collect())
        .unwrap_or_default();
    hazards.sort_unstable();
    hazards.dedup();
    hazards
}

/// Criticality as given, else by hazards, pressure and temperature (common practice, no source):
/// A for hydrogen, toxic, oxygen, a past leak, more than 40 bar or 250 °C; B for flammable, steam,
/// corrosive, pyrophoric; C for the rest. Nothing known about the contents gives no class.
pub(super) fn class(layers: &Layers<'_>, service: &Service, hazards: &[Hazard]) -> Fact<Class> {
    layers
        .fact("class", Who::Engineer, |keys| keys.class.as_ref())
        .or(|| {
            let severe = [
                Hazard::Hydrogen,
                Hazard::Toxic,
                Hazard::Oxygen,
                Hazard::PastLeak,
            ];
            let middle = [
                Hazard::Flammable,
                Hazard::Steam,
                Hazard::Corrosive,
                Hazard::Pyrophoric,
            ];
            let pressure = service.pressure.value();
            let temperature = service.temperature.value();
            let high = pressure.is_some_and(|pressure| pressure > Pressure::bar(40.0))
                || temperature.is_some_and(|warm| warm > Temperature::celsius(250.0));
            let class = if high || hazards.iter().any(|hazard| severe.contains(hazard)) {
                Class::A
            } else if hazards.iter().any(|hazard| middle.contains(hazard)) {
                Class::B
            } else if pressure.is_some() && temperature.is_some() {
                Class::C
            } else {
                return Fact::missing("class", Who::Engineer);
            };
            Fact::default(class, "class")
        })
}

/// Highest load of a jackbolt while loosening, as a share of its installed load (ours).
const USUAL_PEAK: f64 = 1.3;

pub(super) fn loosening(
    layers: &Layers<'_>,
    studs: &Studs,
    method: &Fact<&'static str>,
) -> Loosening {
    let method = method.value().and_then(methods::named);
    let usual = method.map_or(methods::USUAL_BREAK_OUT, |method| method.break_out);
    let break_out = layers.leaf(nested!(loosen.break_out));
    type Range = (At<Ratio>, At<Ratio>);
    let share = |pick: fn(&Range) -> &At<Ratio>, default: f64| match &break_out {
        Some(leaf) => fact_of(Some(pick(leaf.value)), "loosen.break_out", Who::Engineer),
        None => Fact::default(Ratio::from_si(default), "loosen.break_out"),
    };
    Loosening {
        opened: layers
            .fact("opened", Who::Planner, |keys| keys.opened.as_ref())
            .or(|| Fact::default(true, "opened")),
        staged: layers
            .fact("large_or_stiff", Who::Engineer, |keys| {
                keys.large_or_stiff.as_ref()
            })
            .or(|| Fact::default(is_large_or_stiff(studs), "large_or_stiff")),
        first_step: layers.given(nested!(loosen.first_step)),
        rounds: match layers.leaf(nested!(loosen.rounds)) {
            Some(leaf) => Fact::job(
                Count::from_si(f64::from(*leaf.value)),
                leaf.place,
                leaf.level,
            ),
            None => Fact::default(Count::from_si(2.0), "loosen.rounds"),
        },
        peak: fact!(layers, loosen.peak, Engineer)
            .or(|| Fact::default(Ratio::from_si(USUAL_PEAK), "loosen.peak")),
        never_exceed: layers.given(nested!(loosen.never_exceed)),
        break_out_least: share(|pair| &pair.0, usual[0]),
        break_out_greatest: share(|pair| &pair.1, usual[1]),
    }
}

/// Springback gathers on the last studs of large or stiff joints (PCC-1, from memory): bolt circle
/// of 600 mm or more, studs of 45 mm or more, flange of more than 125 mm.
fn is_large_or_stiff(studs: &Studs) -> bool {
    let at_least = |fact: &Fact<Length>, limit: f64| {
        fact.value().is_some_and(|value| value >= Length::mm(limit))
    };
    at_least(&studs.bolt_circle, 600.0)
        || at_least(&studs.flange_thickness, 125.0)
        || studs
            .thread
            .get()
            .is_some_and(|thread| thread.diameter >= Length::mm(45.0))
}
