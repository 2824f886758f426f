//! What desk documents share: the edges of their pages and the title block after ISO 7200.

use crate::document::blocks::Running;
use crate::document::desk::{Field, Furniture, PageWords, TitleBlock};
use crate::wording::Values;
use crate::yaml::At;

use super::context::Context;

/// The edges of the pages of a part. Number, revision, status, code and draft are left empty until
/// the content has its code.
pub(in crate::document) fn bare_furniture(context: &Context<'_>, document: &str) -> Furniture {
    Furniture {
        running: Running {
            right: String::new(),
            ..context.running(document)
        },
        number: String::new(),
        code_label: context.label("footer.content"),
        code: String::new(),
        own_pages: None,
        pages: page_words(context),
        draft: None,
    }
}

/// Fills in what changes from revision to revision.
pub(in crate::document) fn sealed(
    context: &Context<'_>,
    furniture: Furniture,
    code: &str,
) -> Furniture {
    sealed_as(context, furniture, code, context.number())
}

/// The same for a document with a number of its own.
pub(in crate::document) fn sealed_as(
    context: &Context<'_>,
    furniture: Furniture,
    code: &str,
    number: &str,
) -> Furniture {
    let values = Values::new()
        .with("number", number)
        .with("revision", context.revision_name())
        .with("status", context.status());
    Furniture {
        running: Running {
            right: context.identification_of(number),
            ..furniture.running
        },
        number: context.say("footer.desk", &values),
        code: code.to_owned(),
        draft: context.draft.as_ref().map(|_| context.label("word.draft")),
        ..furniture
    }
}

/// `page 1 of 9`.
pub(in crate::document) fn page_words(context: &Context<'_>) -> PageWords {
    PageWords {
        before: format!("{} ", context.label("page.before")),
        between: format!(" {} ", context.label("page.between")),
        after: String::new(),
    }
}

/// The title block after ISO 7200. What changes from revision to revision is left empty.
pub(in crate::document) fn bare_title_block(
    context: &Context<'_>,
    document: &str,
    title: &str,
    subtitle: &str,
) -> TitleBlock {
    let pack = context.pack();
    let field =
        |key: &str, value: &str| Field::new(context.label(&format!("title_block.{key}")), value);
    let department = pack
        .and_then(|pack| pack.department.as_ref())
        .and_then(At::get);
    let reference = pack
        .and_then(|pack| pack.technical_reference.as_ref())
        .and_then(At::get);
    let owner = pack
        .and_then(|pack| pack.owner.as_ref().or(pack.client.as_ref()))
        .and_then(At::get);
    TitleBlock {
        department: field("department", department.map_or("", |it| it.as_str())),
        reference: field("reference", reference.map_or("", |it| it.as_str())),
        document_type: field("type", document),
        prepared: field("prepared", ""),
        checked: field("checked", ""),
        approved: field("approved", ""),
        title: field("title", title),
        subtitle: subtitle.to_owned(),
        owner: field("owner", owner.map_or("", |it| it.as_str())),
        number: field("number", ""),
        revision: field("revision", ""),
        date: field("date", ""),
    }
}

/// Fills in people, number, revision and date.
pub(in crate::document) fn sealed_title_block(
    context: &Context<'_>,
    block: TitleBlock,
    number: &str,
) -> TitleBlock {
    let revision = context.revision();
    let name = |person: Option<&At<crate::job::Name>>| {
        person
            .and_then(At::get)
            .map(|name| name.to_string())
            .unwrap_or_default()
    };
    let with = |field: Field, value: String| Field { value, ..field };
    TitleBlock {
        prepared: with(
            block.prepared,
            name(revision.and_then(|it| it.prepared.as_ref())),
        ),
        checked: with(
            block.checked,
            name(revision.and_then(|it| it.checked.as_ref())),
        ),
        approved: with(
            block.approved,
            name(revision.and_then(|it| it.approved.as_ref())),
        ),
        number: with(block.number, number.to_owned()),
        revision: with(block.revision, context.revision_name().to_owned()),
        date: with(block.date, context.date()),
        ..block
    }
}
