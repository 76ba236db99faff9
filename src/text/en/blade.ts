/** Words of the blade's parameters. Measures: u from the plunge to the tip, v from the spine. */
export const blade = {
  parameters: {
    name: {
      label: 'Blade name',
      meaning: 'What this blade is called on drawings and set-up sheets.',
      reason: 'It has to fit on one line of a drawing.',
    },
    quantity: {
      label: 'Number of blades',
      meaning: 'How many blades of this pattern are to be ground.',
      reason: 'It scales the volume to be ground; a batch beyond 1000 is factory work.',
    },
    outline: {
      label: 'Outline',
      meaning:
        'The side view of the blade, by its main dimensions or by points along spine and edge.',
      reason: 'Only these two ways of describing it are known.',
      kinds: { dimensions: 'Main dimensions', curves: 'Points along spine and edge' },
      length: {
        label: 'Blade length',
        meaning: 'From the plunge to the tip, along the straight spine line.',
        reason:
          'Shorter blades cannot be held in a fixture, longer ones are beyond a bench grinder.',
      },
      heelHeight: {
        label: 'Height at the heel',
        meaning: 'From the straight spine line to the edge at the plunge.',
        reason: 'Lower blades disappear behind the nose; higher ones reach beyond the platen.',
      },
      bellyStart: {
        label: 'Start of the belly',
        meaning: 'Where the straight part of the edge ends, measured from the plunge.',
        reason: 'It must lie between the plunge and the tip.',
      },
      bellyHeight: {
        label: 'Height at the belly',
        meaning: 'From the straight spine line to the edge where the belly starts.',
        reason: 'The straight edge runs from the height at the heel to this height.',
      },
      spineDropStart: {
        label: 'Start of the spine drop',
        meaning: 'Where the spine leaves its straight line towards the tip, from the plunge.',
        reason: 'It must lie between the plunge and the tip.',
      },
      tipDrop: {
        label: 'Drop of the tip',
        meaning: 'How far the tip lies below the straight spine line, towards the edge.',
        reason: 'The tip lies between the spine line and the lowest point of the edge.',
      },
      spineSagitta: {
        label: 'Curve of the spine',
        meaning:
          'Height of the arc of the spine over the whole length: + bulges away from the edge, - is hollow.',
        reason: 'A stronger curve no longer seats on a flat nose.',
      },
      spine: {
        label: 'Spine points',
        meaning:
          'Pairs of distance from the plunge and distance below the spine line, from the plunge to the tip.',
        reason:
          'The curve runs through the points without bulging beyond them; a few hundred are plenty.',
      },
      edge: {
        label: 'Edge points',
        meaning:
          'Pairs of distance from the plunge and distance below the spine line, from the plunge to the tip.',
        reason:
          'The curve runs through the points without bulging beyond them; a few hundred are plenty.',
      },
      pointU: {
        label: 'Distance of a point from the plunge',
        meaning: 'Measured along the straight spine line.',
        reason: 'Points run from the plunge (0) to the tip.',
      },
      pointV: {
        label: 'Depth of a point',
        meaning: 'Measured from the straight spine line towards the edge.',
        reason: 'It must lie within the height of a blade.',
      },
    },
    ricasso: {
      label: 'Ricasso',
      meaning: 'Length that stays unground between the plunge and the tang.',
      reason: 'Zero where the bevel runs to the heel; longer than this it is part of the handle.',
    },
    tang: {
      label: 'Tang or handle',
      meaning: 'What is behind the blade while it is ground: it must clear belt and fixture.',
      reason: 'A bare tang or a fitted handle, as a box around it.',
      kind: {
        label: 'Kind of tang',
        meaning: 'Whether the blade is ground with a bare tang or with its handle fitted.',
        reason: 'Only these two are known.',
        options: { tang: 'Bare tang', handle: 'Handle fitted' },
      },
      length: {
        label: 'Length of the tang',
        meaning: 'From the end of the ricasso to the end of tang or handle.',
        reason: 'Shorter cannot be held, longer is not a knife.',
      },
      height: {
        label: 'Height of the tang',
        meaning: 'In the plane of the blade, from its spine side to its edge side.',
        reason: 'Thinner tangs bend under the push; thicker handles do not fit a hand.',
      },
      thickness: {
        label: 'Thickness of the tang',
        meaning: 'Square to the plane of the blade.',
        reason: 'From the thinnest stock to the thickest handle.',
      },
      drop: {
        label: 'Drop of the tang',
        meaning:
          'From the straight spine line to the spine side of the tang, towards the edge; negative stands above the spine.',
        reason: 'A tang lies within the height of the blade, a handle may stand above its spine.',
      },
    },
    thickness: {
      label: 'Thickness along the spine',
      one: 'Place',
      meaning:
        'Thickness of the blank at places along the spine; straight between them, constant beyond the ends.',
      reason: 'One place for an even blank, two for an even taper; a dozen describes any blank.',
      u: {
        label: 'Place of a thickness',
        meaning: 'Where this thickness was measured, from the plunge towards the tip.',
        reason: 'It must lie on ricasso or blade.',
      },
      t: {
        label: 'Thickness',
        meaning: 'Thickness of the blank there, across both faces.',
        reason: 'Thinner stock bends under the push; thicker is beyond these fixtures.',
      },
    },
    spineRadius: {
      label: 'Spine corner radius',
      meaning: 'Radius of the two long corners of the spine while the blade is ground.',
      reason:
        'Zero is a sharp corner; the corner that meets the step must be smaller than half the stock.',
    },
    edge: {
      label: 'Edge thickness',
      meaning: 'Thickness behind the edge before and after grinding.',
      reason: 'Both are needed for the sequence of stops.',
      asHeatTreated: {
        label: 'Edge thickness as heat treated',
        meaning: 'Thickness of the blade at its edge when it comes to this fixture.',
        reason: 'Thinner edges burn and warp; it cannot exceed the thickest stock.',
      },
      wanted: {
        label: 'Edge thickness wanted',
        meaning: 'Thickness behind the edge when the last belt is done.',
        reason:
          'Below the least, an edge that meets the belt first grabs it; above the most, it is not a bevel.',
      },
      shareLeft: {
        label: 'Share of the left side',
        meaning:
          'Part of the edge thickness that lies left of the midplane, seen from the tang with the edge down.',
        reason: '0.5 is an edge in the middle; 0 and 1 put it on one face.',
      },
    },
    bevels: {
      label: 'Bevels',
      meaning: 'What is ground on each side.',
      reason: 'Each side is stated on its own, so that unequal grinds are possible.',
      left: {
        label: 'Left bevel',
        meaning: 'What is ground on the left side, seen from the tang with the edge down.',
        reason: 'Only these ways of stating a bevel are known.',
      },
      right: {
        label: 'Right bevel',
        meaning: 'What is ground on the right side, seen from the tang with the edge down.',
        reason: 'Only these ways of stating a bevel are known.',
      },
      kinds: {
        height: 'By its height',
        angle: 'By its angle',
        full: 'Full height, to the spine',
        hollow: 'Hollow, parallel to the edge',
        none: 'Not ground',
      },
      height: {
        label: 'Bevel height',
        meaning:
          'From the edge to the grind line along the midplane, in the middle of the straight part of the edge.',
        reason: 'It must lie within the height of a blade.',
      },
      angle: {
        label: 'Bevel angle',
        meaning: 'Between the midplane and the ground face of this side.',
        reason:
          'Flatter than the least there is no grind line to find; steeper than the most is a chisel.',
      },
      depth: {
        label: 'Depth of the hollow',
        meaning: 'Greatest depth of the hollow below the face it is ground into.',
        reason: 'Less cannot be measured; more breaks through a blade.',
      },
      centre: {
        label: 'Centre of the hollow',
        meaning: 'From the edge to the deepest line of the hollow, along the face.',
        reason: 'It must lie within the height of a blade.',
      },
    },
    line: {
      label: 'Grind line',
      meaning: 'How the line between bevel and flat should run along the blade.',
      reason: 'One setting cannot follow every line; this says what is aimed at.',
      follow: {
        label: 'Grind line follows',
        meaning: 'What the grind line should keep an even measure from.',
        reason: 'Only these three are known.',
        options: {
          edge: 'The edge, at an even height above it',
          share: 'The blade, at an even share of its height',
          spine: 'The spine, at an even distance below it',
        },
      },
      allowed: {
        label: 'Deviation allowed',
        meaning: 'How far the grind line may stray from the wanted line before the maker minds.',
        reason: 'Less than the least cannot be seen; more than the most is a different knife.',
      },
    },
  },
  rules: {
    beforeTip: (label: string, value: number, length: number) => ({
      message: `${label} is ${value} mm; it must be less than the blade length of ${length} mm, because it lies before the tip.`,
      fix: `Set ${label} below ${length} mm, or make the blade longer.`,
    }),
    tipInside: (drop: number, depth: number) => ({
      message: `Drop of the tip is ${drop} mm; it must be at most ${depth} mm, the depth of the straight edge at the tip, because the edge does not fall towards the tip.`,
      fix: `Set Drop of the tip to at most ${depth} mm, or raise the height at the belly.`,
    }),
    turn: (label: string, turn: number, most: number) => ({
      message: `From ${label} the curve turns by ${turn} degrees to reach the tip; it must turn by at most ${most} degrees, because a steeper end is no longer one curve along the blade.`,
      fix: `Set ${label} further from the tip, or bring the tip closer to its line.`,
    }),
    bellyTurn: 'Start of the belly',
    spineTurn: 'Start of the spine drop',
    sagitta: (value: number, most: number) => ({
      message: `Curve of the spine is ${value} mm; for this length it must be from ${-most} to ${most} mm, because a stronger curve no longer seats on a flat nose.`,
      fix: `Set Curve of the spine to a value from ${-most} to ${most} mm.`,
    }),
    noHeight: (u: number, height: number, least: number) => ({
      message: `The blade is ${height} mm high at ${u} mm from the plunge; it must be at least ${least} mm high up to the tip, because spine and edge may meet only at the tip.`,
      fix: 'Lower the edge or raise the spine there.',
    }),
    increasing: (label: string, index: number, value: number, before: number, least: number) => ({
      message: `${label} ${index + 1} is at ${value} mm after one at ${before} mm; each must lie at least ${least} mm after the one before, because the curve is read from plunge to tip.`,
      fix: `Sort the entries of ${label} from plunge to tip and remove doubles.`,
    }),
    curveStart: (label: string, value: number) => ({
      message: `${label} start at ${value} mm; they must start at 0 mm, because measures run from the plunge.`,
      fix: `Give ${label} a first point at the plunge, with distance 0.`,
    }),
    curveTip: (spine: string, edge: string) => ({
      message: `Spine points end at ${spine} and edge points at ${edge}; both must end at the same point, because spine and edge meet at the tip.`,
      fix: 'Give both lists the same last point.',
    }),
    curveLength: (value: number, min: number, max: number) => ({
      message: `The points reach to ${value} mm from the plunge; Blade length must be from ${min} to ${max} mm for these fixtures.`,
      fix: `End the points between ${min} and ${max} mm.`,
    }),
    stationPlace: (value: number, from: number, to: number) => ({
      message: `Place of a thickness is ${value} mm; it must be from ${from} to ${to} mm, because it lies on ricasso or blade.`,
      fix: `Set Place of a thickness to a value from ${from} to ${to} mm.`,
    }),
    spineRadius: (value: number, most: number) => ({
      message: `Spine corner radius is ${value} mm; it must be at most ${most} mm, because two corners share the thinnest stock of the spine.`,
      fix: `Set Spine corner radius to at most ${most} mm.`,
    }),
    edgeThickerThanSpine: (value: number, thickness: number) => ({
      message: `Edge thickness as heat treated is ${value} mm; it must be at most ${thickness} mm, the thinnest stock of this blade, because an edge is not thicker than its spine.`,
      fix: `Set Edge thickness as heat treated to at most ${thickness} mm, or correct Thickness along the spine.`,
    }),
    edgeGrows: (wanted: number, asHeatTreated: number) => ({
      message: `Edge thickness wanted is ${wanted} mm; it must be at most the edge thickness as heat treated, ${asHeatTreated} mm, because grinding only takes metal away.`,
      fix: `Set Edge thickness wanted to at most ${asHeatTreated} mm.`,
    }),
    nothingGround: () => ({
      message:
        'Both bevels are of kind none; at least one side must be ground, because there is nothing to set otherwise.',
      fix: 'Choose another kind for the left or the right bevel.',
    }),
    bevelTooHigh: (label: string, value: number, height: number, u: number) => ({
      message: `${label} is ${value} mm; it must be at most ${height} mm, the height of the blade at ${u} mm from the plunge where it is stated.`,
      fix: `Set ${label} to at most ${height} mm, or choose the kind full.`,
    }),
    noRise: (offset: number, half: number) => ({
      message: `The edge of this side lies ${offset} mm from the midplane and the spine ${half} mm; the edge must lie closer, because there is nothing to grind otherwise.`,
      fix: 'Reduce Edge thickness wanted, or bring Share of the left side closer to 0.5.',
    }),
    bevelAngle: (angle: number, min: number, max: number) => ({
      message: `This bevel comes to an angle of ${angle} degrees; it must be from ${min} to ${max} degrees, because flatter ones have no line to find and steeper ones are chisels.`,
      fix: 'Change the bevel height, or the thickness of stock or edge.',
    }),
    bevelHeight: (height: number, min: number) => ({
      message: `This bevel comes to a height of ${height} mm; it must be at least ${min} mm, because it could not be measured otherwise.`,
      fix: 'Reduce the bevel angle.',
    }),
    hollowDepth: (depth: number, half: number) => ({
      message: `Depth of the hollow is ${depth} mm; it must be less than ${half} mm, half of the thickness of the stock, because it would break through.`,
      fix: `Set Depth of the hollow below ${half} mm.`,
    }),
    tangApart: (from: number, to: number, height: number, least: number) => ({
      message: `The tang reaches from ${from} to ${to} mm below the spine line, the blade there from 0 to ${height} mm; they must overlap by at least ${least} mm, because they are one piece.`,
      fix: 'Correct Drop of the tang or Height of the tang.',
    }),
    tangThick: (tang: number, bar: number) => ({
      message: `Thickness of the tang is ${tang} mm; where the blade passes into it the blade is ${bar} mm thick, and a bare tang of the same bar is at most as much.`,
      fix: `Set Thickness of the tang to ${bar} mm, or leave it where the tang was forged or built up so.`,
    }),
  },
} as const;
