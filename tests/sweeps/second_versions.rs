//! The second versions of the formulas, by id, in the units of whatever system the values are in.

use std::collections::BTreeMap;
use std::f64::consts::PI;

use super::jackbolts::second_version as second_version_of_jackbolts;

/// Values by symbol in one unit system.
pub(crate) struct Values<'a>(pub(crate) &'a BTreeMap<&'static str, f64>);

impl Values<'_> {
    pub(crate) fn of(&self, name: &str) -> f64 {
        self.0[name]
    }
}

pub(crate) fn square(value: f64) -> f64 {
    value * value
}

pub(crate) fn ring(outer: f64, inner: f64) -> f64 {
    PI * (outer * outer - inner * inner) / 4.0
}

/// Torque over load of the thread alone in the exact form, with the sign of the lead.
fn screw(d2: f64, lead: f64, friction: f64, secant: f64) -> f64 {
    // As a wedge: tan of (slope + friction angle), the friction raised by the flank.
    let slope = libm::atan(lead / (PI * d2));
    let angle = libm::atan(friction * secant);
    d2 / 2.0 * libm::tan(slope + angle)
}

/// The second version of the torque formulas, with their document's constants.
fn torque_form(id: &str, v: &Values) -> Option<f64> {
    let (form, what) = id.split_once('.')?;
    let of = |name| v.of(name);
    let arms = |lead: f64, thread: f64, bearing: f64| {
        Some(match what {
            "torque" => of("F") * lead + of("F") * thread + of("F") * bearing,
            "load" => of("T") / (lead + thread + bearing),
            "thread_torque" => of("F") * lead + of("F") * thread,
            "loosening_torque" => of("F") * thread + of("F") * bearing - of("F") * lead,
            _ => return None,
        })
    };
    let bearing = || {
        if what == "thread_torque" {
            0.0
        } else {
            of("D_b") * of("µ_b")
        }
    };
    match form {
        "iso_16047" if what != "total_friction" && what != "bearing_diameter" => arms(
            of("P") / 2.0 / PI,
            0.577 * of("d2") * of("µ_th"),
            bearing() / 2.0,
        ),
        "vdi_2230"
            if matches!(
                what,
                "torque" | "load" | "thread_torque" | "loosening_torque"
            ) =>
        {
            arms(
                0.16 * of("P"),
                0.58 * of("d2") * of("µ_th"),
                bearing() / 2.0,
            )
        }
        "jis_b_1083" if what != "nut_factor" && what != "bearing_diameter" => {
            let thread = of("d2") * of("µ_th") * 2.0 / 3.0_f64.sqrt();
            arms(of("P") / PI / 2.0, thread / 2.0, bearing() / 2.0)
        }
        "api_6a" | "collar" if what != "bearing_diameter" && what != "lead_angle" => {
            let secant = if form == "api_6a" {
                1.154701
            } else {
                2.0 / 3.0_f64.sqrt()
            };
            let on = screw(of("d2"), of("P"), of("µ_th"), secant);
            let back = screw(of("d2"), -of("P"), of("µ_th"), secant);
            Some(match what {
                "torque" => of("F") * (on + bearing() / 2.0),
                "load" => of("T") / (on + bearing() / 2.0),
                "thread_torque" => of("F") * on,
                _ => of("F") * (back + bearing() / 2.0),
            })
        }
        _ => None,
    }
}

fn geometry(id: &str, v: &Values) -> Option<f64> {
    let of = |name| v.of(name);
    Some(match id {
        // The constants from the sharp triangle of 60°: height H = P √3/2.
        "iso_724.pitch_diameter" | "asme_b1_1.pitch_diameter" => {
            of("d") - 0.75 * of("P") * 3.0_f64.sqrt() / 2.0
        }
        "iso_724.root_diameter" => of("d") - 2.0 * 17.0 / 24.0 * of("P") * 3.0_f64.sqrt() / 2.0,
        "asme_b1_1.root_diameter" => of("d") - of("P") / 10.0 * 13.0,
        "iso_898_1.stress_area" => square(of("d") - 0.938194 * of("P")) * 0.25 * PI,
        "asme_b1_1.stress_area" => square(of("d") - 0.9743 * of("P")) * 0.25 * PI,
        "asme_b18_2_2.across_flats" => of("d") + of("d") / 2.0 + 0.125,
        "asme_b18_2_2.nut_height" => of("d"),
        "iso_4759_1.bearing_outer" => of("w_f") - of("w_f") / 20.0,
        "iso_16047.bearing_diameter" | "vdi_2230.bearing_diameter" => {
            of("d_h") + (of("D_o") - of("d_h")) / 2.0
        }
        "api_6a.bearing_diameter" => of("w_f") / 2.0 + of("d") / 2.0 + 0.0625,
        "jis_b_1083.bearing_diameter" => {
            let (outer, inner) = (of("D_o"), of("d_h"));
            // (a³ − b³)/(a² − b²) with a − b taken out.
            2.0 / 3.0 * (square(outer) + outer * inner + square(inner)) / (outer + inner)
        }
        "collar.lead_angle" => libm::atan2(of("P"), of("d2") * PI) / PI * 180.0,
        "vdi_2230.stress_diameter" => of("d3") + (of("d2") - of("d3")) / 2.0,
        "vdi_2230.combined_area" => ring(of("d0"), 0.0),
        "vdi_2230.torsion_modulus" => libm::pow(of("d0"), 3.0) * PI / 12.0,
        "vdi_2230.elastic_torsion_modulus" => libm::pow(of("d0"), 3.0) * PI / 16.0,
        "vdi_2230.clamp_diameter" => {
            if of("D_c") < of("D_o") + of("L") {
                of("D_c")
            } else {
                of("D_o") + of("L")
            }
        }
        "vdi_2230.cone" => libm::pow(of("L") * of("D_o") / of("D_A") / of("D_A"), 1.0 / 3.0),
        "vdi_2230.clamp_area" => {
            let cone = of("x") * of("x") + 2.0 * of("x");
            ring(of("D_o"), of("d_h")) + PI / 8.0 * of("D_o") * (of("D_A") - of("D_o")) * cone
        }
        "mechanics.root_area" => ring(of("d3"), 0.0),
        "mechanics.nominal_area" => ring(of("d"), 0.0),
        "mechanics.force_per_pressure" => ring(of("D_p"), 0.0),
        "mechanics.gasket_area" => ring(of("G_o"), of("G_i")),
        "mechanics.opening_area" => ring(of("D_p"), 0.0),
        "mechanics.force_per_pressure_on_area" => of("A_o"),
        "mechanics.protrusion_near" => of("l") - of("u_far") - of("m") - of("m") - of("L"),
        "mechanics.protrusion_tapped" => of("l") - of("l_e") - of("m") - of("L"),
        "mechanics.protrusion" => of("l") / 2.0 - of("L") / 2.0 - of("m"),
        "mechanics.protrusion_far" => of("l") - of("L") - of("m") - of("m") - of("u"),
        "mechanics.engagement" => of("l") - (of("L") + of("m") + of("u")),
        "mechanics.engagement_ratio" => of("l_e") / of("d"),
        "asme_pcc_1.effective_length" => of("L") + of("d"),
        _ => return None,
    })
}

fn strength(id: &str, v: &Values) -> Option<f64> {
    let of = |name| v.of(name);
    Some(match id {
        "iso_898_1.proof_load" => of("S_p") * of("A_s"),
        "iso_898_1.ultimate_load" => of("R_m") * of("A_s"),
        "iso_16047.total_friction" => {
            (of("T") - of("F") * of("P") / (2.0 * PI))
                / (of("F") * (0.577 * of("d2") + of("D_b") / 2.0))
        }
        "jis_b_1083.nut_factor" => {
            let thread = of("µ_th") * of("d2") * 2.0 / 3.0_f64.sqrt();
            (of("P") / PI + thread + of("µ_b") * of("D_b")) / of("d") / 2.0
        }
        "nut_factor.torque" => of("F") * of("d") * of("K"),
        "nut_factor.load" => of("T") / of("d") / of("K"),
        "nut_factor.nut_factor" => of("T") / of("F") / of("d"),
        "nut_factor.loosening_torque" => {
            of("K") * of("d") * of("F") - 2.0 * of("F") * of("P") / (2.0 * PI)
        }
        "vdi_2230.load_at_yield_share" => {
            // Through the stresses: tension F/A0, shear by the thread torque on a fully yielded section.
            let arm = of("d2") / 2.0 * (of("P") / PI / of("d2") + 1.155 * of("µ_th"));
            let shear = arm * 12.0 / (PI * libm::pow(of("d0"), 3.0));
            let tension = 4.0 / (PI * square(of("d0")));
            // A0 is an input of its own: the load is per unit of that area.
            of("ν") * of("R_p0.2") / libm::hypot(tension, 3.0_f64.sqrt() * shear)
                * of("A0")
                * tension
        }
        "vdi_2230.shear_stress" => of("T_th") / of("W_p"),
        "vdi_2230.combined_stress" => libm::hypot(of("σ"), 3.0_f64.sqrt() * of("τ")),
        "vdi_2230.limit_torque" => {
            let left = square(of("ν") * of("R_p0.2")) - square(of("σ"));
            left.sqrt() / 3.0_f64.sqrt() * of("W_p")
        }
        "vdi_2230.tightening_factor" => (1.0 + of("s")) / (1.0 - of("s")),
        "vdi_2230.scatter" => 1.0 - 2.0 / (of("α_A") + 1.0),
        "vdi_2230.least_load" => of("F_max") / of("α_A"),
        "nasa_std_5020.greatest_load" => of("F") + of("F") * of("s"),
        "nasa_std_5020.least_load" => of("F") - of("F") * of("s"),
        "nasa_std_5020.load_left" => of("F_min") - of("F_min") * of("v"),
        "mechanics.load_of_stress" => of("A_s") * of("σ"),
        "mechanics.load_of_root_stress" => of("A_r") * of("σ_r"),
        "mechanics.load_of_yield_share" => of("A_s") * of("R_p0.2") * of("ν"),
        "mechanics.load_of_yield_share_on_root" => of("A_r") * of("R_p0.2") * of("ν"),
        "mechanics.root_yield_share" => of("σ_r") / of("R_p0.2"),
        "mechanics.load_of_strength_share" => of("A_s") * of("R_m") * of("q"),
        "mechanics.load_of_proof_share" => of("A_s") * of("S_p") * of("q"),
        "mechanics.stress" => of("F") / of("A_s"),
        "mechanics.root_stress" => of("F") / of("A_r"),
        "mechanics.yield_share" => of("σ") / of("R_p0.2"),
        "mechanics.combined_yield_share" => of("σ_red") / of("R_p0.2"),
        "mechanics.bearing_pressure" => of("F") / ring(of("D_o"), of("d_h")),
        "mechanics.cover_force" => of("p") * of("A_p"),
        "mechanics.equivalent_mass" => of("F_c") / 9.80665,
        "mechanics.load_of_cover" => of("F_c") / of("n"),
        "mechanics.gasket_stress" => of("F") / of("A_g") * of("n"),
        "mechanics.load_of_gasket_stress" => of("σ_g") / of("n") * of("A_g"),
        _ => return None,
    })
}

fn stretch(id: &str, v: &Values) -> Option<f64> {
    let of = |name| v.of(name);
    Some(match id {
        "asme_pcc_1.stretch" => of("F") / of("A_s") / of("E") * of("L_eff"),
        "asme_pcc_1.stretch_of_root_stress" => {
            of("σ_r") * of("A_r") / of("A_s") / of("E") * of("L_eff")
        }
        "asme_pcc_1.load_of_stretch" => of("ΔL") / of("L_eff") * of("E") * of("A_s"),
        "vdi_2230.stud_compliance" => {
            let free = of("L") / (of("E") * of("A_s"));
            let threads = 2.0 * (0.5 * of("d")) / (of("E") * of("A_r"));
            free + threads + (of("e_f") * of("d") + 0.4 * of("d")) / (of("E") * of("A_n"))
        }
        "vdi_2230.clamp_compliance" => of("L") / of("E") / of("A_c"),
        "mechanics.stored_energy" => 0.5 * of("F") * (of("F") * of("δ_s") + of("F") * of("δ_c")),
        "mechanics.stretch" => of("δ_s") * of("F"),
        "mechanics.turn" => 360.0 / of("P") * (of("F") * of("δ_s") + of("F") * of("δ_c")),
        "mechanics.turn_of_stretch" => 360.0 / of("P") * of("ΔL"),
        "mechanics.load_of_turn" => of("θ") / 360.0 * of("P") / (of("δ_s") + of("δ_c")),
        "practice.release_turn" => of("θ") / 2.0,
        "mechanics.pump_pressure" => {
            let part = (of("T") - of("T1")) / (of("T2") - of("T1"));
            of("p1") * (1.0 - part) + of("p2") * part
        }
        "mechanics.torque_at_pressure" => {
            let part = (of("p_t") - of("p1")) / (of("p2") - of("p1"));
            of("T1") * (1.0 - part) + of("T2") * part
        }
        "mechanics.pass_torque" => of("T") * of("q"),
        "mechanics.pass_load" => of("T_k") / of("T") * of("F"),
        // A part of the circle that the hand would go round.
        "mechanics.hand_travel" => 2.0 * PI * of("l_w") * of("θ_Rk") / 360.0,
        "mechanics.wrench_setting" => of("T") / (1.0 + of("l_a") / of("l_w")),
        _ => return None,
    })
}

/// The second version of a formula; `None` when there is none.
pub(crate) fn second_version(id: &str, values: &Values) -> Option<f64> {
    torque_form(id, values)
        .or_else(|| geometry(id, values))
        .or_else(|| strength(id, values))
        .or_else(|| stretch(id, values))
        .or_else(|| second_version_of_jackbolts(id, values))
}
