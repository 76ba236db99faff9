import { text, type FamilyCard } from '../../src/family/index.ts';
import { parameters } from './parameters.ts';

const { label, meaning } = text.family.edgeRest;

/** What the edge-referenced rest is called and asks for, without the way to solve it. */
export const card: FamilyCard = {
  id: 'edge-rest',
  label,
  meaning,
  emblem: 'lip',
  parameters,
};
