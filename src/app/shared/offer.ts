/** The language the browser asks for stands out among the links; nobody is sent anywhere. */
const links = [...document.querySelectorAll<HTMLAnchorElement>('.languages a')];
const own = document.documentElement.lang;
const wanted = navigator.languages
  .map((tag) => tag.slice(0, 2).toLowerCase())
  .find((tag) => tag === own || links.some(({ hreflang }) => hreflang === tag));
for (const link of links) link.classList.toggle('wanted', link.hreflang === wanted);
