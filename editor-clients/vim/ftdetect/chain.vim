autocmd BufRead,BufNewFile *.chain setfiletype chain
