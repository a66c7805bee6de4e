#!/bin/sh
# Plays a session with the server as an editor would: what the server loads meanwhile goes into the archive. Writes to the
# server, reads what it answers.
# usage: rehearsal.sh FILE...    the chain files to open; the last one is edited, and asked about on every line
LC_ALL=C # Lengths are counted in bytes.
say() {
  printf 'Content-Length: %d\r\n\r\n%s' "${#1}" "$1"
}
# The text of a file as a string of JSON.
quoted() {
  printf '"'
  sed -e 's/\\/\\\\/g' -e 's/"/\\"/g' -e 's/\t/\\t/g' "$1" | awk '{ printf "%s\\n", $0 }'
  printf '"'
}
# Reads until a line has this in it, or without a word until all that was asked is answered, so that nothing is dropped at the
# end. A line ends where the next message begins, so something is asked until it does.
answered=0
await() {
  while sleep 0.1; do
    say '{"jsonrpc":"2.0","id":"ping","method":"textDocument/foldingRange","params":{"textDocument":{'$document'}}}'
  done &
  while IFS= read -r line; do
    case $line in *'"id":'[0-9]*) answered=$((answered + 1)) ;; esac
    if [ "$#" = 0 ]; then
      [ "$answered" -lt "$id" ] || break
    else
      case $line in *"$1"*) break ;; esac
    fi
  done
  kill $!
}
id=0
ask() {
  id=$((id + 1))
  say '{"jsonrpc":"2.0","id":'$id',"method":"'"$1"'","params":{'"$2"'}}'
}
tell() {
  say '{"jsonrpc":"2.0","method":"'"$1"'","params":{'"$2"'}}'
}
ask initialize '"processId":null,"rootUri":null,"capabilities":{"textDocument":{"publishDiagnostics":{"relatedInformation":true},"documentSymbol":{"hierarchicalDocumentSymbolSupport":true},"hover":{"contentFormat":["markdown"]},"codeAction":{"codeActionLiteralSupport":{"codeActionKind":{"valueSet":[]}}},"semanticTokens":{"requests":{},"tokenTypes":[],"tokenModifiers":[],"formats":[]}}}'
tell initialized ''
opened=0
for file; do
  opened=$((opened + 1))
  document='"uri":"file:///rehearsed/'$opened'.chain"'
  tell textDocument/didOpen '"textDocument":{'$document',"languageId":"chain","version":1,"text":'"$(quoted "$file")"'}'
done
tell textDocument/didChange '"textDocument":{'"$document"',"version":2},"contentChanges":[{"range":{"start":{"line":0,"character":0},"end":{"line":0,"character":0}},"text":"\n"}]'
await '"version":2'
# Every request that an editor may send soon after; each reads from the same parameters what it needs. One that is not
# offered is refused and costs nothing.
number=0
while IFS= read -r text; do
  number=$((number + 1))
  case $text in '' | '#'*) continue ;; esac
  about='"textDocument":{'$document'},"position":{"line":'$number',"character":4},"positions":[{"line":'$number',"character":4}],"range":{"start":{"line":0,"character":0},"end":{"line":'$number',"character":0}},"context":{"diagnostics":[],"triggerKind":1,"includeDeclaration":true},"options":{"tabSize":2,"insertSpaces":true}'
  for method in hover completion signatureHelp definition references documentHighlight prepareRename selectionRange; do
    ask textDocument/$method "$about"
  done
  ask workspace/executeCommand '"command":"chainwright.plot","arguments":[{'"$about"'}]'
done < "$file"
for method in documentSymbol foldingRange semanticTokens/full codeAction formatting inlayHint codeLens documentLink; do
  ask textDocument/$method "$about"
done
await
ask shutdown ''
tell exit ''
cat >/dev/null
