import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Random } from '../../src/setup/random.ts';
import { isWhole, stateOf } from '../cli/whole.ts';
import { newFixture, START } from '../situations/situations.ts';

export interface Killed {
  /** What was found after the kill: the folder as before, the other design's package, or none. */
  readonly end: 'old package' | 'new package' | 'none' | 'defect';
  readonly found: readonly string[];
}

/** How long the writing of a package takes at most once it has begun, ms. */
const WRITING = 60;

/** Runs `make` from the command line; `stop` is called with the running process. */
const make = (
  design: string,
  out: string,
  stop: (kill: () => void) => void = () => undefined,
): Promise<void> =>
  new Promise((resolve) => {
    const child = spawn(process.execPath, ['src/cli/jig.mjs', 'make', design, '--out', out], {
      stdio: 'ignore',
    });
    child.once('exit', () => {
      resolve();
    });
    stop(() => child.kill('SIGKILL'));
  });

/**
 * Runs of `make` into one folder, of two designs by turns, each killed: by turns at any moment of
 * the run, and while the package is being written. After each kill the folder must be a whole
 * package or missing, and nothing else lie beside it than what the next run clears away.
 */
export const killedMakes = async (random: Random, count: number): Promise<Killed[]> => {
  const dir = mkdtempSync(join(tmpdir(), 'jig-kill-'));
  const [target, fresh] = [join(dir, 'out'), join(dir, '.out.platenwright-new')];
  const designs = [readFileSync(START.file, 'utf8'), newFixture()].map((text, i) => {
    const file = join(dir, `${String(i)}.jig.json`);
    writeFileSync(file, text);
    return file;
  });
  const designAt = (i: number): string => designs[i % 2] ?? '';
  try {
    const states: string[] = [];
    const began = performance.now();
    for (const design of designs) {
      await make(design, target);
      states.push(stateOf(target));
    }
    const whole = (performance.now() - began) / designs.length;
    const killed: Killed[] = [];
    for (let i = 0; i < count; i += 1) {
      const before = existsSync(target) ? stateOf(target) : 'none';
      const delay = random() * (i % 2 === 0 ? whole : WRITING);
      let isOver = false;
      await make(designAt(i), target, (kill) => {
        const watch = (): void => {
          if (isOver) return;
          if (i % 2 === 0 || existsSync(fresh)) setTimeout(kill, delay);
          else setTimeout(watch, 1);
        };
        watch();
      });
      isOver = true;
      const after = existsSync(target) ? stateOf(target) : 'none';
      const strange = readdirSync(dir).filter(
        (name) => !/^(?:out|\.out\.platenwright-(?:new|old)|\d\.jig\.json)$/.test(name),
      );
      const found = [
        ...(after === 'none' || isWhole(target) ? [] : ['the folder is no whole package']),
        ...(after === 'none' || states.includes(after) ? [] : ['the package is of no design']),
        ...strange.map((name) => `left behind: ${name}`),
      ];
      const end =
        found.length > 0
          ? 'defect'
          : after === 'none'
            ? 'none'
            : after === before
              ? 'old package'
              : 'new package';
      killed.push({ end, found });
    }
    await make(designAt(0), target);
    const rest = readdirSync(dir).filter((name) => name.startsWith('.'));
    if (rest.length > 0 || stateOf(target) !== states[0])
      killed.push({ end: 'defect', found: [`the next run left ${rest.join(', ')}`] });
    return killed;
  } finally {
    rmSync(dir, { recursive: true, force: true });
  }
};
