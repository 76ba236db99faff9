import { loweredTo, mendedBy, problem, type Issue } from '../core/issue.ts';
import { atan, atan2 } from '../core/trigonometry.ts';
import { degrees, gridDown, toHundredth } from '../core/units.ts';
import { text } from '../text/index.ts';
import type { Vec2 } from '../geometry/vector.ts';
import { bladeParameters as p } from './parameters.ts';
import type { Blade, Outline } from './schema.ts';
import { shapeOf } from './shape.ts';

type Dimensions = Extract<Outline, { kind: 'dimensions' }>;
type Curves = Extract<Outline, { kind: 'curves' }>;

const words = text.blade.rules;
const labels = text.blade.parameters.outline;

/** Most an arc of the outline may turn, degrees: beyond it the curve nears the vertical. */
const MOST_TURN = 80;
/** Earlier starts of an arc that are tried where it turns by too much. */
const START_STEPS = 99;
/** Closest spacing of outline points, mm. */
const POINT_SPACING = 0.1;
/** Least height between spine and edge away from the tip, mm, and how far off the tip it holds. */
const LEAST_HEIGHT = 0.05;
const TIP_ZONE = 0.02;
/** Places at which the height is looked at. */
const PLACES = 200;

/** Degrees by which an arc turns that leaves a line of slope m and reaches (du, dv) from there. */
const turn = (m: number, du: number, dv: number): number => 2 * degrees(atan2(dv, du) - atan(m));

/** What the arcs to the tip turn by, belly and spine, degrees. */
const turnsOf = (o: Dimensions) => {
  const slope = o.bellyStart > 0 ? (o.bellyHeight - o.heelHeight) / o.bellyStart : 0;
  const run = o.length - o.bellyStart;
  return {
    depth: o.bellyHeight + slope * run,
    bellyStart: Math.abs(turn(slope, run, o.tipDrop - o.bellyHeight)),
    spineDropStart: turn(0, o.length - o.spineDropStart, o.tipDrop),
  };
};

/** The issue with the nearest start before the one given from which the arc does not turn too much. */
const startedEarlier = (
  issue: Issue,
  o: Dimensions,
  key: 'bellyStart' | 'spineDropStart',
): Issue => {
  const starts = Array.from({ length: START_STEPS }, (_, i) =>
    gridDown((Math.min(o[key], o.length) * (START_STEPS - i)) / (START_STEPS + 1)),
  );
  const start = starts.find((tried) => turnsOf({ ...o, [key]: tried })[key] <= MOST_TURN);
  return start === undefined ? issue : mendedBy(issue, start);
};

const dimensionIssues = (o: Dimensions, at: string): Issue[] => {
  const late = (['bellyStart', 'spineDropStart'] as const).filter((key) => o[key] >= o.length);
  if (late.length > 0)
    return late.map((key) => {
      const why = words.beforeTip(labels[key].label, o[key], o.length);
      return startedEarlier(problem('beyond-tip', `${at}.${key}`, why), o, key);
    });
  const { depth, ...turns } = turnsOf(o);
  const most = toHundredth(o.length / 8);
  const steep = (key: 'bellyStart' | 'spineDropStart', code: string, what: string): Issue[] => {
    if (turns[key] <= MOST_TURN) return [];
    const why = words.turn(what, toHundredth(turns[key]), MOST_TURN);
    return [startedEarlier(problem(code, `${at}.${key}`, why), o, key)];
  };
  return [
    ...(o.tipDrop > depth + 1e-9
      ? [
          loweredTo(
            problem('tip-outside', `${at}.tipDrop`, words.tipInside(o.tipDrop, toHundredth(depth))),
            depth,
          ),
        ]
      : []),
    ...steep('bellyStart', 'steep-belly', words.bellyTurn),
    ...steep('spineDropStart', 'steep-spine', words.spineTurn),
    ...(Math.abs(o.spineSagitta) > most
      ? [
          mendedBy(
            problem('spine-curve', `${at}.spineSagitta`, words.sagitta(o.spineSagitta, most)),
            Math.sign(o.spineSagitta) * gridDown(most),
          ),
        ]
      : []),
  ];
};

const listIssues = (points: Curves['spine'], label: string, at: string): Issue[] => {
  const issues = points.flatMap(([u], i) => {
    const before = points[i - 1];
    return before !== undefined && u - before[0] < POINT_SPACING
      ? [
          problem(
            'not-increasing',
            `${at}.${i}`,
            words.increasing(label, i, u, before[0], POINT_SPACING),
          ),
        ]
      : [];
  });
  const first = points[0]?.[0] ?? 0;
  if (first !== 0) issues.push(problem('curve-start', at, words.curveStart(label, first)));
  return issues;
};

const curveIssues = ({ spine, edge }: Curves, at: string): Issue[] => {
  const issues = [
    ...listIssues(spine, labels.spine.label, `${at}.spine`),
    ...listIssues(edge, labels.edge.label, `${at}.edge`),
  ];
  const last = (points: Curves['spine']): Vec2 => points.at(-1) ?? [0, 0];
  const [tip, end] = [last(spine), last(edge)];
  if (tip[0] !== end[0] || tip[1] !== end[1])
    issues.push(
      problem(
        'open-tip',
        `${at}.edge`,
        words.curveTip(`(${tip.join(', ')})`, `(${end.join(', ')})`),
      ),
    );
  const { min, max } = p.outline.length;
  if (tip[0] < min || tip[0] > max)
    issues.push(problem('out-of-range', `${at}.spine`, words.curveLength(tip[0], min, max)));
  return issues;
};

/** Whether spine and edge meet anywhere but at the tip. */
const heightIssues = (blade: Blade, at: string): Issue[] => {
  const { spine, edge, length } = shapeOf(blade);
  const from = -blade.ricasso;
  const to = length * (1 - TIP_ZONE);
  for (let i = 0; i <= PLACES; i += 1) {
    const u = from + ((to - from) * i) / PLACES;
    const height = edge.value(u) - spine.value(u);
    if (!(height >= LEAST_HEIGHT))
      return [
        problem('no-height', at, words.noHeight(toHundredth(u), toHundredth(height), LEAST_HEIGHT)),
      ];
  }
  return [];
};

/** What holds the outline of one blade together; `at` is the path of the blade. */
export const outlineIssues = (blade: Blade, at: string): Issue[] => {
  const path = `${at}.outline`;
  const { outline } = blade;
  const issues =
    outline.kind === 'dimensions' ? dimensionIssues(outline, path) : curveIssues(outline, path);
  return issues.length > 0 ? issues : heightIssues(blade, path);
};
