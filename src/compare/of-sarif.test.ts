import { describe, expect, it } from 'vitest';
import { submissionOfSarif } from './of-sarif.js';

function log(message: string): string {
  const result = {
    ruleId: 'a/rule',
    kind: 'fail',
    level: 'error',
    message: { text: message },
    properties: { detail: 'W-1' },
    locations: [
      { physicalLocation: { artifactLocation: { uri: 'W-1.yaml' }, region: { startLine: 1, startColumn: 1 } } },
    ],
  };
  const run = { tool: { driver: { name: 'Lapwright', rules: [] } }, taxonomies: [], results: [result] };
  return JSON.stringify({ version: '2.1.0', runs: [run] });
}
const messageOf = (text: string): string | undefined =>
  submissionOfSarif('x.sarif', log(text)).submission.results[0]?.message;

describe('the message of a result', () => {
  it('is the first line, without links and without what they end with', () => {
    expect(messageOf('The [head\\[1\\]](3) ends {{short}}. See [the jamb](4); [the sill](5).\nMore.')).toBe(
      'The head[1] ends {short}.',
    );
  });

  it.each(['[', ' See [', ' See [a](1)', '[a](1', '\\['])(
    'of 200,000 characters of "%s" is read in no time',
    (piece) => {
      const start = performance.now();
      messageOf(piece.repeat(200_000 / piece.length));
      expect(performance.now() - start).toBeLessThan(2000);
    },
  );
});

it('refuses a file that is nested without end', () => {
  const deep = `${'{"deep":'.repeat(20_000)}1${'}'.repeat(20_000)}`;
  const text = log('The head ends short.').replace('"detail":"W-1"', `"detail":"W-1","more":${deep}`);
  expect(() => submissionOfSarif('x.sarif', text)).toThrow('more than 64 levels deep');
});
