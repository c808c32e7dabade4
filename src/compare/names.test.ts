import { describe, expect, it } from 'vitest';
import { Names, saysTheSame, translated } from './names.js';

const names = new Names();
names.renameEntry('detail', 'W-1', 'coat', '4');
names.renameEntry('detail', 'W-1', 'field', 'spray');
names.renameDocument('product', 'membrane-a', 'membrane-b');
const renames = names.within('detail', 'W-1');

describe('old names and new names', () => {
  it('a text is told in new names, its punctuation kept', () => {
    expect(translated('wet film of "coat", product data of membrane-a.', renames)).toBe(
      'wet film of "4", product data of membrane-b.',
    );
    expect(translated('coats of coating', renames)).toBe('coats of coating');
  });

  it('a word that is also an id may keep its meaning', () => {
    expect(saysTheSame('field at field', 'field at spray', renames)).toBe(true);
    expect(saysTheSame('field at field', 'spray at field', renames)).toBe(true);
    expect(saysTheSame('field at head', 'field at sill', renames)).toBe(false);
  });

  it('what stands between the words counts', () => {
    expect(saysTheSame('coat: 4 in', '4: 4 in', renames)).toBe(true);
    expect(saysTheSame('coat: 4 in', '4 4 in', renames)).toBe(false);
  });

  it('new ids of one detail are not those of another; new ids of products are', () => {
    expect(translated('coat on membrane-a', names.within('detail', 'W-2'))).toBe('coat on membrane-b');
  });

  it('two things of one old id may have gone two ways', () => {
    const both = new Names();
    both.renameEntry('detail', 'W-1', 'x', 'a');
    both.renameEntry('detail', 'W-1', 'x', 'b');
    expect(saysTheSame('x on x', 'a on b', both.within('detail', 'W-1'))).toBe(true);
    expect(saysTheSame('x on x', 'a on c', both.within('detail', 'W-1'))).toBe(false);
  });
});
