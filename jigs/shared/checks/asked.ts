import {
  checkPairs,
  createWorkspace,
  notComputed,
  pairResult,
  worstOf,
  type Body,
  type CheckResult,
  type PairRule,
  type PairTerms,
} from '../../../src/family/index.ts';
import { words } from './words.ts';

/** A pair that is asked about, once for every stand and blade; the worst answer is the result. */
export interface Asked {
  readonly id: string;
  readonly rule: PairRule;
  readonly fix: string;
  readonly parameter?: string;
}

/** What must keep `gap` mm apart. */
export const clear = (
  a: string,
  b: string,
  gap: number,
  fix: string,
  parameter?: string,
): Asked => ({
  id: `clearance/${a}/${b}`,
  rule: { kind: 'clear', a, b, gap },
  fix,
  ...(parameter === undefined ? {} : { parameter }),
});

/** Names of all bodies for people, and the pose of a result from the label of its sweep. */
export interface Told {
  readonly names: Readonly<Record<string, string>>;
  readonly pose: NonNullable<PairTerms['pose']>;
}

/** How far apart bodies are still measured, mm. */
const FAR = 40;

const termsOf = ({ rule, id, fix, parameter }: Asked, { names, pose }: Told): PairTerms => {
  const [a, b] = [names[rule.a] ?? rule.a, names[rule.b] ?? rule.b];
  return {
    id,
    label: rule.kind === 'touch' ? words.labels.contact(a, b) : words.labels.pair(a, b),
    basis: id.startsWith('clearance/hand') ? words.basis.practice : words.basis.setting,
    fix,
    ...(parameter === undefined ? {} : { parameter }),
    pose,
  };
};

const MACHINE: ReadonlySet<string> = new Set(['belt', 'platen', 'wheels', 'rest', 'guards']);

/** Answers what is asked about some bodies; a missing body of the fixture has failed. */
export const answer = (
  asked: readonly Asked[],
  bodies: ReadonlyMap<string, Body>,
  told: Told,
): CheckResult[] => {
  const work = createWorkspace();
  return asked.flatMap((question): CheckResult[] => {
    const { rule } = question;
    const terms = termsOf(question, told);
    const [a, b] = [bodies.get(rule.a), bodies.get(rule.b)];
    // A grinder may have no wheel, platen or keep-out; a fixture has all its parts.
    if (!b && MACHINE.has(rule.b)) return [];
    const kind = rule.kind === 'touch' ? 'contact' : 'clearance';
    if (!a || !b) return [notComputed(terms, kind, [])];
    const result = checkPairs([a, b], [rule], { otherwise: 0, within: FAR, work });
    if (!result.ok) return [notComputed(terms, kind, result.issues)];
    return result.value.map((pair) => pairResult(pair, terms));
  });
};

/** Worst result of every question over all stands and blades, in the order first asked. */
export const worstById = (results: readonly CheckResult[]): CheckResult[] => {
  const ids = [...new Set(results.map(({ id }) => id))];
  return ids.flatMap((id) => worstOf(results.filter((result) => result.id === id)) ?? []);
};
