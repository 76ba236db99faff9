import {
  bodyOf,
  chain,
  machineBodies,
  ok,
  onGrid,
  partForms,
  shift,
  WORLD,
  type Asked,
  type BladePose,
  type Body,
  type Carrier,
  type Design,
  type Frame,
  type Part,
  type PartForms,
  type Placement,
  type Result,
  type SetUp,
  all,
  type Motion,
  type Workshop,
} from '../../../src/family/index.ts';
import { byKey } from '../later.ts';
import type { Stand } from '../site.ts';
import { bladeBodies, bladeSolids, type AsItComes, type BladeSolids } from './blade-solids.ts';
import { stickBodies, WITH_BLOCK, type Stick } from './stick.ts';
import { bladeMotion, movementsOf, poseOf, shiftMotion, type Movement } from './sweeps.ts';

/** The box in which the hand holds the push block, from the pad's tip (y) and the seat (z), mm. */
export interface Hand {
  readonly half: number;
  readonly y: readonly [front: number, back: number];
  readonly z: readonly [low: number, high: number];
}

/** A fixture whose blade is stroked, with what is asked about its bodies. */
export interface Stroked {
  readonly design: Design;
  readonly workshop: Workshop;
  readonly parts: readonly Part[];
  readonly place: (setting: string) => readonly Placement[];
  /** What the blade carries, in blade coordinates. */
  readonly onBlade: readonly Placement[];
  readonly poses: (setting: string, blade: string) => readonly BladePose[];
  readonly settings: readonly {
    readonly id: string;
    readonly belt: string;
    readonly backing: string;
  }[];
  readonly stands: readonly Stand[];
  /** From the grinder to the seat frame, without lean. */
  readonly frameOf: (stand: Stand) => Frame;
  /** Name of the body a placement belongs to. */
  readonly bodyName: (placement: Placement) => string;
  /** The blade as it comes; the full blank unless stated. */
  readonly comes?: AsItComes;
  /** The push stick, which takes the place of the block near the tip. */
  readonly stick?: Stick;
  /** The block is held here; half length of what the blade is rocked over, and how far, degrees. */
  readonly hand: Hand;
  readonly rockHalf: number;
  readonly rocking: number;
  /** Names of all bodies for people. */
  readonly names: Readonly<Record<string, string>>;
  /** Asked once a stand; for every blade over stroke and rocking; over the stroke alone. */
  readonly machine: readonly Asked[];
  /** Asked once a stand, of what stands behind a blade that presses the belt on its support. */
  readonly pressing: readonly Asked[];
  readonly blade: readonly Asked[];
  readonly contacts: readonly Asked[];
}

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
interface Stood {
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
const standingBodies = (q: Stroked, forms: PartForms, setting: string): Result<Stood> => {
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

/** The same over movements of a blade, which carries some of them. */
const moving = (
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
  return bodies.map(({ body, carrier }) => {
    const motion = motionOf(carrier);
    return motion ? { ...body, motion } : body;
  });
};

/** The same with what the hand holds: the push block, or the stick. */
const handBodies = (
  q: Stroked,
  forms: PartForms,
  stood: Stood,
  movements: readonly Movement[],
  carried: Motion,
  stick: Stick | undefined,
): Result<readonly Body[]> => {
  if (stick === undefined) return ok(moving(q, stood, movements, carried));
  const bodies = stood.bodies.filter(({ body }) => !WITH_BLOCK.has(body.name));
  return chain(stickBodies(stick, forms, movements), (held) =>
    ok([...moving(q, { ...stood, bodies }, movements, carried), ...held]),
  );
};

/** Set-ups of one blade among the bodies of a stand. */
const bladeSetUps = (
  q: Stroked,
  forms: PartForms,
  stood: Stood,
  machine: readonly Body[],
  pressed: readonly Body[],
  {
    solids,
    name,
    first,
  }: { readonly solids: BladeSolids; readonly name: string; readonly first: boolean },
  settings: readonly string[],
): Result<SetUp[]> => {
  const poses = settings.map((id) => q.poses(id, name));
  const whole = poses.flatMap((list) => movementsOf(list, q.rockHalf, q.rocking));
  const strokes = poses.flatMap((list) => movementsOf(list, q.rockHalf, 0));
  // The stick is for the far half of the stroke.
  const far = poses.flatMap((list) =>
    movementsOf(list.slice(Math.floor(list.length / 2)), q.rockHalf, 0),
  );
  const asking = [
    [whole, first ? [...q.machine, ...q.blade] : q.blade, undefined, machine],
    [strokes, q.contacts, undefined, machine],
    ...(first && q.pressing.length > 0 ? [[strokes, q.pressing, undefined, pressed] as const] : []),
    ...(q.stick ? [[far, q.stick.asked, q.stick, machine] as const] : []),
  ] as const;
  return all(
    asking.map(([movements, asked, stick, still]) => {
      // What the blade carries moves as one with it.
      const motion = bladeMotion(movements);
      return chain(handBodies(q, forms, stood, movements, motion, stick), (held) => {
        const bodies = [...held, ...bladeBodies(solids, motion).values(), ...still];
        return ok<SetUp>({
          asked,
          bodies: new Map(bodies.map((body) => [body.name, body])),
          told: { names: q.names, pose: poseOf(movements) },
        });
      });
    }),
  );
};

/** One stand: its belt and backing, and the settings that use them. */
const standSetUps = (
  q: Stroked,
  forms: PartForms,
  blades: readonly BladeSolids[],
  stand: Stand,
  settings: readonly string[],
): Result<SetUp[]> => {
  const [first] = settings;
  if (first === undefined) return ok([]);
  const { belt, backing } = stand;
  const frame = q.frameOf(stand);
  const { grinder } = q.design;
  const taut = { ...grinder, belt: { ...grinder.belt, flutter: 0 } };
  const bodies = (of: typeof grinder) =>
    chain(machineBodies(of, belt, backing, frame, q.workshop), (found) => ok(Object.values(found)));
  return chain(all([bodies(grinder), bodies(taut)]), ([machine = [], pressed = []]) =>
    chain(standingBodies(q, forms, first), (stood) =>
      chain(
        all(
          blades.map((solids, i) => {
            const name = q.design.blades[i]?.name ?? '';
            const blade = { solids, name, first: i === 0 };
            return bladeSetUps(q, forms, stood, machine, pressed, blade, settings);
          }),
        ),
        (setUps) => ok(setUps.flat()),
      ),
    ),
  );
};

/** All bodies over all settings, strokes and sides, with what is asked about them. */
export const strokedSetUps = (q: Stroked): Result<SetUp[]> =>
  chain(partForms(q.parts, q.workshop), (forms) => {
    const blades = all(q.design.blades.map((blade) => bladeSolids(blade, q.workshop, q.comes)));
    if (!blades.ok) return blades;
    const setUps: SetUp[] = [];
    const done = new Set<string>();
    for (const stand of q.stands) {
      const key = JSON.stringify([stand.belt.id, stand.backing.id]);
      if (done.has(key)) continue;
      done.add(key);
      const settings = q.settings
        .filter(({ belt, backing }) => belt === stand.belt.id && backing === stand.backing.id)
        .map(({ id }) => id);
      const found = standSetUps(q, forms, blades.value, stand, settings);
      if (!found.ok) return found;
      setUps.push(...found.value);
    }
    return ok(setUps);
  });
