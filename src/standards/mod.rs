//! What the standards and handbooks say: one file per document and edition, its tables and its formulas.
//!
//! A formula names its document and where it holds. A table says where its figures come from; one from memory
//! alone is marked, and whatever follows from it is printed as not confirmed. One set of symbols serves all
//! documents ([`symbols`]), so a note lists each input once, whatever letter the document uses.

use crate::formula::Formula;

macro_rules! formulas {
    ($($(#[$doc:meta])* $name:ident = $id:literal, $symbol:expr, $expression:expr, $source:expr, $validity:expr $(, $mark:ident)?;)*) => {
        $(
            $(#[$doc])*
            pub static $name: std::sync::LazyLock<$crate::formula::Formula> =
                std::sync::LazyLock::new(|| {
                    $crate::formula::Formula::new($id, $symbol, $expression, $source, $validity)
                        $(.$mark())?
                });
        )*

        /// Every formula of this document.
        pub(super) fn all() -> Vec<&'static $crate::formula::Formula> {
            vec![$(&*$name),*]
        }
    };
}

pub mod api_6a;
pub mod asme_b18_2_2;
pub mod asme_b18_2_4_6m;
pub mod asme_b1_1;
pub mod asme_pcc_1;
mod astm_a193;
mod astm_a320;
mod astm_a453;
mod astm_a540;
pub mod astm_f436;
pub mod collar;
mod en_10269;
pub mod iso_16047;
mod iso_261;
pub mod iso_273;
mod iso_3506_1;
pub mod iso_4032;
pub mod iso_4759_1;
pub mod iso_724;
pub mod iso_898_1;
pub mod jackbolts;
pub mod jis_b_1083;
pub mod materials;
pub mod mechanics;
pub mod nasa_std_5020;
mod near;
pub mod nut_factor;
pub mod practice;
mod strength_table;
pub mod symbols;
#[cfg(test)]
mod tests;
pub mod threads;
mod threads_inch;
mod threads_metric;
pub mod torque;
pub mod validity;
pub mod vdi_2230;

pub use materials::{MaterialError, Strength, strength};
pub use threads::{Series, Thread, ThreadError};
pub use torque::TorqueFormula;

/// Every formula of every document, in the order of their files.
pub fn all_formulas() -> Vec<&'static Formula> {
    [
        api_6a::all(),
        asme_b1_1::all(),
        asme_b18_2_2::all(),
        asme_pcc_1::all(),
        collar::all(),
        iso_4759_1::all(),
        iso_16047::all(),
        iso_724::all(),
        iso_898_1::all(),
        jackbolts::all(),
        jis_b_1083::all(),
        mechanics::all(),
        nasa_std_5020::all(),
        nut_factor::all(),
        practice::all(),
        vdi_2230::all(),
    ]
    .concat()
}

/// The formula of this id.
pub fn formula(id: &str) -> Option<&'static Formula> {
    all_formulas().into_iter().find(|formula| formula.id == id)
}
