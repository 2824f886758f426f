//! What a joint, or the family it may belong to, says.

use super::ranges::{CONTENTS, PEAK, Positive, ROUNDS, TEMPERATURE, TURN, WANTED_MEAN, Within};
use super::table::Who::{Engineer, Operator, Planner};
use super::table::keys;

use super::{
    Class, Hazard, HoleMaterial, LimitOverride, MethodWord, Name, Pattern, PointRole,
    ReactionMember, Seat, StressArea, StudCondition, TurnDirection, Washers, YieldMeasure,
};
use crate::units::{
    Angle, Date, Duration, Force, Length, Pressure, Quantity, Ratio, Stress, Temperature, Torque,
};
use crate::yaml::{At, Named, OneOrMany, Text};

keys! {
    /// What a family or a joint may say.
    JointKeys at "" asks Planner {
        /// Equipment that it belongs to.
        equipment: Text<24>;
        /// What that equipment is.
        equipment_name: Text<40>;
        /// Unit, where it differs from the pack's.
        unit: Text<24>;
        /// Where it is, in words.
        place: Text<60>;
        /// Drawing and its revision.
        drawing: DrawingReference;
        /// Criticality class; defaulted from hazards, pressure and temperature.
        class: Class, who = Engineer;
        /// Hazards from the list.
        hazards: Vec<At<Hazard>>;
        /// What the joint holds back.
        service: Service;
        /// What the studs sit in.
        seat: Seat = Seat::ThroughBolts;
        /// Studs and nuts.
        studs: Studs;
        /// Gasket, by name.
        gasket: Name, list = "gaskets";
        /// Lubricant, by name.
        lubricant: Name, list = "lubricants";
        /// The load that is wanted.
        target: Target, who = Engineer;
        /// How it is tightened.
        tighten: Tighten;
        /// How it is loosened.
        loosen: Loosen;
        /// What a turn of the nut rests on.
        turn: Turn;
        /// What holds an anchor.
        anchor: Anchor;
        /// A later look at the loaded joint; an anchor has one without it.
        recheck: Recheck;
        /// Whether the joint is opened in this job; then it needs a release plan.
        opened: bool = true;
        /// Isolation boundary, by number.
        isolation: Name, list = "isolations", who = Operator;
        /// Whether loosening must go in steps; defaulted from size.
        large_or_stiff: bool, who = Engineer;
        /// What is measured.
        checks: Checks;
        /// Hold and witness points beyond those of the class.
        hold_points: Vec<At<HoldPoint>>;
        /// Where fastener 1 is and which way numbers run.
        numbering: Numbering;
        /// What stands in the way.
        obstacles: Vec<At<Obstacle>>;
        /// Free space around the nuts.
        clearance: Clearance;
        /// Crew, by name.
        crew: Name, list = "crews";
        /// Planned day.
        start: Date;
        /// Photo of the joint.
        photo: Text<120>, printed = false;
        /// The first line of the danger panel, where the service does not say it.
        danger: Text<60>;
        /// Defaults of the rules, replaced for this joint with a reason.
        limits: Named<LimitOverride>;
    }

    /// A drawing.
    DrawingReference at "drawing." asks Planner {
        /// Its number.
        number [required]: Text<32>;
        /// Its revision.
        revision: Text<12>;
    }

    /// What the joint holds back.
    Service at "service." asks Operator {
        /// Substance.
        fluid: Text<40>;
        /// Operating pressure.
        pressure: Pressure, range = CONTENTS;
        /// Highest operating temperature of the bolting.
        temperature: Temperature, range = TEMPERATURE;
    }

    /// Studs, nuts and the faces they bear on.
    Studs at "studs." asks Engineer {
        /// How many.
        count: u32, who = Planner;
        /// Thread, as the standard writes it.
        thread: Text<16>, who = Planner;
        /// Grade of the studs.
        grade: Text<24>;
        /// Grade of the nuts.
        nut_grade: Text<24>;
        /// Whole length of a stud.
        length: Length, range = Positive, who = Planner;
        /// Clamped length, washers included.
        grip: Length, range = Positive, who = Planner;
        /// Diameter of the bolt circle.
        bolt_circle: Length, range = Positive, who = Planner;
        /// Outer diameter of the flange or cover.
        flange_diameter: Length, range = Positive, who = Planner;
        /// Width of the clamped parts that one stud can use.
        part_diameter: Length, range = Positive;
        /// Thickness of one flange.
        flange_thickness: Length, range = Positive, who = Planner;
        /// Washers under the turned nuts.
        washers: Washers, who = Planner;
        /// New or used.
        condition: StudCondition, who = Planner;
        /// Outer diameter of the bearing face.
        bearing_outer: Length, range = Positive;
        /// Inner diameter of the bearing face: hole or washer bore.
        bearing_inner: Length, range = Positive;
        /// Mean diameter of the bearing face, where it is given as such.
        bearing_diameter: Length, range = Positive;
        /// Across flats of the nut.
        across_flats: Length, range = Positive;
        /// Height of the nut.
        nut_height: Length, range = Positive;
        /// Thread engagement in a tapped hole.
        engagement: Length, range = Positive;
        /// What the hole is tapped in.
        hole_material: HoleMaterial;
        /// Thread past the far nut, where the stud is not centred.
        far_protrusion: Length, range = Within(0.0, 10.0);
        /// The multi-jackbolt tensioner on each stud.
        tensioner: Name, list = "tensioners";
    }

    /// The load that is wanted: exactly one of stress, share of yield, share of strength, load or torque.
    Target at "target." asks Engineer {
        /// Stress in the stud.
        stress: Stress, range = Positive;
        /// Share of the yield strength.
        share_of_yield: Ratio, range = Positive;
        /// Share of the tensile strength.
        share_of_strength: Ratio, range = Positive;
        /// Load of one stud.
        load: Force, range = Positive;
        /// Torque given by others; it is reversed to the load it means.
        torque: Torque, range = Positive;
        /// The area that stress and share of yield are counted on.
        area: StressArea = StressArea::Tensile;
        /// Whether the share of yield counts tension alone or combined with torsion.
        measure: YieldMeasure = YieldMeasure::Tension;
        /// The torque that others expect for this target; compared with ours.
        expected_torque: Torque, range = Positive;
        /// Why the target or the expected torque is unusual.
        reason: Text<120>;
    }

    /// How a joint is tightened.
    Tighten at "tighten." asks Engineer {
        /// Method; told by the tool where it is absent.
        method: MethodWord, list = "methods", printed = false, who = Planner;
        /// The tools that turn, by name.
        with: OneOrMany<Name>, list = "tools";
        /// Pump, hoses, couplers and gauge, by name.
        hydraulics: Vec<At<Name>>, list = "tools";
        /// Socket, by name.
        socket: Name, list = "tools";
        /// What holds the far nut: a tool by name.
        back_up: Name, list = "tools";
        /// Where the reaction arm pushes.
        reaction: Reaction, who = Planner;
        /// Shares of the final value, rising to 100 %.
        passes: Vec<At<Ratio>>;
        /// Pattern of the passes before the circular one.
        pattern: Pattern = Pattern::Cross;
        /// Whether a circular round follows until no nut turns.
        circular_round: bool = true;
        /// After how long a full-value round is repeated.
        repeat_after: Duration, range = Positive;
        /// Torque of the snug pass by hand.
        snug: Torque = Torque::nm(25.0), range = Positive;
        /// The formula for torque, by the name of its source.
        formula: Text<16>, printed = false;
        /// The multi-spindle driver for the bulk of the load, by name.
        driver: Name, list = "tools";
        /// Share of the final value that the driver sets.
        driver_level: Ratio, range = Within(0.0, 1.0);
        /// Torque of the brief reversal that frees the sockets.
        reversal: Torque, range = Positive;
        /// Wanted mean load of the stud at the end, as a share of the target.
        wanted_mean: Ratio = Ratio::from_si(0.95), range = WANTED_MEAN;
    }

    /// How a joint is loosened.
    Loosen at "loosen." asks Engineer {
        /// The tools that turn, by name.
        with: OneOrMany<Name>, list = "tools";
        /// Angle of the first round, in place of the computed one.
        first_step: Angle, range = TURN;
        /// Number of release rounds, in place of the default.
        rounds: u32 = 2, range = ROUNDS;
        /// Torque that is never exceeded, where it is lower than the computed one.
        never_exceed: Torque, range = Positive;
        /// Least and greatest break-out torque as shares of the last tightening torque.
        break_out: (At<Ratio>, At<Ratio>), range = Positive;
        /// Highest load of one jackbolt in the release, as a share of the installed load; 1.3 is ours.
        peak: Ratio = Ratio::from_si(1.3), range = PEAK;
    }

    /// What a turn of the nut rests on.
    Turn at "turn." asks Engineer {
        /// Specification with its year, that gives turn and tolerance.
        standard: Text<16>;
        /// Greatest slope of a face below head or nut.
        slope: Ratio, range = Within(0.0, 0.5);
        /// Turn from snug, where no table gives it.
        angle: Angle, range = TURN;
        /// Record of the test of the lot.
        lot: Text<24>;
        /// Least tension in that test.
        lot_tension: Force, range = Positive;
    }

    /// What holds an anchor.
    Anchor at "anchor." asks Engineer {
        /// Strength of the grout, with its record.
        grout: Text<40>;
        /// Greatest movement of the sole plate on its dials.
        movement: Length, range = Positive;
    }

    /// A later look at a loaded joint.
    Recheck at "recheck." asks Engineer {
        /// How long after the load.
        after: Duration = Duration::minutes(1440.0), range = Positive;
        /// The state of the plant.
        state: Text<36>;
        /// Turn beyond which an engineer decides.
        limit: Angle, range = TURN;
    }

    /// Where the reaction arm pushes.
    Reaction at "tighten.reaction." asks Planner {
        /// On what, in words.
        on [required]: Text<40>;
        /// What that is.
        member: ReactionMember;
        /// First and last jackbolt, clockwise, beside which a multi-spindle driver leans on it.
        jackbolts: (At<u32>, At<u32>);
    }

    /// What is measured.
    Checks at "checks." asks Engineer {
        /// Gap readings after the passes.
        gaps: bool = true;
        /// Greatest spread of a set of gaps.
        gap_spread: Length = Length::mm(0.25), range = Positive;
        /// Studs whose stretch is measured, by number.
        stretch: Vec<At<u32>>;
        /// Whether the zero length is read before tightening.
        zero_reading: bool = true;
        /// Limits of alignment.
        alignment: Alignment;
        /// Least thread past the nut.
        least_protrusion: Length, range = Within(0.0, 10.0);
        /// Greatest thread past the nut.
        greatest_protrusion: Length, range = Positive;
    }

    /// Limits of alignment before the joint is loaded; defaults from PCC-1 Appendix E, read as an excerpt.
    Alignment at "checks.alignment." asks Engineer {
        /// Offset of the centrelines.
        centreline: Length = Length::mm(1.5), range = Positive;
        /// Difference of the gaps.
        parallelism: Length = Length::mm(0.8), range = Positive;
        /// Offset of the holes.
        holes: Length = Length::mm(3.0), range = Positive;
        /// Free gap; twice the thickness of the gasket.
        gap: Length, range = Positive;
    }

    /// A hold or witness point.
    HoldPoint at "hold_points." asks Planner {
        /// Its label: H1, W2...
        point [required]: Text<4>;
        /// What is shown.
        text [required]: Text<40>;
        /// The value that makes it good.
        accept: Text<40>;
        /// Who signs.
        by: PointRole;
    }

    /// Numbering of the fasteners.
    Numbering at "numbering." asks Planner {
        /// Where number 1 is: `top`, `north`, or in words.
        first [required]: Text<24>;
        /// Which way the numbers run, seen from where the crew stands.
        direction: TurnDirection;
        /// From where it is seen, in words.
        seen_from: Text<24>;
    }

    /// Something that stands in the way.
    Obstacle at "obstacles." asks Planner {
        /// What.
        what [required]: Text<20>;
        /// The fastener it is next to.
        at [required]: u32;
    }

    /// Free space around the nuts.
    Clearance at "clearance." asks Planner {
        /// Diameter that is free for a socket.
        socket: Length, range = Positive;
        /// Radius that is free for the tool.
        radius: Length, range = Positive;
        /// Where the narrowest place is.
        at: Text<30>;
    }
}
