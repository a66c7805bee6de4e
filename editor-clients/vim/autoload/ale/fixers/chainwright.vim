" Lays a chain out as the formatter does; ALE has no formatting by language servers.
function! ale#fixers#chainwright#Fix(buffer) abort
  return {'command': ale#Escape(ale#Var(a:buffer, 'chain_chainwright_executable')) . ' tidy -'}
endfunction
