import { chain, ok, type Result } from '../core/result.ts';
import type { Design } from '../document/schema.ts';
import type { Fixture, Registry } from '../family/index.ts';
import { solveDesign } from '../make/engine.ts';
import type { Part } from '../model/part.ts';
import { partChanges, purchases, type PartChange, type Purchase } from './part-changes.ts';
import { settingChanges, type SettingChange } from './setting-changes.ts';

/** What a change of a design means for the workshop. */
export interface Consequence {
  readonly settings: readonly SettingChange[];
  readonly parts: readonly PartChange[];
  readonly purchases: readonly Purchase[];
}

/** A fixture with its parts built; its checks are left alone, they take longest. */
export interface Built {
  readonly fixture: Fixture;
  readonly parts: readonly Part[];
}

export const build = (design: Design, registry: Registry): Result<Built> =>
  chain(solveDesign(design, registry), (fixture) =>
    chain(fixture.parts(), (parts) => ok({ fixture, parts })),
  );

/** From one built fixture to another. */
export const consequence = (from: Built, to: Built): Consequence => ({
  settings: settingChanges(from.fixture.settings, to.fixture.settings),
  parts: partChanges(from.parts, to.parts),
  purchases: purchases(from.parts, to.parts),
});
