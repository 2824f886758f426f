//! Mechanics and geometry that no bolting document owns: area, stress, energy, push of a pressure, straight lines.

use super::{symbols::*, validity};
use crate::formula::{degrees, fixed, pi};
use crate::units::Dimension;

/// The standard of the quantities of mechanics, where stress, pressure and energy are defined.
const QUANTITIES: &str = "ISO 80000-4:2019";
/// The standard of the quantities of space, where areas are defined.
const SPACE: &str = "ISO 80000-3:2019";
/// The standard acceleration of free fall, exact by definition: 3rd CGPM, 1901.
const FREE_FALL: &str = "ISO 80000-3:2019; 3rd CGPM, 1901";

formulas! {
    /// Area of the root diameter.
    ROOT_AREA_OF = "mechanics.root_area", ROOT_AREA,
        (pi() / 4.0) * ROOT_DIAMETER.square(),
        SPACE, validity::GEOMETRY;
    /// Area of the nominal diameter.
    NOMINAL_AREA_OF = "mechanics.nominal_area", NOMINAL_AREA,
        (pi() / 4.0) * DIAMETER.square(),
        SPACE, validity::GEOMETRY;
    /// Load that a stress on the stress area makes.
    LOAD_OF_STRESS = "mechanics.load_of_stress", LOAD,
        STRESS * STRESS_AREA,
        QUANTITIES, validity::GEOMETRY;
    /// Load that a stress on the root area makes.
    LOAD_OF_ROOT_STRESS = "mechanics.load_of_root_stress", LOAD,
        ROOT_STRESS * ROOT_AREA,
        QUANTITIES, validity::GEOMETRY;
    /// Load at a share of yield in tension alone.
    LOAD_OF_YIELD_SHARE = "mechanics.load_of_yield_share", LOAD,
        YIELD_SHARE * YIELD * STRESS_AREA,
        QUANTITIES, validity::ELASTIC;
    /// The same on the root area.
    LOAD_OF_YIELD_SHARE_ON_ROOT = "mechanics.load_of_yield_share_on_root", LOAD,
        YIELD_SHARE * YIELD * ROOT_AREA,
        QUANTITIES, validity::ELASTIC;
    /// Load at a share of the tensile strength.
    LOAD_OF_STRENGTH_SHARE = "mechanics.load_of_strength_share", LOAD,
        SHARE * TENSILE * STRESS_AREA,
        QUANTITIES, validity::ELASTIC;
    /// Load at a share of the proof strength.
    LOAD_OF_PROOF_SHARE = "mechanics.load_of_proof_share", LOAD,
        SHARE * PROOF * STRESS_AREA,
        QUANTITIES, validity::ELASTIC;
    /// Stress that the load makes on the stress area.
    STRESS_OF = "mechanics.stress", STRESS,
        LOAD / STRESS_AREA,
        QUANTITIES, validity::GEOMETRY;
    /// Stress that the load makes on the root area.
    ROOT_STRESS_OF = "mechanics.root_stress", ROOT_STRESS,
        LOAD / ROOT_AREA,
        QUANTITIES, validity::GEOMETRY;
    /// Share of yield that a stress reaches.
    YIELD_SHARE_OF = "mechanics.yield_share", YIELD_SHARE,
        STRESS / YIELD,
        QUANTITIES, validity::GEOMETRY;
    /// Share of yield that a stress on the root area reaches.
    ROOT_YIELD_SHARE_OF = "mechanics.root_yield_share", YIELD_SHARE,
        ROOT_STRESS / YIELD,
        QUANTITIES, validity::GEOMETRY;
    /// Share of yield that a combined stress reaches.
    COMBINED_SHARE_OF = "mechanics.combined_yield_share", YIELD_SHARE,
        COMBINED_STRESS / YIELD,
        QUANTITIES, validity::DUCTILE;
    /// Pressure under the nut.
    BEARING_PRESSURE_OF = "mechanics.bearing_pressure", BEARING_PRESSURE,
        LOAD / ((pi() / 4.0) * (BEARING_OUTER.square() - HOLE.square())),
        QUANTITIES, validity::FLAT_FACE;
    /// Push of one unit of pressure on an opening.
    FORCE_PER_PRESSURE_OF = "mechanics.force_per_pressure", FORCE_PER_PRESSURE,
        (pi() / 4.0) * OPENING.square(),
        QUANTITIES, validity::GEOMETRY;
    /// Area of a round opening.
    OPENING_AREA_OF = "mechanics.opening_area", OPENING_AREA,
        (pi() / 4.0) * OPENING.square(),
        SPACE, validity::GEOMETRY;
    /// Push of one unit of pressure on an opening of any shape.
    FORCE_PER_PRESSURE_ON = "mechanics.force_per_pressure_on_area", FORCE_PER_PRESSURE,
        OPENING_AREA,
        QUANTITIES, validity::GEOMETRY;
    /// Mass that weighs as much as the cover is pushed.
    MASS_OF_FORCE = "mechanics.equivalent_mass", EQUIVALENT_MASS,
        COVER_FORCE / fixed("9.80665", "m/s²", 9.806_65, Dimension::Acceleration),
        FREE_FALL, validity::GEOMETRY;
    /// Push of the pressure on the cover.
    COVER_FORCE_OF = "mechanics.cover_force", COVER_FORCE,
        PRESSURE * FORCE_PER_PRESSURE,
        QUANTITIES, validity::GEOMETRY;
    /// Share of the cover's push that one stud takes.
    LOAD_OF_COVER = "mechanics.load_of_cover", LOAD,
        COVER_FORCE / COUNT,
        QUANTITIES, validity::EQUAL_LOADS;
    /// Loaded area of a ring gasket.
    GASKET_AREA_OF = "mechanics.gasket_area", GASKET_AREA,
        (pi() / 4.0) * (GASKET_OUTER.square() - GASKET_INNER.square()),
        SPACE, validity::GEOMETRY;
    /// Mean stress on the gasket.
    GASKET_STRESS_OF = "mechanics.gasket_stress", GASKET_STRESS,
        COUNT * LOAD / GASKET_AREA,
        QUANTITIES, validity::EQUAL_LOADS;
    /// Load of one stud that makes a stress on the gasket.
    LOAD_OF_GASKET_STRESS = "mechanics.load_of_gasket_stress", LOAD,
        GASKET_STRESS * GASKET_AREA / COUNT,
        QUANTITIES, validity::EQUAL_LOADS;
    /// Energy stored in one stud and what it clamps.
    ENERGY_OF = "mechanics.stored_energy", ENERGY,
        LOAD.square() * (STUD_COMPLIANCE + CLAMP_COMPLIANCE) / 2.0,
        QUANTITIES, validity::ELASTIC;
    /// Stretch of the stud by its compliance.
    STRETCH_OF_COMPLIANCE = "mechanics.stretch", STRETCH,
        LOAD * STUD_COMPLIANCE,
        QUANTITIES, validity::ELASTIC;
    /// Turn of the nut from snug: the stud stretches and the parts give way.
    TURN_OF = "mechanics.turn", TURN,
        degrees(360.0) * LOAD * (STUD_COMPLIANCE + CLAMP_COMPLIANCE) / PITCH,
        QUANTITIES, validity::ISOLATED_STUD;
    /// Turn of the nut for a stretch alone.
    TURN_OF_STRETCH = "mechanics.turn_of_stretch", TURN,
        degrees(360.0) * STRETCH / PITCH,
        SPACE, validity::GEOMETRY;
    /// Load of a turn from snug.
    LOAD_OF_TURN = "mechanics.load_of_turn", LOAD,
        TURN * PITCH / (degrees(360.0) * (STUD_COMPLIANCE + CLAMP_COMPLIANCE)),
        QUANTITIES, validity::ISOLATED_STUD;
    /// What stands out at each end of a stud that is set in the middle.
    PROTRUSION_OF = "mechanics.protrusion", PROTRUSION,
        (STUD_LENGTH - GRIP - 2.0 * NUT_HEIGHT) / 2.0,
        SPACE, validity::GEOMETRY;
    /// What stands out of the far nut when the near end is given.
    PROTRUSION_FAR_OF = "mechanics.protrusion_far", PROTRUSION_FAR,
        STUD_LENGTH - GRIP - 2.0 * NUT_HEIGHT - PROTRUSION,
        SPACE, validity::GEOMETRY;
    /// What stands out of the turned nut when the far end is given.
    PROTRUSION_NEAR_OF = "mechanics.protrusion_near", PROTRUSION,
        STUD_LENGTH - GRIP - 2.0 * NUT_HEIGHT - PROTRUSION_FAR,
        SPACE, validity::GEOMETRY;
    /// What stands out of the turned nut of a stud in a tapped hole.
    PROTRUSION_TAPPED_OF = "mechanics.protrusion_tapped", PROTRUSION,
        STUD_LENGTH - GRIP - NUT_HEIGHT - ENGAGEMENT,
        SPACE, validity::GEOMETRY;
    /// Thread held in a tapped hole.
    ENGAGEMENT_OF = "mechanics.engagement", ENGAGEMENT,
        STUD_LENGTH - GRIP - NUT_HEIGHT - PROTRUSION,
        SPACE, validity::GEOMETRY;
    /// Engagement in diameters.
    ENGAGEMENT_RATIO_OF = "mechanics.engagement_ratio", ENGAGEMENT_RATIO,
        ENGAGEMENT / DIAMETER,
        SPACE, validity::GEOMETRY;
    /// Pump pressure for a torque, on the straight line between two points of the calibration.
    PRESSURE_BETWEEN = "mechanics.pump_pressure", PUMP_PRESSURE,
        PRESSURE_BELOW + (TORQUE - TORQUE_BELOW) * (PRESSURE_ABOVE - PRESSURE_BELOW) / (TORQUE_ABOVE - TORQUE_BELOW),
        SPACE, validity::BETWEEN_POINTS;
    /// Torque of a pump pressure, on the same straight line.
    TORQUE_BETWEEN = "mechanics.torque_at_pressure", TORQUE,
        TORQUE_BELOW + (PUMP_PRESSURE - PRESSURE_BELOW) * (TORQUE_ABOVE - TORQUE_BELOW) / (PRESSURE_ABOVE - PRESSURE_BELOW),
        SPACE, validity::BETWEEN_POINTS;
    /// Torque of a pass.
    PASS_TORQUE_OF = "mechanics.pass_torque", PASS_TORQUE,
        SHARE * TORQUE,
        QUANTITIES, validity::GEOMETRY;
    /// Load after a pass, on the stud that was turned last: at constant friction load follows torque.
    PASS_LOAD_OF = "mechanics.pass_load", PASS_LOAD,
        LOAD * PASS_TORQUE / TORQUE,
        QUANTITIES, validity::FRICTION_KNOWN;
    /// How far the hand on a wrench travels in a release round: an arc.
    HAND_TRAVEL_OF = "mechanics.hand_travel", HAND_TRAVEL,
        WRENCH_LENGTH * ROUND_TURN,
        SPACE, validity::GEOMETRY;
    /// What a click wrench is set to when an adapter makes it longer.
    WRENCH_SETTING_OF = "mechanics.wrench_setting", WRENCH_SETTING,
        TORQUE * WRENCH_LENGTH / (WRENCH_LENGTH + ADAPTER_LENGTH),
        QUANTITIES, validity::ADAPTER_IN_LINE;
}
