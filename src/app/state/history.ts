/** Past and future of one immutable value. One step a gesture, whatever the gesture did. */
export interface History<T> {
  readonly past: readonly T[];
  readonly present: T;
  readonly future: readonly T[];
  /** Name of the gesture that made the present; further edits of it replace the present. */
  readonly gesture: string | null;
}

/** More steps than anyone walks back; older ones are dropped. */
export const DEPTH = 500;

export const begin = <T>(present: T): History<T> => ({
  past: [],
  present,
  future: [],
  gesture: null,
});

/**
 * Takes the next value. Edits of one named gesture (a drag) count as one step; without a name
 * every edit is its own. An edit that changes nothing is no step.
 */
export const edit = <T>(h: History<T>, next: T, gesture: string | null = null): History<T> => {
  if (Object.is(next, h.present)) return h;
  if (gesture !== null && gesture === h.gesture)
    return { past: h.past, present: next, future: [], gesture };
  return { past: [...h.past, h.present].slice(-DEPTH), present: next, future: [], gesture };
};

/** Ends a gesture: the next edit is a new step even under the same name. */
export const settle = <T>(h: History<T>): History<T> =>
  h.gesture === null ? h : { ...h, gesture: null };

export const undo = <T>(h: History<T>): History<T> => {
  const present = h.past.at(-1);
  return present === undefined
    ? h
    : { past: h.past.slice(0, -1), present, future: [h.present, ...h.future], gesture: null };
};

export const redo = <T>(h: History<T>): History<T> => {
  const [present, ...future] = h.future;
  return present === undefined
    ? h
    : { past: [...h.past, h.present], present, future, gesture: null };
};
