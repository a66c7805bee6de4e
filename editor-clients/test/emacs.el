;;; emacs.el --- Drives eglot in a real Emacs and checks what it shows  -*- lexical-binding: t; -*-

;;; Commentary:

;; Run by ./emacs.sh.

;;; Code:

(require 'cl-lib)
(require 'json)

(defconst driver-here (file-name-directory load-file-name))

;; The set-up that the README of ../emacs gives, but for `eglot-ensure', which
;; waits for a command loop that a batch run has not.
(add-to-list 'load-path (expand-file-name "../emacs" driver-here))
(require 'chain-mode)
(setq chain-server-command (list (getenv "CHAINWRIGHT") "lsp"))

(require 'eglot)
(require 'flymake)
(require 'markdown-mode)

(setq make-backup-files nil
      auto-save-default nil
      create-lockfiles nil
      eglot-autoshutdown nil
      eglot-sync-connect 30
      flymake-no-changes-timeout 0.1)

(defconst driver-patience
  (/ (string-to-number (or (getenv "PATIENCE_MS") "20000")) 1000.0)
  "Seconds to wait for what must come.")

(defconst driver-cases
  (let ((json-object-type 'alist) (json-array-type 'list) (json-key-type 'symbol))
    (json-read-file (or (getenv "CASES") (expand-file-name "cases.json" driver-here)))))

(defun driver-case (&rest path)
  "Return what the data file holds under PATH."
  (let ((at driver-cases))
    (dolist (key path at)
      (setq at (alist-get key at)))))

;;; Saying what was seen.

(defvar driver-passed 0)
(defvar driver-failed 0)

(defun driver-say (line &rest arguments)
  "Write LINE, formatted with ARGUMENTS, to standard output."
  (princ (concat (apply #'format line arguments) "\n")))

(defun driver-check (name holds seen)
  "Count the check NAME as passed where HOLDS, and print SEEN otherwise."
  (if holds
      (progn (cl-incf driver-passed) (driver-say "ok      %s" name))
    (cl-incf driver-failed)
    (driver-say "FAILED  %s: %S" name seen)))

(defun driver-await (probe)
  "Return the value of PROBE once it is non-nil; nil when patience runs out."
  (let ((end (+ (float-time) driver-patience)) value)
    (while (and (not (setq value (funcall probe))) (< (float-time) end))
      (accept-process-output nil 0.05))
    value))

(defun driver-contains-all (text wanted)
  "Return whether TEXT contains every string of WANTED."
  (and (stringp text)
       (cl-every (lambda (part) (string-search part text)) wanted)))

;;; The fixture folder.

(defvar driver-folder (file-name-as-directory (make-temp-file "chain-fixture" t)))
(defvar driver-marks nil "Buffer positions by (FILE . MARK).")

(defun driver-lay-out ()
  "Write the fixture files without their markers, and remember where these stood."
  (dolist (file (driver-case 'files))
    (let ((name (symbol-name (car file))) (coding-system-for-write 'utf-8-unix))
      (with-temp-buffer
        (insert (cdr file))
        (goto-char (point-min))
        (while (re-search-forward "<|\\([a-z-]+\\)|>" nil t)
          (let ((mark (match-string 1)))
            (replace-match "")
            (push (cons (cons name mark) (point)) driver-marks)))
        (write-region nil nil (expand-file-name name driver-folder) nil 'quiet)))))

(defun driver-mark (name mark)
  "Return the buffer position of MARK in file NAME."
  (cdr (assoc (cons name mark) driver-marks)))

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

(defun driver-line ()
  "Return the text of the current line."
  (buffer-substring-no-properties (line-beginning-position) (line-end-position)))

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

(defun driver-shown (buffer)
  "Return the visible text of BUFFER."
  (with-current-buffer buffer
    (let ((at (point-min)) (parts nil))
      (while (< at (point-max))
        (let ((next (next-single-char-property-change at 'invisible)))
          (unless (invisible-p at)
            (push (buffer-substring-no-properties at next) parts))
          (setq at next)))
      (apply #'concat (nreverse parts)))))

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

(defun driver-candidates ()
  "Return the words that the *Completions* buffer lists."
  (when (get-buffer "*Completions*")
    (with-current-buffer "*Completions*"
      (let ((at (point-min)) (words nil))
        (while (< at (point-max))
          (let ((next (next-single-property-change at 'mouse-face nil (point-max))))
            (when (get-text-property at 'mouse-face)
              ;; An annotation follows the word after a space; both may have the same face.
              (push (string-trim (buffer-substring-no-properties at next)) words))
            (setq at next)))
        (delete-dups (nreverse words))))))

(defun driver-complete (case)
  "What completion offers at the place of CASE, and what accepting writes."
  (let ((file (alist-get 'file case)) (at (alist-get 'at case)) (name (alist-get 'name case)))
    (when (get-buffer "*Completions*")
      (kill-buffer "*Completions*"))
    (driver-open file at)
    (completion-help-at-point)
    (let ((words (driver-candidates)) (accept (alist-get 'accept case)))
      (dolist (word (alist-get 'offers case))
        (driver-check (format "completion of %s: offers %s" name word) (member word words) words))
      (dolist (word (alist-get 'withholds case))
        (driver-check (format "completion of %s: withholds %s" name word)
                      (and words (not (member word words))) words))
      ;; Choosing in *Completions* is what a click or RET on the word does.
      (when (get-buffer "*Completions*")
        (select-window (get-buffer-window "*Completions*"))
        (goto-char (point-min))
        (when (search-forward accept nil t)
          (goto-char (match-beginning 0))
          (choose-completion))))
    (switch-to-buffer (find-file-noselect (expand-file-name file driver-folder)))
    (goto-char (driver-mark file at))
    (driver-check (format "completion of %s: accepting writes the word" name)
                  (equal (driver-line) (alist-get 'line-after case))
                  (driver-line))))

(defun driver-completion ()
  "What completion at point offers, and what accepting writes."
  (dolist (case (driver-case 'completion))
    (driver-complete case)))

(defun driver-fix ()
  "What code actions are offered, and what applying one does."
  (driver-open (driver-case 'fix 'file) (driver-case 'fix 'at))
  (flymake-start)
  (driver-check "fix: the fault is shown first"
                (driver-await (lambda () (driver-diagnostic (driver-case 'fix 'gone))))
                (driver-diagnostics))
  (let ((title (driver-case 'fix 'title)) (shown nil)
        ;; A key, or eglot would take the command to come from the mouse and open a menu.
        (last-nonmenu-event ?\r))
    (cl-letf (((symbol-function 'completing-read)
               (lambda (_prompt collection &rest _)
                 (setq shown (all-completions "" collection))
                 (or (cl-find-if (lambda (label) (string-search title label)) shown)
                     (error "No action %S" title)))))
      (condition-case trouble
          (call-interactively #'eglot-code-actions)
        (error (driver-say "        %S" trouble))))
    (driver-check "fix: is offered"
                  (cl-some (lambda (label) (string-search title label)) shown)
                  shown))
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

(defun driver-check-rename (section)
  "Rename as SECTION of the cases says, and check the lines after."
  (driver-open (driver-case section 'file) (driver-case section 'at))
  ;; Eglot asks before it edits a file that is not yet open.
  (cl-letf (((symbol-function 'y-or-n-p) #'always))
    (eglot-rename (driver-case section 'to)))
  (dolist (wanted (driver-case section 'lines-after))
    (let* ((buffer (find-buffer-visiting (expand-file-name (symbol-name (car wanted)) driver-folder)))
           (text (and buffer (with-current-buffer buffer (buffer-string))))
           (lines (if (listp (cdr wanted)) (cdr wanted) (list (cdr wanted)))))
      (driver-check (format "%s: reaches %s" section (car wanted))
                    (and text (cl-every (lambda (line) (member line (split-string text "\n"))) lines))
                    text))))

(defun driver-rename ()
  "What renaming does in both files."
  (driver-check-rename 'rename))

(defun driver-rename-label ()
  "What renaming a label does, and in the note that speaks of it."
  (driver-check-rename 'rename-label))

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

(driver-lay-out)
(unwind-protect
    (pcase-dolist (`(,section . ,check)
                   '((files . driver-mode) (hover . driver-hover) (diagnostics . driver-diagnostics-check)
                     (completion . driver-completion) (signature . driver-signature)
                     (highlight . driver-highlight) (fix . driver-fix) (format . driver-format)
                     (rename . driver-rename) (rename-label . driver-rename-label)))
      (if (not (driver-case section))
          (driver-say "--      %s: not in the cases" section)
        (condition-case trouble
            (funcall check)
          ((error quit) (driver-check (format "%s: runs to its end" section) nil trouble)))))
  (ignore-errors
    (driver-check "set-up: one server for the folder"
                  (= 1 (length (apply #'append (hash-table-values eglot--servers-by-project))))
                  (hash-table-values eglot--servers-by-project)))
  (dolist (server (apply #'append (hash-table-values eglot--servers-by-project)))
    (ignore-errors (eglot-shutdown server nil 5))
    (ignore-errors (delete-process (jsonrpc--process server))))
  (delete-directory driver-folder t))
(driver-say "%d passed, %d failed" driver-passed driver-failed)
(set-buffer-modified-p nil)
(kill-emacs (if (and (zerop driver-failed) (> driver-passed 0)) 0 1))
;;; emacs.el ends here
