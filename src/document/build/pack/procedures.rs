//! The procedures: the steps of all works as numbered rows. What comes before and after the load is said once for all
//! methods; the rest stands under its method and task.

use crate::document::blocks::Head;
use crate::document::desk::{Cell, Column, Table};
use crate::document::pack::{Block, Cautions, Section};
use crate::document::voice::Voice;
use crate::work::{HazardKind, Phase, Role, Step, Task, Value, Work};

use super::super::context::Context;
use super::super::words::capital;
use super::step_rows::View;
use super::works::{Works, shared};

/// Phases that belong to a method; the others are the same for all: what comes before the joint is opened or made up,
/// and what follows when it is loaded.
const OWN: [Phase; 5] = [
    Phase::Prepare,
    Phase::Load,
    Phase::Check,
    Phase::Loosen,
    Phase::RunOut,
];

/// The procedures and where their points stand.
pub(in crate::document) struct Procedures {
    tables: Vec<(Phase, Table)>,
    /// Method, task and name of a point, and the number of its row.
    points: Vec<(&'static str, Task, String, String)>,
    /// A hazard, who meets it, and the number of the row in which that is done.
    met: Vec<(HazardKind, Role, String)>,
}

impl Procedures {
    /// The procedures of a pack.
    pub(in crate::document) fn of(context: &Context<'_>, works: &Works) -> Self {
        let mut made = Self {
            tables: Vec::new(),
            points: Vec::new(),
            met: Vec::new(),
        };
        let view = View {
            context,
            voice: Voice::new(context),
        };
        let all: Vec<&Work> = works.merged.iter().collect();
        made.table(&view, &all, Phase::Before);
        for task in Task::ALL {
            if task == Task::Tighten {
                made.table(&view, &all, Phase::MakeUp);
            }
            let of_task: Vec<&Work> = all
                .iter()
                .copied()
                .filter(|work| work.task == task)
                .collect();
            for phase in OWN {
                for works in view.together(&of_task, phase) {
                    made.table(&view, &works, phase);
                }
            }
        }
        for phase in [Phase::Finish, Phase::HandOver, Phase::Stop] {
            made.table(&view, &all, phase);
        }
        made
    }

    /// The steps of a phase of some works as a table, where they have any.
    fn table(&mut self, view: &View<'_>, works: &[&Work], phase: Phase) {
        let works: Vec<&Work> = works
            .iter()
            .copied()
            .filter(|work| work.steps.iter().any(|step| step.phase == phase))
            .collect();
        let alike = |one: &Work, other: &Work, step: &Step| {
            one.method == other.method
                || ![one, other]
                    .iter()
                    .any(|work| view.voice.has_own_words(work.method, step))
        };
        let steps = shared(&works, |it| it == phase, alike);
        let rows = view.rows(&works, steps);
        if rows.is_empty() {
            return;
        }
        let number = self.tables.len() + 1;
        let mut table = view.empty_table(number, &works, phase);
        for (place, row) in rows.into_iter().enumerate() {
            let number = format!("{number}.{}", place + 1);
            for work in &works {
                let points = row
                    .points
                    .iter()
                    .map(|point| (work.method, work.task, point.clone(), number.clone()));
                self.points.extend(points);
            }
            let met = row.meets.iter();
            self.met
                .extend(met.map(|hazard| (*hazard, row.who, number.clone())));
            let points = row.points.join(" ");
            let cells = [number, row.what, row.accept, row.record, points];
            table.rows.push(cells.map(Cell::Text).into());
        }
        self.tables.push((phase, table));
    }

    /// The numbers of the rows in which a point of a work stands.
    pub(super) fn rows_of(
        &self,
        method: &str,
        task: Task,
        point: &str,
    ) -> impl Iterator<Item = &str> {
        let found = self.points.iter().filter(move |(of, for_task, name, _)| {
            (*of, *for_task, name.as_str()) == (method, task, point)
        });
        found.map(|(.., number)| number.as_str())
    }

    /// Who meets a hazard, and in which rows.
    pub(in crate::document) fn met(
        &self,
        hazard: HazardKind,
    ) -> impl Iterator<Item = (Role, &str)> {
        let found = self.met.iter().filter(move |(met, ..)| *met == hazard);
        found.map(|(_, who, number)| (*who, number.as_str()))
    }

    /// The tables with the phases that they show.
    pub(in crate::document) fn tables(&self) -> impl Iterator<Item = (Phase, &Table)> {
        self.tables.iter().map(|(phase, table)| (*phase, table))
    }

    /// The section, behind the cautions for which their own page has no room.
    pub(super) fn section(self, context: &Context<'_>, works: &Works) -> Section {
        let (_, panels) = super::resources::split_panels(context, works);
        let mut blocks = Vec::new();
        if !panels.is_empty() {
            let notes = Vec::new();
            blocks.push(Block::Cautions(Cautions { panels, notes }));
        }
        blocks.extend(
            self.tables
                .into_iter()
                .map(|(_, table)| Block::Table(table)),
        );
        Section {
            label: "procedures".to_owned(),
            title: context.label("pack.procedures.title"),
            line: context.label("pack.procedures.line"),
            new_page: true,
            blocks,
        }
    }
}

impl View<'_> {
    fn empty_table(&self, number: usize, works: &[&Work], phase: Phase) -> Table {
        let label = |key: &str| self.context.label(&format!("pack.procedures.{key}"));
        let phase_words = self.voice.label(&["work", "phase", phase.key()]).to_owned();
        let title = match works.first() {
            Some(first) if OWN.contains(&phase) => {
                let methods = works.iter().map(|work| Value::Text(self.method(work)));
                let task = self
                    .voice
                    .label(&["work", "task", first.task.key()])
                    .to_owned();
                let values = [
                    ("method", Value::List(methods.collect())),
                    ("task", Value::Text(task)),
                    ("phase", Value::Text(phase_words)),
                ];
                capital(&self.voice.say(&["work", "line", "section"], &values))
            }
            _ => phase_words,
        };
        let head = Head {
            title: format!("{number}  {title}"),
            note: String::new(),
        };
        Table::new(
            head,
            vec![
                Column::new("", 12.5),
                Column::new(label("step"), 94.0),
                Column::new(label("accept"), 38.0),
                Column::new(label("record"), 21.5),
                Column::new(label("point"), 10.0).strong(),
            ],
        )
    }

    /// Works of one task whose steps in a phase stand in one table: those of the one hold all those of the other, in the
    /// same words.
    fn together<'a>(&self, works: &[&'a Work], phase: Phase) -> Vec<Vec<&'a Work>> {
        let steps = |work: &'a Work| work.steps.iter().filter(move |step| step.phase == phase);
        let is_part = |part: &'a Work, whole: &'a Work| {
            steps(part).all(|step| {
                steps(whole).any(|other| other.id == step.id)
                    && !self.voice.has_own_words(part.method, step)
                    && !self.voice.has_own_words(whole.method, step)
            })
        };
        let mut groups: Vec<Vec<&'a Work>> = Vec::new();
        for work in works
            .iter()
            .copied()
            .filter(|work| steps(work).next().is_some())
        {
            let joins = |group: &&mut Vec<&'a Work>| {
                group
                    .iter()
                    .all(|other| is_part(work, other) || is_part(other, work))
            };
            match groups.iter_mut().find(joins) {
                Some(group) => group.push(work),
                None => groups.push(vec![work]),
            }
        }
        groups
    }
}
