/**
 * The full virtual grind of a kitchen blade of 210 mm: five belts on both sides, ten passes, on the
 * usual grid of 1 mm, and coarser; then the cure of a tapered blade of that length. Wall time and
 * processor time, first run and median of the later ones.
 *
 *     npx tsx tests/bench/virtual.ts [rounds]
 */
import { readFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { openDesign } from '../../src/document/open.ts';
import { planSpineRest } from '../../src/grind/spine-rest/plan.ts';
import { registry } from '../../jigs/registry.ts';
import { cureLine, reportOf, spineRestJob } from '../../src/virtual/index.ts';
import { BODY, bladeOf, passOf } from '../virtual/blades.ts';

const rounds = Number(process.argv[2] ?? 9);
const file = new URL('../../jigs/spine-rest/examples/kitchen-210.jig.json', import.meta.url);

const timed = (name: string, run: () => string): void => {
  const runs = Array.from({ length: rounds }, () => {
    const [wall, cpu] = [performance.now(), process.cpuUsage()];
    const note = run();
    const { user } = process.cpuUsage(cpu);
    return { wall: performance.now() - wall, cpu: user / 1000, note };
  });
  const later = runs.slice(1);
  const median = (of: (r: (typeof runs)[number]) => number): string =>
    (later.map(of).sort((p, q) => p - q)[Math.floor(later.length / 2)] ?? NaN).toFixed(0);
  const [first] = runs;
  console.log(
    `${name.padEnd(34)} first ${(first?.wall ?? NaN).toFixed(0)} ms (${(first?.cpu ?? NaN).toFixed(0)} cpu), ` +
      `then ${median((r) => r.wall)} ms (${median((r) => r.cpu)} cpu)   ${first?.note ?? ''}`,
  );
};

const opened = openDesign(readFileSync(file, 'utf8'), registry);
if (!opened.ok) throw new Error(opened.issues.map(({ message }) => message).join('\n'));
const { blades, grinder, sequence } = opened.value;
const input = {
  blades: blades.slice(0, 1),
  grinder,
  sequence,
  parameters: {
    noseWidth: 2 * BODY.noseHalf,
    stackHeight: 14,
    plungeStop: 1,
    tipOverlap: 8,
    friction: [0.2, 0.6] as const,
    reserve: 0.1,
    screwPitch: 1,
    divisions: 50,
    settingTolerance: 0.05,
    aim: 'line' as const,
  },
};
const plan = planSpineRest(input);
const [blade] = blades;
if (!plan.ok || blade === undefined) throw new Error('the example does not plan');
const job = spineRestJob(blade, input, plan.value, BODY);
console.log(`${cpus()[0]?.model ?? ''} x ${cpus().length}, node ${process.version}`);

for (const step of [1, 2, 4])
  timed(`full grind, 10 passes, ${step} mm`, () => {
    const { grind, standing } = reportOf(job, { step, rows: 40 });
    const poses = grind.passes.reduce((sum, { reached }) => sum + reached.length, 0);
    return `${poses} poses, ${grind.finished.v.length} nodes, edge +${standing.value.toFixed(4)}`;
  });

timed('cure, taper 3 to 1.5 over 210', () => {
  const length = 210;
  const b = 20;
  const a = Math.atan2(1.3125 - 0.1, b);
  const setoff = 1.4125 * Math.cos(a) + 50 * Math.sin(a);
  const cure = cureLine({
    virtual: {
      blade: {
        ...bladeOf({
          length,
          thickness: [
            { u: 0, t: 3 },
            { u: length, t: 1.5 },
          ],
        }),
        bevels: { left: { kind: 'height', height: b }, right: { kind: 'height', height: b } },
      },
      passes: (['left', 'right'] as const).map((s) => passOf(s, setoff, length, { overlap: 6 })),
      start: { kind: 'bar' },
      resolution: { step: 1, rows: 40 },
    },
    wish: {
      allowed: 0.5,
      least: 1,
      height: 6,
      stepRadius: 8,
      centred: false,
      tape: 0.2,
      bearing: 0.3,
      make: { kind: 'print', material: 'PETG', density: 1.27 },
    },
    tilts: new Map(),
  });
  if (!cure.ok) return cure.issues.map(({ code }) => code).join(' ');
  const [side] = cure.value.sides;
  return `line ${side?.without.toFixed(2)} -> ${side?.with.toFixed(2)} mm`;
});
