//! Isolation boundaries.

use super::ranges::{CONTENTS, Positive, TEMPERATURE, Within};
use super::table::keys;
use super::{DrawingReference, EnergyKind, IsolationClass, Name, PointKind};
use crate::units::{Area, Duration, Length, Pressure, Temperature, Volume};
use crate::yaml::{At, Text};

keys! {
    /// One isolation boundary; all joints behind it name it.
    Isolation at "isolations.*." asks Engineer {
        /// What it encloses.
        boundary [required]: Text<60>;
        /// Flow diagram.
        drawing: DrawingReference;
        /// Class of isolation that is wanted.
        class: IsolationClass;
        /// Why that class.
        reason: Text<60>;
        /// What is inside.
        contents: Vec<At<Contents>>;
        /// Other energy and what holds it.
        energies: Vec<At<EnergyControl>>;
        /// The largest opening behind the boundary.
        opening: Opening;
        /// Isolation points in the order of the flow.
        points: Vec<At<Point>>;
        /// How zero is proved.
        proof: Proof;
        /// Operating procedure for the shutdown.
        procedure: Text<32>;
        /// Purge or flush.
        purge: Purge;
        /// Hold test.
        hold_test: HoldTest;
        /// Surface temperature below which work may start.
        cool_below: Temperature, range = TEMPERATURE;
        /// How often zero is proved again while the joint is open.
        prove_again_every: Duration, range = Positive;
        /// A picture of the boundary, in place of the line of points.
        picture: Text<120>, printed = false;
        /// Permit number.
        permit: Text<24>;
        /// Number of the site's isolation certificate.
        certificate: Text<24>;
        /// Who accepts zero energy at the joint.
        accepted_by: Name, list = "people";
    }

    /// What is inside a boundary.
    Contents at "isolations.*.contents." asks Engineer {
        /// Substance.
        fluid [required]: Text<40>;
        /// Normal pressure.
        pressure: Pressure, range = CONTENTS;
        /// Normal temperature.
        temperature: Temperature, range = TEMPERATURE;
        /// Volume between the points.
        volume: Volume, range = Positive;
        /// What it does to people.
        hazard: Text<40>;
    }

    /// Another kind of energy.
    EnergyControl at "isolations.*.energies." asks Engineer {
        /// Its kind.
        kind [required]: EnergyKind;
        /// What holds it.
        what [required]: Text<40>;
        /// How it is released or blocked.
        control: Text<60>;
    }

    /// The largest opening.
    Opening at "isolations.*.opening." asks Engineer {
        /// What is opened.
        name: Text<40>;
        /// Its diameter.
        diameter: Length, range = Positive;
        /// Its area, where it is not round.
        area: Area, range = Positive;
    }

    /// One isolation point.
    Point at "isolations.*.points." asks Engineer {
        /// Tag.
        tag [required]: Text<16>;
        /// Kind.
        kind [required]: PointKind;
        /// Required position, in words.
        position: Text<24>;
        /// Where it is.
        location: Text<30>;
    }

    /// How zero is proved at the joint side.
    Proof at "isolations.*.proof." asks Engineer {
        /// Where it is read.
        at [required]: Text<40>;
        /// The gauge, a tool of the job or an instrument's tag.
        gauge: Text<32>;
    }

    /// Purge or flush.
    Purge at "isolations.*.purge." asks Engineer {
        /// Medium.
        medium [required]: Text<30>;
        /// Number of cycles.
        cycles: u32;
        /// The value at which it ends.
        until: Text<30>;
    }

    /// A hold test of the boundary.
    HoldTest at "isolations.*.hold_test." asks Engineer {
        /// How long.
        duration [required]: Duration, range = Positive;
        /// Greatest rise.
        rise: Pressure, range = Within(0.0, 1e9);
    }
}
