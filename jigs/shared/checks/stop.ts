import {
  all,
  bodyOf,
  chain,
  ok,
  partForms,
  type Asked,
  type BladePose,
  type Design,
  type Part,
  type Placement,
  type Result,
  type SetUp,
  type Told,
  type Vec3,
  type Workshop,
} from '../../../src/family/index.ts';
import { isGround, type Grinding } from '../grinding.ts';
import { parameterPath, words } from './words.ts';

/** The collar is set by hand to a tenth, mm; half the taper of a blade opens it a little. */
const CLOSED = 0.1;

/** What of a stop is looked at. */
export interface Stopped {
  readonly design: Design;
  readonly workshop: Workshop;
  readonly parts: readonly Part[];
  readonly place: (setting: string) => readonly Placement[];
  readonly poses: (setting: string, blade: string) => readonly BladePose[];
  /** What the blade carries, in blade coordinates. */
  readonly onBlade: readonly Placement[];
  readonly plan: {
    readonly settings: readonly (Grinding & { readonly side: 'left' | 'right' })[];
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

const askedOf = (face: StopFace, apart: Vec3): Asked => ({
  id: `contact/collar/${face.placement}`,
  rule: { kind: 'touch', a: 'collar', b: face.placement, tolerance: CLOSED, apart },
  fix: face.fix,
  parameter: face.parameter,
});

const toldOf = (face: StopFace, setting: string, blade: string): Told => ({
  names: { collar: words.names.collar, [face.placement]: face.name },
  pose: () => ({ setting, blade }),
});

/**
 * The stroke stop: where the plunge has come to the belt, the collar's face lies against the side
 * of what stops it, on both sides alike.
 */
export const stopSetUps = (q: Stopped, face: StopFace = NOSE): Result<SetUp[]> =>
  chain(partForms(q.parts, q.workshop), (forms) =>
    all(
      q.plan.settings.flatMap((setting) =>
        q.design.blades.filter(isGround(setting)).map(({ name }) => {
          const { id, side } = setting;
          const pose = q.poses(id, name)[0]?.frame;
          const stop = q.place(id).filter((p) => p.name === face.placement);
          const plates = q.onBlade.filter((p) => p.part === 'stop-collar');
          const apart: Vec3 = [side === 'left' ? face.tangLeft : -face.tangLeft, 0, 0];
          return chain(
            all([
              ...(pose && plates.length > 0
                ? [bodyOf('collar', plates, forms, [{ kind: 'still', label: id, pose }])]
                : []),
              ...(stop.length > 0 ? [bodyOf(face.placement, stop, forms)] : []),
            ]),
            (bodies): Result<SetUp> =>
              ok({
                asked: [askedOf(face, apart)],
                bodies: new Map(bodies.map((body) => [body.name, body])),
                told: toldOf(face, id, name),
              }),
          );
        }),
      ),
    ),
  );
