//! The page itself, and the files that it loads.

use axum::response::{Html, IntoResponse, Response};
use maud::{DOCTYPE, Markup, html};

use festoon::art::Ink;
use festoon::paint::font;
use festoon::paint::mark::Weight;
use festoon::trade::paper::Paper;

use super::answer::of_kind;
use super::{Desk, Mode};

/// Scripts and styles by name.
const FILES: [(&str, &str, &str); 9] = [
    ("page.css", "text/css; charset=utf-8", include_str!("assets/page.css")),
    ("page.js", "text/javascript; charset=utf-8", include_str!("assets/page.js")),
    ("talk.js", "text/javascript; charset=utf-8", include_str!("assets/talk.js")),
    ("text.js", "text/javascript; charset=utf-8", include_str!("assets/text.js")),
    ("words.js", "text/javascript; charset=utf-8", include_str!("assets/words.js")),
    ("piece.js", "text/javascript; charset=utf-8", include_str!("assets/piece.js")),
    ("bead.js", "text/javascript; charset=utf-8", include_str!("assets/bead.js")),
    ("variant.js", "text/javascript; charset=utf-8", include_str!("assets/variant.js")),
    ("start.js", "text/javascript; charset=utf-8", include_str!("assets/start.js")),
];

/// Views by name and title.
const VIEWS: [(&str, &str); 6] = [
    ("drape", "Drape"),
    ("neck", "On the neck"),
    ("rows", "Rows"),
    ("sheet", "Sheet"),
    ("materials", "Materials"),
    ("steps", "Steps"),
];

/// A script, style or font; nothing where there is none of the name.
pub fn file(name: &str) -> Option<Response> {
    let weight = match name {
        "regular.ttf" => Some(Weight::Regular),
        "semibold.ttf" => Some(Weight::Semibold),
        _ => None,
    };
    if let Some(weight) = weight {
        return Some(of_kind("font/ttf", font::file(weight).to_vec()));
    }
    let (_, kind, text) = FILES.iter().find(|(known, ..)| *known == name)?;
    Some(of_kind(kind, *text))
}

/// The page of a desk.
pub fn page(desk: &Desk) -> Response {
    Html(document(desk).into_string()).into_response()
}

fn document(desk: &Desk) -> Markup {
    let name = desk.file.path().file_name().unwrap_or_default().to_string_lossy().into_owned();
    let can_edit = desk.mode == Mode::Design;
    html! {
        (DOCTYPE)
        html lang="en" {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta name="color-scheme" content="light dark";
                title { (name) " · festoon" }
                link rel="icon" href="data:,";
                link rel="stylesheet" href="page.css";
                script type="module" src="page.js" {}
            }
            body data-edit=[can_edit.then_some("yes")] data-name=(name)
                data-size=[desk.variant.size.as_deref()] data-colourway=[desk.variant.colourway.as_deref()] {
                (head(&name, can_edit))
                (notices())
                main id="main" {
                    (text_pane(can_edit))
                    (piece_pane(desk))
                }
                dialog id="start" aria-labelledby="start-title" {
                    h2 id="start-title" { "Begin with a pattern" }
                    p { (name) " holds no pattern yet. Choose what is nearest to the piece that you have in mind, then change it." }
                    div id="starts" {}
                    button type="button" id="start-empty" { "Begin with nothing" }
                }
                @if can_edit { (new_variants()) }
                noscript { p { "This page needs its script, which festoon serves from this machine." } }
            }
        }
    }
}

fn head(name: &str, can_edit: bool) -> Markup {
    html! {
        a class="skip" href="#views" { "Skip to the piece" }
        header {
            h1 { (name) }
            p id="state" role="status" {}
            @if can_edit { button type="button" id="save" class="strong" aria-keyshortcuts="Control+S" { "Save" } }
        }
    }
}

/// What asks for a decision: another program changed the file, or an unsaved text was kept.
fn notices() -> Markup {
    html! {
        section id="conflict" class="notice" aria-labelledby="conflict-title" hidden {
            h2 id="conflict-title" { "Another program has changed this file" }
            p { "Nothing has been overwritten. Both texts are here: which one shall stand?" }
            div class="both" {
                label { "Yours, on this page" textarea id="mine" readonly rows="10" spellcheck="false" {} }
                label { "Theirs, in the file" textarea id="theirs" readonly rows="10" spellcheck="false" {} }
            }
            button type="button" id="keep-mine" { "Save mine over theirs" }
            button type="button" id="take-theirs" { "Take theirs" }
        }
        section id="draft" class="notice" aria-labelledby="draft-title" hidden {
            h2 id="draft-title" { "A text of this pattern was not saved" }
            p { "This browser kept it when the page was last open here." }
            button type="button" id="take-draft" { "Take it up again" }
            button type="button" id="drop-draft" { "Forget it" }
        }
    }
}

fn text_pane(can_edit: bool) -> Markup {
    html! {
        section id="text-pane" aria-labelledby="text-title" {
            h2 id="text-title" class="quiet" { "Pattern" }
            div id="editor" {
                pre id="paint" aria-hidden="true" { code id="lines" {} }
                textarea id="text" aria-label="The pattern as text" aria-describedby="here" spellcheck="false" autocapitalize="off"
                    autocomplete="off" wrap="off" readonly[!can_edit] {}
                ul id="offers" role="listbox" aria-label="What may stand here" hidden {}
                div id="tip" role="tooltip" hidden {}
            }
            p id="here" class="quiet" {}
            section aria-labelledby="said-title" {
                h3 id="said-title" { "Remarks" }
                p id="summary" role="status" {}
                ol id="remarks" {}
            }
        }
    }
}

fn piece_pane(desk: &Desk) -> Markup {
    html! {
        section id="piece-pane" aria-labelledby="piece-title" {
            h2 id="piece-title" class="quiet" { "Piece" }
            div id="views" role="tablist" aria-label="Views of the piece" {
                @for (at, (name, title)) in VIEWS.iter().enumerate() {
                    button type="button" role="tab" id={ "tab-" (name) } aria-controls="panel" data-view=(name)
                        aria-selected=(at == 0) tabindex=[(at > 0).then_some("-1")] { (title) }
                }
            }
            (choices(desk))
            div id="panel" role="tabpanel" aria-labelledby="tab-drape" tabindex="0" {
                div id="stage" role="group" aria-roledescription="drawing" aria-label="Drape" tabindex="0" aria-describedby="stage-help" {
                    div id="drawing" {}
                }
                p id="stage-help" class="quiet" { "Click a bead, or walk along them with the arrow keys." }
                div id="other" hidden {}
                nav id="pages" aria-label="Pages" hidden {
                    button type="button" id="before" { "Page before" }
                    span id="page-number" role="status" {}
                    button type="button" id="after" { "Next page" }
                }
            }
            p id="stale" role="status" hidden {}
            section id="bead" aria-labelledby="bead-title" hidden {}
            div id="facts" {}
            details id="strung" { summary { "Everything strung, as a table" } div class="wide" tabindex="0" role="region" aria-label="Everything strung" {} }
            details id="keys" { summary { "What the keys of a pattern do" } dl {} }
        }
    }
}

/// The sizes or colourways to choose from, and a button that adds one.
fn variants(of: &str, title: &str, id: &str, add: &str, can_edit: bool) -> Markup {
    html! {
        div class="of" data-of=(of) hidden[!can_edit] {
            label { (title) select id=(id) { option value="" { "as written" } } }
            @if can_edit { button type="button" id={ "add-" (id) } aria-haspopup="dialog" aria-label=(add) title=(add) { "+" } }
        }
    }
}

/// The dialogs that add a size and a colourway.
fn new_variants() -> Markup {
    html! {
        dialog id="new-size" class="small" aria-labelledby="new-size-title" {
            form {
                h2 id="new-size-title" { "Add a size" }
                label { "Its name" input id="size-name" required autocomplete="off" placeholder="long"; }
                fieldset {
                    legend { "It differs by" }
                    label class="choice" { input type="radio" name="size-by" value="change" checked; "how much longer or shorter each strand is" }
                    label class="choice" id="by-measure" { input type="radio" name="size-by" value="measure"; span { "the wearer’s " span id="measure" {} } }
                }
                label { "How much" input id="size-value" required autocomplete="off" pattern=".*[0-9].*" title="A length with its unit, like 25 mm or 1 in"; }
                (ending("Add the size"))
            }
        }
        dialog id="new-colourway" class="small" aria-labelledby="new-colourway-title" {
            form {
                h2 id="new-colourway-title" { "Add a colourway" }
                label { "Its name" input id="way-name" required autocomplete="off" placeholder="dusk"; }
                label { "A bead that changes" select id="way-bead" {} }
                label { "Its colour there" input id="way-colour" type="color"; }
                p class="quiet" { "Choose it under Colours: what you change then changes there alone." }
                (ending("Add the colourway"))
            }
        }
    }
}

fn ending(add: &str) -> Markup {
    html! { div class="acts" { button type="submit" class="strong" { (add) } button type="button" data-close { "Cancel" } } }
}

fn choices(desk: &Desk) -> Markup {
    let can_edit = desk.mode == Mode::Design;
    html! {
        form id="choices" aria-label="How the piece is shown" {
            (variants("sizes", "Size", "size", "Add a size", can_edit))
            (variants("colourways", "Colours", "colourway", "Add a colourway", can_edit))
            label { "Ink" select id="ink" { @for ink in Ink::ALL { option value=(ink.word()) { (ink.word()) } } } }
            label { "Paper" select id="paper" {
                @for paper in Paper::ALL { option value=(paper.word()) selected[*paper == desk.paper] { (paper.word()) } }
            } }
            div class="takes" role="group" aria-label="Download" {
                @for (what, word) in [("pdf", "PDF"), ("png", "PNG"), ("svg", "SVG"), ("picture", "Picture")] {
                    button type="button" data-take=(what) { (word) }
                }
            }
        }
    }
}
