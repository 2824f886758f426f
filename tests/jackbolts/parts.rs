//! What a job says of jackbolts and what follows from it: nut factor, threads, travel, clamped parts. Expected values are
//! worked by hand from sizes and friction.

use studbook::calc::Basis;
use studbook::joint::Origin;
use studbook::methods::jackbolt::ids;

use super::job::{computed, of};
use super::near;

const OF_JACKBOLTS: &str = "    lubricant: grey paste\n    washer_hardness: 45 HRC\n";

/// A paste of which a nut factor alone is known: T = K d F on the jackbolt's own diameter, by hand
/// 0.17 x 20 mm x 66.9 kN = 227.5 N·m. Thread and tip are not told apart, so all of the torque is taken to twist.
#[test]
fn a_nut_factor_alone_gives_the_torque() {
    let factor = (
        OF_JACKBOLTS,
        "    lubricant: factor paste\n    washer_hardness: 45 HRC\n",
    );
    let got = computed(&[factor]);
    near(of(&got, ids::TORQUE) / 227.46, 1.0, 2e-4);
    let arm = 0.17 * 0.020;
    near(
        of(&got, ids::JACKBOLT_LOAD) * arm,
        of(&got, ids::SET_TORQUE),
        1e-9,
    );
    near(
        of(&got, ids::JACKBOLT_THREAD_TORQUE),
        of(&got, ids::JACKBOLT_GREATEST) * arm,
        1e-9,
    );
    // Back: K d - P / π = 3.4 mm - 0.796 mm on each newton.
    near(
        of(&got, ids::BREAK_OUT_LIKELY) / (of(&got, ids::JACKBOLT_LOAD) * 2.6042e-3),
        1.0,
        1e-4,
    );
    assert!(got.ledger.entry(ids::JACKBOLT_FRICTION.key()).is_none());
    assert!(got.plan.jackbolts().is_some());
    let Basis::Formula(formula, _) = &got.ledger.entry(ids::TORQUE.key()).unwrap().basis else {
        panic!("a formula")
    };
    assert_eq!(formula.id, "jackbolts.torque_by_nut_factor");
    assert!(formula.source.contains("PCC-1"));
}

/// Where the file gives friction as well, friction says the torque.
#[test]
fn friction_wins_over_a_nut_factor() {
    let both = (
        "    thread_friction: 0.13                     # coefficient in the thread\n",
        "    thread_friction: 0.13\n    nut_factor: 0.3\n",
    );
    let got = computed(&[both]);
    near(of(&got, ids::TORQUE), of(&computed(&[]), ids::TORQUE), 0.0);
    assert!(got.ledger.entry(ids::JACKBOLT_NUT_FACTOR.key()).is_none());
}

/// What a document says of the torque is what is worked out: the thread's terms, and a disc in place of a ring.
#[test]
fn the_source_of_the_torque_names_thread_and_tip() {
    let got = computed(&[]);
    let Basis::Formula(formula, _) = &got.ledger.entry(ids::TORQUE.key()).unwrap().basis else {
        panic!("a formula")
    };
    assert!(formula.source.contains("ISO 16047") && formula.source.contains("(thread)"));
    assert!(formula.source.contains("disc (tip)"), "{}", formula.source);
}

/// Threads against stripping on 40 mm: by hand 0.875 π x 20 x 40 = 2 199 mm² of a body of 700 MPa, and
/// 0.75 π x 17.29 x 40 = 1 630 mm² of a jackbolt of class 12.9 with 1 100 MPa (ISO 898-1).
#[test]
fn threads_are_held_against_stripping() {
    let got = computed(&[]);
    let load = of(&got, ids::JACKBOLT_GREATEST);
    near(of(&got, ids::BODY_SHEAR_AREA) * 1e6, 2199.0, 1.0);
    near(of(&got, ids::THREAD_SHEAR_AREA) * 1e6, 1630.0, 1.0);
    near(
        of(&got, ids::BODY_SHEAR_SHARE) / (1.732 * load / (2199.0 * 700.0)),
        1.0,
        1e-3,
    );
    near(
        of(&got, ids::THREAD_SHEAR_SHARE) / (1.732 * load / (1630.0 * 1100.0)),
        1.0,
        1e-3,
    );
}

/// Without the engaged length nobody checks the threads, and the pack says for what it waits.
#[test]
fn threads_wait_for_their_length() {
    let length = "    thread_engagement: 40 mm                  # of a jackbolt in the body, the least of the work\n";
    let got = computed(&[(length, "")]);
    let lack = got.ledger.lack(ids::BODY_SHEAR_SHARE);
    assert_eq!(
        lack.map(|lack| lack.key),
        Some("tensioners.*.thread_engagement")
    );
    let got = computed(&[("    body_yield: 700 MPa\n", "")]);
    let lack = got.ledger.lack(ids::BODY_SHEAR_SHARE);
    assert_eq!(lack.map(|lack| lack.key), Some("tensioners.*.body_yield"));
    assert!(got.ledger.get(ids::THREAD_SHEAR_SHARE).is_some());
}

/// Where nobody knows the jackbolts, the travel is that of the softest: 80 mm free on tips of 8 mm in a body of one
/// diameter, against 16 mm on 14 mm in one of 0.3 d.
#[test]
fn the_travel_is_that_of_the_softest_jackbolts() {
    let got = computed(&[
        (
            "    measured_turn: 24 deg                     # one jackbolt, snug to full, the others tight\n",
            "",
        ),
        (
            "    free_length: 16 mm                        # of a jackbolt between body and washer\n",
            "",
        ),
        ("    tip_diameter: 14 mm\n", ""),
    ]);
    // M20: root 225.2 mm², circle 314.2 mm²; M64: circle 3 217 mm²; mm per N of one jackbolt.
    let own =
        |free: f64, tip: f64| ((free + 10.0) / 225.2 + 0.33 * 20.0 / 314.2 + 0.91 / tip) / 205e3;
    let modulus = of(&got, ids::MODULUS) / 1e6;
    let body = 12.0 * 0.7 * 64.0 / (modulus * 3217.0);
    let more = of(&got, ids::JACKBOLT_LOAD) * (own(80.0, 8.0) - own(16.0, 14.0) + body);
    let found = of(&got, ids::TRAVEL_GREATEST) - of(&got, ids::TRAVEL);
    near(found * 1e3 / more, 1.0, 2e-3);
    assert!(of(&got, ids::TURN_ALL_GREATEST) > of(&got, ids::TURN_ALL_LOW));
}

/// Three diameters are ours and are printed as ours; the job may know better.
#[test]
fn the_width_of_the_clamped_parts_has_a_key() {
    let got = computed(&[]);
    near(of(&got, ids::PART_DIAMETER), 3.0 * 0.064, 1e-12);
    let entry = got.ledger.entry(ids::PART_DIAMETER.key()).unwrap();
    assert!(matches!(
        &entry.basis,
        Basis::Input(Origin::Default {
            key: "studs.part_diameter"
        })
    ));
    let wider = (
        "length: 640 mm, grip: 500 mm",
        "length: 640 mm, grip: 500 mm, part_diameter: 240 mm",
    );
    let wide = computed(&[wider]);
    near(of(&wide, ids::PART_DIAMETER), 0.240, 1e-12);
    assert!(of(&wide, ids::PLATE_COMPLIANCE) < of(&got, ids::PLATE_COMPLIANCE));
}
