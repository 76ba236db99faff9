/** Mean grain sizes of P grades, micrometres: FEPA 43-1 / ISO 6344 as tabulated by two open lists. */
export const GRAINS: readonly (readonly [grade: number, size: number])[] = [
  [12, 1815],
  [16, 1324],
  [20, 1000],
  [24, 764],
  [30, 642],
  [36, 538],
  [40, 425],
  [50, 336],
  [60, 269],
  [80, 201],
  [100, 162],
  [120, 125],
  [150, 100],
  [180, 82],
  [220, 68],
  [240, 58.5],
  [280, 52.2],
  [320, 46.2],
  [360, 40.5],
  [400, 35],
  [500, 30.2],
  [600, 25.8],
  [800, 21.8],
  [1000, 18.3],
  [1200, 15.3],
  [1500, 12.6],
  [2000, 10.3],
  [2500, 8.4],
];

/** Depth of a belt's scratches over its mean grain size: common practice, no source. */
const DEPTH = 0.1;

/**
 * Mean grain size of a P grade, micrometres: the table, between its rows interpolated on a double
 * logarithmic scale, beyond its ends in inverse proportion to the grade.
 */
export const grainSize = (grade: number): number => {
  const above = GRAINS.findIndex(([row]) => row >= grade);
  const [last, lastSize] = GRAINS.at(-1) ?? [grade, 0];
  if (above < 0) return (lastSize * last) / grade;
  const [to, toSize] = GRAINS[above] ?? [grade, 0];
  const [from, fromSize] = GRAINS[above - 1] ?? [to, toSize];
  if (from === to) return (toSize * to) / grade;
  const share = Math.log(grade / from) / Math.log(to / from);
  return fromSize * (toSize / fromSize) ** share;
};

/** Depth of a belt's scratches, mm: a tenth of its mean grain (estimate). */
export const scratchDepth = (grade: number): number => (DEPTH * grainSize(grade)) / 1000;
