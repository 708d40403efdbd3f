//! Pages as they look: held against pictures of them, in black on white, with their fonts inside.
//!
//! `tests/pages/` holds a picture of each page of four packs. When a page is meant to look different, look at it and then
//! accept it: `PAGES_UPDATE=1 cargo test --test pages`.

use std::collections::BTreeSet;
use std::env;
use std::fs;
use std::path::{Path, PathBuf};

use crate::fixture::program::run;
use crate::picture::grey::{DPI, Grey, Rendered, render_pages};
use crate::picture::{all_of, difference, example, ink, packs, set};
use hayro::vello_cpu::kurbo::Rect;
use hopwright::network::Trees;
use hopwright::pack::{HopPacks, Pack, Press};
use hopwright::spec::EndName;
use pdf_extract::{Dictionary, Document, Object};

/// The hop of the pictures: it has a record, a profile, a wall to mount on and an accepted departure.
const HOP: &str = "solleralm-murrgrat";
const PACKS: [(&str, Pack); 3] =
    [("design", Pack::Design), ("install", Pack::Install(EndName::B)), ("acceptance", Pack::Acceptance(EndName::A))];

fn references() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/pages")
}

/// The pages in the pictures, by name of the picture.
fn pages() -> Vec<(String, Rendered)> {
    let (evaluation, press) = (packs(&example("varneck")), Press::new().expect("a press"));
    let mut named = Vec::new();
    for (name, pack) in PACKS {
        let pages = render_pages(set(&evaluation, &press, HOP, pack));
        named.extend(pages.into_iter().enumerate().map(|(page, look)| (format!("{name}-{}", page + 1), look)));
    }
    let pages = render_pages(network_pack());
    named.extend(pages.into_iter().enumerate().map(|(page, look)| (format!("network-{}", page + 1), look)));
    named
}

/// The pack of the whole network, as the program prints it.
fn network_pack() -> Vec<u8> {
    let out = tempfile::tempdir().expect("a folder");
    let (network, into) = (example("varneck").display().to_string(), out.path().display().to_string());
    let ran = run(&["pack", "network", "--network", &network, "--out", &into]);
    assert_eq!(ran.code, 0, "{}", ran.err);
    fs::read(out.path().join("varneck-network.pdf")).expect("written")
}

fn names_in(folder: &Path) -> BTreeSet<String> {
    let entries = fs::read_dir(folder).into_iter().flatten().map(|entry| entry.expect("an entry").path());
    let pictures = entries.filter(|path| path.extension().is_some_and(|extension| extension == "png"));
    pictures.map(|path| path.file_stem().expect("a name").to_string_lossy().into_owned()).collect()
}

#[test]
fn pages_look_as_they_did_when_somebody_last_looked() {
    let pages = pages();
    let names: BTreeSet<String> = pages.iter().map(|(name, _)| name.clone()).collect();
    let folder = references();
    if env::var_os("PAGES_UPDATE").is_some_and(|value| value != "0") {
        for gone in names_in(&folder).difference(&names) {
            fs::remove_file(folder.join(format!("{gone}.png"))).expect("removed");
        }
        for (name, page) in &pages {
            let path = folder.join(format!("{name}.png"));
            // One that looks the same stays: no bytes change without a reason.
            if Grey::read(&path).is_ok_and(|reference| !difference::between(&reference, &page.grey).seen) {
                continue;
            }
            page.grey.write(&path).expect("written");
        }
        return;
    }
    let out = Path::new(env!("CARGO_TARGET_TMPDIR")).join("pages");
    let _ = fs::remove_dir_all(&out);
    let mut wrong = Vec::new();
    for gone in names_in(&folder).difference(&names) {
        wrong.push(format!("{gone}: no such page any more"));
    }
    for (name, page) in &pages {
        let said = match Grey::read(&folder.join(format!("{name}.png"))) {
            Err(error) => format!("no picture to hold it against: {error}"),
            Ok(reference) => {
                let found = difference::between(&reference, &page.grey);
                if !found.seen {
                    continue;
                }
                found.write(&page.grey, &out.join(format!("{name}-difference.png"))).expect("written");
                found.words
            }
        };
        page.grey.write(&out.join(format!("{name}.png"))).expect("written");
        wrong.push(format!("{name}: {said}"));
    }
    assert!(
        wrong.is_empty(),
        "{}\nThe pages as they are now, and in red what differs, are in {}; tests/pages has them as they were. If they are \
         meant to look so: PAGES_UPDATE=1 cargo test --test pages",
        wrong.join("\n"),
        out.display()
    );
}

/// Dots from the size of a thing on paper.
fn dots(millimetres: u16) -> usize {
    (0..u16::MAX).find(|dots| f32::from(*dots) >= f32::from(millimetres) / 25.4 * DPI).map_or(0, usize::from)
}

/// The rows that hold a line of type, as ranges.
fn lines(page: &Grey) -> Vec<(usize, usize)> {
    let inked = |y: usize| page.dots[y * page.width..(y + 1) * page.width].iter().any(|dot| *dot < 200);
    let mut found = Vec::new();
    let mut from = None;
    for y in 0..page.height() {
        match (inked(y), from) {
            (true, None) => from = Some(y),
            (false, Some(start)) => {
                found.push((start, y));
                from = None;
            }
            _ => {}
        }
    }
    found
}

/// The page with what stands in an area moved, white left behind.
fn moved(
    page: &Grey,
    (left, right): (usize, usize),
    (top, end): (usize, usize),
    (across, down): (usize, usize),
) -> Grey {
    let mut other = page.clone();
    (top..end).for_each(|y| other.dots[y * page.width + left..y * page.width + right].fill(255));
    for y in top..end {
        for x in left..right {
            other.dots[(y + down) * page.width + x + across] = page.at(x, y);
        }
    }
    other
}

/// A fixed sequence that looks like chance.
fn noise() -> impl FnMut() -> u8 {
    let mut state = 7_u32;
    move || {
        state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        state.to_be_bytes()[0]
    }
}

#[test]
fn the_comparison_sees_what_a_reader_would_and_nothing_else() {
    let pages = pages();
    for (name, rendered) in &pages {
        let page = &rendered.grey;
        let seen = |other: &Grey| difference::between(page, other).seen;

        // What differs between machines: rounding of every dot, edges a little darker, fewer greys.
        let mut next = noise();
        let mut noisy = page.clone();
        noisy.dots.iter_mut().for_each(|dot| *dot = dot.saturating_add(next() % 10).saturating_sub(next() % 10));
        assert!(!seen(&noisy), "{name}: noise is taken for a change");
        let mut darker = page.clone();
        darker.dots.iter_mut().for_each(|dot| *dot -= (255 - *dot).min(*dot) / 14);
        assert!(!seen(&darker), "{name}: darker edges are taken for a change");
        let path = Path::new(env!("CARGO_TARGET_TMPDIR")).join("comparison").join(format!("{name}.png"));
        page.write(&path).expect("written");
        assert!(!seen(&Grey::read(&path).expect("read")), "{name}: the file does not hold the page");

        // What a reader would see, on every page and at every line of it.
        let rows = lines(page);
        assert!(rows.len() > 7, "{name}: {} lines", rows.len());
        let (middle, all) = (rows[rows.len() / 2], (0, page.width));
        for (top, end) in &rows {
            if end - top < 4 {
                continue;
            }
            let mut blank = page.clone();
            blank.dots[top * page.width..end * page.width].fill(255);
            assert!(seen(&blank), "{name}: the row at {top} is gone");
            assert!(
                seen(&moved(page, (0, page.width - 1), (*top, *end), (1, 0))),
                "{name}: half a millimetre to the right"
            );
        }
        assert!(seen(&moved(page, all, middle, (0, dots(1)))), "{name}: a line lower by a millimetre");
        let below = (middle.0, page.height() - dots(2) - 1);
        assert!(seen(&moved(page, all, below, (0, dots(2)))), "{name}: a block lower by two millimetres");
    }
}

/// The dots a piece of ink covers: left, right, top, end.
fn covered(area: &Rect, page: &Grey) -> [usize; 4] {
    let dots = |points: f64| points * f64::from(DPI) / 72.0;
    let within = |low: f64, high: f64, most: usize| {
        let to = (0_u16..).take(most).find(|dot| f64::from(*dot) >= dots(high)).map_or(most, usize::from);
        let from = (0_u16..).take(to).find(|dot| f64::from(*dot) + 1.0 > dots(low)).map_or(to, usize::from);
        [from, to]
    };
    let ([left, right], [top, end]) = (within(area.x0, area.x1, page.width), within(area.y0, area.y1, page.height()));
    [left, right, top, end]
}

/// One digit after the other becomes another one, cut out of the same page.
#[test]
fn another_digit_is_seen() {
    let (evaluation, press) = (packs(&example("varneck")), Press::new().expect("a press"));
    let mut tried = 0;
    for (_, pack) in PACKS {
        let bytes = set(&evaluation, &press, HOP, pack);
        for (sheet, rendered) in ink::sheets(bytes.clone()).iter().zip(render_pages(bytes)) {
            let page = &rendered.grey;
            let digits: Vec<(char, [usize; 4])> = sheet
                .ink
                .iter()
                .filter_map(|ink| {
                    let digit = ink.letters.as_deref()?.chars().next().filter(char::is_ascii_digit)?;
                    Some((digit, covered(&ink.area, page)))
                })
                .collect();
            // Some of the small ones; of the large ones all.
            for (at, (digit, [left, right, top, end])) in digits.iter().enumerate() {
                if end - top < 8 && at % 5 != 0 {
                    continue;
                }
                let (width, height) = (right - left, end - top);
                let fits = |(other, area): &&(char, [usize; 4])| {
                    other != digit && (area[1] - area[0], area[3] - area[2]) == (width, height)
                };
                let other = digits.iter().find(fits);
                let Some((_, from)) = other else { continue };
                let mut changed = page.clone();
                for y in 0..height {
                    for x in 0..width {
                        changed.dots[(top + y) * page.width + left + x] = page.at(from[0] + x, from[2] + y);
                    }
                }
                let found = difference::between(page, &changed);
                assert!(found.seen, "{digit} at {left}, {top} can become another: {}", found.words);
                tried += 1;
            }
        }
    }
    assert!(tried > 300, "{tried} digits");
}

/// Black on white, so that a copy of a copy in the rain still reads: no colour, no grey type, nowhere a large dark area.
#[test]
fn pages_are_black_on_white() {
    for (name, page) in pages() {
        assert!(page.coloured.is_none(), "{name}: {:?} is no grey", page.coloured);
        let grey = &page.grey;
        let dark = grey.dots.iter().filter(|dot| **dot < 128).count();
        assert!(dark * 100 < grey.dots.len() * 12, "{name}: {dark} of {} dots are dark", grey.dots.len());
        // A square of 8 mm: bars have white between them, and the code of a site is half white.
        let side = dots(8);
        for top in (0..grey.height() - side).step_by(side / 2) {
            for left in (0..grey.width - side).step_by(side / 2) {
                let square = (top..top + side).flat_map(|y| &grey.row(y)[left..left + side]);
                let dark = square.filter(|dot| **dot < 128).count();
                assert!(dark * 100 < side * side * 80, "{name}: a dark area at {left}, {top}");
            }
        }
    }
}

#[test]
fn type_is_black_and_every_letter_has_a_shape_in_every_pack() {
    each_pack(|name, bytes| {
        for (number, sheet) in ink::sheets(bytes).iter().enumerate() {
            assert_eq!(sheet.images, 0, "{name}, page {}: drawings are lines, not dots", number + 1);
            for ink in &sheet.ink {
                let [red, green, blue, opacity] = ink.colour.unwrap_or([0, 0, 0, 255]);
                assert!(red == green && green == blue, "{name}, page {}: {:?} is no grey", number + 1, ink.colour);
                if let Some(letters) = &ink.letters {
                    assert_eq!((red, opacity), (0, 255), "{name}, page {}: `{letters}` is not black", number + 1);
                    assert!(!ink.missing, "{name}, page {}: `{letters}` has no shape", number + 1);
                }
            }
        }
    });
}

/// Does something with each kind of pack, sound and as a draft, on both papers: those of the first hop of each network and
/// those of every hop with a record.
fn each_pack(look: impl Fn(&str, Vec<u8>)) {
    let press = Press::new().expect("a press");
    let mut kinds = BTreeSet::new();
    for network in ["varneck", "saltmere", "faulty"] {
        let evaluation = packs(&example(network));
        let recorded = |hop: &HopPacks| EndName::BOTH.iter().any(|end| hop.names().has(Pack::Acceptance(*end)));
        for (_, hop) in evaluation.hops.iter().enumerate().filter(|(number, hop)| *number == 0 || recorded(hop)) {
            for pack in all_of(hop) {
                let bytes = hop.set(&press, pack, true, &Trees::of(&evaluation.files)).expect("a pack");
                look(&format!("{network}/{}", hop.names().file_name(pack)), bytes);
                kinds.insert(match pack {
                    Pack::Design => "design",
                    Pack::Install(_) => "install",
                    Pack::Acceptance(_) => "acceptance",
                    Pack::Licence => "licence",
                });
            }
        }
    }
    assert_eq!(kinds.len(), 4, "{kinds:?}");
}

/// A page must look the same on every device: both faces are in every file that uses them, as PDF/A-3 asks
/// (ISO 19005-3:2012 §6.2.11.4), and there is no third.
#[test]
fn every_font_of_every_pack_is_inside_and_is_ours() {
    each_pack(|name, bytes| {
        let document = Document::load_mem(&bytes).expect("a PDF");
        let of_type = |wanted: &str| {
            let typed = document.objects.values().filter_map(|object| object.as_dict().ok());
            let typed =
                typed.filter(|dict| dict.get(b"Type").and_then(Object::as_name).ok() == Some(wanted.as_bytes()));
            typed.cloned().collect::<Vec<Dictionary>>()
        };
        let word = |dict: &Dictionary, key: &[u8]| {
            let word = dict.get(key).and_then(Object::as_name).unwrap_or_else(|error| panic!("{name}: {error}"));
            String::from_utf8_lossy(word).into_owned()
        };
        let fonts = of_type("Font");
        assert!(!fonts.is_empty(), "{name}: no font");
        for font in &fonts {
            let face = word(font, b"BaseFont");
            // A subset is called after six letters of its own: `ABCDEF+Face`, and the composite font after its encoding too.
            let plain = face.split_once('+').map_or(face.as_str(), |(_, plain)| plain);
            let plain = plain.strip_suffix("-Identity-H").unwrap_or(plain);
            assert!(
                ["IBMPlexSans-Regular", "IBMPlexSans-SemiBold"].contains(&plain),
                "{name}: the face {face} is not ours"
            );
            match word(font, b"Subtype").as_str() {
                // The shapes are those of its descendant.
                "Type0" => {}
                "CIDFontType0" | "CIDFontType2" => {
                    assert!(font.get(b"FontDescriptor").is_ok(), "{name}: {face} has no descriptor");
                }
                other => panic!("{name}: {face} is a font of kind {other}"),
            }
        }
        let descriptors = of_type("FontDescriptor");
        assert!(!descriptors.is_empty(), "{name}: no font descriptor");
        for descriptor in &descriptors {
            let face = word(descriptor, b"FontName");
            let files = [b"FontFile2".as_slice(), b"FontFile3"].into_iter().filter_map(|key| descriptor.get(key).ok());
            let streams = files.filter_map(|file| document.dereference(file).ok()?.1.as_stream().ok());
            let sizes: Vec<usize> = streams.map(|stream| stream.content.len()).collect();
            assert!(sizes.len() == 1 && sizes[0] > 1000, "{name}: {face} is not inside ({sizes:?})");
        }
    });
}
