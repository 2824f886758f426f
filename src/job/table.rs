//! The table of keys. One line of it is a key that the reader fills, that checks look at, that families and joints are
//! asked for, and that `jobs/reference.yaml` explains.

use crate::yaml::At;

/// Where a number must lie, in SI.
#[derive(Clone, Copy, Debug)]
pub enum Range {
    /// Above zero.
    Positive,
    /// Between the two, neither of them included.
    Open(f64, f64),
    /// Between the two, both included.
    Within(f64, f64),
}

impl Range {
    /// Whether a number lies in it.
    pub fn holds(self, si: f64) -> bool {
        match self {
            Self::Positive => si > 0.0,
            Self::Open(least, most) => si > least && si < most,
            Self::Within(least, most) => si >= least && si <= most,
        }
    }
}

/// Who must give a fact that is missing; printed beside its empty box.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Who {
    /// The planner of the work.
    Planner,
    /// The engineer who answers for the numbers.
    Engineer,
    /// The tool store.
    ToolStore,
    /// The operator of the plant.
    Operator,
    /// The crew lead.
    CrewLead,
}

impl Who {
    /// The key of the word that is printed.
    pub const fn key(self) -> &'static str {
        match self {
            Self::Planner => "planner",
            Self::Engineer => "engineer",
            Self::ToolStore => "tool_store",
            Self::Operator => "operator",
            Self::CrewLead => "crew_lead",
        }
    }
}

/// What may stand behind a key.
#[derive(Clone, Copy, Debug)]
pub enum Kind {
    /// One value.
    Value,
    /// Keys of their own.
    Group(fn() -> Vec<&'static Field>),
    /// A list, or one of its items alone.
    List(&'static Kind),
    /// Entries by names that the user chose.
    Named(&'static Kind),
}

/// What the table says of a key, whatever its type.
#[derive(Debug)]
pub struct Field {
    /// Its path as messages and documents name it: `studs.grip`, `tools.*.serial`. What families and joints may say has
    /// no prefix.
    pub path: &'static str,
    /// What may stand there.
    pub kind: Kind,
    /// Who is asked for it where it is missing.
    pub who: Who,
    /// Where its number must lie.
    pub range: Option<Range>,
    /// The list of the job in which its name must be described.
    pub list: Option<&'static str>,
    /// Whether its name may stand alone where the job has no such list.
    pub list_optional: bool,
    /// Whether its text reaches paper.
    pub printed: bool,
}

impl Field {
    /// A key of which nothing more is said.
    pub const fn new(path: &'static str, kind: Kind, who: Who) -> Self {
        Self {
            path,
            kind,
            who,
            range: None,
            list: None,
            list_optional: false,
            printed: true,
        }
    }

    /// Its name, as the user types it.
    pub fn name(&self) -> &'static str {
        self.path.rsplit('.').next().unwrap_or_default()
    }
}

/// A key of the group `G` with its type: how its value is reached, and what holds where nobody gives it.
#[derive(Debug)]
pub struct Key<G: 'static, T: 'static> {
    /// The line of the table.
    pub field: Field,
    /// What the group says of it.
    pub get: fn(&G) -> Option<&At<T>>,
    /// Our default.
    pub default: Option<fn() -> T>,
}

/// Groups of keys. `asks` names who gives a missing value; a line is
/// `name [required]: Type = default, range = .., list = .., who = ..;` with all but name and type left out where there
/// is nothing to say.
macro_rules! keys {
    ($($(#[$about:meta])* $group:ident at $path:literal asks $who:ident {
        $($(#[$meaning:meta])* $name:ident $([$required:ident])? : $type:ty $(= $default:expr)?
            $(, $attribute:ident = $value:expr)* ;)*
    })*) => { $(
        $(#[$about])*
        #[derive(Debug, serde::Deserialize)]
        pub struct $group {
            $($(#[$meaning])* pub $name: $crate::job::table::slot!($([$required])? $type),)*
        }

        #[allow(non_upper_case_globals, reason = "a constant of the table is named like its key")]
        impl $group {
            $($(#[$meaning])* pub const $name: $crate::job::table::Key<Self, $type> = $crate::job::table::Key {
                field: $crate::job::table::Field {
                    $($attribute: $crate::job::table::attribute!($attribute $value),)*
                    ..$crate::job::table::Field::new(
                        concat!($path, stringify!($name)),
                        <$type as $crate::job::values::Value>::KIND,
                        $crate::job::Who::$who,
                    )
                },
                get: |group| $crate::job::table::value!($([$required])? group.$name),
                default: $crate::job::table::default!($($default)?),
            };)*

            /// The names of its keys.
            pub const NAMES: &'static [&'static str] = &[$(stringify!($name)),*];

            /// Its lines of the table.
            pub fn fields() -> Vec<&'static $crate::job::table::Field> {
                vec![$(const { &Self::$name.field }),*]
            }
        }

        impl $crate::job::values::Value for $group {
            const KIND: $crate::job::table::Kind = $crate::job::table::Kind::Group(Self::fields);

            fn walk(
                &self,
                _: &'static $crate::job::table::Field,
                place: $crate::report::Place,
                visit: &mut dyn $crate::job::values::Visit,
            ) {
                $(if let Some(value) = (Self::$name.get)(self) {
                    value.walk(const { &Self::$name.field }, place, visit);
                })*
            }
        }
    )* };
}
macro_rules! slot {
    ([required] $type:ty) => { $crate::yaml::At<$type> };
    ($type:ty) => { Option<$crate::yaml::At<$type>> };
}
macro_rules! value {
    ([required] $group:ident . $name:ident) => {
        Some(&$group.$name)
    };
    ($group:ident . $name:ident) => {
        $group.$name.as_ref()
    };
}
macro_rules! default {
    () => {
        None
    };
    ($value:expr) => {
        Some(|| $value)
    };
}
macro_rules! attribute {
    (range $value:expr) => {
        Some($value)
    };
    (list $value:expr) => {
        Some($value)
    };
    ($other:ident $value:expr) => {
        $value
    };
}
pub(crate) use {attribute, default, keys, slot, value};
