/** Declared and undeclared differences as a table: what from, where, why, how it stands. */
import type { Table } from 'mdast';
import type { DeclaredItem } from '../../engine/submittal/facts.js';
import { cell, joint, table, words } from '../markdown-parts.js';

const NAME = { deviation: 'Deviation', substitution: 'Substitution', 'not declared': 'Difference' } as const;

export function declaredTable(items: readonly DeclaredItem[]): Table {
  const head = ['What', 'From', 'Details', 'Reason and effect', 'Status'].map((name) => cell(joint(name)));
  const rows = items.map((d) =>
    [
      d.id === undefined ? NAME[d.type] : `${NAME[d.type]} ${d.id}`,
      d.departsFrom,
      d.details.join(', '),
      [d.reason, d.effect].filter((part) => part !== undefined).join(' '),
      d.status,
    ].map((text) => cell(words(text))),
  );
  return table([head, ...rows]);
}
