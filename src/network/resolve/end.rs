//! One end of a hop: its site, its equipment and its cable runs.

use super::super::resolved::{FarPort, ResolvedEnd, ResolvedFibreRun, ResolvedRun};
use super::super::shelf::{Document, Part};
use super::follow::Follow;
use crate::at;
use crate::finding::faults::DANGLING;
use crate::place::{Place, Placed as _};
use crate::spec::{
    Arrester, EarthPoint, End, EndName, FibreRun, Half, Id, Port, PowerPoint, Radio, RadioPort, Ref, Run, Site,
    Template,
};

impl<'n> Follow<'n, '_> {
    pub(super) fn end(&mut self, name: EndName) -> Option<ResolvedEnd<'n>> {
        let (end_at, runs_at, fibres_at) = match name {
            EndName::A => (&"ends.a", &"ends.a.runs[i]", &"ends.a.fibre_runs[i]"),
            EndName::B => (&"ends.b", &"ends.b.runs[i]", &"ends.b.fibre_runs[i]"),
        };
        let spec = &self.hop.spec.ends[name];
        let end = self.hop.part(end_at, &[], spec);
        self.template(spec.like.as_ref(), at!(end.like));
        self.template(spec.grounding.like.as_ref(), at!(end.grounding.like));
        let site = self.document(&spec.site, at!(end.site));
        let radio = self.document(&spec.radio, at!(end.radio));
        let antenna = self.document(&spec.antenna, at!(end.antenna));
        let bracket = self.document(&spec.bracket.model, at!(end.bracket.model));
        let feeder = match &spec.feeder {
            Some(feeder) => self.document(&feeder.model, end.place().below(&"feeder.model", &[])).map(Some),
            None => Some(None),
        };
        let support = site.and_then(|site| {
            let found = self.named(
                &spec.support,
                at!(end.support),
                "support",
                site.supports.iter().map(|one| &one.id),
                (&site.id, at!(site.supports)),
            )?;
            Some(site.part(&"supports[i]", &[found], &site.supports[found]))
        });
        let half = radio.and_then(|radio| self.half(end, radio));
        let earth = self.earth(spec.grounding.bonds_to.as_ref(), at!(end.grounding.bonds_to), site);
        let runs: Vec<Option<ResolvedRun<'n>>> = spec
            .runs
            .iter()
            .enumerate()
            .map(|(i, run)| self.run(self.hop.part(runs_at, &[i], run), radio, site))
            .collect();
        let fibre_runs = spec.fibre_runs.iter().enumerate();
        let fibre_runs: Vec<Option<ResolvedFibreRun<'n>>> =
            fibre_runs.map(|(i, run)| self.fibre_run(self.hop.part(fibres_at, &[i], run), radio)).collect();
        Some(ResolvedEnd {
            name,
            end,
            site: site?,
            support: support?,
            radio: radio?,
            half: half?,
            antenna: antenna?,
            bracket: bracket?,
            feeder: feeder?,
            runs: runs.into_iter().collect::<Option<_>>()?,
            fibre_runs: fibre_runs.into_iter().collect::<Option<_>>()?,
            earth: earth?,
        })
    }

    /// Looks a template up: what it says has been taken in, and here it is told if there is none.
    fn template(&mut self, like: Option<&Ref<Template>>, place: Place) {
        if let Some(like) = like {
            self.document(like, place);
        }
    }

    /// The half of the radio that an end uses: the one it names, or the only one there is.
    fn half(&mut self, end: Part<'n, End>, radio: &'n Document<Radio>) -> Option<Part<'n, Half>> {
        if self.broken(at!(radio.halves)) {
            return None;
        }
        let found = match (&end.spec.half, radio.halves.as_slice()) {
            (None, [_]) => Some(0),
            (Some(id), halves) => self.named(
                id,
                at!(end.half),
                "half",
                halves.iter().map(|half| &half.id),
                (&radio.id, at!(radio.halves)),
            ),
            (None, halves) => {
                let ids: Vec<&str> = halves.iter().map(|half| &*half.id).collect();
                let message =
                    format!("radio `{}` has {} halves and this end does not say which", radio.id, halves.len());
                let finding = self.findings.report(&DANGLING, at!(end.radio), message, "which half of this radio?");
                finding.hop = Some(self.hop.id.to_string());
                finding.help(format!("add `half:` and one of: {}", ids.join(", ")));
                None
            }
        }?;
        Some(radio.part(&"halves[i]", &[found], &radio.halves[found]))
    }

    /// An earth point of the site; outer none if it dangles, inner none if there is nothing to follow.
    #[allow(clippy::option_option, reason = "nothing to follow is not the same as leading nowhere")]
    fn earth(
        &mut self,
        id: Option<&Id>,
        place: Place,
        site: Option<&'n Document<Site>>,
    ) -> Option<Option<Part<'n, EarthPoint>>> {
        let (Some(id), Some(site)) = (id, site) else { return Some(None) };
        let known = site.earth.iter().map(|one| &one.id);
        let found = self.named(id, place, "earth point", known, (&site.id, at!(site.earth)))?;
        Some(Some(site.part(&"earth[i]", &[found], &site.earth[found])))
    }

    /// A power point of the site, in the same way.
    #[allow(clippy::option_option, reason = "nothing to follow is not the same as leading nowhere")]
    fn power_point(
        &mut self,
        run: Part<'n, Run>,
        site: Option<&'n Document<Site>>,
    ) -> Option<Option<Part<'n, PowerPoint>>> {
        let (Some(id), Some(site)) = (&run.spec.power_point, site) else { return Some(None) };
        let known = site.power.iter().map(|one| &one.id);
        let found = self.named(id, at!(run.power_point), "power point", known, (&site.id, at!(site.power)))?;
        Some(Some(site.part(&"power[i]", &[found], &site.power[found])))
    }

    /// A port of the radio.
    fn port(&mut self, id: &Id, place: Place, radio: Option<&'n Document<Radio>>) -> Option<Part<'n, Port>> {
        let radio = radio?;
        let known = radio.ports.iter().map(|port| &port.id);
        let found = self.named(id, place, "port", known, (&radio.id, at!(radio.ports)))?;
        Some(radio.part(&"ports[i]", &[found], &radio.ports[found]))
    }

    fn fibre_run(
        &mut self,
        run: Part<'n, FibreRun>,
        radio: Option<&'n Document<Radio>>,
    ) -> Option<ResolvedFibreRun<'n>> {
        self.template(run.spec.like.as_ref(), at!(run.like));
        let port = self.port(&run.spec.port, at!(run.port), radio);
        let fibre = self.document(&run.spec.fibre, at!(run.fibre));
        Some(ResolvedFibreRun { run, port: port?, fibre: fibre? })
    }

    fn run(
        &mut self,
        run: Part<'n, Run>,
        radio: Option<&'n Document<Radio>>,
        site: Option<&'n Document<Site>>,
    ) -> Option<ResolvedRun<'n>> {
        let spec = run.spec;
        self.template(spec.like.as_ref(), at!(run.like));
        let port = self.port(&spec.port, at!(run.port), radio);
        let cable = self.document(&spec.cable, at!(run.cable));
        let supply = match &spec.supply {
            Some(supply) => self.document(supply, at!(run.supply)).map(Some),
            None => Some(None),
        };
        let arresters: Vec<Option<&'n Document<Arrester>>> = (0..spec.arresters.len())
            .map(|i| self.document(&spec.arresters[i].model, at!(run.arresters[i].model)))
            .collect();
        let power_point = self.power_point(run, site);
        let entry_earth = self.earth(spec.entry_earth.as_ref(), at!(run.entry_earth), site);
        let ends_at = match &spec.ends_at {
            Some(port) => self.far_port(run, port, site).map(Some),
            None => Some(None),
        };
        let feeds = match &spec.feeds.radio {
            Some(radio) => self.document(radio, at!(run.feeds.radio)).map(Some),
            None => Some(None),
        };
        Some(ResolvedRun {
            run,
            port: port?,
            cable: cable?,
            supply: supply?,
            arresters: arresters.into_iter().collect::<Option<_>>()?,
            power_point: power_point?,
            entry_earth: entry_earth?,
            feeds: feeds?,
            ends_at: ends_at?,
        })
    }

    /// The port of another radio, which has to be at the same site.
    fn far_port(
        &mut self,
        run: Part<'n, Run>,
        spec: &'n RadioPort,
        site: Option<&'n Document<Site>>,
    ) -> Option<FarPort<'n>> {
        let hop_at = run.place().below(&"ends_at.hop", &[]);
        let hop = self.document(&spec.hop, hop_at)?;
        let (site_at, radio_at) = match spec.end {
            EndName::A => (at!(hop.ends.a.site), at!(hop.ends.a.radio)),
            EndName::B => (at!(hop.ends.b.site), at!(hop.ends.b.radio)),
        };
        let far = &hop.ends[spec.end];
        if self.broken(site_at) {
            return None;
        }
        if let Some(site) = site.filter(|site| *site.id != **far.site) {
            let message = format!("end {} of hop `{}` is at `{}`, not at `{}`", spec.end, hop.id, far.site, site.id);
            let finding = self.findings.report(&DANGLING, hop_at, message, "a run stays at its site");
            finding.hop = Some(self.hop.id.to_string());
            finding.because(site_at, "there");
            finding.help("name an end that stands at the same site, or describe the two sites as one");
            return None;
        }
        let radio = self.document(&far.radio, radio_at)?;
        let known = radio.ports.iter().map(|port| &port.id);
        let port_at = run.place().below(&"ends_at.port", &[]);
        let found = self.named(&spec.port, port_at, "port", known, (&radio.id, at!(radio.ports)))?;
        Some(FarPort { hop, end: spec.end, radio, port: radio.part(&"ports[i]", &[found], &radio.ports[found]) })
    }
}
