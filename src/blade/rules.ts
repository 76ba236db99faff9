import { loweredTo, mendedBy, problem, type Issue } from '../core/issue.ts';
import { gridDown, toHundredth } from '../core/units.ts';
import { text } from '../text/index.ts';
import { bevelPlace, edgeOffsetsOn, wantedOn } from './bevel.ts';
import { bladeParameters as p } from './parameters.ts';
import { outlineIssues } from './outline-rules.ts';
import { placeOn } from './place.ts';
import type { Blade, Side } from './schema.ts';
import { shapeOf, type Shape } from './shape.ts';

const words = text.blade.rules;
const labels = text.blade.parameters;

/** Least common height of blade and tang, mm. */
const TANG_OVERLAP = 2;

/** How uneven a bar is taken to be, mm: common practice, no source. */
const UNEVEN = 0.1;

const thicknessIssues = (blade: Blade, length: number, at: string): Issue[] =>
  blade.thickness.flatMap(({ u }, i) => {
    const before = blade.thickness[i - 1];
    const path = `${at}.thickness.${i}.u`;
    if (u < -blade.ricasso || u > length)
      return [
        mendedBy(
          problem('place-off-blade', path, words.stationPlace(u, -blade.ricasso, length)),
          Math.min(Math.max(u, -blade.ricasso), gridDown(length)),
        ),
      ];
    return before !== undefined && u - before.u < 1
      ? [
          problem(
            'not-increasing',
            path,
            words.increasing(labels.thickness.u.label, i, u, before.u, 1),
          ),
        ]
      : [];
  });

const edgeIssues = ({ edge, thickness, spineRadius }: Blade, at: string): Issue[] => {
  const thinnest = Math.min(...thickness.map((station) => station.t));
  const issues: Issue[] = [];
  if (edge.asHeatTreated > thinnest)
    issues.push(
      mendedBy(
        problem(
          'edge-thicker-than-spine',
          `${at}.edge.asHeatTreated`,
          words.edgeThickerThanSpine(edge.asHeatTreated, thinnest),
        ),
        gridDown(thinnest),
      ),
    );
  if (edge.wanted > edge.asHeatTreated)
    issues.push(
      mendedBy(
        problem(
          'edge-grows',
          `${at}.edge.wanted`,
          words.edgeGrows(edge.wanted, edge.asHeatTreated),
        ),
        edge.asHeatTreated,
      ),
    );
  if (spineRadius > 0.45 * thinnest)
    issues.push(
      mendedBy(
        problem(
          'spine-radius',
          `${at}.spineRadius`,
          words.spineRadius(spineRadius, toHundredth(0.45 * thinnest)),
        ),
        gridDown(0.45 * thinnest),
      ),
    );
  return issues;
};

const sideIssues = (shape: Shape, side: Side, at: string): Issue[] => {
  const { blade } = shape;
  const bevel = blade.bevels[side];
  const path = `${at}.bevels.${side}`;
  if (bevel.kind === 'none') return [];
  const { u, height, thickness } = placeOn(shape, bevelPlace(blade));
  const stated = { height: 'height', hollow: 'centre', angle: undefined, full: undefined } as const;
  const key = stated[bevel.kind];
  const value = bevel.kind === 'height' ? bevel.height : bevel.kind === 'hollow' ? bevel.centre : 0;
  if (key !== undefined && value > height)
    return [
      mendedBy(
        problem(
          'bevel-higher-than-blade',
          `${path}.${key}`,
          words.bevelTooHigh(labels.bevels[key].label, value, toHundredth(height), toHundredth(u)),
        ),
        gridDown(height),
      ),
    ];
  if (bevel.kind === 'hollow')
    return bevel.depth < thickness / 2
      ? []
      : [
          problem(
            'hollow-too-deep',
            `${path}.depth`,
            words.hollowDepth(bevel.depth, thickness / 2),
          ),
        ];
  const offset = edgeOffsetsOn(shape, u, blade.edge.wanted)[side];
  if (offset >= thickness / 2)
    return [
      problem(
        'nothing-to-grind',
        path,
        words.noRise(toHundredth(offset), toHundredth(thickness / 2)),
      ),
    ];
  const wanted = wantedOn(shape, side);
  const { min, max } = p.bevels.angle;
  if (wanted && (wanted.angle < min || wanted.angle > max))
    return [problem('bevel-angle', path, words.bevelAngle(toHundredth(wanted.angle), min, max))];
  const least = p.bevels.height.min;
  return wanted && wanted.bevelHeight < least
    ? [problem('bevel-height', path, words.bevelHeight(toHundredth(wanted.bevelHeight), least))]
    : [];
};

const tangIssues = (shape: Shape, at: string): Issue[] => {
  const { ricasso, tang } = shape.blade;
  const [top, bottom] = [shape.spine.value(-ricasso), shape.edge.value(-ricasso)];
  const common = Math.min(bottom, tang.drop + tang.height) - Math.max(top, tang.drop);
  return common >= TANG_OVERLAP
    ? []
    : [
        problem(
          'tang-apart',
          `${at}.tang.drop`,
          words.tangApart(tang.drop, tang.drop + tang.height, toHundredth(bottom), TANG_OVERLAP),
        ),
      ];
};

/** A bare tang that is thicker than the bar that blade and tang are of: one of them was changed alone. */
const thickTangIssues = ({ blade, thickness }: Shape, at: string): Issue[] => {
  const { kind, thickness: tang } = blade.tang;
  const bar = thickness.value(-blade.ricasso);
  if (kind !== 'tang' || tang <= bar + UNEVEN) return [];
  const why = words.tangThick(tang, toHundredth(bar));
  return [loweredTo(problem('tang-thick', `${at}.tang.thickness`, why, 'warning'), bar)];
};

/** What holds the fields of one blade together; `at` is its path in the document. */
export const bladeIssues = (blade: Blade, at: string): Issue[] => {
  const outline = outlineIssues(blade, at);
  if (outline.length > 0) return outline;
  const shape = shapeOf(blade);
  const stations = thicknessIssues(blade, shape.length, at);
  if (stations.length > 0) return stations;
  const { left, right } = blade.bevels;
  return [
    ...edgeIssues(blade, at),
    ...(left.kind === 'none' && right.kind === 'none'
      ? [problem('nothing-ground', `${at}.bevels`, words.nothingGround())]
      : []),
    ...sideIssues(shape, 'left', at),
    ...sideIssues(shape, 'right', at),
    ...tangIssues(shape, at),
    ...thickTangIssues(shape, at),
  ];
};
