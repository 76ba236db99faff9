import { fail, ok, problem, text, type Result, type Vec2 } from '../../../src/family/index.ts';
import { heldBy, threadFor, widthOf } from '../../shared/layout/choose-mount.ts';
import {
  barPlaces,
  patternPlaces,
  type Mount,
  type PlacedRest,
} from '../../shared/layout/mount.ts';
import type { Values } from '../parameters.ts';
import type { Layout } from './layout.ts';
import { BAR, BASE } from './sizes.ts';

const words = text.family.carriage.issues;

/** Metal that the places of mounting screws keep to holes and edges anyway, mm. */
const LEAST_WEB = 4;

/** What a mounting screw must stay clear of: fence screws, stop pins, the track of the heel tip. */
const taken = ({ base, fence, stroke }: Layout, more: number): { at: Vec2; radius: number }[] => {
  const count = Math.ceil((2 * stroke) / 4) + 1;
  const track = Array.from(
    { length: count },
    (_, i): number => -stroke + (2 * stroke * i) / (count - 1),
  );
  const y = (base.heelTrack.from + base.heelTrack.to) / 2;
  const spread = (base.heelTrack.to - base.heelTrack.from) / 2;
  return [
    ...[-1, 1].flatMap((side) => [
      { at: [side * fence.screwX, fence.rear - fence.depth / 2] as Vec2, radius: 3 + more },
      { at: [side * base.pinX, base.pinY] as Vec2, radius: BASE.pin / 2 + more },
    ]),
    ...track.map((x) => ({ at: [x, y] as Vec2, radius: spread + BASE.heelTrack })),
  ];
};

/** Slots as they are left when the rest shifts by `spread` to either side of its mean place. */
const narrowed = (rest: PlacedRest, spread: number): PlacedRest => {
  const { pattern } = rest;
  if (pattern.kind !== 'slots' || pattern.axis === 'x') return rest;
  const slots = pattern.slots.map((slot) => ({
    ...slot,
    from: Math.min(slot.from, slot.to) + spread,
    to: Math.max(slot.from, slot.to) - spread,
  }));
  return { ...rest, pattern: { ...pattern, slots } };
};

/** Where the base ends for its screws: thick sheet asks for wider webs than the places keep. */
const planOf = ({ base: { half, front, back } }: Layout, more: number) => ({
  half: half - more,
  front: front + more,
  back: back - more,
});

const byBars = (l: Layout, rest: PlacedRest, more: number): Result<Mount> => {
  const { front, back } = l.base;
  const at = barPlaces(rest, planOf(l, more), taken(l, more), 3, front, BAR.width);
  if (at.length < 4) {
    const [from, to] = [rest.front - rest.offset, rest.back - rest.offset];
    const why = words.noBars(from, to, front - rest.offset, back - rest.offset);
    return fail(problem('mount-no-bars', 'grinder.rest', why));
  }
  const x = Math.abs(at[0]?.[0] ?? 0);
  const barHalf = x + BAR.end;
  return ok({ kind: 'bars', thread: 'M6', at, barHalf, earHalf: barHalf, earFrom: front });
};

const byPattern = (
  v: Values,
  l: Layout,
  rest: PlacedRest,
  spread: number,
  more: number,
): Result<Mount> => {
  const { half, front, back } = l.base;
  const { pattern } = rest;
  if (pattern.kind === 'holes' && pattern.hole.kind === 'tapped') {
    const why = text.family.shared.issues.tappedFromBelow(pattern.hole.thread);
    return fail(problem('mount-tapped', 'grinder.rest.pattern', why));
  }
  const thread = threadFor(widthOf(rest), v.base);
  if (thread === undefined)
    return fail(
      problem(
        'mount-no-thread',
        'grinder.rest.pattern',
        text.family.shared.issues.noThread(widthOf(rest)),
      ),
    );
  const diameter = Number(thread.slice(1));
  const follows = pattern.kind === 'slots' && pattern.axis === 'y';
  if (!follows && 2 * spread > widthOf(rest) - diameter)
    return fail(problem('mount-fixed', 'fixture.parameters.mount', words.fixedPattern(2 * spread)));
  const free = narrowed(rest, spread);
  const at = patternPlaces(free, planOf(l, more), taken(l, more), diameter / 2);
  if (at.length < 2)
    return fail(
      problem('mount-misses', 'grinder.rest.pattern', words.patternMisses(2 * half, back - front)),
    );
  return ok({ kind: 'screws', thread, at, barHalf: 0, earHalf: 0, earFrom: 0 });
};

/** How the base is held on a rest that shifts by `spread` either way from belt to belt. */
export const mountOf = (v: Values, l: Layout, rest: PlacedRest, spread: number): Result<Mount> => {
  const more = Math.max(0, v.base / 2 - LEAST_WEB);
  return heldBy(v, rest, {
    pattern: () => byPattern(v, l, rest, spread, more),
    bars: () => byBars(l, rest, more),
  });
};
