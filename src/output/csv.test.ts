import { describe, expect, it } from 'vitest';
import { csv } from './csv.js';

describe('comma-separated values', () => {
  it('quote what holds a comma or a quotation mark, and double the marks (RFC 4180 section 2)', () => {
    expect(csv([['a,b', 'say "so"', 'plain', 3]])).toBe('"a,b","say ""so""",plain,3\r\n');
  });
  it('are text where a spreadsheet would compute', () => {
    expect(csv([['=1+1', '@sum', '+1 in', '-lap', '-3.5']])).toBe("'=1+1,'@sum,'+1 in,'-lap,-3.5\r\n");
  });
  it('keep a cell on one line and its controls visible', () => {
    expect(csv([['two\nlines', 'bell\u0007']])).toBe('two lines,bell\\u{7}\r\n');
  });
});
