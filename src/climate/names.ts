/** Names of places as people write them, made alike before they are compared. */

/** Letters and digits only: case, accents, spaces, dots and dashes are what people write differently. */
export function foldedName(name: string): string {
  return name
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/\bsaint(e?)\b/g, 'st$1')
    .replace(/[^a-z0-9]/g, '');
}

/** Words of a name in the same manner: `Chicago O'Hare` is `chicago` and `ohare`. */
export function foldedWords(name: string): string[] {
  return name
    .replace(/['’`]/g, '')
    .split(/[^\p{L}\p{M}\p{N}]+/u)
    .map(foldedName)
    .filter((word) => word !== '');
}

/** What a county is called in its state: `Cook County`, `Orleans Parish`. It is no part of the name. */
const KIND = /\s+(county|parish|borough|city and borough|census area|municipality|municipio|city)\s*$/i;

/** The name of a county without what it is called, and that. */
export function countyName(written: string): { readonly name: string; readonly kind?: 'county' | 'city' } {
  const kind = KIND.exec(written)?.[1]?.toLowerCase();
  if (kind === undefined) return { name: written };
  return { name: written.replace(KIND, ''), kind: kind === 'city' ? 'city' : 'county' };
}

/** Some names for a message: at most `most` of them, then how many more there are. */
export function listed(names: readonly string[], most = 6): string {
  const shown = names.slice(0, most).join(', ');
  return names.length > most ? `${shown} and ${names.length - most} more` : shown;
}
