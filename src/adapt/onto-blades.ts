import { problem, type Issue } from '../core/issue.ts';
import type { Design } from '../document/schema.ts';
import { text } from '../text/index.ts';
import { ontoGrinder } from './onto-grinder.ts';

/** Whether the sequence ends at the edge of every blade and starts at none thicker than it comes. */
const suits = ({ blades, sequence }: Design): boolean => {
  const [first, last] = [sequence[0]?.edge ?? 0, sequence.at(-1)?.edge ?? 0];
  return blades.every(
    ({ edge }) => Math.abs(last - edge.wanted) < 1e-6 && first <= edge.asHeatTreated,
  );
};

/**
 * A design for the blades of another. The sequence stays where it ends at their edge; otherwise
 * it comes with them, on the belts of this grinder.
 */
export const ontoBlades = (design: Design, other: Design): { design: Design; notes: Issue[] } => {
  const kept: Design = { ...design, blades: other.blades };
  if (suits(kept)) return { design: kept, notes: [] };
  const { design: mapped, notes } = ontoGrinder(other, design.grinder);
  const words = { message: text.adapt.notes.sequence, fix: '' };
  return {
    design: { ...kept, sequence: mapped.sequence },
    notes: [
      problem('adapted', 'sequence', words, 'note'),
      ...notes.filter(({ path }) => path.startsWith('sequence')),
    ],
  };
};
