//! The ways from load to torque, chosen by the name of their source.

use super::near::near_names;
use super::{api_6a, collar, iso_16047, jis_b_1083, nut_factor, vdi_2230};
use crate::formula::Formula;

/// A torque formula by the name of its source.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub enum TorqueFormula {
    /// ISO 16047: thread and face friction, plain mean of the face. The default.
    #[default]
    Iso16047,
    /// VDI 2230: the same with rounded constants.
    Vdi2230,
    /// API 6A: long form, heavy hexagon face.
    Api6a,
    /// JIS B 1083: with the true mean of a ring.
    JisB1083,
    /// The exact form of a screw with a collar.
    Collar,
    /// A nut factor that was measured or given.
    NutFactor,
}

impl TorqueFormula {
    /// Every form.
    pub const ALL: [Self; 6] = [
        Self::Iso16047,
        Self::Vdi2230,
        Self::Api6a,
        Self::JisB1083,
        Self::Collar,
        Self::NutFactor,
    ];

    /// The name as a job writes it and a note prints it.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Iso16047 => "ISO 16047",
            Self::Vdi2230 => "VDI 2230",
            Self::Api6a => "API 6A",
            Self::JisB1083 => "JIS B 1083",
            Self::Collar => "collar form",
            Self::NutFactor => "nut factor",
        }
    }

    /// Reads a name, whatever its case and spacing. The error holds near names.
    pub fn parse(text: &str) -> Result<Self, Vec<String>> {
        let folded = fold(text);
        let found = Self::ALL
            .into_iter()
            .find(|form| fold(form.name()) == folded);
        found.ok_or_else(|| near_names(text, Self::ALL.iter().map(|form| form.name())))
    }

    /// Torque from load. Inputs: `F`, then `P d2 µ_th D_b µ_b`, or `K d` for the nut factor.
    pub fn torque(self) -> &'static Formula {
        match self {
            Self::Iso16047 => &iso_16047::TORQUE_OF,
            Self::Vdi2230 => &vdi_2230::TORQUE_OF,
            Self::Api6a => &api_6a::TORQUE_OF,
            Self::JisB1083 => &jis_b_1083::TORQUE_OF,
            Self::Collar => &collar::TORQUE_OF,
            Self::NutFactor => &nut_factor::TORQUE_OF,
        }
    }

    /// Load from torque.
    pub fn load(self) -> &'static Formula {
        match self {
            Self::Iso16047 => &iso_16047::LOAD_OF,
            Self::Vdi2230 => &vdi_2230::LOAD_OF,
            Self::Api6a => &api_6a::LOAD_OF,
            Self::JisB1083 => &jis_b_1083::LOAD_OF,
            Self::Collar => &collar::LOAD_OF,
            Self::NutFactor => &nut_factor::LOAD_OF,
        }
    }

    /// The part of the torque that twists the stud. A nut factor does not tell it.
    pub fn thread_torque(self) -> Option<&'static Formula> {
        match self {
            Self::Iso16047 => Some(&iso_16047::THREAD_TORQUE_OF),
            Self::Vdi2230 => Some(&vdi_2230::THREAD_TORQUE_OF),
            Self::Api6a => Some(&api_6a::THREAD_TORQUE_OF),
            Self::JisB1083 => Some(&jis_b_1083::THREAD_TORQUE_OF),
            Self::Collar => Some(&collar::THREAD_TORQUE_OF),
            Self::NutFactor => None,
        }
    }

    /// Torque that turns the nut back under a load.
    pub fn loosening_torque(self) -> &'static Formula {
        match self {
            Self::Iso16047 => &iso_16047::LOOSENING_TORQUE_OF,
            Self::Vdi2230 => &vdi_2230::LOOSENING_TORQUE_OF,
            Self::Api6a => &api_6a::LOOSENING_TORQUE_OF,
            Self::JisB1083 => &jis_b_1083::LOOSENING_TORQUE_OF,
            Self::Collar => &collar::LOOSENING_TORQUE_OF,
            Self::NutFactor => &nut_factor::LOOSENING_TORQUE_OF,
        }
    }

    /// The mean bearing diameter as the same document takes it; `None` for a nut factor, which needs none.
    pub fn bearing_diameter(self) -> Option<&'static Formula> {
        match self {
            Self::Iso16047 | Self::Collar => Some(&iso_16047::BEARING_DIAMETER_OF),
            Self::Vdi2230 => Some(&vdi_2230::BEARING_DIAMETER_OF),
            Self::Api6a => Some(&api_6a::BEARING_DIAMETER_OF),
            Self::JisB1083 => Some(&jis_b_1083::BEARING_DIAMETER_OF),
            Self::NutFactor => None,
        }
    }
}

fn fold(name: &str) -> String {
    let signs = name.chars().filter(|sign| sign.is_alphanumeric());
    signs.flat_map(char::to_lowercase).collect()
}
