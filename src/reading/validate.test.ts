import { describe, expect, it } from 'vitest';
import detailSchema from '../../schemas/detail.schema.json' with { type: 'json' };
import type { DocumentKind } from './types.js';
import { MOST_PROBLEMS, validateDocument, type SchemaProblem } from './validate.js';

const WALL = [{ id: 'board', material: 'gypsum board' }];

/** The problems of a detail that would be right without `fields`. */
function inDetail(fields: object): SchemaProblem[] {
  return validateDocument('detail', { kind: 'detail', id: 'W-3', title: 'Window', wall: WALL, ...fields });
}
/** The problems of one work item, without the way to it. */
function inWork(item: object): SchemaProblem[] {
  return inDetail({ work: [item] }).map((problem) => ({ ...problem, path: problem.path.slice(2) }));
}
function inPan(fields: object): SchemaProblem[] {
  return inWork({ id: 'pan', place: 'sill', product: 'liquid-flashing', ...fields });
}
function requirement(fields: object): SchemaProblem[] {
  const requirements = [{ paragraph: '3.4.B.2', ...fields }];
  return validateDocument('specification', { section: '07 27 26', title: 'Air barriers', requirements });
}

describe('a document that follows its schema', () => {
  it('has no problems', () => {
    expect(inDetail({})).toEqual([]);
    expect(inPan({ ontoWall: '6 in', intoOpening: 'full', of: ['window', 'door'], coats: 2, thinner: 0.05 })).toEqual(
      [],
    );
  });

  it('may leave its kind to the fence it stands in, but not state another', () => {
    expect(validateDocument('project', { id: 'demo', title: 'Demo' })).toEqual([]);
    expect(validateDocument('project', { kind: 'detail', id: 'demo', title: 'Demo' })).toEqual([
      { code: 'wrong-value', path: ['kind'], message: '"kind": found "detail"; expected project.' },
    ]);
  });

  it('may be made of records without a prototype', () => {
    const layer = Object.assign(Object.create(null) as object, WALL[0]);
    const data = Object.assign(Object.create(null) as object, { id: 'W-3', title: 'Window', wall: [layer] });
    expect(validateDocument('detail', data)).toEqual([]);
  });

  it('places things by the distance to either side and up or down', () => {
    const at = (position: object): SchemaProblem[] =>
      inDetail({ penetrations: [{ id: 'conduit', at: position, diameter: '1 in' }] });
    expect(at({ right: '20 in', up: '30 in' })).toEqual([]);
    expect(at({ left: '12 in', down: '6 in' })).toEqual([]);
    expect(at({ right: '20 in' })).toEqual([
      {
        code: 'missing-field',
        path: ['penetrations', 0, 'at'],
        message: 'One of "up" or "down" is needed here; none is given. Add the one that is meant.',
      },
    ]);
  });
});

describe('an unknown field', () => {
  it('is named with the field that was meant', () => {
    expect(inPan({ ontowall: '6 in' })).toEqual([
      {
        code: 'unknown-field',
        path: ['ontowall'],
        part: 'key',
        message: '"ontowall" is not a known field here (applied work); did you mean "ontoWall"?',
      },
    ]);
  });

  it('is shown the place where it belongs', () => {
    expect(inPan({ backerRod: '1/2 in' })).toEqual([
      {
        code: 'unknown-field',
        path: ['backerRod'],
        part: 'key',
        message: '"backerRod" is not a known field here (applied work); it stands under "joint".',
      },
    ]);
  });

  it('is answered with the known ones when none is near', () => {
    const wall = [{ id: 'studs', material: 'mineral wool batt', framing: { material: 'wood', gauge: '20' } }];
    expect(inDetail({ wall })).toEqual([
      {
        code: 'unknown-field',
        path: ['wall', 0, 'framing', 'gauge'],
        part: 'key',
        message: '"gauge" is not a known field here (framing); known are material, spacing and depth.',
      },
    ]);
  });

  it('does not list more than two dozen known ones', () => {
    const fields = Object.keys(detailSchema.$defs.applied.properties);
    const [problem] = inPan({ quux: 1 });
    const shown = fields.slice(0, 24).join(', ');
    expect(problem?.message).toBe(
      `"quux" is not a known field here (applied work); known are ${shown} and ${fields.length - 24} more.`,
    );
  });

  it('that is a misspelled required one is not also missing', () => {
    const { message, ...rest } = validateDocument('detail', { id: 'W-3', titel: 'Window', wall: WALL })[0] ?? {
      message: '',
    };
    expect(rest).toEqual({ code: 'unknown-field', path: ['titel'], part: 'key' });
    expect(message).toBe('"titel" is not a known field here (detail); did you mean "title"?');
    expect(validateDocument('detail', { id: 'W-3', titel: 'Window', wall: WALL })).toHaveLength(1);
  });

  it('may have the name of something that every object has', () => {
    const layer = JSON.parse(
      '{ "id": "board", "material": "gypsum board", "__proto__": {}, "constructor": 1 }',
    ) as object;
    expect(inDetail({ wall: [layer] }).map((problem) => problem.path.at(-1))).toEqual(['__proto__', 'constructor']);
  });
});

describe('a missing field', () => {
  it('is reported at the entry that lacks it, with what it says and an example', () => {
    expect(inDetail({ openings: [{ id: 'window' }] })).toEqual([
      {
        code: 'missing-field',
        path: ['openings', 0],
        message:
          'The field "roughOpening" is missing here (opening): size of the hole before the unit is set. ' +
          'For example: roughOpening: { width: 48 in, height: 60 in, depth: 7 in }',
      },
    ]);
  });

  it('keeps quotes in the example where YAML needs them', () => {
    const [problem] = validateDocument('detail', { title: 'Window', wall: WALL });
    expect(problem?.message).toMatch(/ For example: id: W-3$/);
    const requirements = [{ property: 'lap', atLeast: '2 in' }];
    const [paragraph] = validateDocument('specification', { section: '07 27 26', title: 'Air barriers', requirements });
    expect(paragraph?.message).toMatch(/ For example: paragraph: 3\.4\.B\.2$/);
  });

  it('leaves out an example that would fill the line', () => {
    expect(validateDocument('specification', { section: '07 27 26', title: 'Air barriers' })).toEqual([
      {
        code: 'missing-field',
        path: [],
        message: 'The field "requirements" is missing here (specification): the limits the section sets.',
      },
    ]);
  });
});

describe('fields of which exactly one must stand', () => {
  it('are named when none does', () => {
    expect(inWork({ id: 'pan', place: 'sill' })).toEqual([
      {
        code: 'missing-field',
        path: [],
        message:
          'One of "product", "layer" or "material" is needed here (applied work); none is given. Add the one that is meant.',
      },
    ]);
  });

  it('are named when two do, at the second', () => {
    expect(inPan({ layer: 'membrane' })).toEqual([
      {
        code: 'wrong-value',
        path: ['layer'],
        part: 'key',
        message:
          'Only one of "product", "layer" or "material" may stand here (applied work); found "product" and "layer". Keep the one that is meant.',
      },
    ]);
  });

  it('that are misspelled are one problem', () => {
    expect(inWork({ id: 'pan', place: 'sill', prodcut: 'liquid-flashing' })).toEqual([
      {
        code: 'unknown-field',
        path: ['prodcut'],
        part: 'key',
        message: '"prodcut" is not a known field here (applied work); did you mean "product"?',
      },
    ]);
    expect(inWork({ id: 'pan', plaec: 'sill', product: 'liquid-flashing' })).toEqual([
      {
        code: 'unknown-field',
        path: ['plaec'],
        part: 'key',
        message: '"plaec" is not a known field here (work item); did you mean "place"?',
      },
    ]);
  });
});

describe('a work item', () => {
  it('is held against the shape its key chooses: a wrong place is one problem', () => {
    const problems = inPan({ place: 'sil' });
    expect(problems).toHaveLength(1);
    expect(problems[0]?.path).toEqual(['place']);
    expect(problems[0]?.message).toMatch(
      /^"place": found "sil"\. Did you mean "sill"\? Allowed are sill, jambs, .* and interior face\.$/,
    );
  });

  it('points into a list of places', () => {
    const problems = inPan({ place: ['sill', 'flange-head'] });
    expect(problems).toHaveLength(1);
    expect(problems[0]?.path).toEqual(['place', 1]);
    expect(problems[0]?.message).toMatch(/^"place", entry 2: found "flange-head"\. Did you mean "flange head"\?/);
  });

  it('without any of the keys is told which there are', () => {
    expect(inWork({ id: 'pan' })).toEqual([
      {
        code: 'missing-field',
        path: [],
        message:
          'One of "place", "set", "close" or "hold" is needed here (work item); none is given. Add the one that is meant.',
      },
    ]);
  });

  it('with two of the keys has that one problem, whatever else it holds', () => {
    expect(inWork({ id: 'look', set: 'unit', hold: 'visual check', by: 'installer', accept: 'no pinholes' })).toEqual([
      {
        code: 'wrong-value',
        path: ['hold'],
        part: 'key',
        message:
          'Only one of "place", "set", "close" or "hold" may stand here (work item); found "set" and "hold". Keep the one that is meant.',
      },
    ]);
  });

  it('that is no map at all has one problem', () => {
    expect(inDetail({ work: ['pan'] })).toEqual([
      { code: 'wrong-value', path: ['work', 0], message: '"work", entry 1: found "pan"; expected a map of fields.' },
    ]);
  });
});

describe('a quantity', () => {
  it.each([
    [
      'ontoWall',
      12,
      '"ontoWall" (extension onto wall): found the number 12; a length needs its unit: in, ft, yd, mm, cm or m; for example "12 in".',
    ],
    [
      'ontoWall',
      '12',
      '"ontoWall" (extension onto wall): found "12"; a length needs its unit: in, ft, yd, mm, cm or m; for example "12 in".',
    ],
    [
      'intoOpening',
      4,
      '"intoOpening" (extension into opening): found the number 4; a length needs its unit: in, ft, yd, mm, cm or m; for example "4 in".',
    ],
    ['wait', 1, '"wait": found the number 1; a time needs its unit: h, min, d, s, wk or month; for example "1 h".'],
  ])('without a unit is told which fit: %s: %s', (field, value, message) => {
    expect(inPan({ [field]: value })).toEqual([{ code: 'wrong-unit', path: [field], message }]);
  });

  it.each([
    ['wetFilm', '15 mli', 'wrong-unit', /^"wetFilm" \(wet film thickness\): found "15 mli": .* mil /],
    ['backDam', '3 psf', 'wrong-unit', /^"backDam" \(back dam height\): found "3 psf": "psf" is a unit of pressure/],
    ['ontoWall', 'six inches', 'wrong-value', /^"ontoWall" \(extension onto wall\): found "six inches": /],
    ['ontoWall', '-6 in', 'wrong-value', /^"ontoWall" \(extension onto wall\): found "-6 in": /],
    ['intoOpening', 'half', 'wrong-value', /^"intoOpening" \(a length, or full\): found "half": /],
  ])('that cannot be read says why: %s: %s', (field, value, code, message) => {
    const problems = inPan({ [field]: value });
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ code, path: [field] });
    expect(problems[0]?.message).toMatch(message);
  });

  it('that is no scalar is told what is expected', () => {
    expect(inPan({ ontoWall: ['6 in'] })).toEqual([
      {
        code: 'wrong-value',
        path: ['ontoWall'],
        message: '"ontoWall" (extension onto wall): found a list; expected a length with its unit, for example 6 in.',
      },
    ]);
  });

  it('may be a bare number only where a share is meant', () => {
    const product = (volumeSolids: unknown): SchemaProblem[] =>
      validateDocument('product', { id: 'coating', name: 'Coating', family: 'fluid-applied membrane', volumeSolids });
    expect(product(0.55)).toEqual([]);
    expect(product('55 %')).toEqual([]);
    expect(product(55)).toEqual([
      {
        code: 'wrong-value',
        path: ['volumeSolids'],
        message: '"volumeSolids" (volume solids): found the number 55; expected a number from 0 to 1.',
      },
    ]);
  });

  it('of a requirement is read in the dimension of its property', () => {
    expect(requirement({ property: 'weep count', atLeast: 2 })).toEqual([]);
    expect(requirement({ property: 'wet film', equals: '12-15 mil' })).toEqual([]);
    expect(requirement({ property: 'weep count', atLeast: '2 in' })).toEqual([
      {
        code: 'wrong-value',
        path: ['requirements', 0, 'atLeast'],
        message: '"atLeast" (at least): found "2 in"; expected a whole number.',
      },
    ]);
    expect(requirement({ property: 'sill slope', atLeast: '2 in' })[0]).toMatchObject({
      code: 'wrong-unit',
      path: ['requirements', 0, 'atLeast'],
    });
    expect(requirement({ property: 'joint width', oneOf: ['3/8 in', 2] })[0]).toMatchObject({
      code: 'wrong-unit',
      path: ['requirements', 0, 'oneOf', 1],
    });
  });
});

describe('a value of the wrong sort', () => {
  const cases: readonly [string, DocumentKind, object, SchemaProblem][] = [
    [
      'a number where an id is meant keeps its digits only in quotes',
      'project',
      { id: 3.1, title: 'Demo' },
      {
        code: 'wrong-value',
        path: ['id'],
        message: '"id": found the number 3.1; expected text. Put it in quotes as it should read, such as "3.10".',
      },
    ],
    [
      'nothing after the colon',
      'project',
      { id: 'demo', title: null },
      { code: 'wrong-value', path: ['title'], message: '"title": found nothing; expected text.' },
    ],
    [
      'an empty text',
      'project',
      { id: 'demo', title: '' },
      {
        code: 'wrong-value',
        path: ['title'],
        message: '"title": found an empty text; expected words; leave the field out when there is nothing to say.',
      },
    ],
    [
      'a text beyond its length',
      'project',
      { id: 'demo', title: 'x'.repeat(201) },
      {
        code: 'wrong-value',
        path: ['title'],
        message: '"title": found 201 characters; expected at most 200. Shorten it.',
      },
    ],
    [
      'a yes where true or false is meant',
      'product',
      { id: 'tape', name: 'Tape', family: 'tape', combustible: 'yes' },
      { code: 'wrong-value', path: ['combustible'], message: '"combustible": found "yes"; expected true or false.' },
    ],
    [
      'one word where a list is meant',
      'product',
      { id: 'tape', name: 'Tape', family: 'tape', substrates: 'concrete masonry' },
      {
        code: 'wrong-value',
        path: ['substrates'],
        message:
          '"substrates" (list of texts): found "concrete masonry"; expected a list. Put it in brackets: [concrete masonry]',
      },
    ],
    [
      'an empty list',
      'product',
      { id: 'tape', name: 'Tape', family: 'tape', substrates: [] },
      {
        code: 'wrong-value',
        path: ['substrates'],
        message: '"substrates" (list of texts): found 0 entries; expected at least 1. Add one, or leave the field out.',
      },
    ],
    [
      'a number out of its bounds',
      'project',
      { id: 'demo', title: 'Demo', stories: 0 },
      {
        code: 'wrong-value',
        path: ['stories'],
        message: '"stories": found the number 0; expected a number from 1 to 250.',
      },
    ],
    [
      'a part of a story',
      'project',
      { id: 'demo', title: 'Demo', stories: 2.5 },
      { code: 'wrong-value', path: ['stories'], message: '"stories": found the number 2.5; expected a whole number.' },
    ],
    [
      'a word that is not one of those allowed',
      'settings',
      { failOn: 'errors' },
      {
        code: 'wrong-value',
        path: ['failOn'],
        message:
          '"failOn" (fail on): found "errors". Did you mean "error"? Allowed are error, warning, note and never.',
      },
    ],
    [
      'a climate zone that is none',
      'project',
      { id: 'demo', title: 'Demo', place: { zone: '9Z' } },
      {
        code: 'wrong-value',
        path: ['place', 'zone'],
        message:
          '"zone" (climate zone): found "9Z"; expected a climate zone: a digit from 1 to 8, with A, B or C where the zone has a moisture regime; ' +
          'put a digit alone in quotes, for example 5A.',
      },
    ],
    [
      'a day that does not exist',
      'settings',
      { deviations: [{ rule: 'lap/reverse-lap', reason: 'Existing work.', until: '2027-02-29' }] },
      {
        code: 'wrong-value',
        path: ['deviations', 0, 'until'],
        message:
          '"until": found "2027-02-29"; expected a calendar date as year, month and day with dashes, for example 2027-06-30.',
      },
    ],
    [
      'a name that is no rule id',
      'settings',
      { rules: { reverseLap: { level: 'error' } } },
      {
        code: 'wrong-value',
        path: ['rules', 'reverseLap'],
        part: 'key',
        message:
          '"reverseLap" cannot be a name here (rules): level and parameters of single rules, each under its rule id: family, slash and name.',
      },
    ],
  ];
  it.each(cases)('%s', (_, kind, data, problem) => {
    expect(validateDocument(kind, data)).toEqual([problem]);
  });

  it.each([
    '/etc/passwd',
    '~/project.yaml',
    'https://example.com/p.yaml',
    'C:\\project.yaml',
    'c:/project.yaml',
    '..\\project.yaml',
    'file:p.yaml',
  ])('a path that leads out of the library by its form: %s', (project) => {
    expect(inDetail({ project })).toMatchObject([{ code: 'wrong-value', path: ['project'] }]);
  });

  it('is shown without characters that could disturb a terminal', () => {
    const [problem] = inDetail({ method: '\u001b[31mA\u202e' });
    expect(problem?.message).toBe('"method": found "?[31mA?". Allowed are A, A1, B and B1.');
  });
});

describe('a document that is wrong throughout', () => {
  it('has every problem once, each with its own message', () => {
    const problems = inDetail({ id: 3, work: [{ id: 'pan', place: 'sil', product: 4, ontoWall: 6, colour: 'red' }] });
    expect(problems.map((problem) => problem.path.join('.')).sort()).toEqual(
      ['id', 'work.0.colour', 'work.0.ontoWall', 'work.0.place', 'work.0.product'].sort(),
    );
  });

  it('is not listed without end', () => {
    const fields = Object.fromEntries(Array.from({ length: MOST_PROBLEMS + 50 }, (_, i) => [`quux${i}`, 1]));
    const problems = inDetail(fields);
    expect(problems).toHaveLength(MOST_PROBLEMS + 1);
    expect(problems.at(-1)).toEqual({
      code: 'wrong-value',
      path: [],
      message: '50 more problems in this document; correct those listed first.',
    });
  });

  it('may be no map at all', () => {
    expect(validateDocument('detail', ['W-3'])).toEqual([
      { code: 'wrong-value', path: [], message: 'The document: found a list; expected a map of fields.' },
    ]);
  });
});
