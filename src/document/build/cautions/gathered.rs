//! What the texts of cautions name, gathered from one joint or from many.

use crate::job::Hazard;
use crate::joint::Joint;
use crate::units::{Mass, Temperature};
use crate::wording::Values;

use super::super::context::Context;
use super::super::words::capital;
use super::{Case, VERY_HOT};

/// What the texts name, of one joint or of many.
#[derive(Default)]
pub(super) struct Gathered {
    /// Contents by the hazard that they are named for.
    toxic: Vec<String>,
    burning: Vec<String>,
    hazardous: Vec<String>,
    gases: Vec<String>,
    parts: Vec<String>,
    lubricants: Vec<String>,
    hottest: Option<Temperature>,
    /// The hottest of the surfaces that are hot but not very hot.
    hot: Option<Temperature>,
    coldest: Option<Temperature>,
    heaviest: Option<(String, Mass)>,
}

fn once(list: &mut Vec<String>, text: String) {
    if !list.contains(&text) {
        list.push(text);
    }
}

fn higher(most: &mut Option<Temperature>, other: Temperature) {
    if most.is_none_or(|most| other > most) {
        *most = Some(other);
    }
}

impl Gathered {
    /// Adds what a joint has.
    pub(super) fn add(&mut self, context: &Context<'_>, case: &Case<'_>) {
        let mechanics = &case.joint.mechanics;
        let fluid = match mechanics.service.fluid.get() {
            Some(fluid) => fluid.clone(),
            None => context.label("pack.cautions.contents"),
        };
        for (list, hazards) in [
            (&mut self.toxic, [Hazard::Toxic, Hazard::Toxic]),
            (&mut self.burning, [Hazard::Flammable, Hazard::Hydrogen]),
            (&mut self.hazardous, [Hazard::Corrosive, Hazard::Steam]),
        ] {
            if hazards.iter().any(|hazard| case.has(*hazard)) {
                once(list, fluid.clone());
            }
        }
        if case.has(Hazard::InertGas) {
            once(
                &mut self.gases,
                purge_gas(context, case.joint).unwrap_or(fluid),
            );
        }
        if case.has(Hazard::RotatingMachine) {
            let identity = &case.joint.identity;
            let part = identity
                .equipment_name
                .clone()
                .or_else(|| identity.equipment.get().cloned());
            once(
                &mut self.parts,
                part.unwrap_or_else(|| case.joint.tag.clone()),
            );
        }
        if let Some(lubricant) = mechanics.lubricant.name.get() {
            once(&mut self.lubricants, lubricant.clone());
        }
        if let Some(temperature) = case.temperature() {
            higher(&mut self.hottest, temperature);
            if temperature <= VERY_HOT {
                higher(&mut self.hot, temperature);
            }
            if self.coldest.is_none_or(|coldest| temperature < coldest) {
                self.coldest = Some(temperature);
            }
        }
        if let Some((tool, mass)) = case.heaviest()
            && self.heaviest.as_ref().is_none_or(|(_, most)| mass > *most)
        {
            self.heaviest = Some((tool.name.clone(), mass));
        }
    }

    /// A caution with its values.
    pub(super) fn text(&self, context: &Context<'_>, id: &str) -> String {
        let joined = |list: &[String]| capital(&context.wording.join(list));
        let warm = |at: Option<Temperature>| at.map(|at| context.text(at)).unwrap_or_default();
        let values = match id {
            "toxic_contents" => Values::new().with("fluid", joined(&self.toxic)),
            "flammable_contents" => Values::new().with("fluid", joined(&self.burning)),
            "hazardous_contents" => Values::new().with("fluid", joined(&self.hazardous)),
            "inert_gas" => Values::new().with("gas", context.wording.join(&self.gases)),
            "machine_part" => Values::new().with("part", joined(&self.parts)),
            "chemicals" => Values::new().with("lubricant", joined(&self.lubricants)),
            "one_lubricant" => {
                Values::new().with("lubricant", context.wording.join(&self.lubricants))
            }
            "hot_surface" => Values::new().with("temperature", warm(self.hot)),
            "very_hot_surface" => Values::new().with("temperature", warm(self.hottest)),
            "cold_surface" => Values::new().with("temperature", warm(self.coldest)),
            "dropped_object" | "manual_handling" => {
                let (item, mass) = match &self.heaviest {
                    Some((name, mass)) => (name.clone(), context.text(*mass)),
                    None => Default::default(),
                };
                Values::new().with("item", item).with("mass", mass)
            }
            _ => Values::new(),
        };
        context.say(&format!("cautions.{id}.text"), &values)
    }
}

/// What the boundary of a joint is purged with.
fn purge_gas(context: &Context<'_>, joint: &Joint) -> Option<String> {
    let name = joint.work.isolation.get()?;
    let isolations = context.job.isolations.as_ref()?.get()?;
    let purge = isolations.get(name)?.purge.as_ref()?.get()?;
    purge.medium.get().map(|medium| medium.as_str().to_owned())
}
