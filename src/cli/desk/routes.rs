//! What answers which question.

use std::convert::Infallible;
use std::sync::Arc;

use axum::extract::{DefaultBodyLimit, Path, State};
use axum::http::StatusCode;
use axum::response::sse::{Event, KeepAlive, Sse};
use axum::response::{IntoResponse, Response};
use axum::routing::{get, post};
use axum::{Json, Router, middleware};
use futures_util::Stream;
use serde::Deserialize;
use serde_json::json;
use tokio::sync::watch::Receiver;

use festoon::assist::{self, utf16};
use festoon::pattern::edit::{self, Act};
use festoon::source::Place;

use super::answer::{self, refused, worked_out};
use super::ask::Question;
use super::file::Unsaved;
use super::guard::guard;
use super::{Desk, Mode, look, page, start, take, view};

type Here = State<Arc<Desk>>;

/// The routes of a desk, all below its token; those that change anything only where it may be changed.
pub fn routes(desk: Desk) -> Router {
    let desk = Arc::new(desk);
    let mut below = Router::new()
        .route("/file", get(|State(desk): Here| worked_out(move || answer::json(desk.file.held()))))
        .route("/events", get(events))
        .route(
            "/look",
            post(|State(desk): Here, Json(asked): Json<Question>| worked_out(move || look::look(&asked, &desk))),
        )
        .route("/view/{name}", post(viewed))
        .route("/take/{what}", post(taken))
        .route("/told", post(|State(desk): Here, Json(asked): Json<Question>| worked_out(move || told(&asked, &desk))))
        .route("/language", get(|| async { answer::json(assist::keys()) }))
        .route("/{file}", get(|Path(name): Path<String>| async move { page::file(&name).unwrap_or_else(missing) }));
    if desk.mode == Mode::Design {
        below = below
            .route("/act", post(|State(desk): Here, Json(doing): Json<Doing>| worked_out(move || act(&doing, &desk))))
            .route(
                "/offers",
                post(|State(desk): Here, Json(asked): Json<Question>| worked_out(move || offers(&asked, &desk))),
            )
            .route("/save", post(|State(desk): Here, Json(save): Json<Save>| worked_out(move || saved(&save, &desk))))
            .route("/starts", get(|| worked_out(start::list)))
            .route("/start/{name}", get(|Path(name): Path<String>| async move { start::text(&name) }));
    }
    let below = below.fallback(|| async { missing() });
    // What is nested answers at no path that ends with a stroke.
    Router::new()
        .route(&format!("/{}/", desk.token), get(|State(desk): Here| async move { page::page(&desk) }))
        .nest(&format!("/{}", desk.token), below)
        .fallback(|| async { missing() })
        .layer(DefaultBodyLimit::disable())
        .layer(middleware::from_fn_with_state(Arc::clone(&desk), guard))
        .with_state(desk)
}

fn missing() -> Response {
    (StatusCode::NOT_FOUND, "not found\n").into_response()
}

async fn viewed(State(desk): Here, Path(name): Path<String>, Json(asked): Json<Question>) -> Response {
    worked_out(move || view::view(&name, &asked, &desk)).await
}

async fn taken(State(desk): Here, Path(what): Path<String>, Json(asked): Json<Question>) -> Response {
    worked_out(move || take::take(&what, &asked, &desk)).await
}

/// Tells what the file and its shelves hold, by versions, now and whenever one of them changes.
async fn events(State(desk): Here) -> Sse<impl Stream<Item = Result<Event, Infallible>>> {
    let (file, shelves) = (told_of("file", desk.watch.file()), told_of("shelves", desk.watch.shelves()));
    Sse::new(futures_util::stream::select(file, shelves)).keep_alive(KeepAlive::default())
}

/// An event with the version of now, and one with each that comes.
fn told_of(kind: &'static str, mut versions: Receiver<String>) -> impl Stream<Item = Result<Event, Infallible>> {
    versions.mark_changed();
    futures_util::stream::unfold(versions, move |mut versions| async move {
        versions.changed().await.ok()?;
        let data = versions.borrow_and_update().clone();
        Some((Ok(Event::default().event(kind).data(data)), versions))
    })
}

/// An act on a text.
#[derive(Deserialize)]
struct Doing {
    text: String,
    act: Act,
}

fn act(doing: &Doing, desk: &Desk) -> Response {
    let source = desk.source(&doing.text);
    let act = doing.act.clone().at_bytes(|unit| utf16::byte(&doing.text, unit));
    match edit::act(&source, &act) {
        Ok(text) => answer::json(json!({ "text": text })),
        Err(refusal) => refused(refusal.to_string()),
    }
}

/// What means what stands at a place, and where that is defined.
fn told(asked: &Question, desk: &Desk) -> Response {
    let source = asked.source(desk);
    let told = assist::told(&source, asked.byte());
    let defined = assist::definition(&source, asked.byte());
    let (here, on_shelf) = (defined.filter(|at| !at.is_shelved()), defined.filter(|at| at.is_shelved()));
    let units = |place: Place| look::units(&source, place);
    answer::json(json!({
        "told": told.map(|told| json!({ "place": units(told.place), "title": told.title, "text": told.text })),
        "defined": here.map(units),
        "on_shelf": on_shelf.map(|place| look::line_of_shelf(&source, place)),
    }))
}

fn offers(asked: &Question, desk: &Desk) -> Response {
    let source = asked.source(desk);
    let offers = assist::offers(&source, asked.byte()).into_iter().map(|offer| {
        json!({
            "label": offer.label, "text": offer.text, "meaning": offer.meaning, "sort": offer.sort,
            "place": look::units(&source, offer.place),
        })
    });
    answer::json(offers.collect::<Vec<_>>())
}

/// A text to save, and the version of the file from which it was made.
#[derive(Deserialize)]
struct Save {
    text: String,
    made_from: String,
}

fn saved(save: &Save, desk: &Desk) -> Response {
    match desk.file.save(&save.text, &save.made_from) {
        Ok(held) => answer::json(held),
        Err(Unsaved::Changed(held)) => (StatusCode::CONFLICT, Json(held)).into_response(),
        Err(Unsaved::Trouble(why)) => refused(why),
    }
}
