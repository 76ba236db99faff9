// One job of the soak in a process of its own: a crash or a hang ends the job, not the soak.
// Arguments: what ("family", "drag", "format" or "kill"), its name, seed, count, packages. Prints one JSON line.
import { registry as registered } from '../../jigs/registry.ts';
import { checkDesign } from '../../src/document/open.ts';
import { saveDesign } from '../../src/document/save.ts';
import type { Design } from '../../src/document/schema.ts';
import { seeded } from '../../src/setup/random.ts';
import { gaugeDesign, gaugeRegistry } from '../robust/gauge.ts';
import { randomDesign } from '../robust/random-design.ts';
import { tryDesign, tryPackage } from '../robust/try-design.ts';
import { randomDrag, tryDrag } from '../robust/try-drag.ts';
import { workedDesigns } from '../robust/worked.ts';
import { wholeFiles } from './formats.ts';
import { killedMakes } from './kill.ts';
import { mutated } from './mutate.ts';
import type { Tally } from './tally.ts';
import { tryFile } from './try-file.ts';

const [what = '', name = '', seed = '1', count = '0', packages = '0'] = process.argv.slice(2);
const random = seeded(Number(seed));
const ends: Record<string, number> = {};
const codes: Record<string, number> = {};
const defects: Tally['defects'][number][] = [];
let slowest = 0;

const counted = (into: Record<string, number>, key: string): void => {
  into[key] = (into[key] ?? 0) + 1;
};

/** What made a defect, so that it can be made again: enough of them to see, not all. */
const keep = (at: number, found: readonly string[], sample: string): void => {
  if (defects.length < 20) defects.push({ at, found: [...found], sample });
};

const isTemplate = name === 'bevel-gauge';
const registry = isTemplate ? gaugeRegistry : registered;

/** Designs that random ones of the family come from. */
const workedOnes = (): Design[] => (isTemplate ? [gaugeDesign()] : workedDesigns(name, registry));

const family = async (): Promise<void> => {
  const worked = workedOnes();
  let left = Number(packages);
  for (let i = 0; i < Number(count); i += 1) {
    const { design } = randomDesign(random, worked, registry);
    const before = performance.now();
    const outcome = tryDesign(design, registry);
    slowest = Math.max(slowest, performance.now() - before);
    counted(ends, outcome.end);
    for (const code of new Set(outcome.codes)) counted(codes, code);
    if (outcome.end === 'defect') keep(i, outcome.defects, saveDesign(design));
    const sound = checkDesign(design, registry);
    if (outcome.end !== 'built' || left === 0 || !sound.ok) continue;
    left -= 1;
    const whole = await tryPackage(sound.value, registry);
    counted(ends, whole.end === 'defect' ? 'package with defects' : 'whole package');
    if (whole.end === 'defect') keep(i, whole.defects, saveDesign(design));
  }
};

/** Steps of one drag: enough to come back to what was kept. */
const STEPS = 5;

const drag = (): void => {
  const worked = workedOnes();
  for (let i = 0; i < Number(count); i += STEPS) {
    const designs = randomDrag(random, worked, registry, STEPS);
    const before = performance.now();
    const wrong = tryDrag(designs, registry);
    slowest = Math.max(slowest, performance.now() - before);
    ends.held = (ends.held ?? 0) + designs.length - wrong.length;
    for (const { found, sample } of wrong) {
      counted(ends, 'defect');
      keep(i, found, sample);
    }
  }
};

const format = async (): Promise<void> => {
  const whole = (await wholeFiles())[name];
  if (!whole) throw new Error(`no format ${name}`);
  const untouched = tryFile(name, whole);
  if (untouched.end !== 'opened') keep(-1, ['the whole file does not open'], '');
  for (let i = 0; i < Number(count); i += 1) {
    const bytes = mutated(random, whole);
    const { end, ms, defects: found } = tryFile(name, bytes);
    slowest = Math.max(slowest, ms);
    counted(ends, end);
    if (end === 'defect') keep(i, found, Buffer.from(bytes).toString('base64').slice(0, 4000));
  }
};

/** Package writes that are killed. */
const kill = async (): Promise<void> => {
  for (const { end, found } of await killedMakes(random, Number(count))) {
    counted(ends, end);
    if (found.length > 0) keep(0, found, '');
  }
};

const jobs: Record<string, () => Promise<void> | void> = { family, drag, format, kill };
await jobs[what]?.();
const tally: Tally = {
  what,
  name,
  seed: Number(seed),
  count: Number(count),
  ends,
  codes,
  slowest,
  defects,
};
process.stdout.write(`${JSON.stringify(tally)}\n`);
