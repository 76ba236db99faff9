import type { Design } from '../../document/schema.ts';
import { keptText } from './shelf.svelte.ts';
import type { Engine } from '../../worker/protocol.ts';
import type { Bench } from './bench.svelte.ts';
import type { Preferences } from './view.svelte.ts';

/** Steps back that outlive a reload: a tab's memory is small. */
const STEPS = 30;
const KEY = 'past';

interface Past {
  /** Text of the design that the steps lead back from. */
  readonly from: string;
  readonly steps: readonly string[];
}

const isPast = (value: unknown): value is Past =>
  typeof value === 'object' &&
  value !== null &&
  'from' in value &&
  typeof value.from === 'string' &&
  'steps' in value &&
  Array.isArray(value.steps) &&
  value.steps.every((step) => typeof step === 'string');

/** Notes the last steps back from a design in the tab's own memory. */
export const notePast = (session: Preferences, design: Design, past: readonly Design[]): void => {
  const steps = past.slice(-STEPS).map(keptText);
  session.set(KEY, steps.length === 0 ? null : JSON.stringify({ from: keptText(design), steps }));
};

/** The texts of the steps back from a design; none where they lead back from another. */
const notedPast = (session: Preferences, design: Design): readonly string[] => {
  try {
    const past: unknown = JSON.parse(session.get(KEY) ?? 'null');
    return isPast(past) && past.from === keptText(design) ? past.steps : [];
  } catch {
    return [];
  }
};

/** Takes back the steps that this tab made before it was left or loaded anew. */
export const recallPast = async (
  session: Preferences,
  bench: Bench,
  { restore }: Pick<Engine, 'restore'>,
): Promise<void> => {
  const { design } = bench;
  const steps = notedPast(session, design);
  const opened = await Promise.all(steps.map((step) => restore(new TextEncoder().encode(step))));
  // What no longer opens ends the way back.
  const known = opened.slice(opened.findLastIndex(({ ok }) => !ok) + 1);
  bench.recall(
    design,
    known.flatMap((one) => (one.ok ? [one.value] : [])),
  );
};
