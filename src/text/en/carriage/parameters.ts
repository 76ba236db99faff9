/** Words of the carriage's parameters. */
export const parameters = {
  upright: {
    label: 'Upright',
    meaning: 'What the blade is clamped to: cut plates with tabs and slots, or a bought angle.',
    reason: 'Slots for tabs need a cut plate; an angle needs a saw and a drill.',
    options: { plates: 'Plates with tabs and slots', angle: 'Bought steel angle, drilled' },
  },
  mount: {
    label: 'Mounting',
    meaning: 'How the base is held on the rest.',
    reason:
      'The base is moved to the belt at every change of belt: slots along y or bars allow it.',
    options: { pattern: 'By the slots of the rest', bars: 'By clamp bars under the rest' },
  },
  plate: {
    label: 'Plate thickness',
    meaning: 'Thickness of sole, upright, gussets, fence, jaw and clamp bars.',
    reason: 'The fence must be higher than the middle of the foot, 6 mm; thicker is heavy.',
  },
  base: {
    label: 'Base thickness',
    meaning: 'Thickness of the base plate, on which the carriage slides.',
    reason: 'Thinner bases have too little thread; thicker ones lift the blade for nothing.',
  },
  beltGap: {
    label: 'Gap at the belt',
    meaning: 'From the abrasive face to the front of the base, set with a feeler.',
    reason:
      'Wide gaps let things be drawn in: 3.175 mm is the published limit for rests at abrasive wheels.',
  },
  length: {
    label: 'Foot to heel screw',
    meaning: 'Distance of the centres of front foot and heel tip along the sole.',
    reason: 'Longer turns a division of the screw into less angle, and needs a deeper base.',
  },
  edgeHeight: {
    label: 'Edge height',
    meaning: 'Height of the edge over the base with the carriage level.',
    reason: 'Higher keeps the heel down against the push; the fence then moves more for a degree.',
  },
  jawGap: {
    label: 'Plunge to jaw',
    meaning: 'From the plunge to the near end of the jaw.',
    reason: 'The jaw stays beside the belt: the gap takes its wander and the running clearance.',
  },
  jawWidth: {
    label: 'Width of the jaw',
    meaning: 'Length of tang or ricasso that the jaw grips.',
    reason: 'Wider holds the blade better and makes the carriage longer.',
  },
  tabPlay: {
    label: 'Play of the tabs',
    meaning: 'Width of a tab slot less the thickness of the sheet, as finished.',
    reason: 'Sheet is thicker than it says and corners keep the radius of the beam; more is loose.',
  },
  travelReserve: {
    label: 'Reserve of travel',
    meaning: 'How far the fence can go beyond its settings at both ends.',
    reason: 'It takes up wear and what the making misses.',
  },
  runningClearance: {
    label: 'Running clearance',
    meaning: 'Least distance of anything from the running belt, flutter and splice counted.',
    reason: 'Nothing may touch a running belt but the blade.',
  },
  plungeMargin: {
    label: 'Belt to plunge',
    meaning: 'How far the edge of the belt stops from the plunge.',
    reason: 'The belt wanders; a plunge that is cut into again and again wanders with it.',
  },
  tipOverlap: {
    label: 'Blade on the belt at the tip',
    meaning: 'Length of blade still on the belt at the end of the stroke.',
    reason: 'Less strokes the tip off the belt; more leaves it on.',
  },
  tipSettings: {
    label: 'Settings for the tip',
    meaning: 'How often the blade is clamped again, turned in its plane, for an edge that falls.',
    reason: 'One plane leaves a falling tip thick; each further one evens it.',
  },
  tipAllowance: {
    label: 'Thick tip allowed',
    meaning: 'Metal that may stay at the falling edge on each side, to be led by hand.',
    reason: 'More than about half a millimetre is long work by hand.',
  },
  heelReserve: {
    label: 'Reserve on the heel',
    meaning: 'Least force on the heel screw, as a share of the push.',
    reason: 'A carriage that lifts its heel grinds steeper than it is set.',
  },
  angleTolerance: {
    label: 'Tolerance of the angle',
    meaning: 'How truly the heel screw is set and stays.',
    reason: 'It is taken off every pass before the last, so that none undercuts.',
  },
  fenceTolerance: {
    label: 'Tolerance of the fence',
    meaning: 'How truly the fence is set and stays.',
    reason: 'It is taken off every pass before the last, so that none undercuts.',
  },
  leastEdge: {
    label: 'Least edge thickness',
    meaning: 'No setting stops at a thinner edge.',
    reason: 'With the edge up the belt meets it first: a thin edge catches and burns.',
  },
  handDistance: {
    label: 'Hand to belt',
    meaning: 'Least distance of the pushing hand from belt and wheels.',
    reason: 'Common practice; a hand must be able to stop before it arrives.',
  },
} as const;
