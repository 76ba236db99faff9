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
  readonly noseGap: number;
  readonly noseGapMost: number;
  readonly pin: number;
  readonly pinLength: number;
  readonly pinZero: number;
  readonly collar: number;
  readonly yaw: number;
  readonly lean: number;
  readonly perDivision: number;
  /** Angle and height of the bevel for a tenth of a millimetre of the step. */
  readonly degreesPerTenth: number;
  readonly heightPerTenth: number;
  /** Width of the setting gauge: the last setting. */
  readonly gauge: number;
  readonly padHeight: number;
  /** A bar that the progress tables hold for, and what stands for the line strip on it. */
  readonly bar: { readonly thickness: number; readonly height: number; readonly packing?: number };
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

const NAMES: BuildNames = { slide: 'step plate', nose: 'nose', front: 'belt' };

/** How to build the fixture, in order. */
export const assembly = (s: StepsOf): string[] => [
  tools([drilling(!s.strips, false), ...(s.lean === 0 ? [] : ['a bevel gauge'])]),
  `Cut all plates. Deburr every edge and hole; check against the hole tables. Check that the nose is flat with the straight edge on its top, and that ${s.lineStrip ? 'the rounded front of the step plate stands square to its top.' : 'the front face of the step plate is straight: no light under a straight edge.'}`,
  ...guided(s, NAMES),
  ...mounted(s, NAMES),
  ...sliding(s, NAMES),
  ...fed(s, NAMES),
  'Bolt the stop collar together loosely with its two screws M4, one above and one below the tang. Slide the pad into the groove of the push block; it must not fall out.',
  tight('M6, M5, M4'),
];

/** What is used up or must be at hand. */
export const supplies = (s: StepsOf): Supply[] => [
  shared.cuttingOil,
  shared.grease,
  ...(s.strips ? [shared.paper] : []),
  shared.shims,
  shared.lining('stop collar'),
  ...(s.lineStrip
    ? [[`Double-sided tape ${mm(s.lineStrip.tape)} thick`, 'line strip'] as const]
    : []),
  shared.testBar(s.bar.thickness, s.bar.height),
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
  `Grind both sides of a test bar (${mm(s.bar.thickness)} thick, ${mm(s.bar.height, 1)} high${s.bar.packing === undefined ? '' : `, ${mm(s.bar.packing)} of packing where the strip sits`}) at the last setting; the annex has its bevel by its edge (progress). For every ${mm(s.heightPerTenth)} more, open the step by ${n(0.1 / s.perDivision, 0)} divisions; for less, close it.`,
  `Take the zero again as the belt wears: 0.1 mm of the step turns the bevel by ${n(s.degreesPerTenth)} degrees.`,
];

/** Cautions that this fixture adds to the usual ones. */
export const cautions = (s: StepsOf, edgeLeast: number, down: boolean): string[] => [
  `The edge points up${down ? ', against the belt' : ''}: never grind it below ${mm(edgeLeast)}. No blade whose back is ground sharp.`,
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
