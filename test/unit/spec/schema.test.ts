import assert from 'node:assert/strict';
import { Ajv } from 'ajv';
import schema from '../../../schemas/tag.schema.json' with { type: 'json' };

const generators = [
  ...[
    'text',
    'lines',
    'rectangle',
    'ellipse',
    'circle',
    'polygon',
    'arrow',
    'oval',
    'heart',
    'house',
    'label',
    'ticket',
    'scallops',
  ],
  ...['stack', 'path', 'drawing', 'around', 'union', 'difference', 'intersection', 'from'],
  ...['code', 'border', 'stick', 'repeat'],
];

describe('The schema', () => {
  const ajv = new Ajv({ strict: false });

  it('is valid JSON Schema, draft 7, by its own metaschema', () => {
    assert.equal(schema.$schema, 'http://json-schema.org/draft-07/schema#');
    assert.equal(ajv.validateSchema(schema), true, ajv.errorsText());
    assert.doesNotThrow(() => ajv.compile(schema));
  });

  it('is refused by the metaschema once it is wrong, so that the check above can fail', () => {
    assert.equal(ajv.validateSchema({ ...schema, required: 'pieces' }), false);
  });

  it('describes every key of a shape, the generators first', () => {
    const { properties } = schema.definitions.shape;
    const described = Object.entries(properties).filter(
      ([, entry]) => 'description' in entry && entry.description.startsWith('Generator: '),
    );
    assert.deepEqual(
      described.map(([key]) => key),
      generators,
    );
    for (const [key, entry] of Object.entries(properties)) {
      assert.ok('description' in entry || '$ref' in entry, `${key} is described`);
    }
  });

  it('allows no key it does not know, at any level', () => {
    for (const [name, definition] of Object.entries(schema.definitions)) {
      if ((definition as { properties?: object }).properties)
        assert.equal((definition as { additionalProperties?: unknown }).additionalProperties, false, name);
    }
  });
});
