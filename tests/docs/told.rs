//! Numbers that explanations tell are those of the program's constants: each is read from the line of the source that sets it.

use std::fs;

use festoon::remark::Code;

/// A number in an explanation.
struct Tells {
    /// Of which code.
    code: &'static str,
    /// The words about it, where it is `{}`.
    words: &'static str,
    /// Where the constant stands, and its name.
    set: [&'static str; 2],
    /// Which number there, from 0, and what is told of it.
    number: (usize, fn(f64) -> f64),
}

const fn tells(code: &'static str, words: &'static str, file: &'static str, name: &'static str) -> Tells {
    Tells { code, words, set: [file, name], number: (0, |number| number) }
}

impl Tells {
    const fn which(self, which: usize, told: fn(f64) -> f64) -> Self {
        Self { number: (which, told), ..self }
    }

    /// The number as the source sets it.
    fn value(&self) -> f64 {
        let [file, name] = self.set;
        let source = fs::read_to_string(file).unwrap();
        let line = source.lines().find(|line| line.contains(&format!("const {name}:"))).unwrap();
        let numbers: Vec<f64> = numbers(line.split_once(" = ").unwrap().1);
        let (which, told) = self.number;
        told(numbers[which])
    }
}

/// The numbers of an expression in order.
fn numbers(expression: &str) -> Vec<f64> {
    let clean = expression.replace('_', "");
    let parts = clean.split(|sign: char| !sign.is_ascii_digit() && sign != '.').map(|part| part.trim_end_matches('.'));
    parts.filter_map(|part| part.parse().ok()).collect()
}

/// The ways to tell a number.
fn ways(number: f64) -> Vec<String> {
    const WORDS: [(f64, &str); 15] = [
        (0.001, "a thousandth"),
        (0.01, "a hundredth"),
        (0.05, "a twentieth"),
        (0.1, "a tenth"),
        (0.2, "a fifth"),
        (0.25, "a quarter"),
        (1.0 / 3.0, "a third"),
        (0.5, "half"),
        (0.5, "half an inch"),
        (1.25, "one and a quarter"),
        (1.5, "one and a half"),
        (3.0, "three"),
        (5.0, "five"),
        (10.0, "ten"),
        (1.0, "one"),
    ];
    let near = |one: f64| (one - number).abs() < 1e-9;
    let words = WORDS.iter().filter(|(value, _)| near(*value)).map(|(_, word)| (*word).to_owned());
    let percent = format!("{} %", (number * 1000.0).round() / 10.0);
    let thousands = (number >= 1000.0 && number.fract() == 0.0).then(|| grouped(number));
    words.chain([number.to_string(), percent]).chain(thousands).collect()
}

/// A number of at least a thousand: `20,000`.
fn grouped(number: f64) -> String {
    let text = format!("{number:.0}");
    let (thousands, rest) = text.split_at(text.len() - 3);
    format!("{thousands},{rest}")
}

/// Whether a text has words that no figures go on before or behind.
fn has(text: &str, words: &str) -> bool {
    let is_number = |sign: char| sign.is_ascii_digit() || ".,".contains(sign);
    let ends = |rest: &str| !rest.trim_start_matches(['.', ',']).starts_with(|sign: char| sign.is_ascii_digit());
    text.match_indices(words).any(|(at, _)| !text[..at].ends_with(is_number) && ends(&text[at + words.len()..]))
}

const USUAL: &str = "src/trade/usual.rs";

fn all() -> Vec<Tells> {
    vec![
        tells("bad-size", "a hole of {} of its bead", "src/design/article.rs", "FULL_HOLE"),
        tells("bad-size", "longer than {} mm", "src/design/article.rs", "LONGEST_BEAD"),
        tells("bad-size", "more than {} links", "src/pattern/bounds.rs", "MOST_LINKS"),
        tells("bare-cord", "more than {} of the finished length", "src/rules/hang.rs", "LEFT_OVER"),
        tells("beads-in-cone", "{} mm are let pass", "src/rules/cone.rs", "OUT"),
        tells("cord-tight", "{} wider than the cord", "src/rules/held.rs", "GRIPS"),
        tells("cord-too-stiff", "E = {} kN/mm^2", "src/trade/stiffness.rs", "STEEL")
            .which(0, |newtons| newtons / 1000.0),
        tells("cord-too-stiff", "the limpest that is usual, of {}:", "src/trade/stiffness.rs", "LIMPEST"),
        tells("cover-too-small", "a knot {} widths of its cord broad", USUAL, "KNOT_WIDTH"),
        tells("crimps-in-cone", "or an assumed {} mm", USUAL, "EYE"),
        tells("crimps-show", "or an assumed {} mm", USUAL, "EYE"),
        tells("drops-crowd", "{} mm are let pass", "src/rules/drops.rs", "INTO"),
        tells("ends-meet", "by less than {} of a turn", "src/rules/coil.rs", "OVERLAP"),
        tells("eye-in-cone", "or {} mm (an assumption", USUAL, "EYE"),
        tells("eye-too-small", "or an assumed {} mm", USUAL, "EYE"),
        tells("falls-off", "more than {} times the wrist", "src/rules/ring.rs", "OVER_HAND")
            .which(0, |more| 1.0 + more),
        tells("fill-short", "more than {} (an assumption)", "src/design/strand.rs", "MUCH_SHORT")
            .which(0, |mm| mm / 25.4),
        tells("heavy-piece", "more than {} g", "src/rules/load.rs", "HEAVY"),
        tells("hole-assumed", "a hole of {} mm", USUAL, "HOLE"),
        tells("hole-assumed", "or {} of its width", USUAL, "HOLE_SHARE"),
        tells("holes-astray", "must agree to {} of that distance", "src/rules/lean.rs", "LEANS"),
        tells("holes-astray", "may be {} mm (an assumption)", "src/rules/bar.rs", "ASTRAY"),
        tells("huge-bead", "more than {} mm, or", "src/rules/gross.rs", "LARGEST"),
        tells("huge-bead", "more than {} mm (common practice", "src/rules/gross.rs", "LARGEST").which(1, |mm| mm),
        tells("knot-slips", "{} broader than the hole", "src/rules/knot.rs", "HOLDS")
            .which(0, |thirds| thirds / 3.0 - 1.0),
        tells("knot-slips", "{} widths of its cord", USUAL, "KNOT_WIDTH"),
        tells("last-pack", "no more than {} of what it holds", "src/rules/packs.rs", "FEW"),
        tells("last-pack", "spare is {} of the count", "src/materials/mod.rs", "SPARE"),
        tells("look-alike", "differ by less than {}", "src/rules/legend.rs", "SIZES_APART")
            .which(0, |times| times - 1.0),
        tells("look-alike", "less than {} apart", "src/rules/legend.rs", "APART"),
        tells("no-rest", "one round about a limb, or in {} about a neck", USUAL, "COIL"),
        tells("nothing-holds", "at most {} wider than the cord", "src/rules/held.rs", "GRIPS"),
        tells("other-turns", "{} of a turn", "src/rules/coil.rs", "NEAR"),
        tells("over-head", "a head of {} mm", "src/trade/bodies.rs", "HEAD"),
        tells("part-link", "more than {} of a link", "src/rules/links.rs", "PART"),
        tells("pin-too-short", "or {} mm (an assumption", USUAL, "EYE"),
        tells("ring-loose", "more than {} mm larger", "src/rules/ring.rs", "SLACK"),
        tells("ring-tight", "more than {} mm smaller", "src/rules/ring.rs", "SLACK"),
        tells("scarce-kind", "less {} standard deviations", "src/materials/assorted.rs", "MARGIN"),
        tells("spool-too-short", "`take-up` ({}: Pieranski", USUAL, "OVERHAND"),
        tells("strands-crowd", "more than {} of the length compared", "src/rules/hang.rs", "TOUCHING"),
        tells("strands-crowd", "by more than {} mm", "src/rules/hang.rs", "INTO"),
        tells("strands-crowd", "within {} mm of one another", "src/drape/clearance.rs", "TOUCHES"),
        tells("strands-crowd", "first and last {} mm", "src/drape/clearance.rs", "ENDS"),
        tells("strands-crowd", "hangs more than {} mm lower", "src/rules/hang.rs", "LOWER"),
        tells("strands-crowd", "no more than {}, with", "src/rules/hang.rs", "ROOMY"),
        tells("strands-unsettled", "farther than {} mm, after", "src/drape/contact/rounds.rs", "STILL"),
        tells("strands-unsettled", "after {} rounds at the most", "src/drape/contact/rounds.rs", "ROUNDS"),
        tells("strands-unsettled", "or {} where stiff cord", "src/drape/contact/rounds.rs", "PRESSED"),
        tells("strands-unsettled", "more than {} parts together", "src/drape/contact/rounds.rs", "WORK")
            .which(0, |work| work / 10.0),
        tells("strands-unsettled", "in up to {} rounds", "src/drape/body/rest.rs", "ROUNDS"),
        tells("strands-unsettled", "or {} where strands have no room", "src/drape/body/rest.rs", "CROSSING"),
        tells("strands-unsettled", "farther than {} mm, or all", "src/drape/body/mod.rs", "RESTS"),
        tells("strands-unsettled", "no bead lies {} mm deep", "src/drape/body/mod.rs", "RESTS").which(1, |mm| mm),
        tells("strands-unsettled", "more than {} of a joint's", "src/drape/body/mod.rs", "RESTS")
            .which(2, |share| share),
        tells("strands-unsettled", "along their first {} mm", "src/drape/body/constraints.rs", "SHARED"),
        tells("strands-unsettled", "round a radius of {} mm", "src/drape/program.rs", "KINK"),
        tells("strands-unsettled", "more than {} mm of that", "src/drape/body/mod.rs", "SHORT"),
        tells("too-many-beads", "at most {} beads", "src/pattern/bounds.rs", "MOST_STRUNG"),
        tells("too-many-beads", "at most {} over itself", "src/pattern/bounds.rs", "MOST_IN_VARIANTS"),
        tells("too-many-beads", "At most {} findings", "src/pattern/bounds.rs", "MOST_FINDINGS"),
        tells("too-many-beads", "at most {} entries", "src/pattern/bounds.rs", "MOST_WRITTEN"),
        tells("too-short", "as 0.886 of its base: the medians of women are {}", "src/trade/bodies.rs", "NECK_TO_BASE"),
        tells("twist-bare", "more than {} of its length", "src/rules/twist.rs", "BARE"),
        tells("twist-loose", "less than {} degrees", "src/rules/twist.rs", "LOOSE"),
        tells("twist-tight", "more than {} degrees", "src/rules/twist.rs", "TIGHT"),
        tells("twist-tight", "The limit of {} degrees", "src/rules/twist.rs", "TIGHT"),
        tells("twist-slack", "{} of its length is let pass", "src/design/twist.rs", "SLACK"),
        tells("uneven-rows", "more than {} mm larger", "src/rules/ring.rs", "SLACK").which(0, |mm| 2.0 * mm),
        tells("uneven-rows", "by no more than the {} mm", "src/rules/ring.rs", "SLACK"),
        tells("unknown-material", "common glass, {} g/cm3", "src/design/assumed.rs", "GLASS"),
        tells("weak-cord", "less than {} times", "src/rules/load.rs", "MARGIN"),
    ]
}

#[test]
fn explanations_tell_the_numbers_of_the_program() {
    for one in all() {
        let text = Code::named(one.code).unwrap().explanation();
        let number = one.value();
        let ways: Vec<_> = ways(number).iter().map(|way| one.words.replace("{}", way)).collect();
        let is_told = |words: &String| has(&text.to_lowercase(), &words.to_lowercase());
        assert!(ways.iter().any(is_told), "{}: {number} is not told as {:?}", one.code, one.words);
    }
}
