# English. A key for every sentence of a page; { $names } are what the sentence leaves open.

range = { $least } to { $most }

## Safety messages: what it is, what it does to people, how to avoid it.

signal-danger = DANGER
signal-warning = WARNING
signal-notice = NOTICE

caution-height = Work at height.
caution-height-consequence = A fall kills.
caution-height-avoid =
    Climb only if you are trained, authorised and equipped for this structure, and never alone. Agree on the rescue plan before anyone leaves the ground. Tie every tool. Keep people out from below.

caution-lines = Power lines.
caution-lines-consequence = Touching one, or coming near it, kills.
caution-lines-avoid =
    Look up before anything is raised. Keep the distance that the owner of the line and the local code demand. If a pole, a ladder or an antenna could fall onto a line, stop and ask the owner.

caution-weather = Lightning, wind and ice.
caution-weather-consequence = A strike anywhere near can kill; gusts and ice throw people and parts down.
caution-weather-avoid =
    Come down at the first thunder, or when the site tells you to. Touch no cable in a storm. Do not climb in wind or ice beyond the limits of your employer and of the site.

caution-electricity = Electricity.
caution-electricity-consequence = Shock and burns; a start at height can end in a fall.
caution-electricity-avoid =
    Leave mains work to a licensed or competent electrician under the local code. Isolate, lock and prove dead. Connect the grounding conductor first and take it off last.

caution-radiation = Radio waves from the antenna.
caution-radiation-consequence = Close in front of a transmitting antenna they can heat the body and harm the eyes.
caution-radiation-avoid =
    Keep everyone out of the space in front of the antenna while the transmitter is on. The distances under “Before work” are for the greatest power to be set: the maker's distances and the person responsible at this site come first.

caution-load = Heavy parts and the structure that bears them.
caution-load-consequence = A dropped part or a failing support can kill people below.
caution-load-avoid =
    Have a competent engineer confirm that the structure bears the load; it is not assessed in this pack. Lift with a rope and a tag line, with two people where one is not enough.

caution-makers = Makers' instructions and local codes.
caution-makers-consequence = A part used against them may fail.
caution-makers-avoid =
    They come before this pack. Where they ask for more than is printed here, do as they say and write it into the record.

## Words that stand for what an author left out, and other small ones.

not-set = NOT SET
not-stated = not stated
none = none
nothing = —

## The head and foot of every page.

pack-design = Design pack
pack-site = Site pack
title-site = { $site }: site pack
pack-install = Install pack
pack-acceptance = Acceptance record
title-design = { $hop }: design pack
pack-licence = Licence data
title-licence = { $hop }: licence data
title-install = { $hop }, end { $end }: install pack
title-acceptance = { $hop }, end { $end }: acceptance record
end-at = End { $end }: { $site }
errors-not-built =
    { $count ->
        [one] 1 error is open, not to be built
       *[other] { $count } errors are open, not to be built
    }
errors-not-accepted =
    { $count ->
        [one] 1 error is open, not to be accepted
       *[other] { $count } errors are open, not to be accepted
    }
nobody-approved = nobody has approved this revision
draft-on-request = printed as a draft on request
draft-because = DRAFT: { $reasons }.

## Parts to take along.

part-radio = Radio
part-radio-detail = { $title }, half “{ $half }”{ $mass }
part-antenna = Antenna
part-bracket = Bracket
part-feeder = Feeder
part-bracket-detail = { $title }, mounted { $way-up }{ $mass }
part-band = Clamp band or U-bolt
part-band-detail = of the bracket, for a tube of { $tube }
part-plate = Extension plate
part-conductor = Grounding conductor
part-conductor-detail = { $metal } { $size }
part-conductor-detail-laid = { $metal } { $size }, { $length } laid
part-lug = Lug
part-lug-detail = for { $size }, at the radio: { $terminal }
part-lug-or-clamp = Lug or clamp
part-lug-or-clamp-detail = for { $size }, at: { $bond }
part-bonding-lead = Bonding lead of an arrester
part-bonding-lead-detail = short, with its lug; size as the arrester's maker and the code say
part-blank = Blank
part-blank-detail = the maker's, for port { $port }
part-cable = Cable to port { $port }
part-cable-detail = { $title }, { $screen }, { $jacket } jacket; { $outdoor } outdoors, { $indoor } indoors
part-plug = Plug
part-plug-plain = plain, for { $diameter }
part-plug-metal = metal shell, crimped onto the screen, for { $diameter }
part-insert = Gland insert
part-insert-detail = { $insert } for port { $port }
part-arrester = Surge arrester
part-supply = Supply
bill-fibre = Fibre
bill-pluggable = Pluggable
part-fibre = Fibre to port { $port }
part-fibre-detail = { $title }, { $category }
part-pluggable-here = Pluggable for port { $port }
part-pluggable-there = Pluggable for its other end
size-not-set = size NOT SET
length-not-set = length NOT SET
earth-point-not-set = the earth point NOT SET
at-the-radio = at the radio
at-the-entry = at the cable entry
at-the-far-end = at the far end
upright = upright
inverted = inverted (upside down)
tool-wrench = torque wrench
tool-wrench-for = torque wrench for { $torque }
tool-wrench-range = torque wrench from { $least } to { $most }
tool-wrench-sockets = { $wrench } with sockets { $sockets }
tool-meter = voltmeter that shows millivolts with a lead for port { $port }
tool-shown-level = what is needed to see the level ({ $place }), voltmeter
tool-voltmeter = voltmeter
tools =
    Also: { $wrench }, { $meter }, level, compass, cable tester, weather sealing, camera, this pack.

## Side lobes.

lobes-on = On a side lobe
lobes-level = Level
lobes-meter = Meter
lobes-warning = If you read { $reading }, you are on a side lobe. Sweep on.
lobes-stop = { $reading }, its stop

## Steps of mounting.

step-tube = Find { $support } ({ $kind }) and measure its tube: { $diameter } outside.
step-landmark = Stand well clear of steel and find the far end by its bearing. Pick a landmark behind it.
step-look = Look along the path. If anything stands in it, stop and call the designer.
step-plate = Bolt the extension plate { $plate } to the bracket.
step-bracket-way-up = Turn the bracket { $way-up }, seen as its maker draws it.
step-fine-azimuth = Set the fine azimuth screw to the middle of its travel.
step-polarisation = Fix the antenna to the radio for { $polarisation } polarisation.
step-lift = Antenna, radio and bracket weigh { $mass } together, without ice. Agree who lifts, by which rope, and where nobody stands.
step-lift-unstated = What antenna, radio and bracket weigh is not stated: find out before lifting. Agree who lifts, by which rope, and where nobody stands.
step-clamp = Lift the bracket and clamp it so that the antenna centre comes { $height } above the ground.
step-hang = Lift radio and antenna and hang them on the bracket.
step-tilt = Set the tilt to { $tilt }.
step-bearing = Turn the antenna to { $bearing } true, towards the landmark.
step-nip = Tighten every screw only until nothing slips. The full torque comes after alignment.
tilt-up = { $tilt } (up)
tilt-down = { $tilt } (down)

## Steps of grounding and cabling.

step-earth-ask = the earth point of the site (NOT SET: ask the designer)
step-earth-bonded = Make sure that this earth point is bonded to the electrode of the building. If not, stop and ask.
step-bond = Bond the grounding conductor to: { $bond }.
step-lead = Lead it to the radio short and straight, no coil, no bend under { $bend }, and fix it to the { $terminal }.
step-lead-torque = Lead it to the radio short and straight, no coil, no bend under { $bend }, and fix it to the { $terminal } and tighten it to { $torque }.
step-pull = Pull the cable { $cable } from port { $port } to { $to } without bending it under { $pulling }, fixed not under { $fixed }. Tie it.
step-pull-to-device = the { $device }
step-pull-to-building = the building
step-pull-to-cabinet = the cabinet
step-pull-to-far-end = its far end
step-pull-to-radio = port { $port } of the radio of hop { $hop }, end { $end }
step-insert = Close the cable in at port { $port } with gland insert: { $insert }.
step-insert-by-hand = Close the cable in at port { $port } with gland insert: { $insert }. Tighten by hand only.
step-drip-loop = Form a drip loop whose lowest point hangs { $depth } below port { $port }.
step-lightning-direct = Check that the bond from { $support } to the lightning protection system is in place and sound. If it is not, stop and ask.
step-lightning-spark-gap = Check that the spark gap between { $support } and the lightning protection system is in place and sound. If it is not, stop and ask.
step-lightning-apart = Keep antenna, bracket and every cable at least { $distance } from all conductors of the lightning protection system. Bond nothing to it.
step-lightning-ask = Ask whoever is responsible for the lightning protection system before fixing anything near it or bonding anything to it.
step-arrester = Fit and bond the arrester { $arrester } { $at }.
step-screen = Bond the screen of the cable to port { $port } { $bonded }.
step-screen-entry = Bond the screen of the cable to port { $port } { $bonded }, at the entry to: { $earth }.
step-test = Test every pair of the cable to port { $port } and its screen from end to end.
step-test-cores = Test both cores of the cable to port { $port } from end to end, and that nothing joins them.
step-switch = Plug the run to port { $port } into port { $socket } of: { $switch }.
step-fibre-pull = Pull the fibre { $fibre } from port { $port } without bending it under { $bend }. Keep the caps on its connectors.
step-fibre-metal = Bond the metal in the fibre cable to port { $port } where it enters.
step-fibre-plug = Clean both connectors and plug in { $here } at port { $port }, { $there } at the other end. Never look into a fibre: its light cannot be seen and harms the eye.
step-fibre-test = Measure the fibre to port { $port } with light source and meter: no more than { $loss } from end to end.
step-blank = Close port { $port } with the maker's blank.
step-leave-free = Leave port { $port } free for the meter.
step-erase-button = Keep off { $button }: held for { $held } it erases { $erases }.
step-wiring = Measure contacts and poles of the supply { $supply } before anything is plugged in: { $wiring }.
step-sends-at-once = Call the far end, get everybody out from in front of both antennas: the radio may send as soon as it has power.
step-connect = Connect the run to port { $port } to the supply { $supply } ({ $at }) and switch on.
step-connect-fuse = Connect the run to port { $port } to the supply { $supply } ({ $at }), put its fuse in and switch on.
step-arrival = Connect port { $port } to the run from port { $from } of the radio of hop { $hop }, end { $end }. Its cable stands in the pack of that end.
step-arrival-power = Connect port { $port } to the run from port { $from } of the radio of hop { $hop }, end { $end }, and have it switched on there. Its cable and its supply stand in the pack of that end.
place-not-set = place NOT SET
step-starts = Wait { $time }: the radio takes that long to start.
step-cores = Mark the cores to port { $port }: positive { $positive }, negative { $negative }. Measure that they are not reversed.
step-fuse = Make sure that the run to port { $port } has a fuse of { $rated } in the { $pole } pole at the supply, and that it is out.
step-voltage = Measure the voltage at the radio under load: expect { $voltage } or more.

## Steps of alignment.

step-call = Call the crew at the far end. Agree who moves; the other end stands still.
step-bandwidth = Set bandwidth { $bandwidth } and modulation { $state } at both ends.
step-bandwidth-apart = Set bandwidth { $bandwidth } at both ends, modulation { $here } here and { $there } at the far end.
step-control-both = Switch automatic power control off at both ends.
step-control-here = Switch automatic power control off here; the far end has none.
step-control-there = Switch automatic power control off at the far end; there is none here.
step-control-neither = Neither radio has automatic power control: nothing to switch off.
step-power = Set the transmit power to { $here } here and to { $there } at the far end.
step-ceiling = Never raise the transmit power above { $most } here: no more is allowed or kept clear for.
step-ceiling-licence = Never raise the transmit power above { $most } here (licence { $number }): no more is allowed or kept clear for.
step-covers = Take the transport covers off both antennas and the cap off port { $port }. The radomes stay on.
step-covers-only = Take the transport covers off both antennas. The radomes stay on.
step-transmit = Switch both transmitters on and wait until both radios have started.
step-alignment-mode = Bring the radio into its alignment mode: { $enter }
step-meter = Put a voltmeter that shows millivolts on port { $port }.
step-shown-level = Open what shows the received level: { $place }.
step-indication = Watch { $title }: with a stronger signal, { $stronger }.
step-lag = After every turn wait { $lag } before you believe what it shows.
step-sweep = Sweep azimuth slowly, at least { $angle } to both sides. Go back to the strongest peak.
step-sweep-past = Sweep azimuth slowly, well past the first peak to both sides. Go back to the strongest peak.
step-sweep-tilt = Sweep tilt in the same way. Go back to the strongest peak.
step-peak = Peak with the fine screws, then have the far end do so. Repeat until neither gains.
step-compare = Compare with the target above. Write the reading into the record.
step-torque = { $screws }: tighten { $number } × { $thread } in turns and in stages to { $torque }.
step-torque-support = { $screws } of the support: { $number } × { $thread }, check or tighten to { $torque }.
screw-wrench = { $thread }, wrench { $size }
step-torque-maker = Tighten all screws in turns and in stages to the maker's torque.
step-again = Read again. If it got weaker, loosen and peak again. Write the reading into the record.
step-restore = Switch all that was switched off for aligning back on at both ends.
step-alignment-mode-off = Bring the radio out of its alignment mode: { $leave }
step-meter-off = Take the meter off and close port { $port }.

## The install pack.

job = Mount radio { $radio } with antenna { $antenna } on { $support } ({ $kind }), looking at { $far }.
not-assessed-ask = Not assessed. Ask the owner of the site before you go.
declination = Declination here { $declination } on { $date }, east positive. Magnetic bearings drift; steel nearby bends them.
near-line = Power line: { $title }, { $distance } away, { $voltage }.
voltage-unknown = voltage unknown
near-line-consent = Consent of { $name }, { $reference }, { $date }.
near-people = People: { $title }, { $distance } away, bearing { $bearing }.
keep-clear-public = Whoever passes, in front
keep-clear-workers = Trained workers, in front
latitude = Latitude
longitude = Longitude
or = { $one }, or { $other }
ground-above-sea = Ground above sea level
hop-end = { $hop }, end { $end }
climb-antenna = Live antenna
climb-height = Height
climb-points = Looks to (true)
climb-workers = Trained, in front
climb-public = Others, in front
climb-call = Before the climb, call whoever can switch them off or lower them: { $names }
climb-call-nobody = Whom to call before the climb is not assessed. Ask the owner of the site.
site-job = { $hop }, end { $end }: looking at { $far }
site-support = Support { $support }
site-supply-shared = Supply { $unit } ({ $supply }) feeds { $runs }: { $drawn } drawn together, { $total } on all ports.
site-earth-shared = Bonded to { $point }: { $hop } end { $end }, { $others }.
draw-elevation-title = { $support }, seen across the beam of { $hop }; heights to scale
draw-elevation-foot = Heights above the foot of the support, which is { $base } above the ground.
draw-elevation-looks = looks to { $bearing } true
draw-elevation-keep = live: keep out { $keep } in front
draw-elevation-at = { $hop }, at { $height }
draw-elevation-live = { $hop }, at { $height }, live: keep out { $keep } in front
draw-elevation-alt = The support { $support } from its foot up: { $antennas }.
contact = Contact
contact-for = For
contact-telephone = Telephone
site-power = Power
site-earth = Earth
true-bearing = True bearing
magnetic-bearing = Magnetic bearing
tilt = Tilt
antenna-centre = Antenna centre above ground
polarisation = Polarisation
bracket = Bracket
plate = Extension plate
plate-fitted = fitted
plate-not-fitted = not fitted
run = Run
run-port = Port { $port }
run-cable = Cable
run-outdoors = Outdoors
run-indoors = Indoors
run-diameter = Outside diameter
run-insert = Gland insert
run-bend = Bend radius, least
run-pulling = While pulling
run-drip-loop = Drip loop below the port
run-screen = Screen
run-unscreened = none
run-screen-bonded = { $screen }, bonded { $bonded }
run-arresters = Arresters
run-fed-by = Fed by
run-power-point = Power taken at
run-voltage = Voltage at the radio, least
run-feeds = Feeds
run-feeds-detail = { $device }, { $draw }
run-feeds-voltage = Voltage at what it feeds, least
ground-conductor = Conductor
ground-metal = Of
ground-least = Least allowed
ground-least-detail = { $written } ({ $needed })
ground-length = Length
ground-bend = Bend radius, least
ground-bonds-to = Bonds to
ground-bonded = Bonded to the building
ground-bonded-yes = yes, says the design
ground-bonded-no = NO: do not connect, ask
ground-bonded-unknown = not stated: check
ground-terminal = Radio terminal
ground-torque = Terminal torque
see-maker = see the maker's sheet
lightning-system = Lightning protection
lightning-not-stated = NOT STATED: ask
lightning-unknown = not known: ask
lightning-absent = no system, says the design
lightning-present = the structure has a system
lightning-present-class = the structure has a system of class { $class }
lightning-ask = NOT STATED: ask
lightning-bond = Support and that system
lightning-separation = Keep to its conductors
target-port = Meter on port { $port }, direct voltage
target-accept = Accept { $band }
target-level = Level { $level } with { $state }
target-sense = A stronger signal reads { $sense }
target-shown-level = Level at: { $place }
target-state = with { $state }
target-sense-level = Nearer to zero is stronger: −40 before −50
target-peak = strongest peak
target-stronger = Stronger: { $stronger }
target-no-level = It tells more from less, not whether the level is right
target-ask = Stop: ask the designer what to align by
lamp = Lamp
lamp-shows = Shows
lamp-means = Means
outside-reading = If the reading is
outside-look = Look for
outside-do = Do
outside-weaker = weaker ({ $sense }) at both ends alike
outside-weaker-look = A side lobe: it peaks cleanly and still is not the beam. Or something in the path.
outside-weaker-do = Sweep wider in both axes at both ends: the beam is the strongest peak of several.
outside-one-end = weaker at one end only
outside-one-end-look = Power or channel of the other end, a wet or damaged radome, a loose antenna.
outside-one-end-do = Compare the settings. Dry, check, swap. New aim does not mend one direction.
outside-stronger = stronger ({ $sense }) than the band
outside-stronger-look = Wrong power, wrong model, or the wrong far end. The receiver may be overloaded.
outside-stronger-do = Transmitters off. Check power and models at both ends, then call the designer.
outside-restless = never at rest
outside-restless-look = Power control still on, a loose mount, rain, or hot air over the path.
outside-restless-do = Check both, then wait for calm and dry weather.
outside-none = not there
outside-none-look = Meter lead or port, far transmitter off, wrong half, channel or polarisation.
outside-none-look-shown = Far transmitter off, wrong half, channel or polarisation.
outside-none-do = Check here, then have the far end check.

## Drawings of the install pack.

draw-radio = Radio
draw-port = port { $port }
draw-supply = Supply
draw-device = Device
draw-network = Network
draw-data-power = data and power
draw-power = power
draw-data = data
draw-drip-loop = drip loop
draw-wall = wall of the building
draw-cabinet = wall of the cabinet
draw-outdoors = { $length } outdoors
draw-indoors = { $length } in
draw-arrester = arrester
draw-chain-alt = From port { $port } of the radio { $length } outdoors to the wall of the building, past { $number } surge arresters in all, to the far side.
draw-chain-outdoors-alt = From port { $port } of the radio { $length } outdoors, past { $number } surge arresters in all, to the far end.
draw-ground = ground of the site
draw-plate = plate
draw-tilt-up = tilt { $tilt } up
draw-tilt-down = tilt { $tilt } down
draw-bracket = bracket { $way-up }
draw-true-north = true north
draw-magnetic-north = magnetic north
draw-east = E
draw-south = S
draw-west = W
draw-true = { $bearing } true
draw-compass = { $bearing } by compass
draw-mounting-alt = From the side: antenna centre { $height } above ground, tilt { $tilt }, bracket { $way-up }. From above: true bearing { $true }, magnetic { $magnetic }.
draw-mounting-plate-alt = From the side: antenna centre { $height } above ground, tilt { $tilt }, bracket { $way-up }, with the extension plate. From above: true bearing { $true }, magnetic { $magnetic }.
draw-place-alt = Code for a telephone: { $words }
draw-accept = accept
draw-one-on-lobe = one end on a side lobe
draw-both-on-lobe = both ends
draw-align-to = align to { $reading }
draw-scale-alt = The scale of the meter. Align to { $target }; accept { $band }. With one end on a side lobe it reads { $lobe }.

## The record.

key = Key
item = Item
as-designed = As designed
as-built = As built
or-more = { $least } or more
record-power = Transmit power
record-bandwidth = Bandwidth
record-polarisation = Polarisation
record-meter-before = Meter before locking
record-level-before = Level before locking
record-meter-after = Meter after final torque
record-level-after = Level after final torque
record-bearing = True bearing set
record-tilt = Tilt set
record-height = Antenna centre above ground
record-licence = Licence or registration
record-voltage = Voltage at the radio, port { $port }
record-cable-test = Test of the cable, port { $port }
record-passed = passed
record-ground = Grounding conductor
record-resistance = Resistance of the earth
record-service-state = Service test: state reached
record-service-rate = Service test: rate received
record-service-errors = Service test: lost or wrong
record-service-duration = Service test: time
record-radio-serial = Radio, serial number
record-antenna-serial = Antenna, serial number

## The design pack.

value = Value
symbol = Symbol
end-a = End a
end-b = End b
a-to-b = a to b
b-to-a = b to a
end-port = End { $end }, port { $port }
end-row = End { $end }: { $words }
requirement = Requirement
limit = Limit
computed = Computed
in-hand = In hand
state = State
met = met
not-met = NOT MET
not-evaluated = not evaluated
not-shown = not shown
not-assessed = not assessed
none-stated = none stated
ask-availability = { $name }, { $directions }, { $period }, at { $capacity }
ask-availability-worst = The same, everything as bad as its stated tolerance allows
availability-left = { $left }: { $part } of what may be lost
tight = tight
ask-clearance = Clearance of the path, k = 4/3
ask-clearance-low = Clearance of the path, low k
ask-errored = Severely errored time { $way }, worst month
ask-fade-margin = Fade margin { $way }
ask-overload = Received level { $way }, below overload
ask-up-fade = Level in an up-fade { $way }, below overload
ask-degradation = Thresholds raised by interference { $way }
ask-tilt = Tilt of the bracket, end { $end }
ask-ground = Grounding conductor, end { $end }
ask-voltage = Voltage at the radio, end { $end }, port { $port }
ask-voltage-limit = ≥ { $least } and { $reserve } reserve
ask-length = Cable length, end { $end }, port { $port }
verdict-errors =
    { $count ->
        [0] No errors found by the rules run.
        [one] 1 error: not to be built.
       *[other] { $count } errors: not to be built.
    }
verdict-warnings =
    { $count ->
        [one] 1 warning to weigh.
       *[other] { $count } warnings to weigh.
    }
verdict-advice =
    { $count ->
        [one] 1 piece of advice.
       *[other] { $count } pieces of advice.
    }
verdict-waived =
    { $count ->
        [one] 1 finding is waived.
       *[other] { $count } findings are waived.
    }
aside = Did not count:
aside-off =
    { $count ->
        [one] 1 rule is switched off
       *[other] { $count } rules are switched off
    }
aside-lowered =
    { $count ->
        [one] 1 rule is lowered
       *[other] { $count } rules are lowered
    }
aside-named = { $count }: { $names }.
aside-not-judged = Part of this hop was not judged.
severity-error = ERROR
severity-warning = WARNING
severity-advice = ADVICE
rules-run = { $number } rules were run; none is switched off.
rules-run-but = { $number } rules were run; switched off by the network: { $off }.
waived-what = Accepted departure
waived-why = Why
waived-by = By whom
waived-until = Until
waived-instead = { $reason } Instead: { $instead }
waived-by-detail = { $name }, { $departure } of { $date }, { $reference }
site = Site
latitude-north = Latitude, north positive
longitude-east = Longitude, east positive
antenna-above-ground = Antenna above ground
antenna-above-sea = Antenna above sea level
true-bearing-far = True bearing to the far end
declination-on = Declination (east +) on { $date }
magnetic-bearing-far = Magnetic bearing to the far end
tilt-up-positive = Tilt, up positive
distance-ground = Distance over the ground
distance-antennas = Distance antenna to antenna
mean-altitude = Mean altitude of the antennas
air = Air: temperature, dry pressure, vapour
rain-rate = Rain rate exceeded 0.01 % of the year
bandwidth-each-way = Bandwidth, each way
polarisation-both = Polarisation, both ends
at-capacity = At { $capacity } each way
worse-direction = the worse direction
directions-together = both directions together
average-year = average year
worst-month = worst month
outage-rain-and-snow = Rain and wet snow
outage-rain = Rain
outage-multipath = Multipath fading
outage-crossing-rain = Crossed carriers in rain
outage-crossing-air = Crossed carriers in clear air
outage-equipment = Equipment
outage-supply = Power supply
outage-counted = Outage, all that is counted
outage-minutes = Minutes a year
not-counted = Not counted in these figures: { $causes }.
states = Modulation states { $way }
capacity = Capacity
threshold = Threshold
level = Level
fade-margin = Fade margin
outage = Outage
minutes-a-year = a year
availability = Availability
radio = Radio
half = Half, as the radio names it
antenna = Antenna
beamwidth = Full width of the main beam
support = Support
tube = Tube, outside
base = Base above ground
free-length = Free length
bracket-takes = Bracket takes tubes of
way-up = Way up
tilt-reach = Tilt it gives as mounted
tilt-needed = Tilt needed
tilt-left = Left to the nearer end of the range
lift-mass = Mass to lift
align-state = Modulation of the far end
align-level = Level to align to
accept-levels = Levels to accept
align-reading = Meter reading to align to
accept-readings = Readings to accept
stronger-reads = A stronger signal reads
level-uncertainty = Uncertainty of the level, 95 %
first-null = First null off the axis
first-lobe = First side lobe off the axis
meter-this-end = Meter with this end on a side lobe
meter-far-end = Meter with the far end on one
meter-both-ends = Meter with both ends on one
aligned-by = Align by
run-length = Length
run-hot-length = Length as Ethernet counts it, hot
run-conductor = One conductor, hot, with contacts
run-loop = Loop resistance
run-supply-voltage = Least supply voltage
run-draw = Most the radio draws
run-radio-voltage = Voltage at the radio
run-current = Current
run-supply-power = Power the supply gives
run-onward-draw = Most it takes for what it feeds
run-longest = Longest outdoor length
run-thinnest = Thinnest conductor, copper
run-least-supply = Least supply voltage that would do
run-onward-voltage = Voltage at what it feeds
run-port-power = Power the port hands on
ground-code = Code in force
ground-least-copper = Least conductor, copper
ground-of = Metal
ground-inductance = Inductance to a surge, led straight
code-of-practice = Code of practice
computed-by = Computed by { $program }. Source files and every computed line with its inputs are attached; sums and differences are only there. Nothing here is older or newer than the source mark in the foot.
method = Method or source
method-lines = Lines
draw-north = N
draw-plan-alt = Plan, north up: end b lies { $distance } from end a at a true bearing of { $bearing }.
draw-asked = asked for: { $availability }
draw-allowed = allowed: { $outage }
draw-outages-alt = Outage in the average year by cause. { $causes }. { $asked }.
draw-grades-alt = Availability of each capacity, a to b. { $states }. { $asked }.

## The profile.

sight-obstructed = Obstructed: { $what } at { $distance } from a into the line by { $by }.
sight-too-little = Too little clearance: { $has } over { $what } at { $distance } from a, { $asked } asked for.
sight-at-median-only = Clear at the median k only: { $has } at the low k over { $what } at { $distance } from a, { $asked } asked for.
sight-clear = Clear: { $has } over { $what } at { $distance } from a, { $asked } asked for.
sight-no-point = No point between the ends.
profile-alt = Path profile from { $a } (end a) to { $b } (end b) over { $distance }. { $verdict }
profile-alt-clearance = Clearance at the worst point { $clearance }, asked for { $needed }.
profile-height = m a.s.l.
profile-end = { $end } { $site }, antenna at { $height }
profile-into-line = { $what } at { $distance }: { $by } into the line
profile-worst = worst point: { $what } at { $distance }: { $clearance } ({ $fraction }), { $needed } asked for
profile-line = line of sight
profile-f1 = F1
profile-06f1 = 0.6 F1
profile-building = filled: building
profile-trees = outlined: trees
profile-crane = one arm: crane
profile-power-line = two arms: power line
profile-ground = hatched: ground
profile-facts = Vertical scale { $times } times the horizontal. Ground raised by the bulge of the Earth at k = 4/3. F1 at { $frequency }.

## The acceptance record.

undecided = Nothing is decided yet.
decided = Decision written: { $verdict } by { $name }.
nothing-against-it = Nothing found against it by the rules run.
not-acceptable =
    { $count ->
        [one] 1 error: not to be accepted as it is.
       *[other] { $count } errors: not to be accepted as it is.
    }
not-written = not written
not-agreed = not agreed
deviation-what = What is different
deviation-agreed = Agreed in
photo-file = File
photo-shows = Shows
tolerance = Tolerance
within = Within
within-yes = yes
within-no = NO
within-not-judged = not judged
within-noted = noted
within-missing = missing
same-as-designed = as designed
that-day = { $level } that day
no-reading-there = no reading there
voltage-tolerance = { $drop } less; { $takes }
built-predicted = Level predicted, clear sky
built-level-after = Level after final torque
built-reading-after = Reading after final torque
built-reading-before = Reading before locking
built-moved = Change on locking
built-disagreement = Disagreement with the far end
built-bearing = True bearing, peaked by level
built-tilt = Tilt, peaked by level
visit-record = Record
visit-date = Visit
visit-crew = Crew
visit-weather = Weather
visit-meter = Meter
visit-meter-serial = Its serial number
visit-calibration = Calibration due
visit-state = State set
visit-revision = Revision in hand
visit-mark = Mark in hand
weather-rain = rain { $rate }
weather-fog = water { $water }

## Headings and sentences of the design pack.

owner = Owner
document = Document
revision = Revision
date = Date
drawn-up-by = Drawn up by
approved-by-whom = Approved by
decision = What is asked and what is there
open-findings = Open findings
no-findings = None.
findings-language = The messages of the rules and their remedies are in English, as the program gives them.
remedy = Remedy: { $help }
waivers = Waivers
waivers-still = What is waived is still not met: somebody with authority has accepted it until the day named.
not-assessed-here = Not assessed in this document
scope-no-sight = Line of sight: not assessed in this document.
scope-sight = Line of sight: assessed by the profile named below, and no surer than it; look along the path before anyone climbs.
scope = Structure: not assessed; a competent engineer decides what a pole, wall or mast bears. Licence: judged only by the codes and figures under Licence below; whoever transmits needs the right to. Exposure to radio waves: only at the spots the sites list, see the table below. Local codes and the makers' instructions come before this pack.
notes = Notes of the designer
assumptions = Assumptions
both-directions = Both directions together
geometry = Geometry
path-air-channel = Path, air and channel
line-of-sight = Line of sight
clearance-attached = The clearance at every point of the profile is attached to this PDF as a table.
level-budget = Level budget
licence = Licence
radio-law = Radio law is national and changes: check with the national regulator.
availability-by-capacity = Availability by capacity
heavier-row = The heavier row is the most robust state that reaches the capacity asked for.
mounting = Mounting
grounding = Grounding
alignment-target = Alignment target
wind-and-people = Wind and people
ice-and-fixings = Ice and fixings
lightning-scope = Lightning protection is printed as others stated it. Whether it is needed, what it protects and which distance to keep is for its designer, under local codes; hopwright designs and certifies none.
wind-and-people-scope = Bending of a pole that stands free and is fixed at its foot, without load factors, with ice only where it is stated: an engineer has to confirm it, and what the fixings bear. Exposure is that along the beam, at the greatest power; the person responsible at the site decides.
revisions = Revisions
issued-by = Drawn up by { $creator }, approved by { $approver }.
cable-and-power = Cable and power
methods-and-sources = Methods and sources
what-was-written = What was written, and where
given-by-network = from the defaults of the network
given-by-site = from the defaults of site {$id}
given-by-template = from template {$id}
methods-with-source = Methods that have a source

## Headings and sentences of the acceptance record.

designed-and-built = As designed and as built
checks = Checks
done = done
not-done = NOT DONE
deviations = Deviations
none-written = None written.
what-check-found = What the check found
photos = Photos
none-named = None named.
signatures = Signatures
signing-says = Signing says that the values above are those that were found. Structure, grounding and electrical work are for the people licensed for them to accept; this page does not.
installed = Installed
witnessed = Witnessed
accepted = Accepted

## Head and foot.

draft = DRAFT
issued = ISSUED
foot-revision = Revision { $revision }
foot-mark = Source mark { $mark }
foot-page = Page { $page } of { $pages }
check-revision = Check revision before use

## Headings and sentences of the install pack.

quantity = Quantity
part = Part
hazards = What can hurt you here
hazards-only-those = Only what the owner of the site wrote down. Anything not named here is not assessed.
getting-there = Getting there
no-contacts = Contacts: none given. Ask the owner of the site.
departures = Departures that were accepted
take-along = Take along
before-work = Before work
permits = Signed, agreed or switched off before work starts:
no-permits = Permits: not assessed. Ask the owner of the site what has to be signed, agreed or switched off.
climb = Live on the way up
climb-note = Pass behind them, never in front. Only antennas of this network are known; others may hang there too.
site-live-note = Every antenna here may send. Pass behind them, never in front; only antennas of this network are known.
site-shared = What ends share
site-materials = Materials of all ends
keep-clear-note = At the greatest power that may be set. Flat metal near can quadruple it; limits second-hand. Stay out of the beam.
keep-clear-nowhere = limit kept everywhere
hold-before-work = Do not start until the person in charge of the work has gone through these messages with the crew and signed.
grounding-and-cabling = Grounding and cabling
getting-ready = Getting ready to align
alignment = Alignment

## Hold and witness points, signatures.

stop = STOP
witness = WITNESS
witness-tell = Tell the person named; go on if nobody comes.
witness-bond = Bond, lug and cable at its entry, before they are covered.
witness-reading = The reading with every screw at its final torque.
who-is-told = Who is told
seen-by = Seen by
nobody-came = nobody came
name = Name
signature = Signature
date-and-time = Date and time
date-time-offset = Date, time, UTC offset

## The record page.

record-of-this-end = Record of this end
record-head = Item, key, as designed
not-applicable = n/a
field-date = Date, time, offset from UTC
field-weather = Weather: dry, fog, rain, snow
field-air = Temperature, pressure, humidity
field-meter = Meter, serial number
field-deviations = Deviations from this pack, with who agreed
field-photos = Photos: along the beam, labels, gland, bond, whole mount
field-service = Service test (service): state, rate, losses, time; { $rate }, { $time }
checks-done = Checks done

## The pack of a network.

pack-network = Network pack
title-network = { $network }: network pack
standing-sound = sound
standing-warned = with warnings
standing-failing = with errors
standing-not-judged = not judged
network-hops =
    { $count ->
        [one] 1 hop
       *[other] { $count } hops
    }
hops-lost = Not evaluated at all, and not on the map: { $hops }.
draw-map-alt = Map of { $title }, north up: { $sites } sites and { $hops } hops; { $counts }.
draw-map-failing = With errors: { $hops }.
map-number = On the map
map-key = Sites without room for their name
map-bare =
    { $count ->
        [one] 1 site has room for neither name nor number; it stands among the visits.
       *[other] { $count } sites have room for neither name nor number; they stand among the visits.
    }
hops = Hops
hop = Hop
between = Between
length = Length
closest-to-limit = Closest to its limit
open = Open
tightest = { $what }: { $left } in hand
tight-availability = Availability
closest-note = What has the least in hand as a share of what its limit allows; levels below overload as a share of 20 dB (common practice). Open: findings that count.
services = Services
service = Service
routes = Route | the one that stands in for it
delay = Delay
has-of-wanted = { $has } ({ $wanted })
delay-at-least = at least { $delay }
nothing-asked = nothing asked
services-note = Availability with the outages of all hops added up; of two routes what both share, rain on both at once, and all else as independent. In brackets what is asked for.
frequency-plan = Frequency plan
end = End
plan-half = Half
sends-on = Sends on
hears-on = Hears on
bandwidth = Width
power = Power
plan-polarisation = Pol.
over-noise = I/N
threshold-loss = Lost
interference = Interference
interference-note = The strongest senders of others at each receiver, from 20 dB below its noise on, in clear air with nothing in the way. Lost: what interference takes of the threshold, all of it in the plan, each alone here.
nothing-heard = No receiver hears another sender above 20 dB below its noise.
receiver = Receiver
hears-from = Hears
heard-level = Level
takes-alone = Lost
findings-count =
    { $count ->
        [one] 1 finding
       *[other] { $count } findings
    }
finding = Finding
written-at = Written at
findings-known =
    { $count ->
        [one] 1 finding is known by the baseline.
       *[other] { $count } findings are known by the baseline.
    }
known-by-baseline = Baseline in force: { $file }. { $count }
aside-hops-not-judged =
    { $count ->
        [one] 1 hop was not judged, or not in full.
       *[other] { $count } hops were not judged, or not in full.
    }
bill = Parts of all ends
bill-cable = Cable
bill-detail = Model, size
bill-runs =
    { $count ->
        [one] 1 run
       *[other] { $count } runs
    }
bill-length = { $length }, { $runs }
bill-length-at-least = at least { $length }, { $runs }, { $unknown } of unknown length
bill-note = Cable and conductor with the spare that is taken to each end. A supply that runs name as one unit counts once.
trips = Visits by site
network-computed-by = Computed by { $program } from the files of the network. Every number of a hop, with its method and inputs, is in its design pack.
trip-place = { $id }: { $latitude }, { $longitude }; { $ends }
trip-ends =
    { $count ->
        [one] 1 end
       *[other] { $count } ends
    }
looks-to = Looks to
cabling = Cabling
trip-to = { $site }
trip-mount = { $height } above ground, on { $support }
trip-aim = { $bearing } true, tilt { $tilt }; align to { $level }
trip-runs =
    { $count ->
        [one] 1 run
       *[other] { $count } runs
    }

## The page of an application for a licence.

apply-heading = What an application asks for
apply-end-a = End a
apply-end-b = End b
apply-site = Site
apply-latitude = Latitude, WGS 84
apply-longitude = Longitude, WGS 84
apply-ground = Ground above sea level
apply-height = Antenna above ground
apply-azimuth = Azimuth, true
apply-elevation = Elevation angle
apply-far = Sends to
apply-distance = Distance antenna to antenna
apply-sends = Sends on
apply-receives = Listens on
apply-bandwidth = Bandwidth
apply-emission = Emission, by the Radio Regulations
apply-polarisation = Polarisation
apply-power = Power at the port of the radio
apply-eirp = Radiated power, EIRP
apply-radio = Radio
apply-antenna = Antenna
apply-gain = Gain where it sends
apply-beamwidth = Beamwidth, half power
apply-pattern = Pattern
apply-measured = measured, as attached
apply-reference = reference, ITU-R F.699 and F.1245
apply-diameter = Diameter
apply-number = Licence or registration
apply-says = Numbers are those of the design, in its units. Heights are above mean sea level. The emission is the bandwidth of the channel with the class that the sheet of the radio states, ITU Radio Regulations, Appendix 1. Where the form of the authority asks for more, it comes first.
