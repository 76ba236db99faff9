import type { Blade, BladePose } from '../../../src/family/index.ts';
import { byKey } from '../later.ts';

/** The poses of a blade at a setting, both by name. */
export type PosesByName = (setting: string, blade: string) => readonly BladePose[];

/**
 * Poses of every blade at every setting, found when first asked for, from what is prepared of a
 * blade once; none for unknown names.
 */
export const posesByName = <S extends { readonly id: string }, P>(
  blades: readonly Blade[],
  settings: readonly S[],
  prepare: (blade: Blade) => P,
  posesOf: (blade: Blade, prepared: P, setting: S) => readonly BladePose[],
): PosesByName => {
  const known = byKey((name: string) => {
    const blade = blades.find((one) => one.name === name);
    return blade && { blade, prepared: prepare(blade) };
  });
  const of = byKey((id: string) =>
    byKey((name: string): readonly BladePose[] => {
      const found = known(name);
      const setting = settings.find((one) => one.id === id);
      return found && setting ? posesOf(found.blade, found.prepared, setting) : [];
    }),
  );
  return (id, name) => of(id)(name);
};
