import {
  all,
  bodyOf,
  chain,
  ok,
  onGrid,
  shift,
  WORLD,
  type Body,
  type Carrier,
  type Motion,
  type PartForms,
  type Placement,
  type Result,
  type Workshop,
} from '../../../src/family/index.ts';
import { byKey } from '../later.ts';
import type { Hand, Pressed, Stroked } from './stroked.ts';
import { shiftMotion, type Movement } from './sweeps.ts';

const handBody = ({ half, y, z }: Hand, workshop: Workshop): Result<Body> => {
  const shape = {
    kind: 'box',
    frame: { ...WORLD, origin: [0, (y[0] + y[1]) / 2, (z[0] + z[1]) / 2] },
    size: [2 * half, y[1] - y[0], z[1] - z[0]],
  } as const;
  return chain(workshop.prepared('hand', shape), (solid) =>
    ok({ name: 'hand', solids: [solid], chordError: 0 }),
  );
};

/** A body of the fixture, built where what carries it would be at y = 0. */
interface Standing {
  readonly body: Body;
  readonly carrier: Carrier;
}

/** Bodies of the fixture at the settings of one stand, and whose place along y a carrier has. */
export interface Stood {
  readonly bodies: readonly Standing[];
  readonly leaders: ReadonlyMap<Carrier, string>;
  /** The base stands where it is at all settings of a stand. */
  readonly ground: Motion;
}

const yOf = (q: Stroked, setting: string, name: string): number =>
  q.place(setting).find((p) => p.name === name)?.frame.origin[1] ?? 0;

/** The first placement of every carrier that shifts along y; of the hand the pad, by its tip. */
const leadersOf = (placements: readonly Placement[]): Map<Carrier, string> => {
  const leaders = new Map<Carrier, string>();
  for (const { carrier, name } of placements) {
    if (carrier === 'nose' || carrier === 'blade' || leaders.has(carrier)) continue;
    leaders.set(carrier, name);
  }
  return leaders.set('hand', 'push-pad');
};

/** Bodies of the fixture at the settings of one stand, before they move. */
export const standingBodies = (q: Stroked, forms: PartForms, setting: string): Result<Stood> => {
  const groups = new Map<string, Placement[]>();
  const start = q.place(setting).filter(({ carrier }) => carrier !== 'blade');
  const leaders = leadersOf(start);
  const y = byKey((name: string) => yOf(q, setting, name));
  // What shifts is built at y = 0, where its solids are the same at every stand and set-off.
  const built = ({ frame, carrier, ...rest }: Placement): Placement => {
    const leader = leaders.get(carrier);
    if (leader === undefined) return { frame, carrier, ...rest };
    return { ...rest, carrier, frame: onGrid(shift(frame, [0, -y(leader), 0])) };
  };
  for (const placement of [...start, ...q.onBlade]) {
    const name = q.bodyName(placement);
    groups.set(name, [...(groups.get(name) ?? []), built(placement)]);
  }
  const standing = [...groups].map(([name, placements]): Result<Standing> => {
    const carrier = placements[0]?.carrier ?? 'ground';
    return chain(bodyOf(name, placements, forms), (body) => ok({ body, carrier }));
  });
  const hand = chain(handBody(q.hand, q.workshop), (body) =>
    ok<Standing>({ body, carrier: 'hand' }),
  );
  const base = leaders.get('ground');
  const pose = base === undefined ? WORLD : shift(WORLD, [0, y(base), 0]);
  const ground: Motion = [{ kind: 'still', label: '', pose }];
  return chain(all([...standing, hand]), (bodies) => ok({ bodies, leaders, ground }));
};

/** Some of these bodies over movements of a blade, which carries some of them as `carried`. */
export const moving = (
  q: Stroked,
  { bodies, leaders, ground }: Stood,
  movements: readonly Movement[],
  carried: Motion,
): Body[] => {
  const motionOf = byKey((carrier: Carrier): Motion | undefined => {
    if (carrier === 'blade') return carried;
    if (carrier === 'ground') return ground;
    const leader = leaders.get(carrier);
    return leader === undefined
      ? undefined
      : shiftMotion(movements, (setting) => yOf(q, setting, leader));
  });
  const pad = leaders.get('hand') ?? '';
  const pressed = (key: keyof Pressed): Motion =>
    shiftMotion(movements, (setting) => yOf(q, setting, pad) + q.pressedBy(setting)[key]);
  return bodies.map(({ body, carrier }) => {
    const motion =
      carrier === 'hand' ? pressed(body.name === 'pad' ? 'pad' : 'block') : motionOf(carrier);
    return motion ? { ...body, motion } : body;
  });
};
