import { fail, ok, problem, text, type Result, type Vec2 } from '../../../src/family/index.ts';
import { threadFor, widthOf } from '../../shared/layout/choose-mount.ts';
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

/** How the base is held on a rest that shifts by `spread` either way from belt to belt. */
export const mountOf = (v: Values, l: Layout, rest: PlacedRest, spread: number): Result<Mount> => {
  const { half, front, back } = l.base;
  // Thick sheet asks for wider webs than the places keep by themselves.
  const more = Math.max(0, v.base / 2 - LEAST_WEB);
  const plan = { half: half - more, front: front + more, back: back - more };
  if (v.mount === 'bars' || rest.pattern.kind === 'edges') {
    const at = barPlaces(rest, plan, taken(l, more), 3, front, BAR.width);
    if (at.length < 4) return fail(problem('mount-no-bars', 'grinder.rest', words.noBars));
    const x = Math.abs(at[0]?.[0] ?? 0);
    const barHalf = x + BAR.end;
    return ok({ kind: 'bars', thread: 'M6', at, barHalf, earHalf: barHalf, earFrom: front });
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
  const follows = rest.pattern.kind === 'slots' && rest.pattern.axis === 'y';
  if (!follows && 2 * spread > widthOf(rest) - diameter)
    return fail(problem('mount-fixed', 'fixture.parameters.mount', words.fixedPattern(2 * spread)));
  const at = patternPlaces(narrowed(rest, spread), plan, taken(l, more), diameter / 2);
  if (at.length < 2)
    return fail(
      problem('mount-misses', 'grinder.rest.pattern', words.patternMisses(2 * half, back - front)),
    );
  return ok({ kind: 'screws', thread, at, barHalf: 0, earHalf: 0, earFrom: 0 });
};
