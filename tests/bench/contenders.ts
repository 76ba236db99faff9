/** The work that libraries do for the same answers, and what it takes them. */
import { meshOf } from '../../src/model/solid.ts';
import type { Part } from '../../src/model/part.ts';
import { CHECK_CHORD } from '../../src/check/chord.ts';
import type { Body } from '../../src/check/distance/index.ts';
import {
  jscadSolid,
  jscadTriangles,
  leastByMinGap,
  leastByTrees,
  manifoldOf,
  manifoldSolid,
  meshOfSolids,
  treed,
} from './libraries.ts';
import { placeAt, placesOf, type Count, type Pair, type Places } from './places.ts';
import { timed } from './timing.ts';
import { valueOf } from './value.ts';

/** Places at which the libraries are timed; the rest is taken to cost the same. */
const SAMPLE = 480;

/** Something of a body that is made once for all its pairs. */
const once = <T>(make: (body: Body) => T): ((body: Body) => T) => {
  const made = new Map<Body['solids'], T>();
  return ({ solids, ...rest }) => {
    const known = made.get(solids) ?? make({ solids, ...rest });
    made.set(solids, known);
    return known;
  };
};

/** An even sample of all places of all pairs. */
const sampleOf = (pairs: readonly Pair[], size: number): readonly (readonly [Pair, Places])[] => {
  const every = Math.max(1, placesOf(pairs, 'dense') / size);
  const sample: (readonly [Pair, Places])[] = [];
  let before = 0;
  for (const pair of pairs) {
    for (let at = every * Math.ceil(before / every); at < before + pair.dense; at += every)
      sample.push([pair, [placeAt(pair, (at - before) / pair.dense)]]);
    before += pair.dense;
  }
  return sample;
};

/**
 * Time for one place, ms. A sample is gone through once before it is timed: cold, three-mesh-bvh took
 * three times as long, and all of the places would have been looked at warm.
 */
export const perPlace = async (
  pairs: readonly Pair[],
  least: (pair: Pair, places: Places) => number | undefined,
  size = SAMPLE,
): Promise<number> => {
  const sample = sampleOf(pairs, size);
  const look = (): number =>
    sample.reduce((done, one) => done + (least(...one) === undefined ? 0 : 1), 0);
  look();
  const { ms, value } = await timed(look);
  return ms / Math.max(1, value);
};

export const trees = once(({ solids }) => {
  const mesh = meshOfSolids(solids);
  return mesh && treed(Float32Array.from(mesh.vertices), mesh.triangles);
});
export const manifolds = once(({ solids }) => {
  const mesh = meshOfSolids(solids);
  return mesh && manifoldOf(mesh);
});
export const byTrees = ({ a, b, within }: Pair, places: Places): number | undefined => {
  const [one, two] = [trees(a), trees(b)];
  return one && two && leastByTrees(one, two, places, within);
};
export const byMinGap = ({ a, b, within }: Pair, places: Places): number | undefined => {
  const [one, two] = [manifolds(a), manifolds(b)];
  return one && two && leastByMinGap(one, two, places, within);
};

/** What libraries took, ms: for the starts of all movements, and for all places. */
export type Took = Readonly<Record<Count, number>>;

export interface Libraries {
  readonly jscad: Took;
  readonly manifold: Took;
  readonly bvh: Took;
}

/** The work of the libraries for one change: parts, then pairs. */
export const librariesFor = async (
  parts: readonly Part[],
  pairs: readonly Pair[],
): Promise<Libraries> => {
  for (const { a, b } of pairs) [a, b].forEach((body) => [trees(body), manifolds(body)]);
  const jscad = await timed(() => {
    for (const { layers } of parts) treed(jscadTriangles(jscadSolid(layers, CHECK_CHORD)));
  });
  const solids = await timed(() => {
    for (const { layers } of parts) manifoldSolid(layers, CHECK_CHORD).getMesh();
  });
  const own = await timed(() => {
    for (const { layers } of parts) {
      const mesh = valueOf(meshOf(layers, { chord: CHECK_CHORD, volumeShare: Infinity }));
      treed(Float32Array.from(mesh.vertices), mesh.triangles);
    }
  });
  const search = await perPlace(pairs, byTrees);
  const gaps = await perPlace(pairs, byMinGap);
  const took = (made: number, each: number): Took => ({
    count: made + each * placesOf(pairs, 'count'),
    dense: made + each * placesOf(pairs, 'dense'),
  });
  return {
    jscad: took(jscad.ms, search),
    manifold: took(solids.ms, gaps),
    bvh: took(own.ms, search),
  };
};
