import { describe, expect, it } from 'vitest';
import { cards } from '../../jigs/cards.ts';
import { registry } from '../../jigs/registry.ts';

describe('the cards of a page', () => {
  it('hold every registered family and fetch that very family', async () => {
    expect(Object.keys(cards.families)).toEqual(Object.keys(registry.families));
    for (const [id, card] of Object.entries(cards.families)) {
      expect(await card.fetch()).toBe(registry.families[id]);
      expect(registry.families[id]).toMatchObject({
        id: card.id,
        label: card.label,
        meaning: card.meaning,
        parameters: card.parameters,
      });
    }
  });
});
