/**
 * The blade as the belt leaves it.
 *
 * **What is modelled.** The blade is rigid, its two faces height fields over the midplane; the
 * abrasive face is rigid and the same over the belt's width: a plane, or convex with a radius. For
 * every place of the stroke the blade is settled in space into what holds it, and everything of it
 * that the abrasive face would pass through is taken away. Passes follow one another; side two
 * stands on what side one has left. Strokes are repeated until the spine no longer changes.
 *
 * **What the maker keeps constant.** The setting of the step; the spine down on the nose and back
 * on the step, which the push does while it acts within its window; the push opposite the middle
 * of the metal that is on the belt. The blade then has no freedom left but its tilt: on the nose it
 * takes the pitch, at a wide step the yaw, that bring the place of the push nearest to them.
 *
 * **Where he stops.** He leans the blade in until, under the whole width of the belt, the first
 * place of the edge is down to the thickness wanted on that side, measured from the centreline;
 * then he moves on. So one place decides for all that are on the belt with it.
 *
 * **Other holds.** At a narrow rounded step, on the line strip, nothing squares the blade: it beds on
 * the belt, its edge down to the stop on both sides of the push. On an edge rest it stands on its
 * edge and is tipped to a depth; on a carriage it is clamped, and the fence stops it.
 *
 * **Exact:** each pose for the blade's polyhedron of nodes (searched to 1e-7 mm), the face cut in it,
 * the ends of the belt. For a straight bar all of it agrees with the section model.
 * **Bounded:** between columns and poses the error falls with the square of their spacing; at 1 mm
 * it is less than 0.001 mm at the edge and 0.03 mm of grind line, the most where a spine is curved.
 * **Estimated:** a soft backing is taken as rigid; the belt as 0.05 mm wider on either side than it
 * is, its edges being ragged; wear, flex and lifting
 * the tip by hand are left out; the bevels a blade comes with are taken parallel to the finished ones.
 */
export { adviseStroke, type StrokeAdvice, type StrokeCandidate } from './advice.ts';
export { compareWithModel, type ModelLine, type ModelPlace } from './compare.ts';
export { besideStraight, cureLine, proveStrip } from './cure/cure.ts';
export { planWithStrip } from './cure/plan.ts';
export { posesWithStrip, swingWithStrip } from './cure/poses.ts';
export type * from './cure/types.ts';
export { lineWithout } from './cure/without.ts';
export { carriageJob, carriagePassesOf } from './from-carriage.ts';
export { edgeRestJob, edgeRestPassesOf, hollowStart } from './from-edge-rest.ts';
export { passesOf, platenSurface, spineRestJob, startOf, tiltsOf } from './from-plan.ts';
export { grindVirtually } from './grind.ts';
export type { EdgeRestBody } from './hold/edge-stand.ts';
export type { SpineRestBody } from './hold/spine-settle.ts';
export type { Strip } from './hold/strip.ts';
export { along, edgeOf, finishedLine, grindLine, lineHeight } from './measure/line.ts';
export { fieldMesh } from './measure/mesh.ts';
export {
  edgePlaces,
  greatest,
  linePlaces,
  type EdgePlace,
  type LinePlace,
} from './measure/report.ts';
export { reportOf, USUAL, type VirtualReport } from './report.ts';
export type { ModelPoint, VirtualJob } from './job.ts';
export { volumeOf } from './measure/volume.ts';
export type { Band } from './picture/bands.ts';
export { wantedHollows } from './picture/hollow.ts';
export { bladeMap, type BladeMap, type MapLine, type MapValue } from './picture/map.ts';
export { frameOf, type Pose } from './pose.ts';
export { flatSurface, radiusedSurface, wheelSurface, type Surface } from './surface.ts';
export { withYawStep, yawStep, type YawStep } from './yaw-step.ts';
export type { Field, Resolution } from './field.ts';
export type * from './types.ts';
