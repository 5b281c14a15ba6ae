/** The links to the page's other languages take the journey along. */
for (const link of document.querySelectorAll<HTMLAnchorElement>('.languages a'))
  for (const kind of ['click', 'auxclick'])
    // Only when it is used: the journey may change while the page is open.
    link.addEventListener(kind, () => {
      link.hash = location.hash;
    });
