/** The language the browser asks for stands out among the links; nobody is sent anywhere. */
const links = [...document.querySelectorAll<HTMLAnchorElement>('.languages a')];
/** Whoever asks for Mexican Spanish reads that of the US more easily than English. */
const plain = (tag: string): string => tag.slice(0, 2).toLowerCase();
const own = plain(document.documentElement.lang);
const wanted = navigator.languages
  .map(plain)
  .find((tag) => tag === own || links.some(({ hreflang }) => plain(hreflang) === tag));
for (const link of links) link.classList.toggle('wanted', plain(link.hreflang) === wanted);
