/**
 * How far a computed number can be trusted: exact within the stated model, bounded by a stated
 * amount (mm), or an estimate whose basis is named.
 */
export type Certainty =
  | { readonly kind: 'exact' }
  | { readonly kind: 'bounded'; readonly by: number; readonly reason: string }
  | { readonly kind: 'estimate'; readonly basis: string };

export const exact: Certainty = { kind: 'exact' };
