import type { Issue } from '../../core/issue.ts';
import type { Mesh } from '../../model/mesh.ts';
import { text } from '../../text/index.ts';
import { lintIssue } from './lint-issue.ts';

const say = text.exporting.lint;

/** Height by which the lowest vertex may miss the bed, mm. */
const BED = 1e-6;

/** The mesh as single-precision files hold it: vertices that became equal are one. */
const singlePrecision = (mesh: Mesh): number[] => {
  const known = new Map<string, number>();
  const same = Array.from({ length: mesh.vertices.length / 3 }, (_, i) => {
    const key = [0, 1, 2].map((axis) => Math.fround(mesh.vertices[3 * i + axis] ?? NaN)).join(' ');
    const first = known.get(key) ?? i;
    known.set(key, first);
    return first;
  });
  return [...mesh.triangles].map((corner) => same[corner] ?? corner);
};

/** Edges that do not run once in each direction, and triangles with two equal corners. */
const pairing = (corners: readonly number[]): { unpaired: number; degenerate: number } => {
  const balance = new Map<string, number>();
  let degenerate = 0;
  for (let t = 0; t + 2 < corners.length; t += 3) {
    const [a = 0, b = 0, c = 0] = corners.slice(t, t + 3);
    if (a === b || b === c || c === a) degenerate += 1;
    for (const [from, to] of [
      [a, b],
      [b, c],
      [c, a],
    ] as const) {
      const key = `${from} ${to}`;
      balance.set(key, (balance.get(key) ?? 0) + 1);
    }
  }
  const unpaired = [...balance].filter(
    ([key, count]) => count !== 1 || balance.get(key.split(' ').reverse().join(' ')) !== 1,
  ).length;
  return { unpaired, degenerate };
};

/** Six times the volume under the triangles, mm^3: positive when they face outwards. */
const sixfoldVolume = ({ vertices, triangles }: Mesh): number => {
  const at = (corner: number): [number, number, number] => {
    const i = 3 * (triangles[corner] ?? 0);
    return [vertices[i] ?? NaN, vertices[i + 1] ?? NaN, vertices[i + 2] ?? NaN];
  };
  let sum = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [at(t), at(t + 1), at(t + 2)];
    sum +=
      a[0] * (b[1] * c[2] - b[2] * c[1]) +
      a[1] * (b[2] * c[0] - b[0] * c[2]) +
      a[2] * (b[0] * c[1] - b[1] * c[0]);
  }
  return sum;
};

/**
 * Defects that make a printed mesh unusable, looked for in the single precision that STL stores:
 * numbers that are none, no triangles, open or doubled edges, triangles without area, a solid
 * that is inside out, and a lowest point that is not on the bed (z = 0).
 */
export const lintPrintMesh = (mesh: Mesh): Issue[] => {
  if (mesh.triangles.length < 12) return [lintIssue('mesh-empty', say.meshEmpty)];
  if (![...mesh.vertices].every(Number.isFinite)) return [lintIssue('mesh-number', say.meshNumber)];
  const { unpaired, degenerate } = pairing(singlePrecision(mesh));
  const lowest = [...mesh.vertices].reduce(
    (low, v, i) => (i % 3 === 2 ? Math.min(low, v) : low),
    Infinity,
  );
  const issues: Issue[] = [];
  if (unpaired > 0) issues.push(lintIssue('mesh-open', say.meshOpen(unpaired)));
  if (degenerate > 0) issues.push(lintIssue('mesh-degenerate', say.meshDegenerate(degenerate)));
  if (unpaired === 0 && sixfoldVolume(mesh) <= 0)
    issues.push(lintIssue('mesh-inside-out', say.meshInsideOut));
  if (Math.abs(lowest) > BED) issues.push(lintIssue('mesh-bed', say.meshBed(lowest)));
  return issues;
};
