" The grammar is shared by all editors of this family.
execute 'source' fnameescape(fnamemodify(resolve(expand('<sfile>:p')), ':h:h:h:h') . '/grammar/chain.vim')
