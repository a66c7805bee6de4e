;;; emacs.el --- Drives eglot in a real Emacs and checks what it shows  -*- lexical-binding: t; -*-

;;; Commentary:

;; Run by ./emacs.sh.

;;; Code:

(load (expand-file-name "emacs-driver" (file-name-directory load-file-name)) nil t)
(require 'eglot)
(require 'flymake)
(require 'markdown-mode)

(setq eglot-autoshutdown nil
      eglot-sync-connect 30
      flymake-no-changes-timeout 0.1)

;; `eglot-ensure' waits for a command loop that a batch run has not.
(defun driver-open (name &optional mark)
  "Show the file NAME, managed by the server, with point at MARK."
  (let ((enable-local-variables nil))
    (switch-to-buffer (find-file-noselect (expand-file-name name driver-folder))))
  (unless (eglot-current-server)
    (apply #'eglot--connect (eglot--guess-contact)))
  (unless eglot--managed-mode
    (eglot--maybe-activate-editing-mode))
  (unless flymake-mode (flymake-mode 1))
  (when mark (goto-char (driver-mark name mark))))

(defun driver-diagnostics ()
  "Return the flymake diagnostics of the current buffer as (FROM TO TEXT) lists."
  (mapcar (lambda (diagnostic)
            (list (flymake-diagnostic-beg diagnostic)
                  (flymake-diagnostic-end diagnostic)
                  (flymake-diagnostic-text diagnostic)))
          (flymake-diagnostics)))

(defun driver-diagnostic (code)
  "Return the diagnostic of the current buffer that bears CODE."
  (cl-find-if (lambda (diagnostic) (string-search code (nth 2 diagnostic))) (driver-diagnostics)))

;;; The checks.

(defun driver-hover ()
  "What eldoc shows at a stage: the first line in the echo area, all in its buffer."
  (driver-open (driver-case 'hover 'file) (driver-case 'hover 'at))
  (let* ((echoed nil)
         (eldoc-message-function
          (lambda (form &rest arguments)
            (when form (push (substring-no-properties (apply #'format-message form arguments)) echoed))))
         ;; As after a step of the cursor: eldoc keeps out of the echo area otherwise.
         (this-command nil) (last-command 'forward-char))
    (eldoc-print-current-symbol-info)
    (let ((text (driver-await
                 (lambda ()
                   (when (and (bound-and-true-p eldoc--doc-buffer) (buffer-live-p eldoc--doc-buffer))
                     (with-current-buffer eldoc--doc-buffer
                       (let ((shown (driver-shown (current-buffer))))
                         (and (driver-contains-all shown (driver-case 'hover 'shows)) shown))))))))
      (unless text
        (setq text (and (buffer-live-p eldoc--doc-buffer) (driver-shown eldoc--doc-buffer))))
      (driver-check "hover: the answer stands first in the echo area"
                    (and echoed (driver-contains-all (car (split-string (car echoed) "\n")) (driver-case 'hover 'first)))
                    echoed)
      (driver-check "hover: says what it should" (driver-contains-all text (driver-case 'hover 'shows)) text)
      (driver-check "hover: draws a plot in text" (driver-contains-all text (driver-case 'hover 'text-plot)) text)
      (driver-check "hover: no raw image data" (and text (not (string-search "base64" text))) text)
      (driver-check "hover: Markdown's signs are hidden" (and text (not (string-search "**" text))) text))))

(defun driver-diagnostics-check ()
  "What flymake underlines."
  (driver-open (driver-case 'diagnostics 'file))
  (let* ((name (driver-case 'diagnostics 'file))
         (all (driver-case 'diagnostics 'all)))
    (flymake-start)
    (driver-await (lambda () (>= (length (driver-diagnostics)) (length all))))
    (let ((found (driver-diagnostics)))
      (driver-check "diagnostics: each once and no others" (= (length found) (length all)) found)
      (dolist (wanted all)
        (let* ((code (alist-get 'code wanted))
               (label (format "diagnostics: %s" code))
               (match (driver-diagnostic code))
               (span (list (driver-mark name (alist-get 'from wanted)) (driver-mark name (alist-get 'to wanted)))))
          (driver-check (concat label " is shown") match found)
          (when match
            (driver-check (concat label " underlines its words")
                          (equal span (seq-take match 2))
                          (list match 'for span))
            (driver-check (concat label " says why")
                          (driver-contains-all (nth 2 match) (alist-get 'shows wanted))
                          match))))))
  ;; Flymake says when the server has reported: only then is the silence about a clean file an answer and not a delay.
  (let ((visited (find-buffer-visiting (expand-file-name (driver-case 'diagnostics 'clean-file) driver-folder))))
    (when visited (kill-buffer visited)))
  (driver-open (driver-case 'diagnostics 'clean-file))
  (flymake-start)
  (let ((reported (driver-await (lambda () (and (flymake-running-backends) (null (cl-set-difference (flymake-running-backends) (flymake-reporting-backends))))))))
    (driver-check "diagnostics: none in a clean file"
                  (and reported (null (driver-diagnostics)))
                  (if reported (driver-diagnostics) "nothing was reported"))))

(defun driver-fix ()
  "What code actions are offered, and what applying one does."
  (driver-open (driver-case 'fix 'file) (driver-case 'fix 'at))
  (flymake-start)
  (driver-check "fix: the fault is shown first"
                (driver-await (lambda () (driver-diagnostic (driver-case 'fix 'gone))))
                (driver-diagnostics))
  ;; A key, or eglot would take the command to come from the mouse and open a menu.
  (let ((last-nonmenu-event ?\r))
    (driver-choose-fix #'eglot-code-actions))
  (goto-char (driver-mark (driver-case 'fix 'file) (driver-case 'fix 'at)))
  (driver-check "fix: mends the line"
                (driver-await (lambda () (equal (driver-line) (driver-case 'fix 'line-after))))
                (driver-line))
  ;; What the command loop does after a command: eglot sends the change.
  (eglot--signal-textDocument/didChange)
  (driver-check "fix: its diagnostic goes"
                (and (equal (driver-line) (driver-case 'fix 'line-after))
                     (driver-await (lambda () (not (driver-diagnostic (driver-case 'fix 'gone))))))
                (driver-diagnostics)))

(defun driver-format ()
  "What formatting makes of the text."
  (driver-open (driver-case 'format 'file))
  (let ((wanted (driver-case 'format 'text-after)))
    (eglot-format-buffer)
    (driver-check "format: lays the text out" (equal (buffer-string) wanted) (buffer-string))
    (eglot--signal-textDocument/didChange)
    (eglot-format-buffer)
    (driver-check "format: a second time changes nothing" (equal (buffer-string) wanted) (buffer-string))))

(defun driver-rename ()
  "What renaming does in both files."
  (driver-check-rename 'rename #'eglot-rename))

(defun driver-rename-label ()
  "What renaming a label does, and in the note that speaks of it."
  (driver-check-rename 'rename-label #'eglot-rename))

(defun driver-signature ()
  "What eldoc shows of the settings where one is being written."
  (driver-open (driver-case 'signature 'file) (driver-case 'signature 'at))
  (eldoc-print-current-symbol-info)
  (let* ((wanted (append (driver-case 'signature 'shows) (driver-case 'signature 'says)))
         (buffer nil)
         (text (lambda () (and (setq buffer (bound-and-true-p eldoc--doc-buffer))
                               (buffer-live-p buffer)
                               (driver-shown buffer)))))
    (driver-await (lambda () (driver-contains-all (funcall text) wanted)))
    (driver-check "signature: shows the settings"
                  (driver-contains-all (funcall text) (driver-case 'signature 'shows)) (funcall text))
    (driver-check "signature: explains the setting at the caret"
                  (driver-contains-all (funcall text) (driver-case 'signature 'says)) (funcall text))
    (driver-check "signature: sets off the setting at the caret"
                  (and buffer
                       (with-current-buffer buffer
                         (goto-char (point-min))
                         (and (search-forward (concat "\n" (driver-case 'signature 'active)) nil t)
                              (eq (get-text-property (1- (point)) 'face) 'eldoc-highlight-function-argument))))
                  (funcall text))))

(defun driver-highlight ()
  "What eglot highlights of a name."
  (let ((name (driver-case 'highlight 'file)))
    (driver-open name (driver-case 'highlight 'at))
    (eldoc-print-current-symbol-info)
    (let ((wanted (mapcar (lambda (one) (list (driver-mark name (alist-get 'from one)) (driver-mark name (alist-get 'to one))))
                          (driver-case 'highlight 'all)))
          (found (lambda () (sort (cl-loop for overlay in (overlays-in (point-min) (point-max))
                                           when (eq (overlay-get overlay 'face) 'eglot-highlight-symbol-face)
                                           collect (list (overlay-start overlay) (overlay-end overlay)))
                                  (lambda (one other) (< (car one) (car other)))))))
      (driver-check "highlight: each mention of the name"
                    (driver-await (lambda () (equal (funcall found) wanted)))
                    (list (funcall found) 'for wanted)))))

(defun driver-mode ()
  "What the major mode does by itself."
  (driver-open (driver-case 'diagnostics 'clean-file))
  (driver-check "set-up: the mode is chain-mode" (eq major-mode 'chain-mode) major-mode)
  (driver-check "set-up: the comment sign is #" (equal comment-start "# ") comment-start)
  (with-temp-buffer
    (insert "chain a {\nhigh-pass 66 Hz # low \"end\"\nnote \"a # b\"\n}\n")
    (chain-mode)
    (indent-region (point-min) (point-max))
    (driver-check "set-up: braces indent by two"
                  (equal (buffer-string) "chain a {\n  high-pass 66 Hz # low \"end\"\n  note \"a # b\"\n}\n")
                  (buffer-string))
    (font-lock-ensure)
    (dolist (wanted '(("high" . font-lock-keyword-face) ("66" . font-lock-constant-face)
                      ("low" . font-lock-comment-face) ("b\"" . font-lock-doc-face)))
      (goto-char (point-min))
      (search-forward (car wanted))
      (let ((face (get-text-property (match-beginning 0) 'face)))
        (driver-check (format "set-up: %s is %s" (car wanted) (cdr wanted)) (eq face (cdr wanted)) face))))
  (with-temp-buffer
    (insert "bus mix { }\nchain a {\ngain -1 dB as match\n> A \"{ of prose opens nothing.\nmid-side {\nmid { gain -1 dB }\n}\n}\n")
    (chain-mode)
    (indent-region (point-min) (point-max))
    (goto-char (point-min))
    (search-forward "mid {")
    (driver-check "set-up: a brace in prose indents nothing" (= (current-indentation) 4) (buffer-string))
    (let ((index (mapcar (lambda (group) (cons (car group) (mapcar #'car (cdr group))))
                         (funcall imenu-create-index-function))))
      (driver-check "set-up: the index lists chains, buses and labels"
                    (and (equal (cdr (assoc "Chains" index)) '("a"))
                         (equal (cdr (assoc "Buses" index)) '("mix"))
                         (equal (cdr (assoc "Labels" index)) '("match")))
                    index))))

;; A batch run's frame is 10 columns wide; give it a terminal's size.
(set-frame-size (selected-frame) 120 40)

(unwind-protect
    (driver-run '((files . driver-mode) (hover . driver-hover) (diagnostics . driver-diagnostics-check)
                  (completion . driver-completion) (signature . driver-signature)
                  (highlight . driver-highlight) (fix . driver-fix) (format . driver-format)
                  (rename . driver-rename) (rename-label . driver-rename-label)))
  (ignore-errors
    (driver-check "set-up: one server for the folder"
                  (= 1 (length (apply #'append (hash-table-values eglot--servers-by-project))))
                  (hash-table-values eglot--servers-by-project)))
  (dolist (server (apply #'append (hash-table-values eglot--servers-by-project)))
    (ignore-errors (eglot-shutdown server nil 5))
    (ignore-errors (delete-process (jsonrpc--process server)))))
(driver-end)
;;; emacs.el ends here
