import { placeOn } from '../blade/place.ts';
import type { Side } from '../blade/schema.ts';
import type { SpineRestPlan } from '../grind/spine-rest/types.ts';
import { along, edgeOf, grindLine, lineHeight } from './measure/line.ts';
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
  /** Whether the place has a say in the plan's setoff. */
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
 * the virtual grind the whole blade. `seat` is the width of the nose along the stroke.
 */
export const compareWithPlan = (
  { shape, finished, passes }: VirtualGrind,
  plan: SpineRestPlan,
  seat: number,
): ModelLine[] =>
  plan.lines
    .filter(({ blade }) => blade === shape.blade.name)
    .map(({ side, places }): ModelLine => {
      const [line, edge] = [grindLine(finished, side), edgeOf(finished, side)];
      const setting = plan.settings.filter((s) => s.side === side).at(-1);
      const own = setting?.blades.find(({ blade }) => blade === shape.blade.name)?.places ?? [];
      const compared = places.map((place): ModelPlace => {
        const at = placeOn(shape, place.u, seat);
        const ground = lineHeight(finished, line, at);
        const stop = own.find(({ u }) => u === place.u)?.edge ?? 0;
        return {
          u: place.u,
          model: place.bevelHeight,
          ground,
          off: ground - place.bevelHeight,
          modelStanding: place.leftStanding,
          standing: along(finished, edge, at.edge[0]) - stop,
          steers: place.steers,
        };
      });
      const steering = compared.filter(({ steers }) => steers);
      const worst = steering.reduce<ModelPlace | undefined>(
        (most, place) => (most && Math.abs(most.off) >= Math.abs(place.off) ? most : place),
        undefined,
      );
      return { side, places: compared, worst };
    })
    .filter(({ side }) => passes.some(({ pass }) => pass.side === side));
