//! Page one: what is inside, what else moves, and what the pressure pushes.

use crate::calc::{ids, opening};
use crate::document::blocks::Head;
use crate::document::isolation::{ContentsAndEnergy, Force};
use crate::document::width;
use crate::job::{Isolation, IsolationClass};
use crate::joint::{Fact, Level, Who};
use crate::units::{Area, Dimension, Pressure, Quantity, unit_named};
use crate::wording::Values;
use crate::yaml::At;

use super::super::context::Context;

/// Size of the facts in pt, and the room behind their names in mm.
const FACT_SIZE: f64 = 11.0;
const FACT_ROOM: f64 = 74.0;

/// Contents, other energy and the class that is wanted, a line each.
pub(super) fn contents(context: &Context<'_>, isolation: &Isolation) -> ContentsAndEnergy {
    let label = |key: &str| context.label(&format!("isolation.contents.{key}"));
    let mut facts = fluids(context, isolation);
    let energies = isolation
        .energies
        .iter()
        .filter_map(At::get)
        .flatten()
        .filter_map(At::get);
    for energy in energies {
        let key = energy.kind.get().map_or("mechanical", |kind| kind.word());
        let control = energy
            .control
            .as_ref()
            .and_then(At::get)
            .map(|it| it.as_str().to_owned());
        let control = control.unwrap_or_else(|| {
            context.say1(
                "isolation.contents.no_control",
                "who",
                context.who(Who::Operator),
            )
        });
        let what = energy.what.get().map_or("", |what| what.as_str());
        facts.push([label(key), what.to_owned(), control]);
    }
    facts.push(class(context, isolation));
    let facts = facts.into_iter().map(in_one_line).collect();
    ContentsAndEnergy {
        head: Head {
            title: label("title"),
            note: String::new(),
        },
        facts,
    }
}

/// A limit that has no room behind its fact follows it, so that both wrap as one text.
fn in_one_line([what, which, limit]: [String; 3]) -> [String; 3] {
    let fits = width::of(&which, FACT_SIZE) + width::of(&limit, FACT_SIZE) + 2.0 <= FACT_ROOM;
    if fits || limit.is_empty() {
        [what, which, limit]
    } else {
        [what, format!("{which}; {limit}"), String::new()]
    }
}

fn unknown(context: &Context<'_>, who: Who) -> String {
    context.say1("isolation.contents.unknown", "who", context.who(who))
}

fn fluids(context: &Context<'_>, isolation: &Isolation) -> Vec<[String; 3]> {
    let label = |key: &str| context.label(&format!("isolation.contents.{key}"));
    let mut facts = Vec::new();
    for contents in isolation
        .contents
        .iter()
        .filter_map(At::get)
        .flatten()
        .filter_map(At::get)
    {
        let mut which = vec![contents.fluid.get().map_or("", |it| it.as_str()).to_owned()];
        which.extend(
            contents
                .pressure
                .as_ref()
                .and_then(At::get)
                .map(|it| context.text(*it)),
        );
        let temperature = contents
            .temperature
            .as_ref()
            .and_then(At::get)
            .map(|it| context.text(*it));
        facts.push([
            label("fluid"),
            which.join(", "),
            temperature.unwrap_or_default(),
        ]);
        if let Some(volume) = contents.volume.as_ref().and_then(At::get) {
            facts.push([label("volume"), context.text(*volume), String::new()]);
        }
        if let Some(hazard) = contents.hazard.as_ref().and_then(At::get) {
            facts.push([label("hazard"), hazard.as_str().to_owned(), String::new()]);
        }
    }
    if facts.is_empty() {
        facts.push([
            label("fluid"),
            unknown(context, Who::Operator),
            String::new(),
        ]);
    }
    facts
}

/// The class of isolation that is wanted, and why.
fn class(context: &Context<'_>, isolation: &Isolation) -> [String; 3] {
    let which = match isolation.class.as_ref().and_then(At::get) {
        Some(IsolationClass::Positive) => context.label("isolation.class.positive"),
        Some(IsolationClass::Proved) => context.label("isolation.class.proved"),
        Some(IsolationClass::NonProved) => context.label("isolation.class.not_proved"),
        None => unknown(context, Who::Operator),
    };
    let reason = isolation
        .reason
        .as_ref()
        .and_then(At::get)
        .map(|it| it.as_str().to_owned());
    [
        context.label("isolation.contents.wanted"),
        which,
        reason.unwrap_or_default(),
    ]
}

/// What the pressure pushes on the largest opening.
pub(super) fn force(context: &Context<'_>, isolation: &Isolation) -> Force {
    let ledger = opening::enter(&given(isolation), little(context));
    let words = |key: &str, values: &Values| context.say(&format!("isolation.force.{key}"), values);
    let name = isolation
        .opening
        .as_ref()
        .and_then(At::get)
        .and_then(|it| it.name.as_ref()?.get());
    let per_pressure = context.of(&ledger, ids::FORCE_PER_PRESSURE);
    let unit = |dimension| context.units.of(dimension).map_or("", |unit| unit.name);
    let units = Values::new()
        .with("force_unit", per_force(unit(Dimension::ForcePerPressure)))
        .with("pressure_unit", unit(Dimension::Pressure));
    let printed = |id: crate::calc::Key| {
        context
            .of_key(&ledger, id)
            .map(|printed| printed.joined())
            .unwrap_or_default()
    };
    let little = Values::new()
        .with("little", printed(ids::LITTLE_PRESSURE.key()))
        .with("mass", printed(ids::MASS_AT_A_LITTLE.key()));
    let opening = Values::new()
        .with("diameter", printed(ids::OPENING_DIAMETER.key()))
        .with(
            "area",
            ledger
                .get(ids::OPENING_AREA)
                .map(|it| area(context, it))
                .unwrap_or_default(),
        );
    let missing = Values::new().with("who", context.who(Who::Engineer));
    let known = per_pressure.is_some();
    Force {
        head: Head {
            title: words(
                "title",
                &Values::new().with("opening", name.map_or("", |it| it.as_str())),
            ),
            note: String::new(),
        },
        per_pressure: per_pressure
            .map(|printed| printed.value)
            .unwrap_or_default(),
        unit: words("unit", &units),
        little: if known {
            words("little", &little)
        } else {
            String::new()
        },
        opening: if known {
            words("opening", &opening)
        } else {
            words("missing", &missing)
        },
        warning: context.label("isolation.force.warning"),
    }
}

/// `kN` of `kN/bar`.
fn per_force(unit: &'static str) -> &'static str {
    unit.split('/').next().unwrap_or(unit)
}

/// The opening as the job gives it: its area before its diameter.
fn given(isolation: &Isolation) -> opening::Opening {
    let Some(opening) = isolation.opening.as_ref().and_then(At::get) else {
        return opening::Opening::UNKNOWN;
    };
    let area = opening.area.as_ref().and_then(At::both);
    let diameter = opening.diameter.as_ref().and_then(At::both);
    match (area, diameter) {
        (Some((area, place)), _) => opening::Opening::Area(Fact::job(*area, place, Level::Shared)),
        (None, Some((diameter, place))) => {
            opening::Opening::Round(Fact::job(*diameter, place, Level::Shared))
        }
        (None, None) => opening::Opening::UNKNOWN,
    }
}

/// A pressure that a gauge may leave unseen (common practice): 1 psi where the pack prints psi,
/// else 0.1 bar.
fn little(context: &Context<'_>) -> Pressure {
    match context.units.of(Dimension::Pressure) {
        Some(unit) if unit.name == "psi" => Pressure::from_si(unit.to_si(1.0)),
        _ => Pressure::bar(0.1),
    }
}

/// Openings are large: square metres where the pack prints square millimetres.
fn area(context: &Context<'_>, area: Area) -> String {
    let metric = context
        .units
        .of(Dimension::Area)
        .is_some_and(|unit| unit.name == "mm²");
    match unit_named(Dimension::Area, "m²") {
        Some(unit) if metric => unit.print_si(area.si()).joined(),
        _ => context.text(area),
    }
}
