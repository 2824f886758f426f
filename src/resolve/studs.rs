//! Studs and nuts: thread and grade looked up, sizes from tables, the rest marked as default.

use crate::joint::{Fact, Level, Studs, Who};
use crate::report::Finding;
use crate::standards::{
    MaterialError, Strength as Row, Thread, ThreadError, asme_b18_2_2, iso_273, iso_4032,
    iso_4759_1, materials, practice,
};
use crate::units::{Count, Length, Quantity, Stress, Temperature};
use crate::yaml::At;

use super::Catalog;
use super::layers::{Layers, fact, nested};

/// More fasteners than this have no printed order.
pub(super) const MOST_STUDS: u32 = 400;

pub(super) fn studs(layers: &Layers<'_>, catalog: &Catalog<'_>, found: &mut Vec<Finding>) -> Studs {
    let thread = thread(layers, found);
    let grade = layers.text("studs.grade", Who::Engineer, nested!(studs.grade));
    let material = grade.get().and_then(|name| catalog.material(name));
    let strength = strength(layers, &thread, &grade, material, found);
    let length = |key: &'static str, leaf: Fact<Length>, default: Option<Fact<Length>>| {
        leaf.or(|| default.unwrap_or(Fact::missing(key, Who::Engineer)))
    };
    let size = thread.get();
    let nut_height = fact!(layers, studs.nut_height, Engineer);
    let across = fact!(layers, studs.across_flats, Engineer);
    let across_flats = length("studs.across_flats", across, size.and_then(across_flats));
    Studs {
        count: count(layers, found),
        nut_grade: layers.text("studs.nut_grade", Who::Engineer, nested!(studs.nut_grade)),
        yield_strength: strength.yield_strength,
        tensile_strength: strength.tensile_strength,
        modulus: strength.modulus,
        highest_temperature: strength.highest_temperature,
        nut_pairs: nut_pairs(material),
        length: fact!(layers, studs.length, Planner),
        grip: fact!(layers, studs.grip, Planner),
        // One diameter, as PCC-1's stretch formula takes the nut (E-3).
        nut_height: length(
            "studs.nut_height",
            nut_height,
            size.map(|thread| Fact::default(thread.diameter, "studs.nut_height")),
        ),
        bearing_outer: fact!(layers, studs.bearing_outer, Engineer)
            .or(|| bearing_outer(&across_flats)),
        bearing_inner: fact!(layers, studs.bearing_inner, Engineer).or(|| bearing_inner(size)),
        bearing_diameter: layers.given(nested!(studs.bearing_diameter)),
        across_flats,
        washers: fact!(layers, studs.washers, Planner),
        condition: fact!(layers, studs.condition, Planner),
        seat: layers
            .fact("seat", Who::Planner, |keys| keys.seat.as_ref())
            .or(|| Fact::default(crate::job::Seat::ThroughBolts, "seat")),
        hole_material: fact!(layers, studs.hole_material, Engineer),
        engagement: fact!(layers, studs.engagement, Engineer),
        far_protrusion: layers.given(nested!(studs.far_protrusion)),
        bolt_circle: fact!(layers, studs.bolt_circle, Planner),
        flange_diameter: fact!(layers, studs.flange_diameter, Planner),
        part_diameter: fact!(layers, studs.part_diameter, Engineer).or(|| part_diameter(size)),
        flange_thickness: fact!(layers, studs.flange_thickness, Planner),
        tensioner: layers
            .leaf(nested!(studs.tensioner))
            .map(|leaf| leaf.value.as_str().to_owned()),
        thread,
        grade,
    }
}

fn count(layers: &Layers<'_>, found: &mut Vec<Finding>) -> Fact<Count> {
    let Some(leaf) = layers.leaf(nested!(studs.count)) else {
        return Fact::missing("studs.count", Who::Planner);
    };
    if *leaf.value == 0 || *leaf.value > MOST_STUDS {
        found.push(
            Finding::job("job.count", leaf.place)
                .with("count", leaf.value.to_string())
                .with("most", MOST_STUDS.to_string()),
        );
        return Fact::missing("studs.count", Who::Planner);
    }
    Fact::job(
        Count::from_si(f64::from(*leaf.value)),
        leaf.place,
        leaf.level,
    )
}

fn thread(layers: &Layers<'_>, found: &mut Vec<Finding>) -> Fact<Thread> {
    let Some(leaf) = layers.leaf(nested!(studs.thread)) else {
        return Fact::missing("studs.thread", Who::Planner);
    };
    match Thread::parse(leaf.value.as_str()) {
        Ok(thread) => Fact::job(thread, leaf.place, leaf.level),
        Err(error) => {
            found.push(
                Finding::job("L16", leaf.place)
                    .with("text", leaf.value.as_str())
                    .with("known", alternatives(&error).join(", ")),
            );
            Fact::missing("studs.thread", Who::Planner)
        }
    }
}

/// What could be written instead.
pub(super) fn alternatives(error: &ThreadError) -> Vec<String> {
    match error {
        ThreadError::Unreadable { .. } => Vec::new(),
        ThreadError::UnknownSize { near, .. } => near.clone(),
        ThreadError::UnknownPitch { known, .. } | ThreadError::PitchMissing { known, .. } => {
            known.clone()
        }
    }
}

struct Strength {
    yield_strength: Fact<Stress>,
    tensile_strength: Fact<Stress>,
    modulus: Fact<Stress>,
    highest_temperature: Fact<Temperature>,
}

/// The job's own material first, then the program's table for that grade and diameter.
fn strength(
    layers: &Layers<'_>,
    thread: &Fact<Thread>,
    grade: &Fact<String>,
    material: Option<&crate::job::Material>,
    found: &mut Vec<Finding>,
) -> Strength {
    let own = |leaf: Option<&At<Stress>>, key| super::plan::fact_of(leaf, key, Who::Engineer);
    let table = row(layers, thread, grade, material, found);
    let tabulated = |value: Option<Stress>, key| match (&table, value) {
        (Some(row), Some(value)) => Fact::table(value, row_name(row), row.confirmed),
        _ => Fact::missing(key, Who::Engineer),
    };
    let entry = |pick: fn(&crate::job::Material) -> Option<&At<Stress>>| material.and_then(pick);
    Strength {
        yield_strength: own(
            entry(|m| m.yield_strength.as_ref()),
            "materials.*.yield_strength",
        )
        .or(|| {
            tabulated(
                table.as_ref().map(|row| row.yield_strength),
                "materials.*.yield_strength",
            )
        }),
        tensile_strength: own(
            entry(|m| m.tensile_strength.as_ref()),
            "materials.*.tensile_strength",
        )
        .or(|| {
            tabulated(
                table.as_ref().map(|row| row.tensile),
                "materials.*.tensile_strength",
            )
        }),
        modulus: own(entry(|m| m.modulus.as_ref()), "materials.*.modulus")
            .or(|| Fact::default(Stress::mpa(205_000.0), "materials.*.modulus")),
        highest_temperature: super::plan::fact_of(
            material.and_then(|entry| entry.highest_temperature.as_ref()),
            "materials.*.highest_temperature",
            Who::Engineer,
        )
        .or(|| match grade.get() {
            Some(name) if is_quenched_and_tempered(name) => Fact::default(
                Temperature::celsius(400.0),
                "materials.*.highest_temperature",
            ),
            _ => Fact::missing("materials.*.highest_temperature", Who::Engineer),
        }),
    }
}

/// The row of a grade and diameter. A grade that nobody knows is an error, with a thread or without,
/// unless the job gives its strength.
fn row(
    layers: &Layers<'_>,
    thread: &Fact<Thread>,
    grade: &Fact<String>,
    material: Option<&crate::job::Material>,
    found: &mut Vec<Finding>,
) -> Option<Row> {
    let name = grade.get()?;
    let error = match thread.get() {
        Some(thread) => match materials::strength(name, thread) {
            Ok(row) => return Some(row),
            Err(error) => Some(error),
        },
        // Any size tells whether the grade is known; whether it is listed for the size is not asked.
        None => Thread::parse("M24")
            .ok()
            .and_then(|thread| materials::strength(name, &thread).err())
            .filter(|error| !matches!(error, MaterialError::OutsideBands { .. })),
    };
    let given = material.is_some_and(|entry| entry.yield_strength.is_some());
    found.extend(
        error
            .filter(|_| !given)
            .map(|error| unknown_grade(layers, name, &error)),
    );
    None
}

/// `ASTM A193, 2.5 in < d ≤ 4 in`.
pub(super) fn row_name(row: &Row) -> String {
    if row.band.is_empty() {
        row.source.to_owned()
    } else {
        format!("{}, {}", row.source, row.band)
    }
}

fn unknown_grade(layers: &Layers<'_>, name: &str, error: &MaterialError) -> Finding {
    let place = layers
        .leaf(nested!(studs.grade))
        .map_or(layers.place(), |leaf| leaf.place);
    let (fault, near) = match error {
        MaterialError::UnknownGrade { near, .. } => ("unknown", near.clone()),
        MaterialError::Ambiguous { choices, .. } => ("ambiguous", choices.clone()),
        MaterialError::OutsideBands { bands, .. } => ("size", bands.clone()),
    };
    Finding::job("D12", place)
        .with("material", name)
        .with("fault", fault)
        .with("near", near.join(", "))
}

fn nut_pairs(material: Option<&crate::job::Material>) -> Fact<Vec<String>> {
    let list = material
        .and_then(|entry| entry.nuts.as_ref())
        .and_then(At::both);
    match list {
        Some((nuts, place)) => {
            let names = nuts
                .iter()
                .filter_map(At::get)
                .map(|name| name.as_str().to_owned())
                .collect();
            Fact::job(names, place, Level::Shared)
        }
        None => Fact::missing("materials.*.nuts", Who::Engineer),
    }
}

/// 400 °C for common quenched and tempered chromium-molybdenum studs (common practice, from
/// memory); the owner's table governs.
fn is_quenched_and_tempered(grade: &str) -> bool {
    let folded: String = grade
        .chars()
        .filter(|sign| sign.is_alphanumeric())
        .collect();
    ["B7", "B7M", "B16", "L7", "L7M", "42CrMo4", "25CrMo4"]
        .iter()
        .any(|name| folded.ends_with(name))
}

/// Metric nuts by ISO 4032, inch nuts as heavy hexagons.
fn across_flats(thread: &Thread) -> Option<Fact<Length>> {
    if thread.series.is_metric() {
        return iso_4032::nut(thread.diameter)
            .map(|nut| Fact::table(nut.across_flats, iso_4032::SOURCE, true));
    }
    let flats = asme_b18_2_2::ACROSS_FLATS_OF.value(&[thread.diameter.si()]);
    Some(Fact::table(Length::from_si(flats), "ASME B18.2.2", true))
}

/// The bearing face of a chamfered nut; a hardened washer is wider, but the nut turns on this face.
fn bearing_outer(across_flats: &Fact<Length>) -> Fact<Length> {
    match across_flats.value() {
        Some(flats) => {
            let outer = iso_4759_1::BEARING_OUTER_OF.value(&[flats.si()]);
            Fact::default(Length::from_si(outer), "studs.bearing_outer")
        }
        None => Fact::missing("studs.bearing_outer", Who::Engineer),
    }
}

fn part_diameter(thread: Option<&Thread>) -> Fact<Length> {
    match thread {
        Some(thread) => Fact::default(
            Length::from_si(practice::PART_DIAMETERS * thread.diameter.si()),
            "studs.part_diameter",
        ),
        None => Fact::missing("studs.thread", Who::Planner),
    }
}

/// Metric holes by the medium series of ISO 273; flange holes for inch studs are commonly 1/8 in
/// wider than the stud (common practice, no source).
fn bearing_inner(thread: Option<&Thread>) -> Fact<Length> {
    const KEY: &str = "studs.bearing_inner";
    let Some(thread) = thread else {
        return Fact::missing(KEY, Who::Engineer);
    };
    if !thread.series.is_metric() {
        let hole = thread.diameter.si() + Length::inch(0.125).si();
        return Fact::default(Length::from_si(hole), KEY);
    }
    match iso_273::medium_hole(thread.diameter) {
        Some((hole, confirmed)) => Fact::table(hole, iso_273::SOURCE, confirmed),
        None => Fact::missing(KEY, Who::Engineer),
    }
}
