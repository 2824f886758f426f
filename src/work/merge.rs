//! Many works into one: the same steps once, their values as spans. What the pack says of all joints is a view of that.

use super::{Kind, Limit, Step, StopRule, Values, Work};

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
                Some(known) => {
                    known.signal = known.signal.min(hazard.signal);
                    known.is_behind |= hazard.is_behind;
                    merge_values(&mut known.values, &hazard.values);
                    known.held_by.merge(&hazard.held_by);
                }
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

impl Step {
    /// Whether the other says the same thing of another joint. Own points and checks of a tool are told apart by what
    /// they say.
    fn is_like(&self, other: &Self) -> bool {
        self.id == other.id
            && match (&self.kind, &other.kind) {
                (Kind::Setting(one), Kind::Setting(other)) => one.name == other.name,
                (Kind::Point(one), Kind::Point(other)) => one.name == other.name,
                _ => true,
            }
            && texts(&self.values) == texts(&other.values)
    }

    fn merge(&mut self, other: &Self) {
        merge_values(&mut self.values, &other.values);
        merge_limits(&mut self.accept, &other.accept);
        if let (Kind::Setting(one), Kind::Setting(other)) = (&self.kind, &other.kind)
            && one.set != other.set
        {
            let mut set = match self.values.iter().position(|(name, _)| *name == "set") {
                Some(at) => self.values.remove(at).1,
                None => one.set.value(),
            };
            set.merge(&other.set.value());
            self.values.push(("set", set));
        }
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

fn merge_limits(limits: &mut Vec<Limit>, others: &[Limit]) {
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
