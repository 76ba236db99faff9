import { edgeOffsetsOn } from '../blade/bevel.ts';
import { placeOn } from '../blade/place.ts';
import type { Side } from '../blade/schema.ts';
import type { VirtualJob } from './job.ts';
import { along, edgeOf, finishedLine, lineHeight } from './measure/line.ts';
import { surelyReached } from './measure/report.ts';
import type { VirtualGrind } from './types.ts';

/** One place of a grind line as the section model has it and as it stands, mm. */
export interface ModelPlace {
  readonly u: number;
  /** Bevel height of the section model, of the blade as ground, and what the model is off by. */
  readonly model: number;
  readonly ground: number;
  readonly off: number;
  /** Metal the section model leaves over the stop at the edge on this side, and what stands. */
  readonly modelStanding: number;
  readonly standing: number;
  /** Whether the place has a say in the plan's settings and the belt surely comes to it. */
  readonly steers: boolean;
}

export interface ModelLine {
  readonly side: Side;
  readonly places: readonly ModelPlace[];
  /** The place that counts at which the section model is most off. */
  readonly worst: ModelPlace | undefined;
}

/**
 * Where the section model of a plan is off, place by place: it settles every section on its own,
 * the virtual grind the whole blade.
 */
export const compareWithModel = (
  grind: VirtualGrind,
  { model, edge: wanted, seat }: VirtualJob,
): ModelLine[] => {
  const { shape, finished, passes } = grind;
  return model
    .filter(({ side }) => passes.some(({ pass }) => pass.side === side))
    .map(({ side, places }): ModelLine => {
      const { stroke } = passes.filter(({ pass }) => pass.side === side).at(-1)?.pass ?? {};
      const reached = (u: number): boolean => stroke !== undefined && surelyReached(stroke, u);
      const [line, edge] = [finishedLine(grind, side), edgeOf(finished, side)];
      const compared = places.map(({ u, bevelHeight, leftStanding, steers }): ModelPlace => {
        const at = placeOn(shape, u, seat);
        const ground = lineHeight(finished, line, at);
        return {
          u,
          model: bevelHeight,
          ground,
          off: ground - bevelHeight,
          modelStanding: leftStanding,
          standing:
            along(finished, edge, at.edge[0]) - edgeOffsetsOn(shape, at.edge[0], wanted)[side],
          steers: steers && reached(at.edge[0]),
        };
      });
      const steering = compared.filter((place) => place.steers);
      const worst = steering.reduce<ModelPlace | undefined>(
        (most, place) => (most && Math.abs(most.off) >= Math.abs(place.off) ? most : place),
        undefined,
      );
      return { side, places: compared, worst };
    });
};
