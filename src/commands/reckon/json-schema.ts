import { acceptedOf } from './accepted.ts';
import type { FieldSpec, FieldSpecs, Topic } from './topic.ts';

export type JsonSchema = Readonly<Record<string, unknown>>;

/**
 * The JSON Schema (draft 7, which every checker still reads) of a topic's input. It takes every good input, texts with
 * units among them; what fields mean together (any two of five) is left to the topic.
 */
export const jsonSchema = (topic: Topic): JsonSchema => ({
  $schema: 'http://json-schema.org/draft-07/schema#',
  title: `curvewright reckon ${topic.name}`,
  description: topic.summary,
  ...recordSchema(topic.fields),
});

const recordSchema = (fields: FieldSpecs): JsonSchema => ({
  type: 'object',
  properties: Object.fromEntries(Object.entries(fields).map(([name, spec]) => [name, described(spec, name)])),
  required: Object.keys(fields).filter(name => !fields[name]?.optional),
  additionalProperties: false,
});

const described = (spec: FieldSpec, name: string): JsonSchema => ({
  ...(spec.about === undefined ? {} : { description: `${spec.about}: ${acceptedOf(spec, name)}` }),
  ...schemaOf(spec, name),
});

const schemaOf = (spec: FieldSpec, name: string): JsonSchema => {
  switch (spec.is) {
    case 'number':
      return { anyOf: [numberSchema(spec), { type: 'string', minLength: 1 }] };
    case 'choice':
      return { type: 'string', enum: spec.of };
    case 'text':
      return { anyOf: [{ type: 'string' }, { type: 'number' }] };
    case 'flag':
      return { type: 'boolean' };
    case 'record':
      return recordSchema(spec.fields);
    case 'list':
      return {
        type: 'array',
        items: described(spec.of, name),
        ...(spec.least === undefined ? {} : { minItems: spec.least }),
        ...(spec.most === undefined ? {} : { maxItems: spec.most }),
      };
    case 'tuple':
      return {
        type: 'array',
        items: spec.of.map(one => described(one, name)),
        additionalItems: false,
        minItems: spec.of.length,
        maxItems: spec.of.length,
      };
  }
};

const numberSchema = (spec: Extract<FieldSpec, { is: 'number' }>): JsonSchema => ({
  type: spec.whole ? 'integer' : 'number',
  ...(spec.above === undefined ? {} : { exclusiveMinimum: spec.above }),
  ...(spec.atLeast === undefined ? {} : { minimum: spec.atLeast }),
  ...(spec.below === undefined ? {} : { exclusiveMaximum: spec.below }),
  ...(spec.atMost === undefined ? {} : { maximum: spec.atMost }),
});
