import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { main } from '../../src/cli/main.ts';

/** What a command printed and how it ended. */
export interface Ended {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs a command in this process and catches what it prints. */
export const run = async (...args: string[]): Promise<Ended> => {
  const streams = { out: process.stdout, err: process.stderr };
  const written = { out: '', err: '' };
  const kept = { out: streams.out.write, err: streams.err.write };
  for (const key of ['out', 'err'] as const)
    streams[key].write = (chunk: string | Uint8Array): boolean => {
      written[key] += String(chunk);
      return true;
    };
  try {
    return { code: await main(args), ...written };
  } finally {
    streams.out.write = kept.out;
    streams.err.write = kept.err;
  }
};

/** The same with `--json`, its answer parsed. */
export const runJson = async (
  ...args: string[]
): Promise<Ended & { readonly value: Record<string, unknown> }> => {
  const ended = await run(...args, '--json');
  return { ...ended, value: JSON.parse(ended.out) as Record<string, unknown> };
};

/** A folder of its own for one test, removed by `clear`. */
export const workshop = () => {
  const dir = mkdtempSync(join(tmpdir(), 'jig-test-'));
  return {
    dir,
    at: (name: string): string => join(dir, name),
    put: (name: string, content: string | Uint8Array): string => {
      writeFileSync(join(dir, name), content);
      return join(dir, name);
    },
    clear: (): void => {
      rmSync(dir, { recursive: true, force: true });
    },
  };
};

/** Every file below a folder by its path, with its bytes in base 64: equal only byte for byte. */
export const bytesBelow = (folder: string): Record<string, string> =>
  Object.fromEntries(
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map(({ parentPath, name }) => join(parentPath, name))
      .sort()
      .map((file) => [file.slice(folder.length + 1), readFileSync(file, 'base64')]),
  );
