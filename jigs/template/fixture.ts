import {
  all,
  type BeltSection,
  type BladePose,
  chain,
  cos,
  type Design,
  type Fixture,
  type Measured,
  ok,
  type PlatePart,
  radians,
  type Result,
  sin,
  text,
  type Vec2,
} from '../../src/family/index.ts';
import { checksOf } from './checks.ts';
import { cornersOf, gauge, gaugeId, tiltOn } from './gauge.ts';
import type { Lean } from './lean.ts';
import { heightOf, lengthOf, linesOf, settingId, settingsOf } from './numbers.ts';
import type { Values } from './parameters.ts';

const words = text.family.bevelGauge;

/** Leans of the blades, two a blade: left and right. */
type Pair = readonly [Lean, Lean];

const pairsOf = (leans: readonly Lean[]): Pair[] =>
  leans.flatMap((left, i): Pair[] => {
    const right = leans[i + 1];
    return i % 2 === 0 && right ? [[left, right]] : [];
  });

/** The blade standing on its spine, leaned by the tilt, the side that is ground towards the belt. */
const poseOf = (lean: Lean, setting: string): BladePose => {
  const [c, s] = [cos(radians(lean.tilt)), sin(radians(lean.tilt))];
  const turn = lean.side === 'left' ? 1 : -1;
  return {
    setting,
    blade: lean.blade.name,
    u: 0,
    frame: { origin: [0, 0, 0], x: [turn, 0, 0], y: [0, -s, c], z: [0, -turn * c, -turn * s] },
  };
};

/** Blade against the edge of its gauge, seen along the stroke. */
const sectionOf = (v: Values, [left, right]: Pair, lean: Lean): BeltSection => {
  // The edge that is used faces the maker: the gauge is turned round for the left side.
  const [near, far] = lean.side === 'right' ? [right, left] : [left, right];
  const corners = cornersOf(v, far.tilt, near.tilt);
  const foot = corners[1]?.[0] ?? 0;
  const [c, s] = [cos(radians(lean.tilt)), sin(radians(lean.tilt))];
  const at = (w: number, h: number): Vec2 => [foot + w * c - h * s, w * s + h * c];
  const blade = lean.blade.thickness[0]?.t ?? 0;
  return {
    title: words.section(lean.blade.name, words.side[lean.side]),
    lines: [
      { points: corners, closed: true, role: 'fixture' },
      {
        points: [at(0, 0), at(blade, 0), at(blade, v.height), at(0, v.height)],
        closed: true,
        role: 'blade',
      },
    ],
    dimensions: [
      { from: [0, 0], to: [foot, 0], direction: 'horizontal', text: `${foot.toFixed(1)} mm` },
    ],
  };
};

/** What the finished gauges show, and the bevel it grinds. */
const measuredOf = (leans: readonly Lean[], parts: readonly PlatePart[]): Measured[] =>
  leans.flatMap((lean, i): Measured[] => {
    const part = parts[Math.floor(i / 2)];
    const tilt = part && tiltOn(part, lean.side);
    if (tilt === undefined) return [];
    const angle = tilt - (lean.tilt - lean.angle);
    const u = lengthOf(lean.blade) / 2;
    return [
      {
        blade: lean.blade.name,
        side: lean.side,
        u,
        angle,
        bevelHeight: heightOf(lean, u, angle),
        edgeThickness: lean.blade.edge.wanted,
        certainty: { kind: 'estimate', basis: words.byHand },
      },
    ];
  });

/** A design whose leans are known, as the fixture it is. */
export const fixtureOf = (design: Design, v: Values, leans: readonly Lean[]): Fixture => {
  const pairs = pairsOf(leans);
  const ids = leans.map((lean, i) => settingId(Math.floor(i / 2) + 1, lean));
  const indexOf = (id: string): number => Math.max(0, ids.indexOf(id));
  const parts = (): Result<PlatePart[]> => all(pairs.map((pair, i) => gauge(design, v, i, pair)));
  return {
    settings: settingsOf(design, leans),
    lines: linesOf(leans),
    facts: [],
    parts,
    // Side by side before the belt, feet on the seat.
    place: () =>
      pairs.map((_, i) => ({
        part: gaugeId(i),
        name: gaugeId(i),
        frame: {
          origin: [i * 4 * v.thickness, 0, 0],
          x: [0, 1, 0],
          y: [0, 0, 1],
          z: [1, 0, 0],
        },
        carrier: 'hand',
        touches: [],
      })),
    poses: (id, blade) =>
      leans
        .filter((lean, i) => ids[i] === id && lean.blade.name === blade)
        .map((lean) => poseOf(lean, id)),
    checks: () => chain(parts(), (made) => ok(checksOf(design, leans, made))),
    measured: () => chain(parts(), (made) => ok(measuredOf(leans, made))),
    section: (id) => {
      const i = indexOf(id);
      const [pair, lean] = [pairs[Math.floor(i / 2)], leans[i]];
      return pair && lean ? sectionOf(v, pair, lean) : { title: '', lines: [], dimensions: [] };
    },
    reachless: words.reachless,
    assembly: words.assembly,
    zeroing: words.zeroing,
    cautions: words.cautions,
  };
};
