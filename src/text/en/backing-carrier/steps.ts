import { supplies as shared, type Supply } from '../shared/supplies.ts';
import { mm, n } from '../rounded.ts';

/** What the sentences of building and setting need to know. */
export interface StepsOf {
  readonly soft: boolean;
  readonly ribs: number;
  /** In place of the platen: its bolts, and how far they must reach out of what carried it, mm. */
  readonly instead:
    | {
        readonly thread: string;
        readonly slotted: number;
        readonly least: number;
        readonly most: number;
        readonly platen: number;
      }
    | undefined;
  readonly rod: number;
  /** Washers between ribs and cheek on either end of a rod. */
  readonly spacers: number;
  readonly grip: number;
  readonly play: number;
  readonly backing: string;
  readonly thickness: number;
  readonly radius: number;
  /** Feelers under a straight edge on an arc: how far from its middle, and how thick, mm. */
  readonly arc: { readonly at: number; readonly feeler: number } | undefined;
  readonly path: number;
  readonly lean: number;
  /** Depth of the hollow that a convex face leaves, or length over which a soft one rounds the ends. */
  readonly leaves: number;
}

/** How to build the carrier, in order. */
export const assembly = (s: StepsOf): string[] => [
  `Tools: files, a hacksaw, drills${s.instead ? '' : ' and a tap M5, a hexagon key'}, two spanners${s.soft ? ', a sharp knife' : ''}, calipers, a straight edge${s.arc ? ', feelers' : ''}, a square${s.lean === 0 ? '' : ', a bevel gauge'}; a vice; eye protection.`,
  ...(s.instead
    ? [
        `Cut ${n(s.ribs)} ribs, ${n(s.instead.slotted)} of them with slots in the back. Deburr every edge and hole.`,
        `Saw three rods of threaded rod M6, ${n(s.rod, 0)} mm long. Put the ribs on them, those with slots in the middle; lay a nut ${s.instead.thread} into either slot before the next plain rib closes it; a washer and a nut at each end of the rods.`,
      ]
    : [
        `Cut ${n(s.ribs)} ribs and two cheeks. Deburr every edge and hole; tap the four holes of the cheeks M5.`,
        `Saw three rods of threaded rod M6, ${n(s.rod, 0)} mm long. Put all ribs on them, then at each end ${s.spacers === 0 ? '' : s.spacers === 1 ? 'a washer, ' : `${n(s.spacers)} washers, `}a cheek, a washer and a nut.`,
      ]),
  'Lay the ribs front edges down on a flat surface, press them flush, tighten the nuts evenly (about 8 N m).',
  ...(s.arc
    ? [
        `Polish the front edges along the belt's way. Try the arc of radius ${mm(s.radius, 0)}: lay feelers of ${mm(s.arc.feeler)} across it ${mm(s.arc.at, 0)} above and below its middle and a straight edge on them. It must just touch the middle and neither rock nor show more than 0.05 mm of light.`,
      ]
    : [
        'Draw-file the face flat. Glue the soft sheet on the whole face with contact cement, smooth side out, and let it dry under weight.',
        'Trim the sheet flush with the ribs at both sides and round its two ends.',
      ]),
  ...(s.instead
    ? [
        `Isolate the machine and slack the belt. Take the platen off with its liner, and measure that its face stood ${mm(s.instead.platen)} before what carried it: every shift is counted from there.`,
        `Hold the carrier in its place and screw bolts ${s.instead.thread} from behind into its nuts. They must reach ${mm(s.instead.least, 1)} to ${mm(s.instead.most, 1)} out of what carried the platen: shorter ones do not fill the nut, longer ones meet the rib. Measure before tightening, and keep the platen's own bolts with it.`,
      ]
    : [
        `Isolate the machine and take the belt off. Set the carrier on the platen from the front, cheeks beside it, ears over its two ends with ${mm(s.play)} of room each. Screw the set screws M5 x ${n(s.grip)} against the sides of the platen, left and right by turns, until it cannot be moved by hand.`,
      ]),
];

/** What is used up or must be at hand. */
export const supplies = (s: StepsOf): Supply[] => [
  ...(s.instead
    ? [
        [
          `Bolts ${s.instead.thread} that reach ${mm(s.instead.least, 1)} to ${mm(s.instead.most, 1)} out of what carried the platen`,
          'one into each nut of the carrier',
        ] as const,
      ]
    : [shared.cuttingOil]),
  s.soft
    ? ['Contact cement', 'soft sheet on the ribs']
    : ['Abrasive paper, P240 to P600', 'front edges of the ribs'],
  ['Shim stock, 0.05 to 0.5 mm', 'carrier where it is held, until the belt stands square'],
  shared.testPiece,
];

/** How to find zero, in order. */
export const zeroing = (s: StepsOf): string[] => [
  `At the desk: enter the backing "${s.backing}" in the grinder file with a thickness of ${mm(s.thickness)}${s.soft ? ', kind leather' : ` and a radius of ${mm(s.radius, 0)}, kind radius`}; fixtures then come out with their settings for it.`,
  'Switch the machine off and isolate it. Take the fixture off, or move rest, nose or lip away from the platen by the shift on the sheet, measured with calipers, before the carrier goes on.',
  'Mount the carrier and the belt of this pass, tension it as for work, turn it by hand over its whole length: it must lie on the face over the full height and track as before. If not, seat the carrier again before the tracking is touched.',
  `The path of the belt is ${mm(s.path, 1)} longer than on the bare platen: see that the tension arm is not at its stop. If it is, the belt is too short.`,
  `Square: stand a ${s.lean === 0 ? 'square' : `bevel gauge set to ${n(90 + s.lean)} degrees`} on the rest against the belt: no light may show. Shim the carrier where it is held, not the belt.`,
  'Mount the fixture, or move it up, and take its zero as its own sheet says.',
  s.soft
    ? `Grind a test piece and lay a straight edge over its bevel: both ends fall away over about ${mm(s.leaves, 1)} (an estimate). Where it is much more, push less or take a firmer sheet.`
    : `Grind a test piece and lay a straight edge over its bevel: a feeler of about ${mm(s.leaves)} goes under its middle. If a thicker one does, try the arc with feelers and straight edge again.`,
];

/** Cautions that this fixture adds to the usual ones. */
export const cautions = (s: StepsOf): string[] => [
  'Every gap that was set on the bare platen is wrong with the carrier on: never start the motor before nose, base or lip are set again.',
  'Screws and nuts that hold it must be tight before the motor runs, and looked at again after the first minutes: the belt drags on the carrier.',
  'Nuts and rods stand beside the belt, and cheeks where it has them: keep fingers and blades away from them.',
  ...(s.soft
    ? [
        'Leather chars and its dust burns: finish with light pressure, no coarse belts, and clear the dust.',
        'A soft face lets an edge dig in: never with the edge against the travel of the belt when it is thin.',
      ]
    : [
        'The belt slides on bare steel: it gets warm. Look at its back for wear and at the face for grooves.',
        'A convex face carries the belt on a narrow strip: feed gently.',
      ]),
];
