import { text } from '../text/index.ts';

/** Densities, g/cm^3, with where each is from. */
const DENSITY = {
  /** Gere, Mechanics of Materials, 5th edition, table H-1: 7850 kg/m^3. */
  steel: 7.85,
  /** EN 10088-1, 1.4301: 7900 kg/m^3 (from memory; US tables give 8000). */
  stainless: 7.9,
  /** Gere, 6061 alloy: 2700 kg/m^3. */
  aluminium: 2.7,
  /** Gere gives 8400 to 8600 kg/m^3; the middle. */
  brass: 8.5,
  /** Plastic density tables, 1240 (from memory). */
  PLA: 1.24,
  /** Plastic density tables, 1260 to 1280 kg/m^3. */
  PETG: 1.27,
  /** Plastic density tables, 1020 to 1080 kg/m^3. */
  ABS: 1.05,
  /** From memory, 1070 kg/m^3. */
  ASA: 1.07,
  /** Polyamide 12 and 6 span 1010 to 1150 (from memory); the middle. */
  PA: 1.08,
  /** Plastic density tables, 1410 to 1430 kg/m^3. */
  POM: 1.42,
  /** Plastic density tables, 930 to 940 kg/m^3. */
  'UHMW-PE': 0.935,
  /** Birch plywood, 650 to 700 kg/m^3 (from memory). */
  plywood: 0.68,
} as const;

export type MaterialId = keyof typeof DENSITY;

/** What a material serves for. */
export type MaterialUse = 'plate' | 'print' | 'stock' | 'pad';

const USES: Readonly<Record<MaterialId, readonly MaterialUse[]>> = {
  steel: ['plate', 'stock'],
  stainless: ['plate', 'stock'],
  aluminium: ['plate', 'stock'],
  brass: ['plate', 'stock'],
  PLA: ['print'],
  PETG: ['print'],
  ABS: ['print'],
  ASA: ['print'],
  PA: ['print'],
  POM: ['stock', 'pad'],
  'UHMW-PE': ['stock', 'pad'],
  plywood: ['plate', 'pad'],
};

export interface Material {
  readonly id: MaterialId;
  readonly name: string;
  /** Grams a cubic centimetre. */
  readonly density: number;
  readonly uses: readonly MaterialUse[];
}

export const materialOf = (id: MaterialId): Material => ({
  id,
  name: text.model.materials[id],
  density: DENSITY[id],
  uses: USES[id],
});

/** Every material of the table. */
export const MATERIALS: readonly Material[] = (Object.keys(DENSITY) as MaterialId[]).map(
  materialOf,
);
