import { toJsonSchema } from '@valibot/to-json-schema';
import * as v from 'valibot';
import { grinderSchema as grinderFields } from '../grinder/schema.ts';
import { parametersSchema } from './family-parameters.ts';
import { calibrationSchema, documentSchema, type Families } from './schema.ts';

/** What a published JSON Schema says of a file; plain data. */
export type JsonSchema = Readonly<Record<string, unknown>>;

// The Unicode flag of a pattern has no place in a JSON Schema; nothing else is left out.
const options = { errorMode: 'ignore', typeMode: 'input', target: 'draft-07' } as const;

/**
 * The JSON Schema (draft-07) of a design file, with titles, units, ranges and reasons; the
 * parameters of each registered fixture family by its own table. What holds several fields
 * together cannot be said in it: opening the file checks that too.
 */
export const designSchema = ({ families }: Families): JsonSchema => {
  const fixture = v.union(
    Object.entries(families).map(([id, { parameters }]) =>
      v.object({
        family: v.literal(id),
        parameters: parametersSchema(parameters),
        calibration: calibrationSchema,
      }),
    ),
  );
  return { ...toJsonSchema(v.object({ ...documentSchema.entries, fixture }), options) };
};

/** The JSON Schema (draft-07) of a grinder file. */
export const grinderSchema = (): JsonSchema => ({ ...toJsonSchema(grinderFields, options) });
