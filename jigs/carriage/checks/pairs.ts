import {
  all,
  chain,
  clear,
  machineBodies,
  ok,
  partForms,
  seat,
  WORLD,
  type Asked,
  type Body,
  type PartForms,
  type Result,
  type SetUp,
  type Told,
  type Vec3,
} from '../../../src/family/index.ts';
import { words as shared } from '../../shared/checks/words.ts';
import type { Stand } from '../../shared/site.ts';
import type { PlanSetting } from '../place/stand.ts';
import { clampedBodies, fixtureBodies, stopBodies, type Name } from './bodies.ts';
import { parameterPath, words, type Question } from './question.ts';

/** Parts that pass each other keep this far apart, mm. */
const PASSING = 0.3;
/** Blade and machine, mm. */
const BLADE_ROOM = 0.5;
/** How closely a contact must close, mm. */
const CLOSED = 0.03;

const { fix } = words;

const contact = (a: Name, b: Name, apart: Vec3, mend: string = fix.contactOpen): Asked => ({
  id: `contact/${a}/${b}`,
  rule: { kind: 'touch', a, b, tolerance: CLOSED, apart },
  fix: mend,
});

const UP: Vec3 = [0, 0, 1];
const BACK: Vec3 = [0, 1, 0];
const FORTH: Vec3 = [0, -1, 0];

/** What of the fixture must keep clear of, and what must touch. */
const fixturePairs = ({ c: { v } }: Question): Asked[] => {
  const running = v.runningClearance;
  const parts: Name[] = ['base', 'mount', 'fence', 'stops', 'carriage', 'foot', 'heel', 'jaw'];
  const moving: Name[] = ['carriage', 'heel', 'jaw'];
  return [
    ...parts.flatMap((a) => [
      a === 'base'
        ? clear(a, 'belt', running, fix.gapLeast, parameterPath('beltGap'))
        : clear(a, 'belt', running, fix.belt, parameterPath('edgeHeight')),
      clear(a, 'platen', running, a === 'jaw' ? fix.besideBelt : fix.clearance),
      clear(a, 'wheels', running, fix.clearance),
      clear(a, 'guards', running, fix.clearance),
    ]),
    ...(['fence', 'carriage', 'foot', 'heel', 'jaw'] as const).map((a) =>
      clear(a, 'rest', BLADE_ROOM, fix.clearance),
    ),
    ...moving.flatMap((a) => [
      ...(a === 'heel' ? [] : [clear(a, 'base', PASSING, fix.inside)]),
      clear(a, 'fence', PASSING, fix.inside, parameterPath('edgeHeight')),
      clear(a, 'stops', PASSING, fix.inside),
    ]),
    clear('foot', 'mount', PASSING, fix.inside),
    clear('hand', 'belt', v.handDistance, fix.hand, parameterPath('length')),
    clear('hand', 'wheels', v.handDistance, fix.hand, parameterPath('length')),
    clear('hand', 'platen', v.handDistance, fix.hand, parameterPath('length')),
    ...(['base', 'mount', 'fence', 'stops', 'foot', 'heel', 'jaw', 'rest', 'guards'] as const).map(
      (b) => clear('hand', b, 1, shared.fix.hand),
    ),
    seat('stops', 'rest', 0.02, UP, fix.mount),
    contact('base', 'rest', UP, fix.mount),
    contact('foot', 'base', UP),
    contact('heel', 'base', UP),
    contact('foot', 'fence', BACK),
  ];
};

/** What the clamped blade must keep clear of over its stroke, and what holds it. */
const bladePairs = ({ c: { v, grips } }: Question, blade: string): Asked[] => {
  const running = v.runningClearance;
  const held: Name = grips.find((g) => g.blade.name === blade)?.onTang ? 'tang' : 'blade';
  const beside: Name = held === 'tang' ? 'blade' : 'tang';
  return [
    ...(['base', 'mount', 'fence', 'stops', 'rest', 'wheels', 'guards'] as const).flatMap((b) => [
      clear('blade', b, BLADE_ROOM, fix.blade),
      clear('tang', b, BLADE_ROOM, fix.blade),
    ]),
    clear('tang', 'belt', running, fix.jaw, parameterPath('plungeMargin')),
    clear('tang', 'platen', running, fix.besideBelt),
    ...(['blade', 'tang'] as const).flatMap((a) => [
      clear(a, 'heel', BLADE_ROOM, fix.blade),
      clear(a, 'foot', BLADE_ROOM, fix.blade),
      clear(a, 'hand', 5, shared.fix.hand),
    ]),
    // What lies on the upright beside the clamped piece, or under the jaw with it.
    seat(beside, 'carriage', CLOSED, FORTH, fix.contactOpen),
    seat(beside, 'jaw', CLOSED, BACK, fix.contactOpen),
    { ...contact(held, 'carriage', FORTH), id: 'contact/blade/upright' },
    { ...contact(held, 'jaw', BACK), id: 'contact/blade/jaw' },
  ];
};

const TOLD: Told = {
  names: words.names,
  pose: (setting) => (setting === '' ? undefined : { setting }),
};

/** One stand: its belt and backing, and the settings that use them. */
const standSetUps = (
  q: Question,
  forms: PartForms,
  stand: Stand,
  settings: readonly PlanSetting[],
): Result<SetUp[]> => {
  const { grinder, design, v } = q.c;
  const frame = { ...WORLD, origin: [0, stand.offset, -v.base] } as const;
  return chain(machineBodies(grinder, stand.belt, stand.backing, frame, q.workshop), (machine) =>
    chain(fixtureBodies(q, forms, settings), (fixture) => {
      const around = [
        ...fixture,
        ...Object.values(machine).map((body): [Name, Body] => [body.name as Name, body]),
      ];
      const setUps: SetUp[] = [{ asked: fixturePairs(q), bodies: new Map(around), told: TOLD }];
      for (const blade of design.blades) {
        const own = settings.filter(({ clamping }) =>
          clamping.some((one) => one.blade === blade.name),
        );
        const again = own.length === settings.length ? ok(fixture) : fixtureBodies(q, forms, own);
        const found = chain(again, (bodies) =>
          chain(clampedBodies(q, blade, own), (carried) =>
            ok(new Map([...around, ...bodies, ...carried])),
          ),
        );
        if (!found.ok) return found;
        setUps.push({ asked: bladePairs(q, blade.name), bodies: found.value, told: TOLD });
      }
      return ok(setUps);
    }),
  );
};

/** The foot against its stop pin at either end of every stroke. */
const stopSetUps = (q: Question, forms: PartForms): Result<SetUp[]> =>
  all(
    ([-1, 1] as const).map((end) =>
      chain(stopBodies(q, forms, end), (bodies): Result<SetUp> => {
        const asked = [contact('foot', 'stops', [-end, 0, 0], fix.support)];
        return ok({ asked, bodies, told: TOLD });
      }),
    ),
  );

/** All bodies over all settings, strokes and sides, with what is asked about them. */
export const setUpsOf = (q: Question): Result<SetUp[]> =>
  chain(partForms(q.parts, q.workshop), (forms) => {
    const setUps: SetUp[] = [];
    const done = new Set<string>();
    for (const stand of q.c.stands) {
      const key = JSON.stringify([stand.belt.id, stand.backing.id]);
      if (done.has(key)) continue;
      done.add(key);
      const settings = q.c.plan.settings.filter(
        ({ belt, backing }) => belt === stand.belt.id && backing === stand.backing.id,
      );
      const found = standSetUps(q, forms, stand, settings);
      if (!found.ok) return found;
      setUps.push(...found.value);
    }
    return chain(stopSetUps(q, forms), (stops) => ok([...setUps, ...stops]));
  });
