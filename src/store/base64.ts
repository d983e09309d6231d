/** So many bytes at once: a call takes only so many arguments. */
const atOnce = 0x8000;

/** Bytes as text (RFC 4648, 4), by what Node and browsers both have. */
export const base64Of = (bytes: Uint8Array): string => {
  let text = '';
  for (let from = 0; from < bytes.length; from += atOnce)
    text += String.fromCharCode(...bytes.subarray(from, from + atOnce));
  return btoa(text);
};

export const bytesOfBase64 = (text: string): Uint8Array =>
  Uint8Array.from(atob(text), (sign) => sign.charCodeAt(0));
