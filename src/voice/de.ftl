# Deutsch. Ein Schlüssel für jeden Satz einer Seite; { $names } bleibt offen. Schritte stehen im Infinitiv.

range = { $least } bis { $most }

## Safety messages: what it is, what it does to people, how to avoid it.

signal-danger = GEFAHR
signal-warning = WARNUNG
signal-notice = HINWEIS

caution-height = Arbeiten in der Höhe.
caution-height-consequence = Ein Absturz ist tödlich.
caution-height-avoid =
    Nur aufsteigen darf, wer für dieses Bauwerk ausgebildet, befugt und ausgerüstet ist, und niemand allein. Den Rettungsplan vereinbaren, bevor jemand den Boden verlässt. Jedes Werkzeug anbinden. Den Bereich darunter frei von Menschen halten.

caution-lines = Stromleitungen.
caution-lines-consequence = Berühren oder Annähern ist tödlich.
caution-lines-avoid =
    Nach oben schauen, bevor etwas aufgerichtet oder hochgezogen wird. Den Abstand einhalten, den der Betreiber der Leitung und die örtlichen Vorschriften verlangen. Könnte ein Mast, eine Leiter oder eine Antenne auf eine Leitung fallen: Arbeit anhalten und den Betreiber fragen.

caution-weather = Blitz, Wind und Eis.
caution-weather-consequence = Ein Einschlag auch nur in der Nähe kann töten; Böen und Eis werfen Menschen und Teile herunter.
caution-weather-avoid =
    Beim ersten Donner absteigen, oder sobald der Standort es anordnet. Bei Gewitter kein Kabel berühren. Nicht aufsteigen, wenn Wind oder Eis die Grenzen des Arbeitgebers oder des Standorts überschreiten.

caution-electricity = Elektrischer Strom.
caution-electricity-consequence = Stromschlag und Verbrennungen; Erschrecken in der Höhe kann zum Absturz führen.
caution-electricity-avoid =
    Arbeiten am Netz einer nach den örtlichen Vorschriften zugelassenen oder befähigten Elektrofachkraft überlassen. Freischalten, gegen Wiedereinschalten sichern, Spannungsfreiheit feststellen. Den Erdungsleiter zuerst anschließen und zuletzt lösen.

caution-radiation = Funkwellen der Antenne.
caution-radiation-consequence = Dicht vor einer sendenden Antenne können sie den Körper erwärmen und die Augen schädigen.
caution-radiation-avoid =
    Den Raum vor der Antenne frei von Menschen halten, solange der Sender eingeschaltet ist. Die Abstände unter „Vor der Arbeit“ gelten für die größte zulässige Leistung: Die Abstände des Herstellers und die verantwortliche Person dieses Standorts gehen vor.

caution-load = Schwere Teile und das Bauwerk, das sie trägt.
caution-load-consequence = Ein fallendes Teil oder ein versagender Träger kann Menschen darunter töten.
caution-load-avoid =
    Von einem befähigten Tragwerksplaner bestätigen lassen, dass das Bauwerk die Last trägt; in dieser Mappe wird das nicht beurteilt. Mit Zugseil und Führungsseil heben, zu zweit, wo einer nicht genügt.

caution-makers = Anleitungen der Hersteller und örtliche Vorschriften.
caution-makers-consequence = Ein entgegen diesen verwendetes Teil kann versagen.
caution-makers-avoid =
    Sie gehen dieser Mappe vor. Verlangen sie mehr, als hier gedruckt ist: danach handeln und es ins Protokoll schreiben.

## Words that stand for what an author left out, and other small ones.

not-set = NICHT FESTGELEGT
not-stated = nicht angegeben
none = keine
nothing = —

## The head and foot of every page.

pack-design = Planungsmappe
pack-site = Standortmappe
title-site = { $site }: Standortmappe
pack-install = Montagemappe
pack-acceptance = Abnahmeprotokoll
title-design = { $hop }: Planungsmappe
pack-licence = Antragsdaten
title-licence = { $hop }: Antragsdaten
title-install = { $hop }, Ende { $end }: Montagemappe
title-acceptance = { $hop }, Ende { $end }: Abnahmeprotokoll
end-at = Ende { $end }: { $site }
errors-not-built =
    { $count ->
        [one] 1 Fehler ist offen, nicht bauen
       *[other] { $count } Fehler sind offen, nicht bauen
    }
errors-not-accepted =
    { $count ->
        [one] 1 Fehler ist offen, nicht abnehmen
       *[other] { $count } Fehler sind offen, nicht abnehmen
    }
nobody-approved = niemand hat diese Revision freigegeben
draft-on-request = auf Wunsch als Entwurf gedruckt
draft-because = ENTWURF: { $reasons }.

## Parts to take along.

part-radio = Funkgerät
part-radio-detail = { $title }, Hälfte „{ $half }“{ $mass }
part-antenna = Antenne
part-bracket = Halterung
part-feeder = Speiseleitung
part-bracket-detail = { $title }, Einbaulage { $way-up }{ $mass }
part-band = Schelle oder Bügelschraube
part-band-detail = der Halterung, für ein Rohr von { $tube }
part-plate = Verlängerungsplatte
part-conductor = Erdungsleiter
part-conductor-detail = { $metal } { $size }
part-conductor-detail-laid = { $metal } { $size }, { $length } verlegt
part-lug = Kabelschuh
part-lug-detail = für { $size }, am Funkgerät: { $terminal }
part-lug-or-clamp = Kabelschuh oder Klemme
part-lug-or-clamp-detail = für { $size }, an: { $bond }
part-bonding-lead = Erdanschluss eines Ableiters
part-bonding-lead-detail = kurz, mit Kabelschuh; Querschnitt nach Ableiterhersteller und Vorschrift
part-blank = Blindstopfen
part-blank-detail = vom Hersteller, für Port { $port }
part-cable = Kabel an Port { $port }
part-cable-detail = { $title }, { $screen }, Mantel für { $jacket }; { $outdoor } außen, { $indoor } innen
part-plug = Stecker
part-plug-plain = ohne Schirmgehäuse, für { $diameter }
part-plug-metal = Metallgehäuse, auf den Schirm gecrimpt, für { $diameter }
part-insert = Dichteinsatz
part-insert-detail = { $insert } für Port { $port }
part-arrester = Überspannungsableiter
part-supply = Speisegerät
bill-fibre = Glasfaser
bill-pluggable = Steckmodul
part-fibre = Glasfaser zu Port { $port }
part-fibre-detail = { $title }, { $category }
part-pluggable-here = Steckmodul für Port { $port }
part-pluggable-there = Steckmodul für ihr anderes Ende
size-not-set = Querschnitt NICHT FESTGELEGT
length-not-set = Länge NICHT FESTGELEGT
earth-point-not-set = der Erdungspunkt NICHT FESTGELEGT
at-the-radio = am Funkgerät
at-the-entry = an der Kabeleinführung
at-the-far-end = am anderen Ende des Kabels
upright = aufrecht
inverted = kopfüber (Oberseite nach unten)
tool-wrench = Drehmomentschlüssel
tool-wrench-for = Drehmomentschlüssel für { $torque }
tool-wrench-range = Drehmomentschlüssel von { $least } bis { $most }
tool-wrench-sockets = { $wrench } mit Einsätzen { $sockets }
tool-meter = Voltmeter mit Millivolt-Anzeige und Messleitung für Port { $port }
tool-shown-level = was zum Ablesen des Pegels nötig ist ({ $place }), Voltmeter
tool-voltmeter = Voltmeter
tools =
    Außerdem: { $wrench }, { $meter }, Wasserwaage, Kompass, Kabeltester, Dichtmittel gegen Wetter, Kamera, diese Mappe.

## Side lobes.

lobes-on = Auf einer Nebenkeule
lobes-level = Pegel
lobes-meter = Anzeige
lobes-warning = Zeigt das Voltmeter { $reading }, steht die Antenne auf einer Nebenkeule. Weiter schwenken.
lobes-stop = { $reading }, Anschlag

## Steps of mounting.

step-tube = { $support } ({ $kind }) suchen und das Rohr messen: { $diameter } außen.
step-landmark = Weit weg von Stahl stehen und die Gegenstelle nach ihrem Azimut suchen. Eine Landmarke dahinter wählen.
step-look = Die Strecke entlangschauen. Steht etwas darin: anhalten und den Planer anrufen.
step-plate = Verlängerungsplatte { $plate } an die Halterung schrauben.
step-bracket-way-up = Halterung in Einbaulage drehen: { $way-up }, gesehen wie vom Hersteller gezeichnet.
step-fine-azimuth = Azimut-Feinschraube auf die Mitte ihres Wegs stellen.
step-polarisation = Antenne so am Funkgerät befestigen, dass die Polarisation { $polarisation } ist.
step-lift = Antenne, Funkgerät und Halterung wiegen zusammen { $mass }, ohne Eis. Vereinbaren, wer hebt, mit welchem Seil, und wo niemand steht.
step-lift-unstated = Was Antenne, Funkgerät und Halterung wiegen, ist nicht angegeben: vor dem Heben herausfinden. Vereinbaren, wer hebt, mit welchem Seil, und wo niemand steht.
step-clamp = Halterung hochziehen und so klemmen, dass die Antennenmitte { $height } über dem Boden liegt.
step-hang = Funkgerät und Antenne hochziehen und in die Halterung hängen.
step-tilt = Neigung auf { $tilt } stellen.
step-bearing = Antenne auf { $bearing } rechtweisend drehen, zur Landmarke.
step-nip = Jede Schraube nur so weit anziehen, dass nichts rutscht. Das volle Drehmoment kommt nach dem Ausrichten.
tilt-up = { $tilt } (nach oben)
tilt-down = { $tilt } (nach unten)

## Steps of grounding and cabling.

step-earth-ask = Erdungspunkt des Standorts (NICHT FESTGELEGT: den Planer fragen)
step-earth-bonded = Prüfen, dass dieser Erdungspunkt mit dem Erder des Gebäudes verbunden ist. Wenn nicht: anhalten und fragen.
step-bond = Erdungsleiter anschließen an: { $bond }.
step-lead = Kurz und gerade zum Funkgerät führen, ohne Schleife, kein Biegeradius unter { $bend }, und befestigen an: { $terminal }.
step-lead-torque = Kurz und gerade zum Funkgerät führen, ohne Schleife, kein Biegeradius unter { $bend }, befestigen an: { $terminal }, und mit { $torque } anziehen.
step-pull = Kabel { $cable } ziehen: von Port { $port } { $to }. Biegeradius beim Ziehen nicht unter { $pulling }, befestigt nicht unter { $fixed }. Festbinden.
step-pull-to-device = zum Gerät: { $device }
step-pull-to-building = zum Gebäude
step-pull-to-cabinet = zum Schrank
step-pull-to-far-end = zum anderen Ende
step-pull-to-radio = zu Port { $port } des Funkgeräts der Strecke { $hop }, Ende { $end }
step-insert = Kabel an Port { $port } mit diesem Dichteinsatz abdichten: { $insert }.
step-insert-by-hand = Kabel an Port { $port } mit diesem Dichteinsatz abdichten: { $insert }. Nur von Hand anziehen.
step-drip-loop = Tropfschleife formen, deren tiefster Punkt { $depth } unter Port { $port } hängt.
step-lightning-direct = Prüfen, dass die Verbindung von { $support } mit dem Blitzschutzsystem vorhanden und in Ordnung ist. Wenn nicht: anhalten und fragen.
step-lightning-spark-gap = Prüfen, dass die Trennfunkenstrecke zwischen { $support } und dem Blitzschutzsystem vorhanden und in Ordnung ist. Wenn nicht: anhalten und fragen.
step-lightning-apart = Antenne, Halterung und jedes Kabel mindestens { $distance } von allen Leitern des Blitzschutzsystems entfernt halten. Nichts mit ihm verbinden.
step-lightning-ask = Die für das Blitzschutzsystem verantwortliche Person fragen, bevor in seiner Nähe etwas befestigt oder mit ihm verbunden wird.
step-arrester = Ableiter { $arrester } { $at } einbauen und erden.
step-screen = Schirm des Kabels an Port { $port } erden: { $bonded }.
step-screen-entry = Schirm des Kabels an Port { $port } erden: { $bonded }, an der Einführung auf: { $earth }.
step-test = Jedes Adernpaar des Kabels an Port { $port } und den Schirm von Ende zu Ende prüfen.
step-test-cores = Beide Adern des Kabels an Port { $port } von Ende zu Ende prüfen, und dass nichts sie verbindet.
step-switch = Leitung von Port { $port } in Port { $socket } stecken: { $switch }.
step-fibre-pull = Glasfaser { $fibre } von Port { $port } aus ziehen, Biegeradius nicht unter { $bend }. Kappen auf den Steckern lassen.
step-fibre-metal = Metall im Glasfaserkabel zu Port { $port } an der Einführung erden.
step-fibre-plug = Beide Stecker reinigen, { $here } an Port { $port } und { $there } am anderen Ende stecken. Niemals in eine Faser blicken: Ihr Licht ist unsichtbar und schädigt das Auge.
step-fibre-test = Glasfaser zu Port { $port } mit Lichtquelle und Messgerät messen: nicht mehr als { $loss } von Ende zu Ende.
step-blank = Port { $port } mit dem Blindstopfen des Herstellers schließen.
step-leave-free = Port { $port } für das Voltmeter frei lassen.
step-erase-button = Finger weg von { $button }: { $held } lang gedrückt löscht er: { $erases }.
step-wiring = Kontakte und Pole des Speisegeräts { $supply } messen, bevor etwas eingesteckt wird: { $wiring }.
step-sends-at-once = Gegenstelle anrufen, niemand bleibt vor einer der Antennen: Das Funkgerät sendet unter Umständen, sobald es Strom hat.
step-connect = Leitung von Port { $port } an das Speisegerät { $supply } ({ $at }) anschließen und einschalten.
step-connect-fuse = Leitung von Port { $port } an das Speisegerät { $supply } ({ $at }) anschließen, ihre Sicherung einsetzen und einschalten.
step-arrival = Port { $port } mit der Leitung von Port { $from } des Funkgeräts der Strecke { $hop }, Ende { $end }, verbinden. Ihr Kabel steht in der Mappe jenes Endes.
step-arrival-power = Port { $port } mit der Leitung von Port { $from } des Funkgeräts der Strecke { $hop }, Ende { $end }, verbinden und dort einschalten lassen. Kabel und Speisegerät stehen in der Mappe jenes Endes.
place-not-set = Platz NICHT FESTGELEGT
step-starts = { $time } warten: So lange startet das Funkgerät.
step-cores = Adern zu Port { $port } kennzeichnen: Plus { $positive }, Minus { $negative }. Messen, dass sie nicht vertauscht sind.
step-fuse = Prüfen, dass die Leitung zu Port { $port } am Speisegerät eine Sicherung von { $rated } im Pol { $pole } hat und dass sie gezogen ist.
step-voltage = Spannung am Funkgerät unter Last messen: { $voltage } oder mehr erwarten.

## Steps of alignment.

step-call = Trupp der Gegenstelle anrufen. Vereinbaren, wer bewegt; das andere Ende bleibt still.
step-bandwidth = An beiden Enden Bandbreite { $bandwidth } und Modulation { $state } einstellen.
step-bandwidth-apart = An beiden Enden Bandbreite { $bandwidth } einstellen, Modulation hier { $here }, an der Gegenstelle { $there }.
step-control-both = Automatische Leistungsregelung an beiden Enden ausschalten.
step-control-here = Automatische Leistungsregelung hier ausschalten; die Gegenstelle hat keine.
step-control-there = Automatische Leistungsregelung an der Gegenstelle ausschalten; hier gibt es keine.
step-control-neither = Keines der Funkgeräte hat eine automatische Leistungsregelung: nichts auszuschalten.
step-power = Sendeleistung einstellen: hier { $here }, an der Gegenstelle { $there }.
step-ceiling = Sendeleistung hier niemals über { $most } stellen: Für mehr gelten weder Erlaubnis noch Abstand.
step-ceiling-licence = Sendeleistung hier niemals über { $most } stellen (Genehmigung { $number }): Für mehr gelten weder Erlaubnis noch Abstand.
step-covers = Transportschutz beider Antennen und Kappe von Port { $port } abnehmen. Die Radome bleiben.
step-covers-only = Transportschutz beider Antennen abnehmen. Die Radome bleiben.
step-transmit = Beide Sender einschalten und warten, bis beide Funkgeräte gestartet sind.
step-alignment-mode = Funkgerät in den Ausrichtbetrieb bringen: { $enter }
step-meter = Voltmeter mit Millivolt-Anzeige an Port { $port } anschließen.
step-shown-level = Öffnen, was den Empfangspegel zeigt: { $place }.
step-indication = { $title } beobachten: bei stärkerem Signal { $stronger }.
step-lag = Nach jeder Bewegung { $lag } warten, bevor die Anzeige gilt.
step-sweep = Azimut langsam schwenken, mindestens { $angle } nach beiden Seiten. Zum stärksten Maximum zurückkehren.
step-sweep-past = Azimut langsam schwenken, nach beiden Seiten weit über das erste Maximum hinaus. Zum stärksten Maximum zurückkehren.
step-sweep-tilt = Neigung ebenso schwenken. Zum stärksten Maximum zurückkehren.
step-peak = Mit den Feinschrauben auf das Maximum stellen. Dann die Gegenstelle ebenso. Wiederholen, bis kein Ende mehr gewinnt.
step-compare = Mit dem Ziel oben vergleichen. Anzeige ins Protokoll schreiben.
step-torque = { $screws }: { $number } × { $thread } reihum und in Stufen mit { $torque } anziehen.
step-torque-support = { $screws } des Trägers: { $number } × { $thread } mit { $torque } prüfen oder anziehen.
screw-wrench = { $thread }, Schlüsselweite { $size }
step-torque-maker = Alle Schrauben reihum und in Stufen mit dem Drehmoment des Herstellers anziehen.
step-again = Noch einmal ablesen. Ist es schwächer geworden: lösen und neu ausrichten. Anzeige ins Protokoll schreiben.
step-restore = Alles, was zum Ausrichten ausgeschaltet wurde, an beiden Enden wieder einschalten.
step-alignment-mode-off = Funkgerät aus dem Ausrichtbetrieb holen: { $leave }
step-meter-off = Voltmeter abnehmen und Port { $port } schließen.

## The install pack.

job = Funkgerät { $radio } mit Antenne { $antenna } an { $support } ({ $kind }) montieren, Blick nach { $far }.
not-assessed-ask = Nicht beurteilt. Vor der Anfahrt den Eigentümer des Standorts fragen.
declination = Missweisung hier { $declination } am { $date }, Ost positiv. Missweisende Richtungen wandern; Stahl in der Nähe lenkt den Kompass ab.
near-line = Stromleitung: { $title }, { $distance } entfernt, { $voltage }.
voltage-unknown = Spannung unbekannt
near-line-consent = Zustimmung von { $name }, { $reference }, { $date }.
near-people = Menschen: { $title }, { $distance } entfernt, Richtung { $bearing }.
keep-clear-public = Wer vorbeikommt, vor der Antenne
keep-clear-workers = Geschultes Personal, vor der Antenne
latitude = Breite
longitude = Länge
or = { $one } oder { $other }
ground-above-sea = Boden über dem Meer
hop-end = { $hop }, Ende { $end }
climb-antenna = Antenne unter Leistung
climb-height = Höhe
climb-points = blickt nach (rw.)
climb-workers = Geschulte, davor
climb-public = Andere, davor
climb-call = Vor dem Aufstieg anrufen, wer sie abschalten oder herunterregeln kann: { $names }
climb-call-nobody = Wen man vor dem Aufstieg anruft, ist nicht erfasst. Den Eigentümer des Standorts fragen.
site-job = { $hop }, Ende { $end }: Blick nach { $far }
site-support = Träger { $support }
site-supply-shared = Versorgung { $unit } ({ $supply }) speist { $runs }: zusammen { $drawn } entnommen, { $total } an allen Anschlüssen.
site-earth-shared = Geerdet an { $point }: { $hop } Ende { $end }, { $others }.
draw-elevation-title = { $support }, quer zum Strahl von { $hop }; Höhen maßstäblich
draw-elevation-foot = Höhen über dem Fuß des Trägers; dieser liegt { $base } über Grund.
draw-elevation-looks = blickt nach { $bearing } rw.
draw-elevation-keep = unter Leistung: { $keep } davor freihalten
draw-elevation-at = { $hop }, in { $height }
draw-elevation-live = { $hop }, in { $height }, unter Leistung: { $keep } davor freihalten
draw-elevation-alt = Der Träger { $support } von seinem Fuß nach oben: { $antennas }.
contact = Ansprechpartner
contact-for = Zuständig für
contact-telephone = Telefon
site-power = Strom
site-earth = Erde
true-bearing = Azimut rechtweisend
magnetic-bearing = Azimut missweisend
tilt = Neigung
antenna-centre = Antennenmitte über Boden
polarisation = Polarisation
bracket = Halterung
plate = Verlängerungsplatte
plate-fitted = angebaut
plate-not-fitted = nicht angebaut
run = Leitung
run-port = Port { $port }
run-cable = Kabel
run-outdoors = Außen
run-indoors = Innen
run-diameter = Außendurchmesser
run-insert = Dichteinsatz
run-bend = Biegeradius, mindestens
run-pulling = Beim Ziehen
run-drip-loop = Tropfschleife unter dem Port
run-screen = Schirm
run-unscreened = keiner
run-screen-bonded = { $screen }, geerdet { $bonded }
run-arresters = Ableiter
run-fed-by = Gespeist von
run-power-point = Strom genommen bei
run-voltage = Spannung am Funkgerät, mindestens
run-feeds = Speist
run-feeds-detail = { $device }, { $draw }
run-feeds-voltage = Spannung am Gespeisten, mindestens
ground-conductor = Leiter
ground-metal = Aus
ground-least = Mindestens erlaubt
ground-least-detail = { $written } ({ $needed })
ground-length = Länge
ground-bend = Biegeradius, mindestens
ground-bonds-to = Angeschlossen an
ground-bonded = Mit dem Gebäude verbunden
ground-bonded-yes = ja, laut Planung
ground-bonded-no = NEIN: nicht anschließen, fragen
ground-bonded-unknown = nicht angegeben: prüfen
ground-terminal = Erdanschluss am Gerät
ground-torque = Drehmoment des Anschlusses
see-maker = siehe Datenblatt des Herstellers
lightning-system = Blitzschutz
lightning-not-stated = NICHT ANGEGEBEN: fragen
lightning-unknown = nicht bekannt: fragen
lightning-absent = keiner, laut Planung
lightning-present = das Bauwerk hat einen
lightning-present-class = das Bauwerk hat einen der Klasse { $class }
lightning-ask = NICHT ANGEGEBEN: fragen
lightning-bond = Träger und Blitzschutz
lightning-separation = Abstand zu seinen Leitern
target-port = Voltmeter an Port { $port }, Gleichspannung
target-accept = Zulässig { $band }
target-level = Pegel { $level } mit { $state }
target-sense = Stärkeres Signal: Anzeige { $sense }
target-shown-level = Pegel an: { $place }
target-state = mit { $state }
target-sense-level = Näher an null ist stärker: −40 vor −50
target-peak = stärkstes Maximum
target-stronger = Stärker: { $stronger }
target-no-level = Zeigt mehr und weniger, nicht ob der Pegel stimmt
target-ask = Halt: Planer fragen, wonach ausgerichtet wird
lamp = Leuchte
lamp-shows = Zeigt
lamp-means = Bedeutet
outside-reading = Wenn die Anzeige
outside-look = Mögliche Ursache
outside-do = Maßnahme
outside-weaker = schwächer ist (Wert { $sense }), an beiden Enden gleich
outside-weaker-look = Nebenkeule: Sie hat ein sauberes Maximum und ist doch nicht die Hauptkeule. Oder etwas auf der Strecke.
outside-weaker-do = In beiden Achsen weiter schwenken, an beiden Enden. Die Hauptkeule ist das stärkste von mehreren Maxima.
outside-one-end = nur an einem Ende schwächer ist
outside-one-end-look = Leistung oder Kanal der Gegenstelle, ein nasses oder beschädigtes Radom, eine lose Antenne.
outside-one-end-do = Einstellungen vergleichen. Trocknen, prüfen, tauschen. Neu ausrichten heilt keine einzelne Richtung.
outside-stronger = stärker ist (Wert { $sense }) als zulässig
outside-stronger-look = Falsche Leistung, falsches Modell oder die falsche Gegenstelle. Der Empfänger kann übersteuert sein.
outside-stronger-do = Sender aus. Leistung und Modelle an beiden Enden prüfen, dann den Planer anrufen.
outside-restless = nie zur Ruhe kommt
outside-restless-look = Leistungsregelung noch ein, lose Halterung, Regen oder heiße Luft über der Strecke.
outside-restless-do = Beides prüfen, dann ruhiges und trockenes Wetter abwarten.
outside-none = fehlt
outside-none-look = Messleitung oder Port, Sender der Gegenstelle aus, falsche Hälfte, falscher Kanal, falsche Polarisation.
outside-none-look-shown = Sender der Gegenstelle aus, falsche Hälfte, falscher Kanal, falsche Polarisation.
outside-none-do = Hier prüfen, dann die Gegenstelle prüfen lassen.

## Drawings of the install pack.

draw-radio = Funkgerät
draw-port = Port { $port }
draw-supply = Speisegerät
draw-device = Gerät
draw-network = Netz
draw-data-power = Daten und Speisung
draw-power = Speisung
draw-data = Daten
draw-drip-loop = Tropfschleife
draw-wall = Wand des Gebäudes
draw-cabinet = Schrankwand
draw-outdoors = { $length } außen
draw-indoors = { $length } innen
draw-arrester = Ableiter
draw-chain-alt = Von Port { $port } des Funkgeräts { $length } außen bis zur Wand des Gebäudes, über insgesamt { $number } Überspannungsableiter, zur anderen Seite.
draw-chain-outdoors-alt = Von Port { $port } des Funkgeräts { $length } im Freien, an insgesamt { $number } Überspannungsableitern vorbei, zum anderen Ende.
draw-ground = Boden des Standorts
draw-plate = Platte
draw-tilt-up = { $tilt } aufwärts
draw-tilt-down = { $tilt } abwärts
draw-bracket = Halterung { $way-up }
draw-true-north = rechtweisend Nord
draw-magnetic-north = missweisend Nord
draw-east = O
draw-south = S
draw-west = W
draw-true = rw. { $bearing }
draw-compass = Kompass { $bearing }
draw-mounting-alt = Von der Seite: Antennenmitte { $height } über Boden, Neigung { $tilt }, Halterung { $way-up }. Von oben: Azimut rechtweisend { $true }, missweisend { $magnetic }.
draw-mounting-plate-alt = Von der Seite: Antennenmitte { $height } über Boden, Neigung { $tilt }, Halterung { $way-up }, mit der Verlängerungsplatte. Von oben: Azimut rechtweisend { $true }, missweisend { $magnetic }.
draw-place-alt = Code für ein Telefon: { $words }
draw-accept = zulässig
draw-one-on-lobe = ein Ende auf einer Nebenkeule
draw-both-on-lobe = beide Enden
draw-align-to = ausrichten auf { $reading }
draw-scale-alt = Die Skala des Voltmeters. Ausrichten auf { $target }; zulässig { $band }. Mit einem Ende auf einer Nebenkeule zeigt es { $lobe }.

## The record.

key = Schlüssel
item = Größe
as-designed = Geplant
as-built = Gebaut
or-more = { $least } oder mehr
record-power = Sendeleistung
record-bandwidth = Bandbreite
record-polarisation = Polarisation
record-meter-before = Anzeige vor dem Festziehen
record-level-before = Pegel vor dem Festziehen
record-meter-after = Anzeige nach Enddrehmoment
record-level-after = Pegel nach Enddrehmoment
record-bearing = Azimut eingestellt, rechtweisend
record-tilt = Neigung eingestellt
record-height = Antennenmitte über Boden
record-licence = Genehmigung oder Anmeldung
record-voltage = Spannung am Funkgerät, Port { $port }
record-cable-test = Kabelprüfung, Port { $port }
record-passed = bestanden
record-ground = Erdungsleiter
record-resistance = Erdungswiderstand
record-service-state = Diensttest: erreichter Zustand
record-service-rate = Diensttest: empfangene Rate
record-service-errors = Diensttest: verloren oder falsch
record-service-duration = Diensttest: Dauer
record-radio-serial = Funkgerät, Seriennummer
record-antenna-serial = Antenne, Seriennummer

## The design pack.

value = Wert
symbol = Zeichen
end-a = Ende a
end-b = Ende b
a-to-b = a nach b
b-to-a = b nach a
end-port = Ende { $end }, Port { $port }
end-row = Ende { $end }: { $words }
requirement = Forderung
limit = Grenze
computed = Berechnet
in-hand = Reserve
state = Stand
met = erfüllt
not-met = NICHT ERFÜLLT
not-evaluated = nicht bewertet
not-shown = nicht gezeigt
not-assessed = nicht beurteilt
none-stated = keine angegeben
ask-availability = { $name }, { $directions }, { $period }, bei { $capacity }
ask-availability-worst = Dieselbe, alles so schlecht, wie die angegebenen Toleranzen erlauben
availability-left = { $left }: { $part } des erlaubten Ausfalls
tight = knapp
ask-clearance = Freiraum der Strecke, k = 4/3
ask-clearance-low = Freiraum der Strecke, kleines k
ask-errored = Stark gestörte Zeit { $way }, schlechtester Monat
ask-fade-margin = Schwundreserve { $way }
ask-overload = Empfangspegel { $way }, unter Übersteuerung
ask-up-fade = Pegel bei Überhöhung { $way }, unter Übersteuerung
ask-degradation = Anhebung der Schwellen durch Störer { $way }
ask-tilt = Neigung der Halterung, Ende { $end }
ask-ground = Erdungsleiter, Ende { $end }
ask-voltage = Spannung am Funkgerät, Ende { $end }, Port { $port }
ask-voltage-limit = ≥ { $least } und { $reserve } Reserve
ask-length = Kabellänge, Ende { $end }, Port { $port }
verdict-errors =
    { $count ->
        [0] Die angewandten Regeln finden keinen Fehler.
        [one] 1 Fehler: nicht bauen.
       *[other] { $count } Fehler: nicht bauen.
    }
verdict-warnings =
    { $count ->
        [one] 1 Warnung ist abzuwägen.
       *[other] { $count } Warnungen sind abzuwägen.
    }
verdict-advice =
    { $count ->
        [one] 1 Ratschlag.
       *[other] { $count } Ratschläge.
    }
verdict-waived =
    { $count ->
        [one] 1 Befund ist als Abweichung zugelassen.
       *[other] { $count } Befunde sind als Abweichung zugelassen.
    }
aside = Nicht gezählt:
aside-off =
    { $count ->
        [one] 1 Regel ist abgeschaltet
       *[other] { $count } Regeln sind abgeschaltet
    }
aside-lowered =
    { $count ->
        [one] 1 Regel ist herabgestuft
       *[other] { $count } Regeln sind herabgestuft
    }
aside-named = { $count }: { $names }.
aside-not-judged = Ein Teil dieser Strecke wurde nicht beurteilt.
severity-error = FEHLER
severity-warning = WARNUNG
severity-advice = RAT
rules-run = { $number } Regeln wurden angewandt; keine ist abgeschaltet.
rules-run-but = { $number } Regeln wurden angewandt; vom Netz abgeschaltet: { $off }.
waived-what = Zugelassene Abweichung
waived-why = Grund
waived-by = Durch wen
waived-until = Bis
waived-instead = { $reason } Stattdessen: { $instead }
waived-by-detail = { $name }, { $departure } vom { $date }, { $reference }
site = Standort
latitude-north = Breite, Nord positiv
longitude-east = Länge, Ost positiv
antenna-above-ground = Antenne über Boden
antenna-above-sea = Antenne über dem Meer
true-bearing-far = Azimut rechtweisend, Gegenstelle
declination-on = Missweisung (Ost +) am { $date }
magnetic-bearing-far = Azimut missweisend, Gegenstelle
tilt-up-positive = Neigung, nach oben positiv
distance-ground = Entfernung über Grund
distance-antennas = Entfernung Antenne zu Antenne
mean-altitude = Mittlere Höhe der Antennen
air = Luft: Temperatur, Druck trocken, Dampfdruck
rain-rate = Regenrate, 0.01 % des Jahres überschritten
bandwidth-each-way = Bandbreite, je Richtung
polarisation-both = Polarisation, beide Enden
at-capacity = Bei { $capacity } je Richtung
worse-direction = die schlechtere Richtung
directions-together = beide Richtungen zusammen
average-year = mittleres Jahr
worst-month = schlechtester Monat
outage-rain-and-snow = Regen und nasser Schnee
outage-rain = Regen
outage-multipath = Mehrwegeschwund
outage-crossing-rain = Depolarisation im Regen
outage-crossing-air = Depolarisation bei klarer Luft
outage-equipment = Geräte
outage-supply = Stromversorgung
outage-counted = Ausfall, alles Gezählte
outage-minutes = Minuten im Jahr
not-counted = In diesen Zahlen nicht gezählt: { $causes }.
states = Modulationsstufen { $way }
capacity = Kapazität
threshold = Schwelle
level = Pegel
fade-margin = Schwundreserve
outage = Ausfall
minutes-a-year = im Jahr
availability = Verfügbarkeit
radio = Funkgerät
half = Hälfte, Name am Gerät
antenna = Antenne
beamwidth = Volle Keulenbreite
support = Träger
tube = Rohr, außen
base = Fuß über Boden
free-length = Freie Länge
bracket-takes = Halterung für Rohre
way-up = Einbaulage
tilt-reach = Mögliche Neigung
tilt-needed = Nötige Neigung
tilt-left = Rest bis zur Grenze
lift-mass = Zu hebende Masse
align-state = Modulation der Gegenstelle
align-level = Zielpegel
accept-levels = Zulässige Pegel
align-reading = Zielanzeige
accept-readings = Zulässige Anzeigen
stronger-reads = Stärkeres Signal zeigt
level-uncertainty = Unsicherheit, 95 %
first-null = Winkel, erste Nullstelle
first-lobe = Winkel, erste Nebenkeule
meter-this-end = Anzeige, Nebenkeule an diesem Ende
meter-far-end = Anzeige, Nebenkeule an der Gegenstelle
meter-both-ends = Anzeige, Nebenkeule an beiden Enden
aligned-by = Ausrichten nach
run-length = Länge
run-hot-length = Länge nach Ethernet-Zählung, heiß
run-conductor = Ein Leiter, heiß, mit Kontakten
run-loop = Schleifenwiderstand
run-supply-voltage = Kleinste Speisespannung
run-draw = Größte Aufnahme des Funkgeräts
run-radio-voltage = Spannung am Funkgerät
run-current = Strom
run-supply-power = Leistung des Speisegeräts
run-onward-draw = Aufnahme des Weitergespeisten
run-longest = Größte Länge außen
run-thinnest = Dünnster Leiter, Kupfer
run-least-supply = Speisespannung, die genügt
run-onward-voltage = Spannung am Gespeisten
run-port-power = Leistung, die der Port weitergibt
ground-code = Geltende Norm
ground-least-copper = Kleinster Leiter, Kupfer
ground-of = Metall
ground-inductance = Induktivität, gerade
code-of-practice = Regelwerk
computed-by = Berechnet mit { $program }. Quelldateien und jede berechnete Zeile mit ihren Eingaben sind angehängt; Summen und Differenzen stehen nur dort. Nichts hier ist älter oder neuer als die Quellmarke in der Fußzeile.
method = Methode oder Quelle
method-lines = Zeilen
draw-north = N
draw-plan-alt = Lageplan, Norden oben: Ende b liegt { $distance } von Ende a, Azimut rechtweisend { $bearing }.
draw-asked = gefordert: { $availability }
draw-allowed = erlaubt: { $outage }
draw-outages-alt = Ausfall im mittleren Jahr nach Ursache. { $causes }. { $asked }.
draw-grades-alt = Verfügbarkeit jeder Kapazität, a nach b. { $states }. { $asked }.

## The profile.

sight-obstructed = Verdeckt durch: { $what }, { $distance } von a, { $by } über der Sichtlinie.
sight-too-little = Zu wenig Freiraum: { $has }, knappste Stelle { $what }, { $distance } von a, gefordert { $asked }.
sight-at-median-only = Nur beim mittleren k frei: { $has } beim kleinen k, knappste Stelle { $what }, { $distance } von a, gefordert { $asked }.
sight-clear = Frei: { $has }, knappste Stelle { $what }, { $distance } von a, gefordert { $asked }.
sight-no-point = Kein Punkt zwischen den Enden.
profile-alt = Streckenprofil von { $a } (Ende a) nach { $b } (Ende b) über { $distance }. { $verdict }
profile-alt-clearance = Freiraum am schlechtesten Punkt { $clearance }, gefordert { $needed }.
profile-height = m ü. M.
profile-end = { $end } { $site }, Antenne auf { $height }
profile-into-line = { $what } bei { $distance }: { $by } über der Sichtlinie
profile-worst = schlechtester Punkt: { $what } bei { $distance }: { $clearance } ({ $fraction }), gefordert { $needed }
profile-line = Sichtlinie
profile-f1 = F1
profile-06f1 = 0.6 F1
profile-building = gefüllt: Gebäude
profile-trees = umrandet: Bäume
profile-crane = ein Ausleger: Kran
profile-power-line = zwei Ausleger: Stromleitung
profile-ground = schraffiert: Boden
profile-facts = Höhen { $times }-fach überhöht. Boden um die Erdkrümmung bei k = 4/3 angehoben. F1 bei { $frequency }.

## The acceptance record.

undecided = Noch ist nichts entschieden.
decided = Eingetragene Entscheidung: { $verdict }, durch { $name }.
nothing-against-it = Die angewandten Regeln finden nichts, was dagegen spricht.
not-acceptable =
    { $count ->
        [one] 1 Fehler: so nicht abnehmen.
       *[other] { $count } Fehler: so nicht abnehmen.
    }
not-written = nicht eingetragen
not-agreed = nicht vereinbart
deviation-what = Was anders ist
deviation-agreed = Vereinbart in
photo-file = Datei
photo-shows = Zeigt
tolerance = Toleranz
within = Erfüllt
within-yes = ja
within-no = NEIN
within-not-judged = nicht bewertet
within-noted = vermerkt
within-missing = fehlt
same-as-designed = wie geplant
that-day = { $level } an dem Tag
no-reading-there = dort keine Ablesung
voltage-tolerance = { $drop } weniger; { $takes }
built-predicted = Pegel vorhergesagt, klarer Himmel
built-level-after = Pegel nach Enddrehmoment
built-reading-after = Anzeige nach Enddrehmoment
built-reading-before = Anzeige vor dem Festziehen
built-moved = Änderung beim Festziehen
built-disagreement = Unterschied zur Gegenstelle
built-bearing = Azimut rechtweisend, nach Pegel ausgerichtet
built-tilt = Neigung, nach Pegel ausgerichtet
visit-record = Protokoll
visit-date = Besuch
visit-crew = Trupp
visit-weather = Wetter
visit-meter = Messgerät
visit-meter-serial = Seriennummer
visit-calibration = Kalibriert bis
visit-state = Stufe
visit-revision = Revision vor Ort
visit-mark = Marke vor Ort
weather-rain = Regen { $rate }
weather-fog = Wasser { $water }

## Headings and sentences of the design pack.

owner = Eigentümer
document = Dokument
revision = Revision
date = Datum
drawn-up-by = Erstellt von
approved-by-whom = Freigegeben von
decision = Gefordert und vorhanden
open-findings = Offene Befunde
no-findings = Keine.
findings-language = Die Meldungen der Regeln und ihre Abhilfen sind englisch, wie das Programm sie ausgibt.
remedy = Abhilfe: { $help }
waivers = Zugelassene Abweichungen
waivers-still = Was zugelassen ist, bleibt unerfüllt: Jemand mit Befugnis hat es bis zum genannten Tag angenommen.
not-assessed-here = In diesem Dokument nicht beurteilt
scope-no-sight = Sichtverbindung: in diesem Dokument nicht beurteilt.
scope-sight = Sichtverbindung: nach dem unten genannten Profil beurteilt und nicht sicherer als dieses; die Strecke entlangschauen, bevor jemand aufsteigt.
scope = Bauwerk: nicht beurteilt; ein befähigter Tragwerksplaner entscheidet, was ein Rohr, eine Wand oder ein Mast trägt. Genehmigung: nur nach den Regelwerken und Zahlen unter „Genehmigung“ unten beurteilt; wer sendet, muss das Recht dazu haben. Exposition durch Funkwellen: nur an den Stellen, die die Standorte aufzählen, siehe die Tabelle unten. Örtliche Vorschriften und die Anleitungen der Hersteller gehen dieser Mappe vor.
notes = Anmerkungen des Planers
assumptions = Annahmen
both-directions = Beide Richtungen zusammen
geometry = Geometrie
path-air-channel = Strecke, Luft und Kanal
line-of-sight = Sichtverbindung
clearance-attached = Der Freiraum an jedem Punkt des Profils ist diesem PDF als Tabelle angehängt.
level-budget = Pegelbilanz
licence = Genehmigung
radio-law = Funkrecht ist national und ändert sich: bei der nationalen Regulierungsbehörde prüfen.
availability-by-capacity = Verfügbarkeit nach Kapazität
heavier-row = Die fettere Zeile ist die robusteste Stufe, die die geforderte Kapazität erreicht.
mounting = Montage
grounding = Erdung
alignment-target = Ziel der Ausrichtung
wind-and-people = Wind und Menschen
ice-and-fixings = Eis und Befestigungen
lightning-scope = Der Blitzschutz ist gedruckt, wie andere ihn angegeben haben. Ob er nötig ist, was er schützt und welcher Abstand einzuhalten ist, bestimmt sein Planer nach den örtlichen Vorschriften; hopwright plant und bescheinigt keinen.
wind-and-people-scope = Biegung eines Rohrs, das frei steht und am Fuß eingespannt ist, ohne Lastbeiwerte, mit Eis nur, wo es angegeben ist: Ein Tragwerksplaner muss sie bestätigen, und was die Befestigungen tragen. Die Exposition ist die entlang der Hauptkeule, bei der größten Leistung; die verantwortliche Person des Standorts entscheidet.
revisions = Revisionen
issued-by = Erstellt von { $creator }, freigegeben von { $approver }.
cable-and-power = Kabel und Speisung
methods-and-sources = Methoden und Quellen
what-was-written = Was geschrieben wurde und wo
given-by-network = aus den Vorgaben des Netzes
given-by-site = aus den Vorgaben des Standorts {$id}
given-by-template = aus der Vorlage {$id}
methods-with-source = Methoden, die eine Quelle haben

## Headings and sentences of the acceptance record.

designed-and-built = Geplant und gebaut
checks = Prüfungen
done = erledigt
not-done = NICHT ERLEDIGT
deviations = Abweichungen
none-written = Keine eingetragen.
what-check-found = Was die Prüfung des Protokolls fand
photos = Fotos
none-named = Keine genannt.
signatures = Unterschriften
signing-says = Die Unterschrift sagt, dass die Werte oben die vorgefundenen sind. Bauwerk, Erdung und Elektroarbeiten nehmen die ab, die dafür zugelassen sind; diese Seite tut es nicht.
installed = Montiert
witnessed = Bezeugt
accepted = Abgenommen

## Head and foot.

draft = ENTWURF
issued = FREIGEGEBEN
foot-revision = Revision { $revision }
foot-mark = Marke { $mark }
foot-page = Seite { $page } von { $pages }
check-revision = Revision vor Gebrauch prüfen

## Headings and sentences of the install pack.

quantity = Menge
part = Teil
hazards = Was hier gefährlich ist
hazards-only-those = Nur was der Eigentümer des Standorts aufgeschrieben hat. Was hier nicht genannt ist, ist nicht beurteilt.
getting-there = Anfahrt und Zugang
no-contacts = Ansprechpartner: keine angegeben. Den Eigentümer des Standorts fragen.
departures = Zugelassene Abweichungen
take-along = Mitnehmen
before-work = Vor der Arbeit
permits = Vor Arbeitsbeginn unterschrieben, abgesprochen oder abgeschaltet:
no-permits = Genehmigungen: nicht beurteilt. Den Eigentümer fragen, was zu unterschreiben, abzusprechen oder abzuschalten ist.
climb = Auf dem Weg nach oben unter Leistung
climb-note = Hinter ihnen vorbei, nie davor. Nur Antennen dieses Netzes sind bekannt; andere können dort auch hängen.
site-live-note = Jede Antenne hier kann senden. Hinter ihnen vorbei, nie davor; nur Antennen dieses Netzes sind bekannt.
site-shared = Was Enden gemeinsam haben
site-materials = Material aller Enden
keep-clear-note = Bei der größten zulässigen Einstellung. Flaches Metall nahebei kann sie vervierfachen; die Grenzwerte sind aus zweiter Hand. Aus dem Strahl bleiben.
keep-clear-nowhere = überall eingehalten
hold-before-work = Nicht beginnen, bevor die für die Arbeit verantwortliche Person diese Hinweise mit dem Trupp durchgegangen ist und unterschrieben hat.
grounding-and-cabling = Erdung und Verkabelung
getting-ready = Vorbereiten zum Ausrichten
alignment = Ausrichtung

## Hold and witness points, signatures.

stop = HALT
witness = ZEUGENPUNKT
witness-tell = Genannte Person benachrichtigen; weiter, wenn niemand kommt.
witness-bond = Erdanschluss, Kabelschuh, Kabeleinführung, bevor sie verdeckt werden.
witness-reading = Anzeige mit jeder Schraube auf Enddrehmoment.
who-is-told = Benachrichtigt wird
seen-by = Gesehen von
nobody-came = niemand kam
name = Name
signature = Unterschrift
date-and-time = Datum und Uhrzeit
date-time-offset = Datum, Uhrzeit (UTC ±)

## The record page.

record-of-this-end = Protokoll dieses Endes
record-head = Größe, Schlüssel, geplant
not-applicable = entf.
field-date = Datum, Uhrzeit, Abstand zu UTC
field-weather = Wetter: trocken (dry), Nebel (fog), Regen (rain), Schnee (snow)
field-air = Temperatur, Luftdruck, Feuchte
field-meter = Messgerät, Seriennummer
field-deviations = Abweichungen von dieser Mappe, und wer zugestimmt hat
field-photos = Fotos: den Strahl entlang, Schilder, Verschraubung, Erdanschluss, ganze Montage
field-service = Diensttest (service): Zustand, Rate, Verluste, Dauer; { $rate }, { $time }
checks-done = Erledigte Prüfungen

## The pack of a network.

pack-network = Netzmappe
title-network = { $network }: Netzmappe
standing-sound = ohne Befund
standing-warned = mit Warnungen
standing-failing = mit Fehlern
standing-not-judged = nicht beurteilt
network-hops =
    { $count ->
        [one] 1 Strecke
       *[other] { $count } Strecken
    }
hops-lost = Gar nicht berechnet und nicht auf der Karte: { $hops }.
draw-map-alt = Karte von { $title }, Norden oben: { $sites } Standorte und { $hops } Strecken; { $counts }.
draw-map-failing = Mit Fehlern: { $hops }.
map-number = Auf der Karte
map-key = Standorte ohne Platz für ihren Namen
map-bare =
    { $count ->
        [one] 1 Standort hat weder für Namen noch für Nummer Platz; er steht bei den Einsätzen.
       *[other] { $count } Standorte haben weder für Namen noch für Nummer Platz; sie stehen bei den Einsätzen.
    }
hops = Strecken
hop = Strecke
between = Zwischen
length = Länge
closest-to-limit = Am nächsten an der Grenze
open = Offen
tightest = { $what }: { $left } Reserve
tight-availability = Verfügbarkeit
closest-note = Was die kleinste Reserve hat, als Anteil dessen, was seine Grenze zulässt; Pegel unter der Übersteuerung als Anteil von 20 dB (übliche Praxis). Offen: Befunde, die zählen.
services = Dienste
service = Dienst
routes = Weg | der für ihn einspringt
delay = Verzögerung
has-of-wanted = { $has } ({ $wanted })
delay-at-least = mindestens { $delay }
nothing-asked = nichts gefordert
services-note = Verfügbarkeit mit den addierten Ausfällen aller Strecken; von zwei Wegen, was beide teilen, Regen auf beiden zugleich und alles andere als unabhängig. In Klammern, was gefordert ist.
frequency-plan = Frequenzplan
end = Ende
plan-half = Hälfte
sends-on = Sendet auf
hears-on = Hört auf
bandwidth = Breite
power = Leistung
plan-polarisation = Pol.
over-noise = I/N
threshold-loss = Verlust
interference = Störungen
interference-note = Die stärksten fremden Sender an jedem Empfänger, ab 20 dB unter seinem Rauschen, in klarer Luft ohne Hindernis. Verlust: was Störungen von der Schwelle nehmen, im Plan alle zusammen, hier jede allein.
nothing-heard = Kein Empfänger hört einen anderen Sender stärker als 20 dB unter seinem Rauschen.
receiver = Empfänger
hears-from = Hört
heard-level = Pegel
takes-alone = Verlust
findings-count =
    { $count ->
        [one] 1 Befund
       *[other] { $count } Befunde
    }
finding = Befund
written-at = Steht in
findings-known =
    { $count ->
        [one] 1 Befund ist in der Baseline bekannt.
       *[other] { $count } Befunde sind in der Baseline bekannt.
    }
known-by-baseline = Baseline in Kraft: { $file }. { $count }
aside-hops-not-judged =
    { $count ->
        [one] 1 Strecke wurde nicht oder nicht ganz beurteilt.
       *[other] { $count } Strecken wurden nicht oder nicht ganz beurteilt.
    }
bill = Teile aller Enden
bill-cable = Kabel
bill-detail = Modell, Größe
bill-runs =
    { $count ->
        [one] 1 Leitung
       *[other] { $count } Leitungen
    }
bill-length = { $length }, { $runs }
bill-length-at-least = mindestens { $length }, { $runs }, { $unknown } von unbekannter Länge
bill-note = Kabel und Leiter mit der Reserve, die zu jedem Ende mitgeht. Ein Netzteil, das mehrere Leitungen als ein Gerät nennen, zählt einmal.
trips = Einsätze nach Standort
network-computed-by = Berechnet von { $program } aus den Dateien des Netzes. Jede Zahl einer Strecke steht mit Methode und Eingaben in ihrer Planungsmappe.
trip-place = { $id }: { $latitude }, { $longitude }; { $ends }
trip-ends =
    { $count ->
        [one] 1 Ende
       *[other] { $count } Enden
    }
looks-to = Blickt nach
cabling = Verkabelung
trip-to = { $site }
trip-mount = { $height } über Grund, an { $support }
trip-aim = { $bearing } rechtweisend, Neigung { $tilt }; auf { $level } ausrichten
trip-runs =
    { $count ->
        [one] 1 Leitung
       *[other] { $count } Leitungen
    }

## The page of an application for a licence.

apply-heading = Was ein Antrag verlangt
apply-end-a = Ende a
apply-end-b = Ende b
apply-site = Standort
apply-latitude = Breite, WGS 84
apply-longitude = Länge, WGS 84
apply-ground = Gelände über dem Meer
apply-height = Antenne über Grund
apply-azimuth = Azimut, rechtweisend
apply-elevation = Höhenwinkel
apply-far = Sendet nach
apply-distance = Abstand der Antennen
apply-sends = Sendet auf
apply-receives = Empfängt auf
apply-bandwidth = Bandbreite
apply-emission = Aussendung nach der VO Funk
apply-polarisation = Polarisation
apply-power = Leistung am Anschluss des Funkgeräts
apply-eirp = Strahlungsleistung, EIRP
apply-radio = Funkgerät
apply-antenna = Antenne
apply-gain = Gewinn beim Senden
apply-beamwidth = Halbwertsbreite
apply-pattern = Richtdiagramm
apply-measured = gemessen, wie angehängt
apply-reference = Referenz, ITU-R F.699 und F.1245
apply-diameter = Durchmesser
apply-number = Lizenz oder Anmeldung
apply-says = Die Zahlen sind die der Planung, in ihren Einheiten. Höhen gelten über dem mittleren Meeresspiegel. Die Aussendung ist die Bandbreite des Kanals mit der Sendeart aus dem Datenblatt des Funkgeräts, Vollzugsordnung für den Funkdienst, Anhang 1. Wo das Formular der Behörde mehr verlangt, geht es vor.

## Words of the sheet.

# Schreibung der Zahlen

# Wörter der YAML
sheet-positive = Plus
sheet-negative = Minus
sheet-pole = Standrohr
sheet-mast = Mast
sheet-wall = Wand
sheet-horizontal = horizontal
sheet-vertical = vertikal
sheet-dual = dual
sheet-upright = aufrecht
sheet-inverted = kopfüber
sheet-copper = Kupfer
sheet-aluminium = Aluminium
sheet-copper-clad-aluminium = kupferkaschiertes Aluminium
sheet-copper-clad-steel = kupferkaschierter Stahl
sheet-galvanised-steel = verzinkter Stahl
sheet-painted-steel = lackierter Stahl
sheet-steel = Stahl
sheet-stainless-steel = nichtrostender Stahl
sheet-timber = Holz
sheet-outdoor = außen
sheet-indoor = innen
sheet-at-both-ends = beidseitig
sheet-at-the-radio-only = nur am Funkgerät
sheet-at-the-entry-only = nur an der Einführung
sheet-nowhere = nirgends
sheet-12-plus-36-minus = 1 und 2 plus, 3 und 6 minus
sheet-36-plus-12-minus = 3 und 6 plus, 1 und 2 minus
sheet-45-plus-78-minus = 4 und 5 plus, 7 und 8 minus
sheet-78-plus-45-minus = 7 und 8 plus, 4 und 5 minus
sheet-1245-plus-3678-minus = 1, 2, 4 und 5 plus, 3, 6, 7 und 8 minus
sheet-3678-plus-1245-minus = 3, 6, 7 und 8 plus, 1, 2, 4 und 5 minus
sheet-3645-plus-1278-minus = 3, 6, 4 und 5 plus, 1, 2, 7 und 8 minus
sheet-1278-plus-3645-minus = 1, 2, 7 und 8 plus, 3, 6, 4 und 5 minus
sheet-two-pole = zweipolig
sheet-two-pole-negative-earthed = zweipolig, Minus geerdet
sheet-two-pole-positive-earthed = zweipolig, Plus geerdet
sheet-barrel-centre-plus = Hohlstecker, Plus in der Mitte
sheet-barrel-centre-minus = Hohlstecker, Minus in der Mitte
sheet-dry = trocken
sheet-fog = Nebel
sheet-rain = Regen
sheet-snow = Schnee
sheet-passed = bestanden
sheet-failed = nicht bestanden
sheet-accepted = abgenommen
sheet-accepted-with-concession = mit Sonderfreigabe abgenommen
sheet-rejected = zurückgewiesen
sheet-deviation = Abweichung
sheet-concession = Sonderfreigabe
sheet-building = Gebäude
sheet-trees = Bäume
sheet-crane = Kran
sheet-power-line = Stromleitung
sheet-bare-ground = blanker Boden
sheet-this-end = dieses Ende
sheet-the-far-end = die Gegenstelle
sheet-both-ends = beide Enden
sheet-a-to-b = a nach b
sheet-b-to-a = b nach a

# Prüfungen
sheet-path-looked-along-and-found-clear = Strecke entlanggeschaut und frei gefunden.
sheet-grounding-conductor-and-cable-screens-bonded = Erdungsleiter und Kabelschirme geerdet.
sheet-every-arrester-fitted-and-bonded = Jeder Ableiter eingebaut und geerdet.
sheet-every-pair-and-screen-tested-from-end-to-end = Jedes Adernpaar und jeder Schirm von Ende zu Ende geprüft.
sheet-gland-inserts-closed-drip-loops-formed-unused-ports-blanked = Dichteinsätze geschlossen, Tropfschleifen geformt, freie Ports mit Blindstopfen geschlossen.
sheet-automatic-power-control-off-while-reading = Automatische Leistungsregelung beim Ablesen aus.
sheet-both-axes-swept-past-the-side-lobes = Beide Achsen über die Nebenkeulen hinaus geschwenkt.
sheet-final-torque-on-every-screw-then-read-again = Enddrehmoment an jeder Schraube, danach neu abgelesen.
sheet-what-was-switched-off-for-aligning-is-on-again = Was zum Ausrichten ausgeschaltet wurde, ist wieder ein.
sheet-meter-off-and-its-port-closed = Voltmeter abgenommen und sein Port geschlossen.

# Annahmen

# Abschnitte

# Strecke
sheet-distance-over-the-ground = Entfernung über Grund
sheet-distance-antenna-to-antenna = Entfernung Antenne zu Antenne
sheet-true-bearing-from-a-to-b = Azimut von a nach b, rechtweisend
sheet-true-bearing-from-b-to-a = Azimut von b nach a, rechtweisend
sheet-elevation-angle-at-a = Höhenwinkel bei a
sheet-elevation-angle-at-b = Höhenwinkel bei b
sheet-mean-altitude-of-the-antennas = mittlere Höhe der Antennen
sheet-air-temperature-for-gas-loss = Lufttemperatur für die Gasdämpfung
sheet-dry-air-pressure = Druck der trockenen Luft
sheet-water-vapour-pressure = Wasserdampfdruck
sheet-rain-rate-exceeded-0-01-of-the-year = Regenrate, 0.01 % des Jahres überschritten
sheet-mean-rain-height-above-sea-level = mittlere Regenhöhe über dem Meer
sheet-what-falls-through-the-path = Niederschlag auf der Strecke
sheet-source-of-the-rain-rate = Quelle der Regenrate
sheet-diffraction-loss = Beugungsdämpfung
sheet-rain-outage-the-worse-direction = Regenausfall, die schlechtere Richtung
sheet-availability-both-directions = Verfügbarkeit, beide Richtungen
sheet-propagation-availability-both-directions = Ausbreitungsverfügbarkeit, beide Richtungen
sheet-rain-availability-both-directions = Regenverfügbarkeit, beide Richtungen
sheet-propagation-availability-in-the-worst-month-both-directions = Ausbreitungsverfügbarkeit im schlechtesten Monat, beide Richtungen
sheet-rain-availability-in-the-worst-month-both-directions = Regenverfügbarkeit im schlechtesten Monat, beide Richtungen
sheet-multipath-outage-both-directions = Mehrwegeausfall, beide Richtungen
sheet-capacity-each-way = Kapazität, je Richtung
sheet-delay-one-way = Verzögerung, eine Richtung
sheet-propagation-delay-one-way = Laufzeit, eine Richtung
sheet-delay-of-propagation-and-some-of-the-radios-one-way = Laufzeit und Verzögerung einiger Funkgeräte, eine Richtung
sheet-not-counted-in-the-delay = in der Verzögerung nicht gezählt
sheet-outage-of-what-both-routes-share = Ausfall dessen, was beide Wege teilen
sheet-rain-on-both-routes-at-once = Regen auf beiden Wegen zugleich
sheet-availability-common-rain-counted-once = Verfügbarkeit, gemeinsamer Regen einmal gezählt
sheet-length-antenna-to-antenna-all-hops = Länge von Antenne zu Antenne, alle Strecken
sheet-rain-outage-all-hops-added = Regenausfall, alle Strecken addiert
sheet-rain-outage-common-rain-counted-once = Regenausfall, gemeinsamer Regen einmal gezählt
sheet-outage-in-clear-air-all-hops = Ausfall in klarer Luft, alle Strecken
sheet-outage-by-equipment-all-ends = Geräteausfall, alle Enden
sheet-outage-by-its-supply-each-power-point-once = Ausfall der Versorgung, jeder Speisepunkt einmal
sheet-outage-of-the-route-both-directions = Ausfall des Weges, beide Richtungen
sheet-availability-of-the-route-both-directions = Verfügbarkeit des Weges, beide Richtungen
sheet-outage-by-equipment-both-ends = Ausfall durch Geräte, beide Enden
sheet-outage-by-its-supply-both-ends = Ausfall durch ihre Versorgung, beide Enden
sheet-outage-in-the-average-year-both-directions = Ausfall im mittleren Jahr, beide Richtungen
sheet-not-counted-in-it = darin nicht gezählt
sheet-outage-in-minutes-a-year = Ausfall in Minuten im Jahr
sheet-multipath-outage-in-the-worst-month-both-directions = Mehrwegeausfall im schlechtesten Monat, beide Richtungen
sheet-outage-in-the-worst-month-both-directions = Ausfall im schlechtesten Monat, beide Richtungen
sheet-availability-as-the-objective-counts-it = Verfügbarkeit, wie das Ziel sie zählt
sheet-part-of-the-allowed-outage-that-is-left = Teil des erlaubten Ausfalls, der übrig ist
sheet-the-same-with-all-that-has-a-tolerance-at-its-worst = dieselbe, alles mit Toleranz am schlechten Ende
sheet-what-is-left-of-it-at-its-worst = was davon am schlechten Ende bleibt
sheet-the-same-with-all-that-has-a-tolerance-at-its-best = dieselbe, alles mit Toleranz am guten Ende
sheet-latitude-of-the-middle-of-the-path = Breite der Mitte der Strecke
sheet-longitude-of-the-middle-of-the-path = Länge der Mitte der Strecke
sheet-mean-height-of-the-ground-along-the-path = mittlere Höhe des Geländes auf der Strecke
sheet-what-wet-snow-makes-of-the-rain-fade = was nasser Schnee aus dem Regenschwund macht
sheet-threshold-degradation-by-interference = Anhebung der Schwelle durch Störer
sheet-noise-figure-of-the-receiver = Rauschzahl des Empfängers
sheet-interference-of-all-other-senders-together = Störung durch alle anderen Sender zusammen
sheet-the-strongest-of-them = die stärksten davon
sheet-interference-over-noise = Störung über dem Rauschen
sheet-threshold-degradation-nothing-of-it-faded = Anhebung der Schwelle, nichts davon gedämpft
sheet-threshold-degradation-by-senders-unknown-here = Anhebung der Schwelle durch Sender, die hier unbekannt sind
sheet-threshold-degradation-in-hand = Anhebung der Schwelle, Rest bis zur Grenze
sheet-carrier-over-interference-clear-sky = Träger über Störung bei klarem Himmel
sheet-carrier-over-interference-that-is-needed-there = Träger über Störung, der dort gebraucht wird
sheet-carrier-over-interference-in-hand = Träger über Störung, Reserve
sheet-neighbour-it-comes-through-to-most = Nachbar, bei dem am meisten ankommt
sheet-level-there-over-the-noise-of-that-receiver = Pegel dort über dem Rauschen des Empfängers
sheet-level-at-the-neighbour-in-hand = Pegel beim Nachbarn, Rest bis zur Grenze
sheet-multipath-outage = Mehrwegeausfall
sheet-outage-in-the-average-year = Ausfall im mittleren Jahr
sheet-propagation-availability = Ausbreitungsverfügbarkeit
sheet-rain-availability = Regenverfügbarkeit
sheet-outage-in-the-worst-month = Ausfall im schlechtesten Monat
sheet-severely-errored-time-in-the-worst-month = stark gestörte Zeit im schlechtesten Monat
sheet-severely-errored-time-in-hand = Reserve der stark gestörten Zeit
sheet-availability-in-hand = Reserve der Verfügbarkeit
sheet-outage-in-an-average-year = Ausfall im mittleren Jahr
sheet-rain-outage-in-the-worst-month-the-worse-direction = Regenausfall im schlechtesten Monat, die schlechtere Richtung
sheet-availability-in-the-worst-month-both-directions = Verfügbarkeit im schlechtesten Monat, beide Richtungen
sheet-as-written = wie angegeben

# Sichtverbindung
sheet-source-of-the-profile = Quelle des Profils
sheet-day-of-its-heights = Tag seiner Höhen
sheet-points-of-the-source = Punkte der Quelle
sheet-widest-gap-between-its-points = größte Lücke zwischen seinen Punkten
sheet-uncertainty-of-its-heights = Unsicherheit seiner Höhen
sheet-clearance-at-the-worst-point-k-4-3 = Freiraum am schlechtesten Punkt, k = 4/3
sheet-radius-of-the-first-fresnel-zone-there = Radius der ersten Fresnelzone dort
sheet-clearance-there-in-fresnel-radii = Freiraum dort in Fresnelradien
sheet-clearance-asked-for-there = dort geforderter Freiraum
sheet-clearance-in-hand = Reserve des Freiraums
sheet-distance-of-the-worst-point-from-a = Entfernung des schlechtesten Punkts von a
sheet-what-stands-there = was dort steht
sheet-least-height-of-the-line-over-any-top-k-4-3 = kleinste Höhe der Linie über allem, k = 4/3
sheet-clearance-at-the-worst-point-low-k = Freiraum am schlechtesten Punkt, kleines k
sheet-effective-earth-radius-factor-low-k = Faktor des wirksamen Erdradius, kleines k
sheet-clearance-there-in-fresnel-radii-low-k = Freiraum dort in Fresnelradien, kleines k
sheet-clearance-in-hand-low-k = Reserve des Freiraums, kleines k
sheet-end-a-must-go-up-by-alone = Ende a muss höher um, allein
sheet-end-b-must-go-up-by-alone = Ende b muss höher um, allein
sheet-or-both-ends-must-go-up-by = oder beide Enden müssen höher um
sheet-clearance-in-hand-when-the-trees-are-grown = Reserve des Freiraums, wenn die Bäume gewachsen sind

# Nahes
sheet-the-near-edge-that-leaves-least = die nahe Kante, die am wenigsten lässt
sheet-its-distance = ihre Entfernung
sheet-beam-axis-above-it = Strahlachse über ihr
sheet-clearance-in-hand-there = Reserve des Freiraums dort
sheet-rounding-of-the-position-as-written = Rundung der angegebenen Lage
sheet-bearing-error-from-it = Fehler des Azimuts daraus

# Pegelbilanz
sheet-frequency = Frequenz
sheet-transmit-power = Sendeleistung
sheet-gain-of-the-sending-antenna = Gewinn der Sendeantenne
sheet-gain-of-the-receiving-antenna = Gewinn der Empfangsantenne
sheet-between-radio-and-antenna-where-it-is-sent = zwischen Funkgerät und Antenne beim Sender
sheet-losses-where-it-is-sent = Verluste beim Sender
sheet-between-antenna-and-radio-where-it-is-received = zwischen Antenne und Funkgerät beim Empfänger
sheet-losses-where-it-is-received = Verluste beim Empfänger
sheet-loss-in-the-near-field-of-the-antennas = Verlust im Nahfeld der Antennen
sheet-gas-loss-in-the-coldest-air = Gasdämpfung in der kältesten Luft
sheet-gas-loss-in-the-hottest-air = Gasdämpfung in der heißesten Luft
sheet-free-space-loss = Freiraumdämpfung
sheet-gas-attenuation = Gasdämpfungsmaß
sheet-gas-loss = Gasdämpfung
sheet-received-level-clear-sky = Empfangspegel, klarer Himmel
sheet-loss-of-wet-antenna-covers-both-ends = nasse Radome, beide Enden
sheet-loss-of-aim-when-locked-both-ends = Ausrichtverlust, beide Enden
sheet-loss-in-fog = Dämpfung im Nebel
sheet-rain-fade-exceeded-0-01-of-the-year = Regenschwund in 0.01 % des Jahres
sheet-rain-fade-at-the-availability-asked-for = Regenschwund bei Sollverfügbarkeit
sheet-capacity = Kapazität
sheet-receiver-threshold = Empfängerschwelle
sheet-received-level-in-this-state = Empfangspegel in dieser Stufe
sheet-fade-margin = Schwundreserve
sheet-fade-margin-in-rain = Schwundreserve im Regen
sheet-rain-outage = Regenausfall
sheet-availability = Verfügbarkeit
sheet-share-of-the-year-in-this-state = Anteil des Jahres in dieser Stufe
sheet-fade-margin-at-the-capacity-asked-for = Schwundreserve bei Sollkapazität
sheet-fade-margin-in-hand = Rest der Schwundreserve
sheet-fade-margin-in-fog = Schwundreserve im Nebel
sheet-multipath-outage-in-the-worst-month = Mehrwegeausfall im schlechtesten Monat
sheet-received-level-below-overload = Empfangspegel unter Übersteuerung
sheet-cross-polar-discrimination-of-the-antennas = Kreuzpolarisationsentkopplung der Antennen
sheet-carrier-over-interference-the-state-needs = Störabstand, den die Stufe braucht
sheet-improvement-by-the-canceller = Verbesserung durch die Kompensation
sheet-carrier-over-interference-in-hand-still-air = Rest des Störabstands bei ruhiger Luft
sheet-crossing-outage-in-rain = Ausfall durch Depolarisation im Regen
sheet-crossing-outage-in-rain-the-worse-direction = Ausfall durch Depolarisation im Regen, schlechtere Richtung
sheet-crossing-outage-in-rain-in-the-worst-month-the-worse-direction = Ausfall durch Depolarisation im Regen im schlechtesten Monat, schlechtere Richtung
sheet-crossing-outage-in-clear-air-both-directions = Ausfall durch Depolarisation bei klarer Luft, beide Richtungen
sheet-crossing-outage-in-clear-air-in-the-worst-month-both-directions = Ausfall durch Depolarisation bei klarer Luft im schlechtesten Monat, beide Richtungen
sheet-crossing-outage-in-clear-air-average-year = Ausfall durch Depolarisation bei klarer Luft, mittleres Jahr
sheet-crossing-outage-in-clear-air-worst-month = Ausfall durch Depolarisation bei klarer Luft, schlechtester Monat
sheet-modulation-state-while-aligning = Modulationsstufe beim Ausrichten
sheet-received-level-while-aligning = Empfangspegel beim Ausrichten
sheet-modulation-state-in-clear-sky = Modulationsstufe bei klarem Himmel
sheet-level-that-power-control-holds = Pegel, den die Leistungsregelung hält
sheet-power-lowered-in-clear-sky = Absenkung der Leistung bei klarem Himmel
sheet-received-level-in-service-clear-sky = Empfangspegel im Betrieb, klarer Himmel
sheet-level-held-above-what-the-capacity-asked-for-needs = gehaltener Pegel über dem Bedarf der Sollkapazität
sheet-level-above-its-threshold-at-which-that-state-is-taken-again = Pegel über ihrer Schwelle, ab dem diese Stufe wieder gilt
sheet-up-fade-of-long-hops = Überhöhung auf langen Strecken
sheet-highest-level-in-an-up-fade = höchster Pegel bei Überhöhung
sheet-level-in-an-up-fade-below-overload = Pegel bei Überhöhung unter Übersteuerung

# Antenne
sheet-gain-that-goes-with-the-beamwidth = Gewinn, der zur Halbwertsbreite gehört
sheet-beamwidth-that-goes-with-the-gain = Halbwertsbreite, die zum Gewinn gehört
sheet-gain-of-an-aperture-that-wastes-nothing = Gewinn einer verlustlosen Apertur
sheet-aperture-efficiency = Aperturwirkungsgrad
sheet-nearest-angle-of-the-first-null = nächster Winkel der ersten Nullstelle
sheet-farthest-angle-of-the-first-null = fernster Winkel der ersten Nullstelle
sheet-nearest-angle-of-the-first-side-lobe = nächster Winkel der ersten Nebenkeule
sheet-farthest-angle-of-the-first-side-lobe = fernster Winkel der ersten Nebenkeule
sheet-least-sweep-to-each-side-while-aligning = kleinster Schwenk nach jeder Seite beim Ausrichten
sheet-gain-at-the-first-side-lobe-envelope-of-its-peaks = Gewinn an der ersten Nebenkeule, Hüllkurve der Spitzen
sheet-gain-at-the-first-side-lobe-mean-over-the-lobes = Gewinn an der ersten Nebenkeule, Mittel über die Keulen
sheet-lowest-level = kleinster Pegel
sheet-highest-level = größter Pegel
sheet-meter-reading-at-the-lowest-level = Anzeige beim kleinsten Pegel
sheet-meter-reading-at-the-highest-level = Anzeige beim größten Pegel

# Ende
sheet-antenna-centre-above-ground = Antennenmitte über Boden
sheet-antenna-centre-above-sea-level = Antennenmitte über dem Meer
sheet-true-bearing-to-the-far-end = Azimut zur Gegenstelle, rechtweisend
sheet-magnetic-declination-east-positive = Missweisung, Ost positiv
sheet-uncertainty-of-the-declination-68 = Unsicherheit der Missweisung, 68 %
sheet-magnetic-bearing-to-the-far-end = Azimut zur Gegenstelle, missweisend
sheet-tilt-to-set-up-positive = einzustellende Neigung, nach oben positiv
sheet-lowest-tilt-the-bracket-gives-as-mounted = kleinste Neigung der Halterung in dieser Einbaulage
sheet-highest-tilt-the-bracket-gives-as-mounted = größte Neigung der Halterung in dieser Einbaulage
sheet-tilt-left-to-the-nearer-end-of-that-range = Rest der Neigung zum näheren Ende des Bereichs
sheet-outside-diameter-of-the-support = Außendurchmesser des Trägers
sheet-modulation-state-of-the-far-end-while-aligning = Modulationsstufe der Gegenstelle beim Ausrichten
sheet-what-the-crew-aligns-by = wonach ausgerichtet wird
sheet-level-to-align-to = Zielpegel
sheet-lowest-level-to-accept = kleinster zulässiger Pegel
sheet-highest-level-to-accept = größter zulässiger Pegel
sheet-uncertainty-of-the-predicted-level-either-way = Unsicherheit des vorhergesagten Pegels, nach beiden Seiten
sheet-meter-reading-to-align-to = Zielanzeige
sheet-way-of-the-meter-for-a-stronger-signal = Anzeige bei stärkerem Signal

# Gelände, Eis und Befestigungen
sheet-orography-factor-at-the-antenna = Topografiebeiwert an der Antenne
sheet-topographic-factor-of-the-site = Topografiebeiwert des Standorts
sheet-class-of-ice-by-iso-12494 = Eisklasse nach ISO 12494
sheet-thickness-of-ice = Eisdicke
sheet-density-of-ice = Eisdichte
sheet-ice-on-antenna-and-radio = Eis an Antenne und Funkgerät
sheet-ice-on-the-tube-of-the-support = Eis am Rohr des Trägers
sheet-share-of-the-pressure-of-the-survival-wind-beside-it = Anteil des Drucks des Überlebenswinds daneben
sheet-force-of-that-on-antenna-and-radio-with-ice = Kraft davon auf Antenne und Funkgerät mit Eis
sheet-moment-at-the-foot-of-the-pole-in-it-with-ice = Moment am Fuß des Rohrs darin, mit Eis
sheet-stress-at-the-foot-of-the-pole-in-it-with-ice = Spannung am Fuß des Rohrs darin, mit Eis
sheet-fixings-of-the-support = Befestigungen des Trägers
sheet-force-of-the-survival-wind-on-the-support = Kraft des Überlebenswinds auf den Träger
sheet-its-moment-at-the-foot-of-the-free-length = deren Moment am Fuß der freien Länge
sheet-mass-that-hangs-on-the-fixings = Masse, die an den Befestigungen hängt
sheet-pull-that-each-fixing-must-hold = Zug, den jede Befestigung halten muss
sheet-shear-that-each-fixing-must-hold = Querkraft, die jede Befestigung halten muss
sheet-pull-that-each-fixing-bears = Zug, den jede Befestigung trägt
sheet-shear-that-each-fixing-bears = Querkraft, die jede Befestigung trägt
sheet-who-states-what-it-bears = wer angibt, was sie trägt
sheet-pull-left = Zug übrig
sheet-shear-left = Querkraft übrig
sheet-mass-to-lift-antenna-radio-and-bracket = zu hebende Masse: Antenne, Funkgerät und Halterung

# Blitzschutz
sheet-lightning-protection-system-of-the-structure = Blitzschutzsystem des Bauwerks
sheet-class-of-that-system = Schutzklasse des Systems
sheet-who-states-it-of-the-structure = wer es vom Bauwerk angibt
sheet-how-the-support-is-joined-to-that-system = wie der Träger mit dem System verbunden ist
sheet-where-the-antenna-stands-by-its-protected-volume = wo die Antenne zum Schutzraum steht
sheet-lightning-protection-zone-of-the-antenna = Blitzschutzzone der Antenne
sheet-separation-distance-that-its-designer-asks-for = Trennungsabstand, den sein Planer verlangt
sheet-distance-kept-to-its-conductors = eingehaltener Abstand zu seinen Leitern
sheet-distance-kept-beyond-the-one-asked-for = Abstand über den verlangten hinaus
sheet-most-impulse-current-on-a-line-by-its-designer = höchster Stoßstrom einer Leitung, laut Planer
sheet-who-states-it-of-the-antenna = wer es von der Antenne angibt
sheet-impulse-test-asked-of-its-arresters = verlangte Stoßprüfung der Ableiter
sheet-present = vorhanden
sheet-absent = nicht vorhanden
sheet-unknown = nicht bekannt
sheet-bonded-directly = direkt verbunden
sheet-bonded-by-a-spark-gap = über eine Trennfunkenstrecke verbunden
sheet-kept-apart-from-it = davon getrennt gehalten
sheet-inside = im Schutzraum
sheet-outside = außerhalb des Schutzraums

# Erdung
sheet-grounding-conductor = Erdungsleiter
sheet-least-conductor-the-radio-asks-for-copper = kleinster Leiter, den das Funkgerät verlangt, Kupfer
sheet-least-grounding-conductor-of-this-metal = kleinster Erdungsleiter aus diesem Metall
sheet-length-of-the-grounding-conductor = Länge des Erdungsleiters
sheet-its-inductance-led-straight = seine Induktivität, gerade geführt
sheet-conductor-to-take-spare-included = mitzunehmender Leiter, mit Zugabe

# Kabel und Speisung
sheet-room-of-the-cable-within-that-insert = Spiel des Kabels in diesem Einsatz
sheet-least-bend-radius-fixed = kleinster Biegeradius, befestigt
sheet-least-bend-radius-while-pulling = kleinster Biegeradius beim Ziehen
sheet-depth-of-the-drip-loop-below-the-port = Tiefe der Tropfschleife unter dem Port
sheet-length-as-ethernet-counts-it-hot = Länge nach Ethernet-Zählung, heiß
sheet-length-left-to-the-longest-channel-hot = Rest zum längsten Kanal, heiß
sheet-longest-outdoor-length-for-data-hot = größte Länge außen für Daten, heiß
sheet-cable-to-take-spare-included = mitzunehmendes Kabel, mit Zugabe
sheet-what-it-feeds = was sie speist
sheet-most-that-draws = dessen größte Aufnahme
sheet-loop-resistance = Schleifenwiderstand
sheet-least-voltage-at-the-port-of-the-radio = kleinste Spannung am Port des Funkgeräts
sheet-greatest-voltage-at-the-port-of-the-radio = größte Spannung am Port des Funkgeräts
sheet-voltage-at-the-device = Spannung am Gerät
sheet-least-voltage-of-the-device = kleinste Spannung des Geräts
sheet-greatest-voltage-of-the-device = größte Spannung des Geräts
sheet-current = Strom
sheet-current-of-one-conductor = Strom einer Ader
sheet-power-the-port-hands-on = Leistung, die der Port weitergibt
sheet-grade-screening-and-jacket-of-the-cable = Klasse, Schirmung und Mantel des Kabels
sheet-length-of-cable = Kabellänge
sheet-where-it-comes-from = woher es kommt
sheet-what-its-figures-rest-on = worauf seine Angaben beruhen
sheet-limit = Grenzwert
sheet-typical = üblicher Wert
sheet-range-of-the-trade = Spanne des Handels
sheet-measured = gemessen
sheet-site = Standort
sheet-radio = Funkgerät
sheet-antenna = Antenne
sheet-bracket = Halterung
sheet-cable = Kabel
sheet-supply = Versorgung
sheet-arrester = Ableiter
sheet-template = Vorlage
sheet-feeder = Speiseleitung
sheet-outside-diameter-of-the-cable = Außendurchmesser des Kabels
sheet-gland-insert-that-seals-it = Dichteinsatz, der es abdichtet
sheet-hottest-cable-outdoors = heißestes Kabel außen
sheet-one-conductor-end-to-end-hot-with-contacts = ein Leiter von Ende zu Ende, heiß, mit Kontakten
sheet-least-supply-voltage = kleinste Speisespannung
sheet-most-the-radio-draws = größte Aufnahme des Funkgeräts
sheet-most-it-takes-for-what-it-feeds = größte Aufnahme für das Weitergespeiste
sheet-the-run-it-comes-by = Leitung, über die es kommt
sheet-what-its-pluggables-speak-over-which-fibre = was die Steckmodule sprechen, über welche Faser
sheet-length-of-fibre = Länge der Glasfaser
sheet-longest-fibre-for-that = längste Faser dafür
sheet-length-left-to-that = Länge bis dahin
sheet-loss-of-the-fibre-with-its-connectors-and-splices = Dämpfung der Faser mit Steckern und Spleißen
sheet-most-loss-for-that-interface = größte Dämpfung für diese Schnittstelle
sheet-loss-left-to-that = Dämpfung bis dahin
sheet-greatest-voltage-at-the-radio = größte Spannung am Funkgerät
sheet-voltage-at-the-radio = Spannung am Funkgerät
sheet-power-the-supply-gives = Leistung des Speisegeräts
sheet-voltage-wanted-at-the-radio = gewünschte Spannung am Funkgerät
sheet-voltage-above-the-radio-s-least-and-the-reserve = Spannung über dem Kleinstwert des Funkgeräts und der Reserve
sheet-length-left-to-100-m = Rest zu 100 m
sheet-longest-outdoor-length-for-this-voltage = größte Länge außen für diese Spannung
sheet-thinnest-conductor-for-this-voltage = dünnster Leiter für diese Spannung
sheet-least-supply-for-this-voltage = kleinste Speisespannung für diese Spannung

# Genehmigung
sheet-radiated-power-average = EIRP, Mittelwert
sheet-highest-transmit-power-to-set = größte Sendeleistung
sheet-licence-or-registration-number = Genehmigung oder Anmeldung
sheet-eirp-limit-of-the-licence = EIRP-Grenze nach Genehmigung
sheet-transmit-power-limit-of-the-licence = Grenze der Sendeleistung nach Genehmigung
sheet-code-of-practice = Regelwerk
sheet-how-surely-its-figures-are-known = Herkunft seiner Zahlen
sheet-eirp-limit-average = EIRP-Grenze, Mittelwert
sheet-eirp-limit-peak = EIRP-Grenze, Spitzenwert
sheet-transmit-power-limit = Grenze der Sendeleistung
sheet-transmit-power-all-limits-allow = Leistung nach allen Grenzen
sheet-least-antenna-gain = kleinster Antennengewinn
sheet-greatest-beamwidth-in-place-of-that-gain = größte Halbwertsbreite anstelle dieses Gewinns
sheet-channel-of-the-raster = Kanal des Rasters
sheet-published = veröffentlicht
sheet-from-memory = aus dem Gedächtnis
sheet-second-hand = aus zweiter Hand
sheet-47-cfr-15-255-fixed-point-to-point-transmitters-outdoors = 47 CFR 15.255, ortsfeste Punkt-zu-Punkt-Sender im Freien
sheet-47-cfr-15-255-all-other-transmitters = 47 CFR 15.255, alle anderen Sender
sheet-47-cfr-101-113-and-101-115-71-to-76-and-81-to-86-ghz-as-amended-in-2024 = 47 CFR 101.113 und 101.115, 71 bis 76 und 81 bis 86 GHz, Fassung von 2024
sheet-47-cfr-101-113-and-101-115-71-to-76-and-81-to-86-ghz-2005-to-2023 = 47 CFR 101.113 und 101.115, 71 bis 76 und 81 bis 86 GHz, 2005 bis 2023
sheet-ecc-rec-09-01-point-to-point-links-in-57-to-64-ghz = ECC/REC/(09)01, Punkt-zu-Punkt-Strecken in 57 bis 64 GHz
sheet-erc-rec-70-03-annex-3-c2-and-decision-eu-2019-1345 = ERC/REC 70-03 Anhang 3, c2, und Beschluss (EU) 2019/1345
sheet-erc-rec-70-03-annex-3-c3-fixed-outdoors-and-decision-eu-2019-1345 = ERC/REC 70-03 Anhang 3, c3, ortsfest im Freien, und Beschluss (EU) 2019/1345
sheet-etsi-en-302-217-71-to-76-and-81-to-86-ghz = ETSI EN 302 217, 71 bis 76 und 81 bis 86 GHz

# Menschen
sheet-greatest-power-to-be-set = größte einzustellende Leistung
sheet-power-density-at-the-cover-of-the-antenna = Leistungsdichte am Radom
sheet-distance-for-whoever-passes-along-the-beam = Abstand im Strahl, Allgemeinheit
sheet-distance-for-trained-workers-along-the-beam = Abstand im Strahl, Geschulte

# Wind
sheet-pressure-of-the-operating-wind = Staudruck, Betriebswind
sheet-force-of-it-on-antenna-and-radio = Windkraft auf Antenne und Gerät
sheet-its-centre-above-ground = Mitte über Grund
sheet-true-bearing-of-its-beam = rechtweisende Peilung ihres Strahls
sheet-its-diameter = ihr Durchmesser
sheet-room-between-the-two-less-than-none-where-they-overlap = Luft zwischen beiden, unter null bei Überlappung
sheet-distance-for-whoever-passes-it-along-its-beam = Abstand in ihrem Strahl, Allgemeinheit
sheet-distance-of-trained-workers-from-it-along-its-beam = Abstand in ihrem Strahl, Geschulte
sheet-runs-that-the-supply-feeds = Leitungen an dieser Versorgung
sheet-what-they-draw-of-it-together = was sie zusammen entnehmen
sheet-what-it-reserves-for-them-by-class = was nach Klasse für sie reserviert wird
sheet-most-power-of-all-its-ports-together = höchste Leistung aller Anschlüsse zusammen
sheet-what-else-bonds-to-its-earth-point = was sonst am selben Erdungspunkt hängt
sheet-what-else-stands-on-the-support = was sonst am selben Träger steht
sheet-force-of-it-on-what-else-stands-there = Windkraft auf die übrigen dort
sheet-moment-at-the-foot-of-the-pole-in-it = Moment am Rohrfuß darin
sheet-of-it-by-antenna-and-radio-of-this-end = davon Antenne und Gerät dieses Endes
sheet-of-it-by-what-else-stands-there = davon die übrigen dort
sheet-force-of-it-on-the-pole = Windkraft auf das Rohr
sheet-nod-of-the-antenna-in-that-wind = Nicken der Antenne bei Wind
sheet-swing-of-the-antenna-in-that-wind = Drehen der Antenne bei Wind
sheet-least-movement-of-the-beam-in-that-wind = kleinste Strahlbewegung bei Wind
sheet-loss-of-aim-in-that-wind-this-end = Ausrichtverlust bei Wind
sheet-pressure-of-the-survival-wind = Staudruck, Überlebenswind
sheet-stress-at-the-foot-of-the-pole-in-it = Spannung am Rohrfuß darin
sheet-yield-strength-of-the-pole = Streckgrenze des Rohrs

# Protokoll
sheet-air-temperature-that-day = Lufttemperatur an dem Tag
sheet-dry-air-pressure-that-day = Druck der trockenen Luft an dem Tag
sheet-water-vapour-pressure-that-day = Wasserdampfdruck an dem Tag
sheet-gas-loss-in-the-air-of-that-day = Gasdämpfung in der Luft des Tages
sheet-loss-in-the-rain-of-that-day = Dämpfung im Regen des Tages
sheet-loss-of-wet-antenna-covers-that-day-both-ends = Dämpfung nasser Radome an dem Tag, beide Enden
sheet-loss-in-the-fog-of-that-day = Dämpfung im Nebel des Tages
sheet-power-back-off-of-the-state-while-reading = Leistungsrücknahme der Stufe beim Ablesen
sheet-level-expected-that-day = erwarteter Pegel an dem Tag
sheet-lowest-level-to-accept-that-day = kleinster zulässiger Pegel an dem Tag
sheet-highest-level-to-accept-that-day = größter zulässiger Pegel an dem Tag
sheet-meter-reading-expected-that-day = erwartete Anzeige an dem Tag
sheet-level-read-before-locking = Pegel vor dem Festziehen
sheet-level-read-after-locking = Pegel nach dem Festziehen
sheet-change-on-locking = Änderung beim Festziehen
sheet-level-read-less-the-level-expected = abgelesener weniger erwarteter Pegel
sheet-level-read-brought-to-the-air-of-the-design = abgelesener Pegel, auf die Luft der Planung umgerechnet
sheet-level-by-the-meter-less-the-level-the-radio-said = Pegel nach Voltmeter weniger Pegel nach Funkgerät
sheet-lowest-level-with-crossed-polarisation = kleinster Pegel bei gekreuzter Polarisation
sheet-highest-level-with-crossed-polarisation = größter Pegel bei gekreuzter Polarisation
sheet-bearing-as-found-less-the-true-bearing = vorgefundener weniger rechtweisender Azimut
sheet-height-as-found-less-the-designed-one = vorgefundene weniger geplante Höhe
sheet-tilt-as-found-less-the-tilt-to-set = vorgefundene weniger einzustellende Neigung
sheet-least-grounding-conductor-of-the-metal-designed = kleinster Erdungsleiter aus dem geplanten Metall
sheet-voltage-found-at-the-radio = vorgefundene Spannung am Funkgerät
sheet-voltage-predicted-at-the-radio-at-worst = vorhergesagte Spannung am Funkgerät, ungünstigst
sheet-voltage-found-less-the-predicted-one = vorgefundene weniger vorhergesagte Spannung

# Schwellen
sheet-noise-of-the-receiver = Rauschen des Empfängers
sheet-least-threshold-that-is-possible = kleinste mögliche Schwelle
sheet-greatest-threshold-that-is-usual = größte übliche Schwelle

## Why a line of the sheet has no value.

reason-broken-field = `{ $field }`
reason-broken-field-of = `{ $field }` von { $owner }
reason-broken-rain-map = die Regenkarte
reason-broken-profile-file = ihre Profildatei
reason-ends-coincide = beide Enden haben dieselbe Lage
reason-no-profile = es gibt kein Profil der Strecke
reason-tile-void = eine Kachel hat auf der Strecke eine Lücke
reason-no-tile = keine Kachel reicht an die Strecke in { $cells }
reason-edges-swapped = die fernere Kante eines Hindernisses liegt näher als seine nähere
reason-obstacle-beyond-end = ein Hindernis { $distance } von a liegt hinter Ende b, das bei { $length } liegt
reason-growth-without-day = Wuchs ist ohne den Tag angegeben, bis zu dem er zählt: `until` ergänzen
reason-profile-out-of-order = die Punkte des Profils stehen nicht nach der Entfernung geordnet
reason-profile-too-short = ein Profil hat mindestens zwei Punkte, den Boden an beiden Enden
reason-clearance-out-of-range = ein Anteil der Fresnelzone liegt zwischen { $least } und { $most }, nicht bei { $value }
reason-factor-out-of-range = ein Faktor des wirksamen Erdradius liegt zwischen { $least } und { $most }, nicht bei { $value }
reason-no-day = kein Tag ist angegeben
reason-nothing-grows = auf der Strecke wächst nichts
reason-no-near-edge = keine nahe Kante liegt im Strahl
reason-outside-troposphere = die Referenzatmosphäre gilt von −1 km bis 11 km, nicht bei { $height }
reason-all-vapour = die Luft wäre ganz Wasserdampf
reason-no-rain-rate = weder Netz noch Standort noch Strecke nennen eine Regenrate, Monatsnormalwerte oder eine Regenkarte
reason-outside-rain-map = die Strecke liegt außerhalb der Regenkarte
reason-not-twelve-months = die Normalwerte sind { $totals } Summen und { $temperatures } Temperaturen, nicht je zwölf
reason-no-weather = { $rain } Regen bei { $temperature } sind kein Wetter für Monat { $month }
reason-no-rate-from-months = aus den Normalwerten folgt keine Regenrate
reason-no-rain-height = keine Regenhöhe ist angegeben
reason-no-losses = nichts angegeben
reason-no-feeder-loss = die Speiseleitung nennt keine Dämpfung bei dieser Frequenz
reason-too-near-to-tell = die Antennen stehen zu nahe beisammen, um zu sagen, was sie im Nahfeld verlieren
reason-far-field = die Antennen stehen nicht im Nahfeld der jeweils anderen
reason-no-coldest-air = keine kälteste Luft ist angegeben
reason-rain-frequency = der Regenausfall ist von 1 bis 100 GHz modelliert, nicht bei { $frequency }
reason-rain-distance = der Regenausfall ist bis 60 km modelliert, nicht über { $distance }
reason-no-such-rain-rate = { $rate } ist keine Regenrate
reason-rain-model-range = das Regenmodell gilt von 0.001 % bis 1 % des Jahres, also für Verfügbarkeiten von 99 % bis 99.999 %
reason-endless = die Werte, aus denen es folgt, ergeben zusammen keine Zahl
reason-no-fog = kein Nebel ist angegeben
reason-no-emission-class = die Sendeart des Funkgeräts ist nicht angegeben
reason-fog-frequency = die Dämpfung im Nebel ist bis 200 GHz modelliert
reason-no-state-for-capacity = keine Modulationsstufe erreicht die geforderte Kapazität
reason-no-other-state = keine andere Stufe
reason-no-hysteresis = die Stufe hat keine Hysterese
reason-no-state-holds = keine Modulationsstufe hat eine Schwundreserve
reason-no-state-to-align-in = das Funkgerät hat keine Modulationsstufe dieser Bandbreite zum Ausrichten
reason-no-held-level = die Leistungsregelung hält keinen Pegel
reason-no-power-control = das Funkgerät hat keine Leistungsregelung
reason-no-control-range = der Bereich der Leistungsregelung ist nicht angegeben
reason-no-up-fade = keine Überhöhung ist angegeben
reason-no-fade-margin = keine Schwundreserve ist gefordert
reason-no-time-between-failures = keine mittlere Zeit zwischen Ausfällen des Funkgeräts ist angegeben
reason-no-time-to-restore = keine mittlere Zeit bis zur Wiederherstellung ist angegeben
reason-no-power-failures = keine Ausfälle des Stromanschlusses sind angegeben
reason-nothing-off = keine Toleranz von Leistung, Gewinn, Schwelle oder Regenrate ist angegeben
reason-no-errored = kein Ziel für Fehler ist angegeben
reason-no-refractivity = keine Brechzahlwerte sind angegeben
reason-multipath-short = über { $distance } spielt Mehrwegeschwund keine Rolle
reason-multipath-distance = Mehrwegeschwund ist bis 185 km modelliert, nicht über { $distance }
reason-multipath-frequency = Mehrwegeschwund ist von 15 GHz durch die Strecke in km bis 45 GHz modelliert, nicht bei { $frequency }
reason-multipath-occurrence = eine Mehrwegehäufigkeit von { $share } % liegt außerhalb des Verfahrens
reason-one-carrier = auf dem Kanal ist ein einziger Träger
reason-nothing-heard = kein anderer Sender ist zu hören
reason-nothing-elsewhere = keine angegeben
reason-no-neighbour-reached = kein Empfänger eines Nachbarn wird erreicht
reason-no-cross-polar = eine Antenne nennt keine Kreuzpolarisationsentkopplung
reason-no-carrier-to-interference = die Stufe nennt keinen Störabstand
reason-crossing-frequency = die Depolarisation im Regen ist von 8 bis 35 GHz modelliert, nicht bei { $frequency }
reason-aim-beyond-beam = ein Ausrichtfehler über 0.9 der Halbwertsbreite liegt neben der Hauptkeule
reason-no-uncoded-figure = kein Wert ohne Kodierung für so viele Bit
reason-hop-not-evaluated = Strecke { $hop } ist nicht berechnet
reason-route-broken = ein Weg schließt nicht aneinander an
reason-one-route = es gibt einen Weg
reason-two-routes = es gibt zwei Wege
reason-no-common-rain = kein Abstand angegeben, bis zu dem Regen gemeinsam ist
reason-diameter-not-above-zero = eine Antenne hat einen Durchmesser über null
reason-no-diameter = die Antenne gibt keinen Durchmesser an
reason-beam-not-above-zero = eine Keule hat eine Breite über null
reason-no-measured-lobe = das gemessene Diagramm zeigt keine erste Nullstelle und Nebenkeule
reason-no-side-lobe = eine Antenne unter zwei Wellenlängen hat keine Nebenkeule
reason-pattern-measured = das Diagramm ist gemessen
reason-pattern-frequency = Referenzdiagramme gelten von 1 bis 86 GHz, nicht bei { $frequency }
reason-pattern-diameter = { $diameter } ist kein Durchmesser einer Antenne
reason-pattern-angle = ein Winkel neben der Achse liegt zwischen 0° und 180°, nicht bei { $angle }
reason-no-such-date = { $day } ist kein Datum
reason-outside-magnetic-model = { $day } liegt außerhalb der Jahre { $first } bis { $last } des Magnetfeldmodells
reason-magnetic-height = das Magnetfeldmodell gilt von −1 km bis 850 km, nicht bei { $height }
reason-no-such-position = { $latitude }, { $longitude } ist keine Lage
reason-compass-blackout = die waagrechte Feldstärke von { $field } nT liegt unter { $least } nT, zu schwach für einen Kompass
reason-degenerate-scale = die zwei Punkte der Anzeigeskala brauchen verschiedene Spannungen und verschiedene Pegel
reason-no-readout = sein Funkgerät hat keine Spannung zum Ausrichten
reason-nothing-to-align-by = sein Funkgerät zeigt nichts, wonach man ausrichten kann
reason-no-tolerance = keine Toleranz von Leistung, Gewinn oder Anzeige ist angegeben
reason-no-gland = der Port nennt keinen Dichteinsatz
reason-no-gland-holds = kein Dichteinsatz des Ports fasst diesen Durchmesser
reason-no-basis = es sagt nichts darüber
reason-nothing-seals = kein Einsatz dichtet es ab
reason-nothing-feeds-radio = nichts speist das Funkgerät
reason-nothing-feeds-run = nichts speist diese Leitung
reason-power-in-a-circle = Funkgeräte speisen einander im Kreis
reason-no-reach = { $interface } reicht über { $fibre } nicht
reason-run-without-power = die Leitung führt keine Speisung
reason-starved = mehr als { $most } kann das ferne Ende des Kabels nicht erreichen
reason-device-starved = mehr als zu wenig kann es nicht erreichen
reason-no-length-does = keine Länge dieses Kabels würde genügen
reason-no-conductor-does = kein Kabel, das in einen Stecker passt, ist dick genug
reason-no-supply-does = keine Speisespannung würde genügen
reason-no-grounding-conductor = kein Erdungsleiter ist angegeben
reason-no-grounding-length = seine Länge ist nicht angegeben
reason-none-in-licence = die Genehmigung nennt keine
reason-nothing-limits = nichts begrenzt sie
reason-none-stated = keine ist angegeben
reason-no-raster = das Regelwerk setzt kein Raster
reason-off-raster = nicht auf dem Raster von { $raster }
reason-none-in-code = das Regelwerk setzt keine
reason-no-peak-in-code = das Regelwerk setzt keinen Spitzenwert
reason-no-power-in-code = das Regelwerk setzt keine eigene Leistung
reason-mast-is-engineers = ein Mast ist Sache des Tragwerksplaners
reason-wall-is-engineers = eine Wand ist Sache des Tragwerksplaners
reason-no-wall = keine Wanddicke ist angegeben
reason-wall-too-thick = die Wand ist dicker als das Rohr
reason-material-spreads = { $material } streut zu weit
reason-nothing-stands-free = kein Teil des Rohrs steht frei
reason-no-wind = kein Wind ist angegeben
reason-no-survival-wind = kein Überlebenswind ist angegeben
reason-no-wind-area = die Antenne gibt keine Windfläche an
reason-no-wind-area-beside = die Antenne von Strecke { $hop }, Ende { $end }, am selben Träger gibt keine Windfläche an
reason-no-orography = kein Hügel und keine Klippe ist angegeben
reason-orography-in-gust = die Geschwindigkeit ist eine Böe an der Antenne, in der der Hügel schon steckt
reason-no-orography-factor = EN 1991-1-4 nimmt einen Beiwert oder einen Hang, und keiner von beiden ist angegeben
reason-no-topographic-factor = ASCE 7 nimmt einen Geländebeiwert, und keiner ist angegeben
reason-orography-out-of-range = ein Beiwert für Hügel und Klippen liegt zwischen { $least } und { $most }, nicht bei { $value }
reason-no-ice = kein Eis ist angegeben
reason-no-fixings = keine Befestigungen sind angegeben
reason-few-fixings = Befestigungen in zwei Reihen sind mindestens zwei
reason-no-mass = nicht jede Masse ist angegeben
reason-nobody-says = niemand sagt es
reason-bonds-alone = nichts anderes aus dem Netz hängt dort an der Erde
reason-no-total-power = die Versorgung nennt keine Leistung aller Anschlüsse zusammen
reason-crowded-supply = mehr als { $most } Leitungen an einer Versorgung werden nicht summiert
reason-stands-alone = nichts anderes aus dem Netz steht dort
reason-crowded = mehr als { $most } andere Antennen an einem Träger werden nicht gemeinsam beurteilt
reason-wind-beyond-beam = der Wind dreht sie aus der Hauptkeule
reason-rain-not-measured = es regnete, und wie stark, ist nicht eingetragen
reason-snow-not-computed = Dämpfung im Schnee wird nicht berechnet
reason-fog-not-measured = es war Nebel, und wie dicht, ist nicht eingetragen
reason-not-both-written = Anzeige und Pegel sind nicht beide eingetragen
reason-no-voltage = keine Spannung ist eingetragen
reason-not-written = es ist nicht eingetragen
reason-no-reading = keine Ablesung ist eingetragen

## What a line of the sheet says that is no number by itself.

said-name = { $name }
said-word = { $word }
said-never = keiner
said-not-more-than = nicht mehr als { $number }
said-at-least = mindestens { $number }
said-range = { $least } bis { $most }
said-each-way = { $there } von a nach b, { $back } von b nach a
said-as-written = wie angegeben
said-rain-of-months = Normalwerte der zwölf Monate
said-rain-of-map = Karte in der Mitte der Strecke
said-no-rain-of-map = Kartenwert 0: kein Regenausfall im Modell
said-melting-layer = schmelzender Schnee: die Strecke liegt in der mittleren Schmelzschicht
said-rain = Regen
said-rain-or-snow = Regen oder Schnee, zeitweise schmelzender Schnee
said-dry-snow = trockener Schnee
said-wet-snow = nasser Schnee
said-crossing = gekreuzte Polarisationen
said-multipath = Mehrwegeschwund
said-equipment = Ausfälle von Geräten
said-supply = Ausfälle ihrer Versorgung
said-latency-of = Verzögerung von { $radio }
said-and = { $first }, { $next }
said-no-source = keine: { $why }
said-points-in-hop = Punkte in der Strecke
said-tiles = Kacheln { $names }
said-tiles-of = { $source } (Kacheln { $names })
said-count = { $number }
said-standing = { $kind } { $name }
said-standard-part = Normteil, im Programm enthalten
said-shared-library = gemeinsame Bibliothek { $name }
said-basis = { $text } [{ $sure }]
said-basis-of = { $keys }: { $text } [{ $sure }]
said-sender = { $owner } { $level }
said-voltage-at = Spannung an Port { $port }
said-level-at = Pegel an: { $place }
said-higher = höher
said-lower = niedriger
said-device = Gerät
said-grade = { $grade }, { $jacket }
said-over = { $what } über { $way }
said-end-at = { $hop } Ende { $end } in { $height }
said-end-of = { $hop } Ende { $end }
said-run-of = { $hop } Ende { $end } Anschluss { $port }
said-and-more = und weitere
said-moment-of = { $hop } Ende { $end } { $moment }
said-confidences = EIRP { $eirp }, Leistung { $power }, Antenne { $antenna }
said-channel = { $raster }: { $number } zu { $step }
said-channels = { $raster }: { $first } bis { $last } zu { $step }
said-lower-channel = { $raster }: { $number } zu { $step }, untere Hälfte
said-lower-channels = { $raster }: { $first } bis { $last } zu { $step }, untere Hälfte
said-upper-channel = { $raster }: { $number } zu { $step }, obere Hälfte
said-upper-channels = { $raster }: { $first } bis { $last } zu { $step }, obere Hälfte

## What its parts are headed.

title-of-path = Strecke
title-of-line-of-sight = Sichtverbindung
title-of-both-directions = Beide Richtungen
title-of-end-to-end = Von Ende zu Ende
title-of-route = Weg { $number }: { $hops }
title-of-level-budget = Pegelbilanz { $way }
title-of-gas-bounds = Gas in anderer Luft { $way }
title-of-margins = Reserven { $way }
title-of-heard = Störungen { $way }
title-of-disturbed = Nachbarn { $way }
title-of-levels = Pegel im Betrieb { $way }
title-of-crossed = Gekreuzte Polarisationen { $way }
title-of-state = { $state } { $way }
title-of-licence = Genehmigung { $way }
title-of-code = { $code } { $way }
title-of-end = Ende { $end }
title-of-antenna = Ende { $end }, Antenne
title-of-side-lobes = Ende { $end }, Nebenkeulen
title-of-on-side-lobe = Ende { $end }, Nebenkeule: { $who }
title-of-threshold = Ende { $end }, Schwelle von { $state }
title-of-arrival = Ende { $end }, was an Anschluss { $port } ankommt
title-of-fibre-run = Ende { $end }, Glasfaser zu Anschluss { $port }
title-of-shared = Ende { $end }, Versorgung von Anschluss { $port }, gemeinsam
title-of-beside = Ende { $end }, daneben { $hop } Ende { $other }
title-of-wind = Ende { $end }, Wind
title-of-people = Ende { $end }, Menschen
title-of-ice = Ende { $end }, Eis
title-of-fixings = Ende { $end }, Befestigungen des Trägers
title-of-grounding = Ende { $end }, Erdung
title-of-lightning = Ende { $end }, Blitzschutz
title-of-run = Ende { $end }, Leitung zu Port { $port }
title-of-close-to = Nahe Ende { $end }
title-of-elsewhere = Von anderswo: { $kind } { $id }
title-of-record = Protokoll { $record }, Ende { $end }, { $day }
title-of-record-run = Protokoll { $record }, Leitung zu Port { $port }

## What stands in for what nobody stated.

assumed-earth-radius = Wirksamer Erdradius 4/3 von 6371 km (mittlere Brechung).
assumed-low-k = Wirksamer Erdradius im ungünstigsten Monat: k = { $k }, nach der Länge der Strecke (ITU-R P.530 §2.2.2, geschlossene Form aus dem Gedächtnis).
assumed-clearance-criteria = Freiraum { $median } beim mittleren k, { $low } beim kleinen k; was davon nicht angegeben ist, nach ITU-R P.530-18 §2.2.2, gemäßigtes Klima (aus dem Gedächtnis).
assumed-air = Referenzatmosphäre nach ITU-R P.835-7 auf der mittleren Höhe der Antennen.
assumed-rest-of-air = Referenzatmosphäre nach ITU-R P.835-7 für das, was von der Luft nicht angegeben ist.
assumed-straight-ground = Boden zwischen den Punkten eines Profils gerade; keine Unsicherheit der Höhen, wenn keine angegeben ist.
assumed-cables-in-sun = Kabel außen { $hotter } wärmer als die heißeste Luft, { $contact } je gestecktem Kontakt (übliche Praxis).
assumed-turn-on = Funkgeräte schalten bei { $voltage } ein, wo sie nichts angeben (IEEE 802.3, aus dem Gedächtnis).
assumed-coldest-air = Kälteste Luft nicht angegeben: Kältegrenzen der Geräte werden nicht beurteilt.
assumed-acceptance-window = Abnahmefenster ± { $window } (übliche Praxis; keines angegeben).
assumed-hottest-air = Heißeste Luft { $temperature } (keine angegeben).
assumed-voltage-reserve = Spannungsreserve { $reserve } (übliche Praxis; keine angegeben).
