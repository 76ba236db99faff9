import type { Issue } from '../../core/issue.ts';
import { audit } from '../../model/audit.ts';
import type { Mesh } from '../../model/mesh.ts';
import { text } from '../../text/index.ts';
import { lintIssue } from './lint-issue.ts';

const say = text.exporting.lint;

/** Height by which the lowest vertex may miss the bed, mm. */
const BED = 1e-6;

/**
 * Defects that make a printed mesh unusable, as the audit finds them in the single precision that
 * STL stores: numbers that are none, no solid, open or doubled edges, triangles without area or
 * through each other, a solid inside out, and a lowest point that is not on the bed (z = 0).
 */
export const lintPrintMesh = (mesh: Mesh): Issue[] => {
  if (mesh.triangles.length < 12) return [lintIssue('mesh-empty', say.meshEmpty)];
  if (!mesh.vertices.every(Number.isFinite)) return [lintIssue('mesh-number', say.meshNumber)];
  const { openEdges, degenerate, crossings, volume, min } = audit(mesh);
  const issues: Issue[] = [];
  if (openEdges > 0) issues.push(lintIssue('mesh-open', say.meshOpen(openEdges)));
  if (degenerate > 0) issues.push(lintIssue('mesh-degenerate', say.meshDegenerate(degenerate)));
  if (crossings > 0) issues.push(lintIssue('mesh-crossing', say.meshCrossing(crossings)));
  if (openEdges === 0 && volume <= 0) issues.push(lintIssue('mesh-inside-out', say.meshInsideOut));
  if (Math.abs(min[2]) > BED) issues.push(lintIssue('mesh-bed', say.meshBed(min[2])));
  return issues;
};
