import { problem, type Issue } from '../core/issue.ts';
import { withValue } from '../core/path.ts';
import { chain, fail, ok, type Result } from '../core/result.ts';
import { checkDesign } from '../document/open.ts';
import type { Design } from '../document/schema.ts';
import type { Registry } from '../family/index.ts';
import { text } from '../text/index.ts';
import { build, consequence, type Built, type Consequence } from './consequence.ts';
import { parameterSpeech, spoken } from './spoken.ts';
import { parameterOf } from './tried.ts';

/** A design to be built, and what of it had to give way so far. */
export interface Candidate {
  readonly design: Design;
  readonly notes: readonly Issue[];
}

type BuiltCandidate = Candidate & { readonly built: Built };

const pathOf = (key: string): string => `fixture.parameters.${key}`;

const words = text.adapt.notes;

/** Refusals that are followed one after another at most. */
const ROUNDS = 12;

/** That a parameter of the fixture has another value than it had. */
const gaveWay = (before: Design, key: string, value: unknown, registry: Registry): Issue[] => {
  const parameter = registry.families[before.fixture.family]?.parameters[key];
  if (!parameter) return [];
  const now = before.fixture.parameters[key] ?? parameter.initial;
  const say = (one: unknown): string => spoken(one, parameterSpeech(parameter));
  const message = words.gaveWay(parameter.label, say(now), say(value));
  return [problem('adapted', pathOf(key), { message, fix: '' }, 'note')];
};

/** The same fixture with one of its choices made differently, each way once. */
const otherChoices = (candidate: Candidate, registry: Registry): Candidate[] => {
  const { family, parameters } = candidate.design.fixture;
  return Object.entries(registry.families[family]?.parameters ?? {}).flatMap(([key, parameter]) =>
    parameter.kind === 'choice'
      ? parameter.options
          .filter(({ value }) => value !== (parameters[key] ?? parameter.initial))
          .map(({ value }) => ({
            design: withValue(candidate.design, pathOf(key), value),
            notes: [...candidate.notes, ...gaveWay(candidate.design, key, value, registry)],
          }))
      : [],
  );
};

const built = (candidate: Candidate, registry: Registry): Result<BuiltCandidate> =>
  chain(checkDesign(candidate.design, registry), (design) =>
    chain(build(design, registry), (fixture) =>
      ok({ design, notes: candidate.notes, built: fixture }),
    ),
  );

/** A refusal that is met only where values named before are set. */
const after = (issue: Issue): Issue => ({ ...issue, message: words.refusedThen(issue.message) });

/**
 * The same with every number of the fixture set that refusals name, where that builds it. Else all
 * that stands against it: solvers stop at what they need first, so every value named is set to see
 * what is refused then, those of blades and sequence after those of the fixture.
 */
const withNamed = (
  candidate: Candidate,
  refused: readonly Issue[],
  registry: Registry,
): Result<BuiltCandidate> => {
  let [{ design }, issues] = [candidate, refused];
  const told = [...refused];
  const tried = new Set<string>();
  const set = new Set<string>();
  for (let round = 0; round < ROUNDS; round += 1) {
    const mends = issues.flatMap(({ severity, mend: one }) =>
      severity === 'error' && one && !tried.has(`${one.path} ${one.value}`) ? one : [],
    );
    const mend = mends.find(({ path }) => parameterOf(path) !== undefined) ?? mends[0];
    if (!mend) break;
    tried.add(`${mend.path} ${mend.value}`);
    set.add(mend.path);
    design = withValue(design, mend.path, mend.value);
    const answer = built({ design, notes: candidate.notes }, registry);
    if (answer.ok) {
      const keys = [...set].map(parameterOf);
      // What a maker wants of blades and passes is not given way.
      if (keys.includes(undefined)) break;
      // A number that several refusals moved is told once, from what it was to what it is.
      const { parameters } = answer.value.design.fixture;
      const moved = keys.flatMap((one = '') =>
        gaveWay(candidate.design, one, parameters[one], registry),
      );
      return ok({ ...answer.value, notes: [...candidate.notes, ...moved] });
    }
    issues = answer.issues;
    const met = ({ code, path }: Issue): boolean =>
      told.some((one) => one.code === code && one.path === path);
    told.push(...issues.filter((one) => one.severity === 'error' && !met(one)).map(after));
  }
  return fail(...told);
};

const keptParts = ({ parts }: Consequence): number =>
  parts.filter(({ change }) => change === 'unchanged').length;

/**
 * The design with its parameters as they are; where that cannot be built, with one choice (such as
 * how it is mounted) made differently: of those the one that keeps most parts; else with the
 * numbers that refusals name. A refusal tells all that stands against it, not the first alone.
 */
export const firstBuilt = (
  candidate: Candidate,
  before: Built,
  registry: Registry,
): Result<BuiltCandidate> => {
  const asItIs = built(candidate, registry);
  if (asItIs.ok) return asItIs;
  const others = otherChoices(candidate, registry)
    .map((other) => built(other, registry))
    .flatMap((result) => (result.ok ? [result] : []));
  const [best] = others.sort(
    (a, b) =>
      keptParts(consequence(before, b.value.built)) - keptParts(consequence(before, a.value.built)),
  );
  if (best) return best;
  return withNamed(candidate, asItIs.issues, registry);
};
