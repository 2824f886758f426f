//! Multi-jackbolt tensioners and the multi-spindle drivers that load them.

use super::ranges::{JACKBOLTS, ONE_TURN, Positive, SCATTER, Within};
use super::table::Who::ToolStore;
use super::table::keys;
use super::{DriverInput, Name};
use crate::units::{
    Acceleration, Angle, Flow, Force, Length, Noise, Pressure, Quantity, Ratio, Stress, Torque,
};
use crate::yaml::Text;

keys! {
    /// A nut body with its jackbolts; one of them sits on each stud.
    Tensioner at "tensioners.*." asks Engineer {
        /// Number of jackbolts.
        jackbolts [required]: u32, range = JACKBOLTS;
        /// Thread of a jackbolt.
        thread [required]: Text<16>;
        /// Grade of the jackbolts.
        grade: Text<24>;
        /// Circle of the jackbolts.
        circle: Length, range = Positive;
        /// Outer diameter of the nut body.
        body_diameter: Length, range = Positive;
        /// Height of the nut body.
        body_height: Length, range = Positive;
        /// Across flats of the jackbolt heads or sockets.
        across_flats: Length, range = Positive;
        /// Thread of a jackbolt that is engaged in the body, the least of the work.
        thread_engagement: Length, range = Positive;
        /// Least yield strength of the body.
        body_yield: Stress, range = Positive;
        /// Length of a jackbolt between body and washer at the start.
        free_length: Length, range = Positive;
        /// Diameter of the tip.
        tip_diameter: Length, range = Positive;
        /// Gap between body and washer before the jackbolts are turned.
        start_gap: Length, range = Within(0.0, 1.0);
        /// Greatest gap when the load is on.
        greatest_gap: Length, range = Positive;
        /// Travel of a jackbolt.
        travel: Length, range = Positive;
        /// Highest load of one jackbolt, from the tensioner's papers.
        jackbolt_load: Force, range = Positive;
        /// Measured turn of one jackbolt, snug to full load with the others tight.
        measured_turn: Angle, range = ONE_TURN;
        /// Lubricant of jackbolt threads and tips.
        lubricant: Name, list = "lubricants";
        /// Hardness of the washer, as its papers word it.
        washer_hardness: Text<24>, who = ToolStore;
        /// Highest pressure of a tip on the washer.
        tip_pressure: Stress, range = Positive;
        /// How far the stud may stand above the body.
        stud_above_body: Length, range = Within(0.0, 1.0);
    }

    /// What only a multi-spindle driver has.
    Driver at "tools.*.driver." asks ToolStore {
        /// Number of spindles.
        spindles [required]: u32;
        /// Circle of the spindles.
        spindle_circle: Length, range = Positive;
        /// Across flats of its sockets.
        socket: Length, range = Positive;
        /// Depth of its sockets.
        socket_depth: Length, range = Positive;
        /// What drives it.
        input: DriverInput;
        /// ± limit of the torque from spindle to spindle; by default the wide end of common practice.
        scatter: Ratio = Ratio::from_si(0.15), range = SCATTER;
        /// Highest torque in reverse.
        reverse_torque: Torque, range = Positive;
        /// Air pressure or oil pressure that it needs.
        supply: Pressure, range = Positive;
        /// Air that it needs.
        flow: Flow, range = Positive;
        /// Studs on one battery.
        studs_per_battery: u32;
        /// Noise at the operator's ear.
        noise: Noise;
        /// Vibration at the handle.
        vibration: Acceleration;
        /// Marking for explosive zones, or `none`.
        zone: Text<40>;
        /// Where its reaction goes.
        reaction: Text<60>;
        /// How it hangs: hoist, balancer, by hand.
        lift: Text<60>;
    }
}
