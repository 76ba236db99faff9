import type { Issue } from '../../core/issue.ts';

export const STEPS = [
  'blade',
  'grinder',
  'fixture',
  'checks',
  'parts',
  'setup',
  'designs',
] as const;
export type StepId = (typeof STEPS)[number];

export const isStep = (text: string): text is StepId => STEPS.some((step) => step === text);

/** Whether a step holds, as far as is known now. */
export type Sign = 'holds' | 'fails' | 'working' | 'unknown';

/** The step on which a value is set, by its path. */
export const stepOf = (path: string): StepId => {
  const [first = ''] = path.split('.');
  if (first === 'blades') return 'blade';
  if (first === 'grinder') return 'grinder';
  return first === 'name' || first === 'notes' || first === 'revision' ? 'designs' : 'fixture';
};

/** What is known of the design when the signs are drawn. */
export interface Known {
  /** Errors of the newest answer; null while none is known for this design. */
  readonly issues: readonly Issue[] | null;
  /** Whether that answer has a solution. */
  readonly solved: boolean;
  readonly solving: boolean;
  /** Number of failed checks; null while not known. */
  readonly failing: number | null;
  readonly checked: number;
  readonly building: boolean;
  readonly kept: boolean;
}

/** The sign of every step. Nothing holds before it is known to. */
export const signs = (known: Known): Readonly<Record<StepId, Sign>> => {
  const errors = known.issues?.filter((issue) => issue.severity === 'error') ?? null;
  const waiting = (busy: boolean): Sign => (busy ? 'working' : 'unknown');
  const entry = (step: StepId): Sign => {
    if (errors === null) return waiting(known.solving);
    return errors.some((issue) => stepOf(issue.path) === step) ? 'fails' : 'holds';
  };
  const solved: Sign = errors === null ? waiting(known.solving) : known.solved ? 'holds' : 'fails';
  const proved = (): Sign => {
    if (solved !== 'holds') return solved === 'fails' ? 'unknown' : solved;
    if (known.failing === null) return waiting(known.building);
    return known.failing > 0 || known.checked === 0 ? 'fails' : 'holds';
  };
  return {
    blade: entry('blade'),
    grinder: entry('grinder'),
    fixture: solved === 'fails' && entry('fixture') === 'holds' ? 'unknown' : entry('fixture'),
    checks: proved(),
    parts: proved(),
    setup: proved(),
    designs: known.kept ? 'holds' : 'fails',
  };
};
