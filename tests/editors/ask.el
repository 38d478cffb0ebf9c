;; Opens the file in $FILE, waits until the server has told of it, asks it a hover, and writes all that as JSON.
(require 'json)
(find-file (getenv "FILE"))
;; A batch run has no command loop, which eglot waits for before it connects.
(run-hooks 'post-command-hook)
(let ((tries 0))
  (while (and (< tries 1200) (null (flymake-diagnostics)))
    (accept-process-output nil 0.1)
    (setq tries (1+ tries))))
(goto-char (point-min))
(search-forward "butt shelf")
(goto-char (+ 1 (match-beginning 0)))
(let* ((hover (jsonrpc-request (eglot-current-server) :textDocument/hover (eglot--TextDocumentPositionParams)
                               :timeout 60))
       (told (list (cons 'hover (plist-get (plist-get hover :contents) :value))
                   (cons 'diagnostics
                         (vconcat
                          (mapcar (lambda (one)
                                    (list (cons 'line (1- (line-number-at-pos (flymake-diagnostic-beg one))))
                                          (cons 'message (flymake-diagnostic-text one))))
                                  (flymake-diagnostics)))))))
  (with-temp-file (getenv "TOLD") (insert (json-encode told))))
