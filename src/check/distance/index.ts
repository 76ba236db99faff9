export { createWorkspace, type Body, type Workspace } from './body.ts';
export { clearance, type ClearanceOptions } from './clearance.ts';
export type { Block } from './facets.ts';
export type { Course, Glide, Motion, Still, Sweep } from './motion.ts';
export {
  checkPairs,
  type CheckOptions,
  type ClearRule,
  type IgnoreRule,
  type PairCheck,
  type PairRule,
} from './pairs.ts';
export { AT_HAND, NEAR } from './near.ts';
export { surveyed } from './mesh.ts';
export { overlapVolume } from './overlap-volume.ts';
export type { Shape } from './shape.ts';
export { prepare, prepareAll, type Solid } from './solid.ts';
export { meets, shiftBody, type OverlapVolume, type Region, type TouchRule } from './touch.ts';
export type { Apart, Beyond, Clearance, Hit, Moment } from './told.ts';
