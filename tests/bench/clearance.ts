/**
 * The clearance kernel against general-purpose libraries on one scene: 5 moving and 8 standing
 * bodies, 40 pairs, 40 places along a stroke with a lift, gaps up to 20 mm. Every contender gives
 * the least gap of each pair over all places. Interleaved runs, medians of the
 * processor time (a shared machine's clock says little), ratios.
 *
 *     npx tsx tests/bench/clearance.ts [rounds]
 */
import { cpus } from 'node:os';
import Module, { type Mat4 } from 'manifold-3d';
import { BufferAttribute, BufferGeometry, Matrix4, Vector3 } from 'three';
import { MeshBVH, type HitPointInfo } from 'three-mesh-bvh';
import { compose, frame, type Frame } from '../../src/geometry/frame.ts';
import { circle, path, rectangle, slot, type Loop } from '../../src/geometry/loop.ts';
import type { Mesh } from '../../src/model/mesh.ts';
import { meshOf } from '../../src/model/solid.ts';
import {
  clearance,
  createWorkspace,
  prepare,
  type Body,
  type Motion,
  type Workspace,
} from '../../src/check/distance/index.ts';
import { bumpyMesh, mesh, random, turned } from '../check/shapes.ts';

const WITHIN = 20;
const PLACES = 40;

const extruded = (outer: Loop, holes: Loop[], thickness: number): Mesh => {
  const made = meshOf([{ profile: { outer, holes }, from: 0, to: thickness }]);
  if (!made.ok) throw new Error(made.issues.map((issue) => issue.message).join('\n'));
  return made.value;
};

const rounded = (x: number, y: number, r: number): Loop => {
  const b = Math.SQRT2 - 1;
  return path(
    [
      [x - r, -y, b],
      [x, -y + r, 0],
      [x, y - r, b],
      [x - r, y, 0],
      [-x + r, y, b],
      [-x, y - r, 0],
      [-x, -y + r, b],
      [-x + r, -y, 0],
    ].map(([px = 0, py = 0, bulge = 0]) => ({ x: px, y: py, bulge })),
  );
};

/** A bevelled blade: a grid of sections along x, z up to the edge. */
const bladeMesh = (): Mesh => {
  const stations = 80;
  const profile = (u: number): [number, number][] => {
    const h = 50 - 30 * u ** 4;
    const t = 1.5 - 0.6 * u;
    return [
      [-t + 0.2, 0],
      [t - 0.2, 0],
      [t, 0.2],
      [t, h / 2],
      [0.1, h],
      [-0.1, h],
      [-t, h / 2],
      [-t, 0.2],
    ];
  };
  const n = 8;
  const vertices = Array.from({ length: stations + 1 }, (_, i) =>
    profile(i / stations).map(([y, z]) => [(i * 180) / stations, y, z] as const),
  ).flat();
  const triangles: number[] = [];
  for (let i = 0; i < stations; i++) {
    for (let k = 0; k < n; k++) {
      const a = i * n + k;
      const b = i * n + ((k + 1) % n);
      triangles.push(a, a + n, b, b, a + n, b + n);
    }
  }
  for (let k = 1; k < n - 1; k++) {
    triangles.push(0, k, k + 1);
    const last = stations * n;
    triangles.push(last, last + k + 1, last + k);
  }
  return mesh(vertices, triangles);
};

const next = random(99);
const holes = (count: number, span: number, radius: number): Loop[] =>
  Array.from({ length: count }, (_, i) =>
    circle([-span / 2 + (span * i) / (count - 1), 0], radius),
  );
const upright = (at: Frame): Frame => compose(at, turned([1, 0, 0], 90));

const moving: [string, Mesh, Frame][] = [
  ['blade', bladeMesh(), frame([-90, 0, 0])],
  ['handle', bumpyMesh(next, 22, 0.05, 24, 32), frame([-115, 0, 25])],
  ['push block', extruded(rounded(20, 15, 6), holes(4, 26, 2.2), 25), upright(frame([0, 40, 30]))],
  [
    'grip',
    extruded(rounded(14, 40, 9), [slot([-3, -20], [-3, 20], 9)], 18),
    upright(frame([20, 60, 60])),
  ],
  ['clamp', extruded(rounded(30, 8, 4), holes(3, 44, 3.3), 10), frame([-110, 0, -12])],
];
const standing: [string, Mesh, Frame][] = [
  ['nose', extruded(rounded(60, 14, 5), holes(6, 100, 2.75), 8), frame([0, 18, -8.4])],
  ['step', extruded(rounded(58, 5, 2), holes(5, 90, 2.2), 2.8), frame([0, 9, 0.3])],
  [
    'base',
    extruded(rounded(90, 60, 8), [...holes(10, 150, 3.3), slot([-40, 40], [40, 40], 6.6)], 10),
    frame([0, 70, -30]),
  ],
  ['bolt one', extruded(circle([0, 0], 5), [], 6), frame([-45, 24, 0.4])],
  ['bolt two', extruded(circle([0, 0], 5), [], 6), frame([45, 24, 0.4])],
  [
    'belt',
    extruded(rounded(26, 150, 24), [rounded(24.5, 148.5, 22.5)], 54),
    turned([0, 1, 0], 90, [-27, -30, 20]),
  ],
  [
    'wheel',
    extruded(circle([0, 0], 50), [circle([0, 0], 6)], 50),
    turned([0, 1, 0], 90, [-25, -60, 190]),
  ],
  [
    'guard',
    extruded(rectangle([-40, -30], [40, 30]), holes(4, 60, 4), 3),
    upright(frame([0, -4, 95])),
  ],
];

const poses = (turning: boolean): Frame[] =>
  Array.from({ length: PLACES }, (_, i) => {
    const u = i / (PLACES - 1);
    const lift = turning ? 4 * u : 0;
    return compose(turned([0, 1, 0], -lift, [75 - 150 * u, 4.65, 0.5]), turned([1, 0, 0], 3.5));
  });

const bodyOf = ([name, m, at]: [string, Mesh, Frame], motion?: Motion): Body => {
  const solid = prepare(name, { kind: 'mesh', mesh: m, frame: at });
  if (!solid.ok) throw new Error(solid.issues.map((issue) => issue.message).join('\n'));
  const body: Body = { name, solids: [solid.value], chordError: 0 };
  return motion ? { ...body, motion } : body;
};

/** One least gap a pair; a library's "beyond" is Infinity. */
type Gaps = Float64Array;

const kernel = (bodiesA: Body[], bodiesB: Body[], kept?: Workspace): (() => Gaps) => {
  return () => {
    const work = kept ?? createWorkspace();
    return Float64Array.from(
      bodiesA.flatMap((a) =>
        bodiesB.map((b) => {
          const found = clearance(a, b, { within: WITHIN, work });
          if (!found.ok) throw new Error(found.issues[0]?.message);
          return found.value.state === 'beyond' ? Infinity : Math.max(0, found.value.gap);
        }),
      ),
    );
  };
};

const matrixOf = (f: Frame): number[] => [...f.x, 0, ...f.y, 0, ...f.z, 0, ...f.origin, 1];

const bvh = (frames: Frame[], bounded: boolean): (() => Gaps) => {
  const geometry = (m: Mesh): { geometry: BufferGeometry; tree: MeshBVH } => {
    const made = new BufferGeometry();
    made.setAttribute('position', new BufferAttribute(Float32Array.from(m.vertices), 3));
    made.setIndex(new BufferAttribute(m.triangles.slice(), 1));
    const tree = new MeshBVH(made);
    (made as BufferGeometry & { boundsTree?: MeshBVH }).boundsTree = tree;
    return { geometry: made, tree };
  };
  const as = moving.map(([, m]) => geometry(m));
  const bs = standing.map(([, m]) => geometry(m));
  const placeA = moving.map(([, , f]) => new Matrix4().fromArray(matrixOf(f)));
  const toB = standing.map(([, , f]) => new Matrix4().fromArray(matrixOf(f)).invert());
  const at = frames.map((f) => new Matrix4().fromArray(matrixOf(f)));
  const point = (): HitPointInfo => ({ point: new Vector3(), distance: 0, faceIndex: 0 });
  const [one, two] = [point(), point()];
  return () => {
    const gaps: number[] = [];
    as.forEach((a, i) => {
      bs.forEach((b, j) => {
        let best = Infinity;
        for (const pose of at) {
          const matrix = new Matrix4()
            .copy(toB[j] ?? pose)
            .multiply(pose)
            .multiply(placeA[i] ?? pose);
          const limit = bounded ? Math.min(WITHIN, best) : WITHIN;
          const found = b.tree.closestPointToGeometry(a.geometry, matrix, one, two, 0, limit);
          if (found && found.distance < best) best = found.distance;
        }
        gaps.push(best < WITHIN ? best : Infinity);
      });
    });
    return Float64Array.from(gaps);
  };
};

const manifoldModule = await Module();
manifoldModule.setup();
const minGap = (frames: Frame[]): (() => Gaps) => {
  const solid = ([, m, f]: [string, Mesh, Frame]) =>
    new manifoldModule.Manifold(
      new manifoldModule.Mesh({
        numProp: 3,
        vertProperties: Float32Array.from(m.vertices),
        triVerts: m.triangles,
      }),
    ).transform(matrixOf(f) as unknown as Mat4);
  const as = moving.map(solid);
  const bs = standing.map(solid);
  return () => {
    const gaps: number[] = [];
    const placed = as.map((a) => frames.map((f) => a.transform(matrixOf(f) as unknown as Mat4)));
    for (const row of placed) {
      for (const b of bs) {
        let best = Infinity;
        for (const a of row) best = Math.min(best, a.minGap(b, WITHIN));
        gaps.push(best < WITHIN ? best : Infinity);
      }
    }
    for (const row of placed) for (const a of row) a.delete();
    return Float64Array.from(gaps);
  };
};

const median = (values: number[]): number => {
  const sorted = values.slice().sort((p, q) => p - q);
  return sorted[sorted.length >> 1] ?? NaN;
};

const run = (title: string, frames: Frame[], rounds: number): void => {
  const stills: Motion = frames.map((pose, i) => ({ kind: 'still', label: `place ${i}`, pose }));
  const glides: Motion = frames.slice(1).map((to, i) => ({
    kind: 'glide',
    label: `place ${i} to ${i + 1}`,
    from: frames[i] ?? to,
    to,
  }));
  const bs = standing.map((b) => bodyOf(b));
  const contenders: [string, () => Gaps, number][] = [
    [
      'kernel, 40 places',
      kernel(
        moving.map((m) => bodyOf(m, stills)),
        bs,
      ),
      9,
    ],
    [
      'kernel, whole stroke',
      kernel(
        moving.map((m) => bodyOf(m, glides)),
        bs,
      ),
      9,
    ],
    [
      'kernel, whole stroke, warm',
      kernel(
        moving.map((m) => bodyOf(m, glides)),
        bs,
        createWorkspace(),
      ),
      9,
    ],
    ['three-mesh-bvh, 20 mm', bvh(frames, false), 1],
    ['three-mesh-bvh, best so far', bvh(frames, true), 1],
    ['manifold-3d minGap', minGap(frames), 1],
  ];
  const times = contenders.map((): number[] => []);
  const gaps = contenders.map(([, go, repeat]) => {
    for (let i = 0; i < repeat; i++) go();
    return go();
  });
  for (let round = 0; round < rounds; round++) {
    contenders.forEach(([, go, repeat], i) => {
      for (let r = 0; r < repeat; r++) {
        const start = process.cpuUsage();
        go();
        const { user, system } = process.cpuUsage(start);
        times[i]?.push((user + system) / 1000);
      }
    });
  }
  const counted = createWorkspace();
  kernel(
    moving.map((m) => bodyOf(m, glides)),
    bs,
    counted,
  )();
  const reference = gaps[4] ?? new Float64Array();
  const ours = median(times[1] ?? []);
  console.log(
    `\n${title}: ${reference.length} pairs, ${frames.length} places, within ${WITHIN} mm`,
  );
  console.log(
    `kernel, whole stroke: ${counted.room.visited} pairs of boxes, ${counted.room.compared} of pieces`,
  );
  contenders.forEach(([name], i) => {
    const time = median(times[i] ?? []);
    let over = -Infinity;
    let under = -Infinity;
    gaps[i]?.forEach((g, k) => {
      const r = reference[k] ?? Infinity;
      if (g === Infinity && r === Infinity) return;
      over = Math.max(over, Math.min(g, WITHIN) - Math.min(r, WITHIN));
      under = Math.max(under, Math.min(r, WITHIN) - Math.min(g, WITHIN));
    });
    const near = gaps[i]?.filter((g) => g < WITHIN).length ?? 0;
    console.log(
      `${name.padEnd(28)} ${time.toFixed(2).padStart(9)} ms  ${(time / ours).toFixed(1).padStart(7)} x` +
        `   near ${near}, over ${over.toFixed(4)}, under ${under.toFixed(4)} mm`,
    );
  });
};

const rounds = Number(process.argv[2] ?? 3);
const triangles = (rows: [string, Mesh, Frame][]) =>
  rows.map(([name, m]) => `${name} ${m.triangles.length / 3}`).join(', ');
console.log(`${cpus().length} x ${cpus()[0]?.model ?? ''}, node ${process.version}`);
console.log(`moving: ${triangles(moving)}\nstanding: ${triangles(standing)}`);
run('straight stroke', poses(false), rounds);
run('stroke with a lift of 4 degrees', poses(true), rounds);
