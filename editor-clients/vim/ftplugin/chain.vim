if exists('b:did_ftplugin')
  finish
endif
let b:did_ftplugin = 1

setlocal commentstring=#\ %s comments=:# expandtab shiftwidth=2 softtabstop=2
" Names are kebab-case, so `*`, `w` and completion take `high-pass` as one word.
setlocal iskeyword+=-

let b:ale_fixers = ['ale#fixers#chainwright#Fix']
let b:undo_ftplugin = 'setlocal commentstring< comments< expandtab< shiftwidth< softtabstop< iskeyword<'
      \ . '| unlet! b:ale_fixers'
