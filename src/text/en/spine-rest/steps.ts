const n = (value: number, decimals = 2): string =>
  String(Math.round(value * 10 ** decimals) / 10 ** decimals);
const mm = (value: number, decimals = 2): string => `${n(value, decimals)} mm`;

/** What the sentences of building and setting need to know. */
export interface StepsOf {
  readonly strips: boolean;
  readonly mount: 'screws' | 'bars' | 'from-above';
  readonly mountThread: string;
  readonly mountScrew: number;
  readonly noseScrew: number;
  readonly packerScrew: number;
  readonly bracketScrew: number;
  readonly lugScrew: number;
  readonly lockScrew: number;
  readonly feed: number;
  readonly noseGap: number;
  readonly noseGapMost: number;
  readonly pin: number;
  readonly pinLength: number;
  readonly pinZero: number;
  readonly collar: number;
  readonly guidePlay: number;
  readonly yaw: number;
  readonly lean: number;
  readonly perDivision: number;
  /** Bevel height for a tenth of a millimetre of the step. */
  readonly heightPerTenth: number;
  /** Width of the setting gauge: the last setting. */
  readonly gauge: number;
  readonly padHeight: number;
  /** Where the line strip sits and ends, mm from the plunge and from the spine line; its tape. */
  readonly lineStrip?: {
    readonly from: number;
    readonly to: number;
    readonly below: number;
    readonly tape: number;
  };
  /** Up to which place of each blade which pad has blade behind it. */
  readonly pads: readonly {
    readonly blade: string;
    readonly reaches: readonly {
      readonly pad: number;
      readonly height: number;
      readonly to: number;
    }[];
  }[];
}

/** How to build the fixture, in order. */
export const assembly = (s: StepsOf): string[] => [
  `Tools: files, scribing block or square, centre punch, drills and taps named in the hole tables${s.strips ? '' : ', a reamer 6 H7'}, hexagon keys, spanners, feeler gauges, calipers, a straight edge, a square, a vice, eye protection.`,
  `Cut all plates. Deburr every edge and hole; check against the hole tables. Check that the nose is flat with the straight edge on its top, and that ${s.lineStrip ? 'the rounded front of the step plate stands square to its top.' : 'the front face of the step plate is straight: no light under a straight edge.'}`,
  ...(s.strips
    ? [
        'Square the two long edges of the step plate and its front face: file until the square shows no light, then measure its width at both ends. It is what the strips guide.',
        'Clamp packer and base together, rear edges and sides flush, and drill the packer holes through both with the tap drill; open the packer holes to their passage size, tap the base.',
      ]
    : [
        `Bolt packer and base together, rear edges and sides flush, with four packer screws M6 x ${n(s.packerScrew)}. Ream the two guide pin holes through both and press the pins in from above until they stand just below the top of the step plate.`,
        `Fit the guide slot of the step plate over the pins: it must slide along its whole travel without binding and rock by no more than ${mm(s.guidePlay)}. File the slot, not the pins.`,
      ]),
  'Tap the base from above, square to its face, except the mounting threads: tap these from below. Blow out every thread and put a drop of oil into it.',
  s.mount === 'bars'
    ? `Lay the base on the rest, front edge towards the belt. Hold the two clamp bars across the underside with the four mounting screws ${s.mountThread} x ${n(s.mountScrew)} from below, finger tight.`
    : s.mount === 'screws'
      ? `Lay the base on the rest, front edge towards the belt. Put the mounting screws ${s.mountThread} x ${n(s.mountScrew)} with their washers through the rest from below, finger tight.`
      : `Lay base and packer on the rest, front edge towards the belt. Put the mounting screws ${s.mountThread} x ${n(s.mountScrew)} through the holes of the packer into the threads of the rest, finger tight.`,
  `Put the nose on the base with its two screws M6 x ${n(s.noseScrew)} and large washers, finger tight.`,
  ...(s.strips
    ? [
        `Lay the step plate on packer and nose, a guide strip on either side, one thickness of paper on each strip, then the two keepers; hold them with four guide screws M6 x ${n(s.packerScrew)}. Press the strips lightly against the step plate with a feeler of ${mm(s.guidePlay / 2)} on either side, tighten the screws firmly, take the feelers and try the travel. Remove the paper only if the step is loose up and down.`,
        `Screw one locking screw M6 x ${n(s.lockScrew)} into each keeper.`,
      ]
    : [
        `Lay the step plate over the pins on packer and nose and hold it with two locking screws M6 x ${n(s.lockScrew)} and large washers.`,
      ]),
  `Screw the lug to the rear of the step plate with two screws M5 x ${n(s.lugScrew)}, its leg at the rear edge; their ends must not stand out below. Screw the bracket to the packer with two screws M6 x ${n(s.bracketScrew)}, its leg at the rear edge of the base.`,
  `Saw the feed screw, ${n(s.feed)} mm, from threaded rod M6 and dress its ends. Turn a nut onto one end until it is flush, sink it into the hexagon of the knob and lock it with a thin nut on the front of the knob. Grease the thread, screw the rod through the bracket; put a thin nut and a nut on it, pass the lug, put a nut and a thin nut in front of it.`,
  'Close the nuts on both sides of the lug until the screw just turns without play, and lock each nut with its thin nut. Turn the knob through the whole travel: it must run evenly.',
  'Bolt the stop collar together loosely with its two screws M4, one above and one below the tang. Slide the pad into the groove of the push block; it must not fall out.',
  'Tighten by feel: M6 firmly with a short key (about 8 N m), M5 about 5 N m, M4 about 2 N m, nothing that holds plastic more than snug.',
];

/** How to find zero and come to a setting, in order. */
export const zeroing = (s: StepsOf): string[] => [
  'Isolate the machine. Mount the belt of this pass on its backing, tension it as for work, turn its splice away from the platen.',
  `Square: stand a ${s.lean === 0 ? 'square' : `bevel gauge set to ${n(90 + s.lean)} degrees`} on the nose against the belt: no light may show. Turn or shim the rest until it agrees: an error here is the same in the bevel.`,
  `Nose: loosen its screws, press it against a feeler of ${mm(s.noseGap)} at both edges of the belt, tighten. The feeler must drag alike at both; if not, again.`,
  s.lineStrip
    ? `Pin: lay it (diameter ${mm(s.pin)}, ${mm(s.pinLength)} long) on the nose along the belt. Close the step until its rounded front touches the middle of the pin and presses it flat on the belt: nothing has to be parallel.`
    : `Parallelism: lay the pin (diameter ${mm(s.pin)}, ${mm(s.pinLength)} long) on the nose along the belt. Close the step until it touches the pin, pressed against the belt as for work. A thin feeler must go in at both ends of the pin or at neither; if not, turn the fixture on the rest, tighten, begin again at 3.`,
  `Zero: open the step by half a turn, then close it slowly until the pin is just held, pressing the step to the left: so the play of the guide (${n(s.yaw)} degrees of yaw) lies on one side. It now stands ${mm(s.pinZero)} from the belt: this is zero. Turn the knob on its screw to 0 at the index, or add the division there to those in brackets.`,
  `From zero go to the setting by the turns and divisions under Dial; clockwise closes, one division is ${mm(s.perDivision)}. To open, go half a turn too far and come back closing.`,
  `Lock both locking screws a little at a time, in turn. If the division in brackets is no longer at the index, loosen and set again. At the last setting the printed gauge (${mm(s.gauge)}, measured) just goes between belt and step; if not, take the zero again.`,
  `Stop collar: clamp it on the tang, ${mm(s.collar, 1)} from the plunge to its inner face, square to the spine. It must meet the side of the nose when the plunge stands outside the belt's edge, both sides alike.`,
  `Push block: slide in the pad for this place (see the cautions), stand the block on the step, pad against the blade opposite the belt. Pad 1 touches ${mm(s.padHeight, 1)} above the seat; it must lie below the edge wherever you push.`,
  ...(s.lineStrip
    ? [
        `Line strip: stick it on the face away from the belt with tape ${mm(s.lineStrip.tape)} thick, its end ${mm(s.lineStrip.from, 1)} from the plunge towards the tip and its lower edge ${mm(s.lineStrip.below, 1)} from the spine line; press it on all along. For the other side turn it over, or take the one for that side.`,
        `Stroke: from the stop collar until the strip ends at the step, ${mm(s.lineStrip.to, 1)} from the plunge. What is left of the tip is blended by hand.`,
      ]
    : []),
  'Try the whole stroke, motor off, both sides, tip to plunge: nothing may touch belt, platen or rest but what is meant to.',
  `Grind a test bar at the last setting, measure its edge and look it up in the progress table of the annex. For every ${mm(s.heightPerTenth)} that the bevel is higher than there, open the step by ${n(0.1 / s.perDivision, 0)} divisions; if lower, close it: so the zero is mended.`,
  'Take the zero again after every change of belt or backing and as the belt wears: 0.1 mm is about 0.1 degrees.',
];

/** Cautions that this fixture adds to the usual ones. */
export const cautions = (s: StepsOf, edgeLeast: number, down: boolean): string[] => [
  `The edge points up${down ? ', against the belt' : ''}: never grind it below ${mm(edgeLeast)}.`,
  'Lock both screws before the motor runs: a step that moves turns the blade into the gap.',
  `Gap between nose and belt: below the thinnest spine that crosses it, never above ${mm(s.noseGapMost)} (the published limit for work rests at wheels, the nearest written rule), and facing the platen.`,
  'Push only with the push block, from behind, at the height of its pad: pushed lower, the blade leaves the step; pulled, the nose.',
  ...s.pads.map(
    ({ blade, reaches }) =>
      `Pads for ${blade}: ${reaches.map(({ pad, height, to }, i) => `pad ${String(pad)} (${n(height, 1)}${i === 0 ? ' high' : ''}) up to ${n(to, 0)}${i === 0 ? ' mm from the plunge' : ''}`).join(', ')}.`,
  ),
  'A pad above the edge meets the belt: change it in time. Farther out press lightly with the push stick, stood on the step, nose below the edge, hand behind its stop; never a finger.',
  'The lower pads press below the best height and the line may creep: leave the tip to the last strokes of each belt.',
  'Grit or a burr under the spine is an error of angle and a scratch.',
];
