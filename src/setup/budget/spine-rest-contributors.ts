import { tan } from '../../core/trigonometry.ts';
import { radians } from '../../core/units.ts';
import { text } from '../../text/index.ts';
import type { Contributor } from './contributor.ts';
import type { SpineRestCause } from './spine-rest.ts';

/** What is known of the fixture and how it is used; mm, degrees and N. */
export interface SpineRestKnown {
  /** How truly the zero of the step is met: half width. */
  readonly settingTolerance: number;
  /** Greatest yaw of the step in its guide. */
  readonly yaw: number;
  readonly beltWidth: number;
  /** Advance of the step for one division of the dial. */
  readonly division: number;
  /** Height of a splice over the belt. */
  readonly splice: number;
  /** Whether a leather or rubber backing lies under the belt. */
  readonly softBacking: boolean;
  /** Push on the blade, as when the zero was taken. */
  readonly push: number;
}

const words = text.setup.contributors;
const { practice } = words.sources;

type Row = Omit<Contributor<SpineRestCause>, 'label' | 'nominal'> & { nominal?: number };

/**
 * Everything domain practice blames for a bevel that is off, with its range. Ranges that follow
 * from the fixture are computed from `known`; the others are common practice, no source, and stand
 * here to be replaced by what a maker measures.
 */
export const spineRestContributors = (known: SpineRestKnown): Contributor<SpineRestCause>[] => {
  const even = { distribution: 'uniform', unit: 'mm', source: practice } as const;
  const around = (half: number) => ({ minus: half, plus: half });
  const across = (known.beltWidth / 2) * tan(radians(known.yaw));
  const rows: Row[] = [
    {
      ...even,
      id: 'step',
      acts: 'both',
      ...around(known.settingTolerance),
      source: words.sources.parameter,
    },
    { ...even, id: 'yaw', acts: 'each', ...around(across), source: words.sources.yaw },
    {
      ...even,
      id: 'dial',
      acts: 'each',
      ...around(known.division / 2),
      source: words.sources.resolution,
    },
    { ...even, id: 'backlash', acts: 'each', ...around(0.01) },
    { ...even, id: 'lock', acts: 'each', ...around(0.02) },
    { ...even, id: 'belt', acts: 'both', ...around(0.05) },
    { ...even, id: 'wear', acts: 'each', minus: 0, plus: 0.1 },
    { ...even, id: 'compression', acts: 'both', ...around(0.03) },
    {
      ...even,
      id: 'splice',
      acts: 'both',
      minus: 0,
      plus: known.splice / 10,
      source: words.sources.splice,
    },
    { ...even, id: 'backing', acts: 'both', ...around(known.softBacking ? 0.2 : 0) },
    { ...even, id: 'platen', acts: 'both', minus: 0, plus: 0.05 },
    { ...even, id: 'squareness', acts: 'both', unit: 'deg', ...around(0.05) },
    { ...even, id: 'height', acts: 'both', ...around(0.2) },
    { ...even, id: 'thickness', acts: 'both', ...around(0.03) },
    { ...even, id: 'bow', acts: 'opposite', ...around(0.2), distribution: 'triangular' },
    { ...even, id: 'straightness', acts: 'both', ...around(0.1) },
    { ...even, id: 'edge', acts: 'each', ...around(0.03) },
    { ...even, id: 'centreline', acts: 'opposite', ...around(0.03) },
    {
      ...even,
      id: 'push',
      acts: 'both',
      unit: 'N',
      nominal: known.push,
      ...around(known.push / 2),
      source: words.sources.push,
    },
  ];
  return rows.map((row) => ({ nominal: 0, ...row, label: words.labels[row.id] }));
};
