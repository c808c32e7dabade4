/** From a locus to the stretch of its file. */
import type { Locus, Span } from './types.js';

/** The span of a locus: that of its entry, or of the words in it that are meant. */
export function spanOfLocus(locus: Locus): Span {
  const whole = locus.document.spanOf(locus.path, locus.part);
  if (locus.within === undefined) return whole;
  // The span of a quoted scalar includes its quotes; `within` counts from the text between them.
  const quoted = /^["']/.test(locus.document.file.text.slice(whole.start, whole.start + 1)) ? 1 : 0;
  const start = Math.min(whole.end, whole.start + quoted + locus.within.start);
  return { start, end: Math.max(start, Math.min(whole.end, whole.start + quoted + locus.within.end)) };
}
