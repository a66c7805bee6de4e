-- Starts the Chainwright language server for `chain` buffers, one server a root folder.
--
-- Settings, all optional, read from `vim.g.chainwright` when a buffer is attached:
--   cmd           the server's command line, a list (default: { 'chainwright', 'lsp' })
--   plots         'text' or 'svg': how a hover draws its curves (default: 'text')
--   root_markers  names that mark a project's root folder (default: { '.git' })
local M = {}

local defaults = {
  cmd = { 'chainwright', 'lsp' },
  plots = 'text',
  root_markers = { '.git' },
}

-- Clients by root folder, for Neovim 0.7, whose `vim.lsp` does not look for a running one itself.
local clients = {}

local function settings()
  return vim.tbl_extend('force', defaults, vim.g.chainwright or {})
end

-- The nearest folder above `path` that holds one of `markers`, else the folder of `path` itself.
local function root_of(path, markers)
  local start = vim.fn.fnamemodify(path, ':p:h')
  local folder = start
  while true do
    for _, marker in ipairs(markers) do
      if vim.loop.fs_stat(folder .. '/' .. marker) then
        return folder
      end
    end
    local parent = vim.fn.fnamemodify(folder, ':h')
    if parent == folder then
      return start
    end
    folder = parent
  end
end

-- Attaches buffer `bufnr` (0: the current one) to its server, started where none runs yet.
function M.attach(bufnr)
  if bufnr == 0 then
    bufnr = vim.api.nvim_get_current_buf()
  end
  local name = vim.api.nvim_buf_get_name(bufnr)
  if name == '' or vim.bo[bufnr].buftype ~= '' then
    return
  end
  local chosen = settings()
  if vim.fn.executable(chosen.cmd[1]) ~= 1 then
    vim.notify_once(
      ('chainwright: `%s` cannot be run; set `vim.g.chainwright = { cmd = { "/path/to/chainwright", "lsp" } }`'):format(chosen.cmd[1]),
      vim.log.levels.WARN
    )
    return
  end
  local root = root_of(name, chosen.root_markers)
  local config = {
    name = 'chainwright',
    cmd = chosen.cmd,
    root_dir = root,
    init_options = { plots = chosen.plots },
    get_language_id = function()
      return 'chain'
    end,
  }
  if vim.lsp.start then
    vim.lsp.start(config, { bufnr = bufnr })
    return
  end
  local id = clients[root]
  if not id or not vim.lsp.get_client_by_id(id) then
    -- A server that ends is forgotten, so that the next buffer starts a new one.
    config.on_exit = function()
      clients[root] = nil
    end
    id = vim.lsp.start_client(config)
    clients[root] = id
  end
  if id then
    vim.lsp.buf_attach_client(bufnr, id)
    vim.api.nvim_buf_set_option(bufnr, 'omnifunc', 'v:lua.vim.lsp.omnifunc')
  end
end

-- The window beside the text that shows the curves at the cursor: its buffer, and what is asked last.
local beside = { asked = 0 }

local function window_beside()
  return beside.buffer and vim.fn.bufwinid(beside.buffer) or -1
end

local function show_at_cursor()
  if window_beside() == -1 or vim.bo.filetype ~= 'chain' then
    return
  end
  beside.asked = beside.asked + 1
  local asked = beside.asked
  local place = vim.lsp.util.make_position_params(0, 'utf-16')
  -- Before the first word nothing is hovered; the line is meant all the same.
  place.position.character = math.max(place.position.character, vim.fn.match(vim.fn.getline('.'), '\\S'))
  vim.lsp.buf_request(0, 'textDocument/hover', place, function(_, answer)
    -- An answer to an older place may come after the cursor has moved on.
    if asked == beside.asked and answer and answer.contents and window_beside() ~= -1 then
      local lines = vim.lsp.util.convert_input_to_markdown_lines(answer.contents)
      vim.api.nvim_buf_set_option(beside.buffer, 'modifiable', true)
      vim.api.nvim_buf_set_lines(beside.buffer, 0, -1, false, lines)
      vim.api.nvim_buf_set_option(beside.buffer, 'modifiable', false)
    end
  end)
end

-- Opens a window beside the text that shows what a hover says and draws, and follows the cursor; `:quit` in it ends that.
function M.plots()
  if window_beside() == -1 then
    local text = vim.api.nvim_get_current_win()
    vim.cmd('rightbelow vertical new')
    beside.buffer = vim.api.nvim_get_current_buf()
    for option, value in pairs({ buftype = 'nofile', bufhidden = 'wipe', swapfile = false, filetype = 'markdown' }) do
      vim.api.nvim_buf_set_option(beside.buffer, option, value)
    end
    vim.api.nvim_win_set_option(0, 'wrap', false)
    vim.api.nvim_set_current_win(text)
    local group = vim.api.nvim_create_augroup('chainwright_plots', { clear = true })
    vim.api.nvim_create_autocmd({ 'CursorMoved', 'TextChanged', 'InsertLeave' }, {
      group = group,
      pattern = '*.chain',
      callback = show_at_cursor,
    })
  end
  show_at_cursor()
end

return M
