//! The index: every pattern as a card, with a search that needs no network.

use super::html::{address, document, escaped};
use super::{Entry, SCRIPT, Shot};

/// The way to the contact sheet.
const CONTACT: &str = "<footer><p><a href=\"contact.pdf\">All patterns on paper (PDF)</a></p></footer>\n";

/// The index page.
#[must_use]
pub fn index(title: &str, entries: &[Entry]) -> String {
    let cards: String = entries.iter().map(card).collect();
    let many = match entries.len() {
        1 => "1 pattern".to_owned(),
        many => format!("{many} patterns"),
    };
    let body = format!(
        "<a class=\"skip\" href=\"#patterns\">Skip to the patterns</a>\n\
         <header>\n<h1>{}</h1>\n{}</header>\n\
         <main id=\"patterns\">\n<p id=\"count\" role=\"status\">{many}</p>\n<ul class=\"cards\">\n{cards}</ul>\n</main>\n\
         {}\
         <script>\n{SCRIPT}</script>\n",
        escaped(title),
        search(entries),
        if entries.is_empty() { "" } else { CONTACT },
    );
    document(title, &format!("{many} with pictures and printable sheets."), "", &body)
}

/// The search, which the script brings to light: without a script it could do nothing.
fn search(entries: &[Entry]) -> String {
    let mut kinds: Vec<_> = entries.iter().map(|entry| entry.kind.as_str()).collect();
    kinds.sort_unstable();
    kinds.dedup();
    let choices: String = kinds
        .iter()
        .map(|kind| escaped(kind))
        .map(|kind| format!("<option value=\"{kind}\">{kind}</option>\n"))
        .collect();
    format!(
        "<form id=\"search\" role=\"search\" hidden>\n\
         <label>Search <input type=\"search\" id=\"words\" autocomplete=\"off\"></label>\n\
         <label>Kind <select id=\"kind\">\n<option value=\"\">all kinds</option>\n{choices}</select></label>\n</form>\n"
    )
}

fn card(entry: &Entry) -> String {
    let folder = format!("pieces/{}", address(&entry.folder));
    let image = entry.shots.first().map(|shot| image(&folder, shot)).unwrap_or_default();
    let facts = entry.short.iter().map(|fact| escaped(fact));
    let ways = (entry.shots.len() > 1).then(|| format!("{} colourways", entry.shots.len()));
    let facts: Vec<_> = facts.chain(ways).collect();
    let price =
        entry.price.iter().map(|price| format!("<p class=\"price\">{}</p>\n", escaped(price))).collect::<String>();
    format!(
        "<li data-kind=\"{}\" data-words=\"{}\">\n<a href=\"{folder}/index.html\">\
         {image}<span class=\"title\">{}</span></a>\n<p>{}</p>\n<p class=\"facts\">{}</p>\n{price}</li>\n",
        escaped(&entry.kind),
        escaped(&words(entry)),
        escaped(&entry.title),
        escaped(&entry.summary),
        facts.join("\u{a0}· "),
    )
}

/// All that a search may find, in small letters.
fn words(entry: &Entry) -> String {
    let beads = entry.beads.iter().map(|(name, _)| name.as_str());
    let ways = entry.shots.iter().filter_map(|shot| shot.name.as_deref());
    let head = [entry.title.as_str(), &entry.kind, &entry.summary, &entry.designer].into_iter();
    head.chain(beads).chain(ways).collect::<Vec<_>>().join(" ").to_lowercase()
}

/// The small picture with its proportion, so that the page does not jump while pictures load.
fn image(folder: &str, shot: &Shot) -> String {
    format!(
        "<img src=\"{folder}/{}\" alt=\"{}\" width=\"400\" height=\"{:.0}\" loading=\"lazy\">",
        shot.thumbnail(),
        escaped(&shot.alternative),
        400.0 / shot.proportion.ratio(),
    )
}
