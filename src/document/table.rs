//! The table of documents. A new document is a folder with its data and builder, a layout, its wording and one line here.

use super::build::Context;

/// A kind of document.
#[derive(Debug)]
pub struct DocumentKind {
    /// As the command line says it.
    pub name: &'static str,
    /// What it is, for the help of the command line, where its name does not say it.
    pub about: Option<&'static str>,
    /// Its template among the layouts; empty where nothing is laid out.
    pub layout: &'static str,
    /// Whether it is a part of every issue; otherwise it is made only where it is asked for.
    pub is_issued: bool,
    /// How its files come about.
    pub builder: Builder,
}

/// How the files of a document come about.
#[derive(Clone, Copy, Debug)]
pub enum Builder {
    /// The work pack with its pictures, and files of calculation notes where they are many.
    Pack,
    /// Volumes of crew cards, two at a time.
    Cards,
    /// The register, for other programs.
    Register,
    /// The results, joint by joint.
    Results,
    /// One PDF named like its layout; the function makes the JSON that the layout reads.
    Sheet(Data),
}

/// Makes the JSON that a layout reads.
type Data = fn(&Context<'_>) -> serde_json::Result<Vec<u8>>;

impl DocumentKind {
    const fn new(
        name: &'static str,
        about: &'static str,
        layout: &'static str,
        builder: Builder,
    ) -> Self {
        Self {
            name,
            about: Some(about),
            layout,
            is_issued: true,
            builder,
        }
    }

    /// A document of one PDF.
    const fn sheet(name: &'static str, layout: &'static str, data: Data) -> Self {
        Self {
            name,
            about: None,
            layout,
            is_issued: true,
            builder: Builder::Sheet(data),
        }
    }

    /// The name of its file behind number and revision.
    pub fn file(&self, stem: &str) -> String {
        let part = self.layout.trim_end_matches(".typ");
        format!("{stem}_{part}.pdf")
    }
}

use Builder::{Cards, Pack, Register, Results};

/// Every document, in the order in which they are made.
pub const DOCUMENTS: &[DocumentKind] = &[
    DocumentKind::new("pack", "The work pack", "pack.typ", Pack),
    DocumentKind::sheet("method statement", "statement.typ", super::statement::data),
    DocumentKind::sheet("talk sheet", "talk.typ", super::talk::data),
    DocumentKind::new("cards", "The crew cards", "cards.typ", Cards),
    DocumentKind::new("register", "The register as CSV", "", Register),
    DocumentKind::new("results", "The results as JSON", "", Results),
];
