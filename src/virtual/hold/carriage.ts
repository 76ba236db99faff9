import { cos, sin, tan } from '../../core/trigonometry.ts';
import type { Shape } from '../../blade/shape.ts';
import { radians } from '../../core/units.ts';
import type { Pose } from '../pose.ts';
import { faceAt, type Surface } from '../surface.ts';
import type { Hold } from './hold.ts';

/** A blade clamped on a carriage that a fence stops: one plane, led past the belt; mm and degrees. */
export interface CarriageHold {
  readonly shape: Shape;
  readonly surface: Surface;
  /** Between midplane and abrasive face, across the direction the blade is led in. */
  readonly angle: number;
  /** The place whose edge the fence brings to the face, and the edge left there from the midplane. */
  readonly place: number;
  readonly edge: number;
  /** Direction of the stroke against the straight spine line, positive when it falls towards the edge. */
  readonly turn: number;
  /** Height of that edge over the base, where the face's frame begins. */
  readonly edgeHeight: number;
}

/**
 * A guided-angle carriage against its fence. The blade stands still on it and it slides along the
 * stroke, so every place of the stroke is the same pose shifted: the face passes through the edge
 * asked for at one place, at the carriage's angle. Nothing but the fence stops the cut.
 */
export const carriageHold = (given: CarriageHold): Hold => {
  const { shape, surface, angle, place, edge, turn, edgeHeight } = given;
  const tilt = radians(angle + surface.lean);
  const [c, s] = [cos(tilt), sin(tilt)];
  const [cp, sp] = [cos(radians(turn)), sin(radians(turn))];
  const y = faceAt(surface, edgeHeight) + edge * c;
  return (m) => {
    const v0 = shape.edge.value(place) + (m - place) * tan(radians(turn));
    const pose: Pose = {
      m,
      v0,
      x: [0, cp, sp, 0],
      y: [y, sp * s, -cp * s, -c],
      z: [edgeHeight + edge * s, -sp * c, cp * c, -s],
    };
    return { pose, stoppedAt: place };
  };
};
