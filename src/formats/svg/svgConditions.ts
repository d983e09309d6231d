import type { SvgNode } from './svgTree.ts';

/** Whether the conditions of an element hold (SVG 2, 5.8): no extensions are known, and the language is English. */
export const passes = ({ attributes }: SvgNode): boolean => {
  if (/\S/.test((attributes['requiredExtensions'] ?? '').slice(0, 200))) return false;
  const languages = attributes['systemLanguage'];
  return languages === undefined || /(^|,)\s*en\b/i.test(languages.slice(0, 200));
};
