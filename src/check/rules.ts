import type { Part, PlatePart, PrintPart } from '../model/part.ts';
import { PRINT, PROCESS } from '../model/process.ts';
import { text } from '../text/index.ts';
import type { CheckResult } from './result.ts';
import { thinnest, type Thin } from './rules-walls.ts';
import { createWorkshop, type Workshop } from './workshop.ts';

const words = text.check.rules;

const check = (
  id: string,
  label: string,
  found: number | null,
  atLeast: number,
  where: string,
  fix: string,
): CheckResult => ({
  id,
  label,
  kind: 'fabrication',
  passed: found !== null && found >= atLeast - 1e-9,
  unit: 'mm',
  found,
  atLeast,
  basis: words.basis,
  message: found === null ? words.notMeasured(label) : words.measured(label, found, atLeast, where),
  fix,
});

const place = (thin: Thin | undefined): string => (thin ? words.at(thin.at[0], thin.at[1]) : '');

/** Thinnest place over all layers, kept where they are what they were. */
const thinnestOf = ({ id, layers }: PlatePart | PrintPart, workshop: Workshop): Thin | undefined =>
  workshop.keep(`thinnest of ${id}`, workshop.contentOf(layers), () =>
    layers
      .flatMap(({ profile }) => thinnest(profile) ?? [])
      .reduce<Thin | undefined>(
        (best, thin) => (best && best.value <= thin.value ? best : thin),
        undefined,
      ),
  );

const plateChecks = (part: PlatePart, workshop: Workshop): CheckResult[] => {
  const thickness = Math.max(...part.layers.map(({ from, to }) => to - from));
  const limits = PROCESS[part.process];
  const smallest = [...part.holes].sort((a, b) => a.size - b.size)[0];
  const thin = thinnestOf(part, workshop);
  return [
    check(
      `fabrication/${part.id}/web`,
      words.web(part.name),
      thin?.value ?? null,
      limits.web.least(thickness),
      place(thin),
      words.widen,
    ),
    ...(smallest
      ? [
          check(
            `fabrication/${part.id}/hole`,
            words.hole(part.name),
            smallest.size,
            limits.hole.least(thickness),
            words.named(smallest.id),
            words.drill,
          ),
        ]
      : []),
  ];
};

const printChecks = (part: PrintPart, nozzle: number, workshop: Workshop): CheckResult[] => {
  const thin = thinnestOf(part, workshop);
  const smallest = [...part.holes].sort((a, b) => a.size - b.size)[0];
  return [
    check(
      `fabrication/${part.id}/wall`,
      words.wall(part.name),
      thin?.value ?? null,
      // Two lines can be printed; what is pushed and clamped beside a belt gets the three that serve.
      PRINT.wall(nozzle).advised,
      place(thin),
      words.widen,
    ),
    ...(smallest
      ? [
          check(
            `fabrication/${part.id}/hole`,
            words.hole(part.name),
            smallest.size,
            PRINT.hole,
            words.named(smallest.id),
            words.drill,
          ),
        ]
      : []),
  ];
};

/**
 * Least webs, walls and holes of everything that is cut or printed, against the limits of the
 * process. Distances are exact on the profiles, arcs included. Stock and hardware have none.
 */
export const fabricationChecks = (
  parts: readonly Part[],
  nozzle: number,
  workshop: Workshop = createWorkshop(),
): CheckResult[] =>
  parts.flatMap((part) => {
    if (part.kind === 'plate') return plateChecks(part, workshop);
    if (part.kind === 'print') return printChecks(part, nozzle, workshop);
    return [];
  });
