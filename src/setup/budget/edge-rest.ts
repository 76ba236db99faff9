import { atan2 } from '../../core/trigonometry.ts';
import { degrees } from '../../core/units.ts';
import { hollowChord } from '../../grind/edge-rest/chord.ts';
import { centreAtLip } from '../../grind/edge-rest/fixed-lip.ts';
import { text } from '../../text/index.ts';
import type { BudgetQuestion } from './budget.ts';
import type { Contributor } from './contributor.ts';
import type { Departures } from './sides.ts';

export type EdgeRestCause =
  | 'lip'
  | 'dial'
  | 'backlash'
  | 'lock'
  | 'belt'
  | 'wear'
  | 'compression'
  | 'seatHeight'
  | 'wheel'
  | 'thickness'
  | 'bow'
  | 'depth';

/** One hollow at a lip; mm. */
export interface EdgeRestAt {
  /** Abrasive radius: wheel and belt. */
  readonly radius: number;
  readonly lip: number;
  readonly drop: number;
  readonly faceOffset: number;
  /** Depth at which each side stops, measured. */
  readonly depth: number;
  /** Of the flat stock, between the two faces. */
  readonly thickness: number;
  /** Sides that are hollow: where it is one, the other stays flat. */
  readonly sides: 1 | 2;
}

export const EDGE_REST_KEYS = ['tilt', 'upperLimit', 'web', 'difference'] as const;

const words = text.setup.contributors;

/**
 * The exact forward model of both sides for a budget. The lip is fixed to the machine as the
 * wheel's axis is, so a thicker belt changes the abrasive radius and not their distance L:
 *
 *     c = sqrt(L^2 - (R - d + q)^2)       upper limit c + w/2      tilt as in `edgeSeat`
 *
 * Outputs as `EDGE_REST_KEYS`: tilt (degrees) and upper limit of the side ground first, the web
 * between the two hollows on flat stock at its thinnest, upper limit of the second side less the
 * first's (mm); of a blade hollow on one side the first three, its web up to the flat face.
 */
export const edgeRestModel = (at: EdgeRestAt): BudgetQuestion<EdgeRestCause>['model'] => {
  const side = (by: Departures<EdgeRestCause>) => {
    const radius = at.radius + by.belt + by.wheel - by.wear - by.compression;
    const level = at.radius + at.lip + by.lip + by.dial + by.backlash + by.lock;
    const drop = at.drop - by.seatHeight;
    const depth = at.depth + by.depth;
    const offset = at.faceOffset + by.thickness / 2 + by.bow;
    const [apart, square] = [Math.hypot(level, drop), radius - depth + offset];
    if (!(depth > 0 && apart > square)) return undefined;
    const centre = centreAtLip(radius, apart, depth, offset);
    return {
      depth,
      upper: centre + hollowChord(radius, depth) / 2,
      tilt: degrees(atan2(centre, square) - atan2(drop, level)),
    };
  };
  return (first, second) => {
    const one = side(first);
    const stock = at.thickness + first.thickness;
    if (at.sides === 1) return one && [one.tilt, one.upper, stock - one.depth];
    const two = side(second);
    return (
      one && two && [one.tilt, one.upper, stock - one.depth - two.depth, two.upper - one.upper]
    );
  };
};

/** What is known of an edge rest and how it is used; mm. */
export interface EdgeRestKnown {
  readonly settingTolerance: number;
  /** Advance of the lip for one division of its dial. */
  readonly division: number;
}

/** Ranges as for the spine rest: computed where known, else common practice, no source. */
export const edgeRestContributors = ({
  settingTolerance,
  division,
}: EdgeRestKnown): Contributor<EdgeRestCause>[] => {
  const even = { distribution: 'uniform', unit: 'mm', source: words.sources.practice } as const;
  const around = (half: number) => ({ minus: half, plus: half });
  const rows: Omit<Contributor<EdgeRestCause>, 'label' | 'nominal'>[] = [
    {
      ...even,
      id: 'lip',
      acts: 'both',
      ...around(settingTolerance),
      source: words.sources.parameter,
    },
    {
      ...even,
      id: 'dial',
      acts: 'each',
      ...around(division / 2),
      source: words.sources.resolution,
    },
    { ...even, id: 'backlash', acts: 'each', ...around(0.01) },
    { ...even, id: 'lock', acts: 'each', ...around(0.02) },
    { ...even, id: 'belt', acts: 'both', ...around(0.05) },
    { ...even, id: 'wear', acts: 'each', minus: 0, plus: 0.1 },
    { ...even, id: 'compression', acts: 'both', ...around(0.03) },
    { ...even, id: 'seatHeight', acts: 'both', ...around(0.2) },
    { ...even, id: 'wheel', acts: 'both', ...around(0.1) },
    { ...even, id: 'thickness', acts: 'both', ...around(0.03) },
    { ...even, id: 'bow', acts: 'opposite', ...around(0.2), distribution: 'triangular' },
    { ...even, id: 'depth', acts: 'each', ...around(0.03) },
  ];
  return rows.map((row) => ({ nominal: 0, ...row, label: words.labels[row.id] }));
};
