//! As much of HTTP as a preview needs: one GET, one answer (RFC 9112).

use std::io::{Error, ErrorKind, Read, Result, Write};
use std::net::{Shutdown, SocketAddr, TcpStream};
use std::time::{Duration, Instant};

/// Longest wait for a browser that is slow to ask, and then again to take what it asked for.
const PATIENCE: Duration = Duration::from_secs(5);
/// Longest head of a request that is read, and longest body.
const LONGEST: usize = 16 * 1024;
/// How much is read or written at a time.
const STRETCH: usize = 16 * 1024;
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

    fn too_large() -> Self {
        Self::refusal("413 Content Too Large", "ask without a body\n")
    }

    fn unclear() -> Self {
        Self::refusal("400 Bad Request", "ask for a page with GET and Host\n")
    }

    fn refusal(status: &'static str, reason: &str) -> Self {
        Self { status, kind: "text/plain; charset=utf-8", body: reason.as_bytes().to_vec() }
    }
}

/// A connection that is given up when its time is over, however often it gives or takes a little.
struct Line {
    stream: TcpStream,
    end: Instant,
}

impl Line {
    fn new(stream: TcpStream) -> Self {
        Self { stream, end: Instant::now() + PATIENCE }
    }

    fn left(&self) -> Result<Option<Duration>> {
        let left = self.end.checked_duration_since(Instant::now()).filter(|left| !left.is_zero());
        left.map(Some).ok_or_else(|| ErrorKind::TimedOut.into())
    }

    fn read(&mut self) -> Result<Vec<u8>> {
        let mut some = vec![0; STRETCH];
        self.stream.set_read_timeout(self.left()?)?;
        let read = self.stream.read(&mut some)?;
        some.truncate(read);
        Ok(some)
    }

    fn write(&mut self, mut bytes: &[u8]) -> Result<()> {
        while !bytes.is_empty() {
            self.stream.set_write_timeout(self.left()?)?;
            let written = self.stream.write(&bytes[..bytes.len().min(STRETCH)])?;
            bytes = &bytes[written..];
        }
        Ok(())
    }
}

/// Reads one request whole and writes its answer. A request by another name than this server's is
/// refused: a page of somebody else's could otherwise read the pattern by giving its own name to this
/// machine's address.
pub fn serve(stream: TcpStream, address: SocketAddr, answer: impl FnOnce(&str) -> Answer) -> Result<()> {
    let mut line = Line::new(stream);
    let (head, body) = head(&mut line)?;
    let answer = match (host(&head), path(&head)) {
        (Some(host), _) if !is_here(host, address) => Answer::stranger(),
        (Some(_), Some(path)) if drained(&mut line, &head, body)? => answer(path),
        (Some(_), Some(_)) => Answer::too_large(),
        _ => Answer::unclear(),
    };
    send(line, &answer)
}

/// A request to its empty line, and what came behind that.
fn head(line: &mut Line) -> Result<(String, usize)> {
    const END: &[u8] = b"\r\n\r\n";
    let mut head = Vec::new();
    loop {
        if let Some(end) = head.windows(END.len()).position(|four| four == END) {
            let body = head.split_off(end + END.len()).len();
            return String::from_utf8(head).map(|head| (head, body)).map_err(|_| Error::from(ErrorKind::InvalidData));
        }
        let more = line.read()?;
        if more.is_empty() || head.len() + more.len() > LONGEST {
            return Err(ErrorKind::InvalidData.into());
        }
        head.extend(more);
    }
}

/// Reads the rest of a request's body, of which some has come; not one that is long, or of a length that
/// is not told.
fn drained(line: &mut Line, head: &str, mut come: usize) -> Result<bool> {
    let length = match (field(head, "content-length"), field(head, "transfer-encoding")) {
        (Ok(None), Ok(None)) => Some(0),
        (Ok(Some(length)), Ok(None)) => length.parse::<usize>().ok().filter(|length| *length <= LONGEST),
        _ => None,
    };
    let Some(length) = length else { return Ok(false) };
    while come < length {
        let more = line.read()?.len();
        if more == 0 {
            return Err(ErrorKind::UnexpectedEof.into());
        }
        come += more;
    }
    Ok(true)
}

/// The path of a GET, without what follows a question mark.
fn path(head: &str) -> Option<&str> {
    head.strip_prefix("GET ")?.split([' ', '?', '\r']).next()
}

/// The one name by which the server is called (RFC 9112, 3.2: more than one is an error).
fn host(head: &str) -> Option<&str> {
    field(head, "host").ok().flatten()
}

/// A field of a head, where it stands there at most once.
fn field<'a>(head: &'a str, name: &str) -> std::result::Result<Option<&'a str>, ()> {
    let fields = head.lines().skip(1).filter_map(|line| line.split_once(':'));
    let mut found = fields.filter(|(found, _)| found.eq_ignore_ascii_case(name));
    let first = found.next().map(|(_, value)| value.trim());
    if found.next().is_none() { Ok(first) } else { Err(()) }
}

fn is_here(host: &str, address: SocketAddr) -> bool {
    host == address.to_string() || host.eq_ignore_ascii_case(&format!("localhost:{}", address.port()))
}

/// Writes an answer to a browser that takes it in time, and waits for it to hang up: what it still sends
/// would otherwise cut off the answer (RFC 9112, 9.6).
fn send(mut line: Line, Answer { status, kind, body }: &Answer) -> Result<()> {
    line.end = Instant::now() + PATIENCE;
    let head = format!("HTTP/1.1 {status}\r\nContent-Type: {kind}\r\nContent-Length: {}\r\n{ALWAYS}\r\n", body.len());
    line.write(head.as_bytes())?;
    line.write(body)?;
    line.stream.shutdown(Shutdown::Write)?;
    while !line.read()?.is_empty() {}
    Ok(())
}
