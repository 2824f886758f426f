//! Typed quantities: the only parse and the only print of a number with a unit.
//!
//! Inside the program every quantity is a newtype over `f64` in SI (m, N, Pa, N·m, J, s, rad, K, kg).
//! A unit appears only at the two borders: [`Quantity::parse`] on the way in and [`Units::print`]
//! on the way out. All factors are derived from exact definitions (inch 25.4 mm, pound-force
//! 4.4482216152605 N, zero Celsius 273.15 K).

mod date;
mod parse;
mod print;
mod table;
mod together;

pub use date::{ClockTime, Date, DateError};
pub use parse::{QuantityError, parse_number, parse_si};
pub use print::{Printed, Units, digits, group, words_of_digits};
pub use table::{Unit, unit_named, unit_spelled, units_of};
pub use together::keep_together;

/// What a number measures. Torque and energy share their base units but never mix.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Dimension {
    /// A whole number of things.
    Count,
    /// A pure ratio; printed bare or in per cent.
    Ratio,
    /// Metres.
    Length,
    /// Square metres.
    Area,
    /// Cubic metres.
    Volume,
    /// Cubic metres of a cross-section that resists bending or torsion.
    SectionModulus,
    /// Newtons.
    Force,
    /// Pascals inside a solid.
    Stress,
    /// Pascals of a fluid.
    Pressure,
    /// Newton metres of a moment.
    Torque,
    /// Joules.
    Energy,
    /// Radians.
    Angle,
    /// Kelvin.
    Temperature,
    /// Kilograms.
    Mass,
    /// Seconds.
    Duration,
    /// Metres per newton.
    Compliance,
    /// Newtons per pascal of pressure: how much an opening pushes.
    ForcePerPressure,
    /// Decibels, A-weighted.
    Noise,
    /// Metres per second squared.
    Acceleration,
    /// Cubic metres per second.
    Flow,
}

impl Dimension {
    /// Exponents of metre, kilogram, second and kelvin, by which a formula is checked.
    pub const fn exponents(self) -> [i8; 4] {
        match self {
            Self::Count | Self::Ratio | Self::Angle | Self::Noise => [0, 0, 0, 0],
            Self::Length => [1, 0, 0, 0],
            Self::Area | Self::ForcePerPressure => [2, 0, 0, 0],
            Self::Volume | Self::SectionModulus => [3, 0, 0, 0],
            Self::Force => [1, 1, -2, 0],
            Self::Stress | Self::Pressure => [-1, 1, -2, 0],
            Self::Torque | Self::Energy => [2, 1, -2, 0],
            Self::Temperature => [0, 0, 0, 1],
            Self::Mass => [0, 1, 0, 0],
            Self::Duration => [0, 0, 1, 0],
            Self::Compliance => [0, -1, 2, 0],
            Self::Acceleration => [1, 0, -2, 0],
            Self::Flow => [3, 0, -1, 0],
        }
    }

    /// The word for this quantity in messages: "torque", "length"...
    pub const fn word(self) -> &'static str {
        match self {
            Self::Count => "count",
            Self::Ratio => "ratio",
            Self::Length => "length",
            Self::Area => "area",
            Self::Volume => "volume",
            Self::SectionModulus => "section modulus",
            Self::Force => "load",
            Self::Stress => "stress",
            Self::Pressure => "pressure",
            Self::Torque => "torque",
            Self::Energy => "energy",
            Self::Angle => "angle",
            Self::Temperature => "temperature",
            Self::Mass => "mass",
            Self::Duration => "duration",
            Self::Compliance => "compliance",
            Self::ForcePerPressure => "force per pressure",
            Self::Noise => "noise level",
            Self::Acceleration => "acceleration",
            Self::Flow => "flow",
        }
    }
}

/// A number with a meaning: one of the newtypes below.
pub trait Quantity: Copy {
    /// What it measures.
    const DIMENSION: Dimension;
    /// The value in SI.
    fn si(self) -> f64;
    /// Wraps a value in SI.
    fn from_si(value: f64) -> Self;

    /// Reads text such as `3950 N·m`. Errors say what is wrong and what to write instead.
    fn parse(text: &str) -> Result<Self, QuantityError> {
        parse_si(text, Self::DIMENSION).map(Self::from_si)
    }
}

macro_rules! quantity {
    ($($(#[$doc:meta])* $name:ident = $dimension:ident;)*) => { $(
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
        pub struct $name(f64);

        impl Quantity for $name {
            const DIMENSION: Dimension = Dimension::$dimension;
            fn si(self) -> f64 { self.0 }
            fn from_si(value: f64) -> Self { Self(value) }
        }
    )* };
}

quantity! {
    /// A whole number of things, kept as `f64` so that it can stand in a formula.
    Count = Count;
    /// A pure ratio (0.3, or 30 %).
    Ratio = Ratio;
    /// A length in metres.
    Length = Length;
    /// An area in square metres.
    Area = Area;
    /// A volume in cubic metres.
    Volume = Volume;
    /// A section modulus in cubic metres.
    SectionModulus = SectionModulus;
    /// A force in newtons.
    Force = Force;
    /// A stress in pascals.
    Stress = Stress;
    /// A pressure in pascals.
    Pressure = Pressure;
    /// A torque in newton metres.
    Torque = Torque;
    /// An energy in joules.
    Energy = Energy;
    /// An angle in radians.
    Angle = Angle;
    /// A temperature in kelvin.
    Temperature = Temperature;
    /// A mass in kilograms.
    Mass = Mass;
    /// A duration in seconds.
    Duration = Duration;
    /// A compliance in metres per newton.
    Compliance = Compliance;
    /// What one pascal on an opening pushes, in newtons per pascal.
    ForcePerPressure = ForcePerPressure;
    /// A noise level in dB(A).
    Noise = Noise;
    /// A vibration in m/s².
    Acceleration = Acceleration;
    /// A flow in m³/s.
    Flow = Flow;
}

impl Length {
    /// From millimetres.
    pub const fn mm(value: f64) -> Self {
        Self(value * 1e-3)
    }
    /// From inches.
    pub const fn inch(value: f64) -> Self {
        Self(value * 0.0254)
    }
    /// In millimetres.
    pub const fn to_mm(self) -> f64 {
        self.0 * 1e3
    }
    /// In inches.
    pub const fn to_inch(self) -> f64 {
        self.0 / 0.0254
    }
}

impl Stress {
    /// From megapascals.
    pub const fn mpa(value: f64) -> Self {
        Self(value * 1e6)
    }
    /// From thousands of pounds-force per square inch.
    pub const fn ksi(value: f64) -> Self {
        Self(value * 1e3 * table::PSI)
    }
}

impl Temperature {
    /// From degrees Celsius.
    pub const fn celsius(value: f64) -> Self {
        Self(value + 273.15)
    }
}

impl Angle {
    /// From degrees.
    pub const fn degrees(value: f64) -> Self {
        Self(value * std::f64::consts::PI / 180.0)
    }
    /// In degrees.
    pub const fn to_degrees(self) -> f64 {
        self.0 * 180.0 / std::f64::consts::PI
    }
}

impl Torque {
    /// From newton metres.
    pub const fn nm(value: f64) -> Self {
        Self(value)
    }
}

impl Pressure {
    /// From bar.
    pub const fn bar(value: f64) -> Self {
        Self(value * 1e5)
    }
}

impl Duration {
    /// From minutes.
    pub const fn minutes(value: f64) -> Self {
        Self(value * 60.0)
    }
}
