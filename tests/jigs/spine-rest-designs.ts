import { spineRest } from '../../jigs/spine-rest/index.ts';
import type { Design } from '../../src/document/schema.ts';
import { examplesOf } from '../family/examples.ts';

/** A small generator with a fixed seed (mulberry32, public domain). */
export const random = (seed: number): (() => number) => {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
};

const between = (next: () => number, low: number, high: number): number =>
  low + next() * (high - low);

const template = (): Design => {
  const found = examplesOf('spine-rest').find(({ file }) => file.startsWith('kitchen'));
  if (!found) throw new Error('no example to start from');
  return found.design;
};

/** One blade with straight spine and edge where it is measured, even stock, on a bare platen. */
export const straightDesign = (seed: number): Design => {
  const next = random(seed);
  const base = template();
  const [blade] = base.blades;
  if (!blade) throw new Error('no blade');
  const height = between(next, 34, 60);
  const thickness = between(next, 2.6, 5);
  const edge = between(next, 0.2, 0.5);
  const angle = between(next, 5.5, 8);
  return {
    ...base,
    blades: [
      {
        ...blade,
        outline: {
          kind: 'dimensions',
          length: 220,
          heelHeight: height,
          bellyHeight: height,
          bellyStart: 170,
          spineDropStart: 190,
          tipDrop: 4,
          spineSagitta: 0,
        },
        thickness: [{ u: 0, t: thickness }],
        spineRadius: between(next, 0, 0.5),
        edge: { asHeatTreated: edge + 0.5, wanted: edge, shareLeft: between(next, 0.35, 0.65) },
        bevels: { left: { kind: 'angle', angle }, right: { kind: 'angle', angle: angle + 0.6 } },
        line: { follow: 'share', allowed: 15 },
      },
    ],
    grinder: { ...base.grinder, lean: between(next, 0, 2.5) },
    fixture: {
      ...base.fixture,
      parameters: { ...base.fixture.parameters, aim: 'place', runningClearance: 0.2 },
    },
    sequence: [
      { belt: 'P60', backing: 'bare', edge: edge + 0.2, steeper: 0.5 },
      { belt: 'P120', backing: 'bare', edge, steeper: 0 },
    ],
  };
};

/** A design whose fixture parameters are anything their ranges allow. */
export const anyDesign = (seed: number): Design => {
  const next = random(seed);
  const base = template();
  const parameters = Object.fromEntries(
    Object.entries(spineRest.parameters).map(([key, p]) => {
      if (p.kind === 'choice') {
        const option = p.options[Math.floor(next() * p.options.length)];
        return [key, option?.value ?? p.initial];
      }
      // Half of them as they are usually, so that some designs get past the first refusal.
      return [key, next() < 0.6 ? p.initial : between(next, p.min, p.max)];
    }),
  );
  const [blade] = base.blades;
  return {
    ...base,
    blades: blade ? [blade] : base.blades,
    sequence: base.sequence.slice(-2),
    making: {
      ...base.making,
      plates: {
        ...base.making.plates,
        thicknesses: [parameters['plate'], parameters['base']].map(Number).sort((a, b) => a - b),
      },
    },
    fixture: { ...base.fixture, parameters },
  };
};
