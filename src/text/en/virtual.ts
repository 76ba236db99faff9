import { plain } from '../../core/units.ts';
import { mm } from './lengths.ts';

const deg = (value: number): string => `${Number(value.toPrecision(3))} degrees`;
const round = (value: number): number => Math.round(value * 1000) / 1000;
const sides = { left: 'left', right: 'right' } as const;
type Side = keyof typeof sides;

/** Words of the virtual grind, the advice drawn from it, and the strip that mends a line. */
export const virtual = {
  side: sides,
  certainty: {
    grid: 'nodes stand a step apart along blade and stroke; the error falls with the square of it',
    beds: 'the blade is taken to bed on the belt until its edge is down on both sides of the push',
    rigid: 'a backing that gives way is taken as rigid',
  },
  map: {
    thickness: {
      title: 'Thickness of the ground blade',
      band: (from: number, to: number) => `${mm(from)} to ${mm(to)} thick`,
    },
    standing: {
      title: 'Metal standing over the wanted faces, both sides together',
      band: (from: number, to: number) =>
        from === -Infinity
          ? `more than ${mm(-to)} too thin`
          : to === Infinity
            ? `more than ${mm(from)} over`
            : from < 0
              ? `as wanted, within ${mm(to)}`
              : `${mm(from)} to ${mm(to)} over`,
    },
    line: { ground: 'grind line as it comes out', wanted: 'grind line wanted' },
  },
  assumptions: [
    'The blade is rigid, and so is the face of the belt, straight across its width.',
    'Strokes are repeated until nothing more is taken; tip lift by hand, flex and wear are left out.',
  ],
  held: {
    'spine-rest': [
      'The spine stays down on the nose and back on the step; the push acts opposite the middle of the metal on the belt.',
      'Under the whole width of the belt, grinding stops at the first place of the edge that is down to its thickness, measured from the centreline.',
    ],
    'edge-rest': [
      'The edge stays down on the seat and against the lip; the blade is tipped to the wheel until, anywhere under the width of the belt, the hollow is as deep as asked for.',
      'The stroke ends where the lip no longer guides the edge on both sides of the belt; what is beyond is finished by hand.',
    ],
    carriage: [
      'The blade stays clamped as it was set; the fence stops the carriage, and one plane grinds the whole blade.',
    ],
  },
  cure: {
    facts: {
      setoff: (side: Side) => `Step to belt with the strip, ${sides[side]} side, last belt`,
      least: (side: Side) => `Thinnest place of the strip, ${sides[side]} side`,
      most: (side: Side) => `Thickest place of the strip, ${sides[side]} side`,
      from: 'Strip starts behind the plunge line at',
      length: 'Length of the strip',
      bottom: 'Lower edge of the strip below the spine line',
      radius: 'Radius of the rounded step',
      hollow: (side: Side) => `Sharpest hollow of the strip, ${sides[side]} side, radius`,
      stick: 'Area the strip is stuck on with, in square centimetres',
      corner: 'Spine to belt at the nose, least',
      contact: 'Height at which the strip meets the step, most',
      without: (side: Side) => `Grind line off the wanted one without strip, ${sides[side]} side`,
      with: (side: Side) => `Grind line off the wanted one with strip, ${sides[side]} side`,
      yaw: 'Yaw of the blade on the rounded step, most',
      standing: 'Edge over its thickness with strip, most',
    },
    part: {
      name: (side: Side | 'both') =>
        side === 'both' ? 'Line strip' : `Line strip for the ${sides[side]} side`,
      id: (side: Side | 'both') => (side === 'both' ? 'line-strip' : `line-strip-${side}`),
      finish: 'Smooth on the face that meets the step',
      notes: {
        place: (from: number, below: number) =>
          `Stick it on the face away from the belt: its end ${mm(from)} from the plunge towards the tip, its lower edge ${mm(below)} from the spine line.`,
        turn: 'For the other side turn it over and stick it on the other face; the same end stays at the plunge.',
        tape: (thickness: number) =>
          `Cut for double-sided tape ${mm(thickness)} thick; another tape moves the step by the difference.`,
        thickness: (places: readonly (readonly [at: number, thickness: number])[]) =>
          `Thickness at places from the plunge end: ${places.map(([at, thickness]) => `${plain(thickness, 2)} at ${plain(at, 1)}`).join(', ')} mm.`,
        step: (radius: number) =>
          `It runs on a step rounded to ${mm(radius)}, in front of the belt's middle.`,
      },
    },
    issues: {
      notNeeded: (without: number, allowed: number) => ({
        message: `The grind line is off the wanted one by ${mm(without)} without a strip; allowed are ${mm(allowed)}.`,
        fix: 'Leave the strip away, or allow less.',
      }),
      noPass: {
        message: 'No side of this blade has a wanted flat line and a pass on a spine rest.',
        fix: 'Plan at least one side with a bevel by height, angle or full on a spine rest.',
      },
      noFlank: (side: Side, flank: number, need: number, u: number) => ({
        message: `The strip for the ${sides[side]} side needs ${mm(need)} of flat flank beside the spine; at ${mm(u)} from the plunge the far bevel leaves ${mm(flank)}.`,
        fix: 'Make the strip lower, the bevel lower, or grind this blade without a strip.',
      }),
      contactTooHigh: (contact: number, top: number) => ({
        message: `The strip would meet the step ${mm(contact)} above the seat; the step is ${mm(top)} high and must reach above the contact, because the spine falls along the blade.`,
        fix: `Raise the step above ${mm(contact)}, or choose a blade whose spine falls less.`,
      }),
      tooHollow: (radius: number, step: number, u: number) => ({
        message: `The strip is hollow with a radius of ${mm(radius)} at ${mm(u)} from the plunge; the step is rounded to ${mm(step)} and would bridge it; the hollow must be wider than the step.`,
        fix: `Use a step rounded to less than ${mm(radius)}.`,
      }),
      offNose: (corner: number, need: number) => ({
        message: `The spine would come to ${mm(corner)} from the belt; it needs ${mm(need)}, the gap at the nose and what it must bear on.`,
        fix: 'Set the nose nearer to the belt within its limits, or ask for a steeper bevel.',
      }),
      cannotStand: (side: Side, count: number) => ({
        message: `With the strip the blade finds no stand at ${String(count)} places of the stroke on the ${sides[side]} side; it must stand at all of them.`,
        fix: 'Shorten the stroke, or ask for a line that bends less.',
      }),
      lineRemains: (side: Side, off: number, u: number, allowed: number) => ({
        message: `With the best strip found the ${sides[side]} line is still ${mm(off)} off at ${mm(u)} from the plunge; it must be at most ${mm(allowed)}. The belt is wider than the bend there: one tilt serves its whole width.`,
        fix: 'Allow more, let the line follow the height, use a narrower belt, or keep the plunge and the tip off the belt.',
      }),
      notFlat: (side: Side, standing: number, u: number) => ({
        message: `With the strip the edge at ${mm(u)} from the plunge stays ${mm(standing)} over its thickness after the ${sides[side]} side; the strip tilts the blade but cannot bring a hollow edge to the belt.`,
        fix: 'Grind such a place by hand afterwards, or keep the belt off it.',
      }),
    },
  },
  ground: {
    sheetId: (index: number) => `ground-${String(index)}`,
    title: (blade: string) => `${blade} as the belt leaves it`,
    estimate: (basis: string | undefined) =>
      `Estimate, computed by grinding the blade virtually before anything is made${basis === undefined ? '' : `; ${basis}`}. Pictures are not to scale.`,
    places: 'Edge and grind lines, place by place',
    tip: 'The last of the tip does not steer: the line is shown there but not judged.',
    columns: [
      'From the plunge, mm',
      'Edge, mm',
      'Over the wanted edge, mm',
      'Left line, mm',
      'Left wanted, mm',
      'Left off, mm',
      'Right line, mm',
      'Right wanted, mm',
      'Right off, mm',
    ],
    strip: {
      title: 'Settings with the line strip',
      columns: [
        'Setting',
        'Rounded step to belt, mm',
        'Turns from zero',
        'Dial at',
        'Push above the seat, mm',
      ],
      push: (from: string, to: string) => `${from} to ${to}`,
      same: (strip: boolean) => `The same ${strip ? 'with' : 'without'} the line strip`,
      how: (from: number, below: number, tape: number) =>
        `Put the rounded step plate in place of the straight one and find its zero by the pin as usual. Stick the strip on the face away from the belt with tape ${mm(tape)} thick, its end ${mm(from)} from the plunge towards the tip and its lower edge ${mm(below)} from the spine line. For the other side turn the strip over, or take the one for that side.`,
      checks: (passed: number, all: number) =>
        `${String(passed)} of ${String(all)} checks with the strip pass on the solids; a strip with a failed one is not to be used.`,
      failed: (label: string, message: string) => `Failed: ${label}. ${message}`,
    },
    blade: 'Blade',
    counts: 'Steers',
    onSheet: {
      name: 'The blade as the belt leaves it (estimate)',
      value: 'last of the drawings, ground.csv',
    },
  },
  suit: {
    about: 'Compare the fixture families and work by hand for the blades of a design',
    freehand: {
      label: 'Freehand',
      about: 'The blade in the hands, nothing holds its angle: the line is as even as the maker.',
    },
    pushStick: {
      label: 'Push stick on the rest',
      about: 'The blade flat on the rest or free, pushed with a stick: fingers stay off the belt.',
    },
    recurve: (gap: number, belt: number) =>
      `The edge is hollow: a belt ${mm(belt)} wide bridges ${mm(round(gap))} of it, and no fixture before a flat platen follows that. Use a narrower belt or the edge of a wheel.`,
    short: (length: number, belt: number) =>
      `The blade is ${mm(length)} long and the belt ${mm(belt)} wide: there is no stroke.`,
    sharpTip: (fall: number) =>
      `The edge falls to the tip at ${deg(fall)}: the last of it is blended by hand.`,
    ofBlade: (blade: string, limit: string) => `“${blade}”: ${limit}`,
    wanders: (off: number, allowed: number) =>
      `The grind line wanders ${mm(round(off))} from the wanted one; allowed are ${mm(allowed)}.`,
    stands: (over: number, u: number) =>
      `The belt's width leaves ${mm(round(over))} over the wanted edge at ${mm(round(u))} from the plunge.`,
    noStand: (count: number) =>
      `In ${String(count)} passes the blade finds no stand at some places of the stroke.`,
    cost: (make: {
      readonly plates: number;
      readonly prints: number;
      readonly stock: number;
      readonly bought: number;
      readonly mass: number;
    }) =>
      `${String(make.plates)} plates, ${String(make.prints)} prints and ${String(make.stock)} lengths of stock to make (${String(Math.round(make.mass))} g), ${String(make.bought)} pieces to buy`,
    onlyHand: (blade: string) =>
      `No fixture here holds "${blade}": work by hand is the honest answer.`,
    best: (blade: string, family: string, whole: boolean, hand: readonly string[]) =>
      `For "${blade}": ${family}${whole ? '' : ', with the limits named'}${hand.length > 0 ? `; beside it ${hand.join(' and ').toLowerCase()} for what it cannot follow` : ''}.`,
    bestForAll: (count: number, family: string, whole: boolean) =>
      `For all ${String(count)} blades: ${family}${whole ? '' : ', with the limits named'}.`,
    noneForAll: (count: number) =>
      `No one fixture here holds all ${String(count)} blades: see each of them.`,
    tried: (list: readonly { readonly label: string; readonly values: number }[]) => {
      const total = list.reduce((sum, { values }) => sum + values, 0);
      const [first] = list;
      return `Tried against the last of these in vain: ${String(total)} values of ${String(list.length)} parameters${first ? `, ${first.label.toLowerCase()} first` : ''}. What keeps hands, clearances and reserves was not touched.`;
    },
    verdicts: { suits: 'suits', 'with-limits': 'with limits', not: 'does not suit' },
    columns: {
      family: 'Fixture',
      verdict: 'Verdict',
      line: 'Line off, mm',
      standing: 'Over the edge, mm',
      clearance: 'Least spare clearance, mm',
      degrees: 'Degrees per 0.1 mm',
      height: 'Bevel, mm per 0.1 mm',
    },
    /** What the numbers of the table are, for one who meets them first. */
    columnsMean: {
      line: 'most that the grind line strays from the wanted one',
      standing: 'most steel that the width of the belt leaves over the wanted edge',
      clearance: 'what the tightest clearance has left over what it must be',
      degrees: 'change of the bevel angle for 0.1 mm at what sets it',
      height: 'change of the bevel height, in mm, for the same 0.1 mm',
    },
    noHand: 'No blade asks for work by hand, freehand or with a push stick.',
    take: (family: string) => `Put this ${family.toLowerCase()} on the board`,
    taken: (family: string) => `${family} is on the board. Undo brings the other one back.`,
    title: 'Which fixture suits these blades',
    panelAbout:
      'Solves, checks and virtually grinds the blades with every family, together and each by itself. It takes some seconds a blade.',
    ask: 'Compare fixtures',
    together: 'All blades together, at the settings they share',
    alone: (blade: string) => `${blade} by itself`,
    byHand: 'By hand',
    nothingAsks: 'Nothing of this blade asks for it.',
    moved: (label: string, from: string, to: string) => `${label} ${to} instead of ${from}`,
    initial:
      'Other families are taken with their initial parameters and moved where the blade did not fit, up to six errors in turn; failed checks are told, not searched on. A reason against one may still be mended by changing several parameters at once.',
  },
  panel: {
    title: 'The blade as the belt leaves it',
    about:
      'Grinds the blade virtually, pass by pass, and looks for a strip that mends a wandering line. It takes a few seconds.',
    ask: 'Grind virtually',
    estimate: 'Estimate.',
    tip: 'The last of the tip does not steer: the line is shown there but not judged.',
    passes: 'Passes done',
    start: 'as it comes',
    after: (pass: string) => `after ${pass}`,
    without: 'Without a strip',
    with: 'With the line strip',
    edge: (standing: string, uneven: string) =>
      `Edge at most ${standing} over the wanted one, even to ${uneven}`,
    line: (side: Side, off: string, mended: string | undefined) =>
      `Grind line, ${sides[side]} side, off the wanted one by ${off}${mended === undefined ? '' : `; with the strip ${mended}`}`,
    edgeWith: (standing: string, uneven: string) =>
      `With the strip the edge at most ${standing} over the wanted one, even to ${uneven}`,
    strip: 'The line strip',
    choose: 'Make the rest for this strip',
    chooseAbout:
      'Gives the rest a rounded step: settings, parts, checks and drawings are then those with the strip.',
    manyBlades:
      'A rounded step is set for the strip of one blade: keep this blade alone in the design to make the rest for it.',
    made: 'This rest is made for the strip: its settings, parts, checks and drawings are those with it.',
    noStrip: 'No strip:',
    rests: 'What this rests on',
    none: 'This fixture does not say how it holds a blade while it is ground.',
  },
  command: {
    about: 'Grind the blades of a design virtually: edge, grind lines and what the belt leaves',
    bladeOption: 'name of one blade; all of the design otherwise',
    gridOption: 'spacing of the grid along the blade, 0.5 to 10 mm',
    grid: {
      label: 'Grid',
      meaning: 'Spacing of the places along the blade that are ground.',
      reason: 'A finer grid takes too long, a coarser one does not follow the blade.',
    },
    cureOption:
      'look for the strip that mends the grind line, with its rounded step and checks; --out writes both as parts',
    noCure: {
      message: 'This family has no step for a blade to bear on with a strip.',
      fix: 'Use a spine rest for this blade, or leave the strip out.',
    },
    cureTitle: (one: boolean) =>
      one ? 'Line strip, one for both sides' : 'Line strip, one a side',
    cureSetting: 'Rounded step to belt with the strip',
    cureDial: (turns: number, division: number) =>
      `${plain(turns, 2)} turns from zero, dial at ${String(division)}`,
    adviceOption: 'compare strokes, orders of the sides and a step turned by half the taper',
    outOption: 'folder for maps, places along the blades, and strip and rounded step as parts',
    noBlade: (name: string, known: string) => ({
      message: `The design has no blade "${name}"; it has ${known}.`,
      fix: `Name one of ${known}, or leave the name out.`,
    }),
    none: (family: string) => ({
      message: `The fixture family "${family}" does not say how it holds a blade while it is ground.`,
      fix: 'Choose a family that holds the blade by its spine, its edge or its tang.',
    }),
    noAdvice: 'There is no stroke to choose here: no advice.',
    title: (blade: string) => `${blade} (estimate: ground virtually)`,
    edge: (standing: number, u: number, uneven: number) =>
      `Edge: at most ${mm(round(standing))} over the wanted one, at ${mm(round(u))} from the plunge; even to ${mm(round(uneven))}`,
    line: (side: Side, off: number, u: number) =>
      `Grind line, ${sides[side]} side: ${mm(round(off))} off the wanted one, at ${mm(round(u))}`,
    model: (side: Side, off: number, u: number) =>
      `Section model, ${sides[side]} side: ${mm(round(off))} off the ground line, at ${mm(round(u))}`,
    volume: 'Metal taken, pass by pass',
    cubic: (volume: number) => `${String(Math.round(volume))} mm3`,
    missed: (count: number) => `the blade cannot stand at ${String(count)} places of the stroke`,
    places: ['from plunge', 'edge', 'over', 'left', 'off', 'right', 'off'],
    notJudged: 'not judged',
  },
  advice: (
    best: {
      readonly tipOverlap: number;
      readonly first: Side;
      readonly twice: boolean;
      readonly uneven: number;
    },
    planned: number,
    staysOn: boolean,
  ) =>
    `${staysOn ? 'Keep the tip on the belt' : `Stroke off the tip until ${mm(best.tipOverlap)} of blade are on the belt`}, grind the ${sides[best.first]} side first${best.twice ? ' and take the last belt twice' : ''}: the edge is then even to ${mm(round(best.uneven))}, as planned to ${mm(round(planned))}.`,
  yawStep: {
    offer: (
      half: number,
      over: { readonly width: number; readonly rise: number },
      before: { readonly line: number; readonly uneven: number },
      after: { readonly line: number; readonly uneven: number },
    ) =>
      `A straight step turned by half the taper, ${deg(half)}: its end on the tip's side stands ${mm(round(Math.abs(over.rise)))} ${over.rise < 0 ? 'farther from' : 'nearer to'} the belt than its other end, over ${mm(over.width)}, the other way for the other side. Grind line off by ${mm(round(after.line))} instead of ${mm(round(before.line))}, edge even to ${mm(round(after.uneven))} instead of ${mm(round(before.uneven))}.`,
    none: {
      message: 'The blade does not taper, so a step turned by half the taper is a straight one.',
      fix: 'Use the straight step.',
    },
    bent: (least: number, most: number) => ({
      message: `Half the taper runs from ${deg(least)} to ${deg(most)} along this blade; one turned step fits a single taper.`,
      fix: 'Use the strip, or a step turned by the mean.',
    }),
  },
} as const;
