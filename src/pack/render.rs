//! From page data to PDF bytes.
//!
//! Templates and fonts are part of the program; nothing is read from the system. Data goes in as a dictionary of strings,
//! never as source. The main file has one fixed name, for every new name is kept for the life of the process.

use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Mutex, PoisonError};

use serde::{Deserialize as _, Serialize};
use serde_json::Value;
use typst::diag::{SourceDiagnostic, Warned};
use typst::foundations::{Dict, Smart};
use typst::text::Font;
use typst::{World, WorldExt as _};
use typst_as_lib::conversions::IntoFonts as _;
use typst_as_lib::{TypstEngine, TypstTemplateMainFile};
use typst_layout::PagedDocument;
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards};

use super::glyphs::spell_uncovered;

const FONTS: [&[u8]; 2] =
    [include_bytes!("fonts/IBMPlexSans_400Regular.ttf"), include_bytes!("fonts/IBMPlexSans_600SemiBold.ttf")];
const MAIN: (&str, &str) = ("main.typ", include_str!("main.typ"));
const TEMPLATES: [(&str, &str); 8] = [
    ("page.typ", include_str!("page.typ")),
    ("application.typ", include_str!("application.typ")),
    ("design.typ", include_str!("design.typ")),
    ("install.typ", include_str!("install.typ")),
    ("site.typ", include_str!("site.typ")),
    ("record.typ", include_str!("record.typ")),
    ("acceptance.typ", include_str!("acceptance.typ")),
    ("network.typ", include_str!("network.typ")),
];

/// Setting pages recurses deeply; the stack of a test thread is not enough for every table.
const STACK: usize = 32 << 20;

/// How many packs, of all presses, ago something must have been of use to be remembered. The presses share what is
/// remembered: with 0 each would clear away what the other has in hand between two passes of layout.
const REMEMBERED: usize = 2;

/// What keeps a pack from being made.
#[derive(Debug, thiserror::Error)]
pub enum PackError {
    /// A template is at fault, or the PDF would break a standard it claims.
    #[error("the pages cannot be set: {0}")]
    Pages(String),
    /// The page data is no data; a view is at fault.
    #[error("the page data cannot be handed over: {0}")]
    Data(#[from] serde_json::Error),
    /// Its pages were not taken out of the sheet.
    #[error("there is nothing to print for this pack")]
    NotTaken,
    /// No thread to work on.
    #[error("no thread to set pages on: {0}")]
    Thread(#[from] rayon::ThreadPoolBuildError),
}

/// What kind of PDF is made.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Finish {
    /// PDF/A-3a and PDF/UA-1, with sources and sheet attached.
    #[default]
    Archival,
    /// The same pages and nothing beside them.
    Plain,
}

/// Templates and fonts, ready to set packs, with a thread of its own.
///
/// Layout hands work to the pool it is called in. On a shared pool a waiting layout may take up another pack on the same
/// stack until it overflows, so each press has a pool of one thread with a roomy stack.
pub struct Press {
    engine: TypstEngine<TypstTemplateMainFile>,
    fonts: Vec<Font>,
    standards: PdfStandards,
    finish: Finish,
    pool: rayon::ThreadPool,
}

impl std::fmt::Debug for Press {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Press").finish_non_exhaustive()
    }
}

impl Press {
    /// A press for archival PDF.
    ///
    /// # Errors
    /// The system gives no thread.
    pub fn new() -> Result<Self, PackError> {
        Self::for_finish(Finish::Archival)
    }

    /// A press for one kind of PDF.
    ///
    /// # Errors
    /// The system gives no thread.
    pub fn for_finish(finish: Finish) -> Result<Self, PackError> {
        let fonts: Vec<Font> = FONTS.iter().flat_map(|font| font.into_fonts()).collect();
        let engine = TypstEngine::builder()
            .main_file(MAIN)
            .with_static_source_file_resolver(TEMPLATES)
            .fonts(fonts.clone())
            .build();
        let standards: &[PdfStandard] = match finish {
            Finish::Archival => &[PdfStandard::A_3a, PdfStandard::Ua_1],
            Finish::Plain => &[],
        };
        let standards = PdfStandards::new(standards).map_err(|error| PackError::Pages(error.message().to_string()))?;
        let pool = rayon::ThreadPoolBuilder::new().num_threads(1).stack_size(STACK).build()?;
        Ok(Self { engine, fonts, standards, finish, pool })
    }

    /// Whether files travel inside what it makes.
    pub(super) fn attaches(&self) -> bool {
        self.finish == Finish::Archival
    }

    /// Sets the data of a pack in type; what the templates find in it is between them and the views.
    pub(super) fn set(&self, pages: &impl Serialize) -> Result<Vec<u8>, PackError> {
        let mut data = serde_json::to_value(pages)?;
        if self.finish == Finish::Plain {
            data["files"] = Value::Array(Vec::new());
        }
        // Attached files keep every character; only what is set in type needs glyphs.
        for part in ["front", "application", "design", "install", "site", "acceptance", "network", "waivers"] {
            spell_uncovered(&mut data[part], &self.fonts);
        }
        let inputs = Dict::deserialize(&data)?;
        let ident = data["front"]["number"].as_str().unwrap_or_default().to_owned();
        self.pool.install(|| self.compile(inputs, ident))
    }

    fn compile(&self, inputs: Dict, ident: String) -> Result<Vec<u8>, PackError> {
        let world = self.engine.world_builder().with_inputs(inputs).build();
        let world = world.map_err(|error| PackError::Pages(error.to_string()))?;
        let Warned { output, warnings } = typst::compile::<PagedDocument>(&world);
        // A template that draws a warning, say for page numbers that never settle, is at fault like one that fails.
        if !warnings.is_empty() {
            return Err(PackError::Pages(in_words(&warnings, &world)));
        }
        let options = PdfOptions {
            ident: Smart::Custom(ident),
            creator: Smart::Custom(Some(concat!("hopwright ", env!("CARGO_PKG_VERSION")).into())),
            standards: self.standards.clone(),
            ..PdfOptions::default()
        };
        let bytes = output.and_then(|document| typst_pdf::pdf(&document, &options));
        typst::comemo::evict(REMEMBERED);
        bytes.map_err(|errors| PackError::Pages(in_words(&errors, &world)))
    }
}

/// Each error with the template and line it comes from.
fn in_words(errors: &[SourceDiagnostic], world: &dyn World) -> String {
    let one = |error: &SourceDiagnostic| {
        let line = error.span.id().zip(world.range(error.span)).and_then(|(id, range)| {
            let line = world.source(id).ok()?.lines().byte_to_line(range.start)? + 1;
            Some(format!(" ({}:{line})", id.vpath().get_without_slash()))
        });
        let said = format!("{}{}", error.message, line.unwrap_or_default());
        error.hints.iter().fold(said, |said, hint| format!("{said}; {}", hint.v))
    };
    errors.iter().map(one).collect::<Vec<_>>().join("; ")
}

/// Works through `jobs` on two archival presses; the answers come in the order of the jobs.
///
/// # Errors
/// No press could be had; the jobs were then not looked at.
pub fn on_presses<J: Sync, R: Send>(jobs: &[J], work: impl Fn(&Press, &J) -> R + Sync) -> Result<Vec<R>, PackError> {
    on_presses_for(Finish::Archival, jobs, work)
}

/// Works through `jobs` on two presses; the answers come in the order of the jobs.
///
/// # Errors
/// No press could be had; the jobs were then not looked at.
pub fn on_presses_for<J: Sync, R: Send>(
    finish: Finish,
    jobs: &[J],
    work: impl Fn(&Press, &J) -> R + Sync,
) -> Result<Vec<R>, PackError> {
    let presses = (0..jobs.len().min(2)).map(|_| Press::for_finish(finish)).collect::<Result<Vec<_>, _>>()?;
    let next = AtomicUsize::new(0);
    let done = Mutex::new(Vec::with_capacity(jobs.len()));
    let run = |press: &Press| {
        loop {
            let number = next.fetch_add(1, Ordering::Relaxed);
            let Some(job) = jobs.get(number) else { return };
            let answer = work(press, job);
            done.lock().unwrap_or_else(PoisonError::into_inner).push((number, answer));
        }
    };
    std::thread::scope(|scope| {
        let Some((first, others)) = presses.split_first() else { return };
        for press in others {
            // Without a thread the first press does the work of this one as well.
            let _ = std::thread::Builder::new().spawn_scoped(scope, || run(press));
        }
        run(first);
    });
    let mut done = done.into_inner().unwrap_or_else(PoisonError::into_inner);
    done.sort_by_key(|(number, _)| *number);
    Ok(done.into_iter().map(|(_, answer)| answer).collect())
}
