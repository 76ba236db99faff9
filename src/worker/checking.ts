import { answerEach } from '../check/answers.ts';
import type { CheckResult, Gaps } from '../check/result.ts';
import type { Workshop } from '../check/workshop.ts';
import type { Result } from '../core/result.ts';
import type { Design, Making } from '../document/schema.ts';
import type { Fixture } from '../family/index.ts';
import { checkFixture, type Checked } from '../make/engine.ts';

/** What is known before every check has run: what has failed stays failed, and nothing has passed. */
export interface Preview {
  /** Share of the set-ups that were looked at, 0 to 1. */
  readonly share: number;
  readonly failed: readonly CheckResult[];
}

/** Works on for this long before it looks whether a newer design has come, ms. */
const BREATH = 12;
/** Waits so long with far gaps for a hand that moves on, ms: a newer design need not wait for them. */
const REST = 60;

/** Lets what was sent meanwhile arrive. */
const arrivals = (): Promise<void> =>
  new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });

const resting = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, REST));

interface Piece {
  /** Set-ups looked at, and how many there are. */
  readonly done: number;
  readonly of: number;
  readonly results: readonly CheckResult[];
}

/** Everything the checks of solids rest on, a piece at a time, and what each piece found. */
function* pieces(
  fixture: Fixture,
  blades: readonly string[],
  workshop: Workshop,
  gaps: Gaps,
): Generator<Piece, void, undefined> {
  yield { done: 0, of: 1, results: [] };
  if (!fixture.parts().ok) return;
  for (const { id } of fixture.settings)
    for (const blade of blades) {
      fixture.poses(id, blade);
      yield { done: 0, of: 1, results: [] };
    }
  const solids = fixture.solids?.();
  if (!solids?.ok) return;
  const { setUps } = solids.value;
  let done = 0;
  for (const results of answerEach(setUps, workshop, gaps))
    yield { done: (done += 1), of: setUps.length, results };
}

/** What comes while checks are worked through. */
export interface Meanwhile {
  /** Whether a newer question has come. */
  readonly overtaken: () => boolean;
  readonly breath?: number;
}

interface Around extends Meanwhile {
  readonly preview: (found: Preview) => void;
  /** Takes all checks as soon as it is proved what holds, while far gaps are still measured. */
  readonly proved: (checked: Result<Checked>) => void;
}

/** A fixture's own making and blades, as they are asked for. */
interface Order {
  readonly making: Making;
  readonly blades: readonly string[];
}

/** What a design orders of the checks of its fixture. */
export const orderOf = ({ making, blades }: Design): Order => ({
  making,
  blades: blades.map(({ name }) => name),
});

/** Works through pieces with breaths between them; whether it came to their end. */
const workThrough = async (
  all: Iterable<Piece>,
  { overtaken, breath = BREATH }: Meanwhile,
  pause: (piece: Piece) => void,
): Promise<boolean> => {
  let since = performance.now();
  for (const piece of all) {
    if (performance.now() - since < breath) continue;
    pause(piece);
    await arrivals();
    if (overtaken()) return false;
    since = performance.now();
  }
  return true;
};

/**
 * Parts and checks of a fixture, twice: first with the gaps alone that are near to what is asked,
 * which proves all that has passed or failed, then with all gaps. What is found on the way is told
 * as a preview, and between two pieces a newer question may come: `overtaken` then ends this one,
 * without an answer. Every piece is kept in the workshop, so that the whole, which comes last, is
 * put together from them and is what it is without them.
 */
export const checkByPieces = async (
  fixture: Fixture,
  { making, blades }: Order,
  workshop: Workshop,
  { preview, proved, ...meanwhile }: Around,
): Promise<Result<Checked> | null> => {
  const failed = new Map<string, CheckResult>();
  function* noted(gaps: Gaps): Generator<Piece, void, undefined> {
    for (const piece of pieces(fixture, blades, workshop, gaps)) {
      for (const check of piece.results) if (!check.passed) failed.set(check.id, check);
      yield piece;
    }
  }
  const workOn = (gaps: Gaps): Promise<boolean> =>
    workThrough(noted(gaps), meanwhile, ({ done, of }) => {
      if (done > 0) preview({ share: done / of, failed: [...failed.values()] });
    });
  if (!(await workOn('near'))) return null;
  proved(checkFixture(fixture, making, 'near'));
  await resting();
  if (meanwhile.overtaken() || !(await workOn('all'))) return null;
  return checkFixture(fixture, making);
};

/** The checks that a drag waits for; null where a newer question came. */
export const proveByPieces = async (
  fixture: Fixture,
  { making, blades }: Order,
  workshop: Workshop,
  meanwhile: Meanwhile,
): Promise<Result<Checked> | null> => {
  const all = pieces(fixture, blades, workshop, 'near');
  const ended = await workThrough(all, meanwhile, () => undefined);
  return ended ? checkFixture(fixture, making, 'near') : null;
};
