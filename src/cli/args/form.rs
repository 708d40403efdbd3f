//! The forms of findings, and the files they go to.

use std::path::PathBuf;

use clap::ValueEnum;

/// Forms of findings.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Format {
    /// With the YAML they are about.
    Full,
    /// A line each.
    Concise,
    /// One thing after the other, without drawing: to be heard.
    Narrated,
    /// For machines; `schema/report.json` describes it.
    Json,
    /// SARIF 2.1.0, for code scanning.
    Sarif,
    /// Annotations of GitHub's workflows.
    Github,
    /// The code quality report of GitLab.
    Gitlab,
    /// A test report: a case each hop and rule.
    Junit,
    /// A table, for the summary of a job.
    Markdown,
}

impl Format {
    /// Whether people read it on a terminal; the others are whole documents even when there is nothing to say.
    #[must_use]
    pub fn is_text(self) -> bool {
        matches!(self, Self::Full | Self::Concise | Self::Narrated)
    }
}

/// A form and the file it goes to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Output {
    /// The form.
    pub format: Format,
    /// The file.
    pub path: PathBuf,
}

impl Output {
    /// Reads `FORMAT=FILE`.
    ///
    /// # Errors
    /// No such form, or no file.
    pub fn read(text: &str) -> Result<Self, String> {
        let forms = || {
            let named = Format::value_variants().iter().filter_map(ValueEnum::to_possible_value);
            named.map(|value| value.get_name().to_owned()).collect::<Vec<_>>().join(", ")
        };
        match text.split_once('=') {
            Some((form, path)) if !path.is_empty() => {
                let format = Format::from_str(form, false)
                    .map_err(|_| format!("`{form}` is not a form; one of: {}", forms()))?;
                Ok(Self { format, path: path.into() })
            }
            _ => Err(format!("write a form and a file, such as `sarif=report.sarif`; forms: {}", forms())),
        }
    }
}
