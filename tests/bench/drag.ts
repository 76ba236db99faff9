/** A drag of one number of a design, and the same work done by libraries. */
import { registry } from '../../jigs/registry.ts';
import type { Solids } from '../../src/check/set-up.ts';
import { createWorkshop, type Workshop } from '../../src/check/workshop.ts';
import type { Design } from '../../src/document/schema.ts';
import type { Fixture } from '../../src/family/index.ts';
import { checkFixture, solveDesign } from '../../src/make/engine.ts';
import { practise } from '../../src/worker/practice.ts';
import { sceneOf } from '../../src/worker/scene.ts';
import type { Change } from './changes.ts';
import { librariesFor, type Libraries, type Took } from './contenders.ts';
import { pairsOf, type Pair } from './places.ts';
import { median, quantile, timed, type Timed } from './timing.ts';
import { valueOf } from './value.ts';

/** Everything a change makes the program do before the screen is true again. */
const answered = (design: Design, workshop: Workshop): Fixture => {
  const fixture = valueOf(solveDesign(design, registry, workshop));
  valueOf(checkFixture(fixture, design.making, 'near'));
  valueOf(sceneOf(design, fixture, workshop));
  return fixture;
};

/** The bodies that a design's checks ask about. */
export const solidsOf = (design: Design, workshop: Workshop): Solids => {
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

/** What libraries take for all parts and all pairs of a design. */
export const librariesForAll = (design: Design): Promise<Libraries> => {
  const workshop = createWorkshop();
  const fixture = valueOf(solveDesign(design, registry, workshop));
  return librariesFor(valueOf(fixture.parts()), pairsOf(solidsOf(design, workshop)));
};

export interface Row {
  /** Processor time of a change, the middle one and the 95th of a hundred, ms. */
  readonly ours: number;
  readonly late: number;
  /** The same two by the clock. */
  readonly passed: number;
  readonly latest: number;
  /** Processor time until all gaps are told. */
  readonly whole: number;
  /** Parts made anew. */
  readonly anew: number;
  readonly pairs: readonly Pair[];
  /** What the libraries took; none where they were not asked. */
  readonly libraries?: Libraries;
}

/** Changes of a drag of some two seconds, and those after which all gaps are measured as well. */
const DRAG = 48;
const RESTS = 6;

/**
 * A design is opened and a drag practised, as the page does it, and then dragged by one of its numbers.
 * What libraries take for the same is measured in between, where they are asked.
 */
export const drag = async (
  design: Design,
  make: Change,
  compared: boolean,
  rounds: number,
): Promise<Row> => {
  const workshop = createWorkshop();
  const opened = answered(design, workshop);
  valueOf(checkFixture(opened, design.making));
  await practise(
    design,
    (one, own) => solveDesign(one, registry, own),
    () => false,
  );
  const old = new Set(valueOf(opened.parts()).map(({ layers }) => JSON.stringify(layers)));
  const pairsBefore = pairsOf(solidsOf(design, workshop));
  const next = make(design, 1);
  const parts = valueOf(answered(next, workshop).parts()).filter(
    ({ layers }) => !old.has(JSON.stringify(layers)),
  );
  const pairs = changed(pairsBefore, pairsOf(solidsOf(next, workshop)), workshop);
  const ours: Timed<Fixture>[] = [];
  const libraries: Libraries[] = [];
  for (let round = 0; round < rounds; round += 1) {
    if (compared) libraries.push(await librariesFor(parts, pairs));
    for (let i = 0; i < DRAG / rounds; i += 1) {
      const times = 2 + ours.length / DRAG;
      ours.push(await timed(() => answered(make(design, times), workshop)));
    }
  }
  const rest: number[] = [];
  for (let i = 0; i < RESTS; i += 1) {
    const first = await timed(() => answered(make(design, 3 + i / RESTS), workshop));
    const then = await timed(() => checkFixture(first.value, design.making));
    rest.push(first.ms + then.ms);
  }
  const middle = (of: keyof Libraries): Took => ({
    count: median(libraries.map((one) => one[of].count)),
    dense: median(libraries.map((one) => one[of].dense)),
  });
  const [spent, clock] = [ours.map(({ ms }) => ms), ours.map(({ passed }) => passed)];
  return {
    ours: median(spent),
    late: quantile(spent, 0.95),
    passed: median(clock),
    latest: quantile(clock, 0.95),
    whole: median(rest),
    anew: parts.length,
    pairs,
    ...(compared && {
      libraries: { jscad: middle('jscad'), manifold: middle('manifold'), bvh: middle('bvh') },
    }),
  };
};
