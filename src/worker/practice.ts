import type { Result } from '../core/result.ts';
import type { Design } from '../document/schema.ts';
import { createWorkshop, type Fixture, type Workshop } from '../family/index.ts';
import { orderOf, proveByPieces } from './checking.ts';

/** Changes that are practised, by how much each thins the first blade, mm, and how long at most, ms. */
const CHANGES = 24;
const BY = 1e-3;
const MOST = 3000;

const thinner = (design: Design, by: number): Design => ({
  ...design,
  blades: design.blades.map((blade, i) =>
    i > 0 ? blade : { ...blade, thickness: blade.thickness.map(({ u, t }) => ({ u, t: t - by })) },
  ),
});

/**
 * Goes through a drag of a design that nobody sees and throws away what it finds. The engine that
 * runs this compiles what has run often: the first changes of a maker are then answered in about half
 * the time. Ends as soon as a real question has come, or where a change cannot be solved.
 */
export const practise = async (
  design: Design,
  solve: (design: Design, workshop: Workshop) => Result<Fixture>,
  overtaken: () => boolean,
): Promise<void> => {
  const workshop = createWorkshop();
  const end = performance.now() + MOST;
  const order = orderOf(design);
  for (let i = 1; i <= CHANGES && performance.now() < end && !overtaken(); i += 1) {
    const solved = solve(thinner(design, i * BY), workshop);
    if (!solved.ok) return;
    await proveByPieces(solved.value, order, workshop, { overtaken });
  }
};
