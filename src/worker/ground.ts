import { chain, ok, type Result } from '../core/result.ts';
import { quantise } from '../core/units.ts';
import type { Design } from '../document/schema.ts';
import type { Fixture } from '../family/family.ts';
import type { Vec2 } from '../geometry/vector.ts';
import { groundBlades, type Ground } from '../make/ground/ground.ts';
import { text } from '../text/index.ts';
import {
  bladeMap,
  greatest,
  USUAL,
  wantedHollows,
  type BladeMap,
  type Cure,
  type EdgePlace,
  type Field,
  type VirtualGrind,
} from '../virtual/index.ts';
import { STRIP_FORM, yawSentence } from '../make/ground/work.ts';
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
const framesOf = ({ work }: Ground, grind: VirtualGrind): GroundFrame[] => {
  const { edge } = work.job;
  const hollows = wantedHollows(grind, work.job);
  const mapOf = (field: Field): BladeMap =>
    plain(bladeMap(grind.shape, field, 'standing', edge, hollows));
  return [
    { label: text.virtual.panel.start, map: mapOf(grind.start) },
    ...grind.passes.map(({ pass, after }) => ({
      label: text.virtual.panel.after(pass.id),
      map: mapOf(after),
    })),
  ];
};

/** Most over the edge wanted, and thickest less thinnest edge, where places count. */
const edgeOf = (places: readonly EdgePlace[]): Pick<GroundCard, 'standing' | 'uneven'> => {
  const counted = places.filter(({ steers }) => steers);
  const thick = counted.map(({ thickness }) => thickness);
  return {
    standing: greatest(counted, ({ standing }) => standing),
    uneven: thick.length > 0 ? Math.max(...thick) - Math.min(...thick) : 0,
  };
};

/** What makes the rest for a strip. */
const ROUNDED = {
  path: `fixture.parameters.${STRIP_FORM.parameter}`,
  value: STRIP_FORM.value,
};

/** The blade with its strip. */
const curedOf = (ground: Ground, cure: Cure): NonNullable<GroundCard['cured']> => {
  const { standing, uneven } = edgeOf(cure.edge);
  return {
    frames: framesOf(ground, cure.cured),
    standing: standing.value,
    uneven,
    lines: cure.sides.map(({ side, with: off }) => ({ side, value: off })),
    facts: cure.facts,
    choose: ground.work.straight ? null : ROUNDED,
  };
};

const cardOf = (ground: Ground): GroundCard => {
  const { blade, report, cure } = ground;
  const turned = ground.work.yaw?.({ ...USUAL, step: STEP });
  const { grind, certainty, assumptions, standing, uneven, lines } = ground.straight ?? report;
  return {
    blade: blade.name,
    shows: 'standing',
    frames: framesOf(ground, grind),
    standing,
    uneven,
    lines: lines.map(({ side, worst }) => ({ side, ...worst })),
    certainty,
    assumptions,
    cured: cure?.ok ? curedOf(ground, cure.value) : null,
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
