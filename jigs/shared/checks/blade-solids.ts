import {
  all,
  bladeSections,
  chain,
  convexSlabs,
  ok,
  prepare,
  PROUD,
  tangSections,
  type Blade,
  type Body,
  type Motion,
  type Result,
  type SideCuts,
  type Solid,
  type Workshop,
} from '../../../src/family/index.ts';

const CHORD = 0.005;

/** The blade as it comes where that is not the full blank: by a name, and of the blade alone. */
export interface AsItComes {
  readonly kind: string;
  readonly sides: (blade: Blade) => SideCuts;
}

/** The solids of a blade and its tang: the same at every stand and setting. */
export type BladeSolids = ReadonlyMap<'blade' | 'tang', Solid>;

export const bladeSolids = (
  blade: Blade,
  { keep }: Pick<Workshop, 'keep'>,
  comes?: AsItComes,
): Result<BladeSolids> =>
  keep(`solids of a ${comes?.kind ?? 'blank'}`, JSON.stringify(blade), () => {
    const sides = comes?.sides(blade);
    const prepared = (
      [
        ['blade', bladeSections(blade, { chord: CHORD, ...(sides ? { sides } : {}) })],
        ['tang', tangSections(blade)],
      ] as const
    ).map(([name, sections]) =>
      chain(prepare(name, { kind: 'hulls', hulls: convexSlabs(sections), proud: PROUD }), (solid) =>
        ok<[typeof name, Solid]>([name, solid]),
      ),
    );
    return chain(all(prepared), (solids) => ok(new Map(solids)));
  });

/** The bodies of blade and tang over a motion. */
export const bladeBodies = (solids: BladeSolids, motion: Motion): Map<'blade' | 'tang', Body> =>
  new Map(
    [...solids].map(([name, solid]) => [
      name,
      { name, solids: [solid], chordError: CHORD, motion },
    ]),
  );
