/** The part of the page that its address names; nothing where it names none. Where the address of the screen itself stands behind a `#`, behind a second one. */
export const anchor = (): string => {
  const [, first = '', second = ''] = location.hash.split('#');
  return first.startsWith('/') ? second : first;
};
