//! Who may ask, and how much: the page that this program serves on this machine, by the name it was opened by.

use std::net::SocketAddr;
use std::sync::Arc;

use axum::body::{Body, Bytes};
use axum::extract::{Request, State};
use axum::http::{HeaderMap, HeaderName, HeaderValue, Method, StatusCode, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};
use http_body_util::BodyExt;
use tokio::time::timeout;

use super::Desk;
use super::serve::PATIENCE;

/// Longest body of a question about a text: four bytes a sign of the largest pattern, and what JSON adds.
const LONGEST: usize = 18 * 1024 * 1024;
/// Longest body of a question that needs none.
const LONGEST_OF_NONE: usize = 16 * 1024;

/// What every answer says: it is kept nowhere, shown on no page but this one, and may load, run and send nothing but
/// what this program serves (Content Security Policy Level 3).
const ALWAYS: [(HeaderName, &str); 6] = [
    (header::CACHE_CONTROL, "no-store"),
    (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
    (header::REFERRER_POLICY, "no-referrer"),
    (HeaderName::from_static("cross-origin-resource-policy"), "same-origin"),
    (HeaderName::from_static("cross-origin-opener-policy"), "same-origin"),
    (
        header::CONTENT_SECURITY_POLICY,
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; font-src 'self'; \
         connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
    ),
];

/// A question that is not answered, and why.
type Unanswered = (StatusCode, &'static str);

const STRANGER: Unanswered = (StatusCode::MISDIRECTED_REQUEST, "open the address that festoon printed\n");
const UNCLEAR: Unanswered = (StatusCode::BAD_REQUEST, "ask with one Host\n");
const FOREIGN: Unanswered = (StatusCode::FORBIDDEN, "another page may not ask\n");
const TOO_LARGE: Unanswered = (StatusCode::PAYLOAD_TOO_LARGE, "ask without a body, or with a smaller one\n");
const TOO_SLOW: Unanswered = (StatusCode::REQUEST_TIMEOUT, "ask faster\n");

/// Reads a question whole before it is answered or refused.
pub async fn guard(State(desk): State<Arc<Desk>>, request: Request, next: Next) -> Response {
    let (parts, body) = request.into_parts();
    let most = if parts.method == Method::POST { LONGEST } else { LONGEST_OF_NONE };
    let body = timeout(PATIENCE, whole(body, most)).await.unwrap_or(Err(TOO_SLOW));
    let admitted = admitted(&parts.method, &parts.headers, desk.address).and(body);
    let mut answer = match admitted {
        Ok(body) => next.run(Request::from_parts(parts, Body::from(body))).await,
        Err(refusal) => refusal.into_response(),
    };
    for (name, value) in ALWAYS {
        answer.headers_mut().insert(name, HeaderValue::from_static(value));
    }
    answer
}

/// Whether a question comes by one of this server's names, and from its own page if from any. A page of somebody
/// else's could otherwise ask by giving its own name to this machine's address.
fn admitted(method: &Method, headers: &HeaderMap, address: SocketAddr) -> Result<(), Unanswered> {
    let host = only(headers, &header::HOST)?.ok_or(UNCLEAR)?;
    if !is_here(host, address) {
        return Err(STRANGER);
    }
    match only(headers, &header::ORIGIN)? {
        Some(origin) if origin.strip_prefix("http://") != Some(host) => Err(FOREIGN),
        None if *method == Method::POST => Err(FOREIGN),
        _ => Ok(()),
    }
}

fn is_here(host: &str, address: SocketAddr) -> bool {
    host == address.to_string() || host.eq_ignore_ascii_case(&format!("localhost:{}", address.port()))
}

/// The value of a field that stands at most once (RFC 9112, 3.2: more than one Host is an error).
fn only<'h>(headers: &'h HeaderMap, name: &HeaderName) -> Result<Option<&'h str>, Unanswered> {
    let mut all = headers.get_all(name).iter();
    let first = all.next().map(|value| value.to_str().map_err(|_| UNCLEAR)).transpose()?;
    if all.next().is_some() { Err(UNCLEAR) } else { Ok(first) }
}

/// A body of at most so many bytes. More is read to its end and forgotten: what a browser still sends would cut off
/// the answer (RFC 9112, 9.6).
async fn whole(mut body: Body, most: usize) -> Result<Bytes, Unanswered> {
    let (mut bytes, mut long) = (Vec::new(), false);
    while let Some(frame) = body.frame().await {
        let frame = frame.map_err(|_| TOO_LARGE)?;
        let some = frame.data_ref().map_or(&[][..], |data| data);
        long |= bytes.len() + some.len() > most;
        if long {
            bytes.clear();
        } else {
            bytes.extend_from_slice(some);
        }
    }
    if long { Err(TOO_LARGE) } else { Ok(bytes.into()) }
}
