import { bevelPlace, wantedBevel, wantedHeightAt } from '../blade/bevel.ts';
import type { Blade, Side } from '../blade/schema.ts';
import { problem, type Issue, type Mend } from '../core/issue.ts';
import { text } from '../text/index.ts';

const words = text.grind.plan;

const FOLLOWS = ['edge', 'share', 'spine'] as const;
const called = text.blade.parameters.line.follow.options;

/** A bevel height to ask for, mm, another thing to follow, or both. */
interface Way {
  readonly height?: number;
  readonly follow?: (typeof FOLLOWS)[number];
}

/** A grind line as a plan tells it, as far as mending it needs. */
interface Line {
  readonly blade: string;
  readonly side: Side;
  readonly greatestDeviation: number;
  readonly places: readonly {
    readonly u: number;
    readonly height: number;
    readonly bevelHeight: number;
    /** Whether the place counts for the greatest deviation. */
    readonly steers: boolean;
  }[];
}

/**
 * What brings a line that is off within what is allowed, at the setting as it is: the bevel height
 * which that setting gives at the bevel place; else another thing to follow, else both. Wishes moved
 * to what the setting gives hardly move the setting, which lies between the wishes of all blades.
 */
const wayOf = (blade: Blade, line: Line): Way | undefined => {
  const wanted = wantedBevel(blade, line.side);
  const [promised] = [...line.places].sort(
    (p, q) => Math.abs(p.u - bevelPlace(blade)) - Math.abs(q.u - bevelPlace(blade)),
  );
  if (wanted === undefined || promised === undefined) return undefined;
  const steering = line.places.filter(({ steers }) => steers);
  const off = (follow: Blade['line']['follow'], bevelHeight: number): number =>
    Math.max(
      ...steering.map(({ bevelHeight: found, height }) =>
        Math.abs(found - wantedHeightAt(follow, { ...wanted, bevelHeight }, height)),
      ),
    );
  const { follow: now, allowed } = blade.line;
  const height = Number(promised.bevelHeight.toFixed(1));
  const stated = blade.bevels[line.side].kind === 'height' && height !== wanted.bevelHeight;
  const others = FOLLOWS.filter((one) => one !== now);
  const ways: Way[] = [
    ...(stated ? [{ height }] : []),
    ...others.map((follow) => ({ follow })),
    ...(stated ? others.map((follow) => ({ follow, height })) : []),
  ];
  return ways.find(({ follow = now, height: asked = wanted.bevelHeight }) => {
    return off(follow, asked) <= allowed;
  });
};

/** The warning of a line that departs by more than its blade allows; none of one that does not. */
export const offLine = (blades: readonly Blade[], line: Line): Issue[] => {
  const index = blades.findIndex(({ name }) => name === line.blade);
  const blade = blades[index];
  if (blade === undefined || line.greatestDeviation <= blade.line.allowed) return [];
  const way = wayOf(blade, line);
  const at = `blades.${index}`;
  const why = words.offLine(
    { blade: blade.name, side: words.side[line.side], family: blades.length > 1 },
    line.greatestDeviation,
    blade.line.allowed,
    { height: way?.height, follow: way?.follow && called[way.follow] },
  );
  const issue = problem('off-line', `${at}.line`, why, 'warning');
  if (way === undefined) return [issue];
  // Both are mended one after the other.
  const mend: Mend | undefined =
    way.follow !== undefined
      ? { path: `${at}.line.follow`, value: way.follow }
      : way.height === undefined
        ? undefined
        : { path: `${at}.bevels.${line.side}.height`, value: way.height };
  return [mend ? { ...issue, mend } : issue];
};
