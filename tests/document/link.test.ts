import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import { linkFragment, openLink } from '../../src/document/link.ts';
import { openDesign } from '../../src/document/open.ts';
import { saveDesign } from '../../src/document/save.ts';

const folder = 'jigs';
const examples = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.jig.json'))
  .map((name) => {
    const opened = openDesign(readFileSync(join(folder, name)), registry);
    if (!opened.ok) throw new Error(`${name}: ${JSON.stringify(opened.issues)}`);
    return { name, design: opened.value };
  });

/** A worked design as the first version of a link held it, from the files that are kept for ever. */
const FIRST = readFileSync('tests/document/corpus/design-1-spine-rest.link.txt', 'utf8').trim();

describe('links', () => {
  it('of the first version still open', () => {
    const opened = openLink(FIRST, registry);
    const kitchen = examples.find(({ name }) => name.includes('kitchen-210'));
    expect(opened.ok && opened.value.blades).toEqual(kitchen?.design.blades);
    expect(opened.ok && opened.value.making.prints.bed).toEqual({
      width: 220,
      depth: 220,
      height: 220,
    });
  });

  it.each(examples)('holds the whole of $name in at most 2,000 characters', ({ design }) => {
    const fragment = linkFragment(design);
    expect(fragment.length).toBeLessThanOrEqual(2000);
    // Only characters that a fragment may hold unescaped (RFC 3986, section 3.5).
    expect(fragment).toMatch(/^[A-Za-z0-9._~-]+$/);
    const opened = openLink(`#${fragment}`, registry);
    expect(opened.ok && saveDesign(opened.value)).toBe(saveDesign(design));
  });

  it('answers a damaged link with a message, whatever was damaged', () => {
    const [first] = examples;
    if (!first) throw new Error('no worked design');
    const fragment = linkFragment(first.design);
    const whole = saveDesign(first.design);
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: fragment.length - 1 }),
        fc.constantFrom(...'ABCxyz019-_.'),
        (at, character) => {
          const damaged = fragment.slice(0, at) + character + fragment.slice(at + 1);
          const opened = openLink(damaged, registry);
          if (opened.ok) expect(saveDesign(opened.value)).toBe(whole);
          else expect(opened.issues[0]?.fix).toBeTruthy();
        },
      ),
      { numRuns: 200, seed: 7 },
    );
  });

  it.each([
    ['empty', '', 'link-damaged'],
    ['cut short', '1.eJx', 'link-damaged'],
    ['of a newer format', '9.abc', 'link-too-new'],
    ['oversized', `1.${'A'.repeat(70_000)}`, 'link-too-long'],
    ['no link', '<script>alert(1)</script>', 'link-damaged'],
  ])('refuses what is %s', (_, fragment, code) => {
    const opened = openLink(fragment, registry);
    expect(!opened.ok && opened.issues[0]?.code).toBe(code);
  });
});
