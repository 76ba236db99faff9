import {
  all,
  chain,
  machineBodies,
  ok,
  partForms,
  WORLD,
  type Asked,
  type Body,
  type Motion,
  type PartForms,
  type Result,
  type SetUp,
} from '../../../src/family/index.ts';
import { isGround, type Grinding } from '../grinding.ts';
import type { Stand } from '../site.ts';
import { bladeBodies, bladeSolids, type BladeSolids } from './blade-solids.ts';
import { moving, standingBodies, type Stood } from './standing.ts';
import { stickBodies, type Stick } from './stick.ts';
import type { Stroked } from './stroked.ts';
import { bladeMotion, movementsOf, poseOf, type Movement } from './sweeps.ts';

/** A blade's movements, and what the blade and all that it carries does in them. */
interface Course {
  readonly movements: readonly Movement[];
  readonly motion: Motion;
}

const courseOf = (movements: readonly Movement[]): Course => ({
  movements,
  // What the blade carries moves as one with it.
  motion: bladeMotion(movements),
});

/** The machine as its belt runs free, and with the belt pressed on its support. */
interface Machine {
  readonly machine: readonly Body[];
  readonly pressed: readonly Body[];
}

/** What is asked over a course, of the machine as it then stands, with the stick in hand or the block. */
interface Asking {
  readonly course: Course;
  readonly asked: readonly Asked[];
  readonly machine: readonly Body[];
  readonly stick?: Stick | undefined;
}

/** The bodies that are asked about, over a course of a blade. */
const bodiesFor = (
  q: Stroked,
  forms: PartForms,
  stood: Stood,
  blade: BladeSolids | undefined,
  { course: { movements, motion }, asked, machine, stick }: Asking,
): Result<ReadonlyMap<string, Body>> => {
  const named = new Set(asked.flatMap(({ rule }) => [rule.a, rule.b]));
  const bodies = stood.bodies.filter(({ body }) => named.has(body.name));
  const held = stick ? stickBodies(stick, forms, movements, q.workshop) : ok([]);
  return chain(held, (inHand) => {
    const moved = moving(q, { ...stood, bodies }, movements, motion);
    const stroked = blade ? bladeBodies(blade, motion).values() : [];
    const all = [...moved, ...inHand, ...stroked, ...machine];
    return ok(new Map(all.map((body) => [body.name, body])));
  });
};

/**
 * What is asked once a stand: of fixture and machine at every setting of it, whichever blade is
 * ground there.
 */
const machineSetUps = (
  q: Stroked,
  forms: PartForms,
  stood: Stood,
  { machine, pressed }: Machine,
  settings: readonly Grinding[],
): Result<SetUp[]> => {
  const course = courseOf(
    settings.map(({ id }) => ({
      label: id,
      setting: id,
      blade: '',
      u: NaN,
      from: WORLD,
      to: WORLD,
    })),
  );
  const told = { names: q.names, pose: (setting: string) => ({ setting }) };
  const asking = [
    { course, asked: q.machine, machine },
    { course, asked: q.pressing, machine: pressed },
  ].filter(({ asked }) => asked.length > 0);
  return all(
    asking.map((one) =>
      chain(bodiesFor(q, forms, stood, undefined, one), (bodies) =>
        ok<SetUp>({ asked: one.asked, bodies, told }),
      ),
    ),
  );
};

/** Set-ups of one blade among the bodies of a stand. */
const bladeSetUps = (
  q: Stroked,
  forms: PartForms,
  stood: Stood,
  { machine }: Machine,
  { solids, name }: { readonly solids: BladeSolids; readonly name: string },
  settings: readonly Grinding[],
): Result<SetUp[]> => {
  const ground = settings.filter((setting) => isGround(setting)({ name }));
  const strokesAt = ground.map(({ id }) => q.poses(id, name));
  // Where nothing is known of one setting, what is found at the others must not stand for it.
  const poses = strokesAt.every((list) => list.length > 0) ? strokesAt : [];
  const whole = courseOf(poses.flatMap((list) => movementsOf(list, q.rockHalf, q.rocking)));
  const strokes = courseOf(poses.flatMap((list) => movementsOf(list, q.rockHalf, 0)));
  // The stick is for the far half of the stroke.
  const far = courseOf(
    poses.flatMap((list) => movementsOf(list.slice(Math.floor(list.length / 2)), q.rockHalf, 0)),
  );
  const asking: Asking[] = [
    { course: whole, asked: q.blade, machine },
    { course: strokes, asked: q.contacts, machine },
    ...(q.stick ? [{ course: far, asked: q.stick.asked, machine, stick: q.stick }] : []),
  ];
  return all(
    asking.map((one) =>
      chain(bodiesFor(q, forms, stood, solids, one), (bodies) => {
        const told = { names: q.names, pose: poseOf(one.course.movements) };
        return ok<SetUp>({ asked: one.asked, bodies, told });
      }),
    ),
  );
};

/** One stand: its belt and backing, and the settings that use them. */
const standSetUps = (
  q: Stroked,
  forms: PartForms,
  blades: readonly BladeSolids[],
  stand: Stand,
  settings: readonly Grinding[],
): Result<SetUp[]> => {
  const [first] = settings;
  if (first === undefined) return ok([]);
  const { belt, backing } = stand;
  const frame = q.frameOf(stand);
  const { grinder } = q.design;
  const taut = { ...grinder, belt: { ...grinder.belt, flutter: 0 } };
  const bodies = (of: typeof grinder) =>
    chain(machineBodies(of, belt, backing, frame, q.workshop), (found) => ok(Object.values(found)));
  return chain(all([bodies(grinder), bodies(taut)]), ([machine = [], pressed = []]) => {
    const around = { machine, pressed };
    return chain(standingBodies(q, forms, first.id), (stood) =>
      chain(
        all([
          machineSetUps(q, forms, stood, around, settings),
          ...blades.map((solids, i) => {
            const name = q.design.blades[i]?.name ?? '';
            return bladeSetUps(q, forms, stood, around, { solids, name }, settings);
          }),
        ]),
        (setUps) => ok(setUps.flat()),
      ),
    );
  });
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
      const settings = q.settings.filter(
        ({ belt, backing }) => belt === stand.belt.id && backing === stand.backing.id,
      );
      const found = standSetUps(q, forms, blades.value, stand, settings);
      if (!found.ok) return found;
      setUps.push(...found.value);
    }
    return ok(setUps);
  });
