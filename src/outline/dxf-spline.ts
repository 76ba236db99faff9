import type { IEntity } from 'dxf-parser';
import type { Vec2 } from '../geometry/vector.ts';
import type { Spline } from './spline.ts';

/** What is used of the reader's way through the groups of a file: a code and a value each. */
interface Group {
  readonly code: number;
  readonly value: number | string | boolean;
}
interface Groups {
  next(): Group;
  isEOF(): boolean;
}

export interface SplineEntity extends Pick<IEntity, 'type' | 'visible' | 'inPaperSpace'> {
  readonly spline: Spline;
}

/**
 * Reads a SPLINE with its weights (group 41 of the published DXF reference), which the library's
 * own handler leaves out. One that only has points to pass through, for which every program draws
 * a curve of its own, comes out without control points.
 */
export class SplineHandler {
  readonly ForEntityName = 'SPLINE' as const;

  parseEntity(groups: Groups): SplineEntity {
    const points: Vec2[] = [];
    const [knots, weights]: [number[], number[]] = [[], []];
    let [degree, rational, visible, inPaperSpace] = [0, false, true, false];
    for (let group = groups.next(); group.code !== 0 && !groups.isEOF(); group = groups.next()) {
      const value = Number(group.value);
      if (group.code === 10) points.push([value, 0]);
      else if (group.code === 20) points.push([points.pop()?.[0] ?? 0, value]);
      else if (group.code === 40) knots.push(value);
      else if (group.code === 41) weights.push(value);
      else if (group.code === 60) visible = value === 0;
      else if (group.code === 67) inPaperSpace = value !== 0;
      else if (group.code === 70) rational = (value & 4) !== 0;
      else if (group.code === 71) degree = value;
    }
    // A rational one without its weights is not known.
    const known = !rational || weights.length > 0;
    const spline = { points: known ? points : [], knots, degree, weights };
    return { type: 'SPLINE', visible, inPaperSpace, spline };
  }
}
