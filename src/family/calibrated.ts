import { plain } from '../core/units.ts';
import type { Design } from '../document/schema.ts';
import { correctedDial } from '../setup/calibration/correct.ts';
import type { KnownSetting } from '../setup/calibration/known.ts';
import { text } from '../text/index.ts';
import type { Fixture, Reading, Setting } from './family.ts';

/** Key of a reading that tells the way from the zero as a distance. */
const FROM_ZERO = 'fromZero';

/** A reading that allows for an offset, from the zero; the way from the last setting stays. */
const corrected = (reading: Reading, { dial }: KnownSetting, offset: number): Reading => {
  if (reading.key === FROM_ZERO) return { ...reading, value: reading.value - offset };
  if (reading.dial === undefined) return reading;
  const { turnsFromZero, division } = correctedDial(dial, offset);
  return { ...reading, dial: { ...reading.dial, turnsFromZero, division } };
};

/**
 * A solved fixture whose dial readings allow for the offset that its design remembers, each with a
 * note that says so. Without one, or where nothing is dialled, the fixture as it is.
 */
export const calibrated = (fixture: Fixture, { calibration }: Design['fixture']): Fixture => {
  const { known } = fixture;
  if (calibration === undefined || known === undefined) return fixture;
  const { offset, note } = calibration;
  const words = text.setup.calibration.corrected(plain(offset, 3), known.unit, note);
  const settings = fixture.settings.map((setting): Setting => {
    const at = known.settings.find(({ id }) => id === setting.id);
    if (at === undefined) return setting;
    return {
      ...setting,
      readings: setting.readings.map((reading) => corrected(reading, at, offset)),
      notes: [...setting.notes, words],
    };
  });
  return { ...fixture, settings };
};
