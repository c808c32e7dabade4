/** A Markdown tree as text. Load this file only when it is asked for: the writer behind it is large. */
import type { Root } from 'mdast';
import { gfmToMarkdown } from 'mdast-util-gfm';
import { toMarkdown } from 'mdast-util-to-markdown';

/**
 * @returns Markdown in the GitHub flavor (tables), ending with a line break
 * @see https://github.github.com/gfm/
 */
export function writeMarkdown(tree: Root): string {
  return toMarkdown(tree, {
    bullet: '-',
    rule: '-',
    // Cells padded to one width would change every row of a table when one text grows.
    extensions: [gfmToMarkdown({ tablePipeAlign: false })],
  });
}
