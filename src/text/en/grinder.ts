import { grinderRules } from './grinder-rules.ts';

/**
 * Words of the grinder's parameters. Frame: x along the stroke (0 at the belt's centreline), y
 * from the bare platen's face towards the maker, z up from the top of the rest.
 */
export const grinder = {
  parameters: {
    name: {
      label: 'Grinder name',
      meaning: 'What the maker calls this machine.',
      reason: 'It has to fit on one line of a drawing.',
    },
    id: {
      label: 'Short name',
      meaning: 'The name by which other parts of the file refer to this one.',
      reason: 'It must be unique in its list.',
    },
    purpose: {
      label: 'Purpose',
      meaning: 'What it is used for, in the words of the maker.',
      reason: 'It has to fit into one cell of a table.',
    },
    belt: {
      label: 'Belt',
      meaning: 'What all belts on this machine have in common.',
      reason: 'Belt and machine belong together.',
      width: {
        label: 'Belt width',
        meaning: 'Width of the abrasive belt.',
        reason: 'From the narrowest finger belts to the widest bench machines.',
      },
      length: {
        label: 'Belt length',
        meaning: 'Length of the belt once round.',
        reason: 'From small bench machines to large floor machines.',
      },
      tracking: {
        label: 'Tracking',
        meaning: 'How far the belt may wander to either side of its centreline.',
        reason: 'A belt that wanders further comes off its wheels.',
      },
      flutter: {
        label: 'Flutter',
        meaning: 'How far the running belt lifts off its support.',
        reason: 'A belt that lifts further is too slack to grind with.',
      },
      splice: {
        label: 'Extra thickness at the splice',
        meaning: 'How much thicker the belt is where its ends are joined.',
        reason: 'Zero for a butt joint; more than the most is a damaged belt.',
      },
      direction: {
        label: 'Direction of the belt',
        meaning: 'Which way the belt runs past the rest.',
        reason: 'With the edge up and the belt running down, the edge meets the belt first.',
        options: { down: 'Down, towards the rest', up: 'Up, away from the rest' },
      },
    },
    belts: {
      label: 'Belts',
      one: 'Belt',
      meaning: 'The abrasive belts at hand, from coarse to fine.',
      reason: 'At least one; two dozen are more than any sequence needs.',
      grit: {
        label: 'Grit',
        meaning: 'The P grade of the abrasive, or its nearest equal.',
        reason: 'From the coarsest to the finest grade of the P scale.',
      },
      thickness: {
        label: 'Belt thickness',
        meaning: 'From back to abrasive face, new, under working pressure.',
        reason: 'From thin film belts to surface-conditioning belts.',
      },
    },
    backings: {
      label: 'Backings',
      one: 'Backing',
      meaning: 'What lies between platen and belt.',
      reason: 'At least one; the bare platen is a backing of kind none.',
      kind: {
        label: 'Kind of backing',
        meaning: 'What the backing is made of.',
        reason: 'Soft backings give way, so their settings are estimates until calibrated.',
        options: {
          none: 'Bare platen',
          leather: 'Leather',
          rubber: 'Rubber',
          radius: 'Radiused face',
        },
      },
      thickness: {
        label: 'Backing thickness',
        meaning: 'Thickness between platen face and belt, under working pressure.',
        reason:
          'Zero for the bare platen; a carrier with a soft sheet may reach 50 mm; thicker ones lift the belt off its wheels.',
      },
      radius: {
        label: 'Backing radius',
        meaning: 'Radius of the convex face under the belt, seen along the stroke.',
        reason: 'Smaller ones are wheels; flatter ones grind no hollow that can be measured.',
      },
    },
    platen: {
      label: 'Platen',
      meaning: 'The support behind the belt where blades are ground.',
      reason: 'Flat, convex, or none on a machine with a contact wheel.',
      kinds: { flat: 'Flat', radius: 'Convex', none: 'None: contact wheel only' },
      radius: {
        label: 'Platen radius',
        meaning: 'Radius of the convex platen, seen along the stroke.',
        reason: 'Smaller ones are wheels; flatter ones grind no hollow that can be measured.',
      },
      width: {
        label: 'Platen width',
        meaning: 'Width along the stroke.',
        reason: 'About the width of the belt.',
      },
      bottom: {
        label: 'Bottom of the platen',
        meaning: 'Lower end of the face, above (+) or below (-) the top of the rest.',
        reason: 'It must lie below the top of the platen.',
      },
      top: {
        label: 'Top of the platen',
        meaning: 'Upper end of the face above the top of the rest.',
        reason: 'It must lie above the bottom of the platen.',
      },
      edgeRadius: {
        label: 'Radius of the platen ends',
        meaning: 'Radius over which the belt runs on and off the face.',
        reason: 'Zero is a sharp end; larger ones leave no flat.',
      },
      liner: {
        label: 'Liner thickness',
        meaning: 'Glass, ceramic or graphite sheet fixed to the face.',
        reason: 'Zero where there is none; thicker liners lift the belt off its wheels.',
      },
    },
    wheels: {
      label: 'Wheels',
      one: 'Wheel',
      meaning: 'Every wheel inside the belt.',
      reason: 'A belt needs two supports at least; more than eight are not found on a grinder.',
      role: {
        label: 'Role of the wheel',
        meaning: 'What the wheel is there for.',
        reason: 'Only these are known.',
        options: {
          drive: 'Drive wheel, on the motor',
          contact: 'Contact wheel, ground on',
          tracking: 'Tracking and tension wheel',
          idler: 'Idler',
        },
      },
      diameter: {
        label: 'Wheel diameter',
        meaning: 'Outer diameter under the belt.',
        reason: 'From small-wheel attachments to the largest contact wheels.',
      },
      width: {
        label: 'Wheel width',
        meaning: 'Width along the stroke.',
        reason: 'About the width of the belt.',
      },
      centre: {
        label: 'Centre of the wheel',
        meaning:
          'Distance from the bare platen face (behind it is negative) and height above the top of the rest, before the platen is leaned.',
        reason: 'Within the size of a machine.',
      },
      y: {
        label: 'Distance of the centre from the platen face',
        meaning: 'Negative behind the face.',
        reason: 'Within the size of a machine.',
      },
      z: {
        label: 'Height of the centre',
        meaning: 'Above (+) or below (-) the top of the rest.',
        reason: 'Within the size of a machine.',
      },
      surface: {
        label: 'Surface of the wheel',
        meaning: 'What the belt runs on.',
        reason: 'Rubber gives way, so its settings are estimates until calibrated.',
        options: { hard: 'Hard: metal or bare plastic', rubber: 'Rubber tyre' },
      },
    },
    rest: {
      label: 'Rest',
      meaning: 'What the fixture is mounted on.',
      reason: 'A table in front of the platen or a bare tool arm.',
      kinds: { table: 'Table', arm: 'Bare tool arm' },
      width: {
        label: 'Width of the rest',
        meaning: 'Along the stroke.',
        reason: 'Narrower ones cannot carry a fixture; wider ones are benches.',
      },
      depth: {
        label: 'Depth of the rest',
        meaning: 'From its front edge, near the belt, towards the maker.',
        reason: 'Shallower ones cannot carry a fixture; deeper ones are benches.',
      },
      thickness: {
        label: 'Thickness of the rest',
        meaning: 'From its top down, where the fixture is clamped or bolted.',
        reason: 'Thinner ones bend; thicker ones are out of reach of a clamp.',
      },
      gap: {
        label: 'Gap of the rest',
        meaning: 'From the bare platen face to the front edge of the rest.',
        reason: 'It must leave room for liner, backing and belt.',
      },
      pattern: {
        label: 'Mounting pattern',
        meaning: 'What a fixture can be fastened to.',
        reason: 'Slots, holes or the edges of the rest.',
        kinds: { slots: 'Slots', holes: 'Holes', edges: 'Edges only' },
      },
      axis: {
        label: 'Direction of the slots',
        meaning: 'Along the stroke (x) or towards the maker (y).',
        reason: 'Slots run along one of the two axes.',
        options: { x: 'Along the stroke', y: 'Towards the maker' },
      },
      slots: {
        label: 'Slots',
        one: 'Slot',
        meaning: 'Every slot of the rest.',
        reason: 'At least one; more than twelve leave no rest.',
      },
      slotAt: {
        label: 'Centreline of the slot',
        meaning: 'Its x when it runs towards the maker, its y when it runs along the stroke.',
        reason: 'It must lie on the rest.',
      },
      slotFrom: {
        label: 'Start of the slot',
        meaning: 'Lower end of its centreline along its direction.',
        reason: 'It must lie before the end of the slot.',
      },
      slotTo: {
        label: 'End of the slot',
        meaning: 'Upper end of its centreline along its direction.',
        reason: 'It must lie after the start of the slot.',
      },
      slotWidth: {
        label: 'Width of the slot',
        meaning: 'Across its direction.',
        reason: 'It must take a screw from M4 to M12.',
      },
      holes: {
        label: 'Holes',
        one: 'Hole',
        meaning: 'Centre of every hole, x and y.',
        reason: 'At least two to hold a fixture square; sixty are plenty.',
      },
      holeX: {
        label: 'x of a hole',
        meaning: 'Along the stroke from the belt centreline.',
        reason: 'It must lie on the rest.',
      },
      holeY: {
        label: 'y of a hole',
        meaning: 'From the bare platen face towards the maker.',
        reason: 'It must lie on the rest.',
      },
      hole: {
        label: 'Kind of hole',
        meaning: 'Whether the holes are tapped or plain.',
        reason: 'It decides which screws are used.',
        kinds: { tapped: 'Tapped', plain: 'Plain' },
      },
      thread: {
        label: 'Thread of the holes',
        meaning: 'Metric coarse thread.',
        reason: 'Only these sizes are in the hardware tables.',
        options: { M4: 'M4', M5: 'M5', M6: 'M6', M8: 'M8', M10: 'M10' },
      },
      holeDiameter: {
        label: 'Diameter of the holes',
        meaning: 'Plain diameter.',
        reason: 'It must take a screw from M4 to M12.',
      },
      travelY: {
        label: 'Travel towards the belt',
        meaning:
          'How far the rest can be moved from where it is drawn, to either side, towards or away from the belt.',
        reason: 'Zero when it is fixed.',
      },
      travelZ: {
        label: 'Travel in height',
        meaning: 'How far the rest can be moved from where it is drawn, up or down.',
        reason: 'Zero when it is fixed.',
      },
      armWidth: {
        label: 'Width of the tool arm',
        meaning: 'Along the stroke.',
        reason: 'From flat bar to the largest square tube in use.',
      },
      armHeight: {
        label: 'Height of the tool arm',
        meaning: 'From its top down.',
        reason: 'From flat bar to the largest square tube in use.',
      },
      armReach: {
        label: 'Reach of the tool arm',
        meaning:
          'From the bare platen face to the free end of the arm, as far as it may be drawn out.',
        reason: 'Shorter ones cannot carry a fixture; longer ones bend.',
      },
    },
    lean: {
      label: 'Lean of the platen',
      meaning:
        'Angle of platen and wheels from square to the rest; positive leans the top away from the maker.',
      reason: 'Beyond this the machine has been laid down for another job.',
    },
    keepOuts: {
      label: 'Keep-out boxes',
      one: 'Box',
      meaning: 'Guards, knobs, frame: where no part of the fixture may be.',
      reason: 'Two dozen boxes describe any machine.',
      min: {
        label: 'Lower corner of a keep-out box',
        meaning: 'Least x, y and z.',
        reason: 'Each must be less than the same of the upper corner.',
      },
      max: {
        label: 'Upper corner of a keep-out box',
        meaning: 'Greatest x, y and z.',
        reason: 'Each must be greater than the same of the lower corner.',
      },
      coordinate: {
        label: 'Coordinate of a keep-out box',
        meaning:
          'In the frame of the grinder; of a box that leans with the platen, as it stands at no lean.',
        reason: 'Within the size of a machine.',
      },
      name: {
        label: 'Name of the box',
        meaning: 'What it is of the machine: guard, knob, frame.',
        reason: 'Checks tell by this name what is met.',
      },
      goes: {
        label: 'When the platen leans',
        meaning:
          'Whether what is in the box is fastened to what leans, or to the frame that stands.',
        reason: 'A box that is put where nothing is leaves out what is there.',
        options: { frame: 'The box stays where it is', platen: 'The box leans with it' },
      },
    },
    drive: {
      label: 'Drive',
      meaning: 'What moves the belt.',
      reason: 'It decides the speed of the belt.',
      shaftSpeed: {
        label: 'Shaft speed',
        meaning: 'Turns a minute of the shaft that carries the drive wheel, at its fastest.',
        reason: 'From geared drives to two-pole motors on a raised frequency.',
      },
      pulleyDiameter: {
        label: 'Drive wheel diameter',
        meaning: 'Diameter under the belt of the wheel on that shaft.',
        reason: 'From the smallest to the largest drive wheels.',
      },
      beltRating: {
        label: 'Speed rating of the belt',
        meaning: 'Highest speed for which the belts are made.',
        reason: 'It is printed on the back of the belt or in its data sheet.',
      },
      wheelRating: {
        label: 'Speed rating of the wheels',
        meaning: 'Highest surface speed for which the wheels are made.',
        reason: 'It is marked on the wheel or in its data sheet.',
      },
    },
  },
  rules: grinderRules,
} as const;
