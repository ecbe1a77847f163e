//! As much of HTTP as a preview needs: one GET, one answer.

use std::io::{BufRead, BufReader, Result, Write};
use std::net::TcpStream;
use std::time::Duration;

/// Longest wait for a browser that says nothing.
const PATIENCE: Duration = Duration::from_secs(2);
/// Longest request line that is read.
const LONGEST: u64 = 4096;

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
        Self { status: "404 Not Found", kind: "text/plain", body: b"not found\n".to_vec() }
    }
}

/// Reads one request and writes its answer.
pub fn serve(mut stream: TcpStream, answer: impl FnOnce(&str) -> Answer) -> Result<()> {
    stream.set_read_timeout(Some(PATIENCE))?;
    stream.set_write_timeout(Some(PATIENCE))?;
    let mut line = String::new();
    BufReader::new(std::io::Read::take(stream.try_clone()?, LONGEST)).read_line(&mut line)?;
    let path = line.strip_prefix("GET ").and_then(|rest| rest.split(' ').next()).unwrap_or_default();
    let path = path.split('?').next().unwrap_or_default();
    let Answer { status, kind, body } = answer(path);
    let head = format!(
        "HTTP/1.1 {status}\r\nContent-Type: {kind}\r\nContent-Length: {}\r\nCache-Control: no-store\r\nConnection: close\r\n\r\n",
        body.len()
    );
    stream.write_all(head.as_bytes())?;
    stream.write_all(&body)
}
