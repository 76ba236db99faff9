import { bladeIssues } from '../blade/rules.ts';
import { problem, type Issue } from '../core/issue.ts';
import { grinderIssues } from '../grinder/rules.ts';
import { sequenceIssues } from './sequence-rules.ts';
import { text } from '../text/index.ts';
import type { Design, Making } from './schema.ts';

const words = text.document.rules;

const nameIssues = ({ blades }: Design): Issue[] =>
  blades.flatMap(({ name }, i) =>
    blades.findIndex((other) => other.name === name) < i
      ? [problem('same-name', `blades.${i}.name`, words.sameName(name))]
      : [],
  );

const thicknessIssues = ({ thicknesses }: Making['plates']): Issue[] =>
  thicknesses.flatMap((thickness, i) => {
    const before = thicknesses[i - 1];
    return before !== undefined && thickness <= before
      ? [
          problem(
            'not-increasing',
            `making.plates.thicknesses.${i}`,
            words.thicknesses(thickness, before),
          ),
        ]
      : [];
  });

const sheetIssues = ({ nest }: Making['plates']): Issue[] =>
  (['width', 'height'] as const).flatMap((side) =>
    nest[side] > 2 * nest.margin
      ? []
      : [
          problem(
            'no-sheet-left',
            `making.plates.nest.${side}`,
            words.sheet(nest[side], nest.margin),
          ),
        ],
  );

const printIssues = ({ layer, nozzle, play }: Making['prints']): Issue[] => {
  const most = 0.75 * nozzle;
  const order = [
    ['close', 'clearance'],
    ['press', 'close'],
  ] as const;
  return [
    // Slack for decimal fractions such as 0.75 * 0.4.
    ...(layer > most + 1e-9
      ? [problem('layer-too-high', 'making.prints.layer', words.layer(layer, most))]
      : []),
    ...order.flatMap(([tight, loose]) =>
      play[tight] > play[loose]
        ? [
            problem(
              'plays-crossed',
              `making.prints.play.${tight}`,
              words.play(tight, play[tight], loose, play[loose]),
            ),
          ]
        : [],
    ),
  ];
};

const makingIssues = ({ plates, prints }: Making): Issue[] => [
  ...thicknessIssues(plates),
  ...sheetIssues(plates),
  ...printIssues(prints),
];

const referenceIssues = ({ sequence, grinder }: Design): Issue[] =>
  sequence.flatMap((pass, i) =>
    (['belt', 'backing'] as const).flatMap((key) => {
      const known = (key === 'belt' ? grinder.belts : grinder.backings).map(({ id }) => id);
      return known.includes(pass[key])
        ? []
        : [
            problem(
              `unknown-${key}`,
              `sequence.${i}.${key}`,
              words.unknownReference(key, pass[key], known.join(', ')),
            ),
          ];
    }),
  );

/** What holds the fields of a design together, blades and grinder included. */
export const designIssues = (design: Design): Issue[] => [
  ...design.blades.flatMap((blade, i) => bladeIssues(blade, `blades.${i}`)),
  ...grinderIssues(design.grinder, 'grinder'),
  ...nameIssues(design),
  ...makingIssues(design.making),
  ...referenceIssues(design),
  ...sequenceIssues(design),
];
