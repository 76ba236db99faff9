import { field } from './field.ts';
import { link } from './link.ts';

export const document = {
  field,
  link,
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
      calibration: {
        label: 'Calibration',
        meaning: 'What a test piece told of the fixture as built.',
        reason: 'The dial readings allow for it.',
        offset: {
          label: 'Offset found',
          meaning:
            'How far the fixture stands beyond what its dial says, in mm, or in degrees for a carriage.',
          reason: 'A larger offset is a fault of building, to be mended there.',
        },
        uncertainty: {
          label: 'Uncertainty of the offset',
          meaning: 'Standard uncertainty of the offset found, in its unit.',
          reason: 'It says how far the offset can be trusted.',
        },
        note: {
          label: 'Note on the calibration',
          meaning: 'Which test piece, belt and day it comes from.',
          reason: 'It stands beside the corrected readings.',
        },
      },
    },
    making: {
      label: 'Making',
      meaning: 'How the parts are made.',
      reason: 'Holes, webs, walls and fits depend on it.',
      units: {
        label: 'Units',
        meaning:
          'The units in which a maker reads: with inches, sheets are of the sizes used there, and the set-up sheet tells its lengths in both; files keep millimetres.',
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
        one: 'Sheet',
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
      inches: {
        label: 'Cut files in inches',
        meaning:
          'Whether cut files in inches are written beside those in millimetres, and the set-up sheet tells its lengths in both.',
        reason:
          'A file states its unit, but not every machine reads it: send the one that is asked for.',
        options: { no: 'Millimetres only', beside: 'Inches beside millimetres' },
      },
      nest: {
        sheets: {
          label: 'Nested sheets',
          meaning:
            'Whether all plates of one thickness are also laid out on sheets; what is sawn never is.',
          reason:
            'Most services lay out single parts themselves; whoever cuts a sheet of their own wants one file.',
          options: { no: 'One part a file only', beside: 'Nested sheets beside single parts' },
        },
        width: {
          label: 'Sheet width',
          meaning: 'Width of the sheet that plates are laid out on.',
          reason: 'Parts must fit on it; larger sheet is not sold by the piece.',
        },
        height: {
          label: 'Sheet height',
          meaning: 'Height of the sheet that plates are laid out on.',
          reason: 'Parts must fit on it; larger sheet is not sold by the piece.',
        },
        gap: {
          label: 'Gap between nested parts',
          meaning: 'Least distance between the cuts of two parts on a sheet.',
          reason: 'What stands between them must carry the sheet; about its thickness serves.',
        },
        margin: {
          label: 'Margin of the sheet',
          meaning: 'Least distance from a cut to the edge of the sheet.',
          reason: 'The sheet is held there, and its edge is seldom straight.',
        },
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
      play: {
        clearance: {
          label: 'Play of a clearance fit',
          meaning: 'What this printer needs added to a diameter so that a screw drops through.',
          reason: 'Read it off the fit coupon; the usual value is between 0.3 and 0.5 mm.',
        },
        close: {
          label: 'Play of a close fit',
          meaning:
            'What this printer needs added to a diameter so that a screw slides without shake.',
          reason: 'Read it off the fit coupon; the usual value is about 0.2 mm.',
        },
        press: {
          label: 'Play of a press fit',
          meaning:
            'What this printer needs added to a diameter so that a screw is pressed in and stays.',
          reason:
            'Read it off the fit coupon; below zero the hole is printed smaller than nominal.',
        },
      },
      bed: {
        width: {
          label: 'Bed width',
          meaning: 'Width of the print bed, along the x of the printer.',
          reason: 'All prints are also laid out on beds of this size.',
        },
        depth: {
          label: 'Bed depth',
          meaning: 'Depth of the print bed, along the y of the printer.',
          reason: 'All prints are also laid out on beds of this size.',
        },
        height: {
          label: 'Print height',
          meaning: 'How high the printer reaches over its bed.',
          reason: 'Every print is held against it, as it lies on the bed.',
        },
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
      one: 'Pass',
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
      depthLeft: {
        label: 'Hollow left',
        meaning: 'How much shallower than the final hollow this pass stops, on a wheel.',
        reason: 'The last pass leaves none; more than a hollow is deep grinds nothing.',
      },
    },
  },
  open: {
    design: 'design',
    grinder: 'grinder',
    tooLarge: (size: number, most: number) => ({
      message: `The file has ${size} bytes; at most ${most} are opened, because no real file is larger.`,
      fix: 'Check that this is the right file.',
    }),
    notUtf8: () => ({
      message: 'The file is not UTF-8 text; every design and grinder file is.',
      fix: 'Check that this is the right file, or save it as UTF-8.',
    }),
    tooDeep: (depth: number, most: number) => ({
      message: `The file is nested ${depth} levels deep; at most ${most} are opened, because no real file is deeper.`,
      fix: 'Check that this is the right file.',
    }),
    notJson: (detail: string) => ({
      message: `The file is not JSON${detail === '' ? '' : ` (${field.shown(detail)})`}; every design and grinder file is.`,
      fix: 'Mend the text at that place, or open another copy.',
    }),
    forbidden: (path: string) => ({
      message: `The file holds the key ${field.shown(path)}, which no file of this program has; such files are refused, because the key can change a program.`,
      fix: 'Remove the key, and ask where the file came from.',
    }),
    notFormat: (format: { mark: string; noun: string }, found: unknown) => ({
      message: `The format is ${field.shown(found)}; it must be "${format.mark}" for a ${format.noun} file.`,
      fix: `Open a ${format.noun} file here.`,
    }),
    noVersion: (format: { noun: string; version: number }, found: unknown) => ({
      message: `The schema version is ${field.shown(found)}; it must be a whole number from 1 to ${format.version}, because the ${format.noun} file is read by its version.`,
      fix: 'Add the schema version the file was written with.',
    }),
    tooNew: (format: { noun: string; version: number }, found: number) => ({
      message: `The ${format.noun} has schema version ${found}; this program knows versions 1 to ${format.version} and leaves newer files untouched, because it would lose what it does not know.`,
      fix: 'Open it with a newer version of this program.',
    }),
    tooOld: (format: { noun: string; version: number }, found: number) => ({
      message: `The ${format.noun} has schema version ${found}; there is no way from it to version ${format.version}.`,
      fix: 'Open and save it with an older version of this program first.',
    }),
    unknownFamily: (family: string, known: string) => ({
      message: `Fixture family is ${field.shown(family)}; it must be one of ${known}, because only registered families can be built.`,
      fix: `Choose one of ${known}.`,
    }),
  },
  rules: {
    sameName: (name: string) => ({
      message: `Blade name is ${field.shown(name)} twice; each must be unique, because settings are listed by it.`,
      fix: 'Rename one of the two blades.',
    }),
    thicknesses: (value: number, before: number) => ({
      message: `Plate thicknesses hold ${value} mm after ${before} mm; each must be greater than the one before, because the thinnest that suits is taken.`,
      fix: 'Sort Plate thicknesses from thin to thick and remove doubles.',
    }),
    sheet: (side: number, margin: number) => ({
      message: `The sheet is ${side} mm; it must be larger than ${2 * margin} mm, its two margins of ${margin} mm, so that something of it is left for parts.`,
      fix: 'Choose a larger sheet or a smaller margin.',
    }),
    play: (tight: string, value: number, loose: string, most: number) => ({
      message: `The play of a ${tight} fit is ${value} mm; it must be at most ${most} mm, that of a ${loose} fit, because it is the closer one.`,
      fix: `Set it to at most ${most} mm, or the play of the ${loose} fit to at least ${value} mm.`,
    }),
    layer: (value: number, most: number) => ({
      message: `Layer height is ${value} mm; it must be at most ${Number(most.toFixed(3))} mm, three quarters of the nozzle, because higher layers do not bond.`,
      fix: `Set Layer height to at most ${Number(most.toFixed(3))} mm.`,
    }),
    unknownReference: (key: 'belt' | 'backing', value: string, known: string) => ({
      message: `The ${key} of this pass is ${field.shown(value)}; it must be one of ${known}, the ${key}s of the grinder.`,
      fix: `Choose one of ${known}, or add the ${key} to the grinder.`,
    }),
    edgeRises: (pass: number, value: number, before: number) => ({
      message: `Stop at edge thickness is ${value} mm in pass ${pass}; it must be at most ${before} mm, the stop of the pass before, because grinding only takes metal away.`,
      fix: `Set the stop of pass ${pass} to at most ${before} mm.`,
    }),
    steeperRises: (pass: number, value: number, before: number) => ({
      message: `Steeper by is ${value} degrees in pass ${pass}; it must be at most ${before} degrees, as in the pass before, because grinding starts steep and steps in.`,
      fix: `Set Steeper by of pass ${pass} to at most ${before} degrees.`,
    }),
    edgeNotShared: (blade: string, wanted: number, other: string, edge: number) => ({
      message: `"${blade}" wants an edge of ${wanted} mm, but the last pass stops at ${edge} mm, as "${other}" wants it; blades of one design must want the same, because one sequence ends at one edge.`,
      fix: `Set its wanted edge to ${edge} mm, give all blades and the last pass another one, or make a design of its own for it.`,
    }),
    edgeNotReached: (value: number, blade: string, wanted: number) => ({
      message: `The last pass stops at an edge of ${value} mm; ${blade} wants ${wanted} mm, and the last pass must stop there.`,
      fix: `Set the stop of the last pass to ${wanted} mm, or correct Edge thickness wanted.`,
    }),
    edgeNotMet: (value: number, blade: string, asHeatTreated: number) => ({
      message: `The first pass stops at an edge of ${value} mm; it must stop at ${asHeatTreated} mm at most, the edge of ${blade} as heat treated, because it would not grind it otherwise.`,
      fix: `Set the stop of the first pass to at most ${asHeatTreated} mm.`,
    }),
    endsSteeper: (value: number) => ({
      message: `The last pass is steeper by ${value} degrees; it must be 0 degrees, because the last pass grinds the wanted bevel.`,
      fix: 'Set Steeper by of the last pass to 0.',
    }),
  },
} as const;
