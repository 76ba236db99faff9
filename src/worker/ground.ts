import { chain, ok, type Result } from '../core/result.ts';
import { quantise } from '../core/units.ts';
import type { Design } from '../document/schema.ts';
import type { Fixture } from '../family/family.ts';
import type { Vec2 } from '../geometry/vector.ts';
import { valuesFor } from '../make/ground/files.ts';
import { groundBlades, type Ground } from '../make/ground/ground.ts';
import { text } from '../text/index.ts';
import { bladeMap, USUAL, type BladeMap, type VirtualGrind } from '../virtual/index.ts';
import { yawSentence } from '../make/ground/work.ts';
import type { GroundCard, GroundFrame } from './protocol.ts';

/** Grid of the maps on the screen, mm. */
const STEP = 2;

const onGrid = (points: readonly Vec2[]): Vec2[] =>
  points.map(([x, y]): Vec2 => [quantise(x), quantise(y)]);

const plain = ({ outline, bands, lines }: BladeMap): BladeMap => ({
  outline: onGrid(outline),
  bands: bands.map((band) => ({ ...band, loops: band.loops.map(onGrid) })),
  lines: lines.map((line) => ({ ...line, points: onGrid(line.points) })),
});

/** The blade as it comes, and after every pass. */
const framesOf = ({ blade, work }: Ground, grind: VirtualGrind): GroundFrame[] => {
  const what = valuesFor(blade)[0] ?? 'thickness';
  const { edge } = work.job;
  return [
    { label: text.virtual.panel.start, map: plain(bladeMap(grind.shape, grind.start, what, edge)) },
    ...grind.passes.map(({ pass, after }) => ({
      label: text.virtual.panel.after(pass.id),
      map: plain(bladeMap(grind.shape, after, what, edge)),
    })),
  ];
};

const cardOf = (ground: Ground): GroundCard => {
  const { blade, report, cure } = ground;
  const turned = ground.work.yaw?.({ ...USUAL, step: STEP });
  const { certainty, assumptions, standing, uneven, lines } = report;
  return {
    blade: blade.name,
    shows: valuesFor(blade)[0] ?? 'thickness',
    frames: framesOf(ground, report.grind),
    standing,
    uneven,
    lines: lines.map(({ side, worst }) => ({ side, ...worst })),
    certainty,
    assumptions,
    cured: cure?.ok
      ? {
          frames: framesOf(ground, cure.value.cured),
          lines: cure.value.sides.map(({ side, with: off }) => ({ side, value: off })),
          facts: cure.value.facts,
        }
      : null,
    turned: turned?.ok ? yawSentence(turned.value, report) : null,
    cureIssues: cure?.issues ?? [],
  };
};

/** Every blade ground virtually, with the strip and without; null where a family holds none. */
export const groundCards = (
  design: Design,
  fixture: Fixture,
  progress: (share: number) => void = () => undefined,
): Result<readonly GroundCard[] | null> =>
  fixture.virtual === undefined
    ? ok(null)
    : chain(groundBlades(design, fixture, { step: STEP, cure: true, progress }), (ground) =>
        ok(ground.map(cardOf)),
      );
