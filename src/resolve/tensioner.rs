//! Multi-jackbolt tensioners and their drivers: what the job says, strength and sizes looked up, the rest
//! marked as default.

use crate::job::table::Key;
use crate::job::{self, JointKeys, Material, Tighten};
use crate::joint::{Driver, Fact, Level, Tensioner, Tools};
use crate::report::Finding;
use crate::standards::{Thread, jackbolts, materials};
use crate::units::{Count, Length, Quantity, Ratio, Stress};
use crate::yaml::{At, Text};

use super::catalog::Catalog;
use super::layers::Layers;
use super::ranges::number;
use super::studs::{read_thread, row_name};

/// The tensioner on each stud of a joint.
pub(super) fn tensioner(
    layers: &Layers<'_>,
    catalog: &Catalog<'_>,
    found: &mut Vec<Finding>,
) -> Option<Tensioner> {
    let name = layers.value(&job::Studs::tensioner)?;
    let (place, entry) = catalog.tensioner(&name)?;
    let jackbolts = count(entry);
    let papers = Some(entry);
    let thread = thread(&entry.thread, found);
    if let (Some(count), Some(_)) = (entry.jackbolts.get(), jackbolts.get()) {
        found.extend(leaned_on(layers, *count));
    }
    let diameter = thread.get().map(|thread| thread.diameter);
    let grade = job::Tensioner::grade.shared(papers);
    let (yield_strength, modulus) = strength(&grade, &thread, catalog);
    let sized = |key: &Key<job::Tensioner, Length>, share: f64| {
        key.shared(papers).or(|| match diameter {
            Some(diameter) => key.defaulted(Length::from_si(share * diameter.si())),
            None => job::Tensioner::thread.missing(),
        })
    };
    let lubricant = lubricant(layers, entry);
    let paste = lubricant.get().and_then(|name| catalog.lubricant(name));
    Some(Tensioner {
        name,
        place,
        jackbolts,
        free_length: sized(&job::Tensioner::free_length, jackbolts::FREE_LENGTHS[1]),
        tip_diameter: sized(&job::Tensioner::tip_diameter, jackbolts::TIP_DIAMETERS[1]),
        thread,
        grade,
        yield_strength,
        modulus,
        // No key gives the give of the body; its ends are worked through with the others.
        body_share: Fact::computed(Ratio::from_si(jackbolts::BODY_SHARES[1])),
        measured_turn: job::Tensioner::measured_turn.given(papers, Level::Shared),
        lubricant,
        thread_friction: job::Lubricant::thread_friction.shared(paste),
        // Under the tip holds what holds under a nut.
        tip_friction: job::Lubricant::bearing_friction.shared(paste),
        nut_factor: job::Lubricant::nut_factor.shared(paste),
        washer_hardness: job::Tensioner::washer_hardness.shared(papers),
        thread_engagement: job::Tensioner::thread_engagement.shared(papers),
        body_yield: job::Tensioner::body_yield.shared(papers),
        circle: job::Tensioner::circle.shared(papers),
        body_diameter: job::Tensioner::body_diameter.shared(papers),
        body_height: job::Tensioner::body_height.shared(papers),
        across_flats: job::Tensioner::across_flats.shared(papers),
        start_gap: job::Tensioner::start_gap.shared(papers),
        greatest_gap: job::Tensioner::greatest_gap.shared(papers),
        travel: job::Tensioner::travel.shared(papers),
        jackbolt_load: job::Tensioner::jackbolt_load.shared(papers),
        tip_pressure: job::Tensioner::tip_pressure.shared(papers),
        stud_above_body: job::Tensioner::stud_above_body.shared(papers),
    })
}

/// A count outside the range of its key has its finding from there.
fn count(entry: &job::Tensioner) -> Fact<Count> {
    let key = job::Tensioner::jackbolts;
    let count = key.shared(Some(entry));
    let built = |count: &Count| key.field.range.is_none_or(|range| range.holds(count.si()));
    if count.get().is_some_and(built) {
        count
    } else {
        key.missing()
    }
}

fn thread(leaf: &At<Text<16>>, found: &mut Vec<Finding>) -> Fact<Thread> {
    leaf.both()
        .and_then(|(text, place)| read_thread(text.as_str(), place, Level::Shared, found))
        .unwrap_or(job::Tensioner::thread.missing())
}

/// Yield and modulus: the job's own material first, then the program's table for that grade and size.
fn strength(
    grade: &Fact<String>,
    thread: &Fact<Thread>,
    catalog: &Catalog<'_>,
) -> (Fact<Stress>, Fact<Stress>) {
    let material = grade.get().and_then(|name| catalog.material(name));
    let row = match (grade.get(), thread.get()) {
        (Some(name), Some(thread)) => materials::strength(name, thread).ok(),
        _ => None,
    };
    let yield_strength = Material::yield_strength.shared(material).or(|| match row {
        Some(row) => {
            let name = row_name(&row);
            Fact::table(row.yield_strength, name, row.confirmed)
        }
        None => job::Tensioner::grade.missing(),
    });
    (yield_strength, Material::modulus.shared(material))
}

/// The name of the tensioner's own lubricant, else of the joint's.
fn lubricant(layers: &Layers<'_>, entry: &job::Tensioner) -> Fact<String> {
    job::Tensioner::lubricant
        .given(Some(entry), Level::Shared)
        .unwrap_or_else(|| layers.fact(&JointKeys::lubricant))
}

/// Jackbolts beside which the driver leans that a tensioner with `count` of them does not have.
fn leaned_on(layers: &Layers<'_>, count: u32) -> Vec<Finding> {
    let reaction = layers.leaf(&Tighten::reaction);
    let beside = reaction.and_then(|leaf| leaf.value.jackbolts.as_ref().and_then(At::get));
    let ends = beside.into_iter().flat_map(|(first, last)| [first, last]);
    ends.filter_map(At::both)
        .filter_map(|(jackbolt, place)| number("jackbolts", *jackbolt, place, count))
        .collect()
}

/// A multi-spindle driver.
pub(super) fn driver(entry: &job::Driver) -> Driver {
    let entry = Some(entry);
    Driver {
        spindles: job::Driver::spindles.shared(entry),
        spindle_circle: job::Driver::spindle_circle.shared(entry),
        socket: job::Driver::socket.shared(entry),
        socket_depth: job::Driver::socket_depth.shared(entry),
        input: job::Driver::input.shared(entry),
        scatter: job::Driver::scatter.shared(entry),
        reverse_torque: job::Driver::reverse_torque.shared(entry),
        supply: job::Driver::supply.shared(entry),
        flow: job::Driver::flow.shared(entry),
        studs_per_battery: job::Driver::studs_per_battery.shared(entry),
        noise: job::Driver::noise.shared(entry),
        vibration: job::Driver::vibration.shared(entry),
        zone: job::Driver::zone.shared(entry),
        reaction: job::Driver::reaction.shared(entry),
        lift: job::Driver::lift.shared(entry),
    }
}

/// The level of a driver where the job gives none: the usual one, or what its scatter allows.
pub(super) fn usual_level(tools: &Tools) -> Ratio {
    let driver = tools.driver.as_ref().and_then(|tool| tool.driver.as_ref());
    let scatter = driver.and_then(|driver| driver.scatter.value());
    let scatter = scatter.or_else(|| job::Driver::scatter.absent().value());
    let greatest = scatter.map(|scatter| jackbolts::greatest_level(scatter.si()));
    Ratio::from_si(greatest.map_or(jackbolts::USUAL_LEVEL, |level| {
        level.min(jackbolts::USUAL_LEVEL)
    }))
}
