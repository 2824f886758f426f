//! Method, lubricant, target, passes, loosening, checks: what the work is to be.

use crate::job::table::Key;
use crate::job::{self, Class, Hazard, Isolation, JointKeys, Loosen, Opening, Tighten};
use crate::joint::{
    Fact, Gasket, Level, Loosening, Lubricant, Plan, Service, Studs, Target, TargetValue, Tools,
};
use crate::methods::{self, Method};
use crate::report::Finding;
use crate::standards::{TorqueFormula, mechanics, vdi_2230};
use crate::units::{Area, Length, Pressure, Quantity, Ratio, Temperature};
use crate::yaml::At;

use super::catalog::Catalog;
use super::layers::Layers;
use super::tensioner;

/// The method as given, else the one that the first tool or the tensioner tells.
pub(super) fn method(layers: &Layers<'_>, tools: &Tools) -> Fact<&'static str> {
    let given = layers.leaf(&Tighten::method).and_then(|leaf| {
        let method = methods::named(leaf.value.as_str())?;
        Some(Fact::job(method.word, leaf.place, leaf.level))
    });
    given.unwrap_or_else(|| {
        let tool = tools.tightening.first().map(|tool| tool.kind);
        let has_tensioner = layers.leaf(&job::Studs::tensioner).is_some();
        match methods::told_by(tool, has_tensioner) {
            Some(method) => Fact::computed(method.word),
            None => Tighten::method.missing(),
        }
    })
}

pub(super) fn lubricant(
    layers: &Layers<'_>,
    catalog: &Catalog<'_>,
    method: &Fact<&'static str>,
) -> Lubricant {
    let name = layers.fact(&JointKeys::lubricant);
    let entry = name.get().and_then(|name| catalog.lubricant(name));
    Lubricant {
        thread_friction: job::Lubricant::thread_friction.shared(entry),
        bearing_friction: job::Lubricant::bearing_friction.shared(entry),
        nut_factor: job::Lubricant::nut_factor.shared(entry),
        scatter: job::Lubricant::scatter.shared(entry).or(|| {
            let usual = method.value().and_then(methods::named).and_then(scatter_of);
            job::Lubricant::scatter.default_or_missing(usual)
        }),
        highest_temperature: job::Lubricant::highest_temperature.shared(entry),
        source: job::Lubricant::source.shared(entry),
        free_of: job::Lubricant::free_of.value(entry).unwrap_or_default(),
        oxygen_safe: job::Lubricant::oxygen_safe.value(entry).unwrap_or(false),
        name,
    }
}

/// The wide end of the guideline's band: nothing is known of how the friction was found.
fn scatter_of(method: &Method) -> Option<Ratio> {
    vdi_2230::scatter_of(method.scatter).map(|row| Ratio::from_si(row.greatest))
}

/// The one value of the target. A joint that gives its own replaces the family's whatever kind
/// that was, so that `stress` in the family and `load` in the joint are no contradiction.
pub(super) fn target(layers: &Layers<'_>, found: &mut Vec<Finding>) -> Target {
    let mut given: Vec<Candidate> = [
        candidate(layers, &job::Target::stress, TargetValue::Stress),
        candidate(
            layers,
            &job::Target::share_of_yield,
            TargetValue::ShareOfYield,
        ),
        candidate(
            layers,
            &job::Target::share_of_strength,
            TargetValue::ShareOfStrength,
        ),
        candidate(layers, &job::Target::load, TargetValue::Load),
        candidate(layers, &job::Target::torque, TargetValue::Torque),
    ]
    .into_iter()
    .flatten()
    .collect();
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
        given: value.unwrap_or(JointKeys::target.missing()),
        area: layers.fact(&job::Target::area),
        measure: layers.fact(&job::Target::measure),
        expected_torque: layers.given(&job::Target::expected_torque),
    }
}

/// A value of the target with its level and the name of its key.
type Candidate = (Level, &'static str, Fact<TargetValue>);

fn candidate<Q: Copy>(
    layers: &Layers<'_>,
    key: &Key<job::Target, Q>,
    kind: fn(Q) -> TargetValue,
) -> Option<Candidate> {
    let leaf = layers.leaf(key)?;
    let fact = Fact::job(kind(*leaf.value), leaf.place, leaf.level);
    Some((leaf.level, key.field.name(), fact))
}

/// Passes, pattern, torque formula. Defaults are the legacy rounds of PCC-1 (from memory):
/// 30, 70, 100 % crosswise (at most 30 % first on soft gaskets), then in circle until no nut turns.
pub(super) fn plan(layers: &Layers<'_>, tools: &Tools, found: &mut Vec<Finding>) -> Plan {
    let passes = layers.given(&Tighten::passes);
    let count = passes.as_ref().and_then(Fact::get).map(Vec::len);
    if let Some(passes) = &passes
        && count.is_some_and(|count| count == 0 || count > MOST_PASSES)
    {
        found
            .push(Finding::job("job.passes", passes.place()).with("most", MOST_PASSES.to_string()));
    }
    let usual_passes = || [0.3, 0.7, 1.0].map(Ratio::from_si).to_vec();
    Plan {
        passes: passes.unwrap_or_else(|| Tighten::passes.defaulted(usual_passes())),
        pattern: layers.fact(&Tighten::pattern),
        circular_round: layers.fact(&Tighten::circular_round),
        repeat_after: layers.given(&Tighten::repeat_after),
        snug: layers.fact(&Tighten::snug),
        formula: formula(layers, found),
        driver_level: layers
            .fact(&Tighten::driver_level)
            .or(|| Tighten::driver_level.defaulted(tensioner::usual_level(tools))),
        reversal: layers.given(&Tighten::reversal),
        wanted_mean: layers.fact(&Tighten::wanted_mean),
    }
}

/// A card has room for four stepped passes beside snug, circular round and repeat.
const MOST_PASSES: usize = 4;

fn formula(layers: &Layers<'_>, found: &mut Vec<Finding>) -> Fact<TorqueFormula> {
    let Some(leaf) = layers.leaf(&Tighten::formula) else {
        return Tighten::formula.defaulted(TorqueFormula::Iso16047);
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
            Tighten::formula.missing()
        }
    }
}

pub(super) fn gasket(layers: &Layers<'_>, catalog: &Catalog<'_>) -> Option<Gasket> {
    let name = layers.value(&JointKeys::gasket)?;
    let (place, gasket) = catalog.gasket(&name)?;
    let entry = Some(gasket);
    Some(Gasket {
        name,
        kind: job::Gasket::kind.value(entry)?,
        inner: job::Gasket::inner.shared(entry),
        outer: job::Gasket::outer.shared(entry),
        thickness: job::Gasket::thickness.shared(entry),
        used: job::Gasket::used.value(entry).unwrap_or(false),
        approval: job::Gasket::approval.value(entry),
        place: gasket.used.as_ref().map_or(place, At::place),
    })
}

pub(super) fn service(layers: &Layers<'_>, catalog: &Catalog<'_>) -> Service {
    let opening = layers
        .leaf(&JointKeys::isolation)
        .and_then(|leaf| catalog.isolation(leaf.value.as_str()))
        .and_then(opening_area);
    Service {
        fluid: layers.fact(&job::Service::fluid),
        pressure: layers.fact(&job::Service::pressure),
        temperature: layers.fact(&job::Service::temperature),
        opening: opening.unwrap_or(Isolation::opening.missing()),
    }
}

/// The area of the largest opening behind a boundary.
fn opening_area(isolation: &Isolation) -> Option<Fact<Area>> {
    let opening = isolation.opening.as_ref()?.get();
    if opening?.area.is_some() {
        return Opening::area.given(opening, Level::Shared);
    }
    let diameter = Opening::diameter.given(opening, Level::Shared)?;
    let area = |diameter: Length| mechanics::NOMINAL_AREA_OF.value(&[diameter.si()]);
    Some(diameter.map(|diameter| Area::from_si(area(diameter))))
}

pub(super) fn hazards(layers: &Layers<'_>) -> Vec<Hazard> {
    let mut hazards = layers.value(&JointKeys::hazards).unwrap_or_default();
    hazards.sort_unstable();
    hazards.dedup();
    hazards
}

/// Criticality as given, else by hazards, pressure and temperature (common practice, no source):
/// A for hydrogen, toxic, oxygen, a past leak, more than 40 bar or 250 °C; B for flammable, steam,
/// corrosive, pyrophoric; C for the rest. Nothing known about the contents gives no class.
pub(super) fn class(layers: &Layers<'_>, service: &Service, hazards: &[Hazard]) -> Fact<Class> {
    layers.fact(&JointKeys::class).or(|| {
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
            Some(Class::A)
        } else if hazards.iter().any(|hazard| middle.contains(hazard)) {
            Some(Class::B)
        } else if pressure.is_some() && temperature.is_some() {
            Some(Class::C)
        } else {
            None
        };
        JointKeys::class.default_or_missing(class)
    })
}

pub(super) fn loosening(
    layers: &Layers<'_>,
    studs: &Studs,
    method: &Fact<&'static str>,
) -> Loosening {
    let method = method.value().and_then(methods::named);
    let usual = method.map_or(methods::USUAL_BREAK_OUT, |method| method.break_out);
    let break_out = layers.leaf(&Loosen::break_out).map(|leaf| leaf.value);
    let share = |given: Option<&At<Ratio>>, usual: f64| match given {
        Some(share) => share
            .both()
            .map_or(Loosen::break_out.missing(), |(share, place)| {
                Fact::job(*share, place, Level::Shared)
            }),
        None => Loosen::break_out.defaulted(Ratio::from_si(usual)),
    };
    Loosening {
        opened: layers.fact(&JointKeys::opened),
        staged: layers
            .fact(&JointKeys::large_or_stiff)
            .or(|| JointKeys::large_or_stiff.defaulted(is_large_or_stiff(studs))),
        first_step: layers.given(&Loosen::first_step),
        rounds: layers.fact(&Loosen::rounds),
        peak: layers.fact(&Loosen::peak),
        never_exceed: layers.given(&Loosen::never_exceed),
        break_out_least: share(break_out.map(|(least, _)| least), usual[0]),
        break_out_greatest: share(break_out.map(|(_, greatest)| greatest), usual[1]),
    }
}

/// Springback gathers on the last studs of large or stiff joints (PCC-1, from memory): bolt circle
/// of 600 mm or more, studs of 45 mm or more, flange of more than 125 mm.
fn is_large_or_stiff(studs: &Studs) -> bool {
    let diameter = studs.thread.clone().map(|thread| thread.diameter);
    let is = |fact: &Fact<Length>, beyond: fn(&Length, &Length) -> bool, limit: f64| {
        fact.value()
            .is_some_and(|value| beyond(&value, &Length::mm(limit)))
    };
    is(&studs.bolt_circle, Length::ge, 600.0)
        || is(&studs.flange_thickness, Length::gt, 125.0)
        || is(&diameter, Length::ge, 45.0)
}
