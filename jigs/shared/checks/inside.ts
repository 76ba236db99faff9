import {
  chain,
  ok,
  pairResult,
  rangeCheck,
  partForms,
  withShared,
  worstOf,
  type Assembly,
  type CheckResult,
  type Fit,
  type PairRule,
  type PartForms,
  type Result,
} from '../../../src/family/index.ts';
import { APART, CLOSED, fitsOf, pairsOf, stoodOf, type Pairs } from './inside-pairs.ts';
import { parameterPath, words } from './words.ts';

const standChecks = (q: Assembly, forms: PartForms): Result<readonly CheckResult[]> =>
  chain(stoodOf(q, forms), (stood) =>
    chain(pairsOf(q, stood), (pairs) =>
      chain(fitsOf(q, stood), (fits) => ok([...summary(q, pairs), ...fitResults(fits)])),
    ),
  );

/**
 * The fixture's own parts among each other: faces that must meet are closed, everything else that
 * is said to touch does no more than touch or is held in a hole made for it, and nothing else
 * comes within a tenth of a millimetre.
 */
export const insideChecks = (q: Assembly): Result<readonly CheckResult[]> =>
  chain(partForms(q.parts, q.workshop), (forms) => {
    const { parts, placements, faces, up, prefix, motions } = q;
    const ask = () => standChecks(q, forms);
    const ways = [...(motions ?? [])];
    // A course is known by running it alone.
    if (ways.some(([, motion]) => motion.some(({ kind }) => kind === 'course'))) return ask();
    const standing = JSON.stringify([placements, faces, up, prefix, motions && ways]);
    // The parts of a fixture stand in as many assemblies as it has settings.
    return q.workshop.assemblies(`${q.workshop.contentOf(parts)} ${standing}`, ask);
  });

/** Every failed fit, and one line for all that fit. */
const fitResults = (fits: readonly Fit[]): CheckResult[] => {
  const crossing = fits.filter(({ state }) => state === 'crossing');
  const terms = { kind: 'contact', basis: words.basis.geometry, fix: words.fix.fit } as const;
  const wrong = crossing.map(({ a, b, bore, shared }) => {
    const failed = rangeCheck({
      ...terms,
      id: `fit/${a}/${b}`,
      label: words.labels.fit(a, b),
      found: bore?.off ?? null,
      atMost: bore?.allowed ?? 0,
    });
    return withShared(failed, shared);
  });
  const good = crossing.length === 0 && fits.length > 0;
  const how = (state: Fit['state']): number => fits.filter((fit) => fit.state === state).length;
  return [
    ...wrong,
    {
      ...terms,
      id: 'fit/all',
      label: words.labels.fits,
      passed: good,
      unit: 'mm',
      found: good ? CLOSED : null,
      atMost: CLOSED,
      message: words.fitMessage(how('apart'), how('seated'), how('held'), crossing.length),
      fix: good ? '' : words.fix.fit,
    },
  ];
};

type Pair = Parameters<typeof pairResult>[0];

/** Whether the push block meets what locks or feeds the plate it stands on: a longer guide parts them. */
const isCrowded = ({ a, b }: Pair): boolean =>
  [a, b].includes('push-block') && [a, b].some((id) => /^(?:lock|lug|feed)-/.test(id));

const resultOf = ({ prefix }: Assembly, pair: Pair): CheckResult => {
  const contact = pair.rule.kind === 'touch';
  const apart = isCrowded(pair)
    ? { fix: words.fix.crowded, parameter: parameterPath('guideLength') }
    : { fix: words.fix.inside };
  const result = pairResult(pair, {
    id: `${contact ? prefix : 'inside'}/${pair.a}/${pair.b}`,
    label: contact ? words.labels.contact(pair.a, pair.b) : words.labels.pair(pair.a, pair.b),
    basis: words.basis.geometry,
    ...(contact ? { fix: words.fix.contactOpen } : apart),
    pose: (setting) => (setting === '' ? undefined : { setting }),
  });
  return withShared(result, pair.shared);
};

/** Every contact, every failure, and one line for all the pairs that keep apart. */
const summary = (q: Assembly, { near, far }: Pairs): CheckResult[] => {
  const of = (kind: PairRule['kind']): Pair[] => near.filter(({ rule }) => rule.kind === kind);
  const apart = of('clear');
  const failed = apart.filter(({ pass }) => !pass).map((pair) => resultOf(q, pair));
  const count = far + apart.length - failed.length;
  const good = failed.length === 0 && count > 0;
  return [
    ...of('touch').map((pair) => resultOf(q, pair)),
    ...failed,
    {
      id: 'inside/all',
      label: words.labels.inside,
      kind: 'clearance',
      passed: good,
      unit: 'mm',
      found: good ? APART : (worstOf(failed)?.found ?? null),
      atLeast: APART,
      basis: words.basis.geometry,
      message: words.insideMessage(count, failed.length, APART, q.motions !== undefined),
      fix: good ? '' : words.fix.inside,
    },
  ];
};
