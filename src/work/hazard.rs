//! What can hurt: energies and other hazards, how grave they are, and what removes or holds them.

use super::{Value, Values};

/// How grave a caution is. Source of the order and meaning of the words: ANSI Z535.4 and ISO 3864-2 as commonly used.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, serde::Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Signal {
    /// Kills or maims if nothing is done.
    Danger,
    /// Can kill or maim.
    Warning,
    /// Can hurt.
    Caution,
    /// Spoils the work.
    Notice,
}

impl Signal {
    /// The key of its word below `signal`.
    pub const fn key(self) -> &'static str {
        match self {
            Self::Danger => "danger",
            Self::Warning => "warning",
            Self::Caution => "caution",
            Self::Notice => "notice",
        }
    }
}

/// Hazards whose cautions share one panel of a card.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Family {
    /// What comes out of the joint or is missing in its air.
    Contents,
    /// Parts of the plant that move or fall.
    Machine,
    /// Oil, arm and head of the tool.
    Tool,
    /// Load in studs.
    Strain,
    /// Hot and cold.
    Temperature,
    /// What hangs or falls.
    Height,
    /// Weight in hands, noise, vibration, skin.
    Handling,
    /// What spoils the work.
    Quality,
}

macro_rules! hazards {
    ($($(#[$doc:meta])* $kind:ident = $key:literal, $signal:ident, $family:ident;)*) => {
        /// What can hurt, in the order of harm.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub enum HazardKind { $($(#[$doc])* $kind,)* }

        impl HazardKind {
            /// Every kind, in the order of harm.
            pub const ALL: &'static [Self] = &[$(Self::$kind,)*];

            /// The key of its words below `hazard`.
            pub const fn key(self) -> &'static str {
                match self { $(Self::$kind => $key,)* }
            }

            /// How grave it is. Heat is a caution up to 120 °C, see [`Hazard::signal`].
            const fn usual_signal(self) -> Signal {
                match self { $(Self::$kind => Signal::$signal,)* }
            }

            /// The panel in which its caution stands.
            pub const fn family(self) -> Family {
                match self { $(Self::$kind => Family::$family,)* }
            }
        }
    };
}

hazards! {
    /// Nobody says what can move or escape.
    NotKnown = "not_known", Danger, Contents;
    /// Pressure behind the joint.
    Pressure = "pressure", Danger, Contents;
    /// Contents that poison.
    Toxic = "toxic", Danger, Contents;
    /// Gas in which nobody can breathe.
    InertGas = "inert_gas", Danger, Contents;
    /// Contents that burn.
    Flammable = "flammable", Danger, Contents;
    /// Oxygen, in which oil burns.
    Oxygen = "oxygen", Danger, Contents;
    /// A space whose air can kill.
    ConfinedSpace = "confined_space", Danger, Contents;
    /// A part that can turn or fall.
    Machine = "machine", Danger, Machine;
    /// A ram, cylinder or accumulator.
    Ram = "ram", Danger, Machine;
    /// A drive that can start from elsewhere.
    Drive = "drive", Danger, Machine;
    /// Bolts that look alike.
    LookAlike = "look_alike", Danger, Quality;
    /// A jet of oil from the tool.
    Oil = "oil", Danger, Tool;
    /// Work on studs under pressure, which is outside a pack.
    HotBolting = "hot_bolting", Danger, Contents;
    /// The last fasteners gather the load of those let go.
    LastFasteners = "last_fasteners", Warning, Strain;
    /// A powered head that turns at once.
    Driver = "driver", Warning, Tool;
    /// A reaction arm.
    ReactionArm = "reaction_arm", Warning, Tool;
    /// A hose that lets go.
    Hose = "hose", Warning, Tool;
    /// A pocket of pressure that no vent shows.
    TrappedPocket = "trapped_pocket", Warning, Contents;
    /// A stud that breaks flies along its axis.
    StudInLine = "stud_in_line", Warning, Strain;
    /// A part that drops, swings or jumps as studs go.
    SuddenRelease = "sudden_release", Warning, Machine;
    /// A hot surface.
    Heat = "heat", Warning, Temperature;
    /// Something that falls from a height.
    DroppedObject = "dropped_object", Warning, Height;
    /// Work where people can fall.
    Height = "height", Warning, Height;
    /// A load on a hook.
    HungLoad = "hung_load", Warning, Height;
    /// A hose of compressed air that lets go.
    AirHose = "air_hose", Warning, Tool;
    /// Contents that harm skin and lungs.
    Corrosive = "corrosive", Warning, Contents;
    /// Scale that catches fire in air.
    Pyrophoric = "pyrophoric", Warning, Contents;
    /// Harmful fibre of an old gasket.
    Fibre = "fibre", Warning, Contents;
    /// Flame and heaters.
    HotWork = "hot_work", Warning, Contents;
    /// Mains at a pump.
    Electrical = "electrical", Warning, Tool;
    /// A loaded nut that is cut throws pieces.
    Fragments = "fragments", Warning, Strain;
    /// The pressure test that follows.
    LeakTest = "leak_test", Warning, Contents;
    /// A fastener that is turned twice after a break.
    TurnedTwice = "turned_twice", Warning, Quality;
    /// A battery in the tool.
    Battery = "battery", Caution, Tool;
    /// Weight in hands.
    Handling = "handling", Caution, Handling;
    /// A cold surface.
    Cold = "cold", Caution, Temperature;
    /// Noise of a powered tool.
    Noise = "noise", Caution, Handling;
    /// Vibration of a powered tool.
    Vibration = "vibration", Caution, Handling;
    /// Lubricant on skin.
    Lubricant = "lubricant", Caution, Handling;
    /// Wind, lightning, ice.
    Weather = "weather", Caution, Height;
    /// Settings that hold for one lubricant.
    OneLubricant = "one_lubricant", Notice, Quality;
    /// A pass that a break interrupts.
    AfterBreak = "after_break", Notice, Quality;
}

impl HazardKind {
    /// Its word in a job.
    pub fn word(self) -> String {
        self.key().replace('_', " ")
    }
}

/// One hazard of a joint.
#[derive(Clone, Debug, PartialEq)]
pub struct Hazard {
    /// What it is.
    pub kind: HazardKind,
    /// How grave it is.
    pub signal: Signal,
    /// Whether it stands behind the joint until it is proved gone: then it is in the danger panel.
    pub is_behind: bool,
    /// Magnitudes and names: `fluid`, `pressure`, `mass`...
    pub values: Values,
    /// What removes or holds it: a sheet, a support, a lock, a word.
    pub held_by: Value,
}

impl Hazard {
    /// A hazard of the usual gravity, not behind the joint.
    pub const fn new(kind: HazardKind, held_by: Value) -> Self {
        Self {
            kind,
            signal: kind.usual_signal(),
            is_behind: false,
            values: Vec::new(),
            held_by,
        }
    }

    /// It stands in the danger panel.
    #[must_use]
    pub const fn behind(mut self) -> Self {
        self.is_behind = true;
        self
    }

    /// Less or more grave than usual.
    #[must_use]
    pub const fn signalled(mut self, signal: Signal) -> Self {
        self.signal = signal;
        self
    }

    /// A magnitude or name.
    #[must_use]
    pub fn with(mut self, name: &'static str, value: Value) -> Self {
        self.values.push((name, value));
        self
    }
}
