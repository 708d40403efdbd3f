//! A plan in words, for whoever decides on it.

use std::fmt::Write as _;

use super::columns::What;
use super::plan::Plan;
use crate::text::plain::spelled;

/// The plan: what is new, changed field by field, unchanged, not mentioned.
#[must_use]
pub fn in_words(plan: &Plan, what: What) -> String {
    let (mut out, kind) = (String::new(), what.kind());
    // Writing to a string cannot fail.
    for new in &plan.new {
        let _ = writeln!(out, "new            {kind} {}  {}", new.id, new.path);
        if !new.missing.is_empty() {
            let _ = writeln!(out, "                 still to be written: {}", new.missing.join(", "));
        }
        remarks(&mut out, &new.remarks);
    }
    for changed in &plan.changed {
        let _ = writeln!(out, "changed        {kind} {}  {}", changed.id, changed.place);
        for [key, old, new] in &changed.fields {
            let old = if old.is_empty() { "nothing".to_owned() } else { spelled(old) };
            let _ = writeln!(out, "                 {key}: {old} → {}", spelled(new));
        }
        remarks(&mut out, &changed.remarks);
    }
    listed(&mut out, "unchanged", what, &plan.unchanged);
    listed(&mut out, "not mentioned", what, &plan.not_mentioned);
    for name in &plan.dangling {
        let _ = writeln!(out, "not there yet  {}", spelled(name));
    }
    out
}

fn remarks(out: &mut String, remarks: &[String]) {
    for remark in remarks {
        let _ = writeln!(out, "                 {}", spelled(remark));
    }
}

fn listed(out: &mut String, standing: &str, what: What, ids: &[String]) {
    if !ids.is_empty() {
        let kind = if ids.len() == 1 { what.kind().word() } else { what.folder() };
        let _ = writeln!(out, "{standing:<14} {kind} {}", ids.join(", "));
    }
}
