import { problem, type Issue } from '../core/issue.ts';
import { withValue } from '../core/path.ts';
import { chain, ok, type Result } from '../core/result.ts';
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

/** Refusals that are followed one after another at most. */
const ROUNDS = 12;

/** The same with another value of one of the fixture's parameters, and a note that says so. */
const withParameter = (
  { design, notes }: Candidate,
  key: string,
  value: number | string,
  registry: Registry,
): Candidate => {
  const parameter = registry.families[design.fixture.family]?.parameters[key];
  if (!parameter) return { design, notes };
  const path = `fixture.parameters.${key}`;
  const now = design.fixture.parameters[key] ?? parameter.initial;
  const say = (one: unknown): string => spoken(one, parameterSpeech(parameter));
  const message = text.adapt.notes.gaveWay(parameter.label, say(now), say(value));
  const note = problem('adapted', path, { message, fix: '' }, 'note');
  return { design: withValue(design, path, value), notes: [...notes, note] };
};

/** The same fixture with one of its choices made differently, each way once. */
const otherChoices = (candidate: Candidate, registry: Registry): Candidate[] => {
  const { family, parameters } = candidate.design.fixture;
  return Object.entries(registry.families[family]?.parameters ?? {}).flatMap(([key, parameter]) =>
    parameter.kind === 'choice'
      ? parameter.options
          .filter(({ value }) => value !== (parameters[key] ?? parameter.initial))
          .map(({ value }) => withParameter(candidate, key, value, registry))
      : [],
  );
};

const built = (candidate: Candidate, registry: Registry): Result<BuiltCandidate> =>
  chain(checkDesign(candidate.design, registry), (design) =>
    chain(build(design, registry), (fixture) =>
      ok({ design, notes: candidate.notes, built: fixture }),
    ),
  );

/** The same with every number of the fixture set that refusals name, as far as that builds it. */
const withNamed = (
  candidate: Candidate,
  refused: readonly Issue[],
  registry: Registry,
): BuiltCandidate | undefined => {
  let [now, issues] = [candidate, refused];
  const tried = new Set<string>();
  for (let round = 0; round < ROUNDS; round += 1) {
    const mend = issues.flatMap(({ severity, mend: one }) =>
      severity === 'error' && one && !tried.has(`${one.path} ${one.value}`) ? one : [],
    )[0];
    const key = mend && parameterOf(mend.path);
    if (!mend || key === undefined) return undefined;
    tried.add(`${mend.path} ${mend.value}`);
    now = withParameter(now, key, mend.value, registry);
    const answer = built(now, registry);
    if (answer.ok) return answer.value;
    issues = answer.issues;
  }
  return undefined;
};

const keptParts = ({ parts }: Consequence): number =>
  parts.filter(({ change }) => change === 'unchanged').length;

/**
 * The design with its parameters as they are; where that cannot be built, with one choice (such as
 * how it is mounted) made differently: of those the one that keeps most parts; else with the
 * numbers that refusals name.
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
  const named = withNamed(candidate, asItIs.issues, registry);
  return named ? ok(named) : asItIs;
};
