type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be';

/**
 * The text of a file whose encoding nobody said: by its byte order mark, else by where its zeros lie (a drawing begins with
 * a plain sign), else UTF-8, which each platform reads by its own means: `utf8`. The mark is left out.
 */
export const textOfBytes = (bytes: Uint8Array, utf8: (bytes: Uint8Array) => string): string => {
  const encoding = encodingOf(bytes);
  const text = encoding === 'utf-8' ? utf8(bytes) : utf16(bytes, encoding === 'utf-16le');
  return text.startsWith('\uFEFF') ? text.slice(1) : text;
};

const encodingOf = ([a, b]: Uint8Array): Encoding => {
  if ((a === 0xff && b === 0xfe) || (a !== 0 && a !== undefined && b === 0)) return 'utf-16le';
  return (a === 0xfe && b === 0xff) || (a === 0 && b !== 0 && b !== undefined)
    ? 'utf-16be'
    : 'utf-8';
};

const blockUnits = 8192;

const utf16 = (bytes: Uint8Array, isLittle: boolean): string => {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const parts: string[] = [];
  for (let at = 0; at + 1 < bytes.length; at += 2 * blockUnits) {
    const count = Math.min(blockUnits, Math.floor((bytes.length - at) / 2));
    const units = Array.from({ length: count }, (_, i) => view.getUint16(at + 2 * i, isLittle));
    parts.push(String.fromCharCode(...units));
  }
  return parts.join('');
};
