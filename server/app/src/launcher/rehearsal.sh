#!/bin/sh
# Writes a short session with the server as an editor would send it. ASCII only: lengths are counted in characters.
say() {
  printf 'Content-Length: %d\r\n\r\n%s' "${#1}" "$1"
}
say '{"jsonrpc":"2.0","id":1,"method":"initialize","params":{"processId":null,"rootUri":null,"capabilities":{"textDocument":{"publishDiagnostics":{"relatedInformation":true},"documentSymbol":{"hierarchicalDocumentSymbolSupport":true}}}}}'
say '{"jsonrpc":"2.0","method":"initialized","params":{}}'
say '{"jsonrpc":"2.0","method":"textDocument/didOpen","params":{"textDocument":{"uri":"file:///r/a.chain","languageId":"chain","version":1,"text":"# Ferry night\nchain lead \"Lead\" {\n  source  lead-vocal\n  high-pass  66 Hz 18 dB/oct\n  > Only traffic\n  bell  3,1 kHz  -2.5 dB  Q 2.2\n  compressor  threshold -21 dBFS  ratio 3:1  attack 12 ms  release 90 ms\n  to mix\n}\n\nbus mix \"Mix\" { loudness -16 LUFS }\n"}}}'
say '{"jsonrpc":"2.0","method":"textDocument/didChange","params":{"textDocument":{"uri":"file:///r/a.chain","version":2},"contentChanges":[{"range":{"start":{"line":3,"character":13},"end":{"line":3,"character":15}},"text":"80"}]}}'
id=2
for method in documentSymbol foldingRange; do
  say '{"jsonrpc":"2.0","id":'$id',"method":"textDocument/'$method'","params":{"textDocument":{"uri":"file:///r/a.chain"}}}'
  id=$((id + 1))
done
# The findings come unasked: time for them before the end.
sleep 1
say '{"jsonrpc":"2.0","id":99,"method":"shutdown"}'
say '{"jsonrpc":"2.0","method":"exit"}'
