//! The ids that the code asks for, as constants, so that a slip is a compile error and an id
//! without wording a failed test. Findings name their own ids (`report::Finding`); labels that a
//! layout takes as a whole group come from `Wording::labels`.

/// Constants of ids in modules of their first key. Each module also lists all of its ids, for the tests.
macro_rules! ids {
    ($($group:ident { $($name:ident = $rest:literal;)* })*) => {
        $(
            #[doc = concat!("Ids below `", stringify!($group), "`.")]
            pub mod $group {
                $(
                    #[doc = concat!("`", stringify!($group), ".", $rest, "`")]
                    pub const $name: &str = concat!(stringify!($group), ".", $rest);
                )*
                /// All of them.
                pub const ALL: &[&str] = &[$($name),*];
            }
        )*
        /// All ids of this file.
        pub(super) const GROUPS: &[&[&str]] = &[$($group::ALL),*];
    };
}

mod cards;
mod commands;
mod hazards;
mod isolations;
mod notes;
mod packs;

pub use cards::{
    danger, document, draft, footer, gap, missing, order, page, pass, record, register, round,
    running, sign, target, tick, units,
};
pub use commands::cli;
pub use hazards::cautions;
pub use isolations::isolation;
pub use notes::note;
pub use packs::{pack, procedure};

/// Every id that the code asks for by a constant: a text, a list or a group of rows.
pub fn all() -> impl Iterator<Item = &'static str> {
    let files = [
        cards::GROUPS,
        commands::GROUPS,
        hazards::GROUPS,
        isolations::GROUPS,
        notes::GROUPS,
        packs::GROUPS,
    ];
    files.into_iter().flatten().copied().flatten().copied()
}
