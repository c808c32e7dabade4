/**
 * Text from documents on its way to a place that would act on it. Markdown needs nothing here but `oneLine`:
 * its own syntax is escaped where the tree is written.
 */

// Controls (C0, DEL, C1), zero-width and bidirectional marks, line separators, invisible operators, tag characters.
const UNSEEN =
  // eslint-disable-next-line no-control-regex
  /[\u0000-\u001f\u007f-\u009f\u00ad\u061c\u180e\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb\u{e0000}-\u{e007f}]|\p{Cs}/gu;

/**
 * Writes every character that a terminal would obey, or a reader could not see, as `\u{1B}`. Line breaks and tabs
 * count as such characters: call `oneLine` first where they are only layout.
 */
export function visible(text: string): string {
  return text.replace(UNSEEN, (found) => `\\u{${(found.codePointAt(0) ?? 0).toString(16).toUpperCase()}}`);
}

/** Joins lines with single spaces, then makes the rest visible. For text that runs in a paragraph or a cell. */
export function oneLine(text: string): string {
  return visible(text.replace(/[ \t\r\n]+/g, ' ').trim());
}

/**
 * JSON text with the same characters as `\uXXXX`: the value is unchanged, and the file is safe to print.
 *
 * @param value anything `JSON.stringify` takes, never `undefined`
 */
export function safeJson(value: object | string | number | boolean | null): string {
  return JSON.stringify(value).replace(UNSEEN, (found) =>
    Array.from(
      { length: found.length },
      (_, index) => `\\u${found.charCodeAt(index).toString(16).padStart(4, '0')}`,
    ).join(''),
  );
}

/**
 * A relative path with `/` as a URI reference: each segment percent-encoded, so that a colon, a space or a
 * question mark in a file name stays part of the name.
 *
 * @see RFC 3986 section 4.2
 */
export function uriReference(path: string): string {
  // A lone surrogate cannot be encoded as UTF-8; U+FFFD stands for it, as in a UTF-8 encoder.
  return path
    .replace(/\p{Cs}/gu, '\ufffd')
    .split('/')
    .map(encodeURIComponent)
    .join('/');
}

/** The address when it is an absolute http or https one, else `undefined`: nothing else becomes a link. */
export function webAddress(url: string | undefined): string | undefined {
  return url !== undefined && /^https?:\/\/[^\s"<>\\^`{|}\u0080-\uffff]+$/i.test(url) ? url : undefined;
}
