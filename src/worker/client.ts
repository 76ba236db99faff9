import { wrap } from 'comlink';
import type { Engine } from './protocol.ts';

/** Starts an engine in a worker of its own. */
export const connect = (): { readonly engine: Engine; readonly stop: () => void } => {
  const worker = new Worker(new URL('./shell.ts', import.meta.url), { type: 'module' });
  return { engine: wrap<Engine>(worker), stop: () => worker.terminate() };
};
