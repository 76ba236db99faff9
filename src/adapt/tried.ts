import { WISHES } from '../make/suit/wishes.ts';

const PARAMETER = /^fixture\.parameters\.(.+)$/;
/** What a maker wishes kept and may be given more of: a check that leads here asks for that. */
const MORE: ReadonlySet<string> = new Set([
  'padMargin',
  'travelReserve',
  'guardRise',
  'handDistance',
]);
const STEEPER = /^sequence\.\d+\.steeper$/;

/** Where the deviation of a line is allowed; what the line follows stands beside it. */
const LINE = /^(blades\.\d+\.line)\.allowed$/;

/** The line whose deviation is allowed at a path. */
export const lineOf = (path: string): string | undefined => LINE.exec(path)?.[1];

/** The parameter of the fixture at a path. */
export const parameterOf = (path: string): string | undefined => PARAMETER.exec(path)?.[1];

/**
 * Whether other values may be tried at a path to mend a check that leads there: at parameters of the
 * fixture but what a maker wishes kept (greater values alone are tried, so more of it may be), at what a pass is steeper by, and at what a line follows.
 */
export const isTried = (path: string): boolean => {
  const key = parameterOf(path);
  return key === undefined
    ? STEEPER.test(path) || lineOf(path) !== undefined
    : !WISHES.has(key) || MORE.has(key);
};
