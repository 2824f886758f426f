//! What stands on the dials of a joint's tools. The ledger holds what nuts get; the tools are asked again what they show.

use crate::calc::Id;
use crate::calc::labour::Task;
use crate::joint::{Dial, Joint, Lack, Mechanics, ToolReading, Who};
use crate::units::Torque;

use super::computed::Computed;
use super::jackbolt::ids;

const NO_DRIVER: Lack = Lack {
    key: "tighten.driver",
    who: Who::ToolStore,
};

const NO_BOUND: Lack = Lack {
    key: "loosen.never_exceed",
    who: Who::Engineer,
};

/// The readings of one joint. Each is missing where its torque is, or where the tool cannot show it.
#[derive(Clone, Copy, Debug)]
pub struct Readings<'a> {
    joint: &'a Mechanics,
    computed: &'a Computed,
}

impl Computed {
    /// The readings of the tools at these numbers of `joint`.
    pub fn readings<'a>(&'a self, joint: &'a Joint) -> Readings<'a> {
        Readings {
            joint: &joint.mechanics,
            computed: self,
        }
    }
}

type Reading = Result<ToolReading, Lack>;

impl<'a> Readings<'a> {
    /// The dial of the tool that tightens.
    pub fn tightening(self) -> Dial<'a> {
        self.computed.chosen.dial(self.joint, Task::Tighten)
    }

    /// The dial of the tool that loosens.
    pub fn loosening(self) -> Dial<'a> {
        self.computed.chosen.dial(self.joint, Task::Loosen)
    }

    /// The dial of the multi-spindle driver, where there is one.
    pub fn driver(self) -> Option<Dial<'a>> {
        self.joint.tools.driver.as_ref().map(Dial::of_driver)
    }

    /// # Errors
    ///
    /// What the ledger lacks.
    fn torque(self, id: Id<Torque>) -> Result<Torque, Lack> {
        let ledger = &self.computed.ledger;
        let unknown = || Lack {
            key: id.key().path,
            who: Who::Engineer,
        };
        let lack = || ledger.lack(id).unwrap_or_else(unknown);
        ledger.get(id).ok_or_else(lack)
    }

    /// What is set at the end.
    ///
    /// # Errors
    ///
    /// What is missing for it.
    pub fn full(self) -> Reading {
        self.tightening().set(self.torque(ids::SET_TORQUE)?)
    }

    /// What is set in a pass.
    ///
    /// # Errors
    ///
    /// What is missing for it.
    pub fn pass(self, number: u16) -> Reading {
        let torque = self.torque(ids::PASS_TORQUE.at(number))?;
        self.tightening().set(torque)
    }

    /// What a small wrench is set to for a low torque: snug, a seat, a check by hand.
    ///
    /// # Errors
    ///
    /// What is missing for it.
    pub fn low(self, id: Id<Torque>) -> Reading {
        self.tightening().by_torque().fine().set(self.torque(id)?)
    }

    /// What the driver is set to.
    ///
    /// # Errors
    ///
    /// What is missing for it.
    pub fn driver_level(self) -> Reading {
        let torque = self.torque(ids::DRIVER_TORQUE)?;
        self.driver().ok_or(NO_DRIVER)?.set(torque)
    }

    /// What the driver never passes when it is reversed to free its sockets.
    ///
    /// # Errors
    ///
    /// What is missing for it.
    pub fn reversal(self) -> Reading {
        let torque = self.torque(ids::REVERSAL_LIMIT)?;
        self.driver().ok_or(NO_DRIVER)?.fine().never(torque)
    }

    /// What is never exceeded while loosening.
    ///
    /// # Errors
    ///
    /// What is missing for it.
    pub fn never(self) -> Reading {
        self.loosening().never(self.torque(ids::NEVER_EXCEED)?)
    }

    /// Between which torques nuts are expected to break loose, the greater not above what is never exceeded.
    ///
    /// # Errors
    ///
    /// What is missing for it; where even the lesser lies above what is never exceeded, another bound.
    pub fn break_out(self) -> Result<[ToolReading; 2], Lack> {
        let dial = self.loosening().by_torque();
        let least = self.torque(ids::BREAK_OUT_LEAST)?;
        let greatest = self.torque(ids::BREAK_OUT_GREATEST)?;
        let greatest = match self.torque(ids::NEVER_EXCEED) {
            Ok(never) if never < least => return Err(NO_BOUND),
            Ok(never) if never < greatest => never,
            _ => greatest,
        };
        Ok([dial.about(least)?, dial.about(greatest)?])
    }
}
