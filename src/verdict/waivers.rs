//! Waivers: departures from a rule that somebody with authority has accepted, for a target, a value and a time.
//!
//! Every way a waiver can fail ends with the finding being shown: without an approver, past its day, worse than accepted, or
//! for a rule that nobody may waive, it has no effect, and that is said as well.

use std::collections::HashSet;
use std::sync::Arc;

use crate::at;
use crate::finding::faults::waivers::{EXCEEDED, EXPIRED, EXPIRING, NOT_ALLOWED, NOT_VALID, UNLIMITED, UNUSED, WAITS};
use crate::finding::faults::{DANGLING, NOT_EVALUATED, UNKNOWN_RULE};
use crate::finding::{Finding, Findings, Measured, Waived};
use crate::network::{Document, Files, Library, Look};
use crate::place::Placed as _;
use crate::place::route::lies_in;
use crate::rules::{self, Settings};
use crate::spec::{Date, EndName, Waiver, WaiverTerms};
use crate::text::nearest::{did_you_mean, nearest};
use crate::units;
use crate::verdict::fingerprint;

/// The most months from approval to expiry, where the network says nothing.
const LONGEST_MONTHS: u8 = 12;

/// Days before expiry from which it is announced, where the network says nothing.
const NOTICE_DAYS: u8 = 30;

/// The waivers of a network that can hold at all.
pub struct Waivers<'n> {
    sound: Vec<Sound<'n>>,
    today: Option<Date>,
    notice: i64,
    files: &'n Files,
}

struct Sound<'n> {
    document: &'n Document<Waiver>,
    waived: Arc<Waived>,
    expired: bool,
}

/// How a finding stands to a waiver of its rule and target.
enum Standing {
    Accepted,
    /// Worse than what was accepted.
    Worse,
    /// The value accepted is none that the rule compares.
    Incomparable(String),
}

impl<'n> Waivers<'n> {
    /// Those of a network on a day; without one none holds. What is wrong with them goes to `found`.
    pub fn of(library: &'n Library, files: &'n Files, today: Option<Date>, found: &mut Findings) -> Self {
        let none = WaiverTerms::default();
        let terms = library.networks.documents.first().map_or(&none, |network| &network.waivers);
        let longest = terms.longest_months.unwrap_or(LONGEST_MONTHS);
        let documents = library.waivers.documents.iter();
        let dated = today.into_iter().flat_map(|today| documents.clone().map(move |waiver| (waiver, today)));
        let sound = dated
            .filter(|(waiver, today)| can_hold(waiver, library, *today, longest, found))
            .map(|(waiver, today)| Sound { expired: waiver.expires < today, ..Sound::of(waiver) })
            .collect();
        Self { sound, today, notice: terms.notice_days.unwrap_or(NOTICE_DAYS).into(), files }
    }

    /// Marks the findings of a hop that are accepted; says of the others why a waiver for them does not hold.
    pub fn apply(&self, findings: &mut [Finding]) {
        for finding in findings {
            let fitting: Vec<&Sound<'_>> = self.sound.iter().filter(|waiver| self.fits(waiver, finding)).collect();
            let holds = |waiver: &&&Sound<'_>| {
                !waiver.expired && matches!(standing(waiver.document, finding), Standing::Accepted)
            };
            finding.waived = fitting.iter().find(holds).map(|waiver| Arc::clone(&waiver.waived));
            if finding.waived.is_some() {
                continue;
            }
            for waiver in fitting {
                let document = waiver.document;
                if waiver.expired {
                    finding.because(at!(document.expires), "waived until this day");
                } else if let (Standing::Worse, Some(accepts)) = (standing(document, finding), &document.accepts) {
                    finding.because(at!(document.accepts), format!("no worse than {accepts} is waived"));
                }
            }
        }
    }

    /// Says how each waiver stands, once all hops of the network have been judged.
    pub fn report(&self, judged: &[Finding], evaluated: &HashSet<&str>, settings: &Settings<'_>, found: &mut Findings) {
        let Some(today) = self.today else { return };
        let in_part: HashSet<&str> = judged
            .iter()
            .filter(|finding| *finding.rule == NOT_EVALUATED)
            .filter_map(|finding| finding.hop.as_deref())
            .collect();
        for waiver in &self.sound {
            let document = waiver.document;
            let (id, hop) = (&document.id, &*document.target.hop.0);
            let left = document.expires.day_number() - today.day_number();
            if waiver.expired {
                let message = format!("waiver `{id}` expired on {}, {}", document.expires, ago(-left));
                let finding = found.report(&EXPIRED, at!(document.expires), message, "its last day");
                finding.help("fix what it accepted, or have it approved again; then remove it or extend its date");
                continue;
            }
            let fitting: Vec<&Finding> = judged.iter().filter(|finding| self.fits(waiver, finding)).collect();
            let waits = !evaluated.contains(hop) || in_part.contains(hop) || settings.is_off_somewhere(&document.rule);
            if fitting.is_empty() && waits {
                let message = format!("waiver `{id}`: `{}` was not run on all of hop `{hop}`", document.rule);
                let finding = found.report(&WAITS, at!(document.rule), message, "so nobody knows whether it is needed");
                finding.help("keep it until the rule has run");
            } else if fitting.is_empty() {
                let message = format!("waiver `{id}`: `{}` finds nothing there to waive", document.rule);
                let finding = found.report(&UNUSED, at!(document.target), message, "nothing is found at this target");
                finding.help("take the waiver out, or correct its target");
            }
            for finding in &fitting {
                report_standing(document, finding, found);
            }
            report_unlimited(document, &fitting, found);
            let holds = fitting.iter().any(|finding| finding.waived.as_ref() == Some(&waiver.waived));
            if holds && left <= self.notice {
                let when = if left == 0 { "today".into() } else { format!("in {}", days(left)) };
                let message = format!("waiver `{id}` expires on {}, {when}", document.expires);
                let finding = found.report(&EXPIRING, at!(document.expires), message, "its last day");
                finding.help("fix what it accepts, or have it approved again before then");
            }
        }
    }

    /// Whether one of them is for a hop.
    #[must_use]
    pub fn are_for(&self, hop: &str) -> bool {
        self.sound.iter().any(|waiver| *waiver.document.target.hop.0 == *hop)
    }

    /// Whether a waiver is for the rule and the target of a finding.
    fn fits(&self, waiver: &Sound<'_>, finding: &Finding) -> bool {
        let (document, target) = (waiver.document, &waiver.document.target);
        let end = target.end;
        *document.rule == *finding.rule.name
            && finding.hop.as_deref() == Some(&*target.hop.0)
            && (end.is_none() || end == finding.end)
            && target.field.as_ref().is_none_or(|field| self.is_in_field(finding, field, end))
    }

    /// Whether what a finding is known by lies in a field, which may be named from the end.
    fn is_in_field(&self, finding: &Finding, field: &str, end: Option<EndName>) -> bool {
        let route = fingerprint::target(finding, self.files).route;
        lies_in(&route, field) || end.is_some_and(|end| lies_in(&route, &format!("ends.{end}.{field}")))
    }
}

impl<'n> Sound<'n> {
    fn of(document: &'n Document<Waiver>) -> Self {
        let waived = Waived {
            id: document.id.to_string(),
            departure: document.departure.word(),
            reason: document.reason.to_string(),
            approver: document.approver.to_string(),
            approved_on: document.approved_on.to_string(),
            expires: document.expires.to_string(),
            reference: document.reference.to_string(),
            compensation: document.compensation.as_ref().map(ToString::to_string),
            place: document.place(),
        };
        Self { document, waived: Arc::new(waived), expired: false }
    }
}

/// Says that a waiver accepts whatever value comes, where its rule compares one; the value that stands now is shown.
fn report_unlimited(document: &Document<Waiver>, fitting: &[&Finding], found: &mut Findings) {
    let measured = fitting.iter().find_map(|finding| Some((finding, finding.measured.as_ref()?)));
    let Some((finding, measured)) = measured.filter(|_| document.accepts.is_none()) else { return };
    let (id, value) = (&document.id, &measured.text);
    let message = format!("waiver `{id}` accepts any value; `{}` finds {value} today", document.rule);
    let report = found.report(&UNLIMITED, at!(document.accepts), message, "no `accepts` here");
    if let Some(label) = finding.labels.first() {
        report.because(label.spot.clone(), format!("{value} here"));
    }
    report.help("add `accepts:` with the worst value that was agreed");
}

/// Says where what was accepted is passed, or cannot be compared.
fn report_standing(document: &Document<Waiver>, finding: &Finding, found: &mut Findings) {
    let Some(accepts) = &document.accepts else { return };
    let (id, rule) = (&document.id, &document.rule);
    match standing(document, finding) {
        Standing::Accepted => {}
        Standing::Worse => {
            let value = finding.measured.as_ref().map(|measured| measured.text.clone()).unwrap_or_default();
            let message = format!("waiver `{id}` accepts {accepts}, and `{rule}` finds {value}");
            let report = found.report(&EXCEEDED, at!(document.accepts), message, "the worst that was accepted");
            if let Some(label) = finding.labels.first() {
                report.because(label.spot.clone(), format!("{value} here"));
            }
            report.help("fix it, or have the worse value approved");
        }
        Standing::Incomparable(why) => {
            let message = format!("waiver `{id}`: {why}");
            let report = found.report(&NOT_VALID, at!(document.accepts), message, "cannot be compared");
            report.help("write the value as the message of the finding does, or leave `accepts` out");
        }
    }
}

/// Whether a waiver can hold on any day; what keeps it from that is reported.
fn can_hold(document: &Document<Waiver>, library: &Library, today: Date, longest: u8, found: &mut Findings) -> bool {
    let (id, before) = (&document.id, found.list.len());
    match rules::every().find(|rule| *rule.name == *document.rule) {
        None => {
            let message = format!("there is no rule `{}`", document.rule);
            let finding = found.report(&UNKNOWN_RULE, at!(document.rule), message, "not a rule");
            finding.help(match nearest(&document.rule, rules::every().map(|rule| rule.name)) {
                Some(guess) => did_you_mean(guess),
                None => "`explain` lists every rule".into(),
            });
        }
        Some(rule) => {
            if let Some(why) = rule.never_waived() {
                let message = format!("`{}` cannot be waived: {why}", rule.name);
                let finding = found.report(&NOT_ALLOWED, at!(document.rule), message, "no waiver holds for this");
                finding.help("fix what it finds; the waiver has no effect");
            }
        }
    }
    if let Look::Missing(guess) = library.look(&document.target.hop) {
        let message = format!("the network has no hop `{}`", document.target.hop);
        let finding = found.report(&DANGLING, at!(document.target.hop), message, "unresolved reference");
        finding.help(match guess {
            Some(guess) => did_you_mean(guess),
            None => "take the waiver out if the hop is gone".into(),
        });
    }
    if document.approved_on > today {
        let message = format!("waiver `{id}` is approved on {}, and today is {today}", document.approved_on);
        let finding = found.report(&NOT_VALID, at!(document.approved_on), message, "has not come yet");
        finding.help("it has no effect before that day");
    } else if document.expires < document.approved_on {
        let message = format!("waiver `{id}` expires on {}, before it is approved", document.expires);
        let finding = found.report(&NOT_VALID, at!(document.expires), message, "before its first day");
        finding.because(at!(document.approved_on), "its first day").help("correct one of the dates");
    } else if document.expires > document.approved_on.months_later(longest) {
        let message = format!(
            "waiver `{id}` runs from {} to {}: more than {longest} months",
            document.approved_on, document.expires
        );
        let finding = found.report(&NOT_VALID, at!(document.expires), message, "too far away");
        finding.help("have it approved for less, or set `waivers.longest_months` in the network");
    }
    found.list.len() == before
}

fn standing(document: &Document<Waiver>, finding: &Finding) -> Standing {
    let Some(accepts) = &document.accepts else { return Standing::Accepted };
    let Some(measured) = &finding.measured else {
        return Standing::Incomparable(format!("`{}` compares no value, so none can be accepted", document.rule));
    };
    match accepted(accepts, measured) {
        Err(why) => Standing::Incomparable(why),
        Ok(worst) if measured.is_worse_than(worst) => Standing::Worse,
        Ok(_) => Standing::Accepted,
    }
}

/// The value accepted, in the base unit of what was measured.
fn accepted(text: &str, measured: &Measured) -> Result<f64, String> {
    let kind = units::Kind::named(measured.quantity).ok_or_else(|| format!("there is no {}", measured.quantity))?;
    units::read(kind, text)
        .map_err(|fault| format!("`{text}` is not what was found, {}: {}", measured.text, fault.reason))
}

fn days(count: i64) -> String {
    if count == 1 { "1 day".into() } else { format!("{count} days") }
}

fn ago(count: i64) -> String {
    format!("{} ago", days(count))
}
