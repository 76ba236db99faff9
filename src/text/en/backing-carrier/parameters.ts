/** Words of the backing carrier's parameters; `measure` where one describes the machine. */
export const parameters = {
  face: {
    label: 'Face',
    meaning: 'What the belt runs on.',
    reason: 'A soft face rounds the ends of a bevel; a radiused one hollows it a little.',
    options: { soft: 'Soft sheet glued on a flat face', radius: 'Convex face of a radius' },
  },
  place: {
    label: 'Place of the carrier',
    meaning: 'Whether it goes over the platen, or takes its place on the bolts that held it.',
    reason:
      'In place of the platen the settings shift less; over it nothing of the machine is taken off.',
    options: { over: 'Over the platen', instead: 'In place of the platen, on its bolts' },
  },
  softThickness: {
    label: 'Soft sheet',
    meaning: 'Thickness of the leather or other soft sheet on the face.',
    reason: 'About 5 mm is common practice; thicker gives way more.',
  },
  modulus: {
    label: 'Modulus of the soft sheet',
    meaning: 'Pressure for the compression of the sheet to nothing, were it linear.',
    reason: 'Firm leather is taken as 20 N/mm2: an assumption; hides differ by a factor of ten.',
  },
  tension: {
    label: 'Belt tension',
    meaning: 'Pull of the belt for each millimetre of its width.',
    reason: 'About 3 N/mm, common practice, no source: weigh the tension arm to know it.',
    measure:
      'With the machine off, pull the tension wheel back against its spring with a spring scale: where the belt goes half way round it, half of that force over the width of the belt is the tension.',
  },
  push: {
    label: 'Push',
    meaning: 'Force of the blade on the belt.',
    reason: 'Finishing is done with 20 to 60 N, common practice, no source.',
  },
  radius: {
    label: 'Radius of the face',
    meaning: 'Radius of the convex face under the belt, seen along the stroke.',
    reason: 'Below the least the ends fall back behind the bolts; above the greatest it is flat.',
  },
  depth: {
    label: 'Depth of the ribs',
    meaning: 'From what the ribs lie on, the platen or what carried it, to their foremost line.',
    reason:
      'The bolts pass in them; deeper moves every setting and lengthens the path of the belt.',
  },
  plate: {
    label: 'Rib thickness',
    meaning: 'Thickness of the sheet that the ribs are cut from.',
    reason: 'Thinner sheet takes more ribs; thicker leaves more belt beside the face.',
  },
  cheek: {
    label: 'Cheek thickness',
    meaning: 'Thickness of the two plates that grip the platen at its sides.',
    reason: 'It holds the threads of the set screws; the cheeks stand beside the belt.',
  },
  platenThickness: {
    label: 'Thickness of the platen',
    meaning:
      'From its face to what carries it; over the platen, what the set screws grip at its sides.',
    reason: 'A thinner platen gives M5 screws no side to bear on.',
    measure: 'Measure from the face of the platen to what carries it, liner left out.',
  },
  boltThread: {
    label: 'Bolts of the platen',
    meaning:
      'Thread of the two bolts that hold the platen, on its middle line; for its place only.',
    reason: 'Their nuts lie in slots of the ribs.',
    measure: 'Take a nut off the bolts that hold the platen and measure their thread.',
    options: { M6: 'M6', M8: 'M8' },
  },
  boltLow: {
    label: 'Lower bolt of the platen',
    meaning: 'Height along the platen, from the top of the rest; for its place only.',
    reason: 'It must lie behind the ribs and clear of their rods.',
    measure: 'Measure from the top of the rest along the platen to the middle of the lower bolt.',
  },
  boltHigh: {
    label: 'Upper bolt of the platen',
    meaning: 'Height along the platen, from the top of the rest; for its place only.',
    reason: 'It must lie behind the ribs, clear of their rods and of the lower bolt.',
    measure: 'Measure from the top of the rest along the platen to the middle of the upper bolt.',
  },
  endRadius: {
    label: 'Radius of the ends',
    meaning: 'How the belt is led over the upper and lower end of the face.',
    reason: 'Sharp ends cut the belt; larger ones take from the flat.',
  },
  play: {
    label: 'Play at the ears',
    meaning: 'Room between the ears of the ribs and the ends of the platen.',
    reason: 'Less does not go over a cut end; more lets the belt drag the carrier along.',
  },
  contact: {
    label: 'Height of the contact',
    meaning: 'Height along the platen, from the top of the rest, where the bevel is ground.',
    reason: 'On a radiused face the slope there is added to the lean of the blade.',
  },
  takeUp: {
    label: 'Room of the tension arm',
    meaning: 'How much longer the path of the belt may become before the arm is at its stop.',
    reason: 'Try it with the belt: an arm at its stop gives no tension.',
    measure:
      'With the machine off and a belt on it, measure how far the tension wheel can still give way: where the belt goes half way round it, twice that is the room.',
  },
  runningClearance: {
    label: 'Running clearance',
    meaning: 'Least gap of everything but the face to belt, wheels and rest.',
    reason: 'A fixture that touches a running belt is thrown.',
  },
} as const;
