//! Multi-jackbolt tensioners and their drivers: what the job says, strength and sizes looked up, the rest
//! marked as default.

use crate::job;
use crate::joint::{Driver, Fact, Level, Tensioner, Tools, Who};
use crate::report::Finding;
use crate::standards::{Thread, jackbolts, materials};
use crate::units::{Count, Length, Quantity, Ratio, Stress};
use crate::yaml::{At, Text};

use super::Catalog;
use super::layers::{Layers, nested};
use super::plan::fact_of;
use super::ranges::number;

/// Spread from spindle to spindle where nobody knows it (common practice, the wide end).
const USUAL_SCATTER: f64 = 0.15;

/// A value from the papers of a tensioner, under its own name.
macro_rules! of_papers {
    ($entry:ident . $field:ident) => {
        fact_of(
            $entry.$field.as_ref(),
            concat!("tensioners.*.", stringify!($field)),
            Who::Engineer,
        )
    };
}

/// The tensioner on each stud of a joint.
pub(super) fn tensioner(
    layers: &Layers<'_>,
    catalog: &Catalog<'_>,
    found: &mut Vec<Finding>,
) -> Option<Tensioner> {
    let name = layers.leaf(nested!(studs.tensioner))?.value.as_str();
    let (place, entry) = catalog.tensioner(name)?;
    let thread = thread(&entry.thread, found);
    found.extend(leaned_on(layers, entry.jackbolts.get().copied()));
    let diameter = thread.get().map(|thread| thread.diameter);
    let grade = text(entry.grade.as_ref(), "tensioners.*.grade", Who::Engineer);
    let (yield_strength, modulus) = strength(&grade, &thread, catalog);
    let sized = |leaf: Option<&At<Length>>, key, share: f64| {
        fact_of(leaf, key, Who::Engineer).or(|| match diameter {
            Some(diameter) => Fact::default(Length::from_si(share * diameter.si()), key),
            None => Fact::missing("tensioners.*.thread", Who::Engineer),
        })
    };
    let (lubricant, [thread_friction, tip_friction, nut_factor]) =
        lubricant(layers, catalog, entry);
    let measured = entry.measured_turn.as_ref().and_then(At::both);
    Some(Tensioner {
        name: name.to_owned(),
        place,
        jackbolts: count(&entry.jackbolts),
        free_length: sized(
            entry.free_length.as_ref(),
            "tensioners.*.free_length",
            jackbolts::FREE_LENGTHS[1],
        ),
        tip_diameter: sized(
            entry.tip_diameter.as_ref(),
            "tensioners.*.tip_diameter",
            jackbolts::TIP_DIAMETERS[1],
        ),
        thread,
        grade,
        yield_strength,
        modulus,
        // No key gives the give of the body; its ends are worked through with the others.
        body_share: Fact::computed(Ratio::from_si(jackbolts::BODY_SHARES[1])),
        measured_turn: measured.map(|(turn, place)| Fact::job(*turn, place, Level::Shared)),
        lubricant,
        thread_friction,
        tip_friction,
        nut_factor,
        washer_hardness: text(
            entry.washer_hardness.as_ref(),
            "tensioners.*.washer_hardness",
            Who::ToolStore,
        ),
        thread_engagement: of_papers!(entry.thread_engagement),
        body_yield: of_papers!(entry.body_yield),
        circle: of_papers!(entry.circle),
        body_diameter: of_papers!(entry.body_diameter),
        body_height: of_papers!(entry.body_height),
        across_flats: of_papers!(entry.across_flats),
        start_gap: of_papers!(entry.start_gap),
        greatest_gap: of_papers!(entry.greatest_gap),
        travel: of_papers!(entry.travel),
        jackbolt_load: of_papers!(entry.jackbolt_load),
        tip_pressure: of_papers!(entry.tip_pressure),
        stud_above_body: of_papers!(entry.stud_above_body),
    })
}

fn text<const MAX: usize>(
    leaf: Option<&At<Text<MAX>>>,
    key: &'static str,
    who: Who,
) -> Fact<String> {
    match leaf.and_then(At::both) {
        Some((text, place)) => Fact::job(text.as_str().to_owned(), place, Level::Shared),
        None => Fact::missing(key, who),
    }
}

/// A count that is not built has its finding from the ranges.
fn count(leaf: &At<u32>) -> Fact<Count> {
    match leaf.both() {
        Some((count, place)) if is_built(*count) => {
            Fact::job(Count::from_si(f64::from(*count)), place, Level::Shared)
        }
        _ => Fact::missing("tensioners.*.jackbolts", Who::Engineer),
    }
}

/// Whether tensioners with so many jackbolts are built.
pub(super) fn is_built(count: u32) -> bool {
    usize::try_from(count).is_ok_and(|count| (jackbolts::FEWEST..=jackbolts::MOST).contains(&count))
}

fn thread(leaf: &At<Text<16>>, found: &mut Vec<Finding>) -> Fact<Thread> {
    const KEY: &str = "tensioners.*.thread";
    let Some((text, place)) = leaf.both() else {
        return Fact::missing(KEY, Who::Engineer);
    };
    match Thread::parse(text.as_str()) {
        Ok(thread) => Fact::job(thread, place, Level::Shared),
        Err(error) => {
            let known = super::studs::alternatives(&error).join(", ");
            let finding = Finding::job("L16", place)
                .with("text", text.as_str())
                .with("known", known);
            found.push(finding);
            Fact::missing(KEY, Who::Engineer)
        }
    }
}

/// Yield and modulus: the job's own material first, then the program's table for that grade and size.
fn strength(
    grade: &Fact<String>,
    thread: &Fact<Thread>,
    catalog: &Catalog<'_>,
) -> (Fact<Stress>, Fact<Stress>) {
    let material = grade.get().and_then(|name| catalog.material(name));
    let own = |leaf: Option<&At<Stress>>, key| fact_of(leaf, key, Who::Engineer);
    let row = match (grade.get(), thread.get()) {
        (Some(name), Some(thread)) => materials::strength(name, thread).ok(),
        _ => None,
    };
    let yield_strength = own(
        material.and_then(|entry| entry.yield_strength.as_ref()),
        "tensioners.*.grade",
    )
    .or(|| match row {
        Some(row) => {
            let name = super::studs::row_name(&row);
            Fact::table(row.yield_strength, name, row.confirmed)
        }
        None => Fact::missing("tensioners.*.grade", Who::Engineer),
    });
    let modulus = own(
        material.and_then(|entry| entry.modulus.as_ref()),
        "materials.*.modulus",
    )
    .or(|| Fact::default(Stress::mpa(205_000.0), "materials.*.modulus"));
    (yield_strength, modulus)
}

/// The name of a lubricant, its friction in the thread and under the tip, its nut factor.
type Friction = (Fact<String>, [Fact<Ratio>; 3]);

/// The tensioner's own lubricant, else that of the joint. Under the tip holds what holds under a nut.
fn lubricant(layers: &Layers<'_>, catalog: &Catalog<'_>, entry: &job::Tensioner) -> Friction {
    let own = entry.lubricant.as_ref().and_then(At::both);
    let name = match own {
        Some((name, place)) => Fact::job(name.as_str().to_owned(), place, Level::Shared),
        None => layers.text("lubricant", Who::Planner, |keys| keys.lubricant.as_ref()),
    };
    let paste = name.get().and_then(|name| catalog.lubricant(name));
    let friction = |leaf: Option<&At<Ratio>>, key: &'static str| fact_of(leaf, key, Who::Engineer);
    let thread = friction(
        paste.and_then(|paste| paste.thread_friction.as_ref()),
        "lubricants.*.thread_friction",
    );
    let tip = friction(
        paste.and_then(|paste| paste.bearing_friction.as_ref()),
        "lubricants.*.bearing_friction",
    );
    let factor = friction(
        paste.and_then(|paste| paste.nut_factor.as_ref()),
        "lubricants.*.nut_factor",
    );
    (name, [thread, tip, factor])
}

/// Jackbolts beside which the driver leans that the tensioner does not have; a count that is not built is found elsewhere.
fn leaned_on(layers: &Layers<'_>, count: Option<u32>) -> Vec<Finding> {
    let Some(count) = count.filter(|count| is_built(*count)) else {
        return Vec::new();
    };
    let reaction = layers.leaf(nested!(tighten.reaction));
    let beside = reaction.and_then(|leaf| leaf.value.jackbolts.as_ref().and_then(At::get));
    let ends = beside.into_iter().flat_map(|(first, last)| [first, last]);
    ends.filter_map(At::both)
        .filter_map(|(jackbolt, place)| number("jackbolts", *jackbolt, place, count))
        .collect()
}

/// A multi-spindle driver.
pub(super) fn driver(entry: &job::Driver) -> Driver {
    macro_rules! fact {
        ($field:ident) => {
            fact_of(
                entry.$field.as_ref(),
                concat!("tools.*.driver.", stringify!($field)),
                Who::ToolStore,
            )
        };
    }
    macro_rules! words {
        ($field:ident) => {
            text(
                entry.$field.as_ref(),
                concat!("tools.*.driver.", stringify!($field)),
                Who::ToolStore,
            )
        };
    }
    let number = |leaf: Option<&At<u32>>, key: &'static str| match leaf.and_then(At::both) {
        Some((count, place)) => Fact::job(Count::from_si(f64::from(*count)), place, Level::Shared),
        None => Fact::missing(key, Who::ToolStore),
    };
    Driver {
        spindles: number(Some(&entry.spindles), "tools.*.driver.spindles"),
        spindle_circle: fact!(spindle_circle),
        socket: fact!(socket),
        socket_depth: fact!(socket_depth),
        input: fact!(input),
        scatter: fact!(scatter)
            .or(|| Fact::default(Ratio::from_si(USUAL_SCATTER), "tools.*.driver.scatter")),
        reverse_torque: fact!(reverse_torque),
        supply: fact!(supply),
        flow: fact!(flow),
        studs_per_battery: number(
            entry.studs_per_battery.as_ref(),
            "tools.*.driver.studs_per_battery",
        ),
        noise: fact!(noise),
        vibration: fact!(vibration),
        zone: words!(zone),
        reaction: words!(reaction),
        lift: words!(lift),
    }
}

/// The level of a driver where the job gives none: the usual one, or what its scatter allows.
pub(super) fn usual_level(tools: &Tools) -> Fact<Ratio> {
    let driver = tools.driver.as_ref().and_then(|tool| tool.driver.as_ref());
    let scatter = driver.and_then(|driver| driver.scatter.value());
    let greatest = jackbolts::greatest_level(scatter.map_or(USUAL_SCATTER, Quantity::si));
    Fact::default(
        Ratio::from_si(jackbolts::USUAL_LEVEL.min(greatest)),
        "tighten.driver_level",
    )
}
