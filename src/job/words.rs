//! The closed lists of words that a job may choose from.

use serde::Deserialize;

use crate::units::{Dimension, Unit, unit_spelled};

macro_rules! words {
    ($($(#[$doc:meta])* $name:ident { $($variant:ident = $word:literal,)* })*) => { $(
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize)]
        pub enum $name { $(
            #[doc = concat!("`", $word, "`")]
            #[serde(rename = $word)]
            $variant,
        )* }

        impl super::values::Value for $name {}
        super::values::plain_copies! { $name }

        impl $name {
            /// Every word of the list, in its order.
            pub const ALL: &'static [Self] = &[$(Self::$variant,)*];

            /// The word as the job writes it.
            pub const fn word(self) -> &'static str {
                match self { $(Self::$variant => $word,)* }
            }
        }
    )* };
}

words! {
    /// Status of the issued document.
    IssueStatus {
        ForComment = "for comment",
        ForApproval = "for approval",
        ForConstruction = "for construction",
    }
    /// The law that the work is done under.
    Regime {
        GreatBritain = "GB",
        UnitedStates = "US",
        EuropeanUnion = "EU",
        Site = "site",
    }
    /// A system of units.
    System {
        Metric = "metric",
        Inch = "inch",
    }
    /// A kind of tool.
    ToolKind {
        HandTorqueWrench = "hand torque wrench",
        HydraulicTorqueWrench = "hydraulic torque wrench",
        Pump = "pump",
        Hose = "hose",
        Coupler = "coupler",
        Gauge = "gauge",
        Socket = "socket",
        BackUpSpanner = "back-up spanner",
        LooseningBar = "loosening bar",
        DepthGauge = "depth gauge",
        FeelerGauge = "feeler gauge",
        Thermometer = "thermometer",
        MultiSpindleDriver = "multi-spindle driver",
        LiftingGear = "lifting gear",
    }
    /// A kind of gasket.
    GasketKind {
        RubberSheet = "rubber sheet",
        PtfeSheet = "PTFE sheet",
        GraphiteSheet = "graphite sheet",
        FibreSheet = "fibre sheet",
        SpiralWound = "spiral wound",
        SerratedMetal = "serrated metal",
        RingJoint = "ring joint",
        MetalJacketed = "metal jacketed",
        MetalToMetal = "metal to metal",
    }
    /// Criticality class: A is witnessed throughout, B is sampled, C is signed by the supervisor.
    Class {
        A = "A",
        B = "B",
        C = "C",
    }
    /// A hazard of a joint.
    Hazard {
        Hydrogen = "hydrogen",
        Toxic = "toxic",
        Flammable = "flammable",
        Oxygen = "oxygen",
        Steam = "steam",
        Corrosive = "corrosive",
        Pyrophoric = "pyrophoric",
        InertGas = "inert gas",
        HazardousFibre = "hazardous fibre",
        ConfinedSpace = "confined space",
        Height = "height",
        RotatingMachine = "rotating machine",
        PastLeak = "past leak",
        HotWork = "hot work",
    }
    /// What the studs sit in.
    Seat {
        ThroughBolts = "through bolts",
        TappedHole = "tapped hole",
        BlindFlange = "blind flange",
        Anchor = "anchor",
    }
    /// What a hole is tapped in.
    HoleMaterial {
        Steel = "steel",
        CastIron = "cast iron",
        Aluminium = "aluminium",
    }
    /// Washers under the turned nuts.
    Washers {
        Hardened = "hardened",
        Plain = "plain",
        None = "none",
    }
    /// New or used studs.
    StudCondition {
        New = "new",
        Used = "used",
    }
    /// The area that a stress is counted on.
    StressArea {
        Tensile = "tensile",
        Root = "root",
    }
    /// What a share of yield counts.
    YieldMeasure {
        Tension = "tension",
        Combined = "combined",
    }
    /// Pattern of the passes.
    Pattern {
        Cross = "cross",
        Circular = "circular",
    }
    /// Direction of numbering.
    TurnDirection {
        Clockwise = "clockwise",
        Anticlockwise = "anticlockwise",
    }
    /// What a reaction arm pushes against.
    ReactionMember {
        NeighbouringNut = "neighbouring nut",
        FlangeRim = "flange rim",
        SolidSteel = "solid steel",
        Tube = "tube",
        Gauge = "gauge",
        InstrumentLine = "instrument line",
        CastLug = "cast lug",
    }
    /// Who signs a hold or witness point.
    PointRole {
        CrewLead = "crew lead",
        Supervisor = "supervisor",
        Inspector = "inspector",
        Client = "client",
        ThirdParty = "third party",
    }
    /// Class of isolation.
    IsolationClass {
        Positive = "positive",
        Proved = "proved",
        NonProved = "non-proved",
    }
    /// Kind of isolation point.
    PointKind {
        ValveShut = "valve shut",
        ValveOpen = "valve open",
        Spade = "spade",
        Blind = "blind",
        Vent = "vent",
        Drain = "drain",
        Gauge = "gauge",
        Motor = "motor",
        Lock = "lock",
    }
    /// Energy other than pressure.
    EnergyKind {
        Mechanical = "mechanical",
        Electrical = "electrical",
        Pneumatic = "pneumatic",
        Gravity = "gravity",
        Thermal = "thermal",
        Chemical = "chemical",
        Rotating = "rotating",
    }
    /// What drives a multi-spindle driver.
    DriverInput {
        Hand = "hand",
        Battery = "battery",
        Pneumatic = "pneumatic",
        Hydraulic = "hydraulic",
    }
}

/// The unit of a torque scale, in any spelling that is understood: `N·m`, `ft·lb`, `ft-lbf`...
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TorqueUnit(&'static Unit);

impl TorqueUnit {
    /// The unit.
    pub const fn unit(self) -> &'static Unit {
        self.0
    }
}

impl<'de> Deserialize<'de> for TorqueUnit {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = crate::yaml::Text::<16>::deserialize(deserializer)?;
        unit_spelled(Dimension::Torque, &text)
            .map(Self)
            .ok_or_else(|| {
                serde::de::Error::custom(format_args!("`{}` is no unit of torque", text.as_str()))
            })
    }
}

impl ToolKind {
    /// Whether the tool measures or shows a load, and so needs a certificate that lasts.
    pub const fn shows_load(self) -> bool {
        matches!(
            self,
            Self::HandTorqueWrench | Self::HydraulicTorqueWrench | Self::Gauge | Self::DepthGauge
        )
    }
}
