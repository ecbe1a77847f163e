//! What one piece might be sold for: a suggestion, not a valuation.
//!
//! cost = materials used + labour + overhead; wholesale = cost × the wholesale factor; retail =
//! cost × the retail factor. The usual factors are 2 and 2.5 to 3 ("wholesale = 2 × (supplies +
//! labour + overhead); retail 2.5-3 ×": a jewellery-making business article). Materials are those of
//! one piece, each article at the share of its lot that the piece takes. Every step is rounded half
//! up to a whole coin, so that the printed figures add up.

use super::Line;
use crate::design::Price;
use crate::units::Money;

/// A suggested price of one piece (a pair of earrings) and how it comes about.
#[derive(Clone, Debug, PartialEq)]
pub struct Suggestion {
    /// Cost of the materials that one piece takes.
    pub materials: Money,
    /// Hours times the rate.
    pub labour: Money,
    /// Other costs.
    pub overhead: Money,
    /// The three together.
    pub cost: Money,
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
    let cost = materials + labour + price.overhead;
    Suggestion {
        materials,
        labour,
        overhead: price.overhead,
        cost,
        wholesale: cost.times(price.wholesale),
        retail: cost.times(price.retail),
        unpriced: lines.iter().filter(|line| is_unpriced(line)).map(|line| line.id.clone()).collect(),
    }
}

/// Whether the pattern gives no price; one of nothing is a price.
fn is_unpriced(line: &Line) -> bool {
    line.buy.as_ref().is_none_or(|buy| buy.bought.is_none())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::materials::{Amount, Article, Buy};

    /// A line that costs so much.
    fn line(cost: Option<Money>) -> Line {
        let none = Amount::Count(0);
        let buy =
            Buy { lots: 1, unit: "pack", lot: Amount::Count(1), mass: None, left_over: none, used: cost, bought: cost };
        let [id, name] = ["bead", "bead"].map(str::to_owned);
        Line { article: Article::Bead(0), id, name, need: none, spare: none, from_stash: none, buy: Some(buy) }
    }

    #[test]
    fn the_published_example_of_a_price() {
        // Supplies 2, labour 3 (10 min at 18 an hour), overhead 1: cost 6, wholesale 12, retail
        // 15 to 18 (a jewellery-making business article; results of the example computed).
        let used = Some(Money::coins(200));
        let line = line(used);
        let overhead = Money::coins(100);
        let rate = Money::coins(1800);
        let price = |retail| Price { hours: 10.0 / 60.0, rate, overhead, wholesale: 2.0, retail };
        let low = suggest(&price(2.5), std::slice::from_ref(&line));
        assert_eq!(low.labour, Money::coins(300));
        assert_eq!(low.cost, Money::coins(600));
        assert_eq!(low.wholesale, Money::coins(1200));
        assert_eq!(low.retail, Money::coins(1500));
        assert_eq!(suggest(&price(3.0), &[line]).retail, Money::coins(1800));
    }

    #[test]
    fn a_price_of_nothing_is_a_price() {
        let price = Price { hours: 0.0, rate: Money::ZERO, overhead: Money::ZERO, wholesale: 2.0, retail: 2.5 };
        let unpriced = |cost: Option<Money>| suggest(&price, &[line(cost)]).unpriced;
        assert_eq!(unpriced(Some(Money::ZERO)), [] as [&str; 0]);
        assert_eq!(unpriced(None), ["bead"]);
    }
}
