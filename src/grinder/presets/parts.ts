import type { Abrasive, Backing, Grinder } from '../schema.ts';

/** Marks every preset as a grinder file of the present version. */
export const FILE = { format: 'platenwright-grinder', schema: 1 } as const;

const abrasive = (grit: number, thickness: number, purpose: string): Abrasive => ({
  id: `P${grit}`,
  grit,
  thickness,
  purpose,
});

/**
 * Belts as they are commonly stocked. Thicknesses under working pressure are common practice
 * without a published source: a maker measures their own and enters it.
 */
export const ABRASIVES: Abrasive[] = [
  abrasive(36, 1.6, 'Hogging'),
  abrasive(60, 1.4, 'Roughing'),
  abrasive(120, 1.1, 'Refining'),
  abrasive(220, 0.9, 'Finishing'),
  abrasive(400, 0.7, 'Last finish'),
];

/** Narrow belts are made on thinner cloth. */
export const NARROW_ABRASIVES: Abrasive[] = [
  abrasive(60, 1, 'Roughing'),
  abrasive(120, 0.9, 'Refining'),
  abrasive(240, 0.7, 'Finishing'),
  abrasive(400, 0.6, 'Last finish'),
];

export const BARE: Backing = { kind: 'none', id: 'bare', thickness: 0 };
/** About 5 mm, common practice from about P120 on. */
export const LEATHER: Backing = { kind: 'leather', id: 'leather', thickness: 5 };

/** Belt running down on the platen, tracking, flutter and splice as on a sound machine. */
export const belt = (width: number, length: number): Grinder['belt'] => ({
  width,
  length,
  tracking: 2,
  flutter: 0.3,
  splice: 0.2,
  direction: 'down',
});

type Wheel = Grinder['wheels'][number];

/** A wheel as wide as its belt: the contact wheel has a tyre, the others are metal. */
export const wheel = (
  role: Wheel['role'],
  diameter: number,
  width: number,
  centre: Wheel['centre'],
  id: string = role,
): Wheel => ({
  id,
  role,
  diameter,
  width,
  centre,
  surface: role === 'contact' ? 'rubber' : 'hard',
});
