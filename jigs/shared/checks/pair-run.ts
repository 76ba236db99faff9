import {
  all,
  chain,
  machineBodies,
  ok,
  partForms,
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
  solids: BladeSolids,
  { course: { movements, motion }, asked, machine, stick }: Asking,
): Result<ReadonlyMap<string, Body>> => {
  const named = new Set(asked.flatMap(({ rule }) => [rule.a, rule.b]));
  const bodies = stood.bodies.filter(({ body }) => named.has(body.name));
  const held = stick ? stickBodies(stick, forms, movements, q.workshop) : ok([]);
  return chain(held, (inHand) => {
    const moved = moving(q, { ...stood, bodies }, movements, motion);
    const all = [...moved, ...inHand, ...bladeBodies(solids, motion).values(), ...machine];
    return ok(new Map(all.map((body) => [body.name, body])));
  });
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
    { course: whole, asked: first ? [...q.machine, ...q.blade] : q.blade, machine },
    { course: strokes, asked: q.contacts, machine },
    ...(first && q.pressing.length > 0
      ? [{ course: strokes, asked: q.pressing, machine: pressed }]
      : []),
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
  return chain(all([bodies(grinder), bodies(taut)]), ([machine = [], pressed = []]) =>
    chain(standingBodies(q, forms, first.id), (stood) =>
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
      const settings = q.settings.filter(
        ({ belt, backing }) => belt === stand.belt.id && backing === stand.backing.id,
      );
      const found = standSetUps(q, forms, blades.value, stand, settings);
      if (!found.ok) return found;
      setUps.push(...found.value);
    }
    return ok(setUps);
  });
