import { problem, type Issue } from '../../core/issue.ts';
import { fail, ok, type Result } from '../../core/result.ts';
import type { Blade } from '../../blade/schema.ts';
import type { Design } from '../../document/schema.ts';
import type { Family, Fixture, Registry } from '../../family/index.ts';
import { massOf } from '../../model/measure.ts';
import { text } from '../../text/index.ts';
import { STRIP_FORM, workOf } from '../ground/work.ts';
import { reportOf } from '../../virtual/index.ts';
import { adapted, type Adapted, type Changed, type Tried } from './adapted.ts';
import { byHand, type ByHand } from './by-hand.ts';
import { sensitivityOf, type Sensitivity } from './sensitivity.ts';

const words = text.virtual.suit;

/** What a fixture asks a maker to make and buy. */
export interface ToMake {
  readonly plates: number;
  readonly prints: number;
  readonly stock: number;
  readonly bought: number;
  /** Of plates, prints and stock, grams. */
  readonly mass: number;
}

/** How one family does with the blade; lengths mm. */
export interface FamilySuit {
  readonly family: string;
  readonly label: string;
  /** Everything holds; it can be used, with limits named; or it cannot be built or a check fails. */
  readonly verdict: 'suits' | 'with-limits' | 'not';
  /** Greatest deviation of a grind line from the wanted one, and what the blade allows. */
  readonly line: number | null;
  readonly allowed: number;
  /** Most that the belt's width leaves over the wanted edge. */
  readonly standing: number | null;
  /** The clearance with the least to spare over what it must be, and how much that is. */
  readonly clearance: {
    readonly label: string;
    readonly found: number;
    readonly spare: number;
  } | null;
  readonly sensitivity: Sensitivity | null;
  readonly toMake: ToMake | null;
  /** The making in words. */
  readonly cost: string;
  /** What it was solved with; none where it could not be. */
  readonly parameters: Design['fixture']['parameters'] | null;
  /** Parameters that were moved off their initial values so that the blade fits. */
  readonly changed: readonly Changed[];
  /** Parameters that were tried in vain against what stands in the way. */
  readonly tried: readonly Tried[];
  readonly whyNot: readonly string[];
}

/** Which fixture suits one blade. */
export interface BladeSuit {
  readonly blade: string;
  /** Those that suit first, then from the evenest line on. */
  readonly families: readonly FamilySuit[];
  readonly byHand: readonly ByHand[];
  readonly sentence: string;
}

/** Which fixture suits the blades of a design. */
export interface Suit {
  readonly format: 'platenwright-suit';
  readonly design: string;
  readonly blades: readonly BladeSuit[];
  /** Every family with all blades at the settings they share; none where there is one blade. */
  readonly together: readonly FamilySuit[];
  /** Which fixture serves all of them. */
  readonly sentence: string;
}

/** Grid of the comparison, mm and rows: lines are true to a tenth of a millimetre. */
const GRID = { step: 2, rows: 40 } as const;
/** Metal over the edge that a maker measures: common practice, no source, mm. */
const STANDING = 0.05;

const toMakeOf = (fixture: Fixture): ToMake | null => {
  const parts = fixture.parts();
  if (!parts.ok) return null;
  const count = (kind: string): number =>
    parts.value.reduce((sum, part) => sum + (part.kind === kind ? part.quantity : 0), 0);
  return {
    plates: count('plate'),
    prints: count('print'),
    stock: count('stock'),
    bought: count('hardware'),
    mass: parts.value.reduce(
      (sum, part) => sum + (part.kind === 'hardware' ? 0 : part.quantity * massOf(part)),
      0,
    ),
  };
};

/** The checks of a fixture: its tightest clearance, and what fails, in words. */
const checked = (fixture: Fixture): Pick<FamilySuit, 'clearance' | 'whyNot'> => {
  const checks = fixture.checks();
  if (!checks.ok) return { clearance: null, whyNot: checks.issues.map(({ message }) => message) };
  const spare = checks.value.flatMap(({ kind, label, found, atLeast, unit }) =>
    kind === 'clearance' && unit === 'mm' && found !== null && atLeast !== undefined
      ? [{ label, found, spare: found - atLeast }]
      : [],
  );
  const failed = checks.value.filter(({ passed }) => !passed);
  return {
    clearance: spare.sort((p, q) => p.spare - q.spare)[0] ?? null,
    whyNot: failed.map(({ message }) => message),
  };
};

const refused = (
  { id, label }: Family,
  [blade]: readonly Blade[],
  issues: readonly Issue[],
  moved: Pick<FamilySuit, 'changed' | 'tried'>,
): FamilySuit => ({
  ...moved,
  family: id,
  label,
  verdict: 'not',
  line: null,
  allowed: blade?.line.allowed ?? 0,
  standing: null,
  clearance: null,
  sensitivity: null,
  toMake: null,
  cost: '',
  parameters: null,
  whyNot: issues.filter(({ severity }) => severity === 'error').map(({ message }) => message),
});

const ORDER = { suits: 0, 'with-limits': 1, not: 2 } as const;

/** What one family with some parameters comes to, and whether a strip could mend its line. */
interface Judged {
  readonly suit: FamilySuit;
  readonly wantsStrip: boolean;
}

/** How one blade comes out of a fixture, and what limits that, in words. */
interface Ground {
  readonly off: number;
  readonly allowed: number;
  readonly standing: number;
  readonly sensitivity: Sensitivity | null;
  readonly limits: readonly string[];
  readonly wantsStrip: boolean;
}

const groundIn = (fixture: Fixture, blade: Blade, called: boolean): Ground | undefined => {
  const order = fixture.virtual?.(blade.name);
  if (order === undefined) return undefined;
  const { job, cure, straight } = workOf(order);
  const { lines, standing, missed } = reportOf(job, GRID);
  const off = Math.max(0, ...lines.map(({ worst }) => Math.abs(worst.value)));
  const { allowed } = blade.line;
  const limits = [
    ...(off > allowed ? [words.wanders(off, allowed)] : []),
    ...(standing.value > STANDING ? [words.stands(standing.value, standing.u)] : []),
    ...(missed.length > 0 ? [words.noStand(missed.length)] : []),
  ];
  return {
    off,
    allowed,
    standing: standing.value,
    sensitivity: sensitivityOf(job) ?? null,
    limits: called ? limits.map((limit) => words.ofBlade(blade.name, limit)) : limits,
    wantsStrip: off > allowed && cure !== undefined && straight === undefined,
  };
};

/** One family with blades; undefined for a family that holds no blade while it is ground. */
const judged = (
  blades: readonly Blade[],
  family: Family,
  { solved, parameters, changed, tried }: Adapted,
): Judged | undefined => {
  if (!solved.ok) {
    const suit = refused(family, blades, solved.issues, { changed, tried });
    return { suit, wantsStrip: false };
  }
  const fixture = solved.value;
  const ground = blades.flatMap((blade) => groundIn(fixture, blade, blades.length > 1) ?? []);
  const [worst] = [...ground].sort((p, q) => q.off - q.allowed - (p.off - p.allowed));
  if (worst === undefined || ground.length < blades.length) return undefined;
  const { clearance, whyNot } = checked(fixture);
  const toMake = toMakeOf(fixture);
  const limits = [...ground.flatMap((one) => one.limits), ...whyNot];
  const suit: FamilySuit = {
    family: family.id,
    label: family.label,
    verdict: whyNot.length > 0 ? 'not' : limits.length > 0 ? 'with-limits' : 'suits',
    line: worst.off,
    allowed: worst.allowed,
    standing: Math.max(...ground.map(({ standing }) => standing)),
    clearance,
    sensitivity: worst.sensitivity,
    toMake,
    cost: toMake ? words.cost(toMake) : '',
    parameters,
    changed,
    tried,
    whyNot: limits,
  };
  // A strip is made for one blade.
  return { suit, wantsStrip: blades.length === 1 && worst.wantsStrip };
};

/**
 * One family with the blades of a design, as it is or, where the line of a single one wanders and a
 * strip would do better, with the strip.
 */
const suitOf = (design: Design, family: Family): FamilySuit | undefined => {
  const own = design.fixture.family === family.id ? design.fixture.parameters : {};
  const plain = judged(design.blades, family, adapted(design, family, own));
  if (!plain?.wantsStrip) return plain?.suit;
  const { parameter, value } = STRIP_FORM;
  const form = family.parameters[parameter];
  if (form?.kind !== 'choice') return plain.suit;
  const strip = judged(
    design.blades,
    family,
    adapted(design, family, { ...own, [parameter]: value }),
  )?.suit;
  if (strip === undefined || ORDER[strip.verdict] >= ORDER[plain.suit.verdict]) return plain.suit;
  const called = (wanted: string): string =>
    form.options.find((option) => option.value === wanted)?.label ?? wanted;
  const chosen: Changed = { label: form.label, from: called(form.initial), to: called(value) };
  return { ...strip, changed: [chosen, ...strip.changed] };
};

/** Those that suit first, then from the evenest line on. */
const ranked = (families: readonly FamilySuit[]): FamilySuit[] =>
  [...families].sort(
    (p, q) =>
      ORDER[p.verdict] - ORDER[q.verdict] || (p.line ?? Infinity) - (q.line ?? Infinity) || 0,
  );

/**
 * Every registered family that holds blades, with its initial parameters (the design's own family
 * with the design's) moved where the design's blades ask for it, ground virtually and checked.
 */
const suitFamilies = (
  design: Design,
  registry: Registry,
  progress: (share: number) => void,
): FamilySuit[] => {
  const all = Object.values(registry.families).filter(({ aids }) => aids !== true);
  const found = all.map((family, i) => {
    const suit = suitOf(design, family);
    progress((i + 1) / all.length);
    return suit;
  });
  return ranked(found.flatMap((suit) => suit ?? []));
};

/** Which fixture suits one blade on the design's grinder, and work by hand. */
const suitBlade = (
  design: Design,
  registry: Registry,
  blade: Blade,
  progress: (share: number) => void,
): BladeSuit => {
  const families = suitFamilies({ ...design, blades: [blade] }, registry, progress);
  const hand = byHand(blade, design.grinder.belt.width);
  const [best] = families;
  const asked = hand.filter(({ reasons }) => reasons.length > 0);
  return {
    blade: blade.name,
    families,
    byHand: hand,
    sentence:
      best === undefined || best.verdict === 'not'
        ? words.onlyHand(blade.name)
        : words.best(
            blade.name,
            best.label,
            best.verdict === 'suits',
            asked.map(({ label }) => label),
          ),
  };
};

/**
 * Which fixture suits the blades of a design, or the one that is named, each by itself, and which
 * serves all of them at the settings they share. `progress` is told the share done. Fails for a blade that the design does not
 * have.
 */
export const suitDesign = (
  design: Design,
  registry: Registry,
  name?: string,
  progress: (share: number) => void = () => undefined,
): Result<Suit> => {
  const blades = design.blades.filter((one) => name === undefined || one.name === name);
  if (blades.length === 0) {
    const known = design.blades.map((one) => one.name).join(', ');
    return fail(
      problem('blade-unknown', 'blades', text.virtual.command.noBlade(name ?? '', known)),
    );
  }
  const several = blades.length > 1;
  const rounds = blades.length + (several ? 1 : 0);
  const part = (done: number) => (share: number) => progress((done + share) / rounds);
  const suits = blades.map((blade, i) => suitBlade(design, registry, blade, part(i)));
  const together = several ? suitFamilies(design, registry, part(blades.length)) : [];
  const [best] = together;
  return ok({
    format: 'platenwright-suit',
    design: design.name,
    blades: suits,
    together,
    sentence: !several
      ? (suits[0]?.sentence ?? '')
      : best === undefined || best.verdict === 'not'
        ? words.noneForAll(suits.length)
        : words.bestForAll(suits.length, best.label, best.verdict === 'suits'),
  });
};
