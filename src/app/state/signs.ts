import type { Built, Solved } from '../../worker/protocol.ts';
import type { Designs } from './designs.svelte.ts';
import type { Finding } from './finding.svelte.ts';
import type { Latest } from './latest.svelte.ts';
import { signs, type Sign, type StepId } from './steps.ts';

/** Where it is known what of the design on the bench is done. */
interface Known {
  readonly designs: Designs;
  readonly solving: Latest<Solved>;
  readonly building: Latest<Built>;
  readonly finding: Finding;
}

/** The sign of every step, from what is known of the design on the bench. */
export const signsOf = ({
  designs: { bench, shelf },
  solving,
  building,
  finding,
}: Known): Readonly<Record<StepId, Sign>> => {
  const design = bench?.design;
  const solved = design ? solving.about(design) : null;
  const built = design ? building.value(design) : null;
  // What has failed stays failed, whatever the rest will say.
  const found = design ? (finding.about(design)?.failed.length ?? 0) : 0;
  return signs({
    issues: solved?.result?.issues ?? null,
    solved: solved?.result?.ok ?? false,
    solving: solving.working,
    failing: built ? built.checks.filter((check) => !check.passed).length : found || null,
    checked: built?.checks.length ?? 0,
    building: building.working,
    kept: shelf.keeping === 'kept' || shelf.keeping === 'pending',
  });
};
