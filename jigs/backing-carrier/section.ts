import {
  bevelPlace,
  flatten,
  place,
  placeAt,
  text,
  type BeltSection,
  type Design,
  type Part,
  type Placement,
  type Vec2,
} from '../../src/family/index.ts';
import type { Aim } from './aim.ts';
import { platenFrame, type Layout } from './layout.ts';
import { outlineOf, poseOf, supportAt } from './pose.ts';
import type { Values } from './parameters.ts';

const words = text.family.backingCarrier.section;

/** How much of what carried the platen is drawn and checked, mm. */
export const BEHIND = 10;

/** Points along the abrasive in the section. */
const STEPS = 24;

/** The carrier on its platen seen along the stroke, belt and blade before it. */
export const sectionOf = (
  design: Design,
  v: Values,
  l: Layout,
  aim: Aim,
  setting: { readonly id: string; readonly belt: string },
  drawn: { readonly parts: readonly Part[]; readonly placements: readonly Placement[] },
): BeltSection => {
  const { grinder } = design;
  const platen = platenFrame(grinder);
  const at = ([y, z]: Vec2): Vec2 => {
    const p = place(platen, [0, y, z]);
    return [p[1], p[2]];
  };
  const belt = grinder.belts.find(({ id }) => id === setting.belt)?.thickness ?? 0;
  const [low, high] = [l.bottom + v.endRadius, l.top - v.endRadius];
  const levels = Array.from({ length: STEPS + 1 }, (_, i) => low + ((high - low) * i) / STEPS);
  const frame = poseOf(grinder, v, l, aim, aim.tilt, belt);
  const { corners } = outlineOf(aim);
  const sign = aim.side === 'left' ? 1 : -1;
  const u = bevelPlace(aim.blade);
  const drop = placeAt(aim.blade, u).spine[1];
  const seen = [l.slots ? 'rib-slotted' : 'rib', 'soft-backing', 'cheek'].flatMap((id) => {
    const outer = drawn.parts.find((part) => part.id === id)?.layers[0]?.profile.outer;
    const stands = drawn.placements.find(({ part }) => part === id);
    if (!outer || !stands) return [];
    const points = flatten(outer, 0.05).map(([x, y]): Vec2 => {
      const p = place(stands.frame, [x, y, 0]);
      return [p[1], p[2]];
    });
    const label = words.parts[id as keyof typeof words.parts];
    return [{ role: 'fixture' as const, closed: true, points, label }];
  });
  // The platen, or what carried it.
  const from = l.grip ? -v.platenThickness : l.back - BEHIND;
  const bare: Vec2[] = [
    [from, l.bottom],
    [l.back, l.bottom],
    [l.back, l.top],
    [from, l.top],
  ];
  const face = supportAt(l, v.contact) + belt;
  return {
    title: words.title(setting.belt),
    lines: [
      {
        role: 'grinder',
        closed: true,
        points: bare.map(at),
        label: l.grip ? words.platen : words.carrying,
      },
      ...seen,
      {
        role: 'belt',
        closed: false,
        points: levels.map((z) => at([supportAt(l, z) + belt, z])),
        label: words.belt,
      },
      {
        role: 'blade',
        closed: true,
        label: words.blade,
        points: corners.map(([down, w]): Vec2 => {
          const p = place(frame, [u, down + drop, sign * w]);
          return [p[1], p[2]];
        }),
      },
    ],
    dimensions: [
      {
        from: at([0, v.contact]),
        to: at([face, v.contact]),
        direction: grinder.lean === 0 ? 'horizontal' : 'aligned',
        text: words.mm(face),
      },
    ],
  };
};
