//! A page as PNG: its SVG drawn at a resolution, marked sRGB and with its true size (`pHYs`).
//!
//! A page of 210 × 297 mm at 300 dpi takes 35 MB of pixels; they are narrowed to RGB in place and
//! compressed from there, so that little more than that and the file itself is held at a time.

use png::chunk::IDAT;
use png::{BitDepth, ColorType, Compression, PixelDimensions, SrgbRenderingIntent, Unit};
use tiny_skia::{Color, Pixmap};

use super::packed::packed;
use super::{ExportError, raster};
use crate::paint::mark::Page;
use crate::units::INCH;

/// Most pixels of a picture: 0.6 GB while it is drawn, more where it has shadows.
pub const MOST_PIXELS: f64 = 150e6;

/// Deflate's level of a file to keep: the usual one.
const LEVEL: u32 = 6;

/// How hard to compress.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Effort {
    /// For keeping.
    File,
    /// For looking at once, soon.
    Preview,
}

/// Draws the page on white, without transparency, in 8 bits a channel. The picture measures
/// mm / 25.4 × dpi pixels, rounded.
///
/// # Errors
/// Where the page has no area or too much of it at this resolution, or the drawing library refuses it.
pub fn png(page: &Page, dpi: f64, effort: Effort) -> Result<Vec<u8>, ExportError> {
    let pixels = drawn(page, dpi, Color::WHITE)?;
    let (width, height) = (pixels.width(), pixels.height());
    let mut data = pixels.take();
    narrow(&mut data);
    encoded(&data, (width, height), ColorType::Rgb, dpi, effort)
}

/// Draws the page on nothing, with transparency, in 8 bits a channel.
///
/// # Errors
/// As for [`png()`].
pub fn transparent_png(page: &Page, dpi: f64, effort: Effort) -> Result<Vec<u8>, ExportError> {
    let pixels = drawn(page, dpi, Color::TRANSPARENT)?;
    let size = (pixels.width(), pixels.height());
    encoded(&pixels.take_demultiplied(), size, ColorType::Rgba, dpi, effort)
}

fn drawn(page: &Page, dpi: f64, ground: Color) -> Result<Pixmap, ExportError> {
    let (width, height) = pixel_size(page, dpi)?;
    let mut pixels = Pixmap::new(width, height).ok_or(ExportError::NoArea)?;
    pixels.fill(ground);
    raster::draw(page, &mut pixels)?;
    Ok(pixels)
}

fn pixel_size(page: &Page, dpi: f64) -> Result<(u32, u32), ExportError> {
    let [width, height] = [page.width, page.height].map(|mm| (mm / INCH * dpi).round());
    if width * height > MOST_PIXELS {
        return Err(ExportError::TooLarge(width, height));
    }
    let has_area = width >= 1.0 && height >= 1.0;
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "between 1 and 150 million")]
    has_area.then_some((width as u32, height as u32)).ok_or(ExportError::NoArea)
}

/// Drops every fourth byte, the opacity, which is full all over white ground.
fn narrow(data: &mut Vec<u8>) {
    let pixels = data.len() / 4;
    for pixel in 1..pixels {
        for channel in 0..3 {
            data[pixel * 3 + channel] = data[pixel * 4 + channel];
        }
    }
    data.truncate(pixels * 3);
}

fn encoded(
    data: &[u8],
    (width, height): (u32, u32),
    colours: ColorType,
    dpi: f64,
    effort: Effort,
) -> Result<Vec<u8>, ExportError> {
    let mut out = Vec::new();
    let mut encoder = png::Encoder::new(&mut out, width, height);
    encoder.set_color(colours);
    encoder.set_depth(BitDepth::Eight);
    encoder.set_compression(Compression::Fast);
    encoder.set_pixel_dims(Some(true_size(dpi)));
    encoder.set_source_srgb(SrgbRenderingIntent::RelativeColorimetric);
    let pixel = colours.samples();
    let written = encoder.write_header().and_then(|mut writer| {
        match effort {
            Effort::File => writer.write_chunk(IDAT, &packed(data, width as usize * pixel, pixel, LEVEL)?)?,
            Effort::Preview => writer.write_image_data(data)?,
        }
        writer.finish()
    });
    written.map_err(|error| ExportError::Refused(error.to_string()))?;
    Ok(out)
}

fn true_size(dpi: f64) -> PixelDimensions {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "`as` saturates")]
    let per_metre = (dpi * 1000.0 / INCH).round() as u32;
    PixelDimensions { xppu: per_metre, yppu: per_metre, unit: Unit::Meter }
}

#[cfg(test)]
mod tests {
    use std::sync::Arc;

    use tiny_skia::Transform;

    use super::*;
    use crate::export::tree::tree;
    use crate::geometry::Point;
    use crate::paint::mark::{Fill, Mark, Rgb, Segment, Stroke};

    fn page(width: f64, height: f64) -> Page {
        let corners = [(0.0, 0.0), (width / 2.0, 0.0), (width / 2.0, height), (0.0, height)];
        let outline = corners.iter().enumerate().map(|(i, (x, y))| {
            let at = Point::new(*x, *y);
            if i == 0 { Segment::Move(at) } else { Segment::Line(at) }
        });
        let fill = Some(Fill::Flat(Rgb(10, 120, 200), 1.0));
        let marks = vec![Mark::Shape { outline: outline.collect(), fill, stroke: None }];
        Page { width, height, title: String::new(), description: String::new(), symbols: Arc::default(), marks }
    }

    fn decoded(file: &[u8]) -> (png::OutputInfo, Option<PixelDimensions>, Vec<u8>) {
        let mut reader = png::Decoder::new(std::io::Cursor::new(file)).read_info().unwrap();
        let mut data = vec![0; reader.output_buffer_size().unwrap()];
        let info = reader.next_frame(&mut data).unwrap();
        (info, reader.info().pixel_dims, data)
    }

    #[test]
    fn a_page_gets_its_pixels_and_its_true_size() {
        let file = png(&page(50.8, 25.4), 100.0, Effort::File).unwrap();
        let (info, size, data) = decoded(&file);
        assert_eq!((info.width, info.height, info.color_type), (200, 100, ColorType::Rgb));
        assert_eq!(size.unwrap().xppu, 3937);
        assert_eq!(data[..3], [10, 120, 200]);
        assert_eq!(data[data.len() - 3..], [255, 255, 255]);
    }

    /// PNG specification, pHYs in pixels per metre: dpi / 0.0254, rounded (recalled; 100 dpi = 3937
    /// is the worked example of the png crate's documentation).
    #[test]
    fn resolutions_are_rounded_to_pixels_per_metre() {
        let table =
            [(72, 2835), (96, 3780), (100, 3937), (150, 5906), (200, 7874), (300, 11811), (600, 23622), (1200, 47244)];
        for (dpi, per_metre) in table {
            assert_eq!(true_size(f64::from(dpi)).xppu, per_metre, "{dpi}");
        }
    }

    #[test]
    fn transparent_ground_keeps_colours_and_opacity() {
        let (info, _, data) = decoded(&transparent_png(&page(20.0, 10.0), 25.4, Effort::Preview).unwrap());
        assert_eq!((info.width, info.height, info.color_type), (20, 10, ColorType::Rgba));
        assert_eq!(data[..4], [10, 120, 200, 255]);
        assert_eq!(data[data.len() - 4..], [0, 0, 0, 0]);
    }

    #[test]
    fn pages_without_area_or_beyond_reason_are_refused() {
        assert_eq!(png(&page(0.0, 10.0), 300.0, Effort::File), Err(ExportError::NoArea));
        assert_eq!(png(&page(10.0, 10.0), f64::NAN, Effort::File), Err(ExportError::NoArea));
        assert_eq!(png(&page(10.0, 10.0), -5.0, Effort::File), Err(ExportError::NoArea));
        let error = png(&page(1000.0, 1000.0), 2400.0, Effort::File).unwrap_err();
        assert!(matches!(error, ExportError::TooLarge(..)), "{error}");
        assert!(error.to_string().contains("94488 × 94488") && error.help().contains("lower resolution"));
    }

    /// Thin lines at many angles, drawn whole by the drawing library alone: cut in parts, they show steps of 17
    /// levels where the parts meet.
    #[test]
    fn thin_lines_have_no_steps() {
        let line = |at: i32| {
            let (top, foot) = (Point::new(f64::from(3 * at), 0.0), Point::new(f64::from(200 - 3 * at), 297.0));
            let stroke = Some(Stroke::new(Rgb(0, 0, 0), 0.12));
            Mark::Shape { outline: vec![Segment::Move(top), Segment::Line(foot)], fill: None, stroke }
        };
        let page = Page { marks: (0..60).map(line).collect(), ..page(210.0, 297.0) };
        let (info, _, data) = decoded(&png(&page, 110.0, Effort::Preview).unwrap());
        let mut whole = Pixmap::new(info.width, info.height).unwrap();
        whole.fill(Color::WHITE);
        let tree = tree(&page).unwrap();
        let scale = |pixels: u32, size: f32| pixels as f32 / size;
        let (across, down) = (scale(info.width, tree.size().width()), scale(info.height, tree.size().height()));
        resvg::render(&tree, Transform::from_scale(across, down), &mut whole.as_mut());
        let differs = |(pixel, other): (&[u8], &[u8])| pixel != &other[..3];
        assert_eq!(data.chunks(3).zip(whole.data().chunks(4)).filter(|pair| differs(*pair)).count(), 0);
    }
}
