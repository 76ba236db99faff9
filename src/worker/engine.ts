import { registry } from '../../jigs/registry.ts';
import { ok, chain, type Result } from '../core/result.ts';
import { parseJson } from '../document/json.ts';
import { checkDesign, MAX_DESIGN_BYTES, openDesign, openGrinder } from '../document/open.ts';
import { saveDesign, saveGrinder } from '../document/save.ts';
import { documentSchema, type Design } from '../document/schema.ts';
import { checkFields } from '../schema/check.ts';
import { checkFixture, solveDesign } from '../make/engine.ts';
import { builtOf, solvedOf } from './answers.ts';
import type { Engine, FamilyCard } from './protocol.ts';

/** Everything wrong with a design under edit, then its solution if there is one. */
const solve = (design: Design) =>
  chain(checkDesign(design, registry), (sound) => solveDesign(sound, registry));

const families = (): FamilyCard[] =>
  Object.values(registry.families).map(({ id, label, meaning, parameters }) => ({
    id,
    label,
    meaning,
    parameters,
  }));

/** A design whose fields are in range, though they may contradict each other. */
const restore = (bytes: Uint8Array): Result<Design> => {
  const opened = openDesign(bytes, registry);
  if (opened.ok) return opened;
  const fields = chain(parseJson(bytes, MAX_DESIGN_BYTES), (data) =>
    checkFields(documentSchema, data),
  );
  return fields.ok ? ok(fields.value) : opened;
};

/** The one engine behind the page; the command line calls the same functions. */
export const createEngine = (examples: Awaited<ReturnType<Engine['examples']>>): Engine => ({
  families: async () => families(),
  examples: async () => examples,
  open: async (bytes) => openDesign(bytes, registry),
  openGrinder: async (bytes) => openGrinder(bytes),
  restore: async (bytes) => restore(bytes),
  text: async (design) => saveDesign(design),
  grinderText: async (grinder) => saveGrinder(grinder),
  solve: async (design) => chain(solve(design), (fixture) => ok(solvedOf(fixture))),
  build: async (design) =>
    chain(solve(design), (fixture) =>
      chain(checkFixture(fixture), (checked) => ok(builtOf(checked))),
    ),
});
