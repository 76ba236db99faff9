import {
  fabricationChecks,
  placeAt,
  rangeCheck,
  text,
  wantedBevel,
  type CheckResult,
  type Design,
  type PlatePart,
} from '../../src/family/index.ts';
import { tiltOn } from './gauge.ts';
import type { Lean } from './lean.ts';
import { lengthOf, linesOf } from './numbers.ts';

const words = text.family.bevelGauge.checks;
const sides = text.family.bevelGauge.side;

/** How truly a cut edge can show a lean, degrees: 0.05 mm over the least height. */
const CLOSE = 0.1;

const tiltCheck = (lean: Lean, part: PlatePart | undefined): CheckResult =>
  rangeCheck({
    id: `tilt/${lean.blade.name}/${lean.side}`,
    label: words.tilt(lean.blade.name, sides[lean.side]),
    unit: 'deg',
    found: part === undefined ? null : (tiltOn(part, lean.side) ?? null),
    atLeast: lean.tilt - CLOSE,
    atMost: lean.tilt + CLOSE,
    basis: words.basis,
    fix: words.tiltFix,
  });

const lineCheck = (lean: Lean, i: number): CheckResult => {
  const { blade, side } = lean;
  const [line] = linesOf([lean]);
  // The last of the tip is led by hand on every fixture: places half as high as the heel count.
  const least = placeAt(blade, lengthOf(blade) * 0.05).height / 2;
  const places = line?.places.filter(({ height }) => height >= least) ?? [];
  const worst = Math.max(...places.map(({ deviation }) => Math.abs(deviation)));
  return rangeCheck({
    id: `line/${blade.name}/${side}`,
    label: words.line(blade.name, sides[side]),
    found: wantedBevel(blade, side) === undefined ? null : worst,
    atMost: blade.line.allowed,
    basis: words.lineBasis,
    fix: words.lineFix,
    parameter: `blades.${String(i)}.line.allowed`,
  });
};

/** Every check of the gauges: what they show, what it grinds, and whether they can be cut. */
export const checksOf = (
  design: Design,
  leans: readonly Lean[],
  parts: readonly PlatePart[],
): CheckResult[] => [
  ...leans.map((lean, i) => tiltCheck(lean, parts[Math.floor(i / 2)])),
  ...leans.map((lean, i) => lineCheck(lean, Math.floor(i / 2))),
  ...fabricationChecks(parts, design.making.prints.nozzle),
];
