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
;; `chain-server-command'.  With markdown-mode installed, hovers have no Markdown
;; signs, and on a display that shows images their curves are pictures.
;; `chain-plots' shows the plots of the line at point and of its chain beside
;; the text.  Completion is on M-TAB (`completion-at-point'); `eglot-rename',
;; `eglot-code-actions' and `eglot-format-buffer' do the rest.

;;; Code:

(require 'cl-lib)

(defgroup chain nil
  "Plain-text audio processing chains."
  :group 'languages)

(defcustom chain-server-command '("chainwright" "lsp")
  "Command line of the language server: the program, then its arguments."
  :type '(repeat string))

(defcustom chain-server-plots 'auto
  "How the server draws the curves of a hover; holds from its next start.
Images are drawn by way of markdown-mode; `auto' asks for them where it is
installed and the display shows them."
  :type '(choice (const :tag "As images where the display shows them" auto)
                 (const :tag "In characters" "text")
                 (const :tag "As images" "svg")))

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

;;; Colours: each word in the class that the language server gives it.
;; Words are told apart by where they stand, so that a new stage or setting
;; needs no line here.

(defface chain-unit '((t :inherit font-lock-constant-face))
  "Units of quantities.")

(defface chain-punctuation '((t :inherit default))
  "Braces, the equals sign, the mark of a line that goes on, the `to' of a range.")

;; The words that the server lists, held to it by a test; units in lower case.
(defconst chain--naming-statements '("apply" "bus" "chain" "group" "preset" "send" "source" "spill" "to"))
(defconst chain--naming-marks '("as" "deliberate" "key"))
(defconst chain--units '("bit" "bits" "bpm" "db" "db/oct" "db/octave" "dbfs" "dbtp" "dbu" "hertz" "hz" "k" "khz" "kilohertz" "lkfs" "lu" "lufs" "m" "ms" "msec" "oct" "octave" "octaves" "percent" "s" "sample" "samples" "sec" "us" "µs" "μs"))

(defconst chain--blanks "[ \t\v\f\u00a0\u1680\u2000-\u200b\u202f\u205f\u3000\ufeff]*")
(defconst chain--mark "\\.\\.\\.\\|…")
(defconst chain--word "[[:alpha:]]\\(?:[[:alnum:]_-]\\|/[[:alpha:]]\\)*")
(defconst chain--number
  (concat "[-+−–]?\\(?:[0-9]+/[0-9]+"
          "\\|[0-9]+\\(?::[0-9]+\\)+\\(?:\\.[0-9]*\\|,[0-9]+\\)?"
          "\\|\\(?:[0-9]+\\(?:\\.[0-9]*\\|,[0-9]+\\)?\\|\\.[0-9]+\\)\\(?::[0-9]+\\(?:\\.[0-9]*\\)?\\)?\\)"))
(defconst chain--text "\"\\(?:\\\\.\\|[^\"\\\\\n]\\)*\\(?:\"\\|\\\\?$\\)\\|[“”]\\(?:\\\\.\\|[^\"”\\\\\n]\\)*\\(?:[\"”]\\|\\\\?$\\)")

(defun chain--paint (face)
  "Give FACE to what was matched last, and go behind it."
  (put-text-property (match-beginning 0) (match-end 0) 'face face)
  (goto-char (match-end 0)))

(defun chain--skip-blanks ()
  "Go behind the blanks at point."
  (looking-at chain--blanks)
  (goto-char (match-end 0)))

(defun chain--paint-number ()
  "Paint the number that was matched last."
  (chain--paint 'font-lock-constant-face)
  ;; A point that is the first of several belongs to them, but not behind a ratio whose first number has a point itself.
  (when (and (eq (char-before) ?.) (eq (char-after) ?.)
             (not (string-match-p "[.,][^:]*:" (buffer-substring-no-properties (match-beginning 0) (point)))))
    (put-text-property (1- (point)) (point) 'face nil)
    (backward-char)))

(defun chain--paint-unit ()
  "Paint the unit of the number that ends at point, if it has one."
  (if (looking-at chain--word)
      (chain--paint 'chain-unit)
    (let ((end (point)))
      (chain--skip-blanks)
      (if (or (looking-at "[%°]")
              (and (looking-at chain--word)
                   (member (downcase (match-string 0)) chain--units)))
          (chain--paint 'chain-unit)
        (goto-char end)))))

(defun chain--paint-quantities ()
  "Paint the quantity or the range whose first number was matched last."
  (chain--paint-number)
  (chain--paint-unit)
  (let ((end (point)) high)
    (chain--skip-blanks)
    (when (and (looking-at chain--word)
               (string= (match-string 0) "to")
               (save-match-data
                 (save-excursion
                   (goto-char (match-end 0))
                   (chain--skip-blanks)
                   (looking-at chain--number))))
      (chain--paint 'chain-punctuation)
      (chain--skip-blanks)
      (setq high (looking-at chain--number))
      (chain--paint-number)
      (chain--paint-unit))
    (unless high
      (goto-char end))))

(defun chain--paint-line (before)
  "Paint the line at point and return what the next one goes on with.
BEFORE is what the line above goes on with: nil where that is nothing, else
a list of what kind of word comes next and the first word of the statement."
  (chain--skip-blanks)
  (let ((next 'head) (head nil) (end (line-end-position)))
    (cond
     ((looking-at ">.*")
      (chain--paint 'font-lock-doc-face))
     ((looking-at chain--mark)
      (chain--paint 'chain-punctuation)
      (when before
        (setq next (car before) head (cadr before)))))
    (while (progn (chain--skip-blanks) (< (point) end))
      (cond
       ((looking-at "#.*")
        (chain--paint 'font-lock-comment-face))
       ((looking-at "[{}]")
        (chain--paint 'chain-punctuation)
        (setq next 'head head nil))
       ((looking-at chain--word)
        (let ((word (match-string-no-properties 0)))
          (chain--paint (pcase next
                          ('head 'font-lock-keyword-face)
                          ('name 'font-lock-function-name-face)
                          (_ 'font-lock-variable-name-face)))
          (setq head (if (eq next 'head) word head)
                next (if (member word (pcase next
                                        ('head chain--naming-statements)
                                        ('setting chain--naming-marks)))
                         'name
                       'setting))))
       (t
        (cond
         ((looking-at chain--text)
          (chain--paint (if (equal head "note") 'font-lock-doc-face 'font-lock-string-face)))
         ((looking-at "//.*\\|\\.\\.\\.")
          (goto-char (match-end 0)))
         ((looking-at chain--number)
          (chain--paint-quantities))
         ((looking-at "[%°]")
          (chain--paint 'chain-unit))
         ((looking-at "=")
          (chain--paint 'chain-punctuation))
         (t (forward-char)))
        (setq next 'setting head (or head "")))))
    (unless (eq next 'head)
      (list next head))))

(defun chain--paint-lines (limit)
  "Paint the lines from point to LIMIT, as a matcher of font-lock; return nil."
  (let ((start (line-beginning-position)) before)
    ;; A line that goes on is understood from the first line of its statement.
    (goto-char start)
    (while (and (looking-at (concat chain--blanks "\\(?:" chain--mark "\\)"))
                (zerop (forward-line -1))))
    (with-silent-modifications
      (while (< (point) limit)
        (put-text-property (point) (line-end-position) 'face nil)
        (setq before (chain--paint-line before))
        (forward-line 1))))
  nil)

(defun chain--mark-notes (start end)
  "Let no brace or quote of a note between START and END count as one."
  (goto-char start)
  (while (re-search-forward (concat "^" chain--blanks "\\(>\\)") end t)
    (put-text-property (match-beginning 1) (match-end 1)
                       'syntax-table (string-to-syntax "<"))))

(defvar chain-imenu-expression
  (let ((name "[ \t]+\\([[:alpha:]][[:alnum:]-]*\\)"))
    `(("Chains" ,(concat "^[ \t]*chain" name) 1)
      ("Buses" ,(concat "^[ \t]*bus" name) 1)
      ("Presets" ,(concat "^[ \t]*preset" name) 1)
      ("Labels" ,(concat "^[^#>\"\n]*\\_<as" name) 1)))
  "What the index of a buffer holds.")

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
  (setq-local font-lock-defaults '(((chain--paint-lines)) t))
  (setq-local syntax-propertize-function #'chain--mark-notes)
  (setq-local eldoc-display-functions
              (cl-substitute 'chain-plots-display-in-echo-area 'eldoc-display-in-echo-area eldoc-display-functions))
  (setq-local imenu-generic-expression chain-imenu-expression)
  (setq-local imenu-case-fold-search nil))

;;;###autoload
(add-to-list 'auto-mode-alist '("\\.chain\\'" . chain-mode))

;;; The language server, by eglot or lsp-mode.

(autoload 'chain-plots "chain-plots" "Show the plots at point beside the text." t)
(autoload 'chain-plots-draw-hover "chain-plots")
(autoload 'chain-plots-theme "chain-plots")
(autoload 'chain-plots-drawable-p "chain-plots")
(autoload 'chain-plots-display-in-echo-area "chain-plots")

;; Both clients lay hovers out in one of these modes.
(dolist (mode '(gfm-view-mode markdown-view-mode))
  (font-lock-add-keywords mode '((chain-plots-draw-hover)) 'append))

(defun chain--options ()
  "Return what the server is told at its start, as the settings stand now."
  (list :plots (cond ((stringp chain-server-plots) chain-server-plots)
                     ((and (chain-plots-drawable-p) (locate-library "markdown-mode")) "svg")
                     (t "text"))
        :plotTheme (chain-plots-theme)))

(defvar eglot-server-programs)

(defun chain--contact (&rest _)
  "Return what `eglot' needs to start the server."
  `(,@chain-server-command :initializationOptions ,(chain--options)))

(with-eval-after-load 'eglot
  (add-to-list 'eglot-server-programs '((chain-mode :language-id "chain") . chain--contact)))

(defvar lsp-language-id-configuration)
(declare-function lsp-register-client "lsp-mode")
(declare-function lsp-stdio-connection "lsp-mode")
(declare-function lsp-activate-on "lsp-mode")
(declare-function make-lsp-client "lsp-mode")

(with-eval-after-load 'lsp-mode
  (add-to-list 'lsp-language-id-configuration '(chain-mode . "chain"))
  (lsp-register-client
   (make-lsp-client
    :new-connection (lsp-stdio-connection (lambda () chain-server-command))
    :activation-fn (lsp-activate-on "chain")
    :initialization-options #'chain--options
    :server-id 'chainwright)))

(provide 'chain-mode)
;;; chain-mode.el ends here
