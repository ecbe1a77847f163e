//! A pattern's own page.

use maud::{Markup, html};

use super::english;
use super::frame::{address, clean, document};
use super::{Exhibit, Shot};

/// The page of an entry between its neighbours in the index.
#[must_use]
pub fn page(gallery: &str, entry: &Exhibit, before: Option<&Exhibit>, after: Option<&Exhibit>) -> String {
    let (first, ways) = entry.shots.split_at(entry.shots.len().min(1));
    let beads = entry.beads.iter().map(|(name, count)| [name.as_str(), count]);
    let strands = entry.strands.iter().map(|row| row.each_ref().map(String::as_str));
    let body = html! {
        main {
            nav aria-label=(english::GALLERY) { a href="../../index.html" { (clean(gallery)) } }
            div class="piece" {
                div class="head" {
                    h1 { (clean(&entry.title)) }
                    (paragraph("lead", &entry.summary))
                    (paragraph("facts", &entry.designer))
                }
                @for shot in first { div class="shot" { (picture(shot)) } }
                div class="rest" {
                    @for shot in first { p { a class="button" href=(shot.sheet()) { (english::SHEET) } } }
                    (facts(entry))
                    (table(english::BEADS, beads))
                    (table(english::STRANDS, strands))
                }
            }
            (colourways(ways))
        }
        (neighbours(before, after))
    };
    let description = entry.shots.first().map_or(entry.title.as_str(), |shot| &shot.alternative);
    document(&format!("{} · {gallery}", entry.title), description, "../../", &body)
}

/// A paragraph, where there is something to say.
fn paragraph(class: &str, text: &str) -> Markup {
    html! { @if !text.is_empty() { p class=(class) { (clean(text)) } } }
}

/// Links to the entries before and after.
fn neighbours(before: Option<&Exhibit>, after: Option<&Exhibit>) -> Markup {
    let before = before.map(|entry| (entry, english::before(&clean(&entry.title))));
    let after = after.map(|entry| (entry, english::next(&clean(&entry.title))));
    html! {
        @if before.is_some() || after.is_some() {
            footer {
                nav aria-label=(english::NEIGHBOURS) {
                    @for (entry, words) in before.iter().chain(&after) {
                        a href={ "../" (address(&entry.folder)) "/index.html" } { (words) }
                    }
                }
            }
        }
    }
}

/// A picture that leads to itself at full size.
fn picture(shot: &Shot) -> Markup {
    let (file, height) = (shot.picture(), format!("{:.0}", 800.0 / shot.proportion.ratio()));
    html! { a href=(file) { img src=(file) alt=(clean(&shot.alternative)) width="800" height=(height); } }
}

/// The other colourways with their sheets.
fn colourways(shots: &[Shot]) -> Markup {
    html! {
        @if !shots.is_empty() {
            h2 { (english::OTHER_COLOURWAYS) }
            div class="cards" { @for shot in shots { (colourway(shot)) } }
        }
    }
}

fn colourway(shot: &Shot) -> Markup {
    let name = clean(shot.name.as_deref().unwrap_or_default());
    html! {
        figure {
            (picture(shot))
            figcaption { (name) br; a href=(shot.sheet()) { (english::sheet_in(&name)) } }
        }
    }
}

fn facts(entry: &Exhibit) -> Markup {
    html! {
        dl {
            @for (name, value) in &entry.facts { dt { (clean(name)) } dd { (clean(value)) } }
            @if let Some(price) = &entry.price { dt { (english::PRICE) } dd { (clean(price)) } }
        }
    }
}

/// A table whose rows stand under the heading that their first cell is.
fn table<'a, const N: usize>((title, head): (&str, [&str; N]), rows: impl Iterator<Item = [&'a str; N]>) -> Markup {
    html! {
        table {
            caption { (title) }
            thead { tr { @for cell in head { th scope="col" { (cell) } } } }
            tbody {
                @for row in rows {
                    tr {
                        @for (at, cell) in row.into_iter().enumerate() {
                            @if at == 0 { th scope="row" { (clean(cell)) } } @else { td { (clean(cell)) } }
                        }
                    }
                }
            }
        }
    }
}
