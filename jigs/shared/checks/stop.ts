import {
  bodyOf,
  chain,
  checkPairs,
  notComputed,
  ok,
  pairResult,
  partMeshes,
  worstOf,
  type BladePose,
  type CheckResult,
  type Design,
  type PairTerms,
  type Part,
  type Placement,
  type Result,
  type Vec3,
} from '../../../src/family/index.ts';
import { parameterPath, words } from './words.ts';

/** The collar is set by hand to a tenth, mm; half the taper of a blade opens it a little. */
const CLOSED = 0.1;

/** What of a stop is looked at. */
export interface Stopped {
  readonly design: Design;
  readonly parts: readonly Part[];
  readonly place: (setting: string) => readonly Placement[];
  readonly poses: (setting: string, blade: string) => readonly BladePose[];
  /** What the blade carries, in blade coordinates. */
  readonly onBlade: readonly Placement[];
  readonly plan: {
    readonly settings: readonly { readonly id: string; readonly side: 'left' | 'right' }[];
  };
}

/** What the collar meets: its placement and name, what mends it, and where the tang points. */
export interface StopFace {
  readonly placement: string;
  readonly name: string;
  readonly fix: string;
  readonly parameter: string;
  /** The tang's way along x while the left side is ground; the other way for the right. */
  readonly tangLeft: -1 | 1;
}

const NOSE: StopFace = {
  placement: 'nose',
  name: words.names.nose,
  fix: words.fix.collar,
  parameter: parameterPath('wing'),
  tangLeft: -1,
};

const terms = (face: StopFace, setting: string, blade: string): PairTerms => ({
  id: `contact/collar/${face.placement}`,
  label: words.labels.contact(words.names.collar, face.name),
  basis: words.basis.geometry,
  fix: face.fix,
  parameter: face.parameter,
  pose: () => ({ setting, blade }),
});

/**
 * The stroke stop: where the plunge has come to the belt, the collar's face lies against the side
 * of what stops it, on both sides alike.
 */
export const stopChecks = (q: Stopped, face: StopFace = NOSE): Result<CheckResult[]> =>
  chain(partMeshes(q.parts), (meshes) => {
    const found: CheckResult[] = [];
    for (const { id, side } of q.plan.settings) {
      for (const { name } of q.design.blades) {
        const pose = q.poses(id, name)[0]?.frame;
        const nose = q.place(id).filter((p) => p.name === face.placement);
        const plates = q.onBlade.filter((p) => p.part === 'stop-collar');
        const asked = terms(face, id, name);
        if (!pose || nose.length === 0 || plates.length === 0) {
          found.push(notComputed(asked, 'contact', []));
          continue;
        }
        const apart: Vec3 = [side === 'left' ? face.tangLeft : -face.tangLeft, 0, 0];
        const checked = chain(
          bodyOf('collar', plates, meshes, [{ kind: 'still', label: id, pose }]),
          (collar) =>
            chain(bodyOf(face.placement, nose, meshes), (stop) =>
              checkPairs(
                [collar, stop],
                [{ kind: 'touch', a: 'collar', b: face.placement, tolerance: CLOSED, apart }],
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
