import {
  bodyOf,
  chain,
  checkPairs,
  notComputed,
  ok,
  pairResult,
  partMeshes,
  worstOf,
  type CheckResult,
  type PairTerms,
  type Result,
  type Vec3,
} from '../../../src/family/index.ts';
import { parameterPath, words, type Question } from './question.ts';

/** The collar is set by hand to a tenth, mm; half the taper of a blade opens it a little. */
const CLOSED = 0.1;

const terms = (setting: string, blade: string): PairTerms => ({
  id: 'contact/collar/nose',
  label: words.labels.contact(words.names.collar, words.names.nose),
  basis: words.basis.geometry,
  fix: words.fix.collar,
  parameter: parameterPath('wing'),
  pose: () => ({ setting, blade }),
});

/**
 * The stroke stop: where the plunge has come to the belt, the collar's face lies against the side
 * of the nose, on both sides alike.
 */
export const stopChecks = (q: Question): Result<CheckResult[]> =>
  chain(partMeshes(q.parts), (meshes) => {
    const found: CheckResult[] = [];
    for (const { id, side } of q.plan.settings) {
      for (const { name } of q.design.blades) {
        const pose = q.poses(id, name)[0]?.frame;
        const nose = q.place(id).filter((p) => p.name === 'nose');
        const plates = q.onBlade.filter((p) => p.part === 'stop-collar');
        const asked = terms(id, name);
        if (!pose || nose.length === 0 || plates.length === 0) {
          found.push(notComputed(asked, 'contact', []));
          continue;
        }
        // The tang points to -x while the left side is ground, to +x for the right.
        const apart: Vec3 = [side === 'left' ? -1 : 1, 0, 0];
        const checked = chain(
          bodyOf('collar', plates, meshes, [{ kind: 'still', label: id, pose }]),
          (collar) =>
            chain(bodyOf('nose', nose, meshes), (stop) =>
              checkPairs(
                [collar, stop],
                [{ kind: 'touch', a: 'collar', b: 'nose', tolerance: CLOSED, apart }],
                { otherwise: 0, within: 10 },
              ),
            ),
        );
        found.push(
          ...(checked.ok
            ? checked.value.map((pair) => pairResult(pair, asked))
            : [notComputed(asked, 'contact', checked.issues)]),
        );
      }
    }
    const worst = worstOf(found);
    return ok(worst ? [worst] : []);
  });
