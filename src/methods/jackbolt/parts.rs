//! What the calculation takes from the tensioner: sizes, strength, friction; and the torque of one jackbolt.

use crate::formula::Formula;
use crate::joint::{Fact, Mechanics, Tensioner, Who};
use crate::standards::symbols::{DIAMETER, PITCH, ROOT_DIAMETER, STRESS_DIAMETER};
use crate::standards::{Thread, iso_898_1, jackbolts, mechanics, vdi_2230};
use crate::units::{Area, Force, Length, Quantity, Torque};

use super::ids;
use crate::calc::{Id, Key, Ledger};

/// A fact of the tensioner, or that no tensioner is named.
fn fact<T: Clone>(tensioner: Option<&Tensioner>, pick: fn(&Tensioner) -> &Fact<T>) -> Fact<T> {
    tensioner.map_or(
        Fact::missing("studs.tensioner", Who::Planner),
        |tensioner| pick(tensioner).clone(),
    )
}

/// Enters sizes, strength and friction of the jackbolts.
pub(super) fn enter(ledger: &mut Ledger, joint: &Mechanics) {
    let tensioner = joint.tensioner.as_deref();
    ledger.input(ids::JACKBOLT_COUNT, &fact(tensioner, |it| &it.jackbolts));
    enter_thread(ledger, &fact(tensioner, |it| &it.thread));
    ledger.input(
        ids::JACKBOLT_YIELD,
        &fact(tensioner, |it| &it.yield_strength),
    );
    ledger.input(ids::JACKBOLT_MODULUS, &fact(tensioner, |it| &it.modulus));
    // A measured turn says what the free length would only make likely.
    if tensioner.is_none_or(|tensioner| tensioner.measured_turn.is_none()) {
        ledger.input(
            ids::JACKBOLT_FREE_LENGTH,
            &fact(tensioner, |it| &it.free_length),
        );
    }
    ledger.input(ids::TIP_DIAMETER, &fact(tensioner, |it| &it.tip_diameter));
    ledger.input(ids::BODY_SHARE, &fact(tensioner, |it| &it.body_share));
    if tensioner.is_some_and(Tensioner::has_only_nut_factor) {
        ledger.input(
            ids::JACKBOLT_NUT_FACTOR,
            &fact(tensioner, |it| &it.nut_factor),
        );
        return;
    }
    ledger.input(
        ids::JACKBOLT_FRICTION,
        &fact(tensioner, |it| &it.thread_friction),
    );
    ledger.input(ids::TIP_FRICTION, &fact(tensioner, |it| &it.tip_friction));
}

/// Geometry of the thread, each value as a row of its standard: the formulas with their own symbols stand with the stud.
fn enter_thread(ledger: &mut Ledger, thread: &Fact<Thread>) {
    ledger.input(
        ids::JACKBOLT_DIAMETER,
        &thread.clone().map(|thread| thread.diameter),
    );
    ledger.input(
        ids::JACKBOLT_PITCH,
        &thread.clone().map(|thread| thread.pitch),
    );
    let geometry = thread.get().map(Geometry::of);
    let length = |pick: fn(&Geometry) -> f64, source| {
        of_standard(thread, geometry.as_ref().map(pick), source)
    };
    let inch = thread
        .get()
        .is_some_and(|thread| !thread.series.is_metric());
    let (profile, area) = if inch {
        ("ASME B1.1-2003", "ASME B1.1-2003")
    } else {
        ("ISO 724:1993", iso_898_1::STRESS_AREA_OF.source)
    };
    let pitch_diameter: Fact<Length> = length(|it| it.pitch_diameter, profile).map(Length::from_si);
    ledger.input(ids::JACKBOLT_PITCH_DIAMETER, &pitch_diameter);
    for (id, fact) in [
        (ids::JACKBOLT_STRESS_AREA, length(|it| it.stress_area, area)),
        (ids::JACKBOLT_ROOT_AREA, length(|it| it.root_area, profile)),
        (
            ids::JACKBOLT_NOMINAL_AREA,
            length(|it| it.nominal_area, profile),
        ),
    ] {
        ledger.input(id, &fact.map(Area::from_si));
    }
    let stress_diameter = length(|it| it.stress_diameter, "VDI 2230-1:2015, R7");
    ledger.input(
        ids::JACKBOLT_STRESS_DIAMETER,
        &stress_diameter.map(Length::from_si),
    );
}

fn of_standard(thread: &Fact<Thread>, value: Option<f64>, source: &str) -> Fact<f64> {
    match (thread, value) {
        (Fact::Known { value: thread, .. }, Some(value)) => {
            let row = format!("{source}, {}", thread.designation);
            Fact::table(value, row, true)
        }
        (Fact::Missing { key, who }, _) => Fact::missing(key, *who),
        (Fact::Known { .. }, None) => Fact::missing("tensioners.*.thread", Who::Engineer),
    }
}

/// A thread in numbers, SI.
struct Geometry {
    pitch_diameter: f64,
    stress_area: f64,
    root_area: f64,
    nominal_area: f64,
    stress_diameter: f64,
}

impl Geometry {
    fn of(thread: &Thread) -> Self {
        let mut known = vec![(DIAMETER, thread.diameter.si()), (PITCH, thread.pitch.si())];
        let mut next = |formula: &crate::formula::Formula| {
            let value = formula.value_with(&known);
            known.push((formula.symbol, value));
            value
        };
        let pitch_diameter = next(thread.pitch_diameter_formula());
        next(thread.root_diameter_formula());
        debug_assert_eq!(thread.root_diameter_formula().symbol, ROOT_DIAMETER);
        debug_assert_eq!(vdi_2230::STRESS_DIAMETER_OF.symbol, STRESS_DIAMETER);
        Self {
            pitch_diameter,
            stress_area: next(thread.stress_area_formula()),
            root_area: next(&mechanics::ROOT_AREA_OF),
            nominal_area: next(&mechanics::NOMINAL_AREA_OF),
            stress_diameter: next(&vdi_2230::STRESS_DIAMETER_OF),
        }
    }
}

/// The keys under which every torque formula of a jackbolt finds its symbols.
fn friction(value: (&'static str, Key)) -> [(&'static str, Key); 8] {
    [
        value,
        ("d_j", ids::JACKBOLT_DIAMETER.key()),
        ("P_j", ids::JACKBOLT_PITCH.key()),
        ("d_2j", ids::JACKBOLT_PITCH_DIAMETER.key()),
        ("µ_j", ids::JACKBOLT_FRICTION.key()),
        ("µ_t", ids::TIP_FRICTION.key()),
        ("d_t", ids::TIP_DIAMETER.key()),
        ("K_j", ids::JACKBOLT_NUT_FACTOR.key()),
    ]
}

/// The formula by friction, or the one by the nut factor where only that is known.
fn form(
    ledger: &Ledger,
    by_friction: &'static Formula,
    by_factor: &'static Formula,
) -> &'static Formula {
    match ledger.entry(ids::JACKBOLT_NUT_FACTOR.key()) {
        Some(_) => by_factor,
        None => by_friction,
    }
}

/// Enters the load of one jackbolt from that of the stud.
pub(super) fn share_load(ledger: &mut Ledger, stud: Id<Force>, jackbolt: Id<Force>) {
    let inputs = [("F", stud.key()), ("n_j", ids::JACKBOLT_COUNT.key())];
    ledger.apply(jackbolt, &jackbolts::JACKBOLT_LOAD_OF, &inputs);
}

/// Enters the load of the stud from that of its jackbolts.
pub(super) fn gather_load(ledger: &mut Ledger, jackbolt: Id<Force>, stud: Id<Force>) {
    let inputs = [("F_j", jackbolt.key()), ("n_j", ids::JACKBOLT_COUNT.key())];
    ledger.apply(stud, &jackbolts::LOAD_OF_JACKBOLTS, &inputs);
}

/// Enters the torque of a jackbolt for its load.
pub(super) fn torque_for(ledger: &mut Ledger, load: Id<Force>, torque: Id<Torque>) {
    let form = form(ledger, &jackbolts::TORQUE_OF, &jackbolts::TORQUE_OF_FACTOR);
    ledger.apply(torque, form, &friction(("F_j", load.key())));
}

/// Enters the part of that torque that twists the jackbolt.
pub(super) fn thread_torque_for(ledger: &mut Ledger, load: Id<Force>, torque: Id<Torque>) {
    let by_factor = &jackbolts::THREAD_TORQUE_OF_FACTOR;
    let form = form(ledger, &jackbolts::THREAD_TORQUE_OF, by_factor);
    ledger.apply(torque, form, &friction(("F_j", load.key())));
}

/// Enters the torque that turns a jackbolt back from its load, at the same friction.
pub(super) fn loosening_for(ledger: &mut Ledger, load: Id<Force>, torque: Id<Torque>) {
    let by_factor = &jackbolts::LOOSENING_OF_FACTOR;
    let form = form(ledger, &jackbolts::LOOSENING_TORQUE_OF, by_factor);
    ledger.apply(torque, form, &friction(("F_j", load.key())));
}

/// Enters the load of a jackbolt for its torque.
pub(super) fn load_for(ledger: &mut Ledger, torque: Id<Torque>, load: Id<Force>) {
    let form = form(ledger, &jackbolts::LOAD_OF, &jackbolts::LOAD_OF_FACTOR);
    ledger.apply(load, form, &friction(("T_j", torque.key())));
}
