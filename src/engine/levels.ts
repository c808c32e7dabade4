/** How strongly a breach is reported, from the rule and from what stands behind the limit. */
import { LEVEL_ORDER, type Level, type Source } from './result.js';

const lower = (a: Level, b: Level): Level => (LEVEL_ORDER[a] <= LEVEL_ORDER[b] ? a : b);

/**
 * The level of a breach of several limits: the gravest of them. The strictest limit names the finding, but a guide that
 * asks for more than the code does not make a breach of the code milder.
 *
 * @param sources of the limits that are not met
 */
export function levelForAll(ruleLevel: Level, sources: readonly (Source | undefined)[]): Level {
  return sources
    .map((source) => levelFor(ruleLevel, source))
    .reduce((a, b) => (LEVEL_ORDER[a] >= LEVEL_ORDER[b] ? a : b));
}

/**
 * The level of a breach.
 *
 * A number quoted from memory is a warning at most, whatever its basis, because nobody should be stopped by a
 * figure that was not re-read. A guide or a habit is a warning at most: it binds nobody. What the parties
 * agreed (specification, product data), the code and physics keep the rule's own level.
 *
 * @param ruleLevel the level the rule declares
 * @param source the governing source, if the breach is of a sourced limit
 */
export function levelFor(ruleLevel: Level, source: Source | undefined): Level {
  if (source === undefined) return ruleLevel;
  if (source.provenance === 'from memory, confirm') return lower(ruleLevel, 'warning');
  switch (source.basis) {
    case 'guide':
    case 'practice':
    case 'standard':
      return lower(ruleLevel, 'warning');
    default:
      return ruleLevel;
  }
}
