/** The way into the page: each detail with its counts, as a table of links. */
import type { Element } from 'hast';
import { oneLine } from '../escape.js';
import type { DetailPart } from './detail.js';
import { element, link, text } from './hast.js';
import { detailName } from './names.js';

const COLUMNS = ['Detail', 'Title', 'Errors', 'Warnings', 'Notes', 'Cannot be checked', 'Passed'];

export function overview(parts: readonly DetailPart[]): Element {
  const rows = parts.map(({ number, group }) => {
    const of = (level: string): number => group.findings.filter((f) => f.level === level).length;
    const counts = [of('error'), of('warning'), of('note'), group.open.length, group.passed.length];
    return element(
      'tr',
      {},
      element('th', { scope: 'row' }, link(`#${detailName(number)}`, text(oneLine(group.detail.id)))),
      element('td', {}, text(oneLine(group.detail.title ?? ''))),
      ...counts.map((count, i) =>
        element('td', { className: i < 3 && count > 0 ? ['count', 'some'] : ['count'] }, text(String(count))),
      ),
    );
  });
  return element(
    'nav',
    { ariaLabel: 'Details of this review' },
    element('h2', {}, text('Details')),
    element(
      'table',
      {},
      element(
        'thead',
        {},
        element(
          'tr',
          {},
          ...COLUMNS.map((c, i) =>
            element('th', { scope: 'col', ...(i > 1 ? { className: ['count'] } : {}) }, text(c)),
          ),
        ),
      ),
      element('tbody', {}, ...rows),
    ),
  );
}
