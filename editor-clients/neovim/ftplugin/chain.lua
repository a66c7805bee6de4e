vim.bo.commentstring = '# %s'
vim.bo.comments = ':#'
vim.bo.expandtab = true
vim.bo.shiftwidth = 2
vim.bo.softtabstop = 2
-- Names are kebab-case, so `*`, `w` and completion take `high-pass` as one word.
vim.opt_local.iskeyword:append('-')
vim.b.undo_ftplugin = 'setlocal commentstring< comments< expandtab< shiftwidth< softtabstop< iskeyword<'

vim.api.nvim_buf_create_user_command(0, 'ChainPlots', require('chainwright').plots, {})
require('chainwright').attach(0)
