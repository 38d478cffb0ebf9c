-- Plays `vim.lsp.config` and `vim.lsp.enable` of Neovim 0.11 on an older one, by what its help says of them: the client
-- is started when a buffer gets one of the filetypes, at the nearest folder above that holds a marker, and is told the
-- settings as soon as it runs.
if vim.lsp.enable == nil then
  vim.g.do_filetype_lua = 1
  local configured, started = {}, {}
  vim.lsp.config = function(name, config)
    configured[name] = config
  end
  vim.lsp.enable = function(name)
    local config = configured[name]
    vim.api.nvim_create_autocmd("FileType", {
      pattern = config.filetypes,
      callback = function(event)
        local marker = vim.fn.finddir(config.root_markers[1], vim.fn.expand("%:p:h") .. ";")
        local root = vim.fn.fnamemodify(marker, ":p:h:h")
        started[name] = started[name]
          or vim.lsp.start_client({
            name = name,
            cmd = config.cmd,
            root_dir = root,
            settings = config.settings,
            on_init = function(client)
              client.notify("workspace/didChangeConfiguration", { settings = config.settings })
            end,
          })
        vim.lsp.buf_attach_client(event.buf, started[name])
      end,
    })
  end
end
