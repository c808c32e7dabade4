/**
 * Rule packs: a folder of rules laid out like the built-in ones (`family/name.js` with `family/name.md` beside
 * it), or an npm package that exports `rules` and `pages`.
 *
 * A pack is code. It is loaded only when the person who runs the review asks for it.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Notification } from './result.js';
import type { Rule } from './rule.js';

export interface Pack {
  readonly name: string;
  readonly rules: readonly Rule[];
  readonly pages: Readonly<Record<string, string>>;
  readonly notifications: readonly Notification[];
}

const RULE_FILE = /^(?<name>[a-z][a-z0-9-]*)\.(?:mjs|js|ts)$/;
const LEVELS: readonly unknown[] = ['error', 'warning', 'note'];

/** What is missing from something that should be a rule; nothing when it is one. */
export function faultsOfRule(candidate: unknown): string[] {
  if (typeof candidate !== 'object' || candidate === null) return ['its default export is not an object'];
  const rule = candidate as Partial<Record<keyof Rule, unknown>>;
  const faults: string[] = [];
  if (typeof rule.id !== 'string' || !/^[a-z][a-z0-9-]*\/[a-z][a-z0-9-]*$/.test(rule.id))
    faults.push('"id" is not of the form family/name');
  for (const key of ['title', 'summary'] as const)
    if (typeof rule[key] !== 'string' || rule[key] === '') faults.push(`"${key}" is missing`);
  if (!LEVELS.includes(rule.level)) faults.push('"level" is none of error, warning, note');
  if (!Array.isArray(rule.sources)) faults.push('"sources" is not a list');
  if (!Array.isArray(rule.reads)) faults.push('"reads" is not a list');
  if (typeof rule.review !== 'function') faults.push('"review" is not a function');
  return faults;
}

const why = (error: unknown): string => (error instanceof Error ? (error.message.split('\n')[0] ?? '') : String(error));

async function loadFolder(folder: string): Promise<Pack> {
  const rules: Rule[] = [];
  const pages: Record<string, string> = {};
  const notifications: Notification[] = [];
  const families = readdirSync(folder, { withFileTypes: true })
    .filter((d) => d.isDirectory() && !d.name.startsWith('.'))
    .map((d) => d.name)
    .sort();
  for (const family of families) {
    const names = readdirSync(path.join(folder, family))
      .filter((f) => RULE_FILE.test(f) && !f.includes('.test.'))
      .sort();
    for (const file of names) {
      const id = `${family}/${file.replace(/\.[a-z]+$/, '')}`;
      const full = path.join(folder, family, file);
      try {
        const module = (await import(pathToFileURL(full).href)) as { default?: unknown };
        const faults = faultsOfRule(module.default);
        const rule = module.default as Rule;
        if (faults.length === 0 && rule.id !== id) faults.push(`"id" is "${rule.id}" but the file says "${id}"`);
        if (faults.length > 0) {
          notifications.push({
            level: 'error',
            ruleId: id,
            message: `The rule file ${full} cannot be used: ${faults.join('; ')}.`,
          });
          continue;
        }
        rules.push(rule);
        const page = full.replace(/\.[a-z]+$/, '.md');
        if (existsSync(page)) pages[id] = readFileSync(page, 'utf8');
        else
          notifications.push({
            level: 'warning',
            ruleId: id,
            message: `The rule ${id} has no page beside it (${path.basename(page)}).`,
          });
      } catch (error) {
        notifications.push({
          level: 'error',
          ruleId: id,
          message: `The rule file ${full} could not be loaded: ${why(error)}.`,
        });
      }
    }
  }
  if (rules.length === 0 && notifications.length === 0)
    notifications.push({
      level: 'warning',
      message: `The pack folder ${folder} holds no rules; a rule is a file family/name.js with a page family/name.md beside it.`,
    });
  return { name: folder, rules, pages, notifications };
}

async function loadPackage(name: string, from: string): Promise<Pack> {
  const resolved = createRequire(path.join(from, 'package.json')).resolve(name);
  const module = (await import(pathToFileURL(resolved).href)) as {
    rules?: unknown;
    pages?: unknown;
    default?: { rules?: unknown; pages?: unknown };
  };
  const { rules, pages } = module.rules === undefined ? (module.default ?? {}) : module;
  const notifications: Notification[] = [];
  if (!Array.isArray(rules))
    return {
      name,
      rules: [],
      pages: {},
      notifications: [
        { level: 'error', message: `The package ${name} is not a rule pack: it exports no list "rules".` },
      ],
    };
  const good = rules.filter((rule: unknown): rule is Rule => {
    const faults = faultsOfRule(rule);
    if (faults.length > 0)
      notifications.push({
        level: 'error',
        message: `A rule of the package ${name} cannot be used: ${faults.join('; ')}.`,
      });
    return faults.length === 0;
  });
  return { name, rules: good, pages: (pages ?? {}) as Record<string, string>, notifications };
}

/**
 * Loads one pack. Never throws: what goes wrong comes back as notifications.
 *
 * @param name a folder (absolute, or relative to `from`), or the name of an npm package installed there
 */
export async function loadPack(name: string, from: string): Promise<Pack> {
  const folder = path.resolve(from, name);
  try {
    return existsSync(folder) ? await loadFolder(folder) : await loadPackage(name, from);
  } catch (error) {
    return {
      name,
      rules: [],
      pages: {},
      notifications: [
        {
          level: 'error',
          message: `The rule pack ${name} could not be loaded: ${why(error)}. Name a folder, or a package installed in ${from}.`,
        },
      ],
    };
  }
}

/** Joins the rules of several packs in the order of their ids; a rule id that exists already is refused. */
export function joinRules(
  builtIn: readonly Rule[],
  packs: readonly Pack[],
): { rules: Rule[]; notifications: Notification[] } {
  const byId = new Map(builtIn.map((rule) => [rule.id, rule]));
  const notifications: Notification[] = [];
  for (const pack of packs) {
    notifications.push(...pack.notifications);
    for (const rule of pack.rules) {
      if (byId.has(rule.id))
        notifications.push({
          level: 'error',
          ruleId: rule.id,
          message: `The pack ${pack.name} brings a rule ${rule.id}, which exists already; give it another id.`,
        });
      else byId.set(rule.id, rule);
    }
  }
  return { rules: [...byId.values()].sort((a, b) => (a.id < b.id ? -1 : 1)), notifications };
}
