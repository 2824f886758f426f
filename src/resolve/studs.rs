//! Studs and nuts: thread and grade looked up, sizes from tables, the rest marked as default.

use crate::job::table::Key;
use crate::job::{self, JointKeys, Material};
use crate::joint::{Fact, Level, Studs};
use crate::report::{Finding, Place};
use crate::standards::{
    MaterialError, Strength as Row, Thread, ThreadError, asme_b18_2_2, iso_273, iso_4032,
    iso_4759_1, materials, practice,
};
use crate::units::{Count, Length, Quantity, Stress, Temperature};

use super::catalog::Catalog;
use super::layers::Layers;

/// More fasteners than this have no printed order.
const MOST_STUDS: u32 = 400;

pub(super) fn studs(layers: &Layers<'_>, catalog: &Catalog<'_>, found: &mut Vec<Finding>) -> Studs {
    let thread = thread(layers, found);
    let grade = layers.fact(&job::Studs::grade);
    let material = grade.get().and_then(|name| catalog.material(name));
    let strength = strength(layers, &thread, &grade, material, found);
    let size = thread.get();
    let across_flats = layers.fact(&job::Studs::across_flats).or(|| {
        size.and_then(across_flats)
            .unwrap_or(job::Studs::across_flats.missing())
    });
    Studs {
        count: count(layers, found),
        nut_grade: layers.fact(&job::Studs::nut_grade),
        yield_strength: strength.yield_strength,
        tensile_strength: strength.tensile_strength,
        modulus: strength.modulus,
        highest_temperature: strength.highest_temperature,
        nut_pairs: Material::nuts.shared(material),
        length: layers.fact(&job::Studs::length),
        grip: layers.fact(&job::Studs::grip),
        // One diameter, as PCC-1's stretch formula takes the nut (E-3).
        nut_height: layers
            .fact(&job::Studs::nut_height)
            .or(|| job::Studs::nut_height.default_or_missing(size.map(|thread| thread.diameter))),
        bearing_outer: layers
            .fact(&job::Studs::bearing_outer)
            .or(|| job::Studs::bearing_outer.default_or_missing(bearing_outer(&across_flats))),
        bearing_inner: layers
            .fact(&job::Studs::bearing_inner)
            .or(|| bearing_inner(size)),
        bearing_diameter: layers.given(&job::Studs::bearing_diameter),
        across_flats,
        washers: layers.fact(&job::Studs::washers),
        condition: layers.fact(&job::Studs::condition),
        seat: layers.fact(&JointKeys::seat),
        hole_material: layers.fact(&job::Studs::hole_material),
        engagement: layers.fact(&job::Studs::engagement),
        far_protrusion: layers.given(&job::Studs::far_protrusion),
        bolt_circle: layers.fact(&job::Studs::bolt_circle),
        flange_diameter: layers.fact(&job::Studs::flange_diameter),
        part_diameter: layers
            .fact(&job::Studs::part_diameter)
            .or(|| part_diameter(size)),
        flange_thickness: layers.fact(&job::Studs::flange_thickness),
        tensioner: layers.value(&job::Studs::tensioner),
        thread,
        grade,
    }
}

fn count(layers: &Layers<'_>, found: &mut Vec<Finding>) -> Fact<Count> {
    let Some(leaf) = layers.leaf(&job::Studs::count) else {
        return job::Studs::count.missing();
    };
    if *leaf.value == 0 || *leaf.value > MOST_STUDS {
        found.push(
            Finding::job("job.count", leaf.place)
                .with("count", leaf.value.to_string())
                .with("most", MOST_STUDS.to_string()),
        );
        return job::Studs::count.missing();
    }
    layers.fact(&job::Studs::count)
}

fn thread(layers: &Layers<'_>, found: &mut Vec<Finding>) -> Fact<Thread> {
    layers
        .leaf(&job::Studs::thread)
        .and_then(|leaf| read_thread(leaf.value.as_str(), leaf.place, leaf.level, found))
        .unwrap_or(job::Studs::thread.missing())
}

/// A thread as the standard writes it; a finding names what could be written instead.
pub(super) fn read_thread(
    text: &str,
    place: Place,
    level: Level,
    found: &mut Vec<Finding>,
) -> Option<Fact<Thread>> {
    let error = match Thread::parse(text) {
        Ok(thread) => return Some(Fact::job(thread, place, level)),
        Err(error) => error,
    };
    let finding = Finding::job("L16", place)
        .with("text", text)
        .with("known", alternatives(&error).join(", "));
    found.push(finding);
    None
}

/// What could be written instead.
fn alternatives(error: &ThreadError) -> Vec<String> {
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
    material: Option<&Material>,
    found: &mut Vec<Finding>,
) -> Strength {
    let row = row(layers, thread, grade, material, found);
    let tabulated = |key: &Key<Material, Stress>, pick: fn(&Row) -> Stress| match &row {
        Some(row) => Fact::table(pick(row), row_name(row), row.confirmed),
        None => key.missing(),
    };
    let warmest = grade
        .get()
        .filter(|name| is_quenched_and_tempered(name))
        .map(|_| Temperature::celsius(400.0));
    Strength {
        yield_strength: Material::yield_strength
            .shared(material)
            .or(|| tabulated(&Material::yield_strength, |row| row.yield_strength)),
        tensile_strength: Material::tensile_strength
            .shared(material)
            .or(|| tabulated(&Material::tensile_strength, |row| row.tensile)),
        modulus: Material::modulus.shared(material),
        highest_temperature: Material::highest_temperature
            .shared(material)
            .or(|| Material::highest_temperature.default_or_missing(warmest)),
    }
}

/// The row of a grade and diameter. A grade that nobody knows is an error, with a thread or without,
/// unless the job gives its strength.
fn row(
    layers: &Layers<'_>,
    thread: &Fact<Thread>,
    grade: &Fact<String>,
    material: Option<&Material>,
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
        .leaf(&job::Studs::grade)
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
fn bearing_outer(across_flats: &Fact<Length>) -> Option<Length> {
    let flats = across_flats.value()?;
    let outer = iso_4759_1::BEARING_OUTER_OF.value(&[flats.si()]);
    Some(Length::from_si(outer))
}

fn part_diameter(thread: Option<&Thread>) -> Fact<Length> {
    match thread {
        Some(thread) => job::Studs::part_diameter.defaulted(Length::from_si(
            practice::PART_DIAMETERS * thread.diameter.si(),
        )),
        None => job::Studs::thread.missing(),
    }
}

/// Metric holes by the medium series of ISO 273; flange holes for inch studs are commonly 1/8 in
/// wider than the stud (common practice, no source).
fn bearing_inner(thread: Option<&Thread>) -> Fact<Length> {
    let key = job::Studs::bearing_inner;
    let Some(thread) = thread else {
        return key.missing();
    };
    if !thread.series.is_metric() {
        let hole = thread.diameter.si() + Length::inch(0.125).si();
        return key.defaulted(Length::from_si(hole));
    }
    match iso_273::medium_hole(thread.diameter) {
        Some((hole, confirmed)) => Fact::table(hole, iso_273::SOURCE, confirmed),
        None => key.missing(),
    }
}
