//! A piece that goes round more than once, or in several rows, seen from the front and from a little above, so that
//! its turns or rows show one above another: a parallel projection, to scale across the page.
//!
//! Of a place the limb's axis goes up the page, shortened by the cosine of how far one looks down; the ring's depth goes
//! up by the sine of that.

use crate::design::{Part, Strand};
use crate::drape::{Coil, Hung, Joint, Seat, Waypoint, on_way};
use crate::geometry::{Point, Point3};
use crate::paint::mark::Mark;
use crate::units::Length;

/// How far one looks down on the coil, in degrees: its rings are then seen about half as deep as they are broad.
const DOWN: f64 = 30.0;

/// A place or direction as it is seen: across and up the page, and towards who looks.
fn seen(Point3 { x, y, z }: Point3) -> Point3 {
    let (sine, cosine) = libm::sincos(DOWN.to_radians());
    Point3::new(x, z * cosine + y * sine, z * sine - y * cosine)
}

/// Something so high on a limb, as it is seen.
pub fn raised(at: Point, height: f64) -> Point {
    seen(Point3::new(at.x, at.y, height)).front()
}

/// Marks of what lies across the back of a ring, as high as they are seen.
pub fn from_above(mark: Mark) -> Mark {
    let high = libm::cos(DOWN.to_radians());
    match mark {
        Mark::Stamp { symbol, at, angle, scale, along } => {
            Mark::Stamp { symbol, at, angle, scale: scale * high, along: along / high }
        }
        held => held.map_inner(|marks| marks.into_iter().map(from_above).collect()),
    }
}

/// A row that goes once round so high on a limb, as it is seen.
pub fn level(row: &Hung, height: f64) -> Hung {
    let seat = |seat: &Seat| {
        let at = seen(Point3::new(seat.centre.x, seat.centre.y, height));
        let along = seen(Point3::new(libm::cos(seat.angle), libm::sin(seat.angle), 0.0));
        Seat { centre: at.front(), angle: along.front().angle(), near: at.z, toward: along.z, ..*seat }
    };
    Hung {
        ends: row.ends.map(|end| raised(end, height)),
        joints: row.joints.iter().map(|joint| Joint { at: raised(joint.at, height), ..*joint }).collect(),
        seats: row.seats.iter().map(seat).collect(),
        ..row.clone()
    }
}

/// A coil as it is seen.
pub struct Seen<'a> {
    coil: &'a Coil,
}

impl<'a> Seen<'a> {
    /// Looks at a coil.
    pub const fn new(coil: &'a Coil) -> Self {
        Self { coil }
    }

    fn at(&self, station: f64) -> Option<(Point3, Point3)> {
        let (at, along) = on_way(&self.coil.way, station)?;
        Some((seen(at), seen(along)))
    }

    /// The strand along the coil, of which `laid` is how it lies straight.
    pub fn strand(&self, strand: &Strand, laid: &Hung) -> Hung {
        let length = strand.finished.value();
        let is_strung = |spot: &&Waypoint| spot.station <= length + 1e-9;
        let joint = |spot: &Waypoint| Joint { station: spot.station, at: seen(spot.at).front() };
        let joints: Vec<_> = self.coil.way.iter().filter(is_strung).map(joint).collect();
        let ends = [joints.first(), joints.last()].map(|joint| joint.map_or(Point::ORIGIN, |joint| joint.at));
        let seat = |seat: &Seat| {
            let (at, along) = self.at(seat.station)?;
            Some(Seat { centre: at.front(), angle: along.front().angle(), near: at.z, toward: along.z, ..*seat })
        };
        Hung { ends, joints, seats: laid.seats.iter().filter_map(seat).collect(), ..laid.clone() }
    }

    /// The way of what closes it, from the strand's last end on to its first.
    pub fn closing(&self, strand: &Strand) -> Vec<Point> {
        let from = strand.finished.value() - 1e-9;
        self.coil.way.iter().filter(|spot| spot.station >= from).map(|spot| seen(spot.at).front()).collect()
    }
}

/// Parts of a closure as long as they are seen on a way that is so much shorter than they are.
pub fn shortened(parts: &[Part], share: f64) -> Vec<Part> {
    parts.iter().map(|part| Part { reach: Length::mm(part.reach.value() * share), ..part.clone() }).collect()
}
