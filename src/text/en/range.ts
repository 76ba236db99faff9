/** Text of the free range: how far numbers may move before a check fails. */
export const range = {
  rangeOption: 'also tell by how much numbers can move before the first check fails',
  onlyOption:
    'with --range: only these numbers, paths into the design separated by commas (fixture.parameters.noseGap)',
  notNumber: (path: string) => ({
    message: `There is no number at "${path}" in this design.`,
    fix: 'Give the path of a number: fixture.parameters.NAME, or one such as blades.0.spineRadius.',
  }),
  notSound: (fails: readonly string[]) => ({
    message: `The design is not sound as it stands (${fails.join(', ')}), so no range about it is free.`,
    fix: 'Mend what fails first: see the checks.',
  }),
  dialsTitle:
    'Shift of what a reading moves, to either side, before a clearance can fail (certified; the blade left out unless it is clamped to them)',
  dial: (label: string, free: string | null, check: string) =>
    free === null ? `${label}: none, ${check} fails` : `${label}: ${free} mm, then ${check}`,
  numbersTitle:
    'Free range of numbers (an estimate: every value tried is solved and checked whole, between them nothing is proved)',
  number: (label: string, value: string, unit: string, down: string, up: string) =>
    `${label} ${value} ${unit}: down to ${down}; up to ${up}`,
  end: (good: string, why: string) => `${good} (${why})`,
  stop: {
    limit: 'end of its range',
    far: 'nothing failed so far out',
    check: (bad: string, fails: readonly string[]) => `at ${bad}: ${fails.join(', ')}`,
    refused: (bad: string, codes: readonly string[]) =>
      `at ${bad} it is refused: ${codes.map((code) => code.replaceAll('-', ' ')).join(', ')}`,
  },
  basis: (tolerance: string, tried: number) =>
    `estimate: ${String(tried)} values tried, ends found to ${tolerance}`,
} as const;
