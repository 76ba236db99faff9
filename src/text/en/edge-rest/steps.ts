import {
  drilling,
  fed,
  guided,
  mounted,
  sliding,
  tight,
  tools,
  type BuildNames,
  type BuildOf,
} from '../shared/build.ts';
import { supplies as shared, type Supply } from '../shared/supplies.ts';
import { mm, n } from '../rounded.ts';

/** What the sentences of building and setting need to know. */
export interface StepsOf extends BuildOf {
  readonly pads: boolean;
  readonly lipScrew: number;
  readonly lipThread: string;
  readonly noseGap: number;
  readonly drop: number;
  readonly pin: number;
  readonly pinLength: number;
  readonly gauge: number | undefined;
  readonly collar: number;
  readonly yaw: number;
  readonly perDivision: number;
  readonly perTenth: number;
  readonly padHeight: number;
  readonly lipHeight: number;
  readonly down: boolean;
}

const NAMES: BuildNames = { slide: 'lip slide', nose: 'wheel nose', front: 'wheel' };

/** How to build the fixture, in order. */
export const assembly = (s: StepsOf): string[] => [
  tools([drilling(!s.strips, true), 'a depth rod', 'a square block to fold the lip over']),
  'Whoever has the spine rest keeps base, packer, feed and knob: compare the hole tables and drill what is missing. New are wheel nose, lip slide, lip, wear strip, collar, push block with its pad, gauge and pin.',
  'Cut all plates. Deburr every edge and hole; check against the hole tables. Check that lip slide and wear strip are flat with the straight edge.',
  ...guided(s, NAMES),
  ...mounted(s, NAMES),
  s.pads
    ? `Fold the two lip pads, cut the packing from the same sheet. Lay pads and packing on the front of the lip slide, the wear strip on them, its front face against the upstands; hold all with the countersunk screws ${s.lipThread} x ${n(s.lipScrew)}.`
    : `Fold the lip strip. Lay it on the front of the lip slide, the wear strip on it, its front face against the upstand; hold both with the countersunk screws ${s.lipThread} x ${n(s.lipScrew)}.`,
  `Check with the depth rod that the lip stands ${mm(s.lipHeight)} above the seat at both ends, and that no screw head does. Slide a straight edge along the lip: no light.`,
  ...sliding(s, NAMES),
  ...fed(s, NAMES),
  'Bolt the stop collar together loosely with its two screws M4, its long ends towards the edge. Slide the pad into the groove of the push block; it must not fall out.',
  tight('M6, M5, M4'),
];

/** What is used up or must be at hand. */
export const supplies = (s: StepsOf): Supply[] => [
  shared.cuttingOil,
  shared.grease,
  ...(s.strips ? [shared.paper] : []),
  shared.shims,
  shared.lining('stop collar'),
  shared.testPiece,
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
  `Grind a test bar, its edge and flat as those of the blade, to half the depth, measure it and look it up in the progress table of the annex. For every ${mm(s.perTenth)} that the upper limit is higher than there, close the lip by ${n(0.1 / s.perDivision, 0)} divisions; if lower, open it: so the zero is mended.`,
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
