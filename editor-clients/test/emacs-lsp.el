;;; emacs-lsp.el --- Drives lsp-mode in a real Emacs and checks what it shows  -*- lexical-binding: t; -*-

;;; Commentary:

;; Run by ./emacs-lsp.sh.

;;; Code:

(load (expand-file-name "emacs-driver" (file-name-directory load-file-name)) nil t)
(require 'lsp-mode)
(require 'lsp-completion)
(require 'lsp-diagnostics)
(require 'lsp-semantic-tokens)
(require 'flymake)

(setq lsp-session-file (expand-file-name ".session" driver-folder)
      lsp-auto-guess-root t
      lsp-guess-root-without-session t
      lsp-diagnostics-provider :flymake
      lsp-enable-snippet nil
      lsp-headerline-breadcrumb-enable nil
      lsp-semantic-tokens-enable t
      lsp-auto-execute-action nil
      lsp-restart 'ignore)

(defun driver-open (name &optional mark)
  "Show the file NAME, managed by the server, with point at MARK."
  (switch-to-buffer (find-file-noselect (expand-file-name name driver-folder)))
  (unless lsp-mode
    (lsp))
  (driver-await (lambda () (and (lsp-workspaces) (eq 'initialized (lsp--workspace-status (car (lsp-workspaces)))))))
  (when mark
    (goto-char (driver-mark name mark))))

(defun driver-found ()
  "Return what the server has found in the current buffer."
  (gethash (lsp--fix-path-casing buffer-file-name) (lsp-diagnostics t)))

(defun driver-diagnostics ()
  "Check what is found in a file with faults."
  (driver-open (driver-case 'diagnostics 'file))
  (let ((all (driver-case 'diagnostics 'all)))
    (driver-await (lambda () (>= (length (driver-found)) (length all))))
    (driver-check "diagnostics: each once and no others" (= (length (driver-found)) (length all)) (driver-found))
    (dolist (wanted all)
      (let ((match (cl-find (alist-get 'code wanted) (driver-found) :key #'lsp:diagnostic-code? :test #'equal)))
        (driver-check (format "diagnostics: %s says why" (alist-get 'code wanted))
                      (and match (driver-contains-all (lsp:diagnostic-message match) (alist-get 'shows wanted)))
                      match)))))

(defun driver-hover ()
  "Check the whole of a hover."
  (driver-open (driver-case 'hover 'file) (driver-case 'hover 'at))
  (lsp-describe-thing-at-point)
  (let ((text (driver-shown "*lsp-help*")))
    (driver-check "hover: says what it should, with a curve in characters"
                  (driver-contains-all text (append (driver-case 'hover 'shows) (driver-case 'hover 'text-plot)))
                  text)))

(defun driver-completion ()
  "Check what completion at point offers, and what accepting writes."
  (mapc #'driver-complete (driver-case 'completion)))

(defun driver-signature ()
  "Check what is shown of the settings where one is being written.
Lsp-mode shows what a signature says, not what each of its parameters says."
  (driver-open (driver-case 'signature 'file) (driver-case 'signature 'at))
  (let* ((shown "") (lsp-signature-function (lambda (text) (when text (setq shown text)))))
    (lsp-signature-activate)
    ;; Asked for after each command, of which a batch run has none.
    (lsp-signature)
    (driver-await (lambda () (driver-contains-all shown (driver-case 'signature 'shows))))
    (driver-check "signature: shows the settings"
                  (driver-contains-all shown (driver-case 'signature 'shows)) shown)
    (let ((at (string-search (driver-case 'signature 'active) shown)))
      (driver-check "signature: sets off the setting at the caret"
                    (and at (memq 'eldoc-highlight-function-argument
                                  (ensure-list (get-text-property at 'face shown))))
                    shown))))

(defun driver-highlight ()
  "Check what is highlighted of a name."
  (let ((name (driver-case 'highlight 'file)))
    (driver-open name (driver-case 'highlight 'at))
    (lsp-document-highlight)
    (let ((wanted (mapcar (lambda (one) (list (driver-mark name (alist-get 'from one)) (driver-mark name (alist-get 'to one))))
                          (driver-case 'highlight 'all)))
          (found (lambda () (sort (cl-loop for overlay in (overlays-in (point-min) (point-max))
                                           when (overlay-get overlay 'lsp-highlight)
                                           collect (list (overlay-start overlay) (overlay-end overlay)))
                                  (lambda (one other) (< (car one) (car other)))))))
      (driver-check "highlight: each mention of the name"
                    (driver-await (lambda () (equal (funcall found) wanted)))
                    (list (funcall found) 'for wanted)))))

(defun driver-colours ()
  "Check that the server's classes give words their colours."
  (driver-open (driver-case 'colours 'file))
  (dolist (wanted (driver-case 'colours 'all))
    (let* ((text (alist-get 'text wanted))
           (face (intern (format "lsp-face-semhl-%s" (alist-get 'class wanted))))
           (faces (lambda ()
                    (save-excursion
                      (font-lock-ensure)
                      (goto-char (point-min))
                      (search-forward text)
                      (ensure-list (get-text-property (match-beginning 0) 'face))))))
      (driver-check (format "colours: %s is a %s" text (alist-get 'class wanted))
                    (driver-await (lambda () (memq face (funcall faces))))
                    (funcall faces)))))

(defun driver-fix ()
  "Check what code actions are offered, and what applying one does."
  (driver-open (driver-case 'fix 'file) (driver-case 'fix 'at))
  (let ((there (lambda () (cl-find (driver-case 'fix 'gone) (driver-found) :key #'lsp:diagnostic-code? :test #'equal))))
    (driver-check "fix: the fault is shown first" (driver-await there) (driver-found))
    (driver-choose-fix #'lsp-execute-code-action)
    (goto-char (driver-mark (driver-case 'fix 'file) (driver-case 'fix 'at)))
    (driver-check "fix: mends the line"
                  (driver-await (lambda () (equal (driver-line) (driver-case 'fix 'line-after))))
                  (driver-line))
    (driver-check "fix: its diagnostic goes" (driver-await (lambda () (not (funcall there)))) (driver-found))))

(defun driver-format ()
  "Check the formatter."
  (driver-open (driver-case 'format 'file))
  (lsp-format-buffer)
  (driver-check "format: lays the text out" (equal (buffer-string) (driver-case 'format 'text-after)) (buffer-string)))

(defun driver-rename ()
  "Check what renaming does in both files."
  (driver-check-rename 'rename #'lsp-rename))

(defun driver-rename-label ()
  "Check what renaming a label does, and in the note that speaks of it."
  (driver-check-rename 'rename-label #'lsp-rename))

(driver-run '((diagnostics . driver-diagnostics) (hover . driver-hover) (completion . driver-completion)
              (signature . driver-signature) (highlight . driver-highlight) (colours . driver-colours)
              (fix . driver-fix) (format . driver-format)
              (rename . driver-rename) (rename-label . driver-rename-label)))
(ignore-errors (lsp-workspace-shutdown (car (lsp-workspaces))))
(driver-end)
;;; emacs-lsp.el ends here
