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

/** Name of the source line: one governs, the others are there to be compared. */
export function sourceLabels(sources: readonly Source[]): { label: 'source' | 'also'; text: string }[] {
  return sources.map((source, index) => ({ label: index === 0 ? 'source' : 'also', text: sourceText(source) }));
}
