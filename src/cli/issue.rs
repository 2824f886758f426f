//! `studbook issue`: everything into one folder, whole or not at all.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use crate::document::build::Context;
use crate::document::code::{self, Stamp};
use crate::document::{Builder, DOCUMENTS, DocumentKind};
use crate::report::Severity;
use crate::typeset::{self, Date, Properties, Request};
use crate::wording::{self, Values};
use crate::yaml::At;

use super::Exit;
use super::args::Overrides;
use super::load::{Loaded, load_for};
use super::output::{complain, draw_all, exit_of, print, say, say_failed};
use super::piece::{Piece, Work};
use super::pieces;
use super::progress::Progress;
use super::store::{self, Listed, Making, Manifest};
use super::volumes::{Volume, note_volumes, volumes};

/// What the user asked for.
#[derive(Clone, Debug, Default)]
pub(super) struct Wish {
    /// Folder in which the issue is made.
    pub(super) out: Option<PathBuf>,
    /// Names of the documents to be made; those of every issue if empty.
    pub(super) only: Vec<String>,
    /// Joints to be made; all if empty.
    pub(super) joints: Vec<String>,
    /// The volume of cards that is made alone.
    pub(super) volume: Option<usize>,
    /// Whether every page says DRAFT.
    pub(super) draft: bool,
    /// Whether an existing issue is moved aside.
    pub(super) replace: bool,
}

impl Wish {
    /// A part of a job is never an issue: it is marked as a draft.
    fn is_partial(&self) -> bool {
        !self.only.is_empty() || !self.joints.is_empty()
    }
}

/// Makes the documents of a job.
pub(super) fn run(job: &Path, wish: &Wish, overrides: &Overrides) -> Result<Exit, Exit> {
    let mut loaded = load_for(job, overrides, wish.out.as_deref(), wish.replace)?;
    loaded.sound()?;
    if !wish.joints.is_empty() {
        let chosen = chosen(&loaded, wish)?;
        loaded.keep(&chosen);
    }
    let sound = loaded.sound()?;
    let forced = wish.draft || wish.is_partial();
    let context = Context::new(
        sound,
        &loaded.joints,
        &loaded.plan,
        &loaded.findings,
        &loaded.wording,
    )
    .with_sources(&loaded.sources)
    .placed_by(&loaded.geometry)
    .stamped(stamp(&loaded))
    .with_draft(forced);
    let draft = context.draft.is_some();
    let stem = stem(job, &context);
    let folder = wish.out.clone().unwrap_or_else(|| loaded.base.clone());
    if !forced && !wish.replace && wish.volume.is_none() {
        refuse_issued(&folder.join(&stem), &context)?;
    }
    let volume = wish
        .volume
        .map(|number| volume(&loaded, &stem, number))
        .transpose()?;
    let place = folder.join(folder_name(&stem, draft, wish.volume));
    let making = Making::begin(&place)
        .map_err(|error| say_failed("cli.cannot_write", &place, Some(&error)))?;
    let work = Work {
        loaded: &loaded,
        context: &context,
        stem: &stem,
        properties: properties(&context),
        earlier: store::manifests(&folder),
        progress: Progress::new(&loaded.wording, pdfs(&loaded, &stem, wish)),
    };
    let mut manifest = Manifest {
        number: context.number().to_owned(),
        revision: context.revision_name().to_owned(),
        date: context.date(),
        program: env!("CARGO_PKG_VERSION").to_owned(),
        draft,
        volume: wish.volume,
        files: BTreeMap::new(),
    };
    let made = match &volume {
        Some(volume) => vec![pieces::card_volume(&work, volume, &making)?],
        None => pieces::make_all(&work, &wanted(wish), &making)?,
    };
    refuse_faulty_wording(&context)?;
    let copied = made.iter().filter(|piece| piece.copied).count();
    for Piece { name, listed, .. } in made {
        manifest.files.insert(name, listed);
    }
    let text =
        serde_json::to_vec_pretty(&manifest).map_err(|error| Exit::Failed(error.to_string()))?;
    let write = |error: std::io::Error| say_failed("cli.cannot_write", &place, Some(&error));
    making.write(store::MANIFEST, &text).map_err(write)?;
    let is_issue = !draft && wish.volume.is_none();
    let moved = making.finish(is_issue).map_err(write)?;
    report(&loaded, &place, &manifest, copied, moved.as_deref())?;
    Ok(exit_of(&loaded.findings))
}

/// `NUMBER_REV`, `NUMBER_REV_DRAFT`, and for a volume of cards alone its number behind it.
fn folder_name(stem: &str, draft: bool, volume: Option<usize>) -> String {
    let draft = if draft { "_DRAFT" } else { "" };
    let volume = volume.map_or_else(String::new, |number| format!("_volume_{number}"));
    format!("{stem}{draft}{volume}")
}

/// The volume of this number, from 1.
fn volume(loaded: &Loaded, stem: &str, number: usize) -> Result<Volume, Exit> {
    let mut all = volumes(&loaded.joints, stem);
    let last = all.len();
    if (1..=last).contains(&number) {
        return Ok(all.swap_remove(number - 1));
    }
    let values = Values::new().with("got", number).with("last", last);
    Err(Exit::Failed(say(
        &loaded.wording,
        "cli.issue.no_volume",
        &values,
    )))
}

/// The documents to be made, in the order of their table.
fn wanted(wish: &Wish) -> Vec<&'static DocumentKind> {
    let is_named = |kind: &DocumentKind| wish.only.iter().any(|name| name == kind.name);
    let is_wanted = |kind: &&DocumentKind| match wish.only.is_empty() {
        true => kind.is_issued,
        false => is_named(kind),
    };
    DOCUMENTS.iter().filter(is_wanted).collect()
}

/// How many PDF files are made; the rest takes no time.
fn pdfs(loaded: &Loaded, stem: &str, wish: &Wish) -> usize {
    if wish.volume.is_some() {
        return 1;
    }
    let files = |kind: &DocumentKind| match kind.builder {
        Builder::Pack => 1 + note_volumes(loaded.joints.len(), &loaded.plan, stem).len(),
        Builder::Cards => volumes(&loaded.joints, stem).len(),
        Builder::Sheet(_) => 1,
        Builder::Register | Builder::Results => 0,
    };
    wanted(wish).into_iter().map(files).sum()
}

/// The joints that are asked for, as indices in the order of the job; one that is asked for twice
/// is made once.
fn chosen(loaded: &Loaded, wish: &Wish) -> Result<Vec<usize>, Exit> {
    let found: Result<BTreeSet<usize>, Exit> = wish
        .joints
        .iter()
        .map(|tag| super::show::find(loaded, tag))
        .collect();
    Ok(found?.into_iter().collect())
}

/// Layouts, texts and fonts: what shapes a page beside its data.
fn stamp(loaded: &Loaded) -> Stamp {
    let layouts = typeset::layout_sources(&loaded.user.layout);
    let texts: Vec<(&str, &[u8])> = wording::embedded_files()
        .map(|(_, name, text)| (name, text.as_bytes()))
        .collect();
    // A copy that nobody changed shapes nothing.
    let user: Vec<(&str, &[u8])> = loaded
        .user
        .wording_bytes()
        .filter(|file| !texts.contains(file))
        .collect();
    let fonts = typeset::font_files().iter().map(|bytes| ("font", *bytes));
    Stamp::new(layouts.into_iter().chain(texts).chain(user).chain(fonts))
}

/// `NUMBER_REV`; a job without a number takes the name of its file. Signs that a file system may
/// not like become dashes.
fn stem(job: &Path, context: &Context<'_>) -> String {
    let number = if context.number().is_empty() {
        job.file_stem()
            .unwrap_or_default()
            .to_string_lossy()
            .to_uppercase()
    } else {
        context.number().to_owned()
    };
    let stem = if context.revision_name().is_empty() {
        number
    } else {
        format!("{number}_{}", context.revision_name())
    };
    plain_name(&stem)
}

/// Letters, digits, points, dashes and underscores.
pub(super) fn plain_name(text: &str) -> String {
    let plain: String = text
        .chars()
        .map(|sign| {
            if sign.is_alphanumeric() || "-_.".contains(sign) {
                sign
            } else {
                '-'
            }
        })
        .collect();
    plain.trim_start_matches('.').to_owned()
}

/// A text that could not be said leaves a hole on the paper.
fn refuse_faulty_wording(context: &Context<'_>) -> Result<(), Exit> {
    let mut faults: Vec<String> = context.faults().iter().map(ToString::to_string).collect();
    if faults.is_empty() {
        return Ok(());
    }
    faults.sort();
    faults.dedup();
    let values = Values::new().with("reason", faults.join("\n"));
    Err(Exit::Failed(say(
        context.wording,
        "cli.wording_fault",
        &values,
    )))
}

/// An issued revision is never made again without being asked to.
fn refuse_issued(place: &Path, context: &Context<'_>) -> Result<(), Exit> {
    if !place.exists() {
        return Ok(());
    }
    let values = Values::new()
        .with("number", context.number())
        .with("revision", context.revision_name())
        .with("folder", place.display().to_string());
    let found = say(context.wording, "cli.issue.exists", &values);
    let fix = context.wording.label("cli.issue.exists_fix");
    Err(Exit::Failed(format!("{found} {fix}")))
}

fn properties(context: &Context<'_>) -> Properties {
    let revision = context.revision();
    let (year, month, day) = revision
        .and_then(|revision| revision.date.get())
        .map_or((2000, 1, 1), |date| date.parts());
    let title = context
        .pack()
        .and_then(|pack| pack.title.get())
        .map_or("", |title| title.as_str());
    let prepared = revision
        .and_then(|revision| revision.prepared.as_ref())
        .and_then(At::get);
    Properties {
        title: title.to_owned(),
        author: prepared.map(|name| name.to_string()).into_iter().collect(),
        keywords: vec![
            context.number().to_owned(),
            context.revision_name().to_owned(),
            context.plant().to_owned(),
        ],
        date: Date { year, month, day },
        ident: String::new(),
    }
}

/// Says what was written, what stands, and what was moved aside.
fn report(
    loaded: &Loaded,
    place: &Path,
    manifest: &Manifest,
    copied: usize,
    moved: Option<&Path>,
) -> Result<(), Exit> {
    let errors = loaded
        .findings
        .iter()
        .filter(|finding| finding.severity == Severity::Error)
        .count();
    if errors > 0 {
        complain(&draw_all(
            &loaded.findings,
            &loaded.sources,
            &loaded.wording,
        ));
    }
    let mut lines: Vec<String> = manifest
        .files
        .iter()
        .map(|(name, Listed { pages, .. })| match pages {
            Some(pages) => {
                let values = Values::new().with("name", name).with("pages", *pages);
                say(&loaded.wording, "cli.issue_file", &values)
            }
            None => name.clone(),
        })
        .collect();
    let wrote = Values::new()
        .with("count", manifest.files.len() + 1)
        .with("folder", place.display().to_string());
    lines.push(say(&loaded.wording, "cli.issue.wrote", &wrote));
    if copied > 0 {
        let values = Values::new().with("copied", copied);
        lines.push(say(&loaded.wording, "cli.issue.copied", &values));
    }
    if let Some(moved) = moved {
        let values = Values::new().with("folder", moved.display().to_string());
        lines.push(say(&loaded.wording, "cli.issue.moved", &values));
    }
    if errors > 0 {
        lines.push(say(
            &loaded.wording,
            "cli.issue.draft",
            &Values::new().with("errors", errors),
        ));
    }
    print(&lines.join("\n"))
}

/// Typesets one document, or copies it from an earlier issue whose whole input was the same.
pub(super) fn make_or_copy(
    work: &Work<'_>,
    name: &str,
    request: &Request<'_>,
) -> Result<(Vec<u8>, Listed, bool), Exit> {
    let input = input_hash(request);
    if let Some((bytes, listed)) = work.earlier_copy(name, &input) {
        return Ok((bytes, listed, true));
    }
    let pdf = typeset::make_pdf(request).map_err(|faults| {
        let reason = faults
            .iter()
            .map(ToString::to_string)
            .collect::<Vec<_>>()
            .join("\n");
        let values = Values::new().with("reason", reason);
        Exit::Failed(say(&work.loaded.wording, "cli.template_fault", &values))
    })?;
    let listed = Listed {
        hash: code::hash(&pdf.bytes),
        input,
        bytes: u64::try_from(pdf.bytes.len()).unwrap_or(u64::MAX),
        pages: Some(pdf.pages),
    };
    Ok((pdf.bytes, listed, false))
}

/// Everything that goes into a PDF: data, templates, fonts, pictures, properties, program.
fn input_hash(request: &Request<'_>) -> String {
    let properties = format!(
        "{:?}{}{}",
        request.properties, request.template, request.tagged
    );
    let layouts = typeset::layout_sources(request.overrides);
    let parts = [
        request.data.as_slice(),
        properties.as_bytes(),
        env!("CARGO_PKG_VERSION").as_bytes(),
    ]
    .into_iter()
    .chain(layouts.into_values())
    .chain(request.files.values().map(Vec::as_slice))
    .chain(typeset::font_files().iter().copied());
    code::hash_of_parts(parts)
}
