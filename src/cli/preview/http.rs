//! As much of HTTP as a preview needs: one GET, one answer (RFC 9112).

use std::io::{Error, ErrorKind, Read, Result, Write};
use std::net::{SocketAddr, TcpStream};
use std::time::{Duration, Instant};

/// Longest wait for a browser that is slow to ask, or to take what it asked for.
const PATIENCE: Duration = Duration::from_secs(5);
/// Longest head of a request that is read.
const LONGEST: usize = 16 * 1024;
/// What every answer says: it is kept nowhere, and shown on no page but the preview's own.
const ALWAYS: &str = "Cache-Control: no-store\r\nX-Content-Type-Options: nosniff\r\n\
                      Cross-Origin-Resource-Policy: same-origin\r\nConnection: close\r\n";

/// An answer to a request.
pub struct Answer {
    status: &'static str,
    kind: &'static str,
    body: Vec<u8>,
}

impl Answer {
    /// A page of HTML.
    pub fn page(html: &str) -> Self {
        Self { status: "200 OK", kind: "text/html; charset=utf-8", body: html.as_bytes().to_vec() }
    }

    /// A JSON value.
    pub fn json(value: &serde_json::Value) -> Self {
        Self { status: "200 OK", kind: "application/json", body: value.to_string().into_bytes() }
    }

    /// A PNG picture.
    pub fn picture(png: &[u8]) -> Self {
        Self { status: "200 OK", kind: "image/png", body: png.to_vec() }
    }

    /// There is no such thing.
    pub fn missing() -> Self {
        Self::refusal("404 Not Found", "not found\n")
    }

    /// The program failed on this pattern.
    pub fn failed() -> Self {
        Self::refusal("500 Internal Server Error", "this is a fault of festoon: please report it with the pattern\n")
    }

    fn stranger() -> Self {
        Self::refusal("421 Misdirected Request", "open the address that festoon printed\n")
    }

    fn unclear() -> Self {
        Self::refusal("400 Bad Request", "ask for a page with GET and Host\n")
    }

    fn refusal(status: &'static str, reason: &str) -> Self {
        Self { status, kind: "text/plain; charset=utf-8", body: reason.as_bytes().to_vec() }
    }
}

/// Reads one request whole and writes its answer. A request by another name than this server's is
/// refused: a page of somebody else's could otherwise read the pattern by giving its own name to this
/// machine's address.
pub fn serve(mut stream: TcpStream, address: SocketAddr, answer: impl FnOnce(&str) -> Answer) -> Result<()> {
    let head = head(&mut stream)?;
    let answer = match (host(&head), path(&head)) {
        (Some(host), _) if !is_here(host, address) => Answer::stranger(),
        (Some(_), Some(path)) => answer(path),
        _ => Answer::unclear(),
    };
    send(&mut stream, &answer)
}

/// A request to its empty line. What a browser sends after that, nothing here asks for.
fn head(stream: &mut TcpStream) -> Result<String> {
    let end = Instant::now() + PATIENCE;
    let (mut head, mut some) = (Vec::new(), [0; 1024]);
    while !head.windows(4).any(|four| four == b"\r\n\r\n") {
        let left = end.checked_duration_since(Instant::now()).filter(|left| !left.is_zero());
        stream.set_read_timeout(Some(left.ok_or(ErrorKind::TimedOut)?))?;
        let read = stream.read(&mut some)?;
        if read == 0 || head.len() + read > LONGEST {
            return Err(ErrorKind::InvalidData.into());
        }
        head.extend_from_slice(&some[..read]);
    }
    String::from_utf8(head).map_err(|_| Error::from(ErrorKind::InvalidData))
}

/// The path of a GET, without what follows a question mark.
fn path(head: &str) -> Option<&str> {
    head.strip_prefix("GET ")?.split([' ', '?', '\r']).next()
}

/// The one name by which the server is called (RFC 9112, 3.2: more than one is an error).
fn host(head: &str) -> Option<&str> {
    let fields = head.lines().skip(1).filter_map(|line| line.split_once(':'));
    let mut hosts = fields.filter(|(name, _)| name.eq_ignore_ascii_case("host"));
    hosts.next().filter(|_| hosts.next().is_none()).map(|(_, host)| host.trim())
}

fn is_here(host: &str, address: SocketAddr) -> bool {
    host == address.to_string() || host.eq_ignore_ascii_case(&format!("localhost:{}", address.port()))
}

/// Writes an answer to a browser that takes it in time.
fn send(stream: &mut TcpStream, Answer { status, kind, body }: &Answer) -> Result<()> {
    stream.set_write_timeout(Some(PATIENCE))?;
    let head = format!("HTTP/1.1 {status}\r\nContent-Type: {kind}\r\nContent-Length: {}\r\n{ALWAYS}\r\n", body.len());
    stream.write_all(head.as_bytes())?;
    stream.write_all(body)
}
