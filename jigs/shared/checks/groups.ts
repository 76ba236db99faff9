import type { Placement } from '../../../src/family/index.ts';

/** Placements that move as one, by the name of their body. */
export const groupOf = ({
  name,
  carrier,
}: Placement): 'base' | 'mount' | 'nose' | 'step' | 'push' | 'pad' | 'collar' => {
  if (/^(mount|clamp)/.test(name)) return 'mount';
  if (carrier === 'ground') return 'base';
  if (carrier === 'hand') return name === 'push-pad' ? 'pad' : 'push';
  return carrier === 'blade' ? 'collar' : carrier === 'nose' ? 'nose' : 'step';
};
