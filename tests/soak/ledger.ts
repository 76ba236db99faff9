import { existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { added, type Tally } from './tally.ts';

/** What one state of the program came to with the batches of one seed, over all its runs. */
export interface Entry {
  readonly what: string;
  readonly name: string;
  readonly seed: number;
  /** Of the program that was tried; with a plus where its files were not those of the commit. */
  readonly commit: string;
  /** Day of the last batch. */
  readonly date: string;
  /** Batches tried to their end, by their turn: none is tried twice. */
  readonly batches: readonly number[];
  readonly count: number;
  readonly ends: Readonly<Record<string, number>>;
  readonly codes: Readonly<Record<string, number>>;
  /** Longest single case, ms. */
  readonly slowest: number;
  /** First defects, in words. */
  readonly defects: readonly string[];
}

/** What earlier runs wrote; nothing where there is no such file yet. */
export const readLedger = (file: string): Entry[] =>
  existsSync(file) ? (JSON.parse(readFileSync(file, 'utf8')) as Entry[]) : [];

/** Turns of the batches that need no other try. */
export const triedBatches = (
  ledger: readonly Entry[],
  what: string,
  name: string,
  seed: number,
): ReadonlySet<number> =>
  new Set(
    ledger
      .filter((one) => one.what === what && one.name === name && one.seed === seed)
      .flatMap(({ batches }) => batches),
  );

/** The ledger with one batch more. */
export const withBatch = (
  ledger: readonly Entry[],
  key: Pick<Entry, 'what' | 'name' | 'seed' | 'commit' | 'date'>,
  turn: number,
  tally: Tally,
): Entry[] => {
  const isSame = (one: Entry): boolean =>
    (['what', 'name', 'seed', 'commit'] as const).every((field) => one[field] === key[field]);
  const before = ledger.find(isSame);
  const told = tally.defects.flatMap(({ at, found }) =>
    found.slice(0, 1).map((what) => `batch ${String(turn)}, ${String(at)}: ${what.slice(0, 300)}`),
  );
  const entry: Entry = {
    ...key,
    batches: [...(before?.batches ?? []), turn].sort((a, b) => a - b),
    count: (before?.count ?? 0) + tally.count,
    ends: added(before?.ends ?? {}, tally.ends),
    codes: added(before?.codes ?? {}, tally.codes),
    slowest: Math.max(before?.slowest ?? 0, Math.round(tally.slowest)),
    defects: [...(before?.defects ?? []), ...told],
  };
  return before ? ledger.map((one) => (one === before ? entry : one)) : [...ledger, entry];
};

/** Writes the ledger whole or not at all. */
export const writeLedger = (file: string, ledger: readonly Entry[]): void => {
  const beside = `${file}.new`;
  writeFileSync(beside, `[\n${ledger.map((one) => JSON.stringify(one)).join(',\n')}\n]\n`);
  renameSync(beside, file);
};

const ENDS = ['built', 'unsolved', 'refused', 'unbuilt', 'defect', 'whole package'];

/** The ledger's families as a table to read, by family and by commit. */
export const familyTable = (ledger: readonly Entry[]): string[] => {
  const rows = ledger
    .filter(({ what }) => what === 'family')
    .sort((a, b) => a.name.localeCompare(b.name) || a.date.localeCompare(b.date));
  const names = [...new Set(rows.map(({ name }) => name))];
  const line = (cells: readonly (string | number)[]): string =>
    `| ${cells.map(String).join(' | ')} |`;
  const sumOf = (of: readonly Entry[]): (string | number)[] => [
    of.reduce((sum, { count }) => sum + count, 0),
    ...ENDS.map((end) => of.reduce((sum, { ends }) => sum + (ends[end] ?? 0), 0)),
    (Math.max(...of.map(({ slowest }) => slowest)) / 1000).toFixed(1),
  ];
  return [
    line(['family', 'commit', 'designs', ...ENDS, 'slowest, s']),
    line(['---', '---', ...Array.from({ length: ENDS.length + 2 }, () => '---:')]),
    ...names.flatMap((name) => {
      const own = rows.filter((row) => row.name === name);
      return [
        ...own.map((row) => line([name, row.commit, ...sumOf([row])])),
        ...(own.length > 1 ? [line([`**${name}**`, 'all', ...sumOf(own)])] : []),
      ];
    }),
  ];
};
