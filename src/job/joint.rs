//! A joint and the family it may belong to: the same keys, nearest wins.

use serde::Deserialize;

use super::{
    Class, Hazard, HoleMaterial, LimitOverride, MethodWord, Name, Pattern, PointRole,
    ReactionMember, Seat, StressArea, StudCondition, TurnDirection, Washers, YieldMeasure,
};
use crate::units::{
    Angle, Date, Duration, Force, Length, Pressure, Ratio, Stress, Temperature, Torque,
};
use crate::yaml::{At, Named, OneOrMany, Text};

/// A joint in the list. Its keys stand apart, so that thousands of joints do not make one piece of memory that no
/// allocator uses again.
#[derive(Debug)]
pub struct JointEntry {
    /// Its tag, unique in the job.
    pub tag: At<Text<32>>,
    /// The family whose data it takes.
    pub family: Option<At<Name>>,
    /// Its own data; nearest wins.
    pub keys: Box<JointKeys>,
}

/// What a family or a joint may say.
#[derive(Debug, Default, Deserialize)]
pub struct JointKeys {
    /// Equipment that it belongs to.
    pub equipment: Option<At<Text<24>>>,
    /// What that equipment is.
    pub equipment_name: Option<At<Text<40>>>,
    /// Unit, where it differs from the pack's.
    pub unit: Option<At<Text<24>>>,
    /// Where it is, in words.
    pub place: Option<At<Text<60>>>,
    /// Drawing and its revision.
    pub drawing: Option<At<DrawingReference>>,
    /// Criticality class; defaulted from hazards, pressure and temperature.
    pub class: Option<At<Class>>,
    /// Hazards from the list.
    pub hazards: Option<At<Vec<At<Hazard>>>>,
    /// What the joint holds back.
    pub service: Option<At<Service>>,
    /// What the studs sit in.
    pub seat: Option<At<Seat>>,
    /// Studs and nuts.
    pub studs: Option<At<Studs>>,
    /// Gasket, by name.
    pub gasket: Option<At<Name>>,
    /// Lubricant, by name.
    pub lubricant: Option<At<Name>>,
    /// The load that is wanted.
    pub target: Option<At<Target>>,
    /// How it is tightened.
    pub tighten: Option<At<Tighten>>,
    /// How it is loosened.
    pub loosen: Option<At<Loosen>>,
    /// Whether the joint is opened in this job; then it needs a release plan.
    pub opened: Option<At<bool>>,
    /// Isolation boundary, by number.
    pub isolation: Option<At<Name>>,
    /// Whether loosening must go in steps; defaulted from size.
    pub large_or_stiff: Option<At<bool>>,
    /// What is measured.
    pub checks: Option<At<Checks>>,
    /// Hold and witness points beyond those of the class.
    pub hold_points: Option<At<Vec<At<HoldPoint>>>>,
    /// Where fastener 1 is and which way numbers run.
    pub numbering: Option<At<Numbering>>,
    /// What stands in the way.
    pub obstacles: Option<At<Vec<At<Obstacle>>>>,
    /// Free space around the nuts.
    pub clearance: Option<At<Clearance>>,
    /// Crew, by name.
    pub crew: Option<At<Name>>,
    /// Planned day.
    pub start: Option<At<Date>>,
    /// Photo of the joint.
    pub photo: Option<At<Text<120>>>,
    /// The first line of the danger panel, where the service does not say it.
    pub danger: Option<At<Text<60>>>,
    /// Defaults of the rules, replaced for this joint with a reason.
    pub limits: Option<At<Named<LimitOverride>>>,
}

/// The keys of a joint as the reader sees them: tag, family, and the keys of [`JointKeys`].
#[derive(Deserialize)]
struct Flat {
    tag: At<Text<32>>,
    family: Option<At<Name>>,
    equipment: Option<At<Text<24>>>,
    equipment_name: Option<At<Text<40>>>,
    unit: Option<At<Text<24>>>,
    place: Option<At<Text<60>>>,
    drawing: Option<At<DrawingReference>>,
    class: Option<At<Class>>,
    hazards: Option<At<Vec<At<Hazard>>>>,
    service: Option<At<Service>>,
    seat: Option<At<Seat>>,
    studs: Option<At<Studs>>,
    gasket: Option<At<Name>>,
    lubricant: Option<At<Name>>,
    target: Option<At<Target>>,
    tighten: Option<At<Tighten>>,
    loosen: Option<At<Loosen>>,
    opened: Option<At<bool>>,
    isolation: Option<At<Name>>,
    large_or_stiff: Option<At<bool>>,
    checks: Option<At<Checks>>,
    hold_points: Option<At<Vec<At<HoldPoint>>>>,
    numbering: Option<At<Numbering>>,
    obstacles: Option<At<Vec<At<Obstacle>>>>,
    clearance: Option<At<Clearance>>,
    crew: Option<At<Name>>,
    start: Option<At<Date>>,
    photo: Option<At<Text<120>>>,
    danger: Option<At<Text<60>>>,
    limits: Option<At<Named<LimitOverride>>>,
}

impl<'de> Deserialize<'de> for JointEntry {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        // `flatten` would buffer the map and lose every place in it, so the keys stand twice.
        let flat = Flat::deserialize(deserializer)?;
        Ok(Self {
            tag: flat.tag,
            family: flat.family,
            keys: Box::new(JointKeys {
                equipment: flat.equipment,
                equipment_name: flat.equipment_name,
                unit: flat.unit,
                place: flat.place,
                drawing: flat.drawing,
                class: flat.class,
                hazards: flat.hazards,
                service: flat.service,
                seat: flat.seat,
                studs: flat.studs,
                gasket: flat.gasket,
                lubricant: flat.lubricant,
                target: flat.target,
                tighten: flat.tighten,
                loosen: flat.loosen,
                opened: flat.opened,
                isolation: flat.isolation,
                large_or_stiff: flat.large_or_stiff,
                checks: flat.checks,
                hold_points: flat.hold_points,
                numbering: flat.numbering,
                obstacles: flat.obstacles,
                clearance: flat.clearance,
                crew: flat.crew,
                start: flat.start,
                photo: flat.photo,
                danger: flat.danger,
                limits: flat.limits,
            }),
        })
    }
}

/// A drawing.
#[derive(Debug, Deserialize)]
pub struct DrawingReference {
    /// Its number.
    pub number: At<Text<32>>,
    /// Its revision.
    pub revision: Option<At<Text<12>>>,
}

/// What the joint holds back.
#[derive(Debug, Deserialize)]
pub struct Service {
    /// Substance.
    pub fluid: Option<At<Text<40>>>,
    /// Operating pressure.
    pub pressure: Option<At<Pressure>>,
    /// Highest operating temperature of the bolting.
    pub temperature: Option<At<Temperature>>,
}

/// Studs, nuts and the faces they bear on.
#[derive(Debug, Default, Deserialize)]
pub struct Studs {
    /// How many.
    pub count: Option<At<u32>>,
    /// Thread, as the standard writes it.
    pub thread: Option<At<Text<16>>>,
    /// Grade of the studs.
    pub grade: Option<At<Text<24>>>,
    /// Grade of the nuts.
    pub nut_grade: Option<At<Text<24>>>,
    /// Whole length of a stud.
    pub length: Option<At<Length>>,
    /// Clamped length, washers included.
    pub grip: Option<At<Length>>,
    /// Diameter of the bolt circle.
    pub bolt_circle: Option<At<Length>>,
    /// Outer diameter of the flange or cover.
    pub flange_diameter: Option<At<Length>>,
    /// Width of the clamped parts that one stud can use.
    pub part_diameter: Option<At<Length>>,
    /// Thickness of one flange.
    pub flange_thickness: Option<At<Length>>,
    /// Washers under the turned nuts.
    pub washers: Option<At<Washers>>,
    /// New or used.
    pub condition: Option<At<StudCondition>>,
    /// Outer diameter of the bearing face.
    pub bearing_outer: Option<At<Length>>,
    /// Inner diameter of the bearing face: hole or washer bore.
    pub bearing_inner: Option<At<Length>>,
    /// Mean diameter of the bearing face, where it is given as such.
    pub bearing_diameter: Option<At<Length>>,
    /// Across flats of the nut.
    pub across_flats: Option<At<Length>>,
    /// Height of the nut.
    pub nut_height: Option<At<Length>>,
    /// Thread engagement in a tapped hole.
    pub engagement: Option<At<Length>>,
    /// What the hole is tapped in.
    pub hole_material: Option<At<HoleMaterial>>,
    /// Thread past the far nut, where the stud is not centred.
    pub far_protrusion: Option<At<Length>>,
    /// The multi-jackbolt tensioner on each stud.
    pub tensioner: Option<At<Name>>,
}

/// The load that is wanted: exactly one of stress, share of yield, load or torque.
#[derive(Debug, Default, Deserialize)]
pub struct Target {
    /// Stress in the stud.
    pub stress: Option<At<Stress>>,
    /// Share of the yield strength.
    pub share_of_yield: Option<At<Ratio>>,
    /// Load of one stud.
    pub load: Option<At<Force>>,
    /// Torque given by others; it is reversed to the load it means.
    pub torque: Option<At<Torque>>,
    /// The area that stress and share of yield are counted on.
    pub area: Option<At<StressArea>>,
    /// Whether the share of yield counts tension alone or combined with torsion.
    pub measure: Option<At<YieldMeasure>>,
    /// The torque that others expect for this target; compared with ours.
    pub expected_torque: Option<At<Torque>>,
    /// Why the target or the expected torque is unusual.
    pub reason: Option<At<Text<120>>>,
}

/// How a joint is tightened.
#[derive(Debug, Default, Deserialize)]
pub struct Tighten {
    /// Method; told by the tool where it is absent.
    pub method: Option<At<MethodWord>>,
    /// The tools that turn, by name.
    pub with: Option<At<OneOrMany<Name>>>,
    /// Pump, hoses, couplers and gauge, by name.
    pub hydraulics: Option<At<Vec<At<Name>>>>,
    /// Socket, by name.
    pub socket: Option<At<Name>>,
    /// What holds the far nut: a tool by name.
    pub back_up: Option<At<Name>>,
    /// Where the reaction arm pushes.
    pub reaction: Option<At<Reaction>>,
    /// Shares of the final value, rising to 100 %.
    pub passes: Option<At<Vec<At<Ratio>>>>,
    /// Pattern of the passes before the circular one.
    pub pattern: Option<At<Pattern>>,
    /// Whether a circular round follows until no nut turns.
    pub circular_round: Option<At<bool>>,
    /// After how long a full-value round is repeated.
    pub repeat_after: Option<At<Duration>>,
    /// Torque of the snug pass by hand.
    pub snug: Option<At<Torque>>,
    /// The formula for torque, by the name of its source.
    pub formula: Option<At<Text<16>>>,
    /// The multi-spindle driver for the bulk of the load, by name.
    pub driver: Option<At<Name>>,
    /// Share of the final value that the driver sets.
    pub driver_level: Option<At<Ratio>>,
    /// Torque of the brief reversal that frees the sockets.
    pub reversal: Option<At<Torque>>,
    /// Wanted mean load of the stud at the end, as a share of the target.
    pub wanted_mean: Option<At<Ratio>>,
}

/// How a joint is loosened.
#[derive(Debug, Default, Deserialize)]
pub struct Loosen {
    /// The tools that turn, by name.
    pub with: Option<At<OneOrMany<Name>>>,
    /// Angle of the first round, in place of the computed one.
    pub first_step: Option<At<Angle>>,
    /// Number of release rounds, in place of the default.
    pub rounds: Option<At<u32>>,
    /// Torque that is never exceeded, where it is lower than the computed one.
    pub never_exceed: Option<At<Torque>>,
    /// Least and greatest break-out torque as shares of the last tightening torque.
    pub break_out: Option<At<(At<Ratio>, At<Ratio>)>>,
    /// Highest load of one jackbolt in the release, as a share of the installed load.
    pub peak: Option<At<Ratio>>,
}

/// Where the reaction arm pushes.
#[derive(Debug, Deserialize)]
pub struct Reaction {
    /// On what, in words.
    pub on: At<Text<40>>,
    /// What that is.
    pub member: Option<At<ReactionMember>>,
    /// First and last jackbolt, clockwise, beside which a multi-spindle driver leans on it.
    pub jackbolts: Option<At<(At<u32>, At<u32>)>>,
}

/// What is measured.
#[derive(Debug, Default, Deserialize)]
pub struct Checks {
    /// Gap readings after the passes.
    pub gaps: Option<At<bool>>,
    /// Greatest spread of a set of gaps.
    pub gap_spread: Option<At<Length>>,
    /// Studs whose stretch is measured, by number.
    pub stretch: Option<At<Vec<At<u32>>>>,
    /// Whether the zero length is read before tightening.
    pub zero_reading: Option<At<bool>>,
    /// Limits of alignment.
    pub alignment: Option<At<Alignment>>,
    /// Least thread past the nut.
    pub least_protrusion: Option<At<Length>>,
    /// Greatest thread past the nut.
    pub greatest_protrusion: Option<At<Length>>,
}

/// Limits of alignment before the joint is loaded.
#[derive(Debug, Deserialize)]
pub struct Alignment {
    /// Offset of the centrelines.
    pub centreline: Option<At<Length>>,
    /// Difference of the gaps.
    pub parallelism: Option<At<Length>>,
    /// Offset of the holes.
    pub holes: Option<At<Length>>,
    /// Free gap.
    pub gap: Option<At<Length>>,
}

/// A hold or witness point.
#[derive(Debug, Deserialize)]
pub struct HoldPoint {
    /// Its label: H1, W2...
    pub point: At<Text<4>>,
    /// What is shown.
    pub text: At<Text<40>>,
    /// The value that makes it good.
    pub accept: Option<At<Text<40>>>,
    /// Who signs.
    pub by: Option<At<PointRole>>,
}

/// Numbering of the fasteners.
#[derive(Debug, Deserialize)]
pub struct Numbering {
    /// Where number 1 is: `top`, `north`, or in words.
    pub first: At<Text<24>>,
    /// Which way the numbers run, seen from where the crew stands.
    pub direction: Option<At<TurnDirection>>,
    /// From where it is seen, in words.
    pub seen_from: Option<At<Text<24>>>,
}

/// Something that stands in the way.
#[derive(Debug, Deserialize)]
pub struct Obstacle {
    /// What.
    pub what: At<Text<20>>,
    /// The fastener it is next to.
    pub at: At<u32>,
}

/// Free space around the nuts.
#[derive(Debug, Deserialize)]
pub struct Clearance {
    /// Diameter that is free for a socket.
    pub socket: Option<At<Length>>,
    /// Radius that is free for the tool.
    pub radius: Option<At<Length>>,
    /// Where the narrowest place is.
    pub at: Option<At<Text<30>>>,
}
