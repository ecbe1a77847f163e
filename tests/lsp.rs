//! The language server as an editor meets it, by a scripted client.

#![allow(clippy::unwrap_used, reason = "a test that cannot run the program fails")]

use std::fs;
use std::io::{BufRead, BufReader, Read, Write};
use std::path::Path;
use std::process::{Child, ChildStdout, Command, Stdio};

use serde_json::{Value, json};

const URI: &str = "file:///piece.yaml";
const TEXT: &str = include_str!("../src/cli/new/strap.yaml");

struct Editor {
    program: Child,
    from: BufReader<ChildStdout>,
    number: u64,
}

impl Editor {
    fn new() -> Self {
        let mut program = Command::new(env!("CARGO_BIN_EXE_festoon"));
        let mut program = program.arg("lsp").stdin(Stdio::piped()).stdout(Stdio::piped()).spawn().unwrap();
        let from = BufReader::new(program.stdout.take().unwrap());
        let mut editor = Self { program, from, number: 0 };
        let about = editor.ask("initialize", json!({ "capabilities": {} }));
        for provider in ["completionProvider", "hoverProvider", "definitionProvider", "codeActionProvider"] {
            assert!(!about["capabilities"][provider].is_null(), "{provider}: {about}");
        }
        editor.tell("initialized", json!({}));
        editor
    }

    fn send(&mut self, message: &Value) {
        let text = message.to_string();
        let to = self.program.stdin.as_mut().unwrap();
        write!(to, "Content-Length: {}\r\n\r\n{text}", text.len()).unwrap();
        to.flush().unwrap();
    }

    fn tell(&mut self, method: &str, params: Value) {
        self.send(&json!({ "jsonrpc": "2.0", "method": method, "params": params }));
    }

    fn hear(&mut self) -> Value {
        let mut length = 0;
        loop {
            let mut line = String::new();
            assert!(self.from.read_line(&mut line).unwrap() > 0, "the server has gone away");
            match line.trim().strip_prefix("Content-Length: ") {
                Some(number) => length = number.parse().unwrap(),
                None if line.trim().is_empty() => break,
                None => {}
            }
        }
        let mut bytes = vec![0; length];
        self.from.read_exact(&mut bytes).unwrap();
        serde_json::from_slice(&bytes).unwrap()
    }

    fn answer(&mut self, method: &str, params: Value) -> Value {
        self.number += 1;
        self.send(&json!({ "jsonrpc": "2.0", "id": self.number, "method": method, "params": params }));
        let answer = self.hear();
        assert_eq!(answer["id"], json!(self.number), "{answer}");
        answer
    }

    fn ask(&mut self, method: &str, params: Value) -> Value {
        self.answer(method, params)["result"].clone()
    }

    /// Opens a text; says what is wrong with it.
    fn open(&mut self, text: &str) -> Vec<Value> {
        self.open_at(URI, text)
    }

    fn open_at(&mut self, uri: &str, text: &str) -> Vec<Value> {
        self.tell(
            "textDocument/didOpen",
            json!({ "textDocument": { "uri": uri, "languageId": "yaml", "version": 1, "text": text } }),
        );
        self.diagnostics()
    }

    fn change(&mut self, text: &str) -> Vec<Value> {
        self.tell(
            "textDocument/didChange",
            json!({ "textDocument": { "uri": URI, "version": 2 }, "contentChanges": [{ "text": text }] }),
        );
        self.diagnostics()
    }

    fn diagnostics(&mut self) -> Vec<Value> {
        let told = self.hear();
        assert_eq!(told["method"], json!("textDocument/publishDiagnostics"));
        told["params"]["diagnostics"].as_array().unwrap().clone()
    }

    fn at(&mut self, method: &str, text: &str, place: usize) -> Value {
        self.in_file(URI, method, text, place)
    }

    fn in_file(&mut self, uri: &str, method: &str, text: &str, place: usize) -> Value {
        let position = position(text, place);
        self.ask(method, json!({ "textDocument": { "uri": uri }, "position": position }))
    }
}

impl Drop for Editor {
    fn drop(&mut self) {
        let _ = self.program.kill();
        let _ = self.program.wait();
    }
}

/// A byte as the protocol counts: lines, and UTF-16 code units in a line.
fn position(text: &str, at: usize) -> Value {
    let before = &text[..at];
    let line = before.rfind('\n').map_or(0, |at| at + 1);
    json!({ "line": before.matches('\n').count(), "character": before[line..].encode_utf16().count() })
}

#[test]
fn what_is_wrong_is_told_as_it_is_typed_and_mended() {
    let mut editor = Editor::new();
    assert_eq!(editor.open(TEXT), Vec::<Value>::new(), "a sound pattern");
    let spoilt = format!("# ½ 𝄞\n{}", TEXT.replacen("kind: strap", "kind: starp", 1));
    let told = editor.change(&spoilt);
    let start = spoilt.find("starp").unwrap();
    assert_eq!(told.len(), 1, "{told:?}");
    assert_eq!((&told[0]["code"], &told[0]["severity"]), (&json!("unknown-word"), &json!(1)));
    let range = json!({ "start": position(&spoilt, start), "end": position(&spoilt, start + 5) });
    assert_eq!(told[0]["range"], range);
    let actions = editor.ask(
        "textDocument/codeAction",
        json!({ "textDocument": { "uri": URI }, "range": range, "context": { "diagnostics": told } }),
    );
    assert_eq!(actions[0]["edit"]["changes"][URI], json!([{ "range": range, "newText": "strap" }]), "{actions}");
    assert_eq!(editor.change(TEXT), Vec::<Value>::new());
    editor.tell("textDocument/didClose", json!({ "textDocument": { "uri": URI } }));
    assert_eq!(editor.diagnostics(), Vec::<Value>::new(), "a closed document has none");
}

#[test]
fn what_may_stand_what_it_means_and_where_it_is_defined() {
    let mut editor = Editor::new();
    editor.open(TEXT);
    let offers = editor.at("textDocument/completion", TEXT, TEXT.find("kind: strap").unwrap() + 6);
    let labels: Vec<_> = offers.as_array().unwrap().iter().map(|offer| offer["label"].as_str().unwrap()).collect();
    assert!(labels.contains(&"necklace") && labels.contains(&"earrings"), "{labels:?}");
    let told = editor.at("textDocument/hover", TEXT, TEXT.find("allowance:").unwrap() + 3);
    assert!(told["contents"]["value"].as_str().unwrap().contains("Extra cord"), "{told}");
    let cord = TEXT.find("    cord: ").unwrap() + "    cord: ".len();
    let id: String = TEXT[cord..].chars().take_while(|sign| sign.is_alphanumeric() || *sign == '-').collect();
    let defined = editor.at("textDocument/definition", TEXT, cord + 1);
    let definition = TEXT.find(&format!("  {id}:")).unwrap() + 2;
    assert_eq!(defined["range"]["start"], position(TEXT, definition), "{defined}");
    assert_eq!(editor.at("textDocument/definition", TEXT, 0), Value::Null, "a note is defined nowhere");
}

#[test]
fn shelves_are_read_beside_the_file_that_an_address_names() {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("lsp shelf");
    fs::create_dir_all(folder.join("shelf")).unwrap();
    let (ebb, tide) = (include_str!("../patterns/ebb.yaml"), include_str!("../patterns/shelf/tide.yaml"));
    fs::write(folder.join("shelf/tide.yaml"), tide).unwrap();
    let address = |name: &str| format!("file://{}/{name}", folder.display().to_string().replace(' ', "%20"));
    let uri = address("ebb.yaml");
    let mut editor = Editor::new();
    let told = editor.open_at(&uri, ebb);
    assert!(told.iter().all(|told| told["severity"] != json!(1)), "{told:?}");
    let wave = ebb.find("wave]").unwrap();
    let meaning = editor.in_file(&uri, "textDocument/hover", ebb, wave);
    assert!(meaning["contents"]["value"].as_str().unwrap().contains("tide blue cube"), "{meaning}");
    let defined = editor.in_file(&uri, "textDocument/definition", ebb, wave);
    let there = position(tide, tide.find("wave:").unwrap());
    assert_eq!((&defined["uri"], &defined["range"]["start"]), (&json!(address("shelf/tide.yaml")), &there));
    let offers = editor.in_file(&uri, "textDocument/completion", ebb, wave);
    assert!(offers.as_array().unwrap().iter().any(|offer| offer["label"] == json!("straw")), "{offers}");
    // What is wrong on the shelf stands nowhere in this file.
    fs::write(folder.join("shelf/tide.yaml"), tide.replace("shape: cube", "shape: cueb")).unwrap();
    let length = u64::try_from(ebb.lines().count()).unwrap();
    for told in editor.open_at(&uri, ebb) {
        assert_ne!(told["code"], json!("unknown-word"), "{told}");
        assert!(told["range"]["end"]["line"].as_u64().unwrap() <= length, "{told}");
    }
}

#[test]
fn what_it_does_not_know_is_refused_and_it_ends_when_told() {
    let mut editor = Editor::new();
    assert_eq!(editor.answer("textDocument/unheard", json!({}))["error"]["code"], json!(-32601));
    assert_eq!(editor.answer("textDocument/hover", json!({ "no": 1 }))["error"]["code"], json!(-32602));
    let nowhere = json!({ "textDocument": { "uri": "file:///other.yaml" }, "position": { "line": 9, "character": 9 } });
    assert_eq!(editor.ask("textDocument/hover", nowhere), Value::Null);
    assert_eq!(editor.ask("shutdown", Value::Null), Value::Null);
    editor.tell("exit", Value::Null);
    assert!(editor.program.wait().unwrap().success());
}
