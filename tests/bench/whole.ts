/**
 * What a maker waits for, on every shipped design, beside the same work done by libraries:
 *
 *     (a) a change of a blade's thickness: solve, parts, exactly the checks of `jig check`, and the
 *         meshes for the screen. `proved`: until all that passes or fails is proved, which a drag
 *         waits for; `all gaps`: until gaps far beyond their limit are measured as well;
 *     (b) a change of one part of the fixture, and of several, the same way;
 *     (c) 40 pairs at 40 places within 20 mm;
 *     (d) the complete package, to the last byte.
 *
 * The libraries get the solved design for nothing, make the parts that changed by 3D booleans and
 * ask whether the pairs that changed are as near as `proved` has to know. They can do so at single
 * places only, where the kernel proves what lies between: at the start of every movement, which
 * misses most, and at every STEP mm of it, which is what a maker would trust. Their searches are
 * timed on an even sample of at most SAMPLE places and scaled to all. Interleaved rounds, medians of
 * processor time, ratios in one run.
 *
 *     npx tsx tests/bench/whole.ts [--quick] [--only NAME] [--write]
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { cpus, loadavg, totalmem } from 'node:os';
import { registry } from '../../jigs/registry.ts';
import {
  clearance,
  createWorkspace,
  type Body,
  type Motion,
} from '../../src/check/distance/index.ts';
import type { Solids } from '../../src/check/set-up.ts';
import { CHECK_CHORD, createWorkshop, type Workshop } from '../../src/check/workshop.ts';
import type { Result } from '../../src/core/result.ts';
import type { Design } from '../../src/document/schema.ts';
import type { Fixture } from '../../src/family/index.ts';
import type { Frame } from '../../src/geometry/frame.ts';
import { sha256 } from '../../src/cli/package-folder.ts';
import { checkFixture, solveDesign } from '../../src/make/engine.ts';
import { makePackage } from '../../src/make/package.ts';
import { meshOf } from '../../src/model/solid.ts';
import type { Part } from '../../src/model/part.ts';
import { sceneOf } from '../../src/worker/scene.ts';
import { median, quantile, timed } from './timing.ts';
import { pairsOf, placeAt, placesOf, type Count, type Pair, type Places } from './places.ts';
import {
  ofOnePart,
  ofSeveralParts,
  shipped,
  thicker,
  type Change,
  type Shipped,
} from './changes.ts';
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

const WITHIN = 20;
const PLACES = 40;
const PAIRS = 40;
/** Places at which the libraries are timed; the rest is taken to cost the same. */
const SAMPLE = 120;

const quick = process.argv.includes('--quick');
const only = process.argv[process.argv.indexOf('--only') + 1] ?? '';
const named = process.argv.includes('--only');
const rounds = quick ? 1 : 3;
/** Changes of a drag, for the median and the 95th percentile. */
const DRAG = quick ? 16 : 24;
/** Rounds of (c), which are short: the first ones are slower for everybody. */
const FORTY_ROUNDS = 5;

const valueOf = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(result.issues.map(({ message }) => message).join('\n'));
  return result.value;
};

/** Everything a change makes the program do before the screen is true again. */
const answered = (design: Design, workshop: Workshop): Fixture => {
  const fixture = valueOf(solveDesign(design, registry, workshop));
  valueOf(checkFixture(fixture, design.making, 'near'));
  valueOf(sceneOf(design, fixture, workshop));
  return fixture;
};

/** Something of a body that is made once for all its pairs. */
const once = <T>(make: (body: Body) => T): ((body: Body) => T) => {
  const made = new Map<Body['solids'], T>();
  return ({ solids, ...rest }) => {
    const known = made.get(solids) ?? make({ solids, ...rest });
    made.set(solids, known);
    return known;
  };
};

/** Time for one place, from an even sample of all places of all pairs, ms. */
const perPlace = async (
  pairs: readonly Pair[],
  least: (pair: Pair, places: Places) => number | undefined,
): Promise<number> => {
  const all = placesOf(pairs, 'dense');
  const every = Math.max(1, all / SAMPLE);
  const sample: { pair: Pair; place: readonly [Frame, Frame] }[] = [];
  let before = 0;
  for (const pair of pairs) {
    for (let at = every * Math.ceil(before / every); at < before + pair.dense; at += every)
      sample.push({ pair, place: placeAt(pair, (at - before) / pair.dense) });
    before += pair.dense;
  }
  let done = 0;
  const { ms } = await timed(() => {
    for (const { pair, place } of sample) if (least(pair, [place]) !== undefined) done += 1;
  });
  return ms / Math.max(1, done);
};

const trees = once(({ solids }) => {
  const mesh = meshOfSolids(solids);
  return mesh && treed(Float32Array.from(mesh.vertices), mesh.triangles);
});
const manifolds = once(({ solids }) => {
  const mesh = meshOfSolids(solids);
  return mesh && manifoldOf(mesh);
});
const byTrees = ({ a, b, within }: Pair, places: Places): number | undefined => {
  const [one, two] = [trees(a), trees(b)];
  return one && two && leastByTrees(one, two, places, within);
};
const byMinGap = ({ a, b, within }: Pair, places: Places): number | undefined => {
  const [one, two] = [manifolds(a), manifolds(b)];
  return one && two && leastByMinGap(one, two, places, within);
};

/** What libraries took, ms: for the starts of all movements, and for all places. */
type Took = Readonly<Record<Count, number>>;

interface Libraries {
  readonly jscad: Took;
  readonly manifold: Took;
  readonly bvh: Took;
}

/** The work of the libraries for one change: parts, then pairs. */
const librariesFor = async (parts: readonly Part[], pairs: readonly Pair[]): Promise<Libraries> => {
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

interface Forty extends Pair {
  readonly places: Places;
}

/** The first pairs with a moving body, each at even places, as all contenders are asked. */
const fortyOf = (pairs: readonly Pair[]): Forty[] =>
  pairs
    .filter(({ count }) => count > 1)
    .slice(0, PAIRS)
    .map((pair): Forty => {
      const places = Array.from({ length: PLACES }, (_, i) => placeAt(pair, i / (PLACES - 1)));
      const stills = (side: 0 | 1): Motion =>
        places.map((place, i) => ({ kind: 'still', label: String(i), pose: place[side] }));
      const { a, b } = pair;
      return {
        a: a.motion ? { ...a, motion: stills(0) } : a,
        b: b.motion ? { ...b, motion: stills(1) } : b,
        within: WITHIN,
        count: PLACES,
        dense: PLACES,
        places,
      };
    });

const kernel = (pairs: readonly Pair[]): number[] => {
  const work = createWorkspace();
  return pairs.map(({ a, b }) => {
    const found = valueOf(clearance(a, b, { within: WITHIN, work }));
    return found.state === 'beyond' ? Infinity : Math.max(0, found.gap);
  });
};

const font = (style: string): Uint8Array =>
  readFileSync(new URL(`../../node_modules/dejavu-fonts-ttf/ttf/${style}.ttf`, import.meta.url));
const fonts = { regular: font('DejaVuSans'), bold: font('DejaVuSans-Bold') };

const solidsOf = (design: Design, workshop: Workshop): Solids => {
  const told = valueOf(solveDesign(design, registry, workshop)).solids?.();
  if (told === undefined) throw new Error('no solids are told');
  return valueOf(told);
};

/** Pairs of which a body differs from every body of the design before. */
const changed = (before: readonly Pair[], after: readonly Pair[], workshop: Workshop): Pair[] => {
  const key = ({ a, b }: Pair): string => `${workshop.nameOf(a) ?? ''} ${workshop.nameOf(b) ?? ''}`;
  const known = new Set(before.map(key));
  return after.filter((pair) => !known.has(key(pair)));
};

interface Row {
  readonly ours: number;
  readonly late: number;
  /** The middle one by the clock. */
  readonly passed: number;
  /** The same until all gaps are told. */
  readonly whole: number;
  /** Parts made anew. */
  readonly anew: number;
  readonly pairs: readonly Pair[];
  /** What the libraries took; none where they were not asked. */
  readonly libraries?: Libraries;
}

const change = async (design: Design, make: Change, compared: boolean): Promise<Row> => {
  const workshop = createWorkshop();
  const before = valueOf(answered(design, workshop).parts());
  const old = new Set(before.map(({ layers }) => JSON.stringify(layers)));
  const pairsBefore = pairsOf(solidsOf(design, workshop));
  const next = make(design, 1);
  const parts = valueOf(answered(next, workshop).parts()).filter(
    ({ layers }) => !old.has(JSON.stringify(layers)),
  );
  const pairs = changed(pairsBefore, pairsOf(solidsOf(next, workshop)), workshop);
  const ours: number[] = [];
  const rest: number[] = [];
  const passed: number[] = [];
  const libraries: Libraries[] = [];
  for (let round = 0; round < rounds; round += 1) {
    if (compared) libraries.push(await librariesFor(parts, pairs));
    for (let i = 0; i < DRAG / rounds; i += 1) {
      const times = 2 + ours.length / DRAG;
      const first = await timed(() => answered(make(design, times), workshop));
      const then = await timed(() => checkFixture(first.value, design.making));
      ours.push(first.ms);
      passed.push(first.passed);
      rest.push(first.ms + then.ms);
    }
  }
  const middle = (of: keyof Libraries): Took => ({
    count: median(libraries.map((one) => one[of].count)),
    dense: median(libraries.map((one) => one[of].dense)),
  });
  return {
    ours: median(ours),
    late: quantile(ours, 0.95),
    passed: median(passed),
    whole: median(rest),
    anew: parts.length,
    pairs,
    ...(compared && {
      libraries: { jscad: middle('jscad'), manifold: middle('manifold'), bvh: middle('bvh') },
    }),
  };
};

interface FortyRow {
  readonly pairs: number;
  readonly ours: number;
  readonly bvh: number;
  readonly minGap: number;
  /** Greatest excess of the kernel's gap over three-mesh-bvh's, mm. */
  readonly over: number;
}

const forty = async (design: Design): Promise<FortyRow> => {
  const pairs = fortyOf(pairsOf(solidsOf(design, createWorkshop())));
  for (const { a, b } of pairs) [a, b].forEach((body) => [trees(body), manifolds(body)]);
  const times: Record<'ours' | 'bvh' | 'minGap', number[]> = { ours: [], bvh: [], minGap: [] };
  let over = -Infinity;
  for (let round = 0; round < FORTY_ROUNDS; round += 1) {
    const own = await timed(() => kernel(pairs));
    const bvh = await timed(() => pairs.map((pair) => byTrees(pair, pair.places) ?? NaN));
    times.ours.push(own.ms);
    times.bvh.push(bvh.ms);
    times.minGap.push((await perPlace(pairs, byMinGap)) * PLACES * pairs.length);
    own.value.forEach((gap, i) => {
      const reference = bvh.value[i] ?? NaN;
      if (Number.isFinite(reference)) over = Math.max(over, gap - reference);
    });
  }
  const [ours, bvh, minGap] = [times.ours, times.bvh, times.minGap].map(median);
  return { pairs: pairs.length, ours: ours ?? NaN, bvh: bvh ?? NaN, minGap: minGap ?? NaN, over };
};

const packaged = async (design: Design): Promise<number> => {
  const times: number[] = [];
  for (let round = 0; round <= rounds; round += 1) {
    const options = { registry, fonts, acceptFailing: false, digest: sha256 };
    times.push((await timed(() => makePackage(design, options))).ms);
  }
  return median(times.slice(1));
};

const ms = (value: number): string => value.toFixed(value < 10 ? 1 : 0);
const times = (value: number, ours: number): string => `${(value / ours).toFixed(0)} x`;

const thickerBlade: Change = (design, n) => thicker(design, 0.01 * n);

/** How many times longer libraries took: at the starts of movements alone, and at all places. */
const ratio = ({ count, dense }: Took, ours: number): string =>
  `${times(count, ours)} (${times(dense, ours)})`;

const changeRow = (what: string, row: Row): string => {
  const { ours, late, passed, whole, pairs, libraries: l } = row;
  const asked = placesOf(pairs, 'count');
  const ratios =
    l && asked > 0 ? [l.jscad, l.manifold, l.bvh].map((of) => ratio(of, ours)) : ['', '', ''];
  const places = asked > 0 ? `${asked} (${placesOf(pairs, 'dense')})` : '0';
  return `| ${[what, ms(ours), ms(late), ms(passed), ms(whole), places, ...ratios].join(' | ')} |`;
};

const partsIn = ({ anew }: Row): string => (anew === 1 ? '1 part' : `${anew} parts`);

const rowsOf = async ({ name, family, design }: Shipped, compared: boolean): Promise<string[]> => {
  const a = await change(design, thickerBlade, compared);
  const [one, several] = [ofOnePart(design), ofSeveralParts(design)];
  const b = await change(design, one.make, compared);
  const more = await change(design, several.make, compared);
  const asked = compared ? await forty(design) : undefined;
  const c = asked && asked.pairs > 0 ? asked : undefined;
  const d = await packaged(design);
  return [
    `\n### ${name} (${family})\n`,
    '| row | proved, ms | 95 % | by the clock | all gaps, ms | pair-poses | jscad + bvh | manifold + minGap | bvh alone |',
    '| --- | --: | --: | --: | --: | --: | --: | --: | --: |',
    changeRow('(a) blade', a),
    changeRow(`(b) ${partsIn(b)}: ${one.name}`, b),
    changeRow(`(b) ${partsIn(more)}: ${several.name}`, more),
    ...(c
      ? [
          `| (c) ${c.pairs} x ${PLACES} | ${ms(c.ours)} | | | | ${c.pairs * PLACES} | | ${times(c.minGap, c.ours)} | ${times(c.bvh, c.ours)} |`,
        ]
      : []),
    `| (d) package | ${ms(d)} | | | | | | | |`,
    ...(c ? [`\nKernel over three-mesh-bvh in (c): ${c.over.toFixed(4)} mm at most.`] : []),
  ];
};

const HEAD = `# What a change costs

Printed by \`npx tsx tests/bench/whole.ts --write\`; [whole.ts](whole.ts) says what the rows are.
Processor time of one run on one machine, all threads together; \`by the clock\` is what a maker
waits at the median, for the engine compiles and collects on the second core. \`proved\` is what a drag waits for: all checks of
\`jig check\`, each proved to pass or fail, with gaps told to 0.5 mm beyond what is asked; \`all gaps\`
is the same with every gap measured to 40 mm. The columns of the libraries are their time as a
multiple of \`proved\` for the same pairs and the same nearness, so more is better: at the start of
every movement alone and, in brackets, at every mm of it. The kernel proves what lies between as well,
its gaps are never over the true gap by more than 0.001 mm, and 0.005 mm of chord error is taken off.
Of two movements that are mirror images of each other, of bodies that are their own, it looks at one;
the libraries are asked for both.
The libraries are asked for the first design of each family.
`;

const designs = shipped().filter(({ name }) => !named || name.includes(only));
const load = loadavg()[0]?.toFixed(1) ?? '';
const lines = [
  `${new Date().toISOString().slice(0, 10)}, ${cpus().length} x ${cpus()[0]?.model ?? ''}, ` +
    `${(totalmem() / 2 ** 30).toFixed(0)} GiB, node ${process.version}, load ${load} at the start; ` +
    `${rounds} rounds, ${DRAG} changes.`,
];
console.log(lines[0]);
const asked = new Set<string>();
for (const one of designs) {
  const rows = await rowsOf(one, !asked.has(one.family));
  asked.add(one.family);
  console.log(rows.join('\n'));
  lines.push(...rows);
}
if (process.argv.includes('--write'))
  writeFileSync(new URL('./TABLE.md', import.meta.url), `${HEAD}\n${lines.join('\n')}\n`);
