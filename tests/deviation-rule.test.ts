/** A deviation that names a rule nobody knows covers nothing, and says so. */
import { expect, it } from 'vitest';
import { lapwright, scratch } from './support/command.js';

it('an unknown rule in a deviation is named, with the nearest one', async () => {
  const folder = scratch({
    'd.yaml': `kind: detail
id: D-1
title: Wall
wall:
  - { id: sheathing, material: plywood }
deviations:
  - { rule: extension/onto-wal, reason: None., acceptedBy: architect of record }
`,
  });
  const { out } = await lapwright(['review', '--format', 'lines', '--fail-on', 'never', 'd.yaml'], { cwd: folder });
  expect(out).toMatch(
    /d\.yaml:7:13: note: .*there is no rule "extension\/onto-wal" in this review; did you mean "extension\/onto-wall"\?/,
  );
});
