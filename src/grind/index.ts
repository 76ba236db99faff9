/** The solver's answers for fixture families. */
export { planSpineRest } from './spine-rest/plan.ts';
export { settledPose, type SettledPose } from './spine-rest/pose.ts';
export type { Seating } from './spine-rest/settle.ts';
export { planCarriage } from './carriage/plan.ts';
export { jawClearance } from './carriage/jaw.ts';
export { fenceDistance, fencePerDegree } from './carriage/fence.ts';
export { anglePerTurn, screwExtension, type Carriage } from './carriage/screw.ts';
export { centreAtLip, climbPerDepth, climbPerLip } from './edge-rest/fixed-lip.ts';
export { hollowChord } from './edge-rest/chord.ts';
export { edgeSagitta, lipRoom } from './edge-rest/lip-room.ts';
export { hollowWeb, type HollowInBevel } from './edge-rest/web.ts';
export { planEdgeRest } from './edge-rest/plan.ts';
export { edgeSeat, type EdgeSeat, type Hollow } from './edge-rest/seat.ts';
export type * from './spine-rest/types.ts';
export type * from './edge-rest/types.ts';
export type * from './carriage/types.ts';
