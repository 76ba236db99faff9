import { text, type FamilyCard } from '../../src/family/index.ts';
import { parameters } from './parameters.ts';

const { label, meaning } = text.family.bevelGauge;

/** What the bevel gauge is called and asks for, without the way to solve it. */
export const card: FamilyCard = {
  id: 'bevel-gauge',
  label,
  meaning,
  emblem: 'lean',
  parameters,
  aids: true,
};
