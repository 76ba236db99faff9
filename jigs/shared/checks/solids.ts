import {
  all,
  answerAll,
  chain,
  ok,
  worstById,
  type CheckResult,
  type Gaps,
  type Result,
  type Solids,
  type Workshop,
} from '../../../src/family/index.ts';
import { insideChecks } from './inside.ts';

/** Clearances, contacts and fits of everything there is, the worst of each, in the order asked. */
export const solidChecks = (
  { setUps, assemblies }: Solids,
  workshop: Workshop,
  gaps: Gaps,
): Result<CheckResult[]> =>
  chain(all(assemblies.map(insideChecks)), (inside) =>
    ok([...answerAll(setUps, workshop, gaps), ...worstById(inside.flat())]),
  );
