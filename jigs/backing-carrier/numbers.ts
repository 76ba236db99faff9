import {
  atan2,
  bevelPlace,
  type Certainty,
  cos,
  degrees,
  type Design,
  edgeOffsets,
  exact,
  faceDepth,
  type Fact,
  type Grinder,
  type GrindLine,
  hollowDepth,
  placeAt,
  radians,
  type Setting,
  shapeOf,
  softened,
  tan,
  text,
  wantedBevel,
  wantedHeightAt,
} from '../../src/family/index.ts';
import type { Aim } from './aim.ts';
import type { Layout } from './layout.ts';
import type { Values } from './parameters.ts';

const words = text.family.backingCarrier.setting;

/** Bevel height of a flat chord at a place, mm: b = (T/2 - e) / tan a, at most the height. */
export const bevelAt = (
  { blade, side }: Aim,
  u: number,
  angle: number,
  edge = blade.edge.wanted,
): number => {
  const { height, thickness } = placeAt(blade, u);
  const rise = thickness / 2 - edgeOffsets(blade, u, edge)[side];
  return Math.min(height, Math.max(0, rise) / tan(radians(angle)));
};

/** The bevel that is wanted at a place: its height, and the angle of its chord, degrees. */
const chordAt = ({ blade, side }: Aim, u: number) => {
  const wanted = wantedBevel(blade, side);
  const { height, thickness } = placeAt(blade, u);
  const bevelHeight = wanted ? wantedHeightAt(blade.line.follow, wanted, height) : 0;
  const rise = thickness / 2 - edgeOffsets(blade, u, blade.edge.wanted)[side];
  return { bevelHeight, angle: degrees(atan2(rise, bevelHeight)) };
};

/** Passes that run on a backing, with their numbers; the last pass where none does. */
export const passesOf = ({ sequence, grinder }: Design) => {
  const all = sequence.map((pass, i) => ({
    pass,
    step: i + 1,
    belt: grinder.belts.find(({ id }) => id === pass.belt),
    backing: grinder.backings.find(({ id }) => id === pass.backing),
  }));
  const backed = all.filter(({ backing }) => backing !== undefined && backing.kind !== 'none');
  return backed.length > 0 ? backed : all.slice(-1);
};

/** From the bare platen to the abrasive on the carrier, square to the face, mm. */
export const depthOn = (l: Layout, belt: Grinder['belts'][number] | undefined): number =>
  l.support + (belt?.thickness ?? 0);

/** What every y of a setting grows by for a belt, along the rest, mm: the face lies so much nearer. */
export const shiftOf = (
  grinder: Grinder,
  l: Layout,
  belt: Grinder['belts'][number] | undefined,
  from: Grinder['backings'][number] | undefined,
): number =>
  belt && from
    ? (depthOn(l, belt) - faceDepth(grinder, belt, from)) / cos(radians(grinder.lean))
    : NaN;

/** The shift of every belt that runs on the carrier against the bare platen, mm. */
export const bareShifts = (design: Design, l: Layout) =>
  [...new Set(passesOf(design).flatMap(({ belt }) => (belt ? [belt] : [])))].map((belt) => ({
    belt,
    shift: shiftOf(design.grinder, l, belt, { kind: 'none', id: 'bare', thickness: 0 }),
  }));

const PLACES = [
  ['heel', 0.1],
  ['middle', 0.5],
  ['tip', 0.8],
] as const;

/** Steps of a progress table. */
const STEPS = [0, 0.5, 1];

export const settingId = (step: number, side: string): string => `${String(step)}-${side}`;

/** Each backed pass on each side: where the rest goes, and what should come of it. */
export const settingsOf = (
  design: Design,
  v: Values,
  l: Layout,
  aims: readonly Aim[],
): Setting[] => {
  const { grinder, sequence } = design;
  return passesOf(design).flatMap(({ pass, step, belt, backing }, i) =>
    [...new Set(aims.map(({ side }) => side))].map((side): Setting => {
      const own = aims.filter((aim) => aim.side === side);
      const [first] = own;
      const angle = (first?.angle ?? NaN) + pass.steeper;
      const before = sequence[step - 2]?.edge ?? first?.blade.edge.asHeatTreated ?? pass.edge;
      const place = first ? bevelPlace(first.blade) : 0;
      const half = (first?.height ?? 0) / 2;
      const shift = shiftOf(grinder, l, belt, backing);
      return {
        id: settingId(step, side),
        step,
        side,
        belt: pass.belt,
        backing: l.backing.id,
        edgeStop: pass.edge,
        angle,
        readings: [
          {
            key: 'shift',
            label: words.readings.shift(backing?.kind === 'none' ? null : pass.backing),
            value: shift,
            unit: 'mm',
          },
          { key: 'depth', label: words.readings.depth, value: depthOn(l, belt), unit: 'mm' },
          {
            key: 'tilt',
            label: words.readings.tilt,
            value: (first?.tilt ?? NaN) + pass.steeper,
            unit: 'deg',
          },
        ],
        progress: STEPS.map((share) => {
          const edge = before + (pass.edge - before) * share;
          return { edge, angle, bevelHeight: first ? bevelAt(first, place, angle, edge) : 0 };
        }),
        expected: own.flatMap((aim) =>
          PLACES.map(([name, share]) => {
            const u = shapeOf(aim.blade).length * share;
            const bevelHeight = bevelAt(aim, u, chordAt(aim, u).angle + pass.steeper, pass.edge);
            return { blade: aim.blade.name, place: name, u, bevelHeight };
          }),
        ),
        // The carrier holds no blade: the push acts opposite the middle of the contact.
        push: { from: v.contact - half, to: v.contact + half, stepForce: [0, 0] },
        volume: [],
        notes: [
          ...(i === 0 ? [words.notes.zeroAgain] : []),
          ...(l.round ? [words.notes.round] : [words.notes.soft]),
        ],
      };
    }),
  );
};

/** Places that are looked at, as shares of the length. */
const SHARES = [0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8];

/**
 * The chord of the bevel along every blade. The carrier holds no blade: where the grind line runs
 * is what leads the blade, so the line is the wanted one, and said to be that.
 */
export const linesOf = (aims: readonly Aim[]): GrindLine[] =>
  aims.map((aim): GrindLine => {
    const { blade, side } = aim;
    const places = [bevelPlace(blade), ...SHARES.map((share) => shapeOf(blade).length * share)];
    return {
      blade: blade.name,
      side,
      places: places
        .sort((a, b) => a - b)
        .map((u) => {
          const { height, thickness } = placeAt(blade, u);
          const { angle, bevelHeight } = chordAt(aim, u);
          return {
            u,
            height,
            thickness,
            angle,
            bevelHeight,
            wanted: bevelHeight,
            deviation: 0,
            leftStanding: 0,
            certainty: { kind: 'estimate', basis: words.basis.line },
          };
        }),
    };
  });

const mm = (key: string, label: string, value: number, certainty: Certainty = exact): Fact => ({
  key,
  label,
  value,
  unit: 'mm',
  certainty,
});

/** The softness of the backing under the bevel of the first blade. */
export const pressed = ({ grinder }: Design, v: Values, height: number) =>
  softened({
    thickness: v.softThickness,
    modulus: v.modulus,
    tension: v.tension,
    push: v.push / grinder.belt.width,
    height,
  });

/** Numbers worth printing: the shift of every belt, and what the face does to a bevel. */
export const factsOf = (
  design: Design,
  v: Values,
  l: Layout,
  aims: readonly Aim[],
  path: number,
): Fact[] => {
  const { facts } = words;
  const soft: Certainty = { kind: 'estimate', basis: words.basis.soft };
  const shifts = bareShifts(design, l);
  const [first] = aims;
  const give = first && pressed(design, v, first.height);
  return [
    mm('backing', facts.backing(l.backing.id), l.backing.thickness),
    mm('path', facts.path, path),
    ...shifts.map(({ belt, shift }) => mm(`bare-${belt.id}`, facts.fromBare(belt.id), shift)),
    ...(l.round
      ? shifts.flatMap(({ belt }) =>
          aims.map(({ blade, side, height, angle }) =>
            mm(
              `hollow-${belt.id}-${side}-${blade.name}`,
              facts.hollow(blade.name, words.side[side], belt.id),
              hollowDepth(v.radius + belt.thickness, height / cos(radians(angle))),
            ),
          ),
        )
      : give
        ? [
            mm('sink', facts.sink, give.sink, soft),
            mm('roll-length', facts.rollLength, give.length, soft),
            {
              key: 'roll',
              label: facts.roll,
              value: give.roll,
              unit: 'deg' as const,
              certainty: soft,
            },
          ]
        : []),
  ];
};
