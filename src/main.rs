//! The command line program.

fn main() {
    let path = std::env::args().nth(1).unwrap_or_default();
    let source = festoon::source::Source::new(path.clone(), std::fs::read_to_string(&path).unwrap_or_default());
    let (pattern, remarks) = festoon::pattern::read(&source);
    println!("{remarks:#?}");
    if let Some(pattern) = pattern {
        let (design, remarks) = festoon::design::resolve(&pattern, &festoon::design::Choice::default());
        println!("{remarks:#?}");
        if let Some(design) = design {
            for strand in &design.strands {
                println!(
                    "{} {} beaded {} bare {} {:?}",
                    strand.name,
                    strand.finished,
                    strand.beaded(),
                    strand.bare(),
                    strand.counts(&design)
                );
            }
            println!("{:?} {:?} {:?}", design.piece_length(), design.mass(), design.closure);
        }
    }
}
