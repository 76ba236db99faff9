import { tan } from '../core/trigonometry.ts';
import { edgeOffsetsOn } from '../blade/bevel.ts';
import { SIDES } from '../blade/schema.ts';
import { shapeOf, type Shape } from '../blade/shape.ts';
import { radians } from '../core/units.ts';
import { blankField, withFace, type Field } from './field.ts';
import type { Faces, Hold, Reached } from './hold/hold.ts';
import { carriageHold } from './hold/carriage.ts';
import { edgeHold } from './hold/edge.ts';
import { spineHold } from './hold/spine.ts';
import { volumeOf } from './measure/volume.ts';
import { mirrored, other, type Made } from './mirror.ts';
import { cutBy, spineMoved } from './pass.ts';
import { strokeOver } from './stroke.ts';
import type { PassResult, Start, VirtualGrind, VirtualInput, VirtualPass } from './types.ts';

/** Strokes after which a blade has settled into what they took off its spine, and how closely, mm. */
const STROKES = 6;
const SETTLED = 1e-5;

/** A belt's edge is no knife's: it grinds this far beyond its width on either side, mm. */
const RAGGED = 0.05;

/** A blade with bevels ground before: flat, rising from the edge square to the spine. */
const groundBefore = (
  shape: Shape,
  field: Field,
  { angle, edge }: Start & { kind: 'ground' },
): Field =>
  SIDES.reduce((made, side) => {
    const at = angle[side];
    if (at === undefined) return made;
    const face = made[side].slice();
    field.us.forEach((u, i) => {
      const offset = edgeOffsetsOn(shape, u, edge)[side];
      const rise = tan(radians(at(u))) / Math.hypot(1, shape.spine.slope(u));
      const bottom = field.v[(i + 1) * field.rows - 1] ?? 0;
      for (let k = i * field.rows; k < (i + 1) * field.rows; k += 1)
        face[k] = Math.min(face[k] ?? 0, offset + (bottom - (field.v[k] ?? 0)) * rise);
    });
    return withFace(made, side, face);
  }, field);

/** The blade as it comes to the first pass. */
export const startField = (shape: Shape, blank: Field, start: Start): Field =>
  start.kind === 'bar' ? blank : groundBefore(shape, blank, start);

/** The fixture of a pass holding the blade as it is now; `flat` is the near face it came with. */
const holdOf = (
  shape: Shape,
  field: Field,
  faces: Faces,
  flat: Float64Array,
  { holding, surface, side, edge, stroke }: VirtualPass,
): Hold => {
  const offset = (u: number): number => edgeOffsetsOn(shape, u, edge)[side];
  const beltWidth = stroke.width + 2 * RAGGED;
  switch (holding.kind) {
    case 'spine-rest':
      return spineHold({
        ...holding,
        field,
        faces,
        shape,
        surface,
        beltWidth,
        stop: field.us.map(offset),
      });
    case 'edge-rest':
      return edgeHold({ ...holding, field, faces, flat, shape, surface, beltWidth });
    case 'carriage':
      return carriageHold({ ...holding, shape, surface, edge: offset(holding.place) });
  }
};

/** A hold that keeps the poses of the last stroke whose spine has not moved since. */
const standing = (
  hold: Hold,
  last: readonly Reached[],
  moved: { readonly from: number; readonly to: number },
): Hold => {
  const kept = new Map(
    last.flatMap((one) => {
      const { from, to } = one.stands ?? { from: -Infinity, to: Infinity };
      return to < moved.from || from > moved.to ? [[one.pose.m, one] as const] : [];
    }),
  );
  return (m) => kept.get(m) ?? hold(m);
};

/** One belt on one side of a blade as it is now; `came` is the blade as it came to the first. */
const ground = (
  shape: Shape,
  came: Field,
  before: Field,
  pass: VirtualPass,
  step: number,
): PassResult => {
  const {
    side,
    surface,
    stroke: { width },
  } = pass;
  const far = before[other(side)];
  const heightAt = (u: number): number => shape.edge.value(u) - shape.spine.value(u);
  let near = before[side];
  const earlier: Reached[] = [];
  let last: readonly Reached[] = [];
  let moved = { by: Infinity, from: -Infinity, to: Infinity };
  for (let i = 1; ; i += 1) {
    const hold = standing(holdOf(shape, before, { near, far }, came[side], pass), last, moved);
    const { reached, missed } = strokeOver(pass.stroke, step, heightAt, hold);
    const face = cutBy(before, { near, far }, reached, last, surface, width + 2 * RAGGED);
    moved = spineMoved(before, near, face);
    near = face;
    if (moved.by > SETTLED && i < STROKES) {
      earlier.push(...reached);
      last = reached;
      continue;
    }
    const after = withFace(before, side, near);
    return {
      pass,
      after,
      volume: volumeOf(before) - volumeOf(after),
      reached,
      missed,
      before: earlier,
    };
  }
};

/** `ground`, or what an earlier pass did to the other side where it is the same; it joins `made`. */
export const runPass = (
  shape: Shape,
  came: Field,
  before: Field,
  pass: VirtualPass,
  step: number,
  made: Made[],
): PassResult => {
  const result = mirrored(made, shape, before, pass) ?? ground(shape, came, before, pass, step);
  made.push({ before, result });
  return result;
};

/**
 * Grinds a blade in thought, pass by pass; the model is described in `index.ts`. `progress` is told
 * the share that is done, 0 to 1.
 */
export const grindVirtually = (
  { blade, passes, start, resolution }: VirtualInput,
  progress: (share: number) => void = () => undefined,
): VirtualGrind => {
  const shape = shapeOf(blade);
  const blank = blankField(shape, resolution);
  const first = startField(shape, blank, start);
  const done: PassResult[] = [];
  const made: Made[] = [];
  let now = first;
  for (const pass of passes) {
    const result = runPass(shape, first, now, pass, resolution.step, made);
    done.push(result);
    now = result.after;
    progress(done.length / passes.length);
  }
  return { shape, blank, start: first, passes: done, finished: now };
};
