;;; emacs-lsp.el --- Drives lsp-mode in a real Emacs and checks what it shows  -*- lexical-binding: t; -*-

;;; Commentary:

;; Run by ./emacs-lsp.sh.

;;; Code:

(require 'cl-lib)
(require 'json)
(require 'package)
;; Debian's packages of Emacs Lisp are found so.
(package-initialize)

(defconst driver-here (file-name-directory load-file-name))
(add-to-list 'load-path (expand-file-name "../emacs" driver-here))
(require 'chain-mode)
(setq chain-server-command (list (getenv "CHAINWRIGHT") "lsp"))

(require 'lsp-mode)
(require 'lsp-diagnostics)
(require 'flymake)

(defconst driver-folder (file-name-as-directory (file-truename (make-temp-file "chain-lsp" t))))
(setq make-backup-files nil
      create-lockfiles nil
      lsp-session-file (expand-file-name "session" driver-folder)
      lsp-auto-guess-root t
      lsp-guess-root-without-session t
      lsp-diagnostics-provider :flymake
      lsp-enable-snippet nil
      lsp-headerline-breadcrumb-enable nil
      lsp-restart 'ignore)

(defconst driver-cases
  (let ((json-object-type 'alist) (json-array-type 'list) (json-key-type 'symbol))
    (json-read-file (or (getenv "CASES") (expand-file-name "cases.json" driver-here)))))

(defun driver-case (&rest path)
  "Return what the data file holds under PATH."
  (let ((at driver-cases))
    (dolist (key path at)
      (setq at (alist-get key at)))))

(defvar driver-passed 0)
(defvar driver-failed 0)

(defun driver-check (name holds seen)
  "Count the check NAME as passed where HOLDS, and print SEEN otherwise."
  (princ (if holds (format "ok      %s\n" name) (format "FAILED  %s: %S\n" name seen)))
  (if holds (cl-incf driver-passed) (cl-incf driver-failed)))

(defun driver-await (probe)
  "Return the value of PROBE once it is non-nil; nil when patience runs out."
  (let ((end (+ (float-time) (/ (string-to-number (or (getenv "PATIENCE_MS") "20000")) 1000.0))) value)
    (while (and (not (setq value (funcall probe))) (< (float-time) end))
      (accept-process-output nil 0.05))
    value))

(defun driver-open (name &optional mark)
  "Show the file NAME with point at its MARK, without the other marks."
  (find-file (expand-file-name name driver-folder))
  (erase-buffer)
  (insert (driver-case 'files (intern name)))
  (let (at)
    (goto-char (point-min))
    (while (re-search-forward "<|\\([a-z-]+\\)|>" nil t)
      (let ((label (match-string 1)))
        (replace-match "")
        (when (equal label mark)
          (setq at (point)))))
    (save-buffer)
    (goto-char (or at (point-min))))
  (lsp)
  (driver-await (lambda () (lsp-workspaces)))
  (driver-await (lambda () (eq 'initialized (lsp--workspace-status (car (lsp-workspaces)))))))

(defun driver-diagnostics ()
  "Check what is found in a file with faults."
  (driver-open (driver-case 'diagnostics 'file))
  (let ((all (driver-case 'diagnostics 'all))
        (found (lambda () (gethash (lsp--fix-path-casing buffer-file-name) (lsp-diagnostics t)))))
    (driver-await (lambda () (>= (length (funcall found)) (length all))))
    (driver-check "diagnostics: each once and no others" (= (length (funcall found)) (length all)) (funcall found))
    (dolist (wanted all)
      (let ((match (cl-find (alist-get 'code wanted) (funcall found) :key #'lsp:diagnostic-code? :test #'equal)))
        (driver-check (format "diagnostics: %s says why" (alist-get 'code wanted))
                      (and match (cl-every (lambda (part) (string-search part (lsp:diagnostic-message match)))
                                           (alist-get 'shows wanted)))
                      match)))))

(defun driver-hover ()
  "Check the whole of a hover."
  (driver-open (driver-case 'hover 'file) "hover")
  (lsp-describe-thing-at-point)
  (let ((text (with-current-buffer "*lsp-help*" (buffer-substring-no-properties (point-min) (point-max)))))
    (driver-check "hover: says what it should, with a curve in characters"
                  (cl-every (lambda (part) (string-search part text))
                            (append (driver-case 'hover 'shows) (driver-case 'hover 'text-plot)))
                  text)))

(defun driver-format ()
  "Check the formatter."
  (driver-open (driver-case 'format 'file))
  (lsp-format-buffer)
  (driver-check "format: lays the text out" (equal (buffer-string) (driver-case 'format 'text-after)) (buffer-string)))

(dolist (check '(driver-diagnostics driver-hover driver-format))
  (condition-case trouble
      (funcall check)
    ((error quit) (driver-check (format "%s: runs to its end" check) nil trouble))))
(ignore-errors (lsp-workspace-shutdown (car (lsp-workspaces))))
(dolist (buffer (buffer-list))
  (with-current-buffer buffer (set-buffer-modified-p nil)))
(princ (format "%d passed, %d failed\n" driver-passed driver-failed))
(delete-directory driver-folder t)
(kill-emacs (if (and (zerop driver-failed) (> driver-passed 0)) 0 1))
;;; emacs-lsp.el ends here
