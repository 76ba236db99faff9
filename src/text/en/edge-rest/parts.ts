import { mm } from '../rounded.ts';

/** Names, notes and purposes of the parts that the edge rest does not share. */
export const parts = {
  names: {
    slide: 'Lip slide',
    strip: 'Lip strip',
    pad: 'Lip pad',
    packing: 'Lip packing',
    wear: 'Wear strip',
    gauge: 'Lip gauge',
    nose: 'Wheel nose',
  },
  finish: {
    nose: 'Top flat and deburred; front upper edge broken 0.2 mm at most',
    slide: 'Top flat and deburred; long edges straight',
    lip: 'Folded square; upper rear edge deburred only: blade and pin touch it',
    packing: 'Flat and deburred',
    wear: 'Top flat and smooth; front upper edge broken 0.1 mm at most',
  },
  purpose: {
    lipThread: 'Thread of a lip screw',
    lipPassage: 'Passage of a lip screw',
    wearPassage: (head: number) =>
      `Passage of a lip screw, countersunk from above 90 degrees to ${mm(head)} for its head`,
  },
  notes: {
    nose: (level: number) =>
      `Follows the wheel: its front edge stands at the gap from the wheel ${mm(level, 1)} below the seat. File the front face back from its upper edge if the gap below it is to be even.`,
    slide:
      'Its front edge stands under the lip at the gap from the wheel; it never touches the belt.',
    fold: (inside: number) =>
      `Fold over a block with an inside radius of at most ${mm(inside, 1)}; square within half a degree. Cut the sheet with something over, fold, then trim both legs and drill.`,
    lipFace: (height: number) =>
      `The rear face of the upstand is the lip: it stands ${mm(height)} above the seat and holds the edge off the wheel.`,
    packing: 'From the same sheet as the lip: it fills the space beside it under the wear strip.',
    stick: 'stands on the lip slide, nose behind the blade and below the contact of the wheel',
    wear: 'The top is the seat. Chamfer the lower front edge at 45 degrees, as wide as the fold of the lip is round inside. Keep a spare: the edge marks it.',
    ends: 'Both ends are stroke stops: keep them square to the front.',
    gauge: (height: number) =>
      `Stands on the seat against the lip at the last setting: ${mm(height)} high. Measure it with calipers; a tenth in its height is far less at the lip.`,
  },
  lipSection: (thickness: number, leg: number, height: number) =>
    `Sheet ${mm(thickness)}, folded to ${mm(leg, 1)} x ${mm(height)}`,
  packingSection: (thickness: number, width: number) =>
    `Sheet ${mm(thickness)}, ${mm(width, 1)} wide`,
  wearSection: (thickness: number, width: number) =>
    `Ground flat stock ${mm(width, 1)} x ${mm(thickness)}`,
  lipMaterial: 'Spring steel, or mild steel',
  tight: {
    lip: 'rear face of the upstand straight',
    wearTop: 'top flat',
    wearFront: 'front face straight',
    gauge: 'height alike from end to end',
  },
} as const;
