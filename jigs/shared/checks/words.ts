import { text } from '../../../src/family/index.ts';

/** Words of checks that several families have. */
export const words = text.family.shared.checks;

/** Path of a fixture parameter in the design, for what mends a check. */
export const parameterPath = (key: string): string => `fixture.parameters.${key}`;
