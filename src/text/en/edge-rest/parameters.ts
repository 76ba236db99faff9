/** Words of the edge rest's own parameters; those of the shared mechanics are shared. */
export const parameters = {
  wheel: {
    label: 'Wheel',
    meaning: 'What kind of wheel the hollow is ground on: the first of that kind at the front.',
    reason: 'The belt must run over it where the blade meets it.',
    options: { contact: 'Contact wheel', idler: 'Idler, a small wheel' },
  },
  lip: {
    label: 'Lip',
    meaning: 'What holds the edge off the wheel.',
    reason: 'A strip across the belt needs room under the wheel; pads beside the belt do not.',
    options: { strip: 'A thin strip across the belt', pads: 'Two pads beside the belt' },
  },
  lipThickness: {
    label: 'Lip thickness',
    meaning: 'Thickness of the sheet the lip is folded from.',
    reason: 'Thinner sheet bends under the push; thicker sheet cannot be folded sharply by hand.',
  },
  lipHeight: {
    label: 'Lip height',
    meaning: 'How far the lip stands above the seat.',
    reason: 'The edge climbs over a lower one; a higher one comes nearer to the wheel.',
  },
  wear: {
    label: 'Wear strip thickness',
    meaning: 'Thickness of the strip on which the edge stands.',
    reason:
      'It takes the countersunk heads of its screws and is renewed when the edge has marked it.',
  },
  leastWeb: {
    label: 'Steel left at least',
    meaning: 'Least thickness of steel that a hollow may leave behind it.',
    reason: 'Thinner steel bends under the wheel and burns; a blade needs some at every place.',
  },
  wheelShare: {
    label: 'Share of the wheel',
    meaning: 'Share of the push that must reach the wheel in every pass.',
    reason: 'Pushed too low, the blade only presses on the lip.',
  },
  plate: {
    label: 'Plate thickness',
    meaning: 'Thickness of nose, packer, lip slide, strips, collar and clamp bars.',
    reason: 'The lip slide carries the seat; its threads hold the wear strip.',
  },
  noseGap: {
    label: 'Gap at the wheel',
    meaning: 'From the abrasive to the front edges of nose and lip slide, each at its own level.',
    reason:
      'Wide gaps let the blade be drawn in: 3.175 mm is the published limit for abrasive wheels.',
  },
  stepWing: {
    label: 'Seat beyond the belt',
    meaning:
      'How far lip slide, wear strip and lip reach past the edge of the belt on either side.',
    reason: 'The edge stands on it at both ends of the stroke, and its ends stop the stroke.',
  },
  travelReserve: {
    label: 'Reserve of travel',
    meaning: 'How far lip slide and nose can go beyond the settings at both ends.',
    reason: 'It takes up wear of belt and wheel and the place where the rest was clamped.',
  },
  builtTravel: {
    label: 'Travel of a spine rest already built',
    meaning:
      'Travel of the step on the sheet of the spine rest whose base is used; 0 for a new base.',
    reason: 'Base, packer and feed come out the same only with the same travel.',
    measure:
      'Make the design of the spine rest for the new grinder and take the travel of the step from its sheet; 0 where its base is made anew as well.',
  },
  builtNoseTravel: {
    label: 'Nose travel of a spine rest already built',
    meaning:
      'Travel of the nose on the sheet of the spine rest whose base is used; 0 for a new base.',
    reason: 'Base and packer come out the same only with the same travel.',
    measure:
      'Make the design of the spine rest for the new grinder and take the travel of the nose from its sheet; 0 where its base is made anew as well.',
  },
  settingTolerance: {
    label: 'Setting tolerance',
    meaning: 'How truly a reading of the lip is met and kept.',
    reason: 'The hollow moves several times as far as the lip.',
  },
  pushReserve: {
    label: 'Reserve on the lip',
    meaning: 'Share of the push that the lip must carry in every pass.',
    reason: 'Without a reserve the edge leaves the lip and the hollow wanders.',
  },
  guardRise: {
    label: 'Guard above the blade',
    meaning: 'How far the guard of the push block stands above the highest place of the blade.',
    reason: 'It is what stops a hand that slips over the blade.',
  },
  tipLift: {
    label: 'Rocking of the blade',
    meaning: 'How far the blade may be rocked over either end of the seat while grinding.',
    reason: 'Everything below and beside the blade is checked over this range.',
  },
} as const;
