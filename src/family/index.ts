/** What a fixture family may use: the one door between `jigs/` and the engine. */
export { SIDES } from '../blade/schema.ts';
export { bevelPlace, edgeOffsets, wantedBevel, wantedHeightAt } from '../blade/bevel.ts';
export { bladeMesh } from '../blade/blade-mesh.ts';
export { bladeSections, tangSections } from '../blade/blade-sections.ts';
export { convexSlabs, PROUD } from '../blade/convex-slabs.ts';
export { flatCut, hollowCut, type Cut } from '../blade/cut.ts';
export type { SideCuts } from '../blade/section.ts';
export { placeAt, type Place } from '../blade/place.ts';
export type { Blade } from '../blade/schema.ts';
export { shapeOf, type Shape } from '../blade/shape.ts';
export { answer, answerAll, answerEach, clear, seat, worstById } from '../check/answers.ts';
export { bodyOf, partForms, type PartForms } from '../check/assembly.ts';
export { blockOf, blockOver, blockRoom, type CarriedPart } from '../check/carried.ts';
export type { Fit } from '../check/fit.ts';
export { fitOf, type Standing } from '../check/fits.ts';
export { keptFit } from '../check/kept-fit.ts';
export { keptPair, type Start } from '../check/kept-pair.ts';
export { rangeCheck, type RangeTerms } from '../check/assembly-range.ts';
export { pairResult, withShared, worstOf } from '../check/assembly-result.ts';
export {
  checkPair,
  createWorkspace,
  prepare,
  type Block,
  type Body,
  type Motion,
  type PairCheck,
  type PairRule,
  type Solid,
  type Sweep,
} from '../check/distance/index.ts';
export type { CheckResult, Gaps } from '../check/result.ts';
export type * from '../check/set-up.ts';
export { CHECK_CHORD } from '../check/chord.ts';
export { createWorkshop, type Workshop } from '../check/workshop.ts';
export { fabricationChecks } from '../check/rules.ts';
export { exact, type Certainty } from '../core/certainty.ts';
export {
  hasError,
  loweredTo,
  mendedBy,
  problem,
  raisedTo,
  type Issue,
  type Mend,
} from '../core/issue.ts';
export { number, ofMachine, ofSheet, type NumberParameter } from '../core/parameter.ts';
export { all, chain, fail, ok, type Result } from '../core/result.ts';
export { acos, asin, atan, atan2, cos, sin, tan } from '../core/trigonometry.ts';
export { degrees, plain, quantise, radians } from '../core/units.ts';
export type { Design, Making } from '../document/schema.ts';
export { rounded } from '../geometry/fillet.ts';
export { flatten } from '../geometry/flatten.ts';
export * from '../geometry/frame.ts';
export * as interval from '../geometry/interval.ts';
export { hull, type Interval } from '../geometry/interval.ts';
export * from '../geometry/loop.ts';
export type { Mesh } from '../geometry/mesh.ts';
export * from '../geometry/vector.ts';
export { root } from '../grind/numeric/root.ts';
export { hollowDepth } from '../grind/backing/hollow.ts';
export { softened, type Softened } from '../grind/backing/soft.ts';
export { planCarriage } from '../grind/carriage/plan.ts';
export { screwExtension } from '../grind/carriage/screw.ts';
export {
  carriageRange,
  highestPushRange,
  type CarriageStanding,
} from '../grind/carriage/section-range.ts';
export type * from '../grind/carriage/types.ts';
export { lipRoom } from '../grind/edge-rest/lip-room.ts';
export { endsConvex } from '../grind/convex.ts';
export { offLine } from '../grind/line-mend.ts';
export { planEdgeRest } from '../grind/edge-rest/plan.ts';
export { pushRange, type PushRange } from '../grind/edge-rest/push-range.ts';
export {
  hollowRange,
  type HollowRange,
  type HollowStanding,
  type SideRange,
} from '../grind/edge-rest/section-range.ts';
export { inSeat } from '../grind/in-seat.ts';
export { halfAt, hollowed, type EdgeSection } from '../grind/edge-rest/half.ts';
export { wheelAtSeat, wrapOn, type PlacedWheel } from '../grind/edge-rest/wheel.ts';
export type { EdgeRestInput, EdgeRestPlan } from '../grind/edge-rest/types.ts';
export { planSpineRest } from '../grind/spine-rest/plan.ts';
export { pushRoom, standingRange } from '../grind/spine-rest/section-range.ts';
export { settledPose } from '../grind/spine-rest/pose.ts';
export type { SpineRestInput, SpineRestPlan } from '../grind/spine-rest/types.ts';
export { strokeOf } from '../grind/spine-rest/windows.ts';
export { beltPath, faceDepth } from '../grinder/belt-path.ts';
export { beltSpeed } from '../grinder/belt-speed.ts';
export { frontWheel } from '../grinder/front-wheel.ts';
export type { Grinder } from '../grinder/schema.ts';
export * from '../hardware/index.ts';
export { cutByPlane, halfSpace, sliceByPlane, type HalfSpace } from '../model/cut.ts';
export type * from '../model/part.ts';
export { plate } from '../model/plate.ts';
export { leastEdge } from '../model/process.ts';
export { choiceParameter } from '../schema/field.ts';
export { text } from '../text/index.ts';
export type * from './family.ts';
export { calibrated } from './calibrated.ts';
export {
  carriageQuestion,
  edgeRestQuestion,
  simulatedBudget,
  spineRestQuestion,
  type Simulating,
} from '../setup/budget/families.ts';
export type { Budget, BudgetQuestion } from '../setup/budget/budget.ts';
export {
  closeness,
  felt,
  sensed,
  widest,
  type Acting,
  type Felt,
} from '../setup/budget/closeness.ts';
export type { CarriageCause } from '../setup/budget/carriage.ts';
export type { EdgeRestCause } from '../setup/budget/edge-rest.ts';
export type { SpineRestCause } from '../setup/budget/spine-rest.ts';
export type { KnownFixture } from '../setup/calibration/known.ts';
export { stepAtPin } from '../setup/zero/step-pin.ts';
export { machineBodies } from './grinder-bodies.ts';
export {
  virtualGrinding,
  type StripFound,
  type StripKit,
  type StripSetting,
  type VirtualGrinding,
  type VirtualOrder,
} from './virtual.ts';
export {
  besideStraight,
  lineWithout,
  planWithStrip,
  posesWithStrip,
  proveStrip,
  spineRestJob,
  swingWithStrip,
  tiltsOf,
  USUAL,
  type SpineRestBody,
  type StripWish,
} from '../virtual/index.ts';
export { outerFace } from '../virtual/hold/strip.ts';
export { valuesOf, type ValuesOf } from './values.ts';
