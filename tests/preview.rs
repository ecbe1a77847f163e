//! The preview as browsers and others meet it on this machine.

#![allow(clippy::unwrap_used, reason = "a test that cannot run the program fails")]

use std::fs;
use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};

use serde_json::Value;

/// A sound pattern without a remark.
const SOUND: &str = include_str!("../src/cli/new/strap.yaml");

/// A preview of a pattern of its own.
struct Preview {
    program: Child,
    address: String,
    pattern: PathBuf,
}

impl Preview {
    fn new(name: &str) -> Self {
        let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("preview-{name}"));
        let _ = fs::remove_dir_all(&folder);
        fs::create_dir_all(&folder).unwrap();
        let pattern = folder.join("strap.yaml");
        fs::write(&pattern, SOUND).unwrap();
        let mut command = Command::new(env!("CARGO_BIN_EXE_festoon"));
        let mut program = command.arg("preview").arg(&pattern).stderr(Stdio::piped()).spawn().unwrap();
        let mut line = String::new();
        BufReader::new(program.stderr.take().unwrap()).read_line(&mut line).unwrap();
        let address = line.split_once("http://").unwrap().1.split_once('/').unwrap().0.to_owned();
        Self { program, address, pattern }
    }

    fn connect(&self) -> TcpStream {
        TcpStream::connect(&self.address).unwrap()
    }

    /// The whole answer to a request sent as it stands.
    fn sent(&self, request: &str) -> String {
        let mut stream = self.connect();
        stream.write_all(request.as_bytes()).unwrap();
        let mut answer = Vec::new();
        stream.read_to_end(&mut answer).unwrap();
        String::from_utf8_lossy(&answer).into_owned()
    }

    fn asked(&self, path: &str) -> String {
        self.sent(&format!("GET {path} HTTP/1.1\r\nHost: {}\r\n\r\n", self.address))
    }

    fn state(&self) -> Value {
        serde_json::from_str(self.asked("/state").split_once("\r\n\r\n").unwrap().1).unwrap()
    }
}

impl Drop for Preview {
    fn drop(&mut self) {
        self.program.kill().unwrap();
        self.program.wait().unwrap();
    }
}

#[test]
fn pages_are_served_to_this_machine_by_its_name_only() {
    let preview = Preview::new("names");
    let port = preview.address.split_once(':').unwrap().1;
    let by = |host: &str| preview.sent(&format!("GET /state HTTP/1.1\r\nHost: {host}\r\n\r\n"));
    for host in [preview.address.clone(), format!("localhost:{port}")] {
        assert!(by(&host).starts_with("HTTP/1.1 200 "), "{host}");
    }
    for host in ["example.org".to_owned(), format!("example.org:{port}"), "127.0.0.1".to_owned(), String::new()] {
        let answer = by(&host);
        assert!(answer.starts_with("HTTP/1.1 421 ") && !answer.contains("pages"), "{host}: {answer}");
    }
    assert!(preview.sent("GET /state HTTP/1.0\r\n\r\n").starts_with("HTTP/1.1 400 "));
    let twice = format!("GET /state HTTP/1.1\r\nHost: {0}\r\nHost: example.org\r\n\r\n", preview.address);
    assert!(preview.sent(&twice).starts_with("HTTP/1.1 400 "));
    assert!(preview.sent(&format!("POST / HTTP/1.1\r\nHost: {}\r\n\r\n", preview.address)).contains(" 400 "));
    assert!(preview.asked("/nowhere").starts_with("HTTP/1.1 404 "));
    assert!(preview.asked("/").contains("<main id=\"pages\">"));
    preview.state();
    assert!(preview.asked("/page/0").contains("Content-Type: image/png"));
}

#[test]
fn a_request_is_read_whole_and_slow_clients_hold_up_nobody() {
    let preview = Preview::new("slow");
    preview.state();
    let slow: Vec<_> = (0..20).map(|_| preview.connect()).collect();
    let mut halves = preview.connect();
    halves.write_all(b"GET /state HTT").unwrap();
    assert!(preview.asked("/state").starts_with("HTTP/1.1 200 "), "the others are answered meanwhile");
    let rest = format!("P/1.1\r\nUser-Agent: {}\r\nHost: {}\r\n\r\n", "x".repeat(6000), preview.address);
    halves.write_all(rest.as_bytes()).unwrap();
    let mut answer = String::new();
    halves.read_to_string(&mut answer).unwrap();
    assert!(answer.starts_with("HTTP/1.1 200 ") && answer.contains("\"pages\":"), "{answer}");
    for mut silent in slow {
        assert_eq!(silent.read(&mut [0; 1]).unwrap_or(0), 0, "who says nothing is dropped");
    }
}

#[test]
fn bodies_are_read_before_the_answer_or_refused() {
    let preview = Preview::new("bodies");
    let with = |fields: &str, body: &str| {
        preview.sent(&format!("GET / HTTP/1.1\r\nHost: {}\r\n{fields}\r\n\r\n{body}", preview.address))
    };
    assert!(with("Content-Length: 6000", &"x".repeat(6000)).starts_with("HTTP/1.1 200 "));
    assert!(with("Content-Length: 3", "\u{fffd}").starts_with("HTTP/1.1 200 "), "not text, and of no matter");
    for fields in ["Content-Length: 9000000", "Content-Length: -1", "Transfer-Encoding: chunked"] {
        let answer = with(fields, &"x".repeat(4_000_000));
        assert!(answer.starts_with("HTTP/1.1 413 ") && answer.ends_with("without a body\n"), "{fields}: {answer}");
    }
    let posted = format!("POST / HTTP/1.1\r\nHost: {}\r\nContent-Length: 4000000\r\n\r\n", preview.address);
    assert!(preview.sent(&(posted + &"x".repeat(4_000_000))).starts_with("HTTP/1.1 400 "));
}

#[test]
fn nobody_waits_while_another_browsers_request_draws() {
    let preview = Preview::new("drawing");
    let many = fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/patterns/saltmarsh.yaml")).unwrap();
    fs::write(&preview.pattern, many).unwrap();
    let mut first = preview.connect();
    first.write_all(format!("GET /state HTTP/1.1\r\nHost: {}\r\n\r\n", preview.address).as_bytes()).unwrap();
    std::thread::sleep(std::time::Duration::from_millis(100));
    assert_eq!(preview.state()["pages"], 0, "what there is, at once");
    let mut answer = String::new();
    first.read_to_string(&mut answer).unwrap();
    let drawn = preview.state()["pages"].as_u64().unwrap();
    assert!(drawn > 0 && answer.contains(&format!("\"pages\":{drawn}")), "{answer}");
}

#[test]
fn the_page_says_when_the_pattern_is_gone_or_no_text() {
    let preview = Preview::new("gone");
    let sound = preview.state();
    assert_eq!(sound["remarks"], "");
    let says = |words: &str| {
        let state = preview.state();
        assert!(state["remarks"].as_str().unwrap().contains(words), "{words}: {state}");
        assert_eq!(state["pages"], sound["pages"], "the last sound pages stay");
        assert_eq!(state["version"], preview.state()["version"], "nothing is new");
        assert_ne!(state["version"], sound["version"]);
    };
    fs::remove_file(&preview.pattern).unwrap();
    says("there is no such file");
    fs::write(&preview.pattern, [0xff, 0xfe]).unwrap();
    says("not text in UTF-8");
    fs::write(&preview.pattern, " ".repeat(4 * 1024 * 1024 + 1)).unwrap();
    says("larger than 4 MiB");
    fs::remove_file(&preview.pattern).unwrap();
    fs::create_dir(&preview.pattern).unwrap();
    says("this is a folder");
    fs::remove_dir(&preview.pattern).unwrap();
    #[cfg(unix)]
    {
        assert!(Command::new("mkfifo").arg(&preview.pattern).status().unwrap().success());
        says("this is a pipe or a device");
        fs::remove_file(&preview.pattern).unwrap();
    }
    fs::write(&preview.pattern, SOUND).unwrap();
    assert_eq!(preview.state()["remarks"], "");
}
