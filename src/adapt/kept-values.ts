import { problem, type Issue } from '../core/issue.ts';
import type { Parameter } from '../core/parameter.ts';
import type { Design } from '../document/schema.ts';
import type { FamilyCard } from '../family/index.ts';
import type { Grinder } from '../grinder/schema.ts';
import { text } from '../text/index.ts';
import { parameterSpeech, spoken } from './spoken.ts';

/** The machine without what is worn and exchanged on it: other belts leave it the same. */
const machineOf = (grinder: Grinder): string =>
  JSON.stringify({ ...grinder, belts: [], backings: [] });

/** Whether two grinders are one machine, whatever is worn and exchanged on it. */
export const sameMachine = (a: Grinder, b: Grinder): boolean => machineOf(a) === machineOf(b);

/** What is needed of the families: what their parameters describe. */
interface Cards {
  readonly families: Readonly<Record<string, Pick<FamilyCard, 'parameters'>>>;
}

type Values = Design['fixture']['parameters'];

/** Whether the value of a parameter describes the machine and matters for this fixture. */
const describesMachine = ({ machine }: Parameter, values: Values): boolean =>
  machine !== undefined && !(machine.unless && values[machine.unless.key] === machine.unless.is);

/**
 * A warning for each parameter of a design that was taken over from another grinder and describes
 * that machine: nothing in the grinder file says what it is on the new one, so no check can tell.
 */
export const keptValues = (old: Grinder, design: Design, { families }: Cards): Issue[] => {
  const { family, parameters: values } = design.fixture;
  if (sameMachine(old, design.grinder)) return [];
  return Object.entries(families[family]?.parameters ?? {}).flatMap(([key, parameter]) =>
    describesMachine(parameter, values)
      ? [
          problem(
            'describes-machine',
            `fixture.parameters.${key}`,
            text.adapt.notes.kept(
              parameter,
              spoken(values[key] ?? parameter.initial, parameterSpeech(parameter)),
              old.name,
              design.grinder.name,
            ),
            'warning',
          ),
        ]
      : [],
  );
};
