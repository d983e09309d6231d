declare module 'wawoff2' {
  const woff2: {
    /** A font of the web format WOFF2 as TrueType. */
    readonly decompress: (bytes: Uint8Array) => Promise<Uint8Array>;
  };
  export default woff2;
}
