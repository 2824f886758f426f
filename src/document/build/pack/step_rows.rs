//! Steps as rows of the procedures: what is done, when it is accepted, what is written, which point stands there.

use crate::document::voice::Voice;
use crate::work::{HazardKind, Kind, Point, Role, Setting, Step, Value, Work, merge_limits};

use super::super::context::Context;
use super::super::words::capital;
use super::works::Shared;

/// Settings of one kind up to which each has a row of its own; more stand in one row, from the first to the last.
const MOST_ROWS: usize = 4;

/// A row before it is numbered.
pub(super) struct Row {
    pub(super) what: String,
    pub(super) accept: String,
    pub(super) record: String,
    pub(super) points: Vec<String>,
    /// The hazards that its steps meet.
    pub(super) meets: Vec<HazardKind>,
    /// Who does it.
    pub(super) who: Role,
}

/// Says the steps of works.
pub(super) struct View<'a> {
    pub(super) context: &'a Context<'a>,
    pub(super) voice: Voice<'a>,
}

impl View<'_> {
    /// The method of a work in words.
    pub(super) fn method(&self, work: &Work) -> String {
        self.context.label(&format!("method.{}", work.method))
    }

    /// The rows of some steps: settings of one kind that are many in one, points beside what they accept.
    pub(super) fn rows(&self, works: &[&Work], steps: Vec<Shared<'_>>) -> Vec<Row> {
        let (points, steps): (Vec<_>, Vec<_>) =
            steps.into_iter().partition(|it| self.stands_beside(it));
        let mut rows: Vec<(Vec<&'static str>, Row)> = Vec::new();
        for run in self.runs(&steps) {
            rows.extend(
                self.row(works, run)
                    .map(|row| (run.iter().map(|it| it.step.id).collect(), row)),
            );
        }
        for point in &points {
            let Kind::Point(Point {
                name: Some(name),
                covers,
                ..
            }) = &point.step.kind
            else {
                continue;
            };
            let covered =
                |(ids, _): &(Vec<&'static str>, Row)| ids.iter().any(|id| covers.contains(id));
            match rows.iter().rposition(covered) {
                Some(at) => rows[at].1.points.push(name.clone()),
                None => rows.extend(
                    self.row(works, std::slice::from_ref(point))
                        .map(|row| (Vec::new(), row)),
                ),
            }
        }
        rows.into_iter().map(|(_, row)| row).collect()
    }

    /// Whether a step is a point without words of what is done: it stands in the row of what it accepts.
    fn stands_beside(&self, shared: &Shared<'_>) -> bool {
        let Some(work) = shared.works.first() else {
            return false;
        };
        matches!(&shared.step.kind, Kind::Point(point) if point.name.is_some())
            && self.voice.step(work, &shared.step, "do").is_none()
    }

    /// One row for one step, or for several settings of one kind.
    fn row(&self, works: &[&Work], run: &[Shared<'_>]) -> Option<Row> {
        let (first, last) = (run.first()?, run.last()?);
        let mut step = first.step.clone();
        if matches!(step.kind, Kind::Setting(_)) {
            run.iter().skip(1).for_each(|other| step.merge(&other.step));
        }
        let mut more = match &step.kind {
            Kind::Setting(setting) => setting.values(),
            _ => Vec::new(),
        };
        let name = |shared: &Shared<'_>| match &shared.step.kind {
            Kind::Setting(setting) => Some(Value::Text(setting.name.clone())),
            _ => None,
        };
        if let (Some(least), Some(most)) = (name(first), name(last)) {
            more.push(("name", Value::Span(Box::new([least, most]))));
        }
        let what = self.what(run, &step, &more)?;
        let mut limits = Vec::new();
        for shared in run {
            merge_limits(&mut limits, &shared.limits());
        }
        let points = match &step.kind {
            Kind::Point(point) => point.name.iter().cloned().collect(),
            _ => Vec::new(),
        };
        let said = match step.kind {
            Kind::Decision => capital(&what),
            _ => self.voice.by(step.who, what),
        };
        Some(Row {
            what: self.for_whom(works, first, said),
            accept: match (step.kind == Kind::Decision, limits.is_empty()) {
                (true, true) => self.who_decides(&step),
                _ => self.voice.limits(&limits),
            },
            record: self.record(first, &step, &more),
            points,
            meets: run.iter().flat_map(|it| it.step.meets).copied().collect(),
            who: step.who,
        })
    }

    /// What is written: the words of the step, else what is read after the setting, else the part of the record.
    fn record(&self, shared: &Shared<'_>, step: &Step, more: &[(&'static str, Value)]) -> String {
        let Some(work) = shared.works.first() else {
            return String::new();
        };
        if let Some(record) = self.voice.words(work.method, step, &["record"], more) {
            return record;
        }
        match &step.kind {
            Kind::Setting(setting) => self.read_after(work, setting),
            Kind::Reading(reading) => self
                .voice
                .label(&["work", "section", reading.section.key()])
                .to_owned(),
            _ => String::new(),
        }
    }

    fn read_after(&self, work: &Work, setting: &Setting) -> String {
        let read = work
            .readings()
            .filter(|(_, reading)| reading.after.contains(&setting.name));
        let mut said: Vec<String> = read
            .filter_map(|(step, _)| self.voice.step(work, step, "short"))
            .collect();
        said.dedup();
        said.join(", ")
    }

    fn who_decides(&self, step: &Step) -> String {
        if step.who == Role::Technician {
            return String::new();
        }
        let who = Value::Text(self.voice.role(step.who).to_owned());
        self.voice
            .say(&["work", "line", "decides"], &[("who", who)])
    }

    /// Words of a step with the task or method that it is for, where its table is for several.
    fn for_whom(&self, works: &[&Work], shared: &Shared<'_>, what: String) -> String {
        let Some(first) = shared.works.first() else {
            return what;
        };
        let one_of = |is_same: fn(&Work, &Work) -> bool| {
            shared.works.iter().all(|work| is_same(work, first))
                && works.iter().any(|work| !is_same(work, first))
        };
        let task = one_of(|one, other| one.task == other.task).then(|| {
            self.voice
                .label(&["work", "task", first.task.key()])
                .to_owned()
        });
        let method = one_of(|one, other| one.method == other.method).then(|| self.method(first));
        let only: Vec<String> = task.into_iter().chain(method).collect();
        if only.is_empty() {
            return what;
        }
        let values = [
            ("what", Value::Text(what)),
            ("only", Value::Text(only.join(", "))),
        ];
        self.voice.say(&["work", "line", "only"], &values)
    }

    /// Steps one by one; settings of one kind that are many together, and readings that are no more than boxes; settings
    /// that only tell of further rounds not at all.
    fn runs<'a, 'b>(&self, steps: &'a [Shared<'b>]) -> Vec<&'a [Shared<'b>]> {
        let is_further = |shared: &Shared<'_>| matches!(&shared.step.kind, Kind::Setting(setting) if setting.further);
        let alike = |one: &Shared<'_>, other: &Shared<'_>| match (&one.step.kind, &other.step.kind)
        {
            (Kind::Setting(_), Kind::Setting(_)) => {
                one.step.id == other.step.id && is_further(one) == is_further(other)
            }
            (Kind::Reading(first), Kind::Reading(second)) => {
                first.section == second.section && self.is_box(one) && self.is_box(other)
            }
            _ => false,
        };
        let is_together =
            |run: &[Shared<'_>]| run.len() > MOST_ROWS || run.iter().any(|it| self.is_box(it));
        let runs = steps
            .chunk_by(alike)
            .filter(|run| !run.iter().any(is_further));
        runs.flat_map(|run| {
            if is_together(run) {
                vec![run]
            } else {
                run.chunks(1).collect()
            }
        })
        .collect()
    }

    /// Whether a step is a reading of which no more is said than the label of its box.
    fn is_box(&self, shared: &Shared<'_>) -> bool {
        let has_words = |work: &&Work| {
            self.voice
                .words(work.method, &shared.step, &["do", "card"], &[])
                .is_some()
        };
        matches!(shared.step.kind, Kind::Reading(_)) && !shared.works.first().is_some_and(has_words)
    }

    /// What is done in a step, or in several that stand in one row. A signature of no point is no step.
    fn what(
        &self,
        run: &[Shared<'_>],
        step: &Step,
        more: &[(&'static str, Value)],
    ) -> Option<String> {
        let first = run.first()?;
        let method = first.works.first()?.method;
        if matches!(&step.kind, Kind::Point(point) if point.name.is_none()) {
            return self.voice.words(method, step, &["do"], more);
        }
        if self.is_box(first) {
            let boxes = run.iter().filter_map(|it| {
                self.voice
                    .words(it.works.first()?.method, &it.step, &["box"], &[])
            });
            let what = Value::List(boxes.map(Value::Text).collect());
            return Some(
                self.voice
                    .say(&["work", "line", "write"], &[("what", what)]),
            );
        }
        let what = self
            .voice
            .words(method, step, &["do", "card", "sign"], more);
        if what.is_none() {
            self.voice.label(&["work", "step", method, step.id, "do"]);
        }
        let when = self.voice.words(method, step, &["when"], more);
        Some(match (when, what?) {
            (Some(when), then) => {
                let values = [("when", Value::Text(when)), ("then", Value::Text(then))];
                self.voice.say(&["work", "line", "decision"], &values)
            }
            (None, what) => what,
        })
    }
}
