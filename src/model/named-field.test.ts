/** A reader looks for a field by the name that the drawing gives its layer, opening or step. */
import { expect, it } from 'vitest';
import { fieldOfAny, fieldOfLayer, fieldOfOpening, fieldOfWork } from './named-field.js';
import { readPage } from '../../tests/support/documents.js';

it('names a layer, an opening and a step by id', async () => {
  const page = await readPage(
    `kind: detail
id: d
title: Test
wall:
  - { id: board, material: gypsum board }
  - { id: sheathing, material: plywood sheathing, thickness: 1/2 in }
openings:
  - { id: window, roughOpening: { width: 36 in, height: 48 in } }
work:
  - { id: pan, place: sill, product: coat }
  - { id: jambs, place: jambs, product: coat }
---
{ kind: product, id: coat, name: Coat, family: fluid-applied flashing }
`,
    'd.yaml',
  );
  const detail = page.detail();
  expect(fieldOfLayer(detail.layers[1]!, 'framing.depth')).toBe('wall "sheathing": framing.depth');
  expect(fieldOfOpening(detail.openings[0]!, 'unit.mounting')).toBe('openings "window": unit.mounting');
  expect(fieldOfWork(detail.work[1]!, 'wait')).toBe('work "jambs": wait');
});

it('takes out which one it is, so that one question can be asked of several', () => {
  expect(fieldOfAny('wall "foam-2.1": rValue, work "pan": wait, contains[3].of')).toBe(
    'wall.rValue, work.wait, contains.of',
  );
  expect(fieldOfAny('openings "w": unit.mounting, product.least.lap')).toBe(
    'openings.unit.mounting, product.least.lap',
  );
  expect(fieldOfAny('work.place: field')).toBe('work.place: field');
});
