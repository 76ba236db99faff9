import { clear, type Asked } from '../../../src/family/index.ts';
import { parameterPath, words } from './words.ts';

/** What mends each of these checks, in the words of the family. */
interface Fixes {
  readonly belt: string;
  readonly clearance: string;
  readonly mount: string;
  readonly hand: string;
}

/** What a family with base, nose and step has of its own. */
export interface Rig {
  readonly runningClearance: number;
  readonly handDistance: number;
  /** Bodies of the fixture besides base, mount, nose, step and push block. */
  readonly more: readonly string[];
  readonly fix: Fixes;
}

/**
 * The pad is held off the belt by the blade between them, which lies on the belt there and takes up
 * its flutter: it is asked against the belt pressed on its support, splice counted. `parameter` sets
 * where the pad stands.
 */
export const padPairs = (fix: string, parameter: string): Asked[] => [
  clear('pad', 'belt', 0.05, fix, parameterPath(parameter)),
];

/** What of a fixture must keep clear of what of the machine, standing at each setting. */
export const rigPairs = ({ runningClearance, handDistance, more, fix }: Rig): Asked[] => {
  const still = ['base', 'mount', 'nose', 'step', ...more];
  return [
    ...[...still, 'push'].flatMap((a) => [
      clear(a, 'belt', runningClearance, fix.belt, parameterPath('noseGap')),
      ...['platen', 'wheels', 'guards'].map((b) => clear(a, b, runningClearance, fix.clearance)),
    ]),
    ...['nose', 'step', 'push', ...more].map((a) => clear(a, 'rest', 1, fix.clearance)),
    {
      id: 'contact/base/rest',
      rule: { kind: 'touch', a: 'base', b: 'rest', tolerance: 0.02, apart: [0, 0, 1] },
      fix: fix.mount,
      parameter: parameterPath('mount'),
    },
    ...['belt', 'wheels', 'platen'].map((b) =>
      clear('hand', b, handDistance, fix.hand, parameterPath('handDistance')),
    ),
    ...[...still, 'rest', 'guards'].map((b) => clear('hand', b, 1, words.fix.hand)),
    ...['platen', 'wheels', 'rest', 'guards'].map((b) => clear('pad', b, 0.05, fix.clearance)),
  ];
};
