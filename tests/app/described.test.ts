import { expect, it } from 'vitest';
import { tidySchemas } from '../../src/app/described.js';

const to = (name: string): object => ({ $ref: `#/components/schemas/${name}` });

it('keeps what operations lead to, itself or by another, in the order of names', () => {
  const paths = { '/b': { get: { answers: [to('Zone')] } }, '/a': { post: { body: to('Area') } } };
  const schemas = {
    Zone: { of: to('Mid') },
    Mid: { type: 'string' },
    Lost: { of: to('Found') },
    Found: {},
    Area: {},
  };
  const tidy = tidySchemas({ paths, schemas });
  expect(tidy.paths).toEqual(paths);
  expect(Object.entries(tidy.schemas)).toEqual([
    ['Area', {}],
    ['Mid', { type: 'string' }],
    ['Zone', { of: to('Mid') }],
  ]);
});

it('gives what only comes in its plain name, and leaves two that differ their two names', () => {
  const paths = { in: [to('OfferInput'), to('PlaceInput')], out: to('Place') };
  const schemas = {
    Offer: { is: 'never used' },
    OfferInput: { at: to('PlaceInput') },
    Place: { is: 'going out' },
    PlaceInput: { is: 'coming in' },
  };
  expect(tidySchemas({ paths, schemas })).toEqual({
    paths: { in: [to('Offer'), to('PlaceInput')], out: to('Place') },
    schemas: { Offer: { at: to('PlaceInput') }, Place: { is: 'going out' }, PlaceInput: { is: 'coming in' } },
  });
});

it('follows schemas that refer to themselves', () => {
  const schemas = { Item: { items: [to('Item')] } };
  expect(tidySchemas({ paths: to('Item'), schemas })).toEqual({ paths: to('Item'), schemas });
});
