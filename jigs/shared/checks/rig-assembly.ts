import {
  shift,
  WORLD,
  type Assembly,
  type Face,
  type Motion,
  type Part,
  type Placement,
  type Sweep,
  type Workshop,
} from '../../../src/family/index.ts';

/** Faces of base, guide, feed and push block that must lie on each other. */
const RIG_FACES: readonly Face[] = [
  ['nose', 'base'],
  ['packer', 'base'],
  ['step', 'nose'],
  ['step', 'packer'],
  ['feed-lug', 'step'],
  ['feed-bracket', 'packer'],
  ['push-block', 'step'],
  ['guide-strip-1', 'packer'],
  ['guide-strip-2', 'packer'],
  ['keeper-1', 'guide-strip-1'],
  ['keeper-2', 'guide-strip-2'],
];

/** What stands where at every setting. */
export interface Assembled {
  readonly workshop: Workshop;
  readonly parts: readonly Part[];
  readonly place: (setting: string) => readonly Placement[];
  readonly plan: { readonly settings: readonly { readonly id: string }[] };
}

/**
 * How each group of placements shifts along y from the first setting to the others, as one motion
 * that all its placements share.
 */
const motionsOf = (q: Assembled, fixed: readonly Placement[]): Map<string, Motion> => {
  const motions = new Map<string, Motion>();
  for (const { carrier, name, frame } of fixed) {
    if (motions.has(carrier)) continue;
    const sweeps = q.plan.settings.map(({ id }): Sweep => {
      const there = q.place(id).find((p) => p.name === name);
      const y = (there ?? { frame }).frame.origin[1] - frame.origin[1];
      return { kind: 'still', label: id, pose: shift(WORLD, [0, y, 0]) };
    });
    motions.set(carrier, sweeps);
  }
  return motions;
};

/** A base with nose and slide, which stand elsewhere along y at every setting. */
export const rigAssembly = (q: Assembled, more: readonly Face[] = []): Assembly => {
  const setting = q.plan.settings[0];
  const placements = setting
    ? q.place(setting.id).filter(({ carrier }) => carrier !== 'blade')
    : [];
  return {
    parts: q.parts,
    workshop: q.workshop,
    placements,
    motions: motionsOf(q, placements),
    faces: [...RIG_FACES, ...more],
    up: [0, 0, 1],
    prefix: 'contact',
  };
};
