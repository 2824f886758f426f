//! From a path to a job with its joints, numbers and findings.

use std::collections::BTreeSet;
use std::mem::ManuallyDrop;
use std::path::{Path, PathBuf};

use crate::document::build::{
    Boundary, Context, Subject, isolation, isolation_room_findings, joints_behind,
    missing_characters, room_findings,
};
use crate::document::geometry::Geometry;
use crate::job::{self, Job};
use crate::joint::Joint;
use crate::methods::{self, Calculation};
use crate::parallel;
use crate::report::{Finding, Sources, Stage, sort};
use crate::resolve;
use crate::rules;
use crate::typeset;
use crate::wording::Wording;
use crate::yaml::entries;

use super::Exit;
use super::args;
use super::output::{complain, draw_all, say_failed};
use super::overrides::{self, UserFiles};
use super::store;
use super::volumes::{Sheets, cards_of, sheets_of};

/// Everything that a command needs of a job.
pub(super) struct Loaded {
    /// The files that were read.
    pub(super) sources: Sources,
    /// The folder of the job.
    pub(super) base: PathBuf,
    /// The job; `None` if its outline could not be read.
    pub(super) job: Option<Job>,
    /// Its joints.
    pub(super) joints: Vec<Joint>,
    /// Their numbers.
    pub(super) plan: Calculation,
    /// Everything there is to tell, sorted by place.
    pub(super) findings: Vec<Finding>,
    /// The words of the job's language.
    pub(super) wording: Wording,
    /// The sheets of the cards of each joint; empty where the job cannot be a job.
    pub(super) sheets: Vec<Sheets>,
    /// The measures of placed pages, those of the user among them.
    pub(super) geometry: Geometry,
    /// The user's own templates.
    pub(super) user: UserFiles,
    /// Pictures that the job names, by path.
    pub(super) pictures: super::pictures::Pictures,
}

impl Loaded {
    /// The job, or the exit of a job that cannot be read; its findings are then printed.
    pub(super) fn sound(&self) -> Result<&Job, Exit> {
        match &self.job {
            Some(job) if !self.is_bad() => Ok(job),
            _ => {
                complain(&draw_all(
                    &self.job_findings(),
                    &self.sources,
                    &self.wording,
                ));
                Err(Exit::BadJob)
            }
        }
    }

    /// Whether the job cannot be a job at all.
    pub(super) fn is_bad(&self) -> bool {
        self.findings
            .iter()
            .any(|finding| finding.stage == Stage::Job)
    }

    /// Keeps these joints alone, with their numbers and with what was found about them or about the
    /// job as a whole.
    pub(super) fn keep(&mut self, chosen: &[usize]) {
        self.plan = self.plan.of_joints(chosen);
        let left_out: BTreeSet<String> = (0..self.joints.len())
            .filter(|index| !chosen.contains(index))
            .map(|index| self.joints[index].tag.clone())
            .collect();
        self.findings.retain(|finding| {
            let joint = finding.joint.as_ref();
            !joint.is_some_and(|tag| left_out.contains(tag))
        });
        self.joints = chosen
            .iter()
            .map(|&index| self.joints[index].clone())
            .collect();
        self.sheets = chosen
            .iter()
            .filter_map(|&index| self.sheets.get(index).copied())
            .collect();
    }

    fn job_findings(&self) -> Vec<Finding> {
        let of_job = |finding: &&Finding| finding.stage == Stage::Job;
        self.findings.iter().filter(of_job).cloned().collect()
    }
}

/// Reads a job and works it out. Fails only if the file or the user's templates cannot be read;
/// what is wrong in the job stands in the findings. A program loads one job and ends, so nothing of it is
/// given back piece by piece: that takes longer than many a check. An issued job stays sound to read: only a second
/// issue of its revision is refused.
pub(super) fn load(path: &Path, wish: &args::Overrides) -> Result<ManuallyDrop<Loaded>, Exit> {
    load_for(path, wish, None, true)
}

/// The same for an issue into the folder `out`; `replace` lets the current revision be issued again.
pub(super) fn load_for(
    path: &Path,
    wish: &args::Overrides,
    out: Option<&Path>,
    replace: bool,
) -> Result<ManuallyDrop<Loaded>, Exit> {
    let mut user = overrides::read(wish.folder.as_deref())?;
    let bytes = super::files::read(path)
        .map_err(|error| say_failed("cli.cannot_read", path, Some(&error)))?;
    let base = path.parent().map_or_else(PathBuf::new, Path::to_owned);
    let out = out.map_or_else(|| base.clone(), Path::to_owned);
    let mut sources = Sources::default();
    let (mut job, mut findings) = job::open(&path.to_string_lossy(), &bytes, &mut sources);
    let language = job.as_ref().map_or("en", |job| job.language());
    let (wording, told) = overrides::wording(language, &user, &mut sources);
    findings.extend(told);
    let (geometry, told) = overrides::geometry(&mut user, &mut sources);
    findings.extend(told);
    let mut joints = Vec::new();
    let mut plan = Calculation::default();
    let mut sheets = Vec::new();
    let mut pictures = super::pictures::Pictures::default();
    if let Some(job) = &job {
        let (resolved, found) = resolve::resolve(job);
        findings.extend(found);
        joints = resolved;
        let (read, found) = super::pictures::read(job, &joints, &base, wish.allow_outside);
        pictures = read;
        findings.extend(found);
        findings.extend(missing_characters(job, typeset::missing_characters));
        plan = methods::calculate(&joints);
        let bad = findings.iter().any(|finding| finding.stage == Stage::Job);
        if !bad {
            let issued = store::issued(&out, job, replace);
            let context = Context::new(job, &joints, &plan, &[], &wording);
            let context = context.placed_by(&geometry).for_room_alone();
            let (room, counted) = room(&context);
            sheets = counted;
            let subject = rules::Subject::new(job, &joints, &plan, &issued);
            findings.extend(rules::check(&subject, room));
        }
    }
    if let Some(job) = &mut job {
        job.forget_joints();
    }
    sort(&mut findings);
    Ok(ManuallyDrop::new(Loaded {
        sources,
        base,
        job,
        joints,
        plan,
        findings,
        wording,
        sheets,
        geometry,
        user,
        pictures,
    }))
}

/// What does not fit its place on cards and isolation sheets, found without typesetting, and how many sheets the cards
/// have. Joints are independent, so they are looked at side by side; the order of the findings is that of the joints.
fn room(context: &Context<'_>) -> (Vec<Finding>, Vec<Sheets>) {
    let subjects = context.joints.iter().enumerate().map(|(index, joint)| {
        let group = context.plan.of(index)?;
        Some(Subject {
            joint,
            computed: &group.computed,
            group: &group.name,
        })
    });
    let subjects: Vec<Option<Subject<'_>>> = subjects.collect();
    let of_cards = parallel::map(&subjects, |subject| {
        let Some(subject) = subject else {
            return (Vec::new(), Sheets::default());
        };
        let cards = cards_of(context, subject);
        let found = cards
            .iter()
            .flat_map(|card| room_findings(context, card, subject));
        (found.collect(), sheets_of(&cards))
    });
    let (found, sheets): (Vec<Vec<Finding>>, Vec<Sheets>) = of_cards.into_iter().unzip();
    let found = found.into_iter().flatten().chain(sheet_room(context));
    (found.collect(), sheets)
}

/// The same for the isolation sheets of the boundaries that joints stand behind.
fn sheet_room(context: &Context<'_>) -> Vec<Finding> {
    let all = entries(context.job.isolations.as_ref());
    all.filter_map(|(name, entry)| Some((name.get()?, entry.get()?, entry.place())))
        .filter(|(name, ..)| !joints_behind(context.joints, name).is_empty())
        .flat_map(|(name, entry, place)| {
            let boundary = Boundary {
                name,
                isolation: entry,
                label: String::new(),
                picture: None,
                in_pack: true,
            };
            isolation_room_findings(&isolation(context, &boundary).content, Some(place))
        })
        .collect()
}
