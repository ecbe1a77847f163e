//! What to ask for in a shop: the sizes and stuff of beads, cords and findings, in a line.

use crate::design::{Bead, Cord, Design, Finding};
use crate::materials::Article;
use crate::pattern::{FindingKind, Shape};
use crate::units::Length;

/// What to ask for.
pub fn of(design: &Design, article: Article) -> String {
    match article {
        Article::Bead(at) => bead(&design.beads[at]),
        Article::Cord(at) => cord(&design.cords[at]),
        Article::Finding(at) => finding(&design.findings[at]),
    }
}

fn bead(bead: &Bead) -> String {
    let material = bead.material.as_ref().map(|material| format!(", {material}")).unwrap_or_default();
    format!("{}{material}", size(bead))
}

/// `6 mm round, hole 1 mm`, `5 × 3 mm rondelle, hole 1.2 mm`; across first.
pub fn size(bead: &Bead) -> String {
    let (across, along) = (bead.across.tenths(), bead.along.tenths());
    let both = bead.across != bead.along && bead.shape != Shape::Seed;
    let size = if both { format!("{} × {along}", across.trim_end_matches(" mm")) } else { across };
    format!("{size} {}, hole {}", bead.shape, bead.hole.tenths())
}

/// `wire 0.38 mm thick, breaks at 67 N`.
fn cord(cord: &Cord) -> String {
    let strength = cord.strength.map(|force| format!(", breaks at {:.0} N", force.value())).unwrap_or_default();
    format!("{} {} thick{strength}", cord.kind, cord.diameter.hundredths())
}

/// `14 mm long, inside 8 mm, wide end 9 mm, tip 1.5 mm, brass`; sizes that the finding has.
fn finding(finding: &Finding) -> String {
    let long = (finding.length > Length::ZERO).then(|| format!("{} long", finding.length.tenths()));
    let tapers = matches!(finding.kind, FindingKind::Cone | FindingKind::BeadCap);
    let only = |applies: bool, size: Length| if applies { size } else { Length::ZERO };
    let sizes = [
        ("outside", finding.outside),
        ("inside", finding.inside),
        ("wide end", only(tapers, finding.mouth)),
        ("tip", only(tapers, finding.tip)),
        ("wire", finding.wire),
        ("link", finding.link),
    ];
    let sizes = sizes.into_iter().filter(|(_, size)| *size > Length::ZERO);
    let said = sizes.map(|(name, size)| format!("{name} {}", size.hundredths()));
    let parts = long.into_iter().chain(said).chain(finding.material.clone());
    parts.collect::<Vec<_>>().join(", ")
}
