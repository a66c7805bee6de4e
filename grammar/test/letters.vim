" Writes FOLDER/N.letters for FOLDER/N.chain: a letter a character, by the highlighting that a person would see.
set nocompatible encoding=utf-8 fileencodings=utf-8 nobomb nomodeline synmaxcol=0
execute 'set runtimepath^=' . fnameescape($PLUGIN)
syntax on
let s:letters = {'Statement': 'S', 'Identifier': 's', 'Function': 'N', 'Number': 'n', 'String': 't', 'SpecialComment': 'o', 'Comment': 'c', 'Delimiter': 'p', 'Operator': 'p'}
let s:letter_of = {}

function! s:letter(id) abort
  if !has_key(s:letter_of, a:id)
    let l:name = a:id ? synIDattr(a:id, 'name') : 'Normal'
    " The group that is linked to, and none further: colour schemes may draw several in one way. Units look like numbers.
    let l:link = matchstr(execute('highlight ' . l:name), 'links to \zs\w\+')
    let s:letter_of[a:id] = l:name ==# 'chainUnit' || l:link ==# 'chainUnit' ? 'u' : get(s:letters, l:link, '.')
  endif
  return s:letter_of[a:id]
endfunction

for s:file in range($FILES)
  execute 'edit' fnameescape($FOLDER . '/' . s:file . '.chain')
  let s:out = []
  for s:line in range(1, line('$'))
    let s:column = 1
    let s:row = ''
    " Each by itself, also one that is written upon the one before it.
    for s:character in str2list(getline(s:line), 1)
      let s:row .= s:letter(synID(s:line, s:column, 1))
      let s:column += strlen(nr2char(s:character, 1))
    endfor
    call add(s:out, s:row)
  endfor
  call writefile(s:out, $FOLDER . '/' . s:file . '.letters', 'b')
endfor
