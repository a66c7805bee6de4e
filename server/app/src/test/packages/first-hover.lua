-- Waits for the server as a user would, asks for a hover over a high-pass, and leaves what the window says in $FOUND.
local function clients()
  return vim.tbl_count(vim.lsp.buf_get_clients(0))
end
local function shown()
  for _, window in ipairs(vim.api.nvim_list_wins()) do
    if vim.api.nvim_win_get_config(window).relative ~= '' then
      return vim.api.nvim_buf_get_lines(vim.api.nvim_win_get_buf(window), 0, -1, false)
    end
  end
end
vim.wait(60000, function() return clients() > 0 end, 20)
vim.fn.search('^  high-pass', 'e')
vim.lsp.buf.hover()
vim.wait(60000, shown, 20)
vim.fn.writefile(shown() or {}, vim.env.FOUND)
vim.cmd('qall!')
