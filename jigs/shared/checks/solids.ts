import {
  all,
  answerAll,
  chain,
  ok,
  worstById,
  type CheckResult,
  type Fixture,
  type Gaps,
  type Result,
  type Solids,
  type Workshop,
} from '../../../src/family/index.ts';
import { byKey, later } from '../later.ts';
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

/** The solids of a fixture, and all its checks for each way of telling gaps: each found once, when asked. */
export const checkedBy = <Q>(
  question: () => Result<Q>,
  solidsOf: (q: Q) => Result<Solids>,
  checksOf: (q: Q, solids: Solids, gaps: Gaps) => Result<readonly CheckResult[]>,
): Required<Pick<Fixture, 'solids' | 'checks'>> => {
  const solids = later(() => chain(question(), solidsOf));
  const told = byKey((gaps: Gaps) =>
    chain(question(), (q) => chain(solids(), (made) => checksOf(q, made, gaps))),
  );
  return { solids, checks: (gaps = 'all') => told(gaps) };
};
