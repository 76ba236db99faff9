import { text, type FamilyCard } from '../../src/family/index.ts';
import { parameters } from './parameters.ts';

const { label, meaning } = text.family.spineRest;

/** What the spine-referenced rest is called and asks for, without the way to solve it. */
export const card: FamilyCard = {
  id: 'spine-rest',
  label,
  meaning,
  emblem: 'setoff',
  parameters,
};
