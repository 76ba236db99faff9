/** One-line meanings of every term that is ours or the trade's, by key. */
export const glossary = {
  setoff: {
    term: 'Step to belt',
    meaning:
      'Distance along the seat from the abrasive face to the step that locates the spine; it sets the angle.',
  },
  plunge: {
    term: 'Plunge',
    meaning: 'Where the ground bevel ends towards the tang; measures along a blade start there.',
  },
  ricasso: {
    term: 'Ricasso',
    meaning: 'Part of the blade between plunge and tang that stays unground.',
  },
  belly: {
    term: 'Belly',
    meaning: 'Part of the edge that rises in a curve from the straight edge to the tip.',
  },
  thicknessBehindEdge: {
    term: 'Edge thickness',
    meaning: 'Thickness left at the edge before it is sharpened, measured with calipers.',
  },
  backing: {
    term: 'Backing',
    meaning:
      'Sheet between platen and belt, such as leather; it moves every setting by its thickness.',
  },
  liner: {
    term: 'Liner',
    meaning: 'Glass, ceramic or graphite sheet fixed to the face of the platen.',
  },
  flutter: {
    term: 'Flutter',
    meaning: 'How far a running belt lifts off what supports it.',
  },
  lean: {
    term: 'Lean',
    meaning: 'Angle by which the platen departs from square to the rest, top away from the maker.',
  },
  grindLine: {
    term: 'Grind line',
    meaning: 'Upper limit of the bevel along the blade; its height is measured from the edge.',
  },
  leftStanding: {
    term: 'Left standing',
    meaning:
      'Metal at the edge, on one side, that a belt of finite width cannot reach because a neighbouring place touches first.',
  },
  pushWindow: {
    term: 'Push window',
    meaning:
      'Heights between which a push holds the spine on the step; lower, the blade beds on its own bevel.',
  },
  undercut: {
    term: 'Undercut',
    meaning: 'Where an earlier belt has cut into the face that a later one should finish.',
  },
  offset: {
    term: 'Offset',
    meaning: 'How far a fixture really stands beyond what its dial says; a test piece tells it.',
  },
  toleranceBudget: {
    term: 'Tolerance budget',
    meaning:
      'What each error of setting, belt and blade does to the bevel, and all of them together.',
  },
  nose: {
    term: 'Nose',
    meaning: 'Plate in front of the belt whose top is the seat the spine stands on.',
  },
  seat: {
    term: 'Seat',
    meaning: 'The top of the nose: the level that heights of a spine rest are measured from.',
  },
  step: {
    term: 'Step',
    meaning: 'Front face of the sliding plate against which the spine is pushed back.',
  },
  packer: {
    term: 'Packer',
    meaning: 'Plate behind the nose, as thick as it, that carries the step level with the seat.',
  },
  keeper: {
    term: 'Keeper',
    meaning: 'Bar across the step that holds it down between its guide strips.',
  },
  stopCollar: {
    term: 'Stop collar',
    meaning: 'Two plates clamped on the tang that end the stroke when the plunge reaches the belt.',
  },
  pushBlock: {
    term: 'Push block',
    meaning: 'Block that slides on the step and presses the blade to the belt at one height.',
  },
  pinZero: {
    term: 'Pin zero',
    meaning: 'Reading of the step when a pin of known size just fits between it and the belt.',
  },
  virtualGrind: {
    term: 'Virtual grind',
    meaning:
      'The blade as it would come off the belt: stood as a rigid body at every place of the stroke and cut there, pass by pass.',
  },
  sectionModel: {
    term: 'Section model',
    meaning:
      "The plan's way of working: every cross-section of the blade is settled and ground on its own.",
  },
  standing: {
    term: 'Metal standing',
    meaning: 'What is left over the wanted thickness after the last belt.',
  },
  lineStrip: {
    term: 'Line strip',
    meaning:
      'A strip of varying thickness stuck on the far face of the blade; it runs on a rounded step and tips the blade as much as each place wants.',
  },
  roundedStep: {
    term: 'Rounded step',
    meaning:
      'A narrow step that touches the line strip in one place and leaves the yaw to the belt.',
  },
  lip: {
    term: 'Lip',
    meaning: 'The low upstand on an edge rest that holds the edge off the wheel, as strip or pads.',
  },
  web: {
    term: 'Steel left',
    meaning: 'The least thickness that a hollow leaves, square to the middle of the blade.',
  },
  guided: {
    term: 'Guided length',
    meaning: 'The part of a blade whose edge the lip holds on both sides of the belt.',
  },
  setting: {
    term: 'Setting',
    meaning: 'One belt on one side: where everything stands until that side is down to its stop.',
  },
  stroke: {
    term: 'Stroke',
    meaning: 'One way of the blade along the belt, from the plunge to the tip or back.',
  },
  yaw: {
    term: 'Yaw',
    meaning: 'Turn seen from above: one end of the blade nearer to the belt than the other.',
  },
  midplane: {
    term: 'Midplane',
    meaning: 'The plane in the middle of the blade; each side is measured from it.',
  },
  keepOut: {
    term: 'Keep-out',
    meaning: 'A box around something of the machine that the fixture must stay out of.',
  },
  pushStick: {
    term: 'Push stick',
    meaning: 'Presses the last of the tip to the belt, with the hand behind its stop.',
  },
  pushPad: {
    term: 'Push pad',
    meaning: 'Nose of the push block that touches the blade; each is for one height.',
  },
  carriage: {
    term: 'Carriage',
    meaning: 'Upright and sole with the blade clamped on: slid along the fence as one piece.',
  },
  fence: {
    term: 'Fence',
    meaning: 'Bar on the base that the foot runs along; it stops the carriage before the belt.',
  },
  foot: {
    term: 'Foot',
    meaning: 'Round bar under the front of the carriage; it rolls on the base as the heel is set.',
  },
  heelScrew: {
    term: 'Heel screw',
    meaning: 'Screw at the rear of the carriage that tips it to the bevel angle.',
  },
  sole: {
    term: 'Sole',
    meaning: 'Bottom plate of the carriage, from the foot to the heel screw.',
  },
  upright: {
    term: 'Upright',
    meaning: 'Plate square to the sole that the flat of the blade is clamped against.',
  },
  jaw: {
    term: 'Jaw',
    meaning: 'Plate that clamps the tang to the upright, beside the belt.',
  },
  wearStrip: {
    term: 'Wear strip',
    meaning: 'Strip that the edge stands on in an edge rest; renewed when it is marked.',
  },
  lipSlide: {
    term: 'Lip slide',
    meaning: 'Sliding plate of an edge rest that carries wear strip and lip.',
  },
  carrier: {
    term: 'Backing carrier',
    meaning: 'Ribs bolted together that go over the platen and give the belt another face.',
  },
} as const;
