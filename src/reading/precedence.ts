/** What is wrong with the order of precedence of a project: a circle, or something put before the code. */
import { listed } from './schema-words.js';
import type { ReadDocument, ReadingProblem } from './types.js';

interface Entry {
  readonly source: string;
  readonly over: string;
  readonly index: number;
}

/** Problems of `precedence`, of a project that its schema finds well formed. */
export function precedenceProblems(project: Pick<ReadDocument, 'data' | 'file' | 'spanOf'>): ReadingProblem[] {
  const list = project.data['precedence'];
  if (!Array.isArray(list)) return [];
  const { file } = project;
  const entries = list.map((entry: { readonly source: string; readonly over: string }, index): Entry => ({
    ...entry,
    index,
  }));
  const problems = entries
    .filter(({ over }) => over === 'code')
    .map(({ source, index }): ReadingProblem => ({
      code: 'wrong-value',
      message: `The ${source} cannot go before the code: what the code asks is the least, whatever a contract says. Take this entry out.`,
      file,
      span: project.spanOf(['precedence', index, 'over']),
    }));
  const once = entries.filter((e, i) => entries.findIndex((o) => o.source === e.source && o.over === e.over) === i);
  const circle = circleIn(once.filter(({ over }) => over !== 'code'));
  if (circle !== undefined) {
    const [closing, ...others] = circle.toSorted((a, b) => b.index - a.index) as [Entry, ...Entry[]];
    const chain = [...circle.map(({ source }) => source), circle[0]?.source ?? ''];
    problems.push({
      code: 'circular-precedence',
      message:
        circle.length === 1
          ? `The ${closing.source} cannot go before itself; take this entry out.`
          : `This order closes a circle: ${chain.join(' before ')}. Take one of the ${circle.length} entries out (${listed(
              circle.map(({ index }) => `number ${index + 1}`),
              'and',
            )}).`,
      file,
      span: project.spanOf(['precedence', closing.index]),
      related: others.map(({ source, over, index }) => ({
        message: `${source} goes before ${over} here`,
        file,
        span: project.spanOf(['precedence', index]),
      })),
    });
  }
  return problems;
}

/** The entries of the first circle, in its order; sources are few, so every way is walked. */
function circleIn(entries: readonly Entry[]): Entry[] | undefined {
  const walk = (way: readonly Entry[]): Entry[] | undefined => {
    const last = way.at(-1);
    for (const next of entries) {
      if (last !== undefined && next.source !== last.over) continue;
      const from = way.findIndex((e) => e.source === next.over);
      if (from !== -1 || next.source === next.over) return [...(from === -1 ? [] : way.slice(from)), next];
      const found = walk([...way, next]);
      if (found !== undefined) return found;
    }
    return undefined;
  };
  return walk([]);
}
