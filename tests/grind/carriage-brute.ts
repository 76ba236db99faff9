import type { Blade } from '../../src/blade/schema.ts';
import { planCarriage, type CarriageInput, type CarriagePlan } from '../../src/grind/index.ts';
import { grinder, strip } from './samples.ts';

export const rad = Math.PI / 180;
export type V3 = [number, number, number];

export const parameters: CarriageInput['parameters'] = {
  base: 100,
  footRadius: 5,
  tipRadius: 3,
  screwPitch: 1,
  divisions: 50,
  forward: 30,
  edgeHeight: 80,
  jaw: { gap: 6, width: 20, thickness: 8, below: 10 },
  plungeStop: 1,
  tipOverlap: 8,
  tipSettings: 0,
  friction: [0.2, 0.6],
  reserve: 0.1,
  pushHeight: 25,
  angleTolerance: 0.02,
  fenceTolerance: 0.05,
};

/** A short thick blade: straight edge to 50, then a belly that falls to the tip. */
export const short = (over: Partial<Blade> = {}): Blade =>
  strip({
    name: 'Short',
    outline: {
      kind: 'dimensions',
      length: 90,
      heelHeight: 28,
      bellyStart: 50,
      bellyHeight: 28,
      spineDropStart: 90,
      tipDrop: 4,
      spineSagitta: 0,
    },
    ricasso: 30,
    thickness: [{ u: 0, t: 5 }],
    bevels: { left: { kind: 'height', height: 20 }, right: { kind: 'height', height: 20 } },
    // An unground bar: nothing was taken off before the planes that are tried.
    edge: { asHeatTreated: 5, wanted: 0.2, shareLeft: 0.5 },
    line: { follow: 'spine', allowed: 5 },
    ...over,
  });

export const input = (over: Partial<CarriageInput> = {}): CarriageInput => ({
  blades: [short()],
  grinder: grinder(),
  sequence: [
    { belt: 'coarse', backing: 'bare', edge: 0.4, steeper: 0.3 },
    { belt: 'fine', backing: 'bare', edge: 0.2, steeper: 0 },
  ],
  parameters,
  ...over,
});

export const planned = (given: CarriageInput): CarriagePlan => {
  const result = planCarriage(given);
  if (!result.ok) throw new Error(result.issues.map(({ message }) => message).join('; '));
  return result.value;
};

/**
 * A carriage built of points: foot and tip as fine rounds, turned about the stroke until both
 * lowest points are level, then moved until the foot's front is where the fence is. Takes a point
 * (stroke, ahead of the foot's centre, height over the base, level) to (x, y from the abrasive
 * face's foot, z). Nothing of the solver is used.
 */
export const stand = (p: CarriageInput['parameters'], extension: number, fence: number) => {
  const round = (ahead: number, height: number, r: number) =>
    Array.from({ length: 7200 }, (_, i) => [
      ahead + r * Math.cos((i * rad) / 20),
      height + r * Math.sin((i * rad) / 20),
    ]);
  const foot = round(0, p.footRadius, p.footRadius);
  const tip = round(-p.base, p.tipRadius - extension, p.tipRadius);
  const lowest = (points: number[][], a: number) =>
    Math.min(...points.map(([y = 0, z = 0]) => z * Math.cos(a) - y * Math.sin(a)));
  let [low, high] = [-0.5, 1];
  for (let i = 0; i < 45; i += 1) {
    const middle = (low + high) / 2;
    if (lowest(tip, middle) < lowest(foot, middle)) low = middle;
    else high = middle;
  }
  const a = (low + high) / 2;
  const ahead = (y: number, z: number) => y * Math.cos(a) + z * Math.sin(a);
  const front = Math.max(...foot.map(([y = 0, z = 0]) => ahead(y, z)));
  const down = lowest(foot, a);
  return {
    tilt: a / rad,
    place: ([x, y, z]: V3): V3 => [
      x,
      fence + front - ahead(y, z),
      z * Math.cos(a) - y * Math.sin(a) - down,
    ],
  };
};

/** Edge and spine of the outlines used here, by their own circles. */
export const outlineOf = (blade: Blade) => {
  const o = blade.outline;
  if (o.kind === 'curves') {
    const [a, b] = [o.edge[0] ?? [0, 0], o.edge.at(-1) ?? [0, 0]];
    const [c, d] = [o.spine[0] ?? [0, 0], o.spine.at(-1) ?? [0, 0]];
    const on = (p: readonly number[], q: readonly number[]) => (u: number) =>
      (p[1] ?? 0) + (((q[1] ?? 0) - (p[1] ?? 0)) * (u - (p[0] ?? 0))) / ((q[0] ?? 0) - (p[0] ?? 0));
    return { edge: on(a, b), spine: on(c, d) };
  }
  const [run, fall] = [o.length - o.bellyStart, o.bellyHeight - o.tipDrop];
  const r = (run * run + fall * fall) / (2 * fall);
  return {
    spine: () => 0,
    edge: (u: number) =>
      u <= o.bellyStart
        ? o.bellyHeight
        : o.bellyHeight - r + Math.sqrt(r * r - (u - o.bellyStart) ** 2),
  };
};

export const thicknessAt = (blade: Blade, u: number): number => {
  const [a, b] = [blade.thickness[0], blade.thickness.at(-1)];
  if (!a || !b || a === b) return a?.t ?? 0;
  return a.t + ((b.t - a.t) * (u - a.u)) / (b.u - a.u);
};

/** One clamping of the plan as a real cut: signed distance of a blade point before the belt. */
export const cutter = (
  given: CarriageInput,
  plan: CarriagePlan,
  id: string,
  edge = outlineOf(given.blades[0] ?? short()).edge,
) => {
  const setting = plan.settings.find((s) => s.id === id);
  const blade = given.blades[0];
  if (!setting || !blade) throw new Error(id);
  const p = given.parameters;
  const stage = stand(p, setting.heel.extension, setting.fence);
  const held = setting.clamping[0]?.u ?? 0;
  const step = 1e-4;
  const r = Math.atan2(edge(held + step) - edge(held - step), 2 * step);
  // The far flank lies on the upright: two points of it under the jaw fix the yaw.
  const [near, far] = [-p.jaw.gap, -p.jaw.gap - p.jaw.width];
  const onTang = far < -blade.ricasso;
  const half = (u: number) => (onTang ? blade.tang.thickness : thicknessAt(blade, u)) / 2;
  const yaw = Math.atan2(half(near) - half(far), near - far);
  const ahead = (u: number, w: number): number =>
    (u - far) * Math.sin(yaw) + w * Math.cos(yaw) + half(far) * Math.cos(yaw);
  const t = given.grinder.lean * rad;
  const placed = ([u, v, w]: V3): V3 => {
    const along = u - held;
    const up = v - edge(held);
    const level: V3 = [
      along * Math.cos(r) + up * Math.sin(r),
      p.forward + ahead(u, w),
      p.edgeHeight + up * Math.cos(r) - along * Math.sin(r),
    ];
    return stage.place(level);
  };
  const before = (p: V3): number => {
    const [, y, z] = placed(p);
    return y * Math.cos(t) + z * Math.sin(t);
  };
  return { setting, stage, placed, before };
};

/** Half-thickness that remains on the near side at (u, v) after the cuts. */
export const remaining = (
  cutters: readonly { before: (p: V3) => number }[],
  blade: Blade,
  u: number,
  v: number,
): number => {
  const flank = thicknessAt(blade, u) / 2;
  let w = flank;
  for (const { before } of cutters) {
    // Linear in w: solve for the plane by two points.
    const [d0, d1] = [before([u, v, 0]), before([u, v, 1])];
    w = Math.min(w, d0 / (d0 - d1));
  }
  return w;
};
