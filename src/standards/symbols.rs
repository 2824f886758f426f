//! The symbols of all formulas: one name for one thing, whatever letter a document happens to use,
//! so that a note can list its inputs once. The meaning is a key of the wording.

use crate::formula::Symbol;
use crate::units::Dimension as D;

macro_rules! symbols {
    ($($(#[$doc:meta])* $name:ident = $text:literal, $dimension:ident, $meaning:literal;)*) => {
        $( $(#[$doc])* pub const $name: Symbol = Symbol::new($text, D::$dimension, $meaning); )*

        /// Every symbol, in the order of this file.
        pub const ALL: &[Symbol] = &[$($name),*];
    };
}

symbols! {
    // Thread.
    /// Nominal diameter of the thread.
    DIAMETER = "d", Length, "nominal_diameter";
    /// Pitch of the thread.
    PITCH = "P", Length, "pitch";
    /// Pitch diameter.
    PITCH_DIAMETER = "d2", Length, "pitch_diameter";
    /// Root (minor) diameter.
    ROOT_DIAMETER = "d3", Length, "root_diameter";
    /// Diameter that carries tension and torsion together.
    STRESS_DIAMETER = "d0", Length, "stress_diameter";
    /// Area of the circle of the stress diameter.
    COMBINED_AREA = "A0", Area, "combined_area";
    /// Tensile stress area.
    STRESS_AREA = "A_s", Area, "stress_area";
    /// Root area.
    ROOT_AREA = "A_r", Area, "root_area";
    /// Area of the nominal diameter.
    NOMINAL_AREA = "A_n", Area, "nominal_area";
    /// Lead angle of the thread.
    LEAD_ANGLE = "φ", Angle, "lead_angle";

    // Load and torque.
    /// Load in one stud.
    LOAD = "F", Force, "stud_load";
    /// Greatest load that the scatter allows.
    GREATEST_LOAD = "F_max", Force, "greatest_load";
    /// Least load that the scatter allows.
    LEAST_LOAD = "F_min", Force, "least_load";
    /// Load that is left after settling.
    LOAD_LEFT = "F_left", Force, "load_left";
    /// Load that the stud is proved at.
    PROOF_LOAD = "F_p", Force, "proof_load";
    /// Load at which the stud may break.
    ULTIMATE_LOAD = "F_m", Force, "ultimate_load";
    /// Torque on the nut.
    TORQUE = "T", Torque, "torque";
    /// The part of the torque that twists the stud.
    THREAD_TORQUE = "T_th", Torque, "thread_torque";
    /// Torque that turns the nut back.
    LOOSENING_TORQUE = "T_L", Torque, "loosening_torque";
    /// Torque that a stud may never be given.
    LIMIT_TORQUE = "T_lim", Torque, "limit_torque";
    /// Friction in the thread.
    THREAD_FRICTION = "µ_th", Ratio, "thread_friction";
    /// Friction under the nut.
    BEARING_FRICTION = "µ_b", Ratio, "bearing_friction";
    /// One friction for thread and nut face together.
    TOTAL_FRICTION = "µ_tot", Ratio, "total_friction";
    /// Nut factor.
    NUT_FACTOR = "K", Ratio, "nut_factor";
    /// Mean diameter of the bearing face.
    BEARING_DIAMETER = "D_b", Length, "bearing_diameter";
    /// Outer diameter of the bearing face.
    BEARING_OUTER = "D_o", Length, "bearing_outer";
    /// Hole under the nut.
    HOLE = "d_h", Length, "hole";
    /// Width across the flats of the nut.
    ACROSS_FLATS = "w_f", Length, "across_flats";
    /// What the bevel of the nut takes off, in the mean bearing diameter.
    BEVEL = "k", Length, "bevel";
    /// Distance from the square of a wrench to the hand.
    WRENCH_LENGTH = "l_w", Length, "wrench_length";
    /// How far the hand on a wrench travels.
    HAND_TRAVEL = "s_w", Length, "hand_travel";
    /// How far an adapter stands out beyond the square, in line with the wrench.
    ADAPTER_LENGTH = "l_a", Length, "adapter_length";
    /// What a wrench with an adapter is set to.
    WRENCH_SETTING = "T_w", Torque, "wrench_setting";

    /// Torque of one pass.
    PASS_TORQUE = "T_k", Torque, "pass_torque";
    /// Load after one pass.
    PASS_LOAD = "F_k", Force, "pass_load";

    // Stress.
    /// Stress by the load.
    STRESS = "σ", Stress, "stress";
    /// Stress on the root area.
    ROOT_STRESS = "σ_r", Stress, "root_stress";
    /// Shear stress by the thread torque.
    SHEAR = "τ", Stress, "shear_stress";
    /// Combined (von Mises) stress.
    COMBINED_STRESS = "σ_red", Stress, "combined_stress";
    /// Section modulus against torsion.
    TORSION_MODULUS = "W_p", SectionModulus, "torsion_modulus";
    /// Yield strength.
    YIELD = "R_p0.2", Stress, "yield_strength";
    /// Tensile strength.
    TENSILE = "R_m", Stress, "tensile_strength";
    /// Proof strength.
    PROOF = "S_p", Stress, "proof_strength";
    /// A share of the yield strength.
    YIELD_SHARE = "ν", Ratio, "yield_share";
    /// A share of a load or a strength.
    SHARE = "q", Ratio, "share";
    /// Pressure under the nut.
    BEARING_PRESSURE = "p_b", Stress, "bearing_pressure";

    // Scatter.
    /// Scatter of the load, as a ± limit.
    SCATTER = "s", Ratio, "scatter";
    /// Share of the load that settling takes.
    LOSS = "v", Ratio, "settling_loss";
    /// Tightening factor: greatest over least load.
    TIGHTENING_FACTOR = "α_A", Ratio, "tightening_factor";

    // Stretch and turn.
    /// Clamped length.
    GRIP = "L", Length, "grip";
    /// Length of the stud between its ends.
    STUD_LENGTH = "l", Length, "stud_length";
    /// Length over which the stud stretches.
    EFFECTIVE_LENGTH = "L_eff", Length, "effective_length";
    /// Stretch of the stud.
    STRETCH = "ΔL", Length, "stretch";
    /// Modulus of elasticity.
    MODULUS = "E", Stress, "elastic_modulus";
    /// Share of the diameter that gives way in the far nut or the tapped hole.
    FAR_END = "e_f", Ratio, "far_end_share";
    /// Compliance of the stud.
    STUD_COMPLIANCE = "δ_s", Compliance, "stud_compliance";
    /// Compliance of the clamped parts.
    CLAMP_COMPLIANCE = "δ_c", Compliance, "clamp_compliance";
    /// Area of the clamped parts that works with one stud.
    CLAMP_AREA = "A_c", Area, "clamp_area";
    /// Growth of the clamped cone.
    CONE = "x", Ratio, "cone_factor";
    /// Outer diameter of the clamped parts that one stud can use.
    CLAMP_DIAMETER = "D_A", Length, "clamp_diameter";
    /// Outer diameter of the clamped parts.
    PART_DIAMETER = "D_c", Length, "part_diameter";
    /// Angle that the nut turns from snug.
    TURN = "θ", Angle, "turn";
    /// Angle of the first round of loosening.
    RELEASE_TURN = "θ_R1", Angle, "release_turn";
    /// Energy stored in one stud.
    ENERGY = "W", Energy, "stored_energy";
    /// Height of the nut.
    NUT_HEIGHT = "m", Length, "nut_height";
    /// What stands out of the nut.
    PROTRUSION = "u", Length, "protrusion";
    /// What stands out of the far nut.
    PROTRUSION_FAR = "u_far", Length, "protrusion_far";
    /// Length of thread that holds.
    ENGAGEMENT = "l_e", Length, "engagement";
    /// Engagement in diameters.
    ENGAGEMENT_RATIO = "λ", Ratio, "engagement_ratio";

    // Opening, gasket, tool.
    /// Count of studs.
    COUNT = "n", Count, "stud_count";
    /// Pressure in the equipment.
    PRESSURE = "p", Pressure, "pressure";
    /// Diameter on which the pressure pushes.
    OPENING = "D_p", Length, "opening_diameter";
    /// What one unit of pressure pushes.
    FORCE_PER_PRESSURE = "A_p", ForcePerPressure, "force_per_pressure";
    /// Area on which the pressure pushes.
    OPENING_AREA = "A_o", Area, "opening_area";
    /// Mass whose weight is a force, under standard gravity.
    EQUIVALENT_MASS = "m_eq", Mass, "equivalent_mass";
    /// Push of the pressure on the cover.
    COVER_FORCE = "F_c", Force, "cover_force";
    /// Outer diameter of the gasket's loaded face.
    GASKET_OUTER = "G_o", Length, "gasket_outer";
    /// Inner diameter of the gasket's loaded face.
    GASKET_INNER = "G_i", Length, "gasket_inner";
    /// Loaded area of the gasket.
    GASKET_AREA = "A_g", Area, "gasket_area";
    /// Mean stress on the gasket.
    GASKET_STRESS = "σ_g", Stress, "gasket_stress";
    /// Pump pressure.
    PUMP_PRESSURE = "p_t", Pressure, "pump_pressure";
    /// Calibration point below: pressure.
    PRESSURE_BELOW = "p1", Pressure, "calibration_pressure_below";
    /// Calibration point above: pressure.
    PRESSURE_ABOVE = "p2", Pressure, "calibration_pressure_above";
    /// Calibration point below: torque.
    TORQUE_BELOW = "T1", Torque, "calibration_torque_below";
    /// Calibration point above: torque.
    TORQUE_ABOVE = "T2", Torque, "calibration_torque_above";

    // Multi-jackbolt tensioner: what has the index j belongs to one jackbolt.
    /// Number of jackbolts on one stud.
    JACKBOLTS = "n_j", Count, "jackbolt_count";
    /// Nominal diameter of a jackbolt.
    JACKBOLT_DIAMETER = "d_j", Length, "jackbolt_diameter";
    /// Pitch of a jackbolt.
    JACKBOLT_PITCH = "P_j", Length, "jackbolt_pitch";
    /// Pitch diameter of a jackbolt.
    JACKBOLT_PITCH_DIAMETER = "d_2j", Length, "jackbolt_pitch_diameter";
    /// Stress area of a jackbolt.
    JACKBOLT_STRESS_AREA = "A_sj", Area, "jackbolt_stress_area";
    /// Root area of a jackbolt.
    JACKBOLT_ROOT_AREA = "A_rj", Area, "jackbolt_root_area";
    /// Area of the nominal diameter of a jackbolt.
    JACKBOLT_NOMINAL_AREA = "A_nj", Area, "jackbolt_nominal_area";
    /// Diameter of a jackbolt that carries compression and torsion together.
    JACKBOLT_STRESS_DIAMETER = "d_0j", Length, "jackbolt_stress_diameter";
    /// Modulus of elasticity of a jackbolt.
    JACKBOLT_MODULUS = "E_j", Stress, "jackbolt_modulus";
    /// Length of a jackbolt between body and washer.
    FREE_LENGTH = "l_f", Length, "free_length";
    /// Diameter of the flat tip.
    TIP_DIAMETER = "d_t", Length, "tip_diameter";
    /// Give of the tensioner's body, in diameters of the stud.
    BODY_SHARE = "e_b", Ratio, "body_share";
    /// Compliance of the tensioner's body.
    BODY_COMPLIANCE = "δ_b", Compliance, "body_compliance";
    /// Compliance of stud, body and clamped parts together.
    JOINT_COMPLIANCE = "δ_K", Compliance, "joint_compliance";
    /// Compliance of one jackbolt.
    JACKBOLT_COMPLIANCE = "δ_j", Compliance, "jackbolt_compliance";
    /// Compliance that one jackbolt feels while the others stay where they are.
    OWN_COMPLIANCE = "δ_1", Compliance, "own_compliance";
    /// Stiffness of one jackbolt over that of stud and joint.
    STIFFNESS_RATIO = "r", Ratio, "stiffness_ratio";
    /// Stiffness of all other jackbolts over that of stud and joint.
    RING_RATIO = "R", Ratio, "ring_ratio";
    /// What every other jackbolt loses for each unit that one gains.
    LOAD_LOSS = "ρ", Ratio, "load_loss";
    /// What a round in circle leaves of a deficit, as a share.
    CONTRACTION = "γ", Ratio, "contraction";
    /// Load of one jackbolt.
    JACKBOLT_LOAD = "F_j", Force, "jackbolt_load";
    /// Torque on a jackbolt.
    JACKBOLT_TORQUE = "T_j", Torque, "jackbolt_torque";
    /// The part of that torque that twists the jackbolt.
    JACKBOLT_THREAD_TORQUE = "T_thj", Torque, "jackbolt_thread_torque";
    /// Torque that turns a jackbolt back.
    JACKBOLT_LOOSENING = "T_Lj", Torque, "jackbolt_loosening_torque";
    /// Torque that a jackbolt may never be given.
    JACKBOLT_LIMIT_TORQUE = "T_limj", Torque, "jackbolt_limit_torque";
    /// Friction in the thread of a jackbolt.
    JACKBOLT_FRICTION = "µ_j", Ratio, "jackbolt_friction";
    /// Nut factor of a jackbolt, on its own diameter.
    JACKBOLT_NUT_FACTOR = "K_j", Ratio, "jackbolt_nut_factor";
    /// Friction under the tip.
    TIP_FRICTION = "µ_t", Ratio, "tip_friction";
    /// Thread of a jackbolt that is engaged in the body.
    JACKBOLT_ENGAGEMENT = "l_ej", Length, "jackbolt_engagement";
    /// Yield strength of the body.
    BODY_YIELD = "R_p0.2b", Stress, "body_yield";
    /// Area on which the thread of the body shears.
    BODY_SHEAR_AREA = "A_Sb", Area, "body_shear_area";
    /// Area on which the thread of the jackbolt shears.
    THREAD_SHEAR_AREA = "A_Sj", Area, "thread_shear_area";
    /// Compressive stress in a jackbolt.
    JACKBOLT_STRESS = "σ_j", Stress, "jackbolt_stress";
    /// Shear stress in a jackbolt by its thread torque.
    JACKBOLT_SHEAR = "τ_j", Stress, "jackbolt_shear";
    /// Combined (von Mises) stress in a jackbolt.
    JACKBOLT_COMBINED = "σ_redj", Stress, "jackbolt_combined_stress";
    /// Section modulus of a jackbolt against torsion.
    JACKBOLT_MODULUS_TORSION = "W_pj", SectionModulus, "jackbolt_torsion_modulus";
    /// Yield strength of a jackbolt.
    JACKBOLT_YIELD = "R_p0.2j", Stress, "jackbolt_yield";
    /// Pressure of a tip on the washer.
    TIP_PRESSURE = "p_tip", Stress, "tip_pressure";
    /// Turn of one jackbolt alone from snug to its load, the others tight.
    TURN_ONE = "θ_1", Angle, "turn_one";
    /// Turn of every jackbolt from snug until all stand at their load.
    TURN_ALL = "θ_tot", Angle, "turn_all";
    /// Largest turn in a whole round.
    LARGEST_TURN = "θ_max", Angle, "largest_turn";
    /// Mean turn in a whole round.
    MEAN_TURN = "θ_mean", Angle, "mean_turn";
    /// Largest turn of a round that still guarantees the wanted mean load.
    STOP_TURN = "θ_stop", Angle, "stop_turn";
    /// Turn in one round of an angle finish.
    FINISH_TURN = "θ_fin", Angle, "finish_turn";
    /// Turn in one round of loosening.
    ROUND_TURN = "θ_Rk", Angle, "round_turn";
    /// Mean deficit: what the stud lacks, as a share of its target.
    DEFICIT = "ε", Ratio, "deficit";
    /// Mean deficit that is never passed.
    MEAN_BOUND = "ε_m", Ratio, "mean_bound";
    /// Deficit of the worst jackbolt that is never passed.
    WORST_BOUND = "ε_w", Ratio, "worst_bound";
    /// Even load before a round, as a share of the target.
    LEVEL = "f", Ratio, "level";
    /// Even load after a round, as a share of the target.
    LEVEL_LEFT = "f_k", Ratio, "level_left";
    /// Number of rounds at full value.
    FULL_ROUNDS = "N", Ratio, "full_rounds";
    /// Number of rounds of an angle finish.
    FINISH_ROUNDS = "N_fin", Ratio, "finish_rounds";
    /// Number of rounds of loosening.
    RELEASE_ROUNDS = "N_R", Ratio, "release_rounds";
    /// Highest load of a jackbolt as a share of its installed load.
    PEAK_LIMIT = "q_R", Ratio, "peak_limit";
    /// Load of the last jackbolt of a round as a share of its installed load.
    PEAK_SHARE = "q_p", Ratio, "peak_share";
    /// Load of the last jackbolt when all others are fully released, as a share.
    LAST_SHARE = "q_1", Ratio, "last_share";
    /// Load of the others when one jackbolt is fully released, as a share.
    OTHERS_SHARE = "q_o", Ratio, "others_share";
    /// Even load below which each jackbolt may be run loose in turn.
    RUN_LOOSE_LEVEL = "f_R", Ratio, "run_loose_level";
    /// What a seized jackbolt loses when the others are brought up.
    SEIZED_LOSS = "v_s", Ratio, "seized_loss";
    /// Jackbolts that the driver turns in its other position.
    BLOCK = "n_b", Count, "block_count";
    /// What the other position still holds.
    BLOCK_LEFT = "f_b", Ratio, "block_left";
    /// Spread of the torque from spindle to spindle, as a ± limit.
    SPINDLE_SCATTER = "s_d", Ratio, "spindle_scatter";
    /// Highest level of the driver.
    LEVEL_LIMIT = "f_max", Ratio, "level_limit";
    /// Height of the tensioner's body.
    BODY_HEIGHT = "h_b", Length, "body_height";
    /// How far the stud stands above the body.
    ABOVE_BODY = "u_b", Length, "above_body";
    /// Gap between body and washer before the first turn.
    START_GAP = "g_0", Length, "start_gap";
    /// What the joint closes beyond its elastic give.
    CLOSING = "g_c", Length, "closing";
    /// Travel kept in reserve.
    RESERVE = "g_r", Length, "travel_reserve";
    /// Travel that a jackbolt needs.
    TRAVEL = "g", Length, "jackbolt_travel";
}
