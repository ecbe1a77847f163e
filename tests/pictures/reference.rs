//! Reference pictures: few, small, and compared to within one step a channel.
//!
//! They stand in `patterns/pictures`, where DEVELOPERS.md shows them. A picture that differs leaves
//! `NAME.differs.png` in `target/pictures`: what was expected, the difference, and what was drawn, side
//! by side. `FESTOON_ACCEPT=1` takes what the program draws now as the reference.

use std::fs;
use std::path::{Path, PathBuf};

use festoon::export::{Effort, png};
use festoon::paint::mark::Page;

/// How much a channel may differ.
const STEP: u8 = 1;

/// Width, height and RGB of a picture.
struct Picture {
    width: usize,
    height: usize,
    data: Vec<u8>,
}

impl Picture {
    fn read(file: &[u8]) -> Self {
        let mut reader = ::png::Decoder::new(std::io::Cursor::new(file)).read_info().unwrap();
        let mut data = vec![0; reader.output_buffer_size().unwrap()];
        let info = reader.next_frame(&mut data).unwrap();
        assert_eq!(info.color_type, ::png::ColorType::Rgb);
        Self { width: info.width as usize, height: info.height as usize, data }
    }

    fn write(&self, path: &Path) {
        let file = fs::File::create(path).unwrap();
        let [width, height] = [self.width, self.height].map(|side| u32::try_from(side).unwrap());
        let mut encoder = ::png::Encoder::new(file, width, height);
        encoder.set_color(::png::ColorType::Rgb);
        encoder.write_header().unwrap().write_image_data(&self.data).unwrap();
    }

    fn agrees(&self, other: &Self) -> bool {
        let near = |(one, other): (&u8, &u8)| one.abs_diff(*other) <= STEP;
        (self.width, self.height) == (other.width, other.height) && self.data.iter().zip(&other.data).all(near)
    }

    /// The colour at a place, white beyond the picture.
    fn at(&self, x: usize, y: usize) -> [u8; 3] {
        let start = (y * self.width + x) * 3;
        let inside = x < self.width && y < self.height;
        if inside { [self.data[start], self.data[start + 1], self.data[start + 2]] } else { [255; 3] }
    }
}

/// Asserts that a page at a resolution is its reference picture.
pub fn assert_reference(page: &Page, dpi: f64, name: &str) {
    let path = root().join(format!("patterns/pictures/{name}.png"));
    let file = png(page, dpi, Effort::File).unwrap();
    if std::env::var_os("FESTOON_ACCEPT").is_some_and(|accept| accept == "1") {
        fs::write(&path, &file).unwrap();
    }
    let (expected, got) = (Picture::read(&fs::read(&path).unwrap_or_else(|_| file.clone())), Picture::read(&file));
    assert!(path.exists(), "no reference {}: FESTOON_ACCEPT=1 writes it", path.display());
    if !expected.agrees(&got) {
        let differs = root().join(format!("target/pictures/{name}.differs.png"));
        fs::create_dir_all(root().join("target/pictures")).unwrap();
        side_by_side(&expected, &got).write(&differs);
        panic!("{name} is not drawn as in its reference: look at {}", differs.display());
    }
}

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// What was expected, where they differ in black on white, and what was drawn.
fn side_by_side(expected: &Picture, got: &Picture) -> Picture {
    let (width, height) = (expected.width.max(got.width), expected.height.max(got.height));
    let mut data = Vec::with_capacity(width * height * 9);
    for y in 0..height {
        (0..width).for_each(|x| data.extend(expected.at(x, y)));
        (0..width).for_each(|x| data.extend(difference(expected.at(x, y), got.at(x, y))));
        (0..width).for_each(|x| data.extend(got.at(x, y)));
    }
    Picture { width: width * 3, height, data }
}

fn difference(one: [u8; 3], other: [u8; 3]) -> [u8; 3] {
    let differs = one.iter().zip(&other).any(|(one, other)| one.abs_diff(*other) > STEP);
    if differs { [0; 3] } else { [255; 3] }
}

#[test]
fn pictures_differ_by_more_than_one_step_in_any_channel() {
    let grey = |value| Picture { width: 1, height: 1, data: vec![10, value, 10] };
    assert!(grey(100).agrees(&grey(101)) && !grey(100).agrees(&grey(102)));
    let both = side_by_side(&grey(100), &grey(102));
    assert_eq!((both.width, both.data), (3, vec![10, 100, 10, 0, 0, 0, 10, 102, 10]));
}
