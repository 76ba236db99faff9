import { problem } from '../../core/issue.ts';
import { chain, fail, ok, type Result } from '../../core/result.ts';
import { text } from '../../text/index.ts';
import { readingsIssues } from '../readings/rules.ts';
import type { FlatReadings, Readings } from '../readings/schema.ts';
import { assess, type Offset } from './assess.ts';
import { carriageFit } from './carriage.ts';
import { correctedDial, type CorrectedDial } from './correct.ts';
import { edgeRestFit } from './edge-rest.ts';
import type { FlatPiece } from './flat.ts';
import { movedSet, type KnownFixture, type KnownSet, type KnownSetting } from './known.ts';
import type { FitProblem } from './observations.ts';
import { spineRestFit } from './spine-rest.ts';

const words = text.setup.calibration;

/** A fixture's offset and the dial readings that allow for it. */
export interface Calibration extends Offset {
  /** The setting at which the piece was ground. */
  readonly setting: string;
  readonly unit: KnownFixture['unit'];
  /** What is stored with the design: this offset on top of the one stored before. */
  readonly totalOffset: number;
  readonly corrected: readonly ({ readonly id: string } & CorrectedDial)[];
}

const pieceOf = ({ piece, edges, places }: FlatReadings): FlatPiece => ({
  thickness: { label: text.setup.quantities.thickness, ...piece.thickness },
  height: { label: text.setup.quantities.height, ...piece.height },
  spineRadius: piece.spineRadius,
  edges,
  places,
});

/** The readings as a fit, if they are of the kind that the fixture grinds. */
const fitOf = (set: KnownSet, readings: Readings): Result<FitProblem> => {
  const reached = (found: FitProblem | undefined): Result<FitProblem> =>
    found ? ok(found) : fail(problem('out-of-reach', 'places', words.outOfReach));
  if (set.kind === 'edge-rest')
    return readings.kind === 'hollow'
      ? reached(edgeRestFit(readings.places, { ...set, faceOffset: readings.faceOffset }))
      : fail(problem('wrong-kind', 'kind', words.wrongKind('hollow', readings.kind)));
  if (readings.kind !== 'flat')
    return fail(problem('wrong-kind', 'kind', words.wrongKind('flat', readings.kind)));
  return reached(
    set.kind === 'spine-rest'
      ? spineRestFit(pieceOf(readings), set)
      : carriageFit(pieceOf(readings), set),
  );
};

/** Where the dial, read in whole divisions, really puts a setting. */
const asDialled = ({ set, dial }: KnownSetting, stored: number): KnownSet =>
  movedSet(set, correctedDial(dial, stored).rounding);

/**
 * From the readings of a test piece to the true offset of a fixture and the dial readings that
 * allow for it. `stored` is the offset that the design allowed for already when the piece was
 * ground; what is found is on top of it. Issues name readings that contradict each other, the
 * piece or the fixture.
 */
export const calibrate = (
  known: KnownFixture,
  readings: Readings,
  stored = 0,
): Result<Calibration> => {
  const wrong = readingsIssues(readings);
  if (wrong.length > 0) return fail(...wrong);
  const setting = known.settings.find(({ id }) => id === readings.setting);
  if (setting === undefined) {
    const ids = known.settings.map(({ id }) => id).join(', ');
    return fail(problem('unknown-setting', 'setting', words.unknownSetting(readings.setting, ids)));
  }
  return chain(fitOf(asDialled(setting, stored), readings), (given) =>
    chain(assess(given, readings.scatter, readings.wished ?? known.settingTolerance), (offset) => {
      const totalOffset = stored + offset.offset;
      return ok({
        ...offset,
        setting: setting.id,
        unit: known.unit,
        totalOffset,
        corrected: known.settings.map(({ id, dial }) => ({
          id,
          ...correctedDial(dial, totalOffset),
        })),
      });
    }),
  );
};
