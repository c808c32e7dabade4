/** A source in one line, never without how well it is known. */
import type { Source } from '../engine/result.js';
import { placeOfLocus } from './place.js';

/**
 * `IRC R703.4 (code; from memory, confirm)`, `Section 07 27 26, 3.4.B (specification; project document, at
 * spec.md:12)`. Text from documents is returned as it stands; the caller escapes for its sink.
 */
export function sourceText(source: Source): string {
  // "common practice (practice; common practice, no source)" would say one thing three times.
  if (source.provenance === 'common practice, no source' && /^common practice\b/i.test(source.citation)) {
    return source.citation.includes('no source') ? source.citation : `${source.citation}, no source`;
  }
  let at = '';
  if (source.at !== undefined) {
    const place = placeOfLocus(source.at);
    at = `, at ${place.uri}:${String(place.line)}`;
  }
  return `${source.citation} (${source.basis}; ${source.provenance}${at})`;
}

/** Read at second hand or recalled: what a reader has to look up before it counts. */
export const isUnsure = ({ provenance }: Source): boolean =>
  provenance === 'seen at second hand' || provenance === 'from memory, confirm';

/** The one note that says what "confirm in the code" stands for. */
export const UNSURE_NOTE =
  'Where a source is marked "confirm in the code" or "confirm in the source", its text was read in a copy made by somebody else, or is quoted from memory: read it there before it is relied on.';

/** `IRC R703.4 (code; confirm in the code)`: how it is known in full stands in the list of rules and their sources. */
function shortSourceText(source: Source): string {
  if (source.provenance === 'common practice, no source') return sourceText(source);
  return sourceText(source).replace(
    `; ${source.provenance}`,
    isUnsure(source) ? `; confirm in the ${source.basis === 'code' ? 'code' : 'source'}` : '',
  );
}

/** As {@link sourceLabels}, in short and each source once. */
export function shortSourceLabels(sources: readonly Source[]): { label: 'source' | 'also'; text: string }[] {
  return [...new Set(sources.map(shortSourceText))].map((text, i) => ({ label: i === 0 ? 'source' : 'also', text }));
}

/** Name of the source line: one governs, the others are there to be compared. A source that is named twice stands once. */
export function sourceLabels(sources: readonly Source[]): { label: 'source' | 'also'; text: string }[] {
  return [...new Set(sources.map(sourceText))].map((text, i) => ({ label: i === 0 ? 'source' : 'also', text }));
}
