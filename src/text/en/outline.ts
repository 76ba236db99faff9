const mm = (value: number): string => `${value.toFixed(2)} mm`;
const bare = (value: number): string => value.toFixed(2);

/** Bringing a blade outline from a DXF or SVG file. Lengths of a file are in its own units. */
export const outline = {
  tooLarge: (bytes: number, most: number) => ({
    message: `The file has ${bytes} bytes; an outline may have at most ${most}, because more is not one outline.`,
    fix: 'Save the outline of the blade alone, without hatching, pictures and text.',
  }),
  neither: {
    message: 'The file is neither an SVG nor a DXF with text groups; only these hold outlines.',
    fix: 'Save the outline as DXF (not binary) or plain SVG.',
  },
  damaged: {
    message: 'The file could not be read to its end; it is damaged or not what its beginning says.',
    fix: 'Save it again as DXF (not binary) or plain SVG.',
  },
  tooMuch: (most: number) => ({
    message: `The file draws more than ${most} lines or curves, or nests too deeply, for one outline.`,
    fix: 'Save the outline of the blade alone.',
  }),
  tooManyEnds: {
    message: 'The file has thousands of loose ends, so no outline can be put together from it.',
    fix: 'Join the lines to one closed outline before saving it.',
  },
  noContour: {
    message: 'The file draws no line that encloses an area, so there is no outline in it.',
    fix: 'Draw the outline as one closed line, as curves and not as text or picture.',
  },
  doubled: (n: number) => ({
    message: `${n} doubled ${n === 1 ? 'line was' : 'lines were'} left out.`,
    fix: 'Nothing needs to be done.',
  }),
  specks: (n: number) => ({
    message: `${n} ${n === 1 ? 'line' : 'lines'} without length ${n === 1 ? 'was' : 'were'} left out.`,
    fix: 'Nothing needs to be done.',
  }),
  bridged: (size: number, x: number, y: number) => ({
    message: `A gap of ${bare(size)} (in units of the file) at ${bare(x)}, ${bare(y)} was bridged.`,
    fix: 'See in the picture whether the outline is right there.',
  }),
  open: (gap: number, x: number, y: number) => ({
    message: `A line is open: from ${bare(x)}, ${bare(y)} its ends are ${bare(gap)} apart (in units of the file). It would be closed straight.`,
    fix: 'Close it in the drawing unless its open end is the tang.',
  }),
  leftOut: (name: string, n: number) => ({
    message: `${n} × “${name}” in the file ${n === 1 ? 'is' : 'are'} no plain outline and ${n === 1 ? 'was' : 'were'} left out.`,
    fix: 'Turn it into plain lines before saving if it belongs to the outline.',
  }),
  length: (length: number, min: number, max: number) => ({
    message: `From plunge to tip the outline would be ${mm(length)} long; a blade is ${min} to ${max} mm long.`,
    fix: 'Put in the right known length, or the distance from tip to plunge.',
  }),
  plunge: (plunge: number, length: number) => ({
    message: `The plunge at ${mm(plunge)} from the tip lies beyond the outline, which is ${mm(length)} long.`,
    fix: 'Put in a distance from the tip within the outline.',
  }),
  noSides: {
    message: 'No spine and edge run from the plunge to the tip.',
    fix: 'Move the plunge, or choose another line of the file.',
  },
  hangs: (size: number) => ({
    message: `The outline turns back on itself by ${mm(size)} along the blade; the part that hangs over was left out.`,
    fix: 'See in the picture whether that part matters for grinding.',
  }),
  edgeUnsure: {
    message:
      'The outline does not tell which of its sides is the edge: turned over it is the outline of another blade.',
    fix: 'See whether the edge is where the picture says, and turn the outline over if not.',
  },
  /** The import on the blade's step. */
  title: 'An outline from a file',
  about: 'Bring the outline of your own blade as DXF or SVG, or drop the file on this page.',
  pick: 'Choose a DXF or SVG',
  reading: 'Reading the outline …',
  refused: 'No outline was taken; nothing was changed.',
  which: 'Line of the file',
  contour: (n: number, size: string, open: boolean) => `${n}: ${size} long${open ? ', open' : ''}`,
  unit: (length: string) =>
    `By the file's own unit this is ${length} long. Measure your blade and put in what you find.`,
  noUnit: 'The file does not say how large it is. Measure your blade and put in what you find.',
  known: {
    label: 'Whole length',
    meaning: 'From the tip to the far end of the outline, along the blade.',
    reason: 'One known length gives the scale of all others.',
  },
  confirm: 'This length is right',
  confirmed: 'The scale is confirmed.',
  unconfirmed: 'Confirm the length first: the outline is taken only at a known scale.',
  plungeAt: {
    label: 'Tip to plunge',
    meaning: 'How far back from the tip the ground bevel ends; tap the drawing at that place.',
    reason: 'Measures along the blade start at the plunge.',
  },
  plungeBy: {
    step: 'The plunge was put where the edge ends in a step.',
    given: 'The plunge is where you put it.',
    end: 'No step was found in the edge, so the whole outline is taken as blade.',
  },
  find: 'Find the plunge again',
  turn: {
    label: 'Turned by',
    meaning:
      'By how much the outline is turned from how it was drawn; plus turns its tip towards the spine.',
    reason: 'Measures along the blade run in the direction in which it then lies.',
  },
  turnBy: {
    spine: 'It was turned so that its straight spine lies level.',
    drawing: 'Its spine is curved, so it was left as it was drawn.',
    given: 'It is turned as you said.',
    curved:
      'Its spine is curved and it was drawn aslant, so it was turned to level its spine nearly.',
  },
  findTurn: 'Find the turn again',
  otherEnd: 'The tip is at the other end',
  otherEdge: 'Edge and spine are the other way round',
  edgeRight: 'The edge is where the picture says',
  turnOver: 'Turn it over',
  unfaced: 'Say first whether the edge is where the picture says.',
  picture: 'The outline as it was read',
  legend: 'Filled: the file. Full line: the blade as it would be taken. Tap where the plunge is.',
  spineName: 'spine',
  edgeName: 'edge',
  tipName: 'tip',
  plungeName: 'plunge',
  how: 'Take it as',
  byDimensions: (deviation: string) => `dimensions, which stay inputs: off by up to ${deviation}`,
  byPoints: (n: number, deviation: string) => `${n} points: off by up to ${deviation}`,
  take: 'Take this outline',
  drop: 'Leave the blade as it is',
  taken: 'The outline was taken. Undo brings the old one back.',
  chord: (chord: string) => `Curves of the file were straightened within ${chord}.`,
  tang: (length: string, height: string) =>
    `Behind the plunge: a tang ${length} long and ${height} high.`,
  /** The command. */
  command: {
    about: 'Put the outline of a DXF or SVG file into a design, fitted within a stated error',
    file: 'DXF or SVG file with the outline',
    into: 'design whose first blade gets the outline; without it only the numbers are printed',
    length: 'known length: from the tip to the far end of the outline, mm',
    plunge: 'from the tip to the plunge, mm; left out: where the edge ends in a step',
    turn: 'by how much to turn the drawing, tip towards the spine, degrees; left out: level spine, or as drawn',
    otherEnd: 'the tip is at the other end',
    otherEdge: 'edge and spine are the other way round',
    points: 'take it as points even where dimensions fit within 0.1 mm',
    out: 'new design file',
    badNumber: (flag: string, value: string, unit: string, min: number, max: number) => ({
      message: `${flag} is "${value}"; it must be a plain number of ${unit} from ${min} to ${max}.`,
      fix: `Give ${flag} a number in that range.`,
    }),
    needsOut: {
      message: '--into was given without --out; no file is ever changed in place.',
      fix: 'Name a new file with --out.',
    },
    found: (length: string, scale: string) =>
      `blade length ${length} mm, scale ${scale} mm a unit of the file`,
    turned: (turn: string, why: string) => `turned by ${turn} degrees. ${why}`,
    dimensions: (deviation: string) => `by dimensions: off by up to ${deviation} mm`,
    noDimensions: 'by dimensions: no set of dimensions is such a blade',
    points_: (n: number, deviation: string) => `by ${n} points: off by up to ${deviation} mm`,
    tang: (length: string, height: string, drop: string) =>
      `tang ${length} mm long, ${height} mm high, top ${drop} mm from the spine`,
    written: (file: string) => `wrote ${file}`,
  },
} as const;
