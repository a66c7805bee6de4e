import { languageServerExtensions, LSPClient } from '@codemirror/lsp-client';
import { EditorView } from '@codemirror/view';
import DOMPurify from 'dompurify';

/**
 * Opens a connection to the bridge, as `LSPClient.connect` wants it. It is rejected where none can be had.
 * `onClose` is called when an open one ends.
 */
export function connect(url, onClose = () => {}) {
  const handlers = new Set();
  const socket = new WebSocket(url);
  return new Promise((opened, failed) => {
    socket.addEventListener('message', ({ data }) => handlers.forEach(handler => handler(data)));
    socket.addEventListener('error', () => failed(new Error(`no connection to ${new URL(url).host}: is the bridge running, and does it allow this page's origin?`)));
    socket.addEventListener('open', () => {
      socket.addEventListener('close', onClose);
      opened({
        send: message => socket.send(message),
        subscribe: handler => handlers.add(handler),
        unsubscribe: handler => handlers.delete(handler),
      });
    });
  });
}

// The client says that it asks for diagnostics, but only takes what it is sent; a server that believes it sends none.
// Capabilities can be added only, so this one is replaced by one that leaves no trace in the message.
const pushedDiagnostics = { clientCapabilities: { textDocument: { diagnostic: { toJSON: () => undefined } } } };

const looks = EditorView.baseTheme({
  '.cm-tooltip.cm-tooltip-hover': { maxWidth: '40em' },
  '.cm-tooltip .cm-lsp-documentation': { maxHeight: '24em', overflow: 'auto', padding: '4px 8px' },
  '.cm-lsp-documentation img': { maxWidth: '100%', height: 'auto' },
});

/**
 * A client for Chainwright's language server; `client.plugin(uri)` is the extension for one document.
 * Findings, hovers with the curve drawn, completion, signatures, renaming and formatting come with it.
 *
 * @param rootUri the folder of the chains, as a `file:` URI; null for none
 * @param plotTheme `light` or `dark`: the ground that curves are drawn on
 */
export function chainClient({ rootUri = null, plotTheme = 'light' } = {}) {
  return new LSPClient({
    rootUri,
    initializationOptions: { plots: 'svg', plotTheme },
    // What the server says holds words out of the text; only what is harmless gets into the page.
    sanitizeHTML: html => DOMPurify.sanitize(html),
    extensions: [...languageServerExtensions(), pushedDiagnostics, looks],
  });
}
