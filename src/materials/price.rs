//! What one piece might be sold for: a suggestion, not a valuation.
//!
//! cost = materials used + labour + overhead, which may be a share of the other two; wholesale = cost ×
//! the wholesale factor; retail = cost × the retail factor, not wholesale times it. The usual factors are 2 and 2.5 to 3 ("wholesale = 2 × (supplies +
//! labour + overhead); retail 2.5-3 ×": a jewellery-making business article). Materials are those of
//! one piece, each article at the share of its lot that the piece takes. Every step is rounded half
//! up to a whole coin, so that the printed figures add up.

use super::Line;
use crate::design::{Price, Stated};
use crate::pattern::Overhead;
use crate::units::Money;

/// A suggested price of one piece (a pair of earrings) and how it comes about.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Suggestion {
    /// Cost of the materials that one piece takes.
    pub materials: Money,
    /// Hours times the rate.
    pub labour: Money,
    /// Other costs.
    pub overhead: Stated<Money>,
    /// How many hundredths of materials and labour those are, where the pattern says it so.
    pub percent: Option<f64>,
    /// The three together.
    pub cost: Money,
    /// What the cost is multiplied by for a shop, and for a wearer.
    pub factors: [Stated<f64>; 2],
    /// Suggested price for a shop.
    pub wholesale: Money,
    /// Suggested price for a wearer.
    pub retail: Money,
    /// Ids of articles whose price the pattern does not say: the suggestion leaves them out.
    pub unpriced: Vec<String>,
}

/// Suggests a price from the lines of one piece.
#[must_use]
pub fn suggest(price: &Price, lines: &[Line]) -> Suggestion {
    let materials: Money = lines.iter().filter_map(|line| line.buy.as_ref()).filter_map(|buy| buy.used).sum();
    let labour = price.rate.times(price.hours);
    let (overhead, percent) = match *price.overhead {
        Overhead::Sum(sum) => (sum, None),
        Overhead::Percent(percent) => ((materials + labour).share(percent, 100.0), Some(percent)),
    };
    let overhead = price.overhead.map(|_| overhead);
    let cost = materials + labour + *overhead;
    Suggestion {
        materials,
        labour,
        overhead,
        percent,
        cost,
        factors: [price.wholesale, price.retail],
        wholesale: cost.times(*price.wholesale),
        retail: cost.times(*price.retail),
        unpriced: lines.iter().filter(|line| is_unpriced(line)).map(|line| line.id.clone()).collect(),
    }
}

/// Whether the pattern gives no price; one of nothing is a price, and beads that are bought together have one together.
fn is_unpriced(line: &Line) -> bool {
    line.within.is_none() && line.buy.as_ref().is_none_or(|buy| buy.bought.is_none())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::nth;
    use crate::materials::{Amount, Article, Buy, SoldAs};

    /// A line that costs so much.
    fn line(cost: Option<Money>) -> Line {
        let none = Amount::Count(0);
        let buy = Buy {
            lots: 1,
            unit: SoldAs::Pack,
            lot: Amount::Count(1),
            mass: None,
            left_over: none,
            used: cost,
            bought: cost,
        };
        let (id, names) = ("bead".to_owned(), vec!["bead".to_owned()]);
        Line {
            article: Article::Bead(nth(0)),
            id,
            names,
            need: none,
            spare: none,
            in_hand: none,
            from_stash: none,
            buy: Some(buy),
            from: None,
            within: None,
        }
    }

    /// So many hours at 18 an hour.
    fn priced(hours: f64, overhead: Overhead, retail: f64) -> Price {
        let (overhead, retail) = (Stated::Stated(overhead), Stated::Stated(retail));
        Price { overhead, retail, ..Price::new(hours, Money::coins(1800)) }
    }

    /// Materials 2.00, labour 3.00 and 20 % of both, 1.00: the same as the published example with its sum.
    #[test]
    fn overhead_may_be_a_share_of_materials_and_labour() {
        let line = line(Some(Money::coins(200)));
        let shared = suggest(&priced(10.0 / 60.0, Overhead::Percent(20.0), 2.5), std::slice::from_ref(&line));
        let summed = suggest(&priced(10.0 / 60.0, Overhead::Sum(Money::coins(100)), 2.5), &[line]);
        assert_eq!((*shared.overhead, shared.percent), (Money::coins(100), Some(20.0)));
        assert_eq!(Suggestion { percent: None, ..shared }, summed);
    }

    #[test]
    fn the_published_example_of_a_price() {
        // Supplies 2, labour 3 (10 min at 18 an hour), overhead 1: cost 6, wholesale 12, retail
        // 15 to 18 (a jewellery-making business article; results of the example computed).
        let used = Some(Money::coins(200));
        let line = line(used);
        let overhead = Overhead::Sum(Money::coins(100));
        let price = |retail| priced(10.0 / 60.0, overhead, retail);
        let low = suggest(&price(2.5), std::slice::from_ref(&line));
        assert_eq!(low.labour, Money::coins(300));
        assert_eq!(low.cost, Money::coins(600));
        assert_eq!(low.wholesale, Money::coins(1200));
        assert_eq!(low.retail, Money::coins(1500));
        assert_eq!(suggest(&price(3.0), &[line]).retail, Money::coins(1800));
    }

    #[test]
    fn a_price_of_nothing_is_a_price() {
        let price = priced(0.0, Overhead::Sum(Money::ZERO), 2.5);
        let unpriced = |cost: Option<Money>| suggest(&price, &[line(cost)]).unpriced;
        assert_eq!(unpriced(Some(Money::ZERO)), [] as [&str; 0]);
        assert_eq!(unpriced(None), ["bead"]);
    }
}
