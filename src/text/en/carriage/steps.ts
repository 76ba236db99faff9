import { drilling, held, ringed, tight, tools, type Fastened } from '../shared/build.ts';
import { supplies as shared, type Supply } from '../shared/supplies.ts';
import { mm, n } from '../rounded.ts';

/** What the sentences of building and setting need to know. */
export interface StepsOf {
  readonly plates: boolean;
  readonly gussets: number;
  readonly bars: boolean;
  readonly mount: string;
  readonly mountScrew: Fastened;
  readonly fenceScrew: Fastened;
  readonly footScrew: Fastened;
  readonly palmScrew: number;
  readonly clampScrew: Fastened;
  readonly jackScrew: number;
  readonly angleScrew: Fastened;
  readonly tabPlay: number;
  readonly heel: number;
  readonly tipRadius: number;
  readonly beltGap: number;
  readonly beltGapMost: number;
  readonly lean: number;
  readonly feelersApart: number;
  readonly edgeHeight: number;
  readonly jawGap: number;
  readonly fence: number;
  readonly firstAngle: number;
  readonly degreesPerDivision: number;
  /** Bevel height for one division at the same edge. */
  readonly heightPerDivision: number;
  /** Length of the fence gauge: the last setting. */
  readonly fenceGauge: number;
  readonly pushHeight: number;
  readonly length: number;
}

/** How to build the fixture, in order. */
export const assembly = (s: StepsOf): string[] => [
  tools([drilling(true, false), ...(s.lean === 0 ? [] : ['a bevel gauge'])]),
  'Cut all plates. Deburr every edge and hole; check against the hole tables. Check that the top of the base and the front of the upright are flat.',
  'Drill the foot bar to its template, both holes along one line. Tap every thread that the hole tables name, square to its face; blow it out and put a drop of oil into it. Ream the stop pin holes of the base.',
  ...(s.plates
    ? [
        `Push the tabs of the ${n(s.gussets)} gussets into sole and upright; a slot is ${mm(s.tabPlay)} wider than the sheet. Front faces flush. Stand the sole on a flat surface, put a square to the front of the upright: no light may show over its height. Tack weld, braze or glue from behind, check again, finish.`,
      ]
    : [
        `Drill foot and leg of the angle to the template. Screw it to the sole, front flush, with its screws ${held('M6', s.angleScrew)}; put a square to its front face and shim the foot until no light shows.`,
      ]),
  `Screw foot strip and foot bar under the sole with two screws ${held('M5', s.footScrew)}: the bar must lie along the front edge, parallel within 0.1 mm from end to end.`,
  `Screw the push block under the tail with two screws M5 x ${n(s.palmScrew)} into the nuts in its pockets, before the knob stands over them.`,
  `Saw the heel screw, ${n(s.heel)} mm, from threaded rod M6. Round one end to a half ball of ${mm(s.tipRadius)}. Screw it through the sole from below, put on the lock nut (thin), a thin nut, the knob, and a nut sunk into the knob; lock the second thin nut against the knob.`,
  `Line the jaw with thin leather or tape. Hold it with a screw M6 x ${n(s.clampScrew.length)}${ringed(s.clampScrew.washers, 1)} from behind; the jack screw M6 x ${n(s.jackScrew)} below it keeps the jaw parallel to the upright.`,
  `Press the two stop pins into the base. Screw the fence to the base with two button head screws ${held('M6', s.fenceScrew)}.`,
  s.bars
    ? `Lay the base on the rest and hold it with the two clamp bars below and screws ${held(s.mount, s.mountScrew)}, finger tight.`
    : `Lay the base on the rest and hold it with screws ${held(s.mount, s.mountScrew)} from below, finger tight.`,
  `Measure from the foot screws to the heel screw: ${mm(s.length)} is assumed. Enter what you find.`,
  tight('M6, M5'),
];

/** What is used up or must be at hand. */
export const supplies = (s: StepsOf): Supply[] => [
  shared.cuttingOil,
  ...(s.plates
    ? [['Welding or brazing filler, or epoxy adhesive', 'tabs of the gussets'] as const]
    : []),
  shared.shims,
  shared.lining('jaw'),
  ['Machine oil', 'base, under foot and heel screw'],
];

/** How to find zero and come to a setting, in order. */
export const zeroing = (s: StepsOf): string[] => [
  'Isolate the machine. Mount the belt of this pass on its backing, tension it as for work, turn its splice away from the platen.',
  `Base: press it against a feeler of ${mm(s.beltGap)} at both edges of the belt, tighten. The gap must be alike at both ends.`,
  s.lean === 0
    ? 'Square: stand a square on the base against the belt: no light may show. Shim or turn the rest until it agrees.'
    : `Square: stand a bevel gauge set to ${n(90 + s.lean)} degrees on the base against the belt: no light may show. Shim or turn the rest until it agrees.`,
  `Zero of the angle: push the bare carriage against the belt and turn the heel screw until two equal feelers, one ${mm(s.feelersApart, 0)} above the other, both just go in between upright and belt. Turn the knob on its screw until 0 is over the index line: this is zero.`,
  `Jaw: clamp the blade by tang or ricasso, ${mm(s.jawGap, 1)} from the plunge to the jaw, flat on the upright, with the edge against the lips of the edge gauge at two places: it then stands ${mm(s.edgeHeight, 1)} above the base and along the stroke.`,
  `Angle: from zero screw the heel screw out by the turns and divisions under Dial; one division is ${n(s.degreesPerDivision, 3)} degrees. To come back, go half a turn too far and screw out again. Lock the nut; if the division has moved, loosen and set again.`,
  `Fence: loosen it, measure with calipers from the belt to its rear face: ${mm(s.fence)} for the first setting (${n(s.firstAngle)} degrees), both ends alike; tighten, measure again. It is set again with every angle; at the last one the fence gauge (${mm(s.fenceGauge)}, measured) lies on it, front at the belt, lip behind it.`,
  'Parallelism: slide the carriage along the fence from stop to stop, a feeler between blade and belt: the gap must not change. If it does, turn the fence.',
  'Try the whole stroke, motor off, both sides, stop to stop: nothing may touch belt, platen or rest.',
  `Grind with the hand on the push block only, low (${mm(s.pushHeight, 0)} above the base) and pressing down, until the foot runs on the fence and the sparks die.`,
  `Measure edge and bevel height at the three places and compare with the table. First the edge: move the fence towards the belt by what is left on this side. Then, for every 0.1 mm that the bevel is too high, screw the heel screw out by ${n(0.1 / s.heightPerDivision, 0)} divisions, if too low in, and set the fence again.`,
  'Take the base, then the fence again after every change of belt or backing, and when the belt has worn.',
];

/** Cautions that this fixture adds to the usual ones. */
export const cautions = (s: StepsOf, edgeLeast: number, down: boolean): string[] => [
  `The edge points up${down ? ', against the belt' : ''}: never grind it below ${mm(edgeLeast)}.`,
  'Jaw, fence, lock nut and mounting tight before the motor runs: a blade that slips is thrown down.',
  'The jaw stays beside the belt because the stop pins stop the stroke: never grind without both pins, and never reach round the upright.',
  'Push only at the push block, behind the heel screw, low and pressing down. Pushed high, the carriage lifts its heel and grinds steeper.',
  `Gap between base and belt: never above ${mm(s.beltGapMost)} (the published limit for work rests at wheels, the nearest written rule).`,
  'Brush base, foot and heel tip: grit under one of them is an error of angle.',
];
