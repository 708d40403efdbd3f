//! Two runs end at the same port.

use crate::rules::prelude::*;
use crate::spec::Port;

rule! {
    /// Two runs end at the same port.
    ///
    /// Source: a port takes one cable.
    severity: Error,
    waivable: SERVICE,
    check: End(check),
}

fn check(_: &HopSheet<'_>, sheet: &EndSheet<'_>, found: &mut Findings) {
    let end = sheet.resolved.end;
    let runs = &end.spec.runs;
    fibres(sheet, found);
    for i in 0..runs.len() {
        let Some(j) = runs[..i].iter().position(|earlier| earlier.port == runs[i].port) else { continue };
        let message = format!("end {}: two runs end at port `{}`", sheet.name, runs[i].port);
        let finding = found.report(&RULE, at!(end.runs[i].port), message, "again here");
        finding.because(at!(end.runs[j].port), "first here");
        let radio = sheet.resolved.radio;
        let able = |port: &&Port| runs[i].carries.iter().all(|service| port.takes(*service));
        let taken = |port: &Port| radio.reads_out_at(&port.id) || runs.iter().any(|run| run.port == port.id);
        let free: Vec<&str> =
            radio.ports.iter().filter(able).filter(|port| !taken(port)).map(|port| &*port.id).collect();
        finding.help(if free.is_empty() {
            "no port is left that takes what this run carries".into()
        } else {
            format!("port {} is free", free.join(" or "))
        });
    }
}

/// A fibre to a port that another run or fibre has.
fn fibres(sheet: &EndSheet<'_>, found: &mut Findings) {
    let end = sheet.resolved.end;
    let (runs, fibres) = (&end.spec.runs, &end.spec.fibre_runs);
    for i in 0..fibres.len() {
        let port = &fibres[i].port;
        let run = runs.iter().position(|run| run.port == *port).map(|j| at!(end.runs[j].port));
        let other = || fibres[..i].iter().position(|other| other.port == *port).map(|j| at!(end.fibre_runs[j].port));
        let Some(first) = run.or_else(other) else { continue };
        let message = format!("end {}: two runs end at port `{port}`", sheet.name);
        let finding = found.report(&RULE, at!(end.fibre_runs[i].port), message, "again here");
        finding.because(first, "first here");
        finding.help("lead one of them to another port");
    }
}
