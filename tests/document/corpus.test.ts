import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import { fragmentIn } from '../../src/adapt/open-any.ts';
import { designFormat, grinderFormat } from '../../src/document/formats.ts';
import { openLink } from '../../src/document/link.ts';
import { openDesign, openGrinder } from '../../src/document/open.ts';
import { saveDesign, saveGrinder } from '../../src/document/save.ts';

/**
 * Files and links of every version, as they were written: nothing here is ever changed or removed.
 * Whoever raises a version adds files of the one before (`design-VERSION-...`, `grinder-VERSION`).
 */
const CORPUS = 'tests/document/corpus';

const read = (name: string): string => readFileSync(`${CORPUS}/${name}`, 'utf8');
const named = (end: string): string[] => readdirSync(CORPUS).filter((name) => name.endsWith(end));

const [designs, grinders, links] = ['.jig.json', '.grinder.json', '.link.txt'].map(named);

const versionsOf = (names: readonly string[] | undefined): Set<number> =>
  new Set(names?.map((name) => Number(name.split(/[-.]/)[1])));

describe('files of every version', () => {
  it.each([
    ['designs', designs, designFormat.version],
    ['grinders', grinders, grinderFormat.version],
  ] as const)('are kept: %s', (_, names, version) => {
    expect([...versionsOf(names)].sort()).toEqual(Array.from({ length: version }, (_, i) => i + 1));
  });

  it.each(designs ?? [])('%s opens', (name) => {
    const text = read(name);
    const opened = openDesign(text, registry);
    expect(opened.issues).toEqual([]);
    if (!opened.ok) return;
    // What a file of the present version states is kept to the letter.
    const stated = JSON.parse(text) as { schema: number };
    if (stated.schema === designFormat.version) expect(opened.value).toMatchObject(stated);
    const saved = saveDesign(opened.value);
    expect(openDesign(saved, registry)).toMatchObject({ ok: true, issues: [] });
  });

  it.each(grinders ?? [])('%s opens', (name) => {
    const opened = openGrinder(read(name));
    expect(opened.issues).toEqual([]);
    expect(opened.ok && openGrinder(saveGrinder(opened.value)).ok).toBe(true);
  });

  it.each(links ?? [])('%s holds the design of the file beside it', (name) => {
    const file = name.replace('.link.txt', '.jig.json');
    expect(existsSync(`${CORPUS}/${file}`)).toBe(true);
    const [linked, opened] = [
      openLink(fragmentIn(read(name)) ?? '', registry),
      openDesign(read(file), registry),
    ];
    expect(linked.ok && saveDesign(linked.value)).toBe(opened.ok && saveDesign(opened.value));
  });
});
