/** What a layer is faced or finished with, by its words. */
import type { Layer } from '../model/types.js';
import type { Locus } from '../reading/types.js';

export type Finish =
  | { readonly kind: 'none' }
  /** A board that faces the room and does not say whether it is painted. */
  | { readonly kind: 'unsaid' }
  | { readonly kind: 'said'; readonly words: string; readonly at: Locus };

/** Paint that is not said which. */
export const PAINTED = /\bpainted\b|^\s*paint\s*$/i;
/** Words that say there is neither facing nor finish. */
export const BARE = /\b(unpainted|unfinished|none|no finish|no paint|bare)\b/i;
const CARRIES: ReadonlySet<Layer['family']> = new Set<Layer['family']>(['interior board', 'batt insulation']);

/**
 * Finish or facing of a layer: stated, or a word inside the name of a board or batt (`kraft-faced batt`).
 *
 * `painted` without more is latex paint, as common practice takes it.
 */
export function finishOf(layer: Layer): Finish {
  if (layer.finish !== undefined) return said(layer.finish.value, layer.finish.at);
  const { material } = layer;
  if (material === undefined || !CARRIES.has(layer.family)) return { kind: 'none' };
  if (BARE.test(material.value)) return { kind: 'none' };
  const facing = facingIn(material.value);
  if (facing !== undefined) return { kind: 'said', words: facing, at: material.at };
  if (PAINTED.test(material.value)) return { kind: 'said', words: 'latex paint', at: material.at };
  return layer.index === 0 && layer.family === 'interior board' ? { kind: 'unsaid' } : { kind: 'none' };
}

function said(words: string, at: Locus): Finish {
  if (BARE.test(words)) return { kind: 'none' };
  return { kind: 'said', words: PAINTED.test(words) ? 'latex paint' : words, at };
}

/** Kraft, foil and paint as words inside the name of a board or batt. */
export function facingIn(text: string): string | undefined {
  if (/\b(un-?faced)\b/i.test(text)) return undefined;
  if (/\bkraft\b/i.test(text)) return 'kraft facing';
  if (/\bfoil\b/i.test(text)) return 'foil facing';
  return /\b(?:latex|enamel|vapor retarder) (?:paint|primer)\b/i.exec(text)?.[0];
}
