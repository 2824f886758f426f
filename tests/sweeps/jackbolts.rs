//! The second versions of the formulas of multi-jackbolt tensioners.

use std::f64::consts::PI;

use super::second_versions::{Values, ring as ring_of, square};

/// The second version of a formula; `None` when it is no formula of jackbolts.
pub(crate) fn second_version(id: &str, values: &Values) -> Option<f64> {
    let id = id.strip_prefix("jackbolts.")?;
    springs(id, values)
        .or_else(|| plans(id, values))
        .or_else(|| torque(id, values))
}

/// Stiffnesses instead of compliances, and forces instead of shares.
fn springs(id: &str, v: &Values) -> Option<f64> {
    let of = |name| v.of(name);
    let ring = || of("R");
    Some(match id {
        "body_compliance" => of("e_b") * of("d") / of("A_n") / of("E"),
        "joint_compliance" => {
            let (stud, body, plates) = (1.0 / of("δ_s"), 1.0 / of("δ_b"), 1.0 / of("δ_c"));
            (stud * body + body * plates + plates * stud) / (stud * body * plates)
        }
        "jackbolt_compliance" => {
            let shaft = of("l_f") / of("A_rj") / of("E_j");
            let thread = of("d_j") / 2.0 / of("A_rj") / of("E_j");
            let body = 0.33 * of("d_j") / (of("E_j") * of("A_nj"));
            shaft + thread + body + 0.91 / (2.0 * (of("d_t") / 2.0) * of("E_j"))
        }
        "own_compliance_of_turn" => of("θ_1") / 360.0 * of("P_j") / of("F_j"),
        // The root of c² + (n k − s) c − s (n − 1) k = 0, by the product of its roots where that keeps digits.
        "compliance_of_turn" => {
            let (n, k, s) = (of("n_j"), of("δ_K"), of("δ_1"));
            let half = (n * k - s) / 2.0;
            let product = s * (n - 1.0) * k;
            let root = libm::hypot(half, product.sqrt());
            if half > 0.0 {
                product / (half + root)
            } else {
                root - half
            }
        }
        "stiffness_ratio" => (1.0 / of("δ_j")) / (1.0 / of("δ_K")),
        "ring_ratio" => of("n_j") * of("r") - of("r"),
        "load_loss" => 1.0 / (1.0 / of("r") + ring() / of("r")),
        "own_compliance" => {
            of("δ_j") / (1.0 + ring()) + of("δ_j") * of("n_j") * of("r") / (1.0 + ring())
        }
        "jackbolt_load" => of("F") / of("n_j"),
        "stud_load" => of("F_j") * of("n_j"),
        "turn_one" => of("F_j") * of("δ_1") / of("P_j") * 360.0,
        "turn_all" => {
            let give = of("F_j") * of("δ_j") + of("n_j") * of("F_j") * of("δ_K");
            give / of("P_j") * 360.0
        }
        "contraction" => libm::pow(1.0 - 1.0 / (1.0 + ring()), 2.0),
        _ => return None,
    })
}

/// Rounds, release, driver, travel.
fn plans(id: &str, v: &Values) -> Option<f64> {
    let of = |name| v.of(name);
    let ring = || of("R");
    Some(match id {
        "worst_bound" => of("θ_max") / (of("θ_tot") / ring()),
        "mean_bound" => of("θ_max") / (of("θ_tot") / ring()) / 2.0,
        // The geometric decay g + g² + … with g = (R/(1 + R))².
        "deficit_of_turn" => {
            let g = square(ring() / (1.0 + ring()));
            of("θ_mean") / of("θ_tot") * g / (1.0 - g)
        }
        "stop_turn" => of("ε") * of("θ_tot") / (ring() / 2.0),
        "full_rounds" => {
            let g = square(ring() / (1.0 + ring()));
            libm::log10(of("ε") / (1.0 - of("f"))) / libm::log10(g)
        }
        "release_turn" => of("θ_tot") / (ring() / (of("q_R") - 1.0)),
        "round_turn" => of("θ_tot") / ring() * of("q_R") - of("θ_tot") / ring() * of("f"),
        "peak_share" => of("f") + of("θ_Rk") / (of("θ_tot") / ring()),
        "level_after" => (of("f") * of("θ_tot") - of("θ_Rk")) / of("θ_tot"),
        "release_rounds" => {
            -libm::log2(1.0 - 1.0 / of("q_R")) / (libm::log2(ring() + 1.0) - libm::log2(ring()))
        }
        "run_loose_level" => of("q_R") / ((1.0 + of("n_j") * of("r")) / (1.0 + of("r"))),
        "last_share" => {
            // All travel stored goes into one jackbolt: U = n f/K + f/kj, with K = 1, kj = r.
            (of("n_j") + 1.0 / of("r")) / (1.0 + 1.0 / of("r"))
        }
        "others_share" => (of("n_j") + 1.0 / of("r")) / ((1.0 + ring()) / of("r")),
        "seized_loss" => (of("q_R") - 1.0) / (1.0 / ring() + of("r") / ring()),
        "block_left" => of("f") - of("f") * of("n_b") * of("r") / (1.0 + of("n_b") * of("r")),
        "level_limit" => 1.0 - of("s_d") / (1.0 + of("s_d")),
        "finish_turn" => of("θ_tot") / of("N_fin") - of("f") * of("θ_tot") / of("N_fin"),
        "finish_rounds" => (1.0 - of("f")) / ((of("q_R") - 1.0) / ring()),
        "travel" => of("g_0") + of("g_c") + of("g_r") + of("θ_tot") / 360.0 * of("P_j"),
        _ => return None,
    })
}

/// Torque and stress of one jackbolt.
fn torque(id: &str, v: &Values) -> Option<f64> {
    let of = |name| v.of(name);
    Some(match id {
        "torque" => of("F_j") * (of("P_j") / 2.0 / PI) + jackbolt_friction(v),
        "load" => of("T_j") / (of("P_j") / 2.0 / PI + jackbolt_friction_arm(v)),
        "thread_torque" => {
            of("F_j") * (of("P_j") / 2.0 / PI) + of("F_j") * 0.577 * of("d_2j") * of("µ_j")
        }
        "torque_by_nut_factor" | "thread_torque_by_nut_factor" => {
            of("F_j") / (1.0 / of("d_j")) * of("K_j")
        }
        "load_by_nut_factor" => of("T_j") / of("d_j") / of("K_j"),
        "loosening_torque_by_nut_factor" => {
            of("F_j") * of("K_j") * of("d_j") - of("F_j") * of("P_j") / PI
        }
        "loosening_torque" => jackbolt_friction(v) - of("F_j") * (of("P_j") / 2.0 / PI),
        "body_shear_area" => {
            // Half a pitch of every turn, widened on both flanks of 30° from the pitch line to the crest.
            let turns = of("l_ej") / of("P_j");
            let width = of("P_j") / 2.0 + (of("d_j") - of("d_2j")) / 3.0_f64.sqrt();
            turns * PI * of("d_j") * width
        }
        "thread_shear_area" => {
            let crest = of("d_j") - 1.082_532 * of("P_j");
            let turns = of("l_ej") / of("P_j");
            turns * PI * crest * (of("P_j") / 2.0 + (of("d_2j") - crest) / 3.0_f64.sqrt())
        }
        "body_shear_share" => of("F_j") / of("A_Sb") / (of("R_p0.2b") / 3.0_f64.sqrt()),
        "thread_shear_share" => of("F_j") / of("A_Sj") / (of("R_p0.2j") / 3.0_f64.sqrt()),
        "tip_pressure" => of("F_j") / ring_area(of("d_t")),
        "stress" => of("F_j") / of("A_sj"),
        "torsion_modulus" => libm::pow(of("d_0j"), 3.0) * PI / 12.0,
        "shear_stress" => of("T_thj") / of("W_pj"),
        "combined_stress" => libm::hypot(of("σ_j"), 3.0_f64.sqrt() * of("τ_j")),
        "yield_share" => of("σ_redj") / of("R_p0.2j"),
        "above_body" => of("l") - (of("L") + of("m") + of("u_far") + of("h_b") + of("g_0")),
        "above_body_tapped" => of("l") - (of("L") + of("l_e") + of("h_b") + of("g_0")),
        "peak_of_torque" => 1.0 / (of("T_Lj") / of("T_limj")),
        "peak_of_yield" => of("R_p0.2j") / of("σ_redj") * of("ν"),
        "limit_torque" => {
            let left = square(of("ν") * of("R_p0.2j")) - square(of("σ_j"));
            left.sqrt() / 3.0_f64.sqrt() * of("W_pj")
        }
        _ => return None,
    })
}

fn ring_area(diameter: f64) -> f64 {
    ring_of(diameter, 0.0)
}

/// Thread and tip; the tip rubs at two thirds of its radius.
fn jackbolt_friction_arm(v: &Values) -> f64 {
    0.577 * v.of("d_2j") * v.of("µ_j") + 2.0 / 3.0 * (v.of("d_t") / 2.0) * v.of("µ_t")
}

fn jackbolt_friction(v: &Values) -> f64 {
    v.of("F_j") * jackbolt_friction_arm(v)
}
