import {
  bodyOf,
  chain,
  clear,
  compose,
  machineBodies,
  ok,
  partForms,
  prepare,
  WORLD,
  type Asked,
  type Body,
  type Design,
  type Frame,
  type Placement,
  type Result,
  type SetUp,
  type Vec3,
} from '../../../src/family/index.ts';
import { carried, platenFrame, type Platen } from '../layout.ts';
import { passesOf, shiftOf } from '../numbers.ts';
import { BEHIND } from '../section.ts';
import { parameterPath, words, type Question } from './question.ts';

const { fix } = words;

type Name = keyof typeof words.names;

/** The body a placement belongs to. */
const bodyName = ({ name }: Placement): Name => {
  if (/^rib|^soft/.test(name)) return 'face';
  if (name.startsWith('cheek')) return 'cheeks';
  if (name.startsWith('grip-')) return name.startsWith('grip-left') ? 'gripLeft' : 'gripRight';
  return 'bolts';
};

/** How closely a contact must close, mm. */
const CLOSED = 0.03;

const touch = (a: Name, b: Name, apart: Vec3, mend: string): Asked => ({
  id: `contact/${a}/${b}`,
  rule: { kind: 'touch', a, b, tolerance: CLOSED, apart },
  fix: mend,
});

/** What must keep clear of what, and what must lie on what. */
const askedOf = ({ v, l, design }: Question): Asked[] => {
  const running = v.runningClearance;
  const { y } = platenFrame(design.grinder);
  const back: Vec3 = [-y[0], -y[1], -y[2]];
  const gripping: Name[] = l.grip ? ['cheeks', 'gripLeft', 'gripRight'] : [];
  const parts: Name[] = ['face', 'bolts', ...gripping];
  return [
    touch('face', 'belt', back, fix.face),
    touch('face', 'platen', y, fix.seat),
    ...(l.grip
      ? [
          touch('gripLeft', 'platen', [-1, 0, 0], fix.grip),
          touch('gripRight', 'platen', [1, 0, 0], fix.grip),
          clear('cheeks', 'platen', CLOSED, fix.cheek),
        ]
      : []),
    clear('bolts', 'platen', CLOSED, fix.cheek),
    ...parts.flatMap((a) => [
      ...(a === 'face' ? [] : [clear(a, 'belt', running, fix.belt, parameterPath('depth'))]),
      clear(a, 'wheels', running, fix.wheels, parameterPath('play')),
      clear(a, 'rest', running, fix.rest),
      clear(a, 'guards', running, fix.guards),
    ]),
  ];
};

const bare = { kind: 'none', id: 'bare', thickness: 0 } as const;

/** Where the rest stands once it has been moved away from the platen by the shift. */
const moved = ({ design, l }: Question, belt: Design['grinder']['belts'][number]): Frame => ({
  ...WORLD,
  origin: [0, shiftOf(design.grinder, l, belt, bare), 0],
});

/** What carried the platen, in its place, as a block behind it; the platen itself where it stays. */
const platenOf = (
  { design, v, l }: Question,
  stays: Body | undefined,
): Result<Body | undefined> => {
  const { platen } = design.grinder;
  if (l.grip || platen.kind === 'none') return ok(stays);
  const { width, bottom, top }: Platen = platen;
  const frame = compose(platenFrame(design.grinder), {
    ...WORLD,
    origin: [0, -v.platenThickness - BEHIND / 2, (bottom + top) / 2],
  });
  return chain(
    prepare('platen', { kind: 'box', frame, size: [width, BEHIND, top - bottom] }),
    (block) => ok({ name: 'platen', solids: [block], chordError: 0 }),
  );
};

/**
 * The carrier on the finished parts against belt, platen, wheels, rest and keep-outs, for every
 * belt that runs on it: the belt lies on the face, and on nothing else.
 */
export const setUpsOf = (q: Question): Result<SetUp[]> => {
  const { design, v, l } = q;
  const grinder = carried(design.grinder, v, l);
  return chain(partForms(q.parts, q.workshop), (forms) => {
    const bodies = new Map<string, Body>();
    for (const name of new Set(q.placements.map(bodyName))) {
      const own = q.placements.filter((p) => bodyName(p) === name);
      const body = bodyOf(name, own, forms);
      if (!body.ok) return body;
      bodies.set(name, body.value);
    }
    const setUps: SetUp[] = [];
    for (const { belt } of passesOf(design)) {
      if (!belt) continue;
      const bodiesOf = (
        of: Design['grinder'],
        backing: Parameters<typeof machineBodies>[2],
        frame: Frame,
      ) => machineBodies(of, belt, backing, frame, q.workshop);
      const found = chain(bodiesOf(grinder, l.backing, WORLD), ({ belt: running }) =>
        chain(bodiesOf(design.grinder, bare, WORLD), (machine) =>
          chain(bodiesOf(design.grinder, bare, moved(q, belt)), ({ rest }) => {
            return chain(platenOf(q, machine.platen), (platen) => {
              const all = new Map(bodies);
              for (const [name, body] of Object.entries({
                ...machine,
                platen,
                belt: running,
                rest,
              }))
                if (body) all.set(name, body);
              const names = l.grip ? words.names : { ...words.names, platen: words.carrying };
              const told = { names, pose: () => ({ setting: q.first }) };
              return ok({ asked: askedOf(q), bodies: all, told });
            });
          }),
        ),
      );
      if (!found.ok) return found;
      setUps.push(found.value);
    }
    return ok(setUps);
  });
};
