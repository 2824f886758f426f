//! Many works into one: the same steps once, their values as spans. What the pack says of all joints is a view of that.

use super::{Hazard, HazardKind, Kind, Limit, Step, StopRule, Values, Work};

/// The name of the value that says how heavy a thing is.
const MASS: &str = "mass";

impl Work {
    /// Takes in the work on another joint by the same method in the same task.
    pub fn merge(&mut self, other: &Self) {
        self.joints += other.joints;
        self.merge_steps(&other.steps);
        for hazard in &other.hazards {
            match self
                .hazards
                .iter_mut()
                .find(|known| known.kind == hazard.kind)
            {
                Some(known) => known.merge(hazard),
                None => self.hazards.push(hazard.clone()),
            }
        }
        match (&mut self.stop, &other.stop) {
            (Some(stop), Some(other)) => merge_stop(stop, other),
            (None, Some(other)) => self.stop = Some(other.clone()),
            _ => {}
        }
    }

    /// A step that is new comes behind the one that it follows in its own work.
    fn merge_steps(&mut self, steps: &[Step]) {
        let mut next = 0;
        for step in steps {
            match self.steps.iter().position(|known| known.is_like(step)) {
                Some(found) => {
                    self.steps[found].merge(step);
                    next = next.max(found + 1);
                }
                None => {
                    self.steps.insert(next, step.clone());
                    next += 1;
                }
            }
        }
    }
}

impl Hazard {
    /// Takes in the same hazard of another joint: the graver signal and the worst magnitude count, and every name is
    /// told. A mass goes with the thing that has it.
    pub fn merge(&mut self, other: &Self) {
        self.signal = self.signal.min(other.signal);
        self.is_behind |= other.is_behind;
        self.held_by.gather(&other.held_by, false);
        let is_worse = |values: &Values| {
            let mass = values.iter().find(|(name, _)| *name == MASS)?;
            let own = self.values.iter().find(|(name, _)| *name == MASS)?;
            own.1.is_less_than(&mass.1)
        };
        if let Some(is_worse) = is_worse(&other.values) {
            if is_worse {
                self.values.clone_from(&other.values);
            }
            return;
        }
        let is_cold = self.kind == HazardKind::Cold;
        for (name, value) in &other.values {
            match self.values.iter_mut().find(|(known, _)| known == name) {
                Some((_, known)) => known.gather(value, is_cold),
                None => self.values.push((name, value.clone())),
            }
        }
    }
}

impl Step {
    /// Whether the other says the same thing of another joint. Own points and checks of a tool are told apart by what
    /// they say.
    pub fn is_like(&self, other: &Self) -> bool {
        self.id == other.id
            && match (&self.kind, &other.kind) {
                (Kind::Setting(one), Kind::Setting(other)) => one.name == other.name,
                (Kind::Point(one), Kind::Point(other)) => one.name == other.name,
                _ => true,
            }
            && texts(&self.values) == texts(&other.values)
    }

    /// Takes in the same step of another joint. Where settings differ, the values `set` and `share` say what all of
    /// them are set to.
    pub fn merge(&mut self, other: &Self) {
        let settings = match (&self.kind, &other.kind) {
            (Kind::Setting(one), Kind::Setting(other)) => Some((one.values(), other.values())),
            _ => None,
        };
        if let Some((own, others)) = settings {
            let named =
                |values: &Values, name: &str| values.iter().any(|(known, _)| *known == name);
            let missing = own
                .into_iter()
                .filter(|(name, _)| !named(&self.values, name));
            let missing: Values = missing.collect();
            self.values.extend(missing);
            let others = others
                .into_iter()
                .filter(|(name, _)| !named(&other.values, name));
            merge_values(&mut self.values, &others.collect());
        }
        merge_values(&mut self.values, &other.values);
        merge_limits(&mut self.accept, &other.accept);
    }
}

/// What stands for a step of its own where it differs: the words of the job.
fn texts(values: &Values) -> Vec<&super::Value> {
    let own = values
        .iter()
        .filter(|(name, _)| matches!(*name, "check" | "what"));
    own.map(|(_, value)| value).collect()
}

fn merge_stop(stop: &mut StopRule, other: &StopRule) {
    merge_limits(&mut stop.parts, &other.parts);
    if stop.last != other.last {
        stop.last = None;
    }
}

fn merge_values(values: &mut Values, others: &Values) {
    for (name, value) in others {
        match values.iter_mut().find(|(known, _)| known == name) {
            Some((_, known)) => known.merge(value),
            None => values.push((name, value.clone())),
        }
    }
}

/// Takes in the limits of another joint: the same limit stands once, its values as spans.
pub fn merge_limits(limits: &mut Vec<Limit>, others: &[Limit]) {
    for limit in others {
        match limits.iter_mut().find(|known| known.is_like(limit)) {
            Some(known) => {
                for (one, other) in known.values_mut().into_iter().zip(limit.values()) {
                    one.merge(other);
                }
            }
            None => limits.push(limit.clone()),
        }
    }
}
