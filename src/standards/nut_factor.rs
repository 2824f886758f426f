//! Torque by a nut factor that was measured or given: Shigley, ASME PCC-1, NASA-STD-5020 in the same form.

use super::{symbols::*, validity};
use crate::formula::pi;

formulas! {
    /// Torque from the load.
    TORQUE_OF = "nut_factor.torque", TORQUE,
        NUT_FACTOR * DIAMETER * LOAD,
        "ASME PCC-1-2013, Appendix K", validity::NUT_FACTOR_MEASURED;
    /// Load from the torque.
    LOAD_OF = "nut_factor.load", LOAD,
        TORQUE / (NUT_FACTOR * DIAMETER),
        "ASME PCC-1-2013, Appendix K", validity::NUT_FACTOR_MEASURED;
    /// The nut factor that a torque and its load make.
    NUT_FACTOR_OF = "nut_factor.nut_factor", NUT_FACTOR,
        TORQUE / (DIAMETER * LOAD),
        "ASME PCC-1-2013, Appendix K", validity::NUT_FACTOR_MEASURED;
    /// Torque that turns the nut back: the slope, counted once for tightening, now helps.
    LOOSENING_TORQUE_OF = "nut_factor.loosening_torque", LOOSENING_TORQUE,
        LOAD * (NUT_FACTOR * DIAMETER - PITCH / pi()),
        "ASME PCC-1-2013, Appendix K", validity::SAME_FRICTION, from_memory;
}
