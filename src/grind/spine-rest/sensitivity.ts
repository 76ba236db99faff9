import { bevelHeight } from '../section/ground.ts';
import { angleFor } from './angle.ts';
import type { Run } from './run.ts';
import { setoffPerDegree } from './settle.ts';
import type { SpineRestPlan } from './types.ts';

/** The error of a setting that makers think in, mm. */
const TENTH = 0.1;

/**
 * What a tenth of a millimetre of setoff (of belt, backing, wear or dial) does to the finished bevel
 * at the bevel place of the first blade: degrees by 0.1 / (ds/da), bevel height as half the
 * difference of a tenth more and a tenth less, both absolute.
 */
export const sensitivityOf = (runs: readonly Run[], lean: number): SpineRestPlan['sensitivity'] =>
  runs
    .filter(({ last }) => last)
    .flatMap(({ side, setoff, cuts: [first] }) => {
      const i = first?.job.work.reference ?? 0;
      const [bar, face] = [first?.job.work.stations[i]?.bar, first?.faces[i]?.own];
      if (bar === undefined || face === undefined) return [];
      const { edge } = face;
      const heightAt = (s: number): number => {
        const angle = angleFor(bar, edge, s, lean);
        return bevelHeight(bar, { edge, angle: angle ?? face.angle });
      };
      const change = (heightAt(setoff - TENTH) - heightAt(setoff + TENTH)) / 2;
      return [
        {
          side,
          degrees: TENTH / setoffPerDegree(bar, face, lean),
          bevelHeight: Math.abs(change),
        },
      ];
    });
