import { readingsParameters as p } from '../../setup/readings/parameters.ts';
import { READINGS_FORMAT, READINGS_VERSION } from '../../setup/readings/format.ts';
import type { FlatReadings, HollowReadings, Readings } from '../../setup/readings/schema.ts';

const quantity = (value: number, uncertainty: number) => ({ value, uncertainty });

/** Usual standard uncertainties, mm: of a caliper over the edge, and of a line read with it. */
const CALIPER = 0.02;
const LINE = 0.1;

const flatPlace = (label: string, t: number): FlatReadings['places'][number] => ({
  label,
  edge: quantity(Number((0.75 * t).toFixed(2)), CALIPER),
  bevelHeight: quantity(p.bevelHeight.initial, LINE),
});

const hollowPlace = (label: string): HollowReadings['places'][number] => ({
  label,
  depth: quantity(p.depth.initial, CALIPER),
  lower: quantity(p.limit.initial - 5, LINE),
  upper: quantity(p.limit.initial + 5, LINE),
});

/** A form to fill in: three places on a piece of the blade's thickness. */
export const blankReadings = (
  kind: Readings['kind'],
  setting: string,
  t: number,
  height: number,
): Readings => {
  const common = {
    format: READINGS_FORMAT,
    schema: READINGS_VERSION,
    setting,
    note: '',
    scatter: 'stated',
  } as const;
  const labels = ['1', '2', '3'];
  return kind === 'flat'
    ? {
        ...common,
        kind,
        edges: 'across',
        piece: {
          thickness: quantity(t, CALIPER / 2),
          height: quantity(height, 0.05),
          spineRadius: 0,
        },
        places: labels.map((label) => flatPlace(label, t)),
      }
    : { ...common, kind, faceOffset: 0, places: labels.map(hollowPlace) };
};

/** With another place to fill in. */
export const withPlace = (readings: Readings): Readings => {
  const label = String(readings.places.length + 1);
  return readings.kind === 'flat'
    ? {
        ...readings,
        places: [...readings.places, flatPlace(label, readings.piece.thickness.value)],
      }
    : { ...readings, places: [...readings.places, hollowPlace(label)] };
};

export const withoutPlace = (readings: Readings, at: number): Readings =>
  readings.kind === 'flat'
    ? { ...readings, places: readings.places.filter((_, i) => i !== at) }
    : { ...readings, places: readings.places.filter((_, i) => i !== at) };
