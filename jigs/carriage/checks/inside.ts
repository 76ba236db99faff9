import type { CheckResult, Result } from '../../../src/family/index.ts';
import { insideChecks as shared, type Face } from '../../shared/checks/inside.ts';
import { placed } from '../place/stand.ts';
import type { Question } from './question.ts';

/** Faces that must lie on each other. */
const FACES: readonly Face[] = [
  ['fence', 'base'],
  ['upright', 'sole'],
  ['upright-angle', 'sole'],
  ['sole', 'foot-strip'],
  ['foot-strip', 'foot-bar'],
  ['sole', 'push-block'],
  ['gusset-1', 'sole'],
  ['gusset-2', 'sole'],
  ['gusset-3', 'sole'],
  ['gusset-4', 'sole'],
];

/** The carriage's own parts among each other at the first setting, up being the sole's own. */
export const insideChecks = (q: Question): Result<CheckResult[]> => {
  const [setting] = q.c.plan.settings;
  const placements = setting ? placed(q.c, q.items, setting) : [];
  return shared({
    parts: q.parts,
    placements,
    faces: FACES,
    up: placements.find(({ name }) => name === 'sole')?.frame.z ?? [0, 0, 1],
    prefix: 'joint',
  });
};
