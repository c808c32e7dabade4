/** The compliance matrix as comma-separated values: a line for each requirement and each detail that answers it. */
import { csv } from '../csv.js';
import { placeOfLocus, placeOfResult } from '../place.js';
import { verdict, type MatrixRow } from '../../matrix/rows.js';

const HEAD = [
  'section',
  'paragraph',
  'requirement',
  'method',
  'condition',
  'confirmed',
  'result',
  'detail',
  'kind',
  'level',
  'rule',
  'provided',
  'place',
  'remark',
  'requirement_place',
];

/** A line for each requirement and each detail that answers it. @see RFC 4180 */
export function printMatrixCsv(rows: readonly MatrixRow[]): string {
  return csv([
    HEAD,
    ...rows.flatMap((row) => {
      const own = placeOfLocus(row.at);
      const asked = [
        row.section,
        row.paragraph,
        row.words,
        row.method ?? '',
        row.condition ?? '',
        row.confirmed ? 'yes' : 'no',
        verdict(row),
      ];
      const stands = `${own.uri}:${String(own.line)}`;
      if (row.answers.length === 0) return [[...asked, '', row.kind, '', '', '', '', row.unheld ?? '', stands]];
      const silent = row.silent.map((id) => [
        ...asked,
        id,
        'open',
        '',
        '',
        '',
        '',
        'The detail shows what it is about and does not say.',
        stands,
      ]);
      const answers = row.answers.map(({ documentId, result }) => {
        const place = placeOfResult(result);
        const kind = result.suppression === undefined ? result.kind : `${result.kind}, deviation accepted`;
        return [
          ...asked,
          documentId,
          kind,
          result.kind === 'fail' ? result.level : '',
          result.ruleId,
          result.provided ?? '',
          `${place.uri}:${String(place.line)}`,
          result.message,
          stands,
        ];
      });
      return [...answers, ...silent];
    }),
  ]);
}
