/**
 * What a maker waits for, on every shipped design, beside the same work done by libraries:
 *
 *     (a) a change of a blade's thickness: solve, parts, exactly the checks of `jig check`, and the
 *         meshes for the screen, until all that passes or fails is proved, which a drag waits for;
 *         `all gaps`: until gaps far beyond their limit are measured as well;
 *     (b) a change of one part of the fixture, and of several, the same way;
 *     (c) 40 pairs at 40 places within 20 mm;
 *     (d) the complete package, to the last byte.
 *
 * The libraries get the solved design for nothing, make the parts that changed by 3D booleans and
 * ask whether the pairs that changed are as near as a drag has to know. They can do so at single
 * places only, where the kernel proves what lies between: at the start of every movement, which
 * misses most, and at every STEP mm of it, which is what a maker would trust. What they would take
 * that know nothing of what changed, and make and ask everything again, stands beside it. Searches are
 * timed on an even sample of places and scaled to all. Interleaved rounds, medians of
 * processor time, ratios in one run.
 *
 *     npx tsx tests/bench/whole.ts [--quick] [--only NAME] [--write]
 */
import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { cpus, loadavg, totalmem } from 'node:os';
import { fileURLToPath } from 'node:url';
import { registry } from '../../jigs/registry.ts';
import { clearance, createWorkspace, type Motion } from '../../src/check/distance/index.ts';
import { createWorkshop } from '../../src/check/workshop.ts';
import type { Design } from '../../src/document/schema.ts';
import { sha256 } from '../../src/cli/package-folder.ts';
import { makePackage } from '../../src/make/package.ts';
import { ofOnePart, ofSeveralParts, shipped, thicker, type Change } from './changes.ts';
import {
  byMinGap,
  byTrees,
  manifolds,
  perPlace,
  trees,
  type Libraries,
  type Took,
} from './contenders.ts';
import { drag, librariesForAll, solidsOf, type Row } from './drag.ts';
import { pairsOf, placeAt, placesOf, type Pair, type Places } from './places.ts';
import { median, timed } from './timing.ts';
import { valueOf } from './value.ts';

const WITHIN = 20;
const PLACES = 40;
const PAIRS = 40;

const has = (name: string): boolean => process.argv.includes(name);
const after = (name: string): string => process.argv[process.argv.indexOf(name) + 1] ?? '';
const rounds = has('--quick') ? 1 : 3;
/** Rounds of (c), which are short: the first ones are slower for everybody. */
const FORTY_ROUNDS = 31;
/** Places of (c) at which minGap is timed each round: it takes longest. */
const GAPS = 24;

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
    times.minGap.push((await perPlace(pairs, byMinGap, GAPS)) * PLACES * pairs.length);
    own.value.forEach((gap, i) => {
      const reference = bvh.value[i] ?? NaN;
      if (Number.isFinite(reference)) over = Math.max(over, gap - reference);
    });
  }
  const [ours, bvh, minGap] = [times.ours, times.bvh, times.minGap].map(median);
  return { pairs: pairs.length, ours: ours ?? NaN, bvh: bvh ?? NaN, minGap: minGap ?? NaN, over };
};

/** Packages made before those that are timed: the first ones are slower for everybody. */
const WARM = 2;

const packaged = async (design: Design): Promise<{ ms: number; passed: number }> => {
  const times: { ms: number; passed: number }[] = [];
  for (let round = 0; round < WARM + rounds; round += 1) {
    const options = { registry, fonts, acceptFailing: false, digest: sha256 };
    times.push(await timed(() => makePackage(design, options)));
  }
  const warm = times.slice(WARM);
  return { ms: median(warm.map((one) => one.ms)), passed: median(warm.map((one) => one.passed)) };
};

const ms = (value: number): string => value.toFixed(value < 10 ? 1 : 0);
const times = (value: number, ours: number): string => `${(value / ours).toFixed(0)} x`;

const thickerBlade: Change = (design, n) => thicker(design, 0.01 * n);

/** How many times longer libraries took: at the starts of movements, at all places, and for all. */
const ratio = ({ count, dense }: Took, all: Took, ours: number): string =>
  `${times(count, ours)} (${times(dense, ours)}) [${times(all.dense, ours)}]`;

const LIBRARIES = ['jscad', 'manifold', 'bvh'] as const;

/** `every`: what libraries take for all parts and all pairs of the design. */
const changeRow = (what: string, row: Row, every: Libraries | undefined): string => {
  const { ours, late, passed, latest, whole, pairs, libraries } = row;
  const asked = placesOf(pairs, 'count');
  const ratios = LIBRARIES.map((key) =>
    libraries && every && asked > 0 ? ratio(libraries[key], every[key], ours) : '',
  );
  const places = asked > 0 ? `${asked} (${placesOf(pairs, 'dense')})` : '0';
  const took = [
    [passed, latest],
    [ours, late],
  ].map((pair) => pair.map(ms).join(' / '));
  return `| ${[what, ...took, ms(whole), places, ...ratios].join(' | ')} |`;
};

const partsIn = ({ anew }: Row): string => (anew === 1 ? '1 part' : `${anew} parts`);

/** All rows of one design, in a process of its own: a page's worker, too, has one design open. */
const rowsOf = async (design: Design, compared: boolean): Promise<string[]> => {
  const a = await drag(design, thickerBlade, compared, rounds);
  const [one, several] = [ofOnePart(design), ofSeveralParts(design)];
  const b = await drag(design, one.make, compared, rounds);
  const more = await drag(design, several.make, compared, rounds);
  const every = compared ? await librariesForAll(design) : undefined;
  const asked = compared ? await forty(design) : undefined;
  const c = asked && asked.pairs > 0 ? asked : undefined;
  const d = await packaged(design);
  return [
    '| row | clock, ms | processor, ms | all gaps, ms | pair-poses | jscad + bvh | manifold + minGap | bvh alone |',
    '| --- | --: | --: | --: | --: | --: | --: | --: |',
    changeRow('(a) blade', a, every),
    changeRow(`(b) ${partsIn(b)}: ${one.name}`, b, every),
    changeRow(`(b) ${partsIn(more)}: ${several.name}`, more, every),
    ...(c
      ? [
          `| (c) ${c.pairs} x ${PLACES} | | ${ms(c.ours)} | | ${c.pairs * PLACES} | | ${times(c.minGap, c.ours)} | ${times(c.bvh, c.ours)} |`,
        ]
      : []),
    `| (d) package | ${ms(d.passed)} | ${ms(d.ms)} | | | | | |`,
    ...(c ? [`\nKernel over three-mesh-bvh in (c): ${c.over.toFixed(4)} mm at most.`] : []),
  ];
};

const HEAD = `# What a change costs

Printed by \`npx tsx tests/bench/whole.ts --write\`; [whole.ts](whole.ts) says what the rows are. Each
design is opened in a process of its own, a drag of its blade is practised as the page does it while
nothing is asked, and then it is dragged for 48 changes. \`clock\` is what a maker waits
for, \`processor\` the time of all threads together, for the engine compiles and collects on the second
core; both are the median and the 95th percentile of the drag, its first changes included. A drag
waits until all checks of \`jig check\` are proved to pass or fail, with gaps told to 0.5 mm beyond what
is asked; \`all gaps\` is the processor's time with every gap measured to 40 mm. The columns of the
libraries are their time as a multiple of the processor's median for the same pairs and the same
nearness, so more is better: at the start of every movement alone, in round brackets at every mm of
it, and in square ones at every mm for all parts and pairs of the design, which is the work of a
program that does not keep what a change leaves as it was.
The kernel proves what lies between as well, its gaps are never over the true gap by more than
0.001 mm, and 0.005 mm of chord error is taken off. Of two movements that are mirror images of each
other, of bodies that are their own, it looks at one; the libraries are asked for both.
The libraries are asked for the first design of each family, and get the surface of every body without
faces inside.
`;

/** The rows of a design, printed by another process. */
const told = (name: string, compared: boolean): string =>
  execFileSync(
    process.execPath,
    [
      ...process.execArgv,
      fileURLToPath(import.meta.url),
      ...['--design', name],
      ...(compared ? ['--compared'] : []),
      ...(has('--quick') ? ['--quick'] : []),
    ],
    { encoding: 'utf8', stdio: ['ignore', 'pipe', 'inherit'] },
  );

const all = (): void => {
  const designs = shipped().filter(({ name }) => !has('--only') || name.includes(after('--only')));
  const load = loadavg()[0]?.toFixed(1) ?? '';
  const lines = [
    `${new Date().toISOString().slice(0, 10)}, ${cpus().length} x ${cpus()[0]?.model ?? ''}, ` +
      `${(totalmem() / 2 ** 30).toFixed(0)} GiB, node ${process.version}, load ${load} at the start; ` +
      `${rounds} rounds.`,
  ];
  console.log(lines[0]);
  const asked = new Set<string>();
  for (const { name, family } of designs) {
    const rows = `\n### ${name} (${family})\n\n${told(name, !asked.has(family))}`;
    asked.add(family);
    console.log(rows);
    lines.push(rows);
  }
  if (has('--write'))
    writeFileSync(new URL('./TABLE.md', import.meta.url), `${HEAD}\n${lines.join('\n')}\n`);
};

const one = shipped().find(({ name }) => has('--design') && name === after('--design'));
if (one === undefined) all();
else console.log((await rowsOf(one.design, has('--compared'))).join('\n'));
