/**
 * A second virtual grind that shares nothing with the program: the blade is a cloud of points, its
 * pose is found by searches (the spine sinks as low as the nose lets it, and back as far as the step
 * lets it, at the place of the push), the tilt by bisection, and what is left at a place is the least
 * over densely sampled poses. Sharp spine corners; square, flat platen; first side of a fresh bar.
 */
export interface Situation {
  readonly length: number;
  readonly spine: (u: number) => number;
  readonly edge: (u: number) => number;
  readonly thickness: (u: number) => number;
  /** Edge at which to stop, from the midplane, mm. */
  readonly stop: number;
  readonly setoff: number;
  readonly beltHalf: number;
  readonly from: number;
  readonly to: number;
  readonly noseHalf: number;
  readonly stepHalf: number;
  readonly stepTop: number;
  /** Angle by which the step is turned, degrees. */
  readonly stepYaw: number;
}

type Point = readonly [number, number, number];

/** Turned in its plane, tilted, yawed: three elementary turns, one after the other. */
const turned = ([u, v, n]: Point, pitch: number, tilt: number, yaw: number): Point => {
  const [a, b] = [
    u * Math.cos(pitch) + v * Math.sin(pitch),
    v * Math.cos(pitch) - u * Math.sin(pitch),
  ];
  const [y, z] = [
    -b * Math.sin(tilt) - n * Math.cos(tilt),
    b * Math.cos(tilt) - n * Math.sin(tilt),
  ];
  return [a * Math.cos(yaw) - y * Math.sin(yaw), a * Math.sin(yaw) + y * Math.cos(yaw), z];
};

/** Where a one-dipped function is least, by golden section. */
const dip = (f: (x: number) => number, lo: number, hi: number): number => {
  const g = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [lo, hi];
  let [p, q] = [b - g * (b - a), a + g * (b - a)];
  let [fp, fq] = [f(p), f(q)];
  while (b - a > 1e-8) {
    if (fp > fq) {
      [a, p, fp] = [p, q, fq];
      q = a + g * (b - a);
      fq = f(q);
    } else {
      [b, q, fq] = [q, p, fp];
      p = b - g * (b - a);
      fp = f(p);
    }
  }
  return (a + b) / 2;
};

/** How far the blade's first point, and the pushed point, reach towards nose or step. */
interface Gap {
  readonly limit: number;
  readonly own: number;
}

const gapOf = ({ limit, own }: Gap): number => Math.abs(limit - own);

interface Stood {
  readonly m: number;
  readonly pitch: number;
  readonly tilt: number;
  readonly yaw: number;
  readonly y: number;
  readonly z: number;
}

/** Corners of the spine near place m, coarse away from where the blade is pushed. */
const corners = (s: Situation, m: number, load: number, side: number): Point[] => {
  const corner = (u: number): Point => [
    u - m,
    s.spine(u) - s.spine(m),
    (side * s.thickness(u)) / 2,
  ];
  const points: Point[] = [corner(m + load)];
  for (let u = Math.max(0, m - 64); u <= Math.min(s.length, m + 64); u += 2) points.push(corner(u));
  const ends = [s.noseHalf, s.stepHalf].flatMap((half) => [-half, half]);
  for (const middle of [load, ...ends])
    for (let d = -3; d <= 3; d += 0.2) {
      const u = m + middle + d;
      if (u >= 0 && u <= s.length) points.push(corner(u));
    }
  return points;
};

/**
 * Stands the blade at a tilt. Pushed opposite the point m + load, it takes the pitch that brings
 * that point of the spine nearest the nose, and the yaw that brings it nearest the step's line.
 */
const standAt = (s: Situation, m: number, tilt: number, load: number): Stood => {
  const [near, far] = [corners(s, m, load, 1), corners(s, m, load, -1)];
  const heights = (pitch: number): Gap => {
    let lowest = Infinity;
    for (const p of near) {
      const [x, , z] = turned(p, pitch, tilt, 0);
      if (Math.abs(x) <= s.noseHalf && z < lowest) lowest = z;
    }
    return { limit: lowest, own: turned(near[0] as Point, pitch, tilt, 0)[2] };
  };
  const pitch = dip((p) => gapOf(heights(p)), -0.3, 0.3);
  const z = -heights(pitch).limit;
  const slope = Math.tan((s.stepYaw * Math.PI) / 180);
  const backs = (yaw: number): Gap => {
    let most = -Infinity;
    const over = ([x, y]: Point): number => y - x * slope;
    for (const p of far) {
      const at = turned(p, pitch, tilt, yaw);
      if (Math.abs(at[0]) <= s.stepHalf && at[2] + z <= s.stepTop) most = Math.max(most, over(at));
    }
    return { limit: most, own: over(turned(far[0] as Point, pitch, tilt, yaw)) };
  };
  const yaw = dip((f) => gapOf(backs(f)), -0.05, 0.05);
  return { m, pitch, tilt, yaw, y: s.setoff - backs(yaw).limit, z };
};

/** Where the plane y = 0 crosses the line out of the midplane at (u, v), and at which x. */
const faceAt = (s: Situation, at: Stood, u: number, v: number): { n: number; x: number } => {
  const put = (n: number): Point =>
    turned([u - at.m, v - s.spine(at.m), n], at.pitch, at.tilt, at.yaw);
  const [p, q] = [put(0), put(1)];
  const n = (p[1] + at.y) / (p[1] - q[1]);
  return { n, x: p[0] + n * (q[0] - p[0]) };
};

/** Leans the blade in until the edge under the belt is down to the stop at its first place. */
const stopped = (s: Situation, m: number): Stood => {
  const load = (Math.max(m - s.beltHalf, 0) + Math.min(m + s.beltHalf, s.length)) / 2 - m;
  const over = (tilt: number): number => {
    const at = standAt(s, m, tilt, load);
    let least = Infinity;
    const look = (u: number): void => {
      const { n, x } = faceAt(s, at, u, s.edge(u));
      if (Math.abs(x) <= s.beltHalf + 1e-9 && n < least) least = n;
    };
    for (let u = Math.max(0, m - 38); u <= Math.min(s.length, m + 38); u += 0.5) look(u);
    // And the edge under the very ends of the belt.
    for (const end of [-s.beltHalf, s.beltHalf]) {
      let u = m + end;
      for (let i = 0; i < 12; i += 1) u += end - faceAt(s, at, u, s.edge(u)).x;
      if (u >= 0 && u <= s.length) look(u);
    }
    return least - s.stop;
  };
  let [lo, hi] = [0.002, 0.4];
  let [left, right] = [over(lo), over(hi)];
  // False position, the stale end halved (Illinois), then as close as the search for the pose lets it.
  for (let i = 0; i < 40 && hi - lo > 1e-9; i += 1) {
    const tilt = hi - (right * (hi - lo)) / (right - left);
    const now = over(tilt);
    if (Math.abs(now) < 1e-7) return standAt(s, m, tilt, load);
    if (now > 0) [lo, left, right] = [tilt, now, right / 2];
    else [hi, right, left] = [tilt, now, left / 2];
  }
  return standAt(s, m, (lo + hi) / 2, load);
};

/** What is left at one place: its edge from the midplane, and where the face leaves the flank, v. */
export interface Left {
  readonly u: number;
  readonly edge: number;
  readonly line: number;
}

/**
 * Places along the blade after the whole stroke. Poses are sampled `coarse` apart along the stroke
 * and `fine` apart while the ends of the belt pass the place's edge and its grind line.
 */
export const bruteGrind = (
  s: Situation,
  us: readonly number[],
  fine = 0.02,
  coarse = 5,
): Left[] => {
  const known = new Map<string, Stood>();
  const pose = (m: number): Stood => {
    const key = m.toFixed(3);
    const found = known.get(key) ?? stopped(s, m);
    known.set(key, found);
    return found;
  };
  return us.map((u) => {
    const ms: number[] = [s.from, s.to];
    for (let m = s.from; m < s.to; m += coarse) if (Math.abs(m - u) < 40) ms.push(m);
    // A point of a pitched blade passes the end of the belt while another place is at its middle.
    const passing = (v: number): void => {
      for (const end of [-s.beltHalf, s.beltHalf]) {
        let m = Math.min(s.to, Math.max(s.from, u - end));
        for (let i = 0; i < 3; i += 1) {
          const { x } = faceAt(s, pose(m), u, v);
          m = Math.min(s.to, Math.max(s.from, m + x - end));
        }
        for (let d = -2; d <= 2; d += 1) ms.push(m + fine * d);
      }
    };
    const leftAt = (v: number): number =>
      ms.reduce(
        (least, m) => {
          if (m < s.from || m > s.to) return least;
          const { n, x } = faceAt(s, pose(m), u, v);
          return Math.abs(x) <= s.beltHalf && n < least ? n : least;
        },
        s.thickness(u) / 2,
      );
    const flank = s.thickness(u) / 2 - 1e-9;
    const lineNow = (): number => {
      let [lo, hi] = [s.spine(u), s.edge(u)];
      for (let i = 0; i < 40; i += 1) {
        const middle = (lo + hi) / 2;
        if (leftAt(middle) < flank) hi = middle;
        else lo = middle;
      }
      return (lo + hi) / 2;
    };
    passing(s.edge(u));
    passing(lineNow());
    return { u, edge: leftAt(s.edge(u)), line: lineNow() };
  });
};
