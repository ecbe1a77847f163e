//! The command line as a shell sees it: exit codes, standard input and output, files and messages.

#![allow(clippy::unwrap_used, reason = "a test that cannot run the program fails")]

use std::fs;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};
use std::time::Duration;

use serde_json::Value;

/// A sound pattern without a remark.
const SOUND: &str = include_str!("../src/cli/new/strap.yaml");

/// What a run of the program left.
struct Ran {
    code: i32,
    out: String,
    err: String,
}

fn festoon(arguments: &[&str]) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_festoon"));
    command.args(arguments).current_dir(env!("CARGO_MANIFEST_DIR")).env_remove("NO_COLOR");
    command
}

fn ran(output: &Output) -> Ran {
    Ran {
        code: output.status.code().expect("the program ends by itself"),
        out: String::from_utf8_lossy(&output.stdout).into_owned(),
        err: String::from_utf8_lossy(&output.stderr).into_owned(),
    }
}

fn run(arguments: &[&str]) -> Ran {
    ran(&festoon(arguments).output().unwrap())
}

/// Runs with a text on standard input.
fn fed(arguments: &[&str], text: &str) -> Ran {
    let mut command = festoon(arguments);
    let pipes = command.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped());
    let mut child = pipes.spawn().unwrap();
    child.stdin.take().unwrap().write_all(text.as_bytes()).unwrap();
    ran(&child.wait_with_output().unwrap())
}

/// Runs what must end by itself. What still runs after 20 s hangs, and is ended; that is no measure of speed.
fn soon(arguments: &[&str]) -> Ran {
    let pipes = |command: &mut Command| command.stdin(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
    let mut child = pipes(&mut festoon(arguments));
    let _open = child.stdin.take();
    for _ in 0..200 {
        if child.try_wait().unwrap().is_some() {
            break;
        }
        std::thread::sleep(Duration::from_millis(100));
    }
    let _ = child.kill();
    let output = child.wait_with_output().unwrap();
    Ran { code: output.status.code().unwrap_or(-1), out: String::new(), err: String::from_utf8(output.stderr).unwrap() }
}

/// An empty folder for a test of that name.
fn folder(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    let _ = fs::remove_dir_all(&folder);
    fs::create_dir_all(&folder).unwrap();
    folder
}

fn names(folder: &Path) -> Vec<String> {
    let entries = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap());
    let mut names: Vec<_> = entries.collect();
    names.sort();
    names
}

fn broken() -> String {
    SOUND.replace("length: 26 in", "length: 26")
}

#[test]
fn a_page_is_not_made_of_standard_input() {
    for command in ["design", "preview"] {
        let ran = soon(&[command, "-"]);
        assert_eq!(ran.code, 2, "{command}: {}", ran.err);
        assert!(ran.err.contains("standard input") && ran.err.contains("name the pattern's file"), "{}", ran.err);
    }
}

#[test]
fn standard_input_is_one_thing_alone() {
    let ran = fed(&["materials", "-", "--stash", "-"], "");
    assert!(ran.code == 2 && ran.err.contains("one pattern or the stash"), "{}", ran.err);
}

#[test]
fn a_sound_pattern_ends_with_0_in_silence() {
    let ran = fed(&["check", "--strict", "-"], SOUND);
    assert_eq!((ran.code, ran.out.as_str(), ran.err.as_str()), (0, "", ""));
}

#[test]
fn warnings_fail_only_when_strict() {
    let eddy = fs::read_to_string("patterns/eddy.yaml").unwrap();
    let crowded = eddy.replace("17 1/2 in", "18 in");
    let plain = fed(&["check", "-"], &crowded);
    assert_eq!(plain.code, 0);
    assert!(plain.err.contains("warning[strands-crowd]"), "{}", plain.err);
    assert!(plain.out.is_empty(), "remarks go to standard error");
    assert_eq!(fed(&["check", "--strict", "-"], &crowded).code, 1);
    let allowed = fed(
        &["check", "--strict", "-"],
        &crowded.replace("[uneven-ends]", "[uneven-ends, strands-crowd, strands-unsettled]"),
    );
    assert_eq!((allowed.code, allowed.err.as_str()), (0, ""), "what is allowed is meant");
    assert_eq!(run(&["check", "--strict", "patterns/pierhead.yaml"]).code, 0);
}

#[test]
fn an_error_ends_with_1() {
    for command in ["check", "measure", "materials"] {
        let ran = fed(&[command, "-"], &broken());
        assert_eq!((ran.code, ran.out.as_str()), (1, ""), "{command}");
        assert!(ran.err.contains("error[bad-quantity]"), "{command}: {}", ran.err);
    }
}

#[test]
fn files_and_arguments_at_fault_end_with_2() {
    let missing = run(&["check", "patterns/nowhere.yaml"]);
    assert_eq!(missing.code, 2);
    assert!(missing.err.contains("patterns/nowhere.yaml: there is no such file"), "{}", missing.err);
    assert_eq!(run(&["check", "patterns"]).code, 2);
    for usage in [&["knit"][..], &["check"], &["measure", "-", "--span", "12"], &["new", "hat"], &[]] {
        assert_eq!(run(usage).code, 2, "{usage:?}");
    }
}

#[test]
fn a_file_that_is_no_text_is_refused() {
    let folder = folder("no-text");
    let path = folder.join("picture.yaml");
    fs::write(&path, [0xff, 0xd8, 0xff, 0xe0]).unwrap();
    let ran = run(&["check", path.to_str().unwrap()]);
    assert_eq!(ran.code, 1);
    assert!(ran.err.contains("error[not-text]"), "{}", ran.err);
}

#[test]
fn a_file_of_four_mebibytes_is_read_and_a_larger_one_is_not() {
    const MOST: usize = 4 * 1024 * 1024;
    let path = folder("large").join("large.yaml");
    let check = |size: usize| {
        let comment = format!("#{}\n", " ".repeat(size - SOUND.len() - 2));
        fs::write(&path, comment + SOUND).unwrap();
        assert_eq!(fs::metadata(&path).unwrap().len(), size as u64);
        run(&["check", "--strict", path.to_str().unwrap()])
    };
    assert_eq!((check(MOST).code, check(MOST).err), (0, String::new()));
    let larger = check(MOST + 1);
    assert_eq!(larger.code, 1);
    assert!(larger.err.contains("error[not-text]") && larger.err.contains("4 MiB"), "{}", larger.err);
}

#[test]
fn every_pattern_of_a_list_is_checked() {
    let ran = run(&["check", "--messages", "short", "patterns/nowhere.yaml", "patterns/halyard.yaml"]);
    assert_eq!(ran.code, 2);
    assert!(ran.err.contains("nowhere") && ran.err.contains("patterns/halyard.yaml:"), "{}", ran.err);
}

#[test]
fn a_dash_reads_standard_input_and_writes_standard_output() {
    let ran = fed(&["sheet", "-", "-o", "-"], SOUND);
    assert_eq!((ran.code, ran.err.as_str()), (0, ""));
    assert!(ran.out.starts_with("%PDF-"), "no PDF: {:.20}", ran.out);
    let ran = fed(&["measure", "-", "--json"], SOUND);
    assert_eq!(serde_json::from_str::<Value>(&ran.out).unwrap()["title"], "My Strap");
}

#[test]
fn a_sheet_is_written_where_it_is_asked_for() {
    let folder = folder("written");
    let file = folder.join("new").join("strap.pdf");
    let ran = fed(&["sheet", "-", "-o", file.to_str().unwrap()], SOUND);
    assert_eq!(ran.code, 0, "{}", ran.err);
    assert_eq!(names(&folder.join("new")), ["strap.pdf"], "and nothing is left over beside it");
    assert!(fs::read(&file).unwrap().starts_with(b"%PDF-"));
}

#[test]
fn an_error_writes_nothing_and_keeps_the_old_file() {
    let folder = folder("kept");
    let (old, new) = (folder.join("old.pdf"), folder.join("new.pdf"));
    fs::write(&old, "as it was").unwrap();
    for file in [&old, &new] {
        assert_eq!(fed(&["sheet", "-", "-o", file.to_str().unwrap()], &broken()).code, 1);
    }
    assert_eq!(names(&folder), ["old.pdf"]);
    assert_eq!(fs::read_to_string(&old).unwrap(), "as it was");
}

#[test]
fn a_proof_of_more_pages_than_anyone_joins_writes_nothing() {
    let folder = folder("long-proof");
    let file = folder.join("proof.pdf");
    let (head, strand) = SOUND.split_once("strands:\n").expect("strands");
    let (strand, rest) = strand.split_at(strand.find("\n\n").map_or(strand.len(), |end| end + 1));
    let strand = strand.replace("length: 26 in ", "length: 12 m ");
    let strands: String = (1..=4).map(|at| strand.replace("name: strap", &format!("name: strap {at}"))).collect();
    let long = format!("{head}strands:\n{strands}{rest}");
    let ran = fed(&["proof", "-", "--paper", "a5", "-o", file.to_str().unwrap()], &long);
    assert_eq!(ran.code, 2, "{}", ran.err);
    assert!(ran.err.contains("pages of a5, more than 60") && ran.err.contains("--paper a3"), "{}", ran.err);
    assert_eq!(names(&folder), [""; 0]);
}

#[test]
fn a_folder_that_cannot_be_made_is_trouble() {
    let folder = folder("blocked");
    fs::write(folder.join("file"), "").unwrap();
    let ran = fed(&["sheet", "-", "-o", folder.join("file/strap.pdf").to_str().unwrap()], SOUND);
    assert_eq!(ran.code, 2, "{}", ran.err);
    assert_eq!(names(&folder), ["file"]);
}

#[test]
fn short_messages_are_a_line_each() {
    let ran = fed(&["check", "--messages", "short", "-"], &broken());
    let lines: Vec<_> = ran.err.lines().collect();
    let line = broken().lines().position(|line| line.contains("length: 26 ")).unwrap() + 1;
    assert!(lines[0].starts_with(&format!("-:{line}:13: error[bad-quantity]: ")), "{}", lines[0]);
    assert_eq!(lines[1..], ["1 error"]);
}

#[test]
fn json_messages_are_one_array() {
    let ran = fed(&["check", "--messages", "json", "-"], &broken());
    let remarks: Value = serde_json::from_str(&ran.err).unwrap();
    let [remark] = remarks.as_array().unwrap().as_slice() else { panic!("{remarks}") };
    assert_eq!((&remark["code"], &remark["level"]), (&"bad-quantity".into(), &"error".into()));
    assert!(remark["line"].is_u64() && remark["help"].is_string(), "{remark}");
    let none = fed(&["check", "--messages", "json", "-"], SOUND);
    assert_eq!(serde_json::from_str::<Value>(&none.err).unwrap(), Value::Array(Vec::new()));
}

#[test]
fn colour_as_asked_for() {
    let coloured = |arguments: &[&str], no_color: &str| {
        let mut command = festoon(&["check", "patterns/halyard.yaml"]);
        let output = command.args(arguments).env("NO_COLOR", no_color).output().unwrap();
        ran(&output).err.contains('\u{1b}')
    };
    assert!(coloured(&["--color", "always"], ""));
    assert!(coloured(&["--color", "always"], "1"), "what is asked for outweighs the environment");
    assert!(!coloured(&["--color", "never"], ""));
    assert!(!coloured(&[], "1"));
    assert!(!coloured(&[], ""), "standard error is no terminal here");
}

#[test]
fn a_reader_that_has_gone_away_is_no_error() {
    let mut command = festoon(&["measure", "--json", "patterns/eddy.yaml", "--messages", "short"]);
    let mut child = command.stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
    drop(child.stdout.take());
    let ran = ran(&child.wait_with_output().unwrap());
    assert_eq!(ran.code, 0, "{}", ran.err);
    assert!(!ran.err.contains("pipe"), "{}", ran.err);
}

#[test]
fn new_prints_a_sound_pattern_of_each_kind() {
    for kind in festoon::pattern::Kind::ALL {
        let new = run(&["new", kind.word()]);
        assert_eq!((new.code, new.err.as_str()), (0, ""), "{kind}");
        assert!(new.out.contains(&format!("\nkind: {kind} ")), "{kind}: {}", new.out);
        let check = fed(&["check", "--strict", "-"], &new.out);
        assert_eq!((check.code, check.err.as_str()), (0, ""), "{kind}");
    }
    assert_eq!(run(&["new"]).out, run(&["new", "necklace"]).out);
    let unknown = run(&["new", "neklace"]);
    assert_eq!(unknown.code, 2);
    assert!(unknown.err.contains("did you mean `necklace`?"), "{}", unknown.err);
}

#[test]
fn explain_tells_of_known_codes() {
    let known = run(&["explain", "overfull"]);
    assert_eq!(known.code, 0);
    assert!(known.out.starts_with("overfull (error)\n\n"), "{}", known.out);
    let unknown = run(&["explain", "overful"]);
    assert_eq!((unknown.code, unknown.out.as_str()), (2, ""));
    assert!(unknown.err.contains("did you mean `overfull`?"), "{}", unknown.err);
    let all = run(&["explain"]).out;
    assert_eq!(all.lines().count(), festoon::remark::Code::ALL.len());
}

#[test]
fn unknown_variants_are_guessed_at() {
    for (option, name, near) in [("--size", "lnog", "long"), ("--colourway", "duks", "dusk")] {
        let ran = run(&["measure", "patterns/saltmarsh.yaml", option, name]);
        assert_eq!((ran.code, ran.out.as_str()), (1, ""), "{option}");
        assert!(ran.err.contains(&format!("did you mean `{near}`?")), "{}", ran.err);
    }
    let none = run(&["check", "patterns/groyne.yaml", "--size", "long"]);
    assert!(none.code == 1 && none.err.contains("the pattern has no sizes"), "{}", none.err);
}

#[test]
fn variants_change_what_is_measured() {
    let finished = |more: &[&str]| {
        let ran = run(&[&["measure", "--json", "patterns/saltmarsh.yaml"], more].concat());
        let measures: Value = serde_json::from_str(&ran.out).unwrap();
        measures["strands"][0]["finished_mm"].as_f64().unwrap()
    };
    let [plain, long] = [finished(&[]), finished(&["--size", "long"])];
    assert!((long - plain - 50.8).abs() < 1e-9, "{plain} and {long}");
    assert!((finished(&["--colourway", "dusk"]) - plain).abs() < 1e-9);
}

#[test]
fn a_swap_tells_what_changes() {
    let ran = run(&["check", "patterns/slack-tide.yaml", "--swap", "foam=spray"]);
    assert_eq!(ran.code, 0, "{}", ran.err);
    assert!(ran.out.starts_with("spray in place of foam\n"), "{}", ran.out);
    assert!(ran.out.contains("now 10 spray, 10 ring, 1 stone"), "smaller beads, so more fit: {}", ran.out);
    let unknown = run(&["check", "patterns/slack-tide.yaml", "--swap", "foam=sprat"]);
    assert_eq!(unknown.code, 2);
    assert!(unknown.err.contains("did you mean `spray`?"), "{}", unknown.err);
    assert_eq!(run(&["check", "patterns/slack-tide.yaml", "--swap", "foam"]).code, 2);
}

#[test]
fn the_schema_is_json() {
    let ran = run(&["schema"]);
    assert_eq!(ran.code, 0);
    assert_eq!(serde_json::from_str::<Value>(&ran.out).unwrap(), festoon::pattern::schema());
}

#[test]
fn help_and_version() {
    assert_eq!(run(&["--help"]).code, 0);
    let version = run(&["--version"]);
    assert_eq!((version.code, version.out), (0, format!("festoon {}\n", env!("CARGO_PKG_VERSION"))));
}
