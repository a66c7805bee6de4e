// The smallest page with an editor for chains. The address of the bridge stands behind the # of the page's own.
import { closeBrackets, closeBracketsKeymap } from '@codemirror/autocomplete';
import { defaultKeymap, history, historyKeymap } from '@codemirror/commands';
import { bracketMatching, defaultHighlightStyle, foldGutter, foldKeymap, indentOnInput, syntaxHighlighting } from '@codemirror/language';
import { lintGutter } from '@codemirror/lint';
import { EditorState } from '@codemirror/state';
import { drawSelection, EditorView, highlightActiveLine, keymap, lineNumbers } from '@codemirror/view';
import { chain } from '../src/chain.js';
import { chainClient, connect } from '../src/server.js';

const client = chainClient();
if (location.hash.length > 1) {
  connect(location.hash.slice(1)).then(
    transport => client.connect(transport),
    trouble => console.error(trouble.message),
  );
}

/** Shows a chain, in place of the one that was shown before. */
window.openChain = (uri, text) => {
  window.view?.destroy();
  window.view = new EditorView({
    parent: document.body,
    state: EditorState.create({
      doc: text,
      extensions: [
        chain(),
        client.plugin(uri, 'chain'),
        syntaxHighlighting(defaultHighlightStyle),
        lineNumbers(),
        lintGutter(),
        foldGutter(),
        history(),
        drawSelection(),
        highlightActiveLine(),
        bracketMatching(),
        closeBrackets(),
        indentOnInput(),
        keymap.of([...closeBracketsKeymap, ...defaultKeymap, ...historyKeymap, ...foldKeymap]),
      ],
    }),
  });
};

window.openChain('untitled:first.chain', '# A voice.\nchain lead {\n  source     lead-vocal\n  high-pass  66 Hz  18 dB/oct\n}\n');
