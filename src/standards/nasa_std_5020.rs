//! NASA-STD-5020: greatest and least preload from a scatter that is given as a ± limit.

use super::{symbols::*, validity};

formulas! {
    /// Greatest load.
    GREATEST_LOAD_OF = "nasa_std_5020.greatest_load", GREATEST_LOAD,
        LOAD * (1.0 + SCATTER),
        "NASA-STD-5020", validity::SCATTER_LIMIT;
    /// Least load of a single stud, before it settles.
    LEAST_LOAD_OF = "nasa_std_5020.least_load", LEAST_LOAD,
        LOAD * (1.0 - SCATTER),
        "NASA-STD-5020", validity::SCATTER_LIMIT;
    /// What settling leaves of the least load.
    LOAD_LEFT_OF = "nasa_std_5020.load_left", LOAD_LEFT,
        LEAST_LOAD * (1.0 - LOSS),
        "NASA-STD-5020", validity::SCATTER_LIMIT;
}
