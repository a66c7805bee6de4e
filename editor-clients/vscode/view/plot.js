// Draws what the extension sends: the line at the caret and its chain, in words and as pictures.
(() => {
  const main = document.querySelector('main');

  function addSection() {
    const section = document.createElement('section');
    section.append(document.createElement('p'), document.createElement('div'));
    main.append(section);
    return section;
  }

  // The first says what the caret is on. It stays in the page, so that a screen reader speaks its words when they change.
  addSection().firstChild.setAttribute('role', 'status');

  /** Keeps the last picture in view until the next one is decoded, so that nothing flickers. */
  function put(section, { says, plots }) {
    const [words, pictures] = section.children;
    if (words.textContent !== says) {
      words.textContent = says;
    }
    while (pictures.children.length > plots.length) {
      pictures.lastChild.remove();
    }
    plots.forEach((plot, index) => {
      const image = pictures.children[index] ?? pictures.appendChild(document.createElement('img'));
      image.alt = plot.says;
      const source = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(plot.svg)}`;
      if (image.src !== source) {
        image.src = source;
      }
    });
  }

  addEventListener('message', ({ data }) => {
    const parts = data.parts ?? [{ says: data.says, plots: [] }];
    while (main.children.length > parts.length) {
      main.lastChild.remove();
    }
    parts.forEach((part, index) => put(main.children[index] ?? addSection(), part));
  });
  acquireVsCodeApi().postMessage('ready');
})();
