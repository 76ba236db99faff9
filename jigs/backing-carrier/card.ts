import { text, type FamilyCard } from '../../src/family/index.ts';
import { parameters } from './parameters.ts';

const { label, meaning } = text.family.backingCarrier;

/** What the backing carrier is called and asks for, without the way to solve it. */
export const card: FamilyCard = {
  id: 'backing-carrier',
  label,
  meaning,
  emblem: 'carrier',
  parameters,
  aids: true,
};
