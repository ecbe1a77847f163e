//! `festoon lsp`: help for any editor, over standard input and output (Language Server Protocol 3.17).
//!
//! It answers with the same functions as the page of `festoon design`. A document is held whole, as the editor sends it.

use std::collections::BTreeMap;

use lsp_server::{Connection, ErrorCode, Message, Notification, Request, Response};
use lsp_types::notification::{self, Notification as _};
use lsp_types::request::{self, Request as _};
use lsp_types::{
    CodeAction, CodeActionKind, CodeActionOrCommand, CodeActionParams, CompletionItem, CompletionItemKind,
    CompletionOptions, CompletionParams, CompletionTextEdit, Diagnostic, DiagnosticSeverity,
    DidChangeTextDocumentParams, DidCloseTextDocumentParams, DidOpenTextDocumentParams, Documentation,
    GotoDefinitionParams, GotoDefinitionResponse, Hover, HoverContents, HoverParams, HoverProviderCapability, Location,
    MarkupContent, MarkupKind, NumberOrString, OneOf, Position, PublishDiagnosticsParams, Range, ServerCapabilities,
    TextDocumentPositionParams, TextDocumentSyncCapability, TextDocumentSyncKind, TextEdit, Uri, WorkspaceEdit,
};
use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::{Value, json};

use festoon::assist::{self, Definition, Offer, Sort, utf16};
use festoon::design::Choice;
use festoon::remark::{Level, Remark};
use festoon::source::{Place, Source};

use super::Failure;
use super::shelves::ShelfOptions;

/// A text that the editor holds open, and what there is to say about it.
struct Document {
    source: Source,
    remarks: Vec<Remark>,
}

/// Documents by their address.
type Documents = BTreeMap<String, Document>;

impl Document {
    /// A text as it stands at an address. What is wrong on its shelves is said where those are open.
    fn new(uri: &Uri, text: String) -> Self {
        let source = match path(uri) {
            Some(path) => ShelfOptions::default().beside_now(Source::new(path, text)),
            None => Source::new(uri.as_str(), text),
        };
        let mut remarks = festoon::remarks(&source, &Choice::default());
        remarks.retain(|remark| remark.place.is_none_or(|place| !place.is_shelved()));
        Self { source, remarks }
    }
}

/// The file that an address leads to (RFC 8089, appendix E.2 for drives).
fn path(uri: &Uri) -> Option<String> {
    uri.scheme().filter(|scheme| scheme.as_str().eq_ignore_ascii_case("file"))?;
    let path = uri.path().as_estr().decode().into_string().ok()?;
    Some(if cfg!(windows) { path.trim_start_matches('/').to_owned() } else { path.into_owned() })
}

/// The address of a file that is named from the top.
fn address(path: &str) -> Option<Uri> {
    let path = if cfg!(windows) { format!("/{}", path.replace('\\', "/")) } else { path.to_owned() };
    let parts: Vec<_> = path.split('/').map(festoon::gallery::address).collect();
    format!("file://{}", parts.join("/")).parse().ok()
}

/// Serves an editor until it says that it ends.
pub fn run() -> Result<(), Failure> {
    let (connection, threads) = Connection::stdio();
    let served = serve(&connection);
    drop(connection);
    // An editor that goes away without a word has closed both.
    let _ = threads.join();
    served.map_err(Failure::Trouble)
}

fn serve(connection: &Connection) -> Result<(), String> {
    let (id, _) = connection.initialize_start().map_err(|error| error.to_string())?;
    let about = json!({ "capabilities": capabilities(), "serverInfo": { "name": "festoon", "version": env!("CARGO_PKG_VERSION") } });
    connection.initialize_finish(id, about).map_err(|error| error.to_string())?;
    let mut documents = Documents::new();
    for message in &connection.receiver {
        let answers = match message {
            Message::Request(request) => {
                if connection.handle_shutdown(&request).map_err(|error| error.to_string())? {
                    return Ok(());
                }
                vec![Message::Response(answer(request, &documents))]
            }
            Message::Notification(note) => heed(note, &mut documents).into_iter().map(Message::Notification).collect(),
            Message::Response(_) => Vec::new(),
        };
        for answer in answers {
            connection.sender.send(answer).map_err(|error| error.to_string())?;
        }
    }
    Ok(())
}

fn capabilities() -> ServerCapabilities {
    let triggers = ["[", "{", ",", " "].map(str::to_owned);
    ServerCapabilities {
        text_document_sync: Some(TextDocumentSyncCapability::Kind(TextDocumentSyncKind::FULL)),
        completion_provider: Some(CompletionOptions {
            trigger_characters: Some(triggers.into()),
            ..CompletionOptions::default()
        }),
        hover_provider: Some(HoverProviderCapability::Simple(true)),
        definition_provider: Some(OneOf::Left(true)),
        code_action_provider: Some(true.into()),
        ..ServerCapabilities::default()
    }
}

/// Takes what the editor tells of its documents; says what is wrong with them.
fn heed(note: Notification, documents: &mut Documents) -> Option<Notification> {
    match note.method.as_str() {
        notification::DidOpenTextDocument::METHOD => {
            let opened: DidOpenTextDocumentParams = serde_json::from_value(note.params).ok()?;
            Some(taken(opened.text_document.uri, opened.text_document.text, documents))
        }
        notification::DidChangeTextDocument::METHOD => {
            let mut changed: DidChangeTextDocumentParams = serde_json::from_value(note.params).ok()?;
            let text = changed.content_changes.pop()?.text;
            Some(taken(changed.text_document.uri, text, documents))
        }
        notification::DidCloseTextDocument::METHOD => {
            let closed: DidCloseTextDocumentParams = serde_json::from_value(note.params).ok()?;
            documents.remove(closed.text_document.uri.as_str());
            Some(published(closed.text_document.uri, Vec::new()))
        }
        _ => None,
    }
}

fn taken(uri: Uri, text: String, documents: &mut Documents) -> Notification {
    let document = Document::new(&uri, text);
    let diagnostics = document.remarks.iter().map(|remark| diagnostic(remark, &document.source)).collect();
    documents.insert(uri.as_str().to_owned(), document);
    published(uri, diagnostics)
}

fn published(uri: Uri, diagnostics: Vec<Diagnostic>) -> Notification {
    let params = PublishDiagnosticsParams { uri, diagnostics, version: None };
    Notification::new(notification::PublishDiagnostics::METHOD.to_owned(), params)
}

fn diagnostic(remark: &Remark, source: &Source) -> Diagnostic {
    let help = Some(remark.help()).filter(|help| !help.is_empty()).map(|help| format!("\n{help}"));
    Diagnostic {
        range: range(source, remark.place.unwrap_or_default()),
        severity: Some(match remark.level() {
            Level::Error => DiagnosticSeverity::ERROR,
            Level::Warning => DiagnosticSeverity::WARNING,
            Level::Advice => DiagnosticSeverity::INFORMATION,
        }),
        code: Some(NumberOrString::String(remark.code().name().to_owned())),
        source: Some("festoon".to_owned()),
        message: remark.headline() + &help.unwrap_or_default(),
        ..Diagnostic::default()
    }
}

fn answer(request: Request, documents: &Documents) -> Response {
    let Request { id, method, params } = request;
    let answered = match method.as_str() {
        request::Completion::METHOD => asked(params, |params: CompletionParams| {
            at(&params.text_document_position, documents).map(|(source, at)| offered(source, at))
        }),
        request::HoverRequest::METHOD => asked(params, |params: HoverParams| {
            let (source, at) = at(&params.text_document_position_params, documents)?;
            assist::told(source, at).map(|told| hover(source, told))
        }),
        request::GotoDefinition::METHOD => asked(params, |params: GotoDefinitionParams| {
            let position = params.text_document_position_params;
            let (source, at) = at(&position, documents)?;
            let place = assist::definition(source, at)?;
            Some(GotoDefinitionResponse::Scalar(location(source, place, position.text_document.uri.clone())?))
        }),
        request::CodeActionRequest::METHOD => asked(params, |params: CodeActionParams| {
            let document = documents.get(params.text_document.uri.as_str())?;
            Some(remedies(document, &params))
        }),
        _ => return Response::new_err(id, ErrorCode::MethodNotFound as i32, format!("festoon does not know {method}")),
    };
    match answered {
        Ok(value) => Response::new_ok(id, value),
        Err(error) => Response::new_err(id, ErrorCode::InvalidParams as i32, error.to_string()),
    }
}

fn asked<P: DeserializeOwned, A: Serialize>(
    params: Value,
    answer: impl FnOnce(P) -> Option<A>,
) -> serde_json::Result<Value> {
    serde_json::to_value(answer(serde_json::from_value(params)?))
}

/// A document and the byte of a place in it.
fn at<'d>(position: &TextDocumentPositionParams, documents: &'d Documents) -> Option<(&'d Source, usize)> {
    let source = &documents.get(position.text_document.uri.as_str())?.source;
    Some((source, byte(source, position.position)))
}

fn byte(source: &Source, position: Position) -> usize {
    utf16::byte_in_line(source.text(), position.line as usize, position.character as usize)
}

fn range(source: &Source, place: Place) -> Range {
    let position = |at: usize| {
        let (line, units) = utf16::line(source.text(), at);
        Position::new(u32::try_from(line).unwrap_or(u32::MAX), u32::try_from(units).unwrap_or(u32::MAX))
    };
    Range::new(position(place.start), position(place.end))
}

/// Where a place of a document or of one of its shelves stands.
fn location(source: &Source, place: Place, uri: Uri) -> Option<Location> {
    let file = source.of(place);
    let uri = if place.is_shelved() { address(&file.name)? } else { uri };
    Some(Location { uri, range: range(file, place) })
}

fn offered(source: &Source, at: usize) -> Vec<CompletionItem> {
    let item = |(rank, offer): (usize, Offer)| CompletionItem {
        label: offer.label,
        kind: Some(match offer.sort {
            Sort::Key => CompletionItemKind::PROPERTY,
            Sort::Word => CompletionItemKind::ENUM_MEMBER,
            Sort::Id => CompletionItemKind::VARIABLE,
        }),
        sort_text: Some(format!("{rank:04}")),
        documentation: Some(Documentation::String(offer.meaning)),
        text_edit: Some(CompletionTextEdit::Edit(TextEdit::new(range(source, offer.place), offer.text))),
        ..CompletionItem::default()
    };
    assist::offers(source, at).into_iter().enumerate().map(item).collect()
}

fn hover(source: &Source, told: Definition) -> Hover {
    let value = format!("{}\n\n{}", told.title, told.text);
    let contents = HoverContents::Markup(MarkupContent { kind: MarkupKind::PlainText, value });
    Hover { contents, range: Some(range(source, told.place)) }
}

/// The exact remedies of remarks that touch a range.
fn remedies(Document { source, remarks }: &Document, params: &CodeActionParams) -> Vec<CodeActionOrCommand> {
    let (from, to) = (byte(source, params.range.start), byte(source, params.range.end));
    let touches = |remark: &&Remark| remark.place.is_some_and(|place| place.start <= to && from <= place.end);
    let action = |remark: &Remark| {
        let remedy = assist::remedy(remark, source)?;
        let edits = vec![TextEdit::new(range(source, remedy.place), remedy.text)];
        #[expect(clippy::mutable_key_type, reason = "the protocol's own type; an address never changes")]
        let changes = [(params.text_document.uri.clone(), edits)].into_iter().collect();
        Some(CodeActionOrCommand::CodeAction(CodeAction {
            title: remedy.title,
            kind: Some(CodeActionKind::QUICKFIX),
            diagnostics: Some(vec![diagnostic(remark, source)]),
            edit: Some(WorkspaceEdit { changes: Some(changes), ..WorkspaceEdit::default() }),
            is_preferred: Some(true),
            ..CodeAction::default()
        }))
    };
    remarks.iter().filter(touches).filter_map(action).collect()
}
