//! Tiles of ground heights: bytes this test writes, read back.

use std::io::{Cursor, Read, Seek};

use hopwright::physics::geodesy::Position;
use hopwright::physics::geotiff;
use hopwright::physics::terrain::{Gathered, Ground, NotATile, SPENT, Tile, tile_name};
use hopwright::units::{Latitude, Longitude, Metres};
use proptest::prelude::*;
use tiff::encoder::colortype::{ColorType, Gray8, Gray16, Gray32Float, Gray64Float, GrayI16};
use tiff::encoder::compression::DeflateLevel;
use tiff::encoder::{Compression, TiffEncoder, TiffValue};
use tiff::tags::Tag;

fn at(latitude: f64, longitude: f64) -> Position {
    Position { latitude: Latitude(latitude), longitude: Longitude(longitude) }
}

/// A tile in SRTM layout of three samples each way, rows from the north.
fn hgt(heights: [[i16; 3]; 3]) -> Vec<u8> {
    heights.iter().flatten().flat_map(|height| height.to_be_bytes()).collect()
}

const ROWS: [[i16; 3]; 3] = [[100, 200, 300], [400, 500, 600], [-7, 800, i16::MIN]];

#[track_caller]
fn is(tile: &Tile, position: Position, expected: f64) {
    match tile.height(position) {
        Ground::Height(Metres(height)) => assert!((height - expected).abs() < 1e-3, "{height}, not {expected}"),
        other => panic!("{other:?}, not {expected}"),
    }
}

#[test]
fn an_hgt_tile_has_its_corners_where_its_name_says() {
    let tile = Tile::hgt("N46E171", &hgt(ROWS)).expect("a tile");
    is(&tile, at(47.0, 171.0), 100.0);
    is(&tile, at(47.0, 172.0), 300.0);
    is(&tile, at(46.0, 171.0), -7.0);
    is(&tile, at(46.5, 171.5), 500.0);
    // Bilinear: the mean of four, and a quarter of the way by hand, 100 + 0.25 × 300 + 0.5 × 100.
    is(&tile, at(46.75, 171.25), 300.0);
    is(&tile, at(46.875, 171.25), 225.0);
    let south = Tile::hgt("S34W101", &hgt(ROWS)).expect("a tile");
    is(&south, at(-33.0, -101.0), 100.0);
    is(&south, at(-33.5, -100.5), 500.0);
}

#[test]
fn a_void_is_no_height_and_outside_is_no_sea() {
    let tile = Tile::hgt("N46E171", &hgt(ROWS)).expect("a tile");
    assert_eq!(tile.height(at(46.1, 171.9)), Ground::Void);
    assert_eq!(tile.height(at(46.0, 172.0)), Ground::Void);
    // On the line of two good samples the void beside them has no weight.
    is(&tile, at(46.5, 171.75), 550.0);
    for outside in [at(47.01, 171.5), at(45.99, 171.5), at(46.5, 170.99), at(46.5, 172.01)] {
        assert_eq!(tile.height(outside), Ground::Outside);
    }
}

#[test]
fn what_is_no_tile_is_refused() {
    for (name, bytes) in
        [("N46E171", vec![0; 7]), ("N46E171", vec![0; 12]), ("N46E171", vec![]), ("46N171E", hgt(ROWS))]
    {
        assert!(Tile::hgt(name, &bytes).is_err(), "{name}, {} bytes", bytes.len());
    }
    assert_eq!(tile_name(at(46.5, 171.2)), "N46E171");
    assert_eq!(tile_name(at(-33.5, -100.5)), "S34W101");
    assert_eq!(tile_name(at(-0.1, -0.1)), "S01W001");
}

/// Keys of a grid of WGS 84 degrees: version, then model type, raster type and system.
fn keys(model: u16, raster: u16, system: u16) -> Vec<u16> {
    vec![1, 1, 0, 3, 1024, 0, 1, model, 1025, 0, 1, raster, 2048, 0, 1, system]
}

/// Three by three samples a hundredth of a degree apart, the north-west one tied to 11° E, 47° N.
fn geotiff(keys: &[u16], void: Option<&str>, compression: Compression) -> Vec<u8> {
    let mut bytes = Cursor::new(Vec::new());
    let mut encoder = TiffEncoder::new(&mut bytes).expect("writable").with_compression(compression);
    let mut image = encoder.new_image::<GrayI16>(3, 3).expect("an image");
    let directory = image.encoder();
    directory.write_tag(Tag::ModelPixelScaleTag, [0.01, 0.01, 0.0].as_slice()).expect("a tag");
    directory.write_tag(Tag::ModelTiepointTag, [0.0, 0.0, 0.0, 171.0, 47.0, 0.0].as_slice()).expect("a tag");
    directory.write_tag(Tag::GeoKeyDirectoryTag, keys).expect("a tag");
    if let Some(void) = void {
        directory.write_tag(Tag::GdalNodata, void).expect("a tag");
    }
    image.write_data(&ROWS.concat()).expect("written");
    bytes.into_inner()
}

/// A tile with all its samples.
fn whole(reader: impl Read + Seek) -> Result<Tile, NotATile> {
    let grid = |n: i32, step: f64| {
        (0..=n).flat_map(move |i| (0..=n).map(move |j| at(47.0 - f64::from(i) * step, 171.0 + f64::from(j) * step)))
    };
    geotiff::tile(reader, grid(60, 0.0083).chain(grid(20, 0.001)), &mut 1_000_000)
}

/// What a file says of its samples beside them.
#[derive(Default)]
struct Says<'t> {
    keys: &'t [u16],
    void: Option<&'t str>,
    metadata: Option<&'t str>,
    mask: bool,
}

/// Three by three samples of any type where [`geotiff`] puts them.
fn of<C: ColorType>(samples: &[C::Inner], says: &Says<'_>) -> Vec<u8>
where
    [C::Inner]: TiffValue,
{
    let mut bytes = Cursor::new(Vec::new());
    let mut encoder = TiffEncoder::new(&mut bytes).expect("writable");
    let mut image = encoder.new_image::<C>(3, 3).expect("an image");
    let directory = image.encoder();
    directory.write_tag(Tag::ModelPixelScaleTag, [0.01, 0.01, 0.0].as_slice()).expect("a tag");
    directory.write_tag(Tag::ModelTiepointTag, [0.0, 0.0, 0.0, 171.0, 47.0, 0.0].as_slice()).expect("a tag");
    let mut all = keys(2, 2, 4326);
    all.extend(says.keys);
    directory.write_tag(Tag::GeoKeyDirectoryTag, all.as_slice()).expect("a tag");
    if let Some(void) = says.void {
        directory.write_tag(Tag::GdalNodata, void).expect("a tag");
    }
    if let Some(metadata) = says.metadata {
        directory.write_tag(Tag::Unknown(42112), metadata).expect("a tag");
    }
    image.write_data(samples).expect("written");
    if says.mask {
        let mut image = encoder.new_image::<Gray8>(3, 3).expect("an image");
        image.encoder().write_tag(Tag::NewSubfileType, 4_u32).expect("a tag");
        image.write_data(&[255; 9]).expect("written");
    }
    bytes.into_inner()
}

#[track_caller]
fn void(bytes: Vec<u8>) {
    let tile = whole(Cursor::new(bytes)).expect("a tile");
    assert_eq!(tile.height(at(46.99, 171.01)), Ground::Void);
    is(&tile, at(47.0, 171.0), 100.0);
}

#[test]
fn a_void_of_single_floats_is_one_though_its_text_has_more_digits() {
    // 0.1 as text is another number than the 32-bit sample nearest to it: held as 64-bit ones they differ.
    for text in ["0.1", "0.10000000149011612", " 0.1 "] {
        let mut samples = [100.0_f32; 9];
        samples[4] = 0.1;
        void(of::<Gray32Float>(&samples, &Says { void: Some(text), ..Says::default() }));
    }
    let mut samples = [100.0_f64; 9];
    samples[4] = 0.1;
    void(of::<Gray64Float>(&samples, &Says { void: Some("0.1"), ..Says::default() }));
}

#[test]
fn no_ground_is_lower_than_500_m_below_the_sea_or_higher_than_9000_m() {
    for absurd in [-500.1_f32, 9000.1, f32::MIN, f32::MAX, f32::INFINITY, f32::NAN, -9999.0, -3.4e38] {
        let mut samples = [100.0_f32; 9];
        samples[4] = absurd;
        void(of::<Gray32Float>(&samples, &Says::default()));
    }
    let mut samples = [100; 9];
    samples[4] = 32767;
    void(of::<GrayI16>(&samples, &Says::default()));
    let tile = Tile::hgt("N46E171", &hgt([[100, 200, 300], [400, -501, 600], [1, 2, 9001]])).expect("a tile");
    assert_eq!(tile.height(at(46.5, 171.5)), Ground::Void);
    assert_eq!(tile.height(at(46.0, 172.0)), Ground::Void);
    is(&tile, at(47.0, 171.0), 100.0);
}

#[test]
fn feet_and_scaled_samples_are_read_as_metres() {
    let scaled = r#"<Metadata><Item name="SCALE" sample="0" role="scale">0.1</Item><Item name="OFFSET" sample="0" role="offset">-20</Item></Metadata>"#;
    let feet = r#"<Metadata><Item name="UNITTYPE" sample="0" role="unittype">ft</Item></Metadata>"#;
    let cases: [(&[u16], Option<&str>, f64); 8] = [
        (&[4099, 0, 1, 9002], None, 304.8),
        (&[4099, 0, 1, 9003], None, 304.800_61),
        (&[4096, 0, 1, 6360], None, 304.800_61),
        (&[4096, 0, 1, 8228], None, 304.8),
        (&[4096, 0, 1, 5703], None, 1000.0),
        (&[4096, 0, 1, 9999, 4099, 0, 1, 9001], None, 1000.0),
        (&[], Some(feet), 304.8),
        (&[], Some(scaled), 80.0),
    ];
    for (keys, metadata, height) in cases {
        let bytes = of::<GrayI16>(&[1000; 9], &Says { keys, metadata, ..Says::default() });
        is(&whole(Cursor::new(bytes)).expect("a tile"), at(46.99, 171.01), height);
    }
}

#[test]
fn what_cannot_be_read_right_is_refused_by_its_name() {
    let fathoms = r#"<Item role="unittype">fathom</Item>"#;
    let scale = r#"<Item role="scale">a lot</Item>"#;
    let feet = r#"<Item role="unittype">ft</Item>"#;
    let cases: [(Says<'_>, &str); 8] = [
        (Says { mask: true, ..Says::default() }, "a mask inside"),
        (Says { keys: &[4096, 0, 1, 5030], ..Says::default() }, "above the ellipsoid (vertical system 5030)"),
        (Says { keys: &[4096, 0, 1, 9999], ..Says::default() }, "vertical system 9999 is not known"),
        (Says { keys: &[4099, 0, 1, 9014], ..Says::default() }, "unit 9014 of its heights is not known"),
        (Says { keys: &[4099, 0, 1, 9001], metadata: Some(feet), ..Says::default() }, "two different units"),
        (Says { metadata: Some(fathoms), ..Says::default() }, "unit `fathom`"),
        (Says { metadata: Some(scale), ..Says::default() }, "scale `a lot` is not a number"),
        (Says { void: Some("none"), ..Says::default() }, "no-data value `none` is not a number"),
    ];
    for (says, words) in cases {
        let why = geotiff::grid(Cursor::new(of::<GrayI16>(&[100; 9], &says))).expect_err("refused").to_string();
        assert!(why.contains(words), "{why}, not {words}");
    }
    let bytes = geotiff(&keys(2, 2, 4979), None, Compression::Uncompressed);
    let why = geotiff::grid(Cursor::new(bytes)).expect_err("refused").to_string();
    assert!(why.contains("EPSG:4979 has heights above the ellipsoid"), "{why}");
}

/// Two tiles of cells that meet at 171.03° E, of one slope eastwards: 1000 m a degree.
#[test]
fn tiles_that_meet_do_not_differ_at_the_seam() {
    let slope = |first: f32| -> Vec<f32> { (0..9).map(|i| 10.0 * (first + [0.0, 1.0, 2.0][i % 3])).collect() };
    let tile = |west: f64, first: f32| {
        let mut bytes = Cursor::new(Vec::new());
        let mut encoder = TiffEncoder::new(&mut bytes).expect("writable");
        let mut image = encoder.new_image::<Gray32Float>(3, 3).expect("an image");
        let directory = image.encoder();
        directory.write_tag(Tag::ModelPixelScaleTag, [0.01, 0.01, 0.0].as_slice()).expect("a tag");
        directory.write_tag(Tag::ModelTiepointTag, [0.0, 0.0, 0.0, west, 47.0, 0.0].as_slice()).expect("a tag");
        directory.write_tag(Tag::GeoKeyDirectoryTag, keys(2, 1, 4326).as_slice()).expect("a tag");
        image.write_data(&slope(first)).expect("written");
        whole(Cursor::new(bytes.into_inner())).expect("a tile")
    };
    let tiles = [tile(171.0, 0.5), tile(171.03, 3.5)];
    for step in 0..=50 {
        let east = 0.005 + 0.001 * f64::from(step);
        let mut gathered = Gathered::default();
        for tile in &tiles {
            if let Some(share) = tile.share(at(46.985, 171.0 + east)) {
                gathered.take(share);
            }
        }
        let Metres(height) = gathered.height().expect("a height");
        assert!((height - 1000.0 * east).abs() < 1e-3, "{height} at {east}");
    }
    // At the outermost edge a single tile has the say, with its last sample.
    assert_eq!(tiles[0].height(at(46.985, 171.001)), Ground::Height(Metres(5.0)));
}

#[test]
fn only_what_is_asked_for_is_decoded_and_no_more_than_may_be() {
    let void = vec![i16::MIN; 3000 * 3000];
    let mut bytes = Cursor::new(Vec::new());
    let compression = Compression::Deflate(DeflateLevel::Fast);
    let mut encoder = TiffEncoder::new(&mut bytes).expect("writable").with_compression(compression);
    let mut image = encoder.new_image::<GrayI16>(3000, 3000).expect("an image");
    image.rows_per_strip(100).expect("set");
    let directory = image.encoder();
    directory.write_tag(Tag::ModelPixelScaleTag, [0.0001, 0.0001, 0.0].as_slice()).expect("a tag");
    directory.write_tag(Tag::ModelTiepointTag, [0.0, 0.0, 0.0, 171.0, 47.0, 0.0].as_slice()).expect("a tag");
    directory.write_tag(Tag::GeoKeyDirectoryTag, keys(2, 2, 4326).as_slice()).expect("a tag");
    image.write_data(&void).expect("written");
    let bytes = bytes.into_inner();
    assert!(bytes.len() < 1_000_000, "a small file: {}", bytes.len());
    let near = [at(46.95, 171.1), at(46.951, 171.2)];
    let mut samples = 2_000_000;
    let tile = geotiff::tile(Cursor::new(&bytes), near, &mut samples).expect("a tile");
    assert_eq!(tile.height(near[0]), Ground::Void);
    let decoded = 2_000_000 - samples;
    assert!((300_000..=600_000).contains(&decoded), "one strip or two of 300,000: {decoded}");
    let why = geotiff::tile(Cursor::new(&bytes), near, &mut 299_999).expect_err("more than may be read");
    assert_eq!(why.to_string(), SPENT);
}

#[test]
fn a_tile_of_10812_samples_each_way_is_read_by_strips() {
    let side = 10_812_u32;
    let mut bytes = Cursor::new(Vec::new());
    // `write_data` compresses; `write_strip` names a compression and leaves it out.
    let compression = Compression::Deflate(DeflateLevel::Fast);
    let mut encoder = TiffEncoder::new(&mut bytes).expect("writable").with_compression(compression);
    let mut image = encoder.new_image::<GrayI16>(side, side).expect("an image");
    image.rows_per_strip(100).expect("set");
    let step = 1.0 / f64::from(side);
    let directory = image.encoder();
    directory.write_tag(Tag::ModelPixelScaleTag, [step, step, 0.0].as_slice()).expect("a tag");
    directory.write_tag(Tag::ModelTiepointTag, [0.0, 0.0, 0.0, 171.0, 47.0, 0.0].as_slice()).expect("a tag");
    directory.write_tag(Tag::GeoKeyDirectoryTag, keys(2, 1, 4326).as_slice()).expect("a tag");
    image.write_data(&vec![321; (side as usize) * (side as usize)]).expect("written");
    let mut samples = 20_000_000;
    let tile = geotiff::tile(Cursor::new(bytes.into_inner()), [at(46.5, 171.5)], &mut samples).expect("a tile");
    is(&tile, at(46.5, 171.5), 321.0);
}

#[test]
fn a_geotiff_reads_back_whatever_its_compression() {
    let points = keys(2, 2, 4326);
    for compression in [Compression::Uncompressed, Compression::Lzw, Compression::Deflate(DeflateLevel::Fast)] {
        let tile = whole(Cursor::new(geotiff(&points, Some("-32768"), compression))).expect("a tile");
        is(&tile, at(47.0, 171.0), 100.0);
        is(&tile, at(46.98, 171.0), -7.0);
        is(&tile, at(46.995, 171.005), 300.0);
        assert_eq!(tile.height(at(46.98, 171.02)), Ground::Void);
        assert_eq!(tile.height(at(46.97, 171.0)), Ground::Outside);
    }
}

#[test]
fn cells_reach_half_a_step_beyond_their_middles() {
    let bytes = geotiff(&keys(2, 1, 4326), None, Compression::Uncompressed);
    let tile = whole(Cursor::new(bytes)).expect("a tile");
    is(&tile, at(46.995, 171.005), 100.0);
    is(&tile, at(47.0, 171.0), 100.0);
    is(&tile, at(46.985, 171.015), 500.0);
    assert_eq!(tile.height(at(47.001, 171.0)), Ground::Outside);
}

#[test]
fn a_grid_that_is_not_of_degrees_is_refused() {
    for (keys, words) in
        [(keys(1, 1, 4326), "EPSG:4326"), (keys(2, 1, 4314), "EPSG:4326"), (vec![1, 1, 0, 0], "EPSG:4326")]
    {
        let bytes = geotiff(&keys, None, Compression::Uncompressed);
        let why = geotiff::grid(Cursor::new(bytes)).expect_err("no grid of degrees").to_string();
        assert!(why.contains(words), "{why}");
    }
    let mut bytes = Cursor::new(Vec::new());
    TiffEncoder::new(&mut bytes).expect("writable").write_image::<Gray16>(2, 2, &[1, 2, 3, 4]).expect("written");
    let plain = Cursor::new(bytes.into_inner());
    assert!(whole(plain).expect_err("no position").to_string().contains("without a position"));
    let bytes = geotiff(&keys(2, 2, 4326), None, Compression::Uncompressed);
    for length in 0..bytes.len() {
        // Cut anywhere it is an error or a tile, never a panic.
        let _ = whole(Cursor::new(&bytes[..length]));
    }
}

#[test]
fn floating_heights_keep_their_decimals() {
    let mut bytes = Cursor::new(Vec::new());
    let mut encoder = TiffEncoder::new(&mut bytes).expect("writable");
    let mut image = encoder.new_image::<Gray32Float>(2, 2).expect("an image");
    image.encoder().write_tag(Tag::ModelPixelScaleTag, [0.5, 0.5, 0.0].as_slice()).expect("a tag");
    image.encoder().write_tag(Tag::ModelTiepointTag, [0.0, 0.0, 0.0, 171.0, 47.0, 0.0].as_slice()).expect("a tag");
    image.encoder().write_tag(Tag::GeoKeyDirectoryTag, keys(2, 2, 4258).as_slice()).expect("a tag");
    image.write_data(&[1.25, 2.5, 3.75, f32::NAN]).expect("written");
    let tile = whole(Cursor::new(bytes.into_inner())).expect("a tile");
    is(&tile, at(47.0, 171.25), 1.875);
    assert_eq!(tile.height(at(46.6, 171.4)), Ground::Void);
}

proptest! {
    /// Bilinear heights lie between the lowest and the highest sample.
    #[test]
    fn a_height_is_none_that_no_sample_has(latitude in 46.5_f64..47.0, longitude in 171.0_f64..172.0) {
        let tile = Tile::hgt("N46E171", &hgt(ROWS)).expect("a tile");
        let Ground::Height(Metres(height)) = tile.height(at(latitude, longitude)) else { panic!("no height") };
        prop_assert!((100.0..=600.0).contains(&height));
    }
}
