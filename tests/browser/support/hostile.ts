// Text that would become markup or run, were it ever taken for more than text.
import fc from 'fast-check';

/** Each leaves a trace where it works: an element or attribute named so, or a global set. */
export const MARK = 'data-hostile';
const RUN = 'window.hostile=1';

const MARKUP = [
  `<b ${MARK}>x</b>`,
  `<img ${MARK} src=x onerror="${RUN}">`,
  `<svg ${MARK} onload="${RUN}"><animate ${MARK} onbegin="${RUN}" attributeName=x dur=1s>`,
  `<script ${MARK}>${RUN}</script>`,
  `<iframe ${MARK} srcdoc="<script>parent.hostile=1</script>"></iframe>`,
  `<a ${MARK} href="javascript:${RUN}">x</a>`,
  `<details ${MARK} open ontoggle="${RUN}">`,
  `<template ${MARK}></template><math ${MARK}><mi xlink:href="javascript:${RUN}">`,
  `<input ${MARK} autofocus onfocus="${RUN}">`,
  `<style ${MARK}>@import 'https://elsewhere.example/'</style>`,
  `<base ${MARK} href="https://elsewhere.example/">`,
  `<meta ${MARK} http-equiv="refresh" content="0;url=https://elsewhere.example/">`,
  `<form ${MARK} action="https://elsewhere.example/"><button>`,
];
/** What closes the places text stands in: attribute, element, script, comment, style, data. */
const OPENERS = [
  ...['', '"', "'", '`', '">', "'>", '-->', ']]>', '</textarea>', '</title>', '</bdi></p>'],
  ...['</script>', '</style>', '</template>', '{{', '${', '\\u003c', '&lt;', '%3C', '\u0000'],
];
const OTHERS = [
  `javascript:${RUN}`,
  `{{constructor.constructor('${RUN}')()}}`,
  '__proto__.hostile',
  'constructor.prototype',
  '\u202e\u2066<b>\u2069',
  '\ud800',
  'https://elsewhere.example/',
];

/** Some hundred texts, always the same: every opener before every markup, and random mixes. */
export function hostileTexts(random = 60): string[] {
  const mixed = fc
    .array(fc.constantFrom(...MARKUP, ...OPENERS, ...OTHERS), { minLength: 2, maxLength: 6 })
    .map((parts) => parts.join(''));
  return [
    ...OTHERS,
    ...MARKUP.flatMap((markup) => OPENERS.map((opener) => opener + markup)),
    ...fc.sample(mixed, { numRuns: random, seed: 20261125 }),
  ];
}
