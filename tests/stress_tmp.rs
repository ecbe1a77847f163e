use festoon::drape::hang::*;
use festoon::geometry::Point;
fn rng(s: &mut u64) -> f64 {
    *s ^= *s << 13;
    *s ^= *s >> 7;
    *s ^= *s << 17;
    (*s >> 11) as f64 / (1u64 << 53) as f64
}
#[test]
fn stress() {
    let mut s = 88172645463325252u64;
    let mut worst = std::collections::BTreeMap::new();
    let mut hist = std::collections::BTreeMap::new();
    for trial in 0..20000 {
        let n = 1 + (rng(&mut s) * if trial % 10 == 0 { 400.0 } else { 30.0 }) as usize;
        let mode = trial % 6;
        let mut links: Vec<Link> = (0..n)
            .map(|_| match mode {
                0 => Link { length: 1.0, weight: 1.0, centre: 0.5 },
                1 => Link { length: 0.1 + rng(&mut s) * 10.0, weight: rng(&mut s), centre: rng(&mut s) },
                2 => Link { length: 1.0, weight: 0.001, centre: 0.5 },
                3 => Link { length: 0.5 + rng(&mut s), weight: if rng(&mut s) < 0.1 { 1.0 } else { 0.0 }, centre: 0.5 },
                4 => Link { length: 1.0, weight: if rng(&mut s) < 0.05 { 1000.0 } else { 0.001 }, centre: 0.5 },
                _ => Link { length: 1.0, weight: libm::pow(10.0, rng(&mut s) * 6.0 - 3.0), centre: rng(&mut s) },
            })
            .collect();
        if mode == 2 {
            let k = (rng(&mut s) * n as f64) as usize;
            links[k].weight = 1.0;
        }
        let total: f64 = links.iter().map(|l| l.length).sum();
        let spans = [0.0, 1e-6, 0.001, 0.01, 0.1, 0.3, 0.5, 0.8, 0.95, 0.99, 0.999, 0.99999, 0.9999999];
        let r = spans[(rng(&mut s) * 13.0) as usize];
        let ang = if trial % 3 == 0 { 0.0 } else { (rng(&mut s) - 0.5) * 3.14 };
        let end = Point::towards(ang) * (r * total);
        match solve(&links, end) {
            Ok(h) => {
                *hist.entry(h.iterations).or_insert(0) += 1;
                if h.iterations > 15 && ((ang == 0.0 && r >= 0.001 && r <= 0.99999) || mode < 2) {
                    worst.entry(h.iterations).or_insert((mode, n, r, ang, h.residual / total, h.across));
                }
            }
            Err(Unhung::TooStiff(_)) => {
                *hist.entry(1000).or_insert(0) += 1;
            }
            Err(Unhung::Weightless) => {}
            Err(e) => {
                let k = match e {
                    Unhung::Slack => 2000,
                    _ => 3000,
                };
                let c = hist.entry(k).or_insert(0);
                *c += 1;
                if *c < 12 {
                    println!("{mode} n={n} r={r} ang={ang} {e:?}");
                }
            }
        }
    }
    println!("{hist:?}\n{worst:?}");
}
