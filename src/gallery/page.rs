//! A pattern's own page.

use super::html::{address, document, escaped};
use super::{Entry, Shot};

/// The page of an entry between its neighbours in the index.
#[must_use]
pub fn page(gallery: &str, entry: &Entry, before: Option<&Entry>, after: Option<&Entry>) -> String {
    let (first, ways) = entry.shots.split_at(entry.shots.len().min(1));
    let body = format!(
        "<main>\n<nav aria-label=\"gallery\"><a href=\"../../index.html\">{}</a></nav>\n\
         <div class=\"piece\">\n<div class=\"head\">\n<h1>{}</h1>\n{}{}</div>\n{}\
         <div class=\"rest\">\n{}{}{}{}</div>\n</div>\n{}</main>\n{}",
        escaped(gallery),
        escaped(&entry.title),
        paragraph("lead", &entry.summary),
        paragraph("facts", &entry.designer),
        first.iter().map(|shot| format!("<div class=\"shot\">{}</div>\n", picture(shot))).collect::<String>(),
        first.iter().map(button).collect::<String>(),
        facts(entry),
        table("Beads", ["bead", "how many"], entry.beads.iter().map(|(name, count)| [name.as_str(), count])),
        table(
            "Strands",
            ["strand", "finished", "beads alone"],
            entry.strands.iter().map(|row| row.each_ref().map(String::as_str))
        ),
        colourways(ways),
        neighbours(before, after),
    );
    let description = entry.shots.first().map_or(entry.title.as_str(), |shot| &shot.alternative);
    document(&format!("{} · {gallery}", entry.title), description, "../../", &body)
}

/// A paragraph, where there is something to say.
fn paragraph(class: &str, text: &str) -> String {
    if text.is_empty() { String::new() } else { format!("<p class=\"{class}\">{}</p>\n", escaped(text)) }
}

/// Links to the entries before and after.
fn neighbours(before: Option<&Entry>, after: Option<&Entry>) -> String {
    let link = |(word, entry): (&str, &Entry)| {
        format!("<a href=\"../{}/index.html\">{word}: {}</a>", address(&entry.folder), escaped(&entry.title))
    };
    let both = before.map(|entry| ("Before", entry)).into_iter().chain(after.map(|entry| ("Next", entry)));
    let links: String = both.map(link).collect();
    let nav = |links: &str| format!("<footer>\n<nav aria-label=\"neighbours\">{links}</nav>\n</footer>\n");
    if links.is_empty() { links } else { nav(&links) }
}

/// A picture that leads to itself at full size.
fn picture(shot: &Shot) -> String {
    let (file, ratio) = (shot.picture(), shot.proportion.ratio());
    format!(
        "<a href=\"{file}\"><img src=\"{file}\" alt=\"{}\" width=\"800\" height=\"{:.0}\"></a>",
        escaped(&shot.alternative),
        800.0 / ratio,
    )
}

fn button(shot: &Shot) -> String {
    format!("<p><a class=\"button\" href=\"{}\">Printable sheet (PDF)</a></p>\n", shot.sheet())
}

/// The other colourways with their sheets.
fn colourways(shots: &[Shot]) -> String {
    let figure = |shot: &Shot| {
        let (picture, sheet, name) = (picture(shot), shot.sheet(), escaped(shot.name.as_deref().unwrap_or_default()));
        let link = format!("<a href=\"{sheet}\">printable sheet, {name} (PDF)</a>");
        format!("<figure>\n{picture}\n<figcaption>{name}<br>{link}</figcaption>\n</figure>\n")
    };
    let figures: String = shots.iter().map(figure).collect();
    let section = |figures: &str| format!("<h2>Other colourways</h2>\n<div class=\"cards\">\n{figures}</div>\n");
    if figures.is_empty() { figures } else { section(&figures) }
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
