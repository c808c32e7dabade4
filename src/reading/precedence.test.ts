/** The order of precedence of a project: no circle, and nothing before the code. */
import { describe, expect, it } from 'vitest';
import { readYamlDocuments } from './documents.js';
import { sourceFile } from './source.js';

const HEAD = 'kind: project\nid: p\ntitle: P\nprecedence:\n';
function problems(...pairs: string[]) {
  const text = HEAD + pairs.map((pair) => `  - { source: ${pair.replace(' > ', ', over: ')} }\n`).join('');
  return readYamlDocuments(sourceFile('p.yaml', text), { named: true }).problems.map((p) => ({
    ...p,
    text: text.slice(p.span.start, p.span.end),
    others: p.related?.map((r) => text.slice(r.span.start, r.span.end)),
  }));
}

describe('an order of precedence', () => {
  it('may be a chain, and say a thing twice', () => {
    expect(problems('specification > product data', 'product data > standard')).toEqual([]);
    expect(problems('specification > product data', 'specification > product data')).toEqual([]);
  });
  it('is refused when it closes a circle, with every entry of the circle and no other', () => {
    const [circle, ...others] = problems(
      'standard > practice',
      'specification > product data',
      'product data > standard',
      'standard > specification',
    );
    expect(others).toEqual([]);
    expect(circle).toMatchObject({
      code: 'circular-precedence',
      message:
        'This order closes a circle: specification before product data before standard before specification. Take one of the 3 entries out (number 2, number 3 and number 4).',
      text: 'source: standard',
      others: ['source: product data', 'source: specification'],
    });
  });
  it('is refused when a source goes before itself', () => {
    expect(problems('guide > guide')[0]?.message).toBe('The guide cannot go before itself; take this entry out.');
  });
  it('never puts a contract before the code', () => {
    const [problem] = problems('specification > code');
    expect(problem).toMatchObject({ code: 'wrong-value', text: 'code' });
    expect(problem?.message).toContain('what the code asks is the least');
  });
});
