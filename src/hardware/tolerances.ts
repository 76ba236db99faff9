/** Row of a table by upper bounds: the first bound that reaches the value. */
const reaching = (bounds: readonly number[], value: number): number =>
  bounds.findIndex((bound) => value <= bound);

/** General tolerance classes of ISO 2768-1: fine, medium, coarse, very coarse. */
export type GeneralClass = 'f' | 'm' | 'c' | 'v';

const LINEAR_BOUNDS = [3, 6, 30, 120, 400, 1000, 2000];

// ISO 2768-1, table 1: plus and minus, mm; NaN where the standard has no value.
const LINEAR: Readonly<Record<GeneralClass, readonly number[]>> = {
  f: [0.05, 0.05, 0.1, 0.15, 0.2, 0.3, 0.5],
  m: [0.1, 0.1, 0.2, 0.3, 0.5, 0.8, 1.2],
  c: [0.2, 0.3, 0.5, 0.8, 1.2, 2, 3],
  v: [NaN, 0.5, 1, 1.5, 2.5, 4, 6],
};

const known = (value: number | undefined): number | undefined =>
  value === undefined || Number.isNaN(value) ? undefined : value;

/**
 * General tolerance of a length, plus and minus mm: ISO 2768-1 table 1. Undefined where the
 * standard wants it stated beside the size: below 0.5 mm, above 2000 mm, class v up to 3 mm.
 */
export const linearTolerance = (size: number, grade: GeneralClass): number | undefined =>
  size < 0.5 ? undefined : known(LINEAR[grade][reaching(LINEAR_BOUNDS, size)]);

const EDGE_BOUNDS = [3, 6, Infinity];

/** General tolerance of an external radius or chamfer height, plus and minus mm: table 2. */
export const edgeTolerance = (size: number, grade: GeneralClass): number | undefined => {
  const values = grade === 'f' || grade === 'm' ? [0.2, 0.5, 1] : [0.4, 1, 2];
  return size < 0.5 ? undefined : values[reaching(EDGE_BOUNDS, size)];
};

const ANGLE_BOUNDS = [10, 50, 120, 400, Infinity];

// ISO 2768-1, table 3: plus and minus, minutes of arc.
const ANGLE: Readonly<Record<GeneralClass, readonly number[]>> = {
  f: [60, 30, 20, 10, 5],
  m: [60, 30, 20, 10, 5],
  c: [90, 60, 30, 15, 10],
  v: [180, 120, 60, 30, 20],
};

/** General tolerance of an angle by the length of its shorter side, plus and minus degrees. */
export const angularTolerance = (shorterSide: number, grade: GeneralClass): number | undefined => {
  const minutes = ANGLE[grade][reaching(ANGLE_BOUNDS, shorterSide)];
  return minutes === undefined || shorterSide <= 0 ? undefined : minutes / 60;
};

/** Standard tolerance grades that the table holds. */
export type ItGrade = 6 | 7 | 8 | 9 | 10 | 11 | 12;

const IT_BOUNDS = [3, 6, 10, 18, 30, 50, 80, 120];

// ISO 286-1, table 1, micrometres.
const IT: Readonly<Record<ItGrade, readonly number[]>> = {
  6: [6, 8, 9, 11, 13, 16, 19, 22],
  7: [10, 12, 15, 18, 21, 25, 30, 35],
  8: [14, 18, 22, 27, 33, 39, 46, 54],
  9: [25, 30, 36, 43, 52, 62, 74, 87],
  10: [40, 48, 58, 70, 84, 100, 120, 140],
  11: [60, 75, 90, 110, 130, 160, 190, 220],
  12: [100, 120, 150, 180, 210, 250, 300, 350],
};

/** Width of a standard tolerance, mm: ISO 286-1; undefined outside 0 to 120 mm. */
export const standardTolerance = (size: number, grade: ItGrade): number | undefined => {
  const micrometres = IT[grade][reaching(IT_BOUNDS, size)];
  return micrometres === undefined || size <= 0 ? undefined : micrometres / 1000;
};

/** Limits of an H hole over its nominal size, mm: from 0 to the grade's width. */
export const holeH = (
  size: number,
  grade: ItGrade,
): { readonly lower: number; readonly upper: number } | undefined => {
  const width = standardTolerance(size, grade);
  return width === undefined ? undefined : { lower: 0, upper: width };
};

const CUT_SIZES = [3, 10, 35, 125, 315, 1000];
const CUT_THICKNESSES = [1, 3.15, 6.3, 10, 15, 20];

// ISO 9013, limit deviations of class 1 (laser), plus and minus mm; NaN where it has none.
const CUT_LASER = [
  [0.075, 0.1, 0.1, 0.2, 0.2, 0.3],
  [0.1, 0.15, 0.2, 0.25, 0.25, 0.35],
  [0.2, 0.2, 0.25, 0.25, 0.3, 0.4],
  [NaN, 0.25, 0.3, 0.3, 0.35, 0.45],
  [NaN, 0.3, 0.35, 0.4, 0.45, 0.55],
  [NaN, 0.4, 0.4, 0.45, 0.55, 0.75],
];

// The same, class 2 (plasma and oxy-fuel), sheet over 3.15 up to 6.3 mm only.
const CUT_PLASMA = [0.7, 0.8, 0.9, 0.9, 1.1, 1.2];

/**
 * Limit deviation of a thermally cut size, plus and minus mm: ISO 9013. Sizes count from their
 * lower bound upward (3 mm is in the second column), thicknesses up to their upper one.
 * Undefined where the table has no value; for plasma only sheet over 3.15 up to 6.3 mm is known.
 */
export const cutTolerance = (
  size: number,
  thickness: number,
  process: 'laser' | 'plasma',
): number | undefined => {
  const column = CUT_SIZES.findIndex((bound) => size < bound);
  if (!(size >= 0) || !(thickness > 0)) return undefined;
  const row = reaching(CUT_THICKNESSES, thickness);
  return known(
    process === 'laser' ? CUT_LASER[row]?.[column] : row === 2 ? CUT_PLASMA[column] : NaN,
  );
};
