//! VDI 2230 part 1 (2015): tightening torque, load at a share of yield with torsion, scatter, compliance.

use super::{symbols::*, validity};
use crate::formula::{Expression, cube_root, min, pi, sqrt};

fn lead() -> Expression {
    0.16 * PITCH
}

fn thread() -> Expression {
    0.58 * PITCH_DIAMETER * THREAD_FRICTION
}

fn bearing() -> Expression {
    (BEARING_DIAMETER / 2.0) * BEARING_FRICTION
}

/// Shear over tension in the stress diameter, for a section that yields all over (W_p = π/12 d0³).
fn shear_share() -> Expression {
    1.5 * (PITCH_DIAMETER / STRESS_DIAMETER)
        * (PITCH / (pi() * PITCH_DIAMETER) + 1.155 * THREAD_FRICTION)
}

formulas! {
    /// Torque from the load.
    TORQUE_OF = "vdi_2230.torque", TORQUE,
        LOAD * (lead() + thread() + bearing()),
        "VDI 2230-1:2015, R13", validity::FRICTION_KNOWN;
    /// Load from the torque.
    LOAD_OF = "vdi_2230.load", LOAD,
        TORQUE / (lead() + thread() + bearing()),
        "VDI 2230-1:2015, R13", validity::FRICTION_KNOWN;
    /// The part of the torque that twists the stud.
    THREAD_TORQUE_OF = "vdi_2230.thread_torque", THREAD_TORQUE,
        LOAD * (lead() + thread()),
        "VDI 2230-1:2015, R13", validity::FRICTION_KNOWN;
    /// Torque that turns the nut back under the same load.
    LOOSENING_TORQUE_OF = "vdi_2230.loosening_torque", LOOSENING_TORQUE,
        LOAD * (thread() + bearing() - lead()),
        "VDI 2230-1:2015, R13", validity::SAME_FRICTION;
    /// Mean diameter of the bearing face.
    BEARING_DIAMETER_OF = "vdi_2230.bearing_diameter", BEARING_DIAMETER,
        (BEARING_OUTER + HOLE) / 2.0,
        "VDI 2230-1:2015, R13", validity::FLAT_FACE;
    /// Diameter that carries tension and torsion together.
    STRESS_DIAMETER_OF = "vdi_2230.stress_diameter", STRESS_DIAMETER,
        (PITCH_DIAMETER + ROOT_DIAMETER) / 2.0,
        "VDI 2230-1:2015, R7", validity::SIXTY_DEGREES;
    /// Area of that diameter.
    COMBINED_AREA_OF = "vdi_2230.combined_area", COMBINED_AREA,
        (pi() / 4.0) * STRESS_DIAMETER.square(),
        "VDI 2230-1:2015, R7", validity::SIXTY_DEGREES;
    /// Load at which tension and torsion together reach a share of yield; with 90 % the tables of the guideline.
    LOAD_AT_SHARE = "vdi_2230.load_at_yield_share", LOAD,
        YIELD_SHARE * YIELD * COMBINED_AREA / sqrt(1.0 + 3.0 * shear_share().square()),
        "VDI 2230-1:2015, R7", validity::DUCTILE;
    /// Section modulus against torsion when the whole section yields: the one behind [`LOAD_AT_SHARE`].
    TORSION_MODULUS_OF = "vdi_2230.torsion_modulus", TORSION_MODULUS,
        (pi() / 12.0) * (STRESS_DIAMETER.square() * STRESS_DIAMETER),
        "VDI 2230-1:2015, R7", validity::DUCTILE;
    /// Section modulus against torsion while the section stays elastic: 25 % less, so more shear stress.
    ELASTIC_TORSION_MODULUS_OF = "vdi_2230.elastic_torsion_modulus", TORSION_MODULUS,
        (pi() / 16.0) * (STRESS_DIAMETER.square() * STRESS_DIAMETER),
        "VDI 2230-1:2015, R8", validity::ELASTIC;
    /// Shear stress by the thread torque.
    SHEAR_OF = "vdi_2230.shear_stress", SHEAR,
        THREAD_TORQUE / TORSION_MODULUS,
        "VDI 2230-1:2015, R7", validity::DUCTILE;
    /// Combined (von Mises) stress while tightening.
    COMBINED_STRESS_OF = "vdi_2230.combined_stress", COMBINED_STRESS,
        sqrt(STRESS.square() + 3.0 * SHEAR.square()),
        "VDI 2230-1:2015, R7", validity::DUCTILE;
    /// Torque at which a loaded stud reaches a share of yield when all of the torque twists it.
    LIMIT_TORQUE_OF = "vdi_2230.limit_torque", LIMIT_TORQUE,
        TORSION_MODULUS * sqrt(((YIELD_SHARE * YIELD).square() - STRESS.square()) / 3.0),
        "VDI 2230-1:2015, R7", validity::SEIZED;
    /// Tightening factor of a scatter.
    TIGHTENING_FACTOR_OF = "vdi_2230.tightening_factor", TIGHTENING_FACTOR,
        (1.0 + SCATTER) / (1.0 - SCATTER),
        "VDI 2230-1:2015, R1", validity::SCATTER_LIMIT;
    /// Scatter of a tightening factor.
    SCATTER_OF = "vdi_2230.scatter", SCATTER,
        (TIGHTENING_FACTOR - 1.0) / (TIGHTENING_FACTOR + 1.0),
        "VDI 2230-1:2015, R1", validity::SCATTER_LIMIT;
    /// Least load by the tightening factor.
    LEAST_BY_FACTOR = "vdi_2230.least_load", LEAST_LOAD,
        GREATEST_LOAD / TIGHTENING_FACTOR,
        "VDI 2230-1:2015, R1", validity::SCATTER_LIMIT;
    /// Compliance of a stud threaded all along: free length, half a diameter of root in each thread,
    /// the near nut (0.4 d) and the far end (0.4 d in a nut, 0.33 d in a tapped hole).
    STUD_COMPLIANCE_OF = "vdi_2230.stud_compliance", STUD_COMPLIANCE,
        (GRIP / STRESS_AREA + 2.0 * 0.5 * DIAMETER / ROOT_AREA + (FAR_END + 0.4) * DIAMETER / NOMINAL_AREA) / MODULUS,
        "VDI 2230-1:2015, R3", validity::ELASTIC, from_memory;
    /// What one stud can use of wide parts: never more than the parts have.
    CLAMP_DIAMETER_OF = "vdi_2230.clamp_diameter", CLAMP_DIAMETER,
        min(PART_DIAMETER, BEARING_OUTER + GRIP),
        "VDI 2230:1986", validity::ISOLATED_STUD, from_memory;
    /// Growth of the clamped cone with its length.
    CONE_OF = "vdi_2230.cone", CONE,
        cube_root(GRIP * BEARING_OUTER / CLAMP_DIAMETER.square()),
        "VDI 2230:1986", validity::ISOLATED_STUD, from_memory;
    /// Area of the clamped parts that works with one stud.
    CLAMP_AREA_OF = "vdi_2230.clamp_area", CLAMP_AREA,
        (pi() / 4.0) * (BEARING_OUTER.square() - HOLE.square())
            + (pi() / 8.0) * BEARING_OUTER * (CLAMP_DIAMETER - BEARING_OUTER) * ((CONE + 1.0).square() - 1.0),
        "VDI 2230:1986", validity::ISOLATED_STUD, from_memory;
    /// Compliance of the clamped parts.
    CLAMP_COMPLIANCE_OF = "vdi_2230.clamp_compliance", CLAMP_COMPLIANCE,
        GRIP / (MODULUS * CLAMP_AREA),
        "VDI 2230:1986", validity::ISOLATED_STUD, from_memory;
}

/// Share of the diameter that gives way in a nut at the far end.
pub const FAR_NUT: f64 = 0.4;
/// Share of the diameter that gives way in a tapped hole at the far end.
pub const FAR_TAPPED: f64 = 0.33;

/// Scatter of one way of tightening, as ± limits of the load.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScatterRow {
    /// Key of the words for it.
    pub method: &'static str,
    /// With good control.
    pub least: f64,
    /// Otherwise; the default of this program.
    pub greatest: f64,
}

/// Where [`SCATTER_ROWS`] comes from; read in a restatement.
pub const SCATTER_SOURCE: &str = "VDI 2230:1986";

const fn scatter(method: &'static str, least: f64, greatest: f64) -> ScatterRow {
    ScatterRow {
        method,
        least,
        greatest,
    }
}

/// Scatter by way of tightening.
pub const SCATTER_ROWS: &[ScatterRow] = &[
    scatter("yield_controlled", 0.05, 0.12),
    scatter("angle_controlled", 0.05, 0.12),
    scatter("hydraulic_tensioning", 0.09, 0.23),
    scatter("torque_set_by_test", 0.17, 0.23),
    scatter("torque_friction_estimated", 0.23, 0.28),
    scatter("powered_driver", 0.26, 0.43),
];

/// The row of a way of tightening.
pub fn scatter_of(method: &str) -> Option<&'static ScatterRow> {
    SCATTER_ROWS.iter().find(|row| row.method == method)
}
