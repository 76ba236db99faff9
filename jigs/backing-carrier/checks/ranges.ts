import { type CheckResult, cos, radians, rangeCheck } from '../../../src/family/index.ts';
import { PLATEN_MARGIN, speedCheck } from '../../shared/checks/ranges.ts';
import { bareShifts, pressed } from '../numbers.ts';
import { words, parameterPath, type Question } from './question.ts';

const { labels, fix, basis } = words;

/** Belt that may run beside the face on either side, mm. */
const BARE_BELT = 5;
/** Rise of the belt beside a bevel that rounds its ends no more than a finish bears, degrees. */
const MOST_ROLL = 2;

/** Where the bevel lies on the face, from its ends. */
const contactChecks = ({ v, l, aims }: Question): CheckResult[] => {
  const half = Math.max(...aims.map(({ height, angle }) => height / cos(radians(angle)))) / 2;
  const end = v.endRadius + PLATEN_MARGIN;
  const terms = {
    atLeast: 0,
    basis: basis.practice,
    fix: fix.contact,
    parameter: parameterPath('contact'),
  };
  return [
    rangeCheck({
      ...terms,
      id: 'range/contact/low',
      label: labels.contactLow,
      found: v.contact - half - (l.bottom + end),
    }),
    rangeCheck({
      ...terms,
      id: 'range/contact/high',
      label: labels.contactHigh,
      found: l.top - end - (v.contact + half),
    }),
  ];
};

/** Width of the face, room of the tension arm, give of a soft backing. */
const faceChecks = (q: Question): CheckResult[] => {
  const { design, v, l, aims, path } = q;
  const { width } = design.grinder.belt;
  const height = Math.max(...aims.map((aim) => aim.height));
  return [
    rangeCheck({
      id: 'range/width',
      label: labels.width,
      found: (width - l.width) / 2,
      atLeast: -BARE_BELT,
      atMost: BARE_BELT,
      basis: basis.practice,
      fix: fix.width,
      parameter: parameterPath('plate'),
    }),
    rangeCheck({
      id: 'range/take-up',
      label: labels.takeUp,
      found: path,
      atMost: v.takeUp,
      basis: basis.setting,
      fix: fix.takeUp,
      parameter: parameterPath('takeUp'),
    }),
    ...(l.round
      ? []
      : [
          rangeCheck({
            id: 'range/roll',
            label: labels.roll,
            unit: 'deg',
            found: pressed(design, v, height).roll,
            atMost: MOST_ROLL,
            basis: basis.practice,
            fix: fix.roll,
            parameter: parameterPath('modulus'),
          }),
        ]),
  ];
};

/** How far the rest has to move for every belt, against its travel. */
const restChecks = ({ design, l }: Question): CheckResult[] => [
  rangeCheck({
    id: 'range/rest-travel',
    label: labels.rest,
    found: Math.max(...bareShifts(design, l).map(({ shift }) => shift)),
    atMost: design.grinder.rest.travelY,
    basis: basis.geometry,
    fix: fix.travel,
    parameter: 'grinder.rest.travelY',
  }),
];

/** Every check that holds one number to its limits. */
export const rangeChecks = (q: Question): CheckResult[] => [
  ...contactChecks(q),
  ...faceChecks(q),
  ...restChecks(q),
  speedCheck(q.design.grinder),
];
