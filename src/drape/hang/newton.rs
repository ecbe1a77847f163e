//! The minimum of D(H, V) by Newton's method. See [`super`] for the equation.
//!
//! The start is the catenary of the same length and ends, with V shifted for weights that are not
//! spread evenly. A step goes as far as D falls along it: D is convex, so its slope along the step
//! grows steadily and the secant rule finds where it vanishes. H stays positive: where the model's
//! minimum has too small an H, the step takes the least H allowed and the V that suits it.

use super::{Balance, CAP, ROUNDING, Scaled, TOLERANCE};
use crate::geometry::Point;

/// A step may take H down to this share of itself and no further, as D has its kinks at H = 0. A
/// tenth and a half both take more steps on chains of very uneven weights.
const NEAREST_KINK: f64 = 0.3;
/// A step ends where the slope of D along it is no steeper uphill than this share of the slope at
/// its start. A finer search costs more passes over the chain than the steps it saves.
const OVERSHOOT: f64 = 0.1;
/// Secant cuts of one step; each takes off at least a tenth.
const CUTS: u32 = 30;

/// D's gradient and second derivatives at a force.
struct DualDerivatives {
    force: Point,
    slope: Point,
    xx: f64,
    xy: f64,
    yy: f64,
}

impl DualDerivatives {
    fn at(chain: &Scaled, force: Point) -> Self {
        let mut look = Self { force, slope: chain.end * -1.0, xx: 0.0, xy: 0.0, yy: 0.0 };
        let h = force.x;
        for (length, load) in chain.links() {
            let v = force.y + load;
            let square = h * h + v * v;
            let share = length / square.sqrt();
            look.slope.x += share * h;
            look.slope.y += share * v;
            let bend = share / square;
            look.xx += bend * v * v;
            look.xy -= bend * h * v;
            look.yy += bend * h * h;
        }
        look
    }

    fn miss(&self) -> f64 {
        self.slope.length()
    }

    /// The step to the minimum of D's second-order model with H no less than `floor`.
    fn step(&self, floor: f64) -> Point {
        let determinant = self.xx * self.yy - self.xy * self.xy;
        let x = (self.xy * self.slope.y - self.yy * self.slope.x) / determinant;
        let y = (self.xy * self.slope.x - self.xx * self.slope.y) / determinant;
        let least = floor - self.force.x;
        if determinant > 0.0 && x >= least {
            Point::new(x, y)
        } else {
            Point::new(least, -(self.slope.y + self.xy * least) / self.yy)
        }
    }

    fn along(&self, step: Point) -> f64 {
        self.slope.dot(step)
    }
}

/// The balance, or the best that was found when the steps ran out: the caller checks the miss.
pub(super) fn settle(chain: &Scaled) -> Balance {
    let mut here = DualDerivatives::at(chain, start(chain));
    let mut iterations = 0;
    while iterations < CAP && here.miss() > ROUNDING {
        iterations += 1;
        let next = advance(chain, &here);
        let stalled = next.miss() > 0.5 * here.miss() && here.miss() < TOLERANCE;
        if next.miss() < here.miss() || !stalled {
            here = next;
        }
        if stalled {
            break;
        }
    }
    let Point { x: across, y: up } = here.force;
    Balance { across, up, directions: chain.directions(across, up), iterations }
}

/// One step with its line search.
fn advance(chain: &Scaled, here: &DualDerivatives) -> DualDerivatives {
    let step = here.step(NEAREST_KINK * here.force.x);
    let mut share = 1.0;
    let downhill = here.along(step);
    let mut next = DualDerivatives::at(chain, here.force + step * share);
    for _ in 0..CUTS {
        let slope = next.along(step);
        if slope <= -OVERSHOOT * downhill || next.miss() < TOLERANCE {
            break;
        }
        share *= (downhill / (downhill - slope)).clamp(0.1, 0.9);
        next = DualDerivatives::at(chain, here.force + step * share);
    }
    next
}

/// The catenary's force at the start, with V moved for weights that are not spread evenly: all
/// the way to a beam's reaction when taut, to the weight before the fold when the ends meet.
fn start(chain: &Scaled) -> Point {
    let Point { x, y } = chain.end;
    let z = catenary((1.0 - y * y).sqrt() / x);
    let tautness = 1.0 / (1.0 + z * z);
    let beam = chain.loads_along() - 1.0 + 0.5 * y / z;
    let fold = -chain.loads[chain.fold().link];
    Point::new(0.5 * x / z, beam * tautness + fold * (1.0 - tautness))
}

impl Scaled {
    /// Where the weights' centre lies along the straight chain, as a share of its length.
    fn loads_along(&self) -> f64 {
        1.0 - self.links().map(|(length, load)| length * load).sum::<f64>()
    }
}

/// The positive solution z of sinh z / z = q for q > 1, near enough for a start.
fn catenary(q: f64) -> f64 {
    let mut z = if q < 3.0 { (6.0 * (q - 1.0)).sqrt() } else { libm::log(2.0 * q) + libm::log(libm::log(2.0 * q)) };
    z = z.max(1e-9);
    for _ in 0..4 {
        let f = libm::sinh(z) - q * z;
        z = (z - f / (libm::cosh(z) - q)).max(0.5 * z);
    }
    z
}
