import { cos, tan } from '../../core/trigonometry.ts';
import { radians } from '../../core/units.ts';
import { fenceDistance, forwardAt } from '../../grind/carriage/fence.ts';
import { screwExtension } from '../../grind/carriage/screw.ts';
import { root } from '../../grind/numeric/root.ts';
import { text } from '../../text/index.ts';
import type { BudgetQuestion } from './budget.ts';
import type { Contributor } from './contributor.ts';
import type { Departures } from './sides.ts';

export type CarriageCause =
  | 'fence'
  | 'screw'
  | 'lock'
  | 'base'
  | 'belt'
  | 'wear'
  | 'compression'
  | 'platen'
  | 'squareness'
  | 'yaw'
  | 'clamp'
  | 'height'
  | 'thickness'
  | 'bow';

/** A carriage at one angle against its fence; mm and degrees. */
export interface CarriageAt {
  readonly base: number;
  readonly footRadius: number;
  readonly tipRadius: number;
  readonly angle: number;
  readonly thickness: number;
  /** Edge on each side, from the midplane. */
  readonly edge: number;
  /** The blade's midplane ahead of the foot's centre, when level. */
  readonly forward: number;
  /** Height of the edge above the base, when level. */
  readonly height: number;
  /** Lean of the platen, top away from the maker positive; degrees. */
  readonly lean: number;
  /** Sides that are ground: where it is one, the other stays the face of the stock. */
  readonly sides: 1 | 2;
}

export const CARRIAGE_KEYS = ['angle', 'bevelHeight', 'edgeThickness', 'difference'] as const;

/** Steepest tilt that a heel screw is looked for at, degrees. */
const STEEPEST = 60;

const words = text.setup.contributors;

/**
 * The exact forward model of both sides for a budget. Screw extension and base give the tilt q, and
 * a = q - t on a platen that leans by t; the fence stops the foot, and the edge's corner that then
 * lies on the abrasive face is left:
 *
 *     e = (y_c cos t + r_f sin t - (h - r_f) sin a) / cos a - F          b = (T/2 - e) / tan a
 *
 * with F the midplane ahead of the foot's centre: `forwardAt`, `fenceDistance` solved for the edge.
 * What lies nearer square to the face lies 1 / cos t nearer along the base. Outputs as
 * `CARRIAGE_KEYS`: angle and bevel height of the side ground first, edge thickness of both sides
 * together, bevel height of the second side less the first's; of a blade ground on one side the
 * first three, its edge as thick as from that side to the other face, T/2 + e.
 */
export const carriageModel = (at: CarriageAt): BudgetQuestion<CarriageCause>['model'] => {
  const { footRadius, tipRadius, lean } = at;
  const rounds = { footRadius, tipRadius };
  const screw = screwExtension({ base: at.base, ...rounds }, at.angle + lean);
  const fence = fenceDistance(at.forward + at.edge, at.height, footRadius, at.angle, lean);
  const side = (by: Departures<CarriageCause>) => {
    const out = screw + by.screw + by.lock;
    const base = at.base + by.base;
    const short = (angle: number): number => screwExtension({ base, ...rounds }, angle) - out;
    if (short(0) > 0 || short(STEEPEST) < 0) return undefined;
    const tilt = root(short, 0, STEEPEST);
    // A belt nearer than meant has the foot stop nearer to it.
    const nearer = (by.belt - by.wear - by.compression - by.platen) / cos(radians(lean));
    const stop = fence + by.fence - nearer;
    const ahead = at.forward + by.clamp + by.bow;
    const edge = forwardAt(stop, at.height + by.height, footRadius, tilt - lean, lean) - ahead;
    const angle = tilt - lean + by.squareness + by.yaw;
    const half = (at.thickness + by.thickness) / 2;
    if (!(angle > 0) || edge >= half) return undefined;
    return { angle, edge, half, bevelHeight: (half - edge) / tan(radians(angle)) };
  };
  return (first, second) => {
    const one = side(first);
    if (at.sides === 1) return one && [one.angle, one.bevelHeight, one.half + one.edge];
    const two = side(second);
    return (
      one &&
      two && [one.angle, one.bevelHeight, one.edge + two.edge, two.bevelHeight - one.bevelHeight]
    );
  };
};

/** What is known of a carriage and how it is used; mm. */
export interface CarriageKnown {
  readonly settingTolerance: number;
  /** Advance of the heel screw for one division of its knob. */
  readonly division: number;
}

/** Ranges as for the spine rest: computed where known, else common practice, no source. */
export const carriageContributors = ({
  settingTolerance,
  division,
}: CarriageKnown): Contributor<CarriageCause>[] => {
  const even = { distribution: 'uniform', unit: 'mm', source: words.sources.practice } as const;
  const around = (half: number) => ({ minus: half, plus: half });
  const rows: Omit<Contributor<CarriageCause>, 'label' | 'nominal'>[] = [
    {
      ...even,
      id: 'fence',
      acts: 'each',
      ...around(settingTolerance),
      source: words.sources.parameter,
    },
    {
      ...even,
      id: 'screw',
      acts: 'each',
      ...around(division / 2),
      source: words.sources.resolution,
    },
    { ...even, id: 'lock', acts: 'each', ...around(0.02) },
    { ...even, id: 'base', acts: 'both', ...around(0.2) },
    { ...even, id: 'belt', acts: 'both', ...around(0.05) },
    { ...even, id: 'wear', acts: 'each', minus: 0, plus: 0.1 },
    { ...even, id: 'compression', acts: 'both', ...around(0.03) },
    { ...even, id: 'platen', acts: 'both', minus: 0, plus: 0.05 },
    { ...even, id: 'squareness', acts: 'both', unit: 'deg', ...around(0.05) },
    { ...even, id: 'yaw', acts: 'each', unit: 'deg', ...around(0.03) },
    { ...even, id: 'clamp', acts: 'opposite', ...around(0.05) },
    { ...even, id: 'height', acts: 'each', ...around(0.1) },
    { ...even, id: 'thickness', acts: 'both', ...around(0.03) },
    { ...even, id: 'bow', acts: 'opposite', ...around(0.2), distribution: 'triangular' },
  ];
  return rows.map((row) => ({ nominal: 0, ...row, label: words.labels[row.id] }));
};
