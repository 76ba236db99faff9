import { openAny } from '../../src/adapt/open-any.ts';
import { openDesign, openGrinder } from '../../src/document/open.ts';
import { saveDesign } from '../../src/document/save.ts';
import { gaugeRegistry } from '../robust/gauge.ts';

/** Longest that any file may take, ms. */
export const MOST_MS = 2000;

export interface Opened {
  readonly end: 'opened' | 'refused' | 'defect';
  readonly ms: number;
  readonly defects: readonly string[];
}

const bare = Object.getOwnPropertyNames(Object.prototype).length;

const attempt = (format: string, bytes: Uint8Array): Omit<Opened, 'ms'> => {
  const opened = format === 'grinder' ? openGrinder(bytes) : openAny(bytes, gaugeRegistry);
  const defects = opened.issues
    .filter(({ message, fix, severity }) => severity === 'error' && (message === '' || fix === ''))
    .map(({ code }) => `issue ${code} says nothing`);
  if (!opened.ok)
    return {
      end: 'refused',
      defects: opened.issues.length === 0 ? ['refused without an issue'] : defects,
    };
  if (format !== 'grinder' && 'blades' in opened.value) {
    const text = saveDesign(opened.value);
    const again = openDesign(text, gaugeRegistry);
    if (!again.ok || saveDesign(again.value) !== text)
      defects.push('does not open again as it was');
  }
  return { end: 'opened', defects };
};

/** Opens a file that may be anything: how it ends, how long it takes, and what is wrong with that. */
export const tryFile = (format: string, bytes: Uint8Array): Opened => {
  const before = performance.now();
  try {
    const { end, defects } = attempt(format, bytes);
    const ms = performance.now() - before;
    const late = ms > MOST_MS ? [`took ${ms.toFixed(0)} ms`] : [];
    const leaked = Object.getOwnPropertyNames(Object.prototype).length === bare ? [] : ['polluted'];
    const all = [...defects, ...late, ...leaked];
    return { end: all.length > 0 ? 'defect' : end, ms, defects: all };
  } catch (error) {
    const why = error instanceof Error ? (error.stack ?? error.message) : String(error);
    return { end: 'defect', ms: performance.now() - before, defects: [`thrown: ${why}`] };
  }
};
