//! Whether the factors of the price leave a shop anything.

use crate::design::{Design, Price};
use crate::remark::Remark;
use crate::remark::said::buying::Buying;

/// A remark where a shop would pay as much as a wearer, or more.
pub fn check(design: &Design) -> Vec<Remark> {
    let price = design.price.iter().filter(|price| *price.retail <= *price.wholesale);
    let remark = |price: &Price| {
        let Price { wholesale, retail, place, .. } = *price;
        Remark::new(Buying::RetailFactor { wholesale: *wholesale, retail: *retail }).at(place)
    };
    price.map(remark).collect()
}
