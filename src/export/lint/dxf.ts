import type { Issue } from '../../core/issue.ts';
import type { Box2 } from '../../geometry/loop-measure.ts';
import type { Vec2 } from '../../geometry/vector.ts';
import { text } from '../../text/index.ts';
import { contourBox, contourIssues } from './contours.ts';
import { contoursOf, isFlat, readDxf, scaleOf, type DxfContent } from './dxf-reader.ts';
import { lintIssue } from './lint-issue.ts';
import { sheetIssues } from './sheet.ts';

/** What the written file has to agree with. */
export interface DxfExpectation {
  readonly flavour: 'r2000' | 'r12';
  readonly units: 'mm' | 'in';
  readonly layers: readonly string[];
  /** Box of the model's outline, mm. */
  readonly box: Box2;
  /** How many parts the file cuts; one where nothing is said. */
  readonly parts?: number;
  /** The sheet they lie on, where they share one, mm. */
  readonly sheet?: { readonly size: Vec2; readonly gap: number; readonly margin: number };
}

/** Re-read sizes may differ from the model by this much, mm. */
const SIZE_TOLERANCE = 0.001;

const say = text.exporting.lint;

const ALLOWED = {
  r2000: ['LWPOLYLINE', 'CIRCLE'],
  r12: ['LINE', 'ARC', 'CIRCLE'],
} as const;

const headerIssues = (content: DxfContent, { flavour, units }: DxfExpectation): Issue[] => {
  if (flavour === 'r12') return [];
  const want =
    units === 'mm' ? { insunits: '4', measurement: '1' } : { insunits: '1', measurement: '0' };
  const insunits = content.header.get('$INSUNITS') ?? '';
  const measurement = content.header.get('$MEASUREMENT') ?? '';
  return insunits === want.insunits && measurement === want.measurement
    ? []
    : [lintIssue('dxf-units', say.units(insunits, measurement, units))];
};

const entityIssues = (content: DxfContent, { flavour, layers }: DxfExpectation): Issue[] =>
  content.entities.flatMap((entity) => {
    const issues: Issue[] = [];
    const allowed: readonly string[] = ALLOWED[flavour];
    const engraved = entity.layer !== 'CUT' && entity.type === 'LINE';
    if (!allowed.includes(entity.type) && !engraved)
      issues.push(lintIssue('dxf-entity', say.entity(entity.type, allowed)));
    if (!layers.includes(entity.layer))
      issues.push(lintIssue('dxf-layer', say.layer(entity.layer, layers)));
    if (!isFlat(entity)) issues.push(lintIssue('dxf-elevation', say.elevation(entity.type)));
    if (
      entity.tags.some(
        ([code, value]) => code >= 10 && code < 60 && !Number.isFinite(Number(value)),
      )
    )
      issues.push(lintIssue('dxf-number', say.number(entity.type)));
    return issues;
  });

/**
 * Reads a cut file back and names everything in it that would make a shop refuse or spoil the
 * part: units, layers, entity types, elevations, contours, and a size that is not the model's.
 */
export const lintDxf = (dxf: string, expected: DxfExpectation): Issue[] => {
  const content = readDxf(dxf);
  const early = [...headerIssues(content, expected), ...entityIssues(content, expected)];
  const cut = content.entities.filter(({ layer }) => layer === 'CUT');
  const contours = contoursOf(cut, scaleOf(content, expected.units));
  if (contours.length === 0) return [...early, lintIssue('dxf-empty', say.empty)];
  const box = contourBox(contours);
  const off = Math.max(
    ...([0, 1] as const).flatMap((axis) => [
      Math.abs(box.min[axis] - expected.box.min[axis]),
      Math.abs(box.max[axis] - expected.box.max[axis]),
    ]),
  );
  const size = off <= SIZE_TOLERANCE ? [] : [lintIssue('dxf-size', say.size(off, SIZE_TOLERANCE))];
  const { parts = 1, sheet } = expected;
  const lain = sheet === undefined ? [] : sheetIssues(contours, sheet);
  return [...early, ...contourIssues(contours, parts), ...lain, ...size];
};
