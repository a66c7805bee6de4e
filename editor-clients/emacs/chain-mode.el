;;; chain-mode.el --- Major mode for Chainwright's .chain files  -*- lexical-binding: t; -*-

;; Version: 0.1.0
;; Package-Requires: ((emacs "28.1"))
;; Keywords: languages, multimedia
;; SPDX-License-Identifier: Apache-2.0

;;; Commentary:

;; Put this folder on the `load-path', then in the init file:
;;
;;   (require 'chain-mode)
;;   (add-hook 'chain-mode-hook #'eglot-ensure)
;;
;; The server must be on the PATH as `chainwright'; otherwise set
;; `chain-server-command'.  With markdown-mode installed, eglot shows hovers
;; without their Markdown signs.  Completion is on M-TAB (`completion-at-point');
;; `eglot-rename', `eglot-code-actions' and `eglot-format-buffer' do the rest.

;;; Code:

(defgroup chain nil
  "Plain-text audio processing chains."
  :group 'languages)

(defcustom chain-server-command '("chainwright" "lsp")
  "Command line of the language server: the program, then its arguments."
  :type '(repeat string))

(defcustom chain-server-plots "text"
  "How the server draws the curves of a hover."
  :type '(choice (const :tag "In characters" "text")
                 (const :tag "As images, for a display that shows them" "svg")))

(defcustom chain-indent-offset 2
  "Columns that each level of braces adds to the indentation."
  :type 'integer
  :safe #'integerp)

(defvar chain-mode-syntax-table
  (let ((table (make-syntax-table)))
    (modify-syntax-entry ?# "<" table)
    (modify-syntax-entry ?\n ">" table)
    (modify-syntax-entry ?\" "\"" table)
    (modify-syntax-entry ?{ "(}" table)
    (modify-syntax-entry ?} "){" table)
    ;; Names are kebab-case: `high-pass' is one symbol.
    (modify-syntax-entry ?- "_" table)
    table)
  "Syntax table of `chain-mode'.")

(defvar chain-font-lock-keywords
  `(("^[ \t]*\\([a-z][a-z-]*\\)" 1 font-lock-keyword-face)
    (,(concat "\\_<[-+]?[0-9][0-9.:]*"
              "\\(?:[ ]?\\(?:k?Hz\\|dB\\(?:FS\\|TP\\|u\\)?\\(?:/oct\\)?\\|ms\\|s\\|LUFS\\|LU\\|%\\)\\)?")
     . font-lock-constant-face))
  "Colours that need no knowledge of the words: a line's opening and quantities.")

(defun chain-indent-line ()
  "Indent the current line by its depth in braces."
  (interactive)
  (let* ((depth (save-excursion
                  (back-to-indentation)
                  (- (car (syntax-ppss)) (if (eq (char-after) ?}) 1 0))))
         (column (* chain-indent-offset (max 0 depth))))
    (if (<= (current-column) (current-indentation))
        (indent-line-to column)
      (save-excursion (indent-line-to column)))))

;;;###autoload
(define-derived-mode chain-mode prog-mode "Chain"
  "Major mode for audio processing chains."
  (setq-local comment-start "# ")
  (setq-local comment-start-skip "#+[ \t]*")
  (setq-local comment-end "")
  (setq-local indent-tabs-mode nil)
  (setq-local tab-width 2)
  (setq-local indent-line-function #'chain-indent-line)
  (setq-local font-lock-defaults '(chain-font-lock-keywords)))

;;;###autoload
(add-to-list 'auto-mode-alist '("\\.chain\\'" . chain-mode))

(defvar eglot-server-programs)

(defun chain--contact (&rest _)
  "Return what `eglot' needs to start the server, as the settings stand now."
  `(,@chain-server-command
    :initializationOptions (:plots ,chain-server-plots)))

(with-eval-after-load 'eglot
  (add-to-list 'eglot-server-programs '((chain-mode :language-id "chain") . chain--contact)))

(provide 'chain-mode)
;;; chain-mode.el ends here
