//! Every formula of `standards` against a second version: plain arithmetic on `f64` in the unit system of the document
//! (mm, N, MPa, degrees; or in, lbf, psi for the inch documents), written apart from the program, over ranges.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test that cannot read its own figures stops"
)]

use std::collections::BTreeMap;
use std::f64::consts::PI;

use studbook::formula::{Formula, Symbol};
use studbook::standards::{all_formulas, symbols};
use studbook::units::{Dimension, Units, parse_si};

#[path = "sweeps/jackbolts.rs"]
mod jackbolts;
#[path = "sweeps/second_versions.rs"]
mod second_versions;

use second_versions::{Values, second_version};

#[derive(Clone, Copy, PartialEq)]
enum System {
    /// mm, N, MPa, N·mm, degrees.
    Millimetre,
    /// in, lbf, psi, in·lbf, degrees.
    Inch,
}

/// SI value of one unit of the system.
fn unit(system: System, dimension: Dimension) -> f64 {
    let (length, force) = match system {
        System::Millimetre => (1e-3, 1.0),
        System::Inch => (0.0254, 4.4482216152605),
    };
    match dimension {
        Dimension::Length => length,
        Dimension::Area | Dimension::ForcePerPressure => length * length,
        Dimension::SectionModulus => length * length * length,
        Dimension::Force => force,
        Dimension::Stress | Dimension::Pressure => force / (length * length),
        Dimension::Torque | Dimension::Energy => force * length,
        Dimension::Compliance => length / force,
        Dimension::Angle => PI / 180.0,
        // Kilograms: the one formula with a mass is written with the g of the metre system.
        Dimension::Mass | Dimension::Ratio | Dimension::Count => 1.0,
        other => panic!("no formula has a {}", other.word()),
    }
}

/// From and to, in mm, N, MPa, N·mm, degrees; chosen so that all formulas are in their range.
fn range(symbol: Symbol) -> (f64, f64) {
    match symbol.name {
        "d" => (10.0, 150.0),
        "P" => (1.0, 8.0),
        "d2" => (9.0, 145.0),
        "d3" => (8.0, 140.0),
        "d0" => (8.5, 142.0),
        "µ_th" | "µ_b" | "µ_tot" => (0.04, 0.35),
        "K" => (0.1, 0.3),
        "α_A" => (1.05, 4.0),
        "s" | "v" => (0.02, 0.5),
        "ν" | "q" | "e_f" => (0.3, 0.95),
        // A target stress stays below the yield that stands beside it.
        "σ" => (50.0, 150.0),
        "R_p0.2" => (600.0, 1100.0),
        "E" => (70e3, 210e3),
        "D_o" => (60.0, 90.0),
        "d_h" => (10.0, 55.0),
        "D_A" => (95.0, 200.0),
        "D_c" => (80.0, 300.0),
        "L_eff" | "L" => (30.0, 900.0),
        "l" => (1000.0, 1500.0),
        "G_o" => (600.0, 900.0),
        "G_i" => (300.0, 550.0),
        "n" => (4.0, 80.0),
        "n_j" | "n_b" => (4.0, 32.0),
        "r" => (0.05, 3.0),
        "R" => (0.5, 25.0),
        "µ_j" | "µ_t" => (0.04, 0.35),
        "f" => (0.1, 0.9),
        "ε" => (0.01, 0.09),
        "q_R" => (1.2, 2.0),
        "N_fin" => (1.0, 12.0),
        "d_0j" => (8.5, 48.0),
        "E_j" => (190e3, 210e3),
        "σ_j" => (50.0, 150.0),
        "R_p0.2j" => (600.0, 1100.0),
        "T1" | "p1" => (1.0, 5.0),
        "T2" | "p2" => (6.0, 20.0),
        _ => match symbol.dimension {
            Dimension::Length => (5.0, 80.0),
            Dimension::Area => (50.0, 15e3),
            Dimension::SectionModulus => (1e3, 5e5),
            Dimension::Force => (1e3, 3e6),
            Dimension::Stress => (20.0, 900.0),
            Dimension::Pressure => (0.1, 70.0),
            Dimension::Torque => (1e4, 5e7),
            Dimension::Compliance => (1e-7, 1e-4),
            Dimension::Angle => (1.0, 180.0),
            _ => (0.1, 2.0),
        },
    }
}

/// A sequence of numbers from 0 to 1 that is the same on every machine (additive recurrence of the golden ratio).
struct Sequence(f64);

impl Sequence {
    fn next(&mut self) -> f64 {
        self.0 = (self.0 + 0.618_033_988_749_894_9).fract();
        self.0
    }
}

fn systems(formula: &Formula) -> &'static [System] {
    let inch_only = ["api_6a.bearing_diameter", "asme_b18_2_2.across_flats"];
    if inch_only.contains(&formula.id) {
        &[System::Inch]
    } else if formula.id == "mechanics.equivalent_mass" {
        &[System::Millimetre]
    } else {
        &[System::Millimetre, System::Inch]
    }
}

/// Inputs in SI in the formula's order, and the same by name in the system's units.
fn draw(
    formula: &Formula,
    system: System,
    sequence: &mut Sequence,
) -> (Vec<f64>, BTreeMap<&'static str, f64>) {
    let mut named = BTreeMap::new();
    let ordered = formula.arrange(|symbol| {
        let (from, to) = range(*symbol);
        let metric = from + (to - from) * sequence.next();
        let si = metric * unit(System::Millimetre, symbol.dimension);
        named.insert(symbol.name, si / unit(system, symbol.dimension));
        si
    });
    (ordered, named)
}

#[test]
fn every_formula_agrees_with_its_second_version() {
    let mut sequence = Sequence(0.5);
    let mut wrong = Vec::new();
    for formula in all_formulas() {
        for &system in systems(formula) {
            let mut worst: (f64, String) = (0.0, String::new());
            for _ in 0..500 {
                let (ordered, named) = draw(formula, system, &mut sequence);
                let got = formula.value(&ordered) / unit(system, formula.dimension());
                let Some(expected) = second_version(formula.id, &Values(&named)) else {
                    panic!("{} has no second version", formula.id);
                };
                let size = inputs_size(formula, &named).max(expected.abs());
                let off = ((got - expected) / size).abs();
                // NaN is no agreement either.
                if !off.is_finite() || off > worst.0 {
                    worst = (off, format!("{got} instead of {expected} at {named:?}"));
                }
                if !off.is_finite() {
                    break;
                }
            }
            if worst.0 > tolerance(formula.id) || worst.0.is_nan() {
                wrong.push(format!("{}: off by {:e}: {}", formula.id, worst.0, worst.1));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// Differences of large numbers are held against the size of what is taken apart.
fn inputs_size(formula: &Formula, named: &BTreeMap<&'static str, f64>) -> f64 {
    let of_same_kind = |symbol: &&Symbol| symbol.dimension == formula.dimension();
    let same = formula.inputs.iter().filter(of_same_kind);
    same.map(|symbol| named[symbol.name].abs())
        .fold(0.0, f64::max)
}

/// Six decimals of the printed constants of the profile; the last bits of the arithmetic elsewhere.
fn tolerance(id: &str) -> f64 {
    match id {
        "iso_724.pitch_diameter" | "asme_b1_1.pitch_diameter" | "iso_724.root_diameter" => 1e-6,
        _ => 1e-11,
    }
}

#[test]
fn every_symbol_of_a_formula_has_a_range() {
    for symbol in symbols::ALL {
        let used = all_formulas()
            .iter()
            .any(|formula| formula.inputs.contains(symbol));
        let (from, to) = range(*symbol);
        assert!(!used || from < to, "{}", symbol.name);
    }
}

/// Sizes of a jackbolt's thread are drawn apart too: a pitch of half the diameter, or a pitch diameter above the crests or
/// far below the roots, is none.
fn is_no_jackbolt(id: &str, named: &BTreeMap<&'static str, f64>) -> bool {
    match id {
        "jackbolts.loosening_torque_by_nut_factor" => named["P_j"] > 0.2 * named["d_j"],
        "jackbolts.body_shear_area" | "jackbolts.thread_shear_area" => {
            let height = (named["d_j"] - named["d_2j"]) / named["P_j"];
            named["P_j"] > 0.2 * named["d_j"] || !(0.5..0.8).contains(&height)
        }
        _ => false,
    }
}

/// A reviewer repeats each line from the inputs as they are printed. Four digits leave at most 0.05 % on each input.
#[test]
fn printed_inputs_are_enough_to_repeat_a_result() {
    let mut sequence = Sequence(0.25);
    let mut wrong = Vec::new();
    for formula in all_formulas() {
        for units in [Units::metric(), Units::inch()] {
            for _ in 0..100 {
                let (ordered, named) = draw(formula, System::Millimetre, &mut sequence);
                let inputs = formula.inputs.iter().zip(&ordered);
                let read: Vec<f64> = inputs
                    .map(|(symbol, &si)| {
                        let printed = units.print_si(si, symbol.dimension);
                        let typed = printed.joined().replace('\u{202f}', "");
                        parse_si(&typed, symbol.dimension).unwrap()
                    })
                    .collect();
                // Torque and load are drawn apart; a pair that means next to no friction is no joint.
                if formula.id == "iso_16047.total_friction" && formula.value(&ordered) < 0.04 {
                    continue;
                }
                // So are diameter and pitch: a pitch of half the diameter is no thread of this trade.
                if formula.id == "nut_factor.loosening_torque" && named["P"] > 0.2 * named["d"] {
                    continue;
                }
                if is_no_jackbolt(formula.id, &named) {
                    continue;
                }
                let (exact, again) = (formula.value(&ordered), formula.value(&read));
                let scale = unit(System::Millimetre, formula.dimension());
                let size = (inputs_size(formula, &named) * scale).max(exact.abs());
                let off = ((again - exact) / size).abs();
                if off.is_nan() || off >= 0.003 {
                    wrong.push(format!(
                        "{}: {} % off from {named:?}",
                        formula.id,
                        off * 100.0
                    ));
                }
            }
        }
    }
    assert!(
        wrong.is_empty(),
        "{} lines:\n{}",
        wrong.len(),
        wrong.join("\n")
    );
}
