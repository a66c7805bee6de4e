-- Drives a real Neovim through the plug-in in ../neovim and checks what it shows.
-- Run by ./neovim.sh. This script is the hand at the keyboard: the editor under test is a second Neovim, spoken to by RPC.

local here = vim.fn.fnamemodify(debug.getinfo(1, 'S').source:sub(2), ':p:h')
local launcher = vim.env.CHAINWRIGHT
local cases = vim.fn.json_decode(table.concat(vim.fn.readfile(vim.env.CASES or here .. '/cases.json'), '\n'))
local patience_ms = tonumber(vim.env.PATIENCE_MS or '') or 20000

-- Writes the fixture folder and returns it with each file's markers: name → { line from 0, column from 0 in bytes }.
local function lay_out()
  local folder = vim.fn.tempname()
  vim.fn.mkdir(folder, 'p')
  local marks = {}
  for name, text in pairs(cases.files) do
    marks[name] = {}
    local lines = vim.split(text, '\n', { plain = true })
    for index, line in ipairs(lines) do
      local from, to, label = line:find('<|([%w-]+)|>')
      while from do
        marks[name][label] = { index - 1, from - 1 }
        line = line:sub(1, from - 1) .. line:sub(to + 1)
        from, to, label = line:find('<|([%w-]+)|>')
      end
      lines[index] = line
    end
    vim.fn.writefile(lines, folder .. '/' .. name, 'b')
  end
  return folder, marks
end

local folder, marks = lay_out()
-- The set-up that the plug-in's README gives, and nothing else.
local init = folder .. '/init.vim'
vim.fn.writefile({
  'set rtp+=' .. vim.fn.fnameescape(vim.fn.fnamemodify(here, ':h') .. '/neovim'),
  'filetype plugin on',
  'syntax on',
  'lua vim.g.chainwright = { cmd = { [[' .. launcher .. ']], "lsp" } }',
  'set hidden',
}, init)
local editor = vim.fn.jobstart({ vim.v.progpath, '--embed', '--headless', '-u', init, '-i', 'NONE', '-n' }, { rpc = true })

local function lua(code, ...)
  return vim.rpcrequest(editor, 'nvim_exec_lua', code, { ... })
end

local function keys(typed)
  vim.rpcrequest(editor, 'nvim_input', typed)
end

-- The value of `probe` once it is neither nil nor false; its last value when patience runs out.
local function await(probe)
  local value
  vim.wait(patience_ms, function()
    value = probe()
    return value
  end, 50)
  return value
end

local function open(name, mark)
  lua('vim.cmd("edit! " .. ...)', folder .. '/' .. name)
  await(function()
    return lua('for _, c in ipairs(vim.tbl_values(vim.lsp.buf_get_clients(0))) do if c.initialized then return true end end return false')
  end)
  if mark then
    local at = marks[name][mark]
    lua('vim.api.nvim_win_set_cursor(0, { ... })', at[1] + 1, at[2])
  end
end

local function text_of(name)
  return lua(
    [[local buffer = vim.fn.bufnr(...)
    return buffer >= 0 and table.concat(vim.api.nvim_buf_get_lines(buffer, 0, -1, true), '\n') .. '\n' or '']],
    folder .. '/' .. name
  )
end

local function line_of(name, index)
  return vim.split(text_of(name), '\n', { plain = true })[index + 1]
end

local function diagnostics_of(name)
  return lua(
    [[local found = {}
    for _, d in ipairs(vim.diagnostic.get(vim.fn.bufnr(...))) do
      local code = d.code or (d.user_data and d.user_data.lsp and d.user_data.lsp.code)
      table.insert(found, { from = { d.lnum, d.col }, to = { d.end_lnum, d.end_col }, code = code, message = d.message })
    end
    return found]],
    folder .. '/' .. name
  )
end

local function show(value)
  return vim.inspect(value, { newline = ' ', indent = '' })
end

local function contains_all(text, wanted)
  for _, part in ipairs(wanted) do
    if not text:find(part, 1, true) then
      return false, ('no %s in %s'):format(show(part), show(text))
    end
  end
  return true
end

local passed, failed = 0, 0

local function say(line)
  io.stdout:write(line, '\n')
end

local function check(name, holds, otherwise)
  if holds then
    passed = passed + 1
    say('ok      ' .. name)
  else
    failed = failed + 1
    say('FAILED  ' .. name .. ': ' .. tostring(otherwise))
  end
end

local checks = {}

function checks.hover()
  local case = cases.hover
  open(case.file, case.at)
  lua('vim.lsp.buf.hover()')
  local lines = await(function()
    return lua([[for _, window in ipairs(vim.api.nvim_list_wins()) do
      if vim.api.nvim_win_get_config(window).relative ~= '' then
        return vim.api.nvim_buf_get_lines(vim.api.nvim_win_get_buf(window), 0, -1, true)
      end
    end
    return false]])
  end)
  lines = lines or {}
  local text = table.concat(lines, '\n')
  check('hover: the answer stands first', contains_all(lines[1] or '', case.first))
  check('hover: says what it should', contains_all(text, case.shows))
  check('hover: draws a plot in text', contains_all(text, case['text-plot']))
  check('hover: no raw image data', #text > 0 and not text:find('base64', 1, true), text:sub(1, 200))
end

function checks.plots()
  local case = cases.hover
  open(case.file, case.at)
  local function beside()
    return lua([[for _, window in ipairs(vim.api.nvim_list_wins()) do
      local buffer = vim.api.nvim_win_get_buf(window)
      if vim.bo[buffer].buftype == 'nofile' and vim.api.nvim_win_get_config(window).relative == '' then
        return table.concat(vim.api.nvim_buf_get_lines(buffer, 0, -1, true), '\n')
      end
    end
    return false]])
  end
  vim.rpcrequest(editor, 'nvim_command', 'ChainPlots')
  local text = await(function()
    local now = beside()
    return now and contains_all(now, case['text-plot']) == true and now
  end) or ''
  check('plots: the window beside draws the stage', contains_all(text, case['text-plot']))
  check('plots: the cursor stays in the text', lua('return vim.bo.filetype') == 'chain')
  lua('vim.api.nvim_win_set_cursor(0, { 1, 0 }) vim.cmd("doautocmd CursorMoved")')
  local moved = await(function()
    local now = beside()
    return now and now ~= text and #now > 0 and now
  end)
  check('plots: follows the cursor', moved and true or false, moved)
  lua([[for _, window in ipairs(vim.api.nvim_list_wins()) do
    if vim.bo[vim.api.nvim_win_get_buf(window)].buftype == 'nofile' then vim.api.nvim_win_close(window, true) end
  end vim.cmd('doautocmd CursorMoved')]])
  check('plots: its window can be closed', beside() == false)
end

function checks.diagnostics()
  local case = cases.diagnostics
  open(case.file)
  local found = await(function()
    local now = diagnostics_of(case.file)
    return #now >= #case.all and now
  end) or diagnostics_of(case.file)
  check('diagnostics: each once and no others', #found == #case.all, show(found))
  for _, wanted in ipairs(case.all) do
    local match
    for _, diagnostic in ipairs(found) do
      if diagnostic.code == wanted.code then
        match = diagnostic
      end
    end
    local name = 'diagnostics: ' .. wanted.code
    check(name .. ' is shown', match, show(found))
    if match then
      local span = { marks[case.file][wanted.from], marks[case.file][wanted.to] }
      check(name .. ' underlines its words', vim.deep_equal({ match.from, match.to }, span), show({ match.from, match.to }) .. ' for ' .. show(span))
      check(name .. ' says why', contains_all(match.message, wanted.shows))
    end
  end
  -- The server publishes for a clean file too; only then is the silence about it an answer and not a delay.
  open(case['clean-file'])
  local published = await(function()
    return lua('return published[...] or false', folder .. '/' .. case['clean-file'])
  end)
  local clean = diagnostics_of(case['clean-file'])
  check('diagnostics: none in a clean file', published and #clean == 0, published and show(clean) or 'nothing was published')
end

local function check_completion(case)
  open(case.file, case.at)
  local at = marks[case.file][case.at]
  -- A cursor cannot stand behind the last character before a line is written to.
  keys((at[2] == #line_of(case.file, at[1]) and 'A' or 'i') .. '<C-x><C-o>')
  local words = await(function()
    return lua([[local info = vim.fn.complete_info({ 'items', 'pum_visible' })
    -- A single word is written at once, without a menu.
    if info.pum_visible == 0 and #info.items ~= 1 then return false end
    return vim.tbl_map(function(item) return item.abbr ~= '' and item.abbr or item.word end, info.items)]])
  end) or {}
  for _, word in ipairs(case.offers) do
    check('completion of ' .. case.name .. ': offers ' .. word, vim.tbl_contains(words, word), show(words))
  end
  for _, word in ipairs(case.withholds) do
    check('completion of ' .. case.name .. ': withholds ' .. word, #words > 0 and not vim.tbl_contains(words, word), show(words))
  end
  local index = 0
  for position, word in ipairs(words) do
    if word == case.accept then
      index = position
    end
  end
  -- The menu opens with its first entry chosen.
  keys(#words > 1 and ('<C-n>'):rep(index - 1) .. '<C-y><Esc>' or '<Esc>')
  await(function()
    return lua('return vim.api.nvim_get_mode().mode') == 'n'
  end)
  local line = line_of(case.file, at[1])
  check('completion of ' .. case.name .. ': accepting writes the word', line == case['line-after'], show(line))
end

function checks.completion()
  for _, case in ipairs(cases.completion) do
    check_completion(case)
  end
end

function checks.fix()
  local case = cases.fix
  open(case.file, case.at)
  local function has_fault()
    for _, diagnostic in ipairs(diagnostics_of(case.file)) do
      if diagnostic.code == case.gone then
        return true
      end
    end
    return false
  end
  check('fix: the fault is shown first', await(has_fault), show(diagnostics_of(case.file)))
  lua(
    [[local title = ...
    shown_actions = nil
    vim.ui.select = function(items, options, on_choice)
      shown_actions = {}
      local chosen
      for _, item in ipairs(items) do
        local label = options.format_item and options.format_item(item) or tostring(item)
        table.insert(shown_actions, label)
        if not chosen and label:find(title, 1, true) then chosen = item end
      end
      on_choice(chosen)
    end
    vim.lsp.buf.code_action()]],
    case.title
  )
  local shown = await(function()
    return lua('return shown_actions or false')
  end)
  local offered = false
  for _, label in ipairs(shown or {}) do
    offered = offered or label:find(case.title, 1, true) ~= nil
  end
  check('fix: is offered', offered, show(shown))
  local at = marks[case.file][case.at]
  await(function()
    return line_of(case.file, at[1]) == case['line-after']
  end)
  check('fix: mends the line', line_of(case.file, at[1]) == case['line-after'], show(line_of(case.file, at[1])))
  local function gone()
    return not has_fault()
  end
  local mended = line_of(case.file, at[1]) == case['line-after']
  check('fix: its diagnostic goes', mended and await(gone), show(diagnostics_of(case.file)))
end

function checks.format()
  local case = cases.format
  open(case.file)
  lua([[if vim.lsp.buf.format then vim.lsp.buf.format({ timeout_ms = ... }) else vim.lsp.buf.formatting_sync(nil, ...) end]], patience_ms)
  local text = text_of(case.file)
  check('format: lays the text out', text == case['text-after'], show(text))
  lua([[if vim.lsp.buf.format then vim.lsp.buf.format({ timeout_ms = ... }) else vim.lsp.buf.formatting_sync(nil, ...) end]], patience_ms)
  check('format: a second time changes nothing', text == case['text-after'] and text_of(case.file) == text, show(text_of(case.file)))
end

local function check_rename(section)
  local case = cases[section]
  open(case.file, case.at)
  lua('vim.lsp.buf.rename(...)', case.to)
  for name, lines in pairs(case['lines-after']) do
    local function renamed()
      for _, wanted in ipairs(type(lines) == 'table' and lines or { lines }) do
        if not vim.tbl_contains(vim.split(text_of(name), '\n', { plain = true }), wanted) then
          return false
        end
      end
      return true
    end
    check(section .. ': reaches ' .. name, await(renamed), show(text_of(name)))
  end
end

function checks.rename()
  check_rename('rename')
end

checks['rename-label'] = function()
  check_rename('rename-label')
end

function checks.signature()
  local case = cases.signature
  open(case.file, case.at)
  lua('vim.lsp.buf.signature_help()')
  local text = await(function()
    return lua([[for _, window in ipairs(vim.api.nvim_list_wins()) do
      if vim.api.nvim_win_get_config(window).relative ~= '' then
        return table.concat(vim.api.nvim_buf_get_lines(vim.api.nvim_win_get_buf(window), 0, -1, true), '\n')
      end
    end
    return false]])
  end) or ''
  check('signature: shows the settings', contains_all(text, case.shows))
  -- Which words are set off cannot be asked of this version; what is said of the setting tells which it is.
  check('signature: explains the setting at the caret', contains_all(text, case.says))
end

function checks.highlight()
  local case = cases.highlight
  open(case.file, case.at)
  local wanted = {}
  for _, one in ipairs(case.all) do
    table.insert(wanted, { marks[case.file][one.from], marks[case.file][one.to] })
  end
  lua('vim.lsp.buf.document_highlight()')
  local function highlighted()
    return lua([[local found = {}
      local space = vim.api.nvim_get_namespaces()['vim_lsp_references']
      for _, mark in ipairs(space and vim.api.nvim_buf_get_extmarks(0, space, 0, -1, { details = true }) or {}) do
        table.insert(found, { { mark[2], mark[3] }, { mark[4].end_row, mark[4].end_col } })
      end
      return found]])
  end
  local all = await(function()
    return vim.deep_equal(highlighted(), wanted)
  end)
  check('highlight: each mention of the name', all, show(highlighted()) .. ' for ' .. show(wanted))
end

local function run()
  lua([[published = {}
    local handler = vim.lsp.handlers['textDocument/publishDiagnostics']
    vim.lsp.handlers['textDocument/publishDiagnostics'] = function(trouble, result, ...)
      published[vim.uri_to_fname(result.uri)] = true
      return handler(trouble, result, ...)
    end
    -- From 0.10 Neovim asks for findings in place of being told.
    local answered = vim.lsp.handlers['textDocument/diagnostic']
    if answered then
      vim.lsp.handlers['textDocument/diagnostic'] = function(trouble, result, context, ...)
        published[vim.uri_to_fname(context.params.textDocument.uri)] = true
        return answered(trouble, result, context, ...)
      end
    end]])
  open(cases.diagnostics['clean-file'])
  check('set-up: the file type is chain', lua('return vim.bo.filetype') == 'chain', lua('return vim.bo.filetype'))
  check('set-up: the comment string is #', lua('return vim.bo.commentstring') == '# %s', lua('return vim.bo.commentstring'))
  for _, name in ipairs({ 'hover', 'plots', 'diagnostics', 'completion', 'signature', 'highlight', 'fix', 'format', 'rename', 'rename-label' }) do
    if not cases[name == 'plots' and 'hover' or name] then
      say('--      ' .. name .. ': not in the cases')
    else
      local fine, trouble = pcall(checks[name])
      if not fine then
        check(name .. ': runs to its end', false, trouble)
      end
    end
  end
  local servers = lua('return #vim.lsp.get_active_clients()')
  check('set-up: one server for the folder', servers == 1, servers .. ' servers')
end

local fine, trouble = pcall(run)
if not fine then
  check('the run reaches its end', false, trouble)
end
-- The editor shuts its servers down on leaving; one that will not go is stopped.
pcall(vim.rpcnotify, editor, 'nvim_command', 'qall!')
if vim.fn.jobwait({ editor }, 5000)[1] == -1 then
  vim.fn.jobstop(editor)
end
vim.fn.delete(folder, 'rf')
say(('%d passed, %d failed'):format(passed, failed))
vim.cmd(failed == 0 and passed > 0 and 'qall!' or 'cquit 1')
