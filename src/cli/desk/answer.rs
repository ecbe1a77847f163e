//! Answers: pages, JSON, files, and why there is none.

use axum::Json;
use axum::http::{HeaderValue, StatusCode, header};
use axum::response::{IntoResponse, Response};
use serde::Serialize;
use tokio::task::spawn_blocking;

/// Something of a kind of media.
pub fn of_kind(kind: &'static str, body: impl IntoResponse) -> Response {
    ([(header::CONTENT_TYPE, HeaderValue::from_static(kind))], body).into_response()
}

/// A JSON value.
pub fn json(value: impl Serialize) -> Response {
    Json(value).into_response()
}

/// What cannot be done, and why, in words for the maker.
pub fn refused(why: impl Into<String>) -> Response {
    (StatusCode::UNPROCESSABLE_ENTITY, Json(serde_json::json!({ "why": why.into() }))).into_response()
}

/// The answer of work that takes a while; should it ever fail, so does this answer alone.
pub async fn worked_out(work: impl FnOnce() -> Response + Send + 'static) -> Response {
    const FAULT: &str = "this is a fault of festoon: please report it with the pattern";
    spawn_blocking(work).await.unwrap_or_else(|_| {
        (StatusCode::INTERNAL_SERVER_ERROR, Json(serde_json::json!({ "why": FAULT }))).into_response()
    })
}
