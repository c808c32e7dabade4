import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { Ignored } from './ignored.js';
import { ReferencePaths } from './reference-paths.js';
import { folderWith } from './testing/folders.js';

function paths(root: string): ReferencePaths {
  return new ReferencePaths(root, new Ignored(root, root, []), new Set());
}

describe('a reference', () => {
  it.each([
    ['/etc/passwd', 'unsafe-content', '/etc/passwd is an absolute path; give a path relative to this file.'],
    [
      'https://example.org/a.yaml',
      'unsafe-content',
      'https://example.org/a.yaml is an address and nothing is fetched; give a path relative to this file.',
    ],
    [
      'file:a.yaml',
      'unsafe-content',
      'file:a.yaml is an address and nothing is fetched; give a path relative to this file.',
    ],
    [
      '//host/a.yaml',
      'unsafe-content',
      '//host/a.yaml is an address and nothing is fetched; give a path relative to this file.',
    ],
    ['a\0.yaml', 'unsafe-content', 'The path holds a zero character; write it without.'],
    ['b\\a.yaml', 'unknown-reference', 'b\\a.yaml is written with backslashes; write / between folders.'],
    ['  ', 'unknown-reference', 'The path is empty; name a file.'],
    ['.', 'unsafe-content', '. leads out of the library; move the document into it.'],
  ])('%j is refused even where no schema was asked', (text, code, message) => {
    const root = join(folderWith({ 'x/a.yaml': 'a: 1' }), 'x');
    expect(paths(root).resolve(root, text)).toEqual({ code, message });
  });

  it('leads to a file, or to all that a pattern matches in order', () => {
    const root = folderWith({ 'd/x.yaml': '', 'p/b.yaml': '', 'p/a.yaml': '', 'p/q/c.yaml': '', 'p/d.txt': '' });
    expect(paths(root).resolve(join(root, 'd'), '../p/a.yaml')).toEqual({
      isGlob: false,
      paths: [join(root, 'p/a.yaml')],
    });
    expect(paths(root).resolve(join(root, 'd'), '../p/*')).toEqual({
      isGlob: true,
      paths: [join(root, 'p/a.yaml'), join(root, 'p/b.yaml')],
    });
    expect(paths(root).resolve(root, 'p/**')).toMatchObject({
      paths: [join(root, 'p/a.yaml'), join(root, 'p/b.yaml'), join(root, 'p/q/c.yaml')],
    });
  });
});
