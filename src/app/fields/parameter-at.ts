import type { Parameter } from '../../core/parameter.ts';
import type { Path } from '../../core/path.ts';
import type { Design } from '../../document/schema.ts';
import type { FamilyCard } from '../../family/family.ts';
import { bladeFields } from './blade.ts';
import { fixtureFields } from './design.ts';
import { type Field, type FieldGroup } from './field.ts';
import { grinderFields } from './grinder.ts';

const flat = (field: Field): Field[] =>
  field.kind === 'list' ? [field, ...field.items.flat().flatMap(flat)] : [field];

/** The number or choice that is entered at a path of a design; undefined where none is. */
export const parameterAt = (
  design: Design,
  families: readonly FamilyCard[],
  path: Path,
): Parameter | undefined => {
  const [first, index] = path.split('.');
  const blade = first === 'blades' ? design.blades[Number(index)] : undefined;
  const family = families.find(({ id }) => id === design.fixture.family);
  const groups: readonly FieldGroup[] = blade
    ? bladeFields(blade, `blades.${index ?? ''}`)
    : first === 'grinder'
      ? grinderFields(design.grinder)
      : fixtureFields(design, family);
  const field = groups
    .flatMap((group) => group.fields.flatMap(flat))
    .find(({ path: at }) => at === path);
  return field?.kind === 'number' || field?.kind === 'choice' ? field.parameter : undefined;
};
