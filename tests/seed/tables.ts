// The four position tables and the step table as the sheet prints them, kept apart from the data they check.
// Columns: id | host | what | fixings | connections | blocked by | minutes out/in | note (machine 12: as found | after).

export const meteorMinnowTable = `
a01|-|base skirt, left|6 x 10-32 UNF x 3/4 pan, slotted|-|-|6/8|sharp edge; handed: one slotted hole at the front
a02|-|base skirt, right|6 x 10-32 UNF x 3/4 pan, slotted|-|-|6/8|as a01, mirror image
a03|-|rear access door|cam lock, 2 hinge pins|-|-|4/5|key lost as often as not
a04|-|coin column|4 x 5/16-18 UNC x 1-1/4 hex|J1, 6 pins|a03|15/20|14 kg, top heavy
a05|a04|coin mechanism|2 x 8-32 UNC x 3/8 shoulder|-|-|5/8|two springs, handed
a06|a04|coin switch|2 x 6-32 UNC x 1|BN, BK to a07 terminals 1, 2|a05|6/9|leaf gap, photograph it
a07|a04|ride timer: motor, cam, 2 switch stacks|3 x 8-32 x 1/2|5 on screw terminals|a05|12/18|mains inside; cam has a rest mark
a08|-|ride body, rocket shell|4 x 3/8-16 UNC x 2 carriage, 4 fender washers, 4 nuts|J2, 8 pins|a09|35/45|46 kg: two persons; bolt heads lie under the seat
a09|a08|seat cushion|4 x No.10 x 1 wood screws, cup washers|-|-|8/10|mould; old stuffing
a10|a08|nose lamp and lens|3 x 6-32 x 1/2|RD, BK|-|6/8|brittle lens; child can touch: extra-low voltage only
a11|a08|windscreen|6 x 8-32 x 1/2, cup washers|-|-|10/15|if celluloid: no heat, no bag with metal; cracks start at holes
a12|a08|steering yoke|1 x 1/4-20 x 1-1/2 clevis bolt, split pin|-|-|10/12|
a13|a08|yoke push button|1 nut 5/8|YE, BK|a12|6/8|extra-low voltage only
a14|a08|fin, left|4 x 10-32 x 5/8|-|-|5/7|handed
a15|a08|fin, right|4 x 10-32 x 5/8|-|-|5/7|handed
a16|a08|tail lamps|2 x 6-32 x 1/2|OG, OG, BK|-|5/7|
a17|a08|buzzer|2 x 6-32 x 3/8|YE, BK|a09|5/6|
a18|-|saddle bracket|4 x 3/8-16 x 1-1/4 hex|-|a08|20/25|look for cracked welds
a19|-|rocker arm|2 pivot pins 5/8 in, 4 circlips, shims 2 left 3 right|-|a18, a20|30/40|18 kg; pinch; shims are not alike
a20|-|connecting link|2 x 1/2-13 UNC shoulder, castle nuts, split pins|-|a01|15/18|pinch; block the arm first
a21|-|crank wheel|1 x 3/8-16 grub, Woodruff key|-|a20|25/30|puller, never a hammer
a22|-|worm gearbox 40:1|4 x 3/8-16 x 1-1/2|-|a21, a23|25/35|14 kg; oil
a23|-|motor 1/4 hp, capacitor start|4 x 5/16-18 x 1, in slots|BK, WH, GN|a24|20/30|slots set the belt: scribe a tape, not the base
a24|-|V-belt|none|-|a25|5/8|
a25|-|belt guard|3 x 1/4-20 x 1/2|-|a02|4/6|guard must go back
a26|a23|motor pulley|1 x 1/4-20 grub, key 3/16|-|a24|8/10|note how far on the shaft
a27|a23|start capacitor|clamp 1 x 8-32|2 push-on|a02|6/8|discharge
a28|-|junction box with fuse holder|2 x 10-24 x 1/2|9 on terminals|a01|15/25|mains
a29|-|mains cord and bushing|1 bushing|BK, WH (no earth)|a01|8/12|
a30|-|main harness|7 clips, No.6 x 1/2 wood screws|J1, J2, J3; 22 wires|a01, a02, a03|60/90|brittle: move only warm
a31|-|leg levellers, lot of 4|3/8-16 x 2|-|-|8/8|machine tipped: two persons
`;

export const docksideMagpieTable = `
b01|-|topper casting|4 x No.8 x 1-1/4 wood, round slotted|-|-|8/10|pot metal: cracks
b02|-|lamp tray, 2 porcelain sockets|2 x 8-32 x 1/2|2, cloth, mains|b01|8/12|bare mains at the sockets
b03|-|front glass|slides up in channel|-|b01|3/4|plain glass, not toughened
b04|-|left glass|slides up|-|b01|3/4|left and right differ by 2 mm
b05|-|right glass|slides up|-|b01|3/4|
b06|-|upper rear door|2 hinges, lock|-|-|2/3|
b07|b06|mirror|6 turn clips|-|-|6/10|silver flakes: do not wipe the back
b08|-|prize deck rim|8 x No.6 x 3/4 brass, oval head|-|b03|10/14|
b09|-|hub finial|1/2-20 left hand|-|front: b03; rear: b06|1/1|undo clockwise
b10|-|carousel disc|1 nut 1/2-20 left hand|-|b09|6/8|undo clockwise
b11|-|thrust race, 24 loose balls 1/4 in|none|-|b10|8/15|count them: 24
b12|-|ring gear|6 x 10-32 x 1/2|-|b11|10/14|mark mesh with pinion
b13|-|carousel pinion and shaft|taper pin No.1|-|b27|15/20|drive the pin from its small end: note which side
b14|-|crane tower|3 x 5/16-18 x 1-1/4|-|front: b03; rear: b06|20/30|7 kg
b15|b14|boom, lattice|2 taper pins No.0|-|b17|12/18|brittle casting
b16|b14|bucket|2 links, 2 split pins 1/16|-|-|5/8|jaw spring
b17|b14|hoist cord|2 knots|-|-|10/20|1,140 mm; 6 turns, wound from the right
b18|b14|winding drum|taper pin No.2|-|b17|12/16|
b19|b14|bucket trip cam|2 x 8-32 grub|-|-|6/15|timing mark to tower mark
b20|-|swing cam, follower, spring|2 x 10-32 grub|-|b27|10/20|timing mark; spring jumps
b21|-|gear train plate|4 x 1/4-20 x 3/4, shims 0.1-0.4 mm|-|b22, b24|30/45|one shim pack each corner
b22|-|clutch spring and collar|1 circlip, 1 x 1/4-20 grub|-|b27|10/15|spring held at about 60 N
b23|-|motor, universal, 1/20 hp|3 x 10-32 x 3/4, rubber|BK, BK, cloth|b27|12/18|brush left stays left; suppressor capacitor
b24|-|governor and brake|2 x 8-32 x 5/8|-|b27|8/12|pad leather or asbestos: treat as asbestos
b25|-|coin slide and chute|4 x 8-32 x 1/2 oval|-|b27|10/15|
b26|-|start lever, 2 return springs|1 x 10-32 shoulder|-|b25|8/14|springs handed
b27|-|lower rear door|2 hinges, lock|-|-|2/3|
b28|-|cash drawer|none|-|-|1/1|often missing
b29|-|control wheel and shaft|taper pin No.1|-|b27|10/14|
b30|-|terminal strip, 6 way|2 x 6-32 x 3/4|12 ends|b27|15/25|backing sheet may be asbestos
b31|-|mains cord and switch|staple, knot|2 wires, cloth|b27|6/10|no earth, no strain relief
b32|-|feet castings, lot of 4|2 x No.12 x 1 each|-|-|12/12|front pair and rear pair differ
b33|-|instruction card in frame|4 escutcheon pins|-|-|6/8|paper: flat, dark, dry
`;

export const hairpinRidgeTable = `
c01|-|rear door|2 hinges, lock|-|-|2/3|
c02|-|topper glass, painted on the back|2 rails, 6 x 8-32 x 1/2|-|-|8/10|paint lifts: no cleaner
c03|-|topper lamps: 2 x 15 W fluorescent, ballast, 2 starters|4 x 8-32 x 3/8|J9, 4 pins|front: c02; rear: c01|8/10|mercury; ballast before 1979: PCB
c04|-|viewing glass|2 rails, 4 x 1/4-20 x 3/4|-|-|6/8|
c05|-|front-silvered mirror|4 clips 8-32, felt|-|c04|10/15|never wipe
c06|-|road unit|4 x 1/4-20 x 1 hex|J4, 12 pins|c01|15/20|9 kg
c07|c06|road disc, painted, 24 in|3 x 8-32 x 5/8|-|c09|8/12|hub mark; hang it, never lay it
c08|c06|disc motor 5 rpm|3 x 6-32 x 1/2|OG, OG|-|8/10|
c09|c06|projection lamp 12 V 50 W and shroud|2 x 6-32 x 3/8|2 on ceramic|-|4/5|hot: 30 min to cool
c10|-|car carriage|4 x 10-32 grub on 2 rods|J5, 3 pins|c04|12/18|
c11|c10|car|1 x 4-40 x 3/8|-|-|2/3|
c12|-|steering link|2 clevis pins, 2 split pins|-|c01|6/8|count the threads showing
c13|-|steering wheel|1 nut 1/2-20, key|-|-|6/8|
c14|-|steering column, 2 centring springs|4 x 5/16-18 x 2|-|c12, c13|20/30|springs handed, loaded
c15|-|pedal|4 x 1/4-20 x 1-1/4|J6, 3 pins|-|8/10|
c16|c15|pedal resistor|2 x 8-32 x 1-1/2|3|-|10/12|washers may be asbestos
c17|-|relay board, hinged|2 hinge pins, 1 catch|J1 24, J2 15, J3 12 pins|c01|15/20|three plugs alike in size: tag them
c18|c17|relay bank, 14 relays on one rail|6 x 8-32 x 1/2|96 soldered|-|90/150|take out whole; do not unsolder singly
c19|c17|hold relay|2 x 6-32 x 3/8|8 soldered|-|15/25|may carry mains
c20|c17|score motor: 5 cams, 17 switches|4 x 8-32 x 5/8|34 soldered|-|40/70|index notch at rest; cam order 1 to 5
c21|c17|distance stepper|3 x 8-32 x 3/4|J7, 26 pins|-|10/15|clock spring 3 turns
c22|c17|time stepper|3 x 8-32 x 3/4|J8, 14 pins|-|10/15|clock spring 2-1/2 turns
c23|-|score reels, 3 on a panel|4 x 6-32 x 1/2|J10, 24 pins|c02|12/15|units, tens, hundreds differ
c24|-|transformer 50/24/12/6.3 V|4 x 10-32 x 1/2|11 on lugs|c01|20/30|5 kg; tears loose in transport
c25|-|fuse block, 5 way|2 x 6-32 x 3/4|10|c01|12/20|as found ratings one by one
c26|-|selenium rectifier|1 x 8-32 x 2|4|c25|8/12|toxic fume if it burns
c27|-|crash coil and sounding sheet|4 x 8-32 x 1/2|2|c01|10/14|
c28|-|coin door|4 x 1/4-20 x 1 carriage, nuts inside|J11, 6 pins|c31|12/15|two of the nuts also hold the cash box rail
c29|c28|coin mechanism, left|2 pins|-|-|2/3|not the same coin as c30
c30|c28|coin mechanism, right|2 pins|-|-|2/3|
c31|-|cash box|none|-|-|1/1|key
c32|-|main harness|31 clips|J1-J11; 188 wires|c01, c17|240/360|lacing, not ties
c33|-|leg levellers, lot of 4|3/8-16 x 2-1/2|-|-|8/8|
c34|-|floor board, particle board|10 x No.8 x 1-1/2 wood|-|c15, c24, c27|60/90|screw once, by hand, 1 N m at most
c35|-|schematic and score card in envelope|2 staples|-|c01|2/2|paper: scan first
`;

export const skerryLightTable = `
k01|-|lower rear panel|6 x No.8 x 1 wood, round slotted|-|-|4/6|original, seen|original
k02|-|upper rear panel|4 x 4BA x 1/2 cheese|-|-|3/4|original, seen|original
k03|-|sign box|4 x 2BA x 1 hex, washers|X1, 4 pins|-|8/10|original, seen|original
k04|k03|reflector tray|4 x 4BA x 3/8|X1, 4 pins|-|4/6|original, seen|original
k05|k04|fluorescent tube 15 W|2 holders|2 + 2 pins|k03|1/1|modern, documented (date code)|empty
k06|k04|starter|bayonet|2|k03|1/1|modern, seen|empty
k07|k04|ballast|2 x 4BA x 1/2|2 (BN, BU cloth)|k03, k05|6/8|original, documented (date code 1958)|empty
k08|k04|lamp holders, pair L/R|4 x 6BA x 3/8|4|k03, k05|8/12|original, seen|empty
k09|k03|sign glass, painted|4 spring clips, 2 felts|-|k04|5/8|original, seen|original
k10|-|front glass|slides up|-|k03|4/5|original, seen|original
k11|-|left glass|channel|-|k03, k13|3/4|original, seen|original
k12|-|right glass|channel|-|k03, k14|3/4|modern, told by seller|modern
k13|-|corner trim, left|5 x 4BA x 1/2 oval|-|-|5/6|original, seen|original
k14|-|corner trim, right|5 x 4BA x 1/2 oval|-|-|5/6|original, seen|original
k15|-|rock scene, plaster|3 x 1/4 BSW x 2, fender washers|-|k01, k10, k20, k21|20/25|original, seen|original
k16|k15|tower|3 x No.6 x 3/4 wood|-|k17|8/10|original, seen|original
k17|-|lantern optic, 3 panels|1 x 4BA x 3/16 grub|-|front: k10; rear: k02|4/5|original, seen|original
k18|-|lantern lamp|bayonet|6.3 V|k17|1/1|unknown|modern
k19|-|tin ship|1 split pin 1/16 x 1/2|-|k10|3/5|original, seen|original
k20|-|rocker rod and crank|1 x 2BA shoulder|-|k01|5/7|original, seen|original
k21|-|lantern shaft 1/4 x 320 mm|2 bushes|-|k17, k18, k22|6/9|original, seen|reproduction
k22|-|shaft coupling|2 x 4BA x 3/16 grub|-|k01|4/6|original, seen|modern
k23|-|drive plate|4 x No.12 x 1-1/4 wood|-|k01, k20, k22|12/16|original, seen|original
k24|-|rubber bushes, lot of 4|none|-|k23|2/3|original, seen (perished)|reproduction
k25|k23|motor|3 x 2BA x 5/8, 3 shakeproof washers|BK, BK to block 7, 8|k38|8/12|original, documented (plate)|modern
k26|k23|timer unit: cam, 2 switch stacks|2 x 4BA x 1/2|5|k25|10/15|original, seen|original, not connected
k27|-|transformer 230/6.3 V|2 x 2BA x 3/4|4|k01|10/14|original, seen|original
k28|-|fuse holder|1 nut 1/2|2|k01|6/8|original, seen|original
k29|k28|fuse link|cap|-|k01|1/1|unknown: foil|modern
k30|-|mains flex|clamp, 2 x No.6 x 3/4 wood|2 (BK, BK; no earth)|k01|5/10|unknown|modern
k31|-|terminal block, 12 way|2 x 6BA x 1|24 ends|k01|25/40|original, seen|original
k32|-|harness, cloth|9 clips, No.4 x 1/2|38 device ends|k01, k31|45/70|original, seen|original
k33|-|coin door|4 x 4BA x 3/8|-|-|6/8|original, seen|original
k34|k33|coin mechanism|2 x 4BA x 1/4 shoulder|-|-|3/5|original, documented (casting No.)|original
k35|k33|coin switch|2 x 6BA x 3/4|2|k34|6/10|modern, documented (date code 1985)|period
k36|-|cash box|none|-|-|1/1|original, seen|original
k37|-|fog buzzer|2 x 4BA x 1/2|2|k01|6/8|original, seen|original
k38|-|floor panel, particle board 19 mm|8 x No.8 x 1-1/2 wood|-|k15, k23, k27, k36|40/60|original, seen|original, altered
k39|-|leg levellers, lot of 4|3/8 BSW x 2|-|-|8/8|period, assumed|period
k40|-|maker's plate|2 escutcheon pins|-|-|-|original, seen|original
n1|-|control board, loose|2 x M4 knurled|X1-X4|k01|5/6|no such place|modern
n2|n1|supply 24 V 60 W|2 x M3 x 8|5|-|4/5|no such place|modern
n3|n1|controller|4 x M3 x 8, standoffs|9|-|4/5|no such place|modern
n4|k04|light bars, pair|4 removable pads|2 + 2|k03|3/6|no such place|modern
n5|k25|motor 24 V on adapter plate|4 x M5 x 12|RD, BK|-|5/7|no such place|modern
`;

/** id | who | low/likely/high | actual | wait after | after | what */
export const skerrySteps = `
S01|C|30/45/75|50|-|-|receive, weigh, photograph six sides, open, and every label; scale and colour card in the first frame
S02|A|40/60/100|75|-|S01|as found record: positions, what is missing, what is wrong, seller's story (told)
S03|B|10/15/25|15|-|S02|make safe: unplug, tag the plug, prove dead, discharge the lamp capacitor
S04|B|20/30/50|35|-|S03|unpowered triage: continuity, insulation 0.4 MΩ at the old flex (fail), fuse found bridged with foil
S05|A|20/35/70|40|-|S04|diagnose drive: main winding open, gears turn by hand
S06|B|15/25/40|25|-|S04|diagnose lamp: ballast open, date code 1958, no "No PCBs" mark: treat as containing PCB
S07|A|30/45/80|60|4320|S05, S06|options, quote, owner's yes (wait: 3 days)
S08|A|25/40/70|45|10080|S07|order parts (wait: 7 days in the post)
S09|C|10/15/25|15|-|S07|take out k01, k02; bags 0201, 0202
S10|B|40/60/110|85|-|S09|tag all 24 block ends and 38 device ends, draw the wiring
S11|A+C|15/20/35|25|-|S10|take out k03 (two persons); bag 0204
S12|B|25/35/60|55|-|S11|strip k03: k04, k09, k05-k08; one ballast screw shears (alteration a7); bags 0214, 0215, 0216
S13|B|10/15/25|15|-|S12|seal the ballast in tub 0218 with absorbent; gloves
S14|A+C|20/30/50|35|-|S11|take out k13, k14, k10-k12 (two persons); bags 0205, 0206
S15|A|15/25/45|20|-|S14|take out k19, k20, k17, k18; bags 0207, 0222
S16|A|20/30/55|45|-|S15|take out k22, k21, k23, k24; the 4 wood screws of k23 spin free; bags 0212, 0213, 0224
S17|A|15/25/45|35|-|S16|bench: motor off the plate; leads cut at blocks 7 and 8 (alteration a2); bags 0208, 0210
S18|C|25/40/65|40|-|S09|take out k34, k35, clean; bag 0221
S19|B|10/15/25|15|-|S10|take out k30 and the foil of k29; bags 0219, 0220
S20|C|20/30/50|30|-|S13, S17, S18, S19|recount every bag against the record, shelve
S21|C|25/40/70|50|1440|S16|floor panel: open 4 stripped holes to 10 mm, fill; rebuild the swollen corner (a1, a6; wait: 24 h)
S22|A|30/45/80|45|-|S21|sand, drill, set 4 M6 threaded inserts
S23|A|60/90/160|120|-|S17, S08|make adapter plate: old 3-hole triangle to new 4-hole square
S24|C|15/20/35|20|1440|S23|paint adapter plate (wait: 24 h)
S25|C|30/45/75|45|-|S17|clean and oil bushes, lantern shaft, crank
S26|C|60/90/150|100|1440|S20|clean cabinet; isolate and touch up 3 chips (a5; wait: 24 h)
S27|A|20/30/55|25|-|S12|sign glass: dust only, paint is lifting, photograph; no wet cleaning
S28|A|30/45/80|50|-|S24, S25, S08|bench: new bushes, adapter plate, motor, clamp coupling
S29|B|20/30/45|30|-|S28|bench run 30 min with ammeter, before anything goes back
S30|B|20/30/60|40|-|S08|load controller program, check its digest, note the pins
S31|B|30/45/75|45|-|S30|supply and controller on a loose board (n1-n3)
S32|B|25/35/60|35|-|S12, S08|light bars on reflector tray (n4; a4)
S33|B|25/40/70|45|-|S19, S08|cable hole 12 to 16 mm (a3), cord grip, three-core flex, 1 A fuse
S34|B|30/45/80|50|-|S33|earth bonds: coin door, drive plate, sign box, transformer
S35|A|25/40/70|40|-|S22, S29|put in k24, k23; align by hand
S36|B|60/90/160|130|-|S31, S34, S35|wire up from the drawing; timer leads parked and tagged
S37|A+C|40/60/100|70|-|S26, S27, S32, S36|put in k21, k20, k18, k17, k19, glass, trims, k09, k04, k03 (two persons)
S38|C|20/35/60|45|-|S18, S36|put in k34 and the unused period switch (k35); adjust
S39|B|30/45/75|50|-|S37, S38|electrical tests t02-t08, t13, t14; panels k01, k02 back in
S40|C|40/60/100|55|260|S39|soak: 200 plays; fails at play 131, coupling slips (machine time: 260 min planned)
S41|A|50/80/130|95|-|S40|added: new lantern shaft made and fitted; original into tube 0223
S42|C|30/40/60|35|260|S41|added: soak again, 200 of 200 (machine time: 260 min)
S43|A|60/90/150|100|-|S42|final photographs, bag count, dossier, hand-over sheet
`;
