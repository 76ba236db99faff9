const n = (value: number): string => value.toFixed(Math.abs(value) < 10 ? 3 : 1);
const units = { mm: 'mm', deg: 'degrees', N: 'N', ratio: '', 'm/s': 'm/s' } as const;

const limits = (unit: string, atLeast?: number, atMost?: number): string =>
  [
    ...(atLeast === undefined ? [] : [`at least ${n(atLeast)} ${unit}`]),
    ...(atMost === undefined ? [] : [`at most ${n(atMost)} ${unit}`]),
  ]
    .map((limit) => limit.trim())
    .join(' and ');

/** Text of the checks of an assembly. */
export const assembly = {
  partMissing: (placement: string, part: string) => ({
    message: `${placement} stands for part ${part}, which is not among the parts; every check that needs it counts as failed.`,
    fix: 'Add the part, or take its placement out.',
  }),
  pairPassed: (
    label: string,
    found: number | null,
    told: 'beyond' | 'least' | 'exact',
    kind: string,
  ): string => {
    if (found === null) return `${label}: not looked at.`;
    if (kind === 'touch') return `${label}: closed, and in its place.`;
    if (kind === 'seat' && found <= 0) return `${label}: touching, no deeper than allowed.`;
    const how = { beyond: 'more than ', least: 'at least ', exact: '' }[told];
    return `${label}: ${how}${n(found)} mm.`;
  },
  shared: (volume: number) => `Both fill ${n(volume)} mm³ there.`,
  notThere: (label: string, missing: readonly string[]) =>
    `${label} could not be computed, so it counts as failed: ${missing.join(' and ')} ${missing.length === 1 ? 'is' : 'are'} not there.`,
  range: (
    label: string,
    found: number | null,
    unit: keyof typeof units,
    atLeast?: number,
    atMost?: number,
  ): string =>
    found === null
      ? `${label} could not be computed, so it counts as failed.`
      : `${label} is ${n(found)} ${units[unit]}`.trim() +
        `; ${limits(units[unit], atLeast, atMost)}.`,
} as const;
