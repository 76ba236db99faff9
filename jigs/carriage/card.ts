import { text, type FamilyCard } from '../../src/family/index.ts';
import { parameters } from './parameters.ts';

const { label, meaning } = text.family.carriage;

/** What the guided-angle carriage is called and asks for, without the way to solve it. */
export const card: FamilyCard = {
  id: 'carriage',
  label,
  meaning,
  emblem: 'carriage',
  parameters,
};
