import { field } from './field.ts';

export const document = {
  field,
  parameters: {
    name: {
      label: 'Design name',
      meaning: 'What the maker calls this fixture.',
      reason: 'It goes into file names and title blocks.',
    },
    notes: {
      label: 'Notes',
      meaning: 'Anything worth telling the next maker.',
      reason: 'It has to fit on a set-up sheet.',
    },
    revision: {
      label: 'Revision',
      meaning: 'Counts the issues of this design; it stands in every title block.',
      reason: 'A whole number from 1 up.',
    },
    blades: {
      label: 'Blades',
      meaning: 'The family of blades that this fixture grinds.',
      reason: 'One fixture serves one family; a dozen patterns are a wide one.',
    },
    grinder: {
      label: 'Grinder',
      meaning: 'The machine the fixture is made for.',
      reason: 'A fixture without its grinder cannot be solved.',
    },
    fixture: {
      label: 'Fixture',
      meaning: 'The fixture family and what was set in it.',
      reason: 'It decides which parts are made.',
      family: {
        label: 'Fixture family',
        meaning: 'Which kind of fixture is made.',
        reason: 'Only registered families can be built.',
      },
      parameters: {
        label: 'Fixture parameters',
        meaning: 'The values of the parameters of the family, by name.',
        reason: 'The family states their ranges; what is left out takes its initial value.',
      },
    },
    making: {
      label: 'Making',
      meaning: 'How the parts are made.',
      reason: 'Holes, webs, walls and fits depend on it.',
      units: {
        label: 'Units',
        meaning: 'The units in which drawings are read; files keep millimetres.',
        reason: 'Only these two are in use.',
        options: { mm: 'Millimetres', in: 'Inches' },
      },
      plates: {
        label: 'Plates',
        meaning: 'How plates are cut.',
        reason: 'Each process has its own limits.',
      },
      process: {
        label: 'Cutting process',
        meaning: 'How plates are cut to shape.',
        reason: 'Each process has its own least holes, webs and kerf.',
        options: {
          laser: 'Laser cut',
          waterjet: 'Water jet',
          plasma: 'Plasma cut',
          'saw-drill': 'Saw, file and drill',
        },
      },
      material: {
        label: 'Plate material',
        meaning: 'What the plates are made of.',
        reason: 'Only these are in the tables of densities and stiffness.',
        options: {
          steel: 'Mild steel',
          stainless: 'Stainless steel',
          aluminium: 'Aluminium alloy',
        },
      },
      thicknesses: {
        label: 'Plate thicknesses',
        meaning: 'Sheet thicknesses the maker can get.',
        reason: 'At least one, in rising order.',
      },
      thickness: {
        label: 'Plate thickness',
        meaning: 'One thickness of sheet that can be had.',
        reason: 'Thinner sheet bends under the push; thicker cannot be cut in a small shop.',
      },
      kerf: {
        label: 'Kerf',
        meaning: 'Width of the cut by which outlines are offset; 0 leaves them nominal.',
        reason: 'Most shops offset themselves: ask before setting it.',
      },
      prints: {
        label: 'Prints',
        meaning: 'How printed parts are made.',
        reason: 'Walls and fits depend on it.',
      },
      filament: {
        label: 'Print material',
        meaning: 'What printed parts are made of.',
        reason: 'Only these are in the table of densities; they soften at different heat.',
        options: { PLA: 'PLA', PETG: 'PETG', ABS: 'ABS', ASA: 'ASA', PA: 'Polyamide' },
      },
      fit: {
        label: 'Fit of printed holes',
        meaning: 'How loose holes for screws and pins are printed.',
        reason: 'Printers differ: print the fit coupon and choose by it.',
        options: { clearance: 'Clearance', close: 'Close', press: 'Press' },
      },
      nozzle: {
        label: 'Nozzle diameter',
        meaning: 'Width of one printed line.',
        reason: 'It sets the least wall.',
      },
      layer: {
        label: 'Layer height',
        meaning: 'Height of one printed layer.',
        reason: 'More than three quarters of a nozzle does not bond.',
      },
    },
    sequence: {
      label: 'Sequence',
      meaning: 'The belts in the order in which they are used.',
      reason: 'At least one pass; a dozen are more than anyone grinds.',
      belt: {
        label: 'Belt of the pass',
        meaning: 'The short name of one of the belts of the grinder.',
        reason: 'Its thickness moves the setting.',
      },
      backing: {
        label: 'Backing of the pass',
        meaning: 'The short name of one of the backings of the grinder.',
        reason: 'Its thickness moves the setting.',
      },
      edge: {
        label: 'Stop at edge thickness',
        meaning: 'Thickness behind the edge at which this belt is left.',
        reason: 'The step does not stop the cut: the maker stops by measuring the edge.',
      },
      steeper: {
        label: 'Steeper by',
        meaning: 'How much steeper than the final bevel this pass is ground.',
        reason: 'A flatter pass would cut above the final grind line, which cannot be mended.',
      },
    },
  },
} as const;
