//! A pattern's own page.

use super::Entry;
use super::html::{address, document, escaped};

/// The page of an entry between its neighbours in the index.
#[must_use]
pub fn page(gallery: &str, entry: &Entry, before: Option<&Entry>, after: Option<&Entry>) -> String {
    let summary = if entry.summary.is_empty() {
        String::new()
    } else {
        format!("<p class=\"lead\">{}</p>\n", escaped(&entry.summary))
    };
    let designer = if entry.designer.is_empty() {
        String::new()
    } else {
        format!("<p class=\"facts\">{}</p>\n", escaped(&entry.designer))
    };
    let body = format!(
        "<nav aria-label=\"gallery\"><a href=\"../../index.html\">{}</a>{}{}</nav>\n\
         <main>\n<h1>{}</h1>\n{summary}{designer}<div class=\"piece\">\n<div class=\"shots\">\n{}</div>\n<div>\n{}{}{}</div>\n</div>\n</main>\n",
        escaped(gallery),
        neighbour("Before", before),
        neighbour("Next", after),
        escaped(&entry.title),
        entry.shots.iter().map(figure).collect::<String>(),
        facts(entry),
        table("Beads", ["bead", "how many"], entry.beads.iter().map(|(name, count)| [name.as_str(), count])),
        table(
            "Strands",
            ["strand", "finished", "beads alone"],
            entry.strands.iter().map(|row| row.each_ref().map(String::as_str))
        ),
    );
    let description = entry.shots.first().map_or(entry.title.as_str(), |shot| &shot.alternative);
    document(&format!("{} · {gallery}", entry.title), description, "../../", &body)
}

fn neighbour(word: &str, entry: Option<&Entry>) -> String {
    let link = |entry: &Entry| {
        format!(" <a href=\"../{}/index.html\">{word}: {}</a>", address(&entry.folder), escaped(&entry.title))
    };
    entry.map(link).unwrap_or_default()
}

fn figure(shot: &super::Shot) -> String {
    let name = escaped(shot.name.as_deref().unwrap_or("as designed"));
    format!(
        "<figure>\n<img src=\"{}\" alt=\"{}\">\n<figcaption>{name} · <a href=\"{}\">printable sheet, {name} (PDF)</a></figcaption>\n</figure>\n",
        shot.picture(),
        escaped(&shot.alternative),
        shot.sheet(),
    )
}

fn facts(entry: &Entry) -> String {
    let row = |name: &str, value: &str| format!("<dt>{}</dt><dd>{}</dd>\n", escaped(name), escaped(value));
    let facts: String = entry.facts.iter().map(|(name, value)| row(name, value)).collect();
    let price = entry.price.as_ref().map(|price| row("suggested price", price)).unwrap_or_default();
    format!("<dl>\n{facts}{price}</dl>\n")
}

fn table<'a, const N: usize>(title: &str, head: [&str; N], rows: impl Iterator<Item = [&'a str; N]>) -> String {
    let head: String = head.iter().map(|cell| format!("<th scope=\"col\">{cell}</th>")).collect();
    let rows: String = rows.map(|cells| row(&cells)).collect();
    format!("<table>\n<caption>{title}</caption>\n<thead><tr>{head}</tr></thead>\n<tbody>\n{rows}</tbody>\n</table>\n")
}

/// A row under the heading that its first cell is.
fn row(cells: &[&str]) -> String {
    let cell = |(at, cell): (usize, &&str)| {
        let cell = escaped(cell);
        if at == 0 { format!("<th scope=\"row\">{cell}</th>") } else { format!("<td>{cell}</td>") }
    };
    format!("<tr>{}</tr>\n", cells.iter().enumerate().map(cell).collect::<String>())
}
