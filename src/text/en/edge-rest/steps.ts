const n = (value: number, decimals = 2): string =>
  String(Math.round(value * 10 ** decimals) / 10 ** decimals);
const mm = (value: number, decimals = 2): string => `${n(value, decimals)} mm`;

/** What the sentences of building and setting need to know. */
export interface StepsOf {
  readonly strips: boolean;
  readonly pads: boolean;
  readonly mount: 'screws' | 'bars' | 'from-above';
  readonly mountThread: string;
  readonly mountScrew: number;
  readonly noseScrew: number;
  readonly packerScrew: number;
  readonly bracketScrew: number;
  readonly lugScrew: number;
  readonly lockScrew: number;
  readonly lipScrew: number;
  readonly lipThread: string;
  readonly feed: number;
  readonly noseGap: number;
  readonly drop: number;
  readonly pin: number;
  readonly pinLength: number;
  readonly gauge: number | undefined;
  readonly collar: number;
  readonly guidePlay: number;
  readonly yaw: number;
  readonly perDivision: number;
  readonly perTenth: number;
  readonly padHeight: number;
  readonly lipHeight: number;
  readonly down: boolean;
}

/** How to build the fixture, in order. */
export const assembly = (s: StepsOf): string[] => [
  'Tools: files, square, scriber, centre punch, drills, taps and a 90 degree countersink named in the hole tables, hexagon keys, spanners, feeler gauges, calipers with depth rod, a straight edge; a vice with a square block to fold the lip over; eye protection.',
  'Whoever has the spine rest keeps base, packer, feed and knob: compare the hole tables and drill what is missing. Only wheel nose, lip slide, lip, wear strip, collar and gauge are new.',
  'Cut all plates. Deburr every edge and hole; check against the hole tables. Check that lip slide and wear strip are flat with the straight edge.',
  s.strips
    ? 'Square the two long edges of the lip slide and its front: file until the square shows no light. Clamp packer and base together, rear edges and sides flush, and drill the packer holes through both with the tap drill; open the packer holes to their passage size, tap the base.'
    : `Bolt packer and base together, rear edges and sides flush, with four packer screws M6 x ${n(s.packerScrew)}. Ream the two guide pin holes through both and press the pins in from above until they stand just below the top of the lip slide. Fit the guide slot of the lip slide over the pins: it must slide without binding and rock by no more than ${mm(s.guidePlay)}.`,
  s.mount === 'bars'
    ? `Lay the base on the rest, front edge towards the wheel. Hold the two clamp bars across the underside with the four mounting screws ${s.mountThread} x ${n(s.mountScrew)} from below, finger tight.`
    : s.mount === 'screws'
      ? `Lay the base on the rest, front edge towards the wheel. Put the mounting screws ${s.mountThread} x ${n(s.mountScrew)} with their washers through the rest from below, finger tight.`
      : `Lay base and packer on the rest, front edge towards the wheel. Put the mounting screws ${s.mountThread} x ${n(s.mountScrew)} through the holes of the packer into the threads of the rest, finger tight.`,
  `Put the wheel nose on the base with its two screws M6 x ${n(s.noseScrew)} and large washers, finger tight.`,
  s.pads
    ? `Fold the two lip pads, cut the packing from the same sheet. Lay pads and packing on the front of the lip slide, the wear strip on them, its front face against the upstands; hold all with the countersunk screws ${s.lipThread} x ${n(s.lipScrew)}.`
    : `Fold the lip strip. Lay it on the front of the lip slide, the wear strip on it, its front face against the upstand; hold both with the countersunk screws ${s.lipThread} x ${n(s.lipScrew)}.`,
  `Check with the depth rod that the lip stands ${mm(s.lipHeight)} above the seat at both ends, and that no screw head does. Slide a straight edge along the lip: no light.`,
  s.strips
    ? `Lay the lip slide on packer and nose, a guide strip on either side, one thickness of paper on each strip, then the two keepers; hold them with four guide screws M6 x ${n(s.packerScrew)}. Press the strips lightly against the slide with a feeler of ${mm(s.guidePlay / 2)} on either side, tighten, take the feelers and try the travel. Screw one locking screw M6 x ${n(s.lockScrew)} into each keeper.`
    : `Lay the lip slide over the pins on packer and nose and hold it with two locking screws M6 x ${n(s.lockScrew)} and large washers.`,
  `Screw the lug to the rear of the lip slide with two screws M5 x ${n(s.lugScrew)}, the bracket to the packer with two screws M6 x ${n(s.bracketScrew)}. Saw the feed screw, ${n(s.feed)} mm, fit knob, nuts and thin nuts, and close the nuts on the lug until the screw just turns without play.`,
  'Bolt the stop collar together loosely with its two screws M4, its long ends towards the edge. Slide the pad into the groove of the push block; it must not fall out.',
  'Tighten by feel: M6 firmly with a short key (about 8 N m), M5 about 5 N m, M4 about 2 N m, nothing that holds plastic more than snug.',
];

/** How to find zero and come to a setting, in order. */
export const zeroing = (s: StepsOf): string[] => [
  'Isolate the machine. Mount the belt of this pass, tension it as for work, turn its splice away from the wheel.',
  `Height: the middle of the wheel's axle must be ${mm(Math.abs(s.drop))} ${s.drop < 0 ? 'below' : 'above'} the seat, alike at both its ends (calipers from a straight edge on the seat). Raise or shim the rest until it is.`,
  `Nose: loosen its screws, press its upper front edge against a feeler of ${mm(s.noseGap)}, square to the wheel, at both edges of the belt; tighten. The feeler must drag alike at both; if not, again. Open the lip slide until the same feeler goes in front of it everywhere.`,
  `Parallelism: lay the pin (diameter ${mm(s.pin)}, ${mm(s.pinLength)} long) on the seat behind the lip, along ${s.pads ? 'both pads alike' : 'it'}. Close the lip until the pin, held against it, touches the belt. A thin feeler must go in between pin and belt at both edges of the belt or at neither; if not, turn the fixture on the rest, tighten, begin again at 3.`,
  `Zero: open the lip by half a turn, then close it slowly until the pin, held against it, just touches the belt as for work, pressing the slide to the left: so the play of the guide (${n(s.yaw)} degrees of yaw) lies on one side. This is zero. Turn the knob on its screw to 0 at the index, or add the division there to those in brackets.`,
  `From zero go to the setting by the turns and divisions under Dial; clockwise closes, one division is ${mm(s.perDivision)}. To open, go half a turn too far and come back closing.`,
  ...(s.gauge === undefined
    ? []
    : [
        `Check the last setting with the printed lip gauge (${mm(s.gauge)} high, measured): stood on the seat against the lip its upper front edge must just touch the belt; if not, take the zero again.`,
      ]),
  'Lock both locking screws a little at a time, in turn. If the division in brackets is no longer at the index, loosen and set again.',
  `Stop collar: clamp it on the tang, ${mm(s.collar, 1)} from the plunge to its inner face, square to the edge, its long ends reaching below the edge. It must meet the end of the wear strip when the plunge stands outside the edge of the belt, on both sides alike.`,
  `Push block: stand it on the lip slide, pad against the blade opposite the belt. The pad touches ${mm(s.padHeight, 1)} above the seat, below the wheel's contact: there it holds the edge against the lip. Where the tip is too narrow use the push stick, hand behind its stop.`,
  'Try the whole stroke, motor off, both sides, tip to plunge: the edge must lie on seat and lip all along, nothing else may touch.',
  `Grind a test bar to half the depth, measure it and look it up in the progress table of the annex. For every ${mm(s.perTenth)} that the upper limit is higher than there, close the lip by ${n(0.1 / s.perDivision, 0)} divisions; if lower, open it: so the zero is mended.`,
  `Take the zero again after every change of belt, and as the belt wears: 0.1 mm of lip moves the hollow by ${mm(s.perTenth)}.`,
];

/** Cautions that this fixture adds to the usual ones. */
export const cautions = (s: StepsOf): string[] => [
  'The edge stands on the seat and points into the gap under the wheel: never a sharpened edge.',
  s.down
    ? 'The belt runs down into the gap between wheel and lip and draws in what is loose: keep the gap small, fingers behind the push block and never under the wheel.'
    : 'The belt runs up and lifts the blade: this fixture is for a belt that runs down.',
  'Nothing stops the cut but you: measure the depth often, the last tenth after every stroke.',
  'Push only with the push block, below the contact of the wheel. Pushed higher, the edge leaves the lip and is drawn under the wheel.',
  ...(s.pads
    ? [
        'Where a pad has no edge on it, near plunge and tip, the other alone keeps the blade in line: guide it by hand there, and stop when it turns.',
      ]
    : []),
  'Both locking screws tight before the motor runs: a lip that moves lets the edge into the wheel.',
  'Brush seat and lip: grit under the edge moves the hollow by several times its size.',
  'Thin steel heats in a moment: cool often, and stop when it colours.',
];
