/** A document read by many details is typed once. */

/** The same function, its answers kept for as long as what they were made from lives. */
export function remembered<K extends object, T>(build: (key: K) => T): (key: K) => T {
  const known = new WeakMap<K, { readonly value: T }>();
  return (key) => {
    let held = known.get(key);
    if (held === undefined) known.set(key, (held = { value: build(key) }));
    return held.value;
  };
}
