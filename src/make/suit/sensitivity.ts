import { atan2, cos } from '../../core/trigonometry.ts';
import { bevelPlace } from '../../blade/bevel.ts';
import { placeOn } from '../../blade/place.ts';
import { degrees, radians } from '../../core/units.ts';
import {
  along,
  edgeOf,
  finishedLine,
  grindVirtually,
  lineHeight,
  type VirtualJob,
  type VirtualPass,
} from '../../virtual/index.ts';

/** What 0.1 mm more of the last setting changes at the bevel place. */
export interface Sensitivity {
  /** Angle of the bevel, degrees; null for a hollow, which has none. */
  readonly degrees: number | null;
  /** Height of the grind line, mm. */
  readonly bevelHeight: number;
}

const TENTH = 0.1;
/** Grid on which the two cuts are compared, mm and rows: both err alike. */
const GRID = { step: 5, rows: 120 } as const;

/** The pass with its setting a tenth of a millimetre further: step or lip opened, fence drawn back. */
const shifted = (pass: VirtualPass, share: number): VirtualPass => {
  const { holding, surface, edge } = pass;
  switch (holding.kind) {
    case 'spine-rest':
      return { ...pass, holding: { ...holding, setoff: holding.setoff + TENTH } };
    case 'edge-rest': {
      const body = { ...holding.body, lip: holding.body.lip + TENTH };
      return { ...pass, holding: { ...holding, body } };
    }
    case 'carriage': {
      // The fence runs along the base: it moves the face by the cosine of its lean, and across the
      // blade, where edges are measured, by the cosine of the bevel more.
      const across = cos(radians(surface.lean)) / cos(radians(holding.angle));
      return { ...pass, edge: edge + (TENTH * across) / share };
    }
  }
};

/**
 * How a setting that is off by 0.1 mm shows on the bevel, from two virtual cuts of the last pass.
 * None for a job without passes.
 */
export const sensitivityOf = (job: VirtualJob): Sensitivity | undefined => {
  const pass = job.passes.at(-1);
  if (pass === undefined) return undefined;
  const { side, holding } = pass;
  const isHollow = holding.kind === 'edge-rest';
  const { blade } = job;
  const cut = (one: VirtualPass): { bevel: number; angle: number } => {
    const start = isHollow ? job.start : ({ kind: 'bar' } as const);
    const grind = grindVirtually({ blade, passes: [one], start, resolution: GRID });
    const at = placeOn(grind.shape, Math.max(bevelPlace(blade), one.stroke.from), job.seat);
    const bevel = lineHeight(grind.finished, finishedLine(grind, side), at);
    const edge = along(grind.finished, edgeOf(grind.finished, side), at.edge[0]);
    return { bevel, angle: degrees(atan2(at.thickness / 2 - edge, bevel)) };
  };
  const { shareLeft } = blade.edge;
  const both = blade.bevels.left.kind !== 'none' && blade.bevels.right.kind !== 'none';
  const share = both ? (side === 'left' ? shareLeft : 1 - shareLeft) : 1;
  const [before, after] = [cut(pass), cut(shifted(pass, share))];
  return {
    degrees: isHollow ? null : after.angle - before.angle,
    bevelHeight: after.bevel - before.bevel,
  };
};
