//! Parts of the page that are made from a piece: facts, tables, steps.

use std::collections::BTreeMap;

use maud::{Markup, html};

use festoon::Piece;
use festoon::bench::{Of, Thing};
use festoon::design::Design;
use festoon::english::{assumed, list};
use festoon::materials::render::words::{amount, in_currency, is_nothing, left, left_over, lots, needed, said};
use festoon::materials::{Line, Materials, Order, materials};
use festoon::paint::mark::Rgb;
use festoon::sheet::{self, english};
use festoon::steps::english::{cautions, told_as_hung, tools};
use festoon::units::{Length, UnitStyle};

/// The facts of a piece, its strands, and its beads with their letters and counts.
pub fn facts(piece: &Piece) -> Markup {
    let units = piece.telling.units;
    html! {
        dl class="facts" {
            @for fact in sheet::facts(piece) { div { dt { (english::named(&fact)) } dd { (english::fact(&fact, units)) } } }
        }
        (strands(&piece.design, units))
        (beads(piece))
    }
}

fn strands(design: &Design, units: UnitStyle) -> Markup {
    html! {
        div class="wide" tabindex="0" role="region" aria-label="Strands" {
            table {
                caption { "Strands" }
                thead { tr { th scope="col" { "strand" } th scope="col" { "finished" } th scope="col" { "beads run" }
                    th scope="col" { "bare" } th scope="col" { "cut" } th scope="col" { "beads" } } }
                tbody {
                    @for strand in &design.strands {
                        tr {
                            th scope="row" { (strand.name) }
                            @for length in [strand.finished, strand.beaded(), strand.bare(), strand.cut()] { td { (units.ruler(length)) } }
                            td { (strand.counts(design).iter().sum::<u32>()) }
                        }
                    }
                }
            }
        }
    }
}

fn beads(piece: &Piece) -> Markup {
    let design = &piece.design;
    html! {
        div class="wide" tabindex="0" role="region" aria-label="Beads" {
            table {
                caption { "Beads" }
                thead { tr { th scope="col" { "letter" } th scope="col" { "bead" } th scope="col" { "size" } th scope="col" { "how many" } } }
                tbody {
                    @for ((at, bead), count) in design.beads.entries().zip(design.counts()) {
                        tr {
                            td { (swatch(piece.palette.bead(at).colour)) " " (bead.letter) }
                            th scope="row" { (bead.name) }
                            td { (sheet::bead_size(bead)) }
                            td { (u64::from(count) * u64::from(design.copies)) }
                        }
                    }
                }
            }
        }
    }
}

fn swatch(colour: Rgb) -> Markup {
    html! {
        svg class="swatch" viewBox="0 0 10 10" aria-hidden="true" { circle cx="5" cy="5" r="4.6" fill=(colour.hex()) {} }
    }
}

/// Everything strung, run by run: what the drawing shows, in words.
pub fn strung(piece: &Piece, things: &[Thing]) -> Markup {
    let design = &piece.design;
    let runs = things.chunk_by(|one, next| (one.strand, one.of, one.place) == (next.strand, next.of, next.place));
    html! {
        table {
            caption { "Everything strung, in order" }
            thead { tr { th scope="col" { "strand" } th scope="col" { "from" } th scope="col" { "how many" } th scope="col" { "what" } } }
            tbody {
                @for run in runs {
                    @if let Some(first) = run.first() {
                        tr {
                            td { (design.strands[first.strand].name) }
                            td { (piece.telling.units.ruler(Length::mm(first.station))) }
                            td { (run.len()) }
                            td { (name(design, first.of)) }
                        }
                    }
                }
            }
        }
    }
}

fn name(design: &Design, of: Of) -> &str {
    match of {
        Of::Bead(bead) => &design.beads[bead].name,
        Of::Finding(finding) => &design.findings[finding].name,
        Of::Knot => "knot",
    }
}

/// What the pieces use of each article costs, by id, with the currency.
pub fn costs(piece: &Piece) -> BTreeMap<String, String> {
    let materials = materials(&piece.design, &Order::default());
    let currency = in_currency(piece.telling.currency.as_ref());
    let cost = |line: &Line| Some((line.id.clone(), format!("{}{currency}", line.buy.as_ref()?.used?)));
    materials.lines.iter().filter_map(cost).collect()
}

/// What to buy, with prices.
pub fn to_buy(piece: &Piece) -> Markup {
    let materials = materials(&piece.design, &Order::default());
    let currency = piece.telling.currency.clone().unwrap_or_default();
    html! {
        div class="wide" tabindex="0" role="region" aria-label="Materials" {
            table {
                caption { "Materials" @if !currency.is_empty() { ", prices in " (currency) } }
                thead { tr { th scope="col" { "what" } th scope="col" { "ask for" } th scope="col" { "need" } th scope="col" { "spare" }
                    th scope="col" { "buy" } th scope="col" { "left over" } th scope="col" { "used" } th scope="col" { "costs" } } }
                tbody { @for line in &materials.lines { (row(piece, &materials, line)) } }
                tfoot { tr { th scope="row" colspan="6" { "together" } td { (materials.used()) } td { (materials.bought()) } } }
            }
        }
        (price(&materials))
    }
}

fn row(piece: &Piece, materials: &Materials, line: &Line) -> Markup {
    let units = piece.telling.units;
    let buy = line.buy.as_ref();
    html! {
        tr {
            th scope="row" { (list(&line.names)) }
            td { (sheet::asked_for(&piece.design, line.article, units)) }
            td { (needed(materials, line, units)) }
            td { @if !is_nothing(line.spare) { (amount(line.spare, units)) } }
            td { @match (buy, &line.within) {
                (Some(buy), _) => { (lots(line, buy, units)) }
                (None, Some(within)) => { "in " (within.name) }
                (None, None) => { "not said" }
            } }
            td { @match (buy, &line.within) {
                (_, Some(within)) => { (left(within)) }
                (Some(buy), None) => { (left_over(materials, line, buy, units)) }
                (None, None) => {}
            } }
            td { (said(buy.and_then(|buy| buy.used))) }
            td { (said(buy.and_then(|buy| buy.bought))) }
        }
    }
}

/// The suggested price and what it is made of.
fn price(materials: &Materials) -> Markup {
    html! {
        @if let Some(price) = &materials.suggestion {
            h3 { "Suggested price" }
            dl class="facts" {
                div { dt { "materials used" } dd { (price.materials) } }
                div { dt { "labour" } dd { (price.labour) } }
                div { dt { "overhead" (assumed(price.overhead.is_assumed())) } dd { (*price.overhead) } }
                div { dt { "for a shop" (assumed(price.factors[0].is_assumed())) } dd { (price.wholesale) } }
                div { dt { "for a wearer" (assumed(price.factors[1].is_assumed())) } dd { (price.retail) } }
            }
        }
    }
}

/// Tools, cautions and steps.
pub fn making(piece: &Piece) -> Markup {
    let design = &piece.design;
    html! {
        h3 { "Tools" }
        ul { @for tool in tools(design, piece.telling.units) { li { (tool) } } }
        h3 { "Take care" }
        ul { @for caution in cautions(design) { li { strong { (caution.title) } " " (caution.text) } } }
        h3 { "Steps" }
        ol class="steps" {
            @for step in told_as_hung(design, &piece.drape, piece.telling.units) {
                li {
                    h4 { (step.title) }
                    p { (step.text) }
                    @if let Some(check) = step.check { p class="check" { "Check: " (check) } }
                }
            }
        }
    }
}
