export { createWorkspace, type Body, type Workspace } from './body.ts';
export { clearance, type ClearanceOptions } from './clearance.ts';
export type { Block } from './facets.ts';
export { stands, type Course, type Glide, type Motion, type Still, type Sweep } from './motion.ts';
export {
  checkPair,
  type CheckOptions,
  type ClearRule,
  type PairCheck,
  type PairRule,
} from './pairs.ts';
export { AT_HAND, NEAR } from './near.ts';
export type { Form } from './form.ts';
export { prismForm } from './prism-form.ts';
export { overlapVolume } from './overlap-volume.ts';
export { createRoom, type Room } from './room.ts';
export type { Shape } from './shape.ts';
export { prepare, prepareAll } from './prepare.ts';
export type { Solid } from './solid.ts';
export { meets, shiftBody, type OverlapVolume, type Region, type TouchRule } from './touch.ts';
export {
  poseOfBody,
  type Apart,
  type Beyond,
  type Clearance,
  type Hit,
  type Moment,
} from './told.ts';
