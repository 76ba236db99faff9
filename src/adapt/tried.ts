import { WISHES } from '../make/suit/wishes.ts';

const PARAMETER = /^fixture\.parameters\.(.+)$/;
const STEEPER = /^sequence\.\d+\.steeper$/;

/** The parameter of the fixture at a path. */
export const parameterOf = (path: string): string | undefined => PARAMETER.exec(path)?.[1];

/**
 * Whether other values may be tried at a path to mend a check that leads there: at parameters of the
 * fixture but what a maker wishes kept, and at what a pass is steeper by.
 */
export const isTried = (path: string): boolean => {
  const key = parameterOf(path);
  return key === undefined ? STEEPER.test(path) : !WISHES.has(key);
};
