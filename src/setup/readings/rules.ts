import { problem, type Issue } from '../../core/issue.ts';
import { text } from '../../text/index.ts';
import type { FlatReadings, HollowReadings, Readings } from './schema.ts';

const words = text.setup.readings.rules;

const labelIssues = (labels: readonly string[]): Issue[] =>
  labels.flatMap((label, i) =>
    labels.indexOf(label) < i
      ? [problem('same-label', `places.${i}.label`, words.sameLabel(label))]
      : [],
  );

const flatIssues = ({ piece, edges, places }: FlatReadings): Issue[] => {
  const { thickness, height, spineRadius } = piece;
  const half = thickness.value / 2;
  // Across the edge the whole other half of the stock is still there.
  const [from, to] = edges === 'across' ? [half, thickness.value] : [-half, half];
  const most = Math.min(half, height.value);
  return [
    ...(spineRadius > most
      ? [problem('radius-too-large', 'piece.spineRadius', words.spineRadius(spineRadius, most))]
      : []),
    ...places.flatMap(({ edge, bevelHeight }, i) => [
      ...(edge.value < from || edge.value >= to
        ? [problem('edge-off-piece', `places.${i}.edge`, words.edge(edge.value, from, to, edges))]
        : []),
      ...(bevelHeight && bevelHeight.value >= height.value
        ? [
            problem(
              'bevel-off-piece',
              `places.${i}.bevelHeight`,
              words.bevelHeight(bevelHeight.value, height.value),
            ),
          ]
        : []),
    ]),
  ];
};

const hollowIssues = ({ places }: HollowReadings): Issue[] =>
  places.flatMap(({ lower, upper }, i) =>
    lower && upper && lower.value >= upper.value
      ? [problem('limits-crossed', `places.${i}.lower`, words.limits(lower.value, upper.value))]
      : [],
  );

/** What holds the fields of a readings file together. */
export const readingsIssues = (readings: Readings): Issue[] => [
  ...labelIssues(readings.places.map(({ label }) => label)),
  ...(readings.kind === 'flat' ? flatIssues(readings) : hollowIssues(readings)),
];
