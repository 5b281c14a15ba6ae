/**
 * The links to the page's other languages: the journey goes along, and the language the
 * browser asks for stands out. Offered, never forced.
 */
const links = [...document.querySelectorAll<HTMLAnchorElement>('.languages a')];
const own = document.documentElement.lang;
const wanted = navigator.languages
  .map((tag) => tag.slice(0, 2).toLowerCase())
  .find((tag) => tag === own || links.some(({ hreflang }) => hreflang === tag));

for (const link of links) {
  // Only when it is used: the journey may change while the page is open.
  const carry = (): void => {
    link.hash = location.hash;
  };
  for (const kind of ['click', 'auxclick', 'contextmenu']) link.addEventListener(kind, carry);
  link.classList.toggle('wanted', link.hreflang === wanted);
}
