import { expect, it } from 'vitest';
import { moistureUnits } from './units.js';

it.each([
  ['US', 0.5, '1.64 oz/ft2'],
  ['US', 0.002, 'less than 0.01 oz/ft2'],
  ['US', 0, '0 oz/ft2'],
  ['SI', 0.5, '500 g/m2'],
  ['SI', 0.0009, 'less than 1 g/m2'],
] as const)('water in %s: %s kg/m2 is %s', (system, kgPerM2, text) => {
  // 1 oz/ft2 is 0.30515 kg/m2: 0.028349523 kg over 0.09290304 m2 (NIST SP 811, appendix B).
  expect(moistureUnits(system).amount.text(kgPerM2)).toBe(text);
});
