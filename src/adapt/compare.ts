import type { Issue } from '../core/issue.ts';
import { checkDesign } from '../document/open.ts';
import type { Design } from '../document/schema.ts';
import { chain, type Result } from '../core/result.ts';
import type { Registry } from '../family/index.ts';
import { build, consequence, type Built, type Consequence } from './consequence.ts';
import { differences, type Difference } from './differences.ts';
import { withArea } from './with-area.ts';

/** What one part of a design alone would change, or why it cannot be changed alone. */
export interface AreaConsequence {
  readonly area: string;
  readonly consequence: Consequence | null;
  readonly issues: readonly Issue[];
}

export interface Comparison {
  readonly format: 'platenwright-comparison';
  readonly from: string;
  readonly to: string;
  readonly differences: readonly Difference[];
  /** Of all differences together; null where one of the designs has no fixture. */
  readonly consequence: Consequence | null;
  /** Why there is no fixture. */
  readonly issues: readonly Issue[];
  /** Of the differences of one area alone, where there are several areas and few. */
  readonly areas: readonly AreaConsequence[];
}

/** More areas than this are not tried one by one: each has to be solved. */
const MOST_AREAS = 8;

/** Parts of a design that change nothing that is made or set. */
export const WORDS_ALONE = new Set(['name', 'notes', 'revision']);

const areaConsequence = (
  from: Design,
  to: Design,
  area: string,
  built: Built,
  registry: Registry,
): AreaConsequence => {
  if (WORDS_ALONE.has(area))
    return { area, consequence: { settings: [], parts: [], purchases: [] }, issues: [] };
  const changed: Result<Built> = chain(checkDesign(withArea(from, to, area), registry), (design) =>
    build(design, registry),
  );
  return changed.ok
    ? { area, consequence: consequence(built, changed.value), issues: [] }
    : { area, consequence: null, issues: changed.issues };
};

/**
 * The difference between two designs: what, from, to, and what it means for settings and parts,
 * all together and, where few areas differ, each alone. Both are solved again; checks are not run.
 */
export const compare = (from: Design, to: Design, registry: Registry): Comparison => {
  const found = differences(from, to, registry);
  const [before, after] = [build(from, registry), build(to, registry)];
  const areas = [...new Set(found.map(({ area }) => area))];
  const alone =
    before.ok && areas.length > 1 && areas.length <= MOST_AREAS
      ? areas.map((area) => areaConsequence(from, to, area, before.value, registry))
      : [];
  return {
    format: 'platenwright-comparison',
    from: from.name,
    to: to.name,
    differences: found,
    consequence: before.ok && after.ok ? consequence(before.value, after.value) : null,
    issues: [before, after].flatMap((built) => (built.ok ? [] : built.issues)),
    areas: alone,
  };
};
