//! The codes of all remarks, how grave each is, and its explanation at length.

use super::declare::codes;

impl Code {
    /// Why it is said: the first sentence of its explanation.
    #[must_use]
    pub fn reason(self) -> &'static str {
        let text = self.explanation();
        let ends =
            text.match_indices(". ").find(|(at, _)| text[at + 2..].starts_with(|c: char| c.is_uppercase() || c == '`'));
        ends.map_or(text, |(at, _)| &text[..=at])
    }

    /// Whether it is about a part of the piece alone, so that nothing that is wrong elsewhere excuses it.
    #[must_use]
    pub const fn is_local(self) -> bool {
        !matches!(self, Self::TooShort | Self::Unhitched | Self::NoRest)
    }
}

codes! {
    Yaml = "yaml", Error,
        "A pattern is read by its signs: colons behind keys, spaces before lines, brackets and quotes in pairs; here \
         they do not fit together. It may be a bracket that does not close, a tab in the indentation, the same key \
         twice, nesting beyond any pattern, or repeated parts that swell. What else is wrong is told as if the slip \
         were mended, or without the part that nobody can read. Patterns are YAML files.";
    BareColour = "bare-colour", Error,
        "A colour stands in quotes: \"#5d7f5b\". Without them `#` begins a comment, and the colour is not read at all.";
    NoShelf = "no-shelf", Error,
        "A shelf holds the beads, cords and findings of several patterns, and this one cannot be used. \
         `shelf:` names YAML files beside the pattern, below its folder, or `shelf.yaml` in a folder above it: so that a \
         pattern from elsewhere reads nothing else on a machine, any other file must be named on the command line with \
         `--shelf`. A shelf holds no pattern, and is read as a pattern is: a text of at most 4 MiB in a file that ends.";
    TwoCurrencies = "two-currencies", Error,
        "Prices in two currencies cannot be added up. \
         The pattern says `currency:`, else the first of its shelves that does, and a price that the piece needs stands \
         on a shelf that says another. festoon knows no rates of exchange.";
    NotText = "not-text", Error,
        "A pattern is a text file in UTF-8 of at most 4 MiB. This one is not.";
    UnknownKey = "unknown-key", Error,
        "An unknown key is not guessed at: a typing slip would silently lose an instruction. \
         The pattern language has no such key in this place.";
    MissingKey = "missing-key", Error,
        "The piece cannot be made without it. \
         Something that the piece cannot be made without is not written.";
    WrongKind = "wrong-kind", Error,
        "A list stands where a single value is meant, or the other way round.";
    UnknownWord = "unknown-word", Error,
        "Here stands one word of a fixed list. \
         Some keys take one word from a fixed list (shape, finish, kind, settle). This word is \
         not on the list.";
    BadQuantity = "bad-quantity", Error,
        "A quantity is a number with its unit, as a bare number could be inches or millimetres, and a colour is six \
         hex digits. This length, mass, force, price, time, share, count or colour is not written as one.";
    UnknownId = "unknown-id", Error,
        "A strand, closure or sale names a bead, cord or finding that the pattern does not define.";
    Misplaced = "misplaced", Error,
        "Each thing has its places in a piece: a crimp at a strand's end, a clasp in the closure, a bead on the cord. \
         A bead, cord or finding stands where it has no business. Among `ends` stand crimps, crimp \
         covers and wire guards with a crimp, knot covers and cord ends; on a side of the closure eye pins, cones, bead \
         caps, end bars, jump rings, chains, clasps, ear wires and spectacle loops, and on `both ends` of an earring \
         all of these but clasps and spectacle loops, and of another piece beads, bead caps, jump rings, charms and tassels; \
         on a side of an `open` closure eye pins, cones, bead caps, jump rings, chains, toggle rings, charms and tassels; a dangle hangs on a head pin, eye pin, bail, jump \
         ring or chain, and from a strand, not from another dangle, and has no cord to knot; a stop is a crimp; and among \
         the beads stand crimps, spacer bars, bead caps, jump rings and chains, and charms and tassels on a dangle. An earring hangs from its `left:` or by `both ends:`, and has no `right:`. Only a jump ring is \
         `closed`, only a charm has an `outline:`, only a tassel is wound of a `cord:`, only a chain has `links:`, only a knot cover has a `bead:`, and what `comes with` another finding has no price of its own.";
    NoRing = "no-ring", Error,
        "One end can only go through the other if that is open. \
         Of a necklace with `open: through` the last end goes through the ring in which the first one ends: the \
         outermost finding on the closure's `left:`, a jump ring or a toggle ring.";
    RingNarrow = "ring-narrow", Warning,
        "What is to go through a ring must be narrower than it. \
         Of a necklace with `open: through` the beads on what hangs below the ring, and where they may slide to, and the \
         findings of the closure's `right:` go through its inside. A tassel is pressed together for that, and is not looked at.";
    BarHoles = "bar-holes", Warning,
        "Every strand needs a hole of its own in the bar. \
         A bar's holes or a clasp's loops and the strands do not agree. Each strand takes a loop of its own in an end \
         bar or in the half of a clasp that has loops. \
         A spacer bar, or a bead with several `holes`, is written in every strand that goes through it and bought once: the strands \
         share it in groups of as many as it has holes, in their order, and the first bar of each is the \
         same bar, so that strands of one group go through equally many, and no strand that goes through none lies between \
         them. A bar that a strand goes through alone holds it beside none.";
    HolesAstray = "holes-astray", Warning,
        "What several rows go through is straight, and must lie at the same place on all of them. \
         A bar, or a bead with several holes, that lies d farther along one row than along the next leans by asin(d / \
         distance of its holes). Rows round a limb, and rows that hang straight down, must agree to a quarter of that \
         distance, 14.5 degrees: what leans more is seen to be aslant, and beads gape beside it (common practice, no \
         source); rows of unlike lengths are compared by their shares. Round a neck an outer row may be longer between two \
         bars, as swags are, but an inner one no longer than the next by more than that quarter. \
         What is shared is rigid, and strands that share it hang, lie on the neck and are laid out together. Where they come to no \
         rest, or hang from one point, a bead may miss its holes: |distance of its places on the two strands - apart| may be \
         1 mm (an assumption).";
    RetailFactor = "retail-factor", Advice,
        "Both factors of the price multiply the cost: cost = materials used + labour + overhead, which may be a \
         share of the two; for a shop cost x wholesale, for a wearer cost x retail, and not the shop's price times \
         retail. With equal factors, or a smaller one for the wearer, a shop earns nothing. Usual are 2, and 2.5 to 3 \
         (a jewellery-making business article); a shop that doubles what it pays asks 4 x cost where it pays 2.";
    LastPack = "last-pack", Advice,
        "A whole pack is bought for a few beads that may not be needed. \
         The last pack of a bead or finding is bought for the spare beads alone, or for no more \
         than a twentieth of what it holds (an assumption). packs = ceil((count + spare) / pack); \
         spare is 5 % of the count rounded up, at least 1 (common practice, no source). The same is said of bags of a \
         mix, and of graduated strands where several sizes run over.";
    NoSpare = "no-spare", Advice,
        "A bead that breaks or is lost could only be had with a whole strand of others. \
         A graduated strand is bought for the beads that are strung, and what it leaves over is spare; none is bought for the sake of \
         spare beads alone (common practice, no source). Here it leaves none of a size. Kits hold their own spare, and strands \
         are bought for it.";
    StashUnused = "stash-unused", Advice,
        "One file of what is in hand serves many patterns, so that ids which a pattern does not use are passed \
         over. This one is so near to an id that it does use that it may be a slip.";
    LotTooSmall = "lot-too-small", Warning,
        "What is bought holds not even one of what is needed. \
         One pack, strand or bag as the pattern sells it does not hold a single one: a strand \
         holds floor(length / pitch) beads, a bag floor(mass / mass of one), and cord is not sold by \
         the pack. The article is left out of the costs.";
    SpoolTooShort = "spool-too-short", Warning,
        "A strand is cut in one piece, and no spool holds that much. \
         A strand or chain is cut in one piece: finished length + what its knots take up + 2 x allowance. A tight overhand knot \
         takes up about ten diameters of its cord beyond its length on the strand, or the cord's `take-up` \
         (10.1: Pieranski, Przybyl and Stasiak, Tight open knots, Eur. Phys. J. E 6, 123-128, 2001; the figure \
         is from memory). This piece is \
         longer than the spool that the pattern names, so no cutting plan holds it.";
    Version = "version", Error,
        "The first key says which version of the pattern language the file is written in. This \
         program reads version 1.";
    CordTooThick = "cord-too-thick", Error,
        "The cord does not pass through the hole. \
         A cord goes once through every bead on it, so its diameter must not exceed the hole's; a \
         doubled one goes through twice and needs twice its diameter (two circles in the smallest \
         circle that holds them). The same holds for findings on the cord whose inside is known, and \
         for the cord end that takes a cord's end. The sizes are the pattern's own; a hole that is not \
         written is assumed, and then so is this error.";
    OneSided = "one-sided", Warning,
        "A clasp needs something on the other side to close onto. \
         A clasp hooks into a ring or link, and a clasp in two halves has one on each side: a toggle ring and bar, two \
         barrel halves, two box halves or two slide halves with as many loops. The closure has a clasp on one side and \
         nothing that it closes onto on the other; a strand's crimped loop or knot is no ring: it \
         wears, and it is too small (common practice, no source).";
    ClaspTwice = "clasp-twice", Warning,
        "A clasp in two halves is bought as one thing, and here it would be bought twice. \
         The same barrel half, box half or slide half stands on both sides of the closure, and each is counted. A clasp's \
         second half is a finding of its own that `comes with` the first: it is strung, and bought with that. Halves that are sold \
         by the pack are counted one by one.";
    Unjoined = "unjoined", Warning,
        "Without something that joins its ends, the piece cannot be closed. \
         A cord's two bare ends are tied to each other, and then the piece is closed. Ends with crimps, knot \
         covers or cord ends, and the end links of chain, are joined by the findings of the closure; the \
         pattern has none (common practice, no source).";
    NoOpening = "no-opening", Warning,
        "Neither of the two findings can be opened to hang the other in it. \
         Findings are joined by a ring, link or loop of one of them that is opened sideways and closed \
         again. A jump ring, a chain's link, a pin's loop and an ear wire's ring open; the rings of clasps \
         and bars, the loops of cord ends and jump rings that are `closed` are solid (common practice, no source).";
    PartLink = "part-link", Advice,
        "A chain is opened between links, so that it is a whole number of them long. \
         The strand's length divided by what a link adds (its cord's `links: 10 = 28 mm`) differs by more than a \
         fifth of a link (an assumption) from a whole number.";
    WrongHole = "wrong-hole", Error,
        "The bead's hole runs the wrong way for where it hangs. \
         A bead is drilled lengthwise, for a cord or pin, or across: at its tip from side to side (`drilled: tip`) or \
         near its edge from front to back (`drilled: front`), for a ring or \
         the pegs of a bail. The one cannot do what the other does. A charm or tassel hangs by its own loop likewise. A ring or link holds \
         a bead that is drilled lengthwise only where it goes round it: it must be as wide inside as the hole is long, and \
         as the bead is thick from hole to edge. Below what hangs without a pin nothing hangs but from a ring or link.";
    NothingHolds = "nothing-holds", Advice,
        "On a smooth cord beads slide together when the piece is worn, whatever the pattern says. \
         Beads and dangles that are spread or set at distances slide together unless something holds them: a crimp or \
         knot on both sides of the group, or a bead whose hole is at most a tenth wider than the cord, which \
         stays by friction (an assumption).";
    Unhitched = "unhitched", Error,
        "A folded cord is hooked on by its fold, and that takes a finding to hook it on. \
         A strand that is `doubled` has its cord folded: the fold is hitched with a lark's head to the \
         first finding on the closure's left side, and both legs go through every bead to the last end. \
         That takes a finding there, and a cord that bends sharply: thread, silk, leather or elastic \
         (common practice, no source).";
    SlipsInside = "slips-inside", Warning,
        "A bead or crimp is narrower than the hole of the bead beside it and slips inside: it does not show, \
         and the beads on both sides of it meet. The length counts beads inside, pushed together: \
         x(j) >= x(i) + the distance at which i and j touch, for all beads i before j that touch at all \
         (drilled-solid geometry; two beads touch where both have substance, at the rim of the wider hole). A \
         square or flat bead is as broad as its diagonal. A crimp that slips in is not counted: press it \
         beside a bead with a smaller hole.";
    CrimpTooSmall = "crimp-too-small", Error,
        "The cord passes the crimp at least twice, and all passes must fit into it side by side. \
         At a strand's end the cord goes through the crimp, round the loop and back through the \
         crimp: two passes, four where it is doubled, and one more where a wire guard's leg lies beside them. n equal round \
         cords of diameter d need an inside of d times the ratio of the smallest circle that holds \
         n equal circles: 2 for two, 1 + 2 / sqrt(3) = 2.1547 for three (circle packing in a \
         circle; both are proved). A guard's leg is taken to be as thick as the cord.";
    PinTooThick = "pin-too-thick", Error,
        "The wire of a pin goes through every bead on it, and through the tip of the cone it \
         gathers strands in, so it must not be thicker than the hole or the tip. A gauge is read \
         as American wire gauge: d = 0.005 in x 92^((36 - gauge) / 39) (ASTM B258).";
    PinTooShort = "pin-too-short", Error,
        "A pin must be as long as what it carries and the loop turned at its end. A loop of outside \
         diameter D from wire of diameter w takes pi x (D - w) of wire, the length of its middle \
         line. D is the pin's `outside`, or 3 mm (an assumption: common practice, no source). Inside a cone the pin \
         carries the part of the cone above its eye.";
    EyeInCone = "eye-in-cone", Warning,
        "The pin's eye must go into the cone and must not pull out through its tip. \
         The eye of the pin that gathers the strands must go into the cone and must not pull out \
         through its tip: tip < eye <= inside. The eye's outside diameter is the pin's `outside`, or \
         3 mm (an assumption: common practice, no source).";
    EyeTooSmall = "eye-too-small", Warning,
        "The loops of all strands lie in the pin's eye, and together they must fit through it. \
         Each strand's loop passes the eye of the pin once. n cords need an opening of the thickest \
         cord's diameter times the ratio of the smallest circle that holds n equal circles (circle \
         packing in a circle). The opening is the eye's outside diameter (the pin's `outside`, or an \
         assumed 3 mm) less twice the pin's wire.";
    CrimpsInCone = "crimps-in-cone", Warning,
        "The strands' crimps lie side by side in the cone and must fit into it where they lie. \
         Crimps, n of outside diameter D, side by side need an inside of D times the ratio \
         of the smallest circle that holds n equal circles (circle packing in a circle; ratios for \
         1 to 14 and 19 circles are proved best, others to 20 are the best known, beyond it is an \
         upper bound). The cone is taken to narrow evenly from its inside at the mouth to its tip; \
         the pin's eye (its `outside`, or an assumed 3 mm) comes to lie where the cone is as wide as \
         it; the crimps begin a loop's length below the eye. Crimps set at different heights need less.";
    BeadsInCone = "beads-in-cone", Warning,
        "Where a cone is longer than loops and crimps, the first beads lie in it and must fit there side by side. \
         Said of strands strung bead to bead: unequal circles side by side need at least as much as the two broadest, \
         and as n of the smallest (circle packing in a circle). Where the cone is narrower than that at the depth at which \
         the lowest of these beads has its middle, it jams on them and stands farther out, and the piece is longer: 2 mm are let \
         pass (an assumption), unless the beads do not go into its mouth at all. What is not told may still be tight.";
    CoverTooSmall = "cover-too-small", Warning,
        "A cover closes over the whole of what it hides. \
         A crimp cover is at least as wide inside as the crimp is outside, and as long; a crimp that is folded gets a little narrower, \
         which is not counted. A knot cover closes over the bead that its knot is tied round, or over a knot three \
         widths of its cord broad (an assumption).";
    CordTight = "cord-tight", Advice,
        "A cord that all but fills the hole is hard to thread, and the bead hardly slides on it. \
         A hole should be a tenth wider than the cord, or than both legs of a doubled one side by side (common practice, no source): \
         below that a bead stays by friction (see nothing-holds), which is wanted only where groups are spread or set \
         in their places. Elastic goes in when it is stretched, and stays tight.";
    CrimpsShow = "crimps-show", Advice,
        "The crimps reach below the cone's mouth, so that the cone does not hide them. Their place \
         follows from the cone's taper, the pin's eye (its `outside`, or an assumed 3 mm), the loops \
         and the crimps' length.";
    WireKnotted = "wire-knotted", Warning,
        "Coated steel wire is stiff and smooth: a knot in it slips or kinks it. It is closed with crimps \
         (common practice, no source), under a knot cover too; thread, silk, leather and elastic are knotted. \
         A strand without a finding among its `ends` is knotted.";
    KnotSlips = "knot-slips", Warning,
        "A knot holds a bead that it does not go into. It does where it is a third broader than the hole (an \
         assumption): a soft knot draws into a hole of its own width. A knot is as small as its length on \
         the cord, as written, or its breadth, three widths of its cord (an assumption), whichever is less.";
    WeakCord = "weak-cord", Warning,
        "A cord that only just carries the piece breaks when it wears or is tugged. \
         The cord's breaking strength is less than five times the largest tension of the hanging \
         strand. The tension at an end is sqrt(H^2 + V^2), where H and V are the horizontal and \
         vertical force there that hang the chain of beads and cord between its two ends (statics \
         of a cable under its own weight). The factor of five is an assumption, not a \
         standard. It covers knots, bends and wear, but not a snag, which breaks most necklaces.";
    StrengthUnknown = "strength-unknown", Advice,
        "The pattern does not say what force breaks the cord, so festoon cannot compare it with \
         the strand's tension. Strengths of one diameter differ widely between makes: take the \
         figure from the spool.";
    CordTooStiff = "cord-too-stiff", Warning,
        "No cord is stiffer than solid steel as thick as it. \
         `stiffness:` is a cord's E I, and a solid steel wire of diameter d has E pi d^4 / 64, with E = 193 kN/mm^2 (handbook \
         value of stainless steel, from memory). Where the pattern does not say it, wire counts as the limpest that is \
         usual, 49 filaments of steel, each a ninth of its diameter, which slip freely: 49 / 9^4 of a solid one, 1.8 N mm^2 at \
         0.4 mm. That is an assumption: wire of 19 filaments is four times as stiff, of 7 twelve times. Other cord has none. \
         Stiff cord is rounded off where limp cord has a kink, within a few times sqrt(E I / tension), and hangs less deep; \
         it is taken as a smooth line through loose beads, on which it bends as between them. A strand that hangs from two \
         points, beside others or on the neck, is so; what is twisted, an earring's loop, and what is laid closed for a \
         picture is taken as limp, and what slides stays where it would rest on limp cord. Stiffness is measured by holding an \
         end level, so long that it sinks by about a tenth: an end of length l and weight w for each mm that sinks by s has \
         w l^4 / 8 s (a cantilever, any handbook).";
    HeavyPiece = "heavy-piece", Advice,
        "A heavy piece is felt where it hangs, and wears its cord. \
         The finished piece weighs more than 150 g. That limit is an assumption, not a standard. \
         The mass is that of the beads, the cord within the finished length, and those findings \
         whose mass the pattern gives.";
    TooShort = "too-short", Error,
        "The piece does not go round the body that it is made for, however it is hooked. \
         Closed as long as it goes, the piece is shorter than the body it is made for is round: \
         strand + closure < girth of the neck above its base, where a choker lies, or the inside of the \
         closed ring (see ring-tight) < girth of the wrist or ankle. The neck counts as 0.886 of its base: the \
         medians of women are 328 and 370 mm. Girths by percentile are those of ANSUR II (US Army survey, 2012, in \
         the public domain). A ring on elastic may be smaller: it stretches.";
    OverHead = "over-head", Warning,
        "A necklace without a clasp goes on over the head. \
         Its ends are tied to each other, and its inside, length - pi × widest bead, is smaller than a head of 600 mm. That \
         girth is an assumption: about what 19 of 20 grown people do not exceed (ANSUR II, US Army survey, 2012; from \
         memory). Elastic stretches, and is not looked at.";
    IdleExtender = "idle-extender", Advice,
        "Part of the extender is of no use to this wearer. \
         The piece goes round the neck, wrist or ankle when it is closed as long as it goes (see too-short), \
         but not when the clasp hooks into the extender's first link: length at its shortest < girth. Part \
         of the extender is of no use to this wearer. On the sheet a necklace is drawn hooked as short as \
         it goes round.";
    StrandsCrowd = "strands-crowd", Warning,
        "Strands that have no room beside one another lie on one another. \
         Strands that hang from points push one another aside and may touch. Two neighbouring strands of which this \
         is said touch, bead outline to bead outline in the plane in which they hang, along more than half of the \
         length compared (an assumption), and do not push: one would have to hang slack to make room, or their \
         lines cross, so that they lie over one another, as a twist of strands may mean to; or they lie straight \
         on bars that hold them no farther apart than their beads are wide, which is said of rows round a limb \
         wherever beads lie in one another by more than 0.05 mm. Outlines within \
         0.05 mm of one another touch. The first and \
         last 25 mm are not compared, and bracelets and anklets only where a bar holds their strands \
         apart. Strands from one point hang close together along their sides; \
         ends held apart, or lengths that differ more, give them room: by how much is tried by hanging each so alone, until \
         they touch along no more than 40 %, with every larger step as well. Drops that hang plumb from one point hang \
         in a bunch and are not compared.";
    StrandsUnsettled = "strands-unsettled", Warning,
        "Where strands touch, the drawing is not in balance. \
         Strands that hang from points and touch are laid side by side in rounds: each finds the lowest place of all \
         beads at which strands are no longer than they are and no bead passes a line between it and its \
         neighbour (a second-order cone program; Boyd and Vandenberghe, Convex Optimization, 2004, chapter 4), \
         and the next takes the lines anew. They are at rest when no bead moves farther than 0.01 mm, after 20 rounds \
         at the most. What is left is said: how deep outlines lie in one another, and the greatest sum of the \
         forces at a joint, weight, tension and push, which is nothing at rest. The best place of all rounds is \
         drawn. Strands of more than 2,400 parts together are not tried. On the neck the same is done in space, over neck, \
         shoulders and chest, in up to 40 rounds; there the piece is at rest when nothing moves farther than 0.05 mm and \
         nothing lies 0.01 mm deep in anything else.";
    BareCord = "bare-cord", Advice,
        "With `settle: fixed` the beads stay where the pattern puts them, counted from the first \
         end, and what is left over is bare cord at the last end. Here that is more than 40 % of \
         the finished length (an assumption), which is seldom meant. Spaces between beads do not count.";
    UnevenEnds = "uneven-ends", Advice,
        "A strand round the neck begins with one bead and ends with another, so that its two sides \
         are no mirror images. A list that repeats a group often lacks the group's first beads at \
         its end. Where a random or fading row is an end, it is meant.";
    RingTight = "ring-tight", Warning,
        "Closed, the piece leaves less room round the wrist or ankle than the pattern asks for. \
         The inside girth is that of the largest round limb that the row goes round, its cord drawn up until neighbours \
         touch; of several strands the tightest decides. Beads are rigid: the cord runs straight through each hole, bends \
         between beads over those that touch the limb, and lifts others clear. n equal balls of a diameter d give \
         r = d / (2 sin(pi / n)) - d / 2; beads with flat ends touch at their inner rims, n tubes of a length l give \
         r = l / (2 tan(pi / n)), and their cord, which opens between them, is longer than the row. Where thick beads \
         follow closely it is near the trade's rule, length less pi times the thickest. A general optimiser finds the \
         same to a thousandth of a millimetre. Seeds are taken as rounded, chips as balls (by eye). Two broad beads are \
         not kept apart across a thin one between them. Elastic is taken at rest. A finding whose `wire:` or `outside:` \
         is not written counts with the usual share of its length (an assumption). Findings bend at their centres (of one of 25 mm about half a millimetre of girth). Hooked as long as it goes, the inside is more than 2.5 mm smaller than girth + ease: less than \
         half of what a fit of our naming spans (close up to 10 mm of ease, easy to 16, roomy to 25). A row that \
         rests on one side of a limb stands off by ease / pi on the other: close leaves less than a small bead, \
         and the row lies still; easy leaves one of 3 to 5 mm, and it turns; roomy leaves one of 5 to 8 mm, and it \
         slides. All of these are assumptions.";
    RingLoose = "ring-loose", Advice,
        "Closed, the piece leaves more room round the wrist or ankle than the pattern asks for. \
         The inside girth of the closed ring (see ring-tight), hooked as short as it goes, is more than \
         2.5 mm larger than girth + ease. Where the row fills its length by a repeat, the count that fits is named.";
    FallsOff = "falls-off", Warning,
        "Closed, the piece is so wide that it falls off over the hand or foot. \
         The inside girth of the closed ring (see ring-tight), hooked as short as it goes, is more than one and a half times the wrist \
         or ankle, whatever ease is asked for. A hand with its thumb folded in, and a heel, are up to \
         about that much wider than the limb above (from memory, no source).";
    UnevenRows = "uneven-rows", Advice,
        "Rows that go round a limb side by side should have the same room. \
         Of the inside girths of the closed rows (see ring-tight) the largest is more than 5 mm larger than the smallest: more than rows \
         differ of which each misses girth + ease by no more than the 2.5 mm that are let pass (an assumption). The looser row \
         stands off, or hangs over its neighbour. Rows of thicker beads are longer at the same room.";
    OddMeasure = "odd-measure", Warning,
        "Nobody is so thick or so thin: most likely the unit is wrong. \
         A written neck base, wrist or ankle is less than half of the first percentile of women, or more than one and a half times the \
         99th of men (ANSUR II, US Army survey, 2012, in the public domain; the factors are assumptions). Where the same \
         number in millimetres, centimetres or inches lies between those percentiles, it is named.";
    HugeBead = "huge-bead", Warning,
        "No bead is so large: most likely the unit is wrong. \
         Its longest side is more than 50 mm, or of a bead that hangs by its tip or edge more than 100 mm (common practice, no source).";
    DropsCrowd = "drops-crowd", Warning,
        "What hangs side by side from a bar's loops lies in one another. \
         Strands that hang straight down are compared with their neighbours, each bead and finding as an ellipse of its breadth and \
         height; 0.5 mm are let pass (an assumption), for that much they turn aside. Beyond it they push one another out of line, or \
         hang before one another.";
    LookAlike = "look-alike", Advice,
        "A maker, and a buyer with the sheet in hand, must tell the beads apart; a small difference of colour is lost on paper, or on eyes that see colours otherwise. \
         Two beads of one shape, whose sizes differ by less than 20 %, have colours less than 10 \
         apart by CIEDE2000 (Sharma, Wu and Dalal 2005), either as they are or as eyes without red, \
         green or blue cones see them (Machado, Oliveira and Fernandes 2009, severity 1, on linear \
         RGB). Both limits are assumptions; a difference of about 1 is just noticed side by side.";
    MissingGlyph = "missing-glyph", Warning,
        "The letter is not in the type that the sheet is set in, and prints as an empty box. \
         The sheet is set in the type that comes with the program, Source Sans 3, so that it looks \
         the same on every machine. It has Latin, Greek and Cyrillic letters, figures and the usual \
         signs. Where a text has a character that the type has not, the sheet shows an empty box.";
    ChildBreakaway = "child-breakaway", Warning,
        "A cord that catches must not strangle. Rules differ by country and age, and festoon does \
         not say that a piece complies: ask a qualified person. For comparison: ASTM F2923 on \
         children's jewellery asks for a closure that opens at 15 lbf (66.7 N), at which 7 of 15 \
         necklaces tested did not open (Soudek and McLaughlin, Paediatrics and Child Health 2018, \
         23(2), 106-110). Parts that fit into a cylinder 1.25 in (31.7 mm) wide are small parts, \
         banned for children under three (16 CFR 1501.4): that is true of almost every bead.";
    ChildUnmeasured = "child-unmeasured", Warning,
        "Children differ too much for a table of grown people to say what fits them, and festoon has \
         no published table of children's necks, wrists and ankles. Without a measure the piece is drawn on \
         a guess (neck base 300 mm, wrist 135, ankle 185: about eight years, from memory, no source), and \
         nothing is said of its fit.";
    DeclareMetal = "declare-metal", Advice,
        "Some materials may give off nickel or lead. The words of the material say so here, not a \
         test: nickel, alpaca and German silver hold nickel, brass and pewter often some lead, and \
         crystal without another word may be lead glass (common knowledge, no source). Rules differ by country, and festoon does not say that a piece complies. For \
         comparison: the EU allows 0.5 ug of nickel per cm2 and week from what touches skin for \
         long and 0.2 ug from posts in piercings (REACH, annex XVII, entry 27), and less than \
         0.05 % lead in each part of jewellery (entry 63); the US allow 100 ppm lead in parts of \
         children's articles that a child can reach (CPSIA, section 101), and did not exempt \
         crystal and glass beads.";
    TooManyBeads = "too-many-beads", Error,
        "A piece holds at most 20,000 beads, knots and spaces, counted after every repeat over all its \
         strands, and at most 100,000 over itself and all its sizes and colourways; its bead lists have at most \
         5,000 entries as written. More is a slip of the pen, and would only make the program slow. These limits \
         are assumptions.";
    OutOfBounds = "out-of-bounds", Error,
        "No piece of jewellery has such a size or so many: it is most likely a slip of the pen or a wrong unit. \
         A length, mass, count, ratio, text or list lies outside what a piece of jewellery can have: a bead \
         of 4 m, a strand of 2 km, a name of a thousand signs. The bounds are assumptions, wide enough for \
         any piece; the language reference lists them, and `festoon schema` says them beside each key.";
    NothingRepeated = "nothing-repeated", Error,
        "A repeat or mirror holds nothing that is strung, so that however often it is said, nothing comes \
         of it: `repeat: fill` would go on for ever.";
    TwiceNamed = "twice-named", Error,
        "Two strands or sizes have the same name, so that nobody could tell which is meant; or a shelf is named twice.";
    Overfull = "overfull", Error,
        "The beads, spaces and end findings of a strand need more cord than its finished length \
         has. The beaded length is the sum of the distances between neighbouring beads' centres: \
         sqrt(R1^2 - r^2) + sqrt(R2^2 - r^2) for drilled round beads, where r is the larger of the \
         two hole radii (drilled-sphere geometry), half the length for flat-ended ones.";
    NoFill = "no-fill", Error,
        "`repeat: fill` repeats a list as often as it fits, and needs a length to fill, or a wearer to go round. \
         `repeat: fill` strings a list as often as fits into the strand's length less `leave` and \
         less what the ends take. It needs a length to fill, which a dangle does not have, and a list that \
         takes up cord. A row that fills, `random: fill`, `fade: fill` or a graduated one without \
         `length:`, stands in the strand's own list.";
    SoldTwice = "sold-twice", Error,
        "A bead is bought in one way. \
         A bead that stands among the `holds:` of an `assorted:` is bought with what that holds, at one price for all; \
         one that has a `sold:` of its own besides, or stands in two of them, would be counted and paid twice.";
    ScarceKind = "scarce-kind", Advice,
        "One kind of bead runs out first in what is bought with several kinds in it. \
         As many graduated strands, or bags of a mix, are bought as the kind asks for of which there is the least \
         beside what is wanted. A strand holds so many of each; of n beads of a mix with the share p at least \
         n p - 3 sqrt(n p (1 - p)) are counted on (mean less three standard deviations of the binomial, any handbook of \
         statistics). Where one kind alone asks for more than all others, fewer of it, or some bought by itself, save a \
         strand or bag.";
    NoMix = "no-mix", Error,
        "No row can be made of these beads in these numbers. \
         A random row takes its counts from parts by largest remainder: each bead has floor(n x its parts / all \
         parts), and what is left of n goes to the largest remainders. With `apart: d` at least d others stand \
         between two of a kind, so that no kind may have more than ceil(n / (d + 1)), nor more than 1 in d + 1 of the parts of a row that fills \
         its strand; without `apart:` d is 1. Every \
         bead of a mix gets at least one, and a fade goes from one bead to another, with at least one of each.";
    MisplacedStop = "misplaced-stop", Error,
        "A stop divides its strand, and can do so only where the strand says how far from its first end. \
         A stop is a finding fixed on the cord. It stands in the strand's own list (not inside a \
         repeat, mirror or dangle), inside the strand's length, in the order of the stations, and only where beads \
         slide or are spread.";
    MissingSize = "missing-size", Error,
        "A size is missing that the length, the drawing or the fit cannot do without.";
    BadSize = "bad-size", Error,
        "No such thing can be made: its sizes contradict one another. \
         The sizes of an article contradict one another or are no sizes: a hole of 95 % of its bead, \
         a measured bead longer than 200 mm, a chain of more than 1,000 links, a tolerance of more than half the bead, an inside as wide as the \
         outside, a wire gauge that is not on the table.";
    UnknownMaterial = "unknown-material", Warning,
        "Without the material's density the bead cannot be weighed. \
         The mass of a bead is its volume times the density of its material, from a table of \
         common bead materials. A material that is not in the table needs a `mass:` of its own; \
         until then the bead is weighed as common glass, 2.5 g/cm3.";
    RoughWeight = "rough-weight", Advice,
        "Pieces of this material differ much in weight, and so may yours. \
         The bead is weighed by its volume and the density of its material, and that differs by a quarter and \
         more from piece to piece: pores in lava, fillers in polymer clay, hollows in nuts, kinds of wood. The \
         table behind it gives one figure inside a range; the mass of the piece is as rough.";
    IdleAllow = "idle-allow", Advice,
        "It would hide the next remark of its kind, which may not be meant. \
         An entry of `allow:` silences a warning or advice that is meant to be so, anywhere in the piece or, in a \
         strand, at that strand's lines. This one finds nothing to silence, in no size and no colourway: what it \
         was for is gone, and it would hide the next one.";
    HoleAssumed = "hole-assumed", Advice,
        "A bead without `hole:` is taken to have a hole of 1 mm, or a quarter of its width if that \
         is less (an assumption). The hole decides how close round beads sit and whether the cord \
         passes.";
    Unused = "unused", Warning,
        "The pattern defines a bead, cord or finding that nothing uses. It is left out of the \
         legend and the materials.";
    NoLength = "no-length", Error,
        "A strand needs a `length:`, or `settle: fill` so that its length follows from its beads. \
         `sizes:` and measures of a wearer change lengths, so each strand needs one to change, or a `repeat: fill` that \
         goes round the wearer: as often as brings the closed row's inside nearest to girth + ease. A written length \
         changes by as much as girth + ease differ from those that the pattern's own `wear:` says, which must be there.";
    OtherLimb = "other-limb", Error,
        "The measure is of a part of the body that the piece does not go round. \
         A bracelet is made for a wrist, an anklet for an ankle, a necklace or strap for a neck; earrings for none of \
         them.";
    FillShort = "fill-short", Warning,
        "With `settle: fill`, `repeat: fill` strings whole repeats until no more fit, and the strand \
         becomes as long as they make it. It comes out more than half an inch (an assumption) \
         shorter than the length that is written: somebody who wanted 17 in should know.";
    LengthIgnored = "length-ignored", Warning,
        "With `settle: fill` a strand's length follows from its beads; a length that is written \
         beside it and differs is not used. Nor is the allowance of a chain, whose end links are hung \
         whole.";
    Expected = "expected", Error,
        "Your own figure and the program's differ: one of the two is wrong. \
         The pattern's `expect:` holds the designer's own figures. The program computes others: \
         one of the two is wrong, and a pattern for sale must not leave that open.";
    CoilSmall = "coil-small", Warning,
        "The coil is too small for the limb, and stays sprung open round it. \
         Beads on memory wire leave the girth pi x (coil + wire - 2 x reach) inside, where a bead reaches half its thickness \
         inward. Round a thicker limb the wire springs open: it presses, and goes round less often than at rest. How much \
         of that is comfortable is a matter of trial; that it should not be is common practice, no source.";
    BeadStiff = "bead-stiff", Error,
        "The bead is too long, or its hole too narrow, for so tight a curve of wire. \
         Hard wire of thickness t, bent round a middle line of radius R, goes through a straight hole of diameter b and \
         length l only where R + t/2 - sqrt((R - t/2)^2 - l^2/4) <= b: the wire's outer side in the middle of the hole and \
         its inner side at the ends touch opposite walls. To first order that is l^2 / 8R <= b - t, the height of the arc. \
         Derived from two circles; a hole's rims are taken as sharp.";
    OtherTurns = "other-turns", Warning,
        "The beads go round another number of times than `wraps:` says. \
         On memory wire the piece goes round as often as its beads do: their length on the curved wire over the length of \
         a turn, sqrt((2 pi R)^2 + p^2), where a turn rises by the width p of the broadest bead. A quarter of a turn \
         between that and `wraps:` is let pass (an assumption); `repeat: fill` strings as many as it says.";
    EndsMeet = "ends-meet", Advice,
        "The ends of the coil lie side by side, or short of each other. \
         A coil of memory wire is worn open: where it goes round whole times its two ends meet at one place and gape when the \
         limb is a little thicker. A quarter to half a turn more lets them lie over each other (common practice, no source).";
    CannotWrap = "cannot-wrap", Error,
        "The piece cannot go round so many times. \
         `wraps: 3` winds the one strand of a bracelet, anklet or necklace three times round its wearer, turn beside \
         turn; its ends, joined by a clasp or a knot, meet across the turns, so that it goes round whole times. \
         Earrings and straps go round nothing, several strands are wound one by one, and an open necklace is not closed. Memory wire goes round any number of times \
         and closes by itself: it takes no clasp.";
    CannotTwist = "cannot-twist", Error,
        "The strands cannot be twisted so. \
         `twist: 3` turns one end of all strands of a necklace, bracelet or anklet three times before it is closed, so that two \
         or more lie round one another as a torsade; whole and half turns can be joined, and what joins the ends must gather them and not hold them \
         apart. A strand of length L that goes N times round at a radius R makes a piece of length H by \
         L² = H² + (2 pi N R)², where R is the least at which neighbouring helices do not lie in one another. Strands have a \
         greatest number of turns: where N is more, no H is long enough (Bohr and Olsen, The ancient art of laying rope, EPL 93 (2011) \
         60004).";
    TwistTight = "twist-tight", Warning,
        "The strands are twisted so tightly that they run across the piece at more than 40 degrees. \
         Between 47 degrees (three strands) and 51 (two) they lock, and no further turn goes in; near that a little more width of \
         the beads makes the piece much shorter, beads stand aslant with gaps between them, and a slack cord is soon cut by their \
         edges. The limit of 40 degrees is an assumption.";
    TwistLoose = "twist-loose", Advice,
        "The strands are twisted so little that they run along the piece at less than 3 degrees, and look untwisted. \
         The angle is that whose tangent is 2 pi N R / H, of N turns at a radius R on a length H. The limit is an assumption.";
    TwistSlack = "twist-slack", Warning,
        "A strand is longer than its way in the twist, so that it bulges out of it. \
         All strands of a torsade reach as far as the one that is drawn tautest; what another has more, L less the root of \
         H² + (2 pi N R)², stands loose. A hundredth of its length is let pass (an assumption). Strands of equal length are slack \
         where they lie in the core of many; `allow: [twist-slack]` where bulges are meant.";
    TwistBare = "twist-bare", Warning,
        "A strand that is twisted is bare along more than a tenth of its length. \
         Thin strands turn more easily than thick ones, so that the twist goes where the cord is bare and leaves the beads \
         beside it almost straight. Lengths and drawing take beads and bare cord as if they were spread evenly. The limit is \
         an assumption; fill strands bead to bead, or keep their beads apart with knots.";
    NoRest = "no-rest", Error,
        "The strand cannot hang as it is written. \
         The strand cannot hang from its two points: it is shorter than the distance between \
         them, or the solver for its resting shape did not converge. Beads are rigid and turn about the point of their cord at \
         which they meet. So flat ends lie in one another on the inner side of a bend, where really a gap opens on the outer \
         one: faces of a breadth b that make an angle t by b sin t / 2, in rows of the shipped patterns up to 0.3 mm, in \
         a kink beside a large bead up to 2.6 mm. Parted, a row would take as much more cord at each, up to 6 mm in all, \
         which a maker leaves as slack; no length or drop counts it, but that of a ring.";
}
