#!/bin/sh
# Writes a short session with the server as an editor would send it. ASCII only: lengths are counted in characters.
say() {
  printf 'Content-Length: %d\r\n\r\n%s' "${#1}" "$1"
}
say '{"jsonrpc":"2.0","id":1,"method":"initialize","params":{"processId":null,"rootUri":null,"capabilities":{"textDocument":{"publishDiagnostics":{"relatedInformation":true},"documentSymbol":{"hierarchicalDocumentSymbolSupport":true},"hover":{"contentFormat":["markdown"]},"codeAction":{"codeActionLiteralSupport":{"codeActionKind":{"valueSet":[]}}},"semanticTokens":{"requests":{},"tokenTypes":[],"tokenModifiers":[],"formats":[]}}}}}'
say '{"jsonrpc":"2.0","method":"initialized","params":{}}'
say '{"jsonrpc":"2.0","method":"textDocument/didOpen","params":{"textDocument":{"uri":"file:///r/a.chain","languageId":"chain","version":1,"text":"# Ferry night\nchain lead \"Lead\" {\n  source  lead-vocal\n  high-pass  66 Hz 18 dB/oct\n  > Only traffic\n  bell  3,1 kHz  -2.5 dB  Q 2.2\n  compressor  threshold -21 dBFS  ratio 3:1  attack 12 ms  release 90 ms\n  to mix\n}\n\nbus mix \"Mix\" { loudness -16 LUFS }\n"}}}'
say '{"jsonrpc":"2.0","method":"textDocument/didChange","params":{"textDocument":{"uri":"file:///r/a.chain","version":2},"contentChanges":[{"range":{"start":{"line":3,"character":13},"end":{"line":3,"character":15}},"text":"80"}]}}'
# Every request that an editor may send soon after; each reads from the same parameters what it needs. One that is not
# offered is refused and costs nothing.
about='"textDocument":{"uri":"file:///r/a.chain"},"position":{"line":3,"character":4},"positions":[{"line":3,"character":4}],"range":{"start":{"line":0,"character":0},"end":{"line":9,"character":0}},"context":{"diagnostics":[],"triggerKind":1,"includeDeclaration":true},"options":{"tabSize":2,"insertSpaces":true}'
id=2
for method in documentSymbol foldingRange selectionRange semanticTokens/full codeAction formatting hover completion \
  signatureHelp definition references documentHighlight inlayHint codeLens documentLink prepareRename; do
  say '{"jsonrpc":"2.0","id":'$id',"method":"textDocument/'$method'","params":{'"$about"'}}'
  id=$((id + 1))
done
# The findings come unasked: time for them before the end.
sleep 1
say '{"jsonrpc":"2.0","id":99,"method":"shutdown"}'
say '{"jsonrpc":"2.0","method":"exit"}'
