/** What the model leaves out, and where published answers are wrong: the facts of that page. */

export interface LeftOut {
  readonly topic: string;
  /** What is missing and what it amounts to. */
  readonly text: string;
  readonly source: string;
  /** Functions concerned. */
  readonly see: readonly string[];
}

export const LEFT_OUT: readonly LeftOut[] = [
  {
    topic: "Bending of the path by the air",
    text: "Look angles are geometric. The air lifts a slot by 0.19 deg at 5 deg of elevation, 0.09 at 10, 0.04 at 20: no matter for aiming above 10 deg.",
    source: "ITU-R P.834",
    see: ["AZIMUTH", "ELEVATION", "REFRACTION"],
  },
  {
    topic: "The satellite's own wandering",
    text: "A slot is taken as a fixed point above the equator. A satellite moves about in its box by some 0.05 to 0.1 deg, and its range by tens of kilometres.",
    source: "from memory",
    see: ["AZIMUTH", "SLANTRANGE"],
  },
  {
    topic: "Hills, houses and trees",
    text: "No map is in it: only the obstacles that you measured count. Leaves at 12 GHz are best taken as a wall, and trees grow.",
    source: "common practice, no source",
    see: ["SETBACK", "RAYHEIGHT", "SUNCHECK"],
  },
  {
    topic: "Iron near the compass",
    text: "The magnetic model knows the Earth's field, not a roof's. Its own error is about √(0.26² + (5417/H)²) deg with H in nT; a steel mast or a gutter can turn the needle by far more. It holds to 2029-11-12.",
    source: "WMM2025; error model from memory",
    see: ["COMPASS", "DECLINATION"],
  },
  {
    topic: "Linear or circular polarisation",
    text: "Vertical and horizontal waves are turned by slightly different angles (up to 0.6 deg apart); the short handbook formula lies between them, within 0.35 deg of either. A feed for circular polarisation needs no turn at all.",
    source: "Roddy, Satellite Communications, 4th ed., ch. 5; own comparison over the checked sites",
    see: ["POLSKEW"],
  },
  {
    topic: "The sun",
    text: "A low-precision sun, good to 0.01 deg, and no clouds. The length of an outage follows from geometry (half the beamwidth and the sun's disc), not from the noise budget.",
    source: "Meeus, Astronomical Algorithms, ch. 25",
    see: ["SUNCHECK", "SUNPOSITION"],
  },
  {
    topic: "Cables above 1000 MHz and below 5 MHz",
    text: "Built-in types follow a table of greatest attenuation from 5 to 1000 MHz; from there to 3000 MHz it is drawn out, to within 5 %. Below 5 MHz the copper skin of a clad centre is too thin for the model.",
    source: "ANSI/SCTE 74 kind of table, from memory; published typical figures at 950 and 2150 MHz",
    see: ["CABLELOSS", "CABLESLOPE"],
  },
  {
    topic: "Connectors, bends, water and age",
    text: "A cable's loss is that of a good cable. Each connector takes some 0.1 to 0.2 dB in the satellite band; a kinked or wet cable takes whatever it likes.",
    source: "common practice, no source",
    see: ["CABLELOSS"],
  },
  {
    topic: "The shield's resistance",
    text: "Loop resistances of the built-in types rest on shields remembered to within 40 %. The maker's figure belongs in the cable table.",
    source: "from memory",
    see: ["LOOPOHMS", "LONGESTRUN"],
  },
  {
    topic: "How a head unit draws its current",
    text: "A load keeps its current or its power here. A real one lies between, and draws more while it starts and while it signals. What a splitter or tap may carry is its maker's to say.",
    source: "Ohm's law for what is computed; the rest from memory",
    see: ["LOADVOLTS", "VOLTDROP"],
  },
  {
    topic: "Two head units on one supply",
    text: "LOADVOLTS knows one load. HEADVOLTS, and with it the multi-room estimate, solves every line as it is wired, with all that feeds it and all that it feeds, while all receivers are off, each is on alone, and all are on. Two receivers on out of many are not looked at.",
    source: "Kirchhoff's laws",
    see: ["LOADVOLTS", "HEADVOLTS", "LONGESTRUN"],
  },
  {
    topic: "Reflections and crosstalk",
    text: "Losses add without ripple. Two reflecting parts one behind the other ripple by 20·log10(1 + |ρ1·ρ2|). Isolation between outlets is told from what the parts state and the losses on the way (HEADVOLTS), without reflections.",
    source: "Transmission-line theory",
    see: ["CASCADELOSS", "TREELOSS"],
  },
  {
    topic: "Amplifiers",
    text: "To TREELOSS a gain is a negative loss. OUTLETNOISE adds an amplifier's noise, and DEVICELEVELS holds its output to its maker's limit, less 7.5·log10(n − 1) dB for n carriers. Distortion itself, and the level control inside a head unit, are not modelled.",
    source: "Scope of this model; the rule for n carriers from memory",
    see: ["TREELOSS", "WINDOW", "OUTLETNOISE", "DEVICELEVELS"],
  },
  {
    topic: "Diodes and contacts of a distribution",
    text: "Diodes have a constant drop. A silicon junction without load drops some 0.3 V, so where 0.7 V is given up to 1.1 V more may stand on a receiver than shown. Contacts have no resistance; with all receivers on nobody's share of the current is shown, because milliohms decide it.",
    source: "Kirchhoff's laws; the junction from memory",
    see: ["OUTLETVOLTS", "HEADVOLTS", "DEVICECHECKS"],
  },
  {
    topic: "Commands of receivers",
    text: "Judged are the volts at the head unit's output at rest and while one commands, and what passes power and commands on the way. The bursts of 22 kHz, their strength, and two receivers that speak at once are not modelled.",
    source: "EN 50494, EN 50607",
    see: ["OUTLETCHECKS"],
  },
  {
    topic: "The sky apart from rain",
    text: "Rain fade is rain alone. Gases take 0.1 to 0.2 dB more at 12 GHz, cloud 0.2 to 0.5 dB for 1 % of the time. Rain rate and rain height of the site are yours to give: the maps are not in it.",
    source: "ITU-R P.676, P.840, P.618",
    see: ["RAINFADE"],
  },
  {
    topic: "A real receiver",
    text: "Needed carrier-to-noise ratios are an ideal decoder's. Add 1 to 3 dB for the receiver and the link.",
    source: "EN 302 307-1 table 13; the allowance is common practice, no source",
    see: ["NEEDEDCN", "CARRIERNOISE"],
  },
  {
    topic: "The factor of the beamwidth",
    text: "70·λ/D stands for factors of 58 to 75, which depend on how the feed lights the rim: 10 % either way.",
    source: "Maral & Bousquet, Satellite Communications Systems (from memory)",
    see: ["BEAMWIDTH", "POINTLOSS"],
  },
  {
    topic: "The lobes of a real dish",
    text: "Equal drops take the main lobe for a parabola. On evenly lit and tapered round apertures that leaves up to 0.14 dB from half a beamwidth off, and almost nothing when repeated. A side lobe is told by its width at steps up to 0.4 beamwidth; blockage, a bent rim or a feed out of place are not modelled.",
    source: "Airy pattern and its tapered kin; Silver (1949) and Balanis, table 12.1, from memory",
    see: ["EQUALDROPS", "PEAKOFFSET"],
  },
  {
    topic: "Faults as they happen",
    text: "The diagnosis knows eight causes, at most two below one head unit, with chances and sizes that are assumptions. Without volts, a leg without power cannot be seen. A meter that is off by one figure everywhere looks like the dish or the head unit.",
    source: "Our assumptions, no source; edit them in the table of causes",
    see: ["DIAGNOSE"],
  },
  {
    topic: "The frequencies of user bands",
    text: "User bands are counted and handed out by number. Their centre frequencies and widths belong to the head unit and are not fixed by the standards: OUTLETPLACES takes them from your band plan; two receivers that speak at once are not simulated.",
    source: "EN 50494, EN 50607",
    see: ["USERBANDS", "ALLOT", "OUTLETPLACES"],
  },
  {
    topic: "Wind, roofs and fixings",
    text: "The wind functions screen a dish and a tube. Gusts, ice, the bracket, the fixings and the roof under them are not covered.",
    source: "Scope of this model",
    see: ["WINDLOAD", "MASTSTRESS"],
  },
  {
    topic: "Bonding and lightning",
    text: "Size and length of a conductor are compared with a clause, no more. An earthed mast is no lightning protection; the local code and licensed practice decide.",
    source: "IEC/EN 60728-11 from works that quote it; NEC articles 800 and 810",
    see: ["BONDCHECK"],
  },
];

export interface WrongAnswer {
  /** Where it is met. */
  readonly where: string;
  readonly printed: string;
  readonly why: string;
  /** Shows our answer beside it. */
  readonly formula?: string;
  /** What the source's own numbers, or a better source, give; the formula is held to it by a test. */
  readonly right?: { readonly value: number; readonly tolerance: number };
}

export const WRONG_ANSWERS: readonly WrongAnswer[] = [
  {
    where: "An online worked example: 20 S, 30 W, slot at 30 E",
    printed: "elevation 18.86",
    why: "An arithmetic slip: azimuth and range on the same page are right, and its own numbers give 19.84.",
    formula: "RIG.ELEVATION(-20,-30,30)",
    right: { value: 19.84, tolerance: 0.04 },
  },
  {
    where: "Published companion code of a textbook's first look-angle example: 35 N, 100 W, slot at 90 W",
    printed: "azimuth 164.55",
    why: "Degrees were fed to a sine that takes radians. The book itself has 162.9.",
    formula: "RIG.AZIMUTH(35,-100,-90)",
    right: { value: 162.9, tolerance: 0.05 },
  },
  {
    where: "A textbook's form of the elevation",
    printed: "never below 0",
    why: "It takes the arc cosine of a positive number, so a slot behind the Earth comes out above the horizon. Beyond a central angle of 81.3 deg there is nothing to receive.",
    formula: "RIG.ELEVATION(0,0,90)",
    // At a quarter turn the slot lies atan(6378.137/42164.17) below the horizontal.
    right: { value: -8.602, tolerance: 0.001 },
  },
  {
    where: "A general geodesy library",
    printed: "latitude 91 taken as 89",
    why: "It wraps what is out of range. Here it is refused, because it is a typing error.",
  },
  {
    where: "A reference library, straight under the slot",
    printed: "azimuth 270",
    why: "There the azimuth has no meaning. Here it is an error with a sentence.",
  },
  {
    where: "Magnetic packages with the model of 2020",
    printed: "declinations up to 0.9 deg off",
    why: "The model of 2020 ended with 2024. This one is WMM2025, and says so past its end.",
    formula: 'RIG.DECLINATION(80,0,"2025-01-01")',
    right: { value: 1.28, tolerance: 0.02 },
  },
  {
    where: "A public drop-cable table, series 6 at 55 MHz",
    printed: "1.18 dB per 100 ft",
    why: "Almost certainly a slip: it is the figure of a series 11 at 83 MHz. Tables of that kind have 1.60 (from memory).",
    formula: 'RIG.CABLELOSS("series 6",100,55,20,"ft")',
    right: { value: 1.6, tolerance: 0.06 },
  },
  {
    where: "Loss coefficients for generic series 6 cable on hobby pages",
    printed: "2 to 3 times too high or too low",
    why: "Copied without their units or their range. Check any set against two printed points before using it, such as 6.4 dB at 950 MHz and 9.7 dB at 2150 MHz for 100 ft.",
    formula: 'RIG.CABLELOSS("series 6",100,2150,20,"ft")',
    right: { value: 9.7, tolerance: 0.15 },
  },
  {
    where: "Two-term fits k1·√f + k2·f of a cable table",
    printed: "a negative k2 for series 59 and series 6",
    why: "A dielectric that gains. The fit needs the constant term; without it the loss reads low at 3 GHz.",
  },
  {
    where: "A web value for 18 AWG copper",
    printed: "6.505 ohm per 1000 ft at 20 °C",
    why: "That is the resistance at 25 °C; at 20 °C it is 6.385.",
    formula: 'RIG.WIREOHMS(18,1000,100,20,"ft")',
    right: { value: 6.385, tolerance: 0.001 },
  },
  {
    where: "Tables that call every 3-way splitter 4.8 dB",
    printed: "4.77 dB on each output",
    why: "Most are a 2-way whose one leg is split again: 3.5, 7 and 7 dB. Give each output its own loss.",
    formula: "RIG.SPLITLOSS(2,0.5)",
    right: { value: 3.5, tolerance: 0.05 },
  },
  {
    where: "Textbooks printed before 2005, rain at 12 GHz",
    printed: "kH 0.0188, αH 1.217",
    why: "ITU-R P.838-3 replaced the constants. With it k at 12 GHz is 0.0239 horizontal and 0.0245 vertical: vertical is now the greater.",
    formula: "RIG.RAINSPECIFIC(12000,1,0,0)",
    right: { value: 0.02386, tolerance: 0.00001 },
  },
  {
    where: "Free-space loss with the constant 32.4",
    printed: "0.05 dB too little",
    why: "The constant is 32.45 in km and MHz; textbooks round it. Over 1000 km at 1000 MHz the loss is 152.45 dB.",
    formula: "RIG.FREESPACELOSS(1000,1000)",
    // 32.45 + 60 + 60.
    right: { value: 152.45, tolerance: 0.005 },
  },
  {
    where: "“A higher mode always needs more”",
    printed: "8PSK 3/5 below QPSK 5/6",
    why: "It is the other way round: 8PSK 3/5 needs 5.50 dB, QPSK 5/6 only 5.18 dB. The table does not rise in the order of its names.",
    formula: 'RIG.NEEDEDCN("DVB-S2","8PSK","3/5")',
    right: { value: 5.5, tolerance: 0.001 },
  },
  {
    where: "Elevation scales of offset dishes",
    printed: "22 to 26 deg apart",
    why: "Some scales show the beam, some the face of the dish. The face of a 22 deg offset dish stands only 18 deg back from the vertical for a beam at 40 deg.",
    formula: "RIG.FACETILT(40,22)",
    right: { value: 18, tolerance: 0.001 },
  },
  {
    where: "“20 ft of bonding conductor, NEC 810”",
    printed: "the wrong article",
    why: "The 20 ft limit stands in the coaxial-cable and communications articles (820, since the 2020 edition 800.100). Article 810 is about antennas.",
  },
  {
    where: "Wind speeds of different editions of a wind code",
    printed: "one speed, used in all of them",
    why: "From ASCE 7-05 to later editions the maps and factors changed together. A speed from one edition has no meaning in another.",
  },
  {
    where: "“30 % markup is a 30 % margin”",
    printed: "a price of 130 on a cost of 100",
    why: "A markup is a share of the cost, a margin one of the price. A margin of 30 % takes a markup of 42.857 %.",
    formula: "RIG.MARKUP(0.3)",
    right: { value: 0.42857, tolerance: 0.00001 },
  },
  {
    where: "Reels as total length over reel length",
    printed: "2 reels for three runs of 60 on reels of 100",
    why: "A run is not spliced, so no two of them come off one reel. The quotient is only the least that is thinkable.",
    formula: "RIG.REELS({60;60;60},100)",
    right: { value: 3, tolerance: 0 },
  },
  {
    where: "Rounding by binary fractions",
    printed: "1.005 to 1.00",
    why: "The computer holds 1.00499999999999989. Money is rounded here by its decimal digits.",
    formula: "RIG.ROUNDMONEY(1.005)",
    right: { value: 1.01, tolerance: 0 },
  },
  {
    where: "Tax as a binary product",
    printed: "585.56 for 10 % of 5855.65",
    why: "The computer makes it 585.5649999999999. Here the share is an argument, and the product exact before it is rounded.",
    formula: 'RIG.ROUNDMONEY(5855.65,2,"half away",0.1)',
    right: { value: 585.57, tolerance: 0 },
  },
];
