//! Thread geometry, lengths, engagement, protrusion, stretch.

use crate::job::Seat;
use crate::joint::{Fact, Lack, Mechanics, Who};
use crate::standards::{Thread, asme_pcc_1, iso_724, iso_898_1, iso_16047, mechanics, vdi_2230};
use crate::units::{Length, Quantity, Ratio};

use super::ids;
use super::ledger::{Basis, Ledger};
use super::load::form;

/// Enters what the job gives of the studs, and the geometry of the thread.
pub(crate) fn enter(ledger: &mut Ledger, joint: &Mechanics) {
    let studs = &joint.studs;
    ledger.input(ids::COUNT, &studs.count);
    ledger.input(
        ids::DIAMETER,
        &studs.thread.clone().map(|thread| thread.diameter),
    );
    ledger.input(ids::PITCH, &studs.thread.clone().map(|thread| thread.pitch));
    enter_thread(ledger, studs.thread.get());
    ledger.input(ids::YIELD_STRENGTH, &studs.yield_strength);
    ledger.input(ids::MODULUS, &studs.modulus);
    ledger.input(ids::GRIP, &studs.grip);
    ledger.input(ids::LENGTH, &studs.length);
    ledger.input(ids::NUT_HEIGHT, &studs.nut_height);
    ledger.input(ids::ACROSS_FLATS, &studs.across_flats);
    enter_bearing(ledger, joint);
}

/// Geometry of the thread in closed form. A thread that is missing leaves its results missing too;
/// the metric form then only says what they hang on.
fn enter_thread(ledger: &mut Ledger, thread: Option<&Thread>) {
    let size = [("d", ids::DIAMETER.key()), ("P", ids::PITCH.key())];
    let [pitch_diameter, root_diameter, stress_area] = match thread {
        Some(thread) => [
            thread.pitch_diameter_formula(),
            thread.root_diameter_formula(),
            thread.stress_area_formula(),
        ],
        None => [
            &*iso_724::PITCH_DIAMETER_OF,
            &*iso_724::ROOT_DIAMETER_OF,
            &*iso_898_1::STRESS_AREA_OF,
        ],
    };
    ledger.apply(ids::PITCH_DIAMETER, pitch_diameter, &size);
    ledger.apply(ids::ROOT_DIAMETER, root_diameter, &size);
    ledger.apply(ids::TENSILE_AREA, stress_area, &size);
    let root = [("d3", ids::ROOT_DIAMETER.key())];
    ledger.apply(ids::ROOT_AREA, &mechanics::ROOT_AREA_OF, &root);
    ledger.apply(ids::NOMINAL_AREA, &mechanics::NOMINAL_AREA_OF, &size[..1]);
}

fn enter_bearing(ledger: &mut Ledger, joint: &Mechanics) {
    let studs = &joint.studs;
    ledger.input(ids::BEARING_OUTER, &studs.bearing_outer);
    ledger.input(ids::BEARING_INNER, &studs.bearing_inner);
    match &studs.bearing_diameter {
        Some(mean) => ledger.input(ids::BEARING_DIAMETER, mean),
        None => {
            // A nut factor knows no bearing face, but the plates below the nut still do.
            let form = form(joint).bearing_diameter();
            ledger.apply(
                ids::BEARING_DIAMETER,
                form.unwrap_or(&iso_16047::BEARING_DIAMETER_OF),
                &[
                    ("D_o", ids::BEARING_OUTER.key()),
                    ("d_h", ids::BEARING_INNER.key()),
                    ("w_f", ids::ACROSS_FLATS.key()),
                    ("d", ids::DIAMETER.key()),
                ],
            );
        }
    }
}

/// Enters what the load stretches, and the compliances of stud and plates.
pub(crate) fn enter_stretch_and_compliance(ledger: &mut Ledger, joint: &Mechanics) {
    enter_stretch(ledger);
    let thread = joint.studs.thread.get();
    enter_accepted(
        ledger,
        thread.is_some_and(|thread| !thread.series.is_metric()),
    );
    enter_compliances(ledger, joint);
}

/// Enters the energy that one stud stores with its share of the plates.
pub(crate) fn enter_energy(ledger: &mut Ledger) {
    ledger.apply(
        ids::STORED_ENERGY,
        &mechanics::ENERGY_OF,
        &[
            ("F", ids::LOAD.key()),
            ("δ_s", ids::STUD_COMPLIANCE.key()),
            ("δ_c", ids::PLATE_COMPLIANCE.key()),
        ],
    );
}

fn is_tapped(joint: &Mechanics) -> bool {
    joint.studs.seat.value() == Some(Seat::TappedHole)
}

/// Enters the engagement: in a nut its height, in a tapped hole it must be given.
pub(crate) fn enter_engagement(ledger: &mut Ledger, joint: &Mechanics) {
    let fact = if is_tapped(joint) {
        joint.studs.engagement.clone()
    } else {
        joint.studs.nut_height.clone()
    };
    ledger.input(ids::ENGAGEMENT, &fact);
    ledger.apply(
        ids::ENGAGEMENT_RATIO,
        &mechanics::ENGAGEMENT_RATIO_OF,
        &[("l_e", ids::ENGAGEMENT.key()), ("d", ids::DIAMETER.key())],
    );
}

/// Enters how far the stud stands past its nuts.
pub(crate) fn enter_protrusion(ledger: &mut Ledger, joint: &Mechanics) {
    let length = ("l", ids::LENGTH.key());
    let grip = ("L", ids::GRIP.key());
    let nut = ("m", ids::NUT_HEIGHT.key());
    if is_tapped(joint) {
        let engaged = ("l_e", ids::ENGAGEMENT.key());
        ledger.apply(
            ids::NEAR_PROTRUSION,
            &mechanics::PROTRUSION_TAPPED_OF,
            &[length, grip, nut, engaged],
        );
    } else if let Some(far) = &joint.studs.far_protrusion {
        ledger.input(ids::FAR_PROTRUSION, far);
        let far = ("u_far", ids::FAR_PROTRUSION.key());
        ledger.apply(
            ids::NEAR_PROTRUSION,
            &mechanics::PROTRUSION_NEAR_OF,
            &[length, grip, nut, far],
        );
    } else {
        ledger.apply(
            ids::PROTRUSION,
            &mechanics::PROTRUSION_OF,
            &[length, grip, nut],
        );
    }
}

/// The shortest thread past a nut, whichever end it is at.
pub(crate) fn shortest_protrusion(ledger: &Ledger) -> Option<Length> {
    let ends = [ids::PROTRUSION, ids::NEAR_PROTRUSION, ids::FAR_PROTRUSION];
    ends.into_iter()
        .filter_map(|id| ledger.get(id))
        .min_by(|a, b| a.si().total_cmp(&b.si()))
}

/// The longest thread past a nut.
pub(crate) fn longest_protrusion(ledger: &Ledger) -> Option<Length> {
    let ends = [ids::PROTRUSION, ids::NEAR_PROTRUSION, ids::FAR_PROTRUSION];
    ends.into_iter()
        .filter_map(|id| ledger.get(id))
        .max_by(|a, b| a.si().total_cmp(&b.si()))
}

/// In a tapped hole half a diameter takes the place of half a nut, so the length is the same.
fn enter_stretch(ledger: &mut Ledger) {
    ledger.apply(
        ids::EFFECTIVE_LENGTH,
        &asme_pcc_1::EFFECTIVE_LENGTH_OF,
        &[("L", ids::GRIP.key()), ("d", ids::DIAMETER.key())],
    );
    for (id, load) in [
        (ids::STRETCH, ids::LOAD),
        (ids::LEAST_STRETCH, ids::LEAST_LOAD),
        (ids::GREATEST_STRETCH, ids::GREATEST_LOAD),
    ] {
        ledger.apply(
            id,
            &asme_pcc_1::STRETCH_OF,
            &[
                ("F", load.key()),
                ("L_eff", ids::EFFECTIVE_LENGTH.key()),
                ("E", ids::MODULUS.key()),
                ("A_s", ids::TENSILE_AREA.key()),
            ],
        );
    }
}

/// The band that is accepted: inward to the 0.01 mm (0.0005 in) that a depth gauge reads, so that a
/// reading inside it is inside the computed band.
fn enter_accepted(ledger: &mut Ledger, inch: bool) {
    let step = if inch {
        Length::inch(0.0005)
    } else {
        Length::mm(0.01)
    }
    .si();
    let round = |value: Option<Length>, up: bool| {
        value.map(|value| {
            let steps = value.si() / step;
            let steps = if up {
                (steps - 1e-9).ceil()
            } else {
                (steps + 1e-9).floor()
            };
            Length::from_si(steps * step)
        })
    };
    for (id, from, up) in [
        (ids::ACCEPT_STRETCH_LEAST, ids::LEAST_STRETCH, true),
        (ids::ACCEPT_STRETCH_MOST, ids::GREATEST_STRETCH, false),
    ] {
        let rounded = round(ledger.get(from), up);
        let lack = ledger.lack(from).unwrap_or(Lack {
            key: "target",
            who: Who::Engineer,
        });
        ledger.enter(id, rounded.ok_or(lack), Basis::Rounded(from.key()));
    }
}

/// Enters the compliances of stud and plates.
pub(crate) fn enter_compliances(ledger: &mut Ledger, joint: &Mechanics) {
    let far = if is_tapped(joint) {
        vdi_2230::FAR_TAPPED
    } else {
        vdi_2230::FAR_NUT
    };
    ledger.input(ids::FAR_END, &Fact::computed(Ratio::from_si(far)));
    let [grip, diameter, modulus] = [
        ("L", ids::GRIP.key()),
        ("d", ids::DIAMETER.key()),
        ("E", ids::MODULUS.key()),
    ];
    ledger.apply(
        ids::STUD_COMPLIANCE,
        &vdi_2230::STUD_COMPLIANCE_OF,
        &[
            grip,
            diameter,
            modulus,
            ("A_s", ids::TENSILE_AREA.key()),
            ("A_r", ids::ROOT_AREA.key()),
            ("A_n", ids::NOMINAL_AREA.key()),
            ("e_f", ids::FAR_END.key()),
        ],
    );
    enter_plates(ledger, joint);
}

/// Enters the turn of the nut by the compliances of stud and plates.
pub(crate) fn enter_turn(ledger: &mut Ledger) {
    ledger.apply(
        ids::TURN,
        &mechanics::TURN_OF,
        &[
            ("F", ids::LOAD.key()),
            ("δ_s", ids::STUD_COMPLIANCE.key()),
            ("δ_c", ids::PLATE_COMPLIANCE.key()),
            ("P", ids::PITCH.key()),
        ],
    );
}

/// The plates below one stud, as wide as it can use them.
fn enter_plates(ledger: &mut Ledger, joint: &Mechanics) {
    ledger.input(ids::PART_DIAMETER, &joint.studs.part_diameter);
    let face = [
        ("D_o", ids::BEARING_OUTER.key()),
        ("L", ids::GRIP.key()),
        ("D_c", ids::PART_DIAMETER.key()),
        ("D_A", ids::CLAMP_DIAMETER.key()),
        ("d_h", ids::BEARING_INNER.key()),
        ("x", ids::CONE.key()),
        ("E", ids::MODULUS.key()),
        ("A_c", ids::CLAMP_AREA.key()),
    ];
    ledger.apply(ids::CLAMP_DIAMETER, &vdi_2230::CLAMP_DIAMETER_OF, &face);
    ledger.apply(ids::CONE, &vdi_2230::CONE_OF, &face);
    ledger.apply(ids::CLAMP_AREA, &vdi_2230::CLAMP_AREA_OF, &face);
    ledger.apply(ids::PLATE_COMPLIANCE, &vdi_2230::CLAMP_COMPLIANCE_OF, &face);
}
