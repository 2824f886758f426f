//! Figures from outside the program, each with its source, against the formulas of `standards`.
//!
//! A table of `tests/cases/*.yaml` names formulas by their ids and runs them one after another on its inputs. `within`
//! is the tolerance that belongs to the table, never to a row that would otherwise fail: a row that does not reproduce
//! stands in a table of its own that says by how much, and the test holds it to that. Provenance `computed` marks
//! figures that were worked from the same formula apart from this program: regression, not evidence.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test that cannot read its own figures stops"
)]

use std::collections::BTreeSet;

use studbook::standards;

#[path = "cases/harness.rs"]
mod harness;
#[path = "cases/published_tables.rs"]
mod published_tables;

use harness::run;

macro_rules! case_files {
    ($($name:ident),*) => {
        const FILES: &[(&str, &str)] = &[$(
            (stringify!($name), include_str!(concat!("cases/", stringify!($name), ".yaml")))
        ),*];

        $( #[test]
        fn $name() {
            let text = include_str!(concat!("cases/", stringify!($name), ".yaml"));
            let (count, _, failures) = run(stringify!($name), text);
            assert!(failures.is_empty(), "{} of {count} rows:\n{}", failures.len(), failures.join("\n"));
            assert!(count > 0);
        } )*
    };
}

case_files!(
    api_6a,
    iso_898_1,
    jackbolts,
    stud_materials,
    torque_forms,
    turn_of_nut,
    vdi_2230,
    worked_examples
);

/// Formulas that no figure from outside touches, and why. All of them are held against a second version in
/// `tests/sweeps.rs`.
const WITHOUT_FIGURES: &[(&str, &str)] = &[
    (
        "api_6a.thread_torque",
        "a term of the torque, which has figures",
    ),
    ("api_6a.loosening_torque", "no published figure found"),
    ("collar.load", "the torque read backwards"),
    (
        "collar.thread_torque",
        "a term of the torque, which has figures",
    ),
    (
        "collar.loosening_torque",
        "no published figure for flanks of 60 degrees found",
    ),
    ("vdi_2230.load", "the torque read backwards"),
    (
        "vdi_2230.thread_torque",
        "a term of the torque, which has figures",
    ),
    ("vdi_2230.loosening_torque", "no published figure found"),
    (
        "iso_16047.thread_torque",
        "a term of the torque, which has figures",
    ),
    ("jis_b_1083.torque", "no published figure found"),
    ("jis_b_1083.load", "no published figure found"),
    ("jis_b_1083.thread_torque", "no published figure found"),
    ("jis_b_1083.loosening_torque", "no published figure found"),
    ("jis_b_1083.nut_factor", "no published figure found"),
    ("nut_factor.loosening_torque", "no published figure found"),
    (
        "vdi_2230.torsion_modulus",
        "stands inside the load at a share of yield, which has figures",
    ),
    ("vdi_2230.elastic_torsion_modulus", "geometry"),
    ("vdi_2230.shear_stress", "definition"),
    ("vdi_2230.combined_stress", "definition"),
    (
        "vdi_2230.limit_torque",
        "the combined stress read backwards",
    ),
    (
        "vdi_2230.stud_compliance",
        "from memory, no published figure found",
    ),
    (
        "vdi_2230.clamp_diameter",
        "from memory, no published figure found",
    ),
    ("vdi_2230.cone", "from memory, no published figure found"),
    (
        "vdi_2230.clamp_area",
        "from memory, no published figure found",
    ),
    ("vdi_2230.clamp_compliance", "definition"),
    ("asme_b18_2_2.nut_height", "a convention"),
    ("asme_pcc_1.load_of_stretch", "the stretch read backwards"),
    (
        "iso_4759_1.bearing_outer",
        "from memory, no published figure found",
    ),
    ("mechanics.load_of_yield_share", "definition"),
    ("mechanics.load_of_yield_share_on_root", "definition"),
    ("mechanics.root_yield_share", "definition"),
    ("mechanics.pass_torque", "definition"),
    (
        "mechanics.pass_load",
        "load follows torque at constant friction",
    ),
    ("mechanics.opening_area", "geometry"),
    ("mechanics.force_per_pressure_on_area", "definition"),
    (
        "mechanics.equivalent_mass",
        "weight under the standard gravity of ISO 80000-3",
    ),
    ("mechanics.protrusion_near", "geometry"),
    ("mechanics.protrusion_tapped", "geometry"),
    ("mechanics.yield_share", "definition"),
    ("mechanics.combined_yield_share", "definition"),
    ("mechanics.bearing_pressure", "definition"),
    ("mechanics.force_per_pressure", "definition"),
    ("mechanics.cover_force", "definition"),
    ("mechanics.load_of_cover", "definition"),
    ("mechanics.gasket_area", "geometry"),
    ("mechanics.gasket_stress", "definition"),
    ("mechanics.load_of_gasket_stress", "definition"),
    ("mechanics.stored_energy", "definition"),
    ("mechanics.stretch", "definition"),
    ("mechanics.turn", "definition"),
    ("mechanics.load_of_turn", "definition"),
    ("mechanics.protrusion", "geometry"),
    ("mechanics.protrusion_far", "geometry"),
    ("mechanics.engagement", "geometry"),
    ("mechanics.hand_travel", "geometry"),
    ("mechanics.engagement_ratio", "definition"),
    ("mechanics.pump_pressure", "a straight line"),
    ("mechanics.torque_at_pressure", "a straight line"),
    (
        "jackbolts.body_compliance",
        "stands in the joint's compliance, which tests/jackbolts.rs holds against figures",
    ),
    (
        "jackbolts.joint_compliance",
        "held against figures in tests/jackbolts.rs",
    ),
    (
        "jackbolts.jackbolt_compliance",
        "held against figures in tests/jackbolts.rs",
    ),
    (
        "jackbolts.own_compliance_of_turn",
        "the turn read backwards",
    ),
    ("jackbolts.compliance_of_turn", "the turn read backwards"),
    ("jackbolts.jackbolt_load", "definition"),
    ("jackbolts.stud_load", "definition"),
    (
        "jackbolts.deficit_of_turn",
        "held against the simulation in tests/jackbolts.rs",
    ),
    (
        "jackbolts.full_rounds",
        "its figure is rounded up; held against it in tests/jackbolts.rs",
    ),
    (
        "jackbolts.round_turn",
        "the first step, which has figures, from another level",
    ),
    (
        "jackbolts.level_after",
        "held against figures in tests/jackbolts.rs",
    ),
    (
        "jackbolts.release_rounds",
        "its figure is rounded up; held against it in tests/jackbolts.rs",
    ),
    (
        "jackbolts.seized_loss",
        "held against the simulation in tests/jackbolts.rs",
    ),
    (
        "jackbolts.block_left",
        "held against the simulation in tests/jackbolts.rs",
    ),
    ("jackbolts.level_limit", "definition"),
    (
        "jackbolts.finish_rounds",
        "its figure is rounded up; held against it in tests/jackbolts.rs",
    ),
    ("jackbolts.travel", "definition"),
    ("jackbolts.above_body", "geometry"),
    ("jackbolts.above_body_tapped", "geometry"),
    (
        "jackbolts.thread_torque",
        "a term of the torque, which has figures",
    ),
    ("jackbolts.tip_pressure", "definition"),
    ("jackbolts.stress", "definition"),
    ("jackbolts.torsion_modulus", "geometry"),
    ("jackbolts.shear_stress", "definition"),
    ("jackbolts.combined_stress", "definition"),
    ("jackbolts.yield_share", "definition"),
    ("jackbolts.peak_of_yield", "definition"),
    ("jackbolts.peak_of_torque", "definition"),
    (
        "jackbolts.limit_torque",
        "the combined stress read backwards",
    ),
    ("practice.release_turn", "common practice, no source"),
];

#[test]
fn every_formula_has_a_figure_or_a_reason() {
    let mut used = BTreeSet::new();
    for (name, text) in FILES {
        used.append(&mut run(name, text).1);
    }
    let excused: BTreeSet<&str> = WITHOUT_FIGURES.iter().map(|(id, _)| *id).collect();
    let known: BTreeSet<&str> = standards::all_formulas()
        .iter()
        .map(|formula| formula.id)
        .collect();
    let untouched: Vec<_> = known
        .iter()
        .filter(|id| !used.contains(*id) && !excused.contains(*id))
        .collect();
    assert!(
        untouched.is_empty(),
        "neither a figure nor a reason: {untouched:#?}"
    );
    let stale: Vec<_> = excused
        .iter()
        .filter(|id| used.contains(*id) || !known.contains(*id))
        .collect();
    assert!(stale.is_empty(), "excused for nothing: {stale:#?}");
}

/// A harness that passes everything would pass this file too: it must see each kind of fault.
#[test]
fn a_wrong_figure_is_seen() {
    let text = |source: &str, expected: &str, within: &str| {
        format!(
            "left_out: []\ntables:\n  - {{ about: a, source: '{source}', provenance: read, steps: [thread], \
             columns: [figure, thread, '= A_s mm²'], within: {{ A_s: '{within}' }}, rows: [[X, M20, '{expected}']] }}"
        )
    };
    let failures = |text: String| run("made up", &text).2.len();
    assert_eq!(failures(text("a table", "244.79", "rounded")), 0);
    assert_eq!(failures(text("a table", "244.80", "rounded")), 1);
    assert_eq!(failures(text("a table", "245", "rounded")), 0);
    assert_eq!(failures(text("a table", "246", "0.3 %")), 1);
    assert_eq!(failures(text("a table", "246", "0.3 % or 2 mm²")), 0);
    assert_eq!(failures(text("", "245", "rounded")), 1);
    assert_eq!(
        failures(text("a table", "245", "does not reproduce, 0.8 %")),
        1
    );
}
