//! The page's server as browsers and others meet it on this machine.

#![allow(clippy::unwrap_used, reason = "a test that cannot run the program fails")]

use std::fs;
use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::time::Duration;

use serde_json::{Value, json};

/// A sound pattern without a remark.
const SOUND: &str = include_str!("../src/cli/new/strap.yaml");

/// How long a test waits for what must come, before it says that this hangs: no measure of speed.
const HANGING: Duration = Duration::from_secs(20);

/// An empty folder for a test of that name.
fn folder(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("desk-{name}"));
    let _ = fs::remove_dir_all(&folder);
    fs::create_dir_all(&folder).unwrap();
    folder
}

/// A pattern of two beads, each of which stands on a shelf of its own, with the two files.
fn shelved(name: &str) -> PathBuf {
    let folder = folder(name);
    let bead = |id: &str, colour: &str| {
        format!(
            "festoon: 1\nbeads:\n  {id}: {{ shape: round, size: 6 mm, hole: 1 mm, material: glass, colour: \"{colour}\" }}\n"
        )
    };
    fs::write(folder.join("reed.yaml"), bead("reed", "#5d7f5b")).unwrap();
    fs::write(folder.join("mist.yaml"), bead("mist", "#c9d6d8")).unwrap();
    let pattern = "festoon: 1\ntitle: Row\nkind: bracelet\nshelf: reed.yaml\ncords: { wire: { kind: elastic, diameter: 0.5 mm } }\nstrands:\n  - { name: one, cord: wire, ends: knot, beads: [{ repeat: 12, of: [reed, mist] }] }\n";
    fs::write(folder.join("row.yaml"), pattern).unwrap();
    folder.join("row.yaml")
}

/// A desk with a pattern of its own.
struct Desk {
    program: Child,
    address: String,
    token: String,
    pattern: PathBuf,
}

impl Desk {
    fn new(command: &str, name: &str) -> Self {
        Self::of(command, name, Some(SOUND))
    }

    fn of(command: &str, name: &str, text: Option<&str>) -> Self {
        let pattern = folder(name).join("strap.yaml");
        if let Some(text) = text {
            fs::write(&pattern, text).unwrap();
        }
        Self::at(command, pattern, &[])
    }

    /// A desk with a pattern of a folder, and options.
    fn at(command: &str, pattern: PathBuf, options: &[&str]) -> Self {
        let mut program = Command::new(env!("CARGO_BIN_EXE_festoon"));
        let program = program.arg(command).arg(&pattern).args(options).current_dir(pattern.parent().unwrap());
        let mut program = program.stderr(Stdio::piped()).spawn().unwrap();
        let lines = BufReader::new(program.stderr.take().unwrap()).lines();
        let line = lines.map_while(Result::ok).find(|line| line.contains("http://")).unwrap();
        let rest = line.split_once("http://").unwrap().1;
        let (address, rest) = rest.split_once('/').unwrap();
        let token = rest.split_once('/').unwrap().0.to_owned();
        Self { program, address: address.to_owned(), token, pattern }
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
        self.sent(&format!("GET /{}{path} HTTP/1.1\r\nHost: {}\r\n\r\n", self.token, self.address))
    }

    fn posted(&self, path: &str, body: &Value) -> String {
        self.sent(&self.post(path, body))
    }

    /// A request that posts.
    fn post(&self, path: &str, body: &Value) -> String {
        let body = body.to_string();
        format!(
            "POST /{}{path} HTTP/1.1\r\nHost: {1}\r\nOrigin: http://{1}\r\nContent-Type: application/json\r\nContent-Length: {2}\r\n\r\n{body}",
            self.token,
            self.address,
            body.len()
        )
    }

    fn file(&self) -> Value {
        value(&self.asked("/file"))
    }

    fn look(&self, text: &str) -> Value {
        value(&self.posted("/look", &json!({ "text": text })))
    }

    /// What is told of a kind from now on, unless it hangs.
    fn events(&self, kind: &'static str) -> impl Iterator<Item = String> {
        let mut stream = self.connect();
        stream.set_read_timeout(Some(HANGING)).unwrap();
        write!(stream, "GET /{}/events HTTP/1.1\r\nHost: {}\r\n\r\n", self.token, self.address).unwrap();
        let mut lines = BufReader::new(stream).lines().map_while(Result::ok);
        std::iter::from_fn(move || {
            lines.find(|line| line.strip_prefix("event: ") == Some(kind))?;
            lines.next()?.strip_prefix("data: ").map(str::to_owned)
        })
    }

    fn save(&self, text: &str, made_from: &Value) -> String {
        self.posted("/save", &json!({ "text": text, "made_from": made_from }))
    }
}

impl Drop for Desk {
    fn drop(&mut self) {
        self.program.kill().unwrap();
        self.program.wait().unwrap();
    }
}

/// The JSON of an answer.
fn value(answer: &str) -> Value {
    let body = answer.split_once("\r\n\r\n").unwrap().1;
    serde_json::from_str(body).unwrap_or_else(|_| panic!("{}", &answer[..answer.len().min(500)]))
}

/// Whether a connection ends without an answer.
fn is_dropped(mut stream: TcpStream) -> bool {
    stream.set_read_timeout(Some(HANGING)).unwrap();
    stream.read(&mut [0; 1]).is_ok_and(|bytes| bytes == 0)
}

fn is(answer: &str, status: u16) -> bool {
    answer.starts_with(&format!("HTTP/1.1 {status} ")) || answer.starts_with(&format!("HTTP/1.0 {status} "))
}

#[test]
fn pages_are_served_to_this_machine_by_its_name_only() {
    let desk = Desk::new("preview", "names");
    let port = desk.address.split_once(':').unwrap().1;
    let by = |host: &str| desk.sent(&format!("GET /{}/file HTTP/1.1\r\nHost: {host}\r\n\r\n", desk.token));
    for host in [desk.address.clone(), format!("localhost:{port}")] {
        assert!(is(&by(&host), 200), "{host}");
    }
    for host in ["example.org".to_owned(), format!("example.org:{port}"), "127.0.0.1".to_owned(), String::new()] {
        let answer = by(&host);
        assert!(is(&answer, 421) && !answer.contains("festoon:"), "{host}: {answer}");
    }
    assert!(is(&desk.sent(&format!("GET /{}/file HTTP/1.0\r\n\r\n", desk.token)), 400));
    let twice = format!("GET /{}/file HTTP/1.1\r\nHost: {}\r\nHost: example.org\r\n\r\n", desk.token, desk.address);
    assert!(is(&desk.sent(&twice), 400));
    assert!(is(&desk.asked("/nowhere"), 404));
    let page = desk.asked("/");
    assert!(
        page.contains("<main id=\"main\">") && page.contains("content-security-policy: default-src 'none'"),
        "{page}"
    );
}

#[test]
fn nobody_is_answered_without_the_token() {
    let desk = Desk::new("design", "token");
    for path in ["/", "/file", "/page.js", "/0123456789abcdef0123456789abcdef/file"] {
        let answer = desk.sent(&format!("GET {path} HTTP/1.1\r\nHost: {}\r\n\r\n", desk.address));
        assert!(is(&answer, 404) && !answer.contains("strap"), "{path}: {answer}");
    }
    assert_ne!(desk.token, Desk::new("design", "token-of-another").token);
}

#[test]
fn another_page_may_not_ask() {
    let desk = Desk::new("design", "origin");
    let from = |method: &str, origin: &str| {
        desk.sent(&format!(
            "{method} /{}/file HTTP/1.1\r\nHost: {}\r\n{origin}Content-Length: 0\r\n\r\n",
            desk.token, desk.address
        ))
    };
    for origin in ["http://example.org", "null", "https://127.0.0.1", "http://localhost:1"] {
        assert!(is(&from("GET", &format!("Origin: {origin}\r\n")), 403), "{origin}");
        assert!(is(&from("POST", &format!("Origin: {origin}\r\n")), 403), "{origin}");
    }
    assert!(is(&from("POST", ""), 403), "a browser that posts says from where");
    assert!(is(&from("GET", &format!("Origin: http://{}\r\n", desk.address)), 200));
}

#[test]
fn a_request_is_read_whole_and_slow_clients_hold_up_nobody() {
    let desk = Desk::new("preview", "slow");
    let slow: Vec<_> = (0..50).map(|_| desk.connect()).collect();
    let mut halves = desk.connect();
    halves.write_all(format!("GET /{}/file HTT", desk.token).as_bytes()).unwrap();
    assert!(is(&desk.asked("/file"), 200), "the others are answered meanwhile");
    let rest = format!("P/1.1\r\nUser-Agent: {}\r\nHost: {}\r\n\r\n", "x".repeat(6000), desk.address);
    halves.write_all(rest.as_bytes()).unwrap();
    let mut answer = String::new();
    halves.read_to_string(&mut answer).unwrap();
    assert!(is(&answer, 200) && answer.contains("festoon: 1"), "{answer}");
    assert!(slow.into_iter().all(is_dropped), "who says nothing is dropped");
}

#[test]
fn who_takes_no_answer_is_dropped_and_more_than_there_is_room_for_are_refused() {
    let desk = Desk::new("design", "room");
    let held: Vec<_> = (0..400).map(|_| desk.connect()).collect();
    assert!(held.into_iter().all(is_dropped), "some at once, and the others when they have said nothing for long");
    assert!(is(&desk.asked("/file"), 200), "there is room again");
}

#[test]
fn bodies_are_read_before_the_answer_or_refused() {
    let desk = Desk::new("design", "bodies");
    let with = |fields: &str, body: &str| {
        desk.sent(&format!("GET /{}/file HTTP/1.1\r\nHost: {}\r\n{fields}\r\n\r\n{body}", desk.token, desk.address))
    };
    assert!(is(&with("Content-Length: 6000", &"x".repeat(6000)), 200));
    assert!(is(&with("Content-Length: 3", "\u{fffd}"), 200), "not text, and of no matter");
    let answer = with("Content-Length: 4000000", &"x".repeat(4_000_000));
    assert!(is(&answer, 413) && answer.contains("without a body"), "{answer}");
    let huge = json!({ "text": "x".repeat(19 * 1024 * 1024) });
    assert!(is(&desk.posted("/look", &huge), 413));
    let largest = desk.look(&format!("# {}", "x".repeat(4 * 1024 * 1024 - 2)));
    assert!(largest["remarks"].as_array().is_some_and(|remarks| !remarks.is_empty()), "{largest}");
}

#[test]
fn a_preview_changes_nothing() {
    let desk = Desk::new("preview", "read-only");
    let version = desk.file()["version"].clone();
    for (path, body) in [
        ("/save", json!({ "text": "spoilt", "made_from": version })),
        ("/act", json!({ "text": SOUND, "act": { "act": "lengthen", "strand": 0, "length": 700 } })),
        ("/offers", json!({ "text": SOUND, "at": 3 })),
    ] {
        let answer = desk.posted(path, &body);
        assert!(is(&answer, 404) || is(&answer, 405), "{path}: {answer}");
    }
    assert_eq!(fs::read_to_string(&desk.pattern).unwrap(), SOUND);
    assert!(!desk.asked("/").contains("id=\"save\""));
}

#[test]
fn nobody_waits_while_another_browsers_request_draws() {
    let desk = Desk::new("preview", "drawing");
    let many = fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/patterns/saltmarsh.yaml")).unwrap();
    let request = desk.post("/look", &json!({ "text": many }));
    let looks = [(); 4].map(|()| desk.connect());
    looks.iter().for_each(|mut look| look.write_all(request.as_bytes()).unwrap());
    assert!(is(&desk.asked("/file"), 200));
    // Whoever asked last is answered before all that asked earlier have theirs.
    assert!(looks.iter().any(is_waiting), "the file came after all drawings");
    for mut look in looks {
        look.set_nonblocking(false).unwrap();
        let mut answer = String::new();
        look.read_to_string(&mut answer).unwrap();
        assert!(value(&answer)["piece"].is_object(), "{answer}");
    }
}

/// Whether nothing has come of an answer yet.
fn is_waiting(stream: &TcpStream) -> bool {
    stream.set_nonblocking(true).unwrap();
    stream.peek(&mut [0; 1]).is_err_and(|error| error.kind() == std::io::ErrorKind::WouldBlock)
}

#[test]
fn the_page_is_told_when_the_pattern_is_gone_or_no_text() {
    let desk = Desk::new("design", "gone");
    let sound = desk.file();
    assert_eq!((&sound["text"], &sound["trouble"]), (&json!(SOUND), &json!("")));
    let says = |words: &str| {
        let file = desk.file();
        assert!(file["trouble"].as_str().unwrap().contains(words), "{words}: {file}");
        assert_eq!(file["text"], Value::Null);
        assert_eq!(file["version"], desk.file()["version"], "nothing is new");
        assert_ne!(file["version"], sound["version"]);
        let refused = desk.save("mine", &sound["version"]);
        assert!(is(&refused, 409), "what another program did is not written over: {refused}");
    };
    fs::remove_file(&desk.pattern).unwrap();
    says("");
    fs::write(&desk.pattern, [0xff, 0xfe]).unwrap();
    says("not text in UTF-8");
    fs::write(&desk.pattern, " ".repeat(4 * 1024 * 1024 + 1)).unwrap();
    says("larger than 4 MiB");
    fs::remove_file(&desk.pattern).unwrap();
    fs::create_dir(&desk.pattern).unwrap();
    says("this is a folder");
    fs::remove_dir(&desk.pattern).unwrap();
    #[cfg(unix)]
    {
        assert!(Command::new("mkfifo").arg(&desk.pattern).status().unwrap().success());
        says("this is a pipe or a device");
        fs::remove_file(&desk.pattern).unwrap();
    }
    fs::write(&desk.pattern, SOUND).unwrap();
    assert_eq!(desk.file(), sound);
}

#[test]
fn a_file_is_saved_whole_and_never_over_another_programs_text() {
    let desk = Desk::new("design", "save");
    let first = desk.file()["version"].clone();
    let mine = SOUND.replace("title: ", "title: Mine, ");
    let saved = value(&desk.save(&mine, &first));
    assert_eq!(fs::read_to_string(&desk.pattern).unwrap(), mine);
    assert_eq!(saved["version"], desk.file()["version"]);
    assert!(is(&desk.save(SOUND, &first), 409), "that is an old version now");
    let theirs = SOUND.replace("title: ", "title: Theirs, ");
    fs::write(&desk.pattern, &theirs).unwrap();
    let told = desk.save(SOUND, &saved["version"]);
    assert!(is(&told, 409), "{told}");
    assert_eq!(value(&told)["text"], json!(theirs), "the page is given both");
    assert_eq!(fs::read_to_string(&desk.pattern).unwrap(), theirs);
    assert!(is(&desk.save(SOUND, &value(&told)["version"]), 200), "now it is meant");
    let too_large = desk.save(&"x".repeat(4 * 1024 * 1024 + 1), &desk.file()["version"]);
    assert!(is(&too_large, 422), "{too_large}");
    let left = fs::read_dir(desk.pattern.parent().unwrap()).unwrap().count();
    assert_eq!(left, 1, "nothing lies beside it");
}

#[test]
fn of_two_pages_that_save_at_once_one_is_told_of_the_other() {
    let desk = Desk::new("design", "race");
    let version = desk.file()["version"].clone();
    let saved = std::thread::scope(|scope| {
        let one = |at: usize| {
            let (desk, version) = (&desk, &version);
            scope.spawn(move || is(&desk.save(&format!("# {at}\n{SOUND}"), version), 200))
        };
        let all: Vec<_> = (0..8).map(one).collect();
        all.into_iter().map(|one| one.join().unwrap()).filter(|saved| *saved).count()
    });
    assert_eq!(saved, 1);
}

#[test]
fn the_page_is_told_at_once_what_another_program_writes() {
    let desk = Desk::new("design", "events");
    let mut told = desk.events("file");
    assert_eq!(json!(told.next()), desk.file()["version"], "what it holds, first");
    fs::write(&desk.pattern, "festoon: 1\n").unwrap();
    assert_eq!(json!(told.next()), desk.file()["version"]);
    let other = desk.pattern.with_extension("new");
    fs::write(&other, SOUND).unwrap();
    fs::rename(other, &desk.pattern).unwrap();
    assert_eq!(json!(told.next()), desk.file()["version"], "a file that is moved over it too");
}

#[test]
fn the_page_is_told_at_once_what_stands_on_a_shelf() {
    let pattern = shelved("shelf-events");
    let text = fs::read_to_string(&pattern).unwrap();
    let desk = Desk::at("design", pattern.clone(), &["--shelf", "mist.yaml"]);
    assert!(desk.look(&text)["piece"].is_object());
    let mut told = desk.events("shelves");
    let mut last = told.next().unwrap();
    let is_new = |next: Option<String>, last: &mut String| {
        let next = next.unwrap();
        std::mem::replace(last, next.clone()) != next
    };
    for (name, from, to) in [("reed.yaml", "#5d7f5b", "#112233"), ("mist.yaml", "6 mm", "4 mm")] {
        let shelf = pattern.with_file_name(name);
        fs::write(&shelf, fs::read_to_string(&shelf).unwrap().replace(from, to)).unwrap();
        assert!(is_new(told.next(), &mut last), "{name}");
    }
    let beads = &desk.look(&text)["piece"]["kinds"];
    assert_eq!((&beads["b0"]["colour"], &beads["b1"]["size"]), (&json!("#112233"), &json!("4 mm")), "{beads}");
    // A shelf that the text names from now on is watched too.
    fs::create_dir(pattern.with_file_name("new")).unwrap();
    let new = pattern.with_file_name("new").join("rush.yaml");
    fs::write(&new, "festoon: 1\nbeads: {}\n").unwrap();
    desk.look(&text.replace("shelf: reed.yaml", "shelf: [reed.yaml, new/rush.yaml]"));
    fs::write(&new, "festoon: 1\nbeads:\n  rush: { shape: round, size: 6 mm, colour: \"#5d7f5b\" }\n").unwrap();
    assert!(is_new(told.next(), &mut last));
}

#[cfg(target_os = "linux")]
#[test]
fn what_the_program_reads_itself_wakes_it_not() {
    let desk = Desk::new("preview", "asleep");
    fs::write(&desk.pattern, SOUND.replace("title: ", "title: New ")).unwrap();
    std::thread::sleep(Duration::from_secs(1));
    let waits = || -> u64 {
        let tasks = fs::read_dir(format!("/proc/{}/task", desk.program.id())).unwrap().flatten();
        let of = |task: fs::DirEntry| {
            let status = fs::read_to_string(task.path().join("status")).unwrap_or_default();
            let line = status.lines().find_map(|line| line.strip_prefix("voluntary_ctxt_switches:"));
            line.and_then(|count| count.trim().parse::<u64>().ok()).unwrap_or_default()
        };
        tasks.map(of).sum()
    };
    // A count of wake-ups and no time: on a slow machine there are fewer.
    let before = waits();
    std::thread::sleep(Duration::from_secs(2));
    assert!(waits() - before < 20, "{} times in two seconds", waits() - before);
}

#[test]
fn beads_of_file_and_shelf_are_offered_and_changed() {
    let pattern = shelved("acts");
    let text = fs::read_to_string(&pattern).unwrap();
    fs::write(pattern.with_file_name("rush.yaml"), "festoon: 1\nbeads:\n  rush: { name: rush barrel, shape: barrel, size: 6 x 8 mm, hole: 1 mm, material: glass, colour: \"#5d7f5b\" }\n").unwrap();
    let desk = Desk::at("design", pattern, &["--shelf", "mist.yaml", "--shelf", "rush.yaml"]);
    let look = desk.look(&text);
    assert_eq!(look["names"]["beads"], json!([["reed", "reed"], ["mist", "mist"], ["rush", "rush barrel"]]), "{look}");
    let run = &look["piece"]["things"][0]["place"];
    let run = json!({ "start": run[0], "end": run[1] });
    let act = |what: Value| value(&desk.posted("/act", &json!({ "text": text, "act": what })))["text"].clone();
    let swapped = act(json!({ "act": "swap", "run": run, "from": "reed", "to": "rush", "everywhere": false }));
    assert_eq!(swapped, json!(text.replace("[reed, mist]", "[rush, mist]")));
    assert!(desk.look(swapped.as_str().unwrap())["piece"].is_object());
    let set = json!({ "act": "set", "bead": "reed", "key": "size", "value": "8 mm", "only": null, "colourway": null });
    let bigger = act(set);
    let look = desk.look(bigger.as_str().unwrap());
    assert_eq!(look["piece"]["kinds"]["b0"]["size"], json!("8 mm"), "{bigger}");
    let sized = act(json!({ "act": "add-size", "name": "long", "key": "wrist", "value": "190 mm" }));
    assert_eq!(desk.look(sized.as_str().unwrap())["names"]["sizes"], json!(["long"]));
    let coloured = act(json!({ "act": "add-colourway", "name": "dusk", "bead": "mist", "colour": "\"#445566\"" }));
    assert_eq!(desk.look(coloured.as_str().unwrap())["names"]["colourways"], json!(["dusk"]));
}

#[test]
fn a_text_is_answered_with_the_piece_its_places_and_remedies() {
    let desk = Desk::new("design", "look");
    let look = desk.look(SOUND);
    assert_eq!(look["remarks"], json!([]));
    let piece = &look["piece"];
    assert!(piece["svg"].as_str().unwrap().contains("<svg"));
    let units: Vec<u16> = SOUND.encode_utf16().collect();
    for thing in piece["things"].as_array().unwrap() {
        let place = |at: usize| usize::try_from(thing["place"][at].as_u64().unwrap()).unwrap();
        let entry = String::from_utf16(&units[place(0)..place(1)]).unwrap();
        let Some(kind) = thing["kind"].as_str() else { continue };
        assert!(entry.contains(piece["kinds"][kind]["id"].as_str().unwrap()), "{entry}: {thing}");
    }
    let spoilt = SOUND.replacen("kind: strap", "kind: starp", 1);
    let look = desk.look(&format!("# ½\u{1d11e}\n{spoilt}"));
    assert_eq!(look["piece"], Value::Null);
    let remedy = &look["remarks"][0]["remedy"];
    let start =
        "# ½\u{1d11e}\n".encode_utf16().count() + spoilt[..spoilt.find("starp").unwrap()].encode_utf16().count();
    assert_eq!(remedy["place"], json!([start, start + 5]), "{look}");
    assert_eq!(remedy["text"], json!("strap"));
}

#[test]
fn a_shelf_of_the_command_line_that_is_gone_is_left_out_alone() {
    let pattern = shelved("gone-shelf");
    let text = fs::read_to_string(&pattern).unwrap();
    fs::write(pattern.with_file_name("rush.yaml"), "festoon: 1\nbeads: {}\n").unwrap();
    let desk = Desk::at("design", pattern.clone(), &["--shelf", "rush.yaml", "--shelf", "mist.yaml"]);
    assert!(desk.look(&text)["piece"].is_object(), "{}", desk.look(&text)["remarks"]);
    fs::remove_file(pattern.with_file_name("rush.yaml")).unwrap();
    assert!(desk.look(&text)["piece"].is_object(), "{}", desk.look(&text)["remarks"]);
}

#[test]
fn files_taken_are_those_of_the_commands_byte_for_byte() {
    let desk = Desk::new("design", "take");
    let folder = desk.pattern.parent().unwrap().to_owned();
    let run = |arguments: &[&str]| {
        let mut command = Command::new(env!("CARGO_BIN_EXE_festoon"));
        let command =
            command.args(arguments).arg(&desk.pattern).arg("-o").arg(folder.join("out/")).stderr(Stdio::null());
        assert!(command.status().unwrap().success(), "{arguments:?}");
    };
    run(&["sheet", "--format", "pdf,svg", "--paper", "letter", "--ink", "outline"]);
    run(&["picture"]);
    for (what, file) in [("pdf", "strap.pdf"), ("svg", "strap-1.svg"), ("picture", "strap.png")] {
        let question = json!({ "text": SOUND, "paper": "letter", "ink": "outline" });
        let body = question.to_string();
        let mut stream = desk.connect();
        write!(stream, "POST /{0}/take/{what} HTTP/1.1\r\nHost: {1}\r\nOrigin: http://{1}\r\nContent-Type: application/json\r\nContent-Length: {2}\r\n\r\n{body}", desk.token, desk.address, body.len()).unwrap();
        let mut answer = Vec::new();
        stream.read_to_end(&mut answer).unwrap();
        let head = answer.windows(4).position(|four| four == b"\r\n\r\n").unwrap() + 4;
        let said = String::from_utf8_lossy(&answer[..head]).into_owned();
        assert!(said.contains(&format!("filename*=UTF-8''{file}")), "{said}");
        assert!(answer[head..] == fs::read(folder.join("out").join(file)).unwrap(), "{file}");
    }
}

#[test]
fn what_is_not_there_yet_begins_with_a_pattern_that_is_sound() {
    let desk = Desk::of("design", "begin", None);
    let file = desk.file();
    assert_eq!((&file["text"], &file["version"]), (&Value::Null, &json!("none")));
    let starts = value(&desk.asked("/starts"));
    let starts = starts.as_array().unwrap();
    assert_eq!(starts.iter().filter(|start| start["is_kind"] == json!(true)).count(), 5, "every kind");
    let shipped = fs::read_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/patterns")).unwrap().flatten();
    let shipped = shipped.filter(|entry| entry.path().extension().is_some_and(|ending| ending == "yaml"));
    assert_eq!(starts.len(), 5 + shipped.count(), "every shipped pattern");
    let named = |name: &str| starts.iter().find(|start| start["name"] == json!(name)).unwrap();
    for start in starts.iter().filter(|start| start["is_kind"] == json!(true)).chain([named("ebb"), named("tideline")])
    {
        let text = value(&desk.asked(&format!("/start/{}", start["name"].as_str().unwrap())));
        assert!(desk.look(text["text"].as_str().unwrap())["piece"].is_object(), "{}", start["name"]);
    }
    assert!(is(&desk.save(SOUND, &file["version"]), 200));
    assert_eq!(fs::read_to_string(&desk.pattern).unwrap(), SOUND);
    assert!(is(&desk.asked("/start/nowhere"), 422));
}
