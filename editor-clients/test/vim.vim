" Drives ALE in a real Vim and checks what it shows. Run by ./vim.sh.
set nocompatible encoding=utf-8 hidden nomore shortmess=aoOtTIF cmdheight=10 columns=200 lines=50
let s:here = expand('<sfile>:p:h')
let s:cases = json_decode(join(readfile($CASES !=# '' ? $CASES : s:here . '/cases.json'), "\n"))
let s:patience = str2nr($PATIENCE_MS !=# '' ? $PATIENCE_MS : '20000')

" The set-up that the README of ../vim gives.
execute 'set runtimepath^=' . fnameescape(fnamemodify(s:here, ':h') . '/vim')
packadd! ale
let g:ale_chain_chainwright_executable = $CHAINWRIGHT
let g:ale_completion_enabled = 0
filetype plugin on
syntax on
set omnifunc=ale#completion#OmniFunc

let s:folder = tempname()
call mkdir(s:folder, 'p')
" Line and column from 1, in bytes, by file and mark.
let s:marks = {}
for [s:name, s:text] in items(s:cases.files)
  let s:marks[s:name] = {}
  let s:lines = split(s:text, "\n", 1)
  for s:index in range(len(s:lines))
    let s:found = matchstrpos(s:lines[s:index], '<|[a-z-]\+|>')
    while s:found[1] >= 0
      let s:marks[s:name][s:found[0][2:-3]] = [s:index + 1, s:found[1] + 1]
      let s:lines[s:index] = strpart(s:lines[s:index], 0, s:found[1]) . strpart(s:lines[s:index], s:found[2])
      let s:found = matchstrpos(s:lines[s:index], '<|[a-z-]\+|>')
    endwhile
  endfor
  call writefile(s:lines, s:folder . '/' . s:name, 'b')
endfor

let s:passed = 0
let s:failed = 0
let s:said = []

function! s:check(name, holds, seen) abort
  if a:holds
    let s:passed += 1
    call add(s:said, 'ok      ' . a:name)
  else
    let s:failed += 1
    call add(s:said, 'FAILED  ' . a:name . ': ' . string(a:seen))
  endif
endfunction

" Whether `probe` held before patience ran out.
function! s:await(probe) abort
  for l:turn in range(s:patience / 50)
    if a:probe()
      return 1
    endif
    sleep 50m
  endfor
  return 0
endfunction

function! s:open(name, mark) abort
  silent execute 'edit!' fnameescape(s:folder . '/' . a:name)
  if a:mark !=# ''
    call cursor(s:marks[a:name][a:mark])
  endif
endfunction

function! s:contains_all(text, parts) abort
  return empty(filter(copy(a:parts), 'stridx(a:text, v:val) < 0'))
endfunction

function! s:findings() abort
  return ale#engine#GetLoclist(bufnr(''))
endfunction

function! s:check_diagnostics() abort
  let l:case = s:cases.diagnostics
  call s:open(l:case.file, '')
  call s:await({-> len(s:findings()) >= len(l:case.all)})
  let l:found = s:findings()
  call s:check('diagnostics: each once and no others', len(l:found) == len(l:case.all), l:found)
  for l:wanted in l:case.all
    let l:match = get(filter(copy(l:found), 'get(v:val, "code", "") ==# l:wanted.code'), 0, {})
    call s:check('diagnostics: ' . l:wanted.code . ' is shown', !empty(l:match), l:found)
    let l:at = s:marks[l:case.file][l:wanted.from]
    if getline(l:at[0]) =~# '[^\x00-\x7f]'
      " ALE takes the server's columns, which count UTF-16 units, for bytes.
      call add(s:said, '--      diagnostics: the column of ' . l:wanted.code . ' is not checked')
    else
      call s:check('diagnostics: ' . l:wanted.code . ' stands at its words', [get(l:match, 'lnum'), get(l:match, 'col')] == l:at, l:match)
    endif
    call s:check('diagnostics: ' . l:wanted.code . ' says why',
          \ s:contains_all(get(l:match, 'detail', get(l:match, 'text', '')), l:wanted.shows), l:match)
  endfor
endfunction

function! s:preview() abort
  for l:window in range(1, winnr('$'))
    if getwinvar(l:window, '&previewwindow')
      return join(getbufline(winbufnr(l:window), 1, '$'), "\n")
    endif
  endfor
  return ''
endfunction

function! s:check_hover() abort
  let l:case = s:cases.hover
  let g:ale_hover_to_preview = 1
  call s:open(l:case.file, l:case.at)
  " Nothing is shown before the server has been started for this buffer.
  for l:turn in range(s:patience / 1000)
    ALEHover
    sleep 500m
    if s:preview() !=# ''
      break
    endif
  endfor
  let l:text = s:preview()
  call s:check('hover: the answer stands first', s:contains_all(get(split(l:text, "\n"), 0, ''), l:case.first), l:text)
  call s:check('hover: says what it should', s:contains_all(l:text, l:case.shows), l:text)
  call s:check('hover: draws a plot in text', s:contains_all(l:text, l:case['text-plot']), l:text)
  call s:check('hover: no raw image data', l:text !=# '' && stridx(l:text, 'base64') < 0, l:text)
  pclose
endfunction

function! s:check_fixer() abort
  let l:case = s:cases.format
  call s:open(l:case.file, '')
  ALEFix
  call s:await({-> join(getline(1, '$'), "\n") . "\n" ==# l:case['text-after']})
  call s:check('format: lays the text out', join(getline(1, '$'), "\n") . "\n" ==# l:case['text-after'], getline(1, '$'))
endfunction

function! s:check_file_type() abort
  call s:open(s:cases.diagnostics['clean-file'], '')
  call s:check('set-up: the file type is chain', &filetype ==# 'chain', &filetype)
  call s:check('set-up: the comment string is #', &commentstring ==# '# %s', &commentstring)
  call s:check('set-up: chains are coloured', synIDattr(synIDtrans(synID(1, 1, 1)), 'name') ==# 'Statement', synIDattr(synID(1, 1, 1), 'name'))
endfunction

function! s:run() abort
  for l:part in ['file_type', 'diagnostics', 'hover', 'fixer']
    try
      call call('s:check_' . l:part, [])
    catch
      call s:check(l:part . ': runs to its end', 0, v:exception . ' at ' . v:throwpoint)
    endtry
  endfor
  call writefile(add(s:said, s:passed . ' passed, ' . s:failed . ' failed'), $RESULTS)
  call delete(s:folder, 'rf')
  qall!
endfunction

autocmd VimEnter * ++nested call s:run()
