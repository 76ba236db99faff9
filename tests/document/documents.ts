import { choice, number, type Parameter } from '../../src/core/parameter.ts';
import type { Families } from '../../src/document/schema.ts';
import { grinderPresets } from '../../src/grinder/presets/index.ts';

const words = {
  label: 'Nose width',
  meaning: 'Along the stroke.',
  reason: 'It carries the spine.',
};
const parameters: Record<string, Parameter> = {
  noseWidth: number(words, 'mm', 10, 60, 120),
  bolts: number({ ...words, label: 'Bolts' }, 'count', 2, 4, 8),
  hand: choice({ ...words, label: 'Hand' }, 'right', [
    { value: 'left', label: 'Left' },
    { value: 'right', label: 'Right' },
  ]),
};

/** A family of our own, so that these tests hold whatever the real ones declare. */
export const registry: Families = { families: { rest: { parameters } } };

/** A design as a person might write it: only what must be stated. Fresh on every call. */
export const sparse = () => ({
  format: 'platenwright-design',
  schema: 1,
  name: 'Two kitchen blades',
  blades: [
    {
      name: 'Kitchen 180',
      outline: {
        kind: 'dimensions',
        length: 180,
        heelHeight: 46,
        bellyStart: 80,
        bellyHeight: 45,
        spineDropStart: 95,
        tipDrop: 7,
      },
      tang: { kind: 'tang', length: 105, height: 18, thickness: 3 },
      thickness: [{ u: 0, t: 3 }],
      edge: { asHeatTreated: 0.7, wanted: 0.2 },
      bevels: { left: { kind: 'height', height: 21 }, right: { kind: 'full' } },
      line: { follow: 'share' },
    },
  ],
  grinder: structuredClone(grinderPresets['platen-50']),
  fixture: { family: 'rest', parameters: { noseWidth: 50 } },
  making: {
    plates: { process: 'laser', material: 'steel', thicknesses: [4, 6] },
    prints: { material: 'PETG' },
  },
  sequence: [
    { belt: 'P60', backing: 'bare', edge: 0.4, steeper: 0.3 },
    { belt: 'P220', backing: 'leather', edge: 0.2 },
  ],
});

/** The same with the value at a dotted path replaced, or removed when it is undefined. */
export const changed = (path: string, value: unknown): unknown => {
  const document: unknown = sparse();
  const keys = path.split('.');
  let at = document as Record<string, unknown>;
  for (const key of keys.slice(0, -1)) at = at[key] as Record<string, unknown>;
  const last = keys.at(-1) ?? '';
  if (value === undefined) Reflect.deleteProperty(at, last);
  else at[last] = value;
  return document;
};
