import {
  clearanceHole,
  fail,
  ok,
  problem as told,
  raisedTo,
  text,
  threadInSteel,
  type Result,
  type Thread,
} from '../../../src/family/index.ts';
import type { Values } from '../parameters.ts';
import type { Layout } from './layout.ts';
import { barPlaces, patternPlaces, type Mount, type PlacedRest } from './mount.ts';
import { BAR, SIZE } from './sizes.ts';
import { takenBy, type Stations } from './stations.ts';

const words = text.family.shared.issues;

/** Threads that fit a passage of the given width, the strongest first. */
const FROM_BELOW: readonly Thread[] = ['M8', 'M6', 'M5', 'M4'];
export const widthOf = ({ pattern }: PlacedRest): number =>
  pattern.kind === 'slots'
    ? Math.min(...pattern.slots.map(({ width }) => width))
    : pattern.kind === 'holes' && pattern.hole.kind === 'plain'
      ? pattern.hole.diameter
      : 0;

/** Strongest thread that passes the rest and still finds enough of itself in the base. */
export const threadFor = (width: number, base: number): Thread | undefined =>
  FROM_BELOW.find(
    (thread) => clearanceHole(thread, 'close').diameter <= width && threadInSteel(thread) <= base,
  );

const MOUNT = 'fixture.parameters.mount';

type Way = 'pattern' | 'bars';

/**
 * Held in the way that is asked for. Where that fails, the issue says whether the other way has
 * room, and is mended by it: what is said first is what is set. A rest without holes or slots knows clamp bars only.
 */
export const heldBy = (
  { mount }: Pick<Values, 'mount'>,
  { pattern }: PlacedRest,
  ways: Readonly<Record<Way, () => Result<Mount>>>,
): Result<Mount> => {
  const asked = mount === 'bars' || pattern.kind === 'edges' ? 'bars' : 'pattern';
  const held = ways[asked]();
  if (held.ok || pattern.kind === 'edges') return held;
  const other = asked === 'bars' ? 'pattern' : 'bars';
  const holds = ways[other]().ok;
  return fail(
    ...held.issues.map((issue) => ({
      ...issue,
      fix: words.otherMount(other, holds, issue.fix),
      ...(holds ? { mend: { path: MOUNT, value: other } } : {}),
    })),
  );
};

const problem = (code: string, path: string, why: { message: string; fix: string }) =>
  fail(told(code, path, why));

const byPattern = (v: Values, l: Layout, s: Stations, rest: PlacedRest): Result<Mount> => {
  const { pattern } = rest;
  const tapped =
    pattern.kind === 'holes' && pattern.hole.kind === 'tapped' ? pattern.hole.thread : undefined;
  const isTapped = tapped !== undefined;
  const thread = tapped ?? threadFor(widthOf(rest), v.base);
  const none = { barHalf: 0, earHalf: 0, earFrom: 0 };
  if (thread === undefined)
    return problem('mount-no-thread', 'grinder.rest.pattern', words.noThread(widthOf(rest)));
  const radius = Number(thread.slice(1)) / 2;
  // Heads from above lie in the packer: they need its area and its thickness.
  const plan = isTapped ? { ...l.base, front: l.packer.front + 4 } : l.base;
  const head = Number(thread.slice(1));
  if (isTapped && head > v.plate)
    return fail(
      raisedTo(
        told('mount-head', 'fixture.parameters.plate', words.headTooHigh(thread, v.plate, head)),
        head,
      ),
    );
  const at = patternPlaces(rest, plan, takenBy(v, s), isTapped ? radius + 3 : radius);
  if (at.length < 2)
    return problem(
      'mount-misses',
      'grinder.rest.pattern',
      words.patternMisses(2 * l.base.half, l.base.front - rest.offset, l.base.back - rest.offset),
    );
  return ok({ kind: isTapped ? 'from-above' : 'screws', thread, at, ...none });
};

/** Least width of an ear beside the base, mm: a narrower step in the outline cannot be cut. */
const LEAST_EAR = 1;

const byBars = (v: Values, l: Layout, s: Stations, rest: PlacedRest): Result<Mount> => {
  const thread: Thread = 'M6';
  // The collar hangs below the seat beside the nose; ears of the base start behind it.
  const earFrom = 2 * l.collar.thickness + l.collar.gripped + SIZE.collarHead + l.nose.front + 4;
  const at = barPlaces(rest, l.base, takenBy(v, s), 3, earFrom, BAR.width);
  if (at.length < 4)
    return problem(
      'mount-no-bars',
      'grinder.rest',
      words.noBars(rest.front - rest.offset, rest.back - rest.offset, l.base.back - rest.offset),
    );
  const x = Math.abs(at[0]?.[0] ?? 0);
  const half = x + BAR.end;
  return ok({
    kind: 'bars',
    thread,
    at,
    barHalf: half,
    earHalf: half > l.base.half ? Math.max(half, l.base.half + LEAST_EAR) : l.base.half,
    earFrom,
  });
};

/** How the base is held on this rest; an issue where it cannot be. */
export const chooseMount = (v: Values, l: Layout, s: Stations, rest: PlacedRest): Result<Mount> =>
  heldBy(v, rest, {
    pattern: () => byPattern(v, l, s, rest),
    bars: () => byBars(v, l, s, rest),
  });
