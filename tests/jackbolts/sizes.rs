//! Springs from sizes, by the formulas of the program: studs at 300 MPa on the stress area, E 205 GPa.

use studbook::formula::Symbol;
use studbook::methods::jackbolt::Springs;
use studbook::standards::{
    Thread, iso_898_1, jackbolts, mechanics, practice, symbols as s, vdi_2230,
};
use studbook::units::Quantity;

use super::near;

/// Sizes in mm.
pub(crate) struct Sizes {
    pub(crate) stud: f64,
    pub(crate) length: f64,
    pub(crate) count: usize,
    pub(crate) jackbolt: f64,
    /// In diameters of the jackbolt.
    pub(crate) free_length: f64,
    pub(crate) tapped: bool,
}

/// The washer is two diameters wide, its hole 1.06 of them, the parts three; body and tip as nobody gave them.
pub(crate) fn sized(sizes: &Sizes) -> Springs {
    // Above M64 the pitch must be written; studs of this trade have 6 mm.
    let thread = |size: f64| {
        let pitch = if size > 64.0 { "x6" } else { "" };
        Thread::parse(&format!("M{size}{pitch}")).unwrap()
    };
    let (stud, jackbolt) = (thread(sizes.stud), thread(sizes.jackbolt));
    let d = stud.diameter.si();
    let mut known: Vec<(Symbol, f64)> = stud.inputs().to_vec();
    known.extend([
        (s::GRIP, sizes.length * 1e-3),
        (s::MODULUS, 205e9),
        (s::FAR_END, if sizes.tapped { 0.33 } else { 0.4 }),
        (s::BODY_SHARE, jackbolts::BODY_SHARES[1]),
        (s::BEARING_OUTER, jackbolts::WASHER_DIAMETERS * d),
        (s::HOLE, jackbolts::HOLE_DIAMETERS * d),
        (s::PART_DIAMETER, practice::PART_DIAMETERS * d),
    ]);
    for formula in [
        stud.root_diameter_formula(),
        &iso_898_1::STRESS_AREA_OF,
        &mechanics::ROOT_AREA_OF,
        &mechanics::NOMINAL_AREA_OF,
        &vdi_2230::STUD_COMPLIANCE_OF,
        &vdi_2230::CLAMP_DIAMETER_OF,
        &vdi_2230::CONE_OF,
        &vdi_2230::CLAMP_AREA_OF,
        &vdi_2230::CLAMP_COMPLIANCE_OF,
        &jackbolts::BODY_COMPLIANCE_OF,
        &jackbolts::JOINT_COMPLIANCE_OF,
    ] {
        let value = formula.value_with(&known);
        known.push((formula.symbol, value));
    }
    let of = |wanted: Symbol| {
        let found = known.iter().find(|(symbol, _)| *symbol == wanted);
        found.unwrap().1
    };
    Springs::new(
        sizes.count,
        jackbolt_compliance(&jackbolt, sizes.free_length),
        of(s::JOINT_COMPLIANCE),
        jackbolt.pitch.si(),
        300e6 * of(s::STRESS_AREA) / sizes.count as f64,
    )
}

fn jackbolt_compliance(thread: &Thread, free_length: f64) -> f64 {
    let d = thread.diameter.si();
    let root = thread.root_diameter_formula().value_with(&thread.inputs());
    jackbolts::JACKBOLT_COMPLIANCE_OF.value_with(&[
        (s::FREE_LENGTH, free_length * d),
        (s::JACKBOLT_DIAMETER, d),
        (
            s::JACKBOLT_ROOT_AREA,
            mechanics::ROOT_AREA_OF.value(&[root]),
        ),
        (
            s::JACKBOLT_NOMINAL_AREA,
            mechanics::NOMINAL_AREA_OF.value(&[d]),
        ),
        (s::TIP_DIAMETER, jackbolts::TIP_DIAMETERS[1] * d),
        (s::JACKBOLT_MODULUS, 205e9),
    ])
}

/// Rows of a table that was worked apart from this program, as printed there: R to a tenth, contraction to a hundredth,
/// turns to a degree, stop angle for 5 % to a tenth.
#[test]
fn ratios_and_turns_over_the_sizes() {
    for (stud, times, count, jackbolt, free_length, expected) in [
        (36.0, 1.0, 8, 10.0, 0.8, [2.3, 0.50, 55.0, 17.0, 2.4]),
        (48.0, 5.0, 10, 12.0, 0.8, [6.4, 0.75, 126.0, 17.0, 2.0]),
        (64.0, 5.0, 6, 20.0, 0.8, [4.6, 0.68, 122.0, 22.0, 2.7]),
        (64.0, 20.0, 6, 20.0, 0.8, [14.2, 0.87, 341.0, 22.0, 2.4]),
        (100.0, 5.0, 16, 20.0, 0.8, [8.3, 0.80, 182.0, 20.0, 2.2]),
        (125.0, 10.0, 16, 24.0, 0.8, [13.3, 0.87, 313.0, 22.0, 2.4]),
        (160.0, 20.0, 16, 30.0, 0.8, [23.4, 0.92, 605.0, 25.0, 2.6]),
        (36.0, 2.0, 8, 10.0, 4.0, [1.3, 0.34, 91.0, 40.0, 7.1]),
        (64.0, 1.0, 6, 20.0, 4.0, [0.8, 0.22, 88.0, 50.0, 11.3]),
        (100.0, 5.0, 16, 20.0, 4.0, [3.4, 0.61, 208.0, 47.0, 6.1]),
        (160.0, 20.0, 16, 30.0, 4.0, [9.8, 0.82, 637.0, 59.0, 6.5]),
        (100.0, 5.0, 24, 16.0, 0.8, [10.1, 0.83, 224.0, 20.0, 2.2]),
        (160.0, 5.0, 24, 24.0, 0.8, [9.2, 0.82, 243.0, 24.0, 2.7]),
        (64.0, 5.0, 4, 24.0, 0.8, [3.3, 0.59, 106.0, 25.0, 3.2]),
    ] {
        let set = sized(&Sizes {
            stud,
            length: times * stud,
            count,
            jackbolt,
            free_length,
            tapped: false,
        });
        let got = [
            set.ring_ratio,
            set.contraction().of_round,
            set.turn_all.to_degrees(),
            set.turn_one.to_degrees(),
            set.stop_turn(0.05).to_degrees(),
        ];
        for ((got, expected), half) in got
            .into_iter()
            .zip(expected)
            .zip([0.05, 0.005, 0.5, 0.5, 0.05])
        {
            near(got, expected, half * 1.02);
        }
    }
}
