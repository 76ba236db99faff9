import { said } from '../ids.ts';
import { mm } from '../rounded.ts';

/** Names, notes and purposes of the parts of the carriage. */
export const parts = {
  names: {
    base: 'Base',
    fence: 'Fence',
    sole: 'Sole',
    upright: 'Upright',
    angle: 'Upright angle',
    gusset: 'Gusset',
    foot: 'Foot bar',
    strip: 'Foot strip',
    heel: 'Heel screw',
    jaw: 'Jaw',
    palm: 'Push block',
    edgeGauge: 'Edge gauge',
    fenceGauge: 'Fence gauge',
  },
  finish: {
    upright: 'Front face flat, deburred; tabs of the gussets below it',
    base: 'Top flat and deburred; a drop of oil where the carriage slides',
    fence: 'Rear face flat and square',
    stock: 'Sawn square, deburred',
  },
  purpose: {
    fenceThread: 'Thread of a fence screw',
    fenceSlot: 'Slot of a fence screw: the fence is set with every angle',
    stopPin: (hole: number, pin: number) =>
      `Stop pin: made ${mm(hole)}, then reamed to a press fit of ${mm(pin)}`,
    mountThread: 'Thread of a mounting screw from below',
    mountPassage: 'Passage of a mounting screw',
    footPassage: 'Passage of a foot screw',
    footThread: 'Thread of a foot screw',
    heelThread: 'Thread of the heel screw',
    palmPassage: 'Passage of a push block screw',
    tabSlot: (play: number) =>
      `Slot for a tab: ${mm(play)} wider than the sheet, as finished; measure the sheet first`,
    uprightThread: 'Thread of an angle screw',
    uprightPassage: 'Passage of an angle screw',
    clampPassage: 'Passage of the clamp screw',
    clampSlot: 'Slot of the clamp screw: the jaw follows the turned tang',
    clampThread: 'Thread of the clamp screw',
    jackThread: 'Thread of the jack screw that levels the jaw',
  },
  notes: {
    base: 'Mounting screws come from below; no screw may stand above this plate.',
    kerf: (play: number) =>
      `Sizes are as finished. A shop that follows the line with its beam must allow for its kerf, or the tabs are loose by it; the fit wanted is ${mm(play)}.`,
    sole: 'Front edge straight: the face of the upright stands flush with it.',
    index:
      'Scribe the index line for the knob on the top, from the heel hole straight to the front.',
    weld: 'Fit dry, square the front face to the underside of the foot, then tack weld, braze or glue, a little at a time on alternate sides.',
    face: 'The front face is the reference of the blade, between the jaws as well.',
    tab: (short: number) => `Tabs end ${mm(short)} below the faces they enter.`,
    corners:
      'Break the corners of the tabs: inner corners of the slots keep the radius of the beam.',
    angle: 'Legs square to each other within 0.2 degrees, or shim: the zero takes up what is left.',
    template: 'Drill to the template, punched through it.',
    foot: 'Bright round bar: its lower side is the foot and must stay bright. Finish its blind threads with a bottoming tap.',
    heel: (radius: number) =>
      `Round one end to a half ball of ${mm(radius)}: file it turning in a drill, polish it.`,
    jaw: 'Line with thin leather or tape; goes to the left or the right end with the side ground.',
    knob: (division: number) =>
      `50 divisions: one is ${mm(division)} of the heel screw. The wide notch is zero.`,
    palm: 'The only place for the hand: push at its rear face and press down.',
    printSolid: 'Print with at least 4 walls and 30 % filling.',
    edgeGauge: (rise: number) =>
      `Stands on the upright; the edge touches its lip, ${mm(rise)} above. Measure with calipers.`,
    fenceGauge: (length: number, setting: string) =>
      `Lies on the fence, front at the belt, lip behind the fence: ${mm(length)} for setting ${said(setting)}. Measure with calipers.`,
  },
  section: {
    angle: (leg: number, wall: number) =>
      `Equal angle EN 10056-1 - ${String(leg)} x ${String(leg)} x ${String(wall)}`,
    round: (diameter: number) => `Round bar EN 10278 - ${String(diameter)} h9`,
    rod: 'Threaded rod DIN 976-1 - M6, one end rounded',
  },
  tight: {
    base: 'top flat',
    face: 'front face flat',
    fence: 'rear face straight',
    length: (length: number) =>
      `from the foot screws to the heel screw ${mm(length)} (measure it and enter it)`,
    edgeGauge: 'lip level from end to end',
    fenceGauge: 'faces towards belt and fence straight and parallel',
  },
} as const;
