//! ASME PCC-1-2010: stretch of a flange stud.

use super::{symbols::*, validity};

formulas! {
    /// Length over which the stud stretches: from mid nut to mid nut, a nut taken as one diameter high; in a tapped
    /// hole half a diameter takes the place of half a nut.
    EFFECTIVE_LENGTH_OF = "asme_pcc_1.effective_length", EFFECTIVE_LENGTH,
        GRIP + 2.0 * 0.5 * DIAMETER,
        "ASME PCC-1-2010", validity::ELASTIC;
    /// Stretch under a load.
    STRETCH_OF = "asme_pcc_1.stretch", STRETCH,
        LOAD * EFFECTIVE_LENGTH / (MODULUS * STRESS_AREA),
        "ASME PCC-1-2010", validity::ELASTIC;
    /// Stretch under a stress on the root area.
    STRETCH_OF_ROOT_STRESS = "asme_pcc_1.stretch_of_root_stress", STRETCH,
        (ROOT_STRESS * EFFECTIVE_LENGTH / MODULUS) * (ROOT_AREA / STRESS_AREA),
        "ASME PCC-1-2010", validity::ELASTIC;
    /// Load that a stretch means.
    LOAD_OF_STRETCH = "asme_pcc_1.load_of_stretch", LOAD,
        STRETCH * MODULUS * STRESS_AREA / EFFECTIVE_LENGTH,
        "ASME PCC-1-2010", validity::ELASTIC;
}
