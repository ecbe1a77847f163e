//! The index: every pattern as a card, with a search that needs no network.

use maud::{Markup, PreEscaped, html};

use super::english;
use super::frame::{address, clean, document};
use super::{Exhibit, SCRIPT, Shot};

/// The index page.
#[must_use]
pub fn index(title: &str, entries: &[Exhibit]) -> String {
    let count = entries.len();
    let body = html! {
        a class="skip" href="#patterns" { (english::SKIP) }
        header { h1 { (clean(title)) } (search(entries)) }
        main id="patterns" {
            p id="count" role="status" data-found=(english::found(count)) { (english::patterns(count)) }
            ul class="cards" { @for entry in entries { (card(entry)) } }
        }
        @if !entries.is_empty() { footer { p { a href="contact.pdf" { (english::ON_PAPER) } } } }
        script { (PreEscaped(SCRIPT)) }
    };
    document(title, &english::described(count), "", &body)
}

/// The search, which the script brings to light: without a script it could do nothing.
fn search(entries: &[Exhibit]) -> Markup {
    let mut kinds: Vec<_> = entries.iter().map(|entry| entry.kind.as_str()).collect();
    kinds.sort_unstable();
    kinds.dedup();
    html! {
        form id="search" role="search" hidden {
            label { (english::SEARCH) input type="search" id="words" autocomplete="off"; }
            label { (english::KIND) select id="kind" {
                option value="" { (english::ALL_KINDS) }
                @for kind in kinds { option value=(kind) { (kind) } }
            } }
        }
    }
}

fn card(entry: &Exhibit) -> Markup {
    let folder = format!("pieces/{}", address(&entry.folder));
    let facts = entry.short.iter().map(|fact| clean(fact));
    let ways = (entry.shots.len() > 1).then(|| english::colourways(entry.shots.len()));
    let facts: Vec<_> = facts.chain(ways).collect();
    html! {
        li data-kind=(entry.kind) data-words=(clean(&words(entry))) {
            a href={ (folder) "/index.html" } {
                @if let Some(shot) = entry.shots.first() { (image(&folder, shot)) }
                span class="title" { (clean(&entry.title)) }
            }
            p { (clean(&entry.summary)) }
            p class="facts" { (facts.join("\u{a0}· ")) }
            @if let Some(price) = &entry.price { p class="price" { (clean(price)) } }
        }
    }
}

/// All that a search may find, in small letters.
fn words(entry: &Exhibit) -> String {
    let beads = entry.beads.iter().map(|(name, _)| name.as_str());
    let ways = entry.shots.iter().filter_map(|shot| shot.name.as_deref());
    let head = [entry.title.as_str(), &entry.kind, &entry.summary, &entry.designer].into_iter();
    head.chain(beads).chain(ways).collect::<Vec<_>>().join(" ").to_lowercase()
}

/// The small picture with its proportion, so that the page does not jump while pictures load.
fn image(folder: &str, shot: &Shot) -> Markup {
    let height = format!("{:.0}", 400.0 / shot.proportion.ratio());
    html! {
        img src={ (folder) "/" (shot.thumbnail()) } alt=(clean(&shot.alternative)) width="400" height=(height) loading="lazy";
    }
}
