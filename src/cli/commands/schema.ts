import { toJsonSchema } from '@valibot/to-json-schema';
import { registry } from '../../../jigs/registry.ts';
import {
  adaptationSchema,
  comparisonSchema,
  mendedSchema,
  reachSchema,
} from '../../adapt/output-schema.ts';
import { designSchema, grinderSchema } from '../../document/json-schema.ts';
import { grindSchema } from '../../make/ground/schema.ts';
import {
  manifestSchema,
  reportSchema,
  solutionSchema,
  verdictSchema,
} from '../../make/output-schema.ts';
import { suitSchema } from '../../make/suit/schema.ts';
import { readingsSchema } from '../../setup/readings/schema.ts';
import { text } from '../../text/index.ts';
import { issueOf, printIssues, printJson, type ExitCode } from '../answer.ts';

const SCHEMAS: Readonly<Record<string, () => unknown>> = {
  design: () => designSchema(registry),
  grinder: grinderSchema,
  solve: () => toJsonSchema(solutionSchema),
  check: () => toJsonSchema(verdictSchema),
  report: () => toJsonSchema(reportSchema),
  readings: () => toJsonSchema(readingsSchema, { typeMode: 'input', errorMode: 'ignore' }),
  manifest: () => toJsonSchema(manifestSchema),
  compare: () => toJsonSchema(comparisonSchema),
  adapt: () => toJsonSchema(adaptationSchema),
  mend: () => toJsonSchema(mendedSchema),
  reach: () => toJsonSchema(reachSchema),
  grind: () => toJsonSchema(grindSchema),
  suit: () => toJsonSchema(suitSchema),
};

/** `schema NAME`: the JSON Schema of what the program reads or writes. */
export const schema = async (name: string): Promise<ExitCode> => {
  const build = Object.hasOwn(SCHEMAS, name) ? SCHEMAS[name] : undefined;
  if (!build) {
    const known = Object.keys(SCHEMAS).join(', ');
    printIssues([issueOf('schema-unknown', text.cli.unknownSchema(name, known))], false);
    return 2;
  }
  printJson(build());
  return 0;
};
