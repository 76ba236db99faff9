import type { Assembly, Face } from '../../../src/family/index.ts';
import { heelFrame, jawFrame, placed, type PlanSetting } from '../place/stand.ts';
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

/** What stands otherwise to the sole or the base from one setting to another. */
const standing = ({ c }: Question, setting: PlanSetting): string =>
  JSON.stringify([
    setting.tilt,
    setting.fence,
    heelFrame(setting).origin,
    jawFrame(c, setting).origin,
  ]);

/**
 * The carriage's own parts among each other, up being the sole's own: once for every setting at
 * which screw, jaw or fence stand otherwise.
 */
export const assembliesOf = (q: Question): Assembly[] => {
  const different = new Map(q.c.plan.settings.map((setting) => [standing(q, setting), setting]));
  return [...different.values()].map((setting) => {
    const placements = placed(q.c, q.items, setting);
    return {
      parts: q.parts,
      workshop: q.workshop,
      placements,
      faces: FACES,
      up: placements.find(({ name }) => name === 'sole')?.frame.z ?? [0, 0, 1],
      prefix: 'joint',
    };
  });
};
