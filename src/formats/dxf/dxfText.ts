/** What a text says, without the signs that tell how it looks (DXF reference, MTEXT), as far as it matters for showing it. */
export const plainWords = (raw: string): string =>
  unescaped(raw.slice(0, 300))
    .replaceAll(/\\P|\\~|%%[uok]/gi, ' ')
    .replaceAll(/\\[ACFHQTWacfhqtw][^;\\{}]{0,80};/g, '')
    .replaceAll(/\\[LOKlok]|[{}]/g, '')
    .replaceAll(/\s+/g, ' ')
    .trim()
    .slice(0, 40);

/** Names and texts write letters beyond ASCII as `\U+00E4` (DXF reference, "Drawing names"). */
export const unescaped = (raw: string): string =>
  raw.replaceAll(/\\U\+([0-9a-f]{4})/gi, (_, code: string) =>
    String.fromCharCode(Number.parseInt(code, 16)),
  );
