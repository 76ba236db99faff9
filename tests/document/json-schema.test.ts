import { describe, expect, it } from 'vitest';
import { designSchema, grinderSchema, type JsonSchema } from '../../src/document/json-schema.ts';
import { registry } from './documents.ts';

/** Every schema node with its path. */
const nodes = (schema: unknown, path = ''): [string, Record<string, unknown>][] => {
  if (typeof schema !== 'object' || schema === null) return [];
  return [
    ...(Array.isArray(schema) ? [] : [[path, schema as Record<string, unknown>] as const]),
    ...Object.entries(schema).flatMap(([key, inner]: [string, unknown]) =>
      nodes(inner, `${path}/${key}`),
    ),
  ].map(([at, node]) => [at, node]);
};

const numbers = (schema: JsonSchema) =>
  nodes(schema).filter(([, { type }]) => type === 'number' || type === 'integer');

describe.each([
  ['design', designSchema(registry)],
  ['grinder', grinderSchema()],
])('JSON Schema of a %s', (_, schema) => {
  it('says of every number what it is, its unit and its range', () => {
    expect(numbers(schema).length).toBeGreaterThan(30);
    for (const [path, node] of numbers(schema)) {
      expect(typeof node.title, path).toBe('string');
      expect(String(node.description), path).toMatch(/Allowed from .* to /);
      expect(typeof node.unit, path).toBe('string');
      expect(typeof node.minimum, path).toBe('number');
      expect(typeof node.maximum, path).toBe('number');
    }
  });

  it('is plain data of a stated dialect', () => {
    expect(schema.$schema).toBe('http://json-schema.org/draft-07/schema#');
    expect(JSON.parse(JSON.stringify(schema))).toEqual(schema);
  });
});

describe('JSON Schema of a design', () => {
  it('holds the parameters of every family', () => {
    expect(designSchema(registry).properties).toMatchObject({
      fixture: {
        anyOf: [
          {
            properties: {
              family: { const: 'rest' },
              parameters: {
                properties: {
                  noseWidth: { minimum: 10, maximum: 120, default: 60, unit: 'mm' },
                  bolts: { type: 'integer', minimum: 2 },
                  hand: { enum: ['left', 'right'], default: 'right' },
                },
              },
            },
          },
        ],
      },
    });
  });
});
