/** Drawing programs declare a dozen; each is the address of a namespace. */
const most = 64;
const mostSigns = 128;
const mostReferences = 10_000;

/**
 * The short words that a document type declares for itself (`<!ENTITY ns "http://…">`), which some drawing programs write
 * at the top of every file. Undefined where it declares anything else: words made of words, which grow without end;
 * words from elsewhere; or where so many are used that they would. O(signs).
 */
export const ownEntities = (
  doctype: string,
  text: string,
): ReadonlyMap<string, string> | undefined => {
  const entities = new Map<string, string>();
  const parts = doctype.split('<!ENTITY').slice(1);
  if (parts.length === 0) return entities;
  if (parts.length > most || references(text) > mostReferences) return undefined;
  for (const part of parts) {
    const found = /^\s{1,9}([\w.-]{1,40})\s{1,9}(?:"([^"&%<]*)"|'([^'&%<]*)')\s{0,9}>/.exec(part);
    const value = found?.[2] ?? found?.[3];
    if (found?.[1] === undefined || value === undefined || value.length > mostSigns)
      return undefined;
    entities.set(found[1], value);
  }
  return entities;
};

/** Ampersands, at most one more than are allowed. */
const references = (text: string): number => {
  let count = 0;
  for (
    let at = text.indexOf('&');
    at >= 0 && count <= mostReferences;
    at = text.indexOf('&', at + 1)
  )
    count += 1;
  return count;
};
