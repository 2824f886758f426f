//! One compile: a request in, pages and PDF bytes out, faults with their place in the template.

use std::cell::Cell;
use std::collections::BTreeMap;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::OnceLock;
use std::thread::{self, Scope, ScopedJoinHandle};
use std::{fmt, io};

use typst::diag::{Severity, SourceDiagnostic, Warned};
use typst::ecow::EcoString;
use typst::foundations::{Datetime, Smart};
use typst::syntax::DiagSpan;
use typst::{World, WorldExt, comemo};
use typst_layout::PagedDocument;
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards};

use super::Overrides;
use super::pages::Reading;
use super::world::MemoryWorld;

/// Enough for the deepest nesting that Typst allows, with room to spare.
const STACK: usize = 16 << 20;

/// A civil date, as the job gives it: year, month 1 to 12, day 1 to 31.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Date {
    /// Year.
    pub year: i32,
    /// Month, 1 to 12.
    pub month: u8,
    /// Day, 1 to 31.
    pub day: u8,
}

/// What stands in the properties of the PDF; all of it comes from the job, none from the clock.
#[derive(Clone, Debug)]
pub struct Properties {
    /// Title of the document.
    pub title: String,
    /// Who prepared it.
    pub author: Vec<String>,
    /// Fields of the title block, one each.
    pub keywords: Vec<String>,
    /// Date of issue.
    pub date: Date,
    /// Document number, revision and name: two documents of a pack never share it.
    pub ident: String,
}

/// One document to be made.
#[derive(Debug)]
pub struct Request<'a> {
    /// Name of the layout template, such as `cards.typ`.
    pub template: &'a str,
    /// The JSON that the template reads as `/data.json`.
    pub data: Vec<u8>,
    /// Pictures by name. The names must be few and repeat (`picture-1.jpg`), see [`typeset`].
    pub files: BTreeMap<String, Vec<u8>>,
    /// A user's own templates.
    pub overrides: &'a Overrides,
    /// Properties of the PDF.
    pub properties: Properties,
    /// Whether the PDF carries tags for screen readers: desk documents do, cards and registers do not.
    pub tagged: bool,
}

/// Why a document could not be made: a template's fault with its place, or one without a place.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    /// Name of the template, if the fault has a place.
    pub file: Option<String>,
    /// Line, from 1; 0 without a place.
    pub line: usize,
    /// Column in characters, from 1; 0 without a place.
    pub column: usize,
    /// The typesetter's own words.
    pub message: String,
    /// Its hints, and the calls that led there.
    pub hints: Vec<String>,
}

impl fmt::Display for Fault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        if let Some(file) = &self.file {
            write!(out, "{file}:{}:{}: ", self.line, self.column)?;
        }
        out.write_str(&self.message)?;
        self.hints
            .iter()
            .try_for_each(|hint| write!(out, "\n  {hint}"))
    }
}

impl Fault {
    fn without_place(message: impl Into<String>) -> Self {
        Self {
            file: None,
            line: 0,
            column: 0,
            message: message.into(),
            hints: Vec::new(),
        }
    }
}

/// Laid-out pages, ready to be read back or written as PDF.
#[derive(Debug)]
pub struct Typeset {
    pub(super) document: PagedDocument,
    pub(super) reading: OnceLock<Reading>,
    ident: String,
    tagged: bool,
}

/// A finished PDF.
#[derive(Debug)]
pub struct Pdf {
    /// The file.
    pub bytes: Vec<u8>,
    /// Its pages.
    pub pages: usize,
}

/// Lays out one document.
///
/// Every distinct file name is kept for the life of the process, at most 65,535 of them: give the
/// pictures of each document the same few names.
///
/// # Errors
/// Every error and warning of the template, with its place.
pub fn typeset(request: &Request) -> Result<Typeset, Vec<Fault>> {
    on_deep_stack(|| lay_out(request))
}

/// Lays out one document, writes it as PDF and gives the memory of both back. Not to be called from
/// a member of the shared thread pool: the typesetter needs that pool while the caller waits.
///
/// # Errors
/// Those of [`typeset`], and what PDF/A refuses: a character that no font has, a missing date.
pub fn make_pdf(request: &Request) -> Result<Pdf, Vec<Fault>> {
    let pdf = on_deep_stack(|| {
        let laid_out = lay_out(request)?;
        Ok(Pdf {
            bytes: laid_out.write_pdf()?,
            pages: laid_out.page_count(),
        })
    });
    // Typst remembers every page it ever made (3 MB a card) until it is told to forget.
    comemo::evict(0);
    pdf
}

thread_local! {
    /// Whether this thread has a stack that is deep enough for the typesetter.
    static IS_DEEP: Cell<bool> = const { Cell::new(false) };
}

/// A thread that makes one PDF after the other. Its stack is deep enough for the typesetter, which otherwise
/// takes a new thread for each document: the memory that the C library keeps for each of those adds up.
///
/// # Errors
/// If the system gives no thread.
pub fn deep_thread<'scope, T: Send + 'scope>(
    scope: &'scope Scope<'scope, '_>,
    work: impl FnOnce() -> T + Send + 'scope,
) -> io::Result<ScopedJoinHandle<'scope, T>> {
    thread::Builder::new()
        .stack_size(STACK)
        .spawn_scoped(scope, || {
            IS_DEEP.set(true);
            work()
        })
}

fn on_deep_stack<T: Send>(
    work: impl FnOnce() -> Result<T, Vec<Fault>> + Send,
) -> Result<T, Vec<Fault>> {
    let stopped = |_| {
        Err(vec![Fault::without_place(
            "the typesetter stopped without a reason",
        )])
    };
    if IS_DEEP.get() {
        return catch_unwind(AssertUnwindSafe(work)).unwrap_or_else(stopped);
    }
    thread::scope(|scope| match deep_thread(scope, work) {
        Err(error) => Err(vec![Fault::without_place(format!(
            "no thread for the typesetter: {error}"
        ))]),
        Ok(thread) => thread.join().unwrap_or_else(stopped),
    })
}

fn lay_out(request: &Request) -> Result<Typeset, Vec<Fault>> {
    let world = MemoryWorld::new(request).ok_or_else(|| {
        vec![Fault::without_place(
            "a template or picture has a name that is not a path",
        )]
    })?;
    let Warned { output, warnings } = typst::compile::<PagedDocument>(&world);
    let mut document = output.map_err(|errors| faults(&world, &errors))?;
    if !warnings.is_empty() {
        return Err(faults(&world, &warnings));
    }
    let properties = &request.properties;
    let Date { year, month, day } = properties.date;
    let info = document.info_mut();
    info.title = Some(properties.title.as_str().into());
    info.author = eco_strings(&properties.author);
    info.keywords = eco_strings(&properties.keywords);
    info.date = Smart::Custom(Datetime::from_ymd(year, month, day));
    Ok(Typeset {
        document,
        reading: OnceLock::new(),
        ident: properties.ident.clone(),
        tagged: request.tagged,
    })
}

fn eco_strings(texts: &[String]) -> Vec<EcoString> {
    texts.iter().map(|text| text.as_str().into()).collect()
}

impl Typeset {
    /// Number of pages.
    pub fn page_count(&self) -> usize {
        self.document.pages().len()
    }

    /// The laid-out document itself, for drawing it in tests.
    pub fn document(&self) -> &PagedDocument {
        &self.document
    }

    /// The pages as PDF/A-2u, tagged if the request asked for it.
    ///
    /// # Errors
    /// What PDF/A refuses: a character that no font has, a missing date.
    pub fn write_pdf(&self) -> Result<Vec<u8>, Vec<Fault>> {
        let standards = PdfStandards::new(&[PdfStandard::A_2u])
            .map_err(|error| vec![Fault::without_place(error.message().as_str())])?;
        let options = PdfOptions {
            ident: Smart::Custom(self.ident.clone()),
            creator: Smart::Custom(Some(format!("Studbook {}", env!("CARGO_PKG_VERSION")))),
            timestamp: None,
            page_ranges: None,
            standards,
            tagged: self.tagged,
            pretty: false,
        };
        typst_pdf::pdf(&self.document, &options).map_err(|errors| {
            errors
                .iter()
                .map(|error| Fault::without_place(error.message.as_str()))
                .collect()
        })
    }
}

fn faults(world: &MemoryWorld, diagnostics: &[SourceDiagnostic]) -> Vec<Fault> {
    diagnostics
        .iter()
        .map(|diagnostic| fault(world, diagnostic))
        .collect()
}

fn fault(world: &MemoryWorld, diagnostic: &SourceDiagnostic) -> Fault {
    let place = place(world, diagnostic.span);
    // A hint that names the options of another program would send the user the wrong way.
    let hints = diagnostic
        .hints
        .iter()
        .map(|hint| hint.v.to_string())
        .filter(|hint| !hint.contains("--"));
    let calls = diagnostic
        .trace
        .iter()
        .map(|call| match self::place(world, call.span.into()) {
            Some((file, line, column)) => format!("{} at {file}:{line}:{column}", call.v),
            None => call.v.to_string(),
        });
    let prefix = match diagnostic.severity {
        Severity::Error => "",
        Severity::Warning => "warning: ",
    };
    let (file, line, column) = match place {
        Some((file, line, column)) => (Some(file), line, column),
        None => (None, 0, 0),
    };
    Fault {
        file,
        line,
        column,
        message: format!("{prefix}{}", diagnostic.message),
        hints: hints.chain(calls).collect(),
    }
}

/// Name of the template, line and column, both from 1.
fn place(world: &MemoryWorld, span: DiagSpan) -> Option<(String, usize, usize)> {
    let id = span.id()?;
    let start = world.range(span)?.start;
    let (line, column) = world.source(id).ok()?.lines().byte_to_line_column(start)?;
    Some((
        id.vpath().get_without_slash().to_owned(),
        line + 1,
        column + 1,
    ))
}
