//! The plan for machines.

use serde_json::{Value, json as value};

use super::lines::{Bears, Line, Standing};
use super::table::number;

/// The lines of all networks, form version 1. Frequencies in GHz, bandwidths in MHz, levels and ratios in dB and dBm,
/// unrounded; what there is nothing of is left out.
#[must_use]
pub fn json(networks: &[Vec<Line>]) -> String {
    let networks: Vec<Value> = networks.iter().filter(|lines| !lines.is_empty()).map(|lines| network(lines)).collect();
    let whole = value!({ "format_version": 1, "networks": networks });
    let mut text = serde_json::to_string_pretty(&whole).unwrap_or_default();
    text.push('\n');
    text
}

fn network(lines: &[Line]) -> Value {
    let standing = Standing::of(lines);
    value!({
        "network": lines[0].network,
        "greatest_degradation": standing.greatest.0,
        "sum_of_degradations": standing.sum.0,
        "receivers_beside_a_sender": standing.beside,
        "ends": lines.iter().map(end).collect::<Vec<_>>(),
    })
}

fn end(line: &Line) -> Value {
    let mut end = value!({
        "site": line.site,
        "hop": line.hop,
        "end": line.end.letter(),
        "half": line.half,
        "sends": line.sends.0,
        "bandwidth": line.bandwidth.0,
        "polarisation": line.polarisation.word(),
    });
    if let Some(channel) = line.channel {
        end["raster"] = channel.raster.into();
        end["channel"] = number(channel.numbered).into();
    }
    if let Some(bears) = &line.bears {
        add(&mut end, bears);
    }
    end
}

fn add(end: &mut Value, bears: &Bears) {
    end["degradation"] = bears.degradation.0.into();
    if let Some(over_noise) = bears.over_noise {
        end["interference_over_noise"] = over_noise.0.into();
    }
    if let Some((sender, level)) = &bears.strongest {
        end["strongest"] = value!({ "sender": sender, "level": level.0 });
    }
    if !bears.beside.is_empty() {
        end["beside"] = bears.beside.clone().into();
    }
}
