// What every page of the built site has, in every language.
import { describe, expect, it } from 'vitest';
import { languages, mainLanguage } from '../../src/content/load.ts';
import { SOURCE } from '../../src/content/texts.ts';
import { addressIn } from './support/guide-page.ts';
import {
  addressOf,
  attribute,
  elements,
  has,
  pageFiles,
  resolve,
  said,
  textOf,
} from './support/html.ts';

/** Attributes that hold an address. */
const ADDRESSES = ['href', 'src', 'srcset', 'poster', 'action', 'data', 'data-preview'];

const all = pageFiles().map((file) => {
  const address = addressOf(file);
  const found = elements(textOf(file));
  const html = found.find(({ tagName }) => tagName === 'html');
  return {
    file,
    address,
    language: (attribute(html, 'lang') ?? '').slice(0, 2),
    found,
  };
});
/** First pages to be chosen from and the page for lost addresses have no address of their own. */
const readable = all.filter(({ address }) => address.endsWith('/'));

describe('every page', () => {
  it('has a title, one h1, and a language of this copy', () => {
    expect(all.length).toBeGreaterThan(500 * languages().length);
    const titles = (page: (typeof all)[number], tag: string) =>
      page.found.filter(({ tagName }) => tagName === tag).map(said);
    const wrong = all.filter((page) => {
      const head = page.found.find(({ tagName }) => tagName === 'title');
      const [h1 = '', ...more] = titles(page, 'h1');
      const speaks = languages().includes(page.language);
      return !head || said(head) === '' || h1 === '' || more.length > 0 || !speaks;
    });
    expect(wrong.map(({ file }) => file)).toEqual([]);
  });

  it('leads to itself in every other language that has it', () => {
    let links = 0;
    const wrong = readable.flatMap(({ address, language, found }) => {
      const path =
        language === mainLanguage() ? address.slice(1) : address.slice(`/${language}/`.length);
      const meant = languages()
        .filter((one) => one !== language)
        .map((one) => addressIn(one, path))
        .filter((one) => has(`${one.slice(1)}index.html`));
      const linked = found.flatMap((one) =>
        attribute(one, 'hreflang') === undefined
          ? []
          : [resolve(address, attribute(one, 'href') ?? '')],
      );
      links += linked.length;
      return JSON.stringify(linked.toSorted()) === JSON.stringify(meant.toSorted())
        ? []
        : [`${address}: ${linked.join(' ')}, and not ${meant.join(' ')}`];
    });
    expect(wrong).toEqual([]);
    expect(links > 0).toBe(languages().length > 1);
  });

  // WCAG 2.2, 3.1.2. The words are told here anew: what marks them does not say which they are.
  it('says where it speaks English in another language: buttons, names, sources', () => {
    const button =
      /(?<!\p{L})(?:Off|Cancel|Clean|Clear|Reset|Hot|Lock|Bake|Broil|Delay|Sabbath|Timed|Poison Help)(?!\p{L})/u;
    const latin = /(?<![&#\w@.])[A-Za-z]{2,}/;
    const spoken = (one: (typeof all)[number]['found'][number]): string =>
      attribute(one, 'lang') ??
      (one.parentNode && 'tagName' in one.parentNode ? spoken(one.parentNode) : '');
    const unmarked = /^(?:title|option|script|style|textarea|text|tspan|noscript)$/;
    let marked = 0;
    const wrong = all
      .filter(({ language }) => language !== SOURCE)
      .flatMap(({ file, found }) =>
        found.flatMap((one) => {
          const text = one.childNodes
            .map((child) => ('value' in child ? child.value : ''))
            .join('|');
          const lang = spoken(one);
          if (lang === SOURCE) marked += 1;
          const foreign = lang === 'ar' ? latin : /^(?:es|fr)/.test(lang) ? button : undefined;
          return !unmarked.test(one.tagName) && foreign?.test(text) ? [`${file}: ${text}`] : [];
        }),
      );
    expect(wrong.slice(0, 20)).toEqual([]);
    expect(marked > 1000).toBe(languages().length > 1);
  });

  it('leads only to what is there, by addresses that work in any folder', () => {
    let links = 0;
    const wrong = all.flatMap(({ file, address, found }) =>
      found.flatMap((one) =>
        one.attrs
          .filter(({ name, value }) => ADDRESSES.includes(name) && !/^[a-z]+:/.test(value))
          .flatMap(({ name, value }) => {
            links += 1;
            const path = resolve(address, value)
              .replace(/[?#].*$/, '')
              .slice(1);
            const there = has(path.endsWith('/') || path === '' ? `${path}index.html` : path);
            // The page for lost addresses is shown at any depth.
            const anywhere = file === '404.html' || value.startsWith('#') || !value.startsWith('/');
            return there && anywhere ? [] : [`${file}: ${name}="${value}"`];
          }),
      ),
    );
    expect(wrong).toEqual([]);
    expect(links).toBeGreaterThan(10_000);
  });
});

it('the notices of what browsers load all have their text', () => {
  const [, ...packages] = textOf('licences.txt').split(/^## (?=\S+ - \d)/m);
  expect(packages.length).toBeGreaterThan(3);
  for (const one of packages) expect(one, one.split('\n')[0]).toMatch(/copyright|permission/i);
});
