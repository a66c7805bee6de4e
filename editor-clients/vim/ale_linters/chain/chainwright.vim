" Chainwright's language server for ALE.

call ale#Set('chain_chainwright_executable', 'chainwright')

function! ale_linters#chain#chainwright#root(buffer) abort
  let l:git = ale#path#FindNearestDirectory(a:buffer, '.git')
  return empty(l:git) ? expand('#' . a:buffer . ':p:h') : fnamemodify(l:git, ':h:h')
endfunction

call ale#linter#Define('chain', {
      \ 'name': 'chainwright',
      \ 'lsp': 'stdio',
      \ 'executable': {buffer -> ale#Var(buffer, 'chain_chainwright_executable')},
      \ 'command': '%e lsp',
      \ 'project_root': function('ale_linters#chain#chainwright#root'),
      \ 'initialization_options': {'plots': 'text'},
      \ })
