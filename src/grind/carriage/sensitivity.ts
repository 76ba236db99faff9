import { cos } from '../../core/trigonometry.ts';
import { radians } from '../../core/units.ts';
import { bevelHeight } from '../section/ground.ts';
import { fenceDistance, fencePerDegree, forwardAt } from './fence.ts';
import type { CarriageRun } from './run.ts';
import { anglePerTurn } from './screw.ts';
import type { CarriageParameters, CarriagePlan } from './types.ts';

/** The error of a setting that makers think in, mm. */
const TENTH = 0.1;

/**
 * What a tenth of a millimetre of fence (of belt, backing or wear), and one division of the heel
 * screw with the fence untouched, do to the finished bevel at the bevel place of the first blade;
 * heights as half the difference of more and less, all absolute.
 */
export const sensitivityOf = (
  runs: readonly CarriageRun[],
  p: CarriageParameters,
  lean: number,
): CarriagePlan['sensitivity'] =>
  runs
    .filter(({ last, facet }) => last && facet === 0)
    .flatMap(({ side, faceAngle, cornerForward, cuts: [first] }) => {
      const i = first?.job.mount.work.reference ?? 0;
      const [bar, face] = [first?.job.mount.work.stations[i]?.bar, first?.faces[i]];
      if (bar === undefined || face === undefined) return [];
      const { edgeHeight, footRadius } = p;
      const centre = fenceDistance(cornerForward, edgeHeight, footRadius, faceAngle, lean);
      const edgeAt = (fence: number, more: number): number =>
        face.edge +
        forwardAt(centre + fence, edgeHeight, footRadius, faceAngle + more, lean) -
        cornerForward;
      const heightAt = (fence: number, more: number): number =>
        bevelHeight(bar, { edge: edgeAt(fence, more), angle: face.angle + more });
      const half = (fence: number, more: number): number =>
        Math.abs(heightAt(fence, more) - heightAt(-fence, -more)) / 2;
      const division = anglePerTurn(p, faceAngle + lean, p.screwPitch) / p.divisions;
      return [
        {
          side,
          edgePerTenth: (TENTH * cos(radians(lean))) / cos(radians(faceAngle)),
          heightPerTenth: half(TENTH, 0),
          degreesPerDivision: division,
          edgePerDivision: Math.abs(edgeAt(0, division) - edgeAt(0, -division)) / 2,
          heightPerDivision: half(0, division),
          fencePerDegree: fencePerDegree(cornerForward, edgeHeight, footRadius, faceAngle, lean),
        },
      ];
    });
