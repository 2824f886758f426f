//! The method statement: what is done, what can hurt and what holds it, step by step, whom to call, when to stop, who
//! was told. It is a view of the works; what only people know comes from the job, or is a box with who fills it.

mod closing;
mod cover;
mod emergency;
mod risks;
mod values;

use serde::Serialize;

use super::blocks::{Badge, Head};
use super::build::Context;
use super::build::furniture::{bare_furniture, sealed_as, sealed_title_block};
use super::build::pack::procedures::Procedures;
use super::build::pack::works::Works;
use super::build::pack::{cover as pack_cover, itp, permits, resources, tools};
use super::desk::{BigValue, Furniture, Paragraphs, Table, TitleBlock};
use super::pack::{Block, Contents, Section, WriteIn};
use crate::job::{self, Regime};
use crate::joint::Who;
use crate::work::Phase;
use crate::yaml::At;

/// A method statement: what `statement.typ` reads.
#[derive(Clone, Debug, Serialize)]
pub struct Statement {
    /// Two letters, after ISO 639.
    pub language: String,
    /// Edges of all pages.
    pub furniture: Furniture,
    /// In the order of the pages.
    pub parts: Vec<Part>,
}

/// A part of it.
#[derive(Clone, Debug, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Part {
    /// Page one.
    Cover(Box<Cover>),
    /// What can hurt, and what holds it.
    Risks(Box<Risks>),
    /// Tables and texts.
    Sections(Pages),
    /// Whom to call, when to stop, who was told.
    Emergency(Box<Emergency>),
}

/// What can hurt, and what holds it.
#[derive(Clone, Debug, Serialize)]
pub struct Risks {
    /// By which its page is referred to.
    pub label: String,
    /// Title.
    pub title: String,
    /// One line below it.
    pub line: String,
    /// A row for each hazard.
    pub table: Table,
}

/// Sections one behind the other.
#[derive(Clone, Debug, Serialize)]
pub struct Pages {
    /// Whether the pages lie on their side.
    pub landscape: bool,
    /// The sections.
    pub sections: Vec<Section>,
}

/// Page one.
#[derive(Clone, Debug, Serialize)]
pub struct Cover {
    /// What kind of document this is, by the law that holds.
    pub document_type: String,
    /// Title.
    pub title: String,
    /// Supplementary title.
    pub subtitle: String,
    /// Six totals, in two rows.
    pub totals: Vec<BigValue>,
    /// The status: solid, or DRAFT outlined.
    pub status: Badge,
    /// What the client may answer: a head, then one tick each.
    pub answers_label: String,
    /// The answers.
    pub answers: Vec<String>,
    /// What is done.
    pub scope: Paragraphs,
    /// What is not done.
    pub excluded: Paragraphs,
    /// Who answers for what.
    pub duties: Table,
    /// What stands on which page.
    pub contents: Contents,
    /// Law and rules.
    pub law: Paragraphs,
    /// The latest revisions.
    pub revisions: Table,
    /// Who signs.
    pub approvals: Vec<String>,
    /// The title block.
    pub title_block: TitleBlock,
}

/// Whom to call, when to stop, who was told.
#[derive(Clone, Debug, Serialize)]
pub struct Emergency {
    /// By which its page is referred to.
    pub label: String,
    /// Title.
    pub title: String,
    /// One line below it.
    pub line: String,
    /// Whom to call, where to meet, where the hospital is.
    pub called: Vec<Called>,
    /// What is done when it happens: first in strong type, then the rest.
    pub happens: Table,
    /// When the work stops, and who lets it go on.
    pub stops: Table,
    /// Who was told.
    pub briefing: Briefing,
}

/// Something that is called in an emergency.
#[derive(Clone, Debug, Serialize)]
pub struct Called {
    /// What it is.
    pub label: String,
    /// The number, place or time; none is a box.
    pub value: Option<String>,
    /// Who fills the box.
    pub who: String,
    /// One line below; may be empty.
    pub line: String,
}

/// The record of who was told.
#[derive(Clone, Debug, Serialize)]
pub struct Briefing {
    /// Title, and what a signature says.
    pub head: Head,
    /// Boxes above the names.
    pub boxes: Vec<WriteIn>,
    /// What stands over name, signature and language.
    pub columns: [String; 3],
    /// How many names there is room for.
    pub lines: usize,
}

/// The JSON of the method statement of a job.
pub(super) fn data(context: &Context<'_>) -> serde_json::Result<Vec<u8>> {
    serde_json::to_vec(&statement(context))
}

/// The method statement of a job, with its content code.
pub fn statement(context: &Context<'_>) -> Statement {
    let document = context.label(&format!("statement.document.{}", regime(context).word()));
    let mut statement = Statement {
        language: context.wording.language().to_owned(),
        furniture: bare_furniture(context, &document),
        parts: parts(context, &document),
    };
    let code = context.code(&statement);
    statement.furniture = sealed_as(context, statement.furniture, &code, number(context));
    for part in &mut statement.parts {
        if let Part::Cover(cover) = part {
            seal(context, cover);
        }
    }
    statement
}

/// What changes from revision to revision is no part of the content.
fn seal(context: &Context<'_>, cover: &mut Cover) {
    cover.status = Badge {
        word: context.status(),
        outlined: context.draft.is_some(),
    };
    cover.revisions = pack_cover::revisions(context, cover::REVISIONS);
    cover.approvals = cover::approvals(context);
    let block = sealed_title_block(context, cover.title_block.clone(), number(context));
    cover.title_block = pack_cover::shortened(block);
}

fn parts(context: &Context<'_>, document: &str) -> Vec<Part> {
    let works = Works::of(context);
    let procedures = Procedures::of(context, &works);
    let pages = |landscape, sections| {
        Part::Sections(Pages {
            landscape,
            sections,
        })
    };
    vec![
        Part::Cover(Box::new(cover::cover(context, document, &works))),
        Part::Risks(Box::new(risks::risks(context, &works, &procedures))),
        pages(false, vec![steps(context, &procedures)]),
        Part::Emergency(Box::new(emergency::emergency(context, &works))),
        pages(
            false,
            vec![
                values::section(context),
                people(context),
                tools::tools(context),
                permits::section(context, &works),
            ],
        ),
        pages(true, vec![itp::section(context, &works, &procedures)]),
        pages(false, closing::sections(context, &works)),
    ]
}

/// The steps as the pack's procedures say them; decisions stand on the page of emergencies.
fn steps(context: &Context<'_>, procedures: &Procedures) -> Section {
    let tables = procedures
        .tables()
        .filter(|(phase, _)| *phase != Phase::Stop);
    Section {
        label: "steps".to_owned(),
        title: context.label("statement.steps.title"),
        line: context.label("statement.steps.line"),
        new_page: true,
        blocks: tables
            .map(|(_, table)| Block::Table(table.clone()))
            .collect(),
    }
}

/// Who works; who answers for what stands on the cover.
fn people(context: &Context<'_>) -> Section {
    let tables = vec![resources::persons(context), resources::crews(context)];
    let title = context.label("pack.people.title");
    resources::section("people", title, false, tables)
}

/// What the job says of its method statement.
fn own<'a>(context: &Context<'a>) -> Option<&'a job::Statement> {
    context.job.statement.as_ref().and_then(At::get)
}

/// Its own number, or that of the pack.
fn number<'a>(context: &Context<'a>) -> &'a str {
    let number = own(context).and_then(|own| own.number.as_ref()?.get());
    number.map_or_else(|| context.number(), |number| number.as_str())
}

/// The law that the job is done under; that of the site where the job does not say.
fn regime(context: &Context<'_>) -> Regime {
    let given = own(context).and_then(|own| own.regime.as_ref()?.get());
    given.copied().unwrap_or(Regime::Site)
}

/// A text of the job.
fn text<T: ToString>(leaf: Option<&At<T>>) -> Option<String> {
    leaf.and_then(At::get).map(ToString::to_string)
}

/// Who fills an empty box.
fn asked(context: &Context<'_>, who: Who) -> String {
    context.say1("missing.short", "who", context.who(who))
}

/// A text of the job, or a box with who fills it.
fn text_or_box(context: &Context<'_>, given: Option<String>, who: Who) -> super::desk::Cell {
    use super::desk::Cell;
    given.map_or_else(|| Cell::Box(asked(context, who)), Cell::Text)
}
