/** A sound detail has no finding on its order; leave out or move any one step, and the rule concerned says so. */
import { describe, expect, it } from 'vitest';
import headFlapLast from './head-flap-last.js';
import holdBeforeCover from './hold-before-cover.js';
import jointsBeforeField from './joints-before-field.js';
import laterPenetrations from './later-penetrations.js';
import namedMethod from './named-method.js';
import nothingFloats from './nothing-floats.js';
import panBeforeUnit from './pan-before-unit.js';
import sillJambHead from './sill-jamb-head.js';
import stepComplete from './step-complete.js';
import waitBeforeCover from './wait-before-cover.js';
import waterTestWindow from './water-test-window.js';
import type { Rule } from '../../src/engine/rule.js';
import { readPage, reviewWith } from '../../tests/support/documents.js';

const RULES = [
  headFlapLast,
  holdBeforeCover,
  jointsBeforeField,
  laterPenetrations,
  namedMethod,
  nothingFloats,
  panBeforeUnit,
  sillJambHead,
  stepComplete,
  waitBeforeCover,
  waterTestWindow,
] as unknown as readonly Rule[];

const WORK: Readonly<Record<string, string>> = {
  seams: 'place: sheathing joints, product: filler, extends: 1 in, wait: 1 h',
  edges: 'place: [inside corners, opening edges], of: window, product: filler, extends: 1 in, wait: 1 h',
  pan: 'place: sill, of: window, product: liquid, ontoWall: 6 in, pastJambs: 6 in, intoOpening: full, endDams: 6 in',
  jambs: 'place: jambs, of: window, product: liquid, ontoWall: 6 in, intoOpening: full',
  head: 'place: head, of: window, product: liquid, ontoWall: 6 in, pastJambs: 6 in, intoOpening: full, wait: 4 h',
  field: 'place: field, layer: membrane, lapsOnto: { opening flashing: 2 in }, wait: 16 h',
  conduit: 'set: penetration, of: conduit',
  collar: 'place: penetration, of: conduit, product: liquid, extends: 3 in',
  look: 'hold: film readings, of: [pan, jambs, head, field], by: installer, accept: 12 mil at each reading',
  set: 'set: unit, of: window',
  counter: 'place: [flange head, flange jambs], of: window, product: liquid, ontoWall: 4 in',
  seal: 'place: interior perimeter, of: window, product: bead, wait: 7 d',
  spray: 'hold: water test, by: testing agency, accept: no water inboard of the unit',
  finish: 'place: interior face, layer: board',
  boards: 'place: field, layer: insulation',
  brick: 'place: field, layer: veneer',
};
const ORDER = Object.keys(WORK);

/** Rules that report a finding on the work in the given order. */
async function rulesThat(kind: 'fail' | 'open', order: readonly string[]): Promise<string[]> {
  const product = (id: string, family: string, waits = ''): string =>
    `\`\`\`yaml product\nkind: product\nid: ${id}\nname: ${id}\nfamily: ${family}\n${waits}\`\`\`\n`;
  const page = `\`\`\`yaml detail
kind: detail
id: whole
title: Window with flange
wall:
  - { id: board, material: gypsum board }
  - { id: sheathing, material: gypsum sheathing, sheet: { width: 48 in, height: 96 in } }
  - { id: membrane, product: coat }
  - { id: insulation, material: mineral wool board }
  - { id: veneer, material: clay brick }
openings:
  - id: window
    roughOpening: { width: 48 in, height: 60 in, depth: 7 in }
    unit: { mounting: flange, flange: 1-3/8 in }
penetrations:
  - { id: conduit, at: { right: 70 in, up: 30 in }, diameter: 1 in }
work:
${order.map((id) => `  - { id: ${id}, ${WORK[id] ?? ''} }`).join('\n')}
\`\`\`
${product('coat', 'fluid-applied membrane', 'waits: [{ before: cover, time: 16 h }]\n')}
${product('liquid', 'fluid-applied flashing', 'waits: [{ before: cover, time: 2 h }, { before: unit, time: 4 h }]\n')}
${product('filler', 'joint filler', 'waits: [{ before: next work, time: 1 h }]\n')}
${product('bead', 'sealant', 'waits: [{ before: water test, time: 7 d }]\n')}`;
  const results = reviewWith((await readPage(page)).detail(), RULES);
  return [...new Set(results.filter((r) => r.kind === kind).map((r) => r.ruleId))].sort();
}

const findings = (order: readonly string[]): Promise<string[]> => rulesThat('fail', order);
const questions = (order: readonly string[]): Promise<string[]> => rulesThat('open', order);
const without = (...ids: string[]): string[] => ORDER.filter((id) => !ids.includes(id));
/** Moves one step right behind another; to the front without one. */
function moved(id: string, behind?: string): string[] {
  const rest = without(id);
  const i = behind === undefined ? 0 : rest.indexOf(behind) + 1;
  return [...rest.slice(0, i), id, ...rest.slice(i)];
}

describe('order of work', () => {
  it('has no finding on a sound detail', async () => {
    expect(await findings(ORDER)).toEqual([]);
  });

  it.each([
    ['seams', 'sequence/joints-before-field'],
    ['set', 'sequence/step-complete'],
    ['counter', 'sequence/step-complete'],
  ])('misses the step %s', async (id, rule) => {
    expect(await findings(without(id))).toContain(rule);
  });

  // The hold point names these; without it nothing else about them is in question.
  it.each(['jambs', 'head', 'field'])('misses the step %s', async (id) => {
    expect(await findings(without(id, 'look'))).toContain('sequence/step-complete');
  });

  it('asks for the checks when no hold point is left', async () => {
    expect(await findings(without('look', 'spray'))).toEqual([]);
    expect(await questions(without('look', 'spray'))).toContain('sequence/hold-before-cover');
  });

  it.each([
    ['the sill after the jambs', moved('pan', 'jambs'), 'sequence/sill-jamb-head'],
    ['the jambs after the head', moved('jambs', 'head'), 'sequence/sill-jamb-head'],
    ['the pan under a set unit', moved('pan', 'set'), 'sequence/pan-before-unit'],
    ['the edges over the pan', moved('edges', 'pan'), 'sequence/joints-before-field'],
    ['the joints over the field', moved('seams', 'field'), 'sequence/joints-before-field'],
    ['the strip before the flange', moved('counter', 'field'), 'sequence/nothing-floats'],
    ['the interior seal before the unit', moved('seal', 'field'), 'sequence/nothing-floats'],
    ['the veneer before the insulation', moved('brick', 'finish'), 'sequence/nothing-floats'],
    ['the veneer before everything', moved('brick'), 'sequence/nothing-floats'],
    ['the collar before the conduit', moved('collar', 'field'), 'sequence/later-penetrations'],
    ['the collar behind the veneer', moved('collar', 'brick'), 'sequence/later-penetrations'],
    ['the readings behind the unit', moved('look', 'set'), 'sequence/hold-before-cover'],
    ['the readings before the field', moved('look', 'head'), 'sequence/hold-before-cover'],
    ['the test before the seal', moved('spray', 'counter'), 'sequence/water-test-window'],
    ['the test behind the finish', moved('spray', 'finish'), 'sequence/water-test-window'],
    ['the unit set an hour after the pan', ['seams', 'pan', 'edges', 'set'], 'sequence/wait-before-cover'],
  ])('sees %s', async (_, order, rule) => {
    expect(await findings(order)).toContain(rule);
  });
});
