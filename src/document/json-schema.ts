import { toJsonSchema } from '@valibot/to-json-schema';
import { grinderSchema } from '../grinder/schema.ts';
import { documentSchema, type Families } from './schema.ts';
import { parametersSchema } from './family-parameters.ts';

/** What a published JSON Schema says of a file; plain data. */
export type JsonSchema = Readonly<Record<string, unknown>>;

// Character checks that use Unicode classes have no flag-less form and stay in the program.
const options = { typeMode: 'input', errorMode: 'ignore' } as const;

/** The JSON Schema (draft-07) of a design file, with titles, units and descriptions. */
export const designSchema = (): JsonSchema => ({ ...toJsonSchema(documentSchema, options) });

/** The JSON Schema (draft-07) of a grinder file. */
export const grinderFileSchema = (): JsonSchema => ({ ...toJsonSchema(grinderSchema, options) });

/** The JSON Schema (draft-07) of the parameters of every registered fixture family. */
export const familySchemas = ({ families }: Families): Readonly<Record<string, JsonSchema>> =>
  Object.fromEntries(
    Object.entries(families).map(([id, { parameters }]) => [
      id,
      { ...toJsonSchema(parametersSchema(parameters), options) },
    ]),
  );
