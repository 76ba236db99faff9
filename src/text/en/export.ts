type Point = readonly [number, number];

const at = ([x, y]: Point): string => `(${x.toFixed(3)}, ${y.toFixed(3)})`;
const mm = (value: number): string => `${Number(value.toFixed(4))} mm`;

const lint = {
  meshEmpty: {
    message: 'The print has no solid: a solid has at least four triangles.',
    fix: 'Give the part a height and an outline.',
  },
  meshNumber: {
    message: 'The print has a corner that is no number.',
    fix: 'Check the sizes of the part.',
  },
  meshOpen: (count: number) => ({
    message: `The print leaks: ${count} edges do not belong to exactly two triangles.`,
    fix: 'Choose sizes that do not nearly coincide.',
  }),
  meshDegenerate: (count: number) => ({
    message: `The print has ${count} triangles without area once stored in single precision.`,
    fix: 'Choose sizes that do not nearly coincide.',
  }),
  meshCrossing: (count: number) => ({
    message: `The print has ${count} pairs of triangles that pass through each other.`,
    fix: 'Choose sizes that keep the features of the part apart.',
  }),
  meshInsideOut: {
    message: 'The faces of the print point inwards.',
    fix: 'Turn the outline of the part the other way round.',
  },
  meshBed: (lowest: number) => ({
    message: `The lowest point of the print is at z = ${mm(lowest)}; it has to lie on the bed at 0.`,
    fix: 'Set the part down on its print face.',
  }),
  open: (which: number, point: Point) => ({
    message: `Cut contour ${which} is open near ${at(point)}: a contour has to end where it starts.`,
    fix: 'Close the outline of the part.',
  }),
  zeroLength: (which: number, point: Point) => ({
    message: `Cut contour ${which} has a segment of no length at ${at(point)}.`,
    fix: 'Remove the repeated corner.',
  }),
  shortEdge: (which: number, point: Point, length: number, least: number) => ({
    message: `Cut contour ${which} has an edge of ${mm(length)} at ${at(point)}; machines need at least ${mm(least)}.`,
    fix: 'Choose sizes that do not nearly coincide, or a larger radius.',
  }),
  roundHole: (which: number, centre: Point) => ({
    message: `Cut contour ${which} about ${at(centre)} is round but not written as one circle.`,
    fix: 'Describe the hole as a circle.',
  }),
  overlap: (first: number, second: number, point: Point) => ({
    message: `Segments of cut contours ${first} and ${second} lie on top of each other near ${at(point)}: the line would be cut twice.`,
    fix: 'Remove the doubled line or move the features apart.',
  }),
  selfIntersection: (which: number, point: Point) => ({
    message: `Cut contour ${which} crosses or touches itself at ${at(point)}.`,
    fix: 'Change the sizes so that the outline stays clear of itself.',
  }),
  contoursTouch: (first: number, second: number, point: Point) => ({
    message: `Cut contours ${first} and ${second} touch or cross at ${at(point)}.`,
    fix: 'Move the hole away from the edge or from the other hole.',
  }),
  outer: (count: number, parts: number) => ({
    message: `The cut layer has ${count} outer contours; ${parts === 1 ? 'one part has exactly one' : `its ${parts} parts have ${parts}`}.`,
    fix: 'Keep every hole inside the outline, and write one part a file.',
  }),
  gap: (found: number, least: number) => ({
    message: `Two parts of the sheet are ${mm(found)} apart; the gap is ${mm(least)}.`,
    fix: 'Lay the sheet out again.',
  }),
  margin: (found: number, least: number) => ({
    message: `A part is ${mm(found)} from the edge of the sheet; the margin is ${mm(least)}.`,
    fix: 'Lay the sheet out again.',
  }),
  nested: (which: number) => ({
    message: `Cut contour ${which} lies inside another hole.`,
    fix: 'Remove the inner hole or move it into the material.',
  }),
  units: (insunits: string, measurement: string, wanted: string) => ({
    message: `The header says $INSUNITS ${insunits || 'nothing'} and $MEASUREMENT ${measurement || 'nothing'}; the file is meant to be in ${wanted}.`,
    fix: 'Export the file again.',
  }),
  entity: (type: string, allowed: readonly string[]) => ({
    message: `The cut file holds a ${type}; only ${allowed.join(', ')} may be in it.`,
    fix: 'Export the file again; put text and dimensions on the drawing.',
  }),
  layer: (layer: string, allowed: readonly string[]) => ({
    message: `An entity lies on layer "${layer}"; this file is meant to hold ${allowed.join(', ')} alone.`,
    fix: 'Export the file again with the layers that are wanted.',
  }),
  elevation: (type: string) => ({
    message: `A ${type} does not lie at z = 0.`,
    fix: 'Export the file again.',
  }),
  number: (type: string) => ({
    message: `A ${type} has a coordinate that is no number.`,
    fix: 'Check the sizes of the part.',
  }),
  empty: {
    message: 'The cut layer holds no contour.',
    fix: 'Give the part an outline.',
  },
  size: (off: number, allowed: number) => ({
    message: `The file as read back differs from the model by ${mm(off)}; at most ${mm(allowed)} is allowed.`,
    fix: 'Export the file again.',
  }),
};

/** Which files open, for whoever gave another one. */
export const opens =
  'What opens: a design (*.jig.json), a link, and of what was exported here every SVG, PDF, DXF and 3MF, report.json, manifest.json, and the whole package as a folder or packed. STL, CSV and TXT files have no place for a design: open one of the others beside them.';

export const exporting = {
  noDesign: {
    message: 'The file carries no design that this program could open.',
    fix: opens,
  },
  damaged: {
    message: 'The design in the file is damaged.',
    fix: 'Open another file of the same export.',
  },
  tooLarge: (limit: number) => ({
    message: `The file is larger than the ${limit} bytes that are read.`,
    fix: 'Open a file that was exported here.',
  }),
  archive: (reason: string) => ({
    message: `The archive cannot be read: ${reason}.`,
    fix: 'Open an archive that was exported here.',
  }),
  noPackage: {
    message: 'The archive is no package of this program: its manifest is missing or not readable.',
    fix: opens,
  },
  packageChanged: (paths: readonly string[]) => ({
    message: `The package was changed after it was written: ${paths.slice(0, 5).join(', ')}${paths.length > 5 ? ' and others' : ''}.`,
    fix: 'Open the package as it was exported, or the design file in it.',
  }),
  zipPath: 'it holds a file name that is not plain, or the same name twice',
  zipSize: 'it unpacks to more than is read',
  zipDamaged: 'it is damaged',
  sheetComment: 'Drawing sheet in paper millimetres. Not a cut file.',
  codeElsewhere: 'See the PDF',
  dxfComment: (units: string, kerf: number) =>
    `Units: ${units}. ${kerf === 0 ? 'Nominal size, no kerf applied.' : `Kerf of ${mm(kerf)} applied.`}`,
  sheetOf: ([width, height]: Point, gap: number, margin: number) =>
    `Sheet ${mm(width)} by ${mm(height)}, lower left corner at the origin; gap ${mm(gap)}, margin ${mm(margin)}.`,
  lint,
} as const;
