import { unmended } from '../shared/unmended.ts';
import { basis, bodies } from '../shared/checks.ts';
import { parameters } from './parameters.ts';
import { assembly, cautions, supplies, zeroing } from './steps.ts';
import { mm, n } from '../rounded.ts';

const side = { left: 'left', right: 'right' } as const;

/** Words of the backing carrier. */
export const backingCarrier = {
  label: 'Backing carrier',
  meaning:
    'Ribs bolted together that go over the platen or take its place, and give the belt a soft or a convex face; blades are led on it by another fixture or by hand.',
  parameters,
  reachless: {
    message:
      'A backing carrier holds no blade, so it sets no limits to one; it must be asked for the curve of its face, its place on the platen and its width of 1 belt, which do not change with the blade.',
    fix: 'Ask the fixture that holds the blade on this backing: jig reach of its design; or put another blade into this design and check what the face makes of its bevel.',
  },
  side,
  issues: {
    notFlat: (kind: string) => ({
      message: `The platen is of kind "${kind}"; it must be flat, because the ribs of the carrier lie on it.`,
      fix: 'Use a grinder with a flat platen, or put the backing on its own platen.',
    }),
    named: (id: string) => ({
      message: `The grinder has a backing named "${id}" already; the carrier gives its own that name.`,
      fix: 'Rename that backing, or leave the carrier out of this grinder while it is designed.',
    }),
    endRadius: (radius: number, soft: number) => ({
      message: `Radius of the ends is ${mm(radius)}; with a soft sheet of ${mm(soft)} it may be at most as much, because the sheet carries the belt round.`,
      fix: `Set the radius of the ends to at most ${mm(soft)}, or take a thicker sheet.`,
    }),
    shallow: (depth: number, least: number, drop: number) => ({
      message: `Depth of the ribs is ${mm(depth)}; it must be at least ${mm(least)}: rods, nuts and metal beside them, and no less than a platen whose place they take${drop > 0 ? `, and ${mm(drop)} that the convex face falls back at them` : ''}.`,
      fix: `Set the depth of the ribs to at least ${mm(least)}, or take thinner sheet${drop > 0 ? ' or a larger radius' : ''}.`,
    }),
    radius: (radius: number, height: number) => ({
      message: `Radius of the face is ${mm(radius)}; a platen ${mm(height)} high needs more than half its height.`,
      fix: 'Set a larger radius of the face.',
    }),
    boltAtRod: (z: number, from: number, to: number, apart: number, rods: readonly number[]) => ({
      message: `A bolt of the platen is at ${mm(z)}; it must be from ${mm(from)} to ${mm(to)} and at least ${mm(apart)} from each rod of the ribs (at ${rods.map((rod) => mm(rod)).join(', ')}), or the slot for its nut leaves no metal.`,
      fix: 'Correct the height of the bolt, take thinner ribs, or put the carrier over the platen.',
    }),
    boltsClose: (high: number, least: number) => ({
      message: `The upper bolt of the platen is at ${mm(high)}; it must be at ${mm(least)} or more, or the slots of both nuts meet.`,
      fix: `Set the upper bolt to at least ${mm(least)}, or put the carrier over the platen.`,
    }),
    contact: (contact: number, bottom: number, top: number) => ({
      message: `Height of the contact is ${mm(contact)}; the platen reaches from ${mm(bottom)} to ${mm(top)} above the rest.`,
      fix: 'Set the height of the contact on the platen.',
    }),
    hollow: (blade: string, where: string) => ({
      message: `The ${where} bevel of "${blade}" is a hollow; a backing grinds flat bevels, a little rounded or hollowed.`,
      fix: 'Ask for a flat bevel on this side, or choose the edge rest.',
    }),
    notMeasured: {
      message: 'The finished face does not reach over the whole bevel, so nothing can be measured.',
      fix: 'Set the height of the contact nearer to the middle of the platen.',
    },
  },
  parts: {
    names: { rib: 'Rib', slotted: 'Rib with slots', cheek: 'Cheek', soft: 'Soft sheet' },
    finish: {
      flat: 'Deburr; front edges flush and flat after bolting: draw-file them together',
      round: 'Deburr; polish the front edges together after bolting: the belt runs on them',
      soft: 'Skived round at both ends, smooth side out',
    },
    purpose: {
      bolt: 'Passage of a rod',
      screw: 'Thread of a set screw that grips the platen',
    },
    notes: {
      rib: (count: number, alike: boolean) =>
        `${n(count)} ${alike ? 'alike' : 'in all, with slots and without, their fronts alike'}: bolt them on a flat surface, front edges down, so that they come flush.`,
      round: (radius: number, at: number, feeler: number) =>
        `The front is an arc of radius ${mm(radius)}: ${mm(at, 0)} from its middle it falls back by ${mm(feeler)}.`,
      cheek: 'Goes outside the ribs, beside the belt: no edge may stand in front of the ribs.',
      soft: (radius: number) =>
        `Glue on the ribs over the whole face, under weight; round both ends to ${mm(radius, 1)}.`,
      grain:
        'Contact cement on both faces; let it dry as its label says before pressing them together.',
    },
    tight: {
      flat: (within: number) =>
        `front edge straight and parallel to the back within ${mm(within)}. The belt's face moves by as much`,
      round: (within: number, radius: number) =>
        `front arc true within ${mm(within)}, its ends as far from the back. This moves its radius by ${mm(radius, 1)} and the belt's face by as much as the arc`,
    },
    leather: 'Firm vegetable tanned leather',
    section: (thickness: number, width: number, height: number) =>
      `Leather ${mm(thickness)}, ${mm(width, 1)} x ${mm(height, 1)}`,
  },
  setting: {
    side: { left: 'left side', right: 'right side' },
    readings: {
      shift: (backing: string | null) =>
        backing === null
          ? 'Shift from the setting on the bare platen'
          : `Shift from the setting on the backing "${backing}"`,
      depth: 'Bare platen to abrasive on the carrier',
      tilt: 'Lean of the blade from upright',
    },
    notes: {
      zeroAgain: 'Take the zero of the fixture again on this belt and carrier before setting.',
      soft: 'The soft face gives way: bevel heights are estimates until a test piece is measured.',
      round: 'The bevel becomes a shallow hollow: its height is measured over the chord.',
    },
    facts: {
      backing: (id: string) => `Thickness to enter for the backing "${id}" in the grinder file`,
      path: 'Path of the belt longer than on the bare platen by',
      fromBare: (belt: string) => `Shift of every setting against the bare platen, ${belt}`,
      hollow: (blade: string, where: string, belt: string) =>
        `Depth of the hollow in the bevel of ${blade}, ${where}, ${belt}`,
      sink: 'Estimate: the bevel sinks in by, and its ends are worn round by at most',
      rollLength: 'Estimate: the ends are rounded over about',
      roll: 'Estimate: angle that the ends of the bevel are rounded to beyond its own',
    },
    basis: {
      line: 'the wanted line: what leads the blade decides it, not the carrier',
      soft: 'belt as a membrane on a Winkler foundation; modulus, tension and push are assumed',
    },
  },
  section: {
    title: (belt: string) => `Carrier under ${belt}, seen along the stroke`,
    platen: 'Platen',
    belt: 'Abrasive',
    blade: 'Blade',
    carrying: 'What carried the platen',
    parts: { rib: 'Ribs', 'rib-slotted': 'Ribs', 'soft-backing': 'Soft sheet', cheek: 'Cheek' },
    mm: (value: number) => n(value),
  },
  checks: {
    basis,
    labels: {
      contactLow: 'Face below the bevel, without its round end',
      contactHigh: 'Face above the bevel, without its round end',
      width: 'Belt beside the face',
      takeUp: 'Growth of the path of the belt',
      roll: 'Rise of the belt beside the bevel, estimate',
      rest: 'Way of the rest back from the platen',
    },
    fix: {
      contact: 'Set the height of the contact nearer to the middle of the platen.',
      width: 'Choose another rib thickness, so that the ribs come nearer to the width of the belt.',
      takeUp: 'Make the ribs less deep, or use a longer belt.',
      roll: 'Take a firmer or thinner sheet, push less, or tension the belt more.',
      travel: 'Make the ribs less deep, or correct the travel of the rest in the grinder file.',
      face: unmended('The belt does not lie on the face'),
      seat: unmended('The ribs do not lie on the platen'),
      grip: unmended('A set screw does not reach the platen'),
      cheek: unmended('A cheek stands in the platen'),
      belt: 'Make the ribs deeper, so that everything else stays behind the belt.',
      wheels: 'Set less play at the ears, or use a grinder with more room beside the platen.',
      rest: 'Move the rest farther from the platen, or make the ribs less deep.',
      guards: 'Change the keep-out, or take thinner cheeks.',
    },
    names: {
      ...bodies,
      face: 'face of the carrier',
      cheeks: 'cheeks',
      bolts: 'rods and nuts',
      gripLeft: 'left set screws',
      gripRight: 'right set screws',
    },
    carrying: 'what carried the platen',
  },
  sheet: {
    stopAt: 'Stop at edge',
    settingsNote:
      'The carrier moves the belt, not the blade: move what is set to the belt by the shift, take its zero again, and set it as its own sheet says.',
    expectedTitle: 'Expected bevel heights over the chord, mm',
    progressNote: 'Edge thickness, angle of the chord a side and bevel height on the way.',
    progress: ['edge, mm', 'angle, deg', 'bevel, mm'],
    perTenth: (change: string): string => `0.1 mm less at the edge: ${change} mm of bevel`,
    measure: [
      'Bare platen to abrasive on the carrier, at both edges of the belt, mm',
      'Abrasive square to the rest over the height of the bevel (square and feeler), mm',
      'Rounding of both ends of a test bevel (straight edge and feeler), mm',
      'Room left on the tension arm with the belt running, mm',
    ],
  },
  assembly,
  supplies,
  zeroing,
  cautions,
} as const;
