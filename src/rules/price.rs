//! Whether the factors of the price leave a shop anything.

use crate::design::Design;
use crate::remark::{Code, Remark};

/// A remark where a shop would pay as much as a wearer, or more.
pub fn check(design: &Design) -> Vec<Remark> {
    let price = design.price.iter().filter(|price| price.retail <= price.wholesale);
    let remark = |price: &crate::design::Price| {
        let headline = format!("a shop pays {} × cost and sells for {} × cost", price.wholesale, price.retail);
        let help =
            "both factors multiply the cost, so that retail is the larger: keystone is `wholesale: 2, retail: 4`";
        Remark::words(Code::RetailFactor, headline).at(price.place).helping(help)
    };
    price.map(remark).collect()
}
