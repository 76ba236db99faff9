import type { Vec3 } from '../geometry/vector.ts';
import { text } from '../text/index.ts';
import { notThere, pairResult, withShared, worstOf, type PairTerms } from './assembly-result.ts';
import {
  AT_HAND,
  checkPair,
  createWorkspace,
  type Body,
  type PairCheck,
  type PairRule,
  type Workspace,
} from './distance/index.ts';
import type { CheckResult, Gaps } from './result.ts';
import type { Asked, SetUp, Told } from './set-up.ts';
import { createWorkshop, type Workshop } from './workshop.ts';

const words = text.family.shared.checks;

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

/** What may touch, overlapping no deeper than `tolerance` mm along `apart`. */
export const seat = (a: string, b: string, tolerance: number, apart: Vec3, fix: string): Asked => ({
  id: `contact/${a}/${b}`,
  rule: { kind: 'seat', a, b, tolerance, apart },
  fix,
});

/** How far apart bodies are still measured, and how far beyond what they must keep, mm. */
const FAR = 40;
const SPARE = 10;

/** How far apart the bodies of a question are measured, mm. */
const farOf = (rule: PairRule, gaps: Gaps): number => {
  const least = rule.kind === 'clear' ? rule.gap : 0;
  return gaps === 'near' ? least + AT_HAND : Math.max(FAR, least + SPARE);
};

const termsOf = ({ rule, id, fix, parameter }: Asked, { names, pose }: Told): PairTerms => {
  const [a, b] = [names[rule.a] ?? rule.a, names[rule.b] ?? rule.b];
  return {
    id,
    label: rule.kind === 'clear' ? words.labels.pair(a, b) : words.labels.contact(a, b),
    basis: id.startsWith('clearance/hand') ? words.basis.practice : words.basis.setting,
    fix,
    ...(parameter === undefined ? {} : { parameter }),
    pose,
  };
};

const MACHINE: ReadonlySet<string> = new Set(['belt', 'platen', 'wheels', 'rest', 'guards']);

/** A body as people call it: what is found is told of it so. */
const called = ({ name, solids, chordError, motion }: Body, names: Told['names']): Body => {
  const body = { name: names[name] ?? name, solids, chordError };
  return motion ? { ...body, motion } : body;
};

/** The answer about a pair, from the workshop where the same was asked of bodies just like these. */
const kept = (
  workshop: Workshop,
  a: Body,
  b: Body,
  rule: PairRule,
  within: number,
  work: Workspace,
  names: Told['names'],
): PairCheck => {
  const ask = (): PairCheck => {
    // Where a search starts must not depend on what was asked before it.
    const fresh: Workspace = { ...work, hints: new Map() };
    return checkPair(called(a, names), called(b, names), rule, { within, work: fresh });
  };
  const [one, other] = [workshop.nameOf(a), workshop.nameOf(b)];
  if (one === undefined || other === undefined) return ask();
  const together = a.motion === b.motion ? 'as one' : 'by themselves';
  const key = `${one} ${other} ${together} ${workshop.contentOf(rule)} ${String(within)}`;
  return workshop.pairs(key, ask);
};

/** An answer, and what the two bodies share where they run into each other. */
interface Answer {
  readonly result: CheckResult;
  readonly shared?: PairCheck['shared'];
}

const answers = (
  asked: readonly Asked[],
  bodies: ReadonlyMap<string, Body>,
  told: Told,
  known: ReadonlyMap<string, number>,
  workshop: Workshop,
  gaps: Gaps,
): Answer[] => {
  const work = createWorkspace(workshop.room);
  return asked.flatMap((question): Answer[] => {
    const { rule } = question;
    const terms = termsOf(question, told);
    const [a, b] = [bodies.get(rule.a), bodies.get(rule.b)];
    // A grinder may have no wheel, platen or keep-out; a fixture has all its parts.
    if (!b && MACHINE.has(rule.b)) return [];
    const kind = rule.kind === 'clear' ? 'clearance' : 'contact';
    if (!a || !b) {
      const missing = [...(a ? [] : [rule.a]), ...(b ? [] : [rule.b])];
      const called = missing.map((name) => told.names[name] ?? name);
      return [{ result: notThere(terms, kind, called) }];
    }
    const far = farOf(rule, gaps);
    const within = rule.kind === 'clear' ? (known.get(question.id) ?? far) : far;
    const pair = kept(workshop, a, b, rule, within, work, told.names);
    return [{ result: pairResult(pair, terms), shared: pair.shared }];
  });
};

/**
 * Answers what is asked about some bodies; a missing body of the fixture has failed. `known` holds
 * the least gap of a question where it was asked before: only what is nearer is told exactly.
 */
export const answer = (
  asked: readonly Asked[],
  bodies: ReadonlyMap<string, Body>,
  told: Told,
  known: ReadonlyMap<string, number> = new Map(),
  workshop: Workshop = createWorkshop(),
): CheckResult[] =>
  answers(asked, bodies, told, known, workshop, 'all').map(({ result }) => result);

/** What was answered about a list of set-ups, in its order: a check by pieces ends with the whole. */
const answered = new WeakMap<readonly SetUp[], Record<Gaps, (readonly Answer[])[]>>();

function* answersEach(
  setUps: readonly SetUp[],
  workshop: Workshop,
  gaps: Gaps,
): Generator<readonly Answer[], void, undefined> {
  const before = answered.get(setUps) ?? { near: [], all: [] };
  answered.set(setUps, before);
  const least = new Map<string, number>();
  for (const [i, { asked, bodies, told }] of setUps.entries()) {
    const found = (before[gaps][i] ??= answers(asked, bodies, told, least, workshop, gaps));
    for (const { result } of found) {
      const { id, found: gap } = result;
      if (gap !== null) least.set(id, Math.min(gap, least.get(id) ?? Infinity));
    }
    yield found;
  }
}

/** What is asked of one set-up after the other; each is searched below the least gap found so far. */
export function* answerEach(
  setUps: readonly SetUp[],
  workshop: Workshop,
  gaps: Gaps = 'all',
): Generator<readonly CheckResult[], void, undefined> {
  for (const found of answersEach(setUps, workshop, gaps)) yield found.map(({ result }) => result);
}

/**
 * The worst answer to every question over all set-ups. What bodies share is told of it alone, and
 * not while only near gaps are: it takes as long as all the rest.
 */
export const answerAll = (
  setUps: readonly SetUp[],
  workshop: Workshop = createWorkshop(),
  gaps: Gaps = 'all',
): CheckResult[] => {
  const found = [...answersEach(setUps, workshop, gaps)].flat();
  const shared = new Map(found.map((one) => [one.result, one.shared]));
  const worst = worstById([...shared.keys()]);
  return gaps === 'near' ? worst : worst.map((one) => withShared(one, shared.get(one)));
};

/** Worst result of every question over all stands and blades, in the order first asked. */
export const worstById = (results: readonly CheckResult[]): CheckResult[] => {
  const asked = new Map<string, CheckResult[]>();
  for (const result of results) {
    const same = asked.get(result.id);
    if (same) same.push(result);
    else asked.set(result.id, [result]);
  }
  return [...asked.values()].flatMap((same) => worstOf(same) ?? []);
};
