" Lexical colours only: comments, strings, quantities and the word that opens a line.
" What a word means is the language server's business.
if exists('b:current_syntax')
  finish
endif

syntax match chainOpening /^\s*\zs[a-z][a-z-]*/
syntax match chainQuantity /\v<[-+]?\d[0-9.:]*%(\s?%(k?Hz|dB%(FS|TP|u)?%(\/oct)?|ms|s|LUFS|LU|\%)>)?/
syntax region chainString start=/"/ skip=/\\"/ end=/"/ oneline
syntax match chainComment /#.*$/

highlight default link chainOpening Statement
highlight default link chainQuantity Number
highlight default link chainString String
highlight default link chainComment Comment

let b:current_syntax = 'chain'
