//! ASME B18.2.2: heavy hexagon nuts for inch studs.

use super::{symbols::*, validity};
use crate::formula::fixed;
use crate::units::Dimension;

formulas! {
    /// Width across the flats: 1.5 d + 1/8 in; the three exceptions are 5/16, 7/16 and 9/16 in.
    ACROSS_FLATS_OF = "asme_b18_2_2.across_flats", ACROSS_FLATS,
        1.5 * DIAMETER + fixed("1/8", "in", 0.125 * 0.0254, Dimension::Length),
        "ASME B18.2.2", validity::HEAVY_HEX;
    /// Height, taken as one diameter; the tables are up to 1/32 in lower.
    NUT_HEIGHT_OF = "asme_b18_2_2.nut_height", NUT_HEIGHT,
        DIAMETER,
        "ASME B18.2.2", validity::HEAVY_HEX, from_memory;
}
