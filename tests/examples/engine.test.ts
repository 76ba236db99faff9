import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  checkDesign,
  linkFragment,
  openDesign,
  openLink,
  registry,
  saveDesign,
  solveDesign,
  validateDesign,
  type Design,
} from 'platenwright';

const file = 'jigs/spine-rest/examples/kitchen-210.jig.json';

/** Every expected failure is a value: a caller that wants to stop asks for the value like this. */
const opened = (): Design => {
  const result = openDesign(readFileSync(file), registry);
  if (!result.ok) throw new Error(result.issues.map(({ message }) => message).join('\n'));
  return result.value;
};

describe('the engine by its one entry', () => {
  it('opens a design and solves its settings', () => {
    const solved = solveDesign(opened(), registry);
    if (!solved.ok) throw new Error(JSON.stringify(solved.issues));
    const [first] = solved.value.settings;
    expect(first?.readings[0]?.unit).toBe('mm');
    expect(first?.side).toBe('left');
  });

  it('changes a design, validates it, and names what is wrong with it', () => {
    const design = opened();
    const [blade] = design.blades;
    if (!blade) throw new Error('the design has a blade');
    const thicker = { ...blade, edge: { ...blade.edge, wanted: 5, asHeatTreated: 5 } };
    const result = validateDesign({ ...design, blades: [thicker] }, registry);
    expect(result.ok).toBe(false);
    expect(result.issues[0]?.path).toContain('edge');
    expect(result.issues[0]?.fix).not.toBe('');
  });

  it('checks a design on its solids', () => {
    const checked = checkDesign(opened(), registry);
    if (!checked.ok) throw new Error(JSON.stringify(checked.issues));
    const { checks, parts } = checked.value;
    expect(parts.length).toBeGreaterThan(5);
    expect(checks.filter(({ passed }) => !passed)).toEqual([]);
  });

  it('sends a design through a link', () => {
    const design = opened();
    const received = openLink(linkFragment(design), registry);
    expect(received.ok && saveDesign(received.value)).toBe(saveDesign(design));
  });
});
