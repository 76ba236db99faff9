import {
  bladeMesh,
  bodyOf,
  chain,
  machineBodies,
  ok,
  onGrid,
  partMeshes,
  prepare,
  shift,
  WORLD,
  type Asked,
  type Blade,
  type BladePose,
  type Body,
  type Design,
  type Frame,
  type Part,
  type PartMeshes,
  type Placement,
  type Result,
  type SetUp,
  type SideCuts,
  all,
  type Motion,
  type Solid,
  type Workshop,
} from '../../../src/family/index.ts';
import type { Stand } from '../site.ts';
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
  readonly sides?: (blade: Blade) => SideCuts;
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
  readonly blade: readonly Asked[];
  readonly contacts: readonly Asked[];
}

const CHORD = 0.005;

const handBody = ({ half, y, z }: Hand, motion: Body['motion']): Result<Body> => {
  const shape = {
    kind: 'box',
    frame: { ...WORLD, origin: [0, (y[0] + y[1]) / 2, (z[0] + z[1]) / 2] },
    size: [2 * half, y[1] - y[0], z[1] - z[0]],
  } as const;
  return chain(prepare('hand', shape), (solid) =>
    ok({ name: 'hand', solids: [solid], chordError: 0, ...(motion ? { motion } : {}) }),
  );
};

/** Bodies of the fixture at the settings of one stand, moving with them. */
const fixtureBodies = (
  q: Stroked,
  meshes: PartMeshes,
  movements: readonly Movement[],
  carried: Motion,
): Result<Map<string, Body>> => {
  const first = movements[0];
  if (!first) return ok(new Map());
  const yOf = (setting: string, name: string): number =>
    q.place(setting).find((p) => p.name === name)?.frame.origin[1] ?? 0;
  const groups = new Map<string, Placement[]>();
  const start = q.place(first.setting).filter(({ carrier }) => carrier !== 'blade');
  for (const placement of [...start, ...q.onBlade]) {
    const name = q.bodyName(placement);
    groups.set(name, [...(groups.get(name) ?? []), placement]);
  }
  const bodies = new Map<string, Body>();
  for (const [name, placements] of groups) {
    const [{ carrier, name: one } = { carrier: 'ground', name: '' }] = placements;
    const shifts = carrier === 'step' || carrier === 'hand';
    // What shifts is built at y = 0, where its solids are the same at every stand and set-off.
    const built = ({ frame, ...rest }: Placement): Placement => ({
      ...rest,
      frame: onGrid(shift(frame, [0, -yOf(first.setting, one), 0])),
    });
    const motion =
      carrier === 'blade'
        ? carried
        : shifts
          ? shiftMotion(movements, (setting) => yOf(setting, one))
          : undefined;
    const body = bodyOf(name, shifts ? placements.map(built) : placements, meshes, motion);
    if (!body.ok) return body;
    bodies.set(name, body.value);
  }
  const handAt = shiftMotion(movements, (setting) => yOf(setting, 'push-pad'));
  return chain(handBody(q.hand, handAt), (hand) => ok(bodies.set('hand', hand)));
};

/** The same with what the hand holds: the push block, or the stick. */
const handBodies = (
  q: Stroked,
  meshes: PartMeshes,
  movements: readonly Movement[],
  carried: Motion,
  stick: Stick | undefined,
): Result<Map<string, Body>> =>
  chain(fixtureBodies(q, meshes, movements, carried), (bodies) =>
    stick
      ? chain(stickBodies(stick, meshes, movements), (held) =>
          ok(
            new Map([
              ...[...bodies].filter(([name]) => !WITH_BLOCK.has(name)),
              ...held.map((body) => [body.name, body] as const),
            ]),
          ),
        )
      : ok(bodies),
  );

/** The solids of a blade and its tang: the same at every stand and setting. */
type Carried = ReadonlyMap<string, Solid>;

const bladeSolids = (q: Stroked, blade: Blade): Result<Carried> => {
  const sides = q.sides?.(blade);
  const make = (): Result<Carried> => {
    const meshes = bladeMesh(blade, { chord: CHORD, ...(sides ? { sides } : {}) });
    const keys = ['blade', 'tang'] as const;
    return chain(
      all(keys.map((key) => prepare(key, { kind: 'mesh', mesh: meshes[key] }))),
      (solids) => ok(new Map(solids.map((solid, i): [string, Solid] => [keys[i] ?? '', solid]))),
    );
  };
  // Cuts are functions: a blade that has some is not known by its numbers alone.
  return sides ? make() : q.workshop.keep('solids of a blank', JSON.stringify(blade), make);
};

const bladeBodies = (carried: Carried, motion: Motion): Map<string, Body> =>
  new Map(
    [...carried].map(([name, solid]) => [
      name,
      { name, solids: [solid], chordError: CHORD, motion },
    ]),
  );

/** One stand: its belt and backing, and the settings that use them. */
const standSetUps = (
  q: Stroked,
  meshes: PartMeshes,
  blades: readonly Carried[],
  stand: Stand,
  settings: readonly string[],
): Result<SetUp[]> => {
  const { grinder } = q.design;
  return chain(
    machineBodies(grinder, stand.belt, stand.backing, q.frameOf(stand), q.workshop),
    (machine): Result<SetUp[]> => {
      const setUps: SetUp[] = [];
      for (const [i, { name }] of q.design.blades.entries()) {
        const poses = settings.map((id) => q.poses(id, name));
        const whole = poses.flatMap((list) => movementsOf(list, q.rockHalf, q.rocking));
        const strokes = poses.flatMap((list) => movementsOf(list, q.rockHalf, 0));
        // The stick is for the far half of the stroke.
        const far = poses.flatMap((list) =>
          movementsOf(list.slice(Math.floor(list.length / 2)), q.rockHalf, 0),
        );
        for (const [movements, asked, stick] of [
          [whole, i === 0 ? [...q.machine, ...q.blade] : q.blade, undefined],
          [strokes, q.contacts, undefined],
          ...(q.stick ? [[far, q.stick.asked, q.stick] as const] : []),
        ] as const) {
          // What the blade carries moves as one with it.
          const motion = bladeMotion(movements);
          const bodies = chain(handBodies(q, meshes, movements, motion, stick), (fixture) =>
            ok(
              new Map<string, Body>([
                ...fixture,
                ...bladeBodies(blades[i] ?? new Map(), motion),
                ...Object.values(machine).map((body): [string, Body] => [body.name, body]),
              ]),
            ),
          );
          if (!bodies.ok) return bodies;
          const told = { names: q.names, pose: poseOf(movements) };
          setUps.push({ asked, bodies: bodies.value, told });
        }
      }
      return ok(setUps);
    },
  );
};

/** All bodies over all settings, strokes and sides, with what is asked about them. */
export const strokedSetUps = (q: Stroked): Result<SetUp[]> =>
  chain(partMeshes(q.parts, q.workshop), (meshes) => {
    const blades = all(q.design.blades.map((blade) => bladeSolids(q, blade)));
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
      const found = standSetUps(q, meshes, blades.value, stand, settings);
      if (!found.ok) return found;
      setUps.push(...found.value);
    }
    return ok(setUps);
  });
