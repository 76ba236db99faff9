import { tan } from '../../core/trigonometry.ts';
import { degrees, radians } from '../../core/units.ts';
import { cantileverEnd, type Cantilever } from './deflection.ts';

/** What carries a spine rest and what the push asks of it. */
export interface RestStructure {
  /** The nose's overhang in front of what carries it. */
  readonly nose: Cantilever;
  /** The rest or tool arm, from where it is held to the fixture. */
  readonly arm: Cantilever;
  /** Height of the step's contact above the arm's middle, mm. */
  readonly stepHeight: number;
  /** Force of the step and force on the seat as shares of the push. */
  readonly stepShare: number;
  readonly seatShare: number;
}

/**
 * How a push of `push` N moves a spine rest: an estimate. The blade presses the step away from the
 * belt and the seat down. The arm is held at the machine and reaches towards the maker, so it bends
 * under both alike and tips seat and step back from the belt; the nose bends alone and lets the
 * spine down.
 *
 * `setoff`: opening of the step, mm; `lift`: rise of the spine, mm; `lean`: change of the platen's
 * lean from the seat's normal, degrees, positive when the seat tips back from the belt.
 */
export const giveOfRest = (
  { nose, arm, stepHeight, stepShare, seatShare }: RestStructure,
  push: number,
): { setoff: number; lift: number; lean: number } => {
  const [away, down] = [stepShare * push, seatShare * push];
  const end = cantileverEnd(arm, down, away * stepHeight);
  return {
    setoff: end.slope * stepHeight,
    lift: -cantileverEnd(nose, down).deflection - end.deflection,
    lean: degrees(end.slope),
  };
};

/** Change of the setoff on a leaning platen when what stands on the seat is lifted, mm. */
export const setoffOfLift = (lift: number, lean: number): number => lift * tan(radians(lean));
