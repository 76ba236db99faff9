import { cos, sin } from '../../core/trigonometry.ts';
import type { Vec2 } from '../../geometry/vector.ts';
import { grinderParameters as p } from '../../grinder/parameters.ts';
import type { Grinder, Rest } from '../../grinder/schema.ts';
import { text } from '../../text/index.ts';
import { input, sound, type Measure, type Picture, type PictureLine } from '../draw/picture.ts';
import { cornersOf } from './rectangle.ts';

type Table = Extract<Rest, { kind: 'table' }>;
interface Slot {
  readonly at: number;
  readonly from: number;
  readonly to: number;
  readonly width: number;
}

/** Straight pieces of a half circle at the end of a slot. */
const PIECES = 8;

/** A slot whose centreline runs from `from` to `to`, with round ends beyond them. */
const slotLine = ({ at, from, to, width }: Slot, axis: 'x' | 'y'): PictureLine => {
  const r = width / 2;
  const end = (centre: number, start: number): Vec2[] =>
    Array.from({ length: PIECES + 1 }, (_, i) => {
      const angle = start + (Math.PI * i) / PIECES;
      const along = centre + r * sin(angle);
      const across = at + r * cos(angle);
      return axis === 'y' ? [across, along] : [along, across];
    });
  return { points: [...end(to, 0), ...end(from, Math.PI)], closed: true, role: 'cut' };
};

const HOLE: Readonly<Record<string, number>> = { M4: 4, M5: 5, M6: 6, M8: 8, M10: 10 };

const tableMeasures = (rest: Table): Measure[] => {
  const half = rest.width / 2;
  return [
    input('grinder.rest.width', p.rest.width, rest.width, {
      from: [-half, rest.gap + rest.depth],
      to: [half, rest.gap + rest.depth],
      along: 'x',
      side: 'high',
    }),
    input('grinder.rest.depth', p.rest.depth, rest.depth, {
      from: [half, rest.gap],
      to: [half, rest.gap + rest.depth],
      along: 'y',
      side: 'high',
    }),
    input('grinder.rest.gap', p.rest.gap, rest.gap, {
      from: [-half, 0],
      to: [-half, rest.gap],
      along: 'y',
      side: 'low',
    }),
  ];
};

const slotMeasures = (slots: readonly Slot[], axis: 'x' | 'y', at: string): Measure[] =>
  slots.flatMap((slot, i): Measure[] => {
    const on = (along: number): Vec2 => (axis === 'y' ? [slot.at, along] : [along, slot.at]);
    const across: Vec2 = axis === 'y' ? [0, slot.from] : [slot.from, 0];
    const row = axis === 'y' ? 'y' : 'x';
    const side = axis === 'y' && slot.at > 0 ? 'high' : 'low';
    const middle = {
      from: across,
      to: on(slot.from),
      along: axis === 'y' ? 'x' : 'y',
      side: 'low',
    } as const;
    const start: Vec2 = axis === 'y' ? [slot.at, 0] : [0, slot.at];
    const end = {
      from: start,
      to: on(slot.to),
      along: row,
      side,
    } as const;
    const of = text.app.list.item(text.grinder.parameters.rest.slots.one, i + 1);
    return [
      input(`${at}.${i}.at`, p.rest.slotAt, slot.at, middle, of),
      input(`${at}.${i}.to`, p.rest.slotTo, slot.to, end, of),
    ];
  });

const cuts = (rest: Rest): PictureLine[] => {
  if (rest.kind === 'arm') return rest.slots.map((slot) => slotLine(slot, 'y'));
  const { pattern } = rest;
  return pattern.kind === 'slots' ? pattern.slots.map((s) => slotLine(s, pattern.axis)) : [];
};

const holes = (rest: Rest): Picture['discs'] => {
  if (rest.kind === 'arm' || rest.pattern.kind !== 'holes') return [];
  const { at, hole } = rest.pattern;
  const size = hole.kind === 'plain' ? hole.diameter : (HOLE[hole.thread] ?? 0);
  return at.map(([x, y]) => ({ centre: [x, y], radius: size / 2, role: 'cut' }));
};

const measures = (rest: Rest, brief: boolean): Measure[] => {
  if (rest.kind === 'arm')
    return [
      input('grinder.rest.width', p.rest.armWidth, rest.width, {
        from: [-rest.width / 2, rest.reach],
        to: [rest.width / 2, rest.reach],
        along: 'x',
        side: 'high',
      }),
      input('grinder.rest.reach', p.rest.armReach, rest.reach, {
        from: [rest.width / 2, 0],
        to: [rest.width / 2, rest.reach],
        along: 'y',
        side: 'high',
      }),
    ];
  const { pattern } = rest;
  const slotted = pattern.kind === 'slots' && !brief;
  return [
    ...tableMeasures(rest),
    ...(slotted ? slotMeasures(pattern.slots, pattern.axis, 'grinder.rest.pattern.slots') : []),
  ];
};

/** The rest from above: x along the stroke, y from the belt towards the maker. */
export const restPlan = ({ rest, belt }: Grinder, brief: boolean): Picture => {
  const half = rest.width / 2;
  const [low, high] = rest.kind === 'table' ? [rest.gap, rest.gap + rest.depth] : [0, rest.reach];
  return sound({
    name: text.app.grinder.plan,
    lines: [
      { points: cornersOf([-half, low], [half, high]), closed: true, role: 'grinder' },
      ...cuts(rest),
      {
        points: cornersOf([-belt.width / 2, -3], [belt.width / 2, 0]),
        closed: true,
        role: 'belt',
      },
      {
        points: [
          [0, -8],
          [0, high + 6],
        ],
        closed: false,
        role: 'centre',
      },
    ],
    discs: holes(rest),
    labels: [],
    measures: measures(rest, brief),
  });
};
